"""Do two observers, or two instruments, measure differently? Plants are compared within a site and a named taxon only.

One group of plants: the rank-sum test (H. B. Mann & D. R. Whitney, Annals of Mathematical Statistics 18 (1947): 50–60),
the median of all differences and the interval that belongs to it (J. L. Hodges & E. L. Lehmann, Annals of Mathematical
Statistics 34 (1963): 598–611). Several groups are weighted as P. van Elteren does (Bulletin of the International
Statistical Institute 37 (1960): 351–361). All from memory.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from statistics import NormalDist

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Pair = tuple[Sequence[float], Sequence[float]]  # the figures of the first and of the second, of one site and taxon


@dataclass(frozen=True, slots=True)
class Difference:
    """By how much the first measures more than the second.

    `median` is None where no group of plants holds figures of both; `low` and `high` are None where so few plants
    bound the difference on that side by nothing. `p` is the probability of ranks as unequal, or more, if both measure
    alike; 1 where nothing can be said.
    """

    first: int  # figures of the first that could be compared
    second: int
    median: float | None
    low: float | None
    high: float | None
    p: float


@dataclass(frozen=True, slots=True)
class _Ranks:
    """Weighted differences in ascending order, and the test statistic: how far the first is above balance."""

    differences: Floats
    weights: Floats
    above: float
    variance: float  # with ties as they are
    untied: float  # the variance if there were no ties
    correction: float  # for continuity, half the smallest step


def difference(first: Sequence[float], second: Sequence[float], level: float = 0.95) -> Difference:
    """The difference of two samples, positive where the first is larger.

    >>> difference([31.0, 32.5, 34.0, 36.0, 39.0], [26.0, 27.0, 29.5, 30.0, 33.0]).median
    5.5
    """
    return difference_within([(first, second)], level)


def difference_within(pairs: Iterable[Pair], level: float = 0.95) -> Difference:
    """The difference within groups of plants that are alike but for who, or what, measured them.

    Each group counts with the weight 1 / (n + 1) of its n plants. The median difference is that shift at which the two
    are balanced, the interval holds the shifts that a test at `level` would not reject; p is by the normal curve with
    half a step of continuity, and corrected for ties. Works on all pairs of figures within a group, a few thousand by
    a few thousand. Raises ValueError for a level not between 0 and 1.
    """
    if not 0 < level < 1:
        raise ValueError(f"a level lies between 0 and 1, not at {level}")
    usable = [(np.asarray(one, dtype=float), np.asarray(other, dtype=float)) for one, other in pairs]
    usable = [(one, other) for one, other in usable if len(one) and len(other)]
    if not usable:
        return Difference(0, 0, None, None, None, 1.0)
    ranks = _ranks(usable)
    low, high = _interval(ranks, NormalDist().inv_cdf(0.5 + level / 2))
    return Difference(
        sum(len(one) for one, _ in usable),
        sum(len(other) for _, other in usable),
        _weighted_median(ranks),
        low,
        high,
        _p(ranks),
    )


def _ranks(groups: Sequence[tuple[Floats, Floats]]) -> _Ranks:
    differences, weights, smallest = [], [], math.inf
    above = variance = untied = 0.0
    for one, other in groups:
        n, pairs = len(one) + len(other), len(one) * len(other)
        weight = 1 / (n + 1)
        between = (one[:, None] - other[None, :]).ravel()
        above += weight * (np.count_nonzero(between > 0) + np.count_nonzero(between == 0) / 2 - pairs / 2)
        _, tied = np.unique(np.concatenate([one, other]), return_counts=True)
        lost = float((tied.astype(float) ** 3 - tied).sum()) / (n * (n - 1))
        variance += weight**2 * pairs / 12 * (n + 1 - lost)
        untied += weight**2 * pairs / 12 * (n + 1)
        differences.append(between)
        weights.append(np.full(pairs, weight))
        smallest = min(smallest, weight / 2)
    joined = np.concatenate(differences)
    order = np.argsort(joined, kind="stable")
    return _Ranks(joined[order], np.concatenate(weights)[order], above, variance, untied, smallest)


def _weighted_median(ranks: _Ranks) -> float:
    """The difference with half of the weight below and above it, halfway between two where they share it."""
    passed = np.cumsum(ranks.weights)
    half, fuzz = passed[-1] / 2, 1e-9 * passed[-1]
    low = int(np.argmax(passed >= half - fuzz))
    high = int(np.argmax(passed > half + fuzz))
    return float(ranks.differences[low] + ranks.differences[high]) / 2


def _interval(ranks: _Ranks, deviations: float) -> tuple[float | None, float | None]:
    """The least and the greatest shift that leave the statistic within so many standard deviations of balance."""
    passed = np.cumsum(ranks.weights)
    reach = deviations * math.sqrt(ranks.untied) + ranks.correction
    half, fuzz = passed[-1] / 2, 1e-9 * passed[-1]
    if reach >= half - fuzz:
        return None, None
    low = int(np.argmax(passed >= half - reach - fuzz))
    high = int(np.argmax(passed > half + reach + fuzz))
    return float(ranks.differences[low]), float(ranks.differences[high])


def _p(ranks: _Ranks) -> float:
    if ranks.variance <= 0:
        return 1.0  # all figures are equal
    score = (abs(ranks.above) - ranks.correction) / math.sqrt(ranks.variance)
    return min(1.0, math.erfc(score / math.sqrt(2)))
