"""Which names share a type, and which taxa authors accept.

Homotypic names: through basionym and replaced name (ICN Art. 7.3, 7.4) unless its type is shut out (48.1), through
one specimen that is holotype, lectotype, neotype or conserved type, an autonym with its species (26.1), and a
superfluous name without a type of its own with the name it should have used (7.5). Names above species never share
a group with a species: their types are names.
"""

from __future__ import annotations

from collections.abc import Container, Iterable, Iterator, Mapping
from dataclasses import dataclass

from auctorum.corpus.model import Act, NameEntry, Sense, Taxon, Treatment
from auctorum.names.format import words
from auctorum.names.ranks import SPECIES, rank_named
from auctorum.records.schema import ActKind, Status, TypeRecord


class Groups:
    """Disjoint sets of names; the representative is the one that stands first in `order`."""

    def __init__(self, order: Iterable[str]) -> None:
        self._place = {id_: number for number, id_ in enumerate(order)}
        self._parent = {id_: id_ for id_ in self._place}

    def __iter__(self) -> Iterator[str]:
        return iter(self._place)

    def find(self, id_: str) -> str:
        """Representative of the set that holds `id_`."""
        root = id_
        while self._parent[root] != root:
            root = self._parent[root]
        while self._parent[id_] != root:
            self._parent[id_], id_ = root, self._parent[id_]
        return root

    def join(self, a: str, b: str) -> None:
        """Make one set of two."""
        first, second = sorted((self.find(a), self.find(b)), key=self._place.__getitem__)
        self._parent[second] = first


def type_groups(
    order: Iterable[str],
    acts: Iterable[Act],
    autonyms: Mapping[str, str],
    ranks: Mapping[str, str],
    *,
    later_types: bool = True,
) -> dict[str, str]:
    """Name -> id of the earliest name on its type. `order` is the ids by date, `autonyms` autonym -> species.

    Without `later_types`, types designated or conserved after the names were published do not count: by them
    alone is judged what an author included (Art. 52.2).
    """
    acts = tuple(acts)
    order = tuple(order)
    no_claim = without_claim(order, acts)
    groups = Groups(order)
    chosen = _later_types(acts) if later_types else {}
    shut_out = []
    specimens: dict[tuple[bool, str, str], str] = {}
    for act in (act for act in acts if act.establishes):
        if act.excludes:
            shut_out.append(act)
        elif act.name not in chosen or not chosen[act.name].conserved:
            _join_older(groups, act, ranks, no_claim)
        type_ = act.record.type
        if type_ is not None and type_.settles and not _shared_type(act, ranks, no_claim) and act.name not in chosen:
            _join_specimen(groups, specimens, act.name, type_, ranks)
    for name, later in chosen.items():
        _join_specimen(groups, specimens, name, later.type, ranks)
    for autonym, species in autonyms.items():
        groups.join(autonym, species)
    for act in shut_out:  # now it is known which types are one
        excluded = {groups.find(name) for name in act.excludes}
        if excluded.isdisjoint(map(groups.find, (act.name, *_shared_type(act, ranks, no_claim)))):
            _join_older(groups, act, ranks, no_claim)
    return {id_: groups.find(id_) for id_ in groups}


@dataclass(frozen=True, slots=True)
class _Later:
    type: TypeRecord
    conserved: bool


def _later_types(acts: Iterable[Act]) -> dict[str, _Later]:
    """Name -> the type chosen for it: a conserved one, else the first designated (Art. 9.19, 14.9; from memory)."""
    found: dict[str, _Later] = {}
    for act in acts:
        type_ = act.record.type
        conserved = act.record.act is ActKind.CONSERVATION and act.work.record.effectively_published
        if type_ is None or not type_.settles or not (conserved or act.chooses_type):
            continue
        if conserved or act.name not in found:
            found[act.name] = _Later(type_, conserved)
    return found


def _join_older(groups: Groups, act: Act, ranks: Mapping[str, str], no_claim: Container[str]) -> None:
    for older in _shared_type(act, ranks, no_claim):
        if _has_specimen_type(ranks[older]) is _has_specimen_type(ranks[act.name]):
            groups.join(act.name, older)


def _join_specimen(
    groups: Groups,
    specimens: dict[tuple[bool, str, str], str],
    name: str,
    type_: TypeRecord,
    ranks: Mapping[str, str],
) -> None:
    key = (_has_specimen_type(ranks[name]), type_.specimen, type_.herbarium)
    groups.join(name, specimens.setdefault(key, name))


def _has_specimen_type(rank: str) -> bool:
    return rank_named(rank) >= SPECIES


def without_claim(order: Iterable[str], acts: Iterable[Act]) -> frozenset[str]:
    """Names of which it is plain that nobody ought to have used them: designations, and later homonyms.

    Plain from the acts alone; the rest is for the rules to say.
    """
    first: dict[str, Act] = {}
    for act in acts:
        if act.establishes:
            first.setdefault(act.name, act)
    taken: dict[str, str] = {}
    found = set()
    for name in order:
        act_of = first.get(name)
        if act_of is None:
            continue
        if act_of.is_plainly_no_name or taken.setdefault(words(act_of.printed), name) != name:
            found.add(name)
    return frozenset(found)


def _shared_type(act: Act, ranks: Mapping[str, str], no_claim: Container[str]) -> tuple[str, ...]:
    """The names whose type this act's name takes over; a superfluous name that of the first that it ought to have
    been."""
    older = act.basionym or act.replaces or act.same_taxon
    if older is not None:
        return (older,)
    if act.record.act is not ActKind.NEW_TAXON or act.record.type is not None:
        return ()
    return tuple(name for name in act.cites if ranks[name] == ranks[act.name] and name not in no_claim)[:1]


def included_groups(treatments: Iterable[Treatment], group_of: Mapping[str, str]) -> dict[str, frozenset[str]]:
    """Treatment id -> groups of every type that the accepted taxon takes in: its own, its synonyms', its parts'.

    Only treatments of one work are parts of each other; a circle of parents is walked once.
    """
    treatments = tuple(treatments)
    parts: dict[tuple[str, str], set[str]] = {}  # work and name -> names of its parts
    own: dict[tuple[str, str], set[str]] = {}  # work and name -> groups it takes in by itself
    for treatment in treatments:
        key = (treatment.work.id, treatment.name)
        own.setdefault(key, set()).update(group_of[name] for name in (treatment.name, *treatment.synonyms))
        above = treatment.parent if treatment.status is Status.ACCEPTED else treatment.accepted_as
        if above is not None and treatment.status is not Status.MISAPPLIED:
            parts.setdefault((treatment.work.id, above), set()).add(treatment.name)
    return {one.id: _taken_in(one.work.id, one.name, parts, own) for one in treatments}


def _taken_in(
    work: str, name: str, parts: Mapping[tuple[str, str], set[str]], own: Mapping[tuple[str, str], set[str]]
) -> frozenset[str]:
    seen, waiting = {name}, [name]
    groups: set[str] = set()
    while waiting:
        here = (work, waiting.pop())
        groups |= own.get(here, set())
        further = parts.get(here, set()) - seen
        seen |= further
        waiting += further
    return frozenset(groups)


def taxa(treatments: Iterable[Treatment], names: Mapping[str, NameEntry]) -> dict[str, Taxon]:
    """Every taxon that some work accepts, in order of its first treatment.

    A type makes two taxa where authors keep it both as a species and as the autonym beside sister taxa: one
    in the strict sense (the autonym, and the species of authors who shut the sisters out), one in the wide sense.
    """
    accepted = [one for one in treatments if one.status in (Status.ACCEPTED, Status.DOUBTFUL)]
    sisters = _sisters(accepted, names)
    members: dict[tuple[str, Sense], list[Treatment]] = {}
    for treatment in accepted:
        group = names[treatment.name].group
        sense = Sense.PLAIN
        if group in sisters:
            strict = names[treatment.name].is_autonym or not (treatment.includes - {group}) & sisters[group]
            sense = Sense.STRICT if strict else Sense.WIDE
        members.setdefault((group, sense), []).append(treatment)
    both = {group for group, sense in members if (group, Sense.STRICT) in members and (group, Sense.WIDE) in members}
    found = {}
    for (group, sense), treated in members.items():
        kept = sense if group in both else Sense.PLAIN
        taxon = _taxon(group, kept, treated)
        found[taxon.id] = taxon
    return found


def _sisters(accepted: Iterable[Treatment], names: Mapping[str, NameEntry]) -> dict[str, frozenset[str]]:
    """Group -> groups that a work keeps beside the autonym on that type."""
    children: dict[tuple[str, str], list[str]] = {}
    for treatment in accepted:
        if treatment.parent is not None:
            children.setdefault((treatment.work.id, treatment.parent), []).append(treatment.name)
    found: dict[str, frozenset[str]] = {}
    for siblings in children.values():
        for name in siblings:
            if names[name].is_autonym:
                group = names[name].group
                beside = {names[other].group for other in siblings} - {group}
                found[group] = found.get(group, frozenset()) | beside
    return found


def _taxon(group: str, sense: Sense, treated: list[Treatment]) -> Taxon:
    names = tuple(dict.fromkeys(treatment.name for treatment in treated))
    suffix = f"-{sense}-sense" if sense else ""
    return Taxon(f"{group}{suffix}", group, sense, treated[-1].name, names, tuple(one.id for one in treated))
