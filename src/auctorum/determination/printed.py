"""An observation in print: `31 mm`, `cream and ivory`, `SSE`."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from auctorum.characters.directions import compass_point
from auctorum.characters.show import format_value
from auctorum.characters.values import Range, Share, States
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.observed_value import decimal_place, rounded
from auctorum.circumscription.plants import Observation

_OF_A_POINT = Fraction(45, 4)  # degrees: the slack of one of sixteen compass points


def printed(one: Observation, character: Character) -> str:
    """The observation in the canonical unit of the character, with no more digits than were measured."""
    if one.value is None:
        return format_value(States(tuple(Share(state) for state, _ in one.states)), character)
    if character.kind is Kind.ANGLE and one.slack >= _OF_A_POINT and (point := compass_point(_decimal(one.value))):
        return point
    return figure(one.value, one.slack, character)


def _decimal(value: Fraction) -> Decimal:
    return Decimal(value.numerator) / value.denominator


def figure(value: Fraction, slack: Fraction, character: Character) -> str:
    """A number of the character, rounded to the step that its slack is half of.

    >>> from auctorum.characters.vocabulary import Kind
    >>> figure(Fraction(787, 20), Fraction("0.5"), Character("spur length", "spur", "length", Kind.MEASURE, "mm"))
    '39 mm'
    """
    place = min(decimal_place(2 * slack), 0) if slack else _exact_place(value)
    number = rounded(value, place)
    return format_value(Range(number, number, character.unit), character)


def _exact_place(value: Fraction) -> int:
    """As many decimals as the value has, three at most."""
    for places in range(3):
        if (value * 10**places).denominator == 1:
            return -places
    return -3
