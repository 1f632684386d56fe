"""Intervals of shares against statsmodels and the binomial tails summed exactly."""

from __future__ import annotations

import math
import time
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from statsmodels.stats.proportion import proportion_confint

from auctorum.circumscription.intervals import clopper_pearson, wilson

TABLE = [(0, 1), (1, 1), (0, 10), (10, 10), (1, 10), (9, 20), (50, 100), (3, 1000), (997, 1000), (31_234, 100_000)]
EDGES = [(0, 100_000), (1, 100_000), (50_000, 100_000), (99_999, 100_000), (100_000, 100_000)]


def assert_close(found: tuple[float, float], k: int, n: int, level: float, method: str) -> None:
    wanted = proportion_confint(k, n, alpha=1 - level, method=method)
    assert found == pytest.approx(wanted, rel=0, abs=1e-9)


@pytest.mark.parametrize(("k", "n"), TABLE + EDGES)
@pytest.mark.parametrize("level", [0.5, 0.8, 0.95, 0.99])
def test_against_statsmodels(k: int, n: int, level: float) -> None:
    assert_close(wilson(k, n, level), k, n, level, "wilson")
    assert_close(clopper_pearson(k, n, level), k, n, level, "beta")


@settings(deadline=None, max_examples=150)
@given(st.integers(1, 3000).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_against_statsmodels_at_random(drawn: tuple[int, int]) -> None:
    k, n = drawn
    assert_close(wilson(k, n), k, n, 0.95, "wilson")
    assert_close(clopper_pearson(k, n), k, n, 0.95, "beta")


@settings(deadline=None, max_examples=60)
@given(st.integers(1, 40).flatmap(lambda n: st.tuples(st.integers(1, n), st.just(n))))
def test_the_lower_end_leaves_a_fortieth_in_the_tail(drawn: tuple[int, int]) -> None:
    """The definition, with the tail summed in exact fractions."""
    k, n = drawn
    share = Fraction(clopper_pearson(k, n)[0])
    tail = sum(math.comb(n, i) * share**i * (1 - share) ** (n - i) for i in range(k, n + 1))
    assert float(tail) == pytest.approx(0.025, abs=1e-9)


@pytest.mark.parametrize("interval", [wilson, clopper_pearson])
@pytest.mark.parametrize(
    ("k", "n", "low", "high"),
    [
        pytest.param(0, 0, 0.0, 1.0, id="nothing known"),
        pytest.param(0, 7, 0.0, None, id="none of them"),
        pytest.param(7, 7, None, 1.0, id="all of them"),
    ],
)
def test_edges_are_exact(interval, k: int, n: int, low: float | None, high: float | None) -> None:
    found = interval(k, n)
    assert low is None or found[0] == low
    assert high is None or found[1] == high
    assert found[0] < found[1]


def test_all_of_n_by_hand() -> None:
    """With k = n the lower end is the n-th root of the tail: 0.025 ** (1/20)."""
    assert clopper_pearson(20, 20)[0] == pytest.approx(0.025 ** (1 / 20), abs=1e-12)


@settings(deadline=None, max_examples=100)
@given(st.integers(0, 500).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))))
def test_what_holds_of_k_fails_of_the_rest(drawn: tuple[int, int]) -> None:
    """The interval of the share that does not is the mirror image."""
    k, n = drawn
    for interval in (wilson, clopper_pearson):
        low, high = interval(k, n)
        assert interval(n - k, n) == pytest.approx((1 - high, 1 - low), abs=1e-12)
        assert low <= (k / n if n else 0.5) <= high


@pytest.mark.parametrize("interval", [wilson, clopper_pearson])
def test_refusals(interval) -> None:
    with pytest.raises(ValueError, match="5 of 4 is no share"):
        interval(5, 4)
    with pytest.raises(ValueError, match="-1 of 4 is no share"):
        interval(-1, 4)
    with pytest.raises(ValueError, match="between 0 and 1, not at 95"):
        interval(1, 4, 95)


def test_a_hundred_thousand_plants_take_no_time() -> None:
    clopper_pearson.cache_clear()
    start = time.perf_counter()
    clopper_pearson(49_000, 100_000)
    assert time.perf_counter() - start < 2
