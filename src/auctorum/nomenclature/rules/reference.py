"""Reference to the older name: combinations, names at new rank, replacement names (ICN Art. 41)."""

from __future__ import annotations

from datetime import date

from auctorum.corpus.model import Act
from auctorum.names.fold import same_epithet
from auctorum.names.ranks import GENUS, SPECIES, rank_named
from auctorum.nomenclature.inquiry import Inquiry, described
from auctorum.nomenclature.judgement import Ruling, Validity, barred, left_open
from auctorum.records.schema import ActKind

FULL_REFERENCE_FROM = date(1953, 1, 1)
_RESTING = (ActKind.NEW_COMBINATION, ActKind.CHANGE_OF_RANK, ActKind.REPLACEMENT_NAME)


def rests_on_a_name(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 41.1: the basionym or replaced synonym must be a validly published name, and be referred to.

    Where the older name is no name, the act must meet the conditions for a new taxon; those rules ask for it.
    """
    if act.record.act not in _RESTING:
        return None
    claimed = act.basionym or act.replaces
    if claimed is None:
        return _without_claim(act)
    if inquiry.is_new_taxon(act):
        return None
    if inquiry.validity_of(claimed) is Validity.UNDETERMINED:
        reason = f"whether {inquiry.called(claimed)}, on which it rests, is validly published is open"
        return left_open("basionym-undetermined", "rests on an undetermined name", "41.1", reason, "see that name")
    return None


def _without_claim(act: Act) -> Ruling | None:
    """What to say of an act whose record names no older name; its citation or reference may still tell of one."""
    if act.record.basionym_reference in ("full", "partial") or "(" in act.record.authors:
        return None
    if act.record.basionym_reference == "none":
        return barred("basionym-not-cited", "no basionym cited", "41.1", "no older name is referred to")
    return left_open(
        "basionym-not-cited", "basionym not recorded", "41.1", "the record names no older name", "on what name it rests"
    )


def of_the_same_rank_group(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 41.2: the older name must be of the same group of ranks: family and its parts, genus and its parts,
    species and below."""
    claimed = act.basionym or act.replaces
    if act.record.act not in _RESTING or claimed is None:
        return None
    older = inquiry.corpus.names[claimed]
    if _rank_group(older.rank) == _rank_group(act.rank) or "unranked" in (older.rank, act.rank):
        return None
    reason = f"{inquiry.called(claimed)} is of another group of ranks"
    return barred("basionym-of-wrong-rank-group", "older name of another group of ranks", "41.2", reason, claimed)


def _rank_group(rank: str) -> int:
    """0 above genus, 1 genus and its subdivisions, 2 species and below."""
    level = rank_named(rank)
    return 0 if level < GENUS else 1 if level < SPECIES else 2


def reference_is_full_and_direct(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 41.3, 41.5: before 1953 an indirect reference is enough; from then on author, place and date are needed."""
    if act.record.act not in _RESTING or inquiry.is_new_taxon(act) or not (act.basionym or act.replaces):
        return None
    given, day = act.record.basionym_reference, act.work.date
    what = "replaced name" if act.record.act is ActKind.REPLACEMENT_NAME else "basionym"
    if day.last_day < FULL_REFERENCE_FROM:
        if given != "none" or _epithet_taken_up(inquiry, act):
            return None
        return barred("basionym-not-cited", f"no {what} cited", "41.1", f"the {what} is not referred to")
    key, label = "basionym-reference-incomplete", f"reference to the {what} incomplete"
    if day.first_day < FULL_REFERENCE_FROM:
        if given == "full":
            return None
        return left_open(key, f"perhaps {label}", "41.5", "the date may be 1953 or later", "the date of publication")
    if given in ("partial", "none"):
        return barred(key, label, "41.5", f"the reference to the {what} is {given}, after 1952")
    if given != "full":
        reason = f"how the {what} is referred to is not recorded, after 1952"
        return left_open(key, f"perhaps {label}", "41.5", reason, "whether author, place, page and date are given")
    return None


def _epithet_taken_up(inquiry: Inquiry, act: Act) -> bool:
    """Art. 41.4: an uncited older epithet, taken up before 1953 where the conditions for a new taxon are met."""
    if act.basionym is None or not described(act):
        return False
    return same_epithet(inquiry.corpus.names[act.basionym].name.final_epithet, act.printed.final_epithet)
