"""What several statements about one character at one stage share, span and mostly hold."""

from __future__ import annotations

import cmath
import math
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import combinations

from auctorum.characters.states import state_names, state_weights
from auctorum.characters.values import States
from auctorum.characters.vocabulary import Character
from auctorum.circumscription.findings import Evidence, RangeAgreement, Span, StateAgreement
from auctorum.circumscription.sweep import core, coverage, envelope, gap, majority
from auctorum.circumscription.trend import bound

TURN = 360


def agreement(evidence: Sequence[Evidence], character: Character) -> RangeAgreement | StateAgreement:
    """Agreement of the statements, in the character's unit; their order does not matter.

    Directions (kind angle) have to be turned around their common mean first (`turned`); results may then lie below
    0 or above 360 degrees. Raises ValueError if there is no statement: silence is judged by the
    caller.
    """
    if not evidence:
        raise ValueError("no statement to agree or disagree")
    evidence = sorted(evidence, key=lambda item: (item.year, item.statement))
    if character.kind.is_numeric:
        return _ranges(evidence)
    return _states(evidence, character)


def _ranges(evidence: Sequence[Evidence]) -> RangeAgreement:
    spans = [item.span for item in evidence if item.span is not None]
    weighted = [(item.span, item.weight) for item in evidence if item.span is not None]
    steps = coverage(weighted)
    whole = envelope([item.extremes or item.span or Span(None, None) for item in evidence])
    return RangeAgreement(
        core=core(spans, meeting_slack(evidence)),
        envelope=whole,
        coverage=steps,
        majority=majority(steps),
        lower=bound([(e.year, e.span.low, e.slack_low) for e in evidence if e.span and e.span.low is not None]),
        upper=bound([(e.year, e.span.high, e.slack_high) for e in evidence if e.span and e.span.high is not None]),
    )


def meeting_slack(evidence: Sequence[Evidence]) -> Fraction:
    """The stated precision of the two bounds that come closest to miss each other: highest low and lowest high."""
    lows = [(e.span.low, e.slack_low) for e in evidence if e.span and e.span.low is not None]
    highs = [(e.span.high, e.slack_high) for e in evidence if e.span and e.span.high is not None]
    return max(lows)[1] + min(highs)[1] if lows and highs else Fraction(0)


def apart(a: Evidence, b: Evidence) -> bool:
    """Whether two ranges, or two sets of states, have nothing in common, within stated precision."""
    if a.span is None or b.span is None:
        return False
    return 0 < gap(a.span, b.span) >= slack_between(a, b)


def slack_between(a: Evidence, b: Evidence) -> Fraction:
    """Precision of the two bounds that face each other."""
    a_below = a.span is not None and b.span is not None and (a.span.high or 0) <= (b.span.low or 0)
    return a.slack_high + b.slack_low if a_below else a.slack_low + b.slack_high


def turned(evidence: Sequence[Evidence]) -> list[Evidence]:
    """Directions turned by whole circles so that their middles lie within half a circle of the common mean."""
    middles = [middle for item in evidence if (middle := _middle(item.span)) is not None]
    mean = sum((cmath.rect(1, math.radians(middle)) for middle in middles), 0j)
    centre = math.degrees(cmath.phase(mean)) if abs(mean) > 1e-9 else (middles[0] if middles else 0.0)
    return [_turned(item, centre) for item in evidence]


def _middle(span: Span | None) -> float | None:
    return None if span is None or span.low is None or span.high is None else float(span.low + span.high) / 2


def _turned(item: Evidence, centre: float) -> Evidence:
    middle = _middle(item.span)
    if middle is None:
        return item
    by = TURN * round((centre - middle) / TURN)
    return replace(item, span=_moved(item.span, by), extremes=_moved(item.extremes, by))


def _moved(span: Span | None, by: int) -> Span | None:
    if span is None:
        return None
    return Span(None if span.low is None else span.low + by, None if span.high is None else span.high + by)


def allowed(item: Evidence, character: Character) -> frozenset[str]:
    """The states that one statement lets occur, however rarely."""
    if not isinstance(item.value, States):
        return frozenset()
    return frozenset(state_weights(item.value, character))


def _states(evidence: Sequence[Evidence], character: Character) -> StateAgreement:
    names = state_names(character)
    totals: dict[str, Fraction] = {}
    whole = sum((item.weight for item in evidence), Fraction(0)) or Fraction(1)
    for item in evidence:
        if isinstance(item.value, States):
            for state, weight in state_weights(item.value, character).items():
                totals[state] = totals.get(state, Fraction(0)) + weight * item.weight / whole
    sets = [allowed(item, character) for item in evidence]
    shared = frozenset.intersection(*sets)
    anybody = frozenset.union(*sets)
    return StateAgreement(
        weights=tuple((state, totals[state]) for state in names if state in totals),
        core=tuple(state for state in names if state in shared),
        envelope=tuple(state for state in names if state in anybody),
    )


def pairs_apart(evidence: Sequence[Evidence], character: Character) -> list[tuple[Evidence, Evidence]]:
    """Every pair of statements of different works that have nothing in common, the widest apart first."""
    pairs = [(a, b) for a, b in combinations(evidence, 2) if a.work != b.work]
    if character.kind.is_numeric:
        found = [(a, b) for a, b in pairs if apart(a, b)]
        return sorted(found, key=lambda pair: -_gap(*pair))
    return [(a, b) for a, b in pairs if not allowed(a, character) & allowed(b, character)]


def _gap(a: Evidence, b: Evidence) -> Fraction:
    return gap(a.span, b.span) if a.span and b.span else Fraction(0)
