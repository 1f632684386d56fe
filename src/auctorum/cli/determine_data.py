"""The answer on one plant as plain data for JSON."""

from __future__ import annotations

from typing import TYPE_CHECKING

from auctorum.cli.determine_setting import Setting
from auctorum.corpus.cautions import OPINION, cautions_of
from auctorum.determination.criteria.criterion import chance_of_fitting
from auctorum.determination.criteria.words import title_of
from auctorum.determination.model import Wording
from auctorum.determination.telling import words
from auctorum.determination.telling.grounds import grounds
from auctorum.determination.wording import qualified

if TYPE_CHECKING:
    from fractions import Fraction

    from auctorum.circumscription.plants import Plant
    from auctorum.determination.asking import Question
    from auctorum.determination.criteria.criterion import Judgement
    from auctorum.determination.model import Contribution, Determination
    from auctorum.determination.telling.answer import Answer
    from auctorum.determination.telling.authorities import Authority
    from auctorum.records.schema import Criterion


def data(asked: Setting, plant: Plant, told: Answer) -> dict[str, object]:
    """The answer; probabilities are shares of 1, figures in the canonical unit of their character."""
    found = told.found
    rests = grounds(
        asked.corpus, asked.view, asked.beforehand, among=bool(asked.taxa), of_site=told.of_site,
        reckoned=told.reckoned,
    )  # fmt: skip
    return {
        "determination": named(asked, told),
        "view": found.view,
        "works": list(asked.view.works),
        "stage": asked.stage,
        "candidates": [
            {"taxon": one.taxon, "name": told.full[one.taxon], "prior": share(one.prior),
             "probability": share(one.probability)}
            for one in found.candidates
        ],
        "characters": [_contribution(one, found, told) for one in found.contributions],
        "unused": [
            {"character": one.character, "stage": one.stage, "observed": one.said, "why": one.why}
            for one in found.unused
        ],
        "agreement": list(told.agreement),
        "authors": [_authority(one) for one in told.single],
        "other_views": [_authority(one) for one in told.beside],
        "criteria": [_criterion(criterion, judged) for criterion, judged in told.judged],
        "criteria_not_tried": [{"id": id_, "why": error, "remedy": remedy} for id_, error, remedy in told.unusable],
        "questions": [_question(asked, one) for one in told.asked],
        "rests_on": [*filter(None, [asked.taken(plant)]), *rests],
        "cautions": [OPINION, *cautions_of(asked.corpus)],
    }  # fmt: skip


def share(probability: float) -> float:
    """A probability with six digits: more are noise."""
    return round(probability, 6)


def named(asked: Setting, told: Answer) -> dict[str, object]:
    """The name in open nomenclature; of a plant that is not determined the likeliest taxon all the same."""
    found = told.found
    if found.best is None:
        name = qualified(told.genus or "plant", Wording.INDET)
    else:
        plain = told.full[found.best]
        name = qualified((told.genus or plain) if found.wording is Wording.INDET else plain, found.wording)
    return {
        "name": name,
        "taxon": found.best,
        "wording": str(found.wording),
        "probability": None if found.best is None else share(found.candidates[0].probability),
        "why": words.why(found, asked.thresholds),
        "misfits": list(found.misfits),
    }


def _contribution(one: Contribution, found: Determination, told: Answer) -> dict[str, object]:
    order = [each.taxon for each in found.candidates]
    return {
        "character": one.character,
        "stage": one.stage,
        "observed": one.said,
        "in_words": words.telling(one, found, told.names),
        "support": {taxon: round(value, 4) for taxon, value in zip(order, one.support, strict=True)},
        "silent": list(one.silent),
        "beyond": list(one.beyond),
    }


def _authority(one: Authority) -> dict[str, object]:
    return {
        "view": one.view,
        "works": list(one.works),
        "name": one.name or None,
        "taxon": one.taxon,
        "wording": str(one.wording),
        "probability": None if one.alone or not one.used else share(one.probability),
        "only_candidate": one.alone,
        "characters_used": one.used,
        "candidates": one.candidates,
    }


def _criterion(criterion: Criterion, judged: Judgement) -> dict[str, object]:
    """A judgement by a working criterion."""
    chance = chance_of_fitting(judged)
    return {
        "id": criterion.id,
        "title": title_of(criterion),
        "verdict": str(judged.verdict),
        "name": judged.name or None,
        "character": criterion.decisive.character,
        "threshold": judged.threshold,
        "observed": judged.observed or None,
        "margin": _figure(judged.margin),
        "error": _figure(judged.error),
        "chance_of_fitting": None if chance is None else share(chance),
        "supporting": [
            {"character": one.character, "stage": one.stage, "stated": one.stated, "observed": one.observed or None,
             "weight": float(one.weight), "agrees": None if one.agrees is None else share(one.agrees)}
            for one in judged.supports
        ],
        "share_of_support": None if judged.share is None else share(judged.share),
        "conflict": judged.conflict,
        "why": judged.why or None,
    }  # fmt: skip


def _figure(value: Fraction | None) -> float | None:
    return None if value is None else round(float(value), 6)


def _question(asked: Setting, one: Question) -> dict[str, object]:
    return {
        "character": one.character,
        "stage": one.stage,
        "how": asked.corpus.vocabulary[one.character].how,
        "gain": share(one.gain),
        "cost": one.cost,
        "outcomes": [
            {"low": _figure(each.low), "high": _figure(each.high), "state": each.state or None,
             "chance": share(each.chance), "taxon": each.taxon, "probability": share(each.probability),
             "wording": str(each.wording)}
            for each in one.outcomes
        ],
    }  # fmt: skip
