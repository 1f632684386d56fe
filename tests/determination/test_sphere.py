"""Places on the globe against the haversine formula, and across the 180th meridian and the poles."""

from __future__ import annotations

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from auctorum.determination.places.sphere import EARTH_KM, Circle, Point, centre_and_radius, distance_km

LAWS = settings(deadline=None, max_examples=150)
POINTS = st.builds(Point, st.floats(-90, 90), st.floats(-180, 180))


def haversine_km(one: Point, other: Point) -> float:
    """R. W. Sinnott, Virtues of the haversine, Sky and Telescope 68 (1984): 159 (from memory)."""
    (a, b), (c, d) = (tuple(map(math.radians, point)) for point in (one, other))
    h = math.sin((c - a) / 2) ** 2 + math.cos(a) * math.cos(c) * math.sin((d - b) / 2) ** 2
    return 2 * EARTH_KM * math.asin(math.sqrt(min(1.0, h)))


@LAWS
@given(POINTS, POINTS)
def test_against_the_haversine(one: Point, other: Point) -> None:
    """Near the antipodes the haversine loses digits, hence the metre of tolerance there."""
    far = haversine_km(one, other) > 20_000
    assert distance_km(one, other) == pytest.approx(haversine_km(one, other), rel=0, abs=1.0 if far else 1e-3)


@pytest.mark.parametrize(
    ("one", "other", "turns"),
    [
        pytest.param(Point(0, 0), Point(0, 90), 0.25, id="quarter-of-the-equator"),
        pytest.param(Point(90, 17), Point(-90, 100), 0.5, id="pole-to-pole"),
        pytest.param(Point(90, 17), Point(90, -100), 0.0, id="one-pole"),
        pytest.param(Point(0, 180), Point(0, -180), 0.0, id="one-meridian"),
        pytest.param(Point(80, 0), Point(80, 180), 20 / 360, id="over-the-pole"),
    ],
)
def test_known_distances(one: Point, other: Point, turns: float) -> None:
    assert distance_km(one, other) == pytest.approx(turns * 2 * math.pi * EARTH_KM, abs=1e-6)


@pytest.mark.parametrize(
    ("points", "centre", "degrees"),
    [
        pytest.param([Point(0, 179), Point(0, -179)], Point(0, 180), 1, id="180th-meridian"),
        pytest.param([Point(89, lon) for lon in (0, 90, 180, -90)], Point(90, 0), 1, id="north-pole"),
        pytest.param([Point(-89, lon) for lon in (0, 120, -120)], Point(-90, 0), 1, id="south-pole"),
        pytest.param([Point(-44, 12)], Point(-44, 12), 0, id="one"),
    ],
)
def test_centres(points: list[Point], centre: Point, degrees: float) -> None:
    found = centre_and_radius(points)
    assert found is not None
    assert distance_km(found.centre, centre) < 1e-6
    assert found.radius_km == pytest.approx(math.radians(degrees) * EARTH_KM, abs=1e-6)


@LAWS
@given(st.lists(POINTS, min_size=1, max_size=12), st.floats(-360, 360))
def test_it_holds_all_and_turns_with_the_globe(points: list[Point], turn: float) -> None:
    found = centre_and_radius(points)
    turned = centre_and_radius([Point(lat, lon + turn) for lat, lon in reversed(points)])
    assume(found is not None and turned is not None)
    assert all(found.beyond_km(point) == 0 for point in points)
    assert found.radius_km == max(distance_km(found.centre, point) for point in points)
    assert turned.centre.latitude == pytest.approx(found.centre.latitude, abs=1e-4)


def test_the_centre_is_nearest_to_all_in_the_sum_of_squared_chords() -> None:
    """What a mean of unit vectors is: of a grid of other centres none is nearer."""
    points = [Point(10, 170), Point(14, -175), Point(2, 178), Point(30, 160)]
    found = centre_and_radius(points)
    assert found is not None

    def chords(centre: Point) -> float:
        return sum(math.sin(distance_km(centre, point) / EARTH_KM / 2) ** 2 for point in points)

    grid = [Point(lat / 2, lon / 2) for lat in range(61) for lon in range(300, 381)]
    assert chords(found.centre) <= min(map(chords, grid))


def test_no_centre() -> None:
    assert centre_and_radius([]) is None
    assert centre_and_radius([Point(0, 0), Point(0, 180)]) is None
    assert Circle(Point(0, 0), 100.0).beyond_km(Point(0, 1)) == pytest.approx(11.195, abs=1e-3)
