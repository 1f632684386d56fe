"""CSV text -> rows of records; opens no file.

Columns are named as the record's fields (Darwin Core terms); a column `character [unit]`, or one named as a
character of the vocabulary, is a measurement. In places, the column counts cells from 1, as spreadsheets do.
"""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Callable, Collection, Iterator
from dataclasses import dataclass
from typing import Any, TypeVar

from auctorum.names.nearest import nearest
from auctorum.problems import Place, Problem, Severity
from auctorum.records.faults import json_schema, validate
from auctorum.records.schema import PLACE_KEY
from auctorum.records.yamltext import CONTROL

T = TypeVar("T")
_MEASURED = re.compile(r"(?P<character>[^\[\]]+)\[(?P<unit>[^\[\]]*)\]")
MAX_CELL = 20_000_000  # letters: no less than a whole file may have


@dataclass(frozen=True, slots=True)
class Column:
    """What one column holds: a field of the record, or a measurement of a character in a unit."""

    field: str = ""
    character: str = ""
    unit: str = ""


def parse_rows(
    text: str, file: str, record: type[T], characters: Collection[str]
) -> tuple[tuple[T, ...], list[Problem]]:
    """Every good row as a record, and every problem. A row with a bad cell is left out and named."""
    problems: list[Problem] = []
    if text.startswith("\ufeff"):
        text = text[1:]
        what = "the file begins with a byte order mark"
        problems.append(Problem(Place(file, 1, 1), what, "it was read all the same", Severity.WARNING))
    rows = _rows(text, file, problems.append)
    header = next(rows, None)
    if header is None:
        return (), [*problems, Problem(Place(file, 1, 1), "the file is empty", "give a line of column names")]
    columns = _columns(header[1], Place(file, header[0], 1), record, characters, problems.append)
    records: list[T] = []
    for line, cells in rows:
        data = _row_data(line, cells, columns, file, problems.append)
        if data is None:
            continue
        found, faults = validate(record, data)
        problems += [_in_column(fault, columns) for fault in faults]
        if found is not None:
            records.append(found)
    return tuple(records), problems


def _rows(text: str, file: str, report: Callable[[Problem], None]) -> Iterator[tuple[int, list[str]]]:
    """Line number and trimmed cells of every row that is not blank."""
    first = re.sub(r'"[^"]*"', "", re.split(r"[\r\n]", text, maxsplit=1)[0])
    delimiter = max(",;\t", key=first.count)
    csv.field_size_limit(MAX_CELL)
    reader = csv.reader(io.StringIO(text, newline=""), delimiter=delimiter, strict=True)
    line = 1
    try:
        for row in reader:
            cells = [CONTROL.sub("", cell).strip() for cell in row]
            if any(map(CONTROL.search, row)):
                report(Problem(Place(file, line, 1), "a control character in a cell", "delete it"))
            if any(cells):
                yield line, cells
            line = reader.line_num + 1
    except csv.Error as error:
        place = Place(file, line, 1)
        lost = text.count("\n") + 1 - line
        what = f"not readable as CSV from here to the end, {lost} lines: {error}"
        report(Problem(place, what, "check the quotation marks"))


def _columns(
    header: list[str],
    place: Place,
    record: type,
    characters: Collection[str],
    report: Callable[[Problem], None],
) -> list[Column]:
    known = [key for key in json_schema(record)["properties"] if key != "measurements"]
    measures = "measurements" in json_schema(record)["properties"]
    columns: list[Column] = []
    for number, title in enumerate(header, 1):
        here = place._replace(column=number)
        column = _column(title, known, characters if measures else ())
        if column in columns and column != Column():
            report(Problem(here, f"the column `{title}` stands twice", "keep one; the first was read"))
            column = Column()
        elif column == Column():
            near = nearest(title, [*known, *characters], limit=1)
            meant = f"did you mean `{near[0]}`? " if near else ""
            remedy = f"{meant}use a Darwin Core term of the record, or `character [unit]`"
            report(Problem(here, f"the column `{title}` is not known and was left out", remedy))
        columns.append(column)
    missing = [key for key in json_schema(record).get("required", ()) if Column(field=key) not in columns]
    for key in missing:
        report(Problem(place, f"the column `{key}` is missing", "add it"))
    return columns


def _column(title: str, known: Collection[str], characters: Collection[str]) -> Column:
    if title in known:
        return Column(field=title)
    match = _MEASURED.fullmatch(title)
    if match and match["character"].strip() in characters:
        return Column(character=match["character"].strip(), unit=match["unit"].strip())
    return Column(character=title) if title in characters else Column()


def _row_data(
    line: int, cells: list[str], columns: list[Column], file: str, report: Callable[[Problem], None]
) -> dict[str, Any] | None:
    place = Place(file, line, 1)
    if len(cells) > len(columns) and any(cells[len(columns) :]):
        what = f"{len(cells)} cells in a table of {len(columns)} columns"
        report(Problem(place, what, "put cells that hold a separator in quotation marks"))
        return None
    data: dict[str, Any] = {PLACE_KEY: place}
    measurements = []
    for number, (cell, column) in enumerate(zip(cells, columns, strict=False), 1):
        if cell and column.field:
            data[column.field] = cell
        elif cell and column.character:
            measurements.append((column.character, column.unit, cell, number))
    if measurements:
        data["measurements"] = tuple(measurements)
    return data


def _in_column(problem: Problem, columns: list[Column]) -> Problem:
    """The problem of a row, at the column of the cell that it is about."""
    field = problem.within[0] if problem.within else ""
    number = next((n for n, column in enumerate(columns, 1) if column.field == field), 1)
    return Problem(problem.place._replace(column=number), problem.what, problem.remedy, problem.severity)
