"""The words of one statement -> the values of the character that it names.

Words are taken as the work prints them ("spurs slender, 1½–2 in. (rarely to 2¾ in.) long") or in plain notation
("22–34(–41) mm", "green; rarely ivory").
"""

from __future__ import annotations

from collections.abc import Mapping

from auctorum.characters.figures import Line
from auctorum.characters.numbers import NoUnit, read_numbers
from auctorum.characters.products import measures_of
from auctorum.characters.state_words import read_presence, read_states
from auctorum.characters.tokens import tokens_of
from auctorum.characters.values import Reading
from auctorum.characters.vocabulary import Character, Kind
from auctorum.problems import AuctorumError

_SIGNS = {"′": "'", "’": "'", "″": '"', "”": '"', "º": "°"}
_ELEVATIONS = ("elevation", "altitude")


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
    key = {_SIGNS.get(sign, sign): unit for sign, unit in (signs or {}).items()}
    phrase = Line(tokens_of(words), key, line, character.property in _ELEVATIONS)
    try:
        readings = _read(phrase, character)
    except NoUnit:
        why = f"the figure has no unit, and a {character.property} needs one"
        raise UnreadableValue(words, character, why) from None
    if not readings:
        raise UnreadableValue(words, character, _why(phrase, character))
    return readings


def _read(phrase: Line, character: Character) -> tuple[Reading, ...]:
    if character.kind.is_numeric:
        return read_numbers(phrase, character)
    if character.kind is Kind.PRESENCE:
        return read_presence(phrase, character)
    return read_states(phrase, character)


def _why(phrase: Line, character: Character) -> str:
    if not phrase.tokens:
        return "there are no words"
    if not character.kind.is_numeric:
        return "they name none of its states"
    if any(one.times for one in measures_of(phrase)):
        return "they only compare it with another organ"
    if all(token.number is None for token in phrase.tokens):
        return "they hold no figure"
    return f"no figure in them is a {character.property}"
