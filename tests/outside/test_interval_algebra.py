"""Core, envelope, coverage, majority and relation of ranges against the library `portion`.

Source: portion, "Python data structure and operations for intervals" (A. Decan, on PyPI), whose intervals know open and
infinite ends. The random ranges are drawn with a fixed seed; precision is taken as exact except where a test says so.
"""

from __future__ import annotations

import random
from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import reduce
from itertools import pairwise
from operator import and_, or_

import portion
import pytest

from auctorum.circumscription.findings import Relation, Span
from auctorum.circumscription.sweep import Stretch, core, coverage, envelope, majority, relation

CASES = 3000
WIDEST = 20


def drawn(rng: random.Random, slack: Fraction = Fraction(0)) -> Stretch:
    """A range of whole numbers; one end in six is not stated, never both."""
    low, high = sorted((Fraction(rng.randint(0, WIDEST)), Fraction(rng.randint(0, WIDEST))))
    open_end = rng.randint(0, 5)
    return Stretch(
        None if open_end == 0 else low, None if open_end == 1 else high, slack, slack, Fraction(rng.randint(0, 3))
    )


def literatures(seed: int, *, closed: bool = False) -> Iterator[list[Stretch]]:
    rng = random.Random(seed)
    for _ in range(CASES):
        several = [drawn(rng) for _ in range(rng.randint(1, 7))]
        kept = [one for one in several if one.low is not None and one.high is not None] if closed else several
        if kept:
            yield kept


def interval(one: Stretch | Span) -> portion.Interval:
    """The range as an interval; an end that is not stated has no bound."""
    low = -portion.inf if one.low is None else one.low
    high = portion.inf if one.high is None else one.high
    left = portion.OPEN if one.low is None else portion.CLOSED
    right = portion.OPEN if one.high is None else portion.CLOSED
    return portion.Interval.from_atomic(left, low, high, right)


def places(several: Sequence[Stretch]) -> list[Fraction]:
    """Every bound, a value between each two, and one beyond either end of all."""
    ends = sorted({end for one in several for end in (one.low, one.high) if end is not None})
    return [ends[0] - 1, *ends, *((a + b) / 2 for a, b in pairwise(ends)), ends[-1] + 1]


def test_core_is_the_intersection() -> None:
    for several in literatures(1):
        found = core(several)
        expected = reduce(and_, map(interval, several))
        assert (portion.empty() if found is None else interval(found)) == expected


def test_envelope_is_the_enclosure_of_what_is_stated() -> None:
    """Of closed ranges it is the hull; an end is open only where nobody states it, since silence spans nothing."""
    for several in literatures(2, closed=True):
        assert interval(envelope(several)) == reduce(or_, map(interval, several)).enclosure
    for several in literatures(3):
        points = [portion.singleton(end) for one in several for end in (one.low, one.high) if end is not None]
        stated = reduce(or_, points).enclosure
        found = envelope(several)
        assert found.low == (stated.lower if any(one.low is not None for one in several) else None)
        assert found.high == (stated.upper if any(one.high is not None for one in several) else None)


def test_coverage_counts_the_intervals_that_hold_a_value() -> None:
    for several in literatures(4):
        steps = coverage(several)
        weights = [one.weight for one in several]
        if not any(weights):
            weights = [Fraction(1)] * len(several)
        whole, hull = sum(weights), interval(envelope(several))
        intervals = list(map(interval, several))
        for value in places(several):
            held = sum(weight for one, weight in zip(intervals, weights, strict=True) if value in one) / whole
            told = [step.share for step in steps if value in interval(Span(step.low, step.high))]
            assert bool(told) == (value in hull)
            if told:  # where two steps meet, the value belongs to the higher
                assert max(told) == held


def test_majority_is_where_half_the_weight_meets() -> None:
    """Within the envelope: the union, over all sets of works that weigh half of all, of what the set shares."""
    for several in literatures(5):
        if not any(one.weight for one in several):
            continue
        whole = sum(one.weight for one in several)
        hull = interval(envelope(several))
        expected = portion.empty()
        for members in range(1, 2 ** len(several)):
            chosen = [one for place, one in enumerate(several) if members >> place & 1]
            if 2 * sum(one.weight for one in chosen) >= whole:
                expected |= reduce(and_, map(interval, chosen))
        found = reduce(or_, map(interval, majority(coverage(several))), portion.empty())
        assert found == expected & hull


def told_by_portion(a: Stretch, b: Stretch) -> Relation:
    one, other = interval(a), interval(b)
    if not one.overlaps(other):
        return Relation.APART
    if one == other:
        return Relation.EQUAL
    if [end is None for end in (a.low, a.high)] != [end is None for end in (b.low, b.high)]:
        return Relation.OPEN  # a bound is not stated: whether one holds the other cannot be told
    if one in other:
        return Relation.WITHIN
    return Relation.CONTAINS if other in one else Relation.OVERLAPS


def test_relation() -> None:
    rng = random.Random(6)
    told = set()
    for _ in range(3 * CASES):
        a, b = drawn(rng), drawn(rng)
        if rng.randint(0, 9) == 0:
            b = a
        assert relation(a, b) is told_by_portion(a, b), (a, b)
        told.add(relation(a, b))
    assert told == set(Relation)


@pytest.mark.parametrize("slack", [Fraction(1, 2), Fraction(5), Fraction("12.7")], ids=["mm", "cm", "half-an-inch"])
def test_ranges_within_precision_never_count_as_apart(slack: Fraction) -> None:
    """With precision, ranges are apart just where they are so after each is widened by what its digits may hide."""
    rng = random.Random(7)
    apart = 0
    for _ in range(CASES):
        a, b = drawn(rng, slack), drawn(rng, rng.choice((Fraction(0), Fraction(1, 2), Fraction(5))))
        meet = not (widened(a) & widened(b)).empty or interval(a).overlaps(interval(b))
        assert (relation(a, b) is not Relation.APART) == meet
        assert (core([a, b]) is not None) == meet
        apart += not meet
    assert 0 < apart < CASES


def widened(one: Stretch) -> portion.Interval:
    """The values its digits may stand for; without their ends, since figures whose precision only touches differ."""
    low = -portion.inf if one.low is None else one.low - one.low_slack
    high = portion.inf if one.high is None else one.high + one.high_slack
    exact_low = one.low is not None and not one.low_slack
    exact_high = one.high is not None and not one.high_slack
    left = portion.CLOSED if exact_low else portion.OPEN
    return portion.Interval.from_atomic(left, low, high, portion.CLOSED if exact_high else portion.OPEN)


def test_many_ranges_at_once() -> None:
    """A hundred ranges: the same answers as of few."""
    rng = random.Random(8)
    several = [drawn(rng) for _ in range(100)]
    narrow = [Stretch(Fraction(5 + n, 7), Fraction(790 - n, 7)) for n in range(100)]
    assert core(several) is None
    assert reduce(and_, map(interval, several)).empty
    assert interval(core(narrow) or Span(None, None)) == reduce(and_, map(interval, narrow))
    assert interval(envelope(narrow)) == reduce(or_, map(interval, narrow)).enclosure
    held = max(sum(value in interval(one) for one in narrow) for value in places(narrow))
    assert max(step.share for step in coverage(narrow)) == Fraction(held, 100)
