"""Publication, acceptance, place and rank (ICN Art. 13, 29-37)."""

from __future__ import annotations

from datetime import date

from auctorum.corpus.model import Act
from auctorum.names.ranks import SPECIES, UNRANKED, rank_by_ending, rank_named
from auctorum.nomenclature.inquiry import Inquiry, described, since
from auctorum.nomenclature.judgement import Ruling, Validity, across, barred, remarked
from auctorum.records.schema import OfferedAs

START = date(1753, 5, 1)  # vascular plants, Linnaeus, Species Plantarum (Art. 13.1(a), from memory)
RANK_NEEDED_FROM = date(1953, 1, 1)
ALTERNATIVES_BARRED_FROM = date(1953, 1, 1)


def effectively_published(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 29-31: only distributed printed matter, or an online work with ISSN or ISBN, publishes."""
    if act.work.record.effectively_published:
        return None
    note = act.work.record.effective_note or "the work is recorded as not effectively published"
    return barred("not-effectively-published", "not effectively published", "29.1", note.rstrip("."))


def after_the_start(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 13.1: names of vascular plants begin with the Species Plantarum, taken as of 1 May 1753."""
    if act.work.date.last_day >= START:
        return None
    return barred("before-starting-point", "before the starting point", "13.1", "names begin with 1 May 1753")


def accepted_by_author(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 36.1, 36.3: a name must be accepted where it is published, not merely proposed or cited as a synonym."""
    offered = act.record.offered_as
    if offered is OfferedAs.PROVISIONAL:
        return barred("provisional", "provisional name", "36.1", f"{act.work.byline} proposed it for the future only")
    if offered is OfferedAs.SYNONYM:
        return barred("cited-as-synonym", "cited only as a synonym", "36.1", f"{act.work.byline} cited it as a synonym")
    if offered is OfferedAs.ALTERNATIVE:
        reason = "two names at once for one taxon, from 1953 on"
        told = barred("alternative-names", "alternative names", "36.3", reason)
        return across(told, act, ALTERNATIVES_BARRED_FROM)
    if not act.record.accepted:
        reason = f"{act.work.byline} did not accept the name"
        return barred("not-accepted", "not accepted by its author", "36.1", reason)
    return None


def accepted_where_completed(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 33.1: where the last condition is met in a later work, that work must accept the name."""
    if described(act) is not False:
        return None
    for other in inquiry.corpus.acts_of(act.name):
        if other.id != act.id and other.establishes and not other.record.accepted and described(other):
            key = "not-accepted-where-last-condition-is-met"
            reason = f"{other.work.byline} gave what was wanting, but no longer accepted the name"
            return barred(key, "not accepted where the last condition is met", "33.1", reason)
    return None


def placed_in_a_valid_name(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 35.1: below the genus, the name of the genus or species must be validly published, too."""
    above = inquiry.above(act)
    if above is None:
        return None
    found = inquiry.validity_of(above)
    what = "species" if rank_named(inquiry.corpus.names[above].rank) >= SPECIES else "genus"
    if found is Validity.NOT_VALID:
        reason = f"{inquiry.called(above)} is not validly published"
        return barred(f"{what}-name-not-valid", f"name of the {what} not valid", "35.1", reason, above)
    first = inquiry.publishing(above)
    if first is not None and first.work.id != act.work.id and act.work.date.certainly_before(first.work.date):
        reason = f"{inquiry.called(above)} was published only later ({first.work.byline})"
        return barred(f"{what}-name-not-valid", f"name of the {what} not valid", "35.1", reason, above)
    return None


def epithet_linked(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 35.2: the epithet must be definitely linked with the name of the genus or species, or its abbreviation."""
    if act.record.epithet_linked is not False:
        return None
    reason = "the epithet is not linked with the name above it"
    return barred("epithet-not-associated", "epithet not linked with the genus", "35.2", reason)


def rank_of(inquiry: Inquiry, act: Act) -> str:
    """The rank that a name has under the rules: where none is stated, an ending above genus tells it (Art. 37.2)."""
    if act.rank == UNRANKED.name and not (act.printed.species or act.printed.divisions):
        told = rank_by_ending(act.printed.genus)
        if told is not None and since(act, inquiry.edition.endings_from):
            return told.name
    return act.rank


def rank_indicated(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 37.1-37.3: a rank is needed from 1953 on; an earlier name without one has no priority, but is a name."""
    rank = rank_of(inquiry, act)
    if rank != act.rank:
        return remarked(
            "rank-by-ending", f"rank told by its ending: {rank}", "37.2", "a standard ending shows the rank"
        )
    if rank != UNRANKED.name:
        return None
    told = barred("rank-not-indicated", "without rank", "37.1", "no rank was indicated, on or after 1 January 1953")
    if since(act, RANK_NEEDED_FROM):
        return across(told, act, RANK_NEEDED_FROM)
    reason = "no rank was indicated; it has no priority but in homonymy, and may be a basionym"
    return remarked("unranked", "without rank", "37.3", reason)
