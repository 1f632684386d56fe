"""A range as printed, and the value it states."""

from __future__ import annotations

from dataclasses import dataclass

from auctorum.characters.tokens import Number
from auctorum.characters.values import Modality, Range


@dataclass(frozen=True, slots=True)
class Measure:
    """One range as printed, tokens `start` to `end`; numbers still as they stand, all in `unit`.

    `says` are the properties named beside it (length, width...); `factor` of `factors` is its place in a product.
    """

    low: Number | None
    high: Number | None
    unit: str
    start: int
    end: int
    least: Number | None = None
    most: Number | None = None
    usual: tuple[Number, Number] | None = None
    approximate: bool = False
    more: bool = False
    says: tuple[str, ...] = ()
    factor: int = 0
    factors: int = 1
    begins: int = 0  # where its product starts
    times: bool = False  # a multiple of another organ, no figure of this one
    at_most: bool = False  # said in the lead, so it may cover what follows
    often: Modality | None = None  # how often the words before it say it is so
    usual_about: bool = False
    either: bool = False  # "3 or 5": one or the other


def range_of(measure: Measure) -> Range:
    """The measure as a value; raises ReversedRange."""
    numbers = (measure.least, measure.low, measure.high, measure.most)
    least, low, high, most = (number.value if number else None for number in numbers)
    parts = tuple(number.parts if number else 1 for number in numbers)
    usual = (measure.usual[0].value, measure.usual[1].value) if measure.usual else None
    return Range(
        low, high, measure.unit, least, most, measure.approximate, measure.more, usual,
        (parts[0], parts[1], parts[2], parts[3]),
    )  # fmt: skip
