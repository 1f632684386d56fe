"""How many plants: counted from a threshold on, and expected where measurement error leaves some of them open."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Iterable, Sequence
from fractions import Fraction
from statistics import NormalDist
from typing import NamedTuple, TypeVar

import numpy as np
import numpy.typing as npt

Value = TypeVar("Value", float, Fraction)

_EXACT_UP_TO = 2000  # open plants whose counts are reckoned one by one; above, the normal curve stands for them


class Expected(NamedTuple):
    """A number of plants: its mean, and the ends between which it lies at the level asked for."""

    mean: float
    low: int
    high: int


def expected_count(chances: Iterable[float], level: float = 0.95) -> Expected:
    """How many plants fit, each with a chance of its own and independent of the others.

    The mean is the sum of the chances. Fewer than `low` fit with a probability of at most (1 - level) / 2, more than
    `high` likewise: exactly, from the distribution of a sum of unequal trials, up to 2,000 plants whose chance is
    neither 0 nor 1; above that by the normal curve with half a plant of continuity. Raises ValueError for a chance
    outside 0 to 1 and a level that is not between.

    >>> expected_count([1.0, 1.0, 0.5, 0.5, 0.0])
    Expected(mean=3.0, low=2, high=4)
    """
    all_chances = tuple(chances)
    if not 0 < level < 1 or any(not 0 <= one <= 1 for one in all_chances):
        raise ValueError("chances lie from 0 to 1, a level between them")
    sure = sum(one == 1 for one in all_chances)
    open_ones = [one for one in all_chances if 0 < one < 1]
    ends = _exact_ends if len(open_ones) <= _EXACT_UP_TO else _normal_ends
    low, high = ends(open_ones, (1 - level) / 2)
    return Expected(math.fsum(all_chances), sure + low, sure + high)


def count_chances(chances: Sequence[float]) -> npt.NDArray[np.float64]:
    """The probability of each count from 0 to all of them; every plant is added to the counts of those before it."""
    found = np.zeros(len(chances) + 1)
    found[0] = 1.0
    for place, chance in enumerate(chances, 1):
        found[1 : place + 1] = found[1 : place + 1] * (1 - chance) + found[:place] * chance
        found[0] *= 1 - chance
    return found


def counts_from(values: Iterable[Value], thresholds: Iterable[Value]) -> tuple[int, ...]:
    """For each threshold, in the order given, the number of values at or above it; linear after sorting.

    >>> counts_from([22.0, 25.0, 25.0, 31.0], [25.0, 25.5, 40.0])
    (3, 1, 0)
    """
    ascending = sorted(values)
    return tuple(len(ascending) - bisect_left(ascending, threshold) for threshold in thresholds)


def thresholds_of(values: Iterable[Value]) -> tuple[Value, ...]:
    """Every threshold at which the count changes, ascending: the distinct values; above the last no plant is left."""
    return tuple(sorted(set(values)))


def _exact_ends(chances: Sequence[float], tail: float) -> tuple[int, int]:
    probabilities = count_chances(chances)
    fewer, more = np.cumsum(probabilities), np.cumsum(probabilities[::-1])
    return int(np.argmax(fewer > tail)), len(chances) - int(np.argmax(more > tail))


def _normal_ends(chances: Sequence[float], tail: float) -> tuple[int, int]:
    mean, variance = math.fsum(chances), math.fsum(one * (1 - one) for one in chances)
    reach = -NormalDist().inv_cdf(tail) * math.sqrt(variance)
    low, high = math.ceil(mean - reach - 0.5), math.floor(mean + reach + 0.5)
    return max(0, low), min(len(chances), high)
