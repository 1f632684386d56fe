"""What an agreement comes to: a verdict in a word, remarks in sentences, and the sides where authors differ.

| verdict | when |
|---|---|
| silent | nobody says anything |
| single author | one author or team says something |
| conflicting | two works have nothing in common, within stated precision |
| drifting | they share something, and a bound moves with the years: |tau| >= 0.6 and p <= 0.05 |
| unanimous | every range is the same within stated precision, or every work allows the same states |
| consistent | anything else: nested or overlapping, with nobody apart |

The first that fits counts.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from auctorum.characters.show import format_number, format_value
from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.agreement import allowed, pairs_apart
from auctorum.circumscription.findings import (
    Bound,
    Evidence,
    RangeAgreement,
    Side,
    StateAgreement,
    Verdict,
)
from auctorum.circumscription.summary import span_words, state_words
from auctorum.circumscription.sweep import envelope, gap
from auctorum.circumscription.trend import LEAST

STRONG = 0.6  # |tau| from which a bound is said to move
SURE = 0.05  # p up to which it is said


def verdict(
    evidence: Sequence[Evidence], agreed: RangeAgreement | StateAgreement | None, character: Character
) -> Verdict:
    """The verdict on one character at one stage; `evidence` is by date."""
    if agreed is None:
        return Verdict.SILENT
    if len({_author(item) for item in evidence}) == 1:
        return Verdict.SINGLE
    if pairs_apart(evidence, character):
        return Verdict.CONFLICTING
    if isinstance(agreed, RangeAgreement):
        if drifts(agreed.lower) or drifts(agreed.upper):
            return Verdict.DRIFTING
        return Verdict.UNANIMOUS if _same_ranges(evidence, agreed) else Verdict.CONSISTENT
    same = len({allowed(item, character) for item in evidence}) == 1
    return Verdict.UNANIMOUS if same else Verdict.CONSISTENT


def _author(item: Evidence) -> str:
    return item.byline.rsplit(" ", 1)[0]


def _same_ranges(evidence: Sequence[Evidence], agreed: RangeAgreement) -> bool:
    every = [item for item in evidence if item.span is not None]
    closed = all(item.span.low is not None and item.span.high is not None for item in every if item.span)
    bounds = [bound for bound in (agreed.lower, agreed.upper) if bound is not None]
    return closed and len(bounds) == 2 and all(bound.stable for bound in bounds)


def drifts(bound: Bound | None) -> bool:
    """Whether a bound moves with the years, beyond stated precision and beyond chance."""
    if bound is None or bound.stable or bound.tau is None or bound.p is None:
        return False
    return abs(bound.tau) >= STRONG and bound.p <= SURE


def remarks(
    evidence: Sequence[Evidence], agreed: RangeAgreement | StateAgreement | None, character: Character
) -> tuple[str, ...]:
    """The finding in sentences, the weightiest first; `evidence` is by date."""
    if agreed is None or not evidence:
        return ()
    found = [_conflict(evidence, character)]
    if isinstance(agreed, RangeAgreement):
        if character.kind is not Kind.ANGLE:
            found += [
                _bound_remark("lower", evidence, agreed.lower, character),
                _bound_remark("upper", evidence, agreed.upper, character),
            ]
    else:
        found.append(_state_remark(evidence, agreed, character))
    return tuple(remark for remark in found if remark)


def _conflict(evidence: Sequence[Evidence], character: Character) -> str:
    pairs = pairs_apart(evidence, character)
    if not pairs:
        return ""
    first, second = pairs[0]
    said = [f"{item.byline} ({format_value(item.value, character)})" for item in (first, second)]
    since = min(max(a.year, b.year) for a, b in pairs)
    if character.kind.is_numeric and first.span and second.span:
        width = format_number(gap(first.span, second.span))
        unit = f" {character.unit}" if character.unit else ""
        return f"{said[0]} and {said[1]} are {width}{unit} apart; such a gap has stood since {since}."
    return f"{said[0]} and {said[1]} have no state in common; authors have differed so since {since}."


def _bound_remark(which: str, evidence: Sequence[Evidence], bound: Bound | None, character: Character) -> str:
    stated = [(item, _bound_of(which, item)) for item in evidence]
    told = [(item, value) for item, value in stated if value is not None]
    if bound is None or len({_author(item) for item, _ in told}) < 2:
        return ""
    works = len({item.work for item, _ in told})
    years = f"{told[0][0].year} to {told[-1][0].year}"
    unit = f" {character.unit}" if character.unit else ""
    if bound.stable:
        return f"The {which} bound never moved: {format_number(bound.median)}{unit} in all {works} works, {years}."
    if drifts(bound) and bound.tau is not None and bound.p is not None:
        (first, low), (last, high) = told[0], told[-1]
        way = "rose" if bound.tau > 0 else "fell"
        chance = f"tau {_signed(bound.tau)}, p {bound.p:.2g}"
        return (
            f"The {which} bound {way} from {format_number(low)}{unit} ({first.byline}) to "
            f"{format_number(high)}{unit} ({last.byline}); {chance}."
        )
    if len(told) < LEAST:
        return f"Too few works ({works}) state the {which} bound to judge a trend."
    values = [value for _, value in told]
    spread = f"{format_number(min(values))}–{format_number(max(values))}{unit}"
    return f"The {which} bound varies ({spread}) without a trend."


def _signed(value: float) -> str:
    return f"{value:.2f}".replace("-", "−")


def _bound_of(which: str, item: Evidence) -> Fraction | None:
    if item.span is None:
        return None
    return item.span.low if which == "lower" else item.span.high


def _state_remark(evidence: Sequence[Evidence], agreed: StateAgreement, character: Character) -> str:
    authors = {_author(item) for item in evidence}
    if len(authors) < 2:
        return ""
    sets = [(item, allowed(item, character)) for item in evidence]
    if len({states for _, states in sets}) == 1:
        return f"All {len(authors)} authors say {state_words(agreed.core, character)}."
    counted = {state: len({_author(item) for item, states in sets if state in states}) for state in agreed.envelope}
    return "; ".join(f"{count} of {len(authors)} authors allow {state}" for state, count in counted.items()) + "."


def sides(evidence: Sequence[Evidence], character: Character) -> tuple[Side, ...]:
    """Where some pair is apart: the works on each side, with what they say. Works that meet both sides are on none."""
    if not pairs_apart(evidence, character):
        return ()
    if not character.kind.is_numeric:
        return _state_sides(evidence, character)
    spans = [(item, item.span) for item in evidence if item.span is not None]
    lowest_high = min(span.high for _, span in spans if span.high is not None)
    highest_low = max(span.low for _, span in spans if span.low is not None)
    below = [item for item, span in spans if span.high is not None and span.high < highest_low]
    above = [item for item, span in spans if span.low is not None and span.low > lowest_high]
    return tuple(_side(items, character) for items in (below, above))


def _side(items: Sequence[Evidence], character: Character) -> Side:
    says = span_words(envelope([item.span for item in items if item.span is not None]), character)
    return Side(says, tuple(dict.fromkeys(item.work for item in items)))


def _state_sides(evidence: Sequence[Evidence], character: Character) -> tuple[Side, ...]:
    order = state_names(character)
    groups: dict[tuple[str, ...], list[str]] = {}
    for item in evidence:
        states = tuple(state for state in order if state in allowed(item, character))
        groups.setdefault(states, []).append(item.work)
    facing = {states for states in groups for other in groups if not set(states) & set(other)}
    return tuple(
        Side(state_words(states, character), tuple(dict.fromkeys(works)))
        for states, works in groups.items()
        if states in facing
    )
