"""The names that may be the correct one, in order of priority, and why the others of a taxon are out (ICN Art. 11)."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from auctorum.names.ranks import GENUS, UNRANKED, rank_named
from auctorum.nomenclature.inquiry import joined
from auctorum.nomenclature.judgement import Legitimacy, Validity
from auctorum.nomenclature.lines import Line, lines_of
from auctorum.nomenclature.question import Search


def set_aside(search: Search, names: Iterable[str]) -> None:
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
        elif search.is_rejected(name):
            search.say(f"{search.called(name)} is rejected", "56.1", name)
    if elsewhere:
        told = joined(map(search.called, elsewhere))
        search.say(f"Of other ranks, and so without priority here: {told}", "11.2")


def candidates(search: Search, names: Sequence[str], types: Sequence[str]) -> list[Line]:
    """The competing lines, with those of autonyms on the included types."""
    code = search.code
    extra = []
    for above in (name for type_ in types for name in code.corpus.groups.get(type_, ())):
        autonym = code.autonyms.get((above, search.position.rank))
        if autonym is not None and search.in_time(act := code.corpus.acts[autonym.act]):
            extra.append(Line(autonym.name.final_epithet, search.type_of(above), above, act, autonym.name))
    kept = [name for name in names if not search.is_rejected(name) and _is_legitimate_then(search, name)]
    return lines_of(code.inquiry, kept, search.position.rank, search.type_of, extra)


def _is_legitimate_then(search: Search, name: str) -> bool:
    """False for a name that only a conservation later than the time asked about made legitimate."""
    judged = search.code.of_name(name)
    if judged is None or not judged.conserved or search.is_conserved(name):
        return True
    return not any(one.key in ("later-homonym", "superfluous", "given") for one in judged.rulings)


def without_those_conserved_against(search: Search, lines: list[Line]) -> list[Line]:
    """The lines without those that a conserved name among them goes before (ICN Art. 14.4): of genera and families
    all on its type, and of any rank those it is listed against with what rests on them."""
    conserved = [line for line in lines if search.is_conserved(line.name)]
    kept = []
    for line in lines:
        before = next((one for one in conserved if one is not line and _goes_before(search, one, line)), None)
        if before is None:
            kept.append(line)
        else:
            told = f"{search.called(line.name)} gives way to the conserved {search.called(before.name)}"
            search.say(told, "14.4", line.name)
    return kept


def _goes_before(search: Search, conserved: Line, other: Line) -> bool:
    if rank_named(search.position.rank) <= GENUS and conserved.type == other.type:
        return True
    judged = search.code.of_name(other.name)
    rests_on = {other.name, judged.basionym if judged else None}
    given_way = search.code.inquiry.decisions.gives_way_to
    return any(conserved.name in given_way.get(name, ()) for name in rests_on if name)
