"""The correct name of a taxon, for given types, rank and place, with the reasons that lead to it (ICN Art. 11).

The answer is never an invention: where no name is there to be used, it says which combination would be needed and
on what, or that a new name would be.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from auctorum.corpus.model import Act, Work
from auctorum.names.fold import fold
from auctorum.names.format import format_name, slug
from auctorum.names.name import Name
from auctorum.names.ranks import GENUS, SPECIES, UNRANKED, rank_named
from auctorum.nomenclature.autonyms import autonym_name
from auctorum.nomenclature.candidates import candidates, set_aside, without_those_conserved_against
from auctorum.nomenclature.cited import date_in_short
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.inquiry import joined, order_is_open
from auctorum.nomenclature.judgement import Legitimacy, Validity
from auctorum.nomenclature.lines import Block, Line, Position, agreeing_epithet, blocked, competing
from auctorum.nomenclature.question import Barred, CorrectName, Outcome, Search, Step, Taxon

__all__ = ["Barred", "CorrectName", "Outcome", "Step", "Taxon", "correct_name"]


def correct_name(code: Code, asked: Taxon) -> CorrectName:
    """The correct name of a taxon, or what would have to be published, with the chain of reasons (ICN Art. 11)."""
    rank = rank_named(asked.rank)
    species = asked.species.species if asked.species is not None and rank > SPECIES else ""
    genus = asked.species.genus if species and asked.species is not None else asked.genus if rank > GENUS else ""
    search = Search(code, asked, Position(rank.name, genus, species))
    types = sorted({search.type_of(name) for name in (*asked.names, *_of_the_same_parents(search, asked.names))})
    names = search.names_on(types)
    what = "are the types" if len(types) > 1 else "is the type"
    search.say(f"Taken in {what} of {joined(map(search.called, types))}", "11.1")
    autonym = _autonym_of_place(search, types)
    if autonym is not None:
        return autonym
    if rank is UNRANKED:
        search.say("A taxon without rank has no correct name: priority counts at a rank only", "11.2, 37.3")
        return CorrectName(Outcome.UNDETERMINED, None, None, tuple(search.steps))
    set_aside(search, names)
    lines = without_those_conserved_against(search, candidates(search, names, types))
    return _first_free(search, lines)


def _of_the_same_parents(search: Search, names: Iterable[str]) -> list[str]:
    """All names given to hybrids of the same parents: they compete whatever their types (ICN Art. H.4)."""
    parents = {search.parents(name) for name in names} - {None}
    if not parents:
        return []
    found = [name for name in search.code.corpus.names if search.parents(name) in parents]
    if len(found) > len(set(names)):
        search.say("Names for hybrids of the same parents compete, whatever their types", "H.4.1")
    return found


def _autonym_of_place(search: Search, types: Sequence[str]) -> CorrectName | None:
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


def _entry_of(search: Search, name: Name) -> str | None:
    """The entry of an autonym, if somebody uses it."""
    id_ = slug(name)
    return id_ if id_ in search.code.corpus.names else None


def _first_free(search: Search, lines: Sequence[Line]) -> CorrectName:
    """The earliest line whose epithet may be used in the place; each that falls is said with its reason."""
    for number, line in enumerate(lines):
        _introduce(search, line, first=not search.barred)
        combined = _combination(search, line)
        block = _block(search, line, combined)
        if block is not None:
            epithet = agreeing_epithet(search.code.inquiry, line, search.position)
            search.say(f"The epithet {epithet} can't be used there: {block.reason}", block.article, block.by)
            search.barred.append(Barred(epithet, block.key, block.article, block.reason, block.by))
            continue
        free = [one for one in lines[number + 1 :] if _block(search, one, _combination(search, one)) is None]
        return _choose(search, [line, *free])
    return _nothing_left(search)


def _nothing_left(search: Search) -> CorrectName:
    """No line is left: an epithet of another rank may be raised or lowered, though none has a claim (11.2, 58.1)."""
    barred = tuple(search.barred)
    for name in _of_other_ranks(search):
        entry, act = search.code.corpus.names[name], search.code.inquiry.publishing(name)
        if act is None:
            continue
        line = Line(entry.name.final_epithet, entry.group, name, act)
        if _combination(search, line) is None and _block(search, line, None) is None:
            wanted = search.position.name(agreeing_epithet(search.code.inquiry, line, search.position))
            needed = f"a new combination {format_name(wanted)} would be needed, based on {search.called(name)}"
            told = f"No name is available at this rank: {needed}, or a new name; no epithet of another rank has a claim"
            search.say(told, "11.2, 41.5", name)
            return CorrectName(Outcome.COMBINATION_NEEDED, wanted, None, tuple(search.steps), name, barred=barred)
    search.say("No epithet and no name is left: a new name would be needed", "11.4, 58.1")
    return CorrectName(Outcome.NAME_NEEDED, None, None, tuple(search.steps), barred=barred)


def _of_other_ranks(search: Search) -> list[str]:
    """Names that may compete at their own rank and could be a basionym here, the earliest first."""
    if not search.position.genus:
        return []
    entries, high = search.code.corpus.names, rank_named(search.position.rank) < SPECIES
    found = [
        name
        for name in search.names_on(sorted({search.type_of(name) for name in search.asked.names}))
        if entries[name].rank != search.position.rank
        and (rank_named(entries[name].rank) < SPECIES) is high
        and not search.is_rejected(name)
        and competing(search.code.inquiry, name) is not None
    ]
    return sorted(found, key=search.code.inquiry.position)


def _introduce(search: Search, line: Line, *, first: bool) -> None:
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


def _combination(search: Search, line: Line) -> str | None:
    """The published name with the epithet of a line in the place and on its type; None if there is none yet.

    A legitimate one goes before others.
    """
    if not search.position.genus:
        return line.name
    inquiry = search.code.inquiry
    found = []
    for name in inquiry.of_like_epithet(search.position.name(line.epithet)):
        entry, act = search.code.corpus.names[name], inquiry.publishing(name)
        if entry.rank != search.position.rank or entry.group != line.type or act is None or not search.in_time(act):
            continue
        if inquiry.validity.get(act.id) is not Validity.NOT_VALID:
            found.append(name)
    legitimate = (name for name in found if inquiry.legitimacy_of(name) is not Legitimacy.ILLEGITIMATE)
    return next(legitimate, found[0] if found else None)


def _block(search: Search, line: Line, combined: str | None) -> Block | None:
    """Why a line can't be used in the place; a homonym counts if it is earlier than the combination, or this is not
    yet made (ICN Art. 53)."""
    inquiry = search.code.inquiry
    if combined is not None and search.is_rejected(combined):
        return Block("rejected", "56.1", f"{search.called(combined)} is rejected", combined)
    barred = inquiry.decisions.barred_homonyms.get(combined) if combined is not None else None
    if combined is not None and barred is not None and search.in_time(barred):
        told = f"{search.called(combined)} is an earlier homonym of a conserved name"
        return Block("rejected", "14.10", told, combined)
    if combined is not None and (before := _conserved_before(search, combined)) is not None:
        return Block("rejected", "14.4", f"{search.called(combined)} is rejected in favour of {search.called(before)}")
    made = inquiry.publishing(combined) if combined is not None else None

    def in_the_way(other: Act) -> bool:
        if not search.in_time(other) or (combined is not None and search.is_conserved(combined)):
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


def _conserved_before(search: Search, name: str) -> str | None:
    """A name on an included type that is conserved against a combination (ICN Art. 14.4); None if there is none."""
    types = {search.type_of(one) for one in search.asked.names}
    given_way = search.code.inquiry.decisions.gives_way_to.get(name, ())
    counts = (one for one in given_way if one != name and search.is_conserved(one))
    return next((one for one in counts if search.type_of(one) in types), None)


def _is_older(search: Search, line: Line, other: Line) -> bool:
    """Whether a line certainly goes before another: by date, or, where that is open, as an autonym (11.6) or by a
    recorded first choice between names of one date (11.5)."""
    if line.act.record.fossil is not other.act.record.fossil:
        return other.act.record.fossil  # of living types before fossils (11.7)
    if line.act.work.id != other.act.work.id and not order_is_open(line.act, other.act):
        return line.act.work.date.certainly_before(other.act.work.date)
    if line.act.work.id == other.act.work.id and (line.autonym is None) is not (other.autonym is None):
        return line.autonym is not None
    return _choice(search, line, other) is not None


def _choice(search: Search, line: Line, other: Line) -> Work | None:
    """The work that first chose a line before another, between those names or others that carry their epithets."""
    return search.choices().get(((line.type, fold(line.epithet)), (other.type, fold(other.epithet))))


def _choose(search: Search, lines: Sequence[Line]) -> CorrectName:
    """The answer from lines whose epithets are free: the one that none of the others goes before, if there is one."""
    first = [line for line in lines if not any(_is_older(search, other, line) for other in lines if other is not line)]
    if len(first) != 1:
        return _undetermined(search, first or lines)
    passed = []
    for other in (one for one in lines if one is not first[0]):
        work = _choice(search, first[0], other)
        if work is not None:
            told = f"{work.byline} chose {search.called(first[0].name)} before {search.called(other.name)}"
            search.say(f"{told}, of one date", "11.5", first[0].name)
        elif other.autonym is None:
            passed.append(f"{search.called(other.name)} ({date_in_short(other.act.work.date.text)})")
    if passed:
        article = "11.4" if search.position.genus else "11.3"
        search.say(f"Not earlier at this rank, and so without claim: {joined(passed)}", article)
    return _answer(search, first[0], _combination(search, first[0]))


def _undetermined(search: Search, lines: Sequence[Line]) -> CorrectName:
    """Priority can't be told: all that may be the earliest are shown."""
    names = tuple(one.name for one in lines)
    same_work = len({one.act.work.id for one in lines}) == 1
    why = "they are of one date, and no choice between them is recorded" if same_work else "their dates overlap"
    told = f"Priority between {joined(map(search.called, names))} is undetermined: {why}"
    search.say(told, "11.5" if same_work else "11.4")
    return CorrectName(Outcome.UNDETERMINED, None, None, tuple(search.steps), None, names, tuple(search.barred))


def _answer(search: Search, line: Line, combined: str | None) -> CorrectName:
    barred = tuple(search.barred)
    if combined is not None:
        _say_what_is_open(search, combined)
        name = search.code.corpus.names[combined].name
        search.say(f"The correct name is {format_name(name)}", "", combined)
        return CorrectName(Outcome.NAME, name, combined, tuple(search.steps), barred=barred)
    wanted = search.position.name(agreeing_epithet(search.code.inquiry, line, search.position))
    basionym = _basionym(search, line)
    needed = f"a new combination {format_name(wanted)} would be needed"
    told = f"No name is available at this rank: {needed}, based on {search.called(basionym)}"
    search.say(told, "11.4, 41.5", basionym)
    return CorrectName(Outcome.COMBINATION_NEEDED, wanted, None, tuple(search.steps), basionym, barred=barred)


def _basionym(search: Search, line: Line) -> str:
    judged = search.code.of_name(line.name)
    return judged.basionym if judged is not None and judged.basionym is not None else line.name


def _say_what_is_open(search: Search, name: str) -> None:
    judged = search.code.of_name(name)
    if judged is None or judged.validity is not Validity.UNDETERMINED:
        return
    for one in judged.open():
        told = f"Whether {search.called(name)} is validly published is open: {one.reason}; look up {one.look_up}"
        search.say(told, one.article, name)
