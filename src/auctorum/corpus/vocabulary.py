"""The records of characters.yaml -> the vocabulary, and what is wrong with its characters, states and colours."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from auctorum.characters.colours import near_states, reference_of
from auctorum.characters.munsell import UnreadableColour
from auctorum.characters.units import find_unit, unit_named
from auctorum.characters.vocabulary import Character, Kind, State, Vocabulary
from auctorum.problems import AuctorumError, Problem, Severity
from auctorum.records import schema

Report = Callable[[Problem], None]


def vocabulary_of(records: schema.Characters, report: Report) -> Vocabulary:
    """The vocabulary; a character that stands twice is a problem, and the first one is kept."""
    kept: dict[str, Character] = {}
    for record in records.characters:
        if record.name in kept:
            what = f"the character `{record.name}` stands twice"
            report(Problem(record.place, what, "keep one; the first was read", within=("name",)))
            continue
        kept[record.name] = character = _character(record, report)
        _check_character(record, report)
        _check_colours(record, character, report)
    for record in records.characters:
        if record.of and not _is_ratio(record, kept):
            what = f"`of:` does not make `{record.name}` a ratio of two measures of one sort"
            remedy = "name two measures of characters.yaml, as in `of: [spur length, petal length]`"
            report(Problem(record.place, what, remedy, within=("of",)))
            kept[record.name] = replace(kept[record.name], of=())
    return Vocabulary(tuple(kept.values()))


def _is_ratio(record: schema.CharacterRecord, known: Mapping[str, Character]) -> bool:
    """Whether it is one of two measures of one dimension."""
    parts = [known[name] for name in record.of if name in known and known[name].kind is Kind.MEASURE]
    units = [unit for one in parts if (unit := find_unit(one.unit)) is not None]
    two = len(record.of) == len(units) == 2
    return record.kind is Kind.RATIO and two and units[0].dimension is units[1].dimension


def _character(record: schema.CharacterRecord, report: Report) -> Character:
    states = tuple(
        State(state.name, tuple(state.words), _colour(state, report), state.meaning) for state in record.states
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
        record.cost,
        record.of,
    )


def _colour(record: schema.StateRecord, report: Report) -> str | None:
    """The colour reference as it stands; None where there is none or none that can be read."""
    if not record.colour:
        return None
    try:
        reference_of(record.colour)
    except UnreadableColour as error:
        report(error.at(record.place, "colour"))
        return None
    return record.colour


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
    elif record.unit:
        what = f"the {kind} `{record.name}` has the unit {record.unit}"
        report(Problem(record.place, what, "take the unit out, or correct the kind", within=("unit",)))
    stages = list(record.stages)
    if len(set(stages)) < len(stages) or not all(stages):
        what = f"the stages of `{record.name}` are not all different words"
        report(Problem(record.place, what, "name each stage once", within=("stages",)))
    if kind in (Kind.ORDERED, Kind.NOMINAL) and len(record.states) < 2:
        what = f"the {kind} character `{record.name}` has fewer than two states"
        remedy = "list more under `states:` as you meet them; with fewer than two it tells no plants apart"
        report(Problem(record.place, what, remedy, Severity.WARNING, ("states",)))
    seen: set[str] = set()
    for state in record.states:
        if state.name.casefold() in seen:
            what = f"the state `{state.name}` stands twice"
            report(Problem(state.place, what, "keep one", within=("name",)))
        seen.add(state.name.casefold())


def _check_colours(record: schema.CharacterRecord, character: Character, report: Report) -> None:
    """A warning for two states whose references the eye can hardly tell apart."""
    try:
        near = near_states(character)
    except UnreadableColour as error:
        report(error.at(record.place, "states"))
        return
    places = dict(zip(character.states, record.states, strict=True))
    for one, other, far in near:
        what = f"the colours of `{one.name}` and `{other.name}` are only {far:.1f} apart: an eye can hardly tell them"
        remedy = "correct one of them, or make one state of the two"
        report(Problem(places[other].place, what, remedy, Severity.WARNING, ("colour",)))
