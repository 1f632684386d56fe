"""The rows of an open table, a few thousand at a time, in memory that does not grow with the file."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from itertools import chain, islice
from typing import Protocol

from auctorum.problems import Place, Problem, Severity
from auctorum.records.table_text import LARGEST_FIELD, SEPARATOR_LINE, Knows, layout_of

LONGEST_LINE = 1_000_000  # letters
_STEP = 500  # rows read at a time, so that hostile lines fill no memory
_LETTERS = 50_000_000  # about what is handed over at once
_LOOKED_AT = 60  # lines among which the header is looked for


class Lines(Protocol):
    """An open text file, opened with newline=""."""

    def readline(self, size: int = -1, /) -> str: ...


class Rows:
    """The rows of an open table from its header on, blank ones left out; where they can't be read, a problem ends them.

    `header` are the titles, in `header_line`; none where the file is empty.
    """

    def __init__(self, file: Lines, name: str, knows: Knows, problems: list[Problem]) -> None:
        self._name, self._problems = name, problems
        csv.field_size_limit(LARGEST_FIELD)
        lines = _bounded(file)
        head = [*self._head(lines)]
        if head:
            head[0] = head[0].removeprefix("\ufeff")
        layout = layout_of("".join(head), knows)
        said = SEPARATOR_LINE.match("".join(head)) if layout.said else None
        self._line = 0  # the last that was read
        if said:
            del head[0]
            self._line = 1
        self._reader = csv.reader(chain(head, lines), delimiter=layout.delimiter, strict=True)
        self._ended = False
        at, titled = self.take(1 + layout.above)
        self.header: list[str] = []
        self.header_line = 1
        if len(titled) > layout.above:
            self.header, self.header_line = [title.strip() for title in titled[-1]], at[-1]
        if layout.above:
            what = f"line {at[0]} above the column names: passed over"
            remedy = "begin the table with its column names"
            problems.append(Problem(Place(name, at[0], 1), what, remedy, Severity.WARNING))

    def take(self, number: int) -> tuple[list[int], list[list[str]]]:
        """So many rows at most with their lines; fewer at the end, and where their cells are very long."""
        lines: list[int] = []
        rows: list[list[str]] = []
        letters = 0
        while len(rows) < number and letters < _LETTERS and not self._ended:
            before = self._reader.line_num
            some = self._some(min(_STEP, number - len(rows)))
            plain = self._reader.line_num - before == len(some)  # no cell runs over lines
            for row in some:
                self._line += 1
                if any(map(str.strip, row)):
                    lines.append(self._line)
                    rows.append(row)
                if not plain:
                    self._line += sum(cell.count("\n") for cell in row)
            letters += sum(map(len, chain.from_iterable(some[:3]))) * _STEP // 3
        return lines, rows

    def _head(self, lines: Iterator[str]) -> Iterator[str]:
        try:
            yield from islice(lines, _LOOKED_AT)
        except csv.Error as error:
            self._problems.append(
                Problem(Place(self._name, 1, 1), f"not readable: {error}", "check that it is a table")
            )

    def _some(self, number: int) -> list[list[str]]:
        rows: list[list[str]] = []
        try:
            rows.extend(islice(self._reader, number))
        except csv.Error as error:
            what = f"not readable as CSV from here to the end: {error}"
            place = Place(self._name, self._line + len(rows) + 1, 1)
            self._problems.append(Problem(place, what, "check the quotation marks"))
            self._ended = True
        self._ended |= len(rows) < number
        return rows


def _bounded(file: Lines) -> Iterator[str]:
    """The lines of the file; raises csv.Error at one that is far too long to be a row."""
    while line := file.readline(LONGEST_LINE):
        if len(line) >= LONGEST_LINE and line[-1] not in "\r\n":
            raise csv.Error(f"a line of more than {LONGEST_LINE} letters")
        yield line
