"""What each candidate is given before the plant is looked at: even, stated, or the shares of named plants."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from auctorum.circumscription.plants import Plant
from auctorum.determination.view import View


@dataclass(frozen=True, slots=True)
class Beforehand:
    """`given` are stated shares by taxon; `counted` numbers of named plants, None where these do not matter."""

    given: tuple[tuple[str, float], ...] = ()
    counted: tuple[tuple[str, int], ...] | None = None

    def of(self, view: View) -> Mapping[str, float] | None:
        """The weights of the candidates of a view; None for even ones.

        What stated shares leave is split evenly over the candidates that have none. Of named plants each candidate has
        one more than were counted: one that was never measured is not thereby impossible.
        """
        if self.counted is not None:
            plants = dict(self.counted)
            return {taxon: float(plants.get(taxon, 0) + 1) for taxon in view.taxa}
        return shared(dict(self.given), view.taxa)


def shared(given: Mapping[str, float], taxa: Sequence[str]) -> Mapping[str, float] | None:
    """Stated shares with the rest split evenly over the other taxa; None where that gives none of them any.

    >>> shared({"a": 0.5}, ["a", "b", "c"]), shared({"z": 1.0}, ["a"])
    ({'a': 0.5, 'b': 0.25, 'c': 0.25}, None)
    """
    if not any(taxon in given for taxon in taxa):
        return None
    free = [taxon for taxon in taxa if taxon not in given]
    rest = max(0.0, 1 - sum(given.values())) / len(free) if free else 0.0
    found = {taxon: given.get(taxon, rest) for taxon in taxa}
    return found if any(found.values()) else None


def of_plants(plants: Iterable[Plant]) -> Beforehand:
    """By how many plants were named as each taxon."""
    return Beforehand(counted=tuple(sorted(Counter(plant.taxon for plant in plants if plant.taxon).items())))
