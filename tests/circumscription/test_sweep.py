"""Arithmetic of ranges: tables, laws, and a slow second answer that counts on a grid."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.findings import Relation, Span, Step
from auctorum.circumscription.sweep import (
    Figure,
    Stretch,
    all_same,
    core,
    coverage,
    envelope,
    majority,
    meeting,
    relation,
    same,
)

ZERO, HALF = Fraction(0), Fraction(1, 2)
INCH, FOUR_INCHES = Fraction("25.4"), Fraction("101.6")


def stretch(low, high, slack=0, weight=1) -> Stretch:
    low, high = (None if end is None else Fraction(end) for end in (low, high))
    return Stretch(low, high, Fraction(slack), Fraction(slack), Fraction(weight))


def span(low, high) -> Span:
    return Span(None if low is None else Fraction(low), None if high is None else Fraction(high))


@pytest.mark.parametrize(
    ("a", "b", "found"),
    [
        pytest.param(stretch(22, 34), stretch(22, 34), Relation.EQUAL, id="equal"),
        pytest.param(stretch(24, 30), stretch(22, 34), Relation.WITHIN, id="within"),
        pytest.param(stretch(22, 34), stretch(22, 41), Relation.WITHIN, id="within-from-one-bound"),
        pytest.param(stretch(22, 41), stretch(24, 30), Relation.CONTAINS, id="contains"),
        pytest.param(stretch(22, 34), stretch(30, 41), Relation.OVERLAPS, id="overlaps"),
        pytest.param(stretch(22, 34), stretch(34, 41), Relation.OVERLAPS, id="touch-in-one-value"),
        pytest.param(stretch(12, 15), stretch(22, 34), Relation.APART, id="apart"),
        pytest.param(stretch(12, 21, HALF), stretch(22, 34, HALF), Relation.APART, id="a-whole-millimetre-apart"),
        pytest.param(stretch(None, 15), stretch(None, 15), Relation.EQUAL, id="both-up-to-15"),
        pytest.param(stretch(None, 15), stretch(20, 30), Relation.APART, id="open-and-yet-apart"),
        # Trade facts (common practice, no source): 10 cm is 4 in, 20 cm is 8 in, ...
        pytest.param(stretch(100, 200, 5), stretch(4 * INCH, 8 * INCH, INCH / 2), Relation.EQUAL, id="4-8-in"),
        pytest.param(stretch(100, 100, 5), stretch(4 * INCH, 4 * INCH, INCH / 2), Relation.EQUAL, id="4-in"),
        # ... and "to 15 cm" does not contradict "10–20 cm" in its lower bound.
        pytest.param(stretch(None, 150, 5), stretch(100, 200, 5), Relation.OPEN, id="to-15-cm-and-10-20-cm"),
    ],
)
def test_relation(a: Stretch, b: Stretch, found: Relation) -> None:
    mirror = {Relation.WITHIN: Relation.CONTAINS, Relation.CONTAINS: Relation.WITHIN}
    assert relation(a, b) is found
    assert relation(b, a) is mirror.get(found, found)


@pytest.mark.parametrize(
    ("several", "shared", "whole"),
    [
        pytest.param([stretch(22, 34), stretch(30, 41)], (30, 34), (22, 41), id="overlap"),
        pytest.param([stretch(22, 34), stretch(34, 41)], (34, 34), (22, 41), id="touch"),
        pytest.param([stretch(12, 15), stretch(22, 34)], None, (12, 34), id="apart"),
        pytest.param([stretch(None, 15), stretch(10, 20)], (10, 15), (10, 20), id="up-to-15-and-10-to-20"),
        pytest.param([stretch(None, 5), stretch(10, 20)], None, (5, 20), id="up-to-5-and-10-to-20"),
        pytest.param([stretch(10, None), stretch(12, None)], (12, None), (10, None), id="both-open-above"),
        pytest.param([stretch(None, 9), stretch(7, None)], (7, 9), (7, 9), id="open-on-either-side"),
    ],
)
def test_core_and_envelope(several, shared, whole) -> None:
    assert core(several) == (None if shared is None else span(*shared))
    assert envelope(several) == span(*whole)


def test_ten_centimetres_and_four_inches_meet_at_the_more_precise() -> None:
    metric, inches = stretch(100, 100, 5), stretch(FOUR_INCHES, FOUR_INCHES, INCH / 2)
    assert core([metric, inches]) == span(100, 100)
    assert majority(coverage([metric, inches])) == (Span(Fraction(100), FOUR_INCHES),)
    assert meeting([metric, inches])[0] == metric


def test_no_range_has_no_core() -> None:
    with pytest.raises(ValueError, match="no range to take a core of"):
        core([])


def test_coverage_by_hand() -> None:
    steps = coverage([stretch(22, 34), stretch(30, 41), stretch(30, 30)])
    third = Fraction(1, 3)
    assert [(step.low, step.high, step.share) for step in steps] == [
        (22, 30, third),
        (30, 30, 1),
        (30, 34, 2 * third),
        (34, 41, third),
    ]
    assert majority(steps) == (span(30, 34),)


def test_coverage_runs_on_where_nobody_states_an_end() -> None:
    assert coverage([stretch(None, 5), stretch(None, 7)]) == (
        Step(None, Fraction(5), Fraction(1)),
        Step(Fraction(5), Fraction(7), HALF),
    )


def test_a_majority_may_be_in_two_stretches() -> None:
    steps = coverage([stretch(1, 2), stretch(1, 2), stretch(8, 9), stretch(8, 9)])
    assert majority(steps) == (span(1, 2), span(8, 9))


def test_weights_count() -> None:
    steps = coverage([stretch(1, 2, weight=3), stretch(8, 9)])
    assert majority(steps) == (span(1, 2),)
    assert coverage([stretch(1, 2, weight=0)]) == coverage([stretch(1, 2)])  # repetitions are all there is


ends = st.integers(0, 12)
ranges = st.tuples(ends, ends, st.integers(0, 2), st.integers(1, 3)).map(
    lambda drawn: stretch(min(drawn[:2]), max(drawn[:2]), Fraction(drawn[2], 2), drawn[3])
)
exact = ranges.map(lambda one: stretch(one.low, one.high, 0, one.weight))
several_exact = st.lists(exact, min_size=1, max_size=8)


@settings(deadline=None, max_examples=200)
@given(several_exact)
def test_coverage_is_what_a_count_on_a_grid_gives(several: list[Stretch]) -> None:
    """Second answer: at every half, count the weight of the ranges that hold it."""
    total = sum(one.weight for one in several)
    steps = coverage(several)
    for half in range(25):
        value = Fraction(half, 2)
        held = sum((one.weight for one in several if one.low <= value <= one.high), ZERO) / total
        told = [step.share for step in steps if step.low <= value <= step.high]
        assert max(told, default=ZERO) == held


@settings(deadline=None, max_examples=200)
@given(several_exact)
def test_the_area_under_coverage_is_the_mean_width(several: list[Stretch]) -> None:
    total = sum(one.weight for one in several)
    area = sum((step.share * (step.high - step.low) for step in coverage(several)), ZERO)
    assert area == sum(one.weight * (one.high - one.low) for one in several) / total


@settings(deadline=None, max_examples=200)
@given(st.lists(ranges, min_size=1, max_size=8), st.randoms())
def test_order_does_not_matter_and_core_lies_in_majority_lies_in_envelope(several, random) -> None:
    shuffled = list(several)
    random.shuffle(shuffled)
    assert coverage(shuffled) == coverage(several)
    whole, shared, most = envelope(several), core(several), majority(coverage(several))
    assert (core(shuffled), envelope(shuffled)) == (shared, whole)
    assert all(whole.low <= one.low and one.high <= whole.high for one in most)
    if shared is not None:
        assert any(one.low <= shared.low and shared.high <= one.high for one in most)


@settings(deadline=None, max_examples=200)
@given(st.lists(ranges, min_size=1, max_size=8))
def test_a_core_exists_where_no_two_are_apart(several: list[Stretch]) -> None:
    apart = any(relation(a, b) is Relation.APART for a in several for b in several)
    assert apart or core(several) is not None


@settings(deadline=None, max_examples=200)
@given(st.lists(st.tuples(st.integers(0, 9), st.sampled_from([HALF, Fraction(2)])), max_size=6))
def test_all_the_same_is_what_comparing_every_pair_gives(drawn) -> None:
    figures = [Figure(Fraction(value), slack) for value, slack in drawn]
    assert all_same(figures) is all(same(a, b) for a in figures for b in figures)
