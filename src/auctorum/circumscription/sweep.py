"""Exact arithmetic of ranges: core, envelope, coverage and majority, and how two ranges lie to each other.

Two figures agree when the intervals that their printed digits stand for share more than an end: 10 cm is
9.5 to 10.5 cm, 4 in is 3.5 to 4.5 in, and so they agree; 22 mm and 23 mm only touch, and differ.

Ranges that miss each other, yet agree within precision at the ends that face, meet: the less precise end is taken to
reach to the more precise one. So a core exists wherever no two ranges are apart (Helly's theorem on the line).
"""

from __future__ import annotations

from bisect import bisect_right
from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NamedTuple

from auctorum.characters.bounds import agree
from auctorum.circumscription.findings import Relation, Span, Step

HALF = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class Stretch:
    """One range with half the stated precision of each bound, and its weight; None is a bound not stated."""

    low: Fraction | None
    high: Fraction | None
    low_slack: Fraction = Fraction(0)
    high_slack: Fraction = Fraction(0)
    weight: Fraction = Fraction(1)


class Figure(NamedTuple):
    """A stated figure and half its stated precision."""

    value: Fraction
    slack: Fraction


def same(a: Figure, b: Figure) -> bool:
    """Whether two figures say the same within their stated precision.

    >>> same(Figure(Fraction(100), Fraction(5)), Figure(Fraction("101.6"), Fraction("12.7")))  # 10 cm, 4 in
    True
    >>> same(Figure(Fraction(22), HALF), Figure(Fraction(23), HALF))
    False
    """
    return agree(a.value, a.slack, b.value, b.slack)


def all_same(figures: Sequence[Figure]) -> bool:
    """Whether every two figures say the same; True for none or one."""
    if len({figure.value for figure in figures}) < 2:
        return True
    return max(value - slack for value, slack in figures) < min(value + slack for value, slack in figures)


def low_of(stretch: Stretch) -> Figure | None:
    """The lower bound as a figure; None where it is not stated."""
    return None if stretch.low is None else Figure(stretch.low, stretch.low_slack)


def high_of(stretch: Stretch) -> Figure | None:
    """The upper bound as a figure; None where it is not stated."""
    return None if stretch.high is None else Figure(stretch.high, stretch.high_slack)


def relation(a: Stretch, b: Stretch) -> Relation:
    """How `a` lies to `b`. Two bounds that both are not stated count as equal."""
    if _below(a, b) or _below(b, a):
        return Relation.APART
    lows, highs = _order(low_of(a), low_of(b)), _order(high_of(a), high_of(b))
    if lows is None or highs is None:
        return Relation.OPEN
    if lows == highs == 0:
        return Relation.EQUAL
    if lows >= 0 >= highs:
        return Relation.WITHIN
    if lows <= 0 <= highs:
        return Relation.CONTAINS
    return Relation.OVERLAPS


def _below(a: Stretch, b: Stretch) -> bool:
    high, low = high_of(a), low_of(b)
    return high is not None and low is not None and high.value < low.value and not same(high, low)


def _order(a: Figure | None, b: Figure | None) -> int | None:
    """0 for the same, 1 where `a` is the greater, -1 where it is the lesser; None where one alone is stated."""
    if a is None and b is None:
        return 0
    if a is None or b is None:
        return None
    return 0 if same(a, b) else (1 if a.value > b.value else -1)


def meeting(stretches: Sequence[Stretch]) -> tuple[Stretch, ...]:
    """The ranges in their order, each reaching to those that it misses by no more than precision tells."""
    lows = [low_of(one) for one in stretches]
    highs = [high_of(one) for one in stretches]
    down = _reached(lows, highs)
    up = _reached([_mirrored(one) for one in highs], [_mirrored(one) for one in lows])
    return tuple(
        replace(one, low=low, high=None if high is None else -high)
        for one, low, high in zip(stretches, down, up, strict=True)
    )


def _mirrored(figure: Figure | None) -> Figure | None:
    return None if figure is None else Figure(-figure.value, figure.slack)


def _reached(ends: Sequence[Figure | None], facing: Iterable[Figure | None]) -> list[Fraction | None]:
    """Each end, or the lowest of the figures below it, at least as precise, with which it agrees."""
    levels: dict[Fraction, list[Fraction]] = defaultdict(list)
    for figure in facing:
        if figure is not None:
            levels[figure.slack].append(figure.value)
    for values in levels.values():
        values.sort()
    return [None if end is None else _lowest_met(end, levels) for end in ends]


def _lowest_met(end: Figure, levels: Mapping[Fraction, Sequence[Fraction]]) -> Fraction:
    lowest = end.value
    for slack, values in levels.items():
        if slack <= end.slack:
            place = bisect_right(values, end.value - end.slack - slack)
            if place < len(values):
                lowest = min(lowest, values[place])
    return lowest


def core(stretches: Sequence[Stretch]) -> Span | None:
    """What all ranges hold; None where there is no such value. Raises ValueError if there is no range."""
    if not stretches:
        raise ValueError("no range to take a core of")
    met = meeting(stretches)
    low = max((one.low for one in met if one.low is not None), default=None)
    high = min((one.high for one in met if one.high is not None), default=None)
    return None if low is not None and high is not None and low > high else Span(low, high)


def envelope(spans: Iterable[Span | Stretch]) -> Span:
    """From the lowest to the highest figure that anybody states; an end is None where nobody states that bound."""
    several = tuple(spans)
    figures = [end for one in several for end in (one.low, one.high) if end is not None]
    low_stated = any(one.low is not None for one in several)
    high_stated = any(one.high is not None for one in several)
    return Span(min(figures) if low_stated else None, max(figures) if high_stated else None)


def coverage(stretches: Sequence[Stretch]) -> tuple[Step, ...]:
    """Share of the weight that holds each value, over the whole envelope, by value.

    An open range covers everything beyond its stated bound. Where all weights are 0, all ranges count alike.
    """
    met = meeting(stretches)
    weights = [one.weight for one in met]
    if not any(weights):
        weights = [Fraction(1)] * len(met)
    whole, hull = sum(weights, Fraction(0)), envelope(stretches)
    begin: dict[Fraction, Fraction] = defaultdict(Fraction)
    end: dict[Fraction, Fraction] = defaultdict(Fraction)
    held = Fraction(0)
    for one, weight in zip(met, weights, strict=True):
        if one.low is None:
            held += weight
        else:
            begin[one.low] += weight
        if one.high is not None:
            end[one.high] += weight
    cuts = sorted({*begin, *end, *(edge for edge in (hull.low, hull.high) if edge is not None)})
    return _merged(_pieces(cuts, begin, end, held, hull), whole)


def _pieces(
    cuts: Sequence[Fraction],
    begin: Mapping[Fraction, Fraction],
    end: Mapping[Fraction, Fraction],
    held: Fraction,
    hull: Span,
) -> list[Step]:
    """Weight held at each cut and between cuts, unmerged."""
    pieces = [Step(None, cuts[0], held)] if hull.low is None and cuts else []
    for place, cut in enumerate(cuts):
        held += begin.get(cut, Fraction(0))
        pieces.append(Step(cut, cut, held))
        held -= end.get(cut, Fraction(0))
        if place + 1 < len(cuts):
            pieces.append(Step(cut, cuts[place + 1], held))
        elif hull.high is None:
            pieces.append(Step(cut, None, held))
    return pieces


def _merged(pieces: Iterable[Step], whole: Fraction) -> tuple[Step, ...]:
    steps: list[Step] = []
    for piece in pieces:
        share = piece.share / whole
        if steps and steps[-1].share == share:
            steps[-1] = Step(steps[-1].low, piece.high, share)
        else:
            steps.append(Step(piece.low, piece.high, share))
    return tuple(steps)


def majority(steps: Iterable[Step], share: Fraction = HALF) -> tuple[Span, ...]:
    """The stretches that at least `share` of the weight holds, by value."""
    spans: list[Span] = []
    joined = False
    for step in steps:
        holds = step.share >= share
        if holds and joined:
            spans[-1] = Span(spans[-1].low, step.high)
        elif holds:
            spans.append(Span(step.low, step.high))
        joined = holds
    return tuple(spans)
