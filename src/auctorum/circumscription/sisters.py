"""The taxa that authors place beside a taxon, from which a description has to tell it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping

from auctorum.corpus.model import Corpus
from auctorum.records.schema import Status


def taxon_of_treatment(corpus: Corpus) -> dict[str, str]:
    """Treatment id -> id of the taxon that it accepts."""
    return {treatment: taxon.id for taxon in corpus.taxa.values() for treatment in taxon.treatments}


def sisters(corpus: Corpus, taxon: str, accepted: Mapping[str, str] | None = None) -> tuple[str, ...]:
    """Ids of the taxa that works accept beside it in the same parent, those first that most works place so.

    `accepted` is `taxon_of_treatment(corpus)`, where it is at hand. Raises KeyError for an unknown taxon.
    """
    accepted = taxon_of_treatment(corpus) if accepted is None else accepted
    beside: dict[str, set[str]] = defaultdict(set)
    for treatment in (corpus.treatments[id_] for id_ in corpus.taxa[taxon].treatments):
        if treatment.parent is None:
            continue
        for other in corpus.by_work[treatment.work.id]:
            if other.parent == treatment.parent and other.status is Status.ACCEPTED and other.id in accepted:
                beside[accepted[other.id]].add(treatment.work.id)
    beside.pop(taxon, None)
    order = {id_: number for number, id_ in enumerate(corpus.taxa)}
    return tuple(sorted(beside, key=lambda id_: (-len(beside[id_]), order[id_])))
