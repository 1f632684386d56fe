"""Many plants at once: their observations as columns, and the probability of each candidate for each of them.

Characters are combined as if they were independent within a taxon, which the answers say: a large plant is large in
all its parts, so that many characters of one organ make probabilities surer than they should be.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TypeAlias

import numpy as np

from auctorum.circumscription.plants import Observation, Plant
from auctorum.determination.normal import Floats
from auctorum.determination.tables import Flags, Numbers, States, Table
from auctorum.determination.view import Key, View
from auctorum.determination.wording import Codes, codes
from auctorum.records.schema import Thresholds

_FAR_OFF = 1e300
_TIE = 1e-9  # of a probability: what differs by less is alike
CHUNK = 16_384  # plants that are worked on at a time, so that what is in hand stays in the processor's cache


@dataclass(frozen=True, slots=True, eq=False)
class Measured:
    """One numeric character at one stage of many plants: canonical unit; values NaN where it was not observed."""

    values: Floats
    errors: Floats


@dataclass(frozen=True, slots=True, eq=False)
class Shown:
    """One character with states: a row of weights for each plant, in the order of the table; all 0 where none."""

    weights: Floats


Column: TypeAlias = Measured | Shown
Columns: TypeAlias = Mapping[Key, Column]


class Observed:
    """Every observation of some plants, gone through once: `columns` brings them to a view."""

    def __init__(self, plants: Sequence[Plant]) -> None:
        self.number = len(plants)
        self.ids = frozenset(one.id for one in plants)
        self._seen: dict[Key, list[tuple[int, Observation]]] = {}
        for place, plant in enumerate(plants):
            for one in plant.observations:
                self._seen.setdefault((one.character, one.stage), []).append((place, one))
        self._measured: dict[Key, Measured] = {}
        self._shown: dict[tuple[Key, tuple[str, ...]], Shown | None] = {}

    def at(self, key: Key) -> Sequence[tuple[int, Observation]]:
        """The plants, by place, on which the character was observed at the stage, and what was observed."""
        return self._seen.get(key, ())

    def columns(self, view: View) -> Columns:
        """What the view has tables for, in their order; of states only what the table knows. Of several the last."""
        found = ((key, self._column(key, table)) for key, table in view.tables.items() if key in self._seen)
        return {key: column for key, column in found if column is not None}

    def _column(self, key: Key, table: Table) -> Column | None:
        """None where no plant shows a state that the table knows."""
        if isinstance(table, States):
            asked = (key, table.states)
            if asked not in self._shown:
                self._shown[asked] = self._states(key, table)
            return self._shown[asked]
        if key not in self._measured:
            self._measured[key] = self._numbers(key)
        return self._measured[key]

    def _numbers(self, key: Key) -> Measured:
        values, errors = np.full(self.number, np.nan), np.zeros(self.number)
        seen = self._seen[key]
        places = np.fromiter((place for place, _ in seen), dtype=np.intp, count=len(seen))
        values[places] = [as_float(one.value or Fraction(0)) for _, one in seen]
        errors[places] = [as_float(one.error if one.accuracy else one.slack) for _, one in seen]  # adding takes long
        return Measured(values, errors)

    def _states(self, key: Key, table: States) -> Shown | None:
        """Plants that show the same states have the same row, which is made once."""
        weights = np.zeros((self.number, len(table.states)))
        rows: dict[tuple[tuple[str, Fraction], ...], list[float]] = {}
        for place, one in self._seen[key]:
            if one.states not in rows:
                rows[one.states] = state_row(table, one)
            if any(rows[one.states]):
                weights[place] = rows[one.states]
        return Shown(weights) if weights.any() else None


def columns_of(view: View, plants: Sequence[Plant]) -> Columns:
    """The observations of the plants that the view has tables for; of several of one key the last."""
    return Observed(plants).columns(view)


def can_use(view: View, one: Observation) -> bool:
    """Whether the view has a table for it, and of states one at least that the table knows."""
    table = view.tables.get((one.character, one.stage))
    if table is None:
        return False
    return not isinstance(table, States) or any(weight and state in table.states for state, weight in one.states)


def as_float(value: Fraction) -> float:
    """The value; of one that no floating number reaches, one that is far off as well."""
    try:
        return float(value)
    except OverflowError:
        return _FAR_OFF if value > 0 else -_FAR_OFF


def state_row(table: States, seen: Observation) -> list[float]:
    """The weights of the states that a plant shows, in the order of the table, summing to 1; all 0 for others."""
    weights = dict(seen.states)
    row = [float(weights.get(state, 0)) for state in table.states]
    whole = sum(row)
    return [one / whole for one in row] if whole else row


def log_likelihood(table: Table, column: Column, part: slice = slice(None)) -> Floats:
    """The logarithm of the likelihood of a column: a row for each plant, 0 throughout where nothing was observed."""
    if isinstance(table, Numbers):
        assert isinstance(column, Measured)
        values = column.values[part]
        missing = ~np.isfinite(values)
        found = np.log(table.likelihood(np.where(missing, table.knots[0], values), column.errors[part]))
    else:
        assert isinstance(column, Shown)
        weights = column.weights[part]
        missing = weights.sum(axis=1) <= 0
        with np.errstate(divide="ignore"):
            found = np.log(table.likelihood(weights))
    found[missing] = 0.0
    return found


def posteriors(
    view: View,
    columns: Columns,
    priors: Mapping[str, float] | None = None,
    progress: Callable[[int, int], None] | None = None,
) -> Floats:
    """The probability of each candidate: a row for each plant, each row summing to 1; the candidates as in `view.taxa`.

    Where nothing was observed, a row is that of the priors. `priors` are weights by taxon, even where none are given.
    """
    plants = max((_length(column) for column in columns.values()), default=0)
    found = np.empty((plants, len(view.taxa)))
    before = np.log(prior_of(view, priors))
    for start in range(0, plants, CHUNK):
        part = slice(start, min(plants, start + CHUNK))
        total = np.tile(before, (part.stop - part.start, 1))
        for key, column in columns.items():
            total += log_likelihood(view.tables[key], column, part)
        found[part] = shares(total)
        if progress is not None:
            progress(part.stop, plants)
    return found


def shares(logarithms: Floats) -> Floats:
    """Rows of logarithms brought to the sum 1."""
    found = np.exp(logarithms - logarithms.max(axis=-1, keepdims=True))
    return np.asarray(found / found.sum(axis=-1, keepdims=True))


def prior_of(view: View, priors: Mapping[str, float] | None) -> Floats:
    """The priors of the candidates, summing to 1; raises ValueError where none of them has any."""
    if priors is None:
        return np.full(len(view.taxa), 1 / len(view.taxa))
    found = np.array([priors.get(taxon, 0.0) for taxon in view.taxa])
    if found.min() < 0 or not found.sum() > 0:
        raise ValueError("priors are weights not below 0, and one at least is above")
    return np.asarray(np.maximum(found, 1e-12) / np.maximum(found, 1e-12).sum())


def _length(column: Column) -> int:
    return len(column.values if isinstance(column, Measured) else column.weights)


@dataclass(frozen=True, slots=True, eq=False)
class Determined:
    """Many plants determined, in their order.

    `probabilities` as `posteriors` gives them; `best` is the place of the likeliest candidate in `view.taxa`, `misfits`
    the number of characters that lie outside all that is stated of it, `wordings` places in `wording.IN_ORDER`, `used`
    the number of observations that could be used. `outside` tells of each column on which plants it is such a misfit;
    empty where the plants were determined by several views.
    """

    probabilities: Floats
    best: Codes
    misfits: Codes
    wordings: Codes
    used: Codes
    outside: Mapping[Key, Flags] = field(default_factory=dict)


def determined(
    view: View,
    columns: Columns,
    priors: Mapping[str, float] | None = None,
    thresholds: Thresholds | None = None,
    progress: Callable[[int, int], None] | None = None,
) -> Determined:
    """Every plant of the columns determined as `determine` does one; without any observation it is not determined."""
    found = posteriors(view, columns, priors, progress)
    best = np.round(found, 12).argmax(axis=1)
    misfits, used = np.zeros(len(found), dtype=np.intp), np.zeros(len(found), dtype=np.intp)
    of_taxon = [np.flatnonzero(best == candidate) for candidate in range(len(view.taxa))]
    outside = {}
    for key, column in columns.items():
        flags = np.zeros(len(found), dtype=bool)
        for candidate, rows in enumerate(of_taxon):
            flags[rows] = beyond_of(view.tables[key], column, candidate, rows)
        outside[key] = flags
        misfits += flags
        used += seen_in(column)
    said = codes(found[np.arange(len(found)), best], misfits, thresholds or Thresholds())
    said[(used == 0) | _tied(found)] = 0
    return Determined(found, best, misfits, said, used, outside)


def _tied(probabilities: Floats) -> Flags:
    """Whether no candidate is likelier than every other: then none is named, however the thresholds lie."""
    if probabilities.shape[1] < 2:
        return np.zeros(len(probabilities), dtype=bool)
    two = np.partition(probabilities, -2, axis=1)[:, -2:]
    return np.asarray(two[:, 1] - two[:, 0] < _TIE)


def seen_in(column: Column) -> Flags:
    """Of each plant whether the character was observed."""
    if isinstance(column, Measured):
        return np.asarray(np.isfinite(column.values))
    return np.asarray(column.weights.sum(axis=1) > 0)


def beyond_of(table: Table, column: Column, candidate: int, rows: Codes) -> Flags:
    """Of the plants in these rows whether they were observed outside all that is stated of a candidate."""
    if isinstance(table, Numbers):
        assert isinstance(column, Measured)
        values = column.values[rows]
        seen = np.isfinite(values)
        return table.beyond(candidate, np.where(seen, values, 0.0), column.errors[rows]) & seen
    assert isinstance(column, Shown)
    weights = column.weights[rows]
    return np.asarray(table.beyond(candidate, weights) & (weights.sum(axis=1) > 0))
