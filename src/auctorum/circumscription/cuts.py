"""The threshold that parts two kinds of plants best on one character, as a handy figure."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from auctorum.circumscription.density import Density, crossings

# A threshold rounder than the best one is preferred while it errs by no more than this beyond it.
TOLERANCE = 0.003
_STEPS = tuple(Fraction(digit) * Fraction(10) ** power for power in range(6, -7, -1) for digit in (5, 2, 1))


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
    """The threshold that loses least of both, `lower` expected below it; where several do, the roundest in the middle.

    Both kinds count alike, however common they are.
    """
    places = crossings(lower, upper)
    losses = [_loss(lower, upper, place) for place in places]
    least = min(losses)
    first = losses.index(least)
    last = first
    while last + 1 < len(losses) and losses[last + 1] <= least + 1e-12:
        last += 1
    middle = (places[first] + places[last]) / 2
    return cut_at(lower, upper, _handy(lower, upper, middle, least + 2 * tolerance))


def cut_at(lower: Density, upper: Density, value: Fraction) -> Cut:
    """The cut at a given threshold."""
    at = float(value)
    return Cut(value, 1 - lower.below(at), upper.below(at))


def _loss(lower: Density, upper: Density, value: float) -> float:
    return 1 - lower.below(value) + upper.below(value)


def _handy(lower: Density, upper: Density, value: float, allowed: float) -> Fraction:
    """The roundest figure near the value that loses no more than allowed."""
    for step in _STEPS:
        rounded = round(Fraction(value) / step) * step
        if _loss(lower, upper, float(rounded)) <= allowed:
            return rounded
    return Fraction(value).limit_denominator(10**9)
