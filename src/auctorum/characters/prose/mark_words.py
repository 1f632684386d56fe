"""Participles of marks: `purple-spotted` tells the colour of the spots (common practice, no source); folded."""

from __future__ import annotations

from collections.abc import Mapping

_MARKS = {
    "vein": "veined nerved geadert venosa venosus venosum nervosa nervosus nervosum",
    "spot": """spotted gefleckt maculata maculatus maculatum maculatis maculatae maculati maculado maculada manchado
        manchada tachete""",
    "stripe": "striped gestreift vittatus vittata vittatum rayado rayada",
    "blotch": "blotched",
    "tip": "tipped",
    "margin": "margined edged bordered gerandet marginata marginatus marginatum marginatis",
    "dot": "dotted speckled",
    "streak": "streaked",
    "fleck": "flecked",
    "band": "banded zoned",
}
MARKED: Mapping[str, str] = {word: mark for mark, words in _MARKS.items() for word in words.split()}
"""The mark that a participle tells of."""
MARKS = frozenset(_MARKS)
