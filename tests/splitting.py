"""Measured plants or animals split at random: descriptions written from one half, and tried on the other."""

from __future__ import annotations

import random
import statistics
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from sklearn.naive_bayes import GaussianNB
from sklearn.tree import DecisionTreeClassifier

from accounts import Account, corpus_from
from auctorum.characters.show import format_value
from auctorum.characters.values import Range
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.key.build import key
from auctorum.circumscription.key.evaluate import identify
from auctorum.circumscription.key.model import Key
from auctorum.circumscription.observed_value import decimal_place, observed_range, quantile, rounded, usual_step
from auctorum.circumscription.plants import Observation, Plant
from auctorum.corpus.model import Corpus


@dataclass(frozen=True)
class Measured:
    """One individual: what it is (an id of a taxon), its stage (or sex; empty for none), its figures as printed."""

    kind: str
    stage: str
    figures: tuple[Decimal, ...]


@dataclass(frozen=True)
class Group:
    """Measured individuals of several kinds; `names` maps ids of taxa to names."""

    names: Mapping[str, str]
    characters: tuple[Character, ...]
    members: tuple[Measured, ...]

    def splits(self, times: int) -> Iterator[tuple[tuple[Measured, ...], tuple[Measured, ...]]]:
        """Random halves of the members, each kind and stage halved by itself; the seed is the number of the split."""
        strata: dict[tuple[str, str], list[Measured]] = {}
        for one in self.members:
            strata.setdefault((one.kind, one.stage), []).append(one)
        for seed in range(times):
            rng, first, second = random.Random(seed), [], []
            for several in strata.values():
                mixed = rng.sample(several, len(several))
                first += mixed[: len(mixed) // 2]
                second += mixed[len(mixed) // 2 :]
            yield tuple(first), tuple(second)

    def described(self, members: Collection[Measured]) -> Corpus:
        """One work that describes each kind from these members: for each character `(min–)q10–q90(–max)`."""
        return corpus_from([self.account(members)], characters=self.vocabulary())

    def spanned(self, members: Collection[Measured]) -> Corpus:
        """As `described`, with the middle nine tenths as the typical range: `(min–)q5–q95(–max)`."""
        return corpus_from([self.account(members, tail=Fraction(1, 20))], characters=self.vocabulary())

    def account(
        self, members: Collection[Measured], year: int = 1936, author: str = "Orrin", tail: Fraction | None = None
    ) -> Account:
        """That work; `tail` is the part of the members below the typical range, None for a tenth."""
        says = {
            kind: tuple(
                (character.name, self._range(members, kind, stage, place, tail), stage)
                for place, character in enumerate(self.characters)
                for stage in (character.stages or ("",))
            )
            for kind in self.names
        }
        return Account(year, author, says, names=self.names)

    def vocabulary(self) -> str:
        """The file characters.yaml."""
        lines = [
            f"- {{name: {one.name}, structure: {one.structure}, property: {one.property}, kind: {one.kind}"
            + (f", unit: {one.unit}" if one.unit else "")
            + f", stages: [{', '.join(one.stages)}]}}"
            for one in self.characters
        ]
        return "\n".join(["characters:", *lines]) + "\n"

    def plant(self, one: Measured) -> Plant:
        """The individual as a plant that is to be determined: nobody has named it."""
        observations = (self._observation(one, place) for place in range(len(self.characters)))
        return Plant("", None, None, None, "", tuple(observations))

    def _range(
        self, members: Collection[Measured], kind: str, stage: str, place: int, tail: Fraction | None = None
    ) -> str:
        seen = [self._observation(one, place) for one in members if (one.kind, one.stage) == (kind, stage)]
        character = self.characters[place]
        found = observed_range(seen, character) if tail is None else _range_without(tail, seen, character)
        return format_value(found, character)

    def _observation(self, one: Measured, place: int) -> Observation:
        figure = one.figures[place]
        step = Fraction(1, 10 ** max(0, -int(figure.as_tuple().exponent)))
        return Observation(self.characters[place].name, one.stage, Fraction(figure), (), step / 2, 1)


def _range_without(tail: Fraction, seen: Sequence[Observation], character: Character) -> Range:
    """The range without that part of the members at each end, rounded to their precision; extremes beyond it."""
    values = sorted(one.value for one in seen if one.value is not None)
    place = decimal_place(usual_step(seen))
    ends = (values[0], quantile(values, tail), quantile(values, 1 - tail), values[-1])
    least, low, high, most = (rounded(one, place) for one in ends)
    return Range(low, high, character.unit, least if least < low else None, most if most > high else None)


def measure(name: str, unit: str, stages: tuple[str, ...] = ()) -> Character:
    """A measured character, `petal length` in cm; without a unit a bare number."""
    structure, property_ = name.split()
    return Character(name, structure, property_, Kind.MEASURE if unit else Kind.RATIO, unit, stages=stages)


def table(members: Sequence[Measured], stages: Sequence[str] = ()) -> tuple[list[list[float]], list[str]]:
    """Figures, with the number of the stage as a last column where there are stages, and what each member is."""
    rows = [[float(figure) for figure in one.figures] for one in members]
    if stages:
        for row, one in zip(rows, members, strict=True):
            row.append(float(stages.index(one.stage)))
    return rows, [one.kind for one in members]


def share_wrong(given: Sequence[str], true: Sequence[str]) -> float:
    """The share of members that were given another kind than theirs."""
    return sum(one != other for one, other in zip(given, true, strict=True)) / len(true)


@dataclass(frozen=True)
class Rates:
    """Mean shares of the members of the second halves that came out wrong, over all splits, 0 to 1."""

    key: float  # a group of kinds at an end counts as a guess among them
    tree: float
    bayes: float

    def __str__(self) -> str:
        return f"key {self.key:.1%} wrong, classification tree {self.tree:.1%}, naive Bayes {self.bayes:.1%}"


def compared(group: Group, times: int) -> Rates:
    """A key from what is written of each first half, against classifiers of scikit-learn taught the half itself.

    The classifiers have the stage as one more column; tree and Bayes are DecisionTreeClassifier and GaussianNB with
    their usual settings.
    """
    stages = tuple(dict.fromkeys(stage for one in group.characters for stage in one.stages))
    wrong: list[tuple[float, float, float]] = []
    for half, rest in group.splits(times):
        made = key(group.described(half), tuple(group.names))
        by_key = sum(_missed(made, group.plant(one), one.kind) for one in rest) / len(rest)
        taught, asked = table(half, stages), table(rest, stages)
        others = (DecisionTreeClassifier(random_state=0), GaussianNB())
        tree, bayes = (share_wrong(list(one.fit(*taught).predict(asked[0])), asked[1]) for one in others)
        wrong.append((by_key, tree, bayes))
    return Rates(*(statistics.fmean(column) for column in zip(*wrong, strict=True)))


def _missed(made: Key, plant: Plant, kind: str) -> float:
    """The part of one individual that comes out wrong."""
    return sum(weight * (1 - (kind in taxa) / len(taxa)) for taxa, weight in identify(made, plant))
