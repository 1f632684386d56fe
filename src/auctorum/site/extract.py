"""The part of a corpus that the synonymy of one type asks about, so that its cost does not grow with the rest.

A synonymy follows treatments from the accepted name down: those that keep a name on the type or place another under
it, those that do so with what is placed there, and so on. Of names it needs those that these treatments and their
types speak of, and for an autonym its whole species.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from auctorum.corpus.model import Corpus, NameEntry, Taxon, Treatment
from auctorum.records.schema import Status


class Extracts:
    """Indexes over a corpus, and the parts that they give."""

    def __init__(self, corpus: Corpus) -> None:
        self._corpus = corpus
        self._place = {id_: place for place, id_ in enumerate(corpus.treatments)}
        self._into: dict[str, list[Treatment]] = {}  # type -> treatments that keep it or place something in it
        self._taxa: dict[str, list[Taxon]] = {}
        self._species: dict[tuple[str, str], list[NameEntry]] = {}
        for one in corpus.treatments.values():
            kept = one.status in (Status.ACCEPTED, Status.DOUBTFUL)
            target = one.name if kept else one.accepted_as
            if target is not None:
                self._into.setdefault(corpus.names[target].group, []).append(one)
        for taxon in corpus.taxa.values():
            self._taxa.setdefault(taxon.group, []).append(taxon)
        for entry in corpus.names.values():
            self._species.setdefault((entry.name.genus, entry.name.species), []).append(entry)

    def of(self, group: str, work: str = "") -> Corpus:
        """What the synonymy of a type needs: over all works, or of one work only."""
        treatments = self._treatments(group, work)
        by_work: dict[str, list[Treatment]] = {}
        for one in treatments:
            by_work.setdefault(one.work.id, []).append(one)
        return replace(
            self._corpus,
            works={work: self._corpus.works[work] for work in by_work},
            by_work={work: tuple(of_work) for work, of_work in by_work.items()},
            names=self._names(group, treatments),
            taxa={taxon.id: taxon for taxon in self._taxa.get(group, ())},
        )

    def _treatments(self, group: str, work: str) -> list[Treatment]:
        """Treatments that keep the type or place something in it, and down from what is placed there."""
        found: dict[str, Treatment] = {}
        waiting, seen = [group], {group}
        while waiting:
            for one in self._into.get(waiting.pop(), ()):
                if work and one.work.id != work:
                    continue
                found[one.id] = one
                below = self._corpus.names[one.name].group
                if below not in seen:
                    seen.add(below)
                    waiting.append(below)
        return sorted(found.values(), key=lambda one: self._place[one.id])

    def _names(self, group: str, treatments: Iterable[Treatment]) -> Mapping[str, NameEntry]:
        names, groups = self._corpus.names, dict.fromkeys([group])
        for one in treatments:
            for name in (one.name, one.accepted_as, *one.synonyms, *one.misapplied):
                if name is not None:
                    groups[names[name].group] = None
        found = {name: names[name] for each in groups for name in self._corpus.groups.get(each, (each,))}
        for entry in tuple(found.values()):
            if entry.is_autonym:
                found |= {one.id: one for one in self._species[entry.name.genus, entry.name.species]}
        return found
