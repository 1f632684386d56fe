"""Units of description with exact factors, and what a given unit may measure.

Metric and English units are exact by definition (1 in = 25.4 mm, international yard and pound agreement of 1959;
a line is 1/12 inch). Paris units follow the French law of 1799 that made a metre 443.296 Paris lines (from memory).
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from difflib import get_close_matches
from enum import StrEnum
from fractions import Fraction
from functools import lru_cache

from auctorum.characters.vocabulary import Character, Kind
from auctorum.problems import AuctorumError


class Dimension(StrEnum):
    """What a unit measures."""

    LENGTH = "length"
    ANGLE = "angle"
    SHARE = "share"


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit, its dimension, and how many canonical units (mm, degree, percent) it holds; `words` are its spellings."""

    name: str
    dimension: Dimension
    factor: Fraction
    words: tuple[str, ...] = ()


_INCH = Fraction(254, 10)
_PARIS_LINE = Fraction(1_000_000, 443_296)
_INCH_WORDS = ("inch", "inches", "ins", "poll", "pollex", "pollicem", "pollices", "pollicum", "unc", "uncia", "unciam")
_FOOT_WORDS = ("foot", "feet", "ped", "pes", "pedem", "pedes", "pedum")
_LINE_WORDS = ("lines", "lin", "linea", "lineae", "lineam", "lineas", "linearum", "lineis", "ligne", "lignes", "linien")
_METRE_WORDS = ("metre", "metres", "meter", "meters", "metros", "mètres")

UNITS: tuple[Unit, ...] = (
    Unit("mm", Dimension.LENGTH, Fraction(1), ("millimetre", "millimetres", "millimeter", "millimeters", "mill")),
    Unit("cm", Dimension.LENGTH, Fraction(10), ("centimetre", "centimetres", "centimeter", "centimeters", "centim")),
    Unit("dm", Dimension.LENGTH, Fraction(100), ("decimetre", "decimetres", "decimeter", "decimeters")),
    Unit("m", Dimension.LENGTH, Fraction(1000), _METRE_WORDS),
    Unit("km", Dimension.LENGTH, Fraction(1_000_000), ("kilometre", "kilometres", "kilometer", "kilometers")),
    Unit("µm", Dimension.LENGTH, Fraction(1, 1000), ("μm", "um", "micron", "microns", "micrometre", "micrometres")),
    Unit("in", Dimension.LENGTH, _INCH, _INCH_WORDS),
    Unit("ft", Dimension.LENGTH, _INCH * 12, _FOOT_WORDS),
    Unit("yd", Dimension.LENGTH, _INCH * 36, ("yard", "yards", "yds")),
    Unit("line", Dimension.LENGTH, _INCH / 12, _LINE_WORDS),
    Unit("paris-line", Dimension.LENGTH, _PARIS_LINE, ("paris lines",)),
    Unit("paris-inch", Dimension.LENGTH, _PARIS_LINE * 12, ("paris inches",)),
    Unit("paris-foot", Dimension.LENGTH, _PARIS_LINE * 144, ("paris feet",)),
    Unit("degree", Dimension.ANGLE, Fraction(1), ("degrees", "deg", "°", "º", "˚", "grados", "graus", "grad")),
    Unit("percent", Dimension.SHARE, Fraction(1), ("%", "per cent", "pct")),
)
SIGNS: Mapping[str, str] = {"'": "ft", '"': "in", "°": "degree", "%": "percent"}
_PARIS: Mapping[str, str] = {"line": "paris-line", "in": "paris-inch", "ft": "paris-foot"}


class UnknownUnit(AuctorumError, LookupError):
    """A unit that is not in the table; `near` are the closest spellings."""

    def __init__(self, said: str, near: tuple[str, ...]) -> None:
        super().__init__(said, near)
        self.said, self.near = said, near

    def __str__(self) -> str:
        return f"no unit `{self.said}`"

    @property
    def remedy(self) -> str:  # type: ignore[override]
        known = ", ".join(unit.name for unit in UNITS)
        return f"did you mean `{self.near[0]}`?" if self.near else f"use one of {known}"


class UnfitUnit(AuctorumError, ValueError):
    """A unit of another dimension than the one it is used for."""

    remedy = "correct the unit, or give the statement to the character it measures"

    def __init__(self, unit: str, wanted: str) -> None:
        super().__init__(unit, wanted)
        self.unit, self.wanted = unit, wanted

    def __str__(self) -> str:
        return f"the unit `{self.unit}` does not fit {self.wanted}"


_BY_WORD: Mapping[str, Unit] = {word.casefold(): unit for unit in UNITS for word in (unit.name, *unit.words)}
_BY_QUOTE: Mapping[str, str] = {"'": "ft", "′": "ft", "’": "ft", '"': "in", "″": "in", "”": "in", "''": "in"}


@lru_cache(maxsize=4096)
def find_unit(word: str) -> Unit | None:
    """The unit that a word or sign spells, whatever its case and closing point; None if it spells none.

    >>> find_unit("Inches").name, find_unit("CM.").name, find_unit("petal")
    ('in', 'cm', None)
    """
    key = word.strip().casefold().removesuffix(".")
    return _BY_WORD.get(_BY_QUOTE.get(key, key))


def unit_named(text: str) -> Unit:
    """The unit of that spelling; raises UnknownUnit with the nearest known spellings.

    >>> unit_named("″").name, unit_named("in.").name, unit_named("poll.").name
    ('in', 'in', 'in')
    """
    unit = find_unit(text)
    if unit is None:
        key = re.sub(r"\s+", " ", text.strip()[:40].casefold())
        raise UnknownUnit(text, tuple(_BY_WORD[word].name for word in get_close_matches(key, _BY_WORD, n=3)))
    return unit


def paris(unit: str) -> str:
    """The Paris unit of that kind for line, inch and foot; any other unit unchanged."""
    return _PARIS.get(unit, unit)


def convert(value: Decimal | Fraction, unit: str | Unit, to: str | Unit) -> Fraction:
    """`value` exactly in the unit `to`; raises UnknownUnit, or UnfitUnit where the dimensions differ.

    >>> convert(Decimal("1.5"), "in", "mm")
    Fraction(381, 10)
    """
    source = unit if isinstance(unit, Unit) else unit_named(unit)
    target = to if isinstance(to, Unit) else unit_named(to)
    if source.dimension is not target.dimension:
        raise UnfitUnit(source.name, f"a value in {target.name}")
    return Fraction(value) * source.factor / target.factor


def unit_fits(unit: Unit, character: Character) -> None:
    """Nothing where values in `unit` can be of this character; raises UnfitUnit otherwise."""
    fits = character.kind in (Kind.MEASURE, Kind.ANGLE) and bool(character.unit)
    if not fits or unit_named(character.unit).dimension is not unit.dimension:
        raise UnfitUnit(unit.name, f"the character `{character.name}`")
