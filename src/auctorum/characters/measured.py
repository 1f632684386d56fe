"""A range as printed -> the value it states."""

from __future__ import annotations

from auctorum.characters.notation import Measure
from auctorum.characters.tokens import Number
from auctorum.characters.values import Range


def range_of(measure: Measure) -> Range:
    """The measure as a value; raises ReversedRange."""
    numbers = (measure.least, measure.low, measure.high, measure.most)
    least, low, high, most = (number.value if number else None for number in numbers)
    parts = tuple(number.parts if number else 1 for number in numbers)
    usual: tuple[Number, Number] | None = measure.usual
    return Range(
        low,
        high,
        measure.unit,
        least,
        most,
        measure.approximate,
        measure.more,
        (usual[0].value, usual[1].value) if usual else None,
        (parts[0], parts[1], parts[2], parts[3]),
    )
