"""A stated range in another unit, rounded as a person would print it; the exact factors are those of `units`.

How far to round is a convention (common practice, no source). A figure is rounded to a power of ten of the new unit, in
decimals and not in eighths: the finest that is no less than a third of the stated precision, so that 22–34 mm is
0.9–1.3 in. and 4–10 lines are 8–21 mm. Where that would move a figure by more than a sixteenth of itself, as with 1 cm
or 2 mm in inches, it is rounded ten times finer, and so are its neighbours. Zeros after the point are left out: 25 mm
is 1 in. Metric units in one another, and a unit in a smaller one that it holds a whole number of (feet in inches), come
out exactly and are not rounded.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import ROUND_CEILING, Context, Decimal
from fractions import Fraction

from auctorum.characters.bounds import exact_bounds, stated_step
from auctorum.characters.units import convert, unit_named
from auctorum.characters.values import WHOLE, Range

_FINER = 3  # how many times finer than the stated precision a step may be
_MOVED = Fraction(1, 16)  # the part of itself by which rounding may move a figure
_PLACES = 12  # behind the point, beyond which no figure is exact
_EXACTLY = Fraction(0)


def restated(range_: Range, unit: str) -> Range:
    """The range in that unit, rounded; the very range where it stands in it already.

    Bounds left open stay open; an extreme no longer beyond its bound is left out; bounds that fall together are a
    single figure. `step` is what the work states, or what a figure was rounded to where that is coarser, so that no
    bound is more than half of it away from the exact one. Raises UnknownUnit, or UnfitUnit for another dimension.

    >>> from auctorum.characters.show import format_range
    >>> spur = Range(Decimal(22), Decimal(34), "mm", Decimal(18), Decimal(41))
    >>> format_range(restated(spur, "in")), format_range(restated(spur, "cm"))
    ('(0.7–)0.9–1.3(–1.6) in.', '(1.8–)2.2–3.4(–4.1) cm')
    """
    to = unit_named(unit).name
    if to == range_.unit:
        return range_
    factor = convert(Fraction(1), range_.unit, to)
    usual = tuple(map(Fraction, range_.usual or ()))
    exact = [None if bound is None else bound * factor for bound in (*exact_bounds(range_), *usual)]
    stated = stated_step(range_) * factor
    steps = _steps([abs(bound) for bound in exact if bound], stated, factor)
    figures = [None if bound is None else _rounded(bound, steps.get(abs(bound), _EXACTLY)) for bound in exact]
    return _settled(replace(range_, usual=None, parts=WHOLE), to, figures, max(stated, *steps.values(), _EXACTLY))


def figure_in(value: Fraction, stated: Fraction) -> Fraction:
    """A figure that is already in its new unit, rounded as `restated` does; `stated` is its precision in that unit.

    >>> figure_in(Fraction("0.98425"), Fraction("0.03937"))
    Fraction(1, 1)
    """
    return Fraction(_rounded(value, _step(abs(value), stated)))


def _settled(range_: Range, unit: str, figures: Sequence[Decimal | None], step: Fraction) -> Range:
    """The range with these figures (low, high, least, most, usual), without what rounding has made idle."""
    low, high, least, most, *usual = figures
    least, low, high, most = _rising(least, low, high, most)
    first, last = (high if low is None else low), (low if high is None else high)
    alone = low is not None and low == high
    return replace(
        range_,
        low=low,
        high=None if alone and range_.more else high,
        unit=unit,
        least=least if least != first else None,
        most=most if most != last else None,
        more=range_.more and not alone,
        usual=_usual(usual, low, high),
        step=Context(prec=9, rounding=ROUND_CEILING).divide(Decimal(step.numerator), Decimal(step.denominator)),
    )


def _rising(*figures: Decimal | None) -> tuple[Decimal | None, ...]:
    """The figures, each at least as high as those before: one rounded coarsely may have fallen below a finer one."""
    highest: Decimal | None = None
    found = []
    for figure in figures:
        highest = figure if highest is None or (figure is not None and figure > highest) else highest
        found.append(None if figure is None else highest)
    return tuple(found)


def _usual(
    usual: Sequence[Decimal | None], low: Decimal | None, high: Decimal | None
) -> tuple[Decimal, Decimal] | None:
    first, last = _rising(*usual) if usual else (None, None)
    return None if first is None or last is None or (first, last) == (low, high) else (first, last)


def _steps(sizes: Sequence[Fraction], stated: Fraction, factor: Fraction) -> dict[Fraction, Fraction]:
    """By the size of a figure, to what it is rounded: as finely as any figure of the range from its tenth part up.

    So neighbours are printed alike (8–9 mm is 0.31–0.35 in.), and a long range is not (1–30 cm is 0.4–12 in.).
    """
    if (factor.denominator == 1 or _is_power_of_ten(factor)) and all(map(_terminates, sizes)):
        return {}
    own = {size: _step(size, stated) for size in sizes}
    return {size: min(step for other, step in own.items() if other * 10 >= size) for size in sizes}


def _step(size: Fraction, stated: Fraction) -> Fraction:
    """The power of ten to which a figure of this size and stated precision is rounded by itself; 0 for nought."""
    if not size:
        return _EXACTLY
    step = Fraction(1)
    while step * _FINER < stated:
        step *= 10
    while step * _FINER >= stated * 10:
        step /= 10
    while abs(Fraction(_rounded(size, step)) - size) > size * _MOVED:
        step /= 10
    return step


def _rounded(value: Fraction, step: Fraction) -> Decimal:
    """The figure to the nearest step, a half away from zero; as it is where the step is 0."""
    if step:
        value = (abs(value) / step + Fraction(1, 2)) // 1 * step * (1 if value > 0 else -1)
    return Decimal(format(Decimal(int(value * 10**_PLACES)).scaleb(-_PLACES).normalize(), "f"))


def _terminates(value: Fraction) -> bool:
    return Fraction(value * 10**_PLACES).denominator == 1


def _is_power_of_ten(factor: Fraction) -> bool:
    return factor in {Fraction(10) ** power for power in range(-9, 10)}
