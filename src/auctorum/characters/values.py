"""Values of characters: ranges of numbers, and shares of states."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from itertools import pairwise

from auctorum.problems import AuctorumError


class ReversedRange(AuctorumError, ValueError):
    """A range whose lower bound is above its upper one."""

    remedy = "give the lower bound first, or correct the words"

    def __init__(self, low: Decimal, high: Decimal) -> None:
        super().__init__(low, high)
        self.low, self.high = low, high

    def __str__(self) -> str:
        return f"lower bound {self.low} is above upper bound {self.high}"


WHOLE = (1, 1, 1, 1)


@dataclass(frozen=True, slots=True)
class Range:
    """A range of numbers as one work states it, in the unit as stated (empty for counts and ratios).

    `low`/`high`: typical range, None where the end is open (`up to 5`: low is None). `least`/`most`: the
    extremes in parentheses, None where none are given. Printed digits survive in the Decimals, and give
    the stated precision. At least one of low and high is given.

    `more`: the work leaves the upper end open beyond `high` (`8-13+`). `usual`: the narrower part it calls usual
    (`4-6 (usually 5)`), None where it names none. `parts`: denominators of the fractions printed for least, low,
    high, most (`1½` is 1.5 with 2, `⅓` is 0.333333 with 3), 1 where digits were printed. `step`: the stated
    precision where digits cannot tell it (45 degrees for NE), None otherwise.
    """

    low: Decimal | None
    high: Decimal | None
    unit: str = ""
    least: Decimal | None = None
    most: Decimal | None = None
    approximate: bool = False
    more: bool = False
    usual: tuple[Decimal, Decimal] | None = None
    parts: tuple[int, int, int, int] = WHOLE
    step: Decimal | None = None

    def __post_init__(self) -> None:
        if self.low is None and self.high is None:
            raise ValueError("a range needs a lower or an upper bound")
        stated = [bound for bound in (self.least, self.low, self.high, self.most) if bound is not None]
        for lower, upper in pairwise(stated):
            if lower > upper:
                raise ReversedRange(lower, upper)
        if self.usual is not None and self.usual[0] > self.usual[1]:
            raise ReversedRange(*self.usual)


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
