"""The findings about one taxon, character by character, and the description they merge into."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from fractions import Fraction

from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.agreement import agreement_of
from auctorum.circumscription.evidence import evidence_of, on_one_turn
from auctorum.circumscription.findings import Diagnosis, Evidence, Finding
from auctorum.circumscription.independence import Lineage, lineage
from auctorum.circumscription.remarks import remarks
from auctorum.circumscription.text import merged_text
from auctorum.circumscription.verdict import sides, verdict
from auctorum.circumscription.voices import count, independent, voices
from auctorum.corpus.model import Corpus, Statement, Treatment

Gathered = Mapping[tuple[str, str], Sequence[Evidence]]


def diagnosis(corpus: Corpus, taxon: str, *, works: Collection[str] | None = None) -> Diagnosis:
    """What the treatments of the taxon with that id come to; only those of `works` if given.

    Findings stand in the order of the vocabulary, then of the growth stages. Every reading of a statement is one
    piece of evidence; what repeats another of the works asked weighs what kb.yaml says. Raises KeyError for an unknown
    taxon.
    """
    findings = findings_of(corpus, taxon, works=works)
    asked = _works(_treatments(corpus, taxon, works))
    heard = {item.work for one in findings if one.agreement is not None for item in one.evidence}
    sources = tuple(work for work in asked if work in heard)
    return Diagnosis(findings, merged_text(findings, corpus.vocabulary, sources), sources, asked)


def findings_of(corpus: Corpus, taxon: str, *, works: Collection[str] | None = None) -> tuple[Finding, ...]:
    """The findings of a diagnosis, without the description that they merge into."""
    every, treatments = _treatments(corpus, taxon, None), _treatments(corpus, taxon, works)
    asked = _works(treatments)
    gathered, speaking = _gathered(corpus, treatments, lineage(corpus, every), asked)
    for character, of_parts in _told_of_parts(corpus, treatments).items():
        speaking.setdefault(character, set()).update(of_parts)
    return tuple(
        finding(
            character,
            stage,
            gathered.get((character.name, stage), ()),
            tuple(work for work in asked if work not in speaking.get(character.name, ())),
        )
        for character in corpus.vocabulary.values()
        for stage in _stages(character, gathered)
    )


def evidence_about(corpus: Corpus, taxon: str) -> Gathered:
    """Every piece of evidence on a taxon by character and stage, of all works; raises KeyError for an unknown taxon."""
    treatments = _treatments(corpus, taxon, None)
    return _gathered(corpus, treatments, lineage(corpus, treatments), _works(treatments))[0]


def _treatments(corpus: Corpus, taxon: str, works: Collection[str] | None) -> list[Treatment]:
    every = (corpus.treatments[one] for one in corpus.taxa[taxon].treatments)
    return [one for one in every if works is None or one.work.id in works]


def _works(treatments: Sequence[Treatment]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(one.work.id for one in treatments))


def finding(character: Character, stage: str, evidence: Sequence[Evidence], silent: tuple[str, ...]) -> Finding:
    """One character at one stage: evidence by year, its agreement, verdict, remarks and sides.

    The order of `evidence` does not matter. Aspects stand on one turn of the compass, as their agreement does.
    """
    evidence = sorted(evidence, key=lambda item: (item.year, item.byline, item.statement))
    if character.kind is Kind.ANGLE:
        evidence = on_one_turn(evidence)
    heard = voices(evidence, character)
    agreed = agreement_of(heard, character) if heard else None
    own = independent(heard)
    return Finding(
        character=character.name,
        stage=stage,
        evidence=tuple(evidence),
        agreement=agreed,
        verdict=verdict(own, agreed),
        remarks=remarks(heard, agreed, character),
        sides=sides(heard, agreed, character),
        silent=silent,
        count=count(heard, silent),
    )


def _told_of_parts(corpus: Corpus, treatments: Sequence[Treatment]) -> dict[str, set[str]]:
    """By character the works that give it for a part of the taxon, such as its varieties: they are not silent."""
    wholes = {(one.work.id, one.name) for one in treatments}
    found: dict[str, set[str]] = {}
    for work in {one.work.id for one in treatments}:
        for part in corpus.by_work.get(work, ()):
            if part.parent is not None and (work, part.parent) in wholes:
                for statement in corpus.statements_of(part.id):
                    found.setdefault(statement.character, set()).add(work)
    return found


def _gathered(
    corpus: Corpus, treatments: Sequence[Treatment], lines: Lineage, asked: Sequence[str]
) -> tuple[Gathered, dict[str, set[str]]]:
    """Evidence by character and stage, and the works that say anything of a character, if only what can't be read.

    Who gives no figure for what is measured, "spur long", is silent on it all the same.
    """
    found: dict[tuple[str, str], list[Evidence]] = {}
    speaking: dict[str, set[str]] = {}
    among, repeated = frozenset(asked), Fraction(corpus.settings.repetition_weight)
    for treatment in treatments:
        for statement in corpus.statements_of(treatment.id):
            if _speaks(statement, corpus.vocabulary[statement.character]):
                speaking.setdefault(statement.character, set()).add(statement.work.id)
            for reading in statement.readings:
                told = (statement.character, reading.stage)
                source = lines.source(statement.work.id, told, among)
                item = evidence_of(
                    statement, reading, corpus.vocabulary[statement.character], repeats=source,
                    weight=repeated if source else Fraction(1),
                )  # fmt: skip
                found.setdefault(told, []).append(item)
    return found, speaking


def _speaks(statement: Statement, character: Character) -> bool:
    """Whether it was read, or may yet be: words without a figure say nothing of what is measured or counted."""
    return bool(statement.readings) or not character.kind.is_numeric or any(map(str.isdigit, statement.verbatim))


def _stages(character: Character, gathered: Gathered) -> list[str]:
    """The stages of the character that somebody speaks of; one silent finding where nobody does."""
    return character.stages_in_order({stage for name, stage in gathered if name == character.name}) or [""]
