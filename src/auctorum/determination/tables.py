"""The candidates side by side on one character: a table from which the likelihood of any number of plants is read off.

A value is never exact: it stands for the stretch between its limits of error, and its likelihood is the mean density
over that stretch. Every density has a small floor, evenly over all that the candidates take up, so that one odd
figure, or an author's slip, cannot exclude a taxon by itself. A candidate of which nothing is stated gets the mean of
the others: its silence speaks neither for nor against it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from auctorum.characters.directions import TURN
from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.density import Density, Shape, mixed, on_circle
from auctorum.determination.normal import Floats
from auctorum.determination.spread import knots, share_below, share_below_on_circle

Flags: TypeAlias = NDArray[np.bool_]

FLOOR = 0.01  # the part of every density of numbers that is spread evenly
FLOOR_OF_STATES = 0.05  # the same of states, which are judged by eye
BLURRED = 0.1  # the part of a state on a spectrum that is taken for each of its neighbours
_FINEST = 1e-6  # of the whole: no observation is narrower


@dataclass(frozen=True, slots=True, eq=False)
class Numbers:
    """One numeric character at one stage.

    `below` has a row for each candidate: the part of its plants below each of the `knots`, from 0 to 1, floor
    included; between two knots plants lie evenly. `stated` tells which candidates have statements, `plain` what is
    said of these without blur and floor, None of the others.
    """

    character: str
    stage: str
    stated: tuple[bool, ...]
    knots: Floats
    below: Floats
    plain: tuple[Density | None, ...]
    circular: bool = False

    def likelihood(self, values: Floats, errors: Floats) -> Floats:
        """Mean densities of stretches of `errors` to either side: a row for each value, a column for each candidate."""
        whole = self.knots[-1] - self.knots[0]
        half = np.clip(errors, whole * _FINEST, whole / _FINEST)
        values = values % whole if self.circular else values
        start, end = values - half, values + half
        if self.circular:
            return np.asarray((self._turning(end) - self._turning(start)) / (2 * half)[:, None])
        first, last = np.clip(start, self.knots[0], self.knots[-1]), np.clip(end, self.knots[0], self.knots[-1])
        outside = FLOOR / whole * np.maximum(2 * half - (last - first), 0.0)  # not end - start: a huge value eats both
        return np.asarray((self._shares(last) - self._shares(first) + outside[:, None]) / (2 * half)[:, None])

    def _shares(self, at: Floats) -> Floats:
        """The shares below values between the first and the last knot: a row for each."""
        right = np.clip(np.searchsorted(self.knots, at, side="right"), 1, len(self.knots) - 1)
        start, columns = self.knots[right - 1], self.below.T
        part = (at - start) / (self.knots[right] - start)
        low = columns[right - 1]
        return np.asarray(low + part[:, None] * (columns[right] - low))

    def _turning(self, at: Floats) -> Floats:
        """The shares below directions of any turn."""
        turns = np.floor(at / self.knots[-1])
        return np.asarray(turns[:, None] + self._shares(at - turns * self.knots[-1]))

    def beyond(self, candidate: int, values: Floats, errors: Floats) -> Flags:
        """Whether stretches lie outside all that is stated of one candidate; False where nothing is."""
        one = self.plain[candidate]
        if one is None:
            return np.zeros(len(values), dtype=bool)
        whole = one.places[-1] - one.places[0]
        errors = np.maximum(errors, whole * _FINEST)  # an exact value has a width, too
        found = np.ones(len(values), dtype=bool)
        values = values % TURN if self.circular else values
        for turn in (-TURN, 0, TURN) if self.circular else (0,):
            end, start = (np.interp(values + off + turn, one.places, one.shares) for off in (errors, -errors))
            found &= end <= start
        return found


@dataclass(frozen=True, slots=True, eq=False)
class States:
    """One character with states at one stage: `shares` has a row for each state and a column for each candidate."""

    character: str
    stage: str
    stated: tuple[bool, ...]
    states: tuple[str, ...]
    shares: Floats
    plain: tuple[Mapping[str, float] | None, ...]

    def likelihood(self, weights: Floats) -> Floats:
        """Of plants given by the weights of the states they show, a row each summing to 1."""
        return np.asarray(weights @ self.shares)

    def beyond(self, candidate: int, weights: Floats) -> Flags:
        """Whether plants show no state that is stated of one candidate; False where nothing is."""
        one = self.plain[candidate]
        if one is None:
            return np.zeros(len(weights), dtype=bool)
        return np.asarray(weights @ np.array([float(one.get(state, 0.0) > 0) for state in self.states]) <= 0)


Table: TypeAlias = Numbers | States


def numbers(character: Character, stage: str, told: Sequence[Sequence[Shape]]) -> Numbers | None:
    """The table of a numeric character from the shapes of each candidate, none for a silent one; None if all are."""
    every = [shape for shapes in told for shape in shapes]
    if not every:
        return None
    circular = character.kind is Kind.ANGLE
    at = knots(every, character.kind)
    stated = np.array([bool(shapes) for shapes in told])
    rows = np.stack([row_of(summed(shapes, at, circular=circular)) for shapes in told])
    rows[~stated] = floored(rows[stated].mean(axis=0), at)
    rows[stated] = floored(rows[stated], at)
    plain = tuple(plain_of(shapes, circular=circular) for shapes in told)
    return Numbers(character.name, stage, tuple(map(bool, stated)), at, rows, plain, circular)


def summed(shapes: Sequence[Shape], at: Floats, *, circular: bool) -> Floats:
    """The weighted sum of what the shapes have below each knot; 0 throughout for none."""
    found = np.zeros_like(at)
    for one in shapes:
        found += one.weight * (share_below_on_circle if circular else share_below)(one, at)
    return found


def row_of(sums: Floats) -> Floats:
    """Weighted sums brought to shares, from 0 at the first knot to 1 at the last; those of nobody stay 0."""
    found = np.maximum.accumulate(sums - sums[0])
    return found / found[-1] if found[-1] > 0 else found


def floored(rows: Floats, at: Floats) -> Floats:
    """Shares with the floor: a small part of the plants spread evenly over all knots."""
    return np.asarray((1 - FLOOR) * rows + FLOOR * (at - at[0]) / (at[-1] - at[0]))


def plain_of(shapes: Sequence[Shape], *, circular: bool) -> Density | None:
    """What the shapes say together, without blur and floor; None for none."""
    if not shapes:
        return None
    whole = mixed((one.density, one.weight) for one in shapes)
    return on_circle(whole) if circular else whole


def states(character: Character, stage: str, told: Sequence[Mapping[str, float]]) -> States | None:
    """The table of a character with states from the weights of each candidate, empty for a silent one."""
    if not any(told):
        return None
    known = state_names(character)
    names = (*known, *sorted({state for one in told for state in one} - set(known)))
    columns = np.array([[one.get(name, 0.0) for name in names] for one in told], dtype=float)
    stated = columns.sum(axis=1) > 0
    columns[stated] /= columns[stated].sum(axis=1, keepdims=True)
    if character.kind is Kind.ORDERED:
        columns[:, : len(known)] = _blurred(columns[:, : len(known)])
    columns[~stated] = columns[stated].mean(axis=0)
    shares = (1 - FLOOR_OF_STATES) * columns + FLOOR_OF_STATES / len(names)
    plain = tuple(dict(one) if one else None for one in told)
    return States(character.name, stage, tuple(map(bool, stated)), names, shares.T, plain)


def _blurred(columns: Floats) -> Floats:
    """Shares of states on a spectrum, a part of each taken for its neighbours; what has no neighbour stays."""
    away = BLURRED * columns
    found = columns.copy()
    for here, there in ((slice(None, -1), slice(1, None)), (slice(1, None), slice(None, -1))):
        found[:, here] -= away[:, here]
        found[:, there] += away[:, here]
    return found
