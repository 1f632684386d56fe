"""A wide table of any length -> chunks of columns, in memory that does not grow with it: for `determine`.

A chunk holds its rows as columns: figures in the canonical unit of their character, words of states, and fields as
typed (dates are not brought to ISO 8601, for that takes the whole column; what is wrong with them is told at the end).
Cells are read as in `tables`, each spelling once, and the problems are those of the table read whole.

A row with an organismID is held back to the end, since any later row may measure the same plant, and comes then as a
record; `HELD_BACK` rows are, and what is more is a problem. Rows without one are plants of their own and go by at once:
two with one occurrenceID stay two.
"""

from __future__ import annotations

from array import array
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from statistics import median

from auctorum.characters.cell_columns import ENOUGH, FAR_OUT, SIZES, Errors, Measures, Words, far_out
from auctorum.characters.vocabulary import Kind, Vocabulary
from auctorum.problems import Place, Problem, Severity
from auctorum.records.columns import UNREAD, Column, columns_of, titles_of
from auctorum.records.schema import MeasurementOrFact, Specimen
from auctorum.records.table_fields import Dates, Field
from auctorum.records.table_stream import Lines, Rows
from auctorum.records.tables import DATES, VERBATIM, Data, Table, cells_by_key, records_of

ROWS = 20_000  # of a chunk
HELD_BACK = 200_000
_OF_PLANT = frozenset(Specimen.__dataclass_fields__)
_NOT_OF_PLANT = frozenset(MeasurementOrFact.__dataclass_fields__) - _OF_PLANT
_LONG = {Column(field="measurementType"), Column(field="measurementValue")}


@dataclass(frozen=True, slots=True)
class Figures:
    """One numeric character of the rows of a chunk, in its canonical unit: `nan` where a row has no value.

    `slack` is the half-width that the writing leaves, `accuracy` that of the instrument's error, 0 for none.
    """

    value: array[float]
    slack: array[float]
    accuracy: array[float]


@dataclass(frozen=True, slots=True)
class Chunk:
    """Some rows of a table as columns, all of one length; `held` are records of rows held back, in the last chunks.

    `lines` are the lines of the rows in the file, `fields` the columns named by a Darwin Core term ("" for no value),
    `figures` and `words` those of characters. A row without an occurrenceID is called `row 12`, by its line.
    """

    lines: Sequence[int] = ()
    fields: Mapping[str, Sequence[str]] = field(default_factory=dict)
    figures: Mapping[str, Figures] = field(default_factory=dict)
    words: Mapping[str, Sequence[str]] = field(default_factory=dict)
    held: tuple[Specimen, ...] = ()
    problems: tuple[Problem, ...] = ()


def plant_chunks(file: Lines, name: str, vocabulary: Vocabulary, *, rows: int = ROWS) -> Iterator[Chunk]:
    """The plants of an open table in chunks of so many rows, each with its problems; `name` is that of the file.

    Only wide tables can be read so; a long one is a problem. Figures of one character in several columns (a length in
    mm and in inches) are averaged row by row.
    """
    problems: list[Problem] = []
    titles = titles_of(tuple(vocabulary), Specimen, MeasurementOrFact, required=())
    source = Rows(file, name, titles.knows, problems.append)
    place = Place(name, source.header_line, 1)
    columns: list[Column] = []
    if not source.header:
        problems.append(Problem(place, "the file is empty", "give a line of column names"))
    else:
        columns = columns_of(source.header, place, titles, problems.append, Severity.WARNING)
    if not _LONG.isdisjoint(columns):
        what = "a row for each measurement, in a table too long to be read whole"
        problems.append(Problem(place, what, "give each plant a row, with columns `character [unit]`"))
        columns = []
    if not columns:
        yield Chunk(problems=tuple(sorted(problems)))
        return
    reader = _Reader(columns, name, vocabulary, problems)
    while (taken := source.take(rows))[0]:
        yield reader.chunk(*taken)
    yield from reader.rest(rows)


class _Reader:
    """What one run of reading a stream keeps: the spellings read so far, and the rows held back."""

    def __init__(self, columns: Sequence[Column], name: str, vocabulary: Vocabulary, problems: list[Problem]) -> None:
        self._columns, self._name, self._problems = tuple(columns), name, problems
        self._fields = {number: Field(one.field) for number, one in enumerate(columns) if one.field in _OF_PLANT}
        self._number_of = {columns[number].field: number for number in self._fields}
        self._dates = {name: Dates(name) for name in DATES if name in self._number_of}
        self._words: dict[int, Words] = {}
        self._measures: dict[int, Measures] = {}
        self._errors: dict[int, Errors] = {}
        for number, one in enumerate(columns):
            if one == UNREAD or one.field:
                continue
            character = vocabulary[one.character]
            if not character.kind.is_numeric:
                self._words[number] = Words(character)
            elif one.error:
                self._errors[number] = Errors(character, one.unit)
            else:
                self._measures[number] = Measures(character, one.unit)
        self._vocabulary = vocabulary
        self._circular = {one.name for one in vocabulary.values() if one.kind is Kind.ANGLE}
        self._limits: dict[str, float] = {}
        self._held: list[Data] = []
        self._too_many = 0

    def chunk(self, lines: list[int], rows: list[list[str]]) -> Chunk:
        """The rows as columns, but for those held back, with the problems found since the last chunk."""
        for name, dates in self._dates.items():
            number = self._number_of[name]
            dates.look(lines, [self._fields[number][row[number]] for row in rows])
        lines, rows = self._without_organisms(lines, rows)
        cells = list(zip(*rows, strict=True)) if rows else [()] * len(self._columns)
        fields = {
            name: self._read(number, self._fields[number], cells, lines) for name, number in self._number_of.items()
        }
        ids = fields.get("occurrenceID", ("",) * len(lines))
        fields["occurrenceID"] = [id_ or f"row {line}" for id_, line in zip(ids, lines, strict=True)]
        words = {one.character.name: self._read(number, one, cells, lines) for number, one in self._words.items()}
        return Chunk(lines, fields, self._figures(cells, lines), words, (), self._said())

    def rest(self, rows: int) -> Iterator[Chunk]:
        """The rows held back, as records in the order of the file."""
        if self._too_many:
            what = f"{self._too_many} rows with an organismID were left out: {HELD_BACK} can be kept in mind"
            remedy = "give an organismID only to plants that are measured in several rows, or split the table by site"
            self._problems.append(Problem(Place(self._name), what, remedy))
        for name, dates in self._dates.items():
            self._problems += dates.problems(Place(self._name, 1, self._number_of[name] + 1))
            dates.settle(self._held, VERBATIM.get(name, ""))
        for start in range(0, len(self._held), rows):
            table = Table(self._columns, ())
            held = tuple(records_of(table, Specimen, self._held[start : start + rows], self._problems.append))
            yield Chunk(held=held, problems=self._said())
        if self._problems:
            yield Chunk(problems=self._said())

    def _said(self) -> tuple[Problem, ...]:
        found = tuple(sorted(self._problems))
        self._problems.clear()
        return found

    def _without_organisms(self, lines: list[int], rows: list[list[str]]) -> tuple[list[int], list[list[str]]]:
        """The rows without an organismID; the others are held back."""
        number = self._number_of.get("organismID")
        if number is None:
            return lines, rows
        organism, kept = self._fields[number], []
        for line, row in zip(lines, rows, strict=True):
            if not organism[row[number]]:
                kept.append((line, row))
            elif len(self._held) < HELD_BACK:
                data = cells_by_key(row, self._columns, Place(self._name, line, 1), self._problems.append)
                data.setdefault("occurrenceID", f"row {line}")
                self._held.append({key: value for key, value in data.items() if key not in _NOT_OF_PLANT})
            else:
                self._too_many += 1
        return [line for line, _ in kept], [row for _, row in kept]

    def _read(
        self, number: int, spellings: Words | Field, cells: Sequence[Sequence[str]], lines: Sequence[int]
    ) -> Sequence[str]:
        found = list(map(spellings.__getitem__, cells[number]))
        self._tell(number, spellings, cells[number], lines)
        return found

    def _figures(self, cells: Sequence[Sequence[str]], lines: Sequence[int]) -> dict[str, Figures]:
        found: dict[str, Figures] = {}
        sizes: dict[str, list[tuple[int, array[float]]]] = {}
        for number, one in self._measures.items():
            values, slacks, errors = one.columns(cells[number])
            self._tell(number, one, cells[number], lines)
            name = one.character.name
            sizes.setdefault(name, []).append((number, values))
            figures = Figures(values, slacks, errors)
            found[name] = _together(found[name], figures, name in self._circular) if name in found else figures
        for name, columns in sizes.items():
            if self._vocabulary[name].kind in SIZES:
                self._check_sizes(name, columns, cells, lines)
        for number, error in self._errors.items():
            if (of := found.get(error.character.name)) is not None:
                measured = [cell if value == value else "" for cell, value in zip(cells[number], of.value, strict=True)]
                accuracy = array("d", map(max, of.accuracy, map(error.__getitem__, measured)))
                self._tell(number, error, measured, lines)
                found[error.character.name] = Figures(of.value, of.slack, accuracy)
        return found

    def _tell(
        self, number: int, spellings: Words | Measures | Errors | Field, cells: Sequence[str], lines: Sequence[int]
    ) -> None:
        """The problems of the cells of one column, and room for other spellings."""
        if not spellings.bad.keys().isdisjoint(cells):
            column = self._columns[number]
            title = f"column `{column.character}{' ±' if column.error else ''}`: " if column.character else ""
            for line, cell in zip(lines, cells, strict=True):
                if cell in spellings.bad:
                    what, remedy, severity = spellings.bad[cell]
                    self._problems.append(Problem(Place(self._name, line, number + 1), title + what, remedy, severity))
        spellings.make_room()

    def _check_sizes(
        self,
        name: str,
        columns: Sequence[tuple[int, array[float]]],
        cells: Sequence[Sequence[str]],
        lines: Sequence[int],
    ) -> None:
        """A warning for each value that is more than a thousand times the median of the first rows."""
        if name not in self._limits:
            known = [value for _, values in columns for value in values if value == value]
            if len(known) < ENOUGH:
                return
            self._limits[name] = FAR_OUT * median(known)
        limit = self._limits[name]
        for number, values in columns:
            for at in [at for at, value in enumerate(values) if value > limit > 0]:
                place = Place(self._name, lines[at], number + 1)
                self._problems.append(far_out(name, cells[number][at], place))


def _together(one: Figures, other: Figures, circular: bool) -> Figures:
    """Two columns of one character: the mean where a row has both, the coarser slack; of directions the first."""
    value, slack, accuracy = one.value[:], one.slack[:], one.accuracy[:]
    for at, second in enumerate(other.value):
        if second != second:
            continue
        if value[at] != value[at]:
            value[at], slack[at], accuracy[at] = second, other.slack[at], other.accuracy[at]
        elif not circular:
            value[at] = (value[at] + second) / 2
            slack[at] = max(slack[at], other.slack[at])
            accuracy[at] = max(accuracy[at], other.accuracy[at])
    return Figures(value, slack, accuracy)
