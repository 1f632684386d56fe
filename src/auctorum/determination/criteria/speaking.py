"""How far an observation agrees with the value that speaks for a taxon, 0 to 1."""

from __future__ import annotations

from fractions import Fraction

from auctorum.characters.bounds import bounds
from auctorum.characters.directions import TURN
from auctorum.characters.states import state_weights
from auctorum.characters.values import Range, States
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.plants import Observation
from auctorum.corpus.criteria import Trait

_ALL, _NONE = Fraction(1), Fraction(0)


def agreement(trait: Trait, one: Observation, character: Character) -> float:
    """How far what was observed agrees with the trait, the best of its values.

    A number agrees wholly inside the typical range and within the error of measuring it and of the printed bound; from
    there it falls in a straight line to nothing at the extreme, or at once where none is given. Of states each agrees
    as much as it weighs beside the weightiest: wholly where it is stated plainly, less where it is said to be rare.
    """
    return float(max((_of(value, one, character) for value in trait.values), default=_NONE))


def error_of(one: Observation, character: Character) -> Fraction:
    """The half-width within which the true number lies; a count has no rounding error."""
    return one.accuracy if character.kind is Kind.COUNT else one.error


def _of(value: Range | States, one: Observation, character: Character) -> Fraction:
    if isinstance(value, States):
        weights = state_weights(value, character)
        top = max(weights.values(), default=_ALL)
        return sum((seen * weights.get(state, _NONE) / top for state, seen in one.states), _NONE)
    if one.value is None:
        return _NONE
    error = error_of(one, character)
    turns = (-TURN, 0, TURN) if character.kind is Kind.ANGLE else (0,)
    return max(_in_range(value, one.value + turn, error, character) for turn in turns)


def _in_range(range_: Range, value: Fraction, error: Fraction, character: Character) -> Fraction:
    stated = bounds(range_, character.unit)
    high = None if range_.more else stated.high
    if stated.low is not None and value < stated.low:
        beyond, room = stated.low - value, None if stated.least is None else stated.low - stated.least
    elif high is not None and value > high:
        beyond, room = value - high, None if stated.most is None else stated.most - high
    else:
        return _ALL
    beyond -= error + stated.low_slack
    if beyond < 0 or (beyond == 0 and room):
        return _ALL
    return max(_NONE, _ALL - beyond / room) if room else _NONE
