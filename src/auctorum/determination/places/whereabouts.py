"""What in a text gives a place away: digits of its coordinates beyond the precision, or the name of the locality.

A place can be told in words that no program knows for one ("behind the third hut"), or on a grid that is not looked for
(metres of a national grid, a code of letters for a square). Found are degrees with decimals (point, comma, sign or
hemisphere or neither), degrees with minutes and seconds, runs of their digits without any mark, and names of
localities. A number that only looks like a coordinate is taken for one: what is left out is
said, and what is out stays out.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

from auctorum.corpus.model import Corpus
from auctorum.names.fold import fold
from auctorum.records.rows import Site, Specimen

_DATE = re.compile(r"(?<!\d)\d{4}-\d{2}-\d{2}(?!\d)")
_NUMBER = re.compile(r"(\d+)(?:[.,·](\d+))?")
_PIECES = re.compile(r"[,;:(/–—]")
_LETTERS = re.compile(r"[^\W\d_]+")
# Between degrees, minutes and seconds; any other word parts the numbers.
_DEGREE_WORDS = frozenset({"o", "d", "deg", "degs", "degree", "degrees", "m", "min", "mins", "minute", "minutes"})
LONGEST_GAP = 12  # letters between degrees and minutes, or minutes and seconds
LEAST_RUN = 5  # digits without a mark that are taken for a coordinate: years have four
LONGEST_RUN = 12
MOST_WORDS = 6  # words of the name of a locality that are compared
SHORTEST_NAME = 3
MOST_DIGITS = 20  # of a number; what follows is no more exact than any place


@dataclass(frozen=True, slots=True)
class _Figure:
    """A number in a text: its digits before and after the mark, and where it stands."""

    whole: str
    decimals: str
    start: int
    end: int

    @property
    def value(self) -> Fraction:
        return Fraction(Decimal(f"{self.whole}.{self.decimals or 0}"))

    @property
    def step(self) -> Fraction:
        return Fraction(1, 10 ** len(self.decimals))


@dataclass(frozen=True, slots=True)
class Whereabouts:
    """What must not be told of some sites: `cells` count steps of the precision from zero, without sign."""

    precision: Fraction
    cells: frozenset[int]
    runs: frozenset[str]
    names: frozenset[str]  # folded, without blanks

    def told_in(self, text: str) -> bool:
        """Whether the text gives one of the places away more exactly than the precision allows."""
        return self._names_in(text) or self._figures_in(text)

    def _names_in(self, text: str) -> bool:
        if not self.names:
            return False
        words = _words(text)
        for first in range(len(words)):
            name = ""
            for word in words[first : first + MOST_WORDS]:
                name += word
                if name in self.names:
                    return True
        return False

    def _figures_in(self, text: str) -> bool:
        if not self.cells or not any(map(str.isdigit, text)):
            return False
        plain = _DATE.sub(" ", unicodedata.normalize("NFKC", text))
        figures = list(_figures(plain))
        return any(self._run(one) or self._near(one.value, one.step) for one in figures) or any(
            self._near(value, step) for value, step in _readings(plain, figures)
        )

    def _run(self, figure: _Figure) -> bool:
        digits = (figure.whole + figure.decimals).lstrip("0")[:LONGEST_RUN]
        return any(digits[:length] in self.runs for length in range(LEAST_RUN, len(digits) + 1))

    def _near(self, value: Fraction, step: Fraction) -> bool:
        """Whether the figure is finer than the precision and may lie, by rounding too, in the cell of a site."""
        if step >= self.precision or value > 181:
            return False
        return any(around // self.precision in self.cells for around in (value - step, value, value + step))


def whereabouts_of(corpus: Corpus) -> Whereabouts:
    """What gives away the sites of a knowledge base, and the plants that have a place of their own."""
    plants = (one.record for one in corpus.specimens)
    own = (one for one in plants if one.locality or one.decimalLatitude is not None or one.decimalLongitude is not None)
    return whereabouts([*corpus.sites.values(), *own], corpus.settings.locality_precision)


def whereabouts(places: Iterable[Site | Specimen], precision: Decimal) -> Whereabouts:
    """What gives these places away, where coordinates are cut to multiples of `precision` degrees."""
    known = list(places)
    unit = Fraction(precision)
    degrees = [abs(one) for site in known for one in (site.decimalLatitude, site.decimalLongitude) if one is not None]
    islands = {"".join(_words(site.island)) for site in known if isinstance(site, Site)}
    names = {name for site in known for name in _names(site.locality)} - islands
    return Whereabouts(
        unit,
        frozenset(int(Fraction(one) // unit) for one in degrees),
        frozenset(run for one in degrees for run in _runs(one, unit)),
        frozenset(names),
    )


def _words(text: str) -> list[str]:
    return fold(re.sub(r"[-‐‑_]", " ", text)).split()


def _names(locality: str) -> Iterator[str]:
    """The locality as a whole and its first part, which is the name; what follows a comma is often the island."""
    for part in (locality, _PIECES.split(locality, maxsplit=1)[0]):
        name = "".join(_words(part)[:MOST_WORDS])
        if len(name) >= SHORTEST_NAME:
            yield name


def _runs(degrees: Decimal, precision: Fraction) -> Iterator[str]:
    """Digits of a coordinate without marks that tell more than the precision: decimal, and degrees to seconds."""
    whole, _, decimals = f"{degrees:f}".partition(".")
    decimals = decimals[:MOST_DIGITS]
    for length in range(1, len(decimals) + 1):
        run = (whole + decimals[:length]).lstrip("0")
        if Fraction(1, 10**length) < precision and len(run) >= LEAST_RUN:
            yield run[:LONGEST_RUN]
    seconds = Fraction(degrees) * 3600
    for count in {int(seconds), round(seconds)}:
        run = f"{count // 3600}{count // 60 % 60:02}{count % 60:02}"
        if Fraction(1, 3600) < precision and len(run) >= LEAST_RUN:
            yield run


def _figures(text: str) -> Iterator[_Figure]:
    for match in _NUMBER.finditer(text):
        decimals = (match[2] or "")[:MOST_DIGITS]
        yield _Figure(match[1].lstrip("0")[:MOST_DIGITS] or "0", decimals, match.start(), match.end())


def _readings(text: str, figures: list[_Figure]) -> Iterator[tuple[Fraction, Fraction]]:
    """Degrees, with their step, that neighbouring numbers may mean: degrees and minutes, and seconds; or decimals."""
    for number, (degrees, minutes) in enumerate(pairwise(figures)):
        if degrees.decimals or not _joined(text, degrees, minutes):
            continue
        raw = text[minutes.start : minutes.end]
        if minutes.start - degrees.end <= 2 and not minutes.decimals and len(raw) > 2:
            yield (
                Fraction(Decimal(f"{degrees.whole}.{raw[:MOST_DIGITS]}")),
                Fraction(1, 10 ** min(len(raw), MOST_DIGITS)),
            )
        if minutes.value >= 60:
            continue
        value = degrees.value + minutes.value / 60
        yield value, minutes.step / 60
        if number + 2 < len(figures) and not minutes.decimals:
            seconds = figures[number + 2]
            if seconds.value < 60 and _joined(text, minutes, seconds):
                yield value + seconds.value / 3600, seconds.step / 3600


def _joined(text: str, before: _Figure, after: _Figure) -> bool:
    """Whether nothing but marks and words of degrees stands between two numbers."""
    gap = text[before.end : after.start]
    return len(gap) <= LONGEST_GAP and all(word.casefold() in _DEGREE_WORDS for word in _LETTERS.findall(gap))
