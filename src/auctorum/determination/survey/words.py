"""A survey in rows and sentences that can be read aloud: the counts, by whom, and at each site."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from auctorum.circumscription import phrases
from auctorum.circumscription.phrases import capital, counted, listed_some
from auctorum.determination.survey.model import NO_SITE, Basis, Count, Ground, Place, Stance, Survey

HEADINGS = ("counted by", "plants", "share", "95 %", "undecided", "not judged")
BORDERLINE_HEADINGS = ("site", "criterion", "borderline", "given the error of measuring")
NONE = "–"
WITHOUT_SITE = "no site"
_SHORT = {Ground.NAMES: "names"}
_MOST_NAMES = 4
_MANY = 1000  # plants from which an expected number is given without one


def lead(one: Survey) -> str:
    """How many plants count, where, and which are left out."""
    at = [place for place in one.sites if place.site != NO_SITE]
    homeless = sum(place.plants for place in one.sites if place.site == NO_SITE)
    said = f"{counted(one.plants, 'wild plant')} at {counted(len(at), 'site')}".replace("no wild", "No wild", 1)
    parts = [said]
    if homeless:
        parts.append(f"{homeless} of them without a site")
    if one.cultivated:
        parts.append(f"{counted(one.cultivated, 'plant')} in cultivation left out")
    return f"{'; '.join(parts)}."


def share_words(count: Count) -> str:
    """`42 %`; a dash where nothing was judged, and `under 1 %` for little.

    Where most are undecided, `13–100 %`: from none of these to all of them.
    """
    if count.share is None:
        return NONE
    if mostly_undecided(count):
        return phrases.interval_words((count.share, (count.named + count.undecided) / count.judged))
    return phrases.share_words(count.share)


def interval_words(count: Count) -> str:
    """`35–49 %`; a dash where nothing was judged, or most are undecided."""
    return phrases.interval_words(count.interval) if count.judged and not mostly_undecided(count) else NONE


def mostly_undecided(count: Count) -> bool:
    """Whether more plants are undecided than decided, so that their number says little of a share."""
    return 2 * count.undecided > count.judged


def of_words(count: Count) -> str:
    """`79 of 189`; a dash where nothing was judged."""
    return f"{count.named} of {count.judged}" if count.judged else NONE


def expected_words(count: Count) -> str:
    """`90.4 expected, 87–94`: the plants that truly fit, given the error of measuring; a dash where that is unknown."""
    if count.expected is None or not count.judged:
        return NONE
    mean, low, high = count.expected
    said = f"{mean:.{1 if mean < _MANY else 0}f}"
    return f"{said} expected, {low}–{high}" if low < high else f"{said} expected"


def count_rows(one: Survey, place: Place) -> Iterator[tuple[str, ...]]:
    """A row for each view, authors with the same count in one; under HEADINGS."""
    for bases, count in grouped(one.bases, place.counts):
        title = "; ".join(basis.title for basis in bases)
        if bases[0].stance in (Stance.BARE, Stance.SINKS):
            yield (title, "none" if bases[0].stance is Stance.SINKS else NONE, NONE, NONE, NONE, NONE)
        else:
            yield (
                title, of_words(count), share_words(count), interval_words(count), str(count.undecided or NONE),
                str(count.not_judged or NONE),
            )  # fmt: skip


def remarks(one: Survey) -> Iterator[str]:
    """What a reader of the counts should know: `Dunsary 1979 sinks it in C. album.`"""
    by_remark: dict[tuple[Ground, str], list[str]] = {}
    for basis in one.bases:
        if basis.remark:
            by_remark.setdefault((basis.ground, basis.remark), []).append(basis.title)
    for (ground, remark), titles in by_remark.items():
        joint = "" if ground is Ground.AUTHOR and len(titles) == 1 else ":"
        yield f"{capital('; '.join(titles))}{joint} {remark}."


def grouped(bases: Sequence[Basis], counts: Sequence[Count]) -> list[tuple[list[Basis], Count]]:
    """Authors that give the same count for the same reason together, where the first of them stands."""
    found: list[tuple[list[Basis], Count]] = []
    for basis, count in zip(bases, counts, strict=True):
        same = next((several for several, other in found if other == count and _alike(several[0], basis)), None)
        if same is not None:
            same.append(basis)
        else:
            found.append(([basis], count))
    return found


def _alike(one: Basis, other: Basis) -> bool:
    return one.ground is other.ground is Ground.AUTHOR and (one.stance, one.remark) == (other.stance, other.remark)


def borderline_words(one: Survey, place: Place) -> Iterator[str]:
    """For each criterion: `“Long-spurred from 25 mm” (M. Sallow 2024): 79 of 189, 27 borderline; 90.4 expected ...`."""
    for basis, count in zip(one.bases, place.counts, strict=True):
        if basis.ground is not Ground.CRITERION:
            continue
        if not count.judged:
            yield f"{basis.title}: no plant was measured for it."
            continue
        near = f"{count.undecided} borderline" if count.undecided else "none borderline"
        yield f"{basis.title}: {of_words(count)}, {near}; {expected_words(count)}, given the error of measuring."


def borderline_rows(one: Survey) -> Iterator[tuple[str, str, str, str]]:
    """The sites where plants are borderline by the first criterion, under BORDERLINE_HEADINGS."""
    number = next((number for number, basis in enumerate(one.bases) if basis.ground is Ground.CRITERION), None)
    for place in one.sites if number is not None else ():
        count = place.counts[number or 0]
        if count.undecided:
            yield (place.site or WITHOUT_SITE, of_words(count), str(count.undecided), expected_words(count))


def site_headings(one: Survey) -> tuple[str, ...]:
    """Those of `site_rows`: a column for names and each criterion and all authors, and the span of single authors."""
    alone = sum(basis.ground is Ground.CRITERION for basis in one.bases) == 1
    several = [
        basis.id if basis.ground is Ground.CRITERION and not alone else _SHORT.get(basis.ground, str(basis.ground))
        for basis in one.bases
        if basis.ground is not Ground.AUTHOR
    ]
    return ("site", "island", "plants", *several, "single authors")


def site_rows(one: Survey) -> Iterator[tuple[str, ...]]:
    """The sites, and all together last."""
    for place in (*one.sites, one.whole):
        title = "all" if place is one.whole else place.site or WITHOUT_SITE
        several = [
            of_words(count)
            for basis, count in zip(one.bases, place.counts, strict=True)
            if basis.ground is not Ground.AUTHOR
        ]
        yield (title, place.island, str(place.plants), *several, _span(one, place))


def _span(one: Survey, place: Place) -> str:
    """From the least to the most that an author counts, of those who keep the taxon apart and describe it."""
    several = sorted(
        count.named
        for basis, count in zip(one.bases, place.counts, strict=True)
        if basis.ground is Ground.AUTHOR and basis.stance in (Stance.TELLS, Stance.ALONE) and count.judged
    )
    if not several:
        return NONE
    return f"{several[0]}–{several[-1]}" if several[0] < several[-1] else str(several[0])


def how_counted(one: Survey) -> Iterator[str]:
    """When a plant counts, and who is left out of the table."""
    yield (
        "A plant counts under an author where that author's own descriptions give it this name plainly or with cf.; "
        "with aff. or indet. it is undecided. The share is of the plants that could be judged, the undecided among "
        "them; where these are more than half, it lies between none and all of them. The habitat of the site is not "
        "used, and characters are taken as independent."
    )
    if any(basis.ground is Ground.NAMES for basis in one.bases):
        yield "By the names given, a plant named only as a wider taxon is undecided, one without a name not judged."
    if one.silent:
        yield f"Say nothing of it: {listed_some(one.silent, _MOST_NAMES)}."
    yield from one.left_out
