"""Plants run through a key, and how often it names them as their collectors did."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from auctorum.circumscription.intervals import Interval, wilson
from auctorum.circumscription.key.model import Couplet, Key, Lead, Rule, Threshold
from auctorum.circumscription.plants import LIST_MARK, Observation, Plant

Outcome = tuple[tuple[str, ...], float]  # the taxa of an end, likeliest first, and the weight with which it is reached
Seen = Mapping[tuple[str, str], Observation]


@dataclass(frozen=True, slots=True)
class Evaluation:
    """How named plants come out; plants that follow both leads of a couplet count by parts, so the sums may be broken.

    `right`, `wrong` and `undecided` (in a group that holds their taxon) add up to `plants`. `unseen` are plants of the
    taxa on which nothing was observed that the key asks. `mistaken` are (taxon, taken for, plants), most first.
    `misled` are (number of a couplet, plants that it sends where their taxon is not found, plants asked), most first.
    """

    plants: int
    right: float
    wrong: float
    undecided: float
    interval: Interval  # of the share of wrong ones, 95 %
    mistaken: tuple[tuple[str, str, float], ...]
    misled: tuple[tuple[int, float, float], ...]
    unseen: int
    named_by: tuple[str, ...]  # who gave the names


def identify(key: Key, plant: Plant) -> tuple[Outcome, ...]:
    """The ends that the plant comes to with their weights, which sum to 1, the weightiest first.

    A plant is judged by the rule of its own stage. Where a couplet asks for what was not observed, it follows both
    leads with half its weight each.
    """
    if not key.couplets:
        return ((tuple(sorted(key.taxa)), 1.0),)
    ends: dict[tuple[str, ...], float] = {}
    for _, lead, part in _way(key, plant):
        if lead.goes_to is None:
            ends[lead.taxa] = ends.get(lead.taxa, 0.0) + part
    return tuple(sorted(ends.items(), key=lambda end: (-end[1], end[0])))


def _way(key: Key, plant: Plant) -> Iterator[tuple[Couplet, Lead, float]]:
    """The leads that the plant follows, with the part of it that does."""
    seen = {(one.character, one.stage): one for one in plant.observations}
    weights = {1: 1.0}
    for couplet in key.couplets:  # each stands after the one it came from
        here = weights.pop(couplet.number, 0.0)
        upper = _upper_part(couplet, seen) if here else 0.0
        for lead in couplet.leads:
            part = here * (upper if lead.upper else 1 - upper)
            if part:
                if lead.goes_to is not None:
                    weights[lead.goes_to] = part
                yield couplet, lead, part


def _upper_part(couplet: Couplet, seen: Seen) -> float:
    """The part of the plant that takes the upper side: a half where nothing was seen."""
    parts = [
        part
        for rule in couplet.rules
        if (one := seen.get((couplet.characters[0], rule.stage))) is not None
        and (part := _part_above(one, rule)) is not None
    ]
    return sum(parts) / len(parts) if parts else 0.5


def _part_above(seen: Observation, rule: Rule) -> float | None:
    if isinstance(rule, Threshold):
        return None if seen.value is None else float(seen.value >= rule.value)
    weights = dict(seen.states)
    lower, upper = (float(sum(weights.get(one, 0) for one in side)) for side in (rule.lower, rule.upper))
    return upper / (lower + upper) if lower + upper else None


def evaluate(key: Key, plants: Iterable[Plant]) -> Evaluation:
    """How those of the plants come out that bear the name of a taxon of the key."""
    named = [plant for plant in plants if plant.taxon in key.taxa]
    asked = {(couplet.characters[0], rule.stage) for couplet in key.couplets for rule in couplet.rules}
    seen = [one for one in named if any((each.character, each.stage) in asked for each in one.observations)]
    right = wrong = undecided = 0.0
    mistaken: dict[tuple[str, str], float] = {}
    for plant in seen:
        taxon = plant.taxon or ""
        for taxa, weight in identify(key, plant):
            if taxon not in taxa:
                wrong += weight
                mistaken[taxon, taxa[0]] = mistaken.get((taxon, taxa[0]), 0.0) + weight
            elif len(taxa) == 1:
                right += weight
            else:
                undecided += weight
    most = sorted(mistaken.items(), key=lambda one: (-round(one[1], 9), one[0]))
    names = {name for plant in seen for name in plant.identified_by.split(LIST_MARK) if name}
    return Evaluation(
        plants=len(seen),
        right=right,
        wrong=wrong,
        undecided=undecided,
        interval=wilson(min(len(seen), round(wrong)), len(seen)),
        mistaken=tuple((taxon, taken_for, many) for (taxon, taken_for), many in most),
        misled=_misled(key, seen),
        unseen=len(named) - len(seen),
        named_by=tuple(sorted(names)),
    )


def _misled(key: Key, plants: Iterable[Plant]) -> tuple[tuple[int, float, float], ...]:
    """Where plants leave the way to their taxon, once each."""
    below = _below(key)
    asked: dict[int, float] = {}
    lost: dict[int, float] = {}
    for plant in plants:
        for couplet, lead, part in _way(key, plant):
            if plant.taxon in below[couplet.number]:
                asked[couplet.number] = asked.get(couplet.number, 0.0) + part
                if plant.taxon not in (below[lead.goes_to] if lead.goes_to is not None else lead.taxa):
                    lost[couplet.number] = lost.get(couplet.number, 0.0) + part
    most = sorted(lost.items(), key=lambda one: (-round(one[1], 9), one[0]))
    return tuple((number, many, asked[number]) for number, many in most)


def _below(key: Key) -> dict[int, frozenset[str]]:
    """Number of a couplet -> the taxa at the ends below it."""
    found: dict[int, frozenset[str]] = {}
    for couplet in reversed(key.couplets):
        sides = (lead.taxa if lead.goes_to is None else found[lead.goes_to] for lead in couplet.leads)
        found[couplet.number] = frozenset().union(*sides)
    return found
