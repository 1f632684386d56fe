"""Axes: from values to places in a picture, with round ticks."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

_ROUND = (1.0, 2.0, 5.0, 10.0)


@dataclass(frozen=True, slots=True)
class Scale:
    """A linear axis: values `low` to `high` stand at `start` to `end`."""

    low: float
    high: float
    start: float
    end: float
    step: float

    def at(self, value: float) -> float:
        """Where `value` stands; values beyond the axis stand at its end."""
        inside = min(max(value, self.low), self.high)
        return self.start + (inside - self.low) / (self.high - self.low) * (self.end - self.start)

    def ticks(self) -> tuple[float, ...]:
        """The round values from end to end, in order."""
        count = round((self.high - self.low) / self.step)
        return tuple(round(self.low + index * self.step, 10) for index in range(count + 1))


def round_step(spread: float, most: int) -> float:
    """The smallest of 1, 2, 5 times a power of ten that divides `spread` into at most `most` steps.

    >>> round_step(38, 6), round_step(0.7, 7), round_step(130, 8)
    (10.0, 0.1, 20.0)
    """
    raw = spread / most
    power = 10.0 ** math.floor(math.log10(raw))
    return next(power * factor for factor in _ROUND if power * factor >= raw * (1 - 1e-9))


def scale(values: Iterable[float], start: float, end: float, most: int = 7, whole: bool = False) -> Scale:
    """An axis with round ends that holds `values`, from zero where the values reach near it.

    `whole` keeps the step at 1 or more, for counts and years. Values that are all equal get room on both sides.
    """
    known = list(values) or [0.0, 1.0]
    low, high = min(known), max(known)
    if low >= 0 and low < 0.35 * high and not whole:
        low = 0.0
    if high - low <= 1e-9 * max(abs(low), abs(high), 1e-9):
        pad = 1.0 if whole or abs(low) < 1e-9 else abs(low) * 0.2
        low, high = low - pad, high + pad
    step = max(round_step(high - low, most), 1.0 if whole else 0.0)
    bottom, top = math.floor(low / step + 1e-9), math.ceil(high / step - 1e-9)
    return Scale(bottom * step, max(top, bottom + 1) * step, start, end, step)


_POINTS = ("N", "NE", "E", "SE", "S", "SW", "W", "NW")


def compass_scale(degrees: Iterable[float], start: float, end: float) -> Scale:
    """An axis of bearings from one of the eight points to another, at least a quarter turn long.

    >>> [compass_label(tick) for tick in compass_scale([315, 405], 0, 100).ticks()]
    ['NW', 'N', 'NE']
    """
    known = list(degrees) or [0.0]
    low, high = math.floor(min(known) / 45) * 45.0, math.ceil(max(known) / 45) * 45.0
    if high - low < 90:
        low, high = low - 45, high + 45
    return Scale(low, high, start, end, 45.0)


def compass_label(degrees: float) -> str:
    """One of the eight points, for a tick of `compass_scale`."""
    return _POINTS[round(degrees / 45) % 8]


def tick_label(value: float) -> str:
    """A tick as printed, with a true minus.

    >>> tick_label(20.0), tick_label(-0.5)
    ('20', '−0.5')
    """
    return f"{value:.10g}".replace("-", "−")
