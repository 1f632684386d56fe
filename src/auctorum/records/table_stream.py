"""The rows of an open table, one after another, in memory that does not grow with the file."""

from __future__ import annotations

import csv
from collections.abc import Iterator
from itertools import chain, islice
from typing import Protocol

from auctorum.problems import Place, Problem, Severity
from auctorum.records.table_text import LARGEST_FIELD, Knows, Report, cleaned_row, layout_of

LONGEST_LINE = 1_000_000  # letters
_LETTERS = 50_000_000  # about what is handed over at once
_LOOKED_AT = 60  # lines among which the header is looked for


class Lines(Protocol):
    """An open text file, opened with newline=""."""

    def readline(self, size: int = -1, /) -> str: ...


class Rows:
    """The rows of an open table below its header, blank ones left out; where they can't be read, a problem ends them.

    `header` are the titles, in `header_line`; none where the file is empty. Iterating gives the line and the cleaned
    cells of each row, as many as there are titles: short rows are filled up, those with too many cells left out.
    """

    def __init__(self, file: Lines, name: str, knows: Knows, report: Report) -> None:
        self._file, self._name, self._report = file, name, report
        self._count = 0  # lines read so far
        csv.field_size_limit(LARGEST_FIELD)
        self._lines = self._bounded()
        head = [*islice(self._lines, _LOOKED_AT)]
        if head and head[0].startswith("\ufeff"):
            head[0] = head[0][1:]
            what = "the file begins with a byte order mark"
            report(Problem(Place(name, 1, 1), what, "it was read all the same", Severity.WARNING))
        layout = layout_of("".join(head), knows)
        self._before = int(layout.said)  # lines above the first that holds cells
        self._reader = csv.reader(chain(head[self._before :], self._lines), delimiter=layout.delimiter, strict=True)
        rows = self._cleaned()
        above = [line for line, _ in islice(rows, layout.above)]
        if above:
            lines = f"line {above[0]}" if len(above) == 1 else f"lines {above[0]} to {above[-1]}"
            what = f"{lines} above the column names: passed over"
            report(Problem(Place(name, above[0], 1), what, "begin the table with its column names", Severity.WARNING))
        self.header_line, self.header = next(rows, (1, list[str]()))
        self._below = self._fitted(rows)

    def __iter__(self) -> Iterator[tuple[int, list[str]]]:
        return self._below

    def take(self, number: int) -> tuple[list[int], list[list[str]]]:
        """So many rows at most with their lines; fewer where their cells are very long, none at the end."""
        lines: list[int] = []
        rows: list[list[str]] = []
        letters = 0
        for line, cells in islice(self._below, number):
            lines.append(line)
            rows.append(cells)
            letters += sum(map(len, cells))
            if letters > _LETTERS:
                break
        return lines, rows

    def _fitted(self, rows: Iterator[tuple[int, list[str]]]) -> Iterator[tuple[int, list[str]]]:
        """The rows, each as wide as the header; cells that stand under no title are told."""
        width = len(self.header)
        untitled = [number for number, title in enumerate(self.header) if not title]
        for line, cells in rows:
            if len(cells) != width:
                if any(cells[width:]):
                    what = f"{len(cells)} cells in a table of {width} columns; the row was left out"
                    remedy = "put cells that hold a separator in quotation marks"
                    self._report(Problem(Place(self._name, line, 1), what, remedy))
                    continue
                cells = cells[:width] + [""] * (width - len(cells))
            for number in [number for number in untitled if cells[number]]:
                untitled.remove(number)
                what = "cells in a column without a title were left out"
                self._report(Problem(Place(self._name, line, number + 1), what, "give the column a title"))
            yield line, cells

    def _cleaned(self) -> Iterator[tuple[int, list[str]]]:
        """Line and cleaned cells of every row that is not blank."""
        line = self._before + 1
        try:
            for row in self._reader:
                cells = cleaned_row(row, Place(self._name, line, 1), self._report)
                if any(cells):
                    yield line, cells
                line = self._before + self._reader.line_num + 1
        except csv.Error as error:
            for _ in self._lines:
                pass
            what = f"not readable as CSV from here to the end, {self._count - line + 1} lines: {error}"
            self._report(Problem(Place(self._name, line, 1), what, "check the quotation marks"))

    def _bounded(self) -> Iterator[str]:
        """The lines of the file; one that is far too long to be a row is told, and is blank."""
        while line := self._file.readline(LONGEST_LINE):
            self._count += 1
            if len(line) >= LONGEST_LINE and line[-1] not in "\r\n":
                while (rest := self._file.readline(LONGEST_LINE)) and rest[-1] not in "\r\n":
                    pass
                what = f"a line of more than {LONGEST_LINE} letters was left out"
                self._report(Problem(Place(self._name, self._count, 1), what, "check that it is a table"))
                line = "\n"
            yield line
