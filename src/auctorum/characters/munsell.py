"""Munsell notation: hue, value and chroma as printed (`5GY 6/6`, `N 5/`), found in words and placed among colours.

The notation and its use follow ASTM D1535 (from memory): ten hue families of ten steps each, value from 0 (black) to
10 (white), chroma from 0 (grey) up, open above.
"""

from __future__ import annotations

import math
import re
import warnings
from dataclasses import dataclass
from decimal import Decimal

from auctorum.problems import AuctorumError

FAMILIES = ("R", "YR", "Y", "GY", "G", "BG", "B", "PB", "P", "RP")
_FIGURE = r"\d{1,2}(?:[.,]\d{1,2})?"
_HUE = rf"(?P<step>{_FIGURE})[ \u00a0]?(?P<family>[RYGBP]{{1,2}})"
_COLOURED = rf"{_HUE}[ \u00a0]?(?P<value>{_FIGURE})[ \u00a0]?/[ \u00a0]?(?P<chroma>{_FIGURE})"
_NEUTRAL = rf"N[ \u00a0]?(?P<grey>{_FIGURE})[ \u00a0]?(?:/(?:[ \u00a0]?0(?:[.,]0)?(?![\d.,]*\d))?|(?P<bare>(?!/)))"
_NOTATION = re.compile(rf"(?<![\w.,/])(?:{_COLOURED}|{_NEUTRAL})(?![\w/])(?![.,]\d)")


class UnreadableColour(AuctorumError, ValueError):
    """A colour reference that is no Munsell notation and no CIELAB colour; `why` in a phrase."""

    remedy = "write Munsell notation (5GY 6/6, N 5/) or CIELAB (lab 62 -20 40)"

    def __init__(self, said: str, why: str) -> None:
        super().__init__(said, why)
        self.said, self.why = said, why

    def __str__(self) -> str:
        shown = self.said if len(self.said) <= 40 else f"{self.said[:39]}…"
        return f"no colour `{shown}`: {self.why}"


@dataclass(frozen=True, slots=True)
class Munsell:
    """A colour in Munsell notation; a neutral grey has an empty `family` and its step and chroma are 0.

    >>> str(Munsell(Decimal("2.5"), "Y", Decimal(9), Decimal(2))), str(Munsell(Decimal(0), "", Decimal(5), Decimal(0)))
    ('2.5Y 9/2', 'N 5/')
    """

    step: Decimal
    family: str
    value: Decimal
    chroma: Decimal

    def __str__(self) -> str:
        return f"{self.step}{self.family} {self.value}/{self.chroma}" if self.family else f"N {self.value}/"

    @property
    def turn(self) -> float:
        """The hue as an angle in radians, from the red end of the family R; 0 for a grey."""
        tenths = 10 * FAMILIES.index(self.family) + float(self.step) if self.family else 0.0
        return math.tau * tenths / 100


def munsell_of(text: str) -> Munsell:
    """The colour that this notation names; raises UnreadableColour.

    >>> str(munsell_of("2,5 Y 9/2")), str(munsell_of("N5"))
    ('2.5Y 9/2', 'N 5/')
    """
    match = _NOTATION.fullmatch(text.strip())
    if match is None:
        raise UnreadableColour(text, "it is no Munsell notation")
    if why := _fault(match):
        raise UnreadableColour(text, why)
    return _colour(match)


def munsell_in(text: str) -> tuple[tuple[int, int, str], ...]:
    """Start, end and normal form of every Munsell notation in the words of a description, in their order.

    Capitals alone are hues, and a grey needs its stroke, so that `2 r 3/4` and `N 5` are none. Of a span
    (`10YR 5/4–6/4`) only the first end has a hue of its own and is found.

    >>> munsell_in("spur ivory (Munsell 2.5Y 9/2), N 5/ in age")
    ((20, 28, '2.5Y 9/2'), (31, 35, 'N 5/'))
    """
    return tuple(
        (match.start(), match.end(), str(_colour(match)))
        for match in _NOTATION.finditer(text)
        if match["bare"] is None and not _fault(match)
    )


def plainly_apart(one: Munsell, other: Munsell) -> bool:
    """Whether two notations are so far apart that CIEDE2000 is beyond 2.3, told from the figures alone.

    One step of value is about 10 in lightness. At one value the chord between two colours, in steps of chroma, is
    weighed by the chroma of both as CIEDE2000 weighs it; over all pairs of the renotation of 1943 that gives at
    least 2.48 for a weighed chord of 1 (a test goes through half of its colours). False says nothing: the colours
    must then be compared.
    """
    if not all(1 <= colour.value <= 9 for colour in (one, other)):
        return False
    first, second = float(one.chroma), float(other.chroma)
    cosine = math.cos(one.turn - other.turn)
    chord = math.sqrt(max(0.0, first * first + second * second - 2 * first * second * cosine))
    return abs(one.value - other.value) >= 1 or chord >= 1 + (first + second) / 8


def chromaticity(colour: Munsell) -> tuple[float, float, float]:
    """x, y and Y (0 to 1, of the perfect diffuser) for the 2° observer under illuminant C.

    From the Munsell renotation (Newhall, Nickerson & Judd 1943), interpolated between its points, with the luminance
    of ASTM D1535. Raises UnreadableColour for a colour outside of it.
    """
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # it tells of plotting libraries that are not there
        from colour.notation import munsell_colour_to_xyY

        said = f"N{colour.value}" if not colour.family else str(colour)
        try:
            x, y, luminance = munsell_colour_to_xyY(said)
        except (ValueError, AssertionError):
            raise UnreadableColour(str(colour), "the Munsell renotation knows no such colour") from None
    return float(x), float(y), float(luminance)


def _fault(match: re.Match[str]) -> str:
    if match["family"] is not None:
        if match["family"] not in FAMILIES:
            return f"there is no hue `{match['family']}`; hues are {', '.join(FAMILIES)}"
        if not 0 < _number(match["step"]) <= 10:
            return "the figure before the hue lies between 0 and 10"
    if _number(match["value"] or match["grey"]) > 10:
        return "the value lies between 0 (black) and 10 (white)"
    return ""


def _colour(match: re.Match[str]) -> Munsell:
    if match["family"] is None:
        return Munsell(Decimal(0), "", _number(match["grey"]), Decimal(0))
    return Munsell(_number(match["step"]), match["family"], _number(match["value"]), _number(match["chroma"]))


def _number(digits: str) -> Decimal:
    return Decimal(digits.replace(",", "."))
