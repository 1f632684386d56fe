"""How the plants of a taxon are spread over a character, as its authors state it: a density of straight pieces.

One statement is a trapezium: flat over the typical range, falling in a straight line to the extremes, or over a
shoulder of a tenth of the range where none are stated. Ends reach half the stated precision beyond their figures, so
that a single figure has a width, and an extreme has plants. A count of 4 is the cell from 3½ to 4½, so that counts
stated apart are apart. What is not said to go below zero does not. Directions lie on the circle from 0 to 360. A taxon
is the weighted mean of its statements (a linear opinion pool: Stone, M. (1961), "The opinion pool", Annals of
Mathematical Statistics 32: 1339-1342; from memory). The shapes are a choice of ours.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate, pairwise
from math import floor, isclose
from statistics import median

from auctorum.characters.directions import TURN
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.findings import Finding
from auctorum.circumscription.sweep import Stretch
from auctorum.circumscription.voices import Voice, voices, weighing

SHOULDER = 10  # the shoulder of a statement without extremes is this part of its range
_LEAST_WIDTH = Fraction(1, 1000)  # of the figure itself: a width for a single figure stated without any tolerance
_HALF = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class Density:
    """A density that is linear between `places`, where it has `heights`, and 0 outside them; its integral is 1.

    `shares` is the part of the plants below each place. Places rise, in the unit of the character; one that stands
    twice is a jump from the first of its heights to the second.
    """

    places: tuple[float, ...]
    heights: tuple[float, ...]
    shares: tuple[float, ...]

    def at(self, value: float) -> float:
        """The density at that value."""
        if value == self.places[-1]:
            return self.heights[-1]
        return self.line(value, value)[0]

    def line(self, start: float, end: float) -> tuple[float, float]:
        """The heights at both ends of a stretch inside which there is no place, as they are inside it."""
        right = bisect_right(self.places, (start + end) / 2)
        if right in (0, len(self.places)):
            return 0.0, 0.0
        first, last = self.places[right - 1], self.places[right]
        left, slope = self.heights[right - 1], (self.heights[right] - self.heights[right - 1]) / (last - first)
        return max(0.0, left + slope * (start - first)), max(0.0, left + slope * (end - first))

    @property
    def mean(self) -> float:
        """The mean of the plants."""
        pieces = zip(pairwise(self.places), pairwise(self.heights), strict=True)
        return sum(
            (end - start) * (left * (2 * start + end) + right * (start + 2 * end)) / 6
            for (start, end), (left, right) in pieces
        )

    def below(self, value: float) -> float:
        """The part of the plants below that value, 0 to 1."""
        right = bisect_right(self.places, value)
        if right == 0:
            return 0.0
        if right == len(self.places):
            return 1.0
        step = value - self.places[right - 1]
        return min(1.0, self.shares[right - 1] + step * (self.heights[right - 1] + self.at(value)) / 2)


def densities(findings: Sequence[Finding], character: Character) -> tuple[Density | None, ...]:
    """The density of each finding, all of one numeric character at one stage; None where nothing is said.

    Repetitions of figures count by their weight. A bound that is not stated is taken from the other works on the same
    taxon (their median); where no work states it, a lower one is 0 and an upper one twice the lower. Those of
    directions are folded to the circle from 0 to 360, so that they can be compared.
    """
    heard = (weighing(stating_a_bound(voices(one.evidence, character))) for one in findings)
    return tuple(pooled(several, character.kind) if several else None for several in heard)


def pooled(heard: Sequence[Voice], kind: Kind = Kind.MEASURE) -> Density:
    """The weighted mean of the voices, each with a stretch; all count alike where none has weight."""
    found = mixed((one.density, one.weight) for one in shapes(heard, kind))
    return on_circle(found) if kind is Kind.ANGLE else found


@dataclass(frozen=True, slots=True)
class Shape:
    """The density of one voice, with the typical range that it was drawn from; directions lie on any turn."""

    density: Density
    weight: float
    low: float
    high: float


def shapes(heard: Sequence[Voice], kind: Kind = Kind.MEASURE) -> tuple[Shape, ...]:
    """What each of the voices that has a stretch says, in their order; all weigh 1 where none has weight."""
    said = [(voice, voice.stretch) for voice in heard if voice.stretch is not None]
    low = _usual((one.low for _, one in said), Fraction(0))
    high = _usual((one.high for _, one in said), None)
    weightless = not any(voice.weight for voice, _ in said)
    found = []
    for voice, one in said:
        ends = _stated(one, low, high)
        shape, weight = _trapezium(voice, *ends, one, kind), 1.0 if weightless else float(voice.weight)
        found.append(Shape(shape, weight, float(ends[0]), float(ends[1])))
    return tuple(found)


def mixed(parts: Iterable[tuple[Density, float]]) -> Density:
    """The weighted mean of densities; weights not below 0, of any sum above 0."""
    several = [(density, weight) for density, weight in parts if weight]
    points: list[tuple[float, float]] = []
    for start, end in pairwise(sorted({place for density, _ in several for place in density.places})):
        lines = [(density.line(start, end), weight) for density, weight in several]
        points.append((start, sum(left * weight for (left, _), weight in lines)))
        points.append((end, sum(right * weight for (_, right), weight in lines)))
    return _made(points)


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
    points: list[tuple[float, float]] = []
    inner = {place for place in density.places if first < place < last}
    for start, end in pairwise(sorted({first, last} | inner)):
        left, right = density.line(start, end)
        points += [(start, left), (end, right)]
    return _made(points), part


def overlap(one: Density, other: Density) -> float:
    """The overlap coefficient: the integral of the smaller of two densities, 0 (apart) to 1 (alike); exact.

    Weitzman, M. S. (1970), Measures of overlap of income distributions (cited from memory).
    """
    places = sorted({*one.places, *other.places})
    total = 0.0
    for start, end in pairwise(places):
        total += _lesser(one.line(start, end), other.line(start, end), end - start)
    return min(1.0, total)


def overlap_of_states(one: Mapping[str, Fraction | float], other: Mapping[str, Fraction | float]) -> float:
    """As `overlap`, of two taxa by the weights of their states.

    >>> overlap_of_states({"cream": 0.75, "buff": 0.25}, {"ivory": 0.5, "buff": 0.5})
    0.25
    """
    return float(sum(min(weight, other.get(state, 0)) for state, weight in one.items()))


def crossings(one: Density, other: Density) -> tuple[float, ...]:
    """Values, rising, at which one density passes the other, and every place where either bends."""
    found: set[float] = {*one.places, *other.places}
    for start, end in pairwise(sorted(found)):
        (a, b), (c, d) = one.line(start, end), other.line(start, end)
        if (a - c) * (b - d) < 0:
            found.add(start + (end - start) * (a - c) / ((a - c) - (b - d)))
    return tuple(sorted(found))


def _lesser(first: tuple[float, float], second: tuple[float, float], width: float) -> float:
    """Integral of the smaller of two lines over a piece."""
    left, right = first[0] - second[0], first[1] - second[1]
    if left * right >= 0:
        lower = first if left + right <= 0 else second
        return width * (lower[0] + lower[1]) / 2
    part = left / (left - right)
    meet = first[0] + (first[1] - first[0]) * part
    return width * (part * (min(first[0], second[0]) + meet) + (1 - part) * (meet + min(first[1], second[1]))) / 2


def stating_a_bound(heard: Iterable[Voice]) -> list[Voice]:
    """The voices that give a number at all."""
    return [one for one in heard if one.stretch and (one.stretch.low is not None or one.stretch.high is not None)]


def _usual(ends: Iterable[Fraction | None], otherwise: Fraction | None) -> Fraction | None:
    stated = [end for end in ends if end is not None]
    return Fraction(median(stated)) if stated else otherwise


def _stated(one: Stretch, usual_low: Fraction | None, usual_high: Fraction | None) -> tuple[Fraction, Fraction]:
    """Both typical bounds, the one that is not stated from what is usual."""
    low = one.low if one.low is not None else min(usual_low or Fraction(0), one.high or Fraction(0))
    high = one.high if one.high is not None else max(usual_high if usual_high is not None else 2 * low, low)
    return low, high


def _trapezium(voice: Voice, low: Fraction, high: Fraction, one: Stretch, kind: Kind) -> Density:
    """The density of one voice: from its least, up to its low, level to its high, down to its most."""
    shoulder, low_slack, high_slack = (high - low) / SHOULDER, one.low_slack, one.high_slack
    if kind is Kind.COUNT:  # its cells are its precision
        shoulder, low_slack, high_slack = Fraction(floor(shoulder)), Fraction(0), Fraction(0)
    least, most = low - max(shoulder, low_slack), high + max(shoulder, high_slack)
    if voice.extremes is not None:
        if voice.extremes.low is not None and voice.extremes.low < low:
            least = voice.extremes.low - low_slack
        if voice.extremes.high is not None and voice.extremes.high > high:
            most = voice.extremes.high + high_slack
    if kind is not Kind.ANGLE and low >= 0:
        least = max(least, Fraction(0))
    return _shape(least, low, high, most, whole=kind is Kind.COUNT)


def _shape(least: Fraction, low: Fraction, high: Fraction, most: Fraction, *, whole: bool) -> Density:
    """A trapezium; counts are widened to their cells, and a single figure to a width of a thousandth of itself."""
    if whole:
        least, low, high, most = least - _HALF, low - _HALF, high + _HALF, most + _HALF
    if least == most:
        give = abs(low) * _LEAST_WIDTH or _LEAST_WIDTH
        least, most = low - give if low else low, high + give
    return _made([(float(least), 0.0), (float(low), 1.0), (float(high), 1.0), (float(most), 0.0)])


def on_circle(density: Density) -> Density:
    """Directions of any turn, folded to the circle from 0 to 360."""
    pieces = []
    for turn in range(floor(density.places[0] / TURN), floor(density.places[-1] / TURN) + 1):
        piece = between(density, turn * TURN, (turn + 1) * TURN)
        if piece is not None:
            inside, part = piece
            places = tuple(min(float(TURN), max(0.0, place - turn * TURN)) for place in inside.places)
            pieces.append((Density(places, inside.heights, inside.shares), part))
    return mixed(pieces)


def _made(points: Iterable[tuple[float, float]]) -> Density:
    """The density through these points, brought to the integral 1; points that stand twice are taken once."""
    told: list[tuple[float, float]] = []
    for place, height in points:
        if not told or place != told[-1][0] or not isclose(height, told[-1][1], rel_tol=1e-9):
            told.append((place, height))
    pieces = ((end - start) * (left + right) / 2 for (start, left), (end, right) in pairwise(told))
    areas = list(accumulate(pieces, initial=0.0))
    whole = areas[-1]
    places, heights = (tuple(column) for column in zip(*told, strict=True))
    return Density(places, tuple(height / whole for height in heights), tuple(area / whole for area in areas))
