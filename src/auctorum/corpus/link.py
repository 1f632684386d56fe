"""Records -> Corpus: every reference becomes the id of what it refers to, or a problem."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from typing import TypeVar

from auctorum.corpus.acts import Source, linked_acts, name_table, read_acts, sources_by_date
from auctorum.corpus.checks import check
from auctorum.corpus.groups import included_groups, taxa, type_groups
from auctorum.corpus.model import Act, Corpus, NameEntry, Treatment, Work
from auctorum.corpus.publish import Published, published_names
from auctorum.corpus.readings import StatementReader
from auctorum.corpus.references import References
from auctorum.corpus.rows import checked_criteria, linked_labels, linked_sites, linked_specimens
from auctorum.corpus.treatments import linked_treatments, works_named
from auctorum.corpus.vocabulary import vocabulary_of
from auctorum.names.format import words
from auctorum.names.name import Name
from auctorum.names.ranks import implied_rank
from auctorum.problems import Problem
from auctorum.records import schema

T = TypeVar("T")


def link(records: schema.Records) -> tuple[Corpus, tuple[Problem, ...]]:
    """The corpus, and every problem of linking; what can't be linked is left out and named.

    The order of files does not matter: works stand by date, then id.
    """
    problems: list[Problem] = []
    vocabulary = vocabulary_of(records.characters, problems.append)
    sources = sources_by_date(records.literature, problems)
    unlinked, older = read_acts(sources, problems)
    published = published_names([act for act in unlinked if act.establishes], older)
    references = References(name_table(published, unlinked, [work for work, _ in sources]), problems)
    acts = linked_acts(unlinked, published, references)
    ranks = {one.id: one.rank for one in published}
    treatments, statements = linked_treatments(sources, StatementReader(vocabulary), references, ranks)
    works = _covering(sources, references)
    focal = references.all_resolved(records.settings.focal_taxa, None, records.settings.place, "focal-taxa")
    criteria = checked_criteria(records.criteria, vocabulary, references)
    sites = linked_sites(records.sites, problems)
    specimens = linked_specimens(records.specimens, vocabulary, sites, references, records.measurements)
    # From here on no name is added.
    names = _entries(published, acts, references)
    acts = [replace(act, work=works[act.work.id]) for act in acts]
    treatments = _with_circumscription(treatments, works, names)
    corpus = Corpus(
        settings=records.settings,
        vocabulary=vocabulary,
        works=works,
        names=names,
        acts={act.id: act for act in acts},
        treatments={one.id: one for one in treatments},
        statements={one.id: replace(one, work=works[one.work.id]) for one in statements},
        taxa=taxa(treatments, names),
        focal=focal,
        criteria=criteria,
        sites=sites,
        specimens=specimens,
        labels=linked_labels(records.labels, vocabulary, problems),
        groups=_grouped((entry.group, id_) for id_, entry in names.items()),
        homonyms=_grouped((words(one.name), one.id) for one in published),
        by_work=_grouped((one.work.id, one) for one in treatments),
        by_name=_grouped((one.name, one) for one in treatments),
        by_group=_grouped((group, one) for one in treatments for group in _touched(one, names)),
        acts_by_work=_grouped((act.work.id, act) for act in acts),
    )
    return corpus, tuple(sorted([*problems, *check(corpus)]))


def _covering(sources: Iterable[Source], references: References) -> dict[str, Work]:
    """Works by id, in order of date, with the names that each covers and the works that it cites."""
    known = {work.id for work, _ in sources}
    return {
        work.id: replace(
            work,
            covers=references.all_resolved(source.covers, work.id, source.place, "covers"),
            cites=works_named(source.cites, known, source.place, "cites", references.problems),
        )
        for work, source in sources
    }


def _entries(published: Sequence[Published], acts: Sequence[Act], references: References) -> dict[str, NameEntry]:
    """Every name: published ones by date, then autonyms, then names without protologue."""
    order = [*(one.id for one in published), *references.autonyms, *references.unpublished]
    named: dict[str, Name] = {id_: references.table.name(id_) for id_ in order}
    ranks = {id_: implied_rank(name) for id_, name in named.items()} | {one.id: one.rank for one in published}
    groups = type_groups(order, acts, references.autonyms, ranks)
    of_name = _grouped((act.name, act.id) for act in acts)
    publishing = _grouped((act.name, act.id) for act in acts if act.establishes)
    variants = _grouped(
        (act.name, act.printed)
        for act in acts
        if (act.spells_otherwise or act.establishes) and act.printed != named[act.name].bare
    )
    return {
        id_: NameEntry(
            id=id_,
            name=named[id_],
            rank=ranks[id_],
            group=groups[id_],
            acts=of_name.get(id_, ()),
            variants=tuple(dict.fromkeys(variants.get(id_, ()))),
            autonym_of=references.autonyms.get(id_),
            published_by=next(iter(publishing.get(id_, ())), None),
        )
        for id_ in order
    }


def _with_circumscription(
    treatments: Sequence[Treatment], works: Mapping[str, Work], names: Mapping[str, NameEntry]
) -> list[Treatment]:
    included = included_groups(treatments, {id_: entry.group for id_, entry in names.items()})
    return [replace(one, work=works[one.work.id], includes=included[one.id]) for one in treatments]


def _touched(treatment: Treatment, names: Mapping[str, NameEntry]) -> list[str]:
    """Groups of the names that a treatment keeps, places something in, sinks or calls misapplied, each once."""
    touched = (treatment.name, treatment.parent, *treatment.synonyms, *treatment.misapplied)
    return list(dict.fromkeys(names[name].group for name in touched if name is not None))


def _grouped(pairs: Iterable[tuple[str, T]]) -> dict[str, tuple[T, ...]]:
    found: dict[str, list[T]] = {}
    for key, value in pairs:
        found.setdefault(key, []).append(value)
    return {key: tuple(values) for key, values in found.items()}
