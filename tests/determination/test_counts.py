"""Expected counts against every outcome written out, and counts from thresholds against counting."""

from __future__ import annotations

import itertools
import math
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from auctorum.determination.counting.counts import Expected, count_chances, counts_from, expected_count, thresholds_of

LAWS = settings(deadline=None, max_examples=100)
CHANCES = st.lists(st.sampled_from([0.0, 0.1, 0.25, 0.5, 0.8, 0.99, 1.0]), max_size=9)


def by_enumeration(chances: list[float]) -> list[float]:
    """Probability of each count, from all 2^n outcomes."""
    found = [0.0] * (len(chances) + 1)
    for outcome in itertools.product((0, 1), repeat=len(chances)):
        found[sum(outcome)] += math.prod(p if fits else 1 - p for p, fits in zip(chances, outcome, strict=True))
    return found


@LAWS
@given(CHANCES, st.sampled_from([0.5, 0.8, 0.95]))
def test_against_all_outcomes(chances: list[float], level: float) -> None:
    chance_of = by_enumeration(chances)
    assert count_chances(chances) == pytest.approx(chance_of, abs=1e-12)
    found, tail = expected_count(chances, level), (1 - level) / 2
    assert found.mean == pytest.approx(sum(k * p for k, p in enumerate(chance_of)))
    assert sum(chance_of[: found.low]) <= tail + 1e-12 < sum(chance_of[: found.low + 1]) + 2e-12
    assert sum(chance_of[found.high + 1 :]) <= tail + 1e-12 < sum(chance_of[found.high :]) + 2e-12


@pytest.mark.parametrize(("n", "p"), [(1, 0.3), (40, 0.37), (400, 0.02), (2000, 0.61)])
def test_equal_chances_are_binomial(n: int, p: float) -> None:
    low, high = stats.binom.interval(0.95, n, p)
    assert count_chances([p] * n) == pytest.approx(stats.binom.pmf(range(n + 1), n, p), abs=1e-12)
    assert expected_count([p] * n)[1:] == (low, high)


def test_the_normal_curve_takes_over_smoothly() -> None:
    """Above 2,000 open plants within one plant of the exact ends."""
    chances = np.random.default_rng(3).uniform(0.01, 0.99, size=2300).tolist()
    passed = np.cumsum(count_chances(chances))
    found = expected_count(chances)
    assert found.low == pytest.approx(int(np.argmax(passed > 0.025)), abs=1)
    assert found.high == pytest.approx(int(np.argmax(passed >= 0.975)), abs=1)
    assert expected_count([*chances, *[1.0] * 50]) == (pytest.approx(found.mean + 50), found.low + 50, found.high + 50)


def test_certain_plants_leave_no_doubt() -> None:
    assert expected_count([1.0] * 7 + [0.0] * 5) == Expected(7.0, 7, 7)
    assert expected_count([]) == Expected(0.0, 0, 0)


@pytest.mark.parametrize(("chances", "level"), [([1.2], 0.95), ([-0.1], 0.95), ([math.nan], 0.95), ([0.5], 1.0)])
def test_refused(chances: list[float], level: float) -> None:
    with pytest.raises(ValueError, match="chances"):
        expected_count(chances, level)


@LAWS
@given(st.lists(st.integers(0, 80).map(lambda one: Fraction(one, 4)), max_size=40))
def test_counts_against_counting(values: list[Fraction]) -> None:
    grid = [Fraction(one, 8) for one in range(170)]
    assert counts_from(values, grid) == tuple(sum(value >= one for value in values) for one in grid)
    steps = thresholds_of(values)
    assert counts_from(values, steps) == tuple(sorted(set(counts_from(values, grid)) - {0}, reverse=True))
    assert counts_from(values[::-1], steps) == counts_from(values, steps)
