"""Ratios that follow from two measures of one plant, as tables of plants have them too."""

from __future__ import annotations

from collections.abc import Sequence

from auctorum.characters.units import convert
from auctorum.characters.vocabulary import Vocabulary
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
