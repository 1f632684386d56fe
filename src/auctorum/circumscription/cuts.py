"""The threshold that parts two kinds of plants best on one character, as a handy figure."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor

from auctorum.circumscription.density import Density, crossings

# A threshold rounder than the best one is preferred while it errs by no more than this beyond it.
TOLERANCE = 0.003
# Figures to round to, the roundest first.
STEPS = tuple(Fraction(digit) * Fraction(10) ** power for power in range(6, -7, -1) for digit in (5, 2, 1))
# A stretch without loss is a gap to stay in the middle of from this part of all that the two take up; one that is
# narrower lies between the tails that were put to the figures, and its digits would be nobody's.
_A_GAP = 50
_ALIKE = 1e-12  # losses that differ by no more are the same
_HALF = Fraction(1, 2)
Loss = Callable[[float], float]


@dataclass(frozen=True, slots=True)
class Cut:
    """A threshold: plants below it go to one side, plants from it on to the other.

    `lost_below` is the part of the lower kind that lies at or above it, `lost_above` that of the upper kind below it.
    """

    value: Fraction
    lost_below: float
    lost_above: float

    @property
    def error(self) -> float:
        """Expected error where a plant is as likely of the one kind as of the other, 0 to 0.5."""
        return (self.lost_below + self.lost_above) / 2


def best_cut(lower: Density, upper: Density, *, tolerance: float = TOLERANCE) -> Cut:
    """The threshold that loses least of both, `lower` expected below it.

    Where a wide stretch of thresholds loses least (a gap), the roundest of its middle half; else the roundest near the
    best that errs by no more than `tolerance` beyond it. Both kinds count alike, however common they are.
    """
    return cut_at(lower, upper, _best(_error(lower, upper), crossings(lower, upper), tolerance, STEPS))


def best_count_cut(lower: Density, upper: Density, *, tolerance: float = TOLERANCE) -> Cut:
    """As `best_cut`, for counts: 4 means that plants with 4 or more go up, those with 3 or fewer down.

    A count of 4 takes up 3½ to 4½ of the densities (see `density`).
    """
    places = {round_(place + 0.5) for place in crossings(lower, upper) for round_ in (floor, ceil)}
    steps = [step for step in STEPS if step >= 1]
    error = _error(lower, upper)
    best = _best(lambda value: error(value - 0.5), sorted(map(float, places)), tolerance, steps)
    return count_cut_at(lower, upper, Fraction(floor(best)))


def cut_at(lower: Density, upper: Density, value: Fraction) -> Cut:
    """The cut at a given threshold."""
    at = float(value)
    return Cut(value, 1 - lower.below(at), upper.below(at))


def count_cut_at(lower: Density, upper: Density, value: Fraction) -> Cut:
    """The cut of counts from a given number on."""
    found = cut_at(lower, upper, value - _HALF)
    return Cut(value, found.lost_below, found.lost_above)


def _error(lower: Density, upper: Density) -> Loss:
    """The error of a threshold, where both kinds are as likely."""
    return lambda at: (1 - lower.below(at) + upper.below(at)) / 2


def _best(error: Loss, places: Sequence[float], tolerance: float, steps: Sequence[Fraction]) -> Fraction:
    """The roundest threshold; `places`, rising, are those between which the error has no least."""
    errors = [error(place) for place in places]
    least = min(errors)
    first = last = errors.index(least)
    while first > 0 and errors[first - 1] <= least + _ALIKE:
        first -= 1
    while last + 1 < len(errors) and errors[last + 1] <= least + _ALIKE:
        last += 1
    middle, width = (places[first] + places[last]) / 2, places[last] - places[first]
    gapes = width * _A_GAP > places[-1] - places[0]
    exact = Fraction(middle)
    for step in steps:
        rounded = round(exact / step) * step
        at = float(rounded)
        if abs(at - middle) * 4 <= width if gapes else error(at) <= least + tolerance:
            return rounded
    return exact.limit_denominator(10**9)
