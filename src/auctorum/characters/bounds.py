"""The bounds of a stated range as exact numbers in one unit, and whether two bounds say the same."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.units import convert
from auctorum.characters.values import Range


@dataclass(frozen=True, slots=True)
class Bounds:
    """A range in one unit; None where a bound is not stated. The slacks are half the stated precision."""

    low: Fraction | None
    high: Fraction | None
    least: Fraction | None
    most: Fraction | None
    low_slack: Fraction
    high_slack: Fraction


def bounds(range_: Range, unit: str) -> Bounds:
    """The range in `unit` (empty for counts and ratios); raises UnfitUnit or UnknownUnit.

    Both typical bounds are taken to be as precise as the finer printed of the two: who writes `0.4–1 mm` or
    `1½–2 in.` measured to tenths, or to halves, and left out what was zero (common practice, no source).
    Where nothing finer is printed, the last whole digit counts: 10 cm is ±5 mm, 4 in ±0.5 in, 8.00 mm ±0.005 mm,
    1½ in ±¼ in.

    >>> found = bounds(Range(Decimal(10), Decimal("12"), "cm"), "mm")
    >>> (found.low, found.high, found.low_slack)
    (Fraction(100, 1), Fraction(120, 1), Fraction(5, 1))
    """
    low, high, least, most = (_in_unit(exact, range_.unit, unit) for exact in exact_bounds(range_))
    slack = _in_unit(stated_step(range_) / 2, range_.unit, unit) or Fraction(0)
    return Bounds(low, high, least, most, slack, slack)


def agree(a: Fraction, a_slack: Fraction, b: Fraction, b_slack: Fraction) -> bool:
    """Whether two figures are equal within their stated precision: what their digits may stand for overlaps.

    22 mm and 23 mm, each to the millimetre, only touch, and differ.

    >>> agree(Fraction("101.6"), Fraction("12.7"), Fraction(100), Fraction(5))  # 4 in and 10 cm, in mm
    True
    """
    return a == b or abs(a - b) < a_slack + b_slack


def exact_bounds(range_: Range) -> tuple[Fraction | None, Fraction | None, Fraction | None, Fraction | None]:
    """low, high, least, most in the unit as stated; a printed fraction (⅓) is exact again."""
    least, low, high, most = range_.parts
    return (
        _exact(range_.low, low),
        _exact(range_.high, high),
        _exact(range_.least, least),
        _exact(range_.most, most),
    )


def stated_step(range_: Range) -> Fraction:
    """The stated precision of the typical bounds, in the unit as stated."""
    if range_.step is not None:
        return Fraction(range_.step)
    printed = ((range_.low, range_.parts[1]), (range_.high, range_.parts[2]))
    return min(_step(value, parts) for value, parts in printed if value is not None)


def _exact(value: Decimal | None, parts: int) -> Fraction | None:
    if value is None:
        return None
    return Fraction(value) if parts == 1 else Fraction(round(Fraction(value) * parts), parts)


def _step(value: Decimal, parts: int) -> Fraction:
    if parts > 1:
        return Fraction(1, parts)
    exponent = value.as_tuple().exponent
    return Fraction(1, 10 ** max(0, -exponent)) if isinstance(exponent, int) else Fraction(1)


def _in_unit(value: Fraction | None, stated: str, wanted: str) -> Fraction | None:
    if value is None or stated == wanted:
        return value
    return convert(value, stated, wanted)
