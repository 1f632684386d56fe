"""Directions against scipy and every arc tried in turn; laws of the circle."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from auctorum.determination.places.circular import Arc, arc_holding, beyond, mean_direction, resultant, spread, within

LAWS = settings(deadline=None, max_examples=150)
QUARTERS = st.integers(0, 1439).map(lambda one: one / 4)
SOME = st.lists(QUARTERS, min_size=1, max_size=25)
SHARES = st.sampled_from([0.1, 0.5, 0.6, 0.8, 0.9, 1.0])


def turned_apart(one: float, other: float) -> float:
    """Degrees between two directions, 0 to 180."""
    return abs((one - other + 180) % 360 - 180)


def shortest_of_all(degrees: list[float], share: float) -> float:
    """The width of the shortest arc from any direction to any other that holds enough, counted one by one."""
    wanted = math.ceil(round(share * len(degrees), 9))
    widths = [(end - start) % 360 for start in degrees for end in degrees]
    starts = [start for start in degrees for _ in degrees]
    return min(
        width
        for start, width in zip(starts, widths, strict=True)
        if sum((one - start) % 360 <= width for one in degrees) >= wanted
    )


@LAWS
@given(SOME)
def test_against_scipy(degrees: list[float]) -> None:
    length = abs(np.exp(1j * np.radians(degrees)).mean())
    assert resultant(degrees) == pytest.approx(length, abs=1e-12)
    if length < 1e-6:
        return
    found = mean_direction(degrees)
    assert found is not None and 0 <= found < 360
    assert turned_apart(found, stats.circmean(degrees, high=360)) < 1e-6
    assert spread(degrees) == pytest.approx(stats.circstd(degrees, high=360), abs=1e-5)


@LAWS
@given(SOME, SHARES)
def test_arc_against_every_arc(degrees: list[float], share: float) -> None:
    found = arc_holding(degrees, share)
    assert found.width == shortest_of_all(degrees, share)
    assert sum(within(one, found) for one in degrees) >= share * len(degrees) - 1e-9


@LAWS
@given(SOME, SHARES, QUARTERS)
def test_turning_all_turns_the_arc(degrees: list[float], share: float, turn: float) -> None:
    whole, turned = arc_holding(degrees, share), arc_holding([one + turn for one in degrees], share)
    assert turned.width == whole.width
    back = Arc((turned.start - turn) % 360, (turned.start - turn) % 360 + turned.width)
    assert sum(within(one, back) for one in degrees) >= share * len(degrees) - 1e-9
    if resultant(degrees) > 1e-6:
        assert turned_apart(mean_direction([one + turn for one in degrees]), mean_direction(degrees) + turn) < 1e-6


@LAWS
@given(SOME, SHARES, st.randoms(use_true_random=False))
def test_order_changes_nothing(degrees: list[float], share: float, random) -> None:
    shuffled = random.sample(degrees, len(degrees))
    assert arc_holding(shuffled, share) == arc_holding(degrees, share)
    assert mean_direction(shuffled) == mean_direction(degrees)


@LAWS
@given(SOME, QUARTERS)
def test_one_more_never_narrows_the_arc(degrees: list[float], more: float) -> None:
    whole = arc_holding(degrees)
    larger = arc_holding([*degrees, more])
    assert larger.width >= whole.width
    if within(more, whole):
        assert larger.width == whole.width


@LAWS
@given(SOME, QUARTERS)
def test_beyond_is_the_way_to_the_nearest_point_of_the_arc(degrees: list[float], direction: float) -> None:
    arc = arc_holding(degrees)
    on_it = [arc.start + step / 4 for step in range(int(arc.width * 4) + 1)]
    assert beyond(direction, arc) == pytest.approx(min(turned_apart(direction, one) for one in on_it))


@pytest.mark.parametrize(
    ("degrees", "share", "arc"),
    [
        pytest.param([350, 10], 1.0, Arc(350, 370), id="across-north"),
        pytest.param([90, 270], 1.0, Arc(90, 270), id="opposite"),
        pytest.param([45], 1.0, Arc(45, 45), id="one"),
        pytest.param([-10, 370], 1.0, Arc(350, 370), id="other-turns"),
        pytest.param([160, 170, 180, 10], 0.75, Arc(160, 180), id="three-quarters"),
    ],
)
def test_arcs(degrees: list[float], share: float, arc: Arc) -> None:
    assert arc_holding(degrees, share) == arc


def test_nothing_and_balance() -> None:
    assert mean_direction([]) is None and mean_direction([0, 120, 240]) is None
    assert resultant([]) == 0 and resultant([0, 180]) == pytest.approx(0)
    assert spread([0, 180]) == math.inf and spread([77, 77]) == pytest.approx(0, abs=1e-5)
    assert Arc(350, 370).middle == 0
    assert within(20, Arc(350, 370), slack=10) and not within(21, Arc(350, 370), slack=10)


@pytest.mark.parametrize(("degrees", "share"), [([], 1.0), ([5], 0.0), ([5], 1.1)])
def test_no_arc(degrees: list[float], share: float) -> None:
    with pytest.raises(ValueError, match=r"no direction|a share"):
        arc_holding(degrees, share)
