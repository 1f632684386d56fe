"""What changes for a whole group if one moves from the view of one work to that of another, type by type."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from auctorum.corpus.model import Corpus, Work
from auctorum.names.fold import same_epithet
from auctorum.names.format import words
from auctorum.names.nearest import nearest
from auctorum.names.ranks import SPECIES, rank_named
from auctorum.nomenclature.positions import Position, Positions, Source, positions
from auctorum.nomenclature.regrouping import Regrouping, regroupings
from auctorum.problems import AuctorumError
from auctorum.records.schema import Status


class UnknownWork(AuctorumError, LookupError):
    """An id of no work in the knowledge base; `near` are the ids most like it."""

    def __init__(self, said: str, near: tuple[str, ...]) -> None:
        super().__init__(said, near)
        self.said, self.near = said, near

    def __str__(self) -> str:
        return f"no work `{self.said}` in the knowledge base"

    @property
    def remedy(self) -> str:  # type: ignore[override]
        return f"nearest: {', '.join(self.near)}" if self.near else "give the id of a file in literature/"


class Kind(StrEnum):
    """What becomes of a type between the first work (A) and the second (B)."""

    KEPT = "kept under the same name"
    WIDENED = "widened under the same name"
    NARROWED = "narrowed under the same name"
    RECAST = "with other types in and out under the same name"
    PLACED = "placed elsewhere under the same name"
    RENAMED = "renamed on the same type"
    SUNK = "sunk"
    RAISED = "raised from synonymy"
    MOVED = "sunk into another taxon"
    SYNONYM = "a synonym in both"
    MISAPPLIED = "misapplied in one, or to another taxon"
    MISAPPLIED_ALIKE = "misapplied in both"
    DOUBTFUL = "doubtful"
    ONLY_A = "only in the first"
    ONLY_B = "only in the second"


UNCHANGED = (Kind.KEPT, Kind.SYNONYM, Kind.MISAPPLIED_ALIKE)


class Move(StrEnum):
    """In what a name on the same type, or the place of one name, differs."""

    RANK = "another rank"
    PARENT = "another parent"
    EPITHET = "another epithet"
    SPELLING = "another spelling"


class Absence(StrEnum):
    """Why a work has nothing to say of a type."""

    SILENT = "covers the group and is silent"
    OUTSIDE = "does not set out to treat it"
    EARLIER = "appeared before the type had a name"


@dataclass(frozen=True, slots=True)
class Change:
    """One type in both works; `a` or `b` is None where that work says nothing of it, and `absence` then why.

    `gains` are the types that the taxon takes in only in B, `loses` those only in A, if the other work places them
    elsewhere: what the other work does not speak of makes no taxon wider. Each is called as that other work has it.
    """

    group: str
    genus: str
    kind: Kind
    a: Position | None
    b: Position | None
    moves: tuple[Move, ...] = ()
    gains: tuple[str, ...] = ()
    loses: tuple[str, ...] = ()
    absence: Absence | None = None

    @property
    def is_change(self) -> bool:
        """Whether the two works differ about the type."""
        return self.kind not in UNCHANGED


@dataclass(frozen=True, slots=True)
class Comparison:
    """What changes from work A to work B.

    `changes` has every type once, by genus, then accepted name in A, then in B; what a work does not accept comes
    last. `gained`, `lost` and `renamed` are accepted names (ids, by their words); a name is not lost to a work that
    does not set out to treat it. `within` is the id of the taxon it is limited to.
    """

    a: Work
    b: Work
    within: str | None
    changes: tuple[Change, ...]
    regroupings: tuple[Regrouping, ...]
    gained: tuple[str, ...]
    lost: tuple[str, ...]
    renamed: tuple[tuple[str, str], ...]


def compare(corpus: Corpus, work_a: str, work_b: str, within: str | None = None) -> Comparison:
    """How every type that either work keeps, sinks or misapplies stands in both, and what kind of change that is.

    `within` is the id of a name: only the types that lie in its taxon in either work. Raises UnknownWork.
    """
    a, b = (positions(corpus, _known(corpus, work)) for work in (work_a, work_b))
    groups = {group for side in (a, b) for group, position in side.of.items() if _tells(corpus, position)}
    if within is not None:
        groups = {group for group in groups if any(_lies_in(corpus, side, group, within) for side in (a, b))}
    changes = sorted((_change(corpus, a, b, group) for group in groups), key=lambda one: _place(corpus, one))
    pairs = [names for change in changes if change.absence is not Absence.OUTSIDE for names in _names(corpus, change)]

    def by_words(name: str) -> tuple[str, str]:
        return words(corpus.names[name].name), name

    return Comparison(
        a=a.work,
        b=b.work,
        within=within,
        changes=tuple(changes),
        regroupings=regroupings(corpus, a, b, groups),
        gained=tuple(sorted((new for old, new in pairs if new and not old), key=by_words)),
        lost=tuple(sorted((old for old, new in pairs if old and not new), key=by_words)),
        renamed=tuple(sorted(((old, new) for old, new in pairs if old and new), key=lambda one: by_words(one[0]))),
    )


def _known(corpus: Corpus, work: str) -> str:
    if work not in corpus.works:
        raise UnknownWork(work, nearest(work, corpus.works))
    return work


def _tells(corpus: Corpus, position: Position) -> bool:
    """Whether a position is worth a line: that a work uses a genus it does not treat is none."""
    return position.source is not Source.IMPLIED or rank_named(position.rank) >= SPECIES


def _lies_in(corpus: Corpus, side: Positions, group: str, within: str) -> bool:
    asked = corpus.names[within].group
    return group == asked or any(corpus.names[name].group == asked for name in side.lines.get(group, ()))


def _place(corpus: Corpus, change: Change) -> tuple[object, ...]:
    """Key by which changes stand in order; under one accepted name its own type comes first."""

    def one(position: Position | None) -> tuple[bool, str, bool]:
        name = position.accepted if position else None
        return (name is None, words(corpus.names[name].name) if name else "", position is None or not position.is_kept)

    return (change.genus, one(change.a), one(change.b), change.group)


def _change(corpus: Corpus, a: Positions, b: Positions, group: str) -> Change:
    here, there = a.of.get(group), b.of.get(group)
    one = here or there
    assert one is not None
    genus = corpus.names[one.accepted or one.name].name.genus
    if here is None:
        return Change(group, genus, Kind.ONLY_B, None, there, absence=_absence(corpus, a.work, group))
    if there is None:
        return Change(group, genus, Kind.ONLY_A, here, None, absence=_absence(corpus, b.work, group))
    gains, loses = _taken_up(here, there, a, b), _taken_up(there, here, b, a)
    moves = _moves(corpus, here, there) if here.is_kept and there.is_kept else ()
    return Change(group, genus, _kind(corpus, here, there, moves, gains, loses), here, there, moves, gains, loses)


def _taken_up(before: Position, after: Position, a: Positions, b: Positions) -> tuple[str, ...]:
    """Types that a taxon takes in in `b` and that `a` has elsewhere: their names in `a`, by id."""
    if not (before.status is after.status is Status.ACCEPTED):
        return ()
    inside = b.takes_in.get(after.name, frozenset()) - a.takes_in.get(before.name, frozenset())
    return tuple(sorted(a.of[group].name for group in inside if a.is_settled(group)))


def _moves(corpus: Corpus, a: Position, b: Position) -> tuple[Move, ...]:
    if a.name == b.name:
        return (Move.PARENT,) if a.parent and b.parent and a.parent != b.parent else ()
    old, new = corpus.names[a.name].name, corpus.names[b.name].name
    both_below = rank_named(a.rank) > SPECIES and rank_named(b.rank) > SPECIES
    found = []
    if a.rank != b.rank:
        found.append(Move.RANK)
    if old.species and new.species and (old.genus != new.genus or (both_below and old.species != new.species)):
        found.append(Move.PARENT)
    if not same_epithet(old.final_epithet, new.final_epithet):
        found.append(Move.EPITHET)
    return tuple(found) or (Move.SPELLING,)


_BY_STATUS = {
    (Status.ACCEPTED, Status.SYNONYM): Kind.SUNK,
    (Status.SYNONYM, Status.ACCEPTED): Kind.RAISED,
}


def _kind(
    corpus: Corpus, a: Position, b: Position, moves: tuple[Move, ...], gains: tuple[str, ...], loses: tuple[str, ...]
) -> Kind:
    statuses = (a.status, b.status)
    if Status.DOUBTFUL in statuses:
        return Kind.KEPT if a.status is b.status and a.name == b.name and not moves else Kind.DOUBTFUL
    alike = a.status is b.status and _same_taxon(corpus, a.accepted, b.accepted)
    if Status.MISAPPLIED in statuses:
        return Kind.MISAPPLIED_ALIKE if alike else Kind.MISAPPLIED
    if a.status is Status.SYNONYM and b.status is Status.SYNONYM:
        return Kind.SYNONYM if alike else Kind.MOVED
    if statuses in _BY_STATUS:
        return _BY_STATUS[statuses]
    if a.name != b.name:
        return Kind.RENAMED
    if gains or loses:
        return Kind.RECAST if gains and loses else Kind.WIDENED if gains else Kind.NARROWED
    return Kind.PLACED if moves else Kind.KEPT


def _same_taxon(corpus: Corpus, a: str | None, b: str | None) -> bool:
    """Whether two accepted names are on one type; a record that does not say which contradicts nothing."""
    return a is None or b is None or corpus.names[a].group == corpus.names[b].group


def _absence(corpus: Corpus, work: Work, group: str) -> Absence:
    names = [corpus.names[name].name for name in corpus.groups[group]]
    covers = [corpus.names[name].name for name in work.covers]
    if not any(name.genus == cover.genus and cover.species in ("", name.species) for name in names for cover in covers):
        return Absence.OUTSIDE
    first = corpus.publishing_act(group)
    if first is not None and work.date.latest < first.work.date.earliest:
        return Absence.EARLIER
    return Absence.SILENT


def _names(corpus: Corpus, change: Change) -> Iterator[tuple[str, str]]:
    """Pairs of the accepted names of a type that only one work has: of one rank, else the highest left, else alone.

    A name that the other work keeps with doubt is neither gained nor lost.
    """
    held = [position.names if position else () for position in (change.a, change.b)]
    only = [
        [name for name in names if name not in other and position and position.status is Status.ACCEPTED]
        for position, names, other in zip((change.a, change.b), held, reversed(held), strict=True)
    ]
    old, new = only
    for name in tuple(old):
        match = next((one for one in new if corpus.names[one].rank == corpus.names[name].rank), None)
        if match is not None:
            old.remove(name)
            new.remove(match)
            yield name, match
    if old and new:
        yield old.pop(0), new.pop(0)
    yield from ((name, "") for name in old)
    yield from (("", name) for name in new)
