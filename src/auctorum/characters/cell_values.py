"""One cell of a table as values of a character: its numbers with their unit, or its words, checked against the kind."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.cells import (
    MAX_LETTERS,
    CellNumber,
    UnreadableCell,
    cell_numbers,
    check_broken,
    is_missing,
    printed,
)
from auctorum.characters.directions import TURN
from auctorum.characters.read import read_statement
from auctorum.characters.units import convert, unit_fits, unit_named
from auctorum.characters.values import Range
from auctorum.characters.vocabulary import Character, Kind
from auctorum.problems import AuctorumError

DOUBTFUL = "it is marked as doubtful, and was used all the same"
_PRESENCE = {
    **dict.fromkeys(("yes", "y", "+", "x", "1", "true", "✓", "✔"), "present"),
    **dict.fromkeys(("no", "n", "0", "false"), "absent"),
}
_BELOW_ZERO = "elevation"  # the one property that may be
_CORRECT = "correct the cell, or leave it empty"


def numbers_in(cell: str, unit: str, character: Character) -> tuple[CellNumber, ...]:
    """The measurements in a cell of a numeric character, each with its unit ("" for counts and ratios).

    `unit` is that of the column, "" where its title tells none; a unit in the cell goes before it. None of a missing
    value. Raises UnreadableCell, UnknownUnit, UnfitUnit and what reading a direction raises.

    >>> from auctorum.characters.vocabulary import Character, Kind
    >>> spur = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
    >>> [(str(one.number), one.unit) for one in numbers_in("31", "", spur) + numbers_in("1.2 in", "mm", spur)]
    [('31', 'mm'), ('1.2', 'in')]
    """
    if character.kind in (Kind.MEASURE, Kind.ANGLE):
        unit = unit or character.unit
    if unit:
        unit_fits(unit_named(unit), character)
    return tuple(_checked(one, unit, cell, character) for one in _read(cell, character))


def words_in(cell: str, character: Character) -> tuple[str, str]:
    """The words of a cell that say a state ("" for a missing value), and a remark for a person to look at.

    Signs of presence (`yes`, `+`, `0` ...) become `present` and `absent`. Raises UnreadableCell for words
    that name no state, and for a dash in a column of presence: it may mean absent, or not noted.
    """
    words = printed(cell)
    if character.kind is Kind.PRESENCE:
        if words in ("-", "--"):
            raise UnreadableCell(cell, "may mean absent, or not noted", "write absent, or leave the cell empty")
        cell = _PRESENCE.get(words.casefold(), cell)
    if is_missing(cell):
        return "", ""
    check_broken(cell)
    if len(cell) > MAX_LETTERS:
        raise UnreadableCell(cell, f"has {len(cell)} letters and is no state", "name the state, and no more")
    try:
        read_statement(cell, character)
    except AuctorumError as error:
        states = ", ".join(state.name for state in character.states) or "present, absent"
        raise UnreadableCell(cell, f"names no state of `{character.name}`", f"write one of: {states}") from error
    return cell, DOUBTFUL if words.endswith(("?", "(?)")) else ""


def error_in(cell: str, unit: str, of: str, character: Character) -> Fraction | None:
    """The half-width of an error that a cell states (`0.5`, `±0.5`, `0.5 mm`), in the unit `of`; None of none.

    `unit` is that of its column, "" where its title tells none: the error is then in the unit `of`.
    """
    found = cell_numbers(printed(cell).lstrip("±").removeprefix("+/-").removeprefix("+-").strip())
    if not found:
        return None
    if len(found) > 1 or found[0].number < 0:
        raise UnreadableCell(cell, "is no half-width of an error", "write one number: 0.5")
    said = found[0].unit or unit
    if said:
        unit_fits(unit_named(said), character)
    exact = Fraction(found[0].number)
    return convert(exact, said, of) if said and of else exact


def _read(cell: str, character: Character) -> tuple[CellNumber, ...]:
    """The numbers of a cell; a direction may be a word of the compass, too."""
    if character.kind is not Kind.ANGLE or len(cell) > MAX_LETTERS or not any(map(str.isalpha, cell)):
        return cell_numbers(cell)
    try:
        return cell_numbers(cell)
    except AuctorumError:
        readings = [one.value for one in read_statement(cell, character)]
    found = []
    for value in readings:
        if isinstance(value, Range) and value.low is not None and value.high is not None:
            half = max(Fraction(value.step or 1), Fraction(value.high - value.low)) / 2
            found.append(CellNumber((value.low + value.high) / 2 % TURN, value.unit, half))
    if not found:
        raise UnreadableCell(cell, "names no direction", _CORRECT)
    return tuple(found)


def _checked(one: CellNumber, unit: str, cell: str, character: Character) -> CellNumber:
    if one.unit:
        unit_fits(unit_named(one.unit), character)
    if one.number < 0 and character.property != _BELOW_ZERO:
        raise UnreadableCell(cell, "is below 0", _CORRECT)
    if character.kind is Kind.ANGLE and one.number > TURN:
        raise UnreadableCell(cell, "is beyond 360 degrees", _CORRECT)
    if character.kind is Kind.COUNT and one.slack is None:
        if one.number != int(one.number):
            raise UnreadableCell(cell, "is not whole, and a count is", _CORRECT)
        one = replace(one, number=Decimal(int(one.number)))  # a spreadsheet makes 5.0 of a five
    return replace(one, unit=one.unit or unit)
