"""What several cells say of one character together: their mean, and the ratio of two measures, with their errors."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction

from auctorum.characters.directions import TURN
from auctorum.characters.units import convert
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.evidence import mean_direction

Weights = Mapping[str, Fraction]


@dataclass(frozen=True, slots=True)
class Cells:
    """What cells say of one character at one stage; `weights` for states, else `value` and `slack`."""

    value: Fraction  # in the canonical unit; 0 for states
    slack: Fraction
    weights: Weights = field(default_factory=dict)
    accuracy: Fraction = Fraction(0)
    by: frozenset[str] = frozenset()
    instruments: frozenset[str] = frozenset()


def mean(cells: Sequence[Cells], character: Character) -> Cells:
    """Mean value (of directions the circular one) and mean weights; slack and accuracy are those of the coarsest."""
    if len(cells) == 1:
        return cells[0]
    values = [one.value for one in cells]
    if character.kind is Kind.ANGLE:
        value = sum(about_their_mean(values), Fraction(0)) / len(values) % TURN
    else:
        value = sum(values, Fraction(0)) / len(values)
    weights: dict[str, Fraction] = {}
    for one in cells:
        for state, weight in one.weights.items():
            weights[state] = weights.get(state, Fraction(0)) + weight / len(cells)
    return Cells(
        value,
        max(one.slack for one in cells),
        weights,
        max(one.accuracy for one in cells),
        frozenset().union(*(one.by for one in cells)),
        frozenset().union(*(one.instruments for one in cells)),
    )


def ratio_of(ratio: Character, measures: Sequence[Cells], vocabulary: Vocabulary) -> Cells | None:
    """The ratio of two measures, in their order, with the error that theirs leave; None where either is 0."""
    first, second = measures
    over, under = (vocabulary[name].unit for name in ratio.of)
    below = convert(second.value, under, over)
    if not first.value or not below:
        return None
    value = first.value / below
    return Cells(
        value,
        value * (first.slack / first.value + second.slack / second.value),
        {},
        value * (first.accuracy / first.value + second.accuracy / second.value),
        first.by | second.by,
        first.instruments | second.instruments,
    )


def about_their_mean(degrees: Sequence[Fraction]) -> tuple[Fraction, ...]:
    """Directions in their order, each turned by whole circles to lie about their circular mean, the lowest in 0–360.

    >>> [int(one) for one in about_their_mean([Fraction(350), Fraction(10)])]
    [350, 370]
    """
    last = mean_direction(degrees) + TURN // 2 if degrees else Fraction(0)
    turned = [one + (last - one) // TURN * TURN for one in degrees]
    together = min(turned, default=Fraction(0)) // TURN * TURN
    return tuple(one - together for one in turned)
