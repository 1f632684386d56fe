"""Treatments and their statements, linked."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import replace

from auctorum.corpus.acts import Source
from auctorum.corpus.model import Statement, Treatment, Work
from auctorum.corpus.readings import StatementReader
from auctorum.corpus.references import References
from auctorum.names.ranks import implied_rank, rank_named
from auctorum.problems import AuctorumError, Place, Problem
from auctorum.records import schema


def linked_treatments(
    sources: Sequence[Source], reader: StatementReader, references: References, ranks: Mapping[str, str]
) -> tuple[list[Treatment], list[Statement]]:
    """Treatments by date and their statements; `ranks` are those of the published names.

    Names that works keep are entered first, so that a parent may be a name that only a treatment uses.
    """
    treatments: list[Treatment] = []
    statements: list[Statement] = []
    for work, source in sources:
        for number, record in enumerate(source.treatments, 1):
            name = references.used(record.taxon, work.id, record.place, "taxon")
            if name is None:
                continue
            id_ = f"{work.id}:{number}"
            said = _statements(id_, work, record, source.conventions, reader, references.problems)
            statements += said
            treatments.append(_treatment(id_, work, record, name, said, references))
    known = {work.id for work, _ in sources}
    return [_placed(one, known, references, ranks) for one in treatments], statements


def _statements(
    treatment: str,
    work: Work,
    record: schema.TreatmentRecord,
    conventions: schema.Conventions,
    reader: StatementReader,
    problems: list[Problem],
) -> list[Statement]:
    """The statements of characters that the vocabulary holds; any other is a problem, and left out."""
    read = [
        (number, said, reader.read(said, conventions, problems.append)) for number, said in enumerate(record.traits, 1)
    ]
    return [
        Statement(
            id=f"{treatment}.{number}",
            treatment=treatment,
            work=work,
            character=said.character,
            verbatim=said.verbatim or f"[{said.value}]",
            page=said.page or record.page,
            readings=readings,
            note=said.note,
            place=said.place,
        )
        for number, said, readings in read
        if reader.knows(said.character)
    ]


def _treatment(
    id_: str,
    work: Work,
    record: schema.TreatmentRecord,
    name: str,
    statements: Iterable[Statement],
    references: References,
) -> Treatment:
    return Treatment(
        id=id_,
        work=work,
        record=record,
        name=name,
        rank=_stated_rank(record, references.problems),
        synonyms=references.all_used(record.synonyms, work.id, record.place, "synonyms"),
        misapplied=references.all_used(record.misapplied, work.id, record.place, "misapplied"),
        statements=tuple(one.id for one in statements),
    )


def _stated_rank(record: schema.TreatmentRecord, problems: list[Problem]) -> str:
    if not record.rank:
        return ""
    try:
        return rank_named(record.rank).name
    except AuctorumError as error:
        problems.append(error.at(record.place, "rank"))
        return ""


def _placed(treatment: Treatment, works: set[str], references: References, ranks: Mapping[str, str]) -> Treatment:
    record, work, place = treatment.record, treatment.work.id, treatment.record.place

    def one(key: str, said: str) -> str | None:
        return references.resolved(said, work, place, key) if said else None

    target = one("accepted-as", record.accepted_as)
    if record.status in (schema.Status.SYNONYM, schema.Status.MISAPPLIED) and not record.accepted_as:
        what = f"`{record.taxon}` is kept as {record.status}, but not of what"
        references.problems.append(Problem(place, what, "give the accepted name in `accepted-as:`", within=("status",)))
    rank = treatment.rank or ranks.get(treatment.name) or implied_rank(references.table.name(treatment.name))
    return replace(
        treatment,
        parent=one("under", record.under),
        accepted_as=target,
        rank=rank,
        follows=works_named(record.follows, works, place, "follows", references.problems),
    )


def works_named(
    ids: Sequence[str], known: Collection[str], place: Place, key: str, problems: list[Problem]
) -> tuple[str, ...]:
    """The ids that are works of the knowledge base; every other one is a problem of that key."""
    for number, id_ in enumerate(ids):
        if id_ not in known:
            what = f"no work `{id_}` in the knowledge base"
            remedy = "give the id of a work in literature/, or add the work"
            problems.append(Problem(place, what, remedy, within=(key, number)))
    return tuple(id_ for id_ in ids if id_ in known)
