"""Dates as EDTF writes them (ISO 8601-2:2019, levels 0 and 1 as far as printed works need them).

Read here: `1904`, `1904-06`, `1904-06-15`, an interval `1904-06/1904-07` (an end may be open, `..`: `../1904` is
not later than 1904), each with `~` (approximate), `?` (uncertain) or `%` (both), and unspecified last digits `190X`.
"""

from __future__ import annotations

import calendar
import re
from dataclasses import dataclass
from datetime import MAXYEAR, date, timedelta

_ONE = re.compile(r"(?P<year>\d{4}|\d{3}X|\d{2}XX)(?:-(?P<month>\d{2}))?(?:-(?P<day>\d{2}))?(?P<sign>[~?%])?", re.ASCII)


@dataclass(frozen=True, slots=True, order=True)
class Dated:
    """The span of days that a date may stand for, both ends included.

    >>> str(Dated.parse("1904-06").latest)
    '1904-06-30'
    """

    earliest: date
    latest: date
    text: str
    approximate: bool = False
    open_start: bool = False
    open_end: bool = False

    @classmethod
    def parse(cls, text: str) -> Dated:
        """Raises ValueError with words for a person where `text` is no such date."""
        parts = text.strip().split("/")
        if len(parts) > 2:
            raise ValueError(f"{text!r} has more than one '/'")
        spans = [_span(part, text) for part in parts if part not in ("..", "")]
        if not spans:
            raise ValueError(f"{text!r} gives no date at all")
        first, last = spans[0], spans[-1]
        if first[0] > last[1]:
            raise ValueError(f"{text!r} ends before it begins")
        approximate = any(approximate for *_, approximate in spans)
        is_open = [part in ("..", "") for part in parts]
        return cls(first[0], last[1], text.strip(), approximate, is_open[0], is_open[-1])

    @property
    def year(self) -> int:
        """Year of the earliest day: by it works are set in order."""
        return self.earliest.year

    @property
    def first_day(self) -> date:
        """The earliest day that it can be: without limit where the start is open; a year before an approximate date.

        How near an approximate or uncertain date is, EDTF does not say; a year to either side is a judgement of ours.
        """
        if self.open_start:
            return date.min
        near = self.earliest.year <= 1 or not self.approximate
        return self.earliest if near else self.earliest - timedelta(days=366)

    @property
    def last_day(self) -> date:
        """The latest day that it can be: without limit where the end is open; a year after an approximate date."""
        if self.open_end:
            return date.max
        near = self.latest.year >= MAXYEAR or not self.approximate
        return self.latest if near else self.latest + timedelta(days=366)

    def certainly_before(self, other: Dated) -> bool:
        """Whether every day this may be comes before every day the other may be.

        >>> Dated.parse("1904-06").certainly_before(Dated.parse("1904")), Dated.parse("1903~").certainly_before(
        ...     Dated.parse("1904"))
        (False, False)
        """
        return self.last_day < other.first_day


def _span(part: str, whole: str) -> tuple[date, date, bool]:
    match = _ONE.fullmatch(part)
    if match is None:
        raise ValueError(f"{whole!r} is no EDTF date")
    digits, month, day = match["year"], match["month"], match["day"]
    if "X" in digits and month:
        raise ValueError(f"{whole!r} gives a month of an unknown year")
    first_year, last_year = int(digits.replace("X", "0")), int(digits.replace("X", "9"))
    if first_year == 0:
        raise ValueError(f"{whole!r} gives the year 0")
    first_month, last_month = (int(month), int(month)) if month else (1, 12)
    if not 1 <= first_month <= 12:
        raise ValueError(f"{whole!r} gives month {month}, which does not exist")
    last_day = calendar.monthrange(last_year, last_month)[1]
    if day and not 1 <= int(day) <= last_day:
        raise ValueError(f"{whole!r} gives day {day}, which that month does not have")
    first = date(first_year, first_month, int(day) if day else 1)
    return first, date(last_year, last_month, int(day) if day else last_day), match["sign"] is not None


def check_date(text: str) -> str:
    """`text` unchanged, if it is a date that `Dated.parse` reads."""
    Dated.parse(text)
    return text
