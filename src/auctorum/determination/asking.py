"""What to look at next: the character that is expected to tell most for its trouble, and what each outcome would do."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from auctorum.characters.vocabulary import Kind
from auctorum.circumscription.plants import Plant
from auctorum.circumscription.wording import MATURE
from auctorum.corpus.readings import UNSTATED
from auctorum.determination.many import columns_of, log_likelihood, prior_of, shares
from auctorum.determination.model import Wording
from auctorum.determination.normal import Floats
from auctorum.determination.tables import Numbers, States, Table
from auctorum.determination.view import View
from auctorum.determination.wording import codes, wording
from auctorum.records.schema import Thresholds

LEAST_GAIN = 0.005  # of what is open; a question that is expected to tell less is none
_MOST_COUNTS = 2000  # whole numbers that are outcomes each by itself
_SELDOM = 0.02  # outcomes less likely than that are left out


@dataclass(frozen=True, slots=True)
class Outcome:
    """What an answer would do. Numbers from `low` to `high` in the canonical unit, None for no end; or one state."""

    low: Fraction | None
    high: Fraction | None
    state: str
    chance: float  # of this outcome, as things stand
    taxon: str  # then the likeliest
    probability: float  # then its mean probability
    wording: Wording


@dataclass(frozen=True, slots=True)
class Question:
    """A character at a stage, not yet observed. `gain` is the part of what is open that it would tell, 0 to 1."""

    character: str
    stage: str
    gain: float
    cost: float  # trouble, 1 a glance or a ruler
    outcomes: tuple[Outcome, ...]

    @property
    def worth(self) -> float:
        """What is gained for the trouble."""
        return self.gain / self.cost


def questions(
    view: View,
    plant: Plant,
    *,
    stages: Collection[str] = (MATURE,),
    priors: Mapping[str, float] | None = None,
    thresholds: Thresholds | None = None,
    without: Collection[str] = (),
) -> tuple[Question, ...]:
    """What may be asked of the plant, the most worth first; of characters split by stage those at these stages.

    Characters in `without` are never asked. The gain is expected information (the mutual information of taxon and
    outcome: C. E. Shannon, Bell System Technical Journal 27 (1948): 379–423; from memory) as a part of the entropy of
    the present probabilities. Nothing is asked where these leave nothing open.
    """
    logs = [log_likelihood(view.tables[key], column)[0] for key, column in columns_of(view, [plant]).items()]
    now = shares(np.log(prior_of(view, priors)) + sum(logs, np.zeros(len(view.taxa))))
    seen = {one.character for one in plant.observations} | set(without)
    open_ = _entropy(now)
    found = []
    for (character, stage), table in view.tables.items():
        if character in seen or not _asked_at(stage, stages, table, view) or open_ < 1e-9:
            continue
        edges = _edges(table, view)
        cells = _cells(table, edges)
        gain = max(0.0, _gain(cells, now) / open_)
        if gain >= LEAST_GAIN:
            cost = float(view.vocabulary[character].cost)
            outcomes = _outcomes(table, edges, cells, now, view, thresholds or Thresholds())
            found.append(Question(character, stage, gain, cost, outcomes))
    return tuple(sorted(found, key=lambda one: -round(one.worth, 9)))


def _asked_at(stage: str, stages: Collection[str], table: Table, view: View) -> bool:
    """Whether the stage is one that the plant may be at; what is not split by stage always is."""
    return stage in stages or (stage in ("", UNSTATED) and not view.vocabulary[table.character].stages)


def _edges(table: Table, view: View) -> Floats:
    """Of numbers the values between which one outcome lies, rising; of counts half way between whole ones."""
    if isinstance(table, States):
        return np.arange(len(table.states) + 1.0)
    if view.vocabulary[table.character].kind is Kind.COUNT:
        first, last = np.floor(table.knots[0] + 0.5) - 0.5, np.ceil(table.knots[-1] - 0.5) + 0.5
        if last - first <= _MOST_COUNTS:
            return np.arange(first, last + 0.5)
    return table.knots


def _cells(table: Table, edges: Floats) -> Floats:
    """The chance of each outcome in each candidate: a row for each candidate, summing to 1."""
    if isinstance(table, States):
        return table.shares.T
    below = [np.interp(edges, table.knots, row, left=0.0, right=1.0) for row in table.below]
    return np.diff(np.stack(below), axis=1)


def _entropy(probabilities: Floats) -> float:
    some = probabilities[probabilities > 0]
    return float(-(some * np.log(some)).sum())


def _gain(cells: Floats, now: Floats) -> float:
    """Mutual information of candidate and outcome, in nats."""
    joint = now[:, None] * cells
    chances = joint.sum(axis=0)
    expected = now[:, None] * chances
    some = joint > 0
    return float((joint[some] * np.log(joint[some] / expected[some])).sum())


def _outcomes(
    table: Table, edges: Floats, cells: Floats, now: Floats, view: View, thresholds: Thresholds
) -> tuple[Outcome, ...]:
    """The outcomes by what they would do: neighbouring values with one result are one outcome."""
    joint = now[:, None] * cells
    chances = joint.sum(axis=0)
    after = joint / np.maximum(chances, 1e-300)
    best = after.argmax(axis=0)
    said = codes(after[best, np.arange(len(best))], np.zeros_like(best), thresholds)
    found = []
    for start, end in _runs(list(zip(best, said, strict=True)), chances, joined=isinstance(table, Numbers)):
        chance, taxon = float(chances[start:end].sum()), int(best[start])
        probability = float(joint[taxon, start:end].sum()) / chance
        low, high, state = _named(table, edges, start, end)
        word = wording(probability, 0, thresholds)
        found.append(Outcome(low, high, state, chance, view.taxa[taxon], probability, word))
    return tuple(found)


def _runs(results: Sequence[object], chances: Floats, *, joined: bool) -> list[tuple[int, int]]:
    """First and one past the last of each outcome: neighbours with one result, over what is seldom between them.

    States are outcomes each by itself.
    """
    runs: list[tuple[int, int]] = []
    for place, result in enumerate(results):
        if runs and joined and results[runs[-1][0]] == result:
            runs[-1] = (runs[-1][0], place + 1)
        else:
            runs.append((place, place + 1))
    found: list[tuple[int, int]] = []
    for start, end in runs:
        if chances[start:end].sum() < _SELDOM:
            continue
        if found and joined and results[found[-1][0]] == results[start]:
            start = found.pop()[0]
        found.append((start, end))
    return found


def _named(table: Table, edges: Floats, start: int, end: int) -> tuple[Fraction | None, Fraction | None, str]:
    if isinstance(table, States):
        return None, None, table.states[start]
    low = None if start == 0 else Fraction(float(edges[start]))
    high = None if end == len(edges) - 1 else Fraction(float(edges[end]))
    return low, high, ""
