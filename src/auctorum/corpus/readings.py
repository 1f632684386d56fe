"""Statements and measured cells -> values of the vocabulary's characters."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from decimal import Decimal, InvalidOperation

from auctorum.characters.read import read_statement
from auctorum.characters.units import unit_fits, unit_named
from auctorum.characters.values import Reading, Share, States
from auctorum.characters.vocabulary import Character, Kind, State, Vocabulary
from auctorum.corpus.model import Measurement
from auctorum.names.nearest import nearest
from auctorum.problems import AuctorumError, Place, Problem
from auctorum.records import schema

UNSTATED = "stage not stated"
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


def vocabulary_of(records: schema.Characters, report: Report) -> Vocabulary:
    """The vocabulary; a character that stands twice is a problem, and the first one is kept."""
    kept: dict[str, Character] = {}
    for record in records.characters:
        if record.name in kept:
            what = f"the character `{record.name}` stands twice"
            report(Problem(record.place, what, "keep one; the first was read", within=("name",)))
            continue
        kept[record.name] = _character(record)
        _check_character(record, report)
    return Vocabulary(tuple(kept.values()))


def _character(record: schema.CharacterRecord) -> Character:
    states = tuple(
        State(state.name, tuple(state.words), state.colour or None, state.meaning) for state in record.states
    )
    return Character(
        record.name,
        record.structure,
        record.property,
        record.kind,
        record.unit,
        states,
        tuple(record.stages),
        tuple(record.words),
        record.how,
        record.meaning,
    )


def _check_character(record: schema.CharacterRecord, report: Report) -> None:
    kind = record.kind
    if kind in (Kind.MEASURE, Kind.ANGLE):
        if not record.unit:
            what = f"the {kind} `{record.name}` has no unit"
            report(Problem(record.place, what, "give its canonical unit: mm, m, degree", within=("kind",)))
        else:
            try:
                unit_named(record.unit)
            except AuctorumError as error:
                report(error.at(record.place, "unit"))
    if kind in (Kind.ORDERED, Kind.NOMINAL) and len(record.states) < 2:
        what = f"the {kind} character `{record.name}` has fewer than two states"
        report(Problem(record.place, what, "list its states", within=("states",)))
    names = [state.name for state in record.states]
    for number, name in enumerate(names):
        if name in names[:number]:
            what = f"the state `{name}` stands twice"
            report(Problem(record.states[number].place, what, "keep one", within=("name",)))


def find_character(said: str, vocabulary: Vocabulary) -> Character:
    """The character of that name; raises UnknownCharacter."""
    if said in vocabulary:
        return vocabulary[said]
    raise UnknownCharacter(said, nearest(said, vocabulary, limit=1))


class StatementReader:
    """Reads statements of one vocabulary; equal words are read once."""

    def __init__(self, vocabulary: Vocabulary) -> None:
        self._vocabulary = vocabulary
        self._read: dict[tuple[str, str, str, tuple[tuple[str, str], ...]], tuple[Reading, ...] | AuctorumError] = {}

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
        found = self._readings(words, character, conventions)
        if isinstance(found, AuctorumError):
            report(found.at(record.place, "value" if record.value else "verbatim"))
            return ()
        said = _carried([record.stage or one.stage for one in found])
        counted = [
            replace(one, stage=stage_that_counts(stage, character)) for one, stage in zip(found, said, strict=True)
        ]
        return tuple(_merged(counted))

    def _readings(
        self, words: str, character: Character, conventions: schema.Conventions
    ) -> tuple[Reading, ...] | AuctorumError:
        signs = tuple(sorted(conventions.signs.items()))
        key = (words, character.name, conventions.line, signs)
        if key not in self._read:
            try:
                self._read[key] = read_statement(words, character, line=conventions.line, signs=conventions.signs)
            except AuctorumError as error:
                self._read[key] = error
        return self._read[key]


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
    numeric_or_old = character.kind.is_numeric or stage
    return "mature" if numeric_or_old and "mature" in character.stages else UNSTATED


def measurements_of(
    cells: tuple[tuple[str, str, str], ...], place: Place, vocabulary: Vocabulary, report: Report
) -> tuple[Measurement, ...]:
    """The cells of one row that can be used; every other cell is a problem of its row."""
    found = []
    for said, unit, cell in cells:
        try:
            character = find_character(said, vocabulary)
            found.append(_measurement(character, unit, cell))
        except (AuctorumError, InvalidOperation) as error:
            what = str(error) if isinstance(error, AuctorumError) else f"{cell!r} is no number"
            remedy = error.remedy if isinstance(error, AuctorumError) else "write digits: 31.5 or 31,5"
            report(Problem(place, f"column `{said}`: {what}", remedy))
    return tuple(found)


def _measurement(character: Character, unit: str, cell: str) -> Measurement:
    if not character.kind.is_numeric:
        read_statement(cell, character)
        return Measurement(character.name, "", None, cell)
    if character.kind in (Kind.MEASURE, Kind.ANGLE):
        unit = unit or character.unit
        unit_fits(unit_named(unit), character)
    number = Decimal(cell.replace(",", "."))
    if not number.is_finite():
        raise InvalidOperation
    return Measurement(character.name, unit, number, cell)
