"""Ranges of one numeric character out of a phrase, one for each growth stage it names."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from auctorum.characters.choose import chosen, mentions, related
from auctorum.characters.directions import read_directions
from auctorum.characters.figures import Line
from auctorum.characters.notation import Measure
from auctorum.characters.products import measures_of
from auctorum.characters.ratios import read_ratio
from auctorum.characters.stages import stages_of
from auctorum.characters.tokens import Number
from auctorum.characters.units import UnfitUnit, unit_fits, unit_named
from auctorum.characters.values import Range, Reading
from auctorum.characters.vocabulary import Character, Kind


class NoUnit(ValueError):
    """A figure of a measured character without a unit, and no other in the phrase to carry one."""


def read_numbers(line: Line, character: Character) -> tuple[Reading, ...]:
    """Readings in the order of the phrase, empty if it holds no figure of the character.

    Raises NoUnit, UnfitUnit or ReversedRange.
    """
    if character.kind is Kind.ANGLE and (arc := read_directions(line)) is not None:
        return (Reading(arc),)
    found = measures_of(line)
    if character.kind is Kind.RATIO:
        ratio = read_ratio(line, found)
        return (Reading(range_of(ratio)),) if ratio else ()
    places = mentions(line, (character.structure, *character.words))
    found = related(line, (one for one in found if not one.times), places)
    stages = stages_of(line, {one.start for one in found})
    readings = []
    for stage, group in _by_stage(found, stages).items():
        measure = _of_character(line, group, found, character, places)
        if measure is not None:
            readings.append(Reading(range_of(_turned(measure, character)), stage))
    return tuple(readings)


def _turned(measure: Measure, character: Character) -> Measure:
    """An arc in degrees that crosses north (315-45°) ends above 360."""
    low, high = measure.low, measure.high
    if character.kind is not Kind.ANGLE or not low or not high or not 0 <= high.value < low.value <= 360:
        return measure
    return replace(measure, high=replace(high, value=high.value + 360))


def _by_stage(found: Iterable[Measure], stages: list[str]) -> dict[str, list[Measure]]:
    """Ranges by stage in order; those without a stage after one that has it are of something else."""
    groups: dict[str, list[Measure]] = {}
    for measure in found:
        groups.setdefault(stages[measure.start], []).append(measure)
    if "" in groups and next(iter(groups)) != "":
        del groups[""]
    return groups


def _of_character(
    line: Line, group: list[Measure], every: tuple[Measure, ...], character: Character, places: tuple[int, ...]
) -> Measure | None:
    if character.kind is Kind.COUNT:
        return chosen(line, (one for one in group if not one.unit and one.factors == 1), character, places)
    fitting = [one for one in group if one.unit and _fits(one.unit, character)]
    measure = chosen(line, fitting, character, places)
    if measure is None:
        bare = chosen(line, (one for one in group if not one.unit), character, places)
        measure = replace(bare, unit=_carried(bare, every, character)) if bare else None
    if measure is None:
        strange = [one.unit for one in group if one.unit and not _fits(one.unit, character)]
        if strange and not fitting:
            raise UnfitUnit(strange[0], f"the character `{character.name}`")
        return None
    # "bent to 90°" turns that far; it is no maximum
    return replace(measure, low=measure.high) if character.kind is Kind.ANGLE and measure.bare_to else measure


def _fits(unit: str, character: Character) -> bool:
    try:
        unit_fits(unit_named(unit), character)
    except UnfitUnit:
        return False
    return True


def _carried(bare: Measure, every: tuple[Measure, ...], character: Character) -> str:
    """The unit of the nearest figure before, or else after, that fits the character."""
    if character.kind is Kind.ANGLE:
        return "degree"
    units = [(one.start > bare.start, abs(one.start - bare.start), one.unit) for one in every
             if one.unit and _fits(one.unit, character)]  # fmt: skip
    if not units:
        raise NoUnit
    return min(units)[2]


def range_of(measure: Measure) -> Range:
    """The measure as a value; raises ReversedRange."""
    numbers = (measure.least, measure.low, measure.high, measure.most)
    least, low, high, most = (number.value if number else None for number in numbers)
    parts = tuple(number.parts if number else 1 for number in numbers)
    usual: tuple[Number, Number] | None = measure.usual
    return Range(
        low,
        high,
        measure.unit,
        least,
        most,
        measure.approximate,
        measure.more,
        (usual[0].value, usual[1].value) if usual else None,
        (parts[0], parts[1], parts[2], parts[3]),
    )
