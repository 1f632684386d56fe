"""What the kinds of gaps are found from, each thing worked out once and only where it is asked for."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property

from auctorum.circumscription.diagnosis import findings_of
from auctorum.circumscription.findings import Finding, Verdict
from auctorum.circumscription.gaps.apart import Apart
from auctorum.circumscription.gaps.rank import rank
from auctorum.circumscription.plants import Plant, plants
from auctorum.circumscription.separation_words import label
from auctorum.circumscription.sisters import sisters, taxon_of_treatment
from auctorum.corpus.model import Corpus, Treatment
from auctorum.corpus.resolve import NeverAccepted, called, find_taxon


class Ground:
    """A corpus, and the names that are asked about (all if None); cost is linear in the records.

    `taxa` are the ids of the taxa asked about; `everything` is true where no name was; `apart` knows how
    well characters tell taxa apart.
    """

    def __init__(self, corpus: Corpus, asked: Sequence[str] | None = None) -> None:
        self.corpus = corpus
        self.taxa = tuple(corpus.taxa) if asked is None else _taxa(corpus, asked)
        self._asked = frozenset(self.taxa)
        self.everything = asked is None
        self._groups = frozenset(corpus.names[name].group for name in asked or ())
        self._focal = frozenset(corpus.names[name].group for name in corpus.focal)
        self._told: dict[str, Sequence[Finding]] = {}
        self.apart = Apart(corpus, self.told, self.sisters)

    # --- words and weights

    def title(self, taxon: str) -> str:
        """The taxon as it is printed, without authors unless homonyms ask for them."""
        found = self.corpus.taxa[taxon]
        return called(self.corpus, found.current) + found.sense.suffix

    def label(self, character: str, stage: str = "") -> str:
        """A character in running text: `spur length at maturity`, `spur to petal ratio`."""
        return label(self.corpus.vocabulary[character], stage)

    def labels(self, characters: Iterable[str]) -> tuple[str, ...]:
        """Characters in running text, at no stage of their own."""
        return tuple(map(self.label, characters))

    def asks(self, name: str) -> bool:
        """Whether a name is among those asked about."""
        return self.everything or self.corpus.names[name].group in self._groups

    def asks_of(self, treatment: Treatment) -> bool:
        """Whether the taxon of a treatment is among those asked about; where it accepts none, whether its name is."""
        taxon = self.accepted.get(treatment.id)
        return self.asks(treatment.name) if taxon is None else self.asks_taxon(taxon)

    def asks_taxon(self, taxon: str) -> bool:
        """Whether a taxon is among those asked about."""
        return taxon in self._asked

    def focal(self, group: str) -> bool:
        """Whether a type is that of a focal name."""
        return group in self._focal

    def use(self, taxon: str) -> float:
        """Share of the works on its genus that accept the taxon."""
        found = self.corpus.taxa[taxon]
        works = {self.corpus.treatments[one].work.id for one in found.treatments}
        return len(works) / len(self._on_genus[self._genus(found.current)])

    def use_of_names(self, names: Sequence[str]) -> tuple[int, float]:
        """Number of works that use one of the names, and their share of those on the genus."""
        works = {one.work.id for name in names for one in self.using(name)}
        every = self._on_genus.get(self._genus(names[0]), ())
        return len(works), len(works) / len(every) if every else 0.0

    def using(self, name: str) -> Sequence[Treatment]:
        """The treatments that keep, sink or misapply a name, or place a taxon in it, by date."""
        return self._using.get(name, ())

    def rank(self, base: float, *taxa: str) -> float:
        """The rank of a gap about these taxa."""
        focal = any(self.focal(self.corpus.taxa[one].group) for one in taxa)
        return rank(base, min(map(self.use, taxa)), focal=focal)

    def _genus(self, name: str) -> str:
        return self.corpus.names[name].name.genus

    @cached_property
    def _on_genus(self) -> Mapping[str, set[str]]:
        found: dict[str, set[str]] = defaultdict(set)
        for name, treatments in self._using.items():
            found[self._genus(name)].update(one.work.id for one in treatments)
        return found

    @cached_property
    def _using(self) -> Mapping[str, list[Treatment]]:
        found: dict[str, list[Treatment]] = defaultdict(list)
        for one in self.corpus.treatments.values():
            for name in dict.fromkeys(filter(None, (one.name, *one.synonyms, *one.misapplied, one.parent))):
                found[name].append(one)
        return found

    # --- what is said

    def told(self, taxon: str) -> Sequence[Finding]:
        """The findings on a taxon of which anybody says something."""
        if taxon not in self._told:
            every = findings_of(self.corpus, taxon)
            self._told[taxon] = tuple(one for one in every if one.verdict is not Verdict.SILENT)
        return self._told[taxon]

    def several_works(self, taxon: str) -> bool:
        """Whether more than one work treats the taxon: with one nobody can differ, repeat or be silent."""
        return len({self.corpus.treatments[one].work.id for one in self.corpus.taxa[taxon].treatments}) > 1

    # --- beside one another

    @cached_property
    def accepted(self) -> Mapping[str, str]:
        """Treatment id -> id of the taxon that it accepts."""
        return taxon_of_treatment(self.corpus)

    def sisters(self, taxon: str) -> tuple[str, ...]:
        """Ids of the taxa that works place beside it, those first that most works place so; none that is part of it."""
        return self._sisters.get(taxon, ())

    @cached_property
    def _sisters(self) -> Mapping[str, tuple[str, ...]]:
        return sisters(self.corpus)

    # --- in the field

    @cached_property
    def _plants(self) -> Mapping[str, list[Plant]]:
        found: dict[str, list[Plant]] = defaultdict(list)
        for plant in plants(self.corpus):
            if plant.taxon is not None:
                found[plant.taxon].append(plant)
        return found

    def plants(self, taxon: str) -> Sequence[Plant]:
        """The measured plants that were given the name of the taxon."""
        return self._plants.get(taxon, ())

    def treatment(self, taxon: str, work: str) -> Treatment:
        """The first treatment of the taxon in a work."""
        every = (self.corpus.treatments[one] for one in self.corpus.taxa[taxon].treatments)
        return next(one for one in every if one.work.id == work)


def _taxa(corpus: Corpus, asked: Sequence[str]) -> tuple[str, ...]:
    """The taxa of the names, in the order of the corpus; nothing for a name that nobody accepts."""
    found = set()
    for name in asked:
        try:
            found.add(find_taxon(corpus, name).id)
        except NeverAccepted:
            continue
    return tuple(taxon for taxon in corpus.taxa if taxon in found)
