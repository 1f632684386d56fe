"""Turns of phrase that sentences, headings and tables share: a list in words, a number of things, a capital letter."""

from __future__ import annotations

from collections.abc import Iterable


def listed(words: Iterable[str]) -> str:
    """`A`, `A and B`, `A, B and C`; there must be one.

    >>> listed(["spur", "petal", "leaf"])
    'spur, petal and leaf'
    """
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last


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
