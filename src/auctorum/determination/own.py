"""One's own named plants as one more voice beside the authors: what one would write of them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from auctorum.characters.bounds import bounds
from auctorum.characters.vocabulary import Vocabulary
from auctorum.circumscription.findings import Span
from auctorum.circumscription.observed_value import observed_range
from auctorum.circumscription.plants import Observation, Plant
from auctorum.circumscription.sweep import Stretch
from auctorum.circumscription.voices import Voice, in_order

OWN = "own plants"
ENOUGH = 5  # plants of one taxon that make a voice; a judgement of ours

Told = Mapping[tuple[str, str], Voice]  # character and stage


def own_voices(plants: Iterable[Plant], vocabulary: Vocabulary) -> Told:
    """What plants, all named as one taxon, show of each character and stage on which at least five were observed.

    Numbers as `(min–)q10–q90(–max)`, states by their shares. The weight is that of one author.
    """
    seen: dict[tuple[str, str], list[Observation]] = {}
    for plant in plants:
        for one in plant.observations:
            seen.setdefault((one.character, one.stage), []).append(one)
    return {key: _voice(key[0], several, vocabulary) for key, several in seen.items() if len(several) >= ENOUGH}


def _voice(name: str, seen: list[Observation], vocabulary: Vocabulary) -> Voice:
    character = vocabulary[name]
    if not character.kind.is_numeric:
        totals: dict[str, Fraction] = {}
        for one in seen:
            for state, weight in one.states:
                totals[state] = totals.get(state, Fraction(0)) + weight / len(seen)
        states = tuple((state, totals[state]) for state in in_order(totals, character))
        return Voice(OWN, 0, OWN, Fraction(1), states=states)
    stated = bounds(observed_range(seen, character), character.unit)
    stretch = Stretch(stated.low, stated.high, stated.low_slack, stated.high_slack)
    low, high = (
        end if end is not None else usual for end, usual in ((stated.least, stated.low), (stated.most, stated.high))
    )
    return Voice(OWN, 0, OWN, Fraction(1), stretch, Span(low, high))
