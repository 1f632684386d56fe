"""Differences between observers against scipy's rank-sum test, and the interval against the test turned round."""

from __future__ import annotations

import time

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from auctorum.determination.counting.comparing import Difference, difference, difference_within

LAWS = settings(deadline=None, max_examples=100)
FIGURES = st.lists(st.integers(0, 60).map(lambda one: one / 2), min_size=1, max_size=25)


def scipy_p(first, second) -> float:
    return float(stats.mannwhitneyu(first, second, method="asymptotic", use_continuity=True).pvalue)


@LAWS
@given(FIGURES, FIGURES)
def test_p_against_scipy(first: list[float], second: list[float]) -> None:
    found = difference(first, second)
    if len({*first, *second}) > 1:
        assert found.p == pytest.approx(scipy_p(first, second), abs=1e-12)
    else:
        assert found.p == 1
    apart = [one - other for one in first for other in second]
    assert found.median == pytest.approx(float(np.median(apart)))


@pytest.mark.parametrize("seed", range(6))
def test_the_interval_holds_what_the_test_does_not_reject(seed: int) -> None:
    random = np.random.default_rng(seed)
    first, second = random.normal(2, 3, size=12 + 5 * seed), random.normal(0, 3, size=20)
    found = difference(first, second)
    for end, outward in ((found.low, -1), (found.high, 1)):
        assert scipy_p(first - (end - outward * 1e-6), second) >= 0.05
        assert scipy_p(first - (end + outward * 1e-6), second) < 0.05
    assert found.low < found.median < found.high


def test_the_interval_holds_the_true_shift_as_often_as_promised() -> None:
    """2,000 pairs of samples, each in two sites that differ: between 93.5 and 97 of 100 hold it."""
    random = np.random.default_rng(11)
    held = 0
    for _ in range(2000):
        pairs = [(random.normal(site + 1, 1, size=8), random.normal(site, 1, size=12)) for site in (0, 30)]
        found = difference_within(pairs)
        held += found.low <= 1 <= found.high
    assert 0.935 < held / 2000 < 0.97


def test_van_elteren_written_out() -> None:
    """The weighted rank sums of three sites as the definition has them, with the variance by scipy's ranks."""
    random = np.random.default_rng(5)
    pairs = [
        (np.round(random.normal(1, 4, size=n)), np.round(random.normal(0, 4, size=m))) for n, m in [(9, 7), (12, 5)]
    ]
    statistic = variance = 0.0
    for one, other in pairs:
        ranks = stats.rankdata([*one, *other])
        n, m, size = len(one), len(other), len(ranks)
        statistic += (ranks[:n].sum() - n * (size + 1) / 2) / (size + 1)
        variance += n * m * ranks.var(ddof=1) / size / (size + 1) ** 2
    step = min(1 / (len(one) + len(other) + 1) for one, other in pairs) / 2
    wanted = 2 * stats.norm.sf((abs(statistic) - step) / variance**0.5)
    assert difference_within(pairs).p == pytest.approx(wanted, abs=1e-12)


def test_sites_that_differ_are_no_difference_of_observers() -> None:
    """One observer went to the site of long spurs: pooled they differ, within the sites they do not."""
    random = np.random.default_rng(2)
    long, short = random.normal(35, 2, size=30), random.normal(22, 2, size=30)
    pairs = [(long[:25], long[25:]), (short[:5], short[5:])]
    pooled = difference([*long[:25], *short[:5]], [*long[25:], *short[5:]])
    assert pooled.p < 0.001 and difference_within(pairs).p > 0.05


@LAWS
@given(st.lists(st.tuples(FIGURES, FIGURES), min_size=1, max_size=4), st.integers(-9, 9))
def test_laws(pairs, shift: int) -> None:
    found = difference_within(pairs)
    swapped = difference_within([(other, one) for one, other in pairs[::-1]])
    assert swapped.median == pytest.approx(-found.median) and swapped.p == pytest.approx(found.p)
    assert (swapped.low is None) == (found.high is None)
    moved = difference_within([([one + shift for one in first], second) for first, second in pairs])
    assert moved.median == pytest.approx(found.median + shift)
    if found.low is not None:
        assert moved.low == pytest.approx(found.low + shift)
        assert found.low <= found.median <= found.high


def test_nothing_to_compare() -> None:
    nothing = Difference(0, 0, None, None, None, 1.0)
    assert difference([], [3.0]) == nothing == difference_within([]) == difference_within([([1.0], []), ([], [2.0])])
    few = difference([5.0, 6.0], [1.0, 2.0])
    assert (few.median, few.low, few.high) == (4.0, None, None)
    with pytest.raises(ValueError, match="level"):
        difference([1.0], [2.0], level=1.0)


def test_thousands_of_plants() -> None:
    random = np.random.default_rng(4)
    first, second = np.round(random.normal(31, 3, size=2000)), np.round(random.normal(30, 3, size=2000))
    began = time.perf_counter()
    found = difference(first, second)
    assert time.perf_counter() - began < 4
    assert found.p == pytest.approx(scipy_p(first, second), rel=1e-6)
