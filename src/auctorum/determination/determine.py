"""One plant determined under one view: what it probably is, and what each character says."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np

from auctorum.circumscription.plants import Observation, Plant
from auctorum.corpus.readings import UNSTATED
from auctorum.determination.many import Column, beyond_of, can_use, columns_of, determined, log_likelihood, prior_of
from auctorum.determination.model import Candidate, Contribution, Determination, Unused, Wording
from auctorum.determination.normal import Floats
from auctorum.determination.printed import printed
from auctorum.determination.view import View
from auctorum.determination.wording import IN_ORDER
from auctorum.records.schema import Thresholds

_SAID_AGAIN = "observed more than once, and the last counts"
_STRANGE = "neither stated of any candidate nor a state of the vocabulary"


def determine(
    view: View, plant: Plant, *, priors: Mapping[str, float] | None = None, thresholds: Thresholds | None = None
) -> Determination:
    """What the plant is under the view. `priors` are weights by taxon, even where none are given.

    The probability is that among the candidates: the plant is taken to be one of them. Characters are combined as
    independent within a taxon.
    """
    before = prior_of(view, priors)
    seen = {(one.character, one.stage): one for one in plant.observations if can_use(view, one)}
    columns = columns_of(view, [plant])
    whole = determined(view, columns, priors, thresholds)
    after = whole.probabilities[0] if columns else before
    order = sorted(range(len(view.taxa)), key=lambda place: (-round(float(after[place]), 12), place))
    told = [_contribution(view, seen[key], column, before, order) for key, column in columns.items()]
    told.sort(key=_telling)
    candidates = tuple(Candidate(view.taxa[one], float(before[one]), float(after[one])) for one in order)
    best = candidates[0].taxon if told else None
    misfits = tuple(one.character for one in told if best in one.beyond)
    return Determination(
        view=view.title,
        candidates=candidates,
        contributions=tuple(told),
        unused=tuple(
            _unused(view, one) for one in plant.observations if seen.get((one.character, one.stage)) is not one
        ),
        wording=IN_ORDER[whole.wordings[0]] if told else Wording.INDET,
        best=best,
        misfits=misfits,
    )


def _contribution(view: View, one: Observation, column: Column, before: Floats, order: Sequence[int]) -> Contribution:
    table = view.tables[one.character, one.stage]
    log = log_likelihood(table, column)[0]
    support = log - np.log(np.exp(log - log.max()) @ before) - log.max()
    first = np.zeros(1, dtype=np.intp)
    beyond = [bool(beyond_of(table, column, place, first)[0]) for place in range(len(view.taxa))]
    return Contribution(
        character=one.character,
        stage=one.stage,
        said=printed(one, view.vocabulary[one.character]),
        support=tuple(float(support[place]) for place in order),
        silent=tuple(view.taxa[place] for place in order if not table.stated[place]),
        beyond=tuple(view.taxa[place] for place in order if beyond[place]),
    )


def _telling(one: Contribution) -> tuple[float, str, str]:
    """Sorts what says most between the first two candidates to the front."""
    first, second = one.support[0], one.support[1] if len(one.support) > 1 else 0.0
    return -round(abs(first - second), 9), one.character, one.stage


def _unused(view: View, one: Observation) -> Unused:
    stages = [stage for name, stage in view.tables if name == one.character]
    said = printed(one, view.vocabulary[one.character])
    if one.stage in stages:
        return Unused(one.character, one.stage, said, _SAID_AGAIN if can_use(view, one) else _STRANGE)
    return Unused(one.character, one.stage, said, _why(one.stage, stages))


def _why(stage: str, stages: Sequence[str]) -> str:
    if not stages:
        return "not stated of any candidate"
    if stage in ("", UNSTATED):
        return "its growth stage is not known, and the character changes with age"
    staged = [one for one in stages if one != UNSTATED]
    if not staged:
        return "stated without a growth stage only, and the character changes with age"
    return f"stated of other stages only ({', '.join(staged)}), and the character changes with age"
