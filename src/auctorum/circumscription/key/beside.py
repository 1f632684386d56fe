"""The taxa that a key to one taxon has to part it from."""

from __future__ import annotations

from auctorum.circumscription.sisters import taxon_of_treatment
from auctorum.corpus.model import Corpus, Treatment
from auctorum.names.format import format_name
from auctorum.problems import AuctorumError
from auctorum.records.schema import Status


class NoSisters(AuctorumError, LookupError):
    """A taxon beside which no work places another of its rank."""

    remedy = "name the taxa that the key is to part it from"

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self.name = name

    def __str__(self) -> str:
        return f"no work places another taxon of the same rank beside {self.name}"


def with_sisters(corpus: Corpus, taxon: str) -> tuple[str, ...]:
    """The taxon and those of its rank that the latest work which does so places beside it, in that work's order.

    Raises NoSisters where no work does, KeyError for an unknown taxon.
    """
    accepted = taxon_of_treatment(corpus)
    for treatment in (corpus.treatments[one] for one in reversed(corpus.taxa[taxon].treatments)):
        beside = [
            accepted[other.id]
            for other in corpus.by_work[treatment.work.id]
            if other.id in accepted and _beside(treatment, other)
        ]
        if sisters := [one for one in dict.fromkeys(beside) if one != taxon]:
            return (taxon, *sisters)
    entry = corpus.names[corpus.taxa[taxon].current]
    raise NoSisters(format_name(entry.name))


def _beside(one: Treatment, other: Treatment) -> bool:
    same = one.parent is not None and other.parent == one.parent and other.rank == one.rank
    return same and other.status is Status.ACCEPTED
