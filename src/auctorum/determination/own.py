"""One's own named plants as one more voice beside the authors: what one would write of them."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Mapping, Sequence
from fractions import Fraction

from auctorum.characters.bounds import bounds
from auctorum.characters.vocabulary import Character, Vocabulary
from auctorum.circumscription.findings import Span
from auctorum.circumscription.observed_value import Figures, figures_of, range_of
from auctorum.circumscription.plants import Observation, Plant
from auctorum.circumscription.sweep import Stretch
from auctorum.circumscription.voices import Voice, in_order

OWN = "own plants"
ENOUGH = 5  # plants of one taxon that make a voice; a judgement of ours

Key = tuple[str, str]  # character and stage
Told = Mapping[Key, Voice]
_States = tuple[tuple[str, Fraction], ...]  # with the weight of each


def own_voices(plants: Iterable[Plant], vocabulary: Vocabulary) -> Told:
    """What plants, all named as one taxon, show of each character and stage on which at least five were observed.

    Numbers as `(min–)q10–q90(–max)`, states by their shares. The weight is that of one author.
    """
    learnt = Learnt(plants, vocabulary)
    return learnt.voices(learnt.keys)


class Learnt:
    """What plants of one taxon show, counted and sorted once, so that it is quickly told without some of them."""

    def __init__(self, plants: Iterable[Plant], vocabulary: Vocabulary) -> None:
        self._vocabulary = vocabulary
        self._seen: dict[Key, list[Observation]] = {}
        for plant in plants:
            for one in plant.observations:
                self._seen.setdefault((one.character, one.stage), []).append(one)
        self._figures: dict[Key, Figures] = {}
        self._states: dict[Key, Counter[_States]] = {}

    @property
    def keys(self) -> Collection[Key]:
        """The characters and stages that were observed."""
        return self._seen.keys()

    def voices(self, keys: Iterable[Key], without: Iterable[Plant] = ()) -> Told:
        """The voices for these characters and stages, as if some of the plants had not been seen."""
        out: dict[Key, list[Observation]] = {}
        for plant in without:
            for one in plant.observations:
                out.setdefault((one.character, one.stage), []).append(one)
        left = ((key, out.get(key, ())) for key in keys if key in self._seen)
        return {key: self._voice(key, less) for key, less in left if len(self._seen[key]) - len(less) >= ENOUGH}

    def _voice(self, key: Key, less: Sequence[Observation]) -> Voice:
        character = self._vocabulary[key[0]]
        if not character.kind.is_numeric:
            if key not in self._states:
                self._states[key] = Counter(one.states for one in self._seen[key])
            several = self._states[key].copy()
            several.subtract(one.states for one in less)
            return _of_states(several, character)
        if key not in self._figures:
            self._figures[key] = figures_of(self._seen[key])
        figures = self._figures[key]
        return _of_figures(figures.without(less) if less else figures, character)


def _of_states(several: Counter[_States], character: Character) -> Voice:
    many = several.total()
    totals: dict[str, Fraction] = {}
    for states, plants in several.items():
        for state, weight in states if plants else ():
            totals[state] = totals.get(state, Fraction(0)) + weight * plants / many
    return Voice(OWN, 0, OWN, Fraction(1), states=tuple((one, totals[one]) for one in in_order(totals, character)))


def _of_figures(figures: Figures, character: Character) -> Voice:
    stated = bounds(range_of(figures, character), character.unit)
    stretch = Stretch(stated.low, stated.high, stated.low_slack, stated.high_slack)
    low, high = (
        end if end is not None else usual for end, usual in ((stated.least, stated.low), (stated.most, stated.high))
    )
    return Voice(OWN, 0, OWN, Fraction(1), stretch, Span(low, high))
