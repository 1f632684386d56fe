"""Works and acts, linked."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from auctorum.corpus.model import Act, Work
from auctorum.corpus.printed import one_epithet, proper_words
from auctorum.corpus.publish import Older, Published
from auctorum.corpus.references import References
from auctorum.corpus.resolve import NameTable, name_alone, without_year
from auctorum.names.name import Name
from auctorum.names.parse import parse_authors
from auctorum.names.ranks import GENUS, UNRANKED, implied_rank, rank_named
from auctorum.problems import AuctorumError, Place, Problem
from auctorum.records import schema
from auctorum.records.dates import Dated

Source = tuple[Work, schema.Literature]


def sources_by_date(literature: Iterable[schema.Literature], problems: list[Problem]) -> list[Source]:
    """Works by effective date, then id; a second work with the same id is a problem and left out."""
    found: dict[str, Source] = {}
    for source in literature:
        record = source.work
        if record.id in found:
            other = found[record.id][1].work.place
            what = f"the work id `{record.id}` is that of {other} too"
            problems.append(Problem(record.place, what, "give each work its own id", within=("id",)))
            continue
        authors = tuple(person.literal or person.family for person in record.author)
        date = Dated.parse(record.effective or record.issued)
        found[record.id] = Work(record.id, record, date, authors, ()), source
    return sorted(found.values(), key=lambda pair: (pair[0].date, pair[0].id))


def read_acts(sources: Iterable[Source], problems: list[Problem]) -> tuple[list[Act], dict[str, Older]]:
    """Acts with names parsed but not linked, by date; and, by act, the older name that each rests on."""
    acts: list[Act] = []
    older: dict[str, Older] = {}
    for work, source in sources:
        for number, record in enumerate(source.acts, 1):
            name = _parsed(without_year(proper_words(record))[0], record.place, problems, "name")
            if name is None:
                continue
            name = one_epithet(record, name)
            act = Act(f"{work.id}.{number}", work, record, "", name.bare, _rank(record, name, problems))
            acts.append(act)
            _check_authors(record, problems)
            key = next((key for key in _RESTS_ON if getattr(record, key.replace("-", "_"))), "")
            said = getattr(record, key.replace("-", "_")) if key else ""
            words_said, year = without_year(said)
            known = _parsed(words_said, record.place, problems, key) if said else None
            if known is not None and said not in record.excludes:  # without its type it rests on nothing (48.1)
                older[act.id] = Older(known, year)
    return acts, older


_RESTS_ON = ("basionym", "replaces", "same-taxon-as")


def _parsed(said: str, place: Place, problems: list[Problem], key: str) -> Name | None:
    try:
        return name_alone(said)
    except AuctorumError as error:
        problems.append(error.at(place, key))
        return None


def _rank(record: schema.Act, name: Name, problems: list[Problem]) -> str:
    """Rank as stated, else as the form of the name tells; a rank that contradicts the form is a problem."""
    implied = implied_rank(name)
    if not record.rank or record.rank == UNRANKED.name:
        return record.rank or implied
    try:
        rank = rank_named(record.rank).name
    except AuctorumError as error:
        problems.append(error.at(record.place, "rank"))
        return implied
    # A single word may be a genus or anything above it: its form tells no rank.
    told = implied != UNRANKED.name and (name.species or name.divisions)
    if rank == GENUS.name and not name.lower and not name.divisions:
        return rank  # a generic name of two words, which the Code judges (Art. 20.3)
    if told and rank != implied:
        what = f"the rank {rank} contradicts the name `{record.name}`, by its form a {implied}"
        problems.append(Problem(record.place, what, "correct the rank or the name", within=("rank",)))
    return rank


def _check_authors(record: schema.Act, problems: list[Problem]) -> None:
    for key, said in (
        ("authors", record.authors),
        ("ascribed-to", record.ascribed_to),
        ("described-by", record.described_by),
    ):
        if said:
            try:
                parse_authors(said)
            except AuctorumError as error:
                problems.append(error.at(record.place, key))


def name_table(published: Iterable[Published], acts: Iterable[Act], all_works: Iterable[Work]) -> NameTable:
    """The table of published names; variant spellings lead to the name they are of."""
    published = tuple(published)
    works = {one.id: frozenset(act.work.id for act in one.acts) for one in published}
    years = {one.id: one.acts[0].work.year for one in published}
    written = {work.id: work.date.last_day.year for work in all_works}
    no_names = {one.id for one in published if all(act.is_plainly_no_name for act in one.acts)}
    table = NameTable({one.id: one.name for one in published}, works, years, written, no_names)
    for one in published:
        for act in one.acts:
            table.add_spelling(act.printed, one.id)
    for act in acts:
        if act.spells_otherwise and act.record.of:
            try:
                table.add_spelling(act.printed, table.resolve(act.record.of, act.work.id))
            except AuctorumError:
                continue  # named as a problem when the act itself is linked
    return table


def linked_acts(acts: Iterable[Act], published: Iterable[Published], references: References) -> list[Act]:
    """The acts with ids in place of words, in the same order."""
    name_of = {act.id: one.id for one in published for act in one.acts}
    publishing = {one.id: one.acts[0].id for one in published}
    return [_linked(act, name_of, publishing, references) for act in acts]


def _linked(act: Act, name_of: Mapping[str, str], publishing: Mapping[str, str], references: References) -> Act:
    record, work, place = act.record, act.work.id, act.record.place

    def one(key: str, said: str) -> str | None:
        return references.resolved(said, work, place, key) if said else None

    def older(key: str, said: str) -> str | None:
        """The older name; an isonym may rest on the name it repeats, the first act of a name may not."""
        found = one(key, said)
        if found is not None and found == name and publishing.get(name) == act.id:
            what = f"`{record.name}` is said to rest on itself"
            remedy = "name the older name, with authors if it is a homonym"
            references.problems.append(Problem(place, what, remedy, within=(key,)))
            return None
        return found

    about = one("of", record.of)
    # A variant spelling and a type designation are about another act's name.
    name = name_of.get(act.id) or about or one("name", record.name) or references.without_protologue(act.printed)
    return replace(
        act,
        name=name,
        basionym=older("basionym", record.basionym),
        replaces=older("replaces", record.replaces),
        of=about,
        cites=references.all_resolved(record.cites, work, place, "cites"),
        excludes=references.all_resolved(record.excludes, work, place, "excludes"),
        against=references.all_resolved(record.against, work, place, "against"),
        same_taxon=one("same-taxon-as", record.same_taxon_as),
        above=one("under", record.under) if record.under else references.table.above(act.printed, work),
    )
