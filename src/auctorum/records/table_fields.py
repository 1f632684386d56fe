"""Columns of fields in a table read in chunks: each spelling is read once, and dates wait for the end of the table."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence

from auctorum.characters.cell_columns import Spellings
from auctorum.characters.cells import is_missing
from auctorum.problems import Place, Problem
from auctorum.records.faults import validate
from auctorum.records.schema import Specimen
from auctorum.records.table_dates import ColumnDates, alone
from auctorum.records.tables import Data, date_problem, field_cell, put_date

_NUMBERS = frozenset(name for name, of in Specimen.__annotations__.items() if "Number" in str(of))
_SPELLINGS = 1_000
KEPT = 200_000  # cells of dates that are looked at again


class Field(Spellings[str]):
    """Cell -> what it says in a field of a plant, "" for a missing value and for one that is no good."""

    nothing = ""

    def __init__(self, name: str) -> None:
        super().__init__()
        self._name = name

    def read(self, cell: str) -> tuple[str, str]:
        if is_missing(cell):
            return "", ""
        found = field_cell(cell)
        if self._name in _NUMBERS:
            _, faults = validate(Specimen, {"occurrenceID": "1", self._name: found})
            for fault in faults:
                self.bad[cell] = (fault.what, fault.remedy, fault.severity)
                return "", ""
        return found, ""

    def make_room(self) -> None:
        """Forget the spellings sooner than those of characters: ids and remarks never come again."""
        if len(self) > _SPELLINGS:
            self.clear()
            self.bad.clear()


class Dates:
    """The dates of one column, which only the whole of it settles: those that don't tell by themselves are kept.

    More than 200,000 such cells are not: what their column shows holds for them as well, but they are not named.
    """

    def __init__(self, name: str) -> None:
        self._name = name
        self._column = ColumnDates()
        self._unsettled: dict[str, bool] = {}
        self._kept: list[tuple[int, str]] = []

    def look(self, lines: Sequence[int], cells: Sequence[str]) -> None:
        """Learn from the next cells of the column."""
        for cell, times in Counter(cells).items():
            self._column.see(cell, times)
            if cell not in self._unsettled:
                self._unsettled[cell] = bool(alone(cell).what)
        room = KEPT - len(self._kept)
        self._kept += [(line, cell) for line, cell in zip(lines, cells, strict=True) if self._unsettled[cell]][:room]
        if len(self._unsettled) > KEPT:
            self._unsettled.clear()

    def problems(self, place: Place) -> list[Problem]:
        """What a person should know of the dates, when all have been looked at; `place` is that of the title."""
        read = ((line, self._column.read(cell)) for line, cell in self._kept)
        return [date_problem(one, self._name, place._replace(line=line)) for line, one in read if one.what]

    def settle(self, rows: Sequence[Data], verbatim: str) -> None:
        """Bring the dates of some rows to ISO 8601."""
        for data in rows:
            if self._name in data:
                put_date(data, self._name, self._column.read(data[self._name]), verbatim)
