"""How many plants to measure, and what it is worth when none of those measured showed a thing."""

from __future__ import annotations

import math
from collections.abc import Callable
from fractions import Fraction
from statistics import NormalDist

from auctorum.circumscription.intervals import wilson

_FINEST = 10**9  # shares are taken as fractions with denominators up to this, so that 0.3 of 10 is exactly 3
_HALF = Fraction(1, 2)


def plants_wanted(share: float | Fraction, half_width: float, level: float = 0.95) -> int:
    """The number of plants from which on Wilson's interval is at most `half_width` to either side of its middle.

    Expected is that `share` of the plants show the trait; of numbers between two whole plants the less favourable is
    taken. From the number returned on every larger one will do, too; one less will not. Raises ValueError for a share
    outside 0 to 1, a half width not above 0, and a level as `wilson`.

    >>> plants_wanted(0.5, 0.1)
    93
    """
    if not 0 <= share <= 1 or not half_width > 0:
        raise ValueError(f"no number of plants shows a share of {share} to ± {half_width}")
    wilson(0, 0, level)  # refuses a level that is none
    exact = Fraction(share).limit_denominator(_FINEST)
    # k of n differs from the expected share by less than 1 / n; where even that share, moved towards a half, is known
    # well enough, all larger numbers do, since this width falls with n.
    towards = exact if exact <= _HALF else 1 - exact
    enough = _first(lambda n: _half_width(min(_HALF, towards + Fraction(1, n)), n, level) <= half_width)
    while enough > 0 and _widest(exact, enough - 1, level) <= half_width:
        enough -= 1
    return enough


def more_plants_wanted(k: int, n: int, half_width: float, level: float = 0.95) -> int:
    """How many plants to measure beside the n of which k show the trait, if the share stays as it is; 0: none.

    With no plant yet a share of a half is expected, which wants the most. Raises as `plants_wanted` and `wilson`.
    """
    low, high = wilson(k, n, level)
    if (high - low) / 2 <= half_width:
        return 0
    return max(0, plants_wanted(Fraction(k, n) if n else _HALF, half_width, level) - n)


def rule_of_three(n: int) -> float:
    """None of n plants shows it: then less than about 3 / n of all do (95 %); never above 1.

    J. A. Hanley & A. Lippman-Hand, If nothing goes wrong, is everything all right?, Journal of the American Medical
    Association 249 (1983): 1743–1745 (from memory). Raises ValueError for n below 0.

    >>> rule_of_three(60), round(share_if_none(60), 4)
    (0.05, 0.0487)
    """
    if n < 0:
        raise ValueError(f"{n} plants")
    return min(1.0, 3 / n) if n else 1.0


def share_if_none(n: int, level: float = 0.95) -> float:
    """The share that `rule_of_three` rounds: with a larger one, n plants without would be rarer than 1 - level."""
    if n < 0 or not 0 < level < 1:
        raise ValueError(f"{n} plants at a level of {level}")
    return -math.expm1(math.log1p(-level) / n) if n else 1.0


def _widest(share: Fraction, n: int, level: float) -> float:
    """Half the width of Wilson's interval of n plants, the wider of those of the two whole numbers about the share."""
    expected = share * n
    return max(
        (high - low) / 2 for low, high in (wilson(k, n, level) for k in {math.floor(expected), math.ceil(expected)})
    )


def _half_width(share: Fraction, n: int, level: float) -> float:
    """Half the width of Wilson's interval for a share that need not be whole plants; falls as n rises."""
    z = NormalDist().inv_cdf(1 - (1 - level) / 2)
    weight = z * z / n
    return math.sqrt(weight * float(share * (1 - share)) + weight * weight / 4) / (1 + weight)


def _first(holds: Callable[[int], bool]) -> int:
    """The first number from 1 up that a condition holds for, which then holds for all larger ones."""
    high = 1
    while not holds(high):
        high *= 2
    low = high // 2  # does not hold, or is 0
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (low, middle) if holds(middle) else (middle, high)
    return high
