"""Whether the value given beside the words of a statement says what the words say."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from auctorum.characters.bounds import agree, bounds
from auctorum.characters.directions import TURN
from auctorum.characters.show import format_value
from auctorum.characters.states import state_weights
from auctorum.characters.values import Range, Reading, States, Value
from auctorum.characters.vocabulary import Character, Kind
from auctorum.problems import Problem, Severity
from auctorum.records import schema


def contradicted(
    record: schema.StatementRecord, words: Sequence[Reading], value: Sequence[Reading], character: Character
) -> Problem | None:
    """A warning where the words of a statement were read otherwise than its value; None where both agree.

    Every reading of the value needs one of the words that holds for the same stage and agrees within stated precision.
    The words may say more: what they tell of another stage can stand in a statement of its own.
    """
    if all(any(_same(one, other, character) for other in words) for one in value):
        return None
    verbatim = record.verbatim if len(record.verbatim) <= 80 else f"{record.verbatim[:79]}…"
    staged = {one.stage for one in (*words, *value)} if character.stages else set()
    read, given = (_said(readings, character, len(staged) > 1) for readings in (words, value))
    what = f"the words “{verbatim}” read as {read}, but value gives {given}"
    remedy = "correct the value, or take it out where the words are read rightly"
    return Problem(record.place, what, remedy, Severity.WARNING, ("value",))


def _said(readings: Sequence[Reading], character: Character, staged: bool) -> str:
    return "; ".join(format_value(one.value, character) + (f" ({one.stage})" if staged else "") for one in readings)


def _same(one: Reading, other: Reading, character: Character) -> bool:
    return one.stage == other.stage and says_the_same(one.value, other.value, character)


def says_the_same(one: Value, other: Value, character: Character) -> bool:
    """Whether two values of the character agree: every bound within stated precision, or every state as often.

    That a figure is approximate or has a usual part is passed over; which bounds are given, and which are open, is not.
    """
    if isinstance(one, Range) and isinstance(other, Range):
        return _same_range(one, other, character)
    if isinstance(one, States) and isinstance(other, States):
        return state_weights(one, character) == state_weights(other, character)
    return False


def _same_range(one: Range, other: Range, character: Character) -> bool:
    first, second = bounds(one, character.unit), bounds(other, character.unit)
    turns = (-TURN, 0, TURN) if character.kind is Kind.ANGLE else (0,)
    low, high = (first.low_slack, second.low_slack), (first.high_slack, second.high_slack)
    ends = (
        (first.low, second.low, *low),
        (first.high, second.high, *high),
        (first.least, second.least, *low),
        (first.most, second.most, *high),
    )
    return one.more == other.more and any(all(_meet(*end, turn) for end in ends) for turn in turns)


def _meet(one: Fraction | None, other: Fraction | None, slack: Fraction, other_slack: Fraction, turn: int) -> bool:
    """Whether two bounds are the same, the first turned so many degrees, or are both not stated."""
    if one is None or other is None:
        return one is other
    return agree(one + turn, slack, other, other_slack)
