"""The page of a survey: how many plants of a taxon there are, by whose definition, and where the line is drawn."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from auctorum.circumscription.criterion_words import limit_words
from auctorum.circumscription.phrases import counted
from auctorum.corpus.cautions import cautions_of
from auctorum.determination.criteria.words import title_of
from auctorum.determination.many import as_float
from auctorum.determination.survey.ahead_words import WANTED_HEADINGS, wanted_rows, wanted_title
from auctorum.determination.survey.bases import concerning
from auctorum.determination.survey.curve_words import gap_words, measurer_words
from auctorum.determination.survey.model import Basis, Count, Ground, Place, Stance, Survey
from auctorum.determination.survey.words import (
    HEADINGS,
    WITHOUT_SITE,
    borderline_words,
    grouped,
    how_counted,
    interval_words,
    lead,
    mostly_undecided,
    of_words,
    share_words,
    site_headings,
    site_rows,
)
from auctorum.records.schema import Criterion
from auctorum.site.answers import Answers
from auctorum.site.page_parts import Figure
from auctorum.site.pages import SurveyPage
from auctorum.site.pictures.share_bars import Share, share_bars, small_bar
from auctorum.site.survey_moving import at_place
from auctorum.site.survey_parts import CountRow, PlaceRow, Table
from auctorum.site.survey_threshold import threshold
from auctorum.site.words import Rich, Run, capital, linked, listed, plain

MOST_SITES = 30  # rows of sites on a page; of more, those with the most plants
_BESIDE = ("site", "island", "plants")  # what the rows of sites tell otherwise
PLACES = (
    "Sites are told by their id and island alone. Exact localities, and remarks on the places, stay with who keeps the "
    "records."
)
SEARCHING = (
    "Where to look for more plants is not told here, since it would lead anybody to plants that may need protection: "
    "the candidate sites stay with the records and with who asks `auctorum survey` there. Ask first: permits, the "
    "landowner’s leave and nesting seasons come before any search."
)


def survey_page(answers: Answers, taxon: str) -> SurveyPage:
    """The whole page."""
    found, corpus = answers.surveys.of(taxon), answers.corpus
    shown = _most(found)
    others = [one for one in answers.surveys.paths if one != taxon]
    decisive = threshold(answers, taxon, found, [place.site for place in shown])
    return SurveyPage(
        taxon=answers.taxon(taxon),
        lead=lead(found),
        answer=survey_answer(answers, found),
        others=tuple(linked(answers.taxon(one, link=False), answers.surveys.paths[one]) for one in others),
        shares=_shares(found),
        counts=Table(HEADINGS, (), (1, 2, 3, 4, 5)),
        rows=tuple(_rows(answers, found)),
        borderline=tuple(borderline_words(found, found.whole)),
        threshold=decisive,
        site_headings=tuple(_kept(site_headings(found), site_headings(found))),
        sites=tuple(_places(answers, found, shown, moved=decisive is not None)),
        sites_left_out=len(found.sites) - len(shown),
        gap=tuple(gap_words(corpus, found)),
        measurers=tuple(measurer_words(corpus, found)) if found.measurers else (),
        wanted_title=wanted_title(found),
        wanted=_wanted(found, shown) if found.bases else None,
        searching=SEARCHING,
        rests=(*(answers.text(one) for one in how_counted(found)), plain(PLACES)),
        criteria=tuple(_criteria(answers, taxon)),
        cautions=cautions_of(corpus),
    )


def survey_answer(answers: Answers, found: Survey) -> tuple[Rich, ...]:
    """How many there are, a sentence for each sort of view."""
    told = list(zip(found.bases, found.whole.counts, strict=True))
    sentences = [plain(one) for one in _told(told)]
    alone = sorted(
        count.named for basis, count in told
        if basis.ground is Ground.AUTHOR and basis.stance in (Stance.TELLS, Stance.ALONE) and count.judged
    )  # fmt: skip
    if alone:
        span = f"from {alone[0]} to {alone[-1]}" if alone[0] < alone[-1] else str(alone[0])
        many = "Single authors count" if len(alone) > 1 else "A single author counts"
        sentences.append(plain(f"{many} {span}."))
    sinking = [answers.work(basis.id) for basis, _ in told if basis.stance is Stance.SINKS]
    if sinking:
        verb = "sinks it and counts" if len(sinking) == 1 else "sink it and count"
        sentences.append((*listed(sinking), Run(f" {verb} none.")))
    return tuple(sentences)


def _told(told: Sequence[tuple[Basis, Count]]) -> Iterator[str]:
    """What is counted but by single authors."""
    for basis, count in told:
        if not count.judged:
            continue
        figures = f"{of_words(count)} ({share_words(count)}; 95 %: {interval_words(count)})"
        if basis.ground is Ground.NAMES:
            yield f"Observers gave this name to {figures}."
        elif basis.ground is Ground.CRITERION:
            near = f", and {count.undecided} lie within the error of measuring" if count.undecided else ""
            yield f"By the criterion {basis.title} there are {figures}{near}."
        elif basis.ground is Ground.ALL:
            yield f"All authors together count {figures}."


# --- by whose definition


def _shares(found: Survey) -> Figure | None:
    bars = tuple(_bar(bases, count) for bases, count in grouped(found.bases, found.whole.counts))
    if not bars:
        return None
    title = "The share of plants that each view counts"
    told = "; ".join(f"{one.label}: {one.says}" for one in bars)
    caption = (
        "A bar is the share that counts, of the plants that the view can judge; hatched beyond it, the plants that it "
        "leaves undecided; the line with ends is the interval in which the share of all such plants lies (95 %), or, "
        "where most are undecided, runs from none to all of these."
    )
    return Figure(share_bars(title, told, bars, "v"), share_bars(title, told, bars, "vn", True), plain(caption))


def _bar(bases: Sequence[Basis], count: Count) -> Share:
    first = bases[0]
    label = capital(first.title) + (f" and {len(bases) - 1} more" if len(bases) > 1 else "")
    marked = first.ground is not Ground.AUTHOR
    if first.stance is Stance.SINKS:
        return Share(label, f"none: {first.remark}", marked=marked)
    if count.share is None:
        return Share(label, first.remark or "no plant could be judged", marked=marked)
    low, high = count.interval
    how_sure = interval_words(count)
    if mostly_undecided(count):  # the ends then stand where none and all of them would count
        low, high, how_sure = count.share, (count.named + count.undecided) / count.judged, "most are undecided"
    says = f"{of_words(count)}, {share_words(count)} ({how_sure})"
    return Share(label, says, count.share, low, high, count.undecided / count.judged, marked)


def _rows(answers: Answers, found: Survey) -> Iterator[CountRow]:
    """The same as the picture, in words."""
    for bases, count in grouped(found.bases, found.whole.counts):
        first = bases[0]
        who = listed([_who(answers, basis) for basis in bases])
        yield CountRow(who, _cells(first, count), answers.text(first.remark))


def _who(answers: Answers, basis: Basis) -> Rich:
    return answers.work(basis.id) if basis.ground is Ground.AUTHOR else plain(basis.title)


def _cells(basis: Basis, count: Count) -> tuple[str, ...]:
    if basis.stance is Stance.BARE:
        return ("", "", "", "", "")
    if basis.stance is Stance.SINKS:
        return ("none", "", "", "", "")
    kept = (count.undecided, count.not_judged)
    return (of_words(count), share_words(count), interval_words(count), *(str(one) if one else "" for one in kept))


# --- at each site


def _most(found: Survey) -> tuple[Place, ...]:
    """The sites that have a row, in their order: those with the most plants where there are many."""
    order = sorted(range(len(found.sites)), key=lambda number: (-found.sites[number].plants, number))
    kept = set(order[:MOST_SITES])
    return tuple(place for number, place in enumerate(found.sites) if number in kept)


def _places(answers: Answers, found: Survey, shown: Sequence[Place], *, moved: bool) -> Iterator[PlaceRow]:
    headings = site_headings(found)
    told = {id(place): cells for place, cells in zip((*found.sites, found.whole), site_rows(found), strict=True)}
    for number, place in enumerate((*shown, found.whole)):
        whole = place is found.whole
        bar, now, share, near = _now(answers, found, place, whole=whole) if moved else ("", "", "", "")
        site = "all" if whole else place.site or WITHOUT_SITE
        yield PlaceRow(
            number, site, place.island, str(place.plants), bar, now, share, near,
            tuple(_kept(headings, told[id(place)])),
        )  # fmt: skip


def _kept(headings: Sequence[str], cells: Sequence[str]) -> Iterator[str]:
    """The cells of a row of sites that are not told otherwise."""
    yield from (cell for heading, cell in zip(headings, cells, strict=True) if heading not in _BESIDE)


def _now(answers: Answers, found: Survey, place: Place, *, whole: bool) -> tuple[str, str, str, str]:
    """The bar, and in words the count at the threshold, its share, and the plants within the error of measuring."""
    curve = found.curve
    assert curve is not None
    readings = [one for one in found.readings if whole or one.site == place.site]
    character = answers.corpus.vocabulary[curve.limit.character]
    count, within = at_place(readings, curve, character, as_float(curve.limit.value))
    if not count.judged:
        return small_bar(None, 0, 1), "none measured", "", ""
    bar = small_bar(count.share, *count.interval)
    return bar, of_words(count), f"{share_words(count)} ({interval_words(count)})", str(within or "")


def _wanted(found: Survey, shown: Sequence[Place]) -> Table:
    """How many plants more, overall and at the sites that have a row."""
    kept = {place.site for place in shown}
    few = replace(found, wanted=tuple(one for one in found.wanted if one.overall or one.site in kept))
    return Table(WANTED_HEADINGS, tuple(wanted_rows(few)), (1, 2))


# --- what it rests on


def _criteria(answers: Answers, taxon: str) -> Iterator[tuple[str, tuple[tuple[str, Rich], ...]]]:
    """Each criterion that decides about the taxon, with its decisive and supporting traits and its note."""
    for criterion, _ in concerning(answers.corpus, taxon):
        yield title_of(criterion), tuple((name, rich) for name, rich in _facts(answers, criterion) if rich)


def _facts(answers: Answers, criterion: Criterion) -> Iterator[tuple[str, Rich]]:
    decisive = criterion.decisive
    said = limit_words(decisive.at_least or decisive.at_most, at_least=bool(decisive.at_least))
    stage = f" ({decisive.stage})" if decisive.stage else ""
    yield "decides", (*answers.character(decisive.character), *plain(f"{stage}: {said}"))
    supports = [
        (*answers.character(one.character), *plain(f"{f' ({one.stage})' if one.stage else ''}: {one.value}"))
        for one in criterion.supporting
    ]
    yield "supports", listed(supports, "; ") if supports else ()
    yield "those that fit", answers.text(criterion.taxon)
    yield "the others", answers.text(criterion.otherwise)
    yield "note", answers.text(criterion.note)


# --- for other pages


def survey_sentences(answers: Answers, taxon: str) -> tuple[Rich, ...]:
    """For the page of the taxon: how many plants, and by whose definition; nothing where it has no survey."""
    if taxon not in answers.surveys.paths:
        return ()
    found = answers.surveys.of(taxon)
    return (plain(lead(found)), *survey_answer(answers, found))


def survey_entries(answers: Answers) -> tuple[tuple[Rich, str, str], ...]:
    """Each taxon with a survey, how many plants were looked at, and its address."""
    told = counted(sum(1 for _ in answers.every_plant), "plant") + " looked at"
    return tuple((answers.taxon(taxon, link=False), told, path) for taxon, path in answers.surveys.paths.items())
