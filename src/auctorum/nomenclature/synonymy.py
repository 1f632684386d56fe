"""The synonymy of a taxon in the trade's form: which names, in which blocks, according to whom.

What a work sinks into a taxon are types; on each type stand all its names, since that names share a type is no
opinion (ICN Art. 14.4, from memory). So a block may hold names younger than the work that sinks it.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass, field
from datetime import date

from auctorum.corpus.model import Act, Corpus, NameEntry, Sense, Treatment
from auctorum.corpus.resolve import NeverAccepted, find_taxon
from auctorum.names.format import format_authors, format_name
from auctorum.names.name import Name
from auctorum.names.ranks import rank_named
from auctorum.nomenclature.cited import Cited, Notes, Source, TypeOfName, cited, no_notes, not_valid, types_of
from auctorum.nomenclature.history import Placement
from auctorum.problems import AuctorumError
from auctorum.records.schema import Status

DateKey = tuple[date, date, str, int, str, bool, str]


class NotPlaced(AuctorumError, LookupError):
    """A name that none of the works asked places; `placed_in` are the works that do."""

    def __init__(self, name: str, works: tuple[str, ...], placed_in: tuple[str, ...]) -> None:
        super().__init__(name, works, placed_in)
        self.name, self.works, self.placed_in = name, works, placed_in

    def __str__(self) -> str:
        return f"{', '.join(self.works)} {'gives' if len(self.works) == 1 else 'give'} no place to {self.name}"

    @property
    def remedy(self) -> str:  # type: ignore[override]
        return f"works that place it: {', '.join(self.placed_in)}" if self.placed_in else "no work places it"


@dataclass(frozen=True, slots=True)
class Block:
    """Names on one type that are sunk into the taxon: the oldest first, then those on its type by date."""

    names: tuple[Cited, ...]
    types: tuple[TypeOfName, ...]
    according_to: tuple[Source, ...]  # the works that sink the type, by date


@dataclass(frozen=True, slots=True)
class Misapplication:
    """A name that was used for the taxon although its type lies elsewhere.

    `authors` are those whose name it is; `used_in` are the uses meant, in the words of the works that say so.
    """

    id: str
    name: Name  # bare
    authors: str
    used_in: tuple[str, ...]
    according_to: tuple[Source, ...]


@dataclass(frozen=True, slots=True)
class Synonymy:
    """The accepted name; the other names on its type by date; blocks by date of their first name; misapplied names.

    `sec` are the works asked, by date; empty where all were.
    """

    accepted: Cited
    homotypic: tuple[Cited, ...]
    types: tuple[TypeOfName, ...]
    heterotypic: tuple[Block, ...]
    misapplied: tuple[Misapplication, ...]
    sec: tuple[Source, ...]


def accepted_name(corpus: Corpus, name: str, works: Collection[str] | None = None) -> Placement | None:
    """What the latest of `works` that places the type of a name takes for its accepted name, the highest rank there.

    Of a type that is kept both as a species and as its autonym, the one asked about. None over all works: no work
    places the type. Raises NotPlaced if none of `works` does.
    """
    group, entries = corpus.names[name].group, corpus.names
    autonyms = {one for one in corpus.groups[group] if entries[one].is_autonym}
    meant = autonyms if name in autonyms else set(corpus.groups[group]) - autonyms
    found = _latest(corpus, meant, works) or _latest(corpus, set(corpus.groups[group]), works)
    if found is None and works is not None:
        placed_in = dict.fromkeys(place.work for place in _placements(corpus, set(corpus.groups[group]), None))
        raise NotPlaced(format_name(corpus.names[name].name), tuple(sorted(works)), tuple(placed_in))
    return found


def _latest(corpus: Corpus, names: Collection[str], works: Collection[str] | None) -> Placement | None:
    found = list(_placements(corpus, names, works))
    last = [one for one in found if one.work == found[-1].work]
    return min(last, key=lambda one: rank_named(corpus.names[one.accepted].rank), default=None)


def _placements(corpus: Corpus, names: Collection[str], works: Collection[str] | None) -> Iterator[Placement]:
    """Placements of some names on one type, by date; without `works`, those effectively published."""
    group = next(corpus.names[name].group for name in names)
    for one in corpus.by_group.get(group, ()):
        if one.work.id not in works if works is not None else not one.work.record.effectively_published:
            continue
        if one.name in names and one.status in (Status.ACCEPTED, Status.DOUBTFUL):
            yield Placement(one.work.id, one.name)
        elif one.name in names and one.status is Status.SYNONYM and one.accepted_as:
            yield Placement(one.work.id, one.accepted_as)
        elif any(name in names for name in one.synonyms):
            yield Placement(one.work.id, one.accepted_as or one.name)
        elif one.parent is not None and one.parent in names:
            # Who places a plant in a taxon accepts it, without an entry of its own.
            yield Placement(one.work.id, one.parent)


def synonymy(corpus: Corpus, name: str, works: Collection[str] | None = None, notes: Notes = no_notes) -> Synonymy:
    """The synonymy of the taxon whose accepted name has that id, sec. `works` or, without them, over all works.

    Over all works it is the union of what any work sinks into the taxon, under whichever name on its type it keeps
    it; of a taxon in the wide and the strict sense, what is sunk into the one meant (and under that very name). `notes`
    gives abbreviations on the standing of a name, as `nom. illeg.`; `nom. inval.` marks designations.
    """
    group, by_date = corpus.names[name].group, _dating(corpus, notes)
    said = _said(corpus, name, works)
    blocks = [_block(corpus, other, sources, by_date, notes) for other, sources in said.sunk.items() if other != group]
    return Synonymy(
        accepted=cited(corpus, name, notes),
        homotypic=tuple(cited(corpus, one, notes) for one in sorted(corpus.groups[group], key=by_date) if one != name),
        types=types_of(corpus, group),
        heterotypic=tuple(sorted(blocks, key=lambda block: by_date(block.names[0].id))),
        misapplied=tuple(_misapplication(corpus, one, said) for one in sorted(said.misapplied, key=by_date)),
        sec=tuple(Source(one.id, one.byline) for one in corpus.works.values() if works is not None and one.id in works),
    )


@dataclass(slots=True)
class _Said:
    """What works sink into a taxon (by type) and say to be misapplied for it (by name), each work once, by date."""

    sunk: dict[str, tuple[Source, ...]] = field(default_factory=dict)
    misapplied: dict[str, tuple[Source, ...]] = field(default_factory=dict)
    verbatim: dict[str, tuple[str, ...]] = field(default_factory=dict)  # by misapplied name

    def sink(self, group: str, by: Treatment) -> None:
        self.sunk[group] = _with(self.sunk.get(group, ()), by)

    def misapply(self, name: str, by: Treatment) -> None:
        self.misapplied[name] = _with(self.misapplied.get(name, ()), by)
        self.verbatim[name] = (*self.verbatim.get(name, ()), by.record.verbatim)


def _with(sources: tuple[Source, ...], by: Treatment) -> tuple[Source, ...]:
    if any(one.work == by.work.id for one in sources):
        return sources
    return (*sources, Source(by.work.id, by.work.byline, by.record.page))


def _said(corpus: Corpus, name: str, works: Collection[str] | None) -> _Said:
    """What the treatments of `works` say, work by work in order of date."""
    said = _Said()
    keeping = _keeping(corpus, name)
    for work, treatments in corpus.by_work.items() if works is None else _of_works(corpus, works):
        into: dict[str, list[Treatment]] = {}  # name -> treatments that keep it, or place another under it
        for one in treatments:
            kept = one.status in (Status.ACCEPTED, Status.DOUBTFUL)
            into.setdefault(one.name if kept else one.accepted_as or "", []).append(one)
        waiting = deque(target for target in into if keeping(work, target))
        seen = set(waiting)
        while waiting:
            target = waiting.popleft()
            for one in into.get(target, ()):
                _note(corpus, one, target, said)
                if one.name not in seen and one.status is Status.SYNONYM:
                    seen.add(one.name)
                    waiting.append(one.name)
    return said


def _of_works(corpus: Corpus, works: Collection[str]) -> Iterator[tuple[str, tuple[Treatment, ...]]]:
    return ((work, corpus.by_work.get(work, ())) for work in corpus.works if work in works)


def _note(corpus: Corpus, one: Treatment, target: str, said: _Said) -> None:
    """Enter what one treatment says of the taxon that it keeps or places its name in."""
    if one.status is Status.MISAPPLIED:
        said.misapply(one.name, one)
        return
    for sunk in (*((one.name,) if one.name != target else ()), *one.synonyms):
        said.sink(corpus.names[sunk].group, one)
    for wrong in one.misapplied:
        said.misapply(wrong, one)


def _keeping(corpus: Corpus, name: str) -> Callable[[str, str], bool]:
    """Whether a work means the taxon when it keeps, or places something under, a certain name."""
    group = corpus.names[name].group
    try:
        taxon = find_taxon(corpus, name)
    except NeverAccepted:
        return lambda _work, target: target == name
    if taxon.sense is Sense.PLAIN:
        return lambda _work, target: target in corpus.names and corpus.names[target].group == group
    kept = {(corpus.treatments[one].work.id, corpus.treatments[one].name) for one in taxon.treatments}
    return lambda work, target: target == name or (work, target) in kept


def _block(
    corpus: Corpus, group: str, sources: tuple[Source, ...], by_date: Callable[[str], DateKey], notes: Notes
) -> Block:
    names = [cited(corpus, one, notes) for one in sorted(corpus.groups[group], key=by_date)]
    # A designation is no name, so that it leads no block that holds one.
    lead = next((one for one in names if not one.is_designation), names[0])
    return Block((lead, *(one for one in names if one is not lead)), types_of(corpus, group), sources)


def _misapplication(corpus: Corpus, name: str, said: _Said) -> Misapplication:
    words = corpus.names[name].name
    uses = dict.fromkeys(use for verbatim in said.verbatim[name] for use in _uses(verbatim, words))
    return Misapplication(name, words.bare, format_authors(words.authors), tuple(uses), said.misapplied[name])


def _uses(verbatim: str, name: Name) -> Iterator[str]:
    """The uses that a work means by `X auct. non Y: one; another`, in its words (ICN Rec. 50D, from memory)."""
    meant = False
    for part in verbatim.split(";"):
        before, auct, after = part.partition("auct")
        authors, _, place = after.partition(":") if auct else ("", "", part)
        if auct:
            meant = name.final_epithet in before and not any(map(str.isdigit, authors))
        # What follows without a figure is a remark.
        if meant and any(map(str.isdigit, place)):
            yield " ".join(place.split()).rstrip(".")


def _dating(corpus: Corpus, notes: Notes) -> Callable[[str], DateKey]:
    """The key that sets names in order of date; undated ones last, an autonym with the name that established it."""

    def by_date(name: str) -> DateKey:
        entry = corpus.names[name]
        act = _establishing(corpus, entry, notes) if entry.is_autonym else corpus.publishing_act(name)
        if act is None:
            return date.max, date.max, "", 0, "", entry.is_autonym, name
        dated = act.work.date
        # The ids of the acts of one work end in their numbers.
        return dated.earliest, dated.latest, act.work.id, len(act.id), act.id, entry.is_autonym, name

    return by_date


def _establishing(corpus: Corpus, autonym: NameEntry, notes: Notes) -> Act | None:
    """The act that published the first name of the same rank beside the autonym (ICN Art. 22.3, 26.3, 32.3)."""
    species = (autonym.name.genus, autonym.name.species)
    acts = (
        act
        for one in corpus.names.values()
        if (one.name.genus, one.name.species) == species and one.rank == autonym.rank and not one.is_autonym
        if (act := corpus.publishing_act(one.id)) is not None and not not_valid(notes(one.id))
    )
    return min(acts, key=lambda act: (act.work.date, act.id), default=None)
