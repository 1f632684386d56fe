"""Thresholds against a search over a fine grid, and cases worked on paper."""

from __future__ import annotations

from fractions import Fraction
from math import ceil, floor
from statistics import NormalDist

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.vocabulary import Kind
from auctorum.circumscription.cuts import TOLERANCE, best_count_cut, best_cut, count_cut_at, cut_at
from auctorum.circumscription.density import Density, pooled
from auctorum.circumscription.findings import Span
from auctorum.circumscription.sweep import Stretch
from auctorum.circumscription.voices import Voice

QUICK = settings(deadline=None, max_examples=100)
HALF = Fraction(1, 2)


def uniform(low: float, high: float) -> Density:
    return Density((low, high), (1 / (high - low),) * 2, (0.0, 1.0))


def heard(ends: list[int], weight: int) -> Voice:
    least, low, high, most = map(Fraction, sorted(ends))
    return Voice("w", 1900, "Orrin 1900", Fraction(weight), Stretch(low, high, HALF, HALF), Span(least, most))


voices = st.builds(heard, st.lists(st.integers(0, 60), min_size=4, max_size=4), st.integers(1, 2))
several = st.lists(voices, min_size=1, max_size=4)
densities = several.map(pooled)
counts = several.map(lambda said: pooled(said, Kind.COUNT))


@QUICK
@given(densities, densities)
def test_no_threshold_of_a_fine_grid_is_better(lower: Density, upper: Density) -> None:
    found = best_cut(lower, upper)
    first, last = min(lower.places[0], upper.places[0]), max(lower.places[-1], upper.places[-1])
    grid = (first + (last - first) * step / 2000 for step in range(2001))
    least = min((1 - lower.below(value) + upper.below(value)) / 2 for value in grid)
    assert found.error <= least + TOLERANCE + 1e-9
    assert 0 <= found.error <= 0.5 + 1e-9
    assert best_cut(lower, upper, tolerance=0).error <= least + 1e-6
    assert found == cut_at(lower, upper, found.value)


@pytest.mark.parametrize("distance", [1, 2, 3, 4])
def test_two_normal_distributions(distance: int) -> None:
    """Of one spread, the best threshold is half way, and errs by the tail beyond half the distance.

    Fisher, R. A. (1936), Annals of Eugenics 7: 179-188, for one measurement; the figures are Python's `NormalDist`.
    """
    lower, upper = (_normal(mean) for mean in (0, distance))
    found = best_cut(lower, upper, tolerance=0)
    assert float(found.value) == pytest.approx(distance / 2, abs=0.02)
    assert found.error == pytest.approx(NormalDist().cdf(-distance / 2), abs=1e-3)


def _normal(mean: float) -> Density:
    exact = NormalDist(mean)
    places = [mean + 6 * (step / 200 - 1) for step in range(401)]
    return Density(
        tuple(places), tuple(exact.pdf(place) for place in places), tuple(exact.cdf(place) for place in places)
    )


@QUICK
@given(counts, counts)
def test_no_number_is_better(lower: Density, upper: Density) -> None:
    found = best_count_cut(lower, upper)
    assert found.value.denominator == 1
    first, last = min(lower.places[0], upper.places[0]), max(lower.places[-1], upper.places[-1])
    least = min(count_cut_at(lower, upper, Fraction(value)).error for value in range(floor(first), ceil(last) + 2))
    assert found.error <= least + TOLERANCE + 1e-9
    assert found == count_cut_at(lower, upper, found.value)


@QUICK
@given(densities, densities)
def test_upside_down(lower: Density, upper: Density) -> None:
    """Mirrored at zero, the two change sides and the losses with them; the figures themselves are as round."""
    mirrored = best_cut(_mirror(upper), _mirror(lower), tolerance=0)
    assert mirrored.error == pytest.approx(best_cut(lower, upper, tolerance=0).error, abs=1e-9)


def _mirror(density: Density) -> Density:
    return Density(
        tuple(-place for place in reversed(density.places)),
        density.heights[::-1],
        tuple(1 - share for share in reversed(density.shares)),
    )


@pytest.mark.parametrize(
    ("lower", "upper", "value", "lost"),
    [
        # On paper: a threshold t from 5 to 10 loses (10 - t)/10 below and (t - 5)/20 above: least at 10, a quarter.
        pytest.param(uniform(0, 10), uniform(5, 25), 10, (0, 0.25), id="narrow-under-wide"),
        # 19 and 30 are as in Fisher's setosa and versicolor: the gap's middle half is 21.75 to 27.25.
        pytest.param(uniform(10, 19), uniform(30, 51), 25, (0, 0), id="roundest-in-the-middle-of-a-gap"),
        # A gap of 0.4 in 32 is no more than tails leave between them: not its middle, 25.2, but the round figure.
        pytest.param(uniform(10, 25), uniform(25.4, 42), 25, (0, 0), id="a-slit-and-no-gap"),
        pytest.param(uniform(0, 10), uniform(10, 20), 10, (0, 0), id="touching"),
        # Alike: every threshold loses one half in all, and the middle of all is taken.
        pytest.param(uniform(0, 10), uniform(0, 10), 5, (0.5, 0.5), id="alike"),
        # Two of 100 beyond are nothing beside a round figure: 99.8 would lose a thousandth less.
        pytest.param(uniform(0, 99.8), uniform(99.8, 199.6), 100, (0, 0.2 / 99.8), id="rounded-within-tolerance"),
    ],
)
def test_on_paper(lower: Density, upper: Density, value: int, lost: tuple[float, float]) -> None:
    found = best_cut(lower, upper)
    assert found.value == value
    assert (found.lost_below, found.lost_above) == pytest.approx(lost, abs=1e-9)
    assert found.error == pytest.approx(sum(lost) / 2)


@pytest.mark.parametrize(
    ("lower", "upper", "value", "error"),
    [
        pytest.param((3, 3), (4, 4), 4, 0, id="three-or-four"),
        # On paper: 4 to 6 and 5 to 9: from 6 on goes up 1 of 3 and stays down 1 of 5; from 7 on 0 and 2 of 5.
        pytest.param((4, 6), (5, 9), 7, 0.2, id="least-that-goes-up"),
        pytest.param((3, 5), (12, 15), 10, 0, id="round-in-the-gap"),
    ],
)
def test_counts_on_paper(lower: tuple[int, int], upper: tuple[int, int], value: int, error: float) -> None:
    kinds = (pooled([heard([low, low, high, high], 1)], Kind.COUNT) for low, high in (lower, upper))
    found = best_count_cut(*kinds)
    assert (found.value, found.error) == (value, pytest.approx(error, abs=1e-9))
