"""Readings of statements as evidence: exact spans in the unit of the character, aspects on one turn of the compass."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from auctorum.characters.bounds import bounds
from auctorum.characters.directions import TURN
from auctorum.characters.values import Range, Reading
from auctorum.characters.vocabulary import Character
from auctorum.circumscription.findings import Evidence, Span
from auctorum.corpus.model import Statement


def evidence_of(
    statement: Statement, reading: Reading, character: Character, *, repeats: str = "", weight: Fraction = Fraction(1)
) -> Evidence:
    """One reading as evidence; `repeats` is the work whose figures it repeats.

    An upper end left open (`8–13+`) counts as not stated. Raises UnfitUnit or UnknownUnit where a range is not of the
    character's unit; the linker lets none through.
    """
    work = statement.work
    found = Evidence(
        statement.id, work.id, work.year, work.byline, statement.page, statement.verbatim, reading.value, weight,
        repeats=repeats,
    )  # fmt: skip
    if not isinstance(reading.value, Range):
        return found
    stated = bounds(reading.value, character.unit)
    high = None if reading.value.more else stated.high
    most = None if high is None else (high if stated.most is None else stated.most)
    return replace(
        found,
        span=Span(stated.low, high),
        extremes=Span(stated.low if stated.least is None else stated.least, most),
        slack_low=stated.low_slack,
        slack_high=stated.high_slack,
    )


def on_one_turn(evidence: Sequence[Evidence]) -> tuple[Evidence, ...]:
    """Aspects in their order, each turned by whole circles to lie about the circular mean of those with weight.

    Every arc is moved so that its middle is at most half a turn from the mean direction of the middles, and all
    together so that the lowest bound is from 0 to 360; arcs across north then end above 360. Where the directions
    cancel out and have no mean, the least middle takes its place.
    """
    middles = {place: _middle(item.span) for place, item in enumerate(evidence) if item.span is not None}
    if not middles:
        return tuple(evidence)
    weighty = [place for place in middles if evidence[place].weight] or list(middles)
    last = mean_direction([middles[place] for place in weighty]) + TURN // 2
    turns = {place: (last - middle) // TURN for place, middle in middles.items()}
    turned = [_turned(item, turns.get(place, 0)) for place, item in enumerate(evidence)]
    spans = [span for place in weighty if (span := turned[place].span) is not None]
    ends = [end for span in spans for end in (span.low, span.high) if end is not None]
    together = min(ends) // TURN
    return tuple(_turned(item, -together) for item in turned)


def _middle(span: Span) -> Fraction:
    ends = [end for end in (span.low, span.high) if end is not None]
    return sum(ends, Fraction(0)) / len(ends)


def mean_direction(degrees: Sequence[Fraction]) -> Fraction:
    """Direction of the sum of unit vectors, to a thousandth of a degree; summed exactly, so in any order."""
    radians = [math.radians(angle % TURN) for angle in degrees]
    east, north = math.fsum(map(math.sin, radians)), math.fsum(map(math.cos, radians))
    if math.hypot(east, north) < 1e-6 * len(degrees):
        return min(angle % TURN for angle in degrees)
    return Fraction(round(math.degrees(math.atan2(east, north)) * 1000), 1000)


def _turned(item: Evidence, turns: int) -> Evidence:
    if not turns or item.span is None:
        return item
    return replace(item, span=_moved(item.span, turns), extremes=_moved(item.extremes or item.span, turns))


def _moved(span: Span, turns: int) -> Span:
    low, high = (None if end is None else end + turns * TURN for end in (span.low, span.high))
    return Span(low, high)
