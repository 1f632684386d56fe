"""Judging a plant by a working criterion: its decisive trait decides, and supporting traits speak for or against."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

import numpy as np
from numpy.typing import ArrayLike, NDArray

from auctorum.characters.show import format_span
from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.criterion_words import limit_words
from auctorum.circumscription.findings import Span
from auctorum.circumscription.plants import Observation, Plant
from auctorum.circumscription.summary import span_words, state_words
from auctorum.corpus.criteria import Limit, Trait, limit_of, trait_of
from auctorum.corpus.model import Corpus
from auctorum.corpus.readings import UNSTATED
from auctorum.determination.criteria.speaking import agreement
from auctorum.determination.criteria.spectrum import chances, comparable, figure_of
from auctorum.determination.many import as_float
from auctorum.determination.places.of_site import habitat_giver
from auctorum.records.schema import Criterion

# Supporting traits contradict the decisive one where less than this share of their weight agrees with a plant that
# fits, or more with one that does not. A judgement of ours.
HALF_SUPPORT = 0.5
_ROUNDING = 1e-9  # part of a figure by which floats may miss the exact limit of error
_NO_ERROR = Fraction(0)


class Verdict(StrEnum):
    """What the decisive trait comes to."""

    FITS = "fits"
    DOES_NOT_FIT = "does not fit"
    BORDERLINE = "borderline"
    INSUFFICIENT = "insufficient"


VERDICTS = tuple(Verdict)  # the codes of `judge_values` are places in it


@dataclass(frozen=True, slots=True)
class Support:
    """One supporting trait of one plant; `agrees` is 0 to 1, None where it was not observed."""

    character: str
    stage: str
    stated: str  # the value that speaks for the taxon, as the criterion gives it
    weight: Decimal
    observed: str  # in print; "" where nothing was observed
    agrees: float | None


@dataclass(frozen=True, slots=True)
class Judgement:
    """A plant judged by a criterion.

    `margin` is how far the plant lies beyond the threshold on the side that fits (below 0 on the other), in the
    canonical unit; of ordered states in steps of the spectrum, from half way between the last state that does not fit
    and the first that does. None where it was not observed. `error` is the half-width within which the true value
    lies. `share` is the part, 0 to 1, of the weight of the observed supporting traits that agrees; None without any.
    `name` is the name that the plant is given; "" where the criterion gives none. `why` says in a phrase why the
    observations do not suffice; "" where they do.
    """

    criterion: str
    verdict: Verdict
    observed: str
    threshold: str
    margin: Fraction | None
    error: Fraction
    supports: tuple[Support, ...]
    share: float | None
    conflict: bool
    name: str
    why: str = ""


def judge(corpus: Corpus, criterion: Criterion, plant: Plant) -> Judgement:
    """The plant under the criterion, its site's habitat taken in; raises as `limit_of` and `trait_of`.

    The decisive trait alone gives the verdict, however many supporting traits speak against it: that is reported as a
    conflict (a decisive length over its threshold outranks colours; common practice, no source). A plant is borderline
    where the threshold lies inside the error of its measurement; at the very end of the error it is decided, since
    figures that only touch differ.
    """
    return judge_each(corpus, criterion, (plant,))[0]


def judge_each(corpus: Corpus, criterion: Criterion, several: Iterable[Plant]) -> tuple[Judgement, ...]:
    """As `judge`, of several plants in their order; the criterion is read once."""
    limit = limit_of(criterion.decisive, corpus.vocabulary)
    traits = tuple(trait_of(one, corpus.vocabulary) for one in criterion.supporting)
    complete = habitat_giver(corpus)
    ready = _Ready(criterion, limit, traits, corpus.vocabulary)
    return tuple(_judged(ready, plant, complete(plant)) for plant in several)


@dataclass(frozen=True, slots=True)
class _Ready:
    """A criterion that has been read."""

    criterion: Criterion
    limit: Limit
    traits: tuple[Trait, ...]
    vocabulary: Vocabulary


def _judged(ready: _Ready, plant: Plant, whole: Plant) -> Judgement:
    """`whole` is the plant with the habitat of its site."""
    criterion, limit = ready.criterion, ready.limit
    character = ready.vocabulary[limit.character]
    one = whole.at(limit.character, limit.stage)
    margin, error = (None, _NO_ERROR) if one is None else margin_of(limit, one, character)
    verdict = _verdict(margin, error)
    supports = tuple(_support(trait, plant, whole, ready.vocabulary) for trait in ready.traits)
    share = _share(supports)
    return Judgement(
        criterion=criterion.id,
        verdict=verdict,
        observed="" if one is None else shown(one, character),
        threshold=_threshold(limit, character),
        margin=margin,
        error=error,
        supports=supports,
        share=share,
        conflict=share is not None and _against(verdict, share),
        name={Verdict.FITS: criterion.taxon, Verdict.DOES_NOT_FIT: criterion.otherwise}.get(verdict, ""),
        why="" if margin is not None else _why(limit, plant, character),
    )


def margin_of(limit: Limit, one: Observation, character: Character) -> tuple[Fraction | None, Fraction]:
    """How far the observation lies beyond the limit on the side that fits, and the half-width of its error.

    None where it tells no place: states that are not on the spectrum. Counts have no rounding error.
    """
    told = figure_of(one, character, state_names(character))
    if told is None:
        return None, _NO_ERROR
    (value, error), at = told, comparable(limit, character).value
    return (value - at if limit.at_least else at - value), error


def judge_values(limit: Limit, values: ArrayLike, errors: ArrayLike) -> NDArray[np.int8]:
    """Verdicts of many plants as places in `VERDICTS`; agrees with `judge` for numbers.

    `values` are in the canonical unit of the character, NaN where not observed; `errors` are half-widths, one for all
    or one each. Of an ordered character, places on the spectrum and half the number of states observed.
    """
    value, error = np.asarray(values, dtype=float), np.asarray(errors, dtype=float)
    margin = value - float(limit.value) if limit.at_least else float(limit.value) - value
    give = _ROUNDING * np.maximum(np.maximum(np.abs(value), abs(float(limit.value))), 1e-300)
    codes = np.where(margin >= -give, VERDICTS.index(Verdict.FITS), VERDICTS.index(Verdict.DOES_NOT_FIT))
    codes[np.abs(margin) < error - give] = VERDICTS.index(Verdict.BORDERLINE)
    codes[np.isnan(margin)] = VERDICTS.index(Verdict.INSUFFICIENT)
    return codes.astype(np.int8)


def chance_of_fitting(judgement: Judgement) -> float | None:
    """The probability that the true value fits, taken to lie anywhere within the error alike; None if not observed."""
    if judgement.margin is None:
        return None
    return float(chances(as_float(judgement.margin), as_float(judgement.error)))


def shown(one: Observation, character: Character) -> str:
    """An observation in print: `31 mm`, `cream or ivory`."""
    if one.value is None:
        return state_words([state for state, weight in one.states if weight], character)
    return span_words(Span(one.value, one.value), character)


def _verdict(margin: Fraction | None, error: Fraction) -> Verdict:
    if margin is None:
        return Verdict.INSUFFICIENT
    if abs(margin) < error:
        return Verdict.BORDERLINE
    return Verdict.FITS if margin >= 0 else Verdict.DOES_NOT_FIT


def _support(trait: Trait, plant: Plant, whole: Plant, vocabulary: Vocabulary) -> Support:
    character, one = vocabulary[trait.character], whole.at(trait.character, trait.stage)
    if one is None:
        return Support(trait.character, trait.stage, trait.printed, trait.weight, "", None)
    of_site = plant.at(trait.character, trait.stage) is None and one.value is not None
    seen = _spread(one, character) if of_site else shown(one, character)
    return Support(trait.character, trait.stage, trait.printed, trait.weight, seen, agreement(trait, one, character))


def _spread(one: Observation, character: Character) -> str:
    """What a site tells: `270–330 m`; the middle of an arc of directions."""
    if one.value is None or character.kind is Kind.ANGLE or one.slack * 2 <= 1:
        return shown(one, character)
    return format_span(one.value - one.slack, one.value + one.slack, character.unit)


def _share(supports: Iterable[Support]) -> float | None:
    heard = [(float(one.weight), one.agrees) for one in supports if one.agrees is not None]
    return sum(weight * agrees for weight, agrees in heard) / sum(weight for weight, _ in heard) if heard else None


def _against(verdict: Verdict, share: float) -> bool:
    if verdict is Verdict.FITS:
        return share < HALF_SUPPORT
    return verdict is Verdict.DOES_NOT_FIT and share > HALF_SUPPORT


def _threshold(limit: Limit, character: Character) -> str:
    """`at least 25 mm`, `at most pubescent`."""
    said = limit.printed
    if not character.kind.is_numeric:
        said = state_names(character)[int(limit.value)]
    return limit_words(said, at_least=limit.at_least)


_OF_A_PLANT = {"young": "a young", "mature": "a mature", "old": "an old", "female": "a female", "male": "a male"}


def _why(limit: Limit, plant: Plant, character: Character) -> str:
    """Why a plant is not judged: `observed on a young plant only`."""
    stages = [one.stage for one in plant.observations if one.character == limit.character]
    others = [stage for stage in stages if stage != limit.stage]
    if limit.stage in stages:
        return f"what was observed is no state on the spectrum of {character.name}"
    if not others:
        return "not observed"
    if others == [UNSTATED]:
        return "observed at no stated stage"
    told = [_OF_A_PLANT.get(stage, f"“{stage}”") for stage in others if stage != UNSTATED]
    if all(stage in _OF_A_PLANT for stage in others):
        return f"observed on {' and '.join(told)} plant only"
    return f"observed at the stage {' and '.join(f'“{stage}”' for stage in others)} only"
