"""A criterion tried on the named plants of a knowledge base: verdicts by taxon, and the threshold plants favour."""

from __future__ import annotations

from bisect import bisect_left
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise

from auctorum.circumscription.cuts import STEPS
from auctorum.circumscription.intervals import Interval, wilson
from auctorum.circumscription.observed_value import ENOUGH
from auctorum.circumscription.plants import LIST_MARK, Plant
from auctorum.corpus.criteria import Limit
from auctorum.corpus.model import Corpus
from auctorum.determination.criteria.criterion import Judgement, Verdict, judge_each
from auctorum.records.schema import Criterion

_ALIKE = 1e-12  # errors that differ by no more are the same


@dataclass(frozen=True, slots=True)
class Tally:
    """The plants named as one taxon, by verdict; those of which nothing was observed are `insufficient`."""

    taxon: str
    fits: int
    does_not_fit: int
    borderline: int
    insufficient: int
    conflicts: int  # of those that fit or do not
    named_by: tuple[str, ...]

    @property
    def measured(self) -> int:
        """Plants on which the decisive trait was observed."""
        return self.fits + self.does_not_fit + self.borderline

    def wrong(self, *, fitting: bool) -> int:
        """Plants on the wrong side beyond the error of measuring; `fitting`: those that should fit."""
        return self.does_not_fit if fitting else self.fits

    def interval(self, *, fitting: bool) -> Interval:
        """Wilson's interval of the share on the wrong side."""
        return wilson(self.wrong(fitting=fitting), self.measured)


@dataclass(frozen=True, slots=True)
class OnPlants:
    """The threshold that misplaces fewest measured plants, as a handy figure in the canonical unit.

    `wrong` and `others_wrong` are of the `n` plants of the taxon and the `others` of its sister, by figures alone.
    """

    value: Fraction
    wrong: int
    n: int
    others_wrong: int
    others: int


def tallies(corpus: Corpus, criterion: Criterion, taxa: Iterable[str], several: Sequence[Plant]) -> tuple[Tally, ...]:
    """For each of the taxa the plants named so, judged by the criterion; in the order of the taxa."""
    named: dict[str, list[Plant]] = {taxon: [] for taxon in taxa}
    for plant in several:
        if plant.taxon in named:
            named[plant.taxon].append(plant)
    return tuple(_tally(taxon, own, judge_each(corpus, criterion, own)) for taxon, own in named.items())


def _tally(taxon: str, several: Sequence[Plant], judged: Sequence[Judgement]) -> Tally:
    told = Counter(one.verdict for one in judged)
    people = sorted({who for plant in several for who in plant.identified_by.split(LIST_MARK) if who})
    conflicts = sum(one.conflict for one in judged)
    return Tally(
        taxon=taxon,
        fits=told[Verdict.FITS],
        does_not_fit=told[Verdict.DOES_NOT_FIT],
        borderline=told[Verdict.BORDERLINE],
        insufficient=told[Verdict.INSUFFICIENT],
        conflicts=conflicts,
        named_by=tuple(people),
    )


def best_on_plants(limit: Limit, taxon: str, sister: str, several: Iterable[Plant]) -> OnPlants | None:
    """The threshold that misplaces the least mean share of both; None where fewer than `ENOUGH` of either are measured.

    Between two measured values the roundest figure; of thresholds that do as well the one nearest to the limit.
    """
    sign = 1 if limit.at_least else -1
    values: dict[str, list[Fraction]] = {taxon: [], sister: []}
    for plant in several:
        one = plant.at(limit.character, limit.stage)
        if one is not None and one.value is not None and plant.taxon in values:
            values[plant.taxon].append(sign * one.value)
    own, others = sorted(values[taxon]), sorted(values[sister])
    if min(len(own), len(others)) < ENOUGH:
        return None
    places = sorted({*own, *others})
    spans = [(places[0] - 1, places[0]), *pairwise(places), (places[-1], places[-1] + 1)]
    errors = [_error(own, others, above) for _, above in spans[:-1]] + [_error(own, others, places[-1] + 1)]
    least = min(errors)
    good = [span for span, error in zip(spans, errors, strict=True) if error <= least + _ALIKE]
    at = sign * limit.value
    low, high = min(good, key=lambda span: max(span[0] - at, at - span[1], Fraction(0)))
    value = at if low < at <= high else _round_inside(low, high)
    return OnPlants(sign * value, _below(own, value), len(own), len(others) - _below(others, value), len(others))


def _error(own: Sequence[Fraction], others: Sequence[Fraction], value: Fraction) -> float:
    return _below(own, value) / len(own) + 1 - _below(others, value) / len(others)


def _below(ascending: Sequence[Fraction], value: Fraction) -> int:
    return bisect_left(ascending, value)


def _round_inside(low: Fraction, high: Fraction) -> Fraction:
    """The roundest figure above `low` and up to `high`, near their middle."""
    middle = (low + high) / 2
    for step in STEPS:
        inside = [place * step for place in (middle // step, middle // step + 1) if low < place * step <= high]
        if inside:
            return min(inside, key=lambda value: abs(value - middle))
    return high
