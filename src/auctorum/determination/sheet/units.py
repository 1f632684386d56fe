"""Thresholds in two units, and short codes for states: what can be read off a ruler and written with a cold hand."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from auctorum.characters.read import read_statement
from auctorum.characters.restate import figure_in, restated
from auctorum.characters.show import format_range, format_span
from auctorum.characters.units import convert
from auctorum.characters.values import Range
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.wording import of_habitat
from auctorum.problems import AuctorumError

DECIMALS = "Inches are in decimals, not in sixteenths: 0.98 in. is just short of 1 in."
OTHER_UNIT = {"mm": "in", "cm": "in", "dm": "in", "m": "ft", "km": "ft"}
_TENTH = Fraction(1, 10)
_CODE = 2  # letters that a code has at least


def in_both_units(value: Fraction, character: Character) -> str:
    """A threshold in the unit of the character, and rounded in the other system: decimals of an inch, whole feet.

    Rounded as if the figure were known to a tenth of a millimetre, one in metres to a tenth, and heights above the sea
    to the whole metre (a convention of ours).

    >>> spur = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
    >>> hill = Character("elevation", "habitat", "elevation", Kind.MEASURE, "m")
    >>> in_both_units(Fraction(25), spur), in_both_units(Fraction(200), hill)
    ('25 mm (0.98 in.)', '200 m (660 ft)')
    """
    printed = format_span(value, value, character.unit)
    other = OTHER_UNIT.get(character.unit) if character.kind is Kind.MEASURE else None
    if other is None:
        return printed
    large = character.unit in ("m", "km")
    known_to = convert(Fraction(1) if of_habitat(character) else _TENTH, "m" if large else "mm", other)
    converted = figure_in(convert(value, character.unit, other), known_to)
    return f"{printed} ({format_span(converted, converted, other)})"


def stated_in_both_units(said: str, character: Character) -> str:
    """A value as a criterion states it, a length in the other system, too; unread words stay as they are.

    >>> hill = Character("elevation", "habitat", "elevation", Kind.MEASURE, "m")
    >>> stated_in_both_units("150–420 m", hill)
    '150–420 m (490–1380 ft)'
    """
    try:
        values = [one.value for one in read_statement(said, character)]
    except AuctorumError:
        return said
    value = values[0] if len(values) == 1 else None
    other = OTHER_UNIT.get(value.unit) if isinstance(value, Range) and character.kind is Kind.MEASURE else None
    if other is None or not isinstance(value, Range):
        return said
    single = value.low if value.low is not None and value.low == value.high and value.least == value.most else None
    if single is not None and value.unit == character.unit:
        return in_both_units(Fraction(single), character)
    return f"{format_range(value)} ({format_range(restated(value, other))})"


def codes(states: Sequence[str]) -> tuple[tuple[str, str], ...]:
    """For each state the shortest beginning of its name, two letters or more, that begins no other; then the name.

    >>> codes(["green", "yellow-green", "grey", "cream"])
    (('gree', 'green'), ('ye', 'yellow-green'), ('grey', 'grey'), ('cr', 'cream'))
    """
    return tuple((_code(one, [other for other in states if other != one]), one) for one in states)


def _code(state: str, others: Sequence[str]) -> str:
    """The whole name where it begins another."""
    for length in range(min(_CODE, len(state)), len(state)):
        begin = state[:length]
        if not begin.endswith(" ") and not any(other.startswith(begin) for other in others):
            return begin
    return state
