"""One finding in a line, in print form or as plain data: what all share, what most say, what anybody says."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import asdict, dataclass
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.directions import TURN, compass_point
from auctorum.characters.show import format_span, format_value
from auctorum.characters.states import state_names, state_weights
from auctorum.characters.values import States
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.findings import Bound, Evidence, Finding, RangeAgreement, Span
from auctorum.circumscription.measures import measures

NOTHING = "–"
HALF = Fraction(1, 2)
RARE = Fraction(1, 10)  # share of one statement up to which a state is said to be rare beside others


@dataclass(frozen=True, slots=True)
class Summary:
    """Core, majority and envelope as words; a dash where there is none."""

    core: str
    majority: str
    envelope: str


def summary(finding: Finding, character: Character) -> Summary:
    """The finding in a line, in the character's unit or the states of its vocabulary; no more exact than stated."""
    agreement = finding.agreement
    if agreement is None:
        return Summary(NOTHING, NOTHING, NOTHING)
    if isinstance(agreement, RangeAgreement):
        printed = measures(finding.evidence, character).rounded_span
        return Summary(
            span_words(agreement.core and printed(agreement.core), character),
            "; ".join(span_words(printed(span), character) for span in agreement.majority) or NOTHING,
            span_words(printed(agreement.envelope), character),
        )
    return Summary(
        state_words(agreement.core, character),
        state_words(majority_states(finding, character), character),
        state_words(agreement.envelope, character),
    )


def majority_states(finding: Finding, character: Character) -> tuple[str, ...]:
    """States that at least half of the weight of the evidence holds for more than rare, in vocabulary order."""
    allowed: dict[str, Fraction] = {}
    total = sum((item.weight for item in finding.evidence), Fraction(0))
    for item in finding.evidence:
        if isinstance(item.value, States):
            for state, weight in state_weights(item.value, character).items():
                if weight > RARE:
                    allowed[state] = allowed.get(state, Fraction(0)) + item.weight
    return tuple(state for state in state_names(character) if total and allowed.get(state, 0) / total >= HALF)


def span_words(span: Span | None, character: Character) -> str:
    """A span in print: figures with their unit, or compass points where the degrees are such."""
    if span is None:
        return NOTHING
    if character.kind is Kind.ANGLE and span.low is not None and span.high is not None:
        low, high = (_direction(bound) for bound in (span.low, span.high))
        if low and high:
            return low if low == high else f"{low} to {high}"
        ends = (format_span(end % TURN, end % TURN, "degree") for end in (span.low, span.high))
        return " to ".join(dict.fromkeys(ends))
    return format_span(span.low, span.high, character.unit)


def _direction(degrees: Fraction) -> str:
    """The compass point; empty where the degrees are none."""
    turned = degrees % TURN
    return compass_point(Decimal(turned.numerator) / turned.denominator)


def state_words(states: Sequence[str], character: Character) -> str:
    """States in print; neighbours along a spectrum as a span from the first to the last."""
    if not states:
        return NOTHING
    names = state_names(character)
    if character.kind is Kind.ORDERED and len(states) > 2 and all(state in names for state in states):
        places = [names.index(state) for state in states]
        if places == list(range(places[0], places[0] + len(places))):
            return f"{states[0]} to {states[-1]}"
    return " or ".join(states)


def finding_data(finding: Finding, vocabulary: Vocabulary) -> dict[str, object]:
    """The finding as plain data for JSON; figures in the character's unit."""
    character = vocabulary[finding.character]
    line = summary(finding, character)
    agreement = finding.agreement
    return {
        "character": finding.character,
        "stage": finding.stage,
        "unit": character.unit,
        "verdict": str(finding.verdict),
        "core": line.core,
        "majority": line.majority,
        "envelope": line.envelope,
        "remarks": list(finding.remarks),
        "lower_bound": _bound_data(agreement.lower) if isinstance(agreement, RangeAgreement) else None,
        "upper_bound": _bound_data(agreement.upper) if isinstance(agreement, RangeAgreement) else None,
        "count": asdict(finding.count),
        "sides": [{"says": side.says, "works": list(side.works)} for side in finding.sides],
        "silent": list(finding.silent),
        "statements": [_evidence_data(item, character) for item in finding.evidence],
    }


def _evidence_data(item: Evidence, character: Character) -> dict[str, object]:
    data: dict[str, object] = {
        "work": item.work,
        "year": item.year,
        "page": item.page,
        "verbatim": item.verbatim,
        "read_as": format_value(item.value, character),
        "weight": _number(item.weight),
        "repeats": item.repeats,
    }
    if item.span is not None:
        data |= {"low": _number(item.span.low), "high": _number(item.span.high)}
    return data


def _bound_data(bound: Bound | None) -> dict[str, object] | None:
    if bound is None:
        return None
    return {
        "stated": bound.stated,
        "median": _number(bound.median),
        "spread": _number(bound.spread),
        "stable": bound.stable,
        "tau": bound.tau,
        "p": bound.p,
    }


def _number(value: Fraction | None) -> float | None:
    return None if value is None else float(value)
