"""The question of a correct name and the form of its answer: types, rank and place in, a name and reasons out."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from auctorum.corpus.model import Act
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


@dataclass
class Search:
    """One run: the question, what was found so far, and the chain of reasons."""

    code: Code
    asked: Taxon
    position: Position
    steps: list[Step] = field(default_factory=list)
    barred: list[Barred] = field(default_factory=list)

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
        until = self.asked.until
        return until is None or act is None or act.work.date.earliest <= until

    def is_rejected(self, name: str) -> bool:
        """Whether a name is rejected, or rests on one that is suppressed with all names based on it (Art. 56.1)."""
        decisions, judged = self.code.inquiry.decisions, self.code.of_name(name)
        return name in decisions.rejected or (judged is not None and judged.basionym in decisions.suppressed)

    def names_on(self, types: Sequence[str]) -> list[str]:
        """Names on the types that count, in order of date within each type."""
        found = [name for type_ in types for name in self.code.corpus.groups.get(type_, (type_,))]
        return [name for name in found if self.in_time(self.code.inquiry.publishing(name))]
