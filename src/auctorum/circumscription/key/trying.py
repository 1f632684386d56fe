"""The rules worth a try at one place of a key: thresholds between taxa, and ways to part states in two."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from functools import cache
from itertools import combinations
from math import floor

from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.cuts import STEPS, best_count_cut, best_cut
from auctorum.circumscription.density import Density, mixed
from auctorum.circumscription.key.model import Division, Rule, Threshold
from auctorum.circumscription.key.questions import Play, edge_of, entropy, share_below, trusted
from auctorum.circumscription.key.told import NOTHING, Spread
from auctorum.circumscription.voices import in_order
from auctorum.corpus.readings import UNSTATED

FEW = 6  # taxa, or states, up to which every way to part them is tried
MANY = 12  # states from which on a group grows from the best of them alone: from each it takes too long
_TRIED = 12  # ways to part many taxa by one character
_LITTLE = Fraction(1, 20)  # how far from the end of a core a rounder figure may lie, of the figure
_TINY = 1e-9  # weight of a taxon of which hardly any plants come here

Here = Sequence[tuple[str, float, Spread]]  # id, mass, spread, of the taxa that state the character at a stage


def stages_to_ask(play: Play, character: Character) -> tuple[str, ...]:
    """The stages that can be compared: those told of every taxon of which the character is told at all.

    Where there is none, the one told of most. A state without a stage counts only where none has one.
    """
    telling: dict[str, int] = {}
    several = 0
    for held in play.values():
        stages = [stage for stage, one in held.told.get(character.name, {}).items() if _says(one)]
        several += bool(stages)
        for stage in stages:
            telling[stage] = telling.get(stage, 0) + 1
    order = sorted(telling, key=lambda stage: _place(stage, character))
    full = [stage for stage in order if telling[stage] == several] if several > 1 else []
    if not full:
        return tuple(stage for stage in order if telling[stage] == max(telling.values()) > 1)[:1]
    return tuple(stage for stage in full if stage != UNSTATED) or tuple(full)


def _place(stage: str, character: Character) -> tuple[int, str]:
    """Grown plants first: they are what most keys are used for."""
    return (-character.stages.index(stage) if stage in character.stages else 1, stage)


def _says(spread: Spread) -> bool:
    return spread.density is not None or spread.shares is not None


def told_here(play: Play, character: Character, stage: str) -> Here:
    """The taxa of which the character is told at that stage."""
    return [
        (id_, max(held.mass, _TINY), held.told[character.name][stage])
        for id_, held in play.items()
        if stage in held.told.get(character.name, {}) and _says(held.told[character.name][stage])
    ]


def rules_to_try(told: Here, character: Character, stage: str) -> Iterator[Rule]:
    """Every rule for that stage that is worth a try, each once."""
    if character.kind.is_numeric:
        return (Threshold(stage, value) for value in dict.fromkeys(_thresholds(told, character.kind)))
    if character.kind is Kind.ORDERED:
        return _places_between(told, character, stage)
    return _groups_of_states(told, character, stage)


def by_median(told: Here) -> list[tuple[str, float, Spread]]:
    """The taxa with the lowest median first; of the same, by id."""
    return sorted(told, key=lambda one: (one[2].median, one[0]))


def _thresholds(told: Here, kind: Kind) -> Iterator[Fraction]:
    """Between each lower and upper part of the taxa (of many: evenly over them), and of few also the ends of cores
    that lie inside the core of another, where an overlap begins and ends."""
    order = by_median(told)
    last = len(order) - 1
    tried = range(last) if last < _TRIED else [(last - 1) * step // (_TRIED - 1) for step in range(_TRIED)]
    for at in tried:
        yield _between(order[at][2], order[at + 1][2], kind)
    if len(order) <= FEW:
        cores = [spread.core for _, _, spread in order if spread.core is not None and spread.core != NOTHING]
        for low, high in cores:
            if any(first < low <= last for first, last in cores):
                yield below(low, kind)
            if any(first <= high < last for first, last in cores):
                yield above(high, kind)


def _between(lower: Spread, upper: Spread, kind: Kind) -> Fraction:
    """A place between two medians, nearer to that of the narrower spread."""
    widths = [one.density.places[-1] - one.density.places[0] for one in (lower, upper) if one.density is not None]
    value = (lower.median * widths[1] + upper.median * widths[0]) / sum(widths)
    return Fraction(floor(value + 0.5)) if kind is Kind.COUNT else Fraction(value)


@cache
def above(value: float, kind: Kind) -> Fraction:
    """The roundest figure little above a value, so that the value itself stays below it.

    >>> above(4.8, Kind.MEASURE), above(7, Kind.COUNT)
    (Fraction(5, 1), Fraction(8, 1))
    """
    if kind is Kind.COUNT:
        return Fraction(floor(value) + 1)
    exact = Fraction(value).limit_denominator(10**6)
    for step in STEPS:
        figure = (floor(exact / step) + 1) * step
        if figure - exact <= abs(exact) * _LITTLE:
            return figure
    return exact + Fraction(1, 10**6)


@cache
def below(value: float, kind: Kind) -> Fraction:
    """The roundest figure that is the value or little below it.

    >>> below(15.875, Kind.MEASURE), below(7, Kind.COUNT)
    (Fraction(31, 2), Fraction(7, 1))
    """
    if kind is Kind.COUNT:
        return Fraction(floor(value))
    exact = Fraction(value).limit_denominator(10**6)
    for step in STEPS:
        figure = floor(exact / step) * step
        if exact - figure <= abs(exact) * _LITTLE:
            return figure
    return exact


def cut_between(lower: Here, upper: Here, kind: Kind) -> Fraction:
    """The best threshold between two sets of taxa, each weighted by the plants that come here."""
    sides = [mixed(_weighted(side)) for side in (lower, upper)]
    return (best_count_cut if kind is Kind.COUNT else best_cut)(*sides).value


def _weighted(side: Here) -> list[tuple[Density, float]]:
    return [(spread.density, mass) for _, mass, spread in side if spread.density is not None]


def _places_between(told: Here, character: Character, stage: str) -> Iterator[Rule]:
    names = known_states(told, character)
    spoken = {state for _, _, spread in told for state in spread.shares or ()}
    for at in range(1, len(names)):
        if spoken & set(names[:at]) and names[at] in spoken:
            yield Division(stage, names[:at], names[at:])


def known_states(told: Here, character: Character) -> tuple[str, ...]:
    """All states in their order, and those that the vocabulary lacks after them."""
    spoken = {state for _, _, spread in told for state in spread.shares or ()}
    return in_order(spoken | set(state_names(character)), character)


def _groups_of_states(told: Here, character: Character, stage: str) -> Iterator[Rule]:
    """Every way to part the states spoken of in two; of more than a few each against the others, and each
    group that grows from one, of very many from the best one, as long as that parts the taxa better."""
    spoken = in_order({state for _, _, spread in told for state in spread.shares or ()}, character)
    if len(spoken) <= FEW:
        rest = spoken[1:]
        for size in range(len(rest)):
            for more in combinations(rest, size):
                yield _division(stage, (spoken[0], *more), spoken)
        return
    if len(spoken) <= MANY:
        for state in spoken:
            yield from _grown(told, stage, state, spoken)
        return
    alone = [_division(stage, (state,), spoken) for state in spoken]
    yield from alone
    yield from _grown(told, stage, max(alone, key=lambda one: tells(told, one, Kind.NOMINAL)).lower[0], spoken)


def _division(stage: str, lower: Sequence[str], spoken: Sequence[str]) -> Division:
    first = tuple(state for state in spoken if state in lower)
    return Division(stage, first, tuple(state for state in spoken if state not in lower))


def _grown(told: Here, stage: str, state: str, spoken: Sequence[str]) -> Iterator[Division]:
    group, told_most = [state], -1.0
    while len(group) < len(spoken):
        division = _division(stage, group, spoken)
        now = tells(told, division, Kind.NOMINAL)
        if now <= told_most + 1e-9:
            return
        yield division
        told_most = now
        others = [other for other in spoken if other not in group]
        group.append(
            max(others, key=lambda other: tells(told, _division(stage, [*group, other], spoken), Kind.NOMINAL))
        )


def tells(told: Here, rule: Rule, kind: Kind) -> float:
    """Bits that the answer tells by the likelihoods alone, for the taxa that state the character."""
    edge = edge_of(rule, kind)
    masses = [mass for _, mass, _ in told]
    lower = [mass * _bet(spread, share_below(spread, rule, edge)) for _, mass, spread in told]
    upper = [mass - below for mass, below in zip(masses, lower, strict=True)]
    return entropy(masses) - entropy(lower) - entropy(upper)


def _bet(spread: Spread, share: float | None) -> float:
    return 0.5 if share is None else trusted(share, spread)
