"""How a bound behaves over the years: median, spread, stability, and Kendall's rank correlation with its p.

Kendall, M. G. (1938), "A new measure of rank correlation", Biometrika 30: 81-93 (tau); tau-b after Kendall, M. G.
(1945), Biometrika 33: 239-251. Daniels, H. E. (1944), "The relation between measures of correlation in the universe
of sample permutations", Biometrika 33: 129-135 (the variance of a sum over pairs). All cited from memory.
"""

from __future__ import annotations

import math
from bisect import bisect_left, bisect_right, insort
from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction
from functools import lru_cache
from itertools import combinations, groupby
from statistics import median
from typing import NamedTuple

from auctorum.circumscription.findings import Bound
from auctorum.circumscription.sweep import Figure, all_same, same

FEWEST_FOR_A_TREND = 4
STRONG, SURE = 0.6, 0.05  # a drift needs |tau| and p at least as good as these
# Largest numbers of works for which p is counted out: with ties in one of the two or in none, with ties in both,
# and where "the same within precision" does not part the figures into classes.
EXACT, EXACT_IF_BOTH_TIED, EXACT_WITHOUT_CLASSES = 50, 10, 7


def bound(years: Sequence[int], figures: Sequence[Figure]) -> Bound | None:
    """How the figures stated in those years behave; None if there are none. The order of works does not matter.

    Median and spread are of the figures as stated.
    """
    if not figures:
        return None
    values = [figure.value for figure in figures]
    tau, p = kendall(years, figures) if len(figures) >= FEWEST_FOR_A_TREND else (None, None)
    middle = Fraction(median(values))
    return Bound(len(values), middle, max(values) - min(values), all_same(figures), tau, p)


def drifts(found: Bound | None) -> bool:
    """Whether a bound moved one way with the years, |tau| >= 0.6 with p <= 0.05, by more than precision tells."""
    if found is None or found.stable or found.tau is None or found.p is None:
        return False
    return abs(found.tau) >= STRONG and found.p <= SURE


def kendall(years: Sequence[int], figures: Sequence[Figure]) -> tuple[float | None, float | None]:
    """Kendall's tau-b of figure with year and its two-sided p; both None where one of the two never varies.

    Works of one year are ties, and so are figures that are the same within their stated precision. p is the share
    of all orders in which the score is at least as far from 0: exact up to 50 works if years or figures are free of
    ties, up to 10 with ties in both, up to 7 where precision makes no clean ties (9 as 10, 10 as 11, 9 not as 11);
    beyond that it is the normal approximation with the exact variance.

    >>> kendall((1, 2, 3, 4), [Figure(Fraction(value), Fraction(0)) for value in (10, 20, 40, 30)])
    (0.6666666666666666, 0.3333333333333333)
    """
    pairs = sorted(zip(years, figures, strict=True))
    times, said = [Figure(Fraction(year), Fraction(0)) for year, _ in pairs], [figure for _, figure in pairs]
    of_times, of_said = _contrasts(times), _contrasts(said)
    if not of_times.untied or not of_said.untied:
        return None, None
    score = _score(pairs)
    tau = score / math.sqrt(of_times.untied * of_said.untied)
    ties = _classes(said) if len(said) <= EXACT else None
    orders = _orders(_tied_years(times), ties) if ties else None
    if orders is not None:
        return tau, _share(orders, abs(score))
    if len(said) <= EXACT_WITHOUT_CLASSES:
        return tau, _share(_permuted(tuple(_signs(times)), tuple(_signs(said)), len(said)), abs(score))
    return tau, math.erfc(abs(score) / math.sqrt(2 * _variance(of_times, of_said, len(said))))


# --- the score


class _Contrasts(NamedTuple):
    """Pairs of figures that differ, and the sum over figures of (how many are lower - how many are higher) squared."""

    untied: int
    squares: int


def _contrasts(figures: Sequence[Figure]) -> _Contrasts:
    levels: dict[Fraction, list[Fraction]] = defaultdict(list)
    for value, slack in sorted(figures):
        levels[slack].append(value)
    counts = [_around(figure, levels) for figure in figures]
    untied = sum(lower + higher for lower, higher in counts) // 2
    return _Contrasts(untied, sum((lower - higher) ** 2 for lower, higher in counts))


def _around(figure: Figure, levels: Mapping[Fraction, Sequence[Fraction]]) -> tuple[int, int]:
    """How many figures are lower and how many higher than this one, beyond precision; `levels` by slack, sorted."""
    lower = higher = 0
    for slack, values in levels.items():
        reach = figure.slack + slack
        if reach:
            lower += bisect_right(values, figure.value - reach)
            higher += len(values) - bisect_left(values, figure.value + reach)
        else:
            lower += bisect_left(values, figure.value)
            higher += len(values) - bisect_right(values, figure.value)
    return lower, higher


def _score(pairs: Sequence[tuple[int, Figure]]) -> int:
    """Pairs that rise with the years less those that fall; `pairs` by year."""
    before: dict[Fraction, list[Fraction]] = defaultdict(list)
    score = 0
    for _, group in groupby(pairs, key=lambda pair: pair[0]):
        of_year = [figure for _, figure in group]
        for figure in of_year:
            lower, higher = _around(figure, before)
            score += lower - higher
        for value, slack in of_year:
            insort(before[slack], value)
    return score


# --- its chance


def _classes(figures: Sequence[Figure]) -> tuple[int, ...] | None:
    """Sizes of the classes of figures that are the same, by value; None where precision makes no classes."""
    alike = [frozenset(at for at, other in enumerate(figures) if same(one, other)) for one in figures]
    if any(alike[at] != mates for mates in alike for at in mates):
        return None
    return tuple(len(mates) for mates in sorted(set(alike), key=lambda mates: min(figures[at] for at in mates)))


def _tied_years(times: Sequence[Figure]) -> tuple[int, ...]:
    return tuple(count for _, count in sorted(Counter(times).items()))


Orders = Sequence[tuple[int, int]]  # (score, number of orders that reach it)


def _share(orders: Orders, score: int) -> float:
    far = sum(count for reached, count in orders if abs(reached) >= score)
    return far / sum(count for _, count in orders)


def _orders(ties_x: tuple[int, ...], ties_y: tuple[int, ...]) -> Orders | None:
    """The distribution of the score over all orders; None where it is too long to count."""
    if max(ties_x) == 1:
        return _by_inversions(ties_y)
    if max(ties_y) == 1:
        return _by_inversions(ties_x)
    return _counted_out(ties_x, ties_y) if sum(ties_x) <= EXACT_IF_BOTH_TIED else None


@lru_cache(maxsize=256)
def _by_inversions(ties: tuple[int, ...]) -> Orders:
    """For values with those ties against an order without any.

    The numbers of orders by inversions are the coefficients of the q-multinomial of n over the ties, that is of
    the product of (1 - q^k), k = 1..n, over the same product for each tie (MacMahon, Combinatory Analysis, 1915;
    from memory).
    """
    n, highest = sum(ties), math.comb(sum(ties), 2) - sum(math.comb(size, 2) for size in ties)
    counts = [1] + [0] * highest
    for k in range(1, n + 1):
        for power in range(highest, k - 1, -1):
            counts[power] -= counts[power - k]
    for k in (k for size in ties for k in range(1, size + 1)):
        for power in range(k, highest + 1):
            counts[power] += counts[power - k]
    return tuple((highest - 2 * inversions, count) for inversions, count in enumerate(counts))


@lru_cache(maxsize=256)
def _counted_out(ties_x: tuple[int, ...], ties_y: tuple[int, ...]) -> Orders:
    """With ties in both: each group of x in turn takes its share of what is left of y."""
    states: dict[tuple[int, ...], Counter[int]] = {ties_y: Counter({0: 1})}
    for size in ties_x:
        following: dict[tuple[int, ...], Counter[int]] = defaultdict(Counter)
        for left, scores in states.items():
            for taken in _choices(left, size):
                rest = tuple(have - take for have, take in zip(left, taken, strict=True))
                gain = sum(take * (sum(rest[at + 1 :]) - sum(rest[:at])) for at, take in enumerate(taken))
                ways = math.prod(math.comb(have, take) for have, take in zip(left, taken, strict=True))
                for score, count in scores.items():
                    following[rest][score + gain] += count * ways
        states = following
    (scores,) = states.values()
    return tuple(sorted(scores.items()))


def _choices(left: tuple[int, ...], size: int) -> Iterator[tuple[int, ...]]:
    """Every way to take `size` out of groups of those sizes."""
    if not left:
        if size == 0:
            yield ()
        return
    for take in range(min(left[0], size) + 1):
        for rest in _choices(left[1:], size - take):
            yield (take, *rest)


def _signs(figures: Sequence[Figure]) -> Iterator[int]:
    """For every two places whether the later figure is higher (1), lower (-1) or the same (0)."""
    for one, other in combinations(figures, 2):
        yield 0 if same(one, other) else 1 if other.value > one.value else -1


@lru_cache(maxsize=256)
def _permuted(signs_x: tuple[int, ...], signs_y: tuple[int, ...], n: int) -> Orders:
    """For any signs of pairs: figures are put to the years, in order, one by one.

    What one adds to the score depends on the set of those put to earlier years alone, so that sets are counted and not
    orders: 2^n against n!.
    """
    earlier = _first_of_year(signs_x, n)
    lower, higher = _lower_and_higher(signs_y, n)
    # Figures put to earlier years, and those put to the year at hand, as bits -> orders by score.
    states: dict[tuple[int, int], Counter[int]] = {(0, 0): Counter({0: 1})}
    for at in range(n):
        following: dict[tuple[int, int], Counter[int]] = defaultdict(Counter)
        for (before, of_year), scores in states.items():
            if earlier[at] == at:
                before, of_year = before | of_year, 0
            for figure in range(n):
                if not (before | of_year) >> figure & 1:
                    gain = (lower[figure] & before).bit_count() - (higher[figure] & before).bit_count()
                    reached = following[before, of_year | 1 << figure]
                    for score, count in scores.items():
                        reached[score + gain] += count
        states = following
    return tuple(sorted(sum(states.values(), Counter[int]()).items()))


def _first_of_year(signs: Sequence[int], n: int) -> list[int]:
    """By place the first place of its year; `signs` are those of the years, in order."""
    sign = dict(zip(combinations(range(n), 2), signs, strict=True))
    first = [0]
    for at in range(1, n):
        first.append(first[-1] if sign[at - 1, at] == 0 else at)
    return first


def _lower_and_higher(signs: Sequence[int], n: int) -> tuple[list[int], list[int]]:
    """By figure the set of those that are lower, and of those that are higher, as bits."""
    lower, higher = [0] * n, [0] * n
    for (one, other), sign in zip(combinations(range(n), 2), signs, strict=True):
        if sign:
            below, above = (one, other) if sign > 0 else (other, one)
            lower[above] |= 1 << below
            higher[below] |= 1 << above
    return lower, higher


def _variance(x: _Contrasts, y: _Contrasts, n: int) -> float:
    """Exact variance of the score over all orders (Daniels 1944); with plain ties that of Kendall's tau-b."""
    single = 2 * x.untied * y.untied / (n * (n - 1))
    return single + (x.squares - 2 * x.untied) * (y.squares - 2 * y.untied) / (n * (n - 1) * (n - 2))
