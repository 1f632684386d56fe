"""Measured plants -> the value that one would write from them, in the notation of the trade."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.states import WEIGHT
from auctorum.characters.values import Modality, Range, Share, States
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.combined_cells import about_their_mean
from auctorum.circumscription.plants import Observation
from auctorum.circumscription.voices import in_order

ENOUGH = 10  # plants from which tenths can be told; a judgement of ours, as a tenth of fewer is less than one plant
TENTH = Fraction(1, 10)
_SHARED_BY = Fraction(1, 4)  # of the plants: a step so common is that of the measurements, not of a dropped zero
_SAID = (Modality.ALWAYS, Modality.OFTEN, Modality.SOMETIMES, Modality.OCCASIONALLY, Modality.RARELY)


@dataclass(frozen=True, slots=True)
class Figures:
    """What some plants measure of one character, in ascending order, and how many were measured to each step."""

    ascending: Sequence[Fraction]
    steps: Mapping[Fraction, int]

    def without(self, seen: Iterable[Observation]) -> Figures:
        """The figures but for some of those that are among them: nothing is sorted again."""
        ascending, steps = list(self.ascending), dict(self.steps)
        for one in seen:
            if one.value is not None:
                del ascending[bisect_left(ascending, one.value)]
            steps[one.slack * 2] -= 1
        return Figures(ascending, {step: plants for step, plants in steps.items() if plants})


def figures_of(seen: Sequence[Observation]) -> Figures:
    """The figures of the plants."""
    values = sorted(one.value for one in seen if one.value is not None)
    return Figures(values, Counter(one.slack * 2 for one in seen))


def observed_range(seen: Sequence[Observation], character: Character) -> Range:
    """The range of the plants: see `range_of`."""
    return range_of(figures_of(seen), character)


def range_of(figures: Figures, character: Character) -> Range:
    """`(min–)q10–q90(–max)` of the plants, in the canonical unit, rounded to the precision of the measurements.

    Extremes only where they differ from the typical bound once rounded; of fewer than ten plants, and of directions,
    only the lowest and the highest value. Directions lie about their circular mean, an arc across north ends above 360.
    """
    values = figures.ascending
    if character.kind is Kind.ANGLE:
        values = sorted(about_their_mean(values))
    place = 0 if character.kind is Kind.COUNT else decimal_place(_usual_step(figures.steps))
    least, most = rounded(values[0], place), rounded(values[-1], place)
    if len(values) < ENOUGH or character.kind is Kind.ANGLE:
        return Range(least, most, character.unit)
    low, high = rounded(quantile(values, TENTH), place), rounded(quantile(values, 1 - TENTH), place)
    return Range(low, high, character.unit, least if least < low else None, most if most > high else None)


def observed_states(seen: Sequence[Observation], character: Character) -> States:
    """The states of the plants with how often each occurs beside the commonest, commonest words first.

    The word is the one whose weight comes nearest, so that the value read back gives about the shares found; of fewer
    than ten plants nothing is said of how often.
    """
    shares: dict[str, Fraction] = {}
    for one in seen:
        for state, weight in one.states:
            shares[state] = shares.get(state, Fraction(0)) + weight
    top = max(shares.values())
    words = {state: _word(share / top) if len(seen) >= ENOUGH else Modality.ALWAYS for state, share in shares.items()}
    named = sorted(in_order(shares, character), key=lambda state: _SAID.index(words[state]))
    return States(tuple(Share(state, modality=words[state]) for state in named))


def quantile(values: Sequence[Fraction], share: Fraction) -> Fraction:
    """The value below which that share of sorted values lies, by linear interpolation between its neighbours.

    The lowest value is that of the share 0 and the highest that of 1, the rest are evenly spaced between (definition 7
    of R. J. Hyndman & Y. Fan, The American Statistician 50 (1996): 361–365; from memory).

    >>> quantile([Fraction(1), Fraction(2), Fraction(4)], Fraction(3, 4))
    Fraction(3, 1)
    """
    whole, rest = divmod(share * (len(values) - 1), 1)
    if not rest:
        return values[whole]
    return values[whole] + rest * (values[whole + 1] - values[whole])


def usual_step(seen: Sequence[Observation]) -> Fraction:
    """The coarsest step that at least a quarter of the plants were measured to, in the canonical unit.

    Who measures to the half millimetre and writes 36 for 36.0 leaves out half of the noughts, who measures to tenths
    only one in ten; the finest step where none is so common.
    """
    return _usual_step(Counter(one.slack * 2 for one in seen))


def _usual_step(steps: Mapping[Fraction, int]) -> Fraction:
    every = sum(steps.values())
    common = [step for step, plants in steps.items() if plants >= _SHARED_BY * every]
    return max(common, default=min(steps))


def decimal_place(step: Fraction) -> int:
    """The power of ten at or below the step: -1 for tenths, 0 for ones, 1 for tens.

    >>> decimal_place(Fraction(1)), decimal_place(Fraction("0.254")), decimal_place(Fraction(10))
    (0, -1, 1)
    """
    place = 0
    while step and Fraction(10) ** (place + 1) <= step:
        place += 1
    while step and Fraction(10) ** place > step:
        place -= 1
    return place


def rounded(value: Fraction, place: int) -> Decimal:
    """The value to a power of ten, halves away from 0; the noughts up to that place stand.

    >>> rounded(Fraction("21.96"), -1), rounded(Fraction(25, 2), 0), rounded(Fraction(213), 1)
    (Decimal('22.0'), Decimal('13'), Decimal('210'))
    """
    steps = int(abs(value) / Fraction(10) ** place + Fraction(1, 2)) * (-1 if value < 0 else 1)
    return Decimal(steps * 10**place) if place >= 0 else Decimal(steps).scaleb(place)


def _word(share: Fraction) -> Modality:
    """The word whose weight is nearest to the share of the commonest state; the stronger of two as near."""
    return min(_SAID, key=lambda modality: (abs(WEIGHT[modality] - share), -WEIGHT[modality]))
