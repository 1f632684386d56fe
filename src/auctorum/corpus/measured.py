"""Measured cells of specimens, labels and long tables -> measurements of the vocabulary's characters."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from statistics import median

from auctorum.characters.cell_columns import ENOUGH, FAR_OUT, SIZES, far_out
from auctorum.characters.cell_values import error_in, numbers_in, words_in
from auctorum.characters.cells import CellNumber, is_missing, slack_of
from auctorum.characters.units import convert, unit_fits, unit_named
from auctorum.characters.vocabulary import Character, Vocabulary, folded
from auctorum.corpus.model import Measurement
from auctorum.corpus.readings import Report, UnknownCharacter, find_character
from auctorum.problems import AuctorumError, Place, Problem, Severity
from auctorum.records import schema

# The measurements of a cell, the largest in the canonical unit (None where sizes are not compared), and a remark.
_Spelt = tuple[tuple[Measurement, ...], float | None, str]


class _FaultOfColumn(Exception):
    """A fault that every cell of the column has."""

    def __init__(self, error: AuctorumError) -> None:
        super().__init__(error)
        self.error = error


class CellReader:
    """Reads the cells of one table or of several; every cell that can't be used is a problem, and the rest is."""

    def __init__(self, vocabulary: Vocabulary, report: Report) -> None:
        self._vocabulary, self._report = vocabulary, report
        self._told: set[tuple[str, int, str]] = set()
        self._spelt: dict[tuple[str, str, str], _Spelt] = {}  # character, unit, cell: each spelling is read once
        self._folded = {folded(name): name for name in vocabulary}
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
            if said in errors:
                error_unit, error_cell, error_column = errors[said]
                measured = self._with_error(measured, error_unit, error_cell, place._replace(column=error_column))
            found += measured
        return tuple(found)

    def long(self, row: schema.MeasurementOrFact) -> tuple[Measurement, ...]:
        """The measurements of one row of a long table."""
        place = row.place
        of_type, of_value, of_unit, of_accuracy = (place._replace(column=column) for column in row.columns)
        said = "" if is_missing(row.measurementUnit) else row.measurementUnit
        try:
            character = self._character(row.measurementType)
        except UnknownCharacter as error:
            self._report(error.at(of_type))
            return ()
        if said and character.kind.is_numeric and (problem := _unit_fault(said, character)) is not None:
            self._report(problem.at(of_unit))
            return ()
        found = self._read(character.name, said, row.measurementValue, of_value)
        found = self._with_error(found, said, row.measurementAccuracy, of_accuracy)
        stage, by, instrument = row.lifeStage, row.measurementDeterminedBy, row.measurementMethod
        return tuple(replace(one, stage=stage, by=by, instrument=instrument) for one in found)

    def far_out(self) -> list[Problem]:
        """A warning for each value that is more than a thousand times the median of its character."""
        found = []
        for character, values in self._values.items():
            if len(values) < ENOUGH:
                continue
            limit = FAR_OUT * median(value for value, _, _ in values)
            for value, place, cell in values:
                if value > limit > 0:
                    found.append(far_out(character, cell, place))
        return found

    def _read(self, said: str, unit: str, cell: str, place: Place) -> list[Measurement]:
        key = (said, unit, cell)
        try:
            if key not in self._spelt:
                self._spelt[key] = self._measured(said, unit, cell)
        except _FaultOfColumn as fault:
            self._tell(fault.error, said, place, once=True)
            return []
        except AuctorumError as error:
            self._tell(error, said, place)
            return []
        found, value, remark = self._spelt[key]
        if remark:
            what = f"column `{said}`: {cell[:60]!r}: {remark}"
            self._report(Problem(place, what, "look at it again", Severity.WARNING))
        if value is not None:
            self._values.setdefault(found[0].character, []).append((value, place, cell))
        return list(found)

    def _measured(self, said: str, unit: str, cell: str) -> _Spelt:
        """What a cell says; raises AuctorumError, _FaultOfColumn where no cell of the column can be read."""
        try:
            character = self._character(said)
        except UnknownCharacter as error:
            raise _FaultOfColumn(error) from error
        if not character.kind.is_numeric:
            words, remark = words_in(cell, character)
            return ((Measurement(character.name, "", None, words),) if words else ()), None, remark
        if unit and (fault := _unit_fault(unit, character)) is not None:
            raise _FaultOfColumn(fault)
        numbers = numbers_in(cell, unit, character)
        found = tuple(
            Measurement(character.name, one.unit, one.number, cell, one.slack, one.error or Fraction(0))
            for one in numbers
        )
        largest = None
        if numbers and character.kind in SIZES:
            largest = max(
                float(convert(one.number, one.unit, character.unit) if one.unit else one.number) for one in numbers
            )
        return found, largest, next((one.remark for one in numbers if one.remark), "")

    def _character(self, said: str) -> Character:
        """The character of that name, whatever its case and blanks; raises UnknownCharacter."""
        return find_character(self._folded.get(folded(said), said), self._vocabulary)

    def _tell(self, error: AuctorumError, said: str, place: Place, *, once: bool = False) -> None:
        """The problem of a cell; `once` for a fault of its whole column, which is told at its first cell."""
        if once:
            key = (place.file, place.column, str(error))
            if key in self._told:
                return
            self._told.add(key)
        self._report(Problem(place, f"column `{said}`: {error}", error.remedy))

    def _with_error(self, found: list[Measurement], unit: str, cell: str, place: Place) -> list[Measurement]:
        """The measurements of a cell with the half-width of the instrument's error that another cell states."""
        if not cell or not found or found[0].number is None:
            return found
        character = self._vocabulary[found[0].character]
        try:
            errors = [error_in(cell, unit, one.unit, character) or Fraction(0) for one in found]
        except AuctorumError as fault:
            self._tell(fault, f"{character.name} ±", place)
            return found
        return [replace(one, accuracy=max(error, one.accuracy)) for one, error in zip(found, errors, strict=True)]


def _unit_fault(said: str, character: Character) -> AuctorumError | None:
    try:
        unit_fits(unit_named(said), character)
    except AuctorumError as error:
        return error
    return None


def half_width(one: Measurement) -> Fraction:
    """Half the width that the writing of a measurement leaves, in its unit."""
    return slack_of(CellNumber(one.number or Decimal(0), slack=one.slack))
