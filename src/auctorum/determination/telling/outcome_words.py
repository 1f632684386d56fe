"""What outcomes of an observation would make of a plant, in words, and which observations are worth it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.directions import TURN, arc_words
from auctorum.characters.show import format_span
from auctorum.characters.vocabulary import Character, Kind
from auctorum.determination.asking import Outcome, Question
from auctorum.determination.model import Determination, Wording
from auctorum.determination.telling.words import LEAST, Names, percent
from auctorum.determination.wording import IN_ORDER, MANY, qualified

SELDOM = 0.05  # outcomes below this are not shown, unless nothing else is
MOST_OUTCOMES = 3  # of one question that are shown
_FROM_NOTHING = 20  # times: an outcome from less than that part of its upper end begins, in words, at nothing


def outcomes(question: Question, found: Determination, character: Character, names: Names) -> tuple[str, ...]:
    """What outcomes would do: `13–18 mm (79 %): C. album var. longum, 97 %`; the likeliest first, three at most.

    Outcomes with one result stand together; seldom ones are left out, but for the likeliest two.
    """
    results: dict[tuple[str, Wording], list[Outcome]] = {}
    for one in question.outcomes:
        results.setdefault((one.taxon, capped(one, found)), []).append(one)
    several = sorted(results.items(), key=lambda result: -_chance(result[1]))
    shown = [each for place, each in enumerate(several[:MOST_OUTCOMES]) if place < 2 or _chance(each[1]) >= SELDOM]
    return tuple(_result(taxon, word, of_it, character, names) for (taxon, word), of_it in shown)


def _chance(several: Sequence[Outcome]) -> float:
    return sum(one.chance for one in several)


def _result(taxon: str, word: Wording, several: Sequence[Outcome], character: Character, names: Names) -> str:
    chance = _chance(several)
    probability = percent(sum(one.chance * one.probability for one in several) / chance)
    values = " or ".join(dict.fromkeys(_outcome(one, character) for one in several))
    name = names[taxon]
    said = f"{name} likeliest, {probability}" if word is Wording.INDET else f"{qualified(name, word)}, {probability}"
    return f"{values} ({percent(chance)}): {said}"


def capped(one: Outcome, found: Determination) -> Wording:
    """How the name would then be given; characters that lie outside what is stated of it lie there still."""
    misfits = sum(one.taxon in each.beyond for each in found.contributions)
    most = Wording.AFF if misfits >= MANY else Wording.CF if misfits else Wording.PLAIN
    return min(one.wording, most, key=IN_ORDER.index)


def _outcome(one: Outcome, character: Character) -> str:
    if one.state:
        return one.state
    low, high = one.low, one.high
    if character.kind is Kind.ANGLE:
        return arc_words(low or Fraction(0), high if high is not None else Fraction(TURN))
    if character.kind is Kind.COUNT:
        low = None if low is None else Fraction(math.ceil(low))
        high = None if high is None else Fraction(math.floor(high))
        low = low if low is None or low > 0 else None
        low = high if low is not None and high is not None and low > high else low
    else:
        low, high = _handy(low), _handy(high)
        low = None if low is not None and high is not None and 0 < low * _FROM_NOTHING < high else low
    if low is None and high is None:
        return "any other"
    return format_span(low, high, character.unit)


def _handy(bound: Fraction | None) -> Fraction | None:
    """A bound with two significant digits: where an outcome ends is known no better."""
    if bound is None or bound <= 0:
        return None if bound is None or not bound else bound
    places = math.floor(math.log10(bound)) - 1
    return Fraction(round(Decimal(float(bound)).scaleb(-places))) * Fraction(10) ** places


def changes(questions: Sequence[Question], found: Determination) -> tuple[Question, ...]:
    """The questions of which an outcome that is not seldom would change the name or its wording.

    A name that is not given plainly may also be made surer.
    """
    now = found.candidates[0].probability
    surer = 1.0 if found.wording is Wording.PLAIN else now + LEAST

    def tells(one: Outcome) -> bool:
        return one.taxon != found.best or capped(one, found) is not found.wording or one.probability >= surer

    return tuple(one for one in questions if any(map(tells, one.outcomes)))
