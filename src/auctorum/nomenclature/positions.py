"""How one work has every type that it speaks of: kept, sunk or misapplied, under which name and in which taxa."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from enum import IntEnum

from auctorum.corpus.model import Corpus, NameEntry, Treatment, Work
from auctorum.names.format import slug
from auctorum.names.name import Name
from auctorum.names.ranks import SPECIES, rank_named
from auctorum.records.schema import Status


class Source(IntEnum):
    """What in the work tells a position; the most telling comes first."""

    TREATMENT = 1
    ACT = 2  # the work publishes a name and accepts it, without a treatment
    IMPLIED = 3  # the work only places others in the taxon


@dataclass(frozen=True, slots=True)
class Position:
    """One type in one work.

    `name` is the name at issue, `accepted` the name that the work accepts: the same if the type is kept, what it
    is sunk into or misapplied to if not; None where the record does not say of what. `names` are all names under
    which the type is kept, the highest rank first (a species and its autonym); empty if it is not kept. `page` and
    `words` are those of the record, empty where it gives none; `misapplied_to` is the accepted name to which,
    says the work, others misapplied the name.
    """

    status: Status
    name: str
    accepted: str | None
    rank: str
    names: tuple[str, ...] = ()
    parent: str | None = None
    misapplied_to: str | None = None
    page: str = ""
    words: str = ""
    source: Source = Source.TREATMENT

    @property
    def is_kept(self) -> bool:
        """Whether the work has the type as a taxon of its own, doubtful or not."""
        return self.status in _KEPT


_KEPT = (Status.ACCEPTED, Status.DOUBTFUL)


@dataclass(frozen=True, slots=True)
class Positions:
    """Every type that one work speaks of.

    `of` maps a group to its position; `lines` a group to the accepted names that the type lies in, from the nearest
    up to the genus; `takes_in` an accepted name to the groups that lie in it beyond doubt.
    """

    work: Work
    of: Mapping[str, Position]
    lines: Mapping[str, tuple[str, ...]]
    takes_in: Mapping[str, frozenset[str]]
    divided: frozenset[str] = field(default=frozenset())  # names of taxa of which the work keeps infraspecific parts

    def is_settled(self, group: str) -> bool:
        """Whether the work says without doubt which taxon the type belongs to."""
        position = self.of.get(group)
        return position is not None and position.status in (Status.ACCEPTED, Status.SYNONYM) and bool(self.lines[group])


def positions(corpus: Corpus, work: str) -> Positions:
    """How that work has every type; the order of files does not matter. Raises KeyError for an unknown work."""
    found: dict[str, list[Position]] = {}
    for position in (*_from_treatments(corpus, work), *_from_acts(corpus, work), *_implied(corpus, work)):
        found.setdefault(corpus.names[position.name].group, []).append(position)
    of = {group: _merged(many) for group, many in found.items()}
    above = {one.name: one.parent for one in _kept(corpus, work) if one.parent is not None}
    lines = {group: _line(corpus, position, above) for group, position in of.items()}
    takes_in: dict[str, set[str]] = {}
    for group, line in lines.items():
        if of[group].status in (Status.ACCEPTED, Status.SYNONYM):
            for name in line:
                takes_in.setdefault(name, set()).add(group)
    return Positions(
        work=corpus.works[work],
        of=of,
        lines=lines,
        takes_in={name: frozenset(groups) for name, groups in takes_in.items()},
        divided=_divided(corpus, of.values(), above),
    )


def _kept(corpus: Corpus, work: str) -> Iterator[Treatment]:
    return (one for one in corpus.by_work.get(work, ()) if one.status in _KEPT)


def _from_treatments(corpus: Corpus, work: str) -> Iterator[Position]:
    treatments = corpus.by_work.get(work, ())
    targets = {one.name: one.accepted_as for one in treatments if one.status is Status.SYNONYM}
    for one in treatments:
        accepted = one.name if one.status in _KEPT else _accepted(one.accepted_as, targets)
        same_type = accepted is not None and corpus.names[accepted].group == corpus.names[one.name].group
        if one.status in _KEPT:
            yield _position(corpus, one, one.status, one.name, accepted)
        elif one.status is Status.SYNONYM and same_type and accepted is not None:
            # Two names of one type: what the work accepts is the type, under the other name.
            yield _position(corpus, one, Status.ACCEPTED, accepted, accepted)
        else:
            yield _position(corpus, one, one.status, one.name, accepted)
        sunk = Status.MISAPPLIED if one.status is Status.MISAPPLIED else Status.SYNONYM
        for status, listed in ((sunk, one.synonyms), (Status.MISAPPLIED, one.misapplied)):
            for name in listed:
                # A homotypic synonym goes with its type and has no position of its own.
                if accepted is None or corpus.names[name].group != corpus.names[accepted].group:
                    yield _position(corpus, one, status, name, accepted)


def _accepted(name: str | None, targets: Mapping[str, str | None]) -> str | None:
    """The name at the end of `synonym of`, which may itself be called a synonym; a circle ends where it closes."""
    seen: set[str] = set()
    while name is not None and targets.get(name) is not None and name not in seen:
        seen.add(name)
        name = targets[name]
    return name


def _position(corpus: Corpus, treatment: Treatment, status: Status, name: str, accepted: str | None) -> Position:
    kept = status in _KEPT
    own = name == treatment.name
    return Position(
        status=status,
        name=name,
        accepted=accepted,
        rank=treatment.rank if own else corpus.names[name].rank,
        names=(name,) if kept else (),
        parent=treatment.parent if kept and own else None,
        misapplied_to=accepted if status is Status.MISAPPLIED else None,
        page=treatment.record.page,
        words=treatment.record.verbatim,
    )


def _from_acts(corpus: Corpus, work: str) -> Iterator[Position]:
    for act in corpus.acts_in(work):
        if act.establishes and act.record.accepted:
            bare = _bare_position(corpus.names[act.name], Source.ACT)
            yield replace(bare, rank=act.rank, page=act.record.page, words=act.record.verbatim)


def _implied(corpus: Corpus, work: str) -> Iterator[Position]:
    above = ((one.parent, _by_words(corpus, one.name)) for one in _kept(corpus, work))
    for parent in dict.fromkeys(name for pair in above for name in pair):
        if parent is not None:
            yield _bare_position(corpus.names[parent], Source.IMPLIED)


def _bare_position(entry: NameEntry, source: Source) -> Position:
    return Position(Status.ACCEPTED, entry.id, entry.id, entry.rank, names=(entry.id,), source=source)


def _merged(many: Iterable[Position]) -> Position:
    """One position of the several that a work may give one type: kept before sunk, sunk before misapplied.

    A species and its autonym are one position, that of the species.
    """
    many = list(many)
    source = min(one.source for one in many)
    told = [one for one in many if one.source in (source, Source.IMPLIED)]
    kept = sorted((one for one in told if one.is_kept), key=lambda one: rank_named(one.rank))
    misapplied_to = next((one.accepted for one in told if one.status is Status.MISAPPLIED), None)
    if kept:
        # The record of the name itself tells more than its use as a parent.
        names = tuple(dict.fromkeys(one.name for one in kept))
        top = min((one for one in kept if one.name == names[0]), key=lambda one: (one.source, one.parent is None))
        return replace(top, names=names, misapplied_to=misapplied_to, source=source)
    sunk = [one for one in told if one.status is Status.SYNONYM]
    return replace((sunk or told)[0], misapplied_to=misapplied_to)


def _line(corpus: Corpus, position: Position, above: Mapping[str, str]) -> tuple[str, ...]:
    """The accepted names that a position lies in, from the nearest up."""
    here = position.names[-1] if position.names else position.accepted
    line: list[str] = []
    while here is not None and here not in line:
        line.append(here)
        here = above.get(here) or _by_words(corpus, here)
    if set(position.names) <= set(line):
        return tuple(line)
    # An autonym below the subspecies, given without parent, lies in that of the subspecies all the same.
    ranks = {name: rank_named(corpus.names[name].rank) for name in (*line, *position.names)}
    return tuple(sorted(ranks, key=ranks.__getitem__, reverse=True))


def _by_words(corpus: Corpus, name: str) -> str | None:
    """Id of the species or genus that the words of a name place it in; None if the knowledge base has no such name."""
    said = corpus.names[name].name
    if said.lower:
        above = Name(said.genus, said.species)
    elif said.species or said.divisions:
        above = Name(said.genus)
    else:
        return None
    id_ = slug(above)
    return id_ if id_ in corpus.names else None


def _divided(corpus: Corpus, held: Iterable[Position], above: Mapping[str, str]) -> frozenset[str]:
    """Names at species rank or below in which the work keeps infraspecific taxa."""
    found = set()
    for position in held:
        for name in position.names:
            parent = above.get(name) or _by_words(corpus, name)
            if parent is not None and rank_named(corpus.names[parent].rank) >= SPECIES:
                found.add(parent)
    return frozenset(found)
