"""CSV text -> rows of records; opens no file.

Columns are named as the record's fields (Darwin Core terms); a column `character [unit]`, or one named as a
character of the vocabulary, is a measurement. In places, the column counts cells from 1, as spreadsheets do.
A bad cell is named and left out, the rest of its row is used; dates are brought to ISO 8601, column by column.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any, TypeVar

from auctorum.characters.cells import UnreadableCell, check_broken, is_missing
from auctorum.problems import Place, Problem, Severity
from auctorum.records.columns import UNREAD, Column, Titles, columns_of, titles_of
from auctorum.records.faults import json_schema, validate
from auctorum.records.schema import PLACE_KEY, MeasurementOrFact
from auctorum.records.table_dates import iso_dates
from auctorum.records.table_text import Report, table_rows

T = TypeVar("T")
Data = dict[str, Any]
_DATES = ("eventDate", "measurementDeterminedDate")
_VERBATIM = {"eventDate": "verbatimEventDate"}  # where the date as typed is kept
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
    rows = table_rows(text, file, titles.knows, report)
    header = next(rows, None)
    if header is None:
        report(Problem(Place(file, 1, 1), "the file is empty", "give a line of column names"))
        return Table((), ())
    columns = tuple(columns_of(header[1], Place(file, header[0], 1), titles, report, severity))
    found = tuple(_row_data(rows, header[1], columns, file, report))
    for field in _DATES:
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


def _row_data(
    rows: Iterable[tuple[int, list[str]]], header: Sequence[str], columns: Sequence[Column], file: str, report: Report
) -> Iterator[Data]:
    untitled: set[int] = set()
    for line, cells in rows:
        place = Place(file, line, 1)
        if len(cells) > len(columns) and any(cells[len(columns) :]):
            what = f"{len(cells)} cells in a table of {len(columns)} columns; the row was left out"
            report(Problem(place, what, "put cells that hold a separator in quotation marks"))
            continue
        for number, (cell, title) in enumerate(zip(cells, header, strict=False), 1):
            if cell and not title and number not in untitled:
                untitled.add(number)
                what = "cells in a column without a title were left out"
                report(Problem(place._replace(column=number), what, "give the column a title"))
        yield cells_by_key(cells, columns, place, report)


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
                check_broken(cell)
            except UnreadableCell as error:
                report(error.at(place._replace(column=number)))
                continue
            data[column.field] = cell.translate(_BLANKS)
    if measured:
        data["measurements"] = tuple(measured)
    if errors:
        data["accuracies"] = tuple(errors)
    return data


def _settle_dates(field: str, rows: Sequence[Data], columns: Sequence[Column], titles: Titles, report: Report) -> None:
    """Bring the dates of one column to ISO 8601; what was typed is kept beside it where the record has room."""
    if Column(field=field) not in columns:
        return
    number = columns.index(Column(field=field)) + 1
    dated = [data for data in rows if field in data]
    verbatim = _VERBATIM.get(field, "")
    for data, one in zip(dated, iso_dates([data[field] for data in dated]), strict=True):
        if one.what:
            place = data[PLACE_KEY]._replace(column=number)
            report(Problem(place, f"`{field}`: {one.what}", one.remedy, one.severity))
        if one.iso == data[field]:
            continue
        if verbatim in titles.fields.values():
            data.setdefault(verbatim, data[field])
        data[field] = one.iso
