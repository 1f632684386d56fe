"""Who repeats whose figures: a repetition is a vote for a usage, and no new evidence.

What a work says of one character at one stage repeats an earlier work if it says the same within stated precision and
the work follows that one: it is said to (`follows:`), or it cites it and says the same in at least two thirds of what
both tell of the taxon. Cited are the works of its list (`cites:`) and the earlier works of its own authors; so are,
unless it rests on own material, the works that it is said to follow for any other taxon, and the work that published
the name it uses, or the basionym of that; but that much custom demands of everybody, so that three characters in common
are asked for where nothing else shows that the work was read.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from enum import IntEnum
from fractions import Fraction
from functools import cached_property

from auctorum.characters.bounds import Bounds, agree, bounds
from auctorum.characters.directions import TURN
from auctorum.characters.states import state_weights
from auctorum.characters.values import Range, States, Value
from auctorum.characters.vocabulary import Character, Kind
from auctorum.corpus.model import Corpus, Treatment, Work
from auctorum.records.schema import Basis

MOSTLY = Fraction(2, 3)  # share of equal characters from which a work that cites another repeats it
FEWEST = 3  # characters in common below which equal figures show nothing by themselves

Told = tuple[str, str]  # character and stage
Person = tuple[str, str]  # family name, or the form in author citations, and first initial


@dataclass(frozen=True, slots=True)
class Stated:
    """A value made ready once to be set beside many: `bounds` of a range, `states` with their weights."""

    value: Value
    bounds: Bounds | None
    states: Mapping[str, Fraction] | None


Said = Mapping[Told, Sequence[Stated]]


class Tie(IntEnum):
    """What shows that a work knew another, from nothing to its own word."""

    NONE = 0
    NAME = 1  # it uses a name that the other published
    CITED = 2  # it cites the other, or an author of both wrote it
    DECLARED = 3  # it is said to follow it


@dataclass(frozen=True, slots=True)
class Line:
    """What a later work has in common with an earlier one in treating one taxon.

    `shared` are the characters, with stage, that both tell; `equal` those of them told alike within stated precision.
    """

    later: str
    earlier: str
    tie: Tie
    shared: tuple[Told, ...]
    equal: tuple[Told, ...]

    @property
    def repeats(self) -> bool:
        """Whether what is equal counts as repeated."""
        if self.tie is Tie.DECLARED:
            return bool(self.equal)
        return self.tie is not Tie.NONE and self.mostly and (self.tie is Tie.CITED or len(self.shared) >= FEWEST)

    @property
    def mostly(self) -> bool:
        """Whether at least two thirds of what both tell is told alike."""
        return bool(self.equal) and len(self.equal) >= MOSTLY * len(self.shared)


@dataclass(frozen=True)
class Lineage:
    """Works on one taxon by date, and the lines on which one repeats another, by later, then earlier work."""

    works: tuple[str, ...]
    lines: tuple[Line, ...]

    @cached_property
    def _sources(self) -> Mapping[str, Sequence[Line]]:
        """The lines of repetition from each work, the most direct first."""
        found: dict[str, list[Line]] = defaultdict(list)
        for line in self.lines:
            found[line.later].append(line)
        place = {work: number for number, work in enumerate(self.works)}
        for lines in found.values():
            lines.sort(key=lambda line: (-line.tie, -len(line.equal), -place[line.earlier]))
        return found

    @property
    def direct(self) -> tuple[Line, ...]:
        """The lines without those that more direct ones make needless: what is equal is found in those, too."""
        found = []
        for line in self.lines:
            sources = self._sources[line.later]
            nearer = {told for other in sources[: sources.index(line)] for told in other.equal}
            if line.tie is Tie.DECLARED or not nearer.issuperset(line.equal):
                found.append(line)
        return tuple(found)

    def source(self, work: str, told: Told, among: Collection[str] | None = None) -> str:
        """The work whose figures `work` repeats for a character and stage; empty if it speaks for itself.

        Of several the one that it is said to follow, then the one with which it has most in common. With `among`
        the nearest of these works on the way back to the first: who repeats a repetition repeats its source.
        """
        waiting, seen = [work], {work}
        for here in waiting:  # breadth first: grows while it is walked
            for line in self._sources.get(here, ()):
                if told in line.equal and line.earlier not in seen:
                    if among is None or line.earlier in among:
                        return line.earlier
                    seen.add(line.earlier)
                    waiting.append(line.earlier)
        return ""


def lineage(corpus: Corpus, treatments: Iterable[Treatment]) -> Lineage:
    """Who repeats whom among treatments of one taxon; only an earlier work is repeated, by the order of the corpus."""
    of_work = _by_work(treatments)
    said = {work: _said(corpus, several) for work, several in of_work.items()}
    of_person: dict[Person, list[str]] = defaultdict(list)
    lines: list[Line] = []
    place = {work: number for number, work in enumerate(of_work)}
    for later, several in of_work.items():
        ties = _ties(corpus, several, of_person)
        earlier = sorted((work for work in ties if place.get(work, len(place)) < place[later]), key=place.__getitem__)
        found = (_line(corpus, later, work, ties[work], said) for work in earlier)
        lines += [line for line in found if line.repeats]
        for person in _persons(corpus.works[later]):
            of_person[person].append(later)
    return Lineage(tuple(of_work), tuple(lines))


def suspects(corpus: Corpus, treatments: Iterable[Treatment]) -> tuple[Line, ...]:
    """Pairs of works that say the same too often for chance, where nothing shows that the later knew the earlier.

    At least two thirds of at least four characters, the later not on own material; by later, then earlier work. Every
    pair is looked at.
    """
    of_work = _by_work(treatments)
    said = {work: _said(corpus, several) for work, several in of_work.items()}
    of_person: dict[Person, list[str]] = defaultdict(list)
    found = []
    for number, (later, several) in enumerate(of_work.items()):
        ties = _ties(corpus, several, of_person)
        if any(map(_on_own_material, several)):
            continue
        for earlier in tuple(of_work)[:number]:
            line = _line(corpus, later, earlier, Tie.NONE, said)
            if earlier not in ties and line.mostly and len(line.shared) > FEWEST:
                found.append(line)
        for person in _persons(corpus.works[later]):
            of_person[person].append(later)
    return tuple(found)


def _by_work(treatments: Iterable[Treatment]) -> dict[str, list[Treatment]]:
    """The treatments of each work, works by date, then id, as in the corpus."""
    found: dict[str, list[Treatment]] = defaultdict(list)
    for treatment in sorted(treatments, key=lambda one: (one.work.date, one.work.id)):
        found[treatment.work.id].append(treatment)
    return found


def _said(corpus: Corpus, treatments: Sequence[Treatment]) -> Said:
    found: dict[Told, list[Stated]] = defaultdict(list)
    for treatment in treatments:
        for statement in corpus.statements_of(treatment.id):
            for reading in statement.readings:
                found[statement.character, reading.stage].append(
                    _stated(reading.value, corpus.vocabulary[statement.character])
                )
    return found


def _ties(corpus: Corpus, treatments: Sequence[Treatment], of_person: Mapping[Person, Sequence[str]]) -> dict[str, Tie]:
    """What shows, by earlier work, that the author of these treatments knew it; `of_person` are the earlier works."""
    work = corpus.works[treatments[0].work.id]
    used = (treatment.name for treatment in treatments if not _on_own_material(treatment))
    # With a combination goes its basionym, whose author stands in the parenthesis (ICN Art. 49.1).
    acts = (corpus.publishing_act(name) for used_name in used for name in (used_name, corpus.names[used_name].group))
    found = {act.work.id: Tie.NAME for act in acts if act is not None}
    own = (earlier for person in _persons(work) for earlier in of_person.get(person, ()))
    found |= dict.fromkeys((*work.cites, *own), Tie.CITED)
    if not all(map(_on_own_material, treatments)):
        others = corpus.by_work.get(work.id, ())
        found |= dict.fromkeys((id_ for one in others for id_ in one.follows), Tie.CITED)
    found |= {id_: Tie.DECLARED for treatment in treatments for id_ in treatment.follows}
    return {id_: tie for id_, tie in found.items() if id_ != work.id}


def _on_own_material(treatment: Treatment) -> bool:
    return treatment.record.basis is Basis.OWN_MATERIAL


def _persons(work: Work) -> frozenset[Person]:
    return frozenset((person.literal or person.family, person.given[:1]) for person in work.record.author)


def _line(corpus: Corpus, later: str, earlier: str, tie: Tie, said: Mapping[str, Said]) -> Line:
    shared = [told for told in said[later] if told in said[earlier]]
    equal = [
        told
        for told in shared
        if all(
            any(_same(value, other, corpus.vocabulary[told[0]]) for other in said[earlier][told])
            for value in said[later][told]
        )
    ]
    return Line(later, earlier, tie, tuple(shared), tuple(equal))


def _stated(value: Value, character: Character) -> Stated:
    return Stated(
        value,
        bounds(value, character.unit) if isinstance(value, Range) else None,
        state_weights(value, character) if isinstance(value, States) else None,
    )


def _same(later: Stated, earlier: Stated, character: Character) -> bool:
    """Whether a value says no more than an earlier one: the same bounds within stated precision, the same states as
    often.

    Bounds and extremes may be left out, not added; another unit, and rounding, make no new figure.
    """
    if isinstance(later.value, Range) and isinstance(earlier.value, Range):
        return later.value.more == earlier.value.more and _same_bounds(later.bounds, earlier.bounds, character)
    return later.states is not None and later.states == earlier.states


def _same_bounds(new: Bounds | None, old: Bounds | None, character: Character) -> bool:
    if new is None or old is None:
        return False
    turns = (-TURN, 0, TURN) if character.kind is Kind.ANGLE else (0,)
    return any(_ends_meet(new, old, turn) for turn in turns)


def _ends_meet(new: Bounds, old: Bounds, turn: int) -> bool:
    """Whether each bound that is stated anew is the old one."""

    def meet(one: Fraction | None, other: Fraction | None, slack: Fraction, old_slack: Fraction) -> bool:
        return one is None or (other is not None and agree(one + turn, slack, other, old_slack))

    return (
        meet(new.low, old.low, new.low_slack, old.low_slack)
        and meet(new.high, old.high, new.high_slack, old.high_slack)
        and meet(new.least, old.least, new.low_slack, old.low_slack)
        and meet(new.most, old.most, new.high_slack, old.high_slack)
    )
