"""Verdicts by a working criterion of the rows of a table, read as columns."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Kind, Vocabulary
from auctorum.corpus.criteria import Limit
from auctorum.determination.bulk import Bulk, Part, values_at
from auctorum.determination.criteria.criterion import VERDICTS, Verdict, judge_values
from auctorum.determination.many import Measured
from auctorum.determination.view import Key


def verdicts(
    limit: Limit, vocabulary: Vocabulary, bulk: Bulk, part: Part, measured: Mapping[Key, Measured]
) -> tuple[Verdict, ...]:
    """One for each row, as `judge` gives them."""
    character = vocabulary[limit.character]
    if character.kind is Kind.ORDERED:
        values, errors = bulk.places(part, limit.character, limit.stage, state_names(character))
        half = 0.5 if limit.at_least else -0.5  # the limit lies half way to the first state that does not fit
        return tuple(VERDICTS[code] for code in judge_values(limit, values + half, errors).tolist())
    values, errors = values_at(measured, (limit.character, limit.stage), part.rows)
    if character.kind is Kind.COUNT:  # a count has no rounding error
        errors = np.asarray(part.figures[limit.character][2]) if limit.character in part.figures else errors
    return tuple(VERDICTS[code] for code in judge_values(limit, values, errors).tolist())
