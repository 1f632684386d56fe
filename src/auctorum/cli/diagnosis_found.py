"""What `auctorum diagnosis` was asked, and what was found: the accounts of the taxa, before any layout."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from auctorum.circumscription.independence import Lineage, lineage
from auctorum.circumscription.observed import Observed, all_observed
from auctorum.circumscription.plants import Plant, plants, plants_of
from auctorum.circumscription.separation import knowledge_of
from auctorum.circumscription.separation_known import Knowledge
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
    corpus, taxa = asked.corpus, [taxon.id for taxon in asked.taxa]
    every = plants(corpus) if asked.with_plants else ()
    beside = () if len(taxa) > 1 else nearest_sisters(corpus, taxa[0]) if asked.beside is None else asked.beside
    known = knowledge_of(corpus, (*taxa, *beside), works=asked.works or None)
    accounts = tuple(_account(asked, taxon, known, every) for taxon in asked.taxa)
    side_by_side = contrasts(corpus, [one.traits for one in accounts], known) if len(accounts) > 1 else ()
    return Found(asked, accounts, side_by_side)


def _account(asked: Asked, taxon: Taxon, known: Mapping[str, Knowledge], every: Sequence[Plant]) -> Account:
    corpus, works = asked.corpus, asked.works or None
    told = traits(corpus, taxon.id, unit=asked.unit, works=works, characters=asked.characters)
    own = plants_of(every, taxon.id)
    return Account(
        taxon,
        told,
        tuple(one for one in known if one != taxon.id),
        against(corpus, taxon.id, known),
        _repetitions(corpus, taxon, told.diagnosis.works),
        len(own),
        all_observed(corpus, (one.finding for one in told.traits), taxon.id, own),
    )


def _repetitions(corpus: Corpus, taxon: Taxon, works: Sequence[str]) -> Lineage:
    """Who repeats whom, of the works asked."""
    every = lineage(corpus, [corpus.treatments[one] for one in taxon.treatments])
    lines = tuple(line for line in every.lines if line.later in works and line.earlier in works)
    return Lineage(tuple(work for work in every.works if work in works), lines)
