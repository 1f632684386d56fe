"""The sisters of each taxon, from which a description has to tell it: those beside it, but for its parts and wholes."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping

from auctorum.corpus.model import Corpus
from auctorum.records.schema import Status

NEIGHBOURS = 10  # taxa of one parent on either side, in the order of a work, that count as sisters

Place = tuple[str, str]  # a work and the parent in which it places taxa


def taxon_of_treatment(corpus: Corpus) -> dict[str, str]:
    """Treatment id -> id of the taxon that it accepts."""
    return {treatment: taxon.id for taxon in corpus.taxa.values() for treatment in taxon.treatments}


def sisters(corpus: Corpus) -> Mapping[str, tuple[str, ...]]:
    """By taxon the ids of those that works accept beside it in the same parent, the one that most works place so first.

    A taxon without any is left out. None that is part of the taxon, nor one that it is part of. In a parent
    of many taxa only the nearest in the order of the work are taken, so that pairs stay as few as taxa.
    """
    accepted = taxon_of_treatment(corpus)
    placed = _placed(corpus, accepted)
    inside = _inside(corpus, accepted, placed)
    beside: dict[str, dict[str, int]] = defaultdict(lambda: defaultdict(int))
    for several in placed.values():
        for at, taxon in enumerate(several):
            for other in several[max(0, at - NEIGHBOURS) : at + NEIGHBOURS + 1]:
                beside[taxon][other] += 1
    order = {id_: number for number, id_ in enumerate(corpus.taxa)}
    found = {}
    for taxon, others in beside.items():
        fit = (
            other
            for other, works in others.items()
            if corpus.taxa[taxon].group != corpus.taxa[other].group
            # One in the other for as many works as place them side by side: nothing can tell them apart.
            and inside.get((taxon, other), 0) + inside.get((other, taxon), 0) < works
        )
        found[taxon] = tuple(sorted(fit, key=lambda one: (-others[one], order[one])))
    return {taxon: several for taxon, several in found.items() if several}


def wholes_by_work(corpus: Corpus) -> Mapping[str, tuple[tuple[str, str], ...]]:
    """By work the pairs of part and whole, each once, of the taxa that it places one in the other.

    At any depth: a variety of a subspecies is part of the species, too.
    """
    accepted = taxon_of_treatment(corpus)
    found: dict[str, tuple[tuple[str, str], ...]] = {}
    for work, treatments in corpus.by_work.items():
        kept = {one.name: one for one in treatments if one.id in accepted}
        pairs: dict[tuple[str, str], None] = {}
        for one in kept.values():
            above, seen = kept.get(one.parent or ""), {one.id}
            while above is not None and above.id not in seen:
                seen.add(above.id)
                if accepted[above.id] != accepted[one.id]:
                    pairs[accepted[one.id], accepted[above.id]] = None
                above = kept.get(above.parent or "")
        found[work] = tuple(pairs)
    return found


def _placed(corpus: Corpus, accepted: Mapping[str, str]) -> Mapping[Place, tuple[str, ...]]:
    """The taxa that a work places in a parent, in the order of the corpus."""
    found: dict[Place, dict[str, None]] = defaultdict(dict)
    for one in corpus.treatments.values():
        if one.parent is not None and one.status is Status.ACCEPTED and one.id in accepted:
            found[one.work.id, one.parent][accepted[one.id]] = None
    return {place: tuple(several) for place, several in found.items()}


def _inside(
    corpus: Corpus, accepted: Mapping[str, str], placed: Mapping[Place, tuple[str, ...]]
) -> Mapping[tuple[str, str], int]:
    """Part and whole -> the number of works that place the one in the other."""
    wholes = {(one.work.id, one.name): accepted[one.id] for one in corpus.treatments.values() if one.id in accepted}
    found: dict[tuple[str, str], int] = defaultdict(int)
    for place, parts in placed.items():
        if place in wholes:
            for part in parts:
                found[part, wholes[place]] += 1
    return found
