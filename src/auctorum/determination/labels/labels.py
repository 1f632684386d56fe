"""Labels against the plants beside them: the name, the taxon it stands for, and what the plant's own traits say.

A label is contradicted by one trait that speaks strongly against its name, or by two that speak weakly and are a
quarter of those tested: in a plant of many traits some are soon a little outside what most authors give, and one alone
is told, and no more (`labels.traits` says what is strong and what weak). How often the rule errs is found by trying it
on the named plants of the knowledge base, and said beside the findings. A working criterion is one definition among
others: its verdict stands beside, and contradicts no label by itself.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from functools import cache

from auctorum.circumscription.intervals import wilson
from auctorum.circumscription.plants import Observation, Plant, plants, plants_in
from auctorum.circumscription.sisters import wholes_by_work
from auctorum.corpus.criteria import limit_of, trait_of
from auctorum.corpus.model import Corpus, Label, Specimen
from auctorum.corpus.resolve import Sides, called, sides_of_criterion
from auctorum.determination.criteria.criterion import Verdict, judge_each
from auctorum.determination.determine import determine
from auctorum.determination.labels.model import (
    ByCriterion,
    How,
    Instead,
    LabelFinding,
    LabelReport,
    LabelVerdict,
    Matched,
    Meaning,
    SellerSum,
    Strength,
    TraitTest,
    Trial,
)
from auctorum.determination.labels.names import matched, meaning, untestable
from auctorum.determination.labels.traits import Stated, traits_of, with_reasons
from auctorum.determination.model import Wording
from auctorum.determination.telling.answer import full_names
from auctorum.determination.view import NothingStated, Statements, View, view_of
from auctorum.determination.wording import qualified
from auctorum.matching.index import index_corpus
from auctorum.problems import AuctorumError
from auctorum.records import schema
from auctorum.records.schema import Criterion

WEAK_ENOUGH = 2  # weak contradictions that make one; a judgement of ours
WEAK_SHARE = 4  # and one in so many of the traits tested; a judgement of ours
MOST_TRIED = 1000  # plants of the knowledge base on which the rule is tried
ENOUGH = 5  # plants tested from which an interval says anything; a judgement of ours
_SURE = (Wording.PLAIN, Wording.CF)


def verified(
    corpus: Corpus, labels: Sequence[Label], progress: Callable[[int, int], None] | None = None
) -> LabelReport:
    """Every label in its order, and what they come to for each seller."""
    verify = _Verifier(corpus)
    found = []
    for place, (label, plant) in enumerate(zip(labels, plants_of_labels(corpus, labels), strict=True), 1):
        found.append(verify.finding(label, plant))
        if progress is not None:
            progress(place, len(labels))
    return LabelReport(tuple(found), summed(found), _sum("", found), verify.tried(), verify.unusable)


def plants_of_labels(corpus: Corpus, labels: Iterable[Label]) -> tuple[Plant, ...]:
    """The plant beside each label with its observations, under no name; two labels of one id are two plants."""
    return plants_in([_specimen(one, place) for place, one in enumerate(labels)], corpus)


def _specimen(label: Label, place: int) -> Specimen:
    said = label.record
    record = schema.Specimen(
        occurrenceID=str(place), recordedBy=said.recordedBy, eventDate=said.eventDate, lifeStage=said.lifeStage
    )
    return Specimen(record, None, None, label.measurements)


def summed(findings: Iterable[LabelFinding]) -> tuple[SellerSum, ...]:
    """The labels counted for each seller, by the alphabet; those without a seller last."""
    by_seller: dict[str, list[LabelFinding]] = {}
    for one in findings:
        by_seller.setdefault(one.seller, []).append(one)
    order = sorted(by_seller, key=lambda seller: (not seller, seller.casefold(), seller))
    return tuple(_sum(seller, by_seller[seller]) for seller in order)


def _sum(seller: str, several: Sequence[LabelFinding]) -> SellerSum:
    names = [one.matched.how for one in several]
    verdicts = [one.verdict for one in several]
    contradicted = verdicts.count(LabelVerdict.CONTRADICTED)
    not_testable = verdicts.count(LabelVerdict.NOT_TESTABLE)
    tested = len(several) - not_testable
    return SellerSum(
        seller=seller,
        labels=len(several),
        right=names.count(How.RIGHT),
        misspelt=names.count(How.MISSPELT),
        several=names.count(How.SEVERAL),
        not_found=names.count(How.NOT_FOUND),
        consistent=tested - contradicted,
        contradicted=contradicted,
        not_testable=not_testable,
        interval=wilson(contradicted, tested) if tested >= ENOUGH else None,
    )


class _Verifier:
    """What is known of names and taxa, gathered once for many labels; equal labels are matched once."""

    def __init__(self, corpus: Corpus) -> None:
        self._corpus = corpus
        statements = Statements(corpus)
        self._stated = Stated(statements)
        self._view = _view(statements)
        self._full = full_names(corpus, self._view) if self._view is not None else {}
        self._wholes = {pair for pairs in wholes_by_work(corpus).values() for pair in pairs}
        self._criteria, self.unusable = _usable(corpus)
        index = index_corpus(corpus)

        @cache
        def read(label: str) -> tuple[Matched, Meaning]:
            found = matched(corpus, index, label)
            why = untestable(corpus, label, found)
            return found, Meaning(None, why=why) if why else meaning(corpus, found)

        self._read = read

    def finding(self, label: Label, plant: Plant) -> LabelFinding:
        """One label with the plant beside it."""
        said = label.record
        found, meant = self._read(said.verbatimIdentification)
        stage = said.lifeStage
        traits = () if meant.taxon is None else traits_of(self._stated, meant.taxon, plant, stage)
        verdict, why = verdict_of(traits, meant.why)
        fit = [one for one, unfit in with_reasons(self._stated, plant, stage) if not unfit]
        return LabelFinding(
            id=said.occurrenceID,
            seller=said.seller,
            date=said.eventDate,
            label=said.verbatimIdentification,
            matched=found,
            meaning=meant,
            name="" if meant.taxon is None else called(self._corpus, self._corpus.taxa[meant.taxon].current),
            traits=traits,
            verdict=verdict,
            why=why,
            instead=self._instead(replace(plant, observations=tuple(fit)), meant.taxon, verdict),
            criteria=tuple(self._judged(plant, meant.taxon)),
            stage_taken=not stage and any(self._is_taken(one) for one in fit),
        )

    def tried(self) -> Trial:
        """The rule tried on the plants of the knowledge base that were given a name, each under its own."""
        stages = {one.record.organismID or one.record.occurrenceID: one.record.lifeStage
                  for one in self._corpus.specimens}  # fmt: skip
        verdicts = [
            verdict_of(traits_of(self._stated, plant.taxon, plant, stages[plant.id]))[0]
            for plant in plants(self._corpus)[:MOST_TRIED]
            if plant.taxon is not None
        ]
        tested = len(verdicts) - verdicts.count(LabelVerdict.NOT_TESTABLE)
        return Trial(tested, verdicts.count(LabelVerdict.CONTRADICTED))

    def _is_taken(self, one: Observation) -> bool:
        return bool(self._corpus.vocabulary[one.character].stages) and one.value is not None

    def _instead(self, plant: Plant, taxon: str | None, verdict: LabelVerdict) -> Instead | None:
        """What all authors together make of the plant, where that is worth telling.

        Of a contradicted label whatever has more than half of the probability, the label's own taxon too; of others
        only what is likely, and not what the label says anyway.
        """
        if self._view is None or not plant.observations:
            return None
        found = determine(self._view, plant, thresholds=self._corpus.settings.thresholds)
        best = found.best
        against = verdict is LabelVerdict.CONTRADICTED
        if best is None or found.wording is Wording.INDET or len(found.candidates) == 1:
            return None
        inside = (best, taxon) in self._wholes or self._is_sense(best, taxon)
        if not against and (best == taxon or inside or found.wording not in _SURE):
            return None
        name = qualified(self._full[best], found.wording)
        return Instead(best, name, found.candidates[0].probability, found.wording, best == taxon, inside)

    def _is_sense(self, one: str, other: str | None) -> bool:
        """Whether they are two senses of one name."""
        taxa = self._corpus.taxa
        return other is not None and one != other and taxa[one].group == taxa[other].group

    def _judged(self, plant: Plant, taxon: str | None) -> Iterable[ByCriterion]:
        """The working criteria that decide about the taxon, where their decisive trait was observed at all."""
        for criterion, character, sides in self._criteria:
            if taxon is None or taxon not in sides or all(one.character != character for one in plant.observations):
                continue
            (judged,) = judge_each(self._corpus, criterion, (plant,))
            decides = judged.verdict in (Verdict.FITS, Verdict.DOES_NOT_FIT)
            fits = judged.verdict is Verdict.FITS
            yield ByCriterion(criterion, judged, (fits == (sides[0] == taxon)) if decides else None)


def verdict_of(traits: Sequence[TraitTest], untestable_: str = "") -> tuple[LabelVerdict, str]:
    """The verdict on a label by the traits that were tested, and why there is none."""
    if untestable_:
        return LabelVerdict.NOT_TESTABLE, untestable_
    if not traits:
        return LabelVerdict.NOT_TESTABLE, "nothing was noted of the plant"
    if not any(one.tested for one in traits):
        reasons = dict.fromkeys(f"{one.character}: {one.why}" for one in traits)
        return LabelVerdict.NOT_TESTABLE, "; ".join(reasons)
    strengths = [one.strength for one in traits if one.tested]
    weak = strengths.count(Strength.WEAK)
    if Strength.STRONG in strengths or (weak >= WEAK_ENOUGH and weak * WEAK_SHARE >= len(strengths)):
        return LabelVerdict.CONTRADICTED, ""
    return LabelVerdict.CONSISTENT, ""


def _view(statements: Statements) -> View | None:
    try:
        return view_of(statements)
    except NothingStated:
        return None


Usable = tuple[Criterion, str, Sides]  # with its decisive character, and the taxon of a plant that fits and of another


def _usable(corpus: Corpus) -> tuple[tuple[Usable, ...], tuple[tuple[str, str, str], ...]]:
    good, bad = [], []
    for one in corpus.criteria:
        try:
            limit = limit_of(one.decisive, corpus.vocabulary)
            for trait in one.supporting:
                trait_of(trait, corpus.vocabulary)
        except AuctorumError as error:
            bad.append((one.id, str(error), error.remedy))
            continue
        good.append((one, limit.character, sides_of_criterion(corpus, one)))
    return tuple(good), tuple(bad)
