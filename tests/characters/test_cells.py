"""Cells of a table as numbers: what people and spreadsheets write, and what is refused with a remedy."""

from __future__ import annotations

import contextlib
import time
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.cell_values import error_in, numbers_in, words_in
from auctorum.characters.cells import MISSING, UnreadableCell, cell_numbers, is_missing, slack_of
from auctorum.characters.units import UNITS, convert
from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.problems import AuctorumError

SPUR = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
PETALS = Character("petal number", "petal", "count", Kind.COUNT)
ASPECT = Character("aspect", "habitat", "aspect", Kind.ANGLE, "degree")
ELEVATION = Character("elevation", "habitat", "elevation", Kind.MEASURE, "m")
RATIO = Character("leaf ratio", "leaf", "ratio", Kind.RATIO)
BRACTEOLES = Character("bracteoles", "bracteole", "presence", Kind.PRESENCE)
COLOUR = Character("spur colour", "spur", "colour", Kind.ORDERED, states=(State("green"), State("ivory")))


@pytest.mark.parametrize(
    ("cell", "number", "unit", "slack"),
    [
        pytest.param("31", "31", "", "1/2", id="whole"),
        pytest.param("31.50", "31.50", "", "1/200", id="printed-digits"),
        pytest.param("31,5", "31.5", "", "1/20", id="decimal-comma"),
        pytest.param("1 234,5", "1234.5", "", "1/20", id="blank-for-thousands"),
        pytest.param("1\u202f234,5", "1234.5", "", "1/20", id="narrow-blank-for-thousands"),
        pytest.param("1.234,5", "1234.5", "", "1/20", id="point-for-thousands"),
        pytest.param("1,234.5", "1234.5", "", "1/20", id="comma-for-thousands"),
        pytest.param("1,234,567", "1234567", "", "1/2", id="two-commas"),
        pytest.param("1'234.5", "1234.5", "", "1/20", id="apostrophe-for-thousands"),
        pytest.param("31 mm", "31", "mm", "1/2", id="unit"),
        pytest.param("31mm.", "31", "mm", "1/2", id="unit-glued"),
        pytest.param('1.2"', "1.2", "in", "1/20", id="inch-sign"),
        pytest.param("1.2″", "1.2", "in", "1/20", id="double-prime"),
        pytest.param("1 1/4 in", "1.25", "in", "1/8", id="fraction"),
        pytest.param("1¼ in", "1.25", "in", "1/8", id="vulgar-fraction"),
        pytest.param("1/2 in", "0.5", "in", "1/4", id="bare-fraction"),
        pytest.param("ca. 31", "31", "", "1", id="about"),
        pytest.param("~31.0", "31.0", "", "1/10", id="about-sign"),
        pytest.param("30–34", "32", "", "2", id="range"),
        pytest.param("30-34 mm", "32", "mm", "2", id="range-with-unit"),
        pytest.param("30 mm to 34 mm", "32", "mm", "2", id="range-two-units"),
        pytest.param("30–30", "30", "", "1/2", id="range-of-nothing-has-its-step"),
        pytest.param("\u00a031\u00a0", "31", "", "1/2", id="no-break-blanks"),
        pytest.param('"31"', "31", "", "1/2", id="quoted-twice"),
        pytest.param("3.1E+01", "31", "", "1/20", id="as-spreadsheets-print"),
    ],
)
def test_one_number(cell: str, number: str, unit: str, slack: str) -> None:
    (one,) = cell_numbers(cell)
    assert (one.number, one.unit) == (Decimal(number), unit)
    if cell != "3.1E+01":  # its digits are those of the mantissa
        assert slack_of(one) == Fraction(slack)
    assert one.remark == ""


@pytest.mark.parametrize("cell", ["31; 33; 34 mm", "31 | 33 | 34 mm", "31 mm\n33 mm\n34 mm", "31, 33, 34 mm"])
def test_several_numbers_share_a_unit_at_the_end(cell: str) -> None:
    assert [(str(one.number), one.unit) for one in cell_numbers(cell)] == [("31", "mm"), ("33", "mm"), ("34", "mm")]


def test_an_error_in_the_cell_and_a_mark_of_doubt() -> None:
    assert cell_numbers("31 ± 0.5 mm")[0].error == Fraction(1, 2)
    assert cell_numbers("31?")[0].remark == "it is marked as doubtful, and was used all the same"
    assert cell_numbers("1,234")[0].remark == "the comma was read as a decimal mark"
    assert cell_numbers("0,125")[0].remark == ""


@pytest.mark.parametrize(
    ("cell", "why"),
    [
        pytest.param(">30", "is a bound", id="more-than"),
        pytest.param("30+", "is a bound", id="plus"),
        pytest.param("up to 30", "is a bound", id="up-to"),
        pytest.param("05.Jun", "is a date: the spreadsheet probably took a number such as 5.6", id="month-name"),
        pytest.param("5-Jun", "is a date", id="month-name-hyphen"),
        pytest.param("Jun-05", "is a date", id="month-first"),
        pytest.param("2023-06-05", "is a date", id="iso"),
        pytest.param("2023-06-05 00:00:00", "is a date", id="iso-with-time"),
        pytest.param("05/06/2023", "is a date", id="slashes"),
        pytest.param("5.6.2023", "is a date", id="points"),
        pytest.param("#DIV/0!", "is an error of the spreadsheet", id="division"),
        pytest.param("#REF!", "is an error of the spreadsheet", id="reference"),
        pytest.param("######", "is what a column too narrow shows", id="narrow"),
        pytest.param("=A1*2", "is a formula", id="formula"),
        pytest.param("31 foo", "holds `foo`, which is no unit", id="no-unit"),
        pytest.param("31/33", "is no fraction of a measure", id="two-numbers"),
        pytest.param("34-30", "is a range whose lower end is above", id="reversed"),
        pytest.param("3 mm - 3 cm", "has two units", id="two-units"),
        pytest.param("1e99", "is too large", id="huge"),
        pytest.param("thirty", "is no number", id="words"),
        pytest.param("1.2.3", "is no number", id="two-points"),
        pytest.param("inf", "is no number", id="infinite"),
        pytest.param("1_000", "is no number", id="underscore"),
        pytest.param("9" * 500, "has 500 letters", id="long"),
    ],
)
def test_what_is_no_measurement(cell: str, why: str) -> None:
    with pytest.raises(UnreadableCell) as caught:
        cell_numbers(cell)
    assert why in str(caught.value)
    assert caught.value.remedy


@pytest.mark.parametrize("cell", sorted(MISSING))
def test_marks_of_missing_values(cell: str) -> None:
    assert is_missing(cell) and is_missing(f" {cell.upper()}\u00a0")
    assert cell_numbers(cell) == ()


@pytest.mark.parametrize(
    ("cell", "unit", "character", "why"),
    [
        pytest.param("-5", "mm", SPUR, "is below 0", id="length"),
        pytest.param("2.5", "", PETALS, "is not whole", id="count"),
        pytest.param("-1", "", PETALS, "is below 0", id="negative-count"),
        pytest.param("5 mm", "", PETALS, "the unit `mm` does not fit", id="count-with-unit"),
        pytest.param("31 degrees", "mm", SPUR, "the unit `degree` does not fit", id="angle-for-length"),
        pytest.param("361", "", ASPECT, "is beyond 360 degrees", id="compass"),
        pytest.param("30 %", "", RATIO, "the unit `percent` does not fit", id="ratio"),
    ],
)
def test_impossible_values(cell: str, unit: str, character: Character, why: str) -> None:
    with pytest.raises(AuctorumError) as caught:
        numbers_in(cell, unit, character)
    assert why in str(caught.value)


def test_kinds() -> None:
    assert [str(one.number) for one in numbers_in("5.0", "", PETALS)] == ["5"]
    assert [(one.number, one.slack) for one in numbers_in("SSE", "", ASPECT)] == [(Decimal("157.5"), Fraction(45, 4))]
    assert numbers_in("-3", "m", ELEVATION)[0].number == -3
    assert [words_in(cell, BRACTEOLES)[0] for cell in ("yes", "+", "0", "present", "n/a")] == [
        "present", "present", "absent", "present", "",
    ]  # fmt: skip
    with pytest.raises(UnreadableCell, match="may mean absent, or not noted"):
        words_in("-", BRACTEOLES)
    with pytest.raises(UnreadableCell, match="names no state of `spur colour`") as caught:
        words_in("octarine", COLOUR)
    assert caught.value.remedy == "write one of: green, ivory"


@pytest.mark.parametrize("cell", ["0.5", "±0.5", "± 0,5", "+/-0.5", "0.5 mm", "0.05 cm", "½"])
def test_half_widths_of_errors(cell: str) -> None:
    assert error_in(cell, "", "mm", SPUR) == Fraction(1, 2)
    assert error_in("n.d.", "", "mm", SPUR) is None


LENGTHS = [
    word for unit in UNITS if unit.dimension == "length" and "-" not in unit.name for word in (unit.name, *unit.words)
]


@settings(deadline=None, max_examples=200)
@given(
    st.decimals("0.1", "999", places=1), st.sampled_from(LENGTHS), st.booleans(), st.sampled_from(["", " ", "\u00a0"])
)
def test_a_number_in_any_dress_is_the_plain_number(number: Decimal, unit: str, comma: bool, blank: str) -> None:
    digits = str(number).replace(".", ",") if comma else str(number)
    (plain,) = numbers_in(str(number), unit, SPUR)
    (dressed,) = numbers_in(f"{blank}{digits}{blank}{unit}{blank}", "mm", SPUR)
    assert convert(dressed.number, dressed.unit, "mm") == convert(plain.number, plain.unit, "mm")
    assert slack_of(dressed) == slack_of(plain) == Fraction(1, 20)


@settings(deadline=None, max_examples=200)
@given(st.text(max_size=60))
def test_any_text_is_read_or_refused(text: str) -> None:
    for character in (SPUR, PETALS, ASPECT):
        try:
            numbers = numbers_in(text, "", character)
        except AuctorumError as error:
            assert str(error) and error.remedy
        else:
            assert all(one.number >= 0 and slack_of(one) >= 0 for one in numbers)


@pytest.mark.parametrize(
    "piece", ["1 ", "1/2 ", "9", "-", "±", "1,234", "Jun", "; ", "1 | ", "\u00a0", "a", "(?)", "''"]
)
def test_hostile_cells_cost_no_more_than_their_length(piece: str) -> None:
    for length in (390, 200_000):
        start = time.perf_counter()
        for character in (SPUR, ASPECT):
            with contextlib.suppress(AuctorumError):
                numbers_in((piece * length)[:length], "", character)
        assert time.perf_counter() - start < 2
