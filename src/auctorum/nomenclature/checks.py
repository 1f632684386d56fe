"""Checks that need the Code: citations against the literature, types left out, names too alike, open questions.

Each takes the judgements and returns its problems; add yours to `CHECKS`.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from itertools import combinations

from auctorum.corpus.model import NameEntry, Treatment
from auctorum.corpus.resolve import same_authors
from auctorum.names.confusable import likeness
from auctorum.names.fold import fold
from auctorum.names.format import format_authors, format_name, words
from auctorum.names.name import Authors, Name
from auctorum.names.parse import parse
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.editions import UnknownEdition, edition_named
from auctorum.nomenclature.judgement import Validity
from auctorum.nomenclature.variants import variant_of
from auctorum.problems import AuctorumError, Place, Problem, Severity
from auctorum.records.schema import Status


def check(code: Code) -> list[Problem]:
    """Problems of every check, in the order of `CHECKS`."""
    return [problem for one in CHECKS for problem in one(code)]


def check_edition(code: Code) -> list[Problem]:
    """An edition of the Code in kb.yaml that is not known."""
    settings = code.corpus.settings
    try:
        edition_named(settings.code_edition)
    except UnknownEdition as error:
        return [error.at(settings.place, "code-edition")]
    return []


def check_printed_citations(code: Code) -> list[Problem]:
    """A citation that the literature prints otherwise than the rules have it (ICN Art. 46, 49, 58, 60): in the act that
    publishes the name (`printed:`), and where a treatment gives a name with authors."""
    problems = []
    for act in code.corpus.acts.values():
        judged = code.acts.get(act.id)
        if judged is not None and act.record.printed and judged.stands and judged.isonym_of is None:
            problems += _compared(code, act.name, act.record.printed, act.record.place, ("printed",))
    for one in code.corpus.treatments.values():
        problems += _compared(code, one.name, one.record.taxon, one.record.place, ("taxon",))
        if len(one.synonyms) == len(one.record.synonyms):  # else one of them was not found, and is named already
            for number, (name, said) in enumerate(zip(one.synonyms, one.record.synonyms, strict=True)):
                problems += _compared(code, name, said, one.record.place, ("synonyms", number))
    return problems


def _compared(code: Code, name: str, said: str, place: Place, within: tuple[str | int, ...]) -> list[Problem]:
    told = _printed_otherwise(code, name, said)
    if not told:
        return []
    what = f"printed as `{said}`, by the rules {code.inquiry.called(name)}: {told}"
    remedy = "nothing to do if the work prints it so; else correct the record"
    return [Problem(place, what, remedy, Severity.WARNING, within)]


def _printed_otherwise(code: Code, id_: str, said: str) -> str:
    """In what a printed citation differs, with the article; empty if in nothing that the rules settle."""
    name, cite = code.corpus.names[id_].name, code.edition.cite
    try:
        printed = parse(said).name
    except AuctorumError as error:
        return str(error)
    ours, theirs = name.authors, printed.authors
    if not theirs or name.is_autonym or code.of_name(id_) is None:
        return ""
    if words(printed) != words(name):
        return f"another spelling ({cite('60.1')})"
    if not same_authors(Authors(own=theirs.own), Authors(own=ours.own)):
        return f"its authors are {format_authors(Authors(own=ours.own))} ({cite('46.1')})"
    if theirs.basionym and not ours.basionym:
        judged = code.of_name(id_)
        article = "58.1" if judged is not None and judged.replaced else "49.1"
        return f"there is no basionym whose authors could stand in parentheses ({cite(article)})"
    if ours.basionym and not theirs.basionym:
        return f"the authors of the basionym are missing ({cite('49.1')})"
    own = Authors(own=ours.basionym)
    if theirs.basionym and not same_authors(Authors(own=theirs.basionym), own):
        return f"the authors of the basionym itself are {format_authors(own)} ({cite('49.1')})"
    return ""


def check_types_left_out(code: Code) -> list[Problem]:
    """A name that a work uses for a taxon without its type, which it sinks into another (ICN Art. 7.3, 48.1)."""
    problems = []
    for treatments in code.corpus.by_work.values():
        sunk = _sunk(code, treatments)
        for one in treatments:
            group = code.corpus.names[one.name].group
            into = sunk.get(group)
            if one.status is not Status.ACCEPTED or into is None or _related(code, one, into):
                continue
            used, other = code.inquiry.called(one.name), code.inquiry.called(into.name)
            what = f"{used} is used in a sense that excludes its type, which the work takes into {other}"
            remedy = "record it as misapplied, or correct the synonyms"
            problems.append(Problem(one.record.place, what, remedy, Severity.WARNING, ("taxon",)))
    return problems


def _sunk(code: Code, treatments: Iterable[Treatment]) -> dict[str, Treatment]:
    """Group of a sunk type -> the taxon that a work sinks it into, where that stands on another type."""
    found: dict[str, Treatment] = {}
    for one in treatments:
        own = code.corpus.names[one.name].group
        for synonym in one.synonyms:
            group = code.corpus.names[synonym].group
            if group != own:
                found.setdefault(group, one)
    return found


def _related(code: Code, one: Treatment, other: Treatment) -> bool:
    """Whether one taxon is a part of the other, so that both may hold the type."""
    group = code.corpus.names[one.name].group
    return code.corpus.names[other.name].group in one.includes or (one.parent == other.name and group in other.includes)


def check_names_too_alike(code: Code) -> list[Problem]:
    """Names on different types in one genus or species that may be confused, where nobody has ruled (ICN Art. 53.2)."""
    together: dict[tuple[str, ...], list[str]] = {}
    for name, entry in code.corpus.names.items():
        judged = code.of_name(name)
        if judged is not None and judged.validity is not Validity.NOT_VALID:
            together.setdefault(_neighbourhood(entry.name), []).append(name)
    problems = []
    for names in together.values():
        for first, second in combinations(names[:20], 2):  # of more, every pair would say the same
            told = _too_alike(code, first, second)
            if told is not None:
                problems.append(told)
    return problems


def _too_alike(code: Code, first: str, second: str) -> Problem | None:
    one, other = code.corpus.names[first], code.corpus.names[second]
    ruled = second in code.inquiry.decisions.alike.get(first, ())
    same = fold(one.name.final_epithet) == fold(other.name.final_epithet)
    if ruled or same or code.inquiry.types[first] == code.inquiry.types[second]:
        return None
    how = likeness(one.name.final_epithet, other.name.final_epithet, rank=one.rank)
    later = code.inquiry.publishing(max(first, second, key=code.inquiry.position))
    if not how or later is None:
        return None
    what = f"{code.inquiry.called(first)} and {code.inquiry.called(second)} may be too alike ({how}; "
    what += f"{code.edition.cite('53.2')})"
    remedy = "if a ruling counts them as homonyms, record it as `act: ruled confusable`"
    return Problem(later.record.place, what, remedy, Severity.WARNING, ("name",))


_SOUNDS = (
    (re.compile("sch|ch|k|c(?![eiy])"), "k"), (re.compile("c|z"), "s"), (re.compile("ph"), "f"), (re.compile("h"), ""),
    (re.compile("[aeiouyj]"), ""), (re.compile("w"), "v"), (re.compile(r"(.)\1+"), r"\1"),
)  # fmt: skip


def _neighbourhood(name: Name) -> tuple[str, ...]:
    """What two names must share to be compared at all: place, and the consonants of the final epithet as sounds."""
    skeleton = re.sub(r"(?:us|um|is|os|on|es|[aei])$", "", fold(name.final_epithet))
    for pattern, sound in _SOUNDS:
        skeleton = pattern.sub(sound, skeleton)
    place = (name.genus, name.species) if name.lower else (name.genus,) if name.species or name.divisions else ()
    return (*place, skeleton)


def check_variants(code: Code) -> list[Problem]:
    """Names on one type that are but two spellings, compoundings or inflections of one (ICN Art. 61.2, 61.5)."""
    together: dict[tuple[str, ...], int] = {}
    places = {name: _place_and_type(entry) for name, entry in code.corpus.names.items() if entry.published_by}
    for place in places.values():
        together[place] = together.get(place, 0) + 1
    problems = []
    for name, place in places.items():
        of = variant_of(code, name) if together[place] > 1 else None
        act = code.corpus.publishing_act(name)
        if of is not None and act is not None:
            what = f"{code.inquiry.called(name)} is but another form of {code.inquiry.called(of)}, on the same type"
            remedy = "record it as `act: variant spelling` of that name"
            told = f"{what} ({code.edition.cite('61.2')})"
            problems.append(Problem(act.record.place, told, remedy, Severity.WARNING, ("name",)))
    return problems


def _place_and_type(entry: NameEntry) -> tuple[str, ...]:
    """What two forms of one name share: type, rank, and genus or species."""
    name = entry.name
    above = (name.genus, name.species) if name.lower else (name.genus,) if name.species or name.divisions else ()
    return (entry.group, entry.rank, *above)


def check_open_questions(code: Code) -> list[Problem]:
    """Acts of which the records do not say enough to tell whether they are valid, each with what to look up."""
    problems = []
    for judged in code.acts.values():
        if judged.validity is not Validity.UNDETERMINED:
            continue
        act = code.corpus.acts[judged.act]
        for one in judged.open():
            if one.key != "basionym-undetermined":  # asked where the older name stands
                what = f"{format_name(act.printed, authors=False)}: {one.reason} ({code.edition.cite(one.article)})"
                problems.append(Problem(act.record.place, what, f"look up {one.look_up}", Severity.OPEN))
    return problems


CHECKS: tuple[Callable[[Code], list[Problem]], ...] = (
    check_edition,
    check_printed_citations,
    check_types_left_out,
    check_names_too_alike,
    check_variants,
    check_open_questions,
)
