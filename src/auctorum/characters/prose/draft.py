"""Statements of a description given to the characters of a vocabulary: drafts for a person to check."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from auctorum.characters.prose.assign import is_about, rank, readings_of, untold
from auctorum.characters.prose.found import Doubt, Found, Leftover
from auctorum.characters.prose.propose import lacking_states, new_character, new_name, with_new_states
from auctorum.characters.prose.read import read_description
from auctorum.characters.read import read_statement
from auctorum.characters.show import format_value
from auctorum.characters.values import Range, Reading, States
from auctorum.characters.vocabulary import Character, Vocabulary
from auctorum.problems import AuctorumError


@dataclass(frozen=True, slots=True)
class Choice:
    """A character, and what the words say of it. `known` is False for a character that the vocabulary lacks.

    It is also False where the vocabulary has the character, but not the states named in `new_states`: they stand at
    the end of those of `character`.
    """

    character: Character
    known: bool
    readings: tuple[Reading, ...]
    value: str  # the readings in plain notation (`22–34(–41) mm`, `green or ivory`), stages left out
    new_states: tuple[str, ...] = ()


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


# How often such readings proved right at first sight, by the gravest doubt. In labelled phrases and paragraphs 1,067
# of 1,086 without any, 72 of 74 bare figures. On 12 whole pages (right / less than the words say / wrong): 388 / 42 /
# 39 without any, 23 / 2 / 2 bare figures, 26 / 1 / 4 near characters, 11 / 10 / 13 after a strange word, 5 / 3 / 3 of
# an organ named earlier, 7 / 1 / 8 states that the character lacks, 2 / 0 / 21 beside another plant or in a remark. The
# rest were too few to count, and are guesses on the low side.
_SURE = 0.92
_CONFIDENCE: Mapping[Doubt, float] = {
    Doubt.BARE_FIGURE: 0.91,
    Doubt.NEAR_CHARACTER: 0.8,
    Doubt.UNIT: 0.8,
    Doubt.STRANGE_ORGAN: 0.6,
    Doubt.STRANGE_WORD: 0.6,
    Doubt.GUESSED_STATE: 0.6,
    Doubt.CARRIED: 0.55,
    Doubt.UNKNOWN_STATE: 0.5,
    Doubt.NO_ORGAN: 0.4,
    Doubt.DOUBTED: 0.4,
    Doubt.OTHER_TAXON: 0.1,
    Doubt.ASIDE: 0.1,
}


def transcribe(
    text: str, vocabulary: Vocabulary, *, line: str = "english", signs: Mapping[str, str] | None = None
) -> Transcript:
    """Draft statements of the text in the words of the vocabulary; raises on no text.

    What fits no character of the vocabulary is a draft for a new one. `line` and `signs` are the work's, as in
    `read_description`.
    """
    description = read_description(text, vocabulary=vocabulary, line=line, signs=signs)
    drafter = _Drafter(text, vocabulary, line, signs)
    drafts = [drafter.draft(group) for group in _together(description.statements)]
    return Transcript(text, tuple(drafts), description.left)


_BROKEN = re.compile(r"(?<=[^\W\d_])[-‐‑][^\S\n]*\n[^\S\n]*(?=[a-zß-ÿ])")


def one_line(words: str) -> str:
    r"""The words as a file holds them: words broken at a line end joined, every other run of space as one space.

    >>> one_line("seeds retic-\nulate,\n black")
    'seeds reticulate, black'
    """
    return " ".join(_BROKEN.sub("", words).split())


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


_NEAR = 2  # the rank from which a character is not quite what the words say


class _Drafter:
    """Drafts of one text; what an organ and words have to do with the vocabulary is looked up once for each."""

    def __init__(self, text: str, vocabulary: Vocabulary, line: str, signs: Mapping[str, str] | None) -> None:
        self._text, self._vocabulary, self._line, self._signs = text, vocabulary, line, signs
        self._of_organ: dict[str, list[Character]] = {}
        self._read: dict[tuple[str, Character], tuple[Reading, ...]] = {}

    def draft(self, group: Sequence[Found]) -> Draft:
        """The statements of a group as one draft, with every other reading that fits."""
        start, end = min(one.start for one in group), max(one.end for one in group)
        choices, doubts = self._choices(group)
        said = self._said(one_line(self._text[start:end]), choices[0])
        return Draft(start, end, choices[0], confidence(doubts), tuple(sorted(doubts)), tuple(choices[1:]), *said)

    def _choices(self, group: Sequence[Found]) -> tuple[list[Choice], set[Doubt]]:
        """The readings of the words, the likeliest first, and what the first one takes for granted."""
        first, doubts = group[0], {doubt for one in group for doubt in one.doubts}
        about = self._about(first.structure)
        ranked = sorted((place, index) for index, one in enumerate(about) if (place := rank(first, one)) is not None)
        choices = [_choice(group, about[index]) for _, index in ranked]
        lacking = lacking_states(first, about)
        if not choices:
            return self._proposals(group, lacking, needed=True), doubts | ({Doubt.UNKNOWN_STATE} if lacking else set())
        if ranked[0][0] >= _NEAR:
            doubts.add(Doubt.NEAR_CHARACTER)
        if untold(first, choices[0].character):
            doubts.add(Doubt.UNKNOWN_STATE)
        if not doubts & {Doubt.NEAR_CHARACTER, Doubt.UNKNOWN_STATE}:
            return choices, doubts
        proposed = self._proposals(group, lacking, needed=False)
        if lacking is not None and lacking.name == choices[0].character.name:
            return [proposed[0], *choices], doubts
        return [*choices, *proposed], doubts

    def _about(self, structure: str) -> list[Character]:
        """The characters that may be told of the organ, in the order of the vocabulary."""
        if structure not in self._of_organ:
            every = self._vocabulary.characters
            self._of_organ[structure] = [character for character in every if is_about(structure, character)]
        return self._of_organ[structure]

    def _proposals(self, group: Sequence[Found], lacking: Character | None, *, needed: bool) -> list[Choice]:
        """New states of the character that lacks them, and a new character unless the vocabulary has its name.

        If one is `needed`, there is one: of another name if it must be.
        """
        made = []
        if lacking is not None:
            made.append(_proposal(group, *with_new_states(group[0], lacking)))
        if (needed and not made) or new_name(group) not in self._vocabulary:
            made.append(_proposal(group, new_character(group, self._vocabulary)))
        return made

    def _said(self, words: str, choice: Choice) -> tuple[str, str]:
        """Value and stage that must stand beside the words; both empty where the words alone are read so."""
        key = words, choice.character
        if key not in self._read:
            try:
                self._read[key] = read_statement(words, choice.character, line=self._line, signs=self._signs)
            except AuctorumError:
                self._read[key] = ()
        if choice.readings and self._read[key] == choice.readings:
            return "", ""
        return choice.value, choice.readings[0].stage if choice.readings else ""


def confidence(doubts: set[Doubt]) -> float:
    """The share of right readings among those with the gravest of these doubts."""
    return min((_CONFIDENCE[doubt] for doubt in doubts), default=_SURE)


def _choice(group: Sequence[Found], character: Character) -> Choice:
    readings = readings_of(group, character)
    return Choice(character, True, readings, plain_values(readings, character))


def plain_values(readings: Iterable[Reading], character: Character) -> str:
    """The values of readings in plain notation, one behind the other, stages left out."""
    return "; ".join(format_value(reading.value, character) for reading in readings)


def _proposal(group: Sequence[Found], character: Character, new_states: tuple[str, ...] = ()) -> Choice:
    """What the statements say of a character that the vocabulary lacks, or lacks states of."""
    readings = readings_of(group, character)
    first = group[0]
    if not readings and isinstance(first.value, States):
        readings = (Reading(first.value, first.stage),)
    return Choice(character, False, readings, plain_values(readings, character), new_states)
