"""Ranges in the trade's notation, in the unit that authors use most, no more exact than they were stated."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.directions import TURN, compass_point
from auctorum.characters.show import format_number, format_span
from auctorum.characters.units import convert
from auctorum.characters.values import Range
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.findings import Evidence, Span

METRIC = ("µm", "mm", "cm", "dm", "m", "km")
_MOVED = Fraction(1, 16)  # the part of itself by which rounding may move a figure, as in `restate`
_POINT = {"N": "north", "E": "east", "S": "south", "W": "west"}


@dataclass(frozen=True, slots=True)
class Measures:
    """Prints figures of one character; `slack` is half the finest stated precision of each figure."""

    character: Character
    unit: str
    slack: Mapping[Fraction, Fraction]

    def figure(self, value: Fraction) -> str:
        """A figure without its unit, in the unit of these measures."""
        rounded = self.rounded(value)
        return format_number(convert(rounded, self.character.unit, self.unit) if self.unit else rounded)

    def rounded(self, value: Fraction) -> Fraction:
        """A figure in the character's unit, no finer than it was stated; a direction as it is."""
        return value if self.character.kind is Kind.ANGLE else no_finer(value, self.slack.get(value, Fraction(0)))

    def rounded_span(self, span: Span) -> Span:
        """A span with both ends rounded so."""
        low, high = (None if end is None else self.rounded(end) for end in (span.low, span.high))
        return Span(low, high)

    def notation(self, typical: Span, least: Fraction | None = None, most: Fraction | None = None) -> str:
        """`(18–)22–34(–41) mm`; extremes that print as the typical bounds do are left out."""
        if self.character.kind is Kind.ANGLE:
            return _directions(typical)
        low, high = (None if end is None else self.figure(end) for end in (typical.low, typical.high))
        core = _between(low, high)
        before = f"({self.figure(least)}–)" if least is not None and self.figure(least) != low else ""
        after = f"(–{self.figure(most)})" if most is not None and self.figure(most) != high else ""
        lead = "up to " if low is None and high is not None else ""
        return f"{lead}{before}{core}{after}{self._unit()}"

    def one(self, value: Fraction) -> str:
        """A figure with its unit."""
        if self.character.kind is Kind.ANGLE:
            return _directions(Span(value, value))
        return self.figure(value) + self._unit()

    def _unit(self) -> str:
        return format_span(Fraction(0), Fraction(0), self.unit).removeprefix("0")


def no_finer(value: Fraction, slack: Fraction) -> Fraction:
    """A converted figure rounded to a power of ten within its precision, of which `slack` is half.

    12 in, stated to an inch, is 300 mm and not 304.8; 6½ lines, stated to half a line, are 14 mm. Where that would move
    it by more than a sixteenth of itself it is rounded ten times finer: 1 in is 25 mm.

    >>> no_finer(Fraction("304.8"), Fraction("12.7")), no_finer(Fraction("25.4"), Fraction("12.7"))
    (Fraction(300, 1), Fraction(25, 1))
    """
    if not slack or not value:
        return value
    ten = Fraction(1)
    while ten > 2 * slack:
        ten /= 10
    while ten * 10 <= 2 * slack:
        ten *= 10
    while abs(_to_nearest(value, ten) - value) > abs(value) * _MOVED:
        ten /= 10
    return _to_nearest(value, ten)


def _to_nearest(value: Fraction, step: Fraction) -> Fraction:
    """A half goes up."""
    return (value / step + Fraction(1, 2)) // 1 * step


def measures(evidence: Sequence[Evidence], character: Character) -> Measures:
    """How the figures of this evidence are printed.

    The unit is the metric one that most works use, of those used alike the character's; where all measured otherwise,
    the character's, or centimetres for what is more than 100 mm.
    """
    slack: dict[Fraction, Fraction] = {}
    for item in evidence:
        for span in filter(None, (item.span, item.extremes)):
            for end, half in ((span.low, item.slack_low), (span.high, item.slack_high)):
                if end is not None:
                    slack[end] = min(half, slack.get(end, half))
    return Measures(character, _unit_used(evidence, character), slack)


def _unit_used(evidence: Sequence[Evidence], character: Character) -> str:
    if character.kind is not Kind.MEASURE or character.unit not in METRIC:
        return character.unit
    stated = {(item.work, item.value.unit) for item in evidence if isinstance(item.value, Range)}
    used = Counter(unit for _, unit in stated if unit in METRIC)
    if not used:
        return _unit_by_size(evidence, character)
    favoured = [unit for unit in METRIC if used[unit] == max(used.values())]
    return character.unit if character.unit in favoured else favoured[0]


def _unit_by_size(evidence: Sequence[Evidence], character: Character) -> str:
    """The character's unit; centimetres for what it counts in hundreds of millimetres."""
    ends = [end for item in evidence if item.span for end in (item.span.low, item.span.high) if end is not None]
    return "cm" if character.unit == "mm" and max(ends, default=0) >= 100 else character.unit


def _between(low: str | None, high: str | None) -> str:
    if low is not None and high is not None:
        return low if low == high else f"{low}–{high}"
    return high or (f"{low}+" if low else "")


def _directions(span: Span) -> str:
    """Compass points in words, `north-west to north`; degrees where an end is no such point."""
    turned = [end % TURN for end in (span.low, span.high) if end is not None]
    points = [_point(end) for end in turned]
    if not all(points):
        return " to ".join(dict.fromkeys(f"{format_number(end)}°" for end in turned))
    return " to ".join(dict.fromkeys(points))


def _point(degrees: Fraction) -> str:
    point = compass_point(Decimal(degrees.numerator) / degrees.denominator)
    return "-".join(_POINT[letter] for letter in point)
