"""What follows from the observations of one plant, as in tables: means of measurements, ratios of two measures."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction

from auctorum.characters.vocabulary import Character, Vocabulary
from auctorum.circumscription.combined_cells import Cells, mean, ratio_of
from auctorum.circumscription.plants import Observation
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
        found = ratio_of(ratio, [_cells(seen[part]) for part in ratio.of], vocabulary)
        if found is not None:
            more.append(Observation(ratio.name, "", found.value, (), found.slack, 1, found.accuracy))
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
    if len(several) == 1:
        return several[0]
    whole = mean(list(map(_cells, several)), character)
    return replace(
        several[0],
        value=whole.value if character.kind.is_numeric else None,
        states=tuple(whole.weights.items()),
        slack=whole.slack,
        accuracy=whole.accuracy,
        rows=len(several),
    )


def _cells(one: Observation) -> Cells:
    return Cells(one.value or Fraction(0), one.slack, dict(one.states), one.accuracy)
