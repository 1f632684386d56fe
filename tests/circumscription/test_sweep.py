"""Arithmetic of spans: tables, laws, and a slow second answer that counts on a grid."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.findings import Span
from auctorum.circumscription.sweep import Relation, core, coverage, envelope, gap, majority, relation

ONE = Fraction(1)


def span(low: int | None, high: int | None) -> Span:
    return Span(None if low is None else Fraction(low), None if high is None else Fraction(high))


@pytest.mark.parametrize(
    ("a", "b", "slack", "found"),
    [
        pytest.param((22, 34), (22, 34), 0, Relation.EQUAL, id="equal"),
        pytest.param((22, 34), (22, 35), 2, Relation.EQUAL, id="equal-within-precision"),
        pytest.param((22, 34), (22, 35), 1, Relation.WITHIN, id="one-digit-apart-is-not-equal"),
        pytest.param((24, 30), (22, 34), 0, Relation.WITHIN, id="within"),
        pytest.param((22, 34), (22, 41), 0, Relation.WITHIN, id="within-from-one-bound"),
        pytest.param((22, 41), (24, 30), 0, Relation.CONTAINS, id="contains"),
        pytest.param((22, 34), (30, 41), 0, Relation.OVERLAPS, id="overlaps"),
        pytest.param((22, 34), (34, 41), 0, Relation.OVERLAPS, id="touch-in-one-value"),
        pytest.param((12, 15), (22, 34), 0, Relation.APART, id="apart"),
        pytest.param((12, 21), (22, 34), 2, Relation.OVERLAPS, id="apart-but-for-precision"),
        pytest.param((None, 15), (10, 20), 0, Relation.OPEN, id="up-to-15-and-10-to-20"),
        pytest.param((None, 15), (20, 30), 0, Relation.APART, id="open-and-yet-apart"),
    ],
)
def test_relation(a, b, slack: int, found: Relation) -> None:
    assert relation(span(*a), span(*b), Fraction(slack)) is found


MIRROR = {Relation.WITHIN: Relation.CONTAINS, Relation.CONTAINS: Relation.WITHIN}


@pytest.mark.parametrize(
    ("spans", "shared", "whole"),
    [
        pytest.param([(22, 34), (30, 41)], (30, 34), (22, 41), id="overlap"),
        pytest.param([(22, 34), (34, 41)], (34, 34), (22, 41), id="touch"),
        pytest.param([(12, 15), (22, 34)], None, (12, 34), id="apart"),
        # "to 15 cm" does not contradict "10–20 cm" in its lower bound (common practice, no source)
        pytest.param([(None, 15), (10, 20)], (10, 15), (10, 20), id="open-below"),
        pytest.param([(10, None), (12, None)], (12, None), (10, None), id="all-open-above"),
    ],
)
def test_core_and_envelope(spans, shared, whole) -> None:
    made = [span(*one) for one in spans]
    assert core(made) == (None if shared is None else span(*shared))
    assert envelope(made) == span(*whole)


def test_bounds_that_miss_by_less_than_their_precision_meet() -> None:
    """4 in is 101.6 mm, 10 cm is 100 mm: stated to half an inch and half a centimetre they are one bound."""
    four_inches, ten_cm = Span(Fraction("101.6"), Fraction(200)), Span(Fraction(50), Fraction(100))
    assert core([four_inches, ten_cm]) is None
    assert core([four_inches, ten_cm], Fraction("17.7")) == Span(Fraction(100), Fraction("101.6"))


def test_coverage_by_hand() -> None:
    steps = coverage([(span(22, 34), ONE), (span(30, 41), ONE), (span(30, 30), ONE)])
    assert [(int(step.low), int(step.high), step.share) for step in steps] == [
        (22, 30, Fraction(1, 3)),
        (30, 30, Fraction(1)),
        (30, 34, Fraction(2, 3)),
        (34, 41, Fraction(1, 3)),
    ]
    assert majority(steps) == (span(30, 34),)


def test_a_majority_may_be_in_two_stretches() -> None:
    steps = coverage([(span(1, 2), ONE), (span(1, 2), ONE), (span(8, 9), ONE), (span(8, 9), ONE)])
    assert majority(steps) == (span(1, 2), span(8, 9))


def test_no_weight_no_coverage() -> None:
    assert coverage([(span(1, 2), Fraction(0))]) == ()
    assert coverage([]) == ()
    with pytest.raises(ValueError, match="no span"):
        envelope([])


ends = st.integers(0, 12)
spans_ = st.tuples(ends, ends).map(lambda pair: span(min(pair), max(pair)))
weighted = st.lists(st.tuples(spans_, st.integers(1, 3).map(Fraction)), min_size=1, max_size=8)


@settings(deadline=None, max_examples=200)
@given(weighted)
def test_coverage_is_what_a_count_on_a_grid_gives(pairs) -> None:
    """Second answer: at every half, count the weight of the spans that hold it."""
    total = sum(weight for _, weight in pairs)
    steps = coverage(pairs)
    for half in range(25):
        value = Fraction(half, 2)
        held = sum(weight for one, weight in pairs if one.low <= value <= one.high) / total
        told = [step.share for step in steps if step.low <= value <= step.high]
        assert max(told, default=Fraction(0)) == held


@settings(deadline=None, max_examples=200)
@given(weighted, st.randoms())
def test_order_does_not_matter_and_core_lies_in_majority_lies_in_envelope(pairs, random) -> None:
    shuffled = list(pairs)
    random.shuffle(shuffled)
    assert coverage(shuffled) == coverage(pairs)
    spans = [one for one, _ in pairs]
    whole, shared, most = envelope(spans), core(spans), majority(coverage(pairs))
    assert all(whole.low <= one.low and one.high <= whole.high for one in most)
    if shared is not None:
        assert any(one.low <= shared.low and shared.high <= one.high for one in most)


@settings(deadline=None, max_examples=200)
@given(spans_, spans_)
def test_relation_seen_from_the_other_side(a: Span, b: Span) -> None:
    there, back = relation(a, b), relation(b, a)
    assert back is MIRROR.get(there, there)
    assert (gap(a, b) > 0) is (there is Relation.APART)
