"""Places on the globe as directions from its centre: right across the 180th meridian and at the poles.

The globe is taken as a sphere of the mean radius 6371.0088 km (H. Moritz, Geodetic Reference System 1980, Journal of
Geodesy 74 (2000): 128–133, from memory); distances are true to about half a per cent.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple

EARTH_KM = 6371.0088
_NOWHERE = 1e-9  # a sum of directions as short as this is rounding: they cancel out


class Point(NamedTuple):
    """Degrees; north and east count upwards."""

    latitude: float
    longitude: float


@dataclass(frozen=True, slots=True)
class Circle:
    """The places up to `radius_km` along the globe from a centre."""

    centre: Point
    radius_km: float

    def beyond_km(self, point: Point) -> float:
        """How far outside the circle a place lies; 0 inside."""
        return max(0.0, distance_km(self.centre, point) - self.radius_km)


def distance_km(one: Point, other: Point) -> float:
    """Great-circle distance, exact for near and for opposite places alike (the angle between two vectors by atan2).

    >>> round(distance_km(Point(0.0, 179.5), Point(0.0, -179.5)), 1)
    111.2
    """
    first, second = _vector(one), _vector(other)
    cross = (
        first[1] * second[2] - first[2] * second[1],
        first[2] * second[0] - first[0] * second[2],
        first[0] * second[1] - first[1] * second[0],
    )
    dot = sum(a * b for a, b in zip(first, second, strict=True))
    return EARTH_KM * math.atan2(math.hypot(*cross), dot)


def centre_and_radius(points: Iterable[Point]) -> Circle | None:
    """The mean direction of the places, and the distance of the farthest of them from it.

    None where there is no place, or where they lie all round the globe and cancel out.
    """
    places = tuple(points)
    parts = [math.fsum(part) for part in zip(*map(_vector, places), strict=True)]
    if not places or math.hypot(*parts) / len(places) < _NOWHERE:
        return None
    x, y, z = parts
    centre = Point(math.degrees(math.atan2(z, math.hypot(x, y))), math.degrees(math.atan2(y, x)))
    return Circle(centre, max(distance_km(centre, place) for place in places))


def _vector(point: Point) -> tuple[float, float, float]:
    latitude, longitude = math.radians(point.latitude), math.radians(point.longitude)
    return (
        math.cos(latitude) * math.cos(longitude),
        math.cos(latitude) * math.sin(longitude),
        math.sin(latitude),
    )
