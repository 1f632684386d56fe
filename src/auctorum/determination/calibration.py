"""How far the probabilities can be trusted: plants that somebody has named, determined as if nobody had."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from auctorum.circumscription.intervals import Interval, wilson
from auctorum.circumscription.plants import LIST_MARK, Plant
from auctorum.determination.leave_out import views_without
from auctorum.determination.many import Determined, columns_of, determined, prior_of
from auctorum.determination.model import Wording
from auctorum.determination.normal import Floats
from auctorum.determination.tables import Flags
from auctorum.determination.view import Statements, View
from auctorum.determination.wording import IN_ORDER, Codes
from auctorum.records.schema import Thresholds

BANDS = (0.0, 0.5, 0.8, 0.95, 0.99, 1.0)  # of the probability stated for the likeliest taxon


@dataclass(frozen=True, slots=True)
class Band:
    """Plants whose likeliest taxon was given a probability from `low` on and below `high`."""

    low: float
    high: float
    plants: int
    stated: float  # their mean probability
    right: int
    interval: Interval  # of the share that is right, 95 %


@dataclass(frozen=True, slots=True)
class Tally:
    """Plants that were given one wording."""

    wording: Wording
    plants: int
    right: int


@dataclass(frozen=True, slots=True)
class Calibration:
    """What becomes of named plants. `brier` is the mean over plants of the summed squares of probability less truth.

    0 is perfect and 2 the worst; `brier_unknown` is that of the priors alone. `mistaken` are (named, taken for,
    plants), most first. `left_out` are plants named as a taxon that is no candidate, `unseen` those on which nothing
    was observed that the view states.
    """

    view: str
    plants: int
    right: int
    brier: float
    brier_unknown: float
    bands: tuple[Band, ...]
    tallies: tuple[Tally, ...]
    mistaken: tuple[tuple[str, str, int], ...]
    left_out: int
    unseen: int
    named_by: tuple[str, ...]
    left_one_out: bool  # each plant was determined without what it says itself


def calibration(
    statements: Statements,
    view: View,
    plants: Sequence[Plant],
    *,
    own: Sequence[Plant] = (),
    works: Collection[str] | None = None,
    priors: Mapping[str, float] | None = None,
    thresholds: Thresholds | None = None,
) -> Calibration:
    """How plants that bear a name come out under the view.

    Where the view has learnt from plants (`own`, with the works that it was made of), each of these is determined by
    what the others alone say. The Brier score: G. W. Brier, Monthly Weather Review 78 (1950): 1–3 (from memory).
    """
    named = [plant for plant in plants if plant.taxon is not None]
    among = [plant for plant in named if plant.taxon in view.taxa]
    found = _determined(statements, view, among, own, works, priors, thresholds)
    seen = [(plant, row) for row, plant in enumerate(among) if found.used[row]]
    rows = np.array([row for _, row in seen], dtype=np.intp)
    true = np.array([view.taxa.index(plant.taxon or "") for plant, _ in seen], dtype=np.intp)
    stated, best, said = found.probabilities[rows], found.best[rows], found.wordings[rows]
    right = best == true
    top = stated[np.arange(len(rows)), best]
    return Calibration(
        view=view.title,
        plants=len(rows),
        right=int(right.sum()),
        brier=brier(stated, true),
        brier_unknown=brier(np.tile(prior_of(view, priors), (len(rows), 1)), true),
        bands=_bands(top, right),
        tallies=tuple(
            Tally(word, int((said == code).sum()), int(right[said == code].sum())) for code, word in enumerate(IN_ORDER)
        ),
        mistaken=_mistaken(view, true, best),
        left_out=len(named) - len(among),
        unseen=len(among) - len(rows),
        named_by=tuple(sorted({by for plant, _ in seen for by in plant.identified_by.split(LIST_MARK) if by})),
        left_one_out=bool(own),
    )


def brier(stated: Floats, true: Codes) -> float:
    """The mean over plants of the summed squares of stated probability less truth, 0 to 2; 0 for no plant.

    >>> brier(np.array([[0.5, 0.5], [1.0, 0.0]]), np.array([0, 0]))
    0.25
    """
    if not len(true):
        return 0.0
    truth = np.zeros_like(stated)
    truth[np.arange(len(true)), true] = 1.0
    return float(((stated - truth) ** 2).sum(axis=1).mean())


def _bands(top: Floats, right: Flags) -> tuple[Band, ...]:
    found = []
    for low, high in pairwise(BANDS):
        inside = (top >= low) & ((top < high) | (high == BANDS[-1]))
        if many := int(inside.sum()):
            good = int(right[inside].sum())
            found.append(Band(low, high, many, float(top[inside].mean()), good, wilson(good, many)))
    return tuple(found)


def _mistaken(view: View, true: Codes, best: Codes) -> tuple[tuple[str, str, int], ...]:
    pairs = Counter((view.taxa[one], view.taxa[other]) for one, other in zip(true, best, strict=True) if one != other)
    return tuple((*pair, many) for pair, many in sorted(pairs.items(), key=lambda one: (-one[1], one[0])))


def _determined(
    statements: Statements,
    view: View,
    plants: Sequence[Plant],
    own: Sequence[Plant],
    works: Collection[str] | None,
    priors: Mapping[str, float] | None,
    thresholds: Thresholds | None,
) -> Determined:
    """The plants in their order; those that the view has learnt from, each by the others alone."""
    learnt = {plant.id for plant in own}
    free = [row for row, plant in enumerate(plants) if plant.id not in learnt]
    parts = [(free, view), *views_without(statements, view, plants, own, works)]
    taxa, many = len(view.taxa), len(plants)
    none = np.zeros(many, dtype=np.intp)
    whole = Determined(np.full((many, taxa), 1 / taxa), none, none.copy(), none.copy(), none.copy())
    for rows, by in parts:
        if columns := columns_of(by, [plants[row] for row in rows]):
            found = determined(by, columns, priors, thresholds)
            whole.probabilities[rows], whole.best[rows] = found.probabilities, found.best
            whole.misfits[rows], whole.wordings[rows] = found.misfits, found.wordings
            whole.used[rows] = found.used
    return whole
