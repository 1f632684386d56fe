"""Dates as spreadsheets mangle them: each column is settled as a whole, or left open and named."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.records.table_dates import iso_dates


def isos(*cells: str) -> list[str]:
    return [one.iso for one in iso_dates(cells)]


@pytest.mark.parametrize(
    "cell",
    ["2023-10-03", "2023-10-03T08:15", "2023-10-03 08:15:00", "2023-10-03T08:15Z", "2023/10/3", "3.10.23", "3.10.2023",
     "3-Oct-23", "3 October 2023", "Oct 3, 2023", "3rd Oct 2023", "3. Okt. 2023", "3 de octubre de 2023", "45202",
     "45202.35", "3/Oct/2023", "\u00a02023-10-03 "],
)  # fmt: skip
def test_one_day_in_many_forms(cell: str) -> None:
    assert isos(cell) == ["2023-10-03"]


def test_spans_and_parts_of_dates_stay() -> None:
    assert isos("2023-10-03/2023-10-05", "2023-10", "2023", "n.d.", "") == [
        "2023-10-03/2023-10-05", "2023-10", "2023", "", "",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("others", "iso"),
    [
        pytest.param([], "", id="nothing-settles-it"),
        pytest.param(["25/10/2023"], "2023-10-03", id="day-first"),
        pytest.param(["10/25/2023"], "2023-03-10", id="month-first"),
        pytest.param(["10/25/2023", "25/10/2023"], "", id="they-disagree"),
        pytest.param(["25.10.2023"], "", id="points-tell-nothing-of-slashes"),
    ],
)
def test_day_and_month_are_settled_by_the_column(others: list[str], iso: str) -> None:
    first, *_ = found = iso_dates(["03/10/2023", *others])
    assert first.iso == iso
    assert all(one.iso for one in found[1:])
    if not iso:
        assert (first.severity, first.remedy) == ("warning", "write dates as 2023-10-03")
        assert "day and month can't be told apart" in first.what


def test_a_day_number_is_told_once_for_the_column() -> None:
    found = iso_dates(["45202", "45203", "2023-10-05"])
    assert [one.iso for one in found] == ["2023-10-03", "2023-10-04", "2023-10-05"]
    assert [bool(one.what) for one in found] == [True, False, False]
    assert "1904 date system, which can't be told here" in found[0].remedy


@pytest.mark.parametrize(
    ("serial", "day"),
    [
        # Source: ECMA-376 Part 1, 18.17.4 (dates in the 1900 system); value from memory.
        pytest.param("38749", date(2006, 2, 1), id="standard"),
        # Day 25569 is 1970-01-01, the epoch of POSIX (common practice, no source).
        pytest.param("25569", date(1970, 1, 1), id="epoch"),
    ],
)
def test_day_numbers_against_the_standard(serial: str, day: date) -> None:
    assert isos(serial) == [day.isoformat()]


@pytest.mark.parametrize("cell", ["31.2.2023", "2023-13-01", "hello", "32/01/2023", "x" * 500, "3/4/5/6", "99"])
def test_what_is_no_date_is_named(cell: str) -> None:
    (one,) = iso_dates([cell])
    assert (one.iso, one.severity) == ("", "error")
    assert one.what


@settings(deadline=None, max_examples=150)
@given(st.lists(st.dates(date(1970, 1, 1), date(2068, 12, 31)), min_size=1, max_size=8), st.sampled_from("/-"))
def test_a_column_that_tells_is_read_as_it_was_meant(days: list[date], mark: str) -> None:
    days = [*days, date(2023, 10, 25)]
    for form in (f"%d{mark}%m{mark}%Y", f"%m{mark}%d{mark}%Y", f"%d{mark}%m{mark}%y", "%d.%m.%y", "%d %b %Y"):
        assert isos(*(day.strftime(form) for day in days)) == [day.isoformat() for day in days]
