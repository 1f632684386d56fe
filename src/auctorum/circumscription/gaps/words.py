"""Words that the kinds of gaps share."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from auctorum.corpus.model import Treatment, Work
from auctorum.corpus.readings import UNSTATED

MOST = 4  # things named in a sentence before the rest are counted


def listed(items: Iterable[str], most: int = MOST) -> str:
    """Each once, joined by commas and `and`; the rest counted where there are more than `most` and one.

    >>> listed("abc"), listed("abcdefg")
    ('a, b and c', 'a, b, c, d and 3 more')
    """
    each = list(dict.fromkeys(items))
    if len(each) > most + 1:
        each = [*each[:most], f"{len(each) - most} more"]
    *first, last = each
    return f"{', '.join(first)} and {last}" if first else last


def counted(number: int, noun: str) -> str:
    """`no plants`, `1 plant`, `3 plants`."""
    return f"{number or 'no'} {noun}{'' if number == 1 else 's'}"


def told(character: str, stage: str) -> str:
    """A character at a stage: `spur length (mature)`."""
    return f"{character} ({stage})" if stage else character


def plants_at(stage: str) -> str:
    """The plants to measure, by their stage: `mature plants`."""
    return f"{stage} plants" if stage and stage != UNSTATED else "plants"


def percent(share: float) -> str:
    """A share in two figures.

    >>> percent(0.3849), percent(0.0421)
    ('38 %', '4.2 %')
    """
    return f"{share * 100:.1f} %" if share < 0.0995 else f"{share * 100:.0f} %"


def pages(work: Work, printed: Iterable[str]) -> str:
    """Where to look in a work: `pages 18 and 26 of Brandow 1934`; the byline alone where no page is recorded."""
    several = [page for page in dict.fromkeys(printed) if page]
    if not several:
        return work.byline
    return f"page{'s' if len(several) > 1 else ''} {listed(several)} of {work.byline}"


def pages_of(treatments: Sequence[Treatment]) -> str:
    """Where to look for treatments of one work."""
    return pages(treatments[0].work, (one.record.page for one in treatments))
