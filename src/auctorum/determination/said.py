"""What a person says of one plant, `spur length=31 mm`, as an observation."""

from __future__ import annotations

from fractions import Fraction

from auctorum.characters.bounds import bounds
from auctorum.characters.read import UnreadableValue, read_statement
from auctorum.characters.states import state_names, state_weights
from auctorum.characters.values import Range, Reading, States
from auctorum.characters.vocabulary import Character, Vocabulary
from auctorum.circumscription.plants import Observation
from auctorum.corpus.readings import check_readings, find_character, stage_that_counts
from auctorum.names.nearest import nearest
from auctorum.problems import AuctorumError

SIGN = "="
_BARE = " .,-–/()"  # what may stand beside the digits of a figure without a unit


class NotUnderstood(AuctorumError, ValueError):
    """Words about a plant that name no character, or no value of it."""

    def __init__(self, said: str, why: str, remedy: str) -> None:
        super().__init__(said, why, remedy)
        self.said, self.why, self._remedy = said, why, remedy

    def __str__(self) -> str:
        return f"`{self.said}`: {self.why}"

    @property
    def remedy(self) -> str:  # type: ignore[override]
        return self._remedy


def observed(vocabulary: Vocabulary, said: str, stage: str = "") -> Observation:
    """The observation in `character=value`; of a character split by stage at the stage that the words name, or `stage`.

    A measure may have any unit that fits, or none for the canonical one; a range such as `30–34 mm` is taken for
    several measurements: its middle, and half of it as the error. Raises NotUnderstood, UnknownCharacter,
    ImpossibleValue or what reading raises.
    """
    name, sign, value = said.partition(SIGN)
    if not sign or not value.strip():
        raise NotUnderstood(said, "names no value", "write `character=value`, such as `spur length=31 mm`")
    character = find_character(name.strip(), vocabulary)
    words = _with_unit(value.strip(), character)
    readings = _readings(said, words, character)
    check_readings(readings, character, words)
    if len(readings) != 1:
        raise NotUnderstood(said, "more than one value", "give one value, or one `--with` for each growth stage")
    (reading,) = readings
    counted = stage_that_counts(reading.stage or stage, character)
    if isinstance(reading.value, Range):
        return _number(said, character, counted, reading.value)
    return _states(said, character, counted, reading.value)


def _with_unit(words: str, character: Character) -> str:
    """The words; bare figures of a measure or an angle with the canonical unit after them."""
    bare = all(sign.isnumeric() or sign in _BARE for sign in words)
    return f"{words} {character.unit}" if bare and character.unit else words


def _readings(said: str, words: str, character: Character) -> tuple[Reading, ...]:
    """What the words say; where they can't be read, the remedy is to be typed and not to be put into a file."""
    try:
        return tuple(read_statement(words, character))
    except UnreadableValue as error:
        raise NotUnderstood(said, f"no value of {character.name}: {error.why}", _remedy(words, character)) from error


def _remedy(words: str, character: Character) -> str:
    names = state_names(character)
    if character.kind.is_numeric or not names:
        unit = f", in {character.unit} or a unit that fits" if character.unit else ""
        return f"give the figure observed{unit}"
    near = nearest(words, names, limit=1)
    return f"{f'did you mean `{near[0]}`? ' if near else ''}states: {', '.join(names)}"


def _number(said: str, character: Character, stage: str, value: Range) -> Observation:
    stated = bounds(value, character.unit)
    if stated.low is None or stated.high is None or value.more:
        raise NotUnderstood(said, "a bound is no measurement", "give the figure measured")
    low = stated.low if stated.least is None else stated.least
    high = stated.high if stated.most is None else stated.most
    slack = stated.low_slack + (high - low) / 2
    return Observation(character.name, stage, (low + high) / 2, (), slack, 1)


def _states(said: str, character: Character, stage: str, value: States) -> Observation:
    weights = state_weights(value, character)
    known = {state.name for state in character.states}
    strange = sorted(set(weights) - known) if known else []
    if strange:
        why = f"`{strange[0]}` is no state of {character.name}"
        raise NotUnderstood(said, why, _remedy(strange[0], character))
    return Observation(character.name, stage, None, tuple(weights.items()), Fraction(0), 1)
