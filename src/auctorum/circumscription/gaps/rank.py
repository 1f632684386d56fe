"""How much of what the knowledge base now says could change with the answer: one number from 0 to 1 for each gap.

    rank = base x use, and twice that for a focal taxon or name; never more than 1

`use` is the share of the works on the genus that accept the taxon (of a pair: the smaller of the two), or that use the
name. The base depends on the kind:

    pair        twice the error of the best character: 1 where nothing tells the two apart, 0 where one always does
    untold      the value of the character among the sisters x the share of these taxa for which it is missing
    silent      the value of the character / (1 + number of works that give it)
    unclear     the same, for the statement that is not clear
    name        1/2; 1/4 where the type is partly known
    conflict    the share of the weight on the smaller side x the part of what is said that is not common to both
                x the share of the wanted plants not yet measured
    repetition  the part of the independent authors of a character that would be lost
    criterion   the share of the wanted works, or plants, that is missing
    site        1 / (1 + number of sites visited); use is 1

The value of a character is 1 - 2 x the error with which it parts the taxon from a sister, the best of these; 1/2 where
nobody can tell. A character of the place where it grows has half of that, since it tells nothing of a plant in the
hand. A gap made of several takes the highest of their ranks. This is a judgement of ours and no measurement: it is
simple, and each part of it only moves the rank one way.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import lru_cache
from itertools import count

from auctorum.circumscription.gaps.model import Gap
from auctorum.circumscription.intervals import wilson

PARTS_WELL = 0.15  # error up to which a character is said to separate
OF_HABITAT = 0.5  # part of its value that a character of the place keeps
UNKNOWN_VALUE = 0.5  # of a character of which nobody can tell yet whether it parts anything
NAME, PARTLY_KNOWN = 0.5, 0.25
FOCAL = 2
WIDEST = 0.10  # half width of the 95 % interval that is wanted


def rank(base: float, use: float, *, focal: bool) -> float:
    """The rank of a gap; all of 0 to 1.

    >>> rank(0.4, 0.5, focal=False), rank(0.4, 0.5, focal=True), rank(0.9, 0.9, focal=True)
    (0.2, 0.4, 1.0)
    """
    return min(1.0, base * use * (FOCAL if focal else 1))


def value_of(error: float) -> float:
    """What a character with that error is worth, 0 to 1.

    >>> value_of(0.5), value_of(0.0)
    (0.0, 1.0)
    """
    return 1 - 2 * error


def one_more(value: float, voices: int) -> float:
    """What one more voice beside so many could change, of a character of that value.

    >>> one_more(0.9, 2)
    0.3
    """
    return value / (voices + 1)


def missing(there: int, wanted: int) -> float:
    """The share of the wanted that is missing.

    >>> missing(1, 4), missing(7, 4)
    (0.75, 0.0)
    """
    return max(0.0, 1 - there / wanted)


@lru_cache(maxsize=1024)
def plants_wanted(covered: int, plants: int) -> int:
    """How many plants in all give a Wilson interval of at most ±10 points, where `covered` of `plants` lie on a side.

    The share is expected at the middle of the present interval, so that a few plants that agree promise nothing yet.

    >>> plants_wanted(0, 0), plants_wanted(50, 100), plants_wanted(1, 1)
    (93, 100, 89)
    """
    if _half_width(covered, plants) <= WIDEST:
        return plants
    expected = sum(wilson(covered, plants)) / 2
    more = (number for number in count(plants + 1) if _half_width(round(expected * number), number) <= WIDEST)
    return next(more)


def _half_width(covered: int, plants: int) -> float:
    low, high = wilson(covered, plants)
    return (high - low) / 2


def ranked(gaps: Iterable[Gap]) -> tuple[Gap, ...]:
    """Gaps from the one whose answer changes most; equal ones by what they are about."""
    return tuple(sorted(gaps, key=lambda gap: (-round(gap.rank, 9), gap.question, gap.kind)))
