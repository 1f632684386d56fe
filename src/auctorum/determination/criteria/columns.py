"""Verdicts by a working criterion of the rows of a table, read as columns."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.corpus.criteria import Limit
from auctorum.determination.bulk import Bulk, Part, values_at
from auctorum.determination.criteria.criterion import VERDICTS, Verdict, judge_values
from auctorum.determination.criteria.spectrum import comparable, place_of
from auctorum.determination.many import Measured
from auctorum.determination.normal import Floats
from auctorum.determination.view import Key


def verdicts(
    limit: Limit, vocabulary: Vocabulary, bulk: Bulk, part: Part, measured: Mapping[Key, Measured]
) -> tuple[Verdict, ...]:
    """One for each row, as `judge` gives them."""
    character = vocabulary[limit.character]
    if character.kind is Kind.ORDERED:
        values, errors = _places(bulk, part, limit, character)
        codes = judge_values(comparable(limit, character), values, errors)
        return tuple(VERDICTS[code] for code in codes.tolist())
    values, errors = values_at(measured, (limit.character, limit.stage), part.rows)
    if character.kind is Kind.COUNT:  # a count has no rounding error
        errors = np.asarray(part.figures[limit.character][2]) if limit.character in part.figures else errors
    return tuple(VERDICTS[code] for code in judge_values(limit, values, errors).tolist())


def _places(bulk: Bulk, part: Part, limit: Limit, character: Character) -> tuple[Floats, Floats]:
    """Places on the spectrum and their errors; NaN where none of its states was observed at the stage of the limit."""
    names = state_names(character)
    rows, told = bulk.said(part, limit.character)
    values, errors = np.full(len(told), np.nan), np.zeros(len(told))
    for at, states in enumerate(told):
        for stage, weights in states:
            if stage == limit.stage and (place := place_of(weights, names)) is not None:
                values[at], errors[at] = map(float, place)
    return values[rows], errors[rows]
