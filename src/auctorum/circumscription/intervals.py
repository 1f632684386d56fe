"""Confidence intervals of a share: k of n plants show something, how large may the share of all plants be?

Wilson's interval is short and good on the average (E. B. Wilson, Journal of the American Statistical Association 22
(1927): 209–212). That of Clopper and Pearson never covers less than it promises (C. J. Clopper & E. S. Pearson,
Biometrika 26 (1934): 404–413). Both from memory.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from functools import lru_cache
from statistics import NormalDist

Interval = tuple[float, float]

_NOTHING_KNOWN: Interval = (0.0, 1.0)
_STEPS = 60  # halvings of 0 to 1: finer than a float tells apart
_TINY = 1e-300  # in place of 0 in a denominator of the continued fraction


def wilson(k: int, n: int, level: float = 0.95) -> Interval:
    """Wilson's interval of the share, both ends from 0 to 1.

    It begins at 0 for k = 0 and ends at 1 for k = n; of n = 0 nothing is known, and it is 0 to 1. Raises ValueError for
    k outside 0 to n, and for a level not between 0 and 1.

    >>> tuple(round(end, 4) for end in wilson(9, 20))
    (0.2582, 0.6579)
    """
    _check(k, n, level)
    if n == 0:
        return _NOTHING_KNOWN
    z = NormalDist().inv_cdf(1 - (1 - level) / 2)
    share, weight = k / n, z * z / n
    middle = (share + weight / 2) / (1 + weight)
    half = math.sqrt(weight * share * (1 - share) + weight * weight / 4) / (1 + weight)
    return (0.0 if k == 0 else max(0.0, middle - half), 1.0 if k == n else min(1.0, middle + half))


@lru_cache(maxsize=4096)
def clopper_pearson(k: int, n: int, level: float = 0.95) -> Interval:
    """The interval of Clopper and Pearson: every share that k of n does not reject at either end.

    Its lower end is the share for which k or more of n come with a probability of (1 - level) / 2, its upper end the
    same for k or fewer. It begins at 0 for k = 0, ends at 1 for k = n, and is 0 to 1 for n = 0. Raises as `wilson`.

    >>> tuple(round(end, 4) for end in clopper_pearson(9, 20))
    (0.2306, 0.6847)
    """
    _check(k, n, level)
    tail = (1 - level) / 2
    return (_lower_end(k, n, tail), 1.0 - _lower_end(n - k, n, tail))


def _check(k: int, n: int, level: float) -> None:
    if not 0 <= k <= n:
        raise ValueError(f"{k} of {n} is no share")
    if not 0 < level < 1:
        raise ValueError(f"a level lies between 0 and 1, not at {level}")


def _lower_end(k: int, n: int, tail: float) -> float:
    """The share at which k or more of n have the probability `tail`; 0 for k = 0."""
    if k == 0:
        return 0.0
    return _root(lambda share: _at_least(k, n, share) - tail)


def _root(rising: Callable[[float], float]) -> float:
    """Where a function that rises from 0 to 1 crosses 0, by halving."""
    low, high = 0.0, 1.0
    for _ in range(_STEPS):
        middle = (low + high) / 2
        if rising(middle) < 0:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def _at_least(k: int, n: int, share: float) -> float:
    """Probability of k or more of n (k at least 1): the incomplete beta function of k and n - k + 1 at the share.

    By its continued fraction on the side where that converges fast, in about the square root of n terms (M. Abramowitz
    & I. A. Stegun, Handbook of Mathematical Functions (1964): 26.5.8 and 26.5.24; from memory).
    """
    if share <= 0.0 or share >= 1.0:
        return 0.0 if share <= 0.0 else 1.0
    a, b = k, n - k + 1
    constant = math.lgamma(n + 1) - math.lgamma(a) - math.lgamma(b)
    power = math.exp(constant + a * math.log(share) + b * math.log1p(-share))
    if share < (a + 1) / (a + b + 2):
        return power / a / _fraction(a, b, share)
    return 1.0 - power / b / _fraction(b, a, 1.0 - share)


def _fraction(a: int, b: int, x: float) -> float:
    """1 + d1/(1 + d2/(1 + ...)), evaluated from the front (modified Lentz)."""
    value, upper, lower = 1.0, 1.0, 0.0
    for m in range(1, a + b + 200):
        half, odd = divmod(m, 2)
        if odd:
            term = -(a + half) * (a + b + half) * x / ((a + 2 * half) * (a + 2 * half + 1))
        else:
            term = half * (b - half) * x / ((a + 2 * half - 1) * (a + 2 * half))
        lower = 1.0 / ((1.0 + term * lower) or _TINY)
        upper = (1.0 + term / upper) or _TINY
        change = upper * lower
        value *= change
        if abs(change - 1.0) < 1e-15:
            break
    return value
