"""Plants and views in few words, for tests of determinations."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from itertools import product

import numpy as np

from accounts import NAMES, OTHER, TAXON, Account, Stated, corpus_from
from auctorum.circumscription.plants import Observation, Plant
from auctorum.corpus.model import Corpus
from auctorum.determination.many import columns_of, posteriors
from auctorum.determination.view import Statements, View, view_of

HEIGHT, ASPECT, COLOUR, SURFACE = "stem height", "aspect", "spur colour", "seed surface"


def measured(
    value: Fraction | float | str, character: str = HEIGHT, *, stage: str = "", error: str = "0.5"
) -> Observation:
    """A number in the canonical unit, with its half-width."""
    return Observation(character, stage, Fraction(str(value)), (), Fraction(error), 1)


def shown(character: str, *states: str, stage: str = "") -> Observation:
    """States that weigh alike."""
    weights = tuple((state, Fraction(1, len(states))) for state in states)
    return Observation(character, stage, None, weights, Fraction(0), 1)


def plant(*seen: Observation, id_: str = "plant", taxon: str | None = None, by: str = "") -> Plant:
    return Plant(id_, taxon, None, None, by, seen)


def stated(*lines: str) -> tuple[Stated, ...]:
    """`stem height: 10-20 mm`, or `spur length [young]: 4-6 mm` for a growth stage."""
    found = []
    for line in lines:
        head, value = line.split(": ", 1)
        character, _, stage = head.removesuffix("]").partition(" [")
        found.append((character, value, stage))
    return tuple(found)


def corpus_with(*told: Sequence[str], names: Mapping[str, str] = NAMES, settings: str = "title: Test\n") -> Corpus:
    """One work; `told` are the lines on each of the names in their order."""
    says = {taxon: stated(*lines) for taxon, lines in zip(names, told, strict=False)}
    return corpus_from([Account(1900, "Alpha", says, names=names)], settings=settings)


def view_with(*told: Sequence[str], names: Mapping[str, str] = NAMES) -> View:
    return view_of(Statements(corpus_with(*told, names=names)))


def three_names() -> dict[str, str]:
    return {TAXON: NAMES[TAXON], OTHER: NAMES[OTHER], "exemplum-nigrum": "Exemplum nigrum"}


def many_names(many: int) -> dict[str, str]:
    """Names that nobody has published, up to 3,375."""
    syllables = [one + vowel for one in "bdlmr" for vowel in "aei"]
    words = ["".join(three) + "um" for three in product(syllables, repeat=3)]
    return {f"exemplum-{word}": f"Exemplum {word}" for word in words[:many]}


def shares_of(view: View, *plants: Plant, priors: Mapping[str, float] | None = None) -> list[dict[str, float]]:
    """The probability of each taxon, of each plant."""
    found = posteriors(view, columns_of(view, plants), priors)
    assert np.isfinite(found).all()
    return [dict(zip(view.taxa, map(float, row), strict=True)) for row in found]
