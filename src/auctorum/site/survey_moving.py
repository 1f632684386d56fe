"""The threshold that is moved on the page of a survey: the sentence that tells its count, and what the script needs.

`assets/survey.js` reckons the same from the figures that the page carries, in the same order of operations.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from math import ceil, floor

from auctorum.characters.show import format_span
from auctorum.characters.units import UnfitUnit, convert
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.cuts import STEPS
from auctorum.determination.many import as_float
from auctorum.determination.survey.model import Count, Curve, Reading
from auctorum.determination.survey.words import interval_words, share_words
from auctorum.site.survey_parts import Mover

MOST_FIGURES = 1500  # different ones that a page carries; of more, those of all sites together, or none
ROUNDING = (
    1e-9  # part of a figure by which floats may miss the exact limit of error, as `criterion.judge_values` has it
)
_FEWEST_STEPS = 80  # of the slider
_BESIDE = {"mm": "in", "cm": "in", "m": "ft", "in": "mm"}


def at_place(readings: Iterable[Reading], curve: Curve, character: Character, place: float) -> tuple[Count, int]:
    """The readings that count if the threshold is at `place`, by the figures alone, and those within their error."""
    named = others = within = 0
    parted = place + parting_shift(curve, character)
    for one in readings:
        value, error = as_float(one.value), as_float(one.error)
        fits = value >= place if curve.limit.at_least else value <= place
        named, others = named + (fits is curve.fitting), others + (fits is not curve.fitting)
        within += abs(value - parted) < error - ROUNDING * max(abs(value), abs(parted))
    return Count(named, others, 0, 0), within


def sentence(count: Count, within: int, curve: Curve, printed: str) -> str:
    """`41 of 75 plants have 25 mm or more (55 %, 43–65 %); 3 are within the error of measuring.`"""
    verb = "is" if within == 1 else "are"
    return (
        f"{count.named} of {count.judged} plants {side(curve).replace('{}', printed)} ({share_words(count)}, "
        f"{interval_words(count)}); {within} {verb} within the error of measuring."
    )


def side(curve: Curve) -> str:
    """What a plant that counts shows, `{}` in place of the threshold."""
    if curve.states:
        told = {
            (True, True): "are {} or beyond", (True, False): "are {} or before it",
            (False, True): "come before {}", (False, False): "go beyond {}",
        }  # fmt: skip
    else:
        told = {
            (True, True): "have {} or more", (True, False): "have {} or less",
            (False, True): "have less than {}", (False, False): "have more than {}",
        }  # fmt: skip
    return told[curve.fitting, curve.limit.at_least]


def parting_shift(curve: Curve, character: Character) -> float:
    """How far beside a threshold plants part: of states half way to the first that is on the other side."""
    return drawing_shift(curve, character) if character.kind is Kind.ORDERED else 0.0


def drawing_shift(curve: Curve, character: Character) -> float:
    """How far beside a threshold its line stands: what lies in steps is parted between two of them."""
    if character.kind not in (Kind.ORDERED, Kind.COUNT):
        return 0.0
    return -0.5 if curve.limit.at_least else 0.5


def mover(
    curve: Curve, readings: Sequence[Reading], character: Character, rows: Sequence[str], numbers: Sequence[Fraction]
) -> Mover | None:
    """What the script needs; `rows` are the ids of the sites that have a row, `numbers` all that the slider reaches."""
    figures = _figures(readings, {site: number for number, site in enumerate(rows)})
    by_site = len(figures) <= MOST_FIGURES
    if not by_site:
        figures = _figures(readings, {})
    if not readings or len(figures) > MOST_FIGURES:
        return None
    least, most, step = slider(numbers, curve.limit.value, whole=bool(character.kind is Kind.COUNT))
    if curve.states:
        least, most, step = Fraction(0), Fraction(len(curve.states) - 1), Fraction(1)
    beside = _BESIDE.get(curve.unit, "")
    return Mover(
        figures=json.dumps(figures, separators=(",", ":")),
        rows=len(rows) if by_site else 0,
        least=plain_figure(least),
        most=plain_figure(most),
        step=plain_figure(step),
        value=plain_figure(curve.limit.value),
        at_least=curve.limit.at_least,
        fitting=curve.fitting,
        side=side(curve),
        unit=format_span(Fraction(1), Fraction(1), curve.unit).removeprefix("1") if curve.unit else "",
        drawn=f"{drawing_shift(curve, character):g}",
        parted=f"{parting_shift(curve, character):g}",
        beside=beside,
        factor=plain_figure(_factor(beside, curve.unit)) if beside else "",
        states=json.dumps(curve.states, separators=(",", ":")) if curve.states else "",
    )


def _figures(readings: Iterable[Reading], rows: Mapping[str, int]) -> list[tuple[int, float, float, int]]:
    """Row (-1 for none), figure, error, and how many plants have just these."""
    found = Counter((rows.get(one.site, -1), as_float(one.value), as_float(one.error)) for one in readings)
    return [(*key, many) for key, many in sorted(found.items())]


def slider(numbers: Iterable[Fraction], limit: Fraction, *, whole: bool = False) -> tuple[Fraction, Fraction, Fraction]:
    """Least, most and step of the slider: a round step that reaches the limit and makes some 80 to 200 of them."""
    known = [*numbers, limit]
    low, high = min(known), max(known)
    spread = (high - low) or abs(high) or Fraction(1)
    fine = [step for step in STEPS if spread / step >= _FEWEST_STEPS] or [STEPS[-1]]
    step = Fraction(1) if whole else next((one for one in fine[:4] if limit % one == 0), fine[0])
    start = limit % step
    return floor((low - start) / step) * step + start, ceil((high - start) / step) * step + start, step


def plain_figure(value: Fraction) -> str:
    """A figure as an attribute has it.

    >>> plain_figure(Fraction(25)), plain_figure(Fraction("22.2"))
    ('25', '22.2')
    """
    return repr(as_float(value)).removesuffix(".0")


def beside_words(curve: Curve) -> str:
    """The limit in the other unit: `0.98 in`; empty where there is none."""
    beside = _BESIDE.get(curve.unit, "")
    return f"{float(curve.limit.value) / float(_factor(beside, curve.unit)):.2f} {beside}" if beside else ""


def _factor(beside: str, unit: str) -> Fraction:
    try:
        return convert(Fraction(1), beside, unit)
    except UnfitUnit:  # never, of the pairs of _BESIDE
        return Fraction(1)
