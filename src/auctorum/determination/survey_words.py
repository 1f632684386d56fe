"""A survey in rows and sentences that can be read aloud: the counts, by whom, and at each site."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from auctorum.circumscription.phrases import counted, listed
from auctorum.determination.survey_model import NO_SITE, Basis, Count, Ground, Place, Stance, Survey

HEADINGS = ("counted by", "plants", "share", "95 %", "undecided", "not judged", "")
NONE = "–"
WITHOUT_SITE = "no site"
_MOST_NAMES = 4


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
    """`42 %`; a dash where nothing was judged, and `under 1 %` for little."""
    if count.share is None:
        return NONE
    return "under 1 %" if 0 < count.share < 0.005 else f"{100 * count.share:.0f} %"


def interval_words(count: Count) -> str:
    """`35–49 %`; a dash where nothing was judged."""
    if not count.judged:
        return NONE
    low, high = count.interval
    return f"{100 * low:.0f}–{100 * high:.0f} %"


def of_words(count: Count) -> str:
    """`79 of 189`; a dash where nothing was judged."""
    return f"{count.named} of {count.judged}" if count.judged else NONE


def expected_words(count: Count) -> str:
    """`90.4, 87–94`: the plants that truly fit, given the error of measuring; a dash where that is not reckoned."""
    if count.expected is None or not count.judged:
        return NONE
    mean, low, high = count.expected
    return f"{mean:.1f}, {low}–{high}" if low < high else f"{mean:.1f}"


def count_rows(one: Survey, place: Place) -> Iterator[tuple[str, ...]]:
    """A row for each view, authors with the same count in one; under HEADINGS."""
    for bases, count in grouped(one.bases, place.counts):
        first = bases[0]
        remark = first.remark if len({basis.remark for basis in bases}) == 1 else ""
        title = "; ".join(basis.title for basis in bases)
        if first.stance is Stance.BARE:
            yield (title, NONE, NONE, NONE, NONE, NONE, remark)
        elif first.stance is Stance.SINKS:
            yield (title, "none", NONE, NONE, NONE, NONE, remark)
        else:
            yield (
                title, of_words(count), share_words(count), interval_words(count), str(count.undecided or NONE),
                str(count.not_judged or NONE), remark,
            )  # fmt: skip


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
        near = f", {count.undecided} borderline" if count.undecided else ", none borderline"
        mean, low, high = count.expected or (float(count.named), count.named, count.named)
        span = f", {low}–{high}" if low < high else ""
        yield f"{basis.title}: {of_words(count)}{near}; {mean:.1f} expected given the error of measuring{span}."


def site_headings(one: Survey) -> tuple[str, ...]:
    """Those of `site_rows`: a column for names and each criterion and all authors, and the span of single authors."""
    alone = sum(basis.ground is Ground.CRITERION for basis in one.bases) == 1
    several = [
        basis.id if basis.ground is Ground.CRITERION and not alone else str(basis.ground)
        for basis in one.bases
        if basis.ground is not Ground.AUTHOR
    ]
    borderline = ("borderline", "expected") if _criterion(one) is not None else ()
    return ("site", "island", "plants", *several, *borderline, "single authors")


def site_rows(one: Survey) -> Iterator[tuple[str, ...]]:
    """The sites, and all together last."""
    for place in (*one.sites, one.whole):
        title = "all" if place is one.whole else place.site or WITHOUT_SITE
        several = [
            of_words(count)
            for basis, count in zip(one.bases, place.counts, strict=True)
            if basis.ground is not Ground.AUTHOR
        ]
        more: tuple[str, ...] = ()
        if (number := _criterion(one)) is not None:
            judged = place.counts[number]
            more = (str(judged.undecided or NONE), expected_words(judged))
        yield (title, place.island, str(place.plants), *several, *more, _span(one, place))


def _criterion(one: Survey) -> int | None:
    return next((number for number, basis in enumerate(one.bases) if basis.ground is Ground.CRITERION), None)


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
        "them. The habitat of the site is not used, and characters are taken as independent."
    )
    if any(basis.ground is Ground.NAMES for basis in one.bases):
        yield "By the names given, a plant named only as a wider taxon is undecided, one without a name not judged."
    if one.silent:
        yield f"Say nothing of it: {_some(one.silent)}."
    yield from one.left_out


def _some(titles: Sequence[str]) -> str:
    """`A, B, C and 5 more`."""
    if len(titles) <= _MOST_NAMES + 2:
        return listed(titles)
    return listed([*titles[:_MOST_NAMES], f"{len(titles) - _MOST_NAMES} more"])
