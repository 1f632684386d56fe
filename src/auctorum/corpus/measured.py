"""Measured cells of specimens, labels and long tables -> measurements of the vocabulary's characters."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from statistics import median

from auctorum.characters.cells import CellNumber, cell_numbers, check_broken, is_missing, printed, slack_of
from auctorum.characters.directions import TURN
from auctorum.characters.read import read_statement
from auctorum.characters.units import UnfitUnit, UnknownUnit, convert, unit_fits, unit_named
from auctorum.characters.values import Range
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.corpus.model import Measurement
from auctorum.corpus.readings import ImpossibleValue, Report, UnknownCharacter, find_character
from auctorum.problems import AuctorumError, Place, Problem, Severity
from auctorum.records import schema

FAR_OUT = 1000  # times the median of its character: a slip of the unit or of the decimal mark
_ENOUGH = 5  # values that make a median worth comparing with
_OF_A_COLUMN = (UnknownCharacter, UnfitUnit, UnknownUnit)  # faults that are told once for a column of a file
_PRESENCE = {
    **dict.fromkeys(("yes", "y", "+", "x", "1", "true", "✓", "✔"), "present"),
    **dict.fromkeys(("no", "n", "0", "false"), "absent"),
}
_BELOW_ZERO = "elevation"  # the one property of a place that may be


class CellReader:
    """Reads the cells of one table or of several; every cell that can't be used is a problem, and the rest is."""

    def __init__(self, vocabulary: Vocabulary, report: Report) -> None:
        self._vocabulary, self._report = vocabulary, report
        self._told: set[tuple[str, int, str]] = set()
        self._values: dict[str, list[tuple[float, Place, str]]] = {}

    def row(
        self,
        cells: Sequence[tuple[str, str, str, int]],
        place: Place,
        accuracies: Sequence[tuple[str, str, str, int]] = (),
    ) -> tuple[Measurement, ...]:
        """The measurements of one row of a wide table: character, unit, cell and its column."""
        errors = {said: (unit, cell, column) for said, unit, cell, column in accuracies}
        found = []
        for said, unit, cell, column in cells:
            at = place._replace(column=column)
            measured = self._read(said, unit, cell, at)
            if said in errors and measured:
                error_unit, error_cell, error_column = errors[said]
                error_at = place._replace(column=error_column)
                measured = [self._with_error(one, error_unit, error_cell, error_at) for one in measured]
            found += measured
        return tuple(found)

    def long(self, row: schema.MeasurementOrFact) -> tuple[Measurement, ...]:
        """The measurements of one row of a long table."""
        place = row.place
        of_type, of_value, of_unit, of_accuracy = (place._replace(column=column) for column in row.columns)
        said = "" if is_missing(row.measurementUnit) else row.measurementUnit
        try:
            character = find_character(row.measurementType, self._vocabulary)
        except UnknownCharacter as error:
            self._report(error.at(of_type))
            return ()
        if said and character.kind.is_numeric and (problem := _unit_fault(said, character)) is not None:
            self._report(problem.at(of_unit))
            return ()
        found = self._read(character.name, said, row.measurementValue, of_value)
        found = [self._with_error(one, said, row.measurementAccuracy, of_accuracy) for one in found]
        stage, by, instrument = row.lifeStage, row.measurementDeterminedBy, row.measurementMethod
        return tuple(
            Measurement(one.character, one.unit, one.number, one.words, one.slack, one.accuracy, stage, by, instrument)
            for one in found
        )

    def far_out(self) -> list[Problem]:
        """A warning for each value that is more than a thousand times the median of its character."""
        found = []
        for character, values in self._values.items():
            if len(values) < _ENOUGH:
                continue
            limit = FAR_OUT * median(value for value, _, _ in values)
            for value, place, cell in values:
                if value > limit > 0:
                    what = f"`{character}`: {cell!r} is more than {FAR_OUT} times the median of its column"
                    found.append(Problem(place, what, "check its unit and decimal mark", Severity.WARNING))
        return found

    def _read(self, said: str, unit: str, cell: str, place: Place) -> list[Measurement]:
        try:
            character = find_character(said, self._vocabulary)
            if not character.kind.is_numeric:
                return self._states(character, cell, place)
            found = [self._checked(one, character, unit, cell, place) for one in _numbers(cell, character)]
        except AuctorumError as error:
            self._tell(error, said, place)
            return []
        if character.kind in (Kind.MEASURE, Kind.COUNT):
            for one in found:
                value = Fraction(one.number or 0)
                value = convert(value, one.unit, character.unit) if one.unit else value
                self._values.setdefault(character.name, []).append((float(value), place, cell))
        return found

    def _tell(self, error: AuctorumError, said: str, place: Place) -> None:
        if isinstance(error, _OF_A_COLUMN):
            key = (place.file, place.column, str(error))
            if key in self._told:
                return
            self._told.add(key)
        self._report(Problem(place, f"column `{said}`: {error}", error.remedy))

    def _states(self, character: Character, cell: str, place: Place) -> list[Measurement]:
        """The words of a state; those of presence may be a sign."""
        words = printed(cell)
        if character.kind is Kind.PRESENCE:
            if words in ("-", "--"):
                what = f"column `{character.name}`: {words!r} may mean absent, or not noted"
                self._report(Problem(place, what, "write absent, or leave the cell empty"))
                return []
            words = _PRESENCE.get(words.casefold(), cell)
        if is_missing(cell):
            return []
        check_broken(cell)
        read_statement(words, character)
        if cell.rstrip().endswith(("?", "(?)")):
            self._remark(character.name, cell, "it is marked as doubtful, and was used all the same", place)
        return [Measurement(character.name, "", None, words if words in ("present", "absent") else cell)]

    def _checked(self, one: CellNumber, character: Character, unit: str, cell: str, place: Place) -> Measurement:
        said = one.unit or unit
        if said and character.kind is Kind.RATIO and unit_named(said).name == "percent":
            raise ImpossibleCell(cell, "is a percentage, and a ratio is wanted")
        if character.kind in (Kind.MEASURE, Kind.ANGLE):
            said = said or character.unit
        if said:
            unit_fits(unit_named(said), character)
        number = one.number
        if number < 0 and character.property != _BELOW_ZERO:
            raise ImpossibleCell(cell, "is below 0")
        if character.kind is Kind.ANGLE and not 0 <= number <= TURN:
            raise ImpossibleCell(cell, "a direction lies between 0 and 360 degrees")
        if character.kind is Kind.COUNT:
            if one.slack is None and number != int(number):
                raise ImpossibleCell(cell, "a count is whole")
            if one.slack is None:
                number = Decimal(int(number))  # a spreadsheet makes 5.0 of a five
        if one.remark:
            self._remark(character.name, cell, one.remark, place)
        return Measurement(character.name, said, number, cell, one.slack, one.error or Fraction(0))

    def _remark(self, character: str, cell: str, remark: str, place: Place) -> None:
        what = f"column `{character}`: {cell[:60]!r}: {remark}"
        self._report(Problem(place, what, "look at it again", Severity.WARNING))

    def _with_error(self, one: Measurement, unit: str, cell: str, place: Place) -> Measurement:
        """The measurement with the half-width of the instrument's error that a cell of its own states."""
        if one.number is None:
            return one
        try:
            found = cell_numbers(printed(cell).lstrip("±").removeprefix("+/-").strip())
            if not found:
                return one
            if len(found) > 1 or found[0].number < 0:
                raise ImpossibleCell(cell, "is no half-width of an error")
            said = found[0].unit or unit
            error = Fraction(found[0].number)
            error = convert(error, said, one.unit) if said and one.unit else error
        except AuctorumError as fault:
            self._tell(fault, f"{one.character} ±", place)
            return one
        accuracy = max(error, one.accuracy)
        return Measurement(one.character, one.unit, one.number, one.words, one.slack, accuracy)


class ImpossibleCell(ImpossibleValue):
    """A number that was read, but that no plant can have."""

    remedy = "correct the cell, or leave it empty"


def _unit_fault(said: str, character: Character) -> AuctorumError | None:
    try:
        unit_fits(unit_named(said), character)
    except AuctorumError as error:
        return error
    return None


def _numbers(cell: str, character: Character) -> tuple[CellNumber, ...]:
    """The numbers of a cell; a direction may be a word of the compass, too."""
    if character.kind is not Kind.ANGLE or not any(letter.isalpha() for letter in cell) or is_missing(cell):
        return cell_numbers(cell)
    try:
        return cell_numbers(cell)
    except AuctorumError:
        readings = [one.value for one in read_statement(cell, character)]
    found = []
    for value in readings:
        if isinstance(value, Range) and value.low is not None and value.high is not None:
            step = Fraction(value.step or 1) / 2
            width = Fraction(value.high - value.low) / 2
            found.append(CellNumber((value.low + value.high) / 2 % TURN, value.unit, max(step, width)))
    if not found:
        raise ImpossibleCell(cell, "names no direction")
    return tuple(found)


def half_width(one: Measurement) -> Fraction:
    """Half the width that the writing of a measurement leaves, in its unit."""
    return slack_of(CellNumber(one.number or Decimal(0), slack=one.slack))
