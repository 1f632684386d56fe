"""The taxa that a plant may be: none inside another, so that it can be only one of them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

from auctorum.circumscription.sisters import wholes_by_work
from auctorum.corpus.model import Corpus, Sense
from auctorum.records.schema import Status

Accepted = Mapping[str, tuple[str, ...]]  # work -> the taxa that it accepts


def accepted_by_work(corpus: Corpus) -> Accepted:
    """The taxa that each work accepts, in the order of the corpus."""
    found: dict[str, dict[str, None]] = {work: {} for work in corpus.works}
    for taxon in corpus.taxa.values():
        for treatment in taxon.treatments:
            found[corpus.treatments[treatment].work.id][taxon.id] = None
    return {work: tuple(taxa) for work, taxa in found.items()}


def sunk_by_work(corpus: Corpus) -> Mapping[str, frozenset[str]]:
    """The types that each work sinks into another: ids of groups of names."""
    found: dict[str, set[str]] = {}
    for one in corpus.treatments.values():
        if one.status is Status.SYNONYM:
            found.setdefault(one.work.id, set()).add(corpus.names[one.name].group)
        for name in one.synonyms:
            found.setdefault(one.work.id, set()).add(corpus.names[name].group)
    return {work: frozenset(groups) for work, groups in found.items()}


@dataclass(frozen=True, slots=True)
class Opinions:
    """Which taxa each work accepts, which it places one in the other, and which types it sinks."""

    accepted: Accepted
    wholes: Mapping[str, tuple[tuple[str, str], ...]]
    sunk: Mapping[str, frozenset[str]]


def opinions(corpus: Corpus) -> Opinions:
    """Those of every work."""
    return Opinions(accepted_by_work(corpus), wholes_by_work(corpus), sunk_by_work(corpus))


def candidates(corpus: Corpus, held: Opinions, works: Collection[str] | None = None) -> tuple[str, ...]:
    """The taxa that the works accept (None: all works), so that a plant can be only one; in the order of the corpus.

    A taxon that more of the works sink than accept is none. Of a whole and its part, so placed by at least half of the
    works that accept both, the whole is left out where it is a name in the wide sense; else the one that fewer works
    accept, and where as many accept both, the whole: what is told apart in it can be determined.
    """
    asked = held.accepted if works is None else works
    number = Counter(taxon for work in asked for taxon in held.accepted.get(work, ()))
    sunk = Counter(group for work in asked for group in held.sunk.get(work, ()))
    kept = {taxon for taxon, many in number.items() if sunk[corpus.taxa[taxon].group] <= many}
    placed = Counter(pair for work in asked for pair in held.wholes.get(work, ()) if kept.issuperset(pair))
    both: Counter[tuple[str, str]] = Counter()
    for work in asked:
        accepts = set(held.accepted.get(work, ()))
        both.update(pair for pair in placed if accepts.issuperset(pair))
    dropped = {
        whole if corpus.taxa[whole].sense is Sense.WIDE or number[whole] <= number[part] else part
        for (part, whole), many in placed.items()
        if 2 * many >= both[part, whole]
    }
    return in_order(corpus, kept - dropped)


def in_order(corpus: Corpus, taxa: Iterable[str]) -> tuple[str, ...]:
    """The taxa in the order of the corpus, each once."""
    chosen = set(taxa)
    return tuple(taxon for taxon in corpus.taxa if taxon in chosen)
