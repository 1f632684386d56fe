"""Whole columns of cells -> numbers and words: each spelling is read once, which is quick where many cells repeat."""

from __future__ import annotations

from array import array
from collections.abc import Sequence
from fractions import Fraction
from typing import Generic, TypeVar

from auctorum.characters.cell_values import error_in, numbers_in, words_in
from auctorum.characters.cells import CellNumber, UnreadableCell, slack_of
from auctorum.characters.units import convert
from auctorum.characters.vocabulary import Character, Kind
from auctorum.problems import AuctorumError, Place, Problem, Severity

SPELLINGS = 100_000  # of one column that are kept
NAN = float("nan")
Measured = tuple[float, float, float]  # value (NAN for none), slack and accuracy in the canonical unit
T = TypeVar("T")
FAR_OUT = 1000  # times the median of its character: a slip of the unit or of the decimal mark
ENOUGH = 5  # values that make a median worth comparing with
SIZES = (Kind.MEASURE, Kind.COUNT)  # what is compared so


def far_out(character: str, cell: str, place: Place) -> Problem:
    """The warning for a value that lies so far above the median."""
    what = f"`{character}`: {cell[:60]!r} is more than {FAR_OUT} times the median of its column"
    return Problem(place, what, "check its unit and decimal mark", Severity.WARNING)


class Spellings(dict[str, T], Generic[T]):
    """Cell -> what it says, each spelling read when it is first asked for.

    `bad` are the spellings with a fault or worth a look: what, remedy, severity.
    """

    nothing: T  # what a cell says that can't be read

    def __init__(self) -> None:
        super().__init__()
        self.bad: dict[str, tuple[str, str, Severity]] = {}

    def __missing__(self, cell: str) -> T:
        try:
            found, remark = self.read(cell.strip())
            if remark:
                self.bad[cell] = (f"{cell.strip()[:60]!r}: {remark}", "look at it again", Severity.WARNING)
        except AuctorumError as error:
            found = self.nothing
            self.bad[cell] = (str(error), error.remedy, Severity.ERROR)
        self[cell] = found
        return found

    def read(self, cell: str) -> tuple[T, str]:
        """What the cell says, and a remark for a person ("" for none); raises AuctorumError."""
        raise NotImplementedError

    def make_room(self) -> None:
        """Forget the spellings where they are many: memory does not grow with the table."""
        if len(self) > SPELLINGS:
            self.clear()
            self.bad.clear()


class Words(Spellings[str]):
    """Cell -> the words that say a state of the character, "" for a missing value."""

    nothing = ""

    def __init__(self, character: Character) -> None:
        super().__init__()
        self.character = character

    def read(self, cell: str) -> tuple[str, str]:
        return words_in(cell, self.character)


class Errors(Spellings[float]):
    """Cell -> the half-width of an error in the canonical unit of the character, 0 for none."""

    nothing = 0.0

    def __init__(self, character: Character, unit: str) -> None:
        super().__init__()
        self.character, self._unit = character, unit

    def read(self, cell: str) -> tuple[float, str]:
        error = error_in(cell, self._unit, self.character.unit, self.character)
        return float(error or 0), ""


class Measures(Spellings[Measured]):
    """Cell -> value, slack and accuracy of a numeric character: the mean of several numbers, the coarsest slack."""

    nothing = (NAN, 0.0, 0.0)

    def __init__(self, character: Character, unit: str) -> None:
        super().__init__()
        self.character, self._unit = character, unit

    def read(self, cell: str) -> tuple[Measured, str]:
        numbers = numbers_in(cell, self._unit, self.character)
        if not numbers:
            return self.nothing, ""
        if len(numbers) > 1 and self.character.kind is Kind.ANGLE:
            raise UnreadableCell(cell, "holds several directions", "write one")
        exact = [self._canonical(one) for one in numbers]
        value = sum(one[0] for one in exact) / len(exact)
        remark = next((one.remark for one in numbers if one.remark), "")
        return (value, max(one[1] for one in exact), max(one[2] for one in exact)), remark

    def columns(self, cells: Sequence[str]) -> tuple[array[float], array[float], array[float]]:
        """Values, slacks and accuracies of a column of cells."""
        found = list(map(self.__getitem__, cells))
        values, slacks, errors = (array("d", [one[part] for one in found]) for part in range(3))
        return values, slacks, errors

    def _canonical(self, one: CellNumber) -> Measured:
        parts = (one.number, slack_of(one), one.error or Fraction(0))
        if not one.unit:
            return (float(parts[0]), float(parts[1]), float(parts[2]))
        value, slack, error = (float(convert(part, one.unit, self.character.unit)) for part in parts)
        return value, slack, error
