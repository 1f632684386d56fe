"""Legitimacy (ICN Art. 6, 14, 52-55): homonyms, superfluous names, and what rescues them."""

from __future__ import annotations

from collections.abc import Callable

from auctorum.corpus.credit import recorded_authors
from auctorum.corpus.model import Act
from auctorum.names.fold import same_epithet
from auctorum.names.format import format_credit
from auctorum.names.name import Name
from auctorum.nomenclature.inquiry import Inquiry, order_is_open, published_before
from auctorum.nomenclature.judgement import Legitimacy, Ruling, Validity, barred, left_open, remarked
from auctorum.nomenclature.lines import Line, Position, blocked, lines_of, position_of
from auctorum.records.schema import ActKind

_MOVED = (ActKind.NEW_COMBINATION, ActKind.CHANGE_OF_RANK)
_WITHIN_FAMILY = ("subfamily", "tribe", "subtribe")


def standing_given(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 6.4: a name recorded as illegitimate for a reason in works that are not recorded."""
    if act.record.standing != "illegitimate":
        return None
    return barred("given", "illegitimate", "6.4", act.record.note.rstrip(".") or "recorded as illegitimate")


def no_epithet_of_an_illegitimate_species(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 27.2: the epithet of an illegitimate species name may not be repeated below it (such a name is invalid)."""
    above = inquiry.above(act)
    if not act.printed.lower or not act.printed.is_autonym or above is None:
        return None
    if inquiry.legitimacy_of(above) is not Legitimacy.ILLEGITIMATE:
        return None
    reason = f"{inquiry.called(above)} is illegitimate, so there is no autonym"
    return barred("species-name-illegitimate", "repeats an illegitimate epithet", "27.2", reason, above)


def no_earlier_homonym(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 53.1, 53.3: spelled like an earlier valid name on another type: of the same rank from species up, of any
    rank in one species or among the subdivisions of one genus. That the earlier is illegitimate or a synonym is no
    help (53.1 Note 2); names of one date do not harm each other (Note 1)."""
    for other in inquiry.of_like_epithet(inquiry.corpus.names[act.name].name):
        if other == act.name or inquiry.types[other] == inquiry.types[act.name]:
            continue
        first = inquiry.publishing(other)
        if first is None or (first.work.id == act.work.id and (other, act.name) not in inquiry.decisions.chosen):
            continue
        if published_before(act, first):
            break  # they stand by date
        found = _homonymy(inquiry, act, other, "53.1" if not _below(act.printed) else "53.3", "homonym")
        if found is not None:
            return found
    return None


def _below(name: Name) -> bool:
    """Whether it is an epithet below the species, or between genus and species."""
    return bool(name.lower or (name.divisions and not name.species))


def _homonymy(inquiry: Inquiry, act: Act, other: str, article: str, label: str) -> Ruling | None:
    """The ruling on two like names: the later is illegitimate, or the dates leave it open; None if `other` is later."""
    first = inquiry.publishing(other)
    if first is None or inquiry.validity.get(first.id) is Validity.NOT_VALID:
        return None
    if not _below(act.printed) and inquiry.corpus.names[other].rank != act.rank:
        return None
    told = f"{inquiry.called(other)} ({first.work.year})"
    reason = f"{told} has the same words on another type" if label == "homonym" else f"{told} is confusably like it"
    if act.rank in _WITHIN_FAMILY and published_before(first, act):
        harmless = f"{reason}, which does no harm to a subdivision of a family"
        return remarked("subdivision-of-family", "spelled like an earlier name", article, harmless, other)
    open_order = order_is_open(first, act) or first.work.id == act.work.id
    if published_before(first, act) or (open_order and (other, act.name) in inquiry.decisions.chosen):
        return barred("later-homonym", f"later {label}, illegitimate", article, reason, other)
    if order_is_open(first, act) and (act.name, other) not in inquiry.decisions.chosen:
        reason = f"{reason}; which is earlier is open"
        return left_open("later-homonym", f"perhaps a later {label}", article, reason, "the dates of both")
    return None


def not_ruled_confusable(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 53.2: names on different types so alike as to be confused count as homonyms, where a record says so."""
    for other in sorted(inquiry.decisions.alike.get(act.name, ()), key=inquiry.position):
        if inquiry.types[other] != inquiry.types[act.name]:
            found = _homonymy(inquiry, act, other, "53.2", "homonym by likeness")
            if found is not None:
                return found
    return None


def not_superfluous(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 52.1: illegitimate is a name whose author included the type of one that ought to have been adopted, or
    whose epithet ought to have been. Not so where that epithet was barred there (Art. 11.4 Note 2)."""
    wanted = ought_to_have_been_used(inquiry, act)
    if wanted is None:
        return None
    told = f"{inquiry.called(wanted.name)} ({wanted.act.work.year})"
    reason = f"it took in the type of {told}, which ought to have been adopted"
    if act.rank != inquiry.corpus.names[wanted.name].rank or not act.printed.species:
        return barred("superfluous", "superfluous, illegitimate", "52.1", reason, wanted.name)
    if inquiry.corpus.names[wanted.name].name.genus != act.printed.genus:
        reason = f"it took in the type of {told}, whose epithet ought to have been adopted"
    return barred("superfluous", "superfluous, illegitimate", "52.1", reason, wanted.name)


def ought_to_have_been_used(inquiry: Inquiry, act: Act) -> Line | None:
    """The earliest line at the rank of the act among the types it included, if its epithet was free there and is
    another than that of the act; None if there is none."""

    def types(name: str) -> str:
        return inquiry.types[name]

    names = [name for name in inquiry.competing_on(sorted(inquiry.included(act)), act.rank) if name != act.name]
    position = position_of(act.printed, act.rank)
    free = [
        line
        for line in lines_of(inquiry, names, act.rank, types)
        if published_before(line.act, act)
        and not blocked(inquiry, line, position, _taken_by(inquiry, act, line, position), types)
    ]
    if not free or any(_adopts(inquiry, act, line) and not published_before(free[0].act, line.act) for line in free):
        return None  # of names of one date either may be adopted (Art. 11.5)
    return free[0]


def _adopts(inquiry: Inquiry, act: Act, line: Line) -> bool:
    """Whether the act takes up the name, or below genus the epithet, of a line."""
    own = inquiry.corpus.names[act.name].name
    if inquiry.corpus.names[line.name].name.bare == own.bare:
        return True
    below_genus = bool(own.species or own.divisions)
    return below_genus and same_epithet(line.epithet, own.final_epithet) and line.type == inquiry.types[act.name]


def _taken_by(inquiry: Inquiry, act: Act, line: Line, position: Position) -> Callable[[Act], bool]:
    """Whether a name is in the way of the epithet that the act ought to have used: published before the name with that
    epithet there, or where there was none yet, before or together with the act (Art. 11.4 Note 2)."""
    there = [
        made
        for name in inquiry.of_like_epithet(position.name(line.epithet))
        if inquiry.types[name] == line.type
        and (made := inquiry.publishing(name)) is not None
        and inquiry.validity.get(made.id) is not Validity.NOT_VALID
        and published_before(made, act)
    ]

    def taken(other: Act) -> bool:
        if there:
            return published_before(other, there[0])
        return other.id != act.id and (other.work.id == act.work.id or published_before(other, act))

    return taken


def rescued_by_its_basionym(inquiry: Inquiry, act: Act, basionym: str | None) -> Ruling | None:
    """Art. 52.4: a superfluous combination or name at new rank is legitimate all the same if its basionym is."""
    if act.record.act is ActKind.REPLACEMENT_NAME:
        return None
    if basionym is None:
        unrecorded = recorded_authors(act).basionym if act.record.act in _MOVED else None
        if not unrecorded or act.basionym is not None:
            return None
        reason = (
            f"superfluous when published, but it rests on a basionym of {format_credit(unrecorded)}, not recorded here"
        )
        return remarked("superfluous-yet-legitimate", "superfluous, yet legitimate", "52.4", reason)
    reason = f"superfluous when published, but {inquiry.called(basionym)}, on which it rests, is legitimate"
    return remarked("superfluous-yet-legitimate", "superfluous, yet legitimate", "52.4", reason, basionym)


def conserved(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 14.1: a conserved name is legitimate, whatever rules speak against it."""
    by = inquiry.decisions.conserved.get(act.name)
    if by is None:
        return None
    return remarked("conserved", "conserved", "14.1", f"conserved by {by.work.byline}")


def rejected(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 14.6, 56.1: a rejected name is not to be used; it stays legitimate."""
    by = inquiry.decisions.rejected.get(act.name)
    if by is None:
        return None
    return remarked("rejected", "rejected", "56.1", f"rejected by {by.work.byline}; not to be used")


def reclassified(inquiry: Inquiry, act: Act, kind: ActKind, replaced: str | None) -> Ruling | None:
    """Art. 6.10, 35.1, 48.1, 58.1: what an act is under the rules, where its author presented it as something else."""
    claimed = act.basionym or act.same_taxon
    if kind is act.record.act or claimed is None:
        return None
    older = inquiry.called(claimed)
    if act.same_taxon is not None and not inquiry.takes_up_uncited(act):
        reason = f"the epithet of {older} was taken up without citing it, in 1953 or later: the name of a new taxon"
        return remarked("epithet-taken-up", "rests on no older name", "41.4", reason, claimed)
    if inquiry.shuts_out(act, claimed):
        reason = f"its author shut out the type of {older}: a name of its own, on another type"
        return remarked("excludes-its-type", "rests on no older name", "48.1", reason, claimed)
    if kind is ActKind.NEW_TAXON:
        reason = f"{older} was not validly published then and can't be its basionym: the name of a new taxon"
        return remarked("basionym-not-valid", "rests on no older name", "6.10, 35.1", reason, claimed)
    if replaced is not None:
        reason = f"{older} is illegitimate and can't be its basionym: a name of its own authors, without parentheses"
        return remarked("basionym-illegitimate", "rests on an illegitimate name", "6.10, 58.1", reason, claimed)
    reason = f"the epithet of {older} was taken up for the same taxon without citing it, before 1953"
    return remarked("epithet-taken-up", "new combination all the same", "41.4", reason, claimed)
