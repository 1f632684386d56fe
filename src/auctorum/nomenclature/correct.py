"""The correct name of a taxon, for given types, rank and place, with the reasons that lead to it (ICN Art. 11).

The answer is never an invention: where no name is there to be used, it says which combination would be needed and
on what, or that a new name would be.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import date
from enum import StrEnum

from auctorum.corpus.model import Act
from auctorum.names.agreement import EpithetKind, declined
from auctorum.names.format import format_name
from auctorum.names.gender import gender_of
from auctorum.names.name import Name
from auctorum.names.ranks import GENUS, SPECIES, UNRANKED, rank_named
from auctorum.nomenclature.cited import date_in_short
from auctorum.nomenclature.code import Code, autonym_name
from auctorum.nomenclature.inquiry import joined, order_is_open
from auctorum.nomenclature.judgement import Legitimacy, Validity
from auctorum.nomenclature.lines import Block, Line, Position, blocked, competing, lines_of


class Outcome(StrEnum):
    """What the rules come to."""

    NAME = "name"
    AUTONYM = "autonym"
    COMBINATION_NEEDED = "new combination needed"
    NAME_NEEDED = "new name needed"
    UNDETERMINED = "undetermined"


@dataclass(frozen=True, slots=True)
class Step:
    """One reason of the chain: a sentence, the article as the edition numbers it, and the name it is about."""

    text: str
    article: str = ""
    name: str | None = None

    def __str__(self) -> str:
        return f"{self.text} ({self.article})." if self.article else f"{self.text}."


@dataclass(frozen=True, slots=True)
class Barred:
    """An epithet that can't be used in the place asked about, and why."""

    epithet: str
    key: str
    article: str
    reason: str
    by: str | None


@dataclass(frozen=True, slots=True)
class Taxon:
    """What is asked: names whose types are included, the rank, and the place.

    `genus` is needed for species and subdivisions of a genus, `species` (words of the species name, with the types
    that the species includes) below the species. `until` is the last day whose names count; None for all.
    """

    names: frozenset[str]
    rank: str
    genus: str = ""
    species: Name | None = None
    species_type: str | None = None  # group of the type of the species' name
    genus_type: str | None = None  # group of the type of the generic name, for subdivisions
    until: date | None = None


@dataclass(frozen=True)
class CorrectName:
    """The answer. `name` is the correct name as it has to be cited, or the words that would be needed; `id` its
    entry, if it has one; `based_on` the name that a new combination would rest on; `rivals` the names between which
    priority is open; `steps` end in the answer."""

    outcome: Outcome
    name: Name | None
    id: str | None
    steps: tuple[Step, ...]
    based_on: str | None = None
    rivals: tuple[str, ...] = ()
    barred: tuple[Barred, ...] = ()

    def __str__(self) -> str:
        """The answer in a line, as the last step has it."""
        return self.steps[-1].text


@dataclass
class _Search:
    """One run: the question, what was found so far, and the chain of reasons."""

    code: Code
    asked: Taxon
    position: Position
    steps: list[Step] = field(default_factory=list)
    barred: list[Barred] = field(default_factory=list)

    def say(self, text: str, article: str = "", name: str | None = None) -> None:
        self.steps.append(Step(text, self.code.edition.cite(article), name))

    def type_of(self, name: str) -> str:
        return self.code.corpus.names[name].group

    def called(self, name: str) -> str:
        return self.code.inquiry.called(name)


def correct_name(code: Code, asked: Taxon) -> CorrectName:
    """The correct name of a taxon, or what would have to be published, with the chain of reasons (ICN Art. 11)."""
    rank = rank_named(asked.rank)
    species = asked.species.species if asked.species is not None and rank > SPECIES else ""
    genus = asked.species.genus if species and asked.species is not None else asked.genus if rank > GENUS else ""
    search = _Search(code, asked, Position(rank.name, genus, species))
    types = sorted({search.type_of(name) for name in asked.names})
    names = _names_on(search, types)
    what = "are the types" if len(types) > 1 else "is the type"
    search.say(f"Taken in {what} of {joined(map(search.called, types))}", "11.1")
    autonym = _autonym_of_place(search, types)
    if autonym is not None:
        return autonym
    _set_aside(search, names)
    lines = _not_conserved_against(search, _lines(search, names, types))
    return _first_free(search, lines)


def _names_on(search: _Search, types: Sequence[str]) -> list[str]:
    """Names on the included types that count at the time asked about, in order of date."""
    found = [name for type_ in types for name in search.code.corpus.groups.get(type_, (type_,))]
    return [name for name in found if _in_time(search, search.code.inquiry.publishing(name))]


def _in_time(search: _Search, act: Act | None) -> bool:
    until = search.asked.until
    return until is None or act is None or act.work.date.earliest <= until


def _autonym_of_place(search: _Search, types: Sequence[str]) -> CorrectName | None:
    """The part that holds the type of the species (or genus) is named by the autonym, whatever the dates."""
    asked, position = search.asked, search.position
    if position.species and asked.species is not None and asked.species_type in types:
        what, article, above = "species", "26.1, 11.6", asked.species
    elif position.genus and rank_named(asked.rank) < SPECIES and asked.genus_type in types:
        what, article, above = "genus", "22.1", Name(position.genus)
        above = search.code.corpus.names[asked.genus_type].name if asked.genus_type else above
        above = above if above.genus == position.genus else Name(position.genus)
    else:
        return None
    name = autonym_name(above, position.rank)
    reason = f"The taxon holds the type of the {what}: its name is the autonym, without authors of its own"
    search.say(reason, article, asked.species_type or asked.genus_type)
    listed = _entry_of(search, name)
    search.say(f"The correct name is {format_name(name)}", "", listed)
    return CorrectName(Outcome.AUTONYM, name, listed, tuple(search.steps))


def _entry_of(search: _Search, name: Name) -> str | None:
    entries = search.code.corpus.names
    return next((id_ for id_, one in entries.items() if one.is_autonym and one.name.bare == name.bare), None)


def _set_aside(search: _Search, names: Iterable[str]) -> None:
    """Say why names of the included types do not compete: no names, no rank, another rank, illegitimate, rejected."""
    elsewhere = []
    for name in names:
        entry = search.code.corpus.names[name]
        judged = search.code.of_name(name)
        if judged is None:
            if not entry.is_autonym:
                search.say(f"{search.called(name)} is left out: no act here publishes it", "", name)
        elif judged.validity is Validity.NOT_VALID:
            first = judged.bars()[0]
            search.say(f"{search.called(name)} is no name: {first.label}", first.article, name)
        elif entry.rank == UNRANKED.name:
            search.say(f"{search.called(name)} has no rank and so no priority", "37.3, 11.2", name)
        elif entry.rank != search.position.rank:
            elsewhere.append(name)
        elif judged.legitimacy is Legitimacy.ILLEGITIMATE:
            first = judged.bars()[0]
            search.say(f"{search.called(name)} is illegitimate: {first.reason}", first.article, name)
        elif name in search.code.inquiry.decisions.rejected:
            search.say(f"{search.called(name)} is rejected", "56.1", name)
    if elsewhere:
        told = joined(map(search.called, elsewhere))
        search.say(f"Of other ranks, and so without priority here: {told}", "11.2")


def _lines(search: _Search, names: Sequence[str], types: Sequence[str]) -> list[Line]:
    """The competing lines, with those of autonyms on the included types."""
    code = search.code
    extra = []
    for (above, rank), autonym in code.autonyms.items():
        act = code.corpus.acts[autonym.act]
        if rank == search.position.rank and search.type_of(above) in types and _in_time(search, act):
            extra.append(Line(autonym.name.final_epithet, search.type_of(above), above, act, autonym.name))
    return lines_of(code.inquiry, names, search.position.rank, search.type_of, extra)


def _not_conserved_against(search: _Search, lines: list[Line]) -> list[Line]:
    """The lines without those that a conserved name among them goes before (ICN Art. 14.4): of genera and families
    all on its type, and of any rank those it is listed against with what rests on them."""
    decisions = search.code.inquiry.decisions
    conserved = [line for line in lines if line.name in decisions.conserved]
    kept = []
    for line in lines:
        before = next((one for one in conserved if one is not line and _goes_before(search, one, line)), None)
        if before is None:
            kept.append(line)
        else:
            told = f"{search.called(line.name)} gives way to the conserved {search.called(before.name)}"
            search.say(told, "14.4", line.name)
    return kept


def _goes_before(search: _Search, conserved: Line, other: Line) -> bool:
    if rank_named(search.position.rank) <= GENUS and conserved.type == other.type:
        return True
    judged = search.code.of_name(other.name)
    rests_on = {other.name, judged.basionym if judged else None}
    given_way = search.code.inquiry.decisions.gives_way_to
    return any(conserved.name in given_way.get(name, ()) for name in rests_on if name)


def _first_free(search: _Search, lines: Sequence[Line]) -> CorrectName:
    """The earliest line whose epithet may be used in the place; each that falls is said with its reason."""
    for number, line in enumerate(lines):
        _introduce(search, line, first=not search.barred)
        combined = _combination(search, line)
        block = _block(search, line, combined)
        if block is not None:
            epithet = _agreeing(search, line)
            search.say(f"The epithet {epithet} can't be used there: {block.reason}", block.article, block.by)
            search.barred.append(Barred(epithet, block.key, block.article, block.reason, block.by))
            continue
        rivals = [other for other in lines[number + 1 :] if _may_be_earlier(search, other, line)]
        rivals = [other for other in rivals if _block(search, other, _combination(search, other)) is None]
        if rivals:
            return _undetermined(search, line, rivals)
        return _answer(search, line, combined)
    return _nothing_left(search)


def _nothing_left(search: _Search) -> CorrectName:
    """No line is left: an epithet of another rank may be raised or lowered, though none has a claim (11.2, 58.1)."""
    barred = tuple(search.barred)
    for name in _of_other_ranks(search):
        entry, act = search.code.corpus.names[name], search.code.inquiry.publishing(name)
        if act is None:
            continue
        line = Line(entry.name.final_epithet, entry.group, name, act)
        if _block(search, line, None) is None:
            wanted = search.position.name(_agreeing(search, line))
            needed = f"a new combination {format_name(wanted)} would be needed, based on {search.called(name)}"
            told = f"No name is available at this rank: {needed}, or a new name; no epithet of another rank has a claim"
            search.say(told, "11.2, 41.5", name)
            return CorrectName(Outcome.COMBINATION_NEEDED, wanted, None, tuple(search.steps), name, barred=barred)
    search.say("No epithet and no name is left: a new name would be needed", "11.4, 58.1")
    return CorrectName(Outcome.NAME_NEEDED, None, None, tuple(search.steps), barred=barred)


def _of_other_ranks(search: _Search) -> list[str]:
    """Names that may compete at their own rank and could be a basionym here, the earliest first."""
    if not search.position.genus:
        return []
    entries, high = search.code.corpus.names, rank_named(search.position.rank) < SPECIES
    found = [
        name
        for name in _names_on(search, sorted({search.type_of(name) for name in search.asked.names}))
        if (rank_named(entries[name].rank) < SPECIES) is high and competing(search.code.inquiry, name) is not None
    ]
    return sorted(found, key=search.code.inquiry.position)


def _introduce(search: _Search, line: Line, *, first: bool) -> None:
    which = "The earliest" if first else "The next"
    year = date_in_short(line.act.work.date.text)
    if line.autonym is not None:
        told = f"{which} epithet at this rank is that of the autonym {format_name(line.autonym)}"
        search.say(f"{told}, established by {search.called(line.act.name)} ({year})", "11.6, 26.3", line.name)
    elif search.position.genus:
        told = f"{which} epithet at the rank of {search.position.rank} is {line.epithet}"
        search.say(f"{told}, from {search.called(line.name)} ({year})", "11.4", line.name)
    else:
        told = f"{which} name at the rank of {search.position.rank} is {search.called(line.name)} ({year})"
        search.say(told, "11.3", line.name)


def _combination(search: _Search, line: Line) -> str | None:
    """The published name with the epithet of a line in the place and on its type; None if there is none yet.

    A legitimate one goes before others.
    """
    if not search.position.genus:
        return line.name
    inquiry = search.code.inquiry
    found = []
    for name in inquiry.of_like_epithet(search.position.name(line.epithet)):
        entry, act = search.code.corpus.names[name], inquiry.publishing(name)
        if entry.rank != search.position.rank or entry.group != line.type or act is None or not _in_time(search, act):
            continue
        if inquiry.validity.get(act.id) is not Validity.NOT_VALID:
            found.append(name)
    legitimate = (name for name in found if inquiry.legitimacy_of(name) is not Legitimacy.ILLEGITIMATE)
    return next(legitimate, found[0] if found else None)


def _block(search: _Search, line: Line, combined: str | None) -> Block | None:
    """Why a line can't be used in the place; a homonym counts if it is earlier than the combination, or this is not
    yet made (ICN Art. 53)."""
    inquiry = search.code.inquiry
    if combined is not None and combined in inquiry.decisions.rejected:
        return Block("rejected", "56.1", f"{search.called(combined)} is rejected", combined)
    made = inquiry.publishing(combined) if combined is not None else None

    def in_the_way(other: Act) -> bool:
        if not _in_time(search, other):
            return False
        if made is None or other.work.id == made.work.id:
            return made is None
        return other.work.date.certainly_before(made.work.date)

    found = blocked(inquiry, line, search.position, in_the_way, search.type_of)
    judged = search.code.of_name(combined) if combined is not None else None
    if found is None and judged is not None and judged.legitimacy is Legitimacy.ILLEGITIMATE:
        first = judged.bars()[0]
        return Block("illegitimate", first.article, f"{search.called(judged.name)} is illegitimate: {first.reason}")
    return found


def _may_be_earlier(search: _Search, other: Line, line: Line) -> bool:
    """Whether priority between two lines is open: dates that overlap, or one date without a first choice (11.5)."""
    if other.autonym is not None or line.autonym is not None:
        return order_is_open(other.act, line.act)
    chosen = search.code.inquiry.decisions.chosen
    if (line.name, other.name) in chosen:
        return False
    return other.act.work.id == line.act.work.id or order_is_open(other.act, line.act)


def _undetermined(search: _Search, line: Line, rivals: Sequence[Line]) -> CorrectName:
    """Priority can't be told: by a recorded first choice, or both are shown."""
    chosen = search.code.inquiry.decisions.chosen
    for other in rivals:
        act = chosen.get((other.name, line.name))
        if act is not None:
            told = f"{act.work.byline} chose {search.called(other.name)} among names of one date"
            search.say(told, "11.5", other.name)
            return _answer(search, other, _combination(search, other))
    names = tuple(one.name for one in (line, *rivals))
    same_work = all(one.act.work.id == line.act.work.id for one in rivals)
    why = "they are of one date, and no choice between them is recorded" if same_work else "their dates overlap"
    told = f"Priority between {joined(map(search.called, names))} is undetermined: {why}"
    search.say(told, "11.5" if same_work else "11.4")
    return CorrectName(Outcome.UNDETERMINED, None, None, tuple(search.steps), None, names, tuple(search.barred))


def _answer(search: _Search, line: Line, combined: str | None) -> CorrectName:
    barred = tuple(search.barred)
    if combined is not None:
        _say_what_is_open(search, combined)
        name = search.code.corpus.names[combined].name
        search.say(f"The correct name is {format_name(name)}", "", combined)
        return CorrectName(Outcome.NAME, name, combined, tuple(search.steps), barred=barred)
    wanted = search.position.name(_agreeing(search, line))
    basionym = _basionym(search, line)
    needed = f"a new combination {format_name(wanted)} would be needed"
    told = f"No name is available at this rank: {needed}, based on {search.called(basionym)}"
    search.say(told, "11.4, 41.5", basionym)
    return CorrectName(Outcome.COMBINATION_NEEDED, wanted, None, tuple(search.steps), basionym, barred=barred)


def _basionym(search: _Search, line: Line) -> str:
    judged = search.code.of_name(line.name)
    return judged.basionym if judged is not None and judged.basionym is not None else line.name


def _say_what_is_open(search: _Search, name: str) -> None:
    judged = search.code.of_name(name)
    if judged is None or judged.validity is not Validity.UNDETERMINED:
        return
    for one in judged.open():
        told = f"Whether {search.called(name)} is validly published is open: {one.reason}; look up {one.look_up}"
        search.say(told, one.article, name)


def _agreeing(search: _Search, line: Line) -> str:
    """The epithet of a line in the gender of the genus asked about (ICN Art. 23.5), where both genders are known.

    One of unrecorded kind that agrees with its own genus is taken for an adjective.
    """
    if not search.position.genus or rank_named(search.position.rank) < SPECIES:
        return line.epithet
    given = line.act.record.epithet
    declension = given.declension if given is not None else ""
    gender, before = gender_of(search.position.genus), gender_of(search.code.corpus.names[line.name].name.genus)
    if gender is None or before is None or (given is not None and given.kind not in (None, EpithetKind.ADJECTIVE)):
        return line.epithet
    if declined(line.epithet, before.gender, declension) != line.epithet:
        return line.epithet  # it does not follow the gender of its own genus: a noun
    return declined(line.epithet, gender.gender, declension) or line.epithet
