"""Accounts of taxa as works give them, written out as literature files: one work, what it says, and whom it follows."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from auctorum.corpus.model import Corpus
from building import corpus_of

TAXON, OTHER = "exemplum-album", "exemplum-rubrum"
NAMES = {TAXON: "Exemplum album", OTHER: "Exemplum rubrum"}
Stated = tuple[str, str, str]  # character, value in plain notation, stage

CHARACTERS = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm, stages: [young, mature]}
- {name: stem height, structure: stem, property: length, kind: measure, unit: mm}
- {name: leaf length, structure: leaf, property: length, kind: measure, unit: mm}
- {name: petal number, structure: petal, property: count, kind: count}
- {name: aspect, structure: habitat, property: aspect, kind: angle, unit: degree}
- name: spur colour
  structure: spur
  property: colour
  kind: ordered
  states: [{name: green}, {name: cream}, {name: ivory}, {name: buff}]
- name: seed surface
  structure: seed
  property: surface
  kind: nominal
  states: [{name: smooth}, {name: reticulate}, {name: winged}]
- {name: bracteoles, structure: bracteole, property: presence, kind: presence}
"""


@dataclass(frozen=True)
class Account:
    """One work and what it says of each taxon; `says` maps ids of NAMES to statements."""

    year: int
    author: str
    says: Mapping[str, tuple[Stated, ...]]
    follows: tuple[str, ...] = ()
    cites: tuple[str, ...] = ()
    basis: str = "unstated"
    acts: tuple[Mapping[str, object], ...] = ()
    names: Mapping[str, str] = field(default_factory=lambda: NAMES)  # what it calls them
    suffix: str = ""
    verbatim: bool = False  # what it says are its words, not values in plain notation

    @property
    def id(self) -> str:
        return f"{self.author.lower()}-{self.year}{self.suffix}"

    def file(self) -> str:
        """The literature file; JSON is YAML too."""
        treatments = [
            {
                "taxon": self.names[taxon],
                "basis": self.basis,
                "follows": list(self.follows),
                "traits": [_trait(one, self.verbatim) for one in stated],
            }
            for taxon, stated in self.says.items()
        ]
        work = {"id": self.id, "type": "book", "author": [{"family": self.author, "given": "T."}], "title": "T"}
        return json.dumps(
            {
                "work": work | {"issued": str(self.year)},
                "cites": list(self.cites),
                "acts": list(self.acts),
                "treatments": treatments,
            },
            ensure_ascii=False,
        )


def account(
    year: int,
    author: str,
    *said: str,
    follows: Iterable[str] = (),
    cites: Iterable[str] = (),
    basis: str = "unstated",
    acts: Iterable[Mapping[str, object]] = (),
    name: str = NAMES[TAXON],
) -> Account:
    """What a work says of TAXON: `spur length: 22–34 mm`, or `spur length [young]: 4–6 mm` for a growth stage."""
    stated = []
    for line in said:
        head, value = line.split(": ", 1)
        character, _, stage = head.removesuffix("]").partition(" [")
        stated.append((character, value, stage))
    return Account(
        year, author, {TAXON: tuple(stated)}, tuple(follows), tuple(cites), basis, tuple(acts), {TAXON: name}
    )


def corpus_from(
    accounts: Iterable[Account], *, characters: str = CHARACTERS, settings: str = "title: Test\n"
) -> Corpus:
    """The corpus of those works, which must be free of problems but for names whose protologue is not recorded."""
    corpus, problems = corpus_of(*(one.file() for one in accounts), characters=characters, settings=settings)
    assert all("a name without protologue" in one for one in problems), problems
    return corpus


def _trait(one: Stated, verbatim: bool) -> dict[str, str]:
    character, said, stage = one
    return {"character": character, "verbatim" if verbatim else "value": said} | ({"stage": stage} if stage else {})
