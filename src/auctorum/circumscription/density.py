"""How the plants of a taxon are spread over a character, as its authors state it: a density of straight pieces.

One statement is a trapezium: flat over the typical range, falling in a straight line to the extremes, or over a
shoulder of a tenth of the range where none are stated; never steeper than half the stated precision, so that a
single figure has a width too. A taxon is the weighted mean of its statements (a linear opinion pool: Stone, M. (1961),
"The opinion pool", Annals of Mathematical Statistics 32: 1339-1342; from memory). The shapes are a choice of ours.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, pairwise
from statistics import median

from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.evidence import on_one_turn
from auctorum.circumscription.findings import Finding
from auctorum.circumscription.sweep import Stretch
from auctorum.circumscription.voices import Voice, voices_as_they_lie, weighing

SHOULDER = 10  # the shoulder of a statement without extremes is this part of its range
_LEAST_WIDTH = 1e-3  # of the figure itself: a width for a single figure stated without any tolerance


@dataclass(frozen=True, slots=True)
class Density:
    """A density that is linear between `places`, where it has `heights`, and 0 outside them; its integral is 1.

    `shares` is the part of the plants below each place. Places rise, in the unit of the character.
    """

    places: tuple[float, ...]
    heights: tuple[float, ...]
    shares: tuple[float, ...]

    def at(self, value: float) -> float:
        """The density at that value."""
        right = bisect_right(self.places, value)
        if value == self.places[-1]:
            return self.heights[-1]
        if right in (0, len(self.places)):
            return 0.0
        start, end = self.places[right - 1], self.places[right]
        part = (value - start) / (end - start)
        return self.heights[right - 1] * (1 - part) + self.heights[right] * part

    def below(self, value: float) -> float:
        """The part of the plants below that value, 0 to 1."""
        right = bisect_right(self.places, value)
        if right == 0:
            return 0.0
        if right == len(self.places):
            return 1.0
        step = value - self.places[right - 1]
        return min(1.0, self.shares[right - 1] + step * (self.heights[right - 1] + self.at(value)) / 2)


@dataclass(frozen=True, slots=True)
class _Trapezium:
    least: float
    low: float
    high: float
    most: float
    weight: float

    def at(self, value: float) -> float:
        area = (self.most - self.least + self.high - self.low) / 2
        if value <= self.least or value >= self.most:
            return 0.0
        if value < self.low:
            return (value - self.least) / (self.low - self.least) / area
        if value > self.high:
            return (self.most - value) / (self.most - self.high) / area
        return 1 / area


def densities(findings: Sequence[Finding], character: Character) -> tuple[Density | None, ...]:
    """The density of each finding, all of one numeric character at one stage; None where nothing is said.

    Repetitions of figures count by their weight. A bound that is not stated is taken from the other works on the same
    taxon (their median); where no work states it, a lower one is 0 and an upper one twice the lower. Aspects are
    turned together, so that their densities can be compared.
    """
    heard = [weighing(several) for several in _together(findings, character)]
    return tuple(pooled(several) if several else None for several in heard)


def pooled(heard: Sequence[Voice]) -> Density:
    """The weighted mean of the voices, each with a stretch; all count alike where none has weight."""
    said = [(voice, voice.stretch) for voice in heard if voice.stretch is not None]
    low = _usual((one.low for _, one in said), Fraction(0))
    high = _usual((one.high for _, one in said), None)
    return _sum([_trapezium(voice, one, low, high) for voice, one in said])


def mixed(parts: Iterable[tuple[Density, float]]) -> Density:
    """The weighted mean of densities; weights above 0, of any sum."""
    several = tuple(parts)
    whole = sum(weight for _, weight in several)
    places = sorted({place for density, _ in several for place in density.places})
    return _of(places, lambda place: sum(density.at(place) * weight for density, weight in several) / whole)


def between(density: Density, low: float | None, high: float | None) -> tuple[Density, float] | None:
    """The plants from `low` to `high` (None: no end) as a density of their own, and which part of all they are.

    None where there are none.
    """
    first = density.places[0] if low is None else max(low, density.places[0])
    last = density.places[-1] if high is None else min(high, density.places[-1])
    if first >= last:
        return None
    part = density.below(last) - density.below(first)
    if part <= 1e-12:
        return None
    inner = [place for place in density.places if first < place < last]
    places = (first, *inner, last)
    heights = tuple(density.at(place) / part for place in places)
    shares = tuple(min(1.0, max(0.0, (density.below(place) - density.below(first)) / part)) for place in places)
    return Density(places, heights, shares), part


def overlap(one: Density, other: Density) -> float:
    """The overlap coefficient: the integral of the smaller of two densities, 0 (apart) to 1 (alike); exact.

    Weitzman, M. S. (1970), Measures of overlap of income distributions (cited from memory).
    """
    places = sorted({*one.places, *other.places})
    total = 0.0
    for start, end in pairwise(places):
        firsts = _line(one, start, end)
        seconds = _line(other, start, end)
        total += _lesser(firsts, seconds, end - start)
    return min(1.0, total)


def crossings(one: Density, other: Density) -> tuple[float, ...]:
    """Values, rising, at which one density passes the other, and every place where either bends."""
    found: set[float] = {*one.places, *other.places}
    for start, end in pairwise(sorted(found)):
        (a, b), (c, d) = _line(one, start, end), _line(other, start, end)
        if (a - c) * (b - d) < 0:
            found.add(start + (end - start) * (a - c) / ((a - c) - (b - d)))
    return tuple(sorted(found))


def _line(density: Density, start: float, end: float) -> tuple[float, float]:
    """The density at both ends of a piece inside which it is linear; at an end it may jump."""
    first, last = density.at(0.75 * start + 0.25 * end), density.at(0.25 * start + 0.75 * end)
    return max(0.0, 1.5 * first - 0.5 * last), max(0.0, 1.5 * last - 0.5 * first)


def _lesser(first: tuple[float, float], second: tuple[float, float], width: float) -> float:
    """Integral of the smaller of two lines over a piece."""
    left, right = first[0] - second[0], first[1] - second[1]
    if left * right >= 0:
        lower = first if left + right <= 0 else second
        return width * (lower[0] + lower[1]) / 2
    part = left / (left - right)
    meet = first[0] + (first[1] - first[0]) * part
    return width * (part * (min(first[0], second[0]) + meet) + (1 - part) * (meet + min(first[1], second[1]))) / 2


def _together(findings: Sequence[Finding], character: Character) -> list[tuple[Voice, ...]]:
    """The voices of each finding; directions all turned about one mean."""
    evidence = [finding.evidence for finding in findings]
    if character.kind is Kind.ANGLE:
        turned = iter(on_one_turn([item for several in evidence for item in several]))
        evidence = [tuple(next(turned) for _ in several) for several in evidence]
    return [voices_as_they_lie(several, character) for several in evidence]


def _usual(ends: Iterable[Fraction | None], otherwise: Fraction | None) -> Fraction | None:
    stated = [end for end in ends if end is not None]
    return Fraction(median(stated)) if stated else otherwise


def _trapezium(voice: Voice, one: Stretch, usual_low: Fraction | None, usual_high: Fraction | None) -> _Trapezium:
    low = one.low if one.low is not None else min(usual_low or Fraction(0), one.high or Fraction(0))
    high = one.high if one.high is not None else max(usual_high if usual_high is not None else 2 * low, low)
    shoulder = max((high - low) / SHOULDER, Fraction(0))
    least = low - max(shoulder, one.low_slack)
    most = high + max(shoulder, one.high_slack)
    if voice.extremes is not None:
        if voice.extremes.low is not None and voice.extremes.low < low:
            least = min(voice.extremes.low, low - one.low_slack)
        if voice.extremes.high is not None and voice.extremes.high > high:
            most = max(voice.extremes.high, high + one.high_slack)
    give = max(abs(float(low)), abs(float(high))) * _LEAST_WIDTH or _LEAST_WIDTH
    ends = min(float(least), float(low) - give), max(float(most), float(high) + give)
    return _Trapezium(ends[0], float(low), float(high), ends[1], float(voice.weight))


def _sum(several: Sequence[_Trapezium]) -> Density:
    weights = [one.weight for one in several]
    if not any(weights):
        weights = [1.0] * len(several)
    whole = sum(weights)
    shapes = [(one, weight / whole) for one, weight in zip(several, weights, strict=True) if weight]
    places = sorted({place for one, _ in shapes for place in (one.least, one.low, one.high, one.most)})
    return _of(places, lambda place: sum(one.at(place) * weight for one, weight in shapes))


def _of(places: Sequence[float], at: Callable[[float], float]) -> Density:
    heights = [at(place) for place in places]
    pieces = zip(pairwise(places), pairwise(heights), strict=True)
    areas = list(
        accumulate(((end - start) * (left + right) / 2 for (start, end), (left, right) in pieces), initial=0.0)
    )
    whole = areas[-1]
    return Density(tuple(places), tuple(height / whole for height in heights), tuple(area / whole for area in areas))
