"""Aspect as compass directions -> degrees clockwise from north; a range that crosses north ends above 360."""

from __future__ import annotations

import math
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.figures import Line
from auctorum.characters.tokens import Sort
from auctorum.characters.values import Range

TURN = 360  # degrees of a circle
_POINTS = ("n", "nne", "ne", "ene", "e", "ese", "se", "sse", "s", "ssw", "sw", "wsw", "w", "wnw", "nw", "nnw")
NAMES: tuple[str, ...] = tuple(point.upper() for point in _POINTS)
_APART = Fraction(TURN, len(NAMES))  # degrees from one point to the next
_SPELT = {
    "north": "n", "northern": "n", "northerly": "n", "east": "e", "eastern": "e", "easterly": "e", "south": "s",
    "southern": "s", "southerly": "s", "west": "w", "western": "w", "westerly": "w", "northeast": "ne",
    "southeast": "se", "southwest": "sw", "northwest": "nw", "northeastern": "ne", "southeastern": "se",
    "southwestern": "sw", "northwestern": "nw", "septentrionem": "n", "septentrionalis": "n", "septentriones": "n",
    "boream": "n", "borealis": "n", "orientem": "e", "orientalis": "e", "meridiem": "s", "meridionalis": "s",
    "austrum": "s", "australis": "s", "occidentem": "w", "occidentalis": "w",
}  # fmt: skip
_BEARINGS = {point: index * 225 for index, point in enumerate(_POINTS)}  # in tenths of a degree
_JOINS = ("and", "or", "to", "through", "et", "vel", "ad", "facing", "slopes", "versus", "aspect")


def read_directions(line: Line) -> Range | None:
    """The arc of the directions named, from the first to the last over the shorter way; None if none is named.

    A point of the eight is stated to 45 degrees, one of the sixteen to 22.5.
    """
    found = directions_here(line)
    return found[0] if found else None


def directions_here(line: Line) -> tuple[Range, int] | None:
    """The arc of `read_directions`, and the place after its last word."""
    named, end = _named(line)
    if not named:
        return None
    step = Decimal("22.5") if any(len(point) == 3 for point in named) else Decimal(45)
    first, last = _BEARINGS[named[0]], _BEARINGS[named[-1]]
    if (last - first) % 3600 > 1800:
        first, last = last, first
    last += 3600 if last < first else 0
    return Range(_degrees(first), _degrees(last), "degree", step=step), end


def compass_point(degrees: Decimal) -> str:
    """The compass point at these degrees; empty where none of the sixteen lies there.

    >>> compass_point(Decimal("337.5")), compass_point(Decimal(405)), compass_point(Decimal(100))
    ('NNW', 'NE', '')
    """
    place, rest = divmod(degrees % TURN, Decimal("22.5"))
    return "" if rest else NAMES[int(place)]


def nearest_point(degrees: float | Fraction) -> str:
    """The nearest of the sixteen compass points; of two as near the one that lies clockwise.

    >>> nearest_point(350.0), nearest_point(160.0)
    ('N', 'SSE')
    """
    return NAMES[math.floor(degrees / _APART + Fraction(1, 2)) % len(NAMES)]


def arc_words(first: float | Fraction, last: float | Fraction) -> str:
    """The points nearest to both ends of an arc, clockwise; one where both are the same, or that it leaves none out.

    >>> arc_words(135.0, 180.0), arc_words(0.0, 3.0), arc_words(0.0, 350.0)
    ('SE to S', 'N', 'any direction')
    """
    if last - first >= TURN - _APART:
        return "any direction"
    ends = (nearest_point(first), nearest_point(last))
    return " to ".join(dict.fromkeys(ends))


def _degrees(tenths: int) -> Decimal:
    whole, rest = divmod(tenths, 10)
    return Decimal(f"{whole}.{rest}") if rest else Decimal(whole)


def _named(line: Line) -> tuple[list[str], int]:
    """The directions of the first list of them, as points in order, and the place after the last."""
    found: list[str] = []
    gap = at = last = 0
    while at < len(line.tokens):
        point, end = _point(line, at)
        if point:
            found.append(point)
            gap, at, last = 0, end, end
            continue
        gap += line.text(at) not in _JOINS and line.sort(at) not in (Sort.DASH, Sort.COMMA, Sort.SLASH)
        if found and gap:
            break
        at += 1
    return found, last


def _point(line: Line, at: int) -> tuple[str, int]:
    """The point spelt here, `NW`, `north-west`, `north-north-east`, and the place after it."""
    spelt, end = "", at
    while end < at + 5 and (part := _part(line.text(end))):
        if spelt + part not in _BEARINGS:
            break
        spelt, end = spelt + part, end + 1
        glued = line.sort(end) is Sort.DASH and line.tokens[end].glued and line.text(end + 1) in _SPELT
        if not glued or line.text(end - 1) not in _SPELT or spelt + _part(line.text(end + 1)) not in _BEARINGS:
            break
        end += 1
    return spelt, end


def _part(text: str) -> str:
    return _SPELT.get(text, text if text in _BEARINGS else "")
