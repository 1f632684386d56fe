"""Turns of phrase that sentences, headings and tables share: a list in words, a number of things, a capital letter."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

_NARROW = 2  # points of percent, up to which an interval is given with a decimal


def listed(words: Iterable[str]) -> str:
    """`A`, `A and B`, `A, B and C`; there must be one.

    >>> listed(["spur", "petal", "leaf"])
    'spur, petal and leaf'
    """
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last


def listed_some(words: Sequence[str], most: int) -> str:
    """The first `most` and how many follow, all where that is one; what holds commas is parted by semicolons.

    >>> listed_some("ABCD", 3), listed_some("ABCDE", 3), listed_some(["A, B & C 1990", "D 1991"], 3)
    ('A, B, C and D', 'A, B, C and 2 more', 'A, B & C 1990; and D 1991')
    """
    said = list(words) if len(words) <= most + 1 else [*words[:most], f"{len(words) - most} more"]
    if not any("," in one for one in said):
        return listed(said)
    return "; ".join([*said[:-1], f"and {said[-1]}"]) if len(said) > 1 else said[0]


def share_words(share: float) -> str:
    """A counted share in whole percent; `under 1 %` for what would be rounded to nothing.

    >>> share_words(0.174), share_words(0.004), share_words(0)
    ('17 %', 'under 1 %', '0 %')
    """
    return "under 1 %" if 0 < share < 0.005 else f"{100 * share:.0f} %"


def interval_words(interval: tuple[float, float]) -> str:
    """An interval of shares in percent; with a decimal where whole ones would hardly differ.

    >>> interval_words((0.352, 0.488)), interval_words((0.352, 0.361))
    ('35–49 %', '35.2–36.1 %')
    """
    low, high = (100 * end for end in interval)
    digits = 0 if high - low > _NARROW else 1
    return f"{low:.{digits}f}–{high:.{digits}f} %"


def counted(number: int, noun: str) -> str:
    """`no plants`, `1 plant`, `3 plants`."""
    return f"{number or 'no'} {noun}{'' if number == 1 else 's'}"


def capital(words: str) -> str:
    """The words with a capital first letter, and the rest as it was.

    >>> capital("leaf of E. album")
    'Leaf of E. album'
    """
    return words[:1].upper() + words[1:]


def at_stage(character: str, stage: str) -> str:
    """A character as a heading or a row is called.

    >>> at_stage("spur length", "mature"), at_stage("petal number", "")
    ('spur length (mature)', 'petal number')
    """
    return f"{character} ({stage})" if stage else character
