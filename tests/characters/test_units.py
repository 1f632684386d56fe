from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.bounds import Bounds, agree, bounds
from auctorum.characters.units import UNITS, UnfitUnit, UnknownUnit, convert, unit_named
from auctorum.characters.values import Range

# How pint, the reference library, spells our units; it has no line and no Paris units.
PINT = {
    "mm": "mm",
    "cm": "cm",
    "dm": "dm",
    "m": "m",
    "km": "km",
    "µm": "micrometer",
    "in": "inch",
    "ft": "foot",
    "yd": "yard",
}


@pytest.mark.parametrize("name", PINT)
def test_factor_is_that_of_pint(name: str) -> None:
    registry = pint.UnitRegistry(non_int_type=Fraction)
    assert registry.Quantity(Fraction(1), PINT[name]).to("mm").magnitude == unit_named(name).factor


def test_english_line_is_a_twelfth_of_an_inch() -> None:
    assert convert(Decimal(12), "line", "in") == 1


def test_a_metre_is_443_296_paris_lines() -> None:
    """Law of 19 frimaire an VIII (1799), from memory."""
    assert convert(Fraction(1), "m", "paris-line") == Fraction("443.296")
    assert convert(Decimal(1), "paris-foot", "paris-line") == 144
    assert round(float(convert(Decimal(1), "paris-inch", "mm")), 2) == 27.07


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("in.", "in"), ("inches", "in"), ("Inch", "in"), ("″", "in"), ("poll.", "in"), ("lin.", "line"),
        ("Lines", "line"), ("lineas", "line"), ("ft", "ft"), ("feet", "ft"), ("′", "ft"), ("pedes", "ft"),
        ("MM.", "mm"), ("millimetres", "mm"), ("º", "degree"), ("°", "degree"), ("%", "percent"),
    ],
)  # fmt: skip
def test_spellings(said: str, name: str) -> None:
    assert unit_named(said).name == name


def test_unknown_unit_names_the_nearest() -> None:
    with pytest.raises(UnknownUnit, match="no unit `milimetre`") as caught:
        unit_named("milimetre")
    assert caught.value.remedy == "did you mean `mm`?"


def test_dimensions_do_not_convert() -> None:
    with pytest.raises(UnfitUnit, match="the unit `degree` does not fit a value in mm"):
        convert(Decimal(4), "degree", "mm")


lengths = st.sampled_from([unit.name for unit in UNITS if unit.name not in ("degree", "percent")])


@given(st.fractions(min_value=0, max_value=1000), lengths, lengths)
def test_there_and_back_is_exact(value: Fraction, one: str, other: str) -> None:
    assert convert(convert(value, one, other), other, one) == value


def decimal_range(low: str | None, high: str | None, unit: str, **more: object) -> Range:
    return Range(Decimal(low) if low else None, Decimal(high) if high else None, unit, **more)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("stated", "slack"),
    [
        pytest.param(decimal_range("10", "10", "cm"), Fraction(5), id="10 cm is ±5 mm"),
        pytest.param(decimal_range("4", "4", "in"), Fraction("12.7"), id="4 in is ±0.5 in"),
        pytest.param(decimal_range("8.00", "8.00", "mm"), Fraction("0.005"), id="8.00 mm is ±0.005 mm"),
        pytest.param(decimal_range("1.5", "2", "in", parts=(1, 2, 1, 1)), Fraction("6.35"), id="1½-2 in to ±¼ in"),
        pytest.param(decimal_range("0.4", "1", "mm"), Fraction("0.05"), id="the finer bound tells"),
        pytest.param(decimal_range(None, "5", "mm"), Fraction("0.5"), id="open below"),
    ],
)
def test_stated_precision(stated: Range, slack: Fraction) -> None:
    found = bounds(stated, "mm")
    assert (found.low_slack, found.high_slack) == (slack, slack)


def test_bounds_are_exact_in_the_canonical_unit() -> None:
    third = Range(Decimal("0.333333"), Decimal(2), "in", None, Decimal("2.75"), parts=(1, 3, 1, 4))
    half = Fraction("25.4") / 3 / 2
    assert bounds(third, "mm") == Bounds(Fraction("25.4") / 3, Fraction("50.8"), None, Fraction("69.85"), half, half)


def test_counts_have_no_unit() -> None:
    assert bounds(decimal_range("3", "5", ""), "").high == 5


def test_four_inches_agree_with_ten_centimetres() -> None:
    inches, metric = bounds(decimal_range("4", "4", "in"), "mm"), bounds(decimal_range("10", "10", "cm"), "mm")
    assert inches.low and metric.low
    assert agree(inches.low, inches.low_slack, metric.low, metric.low_slack)
    assert not agree(inches.low, Fraction(0), metric.low, Fraction(0))


positive = st.fractions(min_value=0, max_value=100)


@settings(max_examples=100)
@given(positive, positive, positive, positive)
def test_agreement_has_no_order(a: Fraction, a_slack: Fraction, b: Fraction, b_slack: Fraction) -> None:
    assert agree(a, a_slack, b, b_slack) == agree(b, b_slack, a, a_slack)
    assert agree(a, a_slack, a, Fraction(0))
