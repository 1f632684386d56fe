"""The question of a correct name and the form of its answer: types, rank and place in, a name and reasons out."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from auctorum.corpus.model import Act, Work
from auctorum.names.fold import fold
from auctorum.names.name import Name
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.lines import Position


class Outcome(StrEnum):
    """What the rules come to."""

    NAME = "name"
    AUTONYM = "autonym"
    COMBINATION_NEEDED = "new combination needed"
    NAME_NEEDED = "new name needed"
    UNDETERMINED = "undetermined"


@dataclass(frozen=True, slots=True)
class Step:
    """One reason of the chain: a sentence, the article as the edition numbers it, and the name it is about."""

    text: str
    article: str = ""
    name: str | None = None

    def __str__(self) -> str:
        return f"{self.text} ({self.article})." if self.article else f"{self.text}."


@dataclass(frozen=True, slots=True)
class Barred:
    """An epithet that can't be used in the place asked about, and why."""

    epithet: str
    key: str
    article: str
    reason: str
    by: str | None


@dataclass(frozen=True, slots=True)
class Taxon:
    """What is asked: names whose types are included, the rank, and the place.

    `genus` is needed for species and subdivisions of a genus, `species` (words of the species name, with the types
    that the species includes) below the species. `until` is the last day whose names count; None for all.
    """

    names: frozenset[str]
    rank: str
    genus: str = ""
    species: Name | None = None
    species_type: str | None = None  # group of the type of the species' name
    genus_type: str | None = None  # group of the type of the generic name, for subdivisions
    until: date | None = None


@dataclass(frozen=True)
class CorrectName:
    """The answer. `name` is the correct name as it has to be cited, or the words that would be needed; `id` its
    entry, if it has one; `based_on` the name that a new combination would rest on; `rivals` the names between which
    priority is open; `steps` end in the answer."""

    outcome: Outcome
    name: Name | None
    id: str | None
    steps: tuple[Step, ...]
    based_on: str | None = None
    rivals: tuple[str, ...] = ()
    barred: tuple[Barred, ...] = ()

    def __str__(self) -> str:
        """The answer in a line, as the last step has it."""
        return self.steps[-1].text


Choice = tuple[tuple[str, str], tuple[str, str]]  # type and folded epithet: adopted, passed over


@dataclass
class Search:
    """One run: the question, what was found so far, and the chain of reasons."""

    code: Code
    asked: Taxon
    position: Position
    steps: list[Step] = field(default_factory=list)
    barred: list[Barred] = field(default_factory=list)
    _choices: dict[Choice, Work] | None = None

    def say(self, text: str, article: str = "", name: str | None = None) -> None:
        """Add a reason to the chain."""
        self.steps.append(Step(text, self.code.edition.cite(article), name))

    def type_of(self, name: str) -> str:
        """The group of names on the type of a name."""
        return self.code.corpus.names[name].group

    def parents(self, name: str) -> frozenset[str] | None:
        """The parents of a nothotaxon by their epithets, in whatever order; None for any other name."""
        act = self.code.inquiry.publishing(name)
        if act is None or not act.record.parentage:
            return None
        words = (parent.split() for parent in re.split("×", act.record.parentage))
        return frozenset(f"{parent[0][:1]} {' '.join(parent[1:])}" for parent in words if parent)

    def called(self, name: str) -> str:
        """A name with its authors, for a sentence."""
        return self.code.inquiry.called(name)

    def in_time(self, act: Act | None) -> bool:
        """Whether an act counts: by the day that the question sets, if it sets one."""
        return act is None or self.is_of_the_time(act.work)

    def is_of_the_time(self, work: Work) -> bool:
        """Whether a work may have appeared by the day that the question sets, if it sets one."""
        return self.asked.until is None or work.date.earliest <= self.asked.until

    def choices(self) -> Mapping[Choice, Work]:
        """First choices made in time, by type and epithet of the line adopted and of that passed over."""
        if self._choices is None:
            entries = self.code.corpus.names
            self._choices = {}
            for (adopted, over), work in self.code.inquiry.decisions.chosen.items():
                if self.is_of_the_time(work):
                    first, second = entries[adopted], entries[over]
                    key = (
                        (first.group, fold(first.name.final_epithet)),
                        (second.group, fold(second.name.final_epithet)),
                    )
                    self._choices.setdefault(key, work)
        return self._choices

    def is_rejected(self, name: str) -> bool:
        """Whether a name is rejected, or rests on one that is suppressed with all names based on it (Art. 56.1)."""
        decisions, judged = self.code.inquiry.decisions, self.code.of_name(name)
        basionym = judged.basionym if judged is not None and judged.basionym in decisions.suppressed else None
        by = decisions.rejected.get(name) or (decisions.rejected.get(basionym) if basionym is not None else None)
        return by is not None and self.in_time(by)

    def is_conserved(self, name: str) -> bool:
        """Whether a name is conserved by a decision that counts at the time asked about."""
        by = self.code.inquiry.decisions.conserved.get(name)
        return by is not None and self.in_time(by)

    def names_on(self, types: Sequence[str]) -> list[str]:
        """Names on the types that count, in order of date within each type."""
        found = [name for type_ in types for name in self.code.corpus.groups.get(type_, (type_,))]
        return [name for name in found if self.in_time(self.code.inquiry.publishing(name))]
