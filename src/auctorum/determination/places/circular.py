"""Directions: their mean, how closely they agree, and the shortest arc that holds them; degrees clockwise from north.

N. I. Fisher, Statistical Analysis of Circular Data (1993): chapter 2 (from memory).
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from auctorum.characters.directions import TURN

_NOWHERE = 1e-9  # a resultant as short as this is rounding: the directions cancel out


@dataclass(frozen=True, slots=True)
class Arc:
    """The directions clockwise from `start` (0 to below 360) to `end`; across north the end lies above 360."""

    start: float
    end: float

    @property
    def width(self) -> float:
        """Degrees from one end to the other."""
        return self.end - self.start

    @property
    def middle(self) -> float:
        """The direction halfway, 0 to below 360."""
        return ((self.start + self.end) / 2) % TURN


def mean_direction(degrees: Iterable[float]) -> float | None:
    """The direction of the sum of unit vectors, 0 to below 360; None where there is none or they cancel out.

    >>> round(mean_direction([350.0, 20.0]), 6)
    5.0
    """
    east, north, n = _sums(degrees)
    if n == 0 or math.hypot(east, north) / n < _NOWHERE:
        return None
    return math.degrees(math.atan2(east, north)) % TURN % TURN  # twice: a tiny negative angle is rounded up to 360


def resultant(degrees: Iterable[float]) -> float:
    """The mean length of the sum of unit vectors: 1 where all directions agree, 0 where they cancel out or none is."""
    east, north, n = _sums(degrees)
    return min(1.0, math.hypot(east, north) / n) if n else 0.0


def spread(degrees: Iterable[float]) -> float:
    """Circular standard deviation in degrees, sqrt(-2 ln R) of the resultant R; infinite where they cancel out.

    >>> round(spread([80.0, 100.0]), 2)
    10.03
    """
    length = resultant(degrees)
    return math.degrees(math.sqrt(-2 * math.log(length))) if length >= _NOWHERE else math.inf


def arc_holding(degrees: Iterable[float], share: float = 1.0) -> Arc:
    """The shortest arc that holds at least that share of the directions; of equally short ones the first from north.

    Raises ValueError where there is no direction, and for a share that is not above 0 and at most 1.

    >>> arc_holding([350.0, 10.0, 90.0]), arc_holding([350.0, 10.0, 90.0], 0.6)
    (Arc(start=350.0, end=450.0), Arc(start=350.0, end=370.0))
    """
    if not 0 < share <= 1:
        raise ValueError(f"a share lies above 0 and goes up to 1, not {share}")
    sorted_once = sorted(one % TURN % TURN for one in degrees)
    n = len(sorted_once)
    if not n:
        raise ValueError("no direction, no arc")
    held = min(n, max(1, math.ceil(share * n - _NOWHERE)))
    twice = [*sorted_once, *(one + TURN for one in sorted_once)]
    first = min(range(n), key=lambda place: (twice[place + held - 1] - twice[place], place))
    return Arc(twice[first], twice[first + held - 1])


def within(direction: float, arc: Arc, slack: float = 0.0) -> bool:
    """Whether a direction lies on the arc, or at most `slack` degrees beside it."""
    return beyond(direction, arc) <= slack


def beyond(direction: float, arc: Arc) -> float:
    """Degrees from the nearer end of the arc to a direction outside, at most 180; 0 for one that lies on it.

    >>> beyond(60.0, Arc(350.0, 370.0)), beyond(5.0, Arc(350.0, 370.0))
    (50.0, 0.0)
    """
    after_start = (direction - arc.start) % TURN
    if after_start <= arc.width:
        return 0.0
    return min(after_start - arc.width, TURN - after_start)


def _sums(degrees: Iterable[float]) -> tuple[float, float, int]:
    """The sums of the eastward and the northward parts, and how many directions there are."""
    angles = [math.radians(one) for one in degrees]
    return math.fsum(map(math.sin, angles)), math.fsum(map(math.cos, angles)), len(angles)
