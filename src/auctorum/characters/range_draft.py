"""A range while it is being read: its figures with their own units, its extremes, its open ends."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from auctorum.characters.brackets import Bracket
from auctorum.characters.figures import Figure, in_unit
from auctorum.characters.measured import Measure
from auctorum.characters.tokens import Number
from auctorum.characters.units import UnfitUnit, find_unit
from auctorum.characters.values import Modality


@dataclass(slots=True)
class RangeDraft:
    """A range while it is being read; figures keep their own units until the end."""

    about: bool = False
    at_most: bool = False
    at_least: bool = False
    between: bool = False
    bare_to: bool = False  # at most, but only by a "to", which "bent to" has as well
    often: Modality | None = None
    usual_about: bool = False
    either: bool = False
    low: Figure | None = None
    high: Figure | None = None
    least: Figure | None = None
    most: Figure | None = None
    usual: tuple[Figure, Figure] | None = None
    more: bool = False
    less: bool = False
    unit: str = ""


def take_bracket(bracket: Bracket, draft: RangeDraft) -> None:
    """Give the bracket to the draft: as an extreme, as the usual part, or not at all where it converts the range."""
    first, last, low, high = bracket.first, bracket.last, draft.low, draft.high
    if first is None or last is None or low is None or high is None:
        return
    if bracket.usual:
        draft.usual, draft.usual_about = (first, last), bracket.about
        return
    core_unit, unit = high.unit or low.unit, last.unit or first.unit
    if not bracket.marked and core_unit and unit and core_unit != unit:
        return  # the same in another unit
    least, most = _value(low, core_unit), _value(high, core_unit)
    lowest, highest = _value(first, core_unit), _value(last, core_unit)
    if first is not last and not bracket.marked and _converts(least, most, lowest, highest):
        return
    if first is not last and not bracket.marked and (lowest >= 2 * most or highest * 2 <= least):
        return  # a conversion without its unit: 900-1500 m (3000-5000)
    if bracket.marked and first is not last and lowest < least and highest > most:
        draft.least, draft.most = draft.least or first, draft.most or last
        return
    if highest > most or (bracket.marked and first is last and highest >= least):
        if draft.most is None or highest > _value(draft.most, core_unit):
            draft.most = last
    elif lowest < least:
        draft.least = first


def _converts(least: Fraction, most: Fraction, lowest: Fraction, highest: Fraction) -> bool:
    """Whether a bracket is the range in another unit: both ends larger, or smaller, by one factor."""
    if not (least > 0 and most > 0 and lowest > 0 and highest > least) or least == most:
        return False
    low, high = lowest / least, highest / most
    return abs(low - high) <= max(low, high) / 10 and not Fraction(2, 3) < high < Fraction(3, 2)


def of_one_dimension(first: str, second: str) -> bool:
    """Whether figures in both units may stand in one range: not a length and an angle; any may that has no unit."""
    one, two = find_unit(first), find_unit(second)
    return one is None or two is None or one.dimension is two.dimension


def _value(figure: Figure, unit: str) -> Fraction:
    """The figure in this unit, or as it stands where it has none or one that does not convert."""
    try:
        return in_unit(figure.number, figure.unit, unit or figure.unit).exact
    except UnfitUnit:
        return figure.number.exact


def finished(draft: RangeDraft, start: int, end: int) -> Measure | None:
    """The range of the tokens start to end, all figures in one unit; None if it holds no figure, or two dimensions."""
    low, high = draft.low, draft.high
    if low is None or high is None:
        return None
    stated = [
        figure.unit for figure in (draft.most, high, low, draft.least, *(draft.usual or ())) if figure and figure.unit
    ]
    unit = (high.unit or draft.unit or low.unit) or (stated[0] if stated else "")
    if not all(of_one_dimension(one, unit) for one in stated):
        return None

    def number(figure: Figure | None) -> Number | None:
        own = figure.unit if figure else ""
        # a bare lower figure shares the unit; "8 mm-1.2 cm" has two
        return in_unit(figure.number, own, unit) if figure else None

    usual = (number(draft.usual[0]), number(draft.usual[1])) if draft.usual else (None, None)
    # "bent to 90°" turns that far; it is no maximum
    open_below = (draft.at_most and not (draft.bare_to and unit == "degree")) or draft.less
    open_above = draft.at_least or (draft.more and low is high)
    return Measure(
        None if open_below else number(low),
        None if open_above and not open_below else number(high),
        unit, start, end, number(draft.least), number(draft.most),
        (usual[0], usual[1]) if usual[0] and usual[1] else None,
        draft.about, draft.more and not open_above and not open_below,
        at_most=draft.at_most, often=draft.often, usual_about=draft.usual_about,
        either=draft.either,
    )  # fmt: skip
