"""What the pages ask of the corpus: each answer computed once, each thing with its address and its words."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cached_property
from string import ascii_lowercase
from typing import TypeVar

from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.findings import Diagnosis
from auctorum.circumscription.independence import Lineage, lineage
from auctorum.circumscription.observed import Observed, all_observed
from auctorum.circumscription.plants import Plant, plants
from auctorum.circumscription.separation import Separation, separation_known
from auctorum.circumscription.separation_known import Knowledge, knowledge
from auctorum.circumscription.sisters import sisters
from auctorum.corpus.model import Taxon, Treatment, Work
from auctorum.corpus.spelling import recorded_genders
from auctorum.determination.places.public_plants import public_problem
from auctorum.determination.places.whereabouts import whereabouts_of
from auctorum.names.format import format_name, parts
from auctorum.names.gender import Gender
from auctorum.names.name import Name
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.compare_wording import Piece
from auctorum.nomenclature.correct import CorrectName
from auctorum.nomenclature.history import History, history
from auctorum.nomenclature.standing import Standing, standing
from auctorum.nomenclature.views import correct_in, correct_then
from auctorum.problems import AuctorumError, Problem
from auctorum.records.schema import Status
from auctorum.site.code_parts import Called
from auctorum.site.compared import Compared
from auctorum.site.extract import Extracts
from auctorum.site.paths import slugs
from auctorum.site.surveys import Surveys
from auctorum.site.words import NameFinder, Rich, Run, linked, plain

MOST_SISTERS = 8  # taxa beside a taxon that it is compared with
NEAREST = 3  # of these, those that its own page and its ladders tell of
T = TypeVar("T")


class Answers:
    """The corpus under the Code and its problems, with answers kept and every page's path known."""

    def __init__(self, code: Code, problems: Sequence[Problem]) -> None:
        self.code = code
        self.corpus = code.corpus
        known = whereabouts_of(self.corpus)
        self.problems = tuple(sorted(public_problem(each, known) for each in problems))
        self._histories: dict[str, History] = {}
        self._diagnoses: dict[str, Diagnosis] = {}
        self._observed: dict[str, Mapping[tuple[str, str], Observed]] = {}
        self._known: dict[str, Knowledge] = {}
        self._lineages: dict[str, Lineage] = {}
        self._apart: dict[tuple[str, int], tuple[tuple[str, Separation], ...]] = {}
        self._separations: dict[tuple[str, str], Separation] = {}
        self._standings: dict[str, tuple[Standing, ...]] = {}
        self._set_names: dict[tuple[str, bool, bool], Rich] = {}
        self._set_texts: dict[str, Rich] = {}
        self.uses: dict[str, Called] = {}  # by treatment, entered where they are told
        self._correct_then: dict[str, CorrectName | None] = {}
        self._correct_now: dict[str, CorrectName | None] = {}

    def history(self, group: str) -> History:
        """The history of one group of names."""
        if group not in self._histories:
            self._histories[group] = history(self.code, group)
        return self._histories[group]

    def standing(self, name: str) -> tuple[Standing, ...]:
        """The standing of one name under the Code."""
        if name not in self._standings:
            self._standings[name] = standing(self.code, name)
        return self._standings[name]

    def diagnosis(self, taxon: str) -> Diagnosis:
        """What the statements about one taxon come to."""
        if taxon not in self._diagnoses:
            self._diagnoses[taxon] = diagnosis(self.corpus, taxon)
        return self._diagnoses[taxon]

    def lineage(self, taxon: str) -> Lineage:
        """Who repeats whom in treating one taxon."""
        if taxon not in self._lineages:
            treatments = (self.corpus.treatments[id_] for id_ in self.corpus.taxa[taxon].treatments)
            self._lineages[taxon] = lineage(self.corpus, treatments)
        return self._lineages[taxon]

    def apart(self, taxon: str, most: int = MOST_SISTERS) -> tuple[tuple[str, Separation], ...]:
        """The sisters of a taxon, those that most works place beside it first, each with what tells the two apart."""
        if (taxon, most) not in self._apart:
            beside = self._sisters.get(taxon, ())[:most]
            self._apart[taxon, most] = tuple((sister, self._separation(taxon, sister)) for sister in beside)
        return self._apart[taxon, most]

    @cached_property
    def _sisters(self) -> Mapping[str, tuple[str, ...]]:
        return sisters(self.corpus)

    def _separation(self, taxon: str, sister: str) -> Separation:
        first, second = sorted((taxon, sister))
        if (first, second) not in self._separations:
            known = {one: self._knowledge(one) for one in (first, second)}
            self._separations[first, second] = separation_known(self.corpus, known)
        return self._separations[first, second].seen_from(taxon)

    def _knowledge(self, taxon: str) -> Knowledge:
        """What is known of a taxon, as each of its pairs needs it."""
        if taxon not in self._known:
            self._known[taxon] = knowledge(self.diagnosis(taxon).findings, self.corpus.vocabulary)
        return self._known[taxon]

    def observed(self, taxon: str) -> Mapping[tuple[str, str], Observed]:
        """What the plants named as the taxon show, by character and stage of its findings."""
        if taxon not in self._observed:
            seen = self._plants.get(taxon, ())
            self._observed[taxon] = all_observed(self.corpus, self.diagnosis(taxon).findings, taxon, seen)
        return self._observed[taxon]

    @cached_property
    def _plants(self) -> dict[str, tuple[Plant, ...]]:
        return _grouped((plant.taxon, plant) for plant in self.every_plant if plant.taxon is not None)

    @cached_property
    def every_plant(self) -> Sequence[Plant]:
        """All measured plants, with a name or without."""
        return plants(self.corpus)

    @cached_property
    def surveys(self) -> Surveys:
        """How many of the plants each focal taxon has."""
        return Surveys(self.corpus, self.every_plant)

    def correct_then(self, treatment: Treatment) -> CorrectName | None:
        """The correct name for a work's own view at its time; None without rank or place to be judged in."""
        if treatment.id not in self._correct_then:
            self._correct_then[treatment.id] = correct_then(self.code, treatment)
        return self._correct_then[treatment.id]

    def correct_now(self, treatment: Treatment) -> CorrectName | None:
        """The correct name for a work's own view by all names known today; None where `correct_then` is None."""
        if treatment.id not in self._correct_now:
            self._correct_now[treatment.id] = self._correct_today(treatment)
        return self._correct_now[treatment.id]

    def _correct_today(self, treatment: Treatment) -> CorrectName | None:
        if self.correct_then(treatment) is None:
            return None
        try:
            return correct_in(self.code, treatment)
        except AuctorumError:
            return None

    @cached_property
    def kept(self) -> dict[tuple[str, str], Treatment]:
        """The treatment in which a work keeps a name, doubtfully or not, by work and name."""
        kept = (one for one in self.corpus.treatments.values() if one.status in (Status.ACCEPTED, Status.DOUBTFUL))
        return {(one.work.id, one.name): one for one in kept}

    @cached_property
    def recorded_genders(self) -> dict[str, Gender]:
        """Genus -> the gender that an act of it records."""
        return recorded_genders(self.corpus.acts.values())

    @cached_property
    def compared(self) -> Compared:
        """The works whose views are compared."""
        return Compared(self.corpus)

    @cached_property
    def extracts(self) -> Extracts:
        """What the synonymy of one type needs of the corpus."""
        return Extracts(self.corpus)

    # --- where things stand

    @cached_property
    def name_paths(self) -> dict[str, str]:
        return _paths("names", self.corpus.names)

    @cached_property
    def taxon_paths(self) -> dict[str, str]:
        return _paths("taxa", self.corpus.taxa)

    @cached_property
    def taxa_of_genus(self) -> dict[str, tuple[Taxon, ...]]:
        """The taxa of each genus, by their names."""
        taxa = sorted(self.corpus.taxa.values(), key=lambda taxon: (format_name(self._current(taxon)), taxon.id))
        return _grouped((self._current(taxon).genus, taxon) for taxon in taxa)

    def _current(self, taxon: Taxon) -> Name:
        return self.corpus.names[taxon.current].name

    @cached_property
    def group_paths(self) -> dict[str, str]:
        """Where the taxa of each genus that has several stand side by side."""
        return _paths("groups", (genus for genus, taxa in self.taxa_of_genus.items() if len(taxa) > 1))

    @cached_property
    def apart_paths(self) -> dict[str, str]:
        """Where each taxon that has sisters is compared with them."""
        return {taxon: path for taxon, path in _paths("apart", self.corpus.taxa).items() if taxon in self._sisters}

    @cached_property
    def character_paths(self) -> dict[str, str]:
        return _paths("characters", self.corpus.vocabulary)

    @cached_property
    def work_paths(self) -> dict[str, str]:
        return _paths("publications", self.corpus.works)

    @cached_property
    def author_paths(self) -> dict[str, str]:
        return _paths("authors", self.authors)

    @cached_property
    def authors(self) -> tuple[str, ...]:
        """Everybody who wrote a work, as citations print them, in alphabetical order."""
        return tuple(sorted({author for work in self.corpus.works.values() for author in work.authors}))

    @cached_property
    def taxa_of_group(self) -> dict[str, tuple[Taxon, ...]]:
        """The taxa of each group of names."""
        return _grouped((taxon.group, taxon) for taxon in self.corpus.taxa.values())

    @cached_property
    def uses_of_name(self) -> dict[str, tuple[tuple[Treatment, str], ...]]:
        """For each name the treatments that use it, by date, with its status there if another name heads them."""

        def pairs() -> Iterator[tuple[str, tuple[Treatment, str]]]:
            for treatment in self.corpus.treatments.values():
                yield treatment.name, (treatment, "")
                for status, names in (("synonym", treatment.synonyms), ("misapplied", treatment.misapplied)):
                    for name in dict.fromkeys(names):
                        if name != treatment.name:
                            yield name, (treatment, status)

        return _grouped(pairs())

    # --- how things are called

    def name(self, name: str, authors: bool = False, link: bool = True) -> Rich:
        """A name as it is set, as a link to its page; with authors, too, where homonyms share the words."""
        key = (name, authors, link)
        if key not in self._set_names:
            entry = self.corpus.names[name].name
            rich = set_name(entry if authors or self.corpus.has_homonyms(name) else entry.bare)
            self._set_names[key] = linked(rich, self.name_paths[name]) if link else rich
        return self._set_names[key]

    def taxon(self, taxon: str, authors: bool = False, link: bool = True) -> Rich:
        """A taxon under its current name, with its sense where it has one."""
        record = self.corpus.taxa[taxon]
        rich = (*self.name(record.current, authors, link=False), *plain(record.sense.suffix))
        return linked(rich, self.taxon_paths[taxon]) if link else rich

    def work(self, work: str) -> Rich:
        """A work by its authors and year, as a link to its page."""
        return (Run(self.bylines[work], href=self.work_paths[work]),)

    def works(self, works: Iterable[str]) -> tuple[Rich, ...]:
        """Each of `works`, by date."""
        ordered = sorted(set(works), key=lambda work: (self.corpus.works[work].date, work))
        return tuple(self.work(work) for work in ordered)

    def author(self, author: str) -> Rich:
        """An author, as a link to the page."""
        return (Run(author, href=self.author_paths[author]),)

    def character(self, character: str) -> Rich:
        """A character, as a link to its page."""
        return (Run(character, href=self.character_paths.get(character, "")),)

    @cached_property
    def bylines(self) -> dict[str, str]:
        """Short authors and year of each work; works that share both are told apart by a letter."""
        short = {work.id: short_byline(work) for work in self.corpus.works.values()}
        shared = Counter(short.values())
        seen: Counter[str] = Counter()
        for work, byline in short.items():
            if shared[byline] > 1:
                letter = ascii_lowercase[seen[byline] % 26]
                seen[byline] += 1
                short[work] = byline + letter
        return short

    @cached_property
    def finder(self) -> NameFinder:
        """Finds the names of the corpus, and the ids of its works, in running text."""
        entries = self.corpus.names.values()
        names = [name.bare for entry in entries for name in (entry.name, *entry.variants)]
        works = {work: self.work(work) for work in self.corpus.works}
        cited = {
            format_name(entry.name): self.name(entry.id, authors=True)
            for entry in entries
            if entry.name != entry.name.bare
        }
        return NameFinder(works | cited | {format_name(name): set_name(name) for name in names})

    def text(self, text: str) -> Rich:
        """Running text with names set as names, ids of works and names with their authors as links to their pages."""
        if text not in self._set_texts:
            self._set_texts[text] = self.finder.set(text)
        return self._set_texts[text]

    @cached_property
    def of_words(self) -> dict[Name, str]:
        """The id of each name, by its words with authors and, where no other has them, without."""
        bare = Counter(entry.name.bare for entry in self.corpus.names.values())
        alone = {entry.name.bare: id_ for id_, entry in self.corpus.names.items() if bare[entry.name.bare] == 1}
        return alone | {entry.name: id_ for id_, entry in self.corpus.names.items()}

    def sentence(self, pieces: Iterable[Piece]) -> Rich:
        """A sentence of words and names, the names as links to their pages where they have one."""
        runs: list[Run] = []
        for piece in pieces:
            known = self.of_words.get(piece) if isinstance(piece, Name) else None
            if isinstance(piece, str):
                runs.append(Run(piece))
            else:
                runs += set_name(piece) if known is None else linked(set_name(piece), self.name_paths[known])
        return tuple(run for run in runs if run.text)


def set_name(name: Name) -> Rich:
    """The words of a name, epithets in italics."""
    return tuple(Run(text, italic) for text, italic in parts(name))


def short_byline(work: Work) -> str:
    """Authors and year; of more than two authors the first, with `& al.`"""
    return work.byline if len(work.authors) < 3 else f"{work.authors[0]} & al. {work.year}"


def _paths(folder: str, ids: Iterable[str]) -> dict[str, str]:
    return {each: f"{folder}/{own}.html" for each, own in slugs(ids).items()}


def _grouped(pairs: Iterable[tuple[str, T]]) -> dict[str, tuple[T, ...]]:
    found: dict[str, list[T]] = {}
    for key, value in pairs:
        found.setdefault(key, []).append(value)
    return {key: tuple(values) for key, values in found.items()}
