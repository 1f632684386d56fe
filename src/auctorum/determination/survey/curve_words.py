"""The curve of a survey, gap or spectrum, and who measures otherwise, in rows and sentences."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Callable, Iterator, Sequence
from fractions import Fraction
from itertools import groupby
from math import ceil, floor

from auctorum.characters.show import format_number, format_span
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.cuts import STEPS
from auctorum.circumscription.phrases import capital, counted, listed, listed_some, share_words
from auctorum.circumscription.separation_words import label
from auctorum.corpus.model import Corpus
from auctorum.determination.counting.comparing import Difference
from auctorum.determination.counting.dip import ENOUGH, DipTest
from auctorum.determination.survey.model import Bound, By, Curve, Ground, Measurers, Survey
from auctorum.determination.survey.words import NONE, WITHOUT_SITE

MOST_STEPS = 14  # rows of the curve but for thresholds that somebody keeps
_MARKED = 2  # authors named at one threshold before the rest are counted
BOUND_HEADINGS = ("author", "states", "from its lower bound", "within", "up to its upper")


def curve_title(corpus: Corpus, curve: Curve) -> str:
    """What is counted, of how many, and whose threshold stands in the table."""
    character = corpus.vocabulary[curve.limit.character]
    side = _side(curve)
    said = (
        f"{label(character, curve.limit.stage).capitalize()} of {counted(curve.measured, 'plant')}: how many lie {side}"
    )
    if curve.proposed:
        said += "; no criterion of the knowledge base concerns the taxon, so the one that the records propose is used"
    return f"{said}. Counted by the figures alone, borderline or not."


def _side(curve: Curve) -> str:
    at_least = curve.limit.at_least
    if curve.fitting:
        return "at or above a threshold" if at_least else "at or below a threshold"
    return "below a threshold" if at_least else "above a threshold"


def curve_headings(curve: Curve) -> tuple[str, ...]:
    """Those of `curve_rows`."""
    said = {(True, True): "from", (True, False): "up to", (False, True): "below", (False, False): "above"}
    lower = curve.fitting is curve.limit.at_least
    whose = "who begins there" if lower else "who ends there"
    return (said[curve.fitting, curve.limit.at_least], "plants", "share", f"threshold, and {whose}")


def curve_rows(corpus: Corpus, one: Survey) -> Iterator[tuple[str, ...]]:
    """A row for each handy threshold, and for each that the criterion or an author implies."""
    curve = one.curve
    if curve is None or not curve.measured:
        return
    marks = _marks(one, curve)
    ascending = [reading.value for reading in one.readings]
    for place in sorted({*_handy(curve, ascending), *marks}):
        many = at_threshold(ascending, place, at_least=curve.limit.at_least, fitting=curve.fitting)
        yield (
            said(curve, place, corpus.vocabulary[curve.limit.character]),
            str(many),
            share_words(many / curve.measured),
            "; ".join(marks.get(place, ())),
        )


def at_threshold(ascending: Sequence[Fraction], place: Fraction, *, at_least: bool, fitting: bool) -> int:
    """The readings that count if the threshold is there."""
    fits = len(ascending) - bisect_left(ascending, place) if at_least else bisect_right(ascending, place)
    return fits if fitting else len(ascending) - fits


def _handy(curve: Curve, ascending: Sequence[Fraction]) -> Iterator[Fraction]:
    """Multiples of the finest round step that makes few rows, over all that was measured; states each."""
    low, high = ascending[0], ascending[-1]
    if curve.states:
        yield from map(Fraction, range(len(curve.states)))
        return
    step = next((one for one in reversed(STEPS) if (high - low) / one < MOST_STEPS), STEPS[0])
    if (high - low) / step < MOST_STEPS:
        yield from (number * step for number in range(ceil(low / step), floor(high / step) + 1))


def _marks(one: Survey, curve: Curve) -> dict[Fraction, list[str]]:
    """Thresholds that somebody implies, and who."""
    found: dict[Fraction, list[str]] = {}
    title = next((basis.title for basis in one.bases if basis.ground is Ground.CRITERION), "proposed from the records")
    found[curve.limit.value] = [title]
    lower = curve.fitting is curve.limit.at_least
    by_bound: dict[Fraction, list[str]] = {}
    for bound in curve.bounds:
        at = bound.low if lower else bound.high
        if at is not None:
            by_bound.setdefault(at, []).append(bound.title)
    for place, titles in by_bound.items():
        found.setdefault(place, []).append(listed_some(titles, _MARKED))
    return found


def said(curve: Curve, place: Fraction, character: Character) -> str:
    """`25 mm`, `pubescent`."""
    if curve.states:
        return curve.states[int(place)] if 0 <= place < len(curve.states) else format_number(place)
    return format_span(place, place, character.unit)


def bound_rows(corpus: Corpus, curve: Curve) -> Iterator[tuple[str, ...]]:
    """What each author's bounds would count, by date; neighbours with the same figures in one row."""
    character = corpus.vocabulary[curve.limit.character]
    for _, several in groupby(sorted(curve.bounds, key=_first_use(curve.bounds)), key=_figures):
        bounds = list(several)
        one = bounds[0]
        titles = [bound.title + (f" (repeats {bound.repeats})" if bound.repeats else "") for bound in bounds]
        yield (
            "; ".join(titles), _stated(curve, one, character),
            *(NONE if many is None else str(many) for many in (one.from_low, one.inside, one.upto_high)),
        )  # fmt: skip


def _figures(one: Bound) -> tuple[Fraction | None, ...]:
    return (one.low, one.high, one.least, one.most)


def _first_use(bounds: Sequence[Bound]) -> Callable[[Bound], int]:
    """Where figures first stand, so that those who state the same come together by the first of them."""
    first: dict[tuple[Fraction | None, ...], int] = {}
    for number, one in enumerate(bounds):
        first.setdefault(_figures(one), number)
    return lambda one: first[_figures(one)]


def _stated(curve: Curve, one: Bound, character: Character) -> str:
    """`(18–)22–42(–46) mm`."""
    if curve.states:
        ends = [NONE if place is None else said(curve, place, character) for place in (one.low, one.high)]
        return " to ".join(dict.fromkeys(ends))
    least = f"({format_number(one.least)}–)" if one.least is not None and one.least != one.low else ""
    most = f"(–{format_number(one.most)})" if one.most is not None and one.most != one.high else ""
    core = format_span(one.low, one.high, "")
    return f"{least}{core}{most}" + (f" {character.unit}" if character.unit else "")


def gap_words(corpus: Corpus, one: Survey) -> Iterator[str]:
    """Gap or spectrum, over all and at the sites; sites where n is too small together in a sentence."""
    curve = one.curve
    if curve is None:
        return
    character = corpus.vocabulary[curve.limit.character]
    name = label(character, curve.limit.stage)
    if character.kind is Kind.ORDERED:
        yield f"{capital(name)} has too few states to tell a gap from a spectrum."
        return
    if one.whole.gap is None:
        yield f"No plant was measured for {name}."
        return
    yield f"Over all {counted(one.whole.gap.n, 'plant')}: {_gap(one.whole.gap)}."
    told = [place for place in one.sites if place.gap is not None]
    few = [place for place in told if place.gap is not None and place.gap.finding == "cannot tell"]
    for place in told:
        if place not in few and place.gap is not None:
            yield f"{place.site or WITHOUT_SITE} ({place.gap.n}): {_gap(place.gap)}."
    if few:
        most = max(place.gap.n for place in few if place.gap is not None)
        names = listed(place.site or WITHOUT_SITE for place in few) if len(few) < len(told) else "each of the sites"
        yield (
            f"Too few plants to tell at {names}: at most {counted(most, 'plant')} each, and below {ENOUGH} even two "
            "plainly different groups are mostly missed."
        )


def _gap(test: DipTest) -> str:
    chance = f"dip {test.dip:.3f}, p {'under 0.01' if test.p < 0.01 else f'{test.p:.2f}'}"
    if test.finding == "gap":
        return f"gap. Plants of a single peak would seldom leave so deep a hollow ({chance})"
    if test.finding == "spectrum":
        return f"spectrum. No gap shows, and one between plainly different groups probably would ({chance})"
    return f"cannot tell. No gap shows, and so few plants rule none out ({chance})"


def measurer_words(corpus: Corpus, one: Survey) -> Iterator[str]:
    """Each pair of observers and of instruments: who measures more, by how much, and what that does to the count.

    Instruments that tell the same as their observers are not told again.
    """
    pairs = [pair for pair in one.measurers if pair.by is By.OBSERVER or not one.confounded]
    if one.curve is None or not pairs:
        yield "Nothing to compare: no two observers or instruments measured the decisive character."
        return
    for pair in pairs:
        yield from _pair(pair, corpus.vocabulary[one.curve.limit.character].unit)
    if one.confounded:
        yield "Each observer had an instrument of their own, so which of the two makes the difference cannot be told."


def _pair(pair: Measurers, unit: str) -> Iterator[str]:
    found = pair.difference
    first, second = ((f"“{one}”" if pair.by is By.INSTRUMENT else one) for one in (pair.first, pair.second))
    if pair.as_second is None or found.median is None:
        yield f"{first} and {second}: not compared, since they share no site with enough plants of one name."
        return
    said = f"{first} measures {_more(found.median, unit)} than {second}"
    yield f"{said} ({_limits(found, unit)}; {found.first} and {counted(found.second, 'figure')} at shared sites)."
    if found.low is None or found.high is None or found.low <= 0 <= found.high:
        yield "That may be chance."
    yield (
        f"Plants that count by the threshold: {pair.as_measured} as measured; {pair.as_second} if {first} measured as "
        f"{second} does; {pair.as_first} if {second} measured as {first} does."
    )
    if pair.thinned:
        yield "There are so many figures that evenly chosen ones stand for all."


def _more(amount: float, unit: str) -> str:
    """`2.5 mm less`, `neither more nor less`."""
    if not amount:
        return "neither more nor less"
    figure = format_number(Fraction(abs(amount)).limit_denominator(10**6), 2)
    return f"{figure}{f' {unit}' if unit else ''} {'more' if amount > 0 else 'less'}"


def _limits(found: Difference, unit: str) -> str:
    """`95 %: from 4.2 mm less to 0.3 mm more`."""
    if found.low is None or found.high is None:
        return "too few figures to give limits"
    low, high = ("no difference" if not one else _more(one, unit) for one in (found.low, found.high))
    return f"95 %: from {low} to {high}"
