"""Exact arithmetic of spans: what all hold, what any holds, how many hold each value.

An open end (None) is taken to reach as far as any stated bound. Single values count as points. Spans whose
bounds differ by less than the stated precision are taken to meet.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from enum import StrEnum
from fractions import Fraction

from auctorum.circumscription.findings import Span, Step

Weighted = tuple[Span, Fraction]
HALF = Fraction(1, 2)


class Relation(StrEnum):
    """How one range lies to another."""

    EQUAL = "equal"
    WITHIN = "within"
    CONTAINS = "contains"
    OVERLAPS = "overlaps"
    APART = "apart"
    OPEN = "open"


def relation(a: Span, b: Span, slack: Fraction = Fraction(0)) -> Relation:
    """How `a` lies to `b`; bounds that differ by less than `slack` are equal, `open` where a bound is not stated.

    Two spans that are apart by their stated bounds are apart even if another bound is open.
    """
    if 0 < gap(a, b) >= slack:
        return Relation.APART
    if a.low is None or a.high is None or b.low is None or b.high is None:
        return Relation.OPEN
    low_equal = a.low == b.low or abs(a.low - b.low) < slack
    high_equal = a.high == b.high or abs(a.high - b.high) < slack
    if low_equal and high_equal:
        return Relation.EQUAL
    if (low_equal or a.low > b.low) and (high_equal or a.high < b.high):
        return Relation.WITHIN
    if (low_equal or a.low < b.low) and (high_equal or a.high > b.high):
        return Relation.CONTAINS
    return Relation.OVERLAPS


def gap(a: Span, b: Span) -> Fraction:
    """How far two spans are apart; 0 or less where they meet."""
    gaps = [Fraction(-1)]
    if a.high is not None and b.low is not None:
        gaps.append(b.low - a.high)
    if b.high is not None and a.low is not None:
        gaps.append(a.low - b.high)
    return max(gaps)


def envelope(spans: Sequence[Span]) -> Span:
    """The hull of all stated bounds. Raises ValueError if there is no span."""
    if not spans:
        raise ValueError("no span")
    lows = [one.low for one in spans if one.low is not None]
    highs = [one.high for one in spans if one.high is not None]
    bounds = lows + highs
    low = min(bounds) if lows else None
    return Span(low, max(bounds) if highs else None)


def core(spans: Sequence[Span], slack: Fraction = Fraction(0)) -> Span | None:
    """What all spans share; None if nothing. Bounds that miss each other by less than `slack` meet."""
    lows = [one.low for one in spans if one.low is not None]
    highs = [one.high for one in spans if one.high is not None]
    if not lows or not highs:
        return Span(max(lows, default=None), min(highs, default=None))
    low, high = max(lows), min(highs)
    if low <= high:
        return Span(low, high)
    return Span(high, low) if low - high < slack else None


def coverage(weighted: Iterable[Weighted]) -> tuple[Step, ...]:
    """Share of the weight that holds each value, as steps from low to high; neighbours of equal share are one step.

    Bounds belong to the spans. A value at which the share differs from both sides is a step of width 0. Empty
    where no weight is left or no bound is stated.
    """
    weighted = [(span, weight) for span, weight in weighted if weight > 0]
    total = sum((weight for _, weight in weighted), Fraction(0))
    bounds = sorted({bound for span, _ in weighted for bound in (span.low, span.high) if bound is not None})
    if not total or not bounds:
        return ()
    starts, ends = _weights_at(weighted, bounds)
    steps: list[Step] = []
    held = Fraction(0)
    for number, bound in enumerate(bounds):
        held += starts.get(bound, 0)
        _extend(steps, bound, bound, held / total)
        held -= ends.get(bound, 0)
        if number + 1 < len(bounds):
            _extend(steps, bound, bounds[number + 1], held / total)
    return tuple(steps)


def _weights_at(
    weighted: Iterable[Weighted], bounds: Sequence[Fraction]
) -> tuple[dict[Fraction, Fraction], dict[Fraction, Fraction]]:
    """Weight that begins and that ends at each bound."""
    starts: dict[Fraction, Fraction] = {}
    ends: dict[Fraction, Fraction] = {}
    for span, weight in weighted:
        low = bounds[0] if span.low is None else span.low
        high = bounds[-1] if span.high is None else span.high
        starts[low] = starts.get(low, Fraction(0)) + weight
        ends[high] = ends.get(high, Fraction(0)) + weight
    return starts, ends


def _extend(steps: list[Step], low: Fraction, high: Fraction, share: Fraction) -> None:
    """Add a point or a stretch, joined to the step before it if the share is the same."""
    if steps and steps[-1].share == share:
        steps[-1] = Step(steps[-1].low, high, share)
    else:
        steps.append(Step(low, high, share))


def majority(steps: Iterable[Step], least: Fraction = HALF) -> tuple[Span, ...]:
    """The stretches that at least `least` of the weight holds, from low to high."""
    found: list[Span] = []
    for step in steps:
        if step.share < least:
            continue
        if found and found[-1].high == step.low:
            found[-1] = Span(found[-1].low, step.high)
        else:
            found.append(Span(step.low, step.high))
    return tuple(found)
