"""Checks across linked records: each takes the corpus and returns its problems; add yours to `CHECKS`."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping

from auctorum.corpus.criteria import check_criteria
from auctorum.corpus.model import Corpus, Treatment
from auctorum.names.fold import same_epithet
from auctorum.names.format import format_name
from auctorum.names.ranks import rank_named
from auctorum.problems import Problem, Severity
from auctorum.records.schema import ActKind


def check(corpus: Corpus) -> list[Problem]:
    """Problems of every check, in the order of `CHECKS`."""
    return [problem for one in CHECKS for problem in one(corpus)]


def check_basionym_cycles(corpus: Corpus) -> list[Problem]:
    """A name that rests, through others, on itself."""
    publishing = {id_: act for id_ in corpus.names if (act := corpus.publishing_act(id_)) is not None}
    rests_on = {id_: act.basionym or act.replaces for id_, act in publishing.items()}
    return [
        Problem(
            publishing[cycle[0]].record.place,
            f"the names rest on one another in a circle: {_chain(corpus, cycle)}",
            "one of them must have been published first: correct its basionym",
        )
        for cycle in _cycles(rests_on)
    ]


def check_parent_cycles(corpus: Corpus) -> list[Problem]:
    """Taxa that one work places in one another."""
    problems = []
    for treatments in corpus.by_work.values():
        for key in ("under", "accepted-as"):
            above = {one.name: up for one in treatments if (up := one.parent if key == "under" else one.accepted_as)}
            places = {one.name: one.record.place for one in treatments}
            for cycle in _cycles(above):
                what = f"the taxa are placed in one another in a circle: {_chain(corpus, cycle)}"
                problems.append(Problem(places[cycle[0]], what, f"correct `{key}:`", within=(key,)))
    return problems


def check_treated_twice(corpus: Corpus) -> list[Problem]:
    """A name that one work has in two treatments, so that it would have two voices or contradict itself."""
    problems = []
    for treatments in corpus.by_work.values():
        first: dict[str, Treatment] = {}
        for one in treatments:
            if one.name in first:
                name = format_name(corpus.names[one.name].name)
                what = f"{name} has a treatment in this work already, at {first[one.name].record.place}"
                problems.append(Problem(one.record.place, what, "make one of the two", within=("taxon",)))
            first.setdefault(one.name, one)
    return problems


def check_contradictions(corpus: Corpus) -> list[Problem]:
    """Treatments that say two things at once: accepted as another name, or following their own work."""
    problems = []
    for one in corpus.treatments.values():
        place = one.record.place
        if one.accepted_as and one.status in ("accepted", "doubtful"):
            what = f"kept as {one.status}, and yet accepted as another name"
            problems.append(
                Problem(place, what, "set `status: synonym`, or take the name out", within=("accepted-as",))
            )
        if one.work.id in one.follows:
            what = "the work is said to follow itself"
            problems.append(Problem(place, what, "name the work whose figures it repeats", within=("follows",)))
        later = [id_ for id_ in one.follows if corpus.works[id_].date.earliest > one.work.date.latest]
        if later:
            what = f"the work is said to follow {corpus.works[later[0]].byline}, published only later"
            remedy = "check the dates, or name the work whose figures it repeats"
            problems.append(Problem(place, what, remedy, Severity.WARNING, ("follows",)))
    return problems


def check_basionym_dates(corpus: Corpus) -> list[Problem]:
    """An act that rests on a name published only later."""
    problems = []
    for act in corpus.acts.values():
        older = act.basionym or act.replaces
        first = corpus.publishing_act(older) if older is not None else None
        if older is None or first is None:
            continue
        if first.work.date.earliest > act.work.date.latest:
            name = format_name(corpus.names[older].name)
            what = f"rests on {name}, published only later ({first.work.byline})"
            key = "basionym" if act.basionym else "replaces"
            remedy = "check the dates, or name the homonym that is meant"
            problems.append(Problem(act.record.place, what, remedy, Severity.WARNING, (key,)))
    return problems


def check_place_of_acts(corpus: Corpus) -> list[Problem]:
    """An act whose name is placed under one that is not above it: itself, or a name of the same or a lower rank."""
    problems = []
    for act in corpus.acts.values():
        if not act.record.under or act.above is None or not act.establishes:
            continue
        above = corpus.names[act.above]
        if act.above == act.name or rank_named(above.rank) >= rank_named(act.rank):
            what = (
                f"{format_name(act.printed, authors=False)} is placed under {format_name(above.name)}, a {above.rank}"
            )
            remedy = "name the genus or species it was published under"
            problems.append(Problem(act.record.place, what, remedy, within=("under",)))
    return problems


def check_decisions(corpus: Corpus) -> list[Problem]:
    """Decisions about names that decide nothing: between a name and itself, or between fewer than two; a type
    designation without a type."""
    needs_others = (ActKind.FIRST_CHOICE, ActKind.CONFUSABLE)
    problems = []
    for act in corpus.acts.values():
        kind = act.record.act
        if act.name in act.against:
            what = f"a {kind} of a name against itself"
            problems.append(Problem(act.record.place, what, "name the other name", within=("against",)))
        elif kind in needs_others and not act.record.against:
            problems.append(Problem(act.record.place, f"`{kind}` without `against:`", "name the other names"))
        elif kind is ActKind.TYPE_DESIGNATION and act.record.type is None:
            problems.append(Problem(act.record.place, "a type designation without `type:`", "say which type it chose"))
    return problems


def check_combination_without_basionym(corpus: Corpus) -> list[Problem]:
    """A new combination, change of rank or replacement name whose record names nothing that it rests on."""
    needs = {"new combination": "basionym", "change of rank": "basionym", "replacement name": "replaces"}
    problems = []
    for act in corpus.acts.values():
        key = needs.get(act.record.act)
        if key and not getattr(act.record, key):
            what = f"a {act.record.act} without `{key}:`"
            problems.append(Problem(act.record.place, what, "name what it rests on", Severity.WARNING))
    return problems


def check_epithet_of_combination(corpus: Corpus) -> list[Problem]:
    """A combination or name at new rank whose epithet is not that of its basionym, gender apart (ICN Art. 6.10, 23.5).

    Names of genera and above may change their ending with the rank and are passed over.
    """
    problems = []
    for act in corpus.acts.values():
        if act.basionym is None or not act.establishes:
            continue
        older, newer = corpus.names[act.basionym].name, act.printed
        if not older.species or not newer.species or same_epithet(older.final_epithet, newer.final_epithet):
            continue
        what = f"the epithet `{newer.final_epithet}` is not that of the basionym {format_name(older)}"
        remedy = "correct the basionym, or record a replacement name"
        problems.append(Problem(act.record.place, what, remedy, Severity.WARNING, ("basionym",)))
    return problems


def check_kept_twice(corpus: Corpus) -> list[Problem]:
    """A name that one work accepts and also sinks."""
    problems = []
    for treatments in corpus.by_work.values():
        sunk = {name: one for one in treatments for name in one.synonyms}
        for one in treatments:
            if one.status == "accepted" and one.name in sunk:
                into = format_name(corpus.names[sunk[one.name].name].name)
                what = f"accepted here, but a synonym of {into} in the same work"
                problems.append(Problem(one.record.place, what, "keep one of the two", within=("taxon",)))
    return problems


CHECKS: tuple[Callable[[Corpus], list[Problem]], ...] = (
    check_basionym_cycles,
    check_parent_cycles,
    check_basionym_dates,
    check_place_of_acts,
    check_decisions,
    check_combination_without_basionym,
    check_epithet_of_combination,
    check_kept_twice,
    check_treated_twice,
    check_contradictions,
    check_criteria,
)


def _cycles(next_of: Mapping[str, str | None]) -> list[tuple[str, ...]]:
    """Every circle in a graph of one arrow a node, each once, from its smallest member on."""
    state: dict[str, int] = {}  # the walk in which a node was first met
    found = []
    for number, start in enumerate(sorted(next_of)):
        walk: list[str] = []
        here: str | None = start
        while here is not None and here in next_of and here not in state:
            state[here] = number
            walk.append(here)
            here = next_of[here]
        if here is not None and state.get(here) == number and here in walk:
            circle = walk[walk.index(here) :]
            first = circle.index(min(circle))
            found.append((*circle[first:], *circle[:first]))
    return found


def _chain(corpus: Corpus, cycle: Iterable[str]) -> str:
    names = [format_name(corpus.names[id_].name, authors=False) for id_ in cycle]
    return " → ".join([*names, names[0]])
