"""How an observation is set against a limit: figures as they are, ordered states by their places on the spectrum.

A state of the spectrum takes up half a step on either side of its place, and several states all between the first and
the last. A limit lies half way between the last state that does not fit and the first that does.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from fractions import Fraction

import numpy as np
from numpy.typing import ArrayLike

from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.plants import Observation
from auctorum.corpus.criteria import Limit
from auctorum.determination.criteria.speaking import error_of
from auctorum.determination.normal import Floats

_HALF = Fraction(1, 2)


def place_of(states: Iterable[tuple[str, Fraction]], names: Sequence[str]) -> tuple[Fraction, Fraction] | None:
    """The middle of the states on a spectrum of those names, and half the places that they take up; None for none.

    >>> place_of([("cream", Fraction(1, 2)), ("ivory", Fraction(1, 2))], ("green", "cream", "ivory"))
    (Fraction(3, 2), Fraction(1, 1))
    """
    places = [names.index(state) for state, weight in states if weight and state in names]
    if not places:
        return None
    return Fraction(min(places) + max(places), 2), Fraction(max(places) - min(places) + 1, 2)


def figure_of(one: Observation, character: Character, names: Sequence[str]) -> tuple[Fraction, Fraction] | None:
    """What is compared with a limit, and the half-width of its error; None for states that are not on the spectrum.

    `names` are those of the character's states, in order. Counts have no rounding error.
    """
    if character.kind is Kind.ORDERED:
        return place_of(one.states, names)
    return None if one.value is None else (one.value, error_of(one, character))


def comparable(limit: Limit, character: Character) -> Limit:
    """The limit as figures are compared with it: of ordered states half way to the first that does not fit."""
    if character.kind is not Kind.ORDERED:
        return limit
    return replace(limit, value=limit.value + (-_HALF if limit.at_least else _HALF))


def chances(margins: ArrayLike, errors: ArrayLike) -> Floats:
    """The probability that each true value fits, if it lies anywhere within its error alike; NaN for no margin.

    >>> chances([1.0, -1.0, 0.0], [2.0, 0.5, 0.0]).tolist()
    [0.75, 0.0, 1.0]
    """
    margin, error = np.asarray(margins, dtype=float), np.asarray(errors, dtype=float)
    with np.errstate(divide="ignore", invalid="ignore"):
        within = np.clip((margin + error) / (2 * error), 0.0, 1.0)
    sure = np.where(np.isnan(margin), np.nan, margin >= 0)
    return np.asarray(np.where(error > 0, within, sure))
