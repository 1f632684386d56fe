"""The findings about one taxon, character by character."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from fractions import Fraction

from auctorum.characters.bounds import bounds
from auctorum.characters.values import Range, Reading
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.agreement import agreement, turned
from auctorum.circumscription.findings import Diagnosis, Evidence, Finding, Span
from auctorum.circumscription.text import merged_text
from auctorum.circumscription.verdict import remarks, sides, verdict
from auctorum.corpus.model import Corpus, Statement, Treatment


def diagnosis(corpus: Corpus, taxon: str, *, works: Collection[str] | None = None) -> Diagnosis:
    """What the treatments of the taxon with that id come to; only those of `works` if given.

    Findings stand in the order of the vocabulary, then of the growth stages. Every reading of a statement is one
    piece of evidence with weight 1: who copied whom is not judged here.
    """
    treatments = [corpus.treatments[one] for one in corpus.taxa[taxon].treatments]
    if works is not None:
        treatments = [one for one in treatments if one.work.id in works]
    gathered = _gathered(corpus, treatments)
    asked = tuple(dict.fromkeys(one.work.id for one in treatments))
    findings = tuple(
        finding(character, stage, gathered.get((character.name, stage), ()), _silent(character, asked, gathered))
        for character in corpus.vocabulary.values()
        for stage in _stages(character, gathered)
    )
    sources = tuple(work for work in asked if any(item.work == work for one in findings for item in one.evidence))
    return Diagnosis(findings, merged_text(findings, corpus.vocabulary, sources), sources, asked)


def finding(character: Character, stage: str, evidence: Sequence[Evidence], silent: tuple[str, ...]) -> Finding:
    """One character at one stage: agreement, verdict, remarks and sides of the evidence."""
    evidence = sorted(evidence, key=lambda item: (item.year, item.statement))
    if character.kind is Kind.ANGLE:
        evidence = turned(evidence)
    agreed = agreement(evidence, character) if evidence else None
    return Finding(
        character=character.name,
        stage=stage,
        evidence=tuple(evidence),
        agreement=agreed,
        verdict=verdict(evidence, agreed, character),
        remarks=remarks(evidence, agreed, character),
        sides=sides(evidence, character) if evidence else (),
        silent=silent,
    )


Gathered = dict[tuple[str, str], list[Evidence]]


def _gathered(corpus: Corpus, treatments: Sequence[Treatment]) -> Gathered:
    found: Gathered = {}
    for treatment in treatments:
        for statement in corpus.statements_of(treatment.id):
            for reading in statement.readings:
                item = evidence_of(statement, reading, corpus.vocabulary[statement.character])
                found.setdefault((statement.character, reading.stage), []).append(item)
    return found


def _stages(character: Character, gathered: Gathered) -> Iterator[str]:
    """The stages to report: those of the character with any evidence, or one silent row."""
    told = [stage for stage in ("", *character.stages) if (character.name, stage) in gathered]
    yield from told or [""]


def _silent(character: Character, asked: Sequence[str], gathered: Gathered) -> tuple[str, ...]:
    """Works that treat the taxon and leave the character out at every stage."""
    speaking = {item.work for (name, _), items in gathered.items() if name == character.name for item in items}
    return tuple(work for work in asked if work not in speaking)


def evidence_of(statement: Statement, reading: Reading, character: Character) -> Evidence:
    """One reading as evidence, with its bounds in the character's unit; raises UnfitUnit where that can't be."""
    span = extremes = None
    slack = (Fraction(0), Fraction(0))
    if isinstance(reading.value, Range):
        found = bounds(reading.value, character.unit)
        span = Span(found.low, found.high)
        extremes = Span(
            found.least if found.least is not None else found.low, found.most if found.most is not None else found.high
        )
        slack = (found.low_slack, found.high_slack)
    return Evidence(
        statement=statement.id,
        work=statement.work.id,
        year=statement.work.year,
        byline=statement.work.byline,
        page=statement.page,
        verbatim=statement.verbatim,
        value=reading.value,
        span=span,
        extremes=extremes,
        slack_low=slack[0],
        slack_high=slack[1],
    )
