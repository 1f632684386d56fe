"""Values of characters: ranges of numbers, and shares of states."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum

from auctorum.problems import AuctorumError


class ReversedRange(AuctorumError, ValueError):
    """A range whose lower bound is above its upper one."""

    remedy = "give the lower bound first, or correct the words"

    def __init__(self, low: Decimal, high: Decimal) -> None:
        super().__init__(low, high)
        self.low, self.high = low, high

    def __str__(self) -> str:
        return f"lower bound {self.low} is above upper bound {self.high}"


@dataclass(frozen=True, slots=True)
class Range:
    """A range of numbers as one work states it, in the unit as stated (empty for counts and ratios).

    `low`/`high`: typical range, None where the end is open (`up to 5`: low is None). `least`/`most`: the
    extremes in parentheses, None where none are given. Printed digits survive in the Decimals, and give
    the stated precision. At least one of low and high is given.
    """

    low: Decimal | None
    high: Decimal | None
    unit: str = ""
    least: Decimal | None = None
    most: Decimal | None = None
    approximate: bool = False

    def __post_init__(self) -> None:
        stated = [bound for bound in (self.least, self.low, self.high, self.most) if bound is not None]
        for lower, upper in zip(stated, stated[1:], strict=False):
            if lower > upper:
                raise ReversedRange(lower, upper)


class Modality(StrEnum):
    """How often a state is said to occur; a state stated plainly is ALWAYS."""

    ALWAYS = "always"
    USUALLY = "usually"
    OFTEN = "often"
    SOMETIMES = "sometimes"
    OCCASIONALLY = "occasionally"
    RARELY = "rarely"
    NEVER = "never"


@dataclass(frozen=True, slots=True, order=True)
class Share:
    """One state, or a span of an ordered spectrum from `state` to `to`, with its modality."""

    state: str
    to: str | None = None
    modality: Modality = Modality.ALWAYS


@dataclass(frozen=True, slots=True)
class States:
    """Alternatives as one work states them; for presence the states are `present` and `absent`."""

    shares: tuple[Share, ...]


Value = Range | States


@dataclass(frozen=True, slots=True)
class Reading:
    """What was read from the words of one statement: a value, and the growth stage it holds for (empty = any)."""

    value: Value
    stage: str = ""
