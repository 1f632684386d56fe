"""Whole columns of a table of plants -> columns of a view, as `plants_in` and `columns_of` would bring them there."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from functools import lru_cache

import numpy as np

from auctorum.characters.units import convert
from auctorum.characters.vocabulary import Character, Vocabulary
from auctorum.circumscription.plants import Observation, StatesOfCell, states_in
from auctorum.circumscription.wording import MATURE
from auctorum.corpus.readings import stage_that_counts
from auctorum.determination.many import Column, Columns, Measured, Shown, state_row
from auctorum.determination.normal import Floats
from auctorum.determination.tables import Flags, Numbers, States
from auctorum.determination.view import Key, View
from auctorum.determination.wording import Codes

_SPELLINGS = 100_000  # words that are kept in mind
OfSite = Mapping[str, Sequence[Observation]]  # by the id of a site


@dataclass(frozen=True, slots=True)
class Part:
    """Some rows of a table. `figures` are values (NaN for none), slacks and accuracies by character, in its canonical
    unit; `words` what was said of characters with states. Fields of one row each: growth stage, sex, id of the site.
    """

    rows: int
    stages: Sequence[str] = ()
    sexes: Sequence[str] = ()
    sites: Sequence[str] = ()
    figures: Mapping[str, tuple[Sequence[float], Sequence[float], Sequence[float]]] = field(default_factory=dict)
    words: Mapping[str, Sequence[str]] = field(default_factory=dict)


class Bulk:
    """Brings parts of a table to columns; each spelling of words is read once.

    `stage` is that of rows that state none; `habitat` tells of sites what their plants have none of themselves.
    """

    def __init__(self, vocabulary: Vocabulary, stage: str, habitat: OfSite | None = None) -> None:
        self._vocabulary, self._stage, self._habitat = vocabulary, stage, habitat or {}
        self._read = lru_cache(maxsize=_SPELLINGS)(self._reading)
        self._staged: tuple[Part, tuple[Codes, list[tuple[str, str]]]] | None = None  # of the part in hand

    def measured(self, part: Part) -> dict[Key, Measured]:
        """Every figure of the part by character and stage, ratios that follow among them."""
        codes, pairs = self._stages(part)
        found: dict[Key, Measured] = {}
        for name, (values, slacks, accuracies) in part.figures.items():
            value, error = np.asarray(values, dtype=float), np.asarray(slacks, dtype=float) + np.asarray(accuracies)
            for stage, here in self._by_stage(self._vocabulary[name], codes, pairs):
                found[name, stage] = Measured(np.where(here, value, np.nan), error)
        for ratio in self._vocabulary.values():
            if len(ratio.of) == 2 and not ratio.stages:
                self._reckon(ratio, found, part.rows)
        return found

    def columns(self, view: View, part: Part, measured: Mapping[Key, Measured]) -> Columns:
        """What the view has tables for."""
        shown = self._shown(view, part)
        found: dict[Key, Column] = {}
        for key in view.tables:  # a table is made when it is first asked for, so none is asked for in vain
            one: Column | None = measured.get(key) or shown.get(key)
            if self._habitat and part.sites:
                one = self._with_habitat(view.tables[key], key, one, part)
            if one is not None:
                found[key] = one
        return found

    def _stages(self, part: Part) -> tuple[Codes, list[tuple[str, str]]]:
        """For each row the place in the list of growth stages with sexes; worked out once for a part."""
        if self._staged is None or self._staged[0] is not part:
            self._staged = part, self._staging(part)
        return self._staged[1]

    def _staging(self, part: Part) -> tuple[Codes, list[tuple[str, str]]]:
        stages = part.stages or [""] * part.rows
        sexes = part.sexes or [""] * part.rows
        places: dict[tuple[str, str], int] = {}
        codes = [places.setdefault(pair, len(places)) for pair in zip(stages, sexes, strict=True)]
        return np.array(codes, dtype=np.intp), list(places)

    def _by_stage(
        self, character: Character, codes: Codes, pairs: Sequence[tuple[str, str]]
    ) -> Iterator[tuple[str, Flags]]:
        by_stage: dict[str, list[int]] = {}
        for place, pair in enumerate(pairs):
            by_stage.setdefault(self._counted(character, *pair), []).append(place)
        for stage, places in by_stage.items():
            yield stage, np.isin(codes, places) if len(by_stage) > 1 else np.ones(len(codes), dtype=bool)

    def _counted(self, character: Character, stage: str, sex: str, stated: str = "") -> str:
        if not stated and sex in character.stages:
            return sex
        return stage_that_counts(stated or stage or self._stage, character)

    def _reckon(self, ratio: Character, found: dict[Key, Measured], rows: int) -> None:
        """A ratio of two measures where it was not measured itself."""
        over, under = (self._of_grown(part, found, rows) for part in ratio.of)
        units = [self._vocabulary[part].unit for part in ratio.of]
        times = float(convert(Fraction(1), units[1], units[0]))
        own = found.get((ratio.name, ""), Measured(np.full(rows, np.nan), np.zeros(rows)))
        with np.errstate(divide="ignore", invalid="ignore"):
            value = over.values / (under.values * times)
            error = value * (over.errors / over.values + under.errors / under.values)
        use = np.isnan(own.values) & np.isfinite(value) & (value != 0)
        if use.any():
            found[ratio.name, ""] = Measured(np.where(use, value, own.values), np.where(use, error, own.errors))

    def _of_grown(self, name: str, found: Mapping[Key, Measured], rows: int) -> Measured:
        none = Measured(np.full(rows, np.nan), np.zeros(rows))
        return found.get((name, ""), found.get((name, MATURE), none))

    def _reading(self, name: str, words: str) -> StatesOfCell:
        return states_in(words, self._vocabulary[name])

    def said(self, part: Part, name: str) -> tuple[Codes, list[StatesOfCell]]:
        """For each row the place in a list of what rows say of a character: stages as they count, with their states."""
        codes, pairs = self._stages(part)
        places: dict[tuple[str, int], int] = {}
        words = part.words.get(name) or [""] * part.rows
        rows = [places.setdefault(one, len(places)) for one in zip(words, codes.tolist(), strict=True)]
        return np.array(rows, dtype=np.intp), [self._counting(name, words, *pairs[code]) for words, code in places]

    def _counting(self, name: str, words: str, grown: str, sex: str) -> StatesOfCell:
        character, told = self._vocabulary[name], self._read(name, words) if words else ()
        return tuple((self._counted(character, grown, sex, stated), weights) for stated, weights in told)

    def _shown(self, view: View, part: Part) -> dict[Key, Shown]:
        found: dict[Key, Shown] = {}
        for name in part.words:
            rows, told = self.said(part, name)
            kinds: dict[Key, dict[int, list[float]]] = {}
            for place, states in enumerate(told):
                for stage, weights in states:
                    table = view.tables.get((name, stage))
                    if isinstance(table, States):
                        one = Observation(name, stage, None, weights, Fraction(0), 1)
                        kinds.setdefault((name, stage), {})[place] = state_row(table, one)
            for key, of_kind in kinds.items():
                several = np.zeros((len(told), len(next(iter(of_kind.values())))))
                several[list(of_kind)] = list(of_kind.values())
                found[key] = Shown(several[rows])
        return found

    def _with_habitat(self, table: Numbers | States, key: Key, column: Column | None, part: Part) -> Column | None:
        """The column, filled from the sites where a row says nothing."""
        told = {
            site: one
            for site in set(part.sites)
            for one in self._habitat.get(site, ())
            if (one.character, one.stage) == key
        }
        if not told:
            return column
        here = np.array([site in told for site in part.sites])
        if isinstance(table, Numbers):
            values = np.array([_value(told.get(site)) for site in part.sites])
            errors = np.array([float(told[site].error) if site in told else 0.0 for site in part.sites])
            if not isinstance(column, Measured):
                return Measured(values, errors)
            fill = here & np.isnan(column.values)
            return Measured(np.where(fill, values, column.values), np.where(fill, errors, column.errors))
        rows = {site: state_row(table, one) for site, one in told.items()}
        weights = np.array([rows.get(site, [0.0] * len(table.states)) for site in part.sites])
        if not isinstance(column, Shown):
            return Shown(weights)
        fill = here & (column.weights.sum(axis=1) <= 0)
        return Shown(np.where(fill[:, None], weights, column.weights))


def _value(one: Observation | None) -> float:
    return float(one.value) if one is not None and one.value is not None else float("nan")


def values_at(measured: Mapping[Key, Measured], key: Key, rows: int) -> tuple[Floats, Floats]:
    """Values and errors of one character at one stage; NaN throughout where nothing was measured."""
    one = measured.get(key)
    return (np.full(rows, np.nan), np.zeros(rows)) if one is None else (one.values, one.errors)
