"""Growth stages and conditions named in a phrase."""

from __future__ import annotations

from auctorum.characters.figures import Line
from auctorum.characters.stage_words import STAGE_OF
from auctorum.characters.wording import phrases

_TABLE = phrases(*(" ".join(words) for words in STAGE_OF))


def stage_mark(line: Line, at: int) -> tuple[str, int]:
    """The stage that the longest marker here names (`becoming` for a change), and the place after it; "" and `at`."""
    for words in _TABLE.get(line.text(at), ()):
        if all(line.text(at + step) == word for step, word in enumerate(words)):
            return STAGE_OF[words], at + len(words)
    return "", at
