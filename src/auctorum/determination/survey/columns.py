"""The observations of many plants as columns for many views, gone through once."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

import numpy as np

from auctorum.circumscription.plants import Observation, Plant
from auctorum.determination.many import Column, Columns, Measured, Shown, as_float, state_row
from auctorum.determination.tables import Numbers, States
from auctorum.determination.view import Key, View

_Weights = tuple[tuple[str, Fraction], ...]


class Observed:
    """Every observation of some plants; `columns` gives them to a view as `columns_of` does."""

    def __init__(self, plants: Sequence[Plant]) -> None:
        self.number = len(plants)
        self.ids = frozenset(one.id for one in plants)
        self._seen: dict[Key, list[tuple[int, Observation]]] = {}
        for place, plant in enumerate(plants):
            for one in plant.observations:
                self._seen.setdefault((one.character, one.stage), []).append((place, one))
        self._measured: dict[Key, Measured] = {}
        self._shown: dict[tuple[Key, tuple[str, ...]], Shown] = {}

    def at(self, key: Key) -> Sequence[tuple[int, Observation]]:
        """The plants, by place, on which the character was observed at the stage, and what was observed."""
        return self._seen.get(key, ())

    def columns(self, view: View) -> Columns:
        """The columns for which the view has tables, in the order of the view."""
        found: dict[Key, Column] = {}
        for key in view.tables:
            if key in self._seen:
                table = view.tables[key]
                found[key] = self._numbers(key) if isinstance(table, Numbers) else self._states(key, table)
        return found

    def _numbers(self, key: Key) -> Measured:
        if key not in self._measured:
            values, errors = np.full(self.number, np.nan), np.zeros(self.number)
            seen = self._seen[key]
            places = np.fromiter((place for place, _ in seen), dtype=np.intp, count=len(seen))
            values[places] = [as_float(one.value or Fraction(0)) for _, one in seen]
            errors[places] = [
                as_float(one.slack) + (as_float(one.accuracy) if one.accuracy else 0.0) for _, one in seen
            ]
            self._measured[key] = Measured(values, errors)
        return self._measured[key]

    def _states(self, key: Key, table: States) -> Shown:
        """Plants that show the same states have the same row, which is made once."""
        asked = (key, table.states)
        if asked not in self._shown:
            weights = np.zeros((self.number, len(table.states)))
            rows: dict[_Weights, list[float]] = {}
            for place, one in self._seen[key]:
                if one.states not in rows:
                    rows[one.states] = state_row(table, one)
                weights[place] = rows[one.states]
            self._shown[asked] = Shown(weights)
        return self._shown[asked]
