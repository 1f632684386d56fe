from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.read import read_statement
from auctorum.characters.show import format_number, format_range, format_span
from auctorum.characters.tokens import Number
from auctorum.characters.units import UNITS
from auctorum.characters.values import Range, Reading
from auctorum.characters.vocabulary import Character, Kind

LENGTH = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
COUNT = Character("spur number", "spur", "number", Kind.COUNT)
ELEVATION = Character("elevation", "habitat", "elevation", Kind.MEASURE, "m")

digits = st.decimals(min_value=0, max_value=9999, places=2).map(lambda value: Number(value.normalize() + 0))
fractions = st.sampled_from([(1, 2), (1, 3), (3, 4), (5, 12), (7, 16)]).flatmap(
    lambda part: st.integers(0, 99).map(lambda whole: Number.of_fraction(whole + Fraction(*part), part[1]))
)


def plain(number: Number) -> Number:
    """The number without the exponent that `normalize` may leave (1E+2)."""
    return Number(Decimal(format(number.value, "f")), number.parts)


@st.composite
def ranges(draw: Any, units: list[str]) -> Range:
    numbers = sorted(
        {number.exact: plain(number) for number in draw(st.lists(digits | fractions, min_size=4, max_size=6))}.values(),
        key=lambda number: number.exact,
    )
    while len(numbers) < 4:
        numbers.append(Number(numbers[-1].value.to_integral_value() + 1))
    least, low, high, most = numbers[:4]
    end = draw(st.sampled_from(["both", "single", "low", "high"]))
    high = low if end == "single" else high
    kept = [draw(st.booleans()) and least, end != "high" and low, end != "low" and high, draw(st.booleans()) and most]
    found = [number if isinstance(number, Number) else None for number in kept]
    more = end == "both" and draw(st.booleans())
    usual = (low.value, high.value) if end == "both" and low.parts == high.parts == 1 and draw(st.booleans()) else None
    values = [number.value if number else None for number in found]
    parts = tuple(number.parts if number else 1 for number in found)
    unit, about = draw(st.sampled_from(units)), draw(st.booleans())
    return Range(values[1], values[2], unit, values[0], values[3], about, more, usual, parts)  # type: ignore[arg-type]


@settings(max_examples=200, deadline=None)
@given(ranges([unit.name for unit in UNITS if unit.name not in ("degree", "percent")]))
def test_printed_range_reads_back(range_: Range) -> None:
    assert read_statement(format_range(range_), LENGTH) == (Reading(range_),)


@settings(max_examples=100, deadline=None)
@given(ranges([""]))
def test_printed_count_reads_back(range_: Range) -> None:
    assert read_statement(format_range(range_), COUNT) == (Reading(range_),)


@given(st.integers(-500, 9000), st.integers(0, 900), st.booleans())
def test_printed_elevation_reads_back(low: int, more: int, bracket: bool) -> None:
    range_ = Range(Decimal(low), Decimal(low + more), "m", Decimal(low - 30) if bracket else None)
    assert read_statement(format_range(range_), ELEVATION) == (Reading(range_),)


@pytest.mark.parametrize(
    ("range_", "printed"),
    [
        (Range(Decimal(22), Decimal(34), "mm", Decimal(18), Decimal(41)), "(18–)22–34(–41) mm"),
        (Range(Decimal("5.0"), Decimal("5.0"), "mm"), "5.0 mm"),
        (Range(None, Decimal(5), "mm"), "up to 5 mm"),
        (Range(Decimal(5), Decimal(5), "mm", approximate=True), "ca. 5 mm"),
        (Range(Decimal(8), Decimal(13), more=True), "8–13+"),
        (Range(Decimal("1.416667"), Decimal(2), "ft", parts=(1, 12, 1, 1)), "1 5/12–2 ft"),
        (Range(Decimal(35), Decimal(85), "degree"), "35–85°"),
        (Range(Decimal(315), Decimal(405), "degree", step=Decimal(45)), "NW to NE"),
        (Range(Decimal(-50), Decimal(-30), "m", Decimal(-90)), "(−90–) −50–−30 m"),
    ],
)
def test_range_in_the_notation_of_the_trade(range_: Range, printed: str) -> None:
    assert format_range(range_) == printed


@pytest.mark.parametrize(
    ("value", "printed"),
    [
        ("0.98425", "0.984"), ("101.6", "102"), ("31.75", "31.8"), ("30", "30"), ("12345.6", "12346"), ("0", "0"),
        ("-2.5", "−2.5"), ("0.00123456", "0.00123"), ("9.999", "10"), ("200", "200"),
    ],
)  # fmt: skip
def test_computed_numbers_are_rounded_as_a_person_would(value: str, printed: str) -> None:
    assert format_number(Fraction(value)) == printed


@given(st.fractions(min_value=-10000, max_value=10000))
def test_rounding_keeps_three_figures(value: Fraction) -> None:
    back = Fraction(format_number(value).replace("−", "-"))
    assert abs(back - value) <= max(abs(value) / 200, Fraction(1, 10**12))


@pytest.mark.parametrize(
    ("low", "high", "unit", "printed"),
    [
        (22, 41, "mm", "22–41 mm"), (None, 5, "mm", "up to 5 mm"), (20, None, "", "20+"), (7, 7, "cm", "7 cm"),
        (None, None, "mm", "any"), (35, 85, "degree", "35–85°"),
    ],
)  # fmt: skip
def test_spans(low: int | None, high: int | None, unit: str, printed: str) -> None:
    ends = (None if low is None else Fraction(low), None if high is None else Fraction(high))
    assert format_span(*ends, unit) == printed
