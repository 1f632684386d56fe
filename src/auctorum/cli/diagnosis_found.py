"""What `auctorum diagnosis` was asked, and what was found: the accounts of the taxa, before any layout."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from auctorum.circumscription.independence import Lineage, lineage
from auctorum.circumscription.observed import Observed, all_observed
from auctorum.circumscription.plants import Plant, plants, plants_of
from auctorum.circumscription.traits import Traits, traits
from auctorum.circumscription.traits_apart import Contrast, Partings, against, contrasts, nearest_sisters
from auctorum.corpus.model import Corpus, Taxon

Key = tuple[str, str]  # character and stage


@dataclass(frozen=True, slots=True)
class Asked:
    """The question; `corpus` has the vocabulary of the unit asked for. `beside` None: the nearest sisters."""

    corpus: Corpus
    taxa: tuple[Taxon, ...]
    unit: str | None
    works: tuple[str, ...]
    characters: tuple[str, ...]
    beside: tuple[str, ...] | None
    with_plants: bool


@dataclass(frozen=True, slots=True)
class Account:
    """One taxon: its traits, the taxa beside it with the partings from each, own plants, and who repeats whom."""

    taxon: Taxon
    traits: Traits
    beside: tuple[str, ...]
    partings: tuple[Partings, ...]
    repetitions: Lineage
    plants: int = 0
    observed: Mapping[Key, Observed] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Found:
    """The answer; contrasts where there are several taxa."""

    asked: Asked
    accounts: tuple[Account, ...]
    contrasts: tuple[Contrast, ...]


def found(asked: Asked) -> Found:
    """The accounts of the taxa, in the order asked."""
    every = plants(asked.corpus) if asked.with_plants else ()
    accounts = tuple(_account(asked, taxon, every) for taxon in asked.taxa)
    if len(accounts) == 1:
        return Found(asked, accounts, ())
    side_by_side = contrasts(asked.corpus, [one.traits for one in accounts], works=asked.works or None)
    return Found(asked, accounts, side_by_side)


def _account(asked: Asked, taxon: Taxon, every: Sequence[Plant]) -> Account:
    corpus, works = asked.corpus, asked.works or None
    told = traits(corpus, taxon.id, unit=asked.unit, works=works, characters=asked.characters)
    beside = _beside(asked, taxon)
    own = plants_of(every, taxon.id)
    return Account(
        taxon,
        told,
        beside,
        against(corpus, taxon.id, beside, works=works),
        _repetitions(corpus, taxon, told.diagnosis.works),
        len(own),
        all_observed(corpus, (one.finding for one in told.traits), taxon.id, own),
    )


def _beside(asked: Asked, taxon: Taxon) -> tuple[str, ...]:
    if len(asked.taxa) > 1:
        return tuple(one.id for one in asked.taxa if one is not taxon)
    return nearest_sisters(asked.corpus, taxon.id) if asked.beside is None else asked.beside


def _repetitions(corpus: Corpus, taxon: Taxon, works: Sequence[str]) -> Lineage:
    """Who repeats whom, of the works asked."""
    every = lineage(corpus, [corpus.treatments[one] for one in taxon.treatments])
    lines = tuple(line for line in every.lines if line.later in works and line.earlier in works)
    return Lineage(tuple(work for work in every.works if work in works), lines)
