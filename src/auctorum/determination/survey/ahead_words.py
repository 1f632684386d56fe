"""What a survey says of the next season in rows and sentences: how many plants more, and where to look."""

from __future__ import annotations

from collections.abc import Iterator

from auctorum.characters.directions import arc_words
from auctorum.circumscription.phrases import listed, share_words
from auctorum.determination.counting.planning import plants_wanted
from auctorum.determination.places.habitat import Envelope
from auctorum.determination.places.suitability_words import guess
from auctorum.determination.survey.model import Survey, Wanted
from auctorum.determination.survey.words import WITHOUT_SITE

WANTED_HEADINGS = ("site", "now", "plants more", "")
CANDIDATE_HEADINGS = ("site", "island", "fit", "lacks")
SEARCHING = (
    "To search is to ask first: permits, the landowner's leave, nesting seasons, tides and safe ground come before any "
    "list. A good fit is a guess from the habitat, not a plant.",
)


def wanted_title(one: Survey) -> str:
    """By which view, and for how narrow an interval."""
    title = one.bases[one.main].title if one.bases else ""
    return (
        f"By {title}: plants to measure until the share is known to ± {100 * one.half_width:g} points (95 %), if it "
        f"stays as it is. Where nothing is known yet, {plants_wanted(0.5, one.half_width)} always do."
    )


def wanted_rows(one: Survey) -> Iterator[tuple[str, str, str, str]]:
    """Overall, then by site."""
    for each in one.wanted:
        title = "all" if each.overall else each.site or WITHOUT_SITE
        now = f"{each.named} of {each.judged}" if each.judged else "none judged"
        yield (title, now, str(each.more) if each.more else "enough", none_words(each))


def none_words(one: Wanted) -> str:
    """`none of 14: fewer than about 3 in 14, 21 % (exactly 19 %)`; empty where some count."""
    if one.none is None:
        return ""
    three, exact = one.none
    if one.judged < 3:
        return f"none of {one.judged}, which says nothing yet (up to {share_words(exact)} may be)"
    return (
        f"none of {one.judged}: below about 3 in {one.judged}, or {share_words(three)} (exactly {share_words(exact)})"
    )


def envelope_words(one: Survey) -> Iterator[str]:
    """Where the taxon is at home, how far that is a guide, and what was left aside."""
    found = one.candidates
    around = found.around
    if not around.sites:
        yield "No site is known where the taxon makes up a quarter of the plants, so nothing ranks the candidates."
        return
    whose = "the names given" if found.by_names else one.bases[one.main].title
    few = f" It is {guess(around)}." if around.few else ""
    yield f"At home, by {whose}, at {listed(around.sites)}: {_habitat(around)}.{few}"
    if found.odd:
        told = listed(f"{site} ({named} of {judged})" for site, named, judged in found.odd)
        yield f"Too few among others to tell of its habitat: {told}."
    worth = found.worth
    if worth.tried:
        yield f"Of these {worth.tried} sites the habitat of the others would have found {worth.hits}."
    if worth.absent:
        inside = f"; of these {listed(worth.absent_inside)} would have seemed to fit" if worth.absent_inside else ""
        yield f"Searched without finding it: {listed(worth.absent)}{inside}."


def _habitat(around: Envelope) -> str:
    parts = []
    if around.substrates:
        parts.append("on " + listed(f"{one.name} ({one.sites})" for one in around.substrates))
    if around.elevation is not None:
        parts.append(f"from {around.elevation.lowest:.0f} to {around.elevation.highest:.0f} m")
    if around.aspect is not None:
        parts.append(f"facing {arc_words(around.aspect.start, around.aspect.end)}")
    return ", ".join(parts) or "nothing is stated of them"


def candidate_rows(one: Survey) -> Iterator[tuple[str, str, str, str]]:
    """The sites not searched yet, best first; the fit is our own scale of 0 to 1."""
    for each in one.candidates.ranked:
        fit = f"{each.worst:.1f}" if f"{each.worst:.1f}" == f"{each.best:.1f}" else f"{each.worst:.1f}–{each.best:.1f}"
        yield (each.site, each.island, fit, "; ".join(each.lacks) or "nothing")


def no_candidates() -> str:
    """What is said where the table of sites has no candidate."""
    return "No site in sites.csv has the role `candidate`."
