"""The traits of a taxon as a field guide prints them: consensus, range of opinions, and who stands behind them."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from auctorum.characters.values import Range
from auctorum.characters.vocabulary import Kind
from auctorum.circumscription.claims import number_claim, state_claim
from auctorum.circumscription.converted import diagnosis_in, restated_finding
from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.findings import Count, Diagnosis, Finding, RangeAgreement, Span
from auctorum.circumscription.measures import measures
from auctorum.circumscription.observed import Observed
from auctorum.circumscription.summary import NOTHING, span_words, state_words
from auctorum.circumscription.text import merged_text
from auctorum.circumscription.wording import wording
from auctorum.corpus.model import Corpus


@dataclass(frozen=True, slots=True)
class Trait:
    """One character at one stage, in words.

    `consensus` is what at least half of the authors hold, in the trade's notation, `(18–)22–42(–60) mm`; `opinions`
    all that anybody states. Both are a dash where nobody says anything.
    """

    finding: Finding
    printed: Finding  # as it goes into a text: with the unit asked for as if every work had printed it
    consensus: str
    opinions: str

    @property
    def key(self) -> tuple[str, str]:
        """Character and stage."""
        return self.finding.character, self.finding.stage


@dataclass(frozen=True, slots=True)
class Traits:
    """The traits of one taxon in the order of the vocabulary, and the diagnosis of these characters.

    The diagnosis holds as sources only the works that speak of them, and the text of them alone.
    """

    taxon: str
    traits: tuple[Trait, ...]
    diagnosis: Diagnosis

    @property
    def printed(self) -> tuple[Finding, ...]:
        """The findings as they go into a text."""
        return tuple(one.printed for one in self.traits)


def traits(
    corpus: Corpus,
    taxon: str,
    *,
    unit: str | None = None,
    works: Collection[str] | None = None,
    characters: Collection[str] = (),
) -> Traits:
    """The traits of the taxon with that id, of `works` alone if given; only of `characters` if there are any.

    With a unit, `corpus` must have the vocabulary of that unit (`converted.vocabulary_in`). Raises KeyError for an
    unknown taxon.
    """
    plain = _only(diagnosis(corpus, taxon, works=works), characters)
    found = plain if unit is None else _only(diagnosis_in(corpus, taxon, unit, works=works), characters)
    printed = tuple(one if unit is None else _restated(one, corpus, unit) for one in plain.findings)
    told = tuple(
        Trait(one, said, consensus(said, corpus), opinions(said, corpus))
        for one, said in zip(found.findings, printed, strict=True)
    )
    text = merged_text(printed, corpus.vocabulary, found.sources)
    return Traits(taxon, told, replace(found, text=text))


def descriptions(corpus: Corpus, several: Sequence[Traits]) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The merged text of each, their marks counting one list of sources by date, and that list."""
    heard = {work for one in several for work in one.diagnosis.sources}
    sources = tuple(work for work in corpus.works if work in heard)
    return tuple(merged_text(one.printed, corpus.vocabulary, sources) for one in several), sources


def consensus(finding: Finding, corpus: Corpus) -> str:
    """The value as the merged text has it, without the words of its property, `long` or `on`."""
    if finding.agreement is None:
        return NOTHING
    character = corpus.vocabulary[finding.character]
    claim = number_claim if isinstance(finding.agreement, RangeAgreement) else state_claim
    around = wording(character)
    said = "".join(words for words, _ in claim(finding, character))
    return said.removeprefix(around.before).replace(around.after, "")


def opinions(finding: Finding, corpus: Corpus) -> str:
    """From the least to the most that anybody states, extremes included; every state that anybody allows."""
    character, agreed = corpus.vocabulary[finding.character], finding.agreement
    if agreed is None:
        return NOTHING
    if not isinstance(agreed, RangeAgreement):
        return state_words(agreed.envelope, character)
    if agreed.envelope.low is None and agreed.envelope.high is None:
        return span_words(agreed.envelope, character)
    return measures(finding.evidence, character).notation(agreed.envelope)


def observed_words(printed: Finding, corpus: Corpus, seen: Observed) -> str:
    """The range written from measured plants, in the unit in which the finding prints what authors say."""
    character, value = corpus.vocabulary[printed.character], seen.value
    of_authors = measures(printed.evidence, character)
    if not isinstance(value, Range) or of_authors.unit == character.unit:
        return seen.text
    least, low, high, most = (
        None if end is None else Fraction(end) for end in (value.least, value.low, value.high, value.most)
    )
    return of_authors.notation(Span(low, high), least, most)


def standing(count: Count) -> str:
    """How many stand behind a trait: authors with something of their own, works that repeat, works that are silent.

    >>> standing(Count(works=11, authors=10, independent=9, repeated=2, silent=1))
    '9 independent, 2 repeat, 1 silent'
    >>> standing(Count(1, 1, 1, 0, 0))
    '1 independent'
    """
    parts = ((count.independent, "independent"), (count.repeated, _verb(count.repeated)), (count.silent, "silent"))
    return ", ".join(f"{number} {word}" for number, word in parts if number) or NOTHING


def _verb(number: int) -> str:
    return "repeats" if number == 1 else "repeat"


def _only(found: Diagnosis, characters: Collection[str]) -> Diagnosis:
    """The findings on those characters, on all if there are none; as sources the works that speak of them."""
    if not characters:
        return found
    findings = tuple(one for one in found.findings if one.character in characters)
    heard = {item.work for one in findings if one.agreement is not None for item in one.evidence}
    return replace(found, findings=findings, sources=tuple(work for work in found.sources if work in heard))


def _restated(finding: Finding, corpus: Corpus, unit: str) -> Finding:
    """A length as if every work had printed the unit."""
    character = corpus.vocabulary[finding.character]
    is_in_unit = character.kind is Kind.MEASURE and character.unit == unit
    return restated_finding(finding, unit) if is_in_unit else finding
