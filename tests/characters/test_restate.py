"""Ranges in another unit, rounded as a person would print them."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pint
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from auctorum.characters.bounds import exact_bounds, stated_step
from auctorum.characters.read import read_statement
from auctorum.characters.restate import figure_in, restated
from auctorum.characters.show import format_range
from auctorum.characters.tokens import Number
from auctorum.characters.units import UNITS, Dimension, UnfitUnit, UnknownUnit, convert
from auctorum.characters.values import Range, Reading
from auctorum.characters.vocabulary import Character, Kind

LENGTH = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
UNIT_NAMES = [unit.name for unit in UNITS if unit.dimension is Dimension.LENGTH]
# How pint, the reference library, spells our units; it has no English line and no Paris units.
DEFINED = ("english_line = inch / 12", "paris_line = 1000000 / 443296 * mm")  # law of 19 frimaire an VIII, from memory
PINT = {
    "mm": "mm", "cm": "cm", "dm": "dm", "m": "m", "km": "km", "µm": "micrometer", "in": "inch", "ft": "foot",
    "yd": "yard", "line": "english_line", "paris-line": "paris_line", "paris-inch": "12 * paris_line",
    "paris-foot": "144 * paris_line",
}  # fmt: skip


def read(words: str) -> Range:
    (found,) = read_statement(words, LENGTH)
    assert isinstance(found.value, Range)
    return found.value


@pytest.mark.parametrize(
    ("words", "unit", "printed"),
    [
        ("25 mm", "in", "1 in."), ("22–34 mm", "in", "0.9–1.3 in."), ("4–10 lines", "mm", "8–21 mm"),
        ("1½–2 in.", "cm", "4–5 cm"), ("8 mm–1.2 cm", "in", "0.3–0.5 in."), ("10 cm", "in", "4 in."),
        ("1 in.", "mm", "25 mm"), ("6 ft", "m", "1.8 m"), ("10–12 ft", "m", "3–3.7 m"), ("3000 ft", "m", "914 m"),
        ("⅜–⅞ in.", "mm", "10–22 mm"), ("100 Paris lines", "mm", "226 mm"), ("1 cm", "in", "0.4 in."),
        ("2 mm", "in", "0.08 in."), ("0.3–0.5 mm", "in", "0.012–0.02 in."),
    ],
)  # fmt: skip
def test_as_a_person_would_print_it(words: str, unit: str, printed: str) -> None:
    assert format_range(restated(read(words), unit)) == printed


@pytest.mark.parametrize(
    ("words", "unit", "printed"),
    [
        pytest.param("(18–)22–34(–41) mm", "in", "(0.7–)0.9–1.3(–1.6) in.", id="extremes"),
        pytest.param("(21.5–)22–34(–34.5) mm", "cm", "(2.15–)2.2–3.4(–3.45) cm", id="finer extremes"),
        pytest.param("(22–)23–34(–35) mm", "in", "0.9–1.3(–1.4) in.", id="an extreme falls on its bound"),
        pytest.param("22–23 mm", "in", "0.9 in.", id="bounds fall together"),
        pytest.param("22.4–22.6 mm", "in", "0.88–0.89 in.", id="a tenth of a mm is told in hundredths of an inch"),
        pytest.param("up to 5 mm", "in", "up to 0.2 in.", id="open below"),
        pytest.param("8+ mm", "in", "0.3+ in.", id="open above"),
        pytest.param("12–34+ mm", "in", "0.5–1.3+ in.", id="more"),
        pytest.param("22–23+ mm", "in", "0.9+ in.", id="more, and bounds fall together"),
        pytest.param("ca. 5 mm", "in", "ca. 0.2 in.", id="approximate"),
        pytest.param("22–34 mm (usually 26–30 mm)", "in", "0.9–1.3 (usually 1–1.2) in.", id="usual"),
        pytest.param("22–23 mm (usually 22–23 mm)", "in", "0.9 in.", id="usual no narrower"),
        pytest.param("1–30 cm", "in", "0.4–12 in.", id="a long range"),
        pytest.param("8–9 mm", "in", "0.31–0.35 in.", id="neighbours alike"),
        pytest.param("0–5 mm", "in", "0–0.2 in.", id="from nothing"),
    ],
)
def test_every_shape_of_range(words: str, unit: str, printed: str) -> None:
    assert format_range(restated(read(words), unit)) == printed


@pytest.mark.parametrize(
    ("words", "unit", "printed"),
    [
        ("½–1¼ ft", "in", "6–15 in."), ("1 ft", "in", "12 in."), ("⅓ ft", "in", "4 in."),
        ("1¼ in.", "line", "15 lines"),
        ("3.5 mm", "cm", "0.35 cm"), ("2 m", "mm", "2000 mm"), ("12 µm", "mm", "0.012 mm"), ("1½ cm", "mm", "15 mm"),
        ("8.00 mm", "cm", "0.8 cm"), ("2 yd", "ft", "6 ft"),
    ],
)  # fmt: skip
def test_what_comes_out_exactly_is_not_rounded(words: str, unit: str, printed: str) -> None:
    assert format_range(restated(read(words), unit)) == printed


def test_stated_precision_is_kept() -> None:
    assert restated(read("8.00 mm"), "cm").step == Decimal("0.001")
    assert restated(read("1 ft"), "in").step == 12
    assert restated(read("4–10 lines"), "mm").step == Decimal("2.11666667")  # rounded up
    assert restated(read("22–34 mm"), "in").step == Decimal("0.1")  # what it was rounded to


def test_below_the_sea() -> None:
    assert format_range(restated(Range(Decimal(-50), Decimal(-30), "m", Decimal(-90)), "ft")) == "(−300–) −160–−100 ft"


def test_a_unit_may_be_spelt_otherwise_and_must_fit() -> None:
    assert restated(read("25 mm"), "inches") == restated(read("25 mm"), "in")
    with pytest.raises(UnknownUnit, match="no unit `parsec`"):
        restated(read("25 mm"), "parsec")
    with pytest.raises(UnfitUnit, match="the unit `mm` does not fit a value in degree"):
        restated(read("25 mm"), "degree")


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry[Fraction]:
    found: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
    for definition in DEFINED:
        found.define(definition)
    return found


@pytest.mark.parametrize("name", UNIT_NAMES)
def test_every_factor_is_that_of_pint(name: str, registry: pint.UnitRegistry[Fraction]) -> None:
    for other in UNIT_NAMES:
        quantity = registry.parse_expression(PINT[name]) * Fraction(1)
        over = registry.parse_expression(PINT[other]) * Fraction(1)
        assert (quantity / over).to("").magnitude == convert(Fraction(1), name, other)


# --- laws

digits = st.integers(1, 99999).flatmap(lambda n: st.integers(0, 3).map(lambda p: Number(Decimal(n).scaleb(-p))))
vulgar = st.sampled_from([(1, 2), (1, 3), (3, 4), (5, 8), (5, 12), (1, 7)]).flatmap(
    lambda part: st.integers(0, 40).map(lambda whole: Number.of_fraction(whole + Fraction(*part), part[1]))
)
names = st.sampled_from(UNIT_NAMES)


@st.composite
def ranges(draw: Any) -> Range:
    least, low, high, most = sorted(draw(st.lists(digits | vulgar, min_size=4, max_size=4)), key=lambda one: one.exact)
    shape = draw(st.sampled_from(["closed", "single", "open below", "open above"]))
    kept = [
        least if draw(st.booleans()) else None,
        None if shape == "open below" else low,
        None if shape == "open above" else low if shape == "single" else high,
        most if draw(st.booleans()) else None,
    ]
    values = [number.value if number else None for number in kept]
    printed_in_digits = low.parts == high.parts == 1
    usual = (low.value, high.value) if shape == "closed" and printed_in_digits and draw(st.booleans()) else None
    more = shape == "closed" and low.exact < high.exact and draw(st.booleans())
    parts = tuple(number.parts if number else 1 for number in kept)
    about = draw(st.booleans())
    return Range(values[1], values[2], draw(names), values[0], values[3], about, more, usual, parts)  # type: ignore[arg-type]


@given(ranges())
@settings(max_examples=100, deadline=None)
def test_its_own_unit_changes_nothing(range_: Range) -> None:
    assert restated(range_, range_.unit) is range_


@given(ranges(), names)
@settings(max_examples=200, deadline=None)
def test_no_figure_is_moved_by_more_than_half_a_step_or_a_sixteenth(range_: Range, unit: str) -> None:
    found = restated(range_, unit)
    if found is range_:
        return
    assert found.unit == unit and found.step is not None
    assert found.step >= stated_step(range_) * convert(Fraction(1), range_.unit, unit)
    for end, exact in zip(("low", "high", "least", "most"), exact_bounds(range_), strict=True):
        printed = getattr(found, end)
        if exact is None:
            assert printed is None
        elif printed is not None:
            far = abs(Fraction(printed) - convert(exact, range_.unit, unit))
            assert far <= Fraction(found.step) / 2
            assert far <= abs(convert(exact, range_.unit, unit)) / 16 + Fraction(1, 10**12)


@given(ranges(), st.sampled_from([name for name in UNIT_NAMES if name not in ("µm", "km")]))
@settings(max_examples=200, deadline=None)
def test_what_is_said_stays_said(range_: Range, unit: str) -> None:
    found = restated(range_, unit)
    assume(found is not range_ and range_.unit not in ("µm", "km"))
    assert found.approximate == range_.approximate
    assert (found.low is None) == (range_.low is None)
    assert (found.high is None) == (range_.high is None) or (range_.more and not found.more)
    assert replace(found, step=None) == read(format_range(replace(found, step=None)))


@given(st.lists(st.integers(1, 10**6), min_size=2, max_size=6), st.integers(0, 3), names, names)
@settings(max_examples=200, deadline=None)
def test_figures_of_one_precision_keep_their_order(counts: list[int], places: int, unit: str, to: str) -> None:
    single = [Decimal(count).scaleb(-places) for count in sorted(counts)]
    found = [restated(Range(value, value, unit), to).low for value in single]
    assert all(value is not None for value in found)
    assert found == sorted(found)  # type: ignore[type-var]


@given(st.fractions(Fraction(1, 100), 1000), st.fractions(Fraction(1, 100), 10))
@settings(max_examples=100, deadline=None)
def test_a_computed_figure_is_rounded_likewise(value: Fraction, stated: Fraction) -> None:
    found = figure_in(value, stated)
    assert abs(found - value) <= max(value / 16, Fraction(1, 10**12))
    assert figure_in(Fraction(0), stated) == 0


def test_reading_back_loses_only_the_precision() -> None:
    found = restated(read("22–34 mm"), "in")
    assert read_statement(format_range(found), LENGTH) == (Reading(replace(found, step=None)),)
