"""The decisive character of a survey: what each plant measures, and how many count at each threshold."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.plants import Observation, Plant
from auctorum.circumscription.voices import Voice
from auctorum.corpus.criteria import Limit
from auctorum.corpus.model import Corpus
from auctorum.determination.counting.counts import counts_from, thresholds_of
from auctorum.determination.counting.dip import DipTest, dip_test
from auctorum.determination.criteria.spectrum import figure_of
from auctorum.determination.many import Observed, as_float
from auctorum.determination.normal import Floats
from auctorum.determination.survey.model import NO_SITE, Bound, Curve, Reading, Step
from auctorum.determination.view import Statements


@dataclass(frozen=True, slots=True, eq=False)
class Decisive:
    """The decisive character on each plant: `values` NaN where it was not observed at the stage that counts.

    `seen` are the plants on which it was, by place, with value, error and half the step that it was read to; of
    ordered states the place on the spectrum, half the states shown, and 0.
    """

    limit: Limit
    values: Floats
    errors: Floats
    seen: tuple[tuple[int, Observation, Fraction, Fraction, Fraction], ...]


def decisive(limit: Limit, observed: Observed, vocabulary: Vocabulary) -> Decisive:
    """What the plants show of the character at the stage that the limit is for."""
    character = vocabulary[limit.character]
    names = state_names(character)
    seen = []
    values, errors = np.full(observed.number, np.nan), np.zeros(observed.number)
    for place, one in observed.at((limit.character, limit.stage)):
        told = figure_of(one, character, names)
        if told is not None:
            value, error = told
            seen.append((place, one, value, error, Fraction(0) if character.kind is Kind.ORDERED else one.slack))
            values[place], errors[place] = as_float(value), as_float(error)
    return Decisive(limit, values, errors, tuple(seen))


def readings_of(found: Decisive, plants: Sequence[Plant]) -> tuple[Reading, ...]:
    """What was measured, in ascending order."""
    several = [
        Reading(value, error, plants[place].site or NO_SITE, plants[place].taxon or "")
        for place, _, value, error, _ in found.seen
    ]
    several.sort(key=lambda one: (as_float(one.value), as_float(one.error), one.site, one.taxon, one.value))
    return tuple(several)  # floats first, since fractions take long to compare


def curve_of(
    statements: Statements,
    found: Decisive,
    taxon: str,
    works: Sequence[str],
    *,
    fitting: bool = True,
    proposed: bool = False,
) -> Curve:
    """Count against threshold, and what each author's bounds would count; `fitting` as in `Curve`."""
    corpus, limit = statements.corpus, found.limit
    character = corpus.vocabulary[limit.character]
    values = sorted((value for _, _, value, _, _ in found.seen), key=as_float)
    places = thresholds_of(values)
    fits = _fitting(values, places, at_least=limit.at_least)
    counts = fits if fitting else tuple(len(values) - one for one in fits)
    steps = (Step(at, many, many / len(values)) for at, many in zip(places, counts, strict=True))
    states = state_names(character) if character.kind is Kind.ORDERED else ()
    bounds = _bounds(statements, limit, taxon, works, values)
    return Curve(limit, fitting, proposed, len(values), tuple(steps), tuple(bounds), character.unit, tuple(states))


def _fitting(values: Sequence[Fraction], places: Sequence[Fraction], *, at_least: bool) -> tuple[int, ...]:
    """The plants at or above each place, or at or below it."""
    if at_least:
        return counts_from(values, places)
    return counts_from([-one for one in values], [-one for one in places])


def _bounds(
    statements: Statements, limit: Limit, taxon: str, works: Sequence[str], ascending: Sequence[Fraction]
) -> Iterator[Bound]:
    for work in works:
        for voice in statements.heard(taxon, (work,)).get((limit.character, limit.stage), ()):
            if voice.stretch is not None:
                yield _bound(statements.corpus, voice, ascending)


def _bound(corpus: Corpus, voice: Voice, ascending: Sequence[Fraction]) -> Bound:
    assert voice.stretch is not None
    low, high, extremes = voice.stretch.low, voice.stretch.high, voice.extremes
    least = extremes.low if extremes is not None and extremes.low is not None else low
    most = extremes.high if extremes is not None and extremes.high is not None else high
    inside = None
    if low is not None and high is not None:
        inside = bisect_right(ascending, high) + _from(ascending, low) - len(ascending)
    return Bound(
        voice.work,
        voice.byline,
        low,
        high,
        least,
        most,
        None if low is None else _from(ascending, low),
        None if least is None else _from(ascending, least),
        None if high is None else bisect_right(ascending, high),
        inside,
        corpus.works[voice.repeats].byline if voice.repeats in corpus.works else "",
    )


def _from(ascending: Sequence[Fraction], place: Fraction) -> int:
    return len(ascending) - bisect_left(ascending, place)


def gap_of(found: Decisive, rows: Iterable[int], character: Character) -> DipTest | None:
    """The dip test over those entries of `found.seen`; None for none, and for states, which are too few to dip.

    Equal figures are spread over the step that most of them were read to.
    """
    chosen = [found.seen[row] for row in rows]
    if not chosen or character.kind is Kind.ORDERED:
        return None
    values = [as_float(value) for _, _, value, _, _ in chosen]
    steps = sorted(2 * as_float(slack) for _, _, _, _, slack in chosen)
    return dip_test(values, 1.0 if character.kind is Kind.COUNT else steps[len(steps) // 2])
