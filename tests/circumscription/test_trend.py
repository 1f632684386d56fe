"""Kendall's tau and its p against scipy, which carries the published algorithms, and against every order."""

from __future__ import annotations

import time
import warnings
from fractions import Fraction
from itertools import combinations, permutations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import kendalltau

from auctorum.circumscription.sweep import Figure, same
from auctorum.circumscription.trend import bound, drifts, kendall

ZERO, HALF, EIGHTH = Fraction(0), Fraction(1, 2), Fraction("1.5875")


def figures(values, slack=ZERO) -> list[Figure]:
    return [Figure(Fraction(value), Fraction(slack)) for value in values]


@settings(deadline=None, max_examples=150)
@given(st.integers(2, 12).flatmap(lambda n: st.permutations(range(n))))
def test_without_ties_p_is_exact(order: list[int]) -> None:
    tau, p = kendall(range(len(order)), figures(order))
    expected = kendalltau(range(len(order)), order, method="exact")
    assert tau == pytest.approx(expected.statistic)
    assert p == pytest.approx(expected.pvalue)


def share_of_orders(x, y) -> float:
    """Second answer: the share of all orders of y whose score is at least as far from 0."""

    def score(order) -> int:
        pairs = combinations(zip(x, order, strict=True), 2)
        return abs(sum(((a > c) - (a < c)) * ((b > d) - (b < d)) for (a, b), (c, d) in pairs))

    scores = [score(order) for order in permutations(y)]
    return sum(one >= score(y) for one in scores) / len(scores)


@settings(deadline=None, max_examples=100)
@given(st.lists(st.tuples(st.integers(0, 3), st.integers(0, 3)), min_size=3, max_size=6))
def test_with_ties_p_counts_every_order(pairs: list[tuple[int, int]]) -> None:
    x, y = zip(*pairs, strict=True)
    tau, p = kendall(x, figures(y))
    if len(set(x)) == 1 or len(set(y)) == 1:
        assert (tau, p) == (None, None)
        return
    assert p == pytest.approx(share_of_orders(x, y))
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        assert tau == pytest.approx(kendalltau(x, y).statistic)


@settings(deadline=None, max_examples=60)
@given(st.lists(st.integers(0, 5), min_size=11, max_size=30).filter(lambda values: len(set(values)) > 1))
def test_of_many_works_with_ties_in_both_p_is_that_of_the_normal_approximation(values: list[int]) -> None:
    years = list(range(len(values)))
    years[1] = years[0]
    values = [values[0], *values]
    years.append(years[-1] + 1)
    tau, p = kendall(years, figures(values))
    expected = kendalltau(years, values, method="asymptotic")
    assert tau == pytest.approx(expected.statistic)
    assert p == pytest.approx(expected.pvalue)


def test_of_more_than_fifty_works_p_is_that_of_the_normal_approximation() -> None:
    order = [(place * 37) % 61 for place in range(61)]
    tau, p = kendall(range(61), figures(order))
    expected = kendalltau(range(61), order, method="asymptotic")
    assert (tau, p) == (pytest.approx(expected.statistic), pytest.approx(expected.pvalue))


def test_figures_equal_within_precision_are_no_movement() -> None:
    """22 mm, ⅞ in. (22.2 mm, stated to an eighth) and 10½ lines (22.2 mm, to half a line) are one bound."""
    said = [
        Figure(Fraction("22.225"), EIGHTH),
        Figure(Fraction("22.225"), Fraction("1.06")),
        *figures([22, 22], HALF),
    ]
    found = bound([1887, 1896, 1923, 1951], said)
    assert found is not None
    assert found.stable
    assert (found.tau, found.p) == (None, None)
    assert found.spread == Fraction("0.225")  # of the figures as stated


def in_every_order(years, said) -> float:
    """Second answer where precision makes no classes: compare every pair in every order."""

    def score(order) -> int:
        pairs = combinations(zip(years, order, strict=True), 2)
        return sum(
            0 if abs(a.value - b.value) < a.slack + b.slack or a.value == b.value else (b.value > a.value) - (b < a)
            for (first, a), (second, b) in pairs
            if first != second
        )

    scores = [abs(score(order)) for order in permutations(said)]
    return sum(one >= abs(score(said)) for one in scores) / len(scores)


coarse_and_fine = st.tuples(st.integers(0, 6), st.sampled_from([HALF, Fraction(3, 2)])).map(
    lambda drawn: Figure(Fraction(drawn[0]), drawn[1])
)


@settings(deadline=None, max_examples=60)
@given(st.lists(coarse_and_fine, min_size=4, max_size=6))
def test_precision_that_makes_no_classes(said: list[Figure]) -> None:
    tau, p = kendall(range(len(said)), said)
    assert (p is None) is all(all(same(a, b) for b in said) for a in said)
    assert p is None or p == pytest.approx(in_every_order(range(len(said)), said))
    assert tau is None or -1 <= tau <= 1


def test_one_coarse_figure_does_not_hide_a_drift() -> None:
    """12 in. (305 mm, to half an inch) is the same as 30 and 31 cm, which are not the same."""
    said = [
        *figures([290, 300], Fraction(5)),
        Figure(Fraction("304.8"), Fraction("12.7")),
        *figures([310, 320, 330], 5),
    ]
    assert drifts(bound(range(1900, 1906), said))


def test_nothing_is_said_of_three_values() -> None:
    found = bound([1900, 1950, 2000], figures([10, 20, 30]))
    assert found is not None
    assert (found.stated, found.median, found.spread, found.stable) == (3, 20, 20, False)
    assert (found.tau, found.p) == (None, None)
    assert bound([], []) is None


@pytest.mark.parametrize(
    ("values", "moves"),
    [
        pytest.param([30, 32, 34, 36, 38], True, id="five-in-a-row"),
        pytest.param([30, 32, 34, 36], False, id="four-in-a-row-may-be-chance"),  # p = 2/4! = 0.083
        pytest.param([30, 38, 31, 37, 32], False, id="to-and-fro"),
        pytest.param([38, 36, 34, 32, 30], True, id="falling"),
        pytest.param([30, 30, 30, 30, 30], False, id="never-moved"),
    ],
)
def test_drift(values: list[int], moves: bool) -> None:
    assert drifts(bound(range(1900, 1900 + len(values)), figures(values))) is moves


def test_time_grows_no_faster_than_the_works() -> None:
    """A thousand times the works of a usual group, in far less than a person waits."""
    n = 10_000
    start = time.perf_counter()
    bound(range(n), figures([(place * 7919) % n for place in range(n)]))
    assert time.perf_counter() - start < 5
