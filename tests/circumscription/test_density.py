"""Densities of straight pieces against numeric integration, cases worked on paper, and their laws."""

from __future__ import annotations

import warnings
from fractions import Fraction
from itertools import pairwise
from statistics import NormalDist

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import IntegrationWarning, quad

from auctorum.characters.vocabulary import Kind
from auctorum.circumscription.density import Density, between, crossings, mixed, overlap, pooled
from auctorum.circumscription.findings import Span
from auctorum.circumscription.sweep import Stretch
from auctorum.circumscription.voices import Voice

QUICK = settings(deadline=None, max_examples=150)


def voice(low, high, *, least=None, most=None, slack="0.5", weight=1) -> Voice:
    """A work that states a range to the whole unit; None is a bound that it does not state."""
    low, high, least, most = (None if end is None else Fraction(str(end)) for end in (low, high, least, most))
    extremes = Span(low if least is None else least, high if most is None else most)
    half = Fraction(slack)
    return Voice("w", 1900, "Orrin 1900", Fraction(weight), Stretch(low, high, half, half, Fraction(weight)), extremes)


def uniform(low: float, high: float) -> Density:
    return Density((low, high), (1 / (high - low),) * 2, (0.0, 1.0))


@st.composite
def voices(draw: st.DrawFn) -> Voice:
    ends = sorted(draw(st.lists(st.integers(0, 60), min_size=4, max_size=4)))
    least, low, high, most = ends
    return voice(low, high, least=least, most=most, weight=draw(st.sampled_from((1, 1, 2))))


densities = st.lists(voices(), min_size=1, max_size=5).map(pooled)


@st.composite
def cut_up(draw: st.DrawFn) -> Density:
    """A density with jumps: the plants between two places of another."""
    whole = draw(densities)
    first, last = sorted(draw(st.lists(st.floats(0, 1), min_size=2, max_size=2)))
    low, high = (whole.places[0] + part * (whole.places[-1] - whole.places[0]) for part in (first, last))
    found = between(whole, low, high)
    return whole if found is None or found[1] < 1e-3 else found[0]


def integral(function, places) -> float:
    """Piece by piece, so that no bend or jump lies inside of one; a bend beside an end is warned of, and harmless."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore", IntegrationWarning)
        return sum(quad(function, start, end)[0] for start, end in pairwise(sorted(set(places))))


# --- the overlap coefficient: Weitzman, M. S. (1970), Measures of overlap of income distributions (from memory)


@settings(deadline=None, max_examples=100)
@given(densities, densities)
def test_overlap_is_the_integral_of_the_smaller(one: Density, other: Density) -> None:
    slow = integral(lambda value: min(one.at(value), other.at(value)), crossings(one, other))
    assert overlap(one, other) == pytest.approx(slow, abs=1e-7)


def normal(mean: float, sigma: float) -> Density:
    """A normal distribution in 400 straight pieces, out to six standard deviations."""
    exact = NormalDist(mean, sigma)
    places = [mean + sigma * (step / 200 - 1) * 6 for step in range(401)]
    return Density(
        tuple(places), tuple(exact.pdf(place) for place in places), tuple(exact.cdf(place) for place in places)
    )


@pytest.mark.parametrize(
    ("one", "other"), [((0, 1), (1, 1)), ((0, 1), (2, 1)), ((0, 1), (1, 3)), ((2.4, 1.6), (3.2, 2.0)), ((0, 1), (9, 1))]
)
def test_overlap_of_normal_distributions(one: tuple[float, float], other: tuple[float, float]) -> None:
    """Against `statistics.NormalDist.overlap` of Python: Inman, H. F. & Bradley, E. L. (1989), Communications in
    Statistics - Theory and Methods 18: 3851-3874 (cited from memory)."""
    expected = NormalDist(*one).overlap(NormalDist(*other))
    assert overlap(normal(*one), normal(*other)) == pytest.approx(expected, abs=5e-4)


@QUICK
@given(cut_up(), cut_up())
def test_overlap_laws(one: Density, other: Density) -> None:
    assert 0 <= overlap(one, other) <= 1
    assert overlap(one, other) == pytest.approx(overlap(other, one), abs=1e-12)
    assert overlap(one, one) == pytest.approx(1, abs=1e-9)


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        # Common practice, no source: two equal rectangles, moved by a part d of their width, share 1 - d.
        pytest.param(uniform(0, 10), uniform(3, 13), 0.7, id="moved"),
        pytest.param(uniform(0, 10), uniform(2, 4), 0.2, id="within"),
        pytest.param(uniform(0, 10), uniform(10, 20), 0.0, id="touching"),
        pytest.param(uniform(0, 2), uniform(3, 5), 0.0, id="apart"),
        # On paper: each rises or falls over a shoulder of 1 and is 1/11 high; both triangles from 19 to 21 hold 1/22.
        pytest.param(pooled([voice(10, 20)]), pooled([voice(20, 30)]), 1 / 11, id="shoulders"),
        # On paper: 4 to 6 petals are the cells 3.5 to 6.5, 5 to 9 those from 4.5 to 9.5; two cells at 1/5 are shared.
        pytest.param(
            pooled([voice(4, 6)], Kind.COUNT), pooled([voice(5, 9)], Kind.COUNT), 2 / 5, id="counts-share-two-cells"
        ),
        pytest.param(pooled([voice(4, 4)], Kind.COUNT), pooled([voice(5, 5)], Kind.COUNT), 0, id="four-is-not-five"),
        # On paper: (8–)10–20 rises from 7.5 to 10 and falls over a shoulder of 1: height 1/11.75, the fall half of it.
        pytest.param(pooled([voice(10, 20, least=8, most=20)]), uniform(20, 22), 2 / 47, id="one-extreme"),
    ],
)
def test_overlap_on_paper(one: Density, other: Density, expected: float) -> None:
    assert overlap(one, other) == pytest.approx(expected, abs=1e-9)


# --- densities


@QUICK
@given(cut_up())
def test_a_density_integrates_to_one_and_its_shares_rise(density: Density) -> None:
    assert integral(density.at, density.places) == pytest.approx(1, abs=1e-6)
    assert density.shares[0] == 0 and density.shares[-1] == pytest.approx(1)
    assert all(low <= high for low, high in pairwise(density.shares))
    assert all(low <= high for low, high in pairwise(density.places))


@QUICK
@given(densities, st.floats(-5, 80))
def test_below_is_the_integral_up_to_there(density: Density, value: float) -> None:
    places = [*(place for place in density.places if place < value), value]
    assert density.below(value) == pytest.approx(integral(density.at, places), abs=1e-6)


@QUICK
@given(cut_up())
def test_mean(density: Density) -> None:
    slow = integral(lambda value: value * density.at(value), density.places)
    assert density.mean == pytest.approx(slow, rel=1e-6, abs=1e-6)


@QUICK
@given(st.lists(st.tuples(cut_up(), st.integers(1, 4)), min_size=1, max_size=4), st.floats(-5, 80))
def test_a_mixture_keeps_the_shares_of_its_parts(parts: list[tuple[Density, int]], value: float) -> None:
    """Jumps included: plants cut off at a threshold reach no further than to it."""
    whole = sum(weight for _, weight in parts)
    expected = sum(density.below(value) * weight for density, weight in parts) / whole
    assert mixed(parts).below(value) == pytest.approx(expected, abs=1e-9)


@QUICK
@given(densities, st.floats(0.01, 0.99))
def test_what_is_parted_and_mixed_again_is_the_whole(density: Density, part: float) -> None:
    place = density.places[0] + part * (density.places[-1] - density.places[0])
    halves = [half for half in (between(density, None, place), between(density, place, None)) if half is not None]
    assert sum(share for _, share in halves) == pytest.approx(1, abs=1e-9)
    again = mixed(halves)
    assert all(again.below(one) == pytest.approx(density.below(one), abs=1e-9) for one in density.places)
    assert overlap(again, density) == pytest.approx(1, abs=1e-9)


def test_between_takes_nothing_where_nothing_is() -> None:
    assert between(uniform(0, 10), 10, None) is None
    assert between(uniform(0, 10), 4, 4) is None
    found = between(uniform(0, 10), 4, 6)
    assert found is not None
    assert (found[0].places, found[1]) == ((4, 6), pytest.approx(0.2))


@pytest.mark.parametrize(
    ("heard", "kind", "ends"),
    [
        pytest.param([voice(10, 20)], Kind.MEASURE, (9, 21), id="shoulder-of-a-tenth"),
        pytest.param(
            [voice(10, 20, least=7, most=30)], Kind.MEASURE, (6.5, 30.5), id="extremes-within-their-precision"
        ),
        pytest.param([voice(22, 22)], Kind.MEASURE, (21.5, 22.5), id="one-figure-within-its-precision"),
        pytest.param([voice(22, 22, slack="0")], Kind.MEASURE, (21.978, 22.022), id="one-figure-without-precision"),
        pytest.param([voice(0, 20)], Kind.MEASURE, (0, 22), id="nothing-below-zero"),
        pytest.param([voice(-5, 5)], Kind.MEASURE, (-6, 6), id="unless-stated"),
        pytest.param([voice(4, 8)], Kind.COUNT, (3.5, 8.5), id="cells-of-counts"),
        pytest.param([voice(4, 8, least=2, most=8)], Kind.COUNT, (1.5, 8.5), id="extremes-of-counts"),
        pytest.param([voice(20, 40)], Kind.COUNT, (17.5, 42.5), id="whole-shoulders-of-counts"),
        pytest.param([voice(None, 8, slack="0")], Kind.MEASURE, (0, 8.8), id="up-to"),
        pytest.param([voice(8, None, slack="0")], Kind.MEASURE, (7.2, 16.8), id="upwards"),
        pytest.param([voice(8, None), voice(6, 18), voice(6, 18)], Kind.MEASURE, (4.8, 19.2), id="usual-upper"),
    ],
)
def test_where_a_density_ends(heard: list[Voice], kind: Kind, ends: tuple[float, float]) -> None:
    found = pooled(heard, kind)
    assert (found.places[0], found.places[-1]) == pytest.approx(ends)


@QUICK
@given(st.lists(voices(), min_size=1, max_size=4), st.lists(voices(), min_size=1, max_size=3))
def test_voices_without_weight_change_nothing(heard: list[Voice], mute: list[Voice]) -> None:
    """A linear opinion pool (Stone, M. (1961), Ann. Math. Stat. 32: 1339-1342; from memory) is a weighted mean."""
    silent = [voice(one.stretch.low, one.stretch.high, weight=0) for one in mute if one.stretch]
    assert pooled([*heard, *silent]) == pooled(heard)


@QUICK
@given(st.lists(st.tuples(st.integers(0, 7), st.integers(0, 5), st.integers(-2, 2)), min_size=1, max_size=4))
def test_directions_are_folded_to_the_circle(arcs: list[tuple[int, int, int]]) -> None:
    """The second answer: the share of each degree is that of the same direction on every turn."""
    plain = [voice(45 * at, 45 * (at + more), slack="22.5") for at, more, _ in arcs]
    moved = [voice(45 * at + 360 * by, 45 * (at + more) + 360 * by, slack="22.5") for at, more, by in arcs]
    one, other = pooled(plain, Kind.ANGLE), pooled(moved, Kind.ANGLE)
    assert one.places[0] >= 0 and one.places[-1] <= 360
    assert overlap(one, other) == pytest.approx(1, abs=1e-9)
    flat = pooled(plain, Kind.RATIO) if all(at for at, _, _ in arcs) else None
    for degree in range(0, 360, 15) if flat else ():
        turns = [flat.below(degree + 15 + 360 * turn) - flat.below(degree + 360 * turn) for turn in range(-1, 3)]
        assert one.below(degree + 15) - one.below(degree) == pytest.approx(sum(turns), abs=1e-9)


def test_north_is_one_place() -> None:
    """On paper: NW to N and N to NE have shoulders of 4.5 degrees, a height of 1/49.5, and share 1/11 there."""
    west, east, again = (pooled([voice(*arc, slack="0")], Kind.ANGLE) for arc in ((315, 360), (360, 405), (0, 45)))
    assert overlap(west, east) == pytest.approx(1 / 11)
    assert overlap(east, again) == pytest.approx(1)
