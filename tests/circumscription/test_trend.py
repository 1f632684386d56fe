"""Kendall's tau and its p against scipy, which carries the published algorithms."""

from __future__ import annotations

import warnings
from fractions import Fraction
from itertools import permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import kendalltau

from auctorum.circumscription.trend import bound, kendall

ZERO = Fraction(0)


def stated(years, values):
    return [(year, Fraction(value), ZERO) for year, value in zip(years, values, strict=True)]


@settings(deadline=None, max_examples=100)
@given(st.permutations(range(9)))
def test_without_ties_p_is_exact(order: list[int]) -> None:
    tau, p = kendall(stated(range(9), order))
    expected = kendalltau(range(9), order, method="exact")
    assert tau == pytest.approx(expected.statistic)
    assert p == pytest.approx(expected.pvalue)


@settings(deadline=None, max_examples=100)
@given(st.lists(st.integers(0, 5), min_size=8, max_size=25).filter(lambda values: len(set(values)) > 1))
def test_with_ties_beyond_six_values_p_is_that_of_the_normal_approximation(values: list[int]) -> None:
    years = list(range(len(values)))
    years[1] = years[0]
    tau, p = kendall(stated(years, values))
    expected = kendalltau(years, values, method="asymptotic")
    assert tau == pytest.approx(expected.statistic)
    assert p == pytest.approx(expected.pvalue)


def test_with_ties_up_to_six_values_p_counts_every_order() -> None:
    """Second answer: the share of all orders of the values whose score is as far from nothing."""
    years, values = [1, 2, 3, 4, 5], [3, 3, 4, 5, 5]
    tau, p = kendall(stated(years, values))
    scores = []
    for order in permutations(values):
        pairs = [(i, j) for i in range(5) for j in range(i + 1, 5)]
        scores.append(abs(sum((order[j] > order[i]) - (order[j] < order[i]) for i, j in pairs)))
    assert p == pytest.approx(sum(score >= 8 for score in scores) / len(scores))
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        assert tau == pytest.approx(kendalltau(years, values).statistic)


def test_values_equal_within_precision_are_ties() -> None:
    """22 mm, ⅞ in. (22.2 mm, stated to an eighth) and 10½ lines (22.2 mm, to half a line) are one bound."""
    values = [(1887, Fraction("22.225"), Fraction("1.5875")), (1896, Fraction("22.225"), Fraction("1.06")),
              (1923, Fraction(22), Fraction(1, 2)), (1951, Fraction(22), Fraction(1, 2))]  # fmt: skip
    found = bound(values)
    assert found is not None and found.stable
    assert (found.tau, found.p) == (None, None)


def test_nothing_is_said_of_three_values() -> None:
    found = bound(stated([1900, 1950, 2000], [10, 20, 30]))
    assert found is not None
    assert (found.stated, found.median, found.spread, found.stable) == (3, 20, 20, False)
    assert (found.tau, found.p) == (None, None)
    assert bound([]) is None
