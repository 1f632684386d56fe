"""Many plants determined, one row each: what a table of answers says, and the sum of it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

import numpy as np

from auctorum.determination.many import Columns, Determined, determined
from auctorum.determination.model import Wording
from auctorum.determination.telling.words import Names
from auctorum.determination.view import View
from auctorum.determination.wording import IN_ORDER, qualified
from auctorum.records.schema import Thresholds


class Found(NamedTuple):
    """One plant: `name` in open nomenclature; `taxon` None, and the rest empty, where nothing could be used."""

    taxon: str | None
    name: str
    wording: Wording
    probability: float
    next_best: str  # its name; "" for an only candidate
    next_probability: float
    misfits: tuple[str, ...]  # characters outside all that is stated of the taxon
    used: int


class Finder:
    """Determines parts of a table under one view."""

    def __init__(
        self, view: View, names: Names, genus: str, priors: Mapping[str, float] | None, thresholds: Thresholds
    ) -> None:
        self._view, self._priors, self._thresholds = view, priors, thresholds
        self._plain = [names[taxon] for taxon in view.taxa]
        self._said = [
            [qualified((genus or name) if word is Wording.INDET else name, word) for word in IN_ORDER]
            for name in self._plain
        ]
        self._nothing = Found(None, qualified(genus or "plant", Wording.INDET), Wording.INDET, 0.0, "", 0.0, (), 0)

    def rows(self, columns: Columns, plants: int) -> Iterator[Found]:
        """One for each plant of the columns, in their order."""
        if not columns:
            yield from [self._nothing] * plants
            return
        found = determined(self._view, columns, self._priors, self._thresholds)
        misfits = _misfits(found)
        order = np.argsort(-found.probabilities, axis=1, kind="stable")
        second = np.where(order[:, 0] == found.best, order[:, min(1, order.shape[1] - 1)], order[:, 0])
        every = np.arange(len(found.best))
        alone = len(self._view.taxa) == 1
        parts = (
            found.best, found.wordings, found.probabilities[every, found.best], second,
            found.probabilities[every, second], found.used,
        )  # fmt: skip
        for place, (best, word, chance, other, less, used) in enumerate(
            zip(*(part.tolist() for part in parts), strict=True)
        ):
            if not used:
                yield self._nothing
                continue
            next_best, less = ("", 0.0) if alone else (self._plain[other], less)
            taxon, name, wrong = self._view.taxa[best], self._said[best][word], misfits.get(place, ())
            yield Found(taxon, name, IN_ORDER[word], chance, next_best, less, wrong, used)


def _misfits(found: Determined) -> dict[int, tuple[str, ...]]:
    """By plant the characters that lie outside what is stated of the best; only of those that have any."""
    told: dict[int, list[str]] = {}
    for (character, _), flags in found.outside.items():
        for row in np.flatnonzero(flags).tolist():
            told.setdefault(row, []).append(character)
    return {row: tuple(dict.fromkeys(several)) for row, several in told.items()}


@dataclass(slots=True)
class Sum:
    """Counts over the plants of a table, gathered row by row."""

    candidates: tuple[str, ...]
    plants: int = 0
    elsewhere: int = 0  # named as a taxon that is no candidate
    undetermined: int = 0  # nothing observed could be used
    names: Counter[tuple[str, Wording]] = field(default_factory=Counter)  # taxon and wording
    disagree: Counter[tuple[str, str]] = field(default_factory=Counter)  # taxon given, taxon found, not indet.
    agree: int = 0
    strange: int = 0  # plants with a character outside all that is stated of the taxon

    def add(self, found: Found, given: str | None) -> None:
        """One more plant; `given` is the taxon of the name it was given."""
        self.plants += 1
        if found.taxon is None:
            self.undetermined += 1
            return
        self.names[found.taxon, found.wording] += 1
        self.strange += bool(found.misfits)
        if given is not None and given not in self.candidates:
            self.elsewhere += 1
        elif given is not None and found.wording is not Wording.INDET:
            if given == found.taxon:
                self.agree += 1
            else:
                self.disagree[given, found.taxon] += 1

    def by_taxon(self, order: Sequence[str]) -> Iterator[tuple[str, tuple[int, ...]]]:
        """Taxa in the order given with how many plants bear each wording, the surest first; others left out."""
        for taxon in order:
            counts = tuple(self.names[taxon, word] for word in reversed(IN_ORDER))
            if any(counts):
                yield taxon, counts
