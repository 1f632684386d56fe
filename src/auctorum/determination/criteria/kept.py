"""The working criteria that a knowledge base keeps, tried: what authors state of their limit, and the named plants."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

from auctorum.circumscription.diagnosis import findings_of
from auctorum.circumscription.plants import Plant
from auctorum.circumscription.separation_known import knowledge
from auctorum.corpus.criteria import Limit, limit_of
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import sides_of_criterion
from auctorum.determination.criteria.proposal_threshold import Stand, stand
from auctorum.determination.criteria.tally import Tally, tallies
from auctorum.records.schema import Criterion


@dataclass(frozen=True, slots=True)
class Kept:
    """One criterion of the knowledge base.

    `stand` is to the taxon of `otherwise`; None where that is not given or not known. `tallies` are of every taxon
    under which plants were named, the criterion's own first.
    """

    criterion: Criterion
    taxon: str
    limit: Limit
    stand: Stand | None
    tallies: tuple[Tally, ...]


def criteria_for(corpus: Corpus, taxon: str) -> tuple[Criterion, ...]:
    """The criteria by which a plant may be given the taxon with that id."""
    return tuple(one for one in corpus.criteria if sides_of_criterion(corpus, one)[0] == taxon)


def tried(corpus: Corpus, criterion: Criterion, several: Sequence[Plant], works: Collection[str] | None = None) -> Kept:
    """The criterion against what all works, or `works` alone, state, and on the named of several plants.

    Raises as `limit_of` and `trait_of`, and ValueError where nobody accepts its taxon.
    """
    fits, otherwise = sides_of_criterion(corpus, criterion)
    if fits is None:
        raise ValueError(f"nobody accepts {criterion.taxon}")
    limit = limit_of(criterion.decisive, corpus.vocabulary)
    found = None
    if otherwise is not None and otherwise != fits:
        known = [knowledge(findings_of(corpus, one, works=works), corpus.vocabulary) for one in (fits, otherwise)]
        key = (limit.character, limit.stage)
        found = stand(limit, known[0].get(key), otherwise, known[1].get(key), corpus.vocabulary[limit.character])
    named = {plant.taxon for plant in several}
    order = [fits, *(one for one in corpus.taxa if one in named and one != fits)]
    return Kept(criterion, fits, limit, found, tallies(corpus, criterion, order, several))
