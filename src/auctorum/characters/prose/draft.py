"""Statements of a description given to the characters of a vocabulary: drafts for a person to check."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from auctorum.characters.prose.assign import is_of, rank, readings_of, untold
from auctorum.characters.prose.found import Comparison, Doubt, Found, Leftover
from auctorum.characters.prose.read import read_description
from auctorum.characters.read import read_statement
from auctorum.characters.show import format_value
from auctorum.characters.values import Range, Reading, States
from auctorum.characters.vocabulary import Character, Kind, State, Vocabulary
from auctorum.problems import AuctorumError


@dataclass(frozen=True, slots=True)
class Choice:
    """A character, and what the words say of it. `known` is False for a character that the vocabulary lacks."""

    character: Character
    known: bool
    readings: tuple[Reading, ...]
    value: str  # the readings in plain notation (`22–34(–41) mm`, `green or ivory`), stages left out


@dataclass(frozen=True, slots=True)
class Draft:
    """One draft statement: text[start:end] are the exact words, `choice` how they are read.

    `confidence` is a share between 0 and 1 of readings with the same doubts that proved right on labelled phrases;
    `others` are other readings of the same words, the likeliest first. `value` and `stage` are what a literature file
    must give beside the words for them to be read so: both empty where the words alone suffice.
    """

    start: int
    end: int
    choice: Choice
    confidence: float
    doubts: tuple[Doubt, ...] = ()
    others: tuple[Choice, ...] = ()
    value: str = ""
    stage: str = ""


@dataclass(frozen=True, slots=True)
class Transcript:
    """A text, its drafts in order of their words, and what was not understood or is no trait."""

    text: str
    drafts: tuple[Draft, ...]
    left: tuple[Leftover, ...]

    def words(self, part: Draft | Leftover) -> str:
        """The exact words of a draft or of a leftover."""
        return self.text[part.start : part.end]


# Share of statements that were right at first sight in 1,195 labelled ones, by the gravest doubt: 1,067 of 1,086
# without any, 72 of 74 bare figures, 17 of 19 after a strange word, 8 of 15 of an organ named earlier. The rest
# were too few to count, and are guesses on the low side.
_SURE = 0.98
_CONFIDENCE: Mapping[Doubt, float] = {
    Doubt.BARE_FIGURE: 0.95,
    Doubt.UNIT: 0.85,
    Doubt.STRANGE_WORD: 0.75,
    Doubt.STRANGE_ORGAN: 0.7,
    Doubt.NEAR_CHARACTER: 0.65,
    Doubt.GUESSED_STATE: 0.6,
    Doubt.CARRIED: 0.55,
    Doubt.UNKNOWN_STATE: 0.5,
    Doubt.NO_ORGAN: 0.4,
    Doubt.DOUBTED: 0.4,
    Doubt.OTHER_TAXON: 0.3,
    Doubt.ASIDE: 0.3,
}


def transcribe(
    text: str, vocabulary: Vocabulary, *, line: str = "english", signs: Mapping[str, str] | None = None
) -> Transcript:
    """Draft statements of the text in the words of the vocabulary; raises on no text.

    What fits no character of the vocabulary is a draft for a new one. `line` and `signs` are the work's, as in
    `read_description`.
    """
    description = read_description(text, vocabulary=vocabulary, line=line, signs=signs)
    drafts = [_draft(text, group, vocabulary, line, signs) for group in _together(description.statements)]
    return Transcript(text, tuple(drafts), description.left)


def _together(statements: Sequence[Found]) -> Iterator[list[Found]]:
    """Statements in order; a usual or occasional value with the range that it goes with."""
    group: list[Found] = []
    for found in statements:
        first = group[0] if group else None
        goes_with = (
            first is not None and found.modality is not None and isinstance(found.value, Range)
            and isinstance(first.value, Range) and (first.structure, first.property, first.stage, first.of)
            == (found.structure, found.property, found.stage, found.of)
        )  # fmt: skip
        if group and not goes_with:
            yield group
            group = []
        group.append(found)
    if group:
        yield group


def _draft(
    text: str, group: Sequence[Found], vocabulary: Vocabulary, line: str, signs: Mapping[str, str] | None
) -> Draft:
    first = group[0]
    start, end = min(one.start for one in group), max(one.end for one in group)
    ranked = sorted(
        (place, index) for index, character in enumerate(vocabulary.characters)
        if (place := rank(first, character)) is not None
    )  # fmt: skip
    choices = [_choice(group, vocabulary.characters[index]) for _, index in ranked]
    doubts = {doubt for one in group for doubt in one.doubts}
    if ranked and ranked[0][0] >= 2:
        doubts.add(Doubt.NEAR_CHARACTER)
    if untold(first, choices[0].character) if choices else _lacks_state(first, vocabulary):
        doubts.add(Doubt.UNKNOWN_STATE)
    choices = (
        [*choices, _proposal(group)] if not choices or doubts & {Doubt.NEAR_CHARACTER, Doubt.UNKNOWN_STATE} else choices
    )
    said = _said(text[start:end], choices[0], line, signs)
    return Draft(start, end, choices[0], confidence(doubts), tuple(sorted(doubts)), tuple(choices[1:]), *said)


def _lacks_state(found: Found, vocabulary: Vocabulary) -> bool:
    """Whether a character of the organ and the property is there, but without the states said."""
    if not isinstance(found.value, States):
        return False
    return any(
        character.states and character.property == found.property and is_of(found.structure, character)
        for character in vocabulary.characters
    )


def confidence(doubts: set[Doubt]) -> float:
    """The share of right readings among those with the gravest of these doubts."""
    return min((_CONFIDENCE[doubt] for doubt in doubts), default=_SURE)


def _choice(group: Sequence[Found], character: Character) -> Choice:
    readings = readings_of(group, character)
    return Choice(character, True, readings, _shown(readings, character))


def _shown(readings: Sequence[Reading], character: Character) -> str:
    return "; ".join(format_value(reading.value, character) for reading in readings)


def _said(words: str, choice: Choice, line: str, signs: Mapping[str, str] | None) -> tuple[str, str]:
    """Value and stage that must stand beside the words; both empty where the words alone are read so."""
    try:
        if read_statement(words, choice.character, line=line, signs=signs) == choice.readings:
            return "", ""
    except AuctorumError:
        pass
    return choice.value, choice.readings[0].stage if choice.readings else ""


_KINDS = {"count": Kind.COUNT, "ratio": Kind.RATIO, "angle": Kind.ANGLE}
_UNITS = {Kind.MEASURE: "mm", Kind.ANGLE: "degree"}


def _name(found: Found) -> str:
    """A name for a new character: `leaf shape`, `upper leaf surface`, `leaf length/width`."""
    name = found.of or found.property
    if found.structure.endswith(name):
        return found.structure
    return f"{found.structure}, other" if name == "other" else f"{found.structure} {name}"


def _proposal(group: Sequence[Found]) -> Choice:
    """A character for statements that the vocabulary has none for, with the states they name."""
    first = group[0]
    if isinstance(first.value, Comparison):
        character = Character(f"{first.structure} to {first.value.to}", first.structure, "ratio", Kind.RATIO)
    elif isinstance(first.value, States):
        presence = first.property == "other" and {share.state for share in first.value.shares} <= {"present", "absent"}
        said = (words for share in first.value.shares for words in (share.state, share.to) if words)
        names = dict.fromkeys(words.replace("±", "").strip() for words in said)  # the sign is no word of a state
        character = Character(
            first.structure if presence else _name(first), first.structure,
            "presence" if presence else first.property, Kind.PRESENCE if presence else Kind.NOMINAL,
            states=() if presence else tuple(State(name) for name in names),
        )  # fmt: skip
    else:
        kind = _KINDS.get(first.property, Kind.MEASURE)
        unit = "m" if first.property == "elevation" else _UNITS.get(kind, "")
        name = f"{first.structure} number" if kind is Kind.COUNT else _name(first)
        character = Character(name, first.structure, first.property, kind, unit)
    readings = readings_of(group, character)
    if not readings and isinstance(first.value, States):
        readings = (Reading(first.value, first.stage),)
    return Choice(character, False, readings, _shown(readings, character))
