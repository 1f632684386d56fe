"""How a bound behaves over the years: does it stay, does it drift?

Kendall's rank correlation tau-b (Kendall 1938, Biometrika 30: 81-93; ties after Kendall 1945, Biometrika 33:
239-251) of bound with year. Bounds that are equal within stated precision are ties, as are works of one year.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from fractions import Fraction
from functools import cache
from itertools import combinations, permutations
from statistics import median

from auctorum.characters.bounds import agree
from auctorum.circumscription.findings import Bound

LEAST = 4  # values below which nothing is said of a trend
ENUMERATED = 6  # values up to which ties are judged by trying every order

Stated = tuple[int, Fraction, Fraction]  # year, value, half the stated precision


def bound(stated: Sequence[Stated]) -> Bound | None:
    """Median, spread and trend of one bound; None if nobody states it. Order does not matter."""
    if not stated:
        return None
    stated = sorted(stated)
    values = [value for _, value, _ in stated]
    tau, p = kendall(stated) if len(stated) >= LEAST else (None, None)
    return Bound(
        stated=len(stated),
        median=Fraction(median(values)),
        spread=max(values) - min(values),
        stable=all(agree(a, s, b, t) for (_, a, s), (_, b, t) in combinations(stated, 2)),
        tau=tau,
        p=p,
    )


def kendall(stated: Sequence[Stated]) -> tuple[float | None, float | None]:
    """Kendall's tau-b of value with year and its two-sided p; None for both where either never changes.

    p is exact without ties, and with ties up to six values; beyond that by the normal approximation with
    the variance corrected for ties.
    """
    years = _signs([(Fraction(year), Fraction(0)) for year, _, _ in stated])
    values = _signs([(value, slack) for _, value, slack in stated])
    count = len(stated)
    pairs = count * (count - 1) // 2
    score = sum(a * b for a, b in zip(years, values, strict=True))
    untied_years, untied_values = sum(map(abs, years)), sum(map(abs, values))
    if not untied_years or not untied_values:
        return None, None
    tau = score / math.sqrt(untied_years * untied_values)
    if untied_years == untied_values == pairs:
        return tau, _exact_p(count, abs(score))
    if count <= ENUMERATED:
        return tau, _enumerated_p(tuple(years), tuple(values), count)
    return tau, _normal_p(stated, score)


def _signs(values: Sequence[tuple[Fraction, Fraction]]) -> list[int]:
    """For every pair of places, whether the later value is higher (1), lower (-1) or equal within precision (0)."""
    return [
        0 if agree(a, s, b, t) else 1 if b > a else -1
        for (a, s), (b, t) in combinations(values, 2)
    ]  # fmt: skip


@cache
def _inversions(count: int) -> tuple[int, ...]:
    """How many orders of `count` values have 0, 1, 2 ... inversions (Mahonian numbers)."""
    if count <= 1:
        return (1,)
    smaller = _inversions(count - 1)
    longest = len(smaller) + count - 1
    return tuple(sum(smaller[max(0, at - count + 1) : at + 1]) for at in range(longest))


def _exact_p(count: int, score: int) -> float:
    orders = _inversions(count)
    pairs = len(orders) - 1
    as_far = sum(number for inversions, number in enumerate(orders) if abs(pairs - 2 * inversions) >= score)
    return float(Fraction(as_far, sum(orders)))


@cache
def _enumerated_p(years: tuple[int, ...], values: tuple[int, ...], count: int) -> float:
    """Share of all orders of the values whose score is as far from nothing; signs as `_signs` gives them."""
    places = list(combinations(range(count), 2))
    sign = dict(zip(places, values, strict=True))
    sign |= {(second, first): -value for (first, second), value in sign.items()}
    score = abs(sum(a * b for a, b in zip(years, values, strict=True)))
    moving = [(first, second, year) for (first, second), year in zip(places, years, strict=True) if year]
    orders = list(permutations(range(count)))
    as_far = sum(
        abs(sum(year * sign[order[first], order[second]] for first, second, year in moving)) >= score
        for order in orders
    )
    return as_far / len(orders)


def _normal_p(stated: Sequence[Stated], score: int) -> float:
    n = len(stated)

    def ties(groups: Sequence[int]) -> tuple[int, int, int]:
        return (
            sum(t * (t - 1) * (2 * t + 5) for t in groups),
            sum(t * (t - 1) for t in groups),
            sum(t * (t - 1) * (t - 2) for t in groups),
        )

    v_years, two_years, three_years = ties(_tied(sorted((Fraction(year), Fraction(0)) for year, _, _ in stated)))
    v_values, two_values, three_values = ties(_tied(sorted((value, slack) for _, value, slack in stated)))
    variance = (n * (n - 1) * (2 * n + 5) - v_years - v_values) / 18
    variance += two_years * two_values / (2 * n * (n - 1))
    variance += three_years * three_values / (9 * n * (n - 1) * (n - 2))
    return math.erfc(abs(score) / math.sqrt(2 * variance)) if variance > 0 else 1.0


def _tied(ordered: Sequence[tuple[Fraction, Fraction]]) -> list[int]:
    """Sizes of the runs of values that are equal within precision to the first of their run."""
    runs: list[int] = []
    first: tuple[Fraction, Fraction] | None = None
    for value in ordered:
        if first is not None and agree(*first, *value):
            runs[-1] += 1
        else:
            runs.append(1)
            first = value
    return runs
