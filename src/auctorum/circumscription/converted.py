"""A diagnosis with every length in one unit that somebody asks for; statements keep the unit their works print."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import replace
from fractions import Fraction

from auctorum.characters.restate import figure_in, restated
from auctorum.characters.show import format_range
from auctorum.characters.units import Dimension, UnfitUnit, unit_named
from auctorum.characters.values import Range, Value
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.findings import Diagnosis, Finding, RangeAgreement, Span
from auctorum.circumscription.measures import measures
from auctorum.circumscription.text import merged_text
from auctorum.corpus.model import Corpus

_HEIGHTS = ("elevation", "altitude")
_OF_HEIGHTS = ("m", "km", "ft", "yd", "paris-foot")  # units in which anybody tells a height above the sea


def vocabulary_in(vocabulary: Vocabulary, unit: str) -> Vocabulary:
    """The vocabulary with that unit for every length, and for elevations where it is one of theirs (m, ft).

    Raises UnknownUnit, or UnfitUnit for a unit of anything but length.
    """
    found = unit_named(unit)
    if found.dimension is not Dimension.LENGTH:
        raise UnfitUnit(found.name, "a length")
    return Vocabulary(
        tuple(
            replace(character, unit=found.name) if _converts(character, found.name) else character
            for character in vocabulary.values()
        )
    )


def diagnosis_in(corpus: Corpus, taxon: str, unit: str, *, works: Collection[str] | None = None) -> Diagnosis:
    """The diagnosis with its lengths in that unit; the verdicts are those of any other.

    Evidence keeps its value as stated; its spans, and the figures of the remarks, are exact. Core, majority, envelope
    and the merged text are rounded no finer than the works are. Raises as `vocabulary_in` does.
    """
    vocabulary, named = vocabulary_in(corpus.vocabulary, unit), unit_named(unit).name
    found = diagnosis(replace(corpus, vocabulary=vocabulary), taxon, works=works)
    lengths = {name for name, one in vocabulary.items() if _converts(one, named)}
    told = [restated_finding(one, unit) if one.character in lengths else one for one in found.findings]
    findings = tuple(
        _rounded(one, vocabulary[one.character]) if one.character in lengths else one for one in found.findings
    )
    return replace(found, findings=findings, text=merged_text(told, vocabulary, found.sources))


def left_out(vocabulary: Vocabulary, unit: str) -> tuple[str, ...]:
    """The characters that measure a length and are yet not told in that unit, in order: elevations in inches."""
    return tuple(name for name, one in vocabulary.items() if _is_length(one) and not _converts(one, unit))


def converted(value: Value, character: Character, unit: str) -> str:
    """A stated length in that unit, in print; empty for what the work prints in it, and for all that is no length.

    >>> from decimal import Decimal
    >>> length = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
    >>> converted(Range(Decimal(22), Decimal(34), "mm"), length, "in")
    '0.9–1.3 in.'
    """
    if not isinstance(value, Range) or not _converts(character, unit) or value.unit == unit:
        return ""
    return format_range(restated(value, unit))


def restated_finding(finding: Finding, unit: str) -> Finding:
    """The finding as if every work had printed the unit."""
    evidence = [
        replace(item, value=restated(item.value, unit)) if isinstance(item.value, Range) else item
        for item in finding.evidence
    ]
    return replace(finding, evidence=tuple(evidence))


def _is_length(character: Character) -> bool:
    return character.kind is Kind.MEASURE and unit_named(character.unit).dimension is Dimension.LENGTH


def _converts(character: Character, unit: str) -> bool:
    return _is_length(character) and (character.property not in _HEIGHTS or unit in _OF_HEIGHTS)


def _rounded(finding: Finding, character: Character) -> Finding:
    """The finding with core, majority and envelope rounded by the finest precision stated of their bounds."""
    agreed = finding.agreement
    if not isinstance(agreed, RangeAgreement):
        return finding
    slack = measures(finding.evidence, character).slack
    finest = min(slack.values(), default=Fraction(0))

    def rounded(span: Span) -> Span:
        stated = 2 * min((slack.get(end, finest) for end in (span.low, span.high) if end is not None), default=finest)
        low, high = (None if end is None else figure_in(end, stated) for end in (span.low, span.high))
        return Span(low, high)

    agreed = replace(
        agreed,
        core=agreed.core and rounded(agreed.core),
        majority=tuple(map(rounded, agreed.majority)),
        envelope=rounded(agreed.envelope),
    )
    return replace(finding, agreement=agreed)
