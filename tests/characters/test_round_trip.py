"""A range is printed, set as any printer may set it, and read again: the same range, in every shape and unit."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.read import read_statement
from auctorum.characters.show import format_range
from auctorum.characters.tokens import Number
from auctorum.characters.units import UNITS, Dimension
from auctorum.characters.values import Range, Reading
from auctorum.characters.vocabulary import Character, Kind

LENGTH = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
SHARE = Character("shade", "habitat", "shade", Kind.MEASURE, "percent")
COUNT = Character("petal number", "petal", "count", Kind.COUNT)
ANGLE = Character("spur angle", "spur", "angle", Kind.ANGLE, "degree")
ELEVATION = Character("elevation", "habitat", "elevation", Kind.MEASURE, "m")
OF_DIMENSION = {Dimension.LENGTH: LENGTH, Dimension.SHARE: SHARE, Dimension.ANGLE: ANGLE}
DASHES = ["-", "–", "—", "‒", "‐", "‑", "―"]  # hyphens, en, em and figure dash, bar
MINUS = "−"  # set for a dash by some; after a bracket opens it is read as what it is
SPACES = ["", " ", "\u00a0", "\u2009", "\u202f"]
SHAPES = ["closed", "single", "open below", "open above", "more", "usual"]


def number(digits: int, places: int) -> Number:
    return Number(Decimal(digits).scaleb(-places))


wholes = st.integers(1, 999).map(lambda digits: number(digits, 0))
decimals = st.integers(1, 9999).flatmap(lambda digits: st.integers(1, 2).map(lambda places: number(digits, places)))
vulgar = st.sampled_from([(1, 2), (1, 3), (3, 4), (5, 8), (1, 10), (5, 12), (7, 16), (1, 9)]).flatmap(
    lambda part: st.integers(0, 40).map(lambda whole: Number.of_fraction(whole + Fraction(*part), part[1]))
)


@st.composite
def ranges(draw: Any, unit: str, figures: st.SearchStrategy[Number], extremes: bool = True) -> Range:
    """A range of any shape with four different figures, least to most."""
    four = draw(st.lists(figures, min_size=4, max_size=4, unique_by=lambda one: one.exact))
    least, low, high, most = sorted(four, key=lambda one: one.exact)
    shape = draw(st.sampled_from(SHAPES))
    kept = [
        least if extremes and draw(st.booleans()) else None,
        None if shape == "open below" else low,
        low if shape == "single" else None if shape == "open above" else high,
        most if extremes and draw(st.booleans()) else None,
    ]
    values = [one.value if one else None for one in kept]
    parts = tuple(one.parts if one else 1 for one in kept)
    usual = (low.value, high.value) if shape == "usual" and low.parts == high.parts == 1 else None
    about = draw(st.booleans())
    return Range(values[1], values[2], unit, values[0], values[3], about, shape == "more", usual, parts)  # type: ignore[arg-type]


def reads_as(printed: str, range_: Range, character: Character = LENGTH) -> None:
    assert read_statement(printed, character) == (Reading(range_),), printed


@st.composite
def dashes(draw: Any) -> str:
    space = draw(st.sampled_from(SPACES))
    return f"{space}{draw(st.sampled_from([*DASHES, MINUS]))}{space}"


lengths = st.sampled_from([unit.name for unit in UNITS if unit.dimension is Dimension.LENGTH])


@given(lengths.flatmap(lambda unit: ranges(unit, wholes | decimals | vulgar)), st.sampled_from(DASHES))
@settings(max_examples=200, deadline=None)
def test_every_dash(range_: Range, dash: str) -> None:
    reads_as(format_range(range_).replace("–", dash), range_)


@given(lengths.flatmap(lambda unit: ranges(unit, wholes | decimals | vulgar, extremes=False)), dashes())
@settings(max_examples=200, deadline=None)
def test_spaces_round_the_dash(range_: Range, dash: str) -> None:
    reads_as(format_range(range_).replace("–", dash), range_)


@given(lengths.flatmap(lambda unit: ranges(unit, wholes | decimals)), dashes())
@settings(max_examples=200, deadline=None)
def test_spaces_round_the_dash_beside_extremes(range_: Range, dash: str) -> None:
    printed = format_range(range_).replace("(–", "(|").replace("–)", "|)").replace("–", dash)
    reads_as(printed.replace("|", dash.strip().replace(MINUS, "–")), range_)


@given(lengths.flatmap(lambda unit: ranges(unit, wholes | decimals | vulgar)), st.sampled_from(["to", "bis", "ad"]))
@settings(max_examples=200, deadline=None)
def test_to_in_words(range_: Range, word: str) -> None:
    printed = format_range(range_).replace("(–", "(|").replace("–)", "|)").replace("–", f" {word} ").replace("|", "–")
    reads_as(printed, range_)


@given(lengths.flatmap(lambda unit: ranges(unit, wholes | decimals)), st.sampled_from([",", "·", "∙", "⋅"]))
@settings(max_examples=200, deadline=None)
def test_decimal_comma_and_raised_point(range_: Range, point: str) -> None:
    """A comma before one or two digits; before three it parts thousands."""
    core, unit = format_range(range_).rsplit(" ", 1) if "Paris" not in range_.unit else (format_range(range_), "")
    lead = "ca. " if "ca. " in core else ""
    printed = core.replace("ca. ", "\0").replace(".", point).replace("\0", lead)
    reads_as(f"{printed} {unit}".strip(), range_)


@given(lengths.flatmap(lambda unit: ranges(unit, wholes | decimals)), st.sampled_from(["(3)5(9)", "(3)-5-(9)", "[3–]"]))
@settings(max_examples=200, deadline=None)
def test_brackets_as_printers_set_them(range_: Range, style: str) -> None:
    """`(3)5–8(10)`, `(3)-5–8-(10)`, `[3–]5–8[–10]`; with one figure between them, as well."""
    printed = format_range(range_)
    if style == "[3–]":
        printed = printed.replace("(–", "[–").replace("–)", "–]")
        if range_.least is not None:
            printed = printed.replace("(", "[", 1)
        if range_.most is not None:
            at = printed.index("[–")
            printed = printed[:at] + printed[at:].replace(")", "]", 1)
    elif style == "(3)5(9)":
        printed = printed.replace("(–", "(").replace("–)", ")")
    elif "+" not in printed:  # +-( is no notation
        printed = printed.replace("(–", "-(").replace("–)", ")-")
    reads_as(printed, range_)


@given(ranges("", wholes), st.sampled_from(DASHES))
@settings(max_examples=150, deadline=None)
def test_counts(range_: Range, dash: str) -> None:
    reads_as(format_range(range_).replace("–", dash), range_, COUNT)


@given(ranges("percent", st.integers(0, 100).map(lambda digits: number(digits, 0))), st.sampled_from(DASHES))
@settings(max_examples=100, deadline=None)
def test_shares(range_: Range, dash: str) -> None:
    reads_as(format_range(range_).replace("–", dash), range_, SHARE)


@given(st.integers(0, 359), st.integers(0, 180), st.sampled_from(DASHES), st.booleans())
@settings(max_examples=100, deadline=None)
def test_angles(low: int, wide: int, dash: str, about: bool) -> None:
    range_ = Range(Decimal(low), Decimal(min(low + wide, 360)), "degree", approximate=about)
    reads_as(format_range(range_).replace("–", dash), range_, ANGLE)


@given(st.integers(-400, 4000), st.integers(1, 900), st.integers(0, 90), st.sampled_from(["–", "—", "-"]))
@settings(max_examples=150, deadline=None)
def test_heights_below_the_sea(low: int, more: int, least: int, dash: str) -> None:
    extreme = Decimal(low - least) if least else None
    range_ = Range(Decimal(low), Decimal(low + more), "m", extreme)
    reads_as(format_range(range_).replace("–", dash), range_, ELEVATION)


@pytest.mark.parametrize("name", [unit.name for unit in UNITS])
def test_every_spelling_of_every_unit(name: str) -> None:
    unit = next(one for one in UNITS if one.name == name)
    range_ = Range(Decimal(12), Decimal(40), name)
    for word in (format_range(range_).removeprefix("12–40"), *(word for word in unit.words if word != "per cent")):
        for printed in (f"12–40 {word.strip()}", f"12-40 {word.strip().upper()}", f"12 to 40 {word.strip()}."):
            reads_as(printed, range_, OF_DIMENSION[unit.dimension])


@pytest.mark.parametrize(
    "printed", ["1½–2 in.", "1 1/2–2 in.", "1½-2 in.", "1 1⁄2 to 2 in.", "1-1/2 to 2 in.", "11/2–2 in."]
)
def test_fractions_as_printers_set_them(printed: str) -> None:
    reads_as(printed, Range(Decimal("1.5"), Decimal(2), "in", parts=(1, 2, 1, 1)))


@given(lengths.flatmap(lambda unit: ranges(unit, wholes | decimals | vulgar)))
@settings(max_examples=150, deadline=None)
def test_in_the_middle_of_a_description(range_: Range) -> None:
    reads_as(f"Leaves hairy; spur slender, {format_range(range_)} long, ivory in age.", range_)
