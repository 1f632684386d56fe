"""CSV text -> rows of records; opens no file.

Columns are named as the record's fields (Darwin Core terms); a column `character [unit]`, or one named as a
character of the vocabulary, is a measurement. In places, the column counts cells from 1, as spreadsheets do.
A bad cell is named and left out, the rest of its row is used; dates are brought to ISO 8601, column by column.
"""

from __future__ import annotations

import io
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, TypeVar

from auctorum.characters.cells import UnreadableCell, check_broken, is_missing
from auctorum.problems import Place, Problem, Severity
from auctorum.records.columns import UNREAD, Column, Titles, columns_of, titles_of
from auctorum.records.faults import json_schema, validate
from auctorum.records.schema import PLACE_KEY, MeasurementOrFact
from auctorum.records.table_dates import CellDate, iso_dates
from auctorum.records.table_stream import Rows
from auctorum.records.table_text import Report

T = TypeVar("T")
Data = dict[str, Any]
DATES = ("eventDate", "measurementDeterminedDate")
VERBATIM = {"eventDate": "verbatimEventDate"}  # where the date as typed is kept
_LONG_CELLS = ("measurementType", "measurementValue", "measurementUnit", "measurementAccuracy")
_BLANKS = str.maketrans("\u00a0\u2007\u202f", "   ")


@dataclass(frozen=True, slots=True)
class Table:
    """The columns of a table, and of each row what its cells say, by the keys of the records, with its place."""

    columns: tuple[Column, ...]
    rows: tuple[Data, ...]

    def number_of(self, field: str) -> int:
        """The column of a field, counted from 1; 1 where it has none."""
        return next((number for number, column in enumerate(self.columns, 1) if column.field == field), 1)


def parse_rows(
    text: str, file: str, record: type[T], characters: Collection[str]
) -> tuple[tuple[T, ...], list[Problem]]:
    """Every row that has what it must have as a record, and every problem. A bad cell is left out and named."""
    problems: list[Problem] = []
    table = read_table(text, file, titles_of(characters, record), problems.append)
    return tuple(records_of(table, record, table.rows, problems.append)), problems


def read_table(text: str, file: str, titles: Titles, report: Report, severity: Severity = Severity.ERROR) -> Table:
    """The table as columns and rows; a column that is not known is a problem of that severity."""
    rows = Rows(io.StringIO(text, newline=""), file, titles.knows, report)
    place = Place(file, rows.header_line, 1)
    if not rows.header:
        report(Problem(place, "the file is empty", "give a line of column names"))
        return Table((), ())
    columns = tuple(columns_of(rows.header, place, titles, report, severity))
    found = tuple(cells_by_key(cells, columns, Place(file, line, 1), report) for line, cells in rows)
    for field in DATES:
        _settle_dates(field, found, columns, titles, report)
    return Table(columns, found)


def records_of(table: Table, record: type[T], rows: Iterable[Data], report: Report) -> Iterator[T]:
    """The rows as records of that class; cells that are no good are named and left out."""
    required = _required(record)
    places = tuple(table.number_of(field) for field in _LONG_CELLS) if record is MeasurementOrFact else ()
    for data in rows:
        if places:
            data = data | {"columns": places}
        found, faults = validate(record, data)
        if found is None:
            bad = {fault.within[0] for fault in faults if fault.within} - {*required}
            if bad:
                found, _ = validate(record, {key: value for key, value in data.items() if key not in bad})
        for fault in faults:
            number = table.number_of(str(fault.within[0])) if fault.within else 1
            report(Problem(fault.place._replace(column=number), fault.what, fault.remedy, fault.severity))
        if found is not None:
            yield found


def _required(record: type) -> frozenset[str]:
    return frozenset(json_schema(record).get("required", ()))


def cells_by_key(cells: Sequence[str], columns: Sequence[Column], place: Place, report: Report) -> Data:
    """What the cells of one row say, by the keys of the records, with its place; marks of missing values left out."""
    data: Data = {PLACE_KEY: place}
    measured: list[tuple[str, str, str, int]] = []
    errors: list[tuple[str, str, str, int]] = []
    for number, (cell, column) in enumerate(zip(cells, columns, strict=False), 1):
        if not cell or column == UNREAD:
            continue
        if column.character:
            (errors if column.error else measured).append((column.character, column.unit, cell, number))
        elif not is_missing(cell):
            try:
                data[column.field] = field_cell(cell)
            except UnreadableCell as error:
                report(error.at(place._replace(column=number)))
    if measured:
        data["measurements"] = tuple(measured)
    if errors:
        data["accuracies"] = tuple(errors)
    return data


def field_cell(cell: str) -> str:
    """A cell of a field with plain blanks; raises UnreadableCell for what a spreadsheet could not work out."""
    check_broken(cell)
    return cell.translate(_BLANKS)


def _settle_dates(field: str, rows: Sequence[Data], columns: Sequence[Column], titles: Titles, report: Report) -> None:
    """Bring the dates of one column to ISO 8601; what was typed is kept beside it where the record has room."""
    if Column(field=field) not in columns:
        return
    number = columns.index(Column(field=field)) + 1
    dated = [data for data in rows if field in data]
    verbatim = VERBATIM.get(field, "")
    for data, one in zip(dated, iso_dates([data[field] for data in dated]), strict=True):
        if one.what:
            report(date_problem(one, field, data[PLACE_KEY]._replace(column=number)))
        put_date(data, field, one, verbatim if verbatim in titles.fields.values() else "")


def date_problem(one: CellDate, field: str, place: Place) -> Problem:
    """What a person should know of a date, at its cell."""
    return Problem(place, f"`{field}`: {one.what}", one.remedy, one.severity)


def put_date(data: Data, field: str, one: CellDate, verbatim: str) -> None:
    """Bring the date to ISO 8601; what was typed is kept in the field `verbatim` ("" for none)."""
    if one.iso != data[field]:
        if verbatim:
            data.setdefault(verbatim, data[field])
        data[field] = one.iso
