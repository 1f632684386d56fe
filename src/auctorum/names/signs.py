"""Hyphens, spaces, apostrophes, full stops and symbols in epithets (ICN Art. 23.1, 23.3, 60.11-60.14; Shenzhen)."""

from __future__ import annotations

import unicodedata
from itertools import pairwise

# Symbols that Linnaeus printed in epithets, with their transcription (Art. 23.3 Ex., from memory).
_SYMBOLS = {"♀": "veneris", "∇": "aquatica", "▽": "aquatica", "△": "aquatica"}
_APOSTROPHES = "'’‘ʼʻ´`"
_QUOTATION_MARKS = '"“”„«»‹›‚'
_DASHES = str.maketrans(dict.fromkeys("‐‑‒–—\u00ad", "-"))
# Parts that never stand independently, beside those that end in a linking -o-.
_NEVER_ALONE = "pseudo neo sub super semi prae inter trans la le de du van von mac mc"
_PREFIXES = frozenset(_NEVER_ALONE.split())
# Ends of nouns in -o, as in plantago-aquatica.
_NOUNS_IN_O = ("ago", "igo", "ugo", "edo", "udo", "irgo", "mo", "leo", "io")


def transcribed(epithet: str, transcription: str = "") -> str:
    """`epithet` with its symbol written out behind a hyphen (ICN Art. 23.3).

    `transcription` is the word in the case needed; without one, the symbols of Linnaeus's names are known.

    >>> transcribed("pecten ♀")
    'pecten-veneris'
    """
    known = _SYMBOLS if not transcription else dict.fromkeys(filter(_is_symbol, epithet), transcription)
    if not any(letter in known for letter in epithet):
        missing = transcription and transcription not in epithet
        return f"{epithet}-{transcription}" if missing else epithet
    spaced = "".join(f" {known[letter]} " if letter in known else letter for letter in epithet)
    parts = (part.strip("-") for part in spaced.split(" "))
    return "-".join(part for part in parts if part)


def _is_symbol(letter: str) -> bool:
    return unicodedata.category(letter) in ("So", "Sm")


def without_apostrophes(epithet: str) -> str:
    """`epithet` without apostrophes and quotation marks; m' for Mac becomes mc (ICN Art. 60.13).

    >>> without_apostrophes("o'donellii"), without_apostrophes("m'kenii")
    ('odonellii', 'mckenii')
    """
    if epithet[:1] in ("m", "M") and epithet[1:2] and epithet[1] in _APOSTROPHES:
        epithet = f"{epithet[0]}c{epithet[2:]}"
    return "".join(letter for letter in epithet if letter not in _APOSTROPHES + _QUOTATION_MARKS)


def without_stops(epithet: str, place: bool = False) -> str:
    """`epithet` without full stops; St. of a `place` is written out as sancti or sanctae (ICN Art. 60.13, 60.14).

    In an epithet from a person, tradition leaves st- before its hyphen.

    >>> without_stops("st.-johnianum"), without_stops("st.-helenae", place=True)
    ('st-johnianum', 'sanctae-helenae')
    """
    if epithet[:3].casefold() == "st.":
        saint, rest = epithet[:2], epithet[3:].lstrip("- ")
        if place:
            saint = f"{saint[0]}anct{'ae' if rest.endswith('ae') else 'i'}"
        epithet = f"{saint}-{rest}"
    return epithet.replace(".", "")


def plain_hyphens(epithet: str) -> str:
    """`epithet` with the plain hyphen for every other dash."""
    return epithet.translate(_DASHES)


def joined(epithet: str, stand_alone: bool | None = None, person: str = "") -> str:
    """`epithet` of several words, or with hyphens, united or hyphened (ICN Art. 23.1, 60.11).

    A hyphen stays between words that usually stand independently and between two like letters. `stand_alone` says
    whether the words do; where it is None, combining forms and the parts of the name of a `person` are united, and the
    rest keeps its hyphen.

    >>> joined("pseudo-platanus"), joined("noli tangere"), joined("austro-occidentale")
    ('pseudoplatanus', 'noli-tangere', 'austro-occidentale')
    """
    parts = epithet.replace("-", " ").split()
    names = frozenset(person.casefold().replace("-", " ").split())
    made = parts[0] if parts else ""
    for before, part in pairwise(parts):
        made += ("-" if _keeps_hyphen(before, part, stand_alone, names) else "") + part
    return made


def _keeps_hyphen(before: str, part: str, stand_alone: bool | None, names: frozenset[str]) -> bool:
    if before[-1].casefold() == part[0].casefold() or before.casefold() == "st":
        return True
    if stand_alone is not None:
        return stand_alone
    first = before.casefold()
    combining = first in _PREFIXES or (first.endswith("o") and not first.endswith(_NOUNS_IN_O))
    return not combining and first not in names
