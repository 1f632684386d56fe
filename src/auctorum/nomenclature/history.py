"""How a name moved: every act and every author's placement of one type, in order of time."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from auctorum.corpus.model import Corpus, Treatment, Work
from auctorum.corpus.resolve import called
from auctorum.names.format import format_name
from auctorum.names.ranks import SPECIES, rank_named
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.correct import CorrectName, Outcome
from auctorum.nomenclature.judgement import Legitimacy
from auctorum.nomenclature.standing import standing_of_act
from auctorum.nomenclature.views import correct_then, is_used
from auctorum.records.schema import Status


@dataclass(frozen=True, slots=True)
class Event:
    """One act or one placement. `used` is the id of the name at issue, `as_printed` its words in that work.

    `what` says it in words ("new taxon", "change of rank", "accepted", "synonym of"); `parent` is the id of
    the taxon it is placed in, `target` that of the accepted name where it is sunk; `rank` is the rank it has
    in that work ("synonym" placements have the rank of the accepted taxon they are sunk into).
    """

    year: int
    date: str
    work: str
    page: str
    used: str
    as_printed: str
    is_act: bool
    what: str
    rank: str
    status: str  # accepted, synonym, misapplied, doubtful; empty for an act about a name only
    parent: str | None = None
    target: str | None = None
    notes: tuple[str, ...] = ()  # standing under the Code, with article: "isonym (Art. 6.3 Note 2)"
    stands: bool = True  # false for an act that does not validly publish its name
    illegitimate: bool = False  # whether the act publishes a name that the rules make illegitimate
    correct: bool | None = None  # whether the name used was the correct one for the work's own view; None = open
    instead: str = ""  # where it was not: what it had to be called, or what would have been needed


@dataclass(frozen=True, slots=True)
class View:
    """One way of keeping the type: at a rank, under a name, or sunk into another."""

    label: str  # "species", "variety", "synonym of Cremnocentron album"
    rank: str
    works: tuple[str, ...]  # ids by date
    authors: tuple[str, ...]  # distinct authors or teams, by first date
    first: int
    last: int


@dataclass(frozen=True, slots=True)
class History:
    """Events of one type by date, the tally of opinion (most authors first), and who covers the group in silence."""

    group: str
    names: tuple[str, ...]
    events: tuple[Event, ...]
    views: tuple[View, ...]
    silent: tuple[str, ...]


def history(code: Code, group: str) -> History:
    """The history of the type whose earliest name is `group`."""
    corpus = code.corpus
    names = corpus.groups[group]
    events = sorted(
        [*_acts(code, names), *_placements(code, group)],
        key=lambda event: (corpus.works[event.work].date, event.work, not event.is_act, event.page),
    )
    return History(group, names, tuple(events), _views(corpus, events), _silent(corpus, group, events))


def _acts(code: Code, names: Iterable[str]) -> Iterator[Event]:
    for name in names:
        for act in code.corpus.acts_of(name):
            judged = code.acts.get(act.id)
            yield Event(
                year=act.work.year,
                date=act.work.date.text,
                work=act.work.id,
                page=act.record.page,
                used=name,
                as_printed=format_name(act.printed, authors=False),
                is_act=True,
                what=str(act.record.act),
                rank=act.rank,
                status="",
                notes=tuple(map(str, standing_of_act(code, act))),
                stands=judged is None or judged.stands,
                illegitimate=judged is not None and judged.legitimacy is Legitimacy.ILLEGITIMATE,
            )


def _placements(code: Code, group: str) -> Iterator[Event]:
    corpus = code.corpus
    for treatment in corpus.by_group.get(group, ()):
        own = corpus.names[treatment.name].group == group
        if own and treatment.status in (Status.ACCEPTED, Status.DOUBTFUL):
            kept = _placement(
                treatment, treatment.record.taxon, treatment.name, str(treatment.status), treatment.parent
            )
            yield _with_correct_name(code, treatment, kept)
        elif own and not _same_type(corpus, treatment.accepted_as, group):
            what, target = str(treatment.status), treatment.accepted_as
            yield _placement(treatment, treatment.record.taxon, treatment.name, what, None, target)
        for status, listed in ((Status.SYNONYM, treatment.synonyms), (Status.MISAPPLIED, treatment.misapplied)):
            ours = [name for name in listed if corpus.names[name].group == group]
            if ours and not (own and status is Status.SYNONYM):
                shown = "; ".join(format_name(corpus.names[name].name, authors=False) for name in ours)
                yield _placement(treatment, shown, ours[0], str(status), None, treatment.name)


def _with_correct_name(code: Code, treatment: Treatment, event: Event) -> Event:
    """The placement with whether its name was the correct one for that work's own view, at its time."""
    found = correct_then(code, treatment)
    correct = is_used(code, treatment, found)
    return replace(event, correct=correct, instead="" if correct or found is None else _needed(found))


def _needed(found: CorrectName) -> str:
    """What a taxon had to be called, where that is another name than the one used."""
    if found.name is None:
        return "none, as no name was published yet"
    if found.outcome is Outcome.COMBINATION_NEEDED:
        return f"a new combination, {format_name(found.name)}"
    return format_name(found.name)


def _same_type(corpus: Corpus, name: str | None, group: str) -> bool:
    """Whether a name is on the type at issue: a synonym on the same type is no sinking of it."""
    return name is not None and corpus.names[name].group == group


def _placement(
    treatment: Treatment, shown: str, used: str, status: str, parent: str | None, target: str | None = None
) -> Event:
    return Event(
        year=treatment.work.year,
        date=treatment.work.date.text,
        work=treatment.work.id,
        page=treatment.record.page,
        used=used,
        as_printed=shown,
        is_act=False,
        what=f"{status} {'to' if status == Status.MISAPPLIED else 'of'}" if target else status,
        rank=treatment.rank,
        status=status,
        parent=parent,
        target=target,
    )


def _views(corpus: Corpus, events: Iterable[Event]) -> tuple[View, ...]:
    """The tally, one view a work: as it places the type, else as its own act does; most authors first."""
    by_work: dict[str, list[Event]] = {}
    for event in events:
        by_work.setdefault(event.work, []).append(event)
    taken = {work: view for work, of_work in by_work.items() if (view := _view_of(corpus, of_work)) is not None}
    held: dict[tuple[str, str], list[str]] = {}
    for work, (label, rank, parent) in taken.items():
        # It matters in which genus, or below it of which species, if authors differ about that.
        parents = {other for _, same, other in taken.values() if same == rank and other}
        told = f"{label} {parent}" if parent and len(parents) > 1 and label == rank else label
        held.setdefault((told, rank), []).append(work)
    views = [
        View(
            label=label,
            rank=rank,
            works=tuple(works),
            authors=tuple(dict.fromkeys(" & ".join(corpus.works[work].authors) for work in works)),
            first=corpus.works[works[0]].year,
            last=corpus.works[works[-1]].year,
        )
        for (label, rank), works in held.items()
    ]
    return tuple(sorted(views, key=lambda view: (-len(view.authors), view.first, view.label)))


def _view_of(corpus: Corpus, events: Iterable[Event]) -> tuple[str, str, str] | None:
    """Label and rank of the view that one work takes, and where it places the taxon; None where it takes none."""
    events = list(events)
    kept = [event for event in events if not event.is_act and event.status in (Status.ACCEPTED, Status.DOUBTFUL)]
    if kept:
        # A species and its autonym in one work are one view of the type: that of the species.
        top = min(kept, key=lambda event: rank_named(event.rank))
        label = f"doubtful {top.rank}" if top.status == Status.DOUBTFUL else top.rank
        return label, top.rank, _placed_in(corpus, top.used, top.rank, top.parent)
    for event in events:
        if event.status == Status.SYNONYM and event.target is not None:
            return f"synonym of {called(corpus, event.target)}", event.rank, ""
    published = [act for act in corpus.acts_in(events[0].work) if act.establishes and act.record.accepted]
    mine = {event.used for event in events if event.is_act}
    for act in published:
        if act.name in mine:
            return act.rank, act.rank, _placed_in(corpus, act.name, act.rank, None)
    return None


def _placed_in(corpus: Corpus, name: str, rank: str, parent: str | None) -> str:
    """`in Exemplum` for a species, `of Exemplum album` below it where the parent is said; else empty."""
    if rank_named(rank) == SPECIES:
        return f"in {corpus.names[name].name.genus}"
    return f"of {called(corpus, parent)}" if parent and rank_named(rank) > SPECIES else ""


def _silent(corpus: Corpus, group: str, events: Iterable[Event]) -> tuple[str, ...]:
    """Works that set out to treat what the type belongs to, since its first name, and say nothing of it."""
    speaking = {event.work for event in events}
    # Who places a plant in the taxon speaks of it, without an entry of its own.
    of_type = set(corpus.groups[group])
    speaking |= {one.work.id for one in corpus.by_group.get(group, ()) if one.parent in of_type}
    names = [corpus.names[id_].name for id_ in corpus.groups[group]]
    first = min((corpus.works[event.work].date for event in events), default=None)

    def covers(work: Work) -> bool:
        for cover in (corpus.names[id_].name for id_ in work.covers):
            if any(name.genus == cover.genus and cover.species in ("", name.species) for name in names):
                return True
        return False

    return tuple(
        work.id
        for work in corpus.works.values()
        if work.id not in speaking and first is not None and work.date >= first and covers(work)
    )


@dataclass(frozen=True, slots=True)
class Placement:
    """The accepted name of a name in one work."""

    work: str
    accepted: str


def latest_placement(corpus: Corpus, name: str) -> Placement | None:
    """What the latest effectively published work that places `name` takes for its accepted name; None if none does."""
    found: Placement | None = None
    for treatment in corpus.by_group.get(corpus.names[name].group, ()):  # by date
        if not treatment.work.record.effectively_published:
            continue
        if treatment.name == name and treatment.status in (Status.ACCEPTED, Status.DOUBTFUL):
            found = Placement(treatment.work.id, name)
        elif name in treatment.synonyms:
            found = Placement(treatment.work.id, treatment.name)
        elif treatment.name == name and treatment.status is Status.SYNONYM and treatment.accepted_as:
            found = Placement(treatment.work.id, treatment.accepted_as)
    return found
