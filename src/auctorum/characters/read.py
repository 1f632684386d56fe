"""The words of one statement -> the values of the character that it names.

The words are read as a description is (`characters.prose`), with the character's structure as the organ spoken of until
one is named; of all that they state, what fits the character is taken. They may be printed words ("spurs slender,
1½–2 in. (rarely to 2¾ in.) long") or plain notation ("22–34(–41) mm", "green; rarely ivory").
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from auctorum.characters.directions import read_directions
from auctorum.characters.figures import Line
from auctorum.characters.lexicon import matches_of
from auctorum.characters.presence import read_presence
from auctorum.characters.products import measures_of
from auctorum.characters.prose.assign import best_fitting, is_about, readings_of
from auctorum.characters.prose.found import Comparison, Found
from auctorum.characters.prose.read import read_description
from auctorum.characters.tokens import tokens_of
from auctorum.characters.units import UnfitUnit, find_unit, unit_fits, unit_named
from auctorum.characters.values import Range, Reading, Share, States
from auctorum.characters.vocabulary import Character, Kind
from auctorum.problems import AuctorumError


class UnreadableValue(AuctorumError, ValueError):
    """Words in which no value of the character was found; `why` in a phrase."""

    remedy = "correct the words or the character, or give the value as `value: 22–34(–41) mm`"

    def __init__(self, words: str, character: Character, why: str) -> None:
        super().__init__(words, character, why)
        self.words, self.character, self.why = words, character, why

    def __str__(self) -> str:
        shown = self.words if len(self.words) <= 80 else f"{self.words[:79]}…"
        return f"no value of `{self.character.name}` in “{shown}”: {self.why}"


def read_statement(
    words: str, character: Character, *, line: str = "english", signs: Mapping[str, str] | None = None
) -> tuple[Reading, ...]:
    """Readings of the character in the order of the words, one for each growth stage they name; at least one.

    `line` is `english` or `paris`: with `paris`, lines, inches and feet are Paris ones. `signs` is the work's key
    to signs (`{"'": "in", '"': "line"}`); without it ' is foot and " inch. Raises UnreadableValue where nothing
    of the character can be read, UnfitUnit where the unit is of another dimension, ReversedRange where a lower
    bound is above the upper one.

    >>> spur = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
    >>> read_statement("spur 22-34(-41) mm long", spur)[0].value.most
    Decimal('41')
    """
    phrase = Line(tokens_of(words))
    if character.kind is Kind.ANGLE and (arc := read_directions(phrase)) is not None:
        return (Reading(arc),)
    description = read_description(
        words, vocabulary=(character,), line=line, signs=signs, subject=character.structure, strict=True
    )
    found = description.statements
    readings = readings_of(best_fitting(found, character), character)
    if not readings and character.kind is Kind.PRESENCE:
        named = any(is_about(structure, character) for structure in description.named)
        readings = read_presence(phrase, character, named=named)
    readings = readings or _plain(found, phrase, character)
    if not readings:
        raise _unread(words, phrase, found, character)
    return readings


def _plain(found: Sequence[Found], phrase: Line, character: Character) -> tuple[Reading, ...]:
    """The value of words that are nothing but a state (`three-lobed`) or a bare measure (`30 cm`); () for other words.

    A bare measure of a plant was read as its height and one of a habitat as its elevation; it is this character's.
    """
    states = matches_of(phrase, character) if character.states else ()
    if len(states) == 1 and (states[0].start, states[0].end) == (0, len(phrase.tokens)):
        return (Reading(States((Share(states[0].state),))),)
    figures = measures_of(phrase)
    whole = len(figures) == 1 and (figures[0].start, figures[0].end) == (0, len(phrase.tokens)) and not figures[0].says
    at_large = len(found) == 1 and found[0].property in ("height", "elevation")
    if character.kind is not Kind.MEASURE or not whole or not at_large or not isinstance(found[0].value, Range):
        return ()
    unit, wanted = find_unit(found[0].value.unit), find_unit(character.unit)
    return (Reading(found[0].value),) if unit and wanted and unit.dimension is wanted.dimension else ()


def _unread(words: str, phrase: Line, found: Sequence[Found], character: Character) -> AuctorumError:
    ranges = [one.value for one in found if isinstance(one.value, Range)]
    if character.kind in (Kind.MEASURE, Kind.ANGLE):
        for value in ranges:
            if value.unit:
                try:
                    unit_fits(unit_named(value.unit), character)
                except UnfitUnit as error:
                    return error
        if any(not value.unit for value in ranges):
            return UnreadableValue(words, character, f"the figure has no unit, and a {character.property} needs one")
    return UnreadableValue(words, character, _why(phrase, found, character))


def _why(phrase: Line, found: Sequence[Found], character: Character) -> str:
    if not phrase.tokens:
        return "there are no words"
    if not character.kind.is_numeric:
        return "they name none of its states"
    if any(isinstance(one.value, Comparison) for one in found):
        return "they only compare it with another organ"
    if all(token.number is None for token in phrase.tokens):
        return "they hold no figure"
    return f"no figure in them is a {character.property}"
