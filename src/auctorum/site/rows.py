"""Rows that several kinds of page share: events, statements, names, works."""

from __future__ import annotations

from collections.abc import Iterable

from auctorum.characters.show import format_value
from auctorum.characters.values import Reading
from auctorum.corpus.model import Act, Statement, Treatment
from auctorum.nomenclature.history import Event
from auctorum.nomenclature.standing import standing_of_act
from auctorum.site.answers import Answers
from auctorum.site.called import use
from auctorum.site.citations import date_words, entry, protologue
from auctorum.site.page_parts import ActRow, EventRow, NameRow, WordsRow, WorkRow
from auctorum.site.words import Rich, Run, listed, plain

STATUS_WORDS = {
    "accepted": "accepted", "synonym": "sunk", "misapplied": "held to be misapplied", "doubtful": "kept with doubt",
}  # fmt: skip
KEPT = ("accepted", "doubtful")


def event_row(answers: Answers, event: Event) -> EventRow:
    """One event of a history; `where` is the taxon it is placed in or sunk into."""
    parent, target = event.parent, event.target
    where: Rich = ()
    if target:
        where = (Run("into " if event.status == "synonym" else "for "), *answers.name(target))
    elif parent:
        where = (Run("in "), *answers.name(parent))
    kept = answers.kept.get((event.work, event.used)) if event.status in KEPT else None
    return EventRow(
        date=date_words(event.date), who=answers.work(event.work), page=event.page,
        what=event.what if event.is_act else STATUS_WORDS.get(event.status, event.what),
        name=answers.name(event.used), rank=event.rank, where=where,
        notes=answers.text("; ".join(event.notes)), is_act=event.is_act,
        use=use(answers, kept) if kept is not None else None,
    )  # fmt: skip


def placement_row(answers: Answers, treatment: Treatment) -> EventRow:
    """One treatment in the same form, for pages that start from works and not from types."""
    where: Rich = ()
    if treatment.accepted_as:
        where = (Run("into " if treatment.status == "synonym" else "for "), *answers.name(treatment.accepted_as))
    elif treatment.parent:
        where = (Run("in "), *answers.name(treatment.parent))
    return EventRow(
        date=date_words(treatment.work.date.text), who=answers.work(treatment.work.id), page=treatment.record.page,
        what=STATUS_WORDS[treatment.status], name=answers.name(treatment.name), rank=treatment.rank, where=where,
        notes=(), is_act=False, use=use(answers, treatment) if treatment.status in KEPT else None,
    )  # fmt: skip


def words_row(answers: Answers, statement: Statement, about: Rich = (), repeats: str = "", holds: str = "") -> WordsRow:
    """One statement, word for word and as read; `repeats` is the work whose figures it repeats, `holds` the plants."""
    note = "; ".join(filter(None, (statement.note, f"repeats {answers.bylines[repeats]}" if repeats else "")))
    return WordsRow(
        who=answers.work(statement.work.id), page=statement.page, about=about,
        verbatim=statement.verbatim, read=read_words(statement.readings), note=note,
        holds=holds,
    )  # fmt: skip


def read_words(readings: Iterable[Reading]) -> str:
    """Readings as printed: each with its stage, where it has one."""
    return "; ".join(
        f"{format_value(reading.value)}{f' ({reading.stage})' if reading.stage else ''}" for reading in readings
    )


def name_row(answers: Answers, name: str) -> NameRow:
    """A name with authors, its place of publication and its standing in a few words."""
    published = answers.corpus.publishing_act(name)
    return NameRow(
        name=answers.name(name, authors=True), rank=answers.corpus.names[name].rank,
        place=protologue(published) if published else (),
        standing=tuple(map(str, answers.standing(name))),
    )  # fmt: skip


def work_row(answers: Answers, work: str, note: str = "") -> WorkRow:
    """A publication as a list of literature has it."""
    return WorkRow(answers.work(work), entry(answers.corpus.works[work], answers.text), note)


def act_row(answers: Answers, act: Act) -> ActRow:
    """One act with everything that its record tells."""
    record = act.record
    names = (("rests on", act.basionym), ("replaces", act.replaces), ("about", act.of))
    facts: list[tuple[str, Rich]] = [(label, answers.name(name, authors=True)) for label, name in names if name]
    if record.authors:
        facts.append(("ascribed to", plain(record.authors)))
    if record.printed:
        facts.append(("as printed", plain(record.printed)))
    if act.cites:
        facts.append(("takes in", listed([answers.name(name) for name in act.cites])))
    if act.excludes:
        facts.append(("shuts out", listed([answers.name(name) for name in act.excludes])))
    facts += [(label, value) for label, value in (("type", type_words(answers, act)), *_described(act)) if value]
    remarks = standing_of_act(answers.code, act)
    if remarks:
        told = "; ".join(f"{one}: {one.reason}" for one in remarks)
        facts.append(("standing", answers.text(told)))
    return ActRow(
        what=record.act, who=answers.work(act.work.id), place=protologue(act), rank=act.rank, facts=tuple(facts),
        verbatim=record.verbatim, note=answers.text(record.note),
    )  # fmt: skip


def type_words(answers: Answers, act: Act) -> Rich:
    """The type as the act states it: kind, specimen, herbarium, and the words of the work."""
    given = act.record.type
    if given is None:
        return ()
    kind = "type" if given.kind == "name" else str(given.kind)
    told = ", ".join(filter(None, (given.specimen, given.herbarium)))
    quoted = f" (“{given.verbatim}”)" if given.verbatim else ""
    return answers.text(f"{kind}: {told}{quoted}" if told or quoted else kind)


def _described(act: Act) -> tuple[tuple[str, Rich], ...]:
    given = act.record.description
    if given is None:
        return ()
    if given.kind == "none":
        return (("description", plain("none")),)
    language = f", in {given.language.capitalize()}" if given.language else ""
    reference = f": {given.reference}" if given.reference else ""
    kind = "reference to an earlier description" if given.kind == "reference" else str(given.kind)
    return (("description", plain(f"{kind}{language}{reference}")),)
