"""Gap or spectrum: the dip, the greatest distance of the measured distribution from the nearest one with a single peak.

J. A. Hartigan & P. M. Hartigan, The dip test of unimodality, Annals of Statistics 13 (1985): 70–84 (from memory). A
distribution with one peak is convex below the peak and concave above it, as a curve of counts up to each value.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
import numpy.typing as npt

from auctorum.determination.counting.dip_quantiles import LEVELS, TEN_THOUSANDTHS

Floats = npt.NDArray[np.float64]

SURE = 0.05  # a dip that a single peak gives more seldom than this is a gap (common practice, no source)
# From here on a gap between two equal groups, four standard deviations apart, is found in at least half of the surveys;
# simulated by examples/dip_quantiles.py.
ENOUGH = 60
_SAME = 1e-4  # the table is rounded to this


@dataclass(frozen=True, slots=True)
class DipTest:
    """What n measured plants tell about a gap. `p` is the share of surveys in which plants of one peak dip as much."""

    n: int
    dip: float
    p: float
    enough: bool  # whether a gap as between two plainly different groups would probably have been found

    @property
    def finding(self) -> str:
        """`gap`, `spectrum` or `cannot tell`: a gap may be found among few plants, but none is ruled out by few."""
        if self.p < SURE:
            return "gap"
        return "spectrum" if self.enough else "cannot tell"


def dip_test(values: Iterable[float], step: float = 0.0) -> DipTest:
    """The dip of the values, and how seldom plants of a single peak dip as much.

    With the `step` to which figures were read, equal ones are first spread over their cell: whole millimetres would
    else look like peaks with gaps between them. Raises ValueError as `dip`, and for a step below 0.

    >>> dip_test([1.0, 2.0, 3.0]).finding
    'cannot tell'
    """
    if step < 0:
        raise ValueError(f"a step of {step} is below 0")
    sample = tuple(values)
    found = dip(spread_ties(sample, step) if step else sample)
    return DipTest(len(sample), found, dip_p(found, len(sample)), len(sample) >= ENOUGH)


def dip_p(found: float, n: int) -> float:
    """The share of samples of n uniform values whose dip is at least as large; 0.001 where it is that or less.

    From the simulated quantiles of sqrt(n) times the dip, between two sizes by the distance in 1 / sqrt(n).
    """
    row, scaled = _quantiles(n), math.sqrt(n) * found
    if n < min(TEN_THOUSANDTHS) or scaled <= row[0] + _SAME:
        return 1.0
    return float(1 - np.interp(scaled, row, LEVELS))


def _quantiles(n: int) -> Floats:
    """The row of the table for n plants; beyond its last size the last row, since it hardly changes any more."""
    sizes = np.array(sorted(TEN_THOUSANDTHS, reverse=True))
    table = np.array([TEN_THOUSANDTHS[size] for size in sizes.tolist()]) / 10_000
    place = float(np.interp(1 / math.sqrt(max(n, 1)), 1 / np.sqrt(sizes), np.arange(len(sizes))))
    below, share = int(place), place % 1
    above = min(below + 1, len(sizes) - 1)
    return np.asarray(table[below] * (1 - share) + table[above] * share)


class _Steps(NamedTuple):
    """The curve of counts: at each distinct value it jumps from `below` to `upto`."""

    at: Floats
    below: Floats
    upto: Floats


def dip(values: Iterable[float]) -> float:
    """Hartigan's dip, from 0 to a quarter; at least 1/(2n) where two values differ, 0 where all are equal or none is.

    Equal values count as a true jump of the distribution, which a peak may hold and nothing else; spread values that
    are equal by rounding before (`spread_ties`). Linear after sorting for the usual samples. Raises ValueError for a
    value that is no finite number.

    >>> dip([1, 2, 3, 4]), dip([0, 0, 0, 9, 9, 9])
    (0.125, 0.25)
    """
    sample = np.sort(np.fromiter(values, dtype=np.float64))
    if not np.isfinite(sample).all():
        raise ValueError("the dip is that of finite values")
    at, counts = np.unique(sample, return_counts=True)
    if len(at) < 2:
        return 0.0
    upto = np.cumsum(counts).astype(np.float64)
    return _twice_the_dip(_Steps(at, upto - counts, upto)) / (2 * len(sample))


def spread_ties(values: Iterable[float], step: float) -> tuple[float, ...]:
    """The values in ascending order, equal ones spread evenly over the cell of width `step` that was rounded to them.

    >>> spread_ties([7, 5, 5], 1.0)
    (4.75, 5.25, 7.0)
    """
    at, counts = np.unique(np.fromiter(values, dtype=np.float64), return_counts=True)
    spread = [
        value + step * ((place + 0.5) / count - 0.5)
        for value, count in zip(at.tolist(), counts.tolist(), strict=True)
        for place in range(count)
    ]
    return tuple(sorted(spread))


def _twice_the_dip(steps: _Steps) -> float:
    """The widest vertical distance, in plants, between a curve outside its modal interval and its convex or concave
    hull: half of it is what the nearest curve with one peak must differ by.

    The modal interval shrinks from the whole towards the place where the two hulls lie farthest apart, for as long as
    they lie farther apart there than the curve is from them outside.
    """
    before = _hull(steps.at, steps.below)
    after = [len(before) - 1 - place for place in _hull(-steps.at[::-1], -steps.upto[::-1])][::-1]
    first, last, widest = 0, len(steps.at) - 1, 0.0
    while first < last:
        lower, upper = _chain(before, last, first)[::-1], _chain(after, first, last)
        apart, new_first, new_last = _farthest(steps, lower, upper)
        if apart <= widest:
            break
        widest = max(
            widest,
            _outside(steps.at, steps.below, steps.upto, lower, first, new_first),
            _outside(-steps.at[::-1], -steps.upto[::-1], -steps.below[::-1], *_mirrored(upper, last, new_last, steps)),
        )
        first, last = new_first, new_last
    return widest


def _hull(at: Floats, height: Floats) -> list[int]:
    """For each point the one before it on the greatest convex minorant of the points up to it; the first is its own."""
    x, y = at.tolist(), height.tolist()
    before = [0] * len(x)
    touching: list[int] = []
    for new in range(len(x)):
        while len(touching) > 1:
            last, older = touching[-1], touching[-2]
            if (y[new] - y[last]) * (x[last] - x[older]) > (y[last] - y[older]) * (x[new] - x[last]):
                break
            touching.pop()
        before[new] = touching[-1] if touching else new
        touching.append(new)
    return before


def _chain(neighbour: Sequence[int], start: int, end: int) -> list[int]:
    """The points of a hull from one of them to another."""
    found = [start]
    while found[-1] != end:
        found.append(neighbour[found[-1]])
    return found


def _farthest(steps: _Steps, lower: Sequence[int], upper: Sequence[int]) -> tuple[float, int, int]:
    """The widest gap between two hulls, and the points on the lower and the upper hull that close it in."""
    convex = np.interp(steps.at[upper], steps.at[lower], steps.below[lower])
    concave = np.interp(steps.at[lower], steps.at[upper], steps.upto[upper])
    under, over = concave - steps.below[lower], steps.upto[upper] - convex
    if under.max() >= over.max():
        point = lower[int(under.argmax())]
        return float(under.max()), point, upper[int(np.searchsorted(upper, point))]
    point = upper[int(over.argmax())]
    return float(over.max()), lower[int(np.searchsorted(lower, point, side="right")) - 1], point


def _outside(at: Floats, below: Floats, upto: Floats, lower: Sequence[int], first: int, end: int) -> float:
    """How far the curve rises above its convex hull from `first` to before `end`; 0 where that is nowhere."""
    if first == end:
        return 0.0
    hull = np.interp(at[first:end], at[lower], below[lower])
    return float((upto[first:end] - hull).max())


def _mirrored(upper: Sequence[int], last: int, end: int, steps: _Steps) -> tuple[list[int], int, int]:
    """The concave hull above a peak as the convex hull below one, for the curve turned by half a circle."""
    top = len(steps.at) - 1
    return [top - place for place in reversed(upper)], top - last, top - end
