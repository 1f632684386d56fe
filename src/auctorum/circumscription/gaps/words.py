"""Words that the kinds of gaps share."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from auctorum.corpus.model import Treatment, Work
from auctorum.corpus.readings import UNSTATED

MOST = 4  # things named in a sentence before the rest are counted


def listed(items: Iterable[str], most: int = MOST) -> str:
    """Each once, joined by commas and `and`; the rest counted where there are more than `most` and one.

    What holds commas itself is parted by semicolons, or has one before the `and`.

    >>> listed("abc"), listed("abcdefg"), listed(["x, wide", "y"]), listed(["x, wide", "y", "z"])
    ('a, b and c', 'a, b, c, d and 3 more', 'x, wide, and y', 'x, wide; y; and z')
    """
    each = list(dict.fromkeys(items))
    if len(each) > most + 1:
        each = [*each[:most], f"{len(each) - most} more"]
    *first, last = each
    if not any("," in one for one in first):
        return f"{', '.join(first)} and {last}" if first else last
    return f"{'; '.join(first)}{',' if len(first) == 1 else ';'} and {last}"


def plants_at(stage: str) -> str:
    """The plants to measure, by their stage: `mature plants`."""
    return f"{stage} plants" if stage and stage != UNSTATED else "plants"


def pages(work: Work, printed: Iterable[str]) -> str:
    """Where to look in a work: `pages 18 and 26 of Brandow 1934`; the byline alone where no page is recorded."""
    several = [page for page in dict.fromkeys(printed) if page]
    if not several:
        return work.byline
    return f"page{'s' if len(several) > 1 else ''} {listed(several)} of {work.byline}"


def pages_of(treatments: Sequence[Treatment]) -> str:
    """Where to look for treatments of one work."""
    return pages(treatments[0].work, (one.record.page for one in treatments))
