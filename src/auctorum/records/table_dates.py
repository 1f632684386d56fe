"""Dates of a table's column -> ISO 8601, as far as they can be told; a column is settled as a whole.

`03/10/2023` is read by what the column's other dates show: one whose first figure is above 12 puts the day first, one
whose second figure is above 12 the month. Dates with points (`3.10.23`) put the day first (common practice, no source).
Two figures stand for a year of 1969 to 2068 (POSIX.1, strptime, `%y`; from memory). A bare number is a day of the
spreadsheet's 1900 system, in which 45202 is 2023-10-03; whether the 1904 system was meant, 1,462 days later, can't be
told.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from auctorum.characters.cells import is_missing, printed
from auctorum.problems import Severity
from auctorum.records.dates import Dated

_MONTHS = (
    ("jan", "ene", "gen"), ("feb", "fev", "fév"), ("mar", "mär", "mrz"), ("apr", "avr", "abr"), ("may", "mai", "mag"),
    ("jun", "juin", "giu"), ("jul", "juil", "lug"), ("aug", "aoû", "aou", "ago"), ("sep", "set"),
    ("oct", "okt", "out", "ott"), ("nov",), ("dec", "dez", "déc", "dic"),
)  # fmt: skip
_MONTH_OF = {word: number for number, words in enumerate(_MONTHS, 1) for word in words}
_TIME = r"(?:[T ][0-9]{1,2}:[0-9]{2}(?::[0-9]{2}(?:[.,][0-9]{1,6})?)?(?: ?[AaPp][Mm])?(?:Z|[+-][0-9]{2}:?[0-9]{2})?)?"
_ISO = re.compile(rf"(?P<date>[0-9]{{4}}(?:-[0-9]{{2}}){{0,2}}|\.\.){_TIME}")
_FIGURES = re.compile(
    rf"(?P<first>[0-9]{{1,2}})(?P<mark>[./-])(?P<second>[0-9]{{1,2}})(?P=mark)(?P<year>[0-9]{{4}}|[0-9]{{2}}){_TIME}"
)
_YEAR_FIRST = re.compile(rf"(?P<year>[0-9]{{4}})[./](?P<month>[0-9]{{1,2}})[./](?P<day>[0-9]{{1,2}}){_TIME}")
_LETTERS = r"[^\W\d_]{3,12}\.?"
_NAMED = re.compile(
    rf"(?P<day>[0-9]{{1,2}})(?:st|nd|rd|th|\.)?(?:[ ./-]|(?=[^\W\d_]))[ ]?(?:of |de )?(?P<month>{_LETTERS})"
    rf"[ ,./-]{{0,2}}(?:de )?(?P<year>[0-9]{{4}}|[0-9]{{2}}){_TIME}"
    rf"|(?P<month2>{_LETTERS}) (?P<day2>[0-9]{{1,2}})(?:st|nd|rd|th)?,? (?P<year2>[0-9]{{4}}){_TIME}"
    rf"|(?P<month3>{_LETTERS})[ /-](?P<year3>[0-9]{{4}})"
)
_SERIAL = re.compile(r"(?P<days>[2-7][0-9]{4})(?:[.,][0-9]{1,12})?")  # 1954 to 2119
_START = date(1899, 12, 30)  # day 0 of the 1900 system, for days after its 29 February 1900, which never was
_LONGEST = 60


@dataclass(frozen=True, slots=True)
class CellDate:
    """One cell: its date in ISO 8601 ("" where it holds none or can't be told), and what a person should know."""

    iso: str
    what: str = ""
    remedy: str = ""
    severity: Severity = Severity.ERROR


class _Ambiguous(ValueError):
    """Day and month can't be told apart."""


def iso_dates(cells: Sequence[str]) -> tuple[CellDate, ...]:
    """The dates of one column, in the order of its cells.

    >>> [one.iso for one in iso_dates(["03/10/2023", "25/10/2023", "3-Oct-23", "45202"])]
    ['2023-10-03', '2023-10-25', '2023-10-03', '2023-10-03']
    """
    column = ColumnDates()
    for cell in cells:
        column.see(cell)
    return tuple(map(column.read, cells))


class ColumnDates:
    """The dates of one column: all of its cells are seen first, then each can be read, in their order."""

    def __init__(self) -> None:
        self._shown: set[bool] = set()  # whether dates that tell put the day first
        self._serials = 0

    def see(self, cell: str, times: int = 1) -> None:
        """Learn from a cell that stands so many times in the column."""
        self._serials += times * (_SERIAL.fullmatch(cell.strip()) is not None)
        match = _FIGURES.fullmatch(printed(cell)) if len(cell) <= _LONGEST else None
        if match is not None and match["mark"] != ".":
            first, second = int(match["first"]), int(match["second"])
            if (first > 12) != (second > 12):
                self._shown.add(first > 12)

    def read(self, cell: str) -> CellDate:
        """The date in a cell; that it is a day number of the spreadsheet is said at the first one only."""
        one = _cell_date(cell, next(iter(self._shown)) if len(self._shown) == 1 else None)
        if not one.what.startswith(_SERIAL_SAID):
            return one
        others, self._serials = self._serials - 1, 0
        if others < 0:
            return CellDate(one.iso)
        more = f"; so are {others} more cells of this column" if others else ""
        return CellDate(one.iso, one.what + more, one.remedy, one.severity)


def alone(cell: str) -> CellDate:
    """The date in a cell as far as it tells by itself.

    >>> alone("25/10/2023").iso, alone("03/10/2023").iso
    ('2023-10-25', '')
    """
    return _cell_date(cell, None)


_SERIAL_SAID = "a day number of the spreadsheet"


def _cell_date(cell: str, day_first: bool | None) -> CellDate:
    if is_missing(cell):
        return CellDate("")
    text = printed(cell)
    if len(text) > _LONGEST:
        return CellDate("", f"{text[:40]!r}… is no date", _REMEDY)
    try:
        iso = _iso(text) or _named(text) or _figures(text, day_first)
        if not iso and (serial := _SERIAL.fullmatch(text)):
            iso = (_START + timedelta(days=int(serial["days"]))).isoformat()
            return CellDate(iso, f"{_SERIAL_SAID}, {text}, was read as {iso}", _SERIAL_REMEDY, Severity.WARNING)
    except _Ambiguous:
        what = f"{text!r}: day and month can't be told apart, so the date was left open"
        return CellDate("", what, "write dates as 2023-10-03", Severity.WARNING)
    except ValueError as error:
        return CellDate("", str(error), _REMEDY)
    return CellDate(iso) if iso else CellDate("", f"{text!r} is no date", _REMEDY)


_REMEDY = "write dates as 2023-10-03"
_SERIAL_REMEDY = (
    "format the column as 2023-10-03; in a workbook of the 1904 date system, which can't be told here, "
    "each date is 1462 days later"
)


def _iso(text: str) -> str:
    """An ISO date or interval without its time of day; "" for anything else."""
    parts = [_ISO.fullmatch(part.strip()) for part in text.split("/")]
    if len(parts) > 2 or None in parts:
        return ""
    days = [match["date"] for match in parts if match is not None]
    whole = "/".join(days if len(set(days)) > 1 else days[:1])
    Dated.parse(whole)
    return whole


def _named(text: str) -> str:
    match = _NAMED.fullmatch(text)
    if match is None:
        return ""
    month = _month(match["month"] or match["month2"] or match["month3"])
    if not month:
        return ""
    year = _year(match["year"] or match["year2"] or match["year3"])
    day = match["day"] or match["day2"]
    return _checked(year, month, int(day), text) if day else f"{year:04}-{month:02}"


def _month(word: str) -> int:
    folded = word.casefold().rstrip(".")
    return _MONTH_OF.get(folded[:4]) or _MONTH_OF.get(folded[:3]) or 0


def _figures(text: str, day_first: bool | None) -> str:
    if match := _YEAR_FIRST.fullmatch(text):
        return _checked(int(match["year"]), int(match["month"]), int(match["day"]), text)
    match = _FIGURES.fullmatch(text)
    if match is None:
        return ""
    first, second, year = int(match["first"]), int(match["second"]), _year(match["year"])
    if match["mark"] == "." or first > 12 or first == second:
        return _checked(year, second, first, text)
    if second > 12:
        return _checked(year, first, second, text)
    if day_first is None:
        raise _Ambiguous(text)
    return _checked(year, second, first, text) if day_first else _checked(year, first, second, text)


def _year(digits: str) -> int:
    year = int(digits)
    return year if len(digits) == 4 else year + (2000 if year < 69 else 1900)


def _checked(year: int, month: int, day: int, text: str) -> str:
    try:
        return date(year, month, day).isoformat()
    except ValueError:
        raise ValueError(f"{text!r} is no day of the calendar") from None
