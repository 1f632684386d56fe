"""What follows from the observations of one plant, as in tables: means of measurements, ratios of two measures."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from auctorum.characters.directions import TURN
from auctorum.characters.units import convert
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.plants import Observation, about_their_mean
from auctorum.circumscription.wording import MATURE


def with_ratios(vocabulary: Vocabulary, several: Sequence[Observation]) -> tuple[Observation, ...]:
    """The observations, and each ratio that was not observed itself but both of whose measures were.

    Its error is what those of the two measures leave. Measures of young parts make no ratio.
    """
    seen = {one.character: one for one in several if one.stage in ("", MATURE)}
    known = {one.character for one in several}
    more = []
    for ratio in vocabulary.values():
        if len(ratio.of) != 2 or ratio.stages or ratio.name in known or not all(part in seen for part in ratio.of):
            continue
        first, second = (seen[part] for part in ratio.of)
        units = [vocabulary[part].unit for part in ratio.of]
        below = convert(second.value, units[1], units[0]) if second.value else None
        if not first.value or not below or not second.value:
            continue
        value = first.value / below
        slack = value * (first.slack / first.value + second.slack / second.value)
        accuracy = value * (first.accuracy / first.value + second.accuracy / second.value)
        more.append(Observation(ratio.name, "", value, (), slack, 1, accuracy))
    return (*several, *more)


def to_ask(vocabulary: Vocabulary, several: Sequence[Observation]) -> frozenset[str]:
    """Ratios that need not be asked for: one of their measures is known, so that the other is the thing to measure."""
    seen = {one.character for one in several}
    return frozenset(ratio.name for ratio in vocabulary.values() if seen.intersection(ratio.of))


def pooled(vocabulary: Vocabulary, several: Sequence[Observation]) -> tuple[Observation, ...]:
    """One observation for each character and stage, in the order of the first: several measurements are averaged.

    Directions about their circular mean; the slack and the error are those of the coarsest. States are pooled.
    """
    by_key: dict[tuple[str, str], list[Observation]] = {}
    for one in several:
        by_key.setdefault((one.character, one.stage), []).append(one)
    return tuple(_together(vocabulary[name], of_key) for (name, _), of_key in by_key.items())


def _together(character: Character, several: Sequence[Observation]) -> Observation:
    first, many = several[0], len(several)
    if many == 1:
        return first
    values = [one.value for one in several if one.value is not None]
    if not values:
        weights: dict[str, Fraction] = {}
        for one in several:
            for state, weight in one.states:
                weights[state] = weights.get(state, Fraction(0)) + weight / many
        return replace(first, states=tuple(weights.items()), rows=many)
    circular = character.kind is Kind.ANGLE
    mean = sum(about_their_mean(values) if circular else values, Fraction(0)) / len(values)
    slack, accuracy = max(one.slack for one in several), max(one.accuracy for one in several)
    return replace(first, value=mean % TURN if circular else mean, slack=slack, accuracy=accuracy, rows=many)
