"""Statements -> values of the vocabulary's characters."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterable, Iterator
from dataclasses import replace

from auctorum.characters.read import read_statement
from auctorum.characters.show import format_range
from auctorum.characters.values import Range, Reading, Share, States
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.corpus.given_values import contradicted
from auctorum.names.nearest import nearest
from auctorum.problems import AuctorumError, Place, Problem
from auctorum.records import schema

_GROWN = ("mature", "old", "flower", "fruit", "fresh", "dry")  # stages and conditions of a grown plant
UNSTATED = "stage not stated"
_FIGURES = re.compile(r"\d+(?:[.,]\d+)?")
Report = Callable[[Problem], None]


class UnknownCharacter(AuctorumError, LookupError):
    """A character that the vocabulary does not hold."""

    def __init__(self, said: str, near: tuple[str, ...]) -> None:
        super().__init__(said, near)
        self.said, self.near = said, near

    def __str__(self) -> str:
        return f"no character `{self.said}` in characters.yaml"

    @property
    def remedy(self) -> str:  # type: ignore[override]
        return f"did you mean `{self.near[0]}`?" if self.near else "add it to characters.yaml, or correct the name"


def find_character(said: str, vocabulary: Vocabulary) -> Character:
    """The character of that name; raises UnknownCharacter."""
    if said in vocabulary:
        return vocabulary[said]
    raise UnknownCharacter(said, nearest(said, vocabulary, limit=1))


class ImpossibleValue(AuctorumError, ValueError):
    """A value that was read, but that no plant can have, or that leaves figures over."""

    remedy = "correct the words, or give the value in plain notation: 22–34(–41) mm"

    def __init__(self, said: str, why: str) -> None:
        super().__init__(said, why)
        self.said, self.why = said, why

    def __str__(self) -> str:
        return f"`{self.said}`: {self.why}"


def check_readings(readings: Iterable[Reading], character: Character, plain: str | None) -> None:
    """Raises ImpossibleValue for a count that is not whole or below 0, and for an aspect beyond the compass.

    `plain` is a value in plain notation: every figure in it must have been read.
    """
    ranges = [one.value for one in readings if isinstance(one.value, Range)]
    for value in ranges:
        said = format_range(value)
        bounds = [bound for bound in (value.least, value.low, value.high, value.most) if bound is not None]
        if character.kind is Kind.COUNT and any(bound != int(bound) or bound < 0 for bound in bounds):
            raise ImpossibleValue(said, "a count is whole and not below 0")
        if character.kind is Kind.ANGLE and any(not 0 <= bound <= 720 for bound in bounds):
            raise ImpossibleValue(said, "a direction lies between 0 and 360 degrees")
    if plain is not None and ranges and character.kind is not Kind.ANGLE:
        printed = [format_range(value) for value in ranges]
        left = set(_FIGURES.findall(plain)).difference(*(_FIGURES.findall(said) for said in printed))
        signed = plain.lstrip().startswith(("-", "−")) and not printed[0].startswith("−")
        if left or signed:
            said = ", ".join(sorted(left)) if left else "the sign"
            raise ImpossibleValue(plain, f"{said} was not understood")


def check_stage(stage: str, character: Character, place: Place, report: Report, more: Collection[str] = ()) -> None:
    """A problem where the stage is stated, and neither one of the character's nor of `more`."""
    if stage and stage not in (*character.stages, *more):
        known = ", ".join(character.stages) or "none for this character"
        what = f"no growth stage `{stage}` of `{character.name}`"
        report(Problem(place, what, f"known stages: {known}", within=("stage",)))


class StatementReader:
    """Reads statements of one vocabulary; equal words are read once."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        self._vocabulary = vocabulary
        self._read: dict[tuple[object, ...], tuple[Reading, ...] | AuctorumError] = {}

    def knows(self, character: str) -> bool:
        """Whether the vocabulary holds it."""
        return character in self._vocabulary

    def read(
        self, record: schema.StatementRecord, conventions: schema.Conventions, report: Report
    ) -> tuple[Reading, ...]:
        """Readings with the stage that counts; () with a problem reported where the words can't be read."""
        try:
            character = find_character(record.character, self._vocabulary)
        except UnknownCharacter as error:
            report(error.at(record.place, "character"))
            return ()
        words = record.value or record.verbatim
        if not words:
            what = f"the statement about `{record.character}` has neither verbatim words nor a value"
            report(Problem(record.place, what, "give `verbatim:`, the words of the work"))
            return ()
        check_stage(record.stage, character, record.place, report, _GROWN)
        found = self._readings(words, character, conventions, bool(record.value))
        if isinstance(found, AuctorumError):
            report(found.at(record.place, "value" if record.value else "verbatim"))
            return ()
        counted = _counted([record.stage or one.stage for one in found], found, character)
        if record.value and record.verbatim:
            self._compare(record, counted, character, conventions, report)
        return counted

    def _compare(
        self,
        record: schema.StatementRecord,
        value: tuple[Reading, ...],
        character: Character,
        conventions: schema.Conventions,
        report: Report,
    ) -> None:
        """A warning where the words can be read, and say otherwise than the value beside them."""
        read = self._readings(record.verbatim, character, conventions, False)
        if isinstance(read, AuctorumError):
            return  # that is why a value is given
        words = _counted([one.stage or record.stage for one in read], read, character)
        if (problem := contradicted(record, words, value, character)) is not None:
            report(problem)

    def _readings(
        self, words: str, character: Character, conventions: schema.Conventions, plain: bool
    ) -> tuple[Reading, ...] | AuctorumError:
        signs = tuple(sorted(conventions.signs.items()))
        key = (words, character.name, conventions.line, signs, plain)
        if key not in self._read:
            try:
                found = read_statement(words, character, line=conventions.line, signs=conventions.signs)
                check_readings(found, character, words if plain else None)
                self._read[key] = found
            except AuctorumError as error:
                self._read[key] = error
        return self._read[key]


def _counted(stages: list[str], found: Iterable[Reading], character: Character) -> tuple[Reading, ...]:
    """Readings with the stage that counts; those of states merged by stage."""
    said = zip(found, _carried(stages), strict=True)
    return tuple(_merged([replace(one, stage=stage_that_counts(stage, character)) for one, stage in said]))


def _carried(stages: list[str]) -> list[str]:
    """A stage holds for what follows it in the same statement: `ivory at maturity, rarely buff`."""
    carried = ""
    found = []
    for stage in stages:
        carried = stage or carried
        found.append(carried)
    return found


def _merged(readings: list[Reading]) -> Iterator[Reading]:
    """Readings of states that count for one stage as one (`ivory at maturity, buff in age`); ranges stay apart."""
    shares: dict[str, list[Share]] = {}
    for reading in readings:
        if isinstance(reading.value, States):
            shares.setdefault(reading.stage, []).extend(reading.value.shares)
        else:
            yield reading
    for stage, several in shares.items():
        yield Reading(States(tuple(dict.fromkeys(several))), stage)


def stage_that_counts(stage: str, character: Character) -> str:
    """The stage under which a reading is compared: one of the character's, or empty if it is not split.

    An old plant is mature. Where a work states no stage, a figure is that of the mature plant (common practice, no
    source); a state may be that of any stage, and is kept apart as such.
    """
    if not character.stages:
        return ""
    if stage in character.stages:
        return stage
    stage = stage.casefold()
    if (same := next((one for one in character.stages if one.casefold() == stage), None)) is not None:
        return same
    grown = stage in _GROWN or (character.kind.is_numeric and not stage)
    return "mature" if grown and "mature" in character.stages else UNSTATED
