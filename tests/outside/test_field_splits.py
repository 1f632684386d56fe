"""Irises and penguins determined one by one from ranges that were printed of the other half of them.

Figures and their sources: test_iris_splits.py and test_penguin_splits.py. One invented work writes
`(min–)q5–q95(–max)` for each measurement of each species, from one of 200 random halves; every member of the other half
is determined by nothing else. Beside it stands naive Bayes with normal distributions (GaussianNB of scikit-learn),
which was taught the figures of the first half themselves. Both are judged by the same formulas: the share that comes
out wrong, and the score of Brier, Monthly Weather Review 78: 1–3 (1950; from memory). The irises and birds count here
for their figures alone.
"""

from __future__ import annotations

import statistics
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

import numpy as np
import pytest
from palmerpenguins import load_penguins
from sklearn.datasets import load_iris
from sklearn.naive_bayes import GaussianNB

from auctorum.circumscription.density import Shape, shapes
from auctorum.circumscription.findings import Span
from auctorum.circumscription.sweep import Stretch
from auctorum.circumscription.voices import Voice
from auctorum.determination.calibration import brier
from auctorum.determination.many import Determined, columns_of, determined, posteriors
from auctorum.determination.model import Wording
from auctorum.determination.tables import numbers
from auctorum.determination.view import Statements, View, view_of
from auctorum.determination.wording import IN_ORDER
from splitting import Group, Measured, measure, table

SPLITS = 200
POINT = 0.01
IRISES = ("iris-setosa", "iris-versicolor", "iris-virginica")
PENGUINS = {"Adelie": "pygoscelis-adeliae", "Chinstrap": "pygoscelis-antarcticus", "Gentoo": "pygoscelis-papua"}
SEXES = ("male", "female")
COLUMNS = {"bill_length_mm": 1, "bill_depth_mm": 1, "flipper_length_mm": 0, "body_mass_g": 0}  # decimals measured
PLAIN = IN_ORDER.index(Wording.PLAIN)

Half = tuple[Measured, ...]
Taught = Callable[[Half, Half, Sequence[str]], np.ndarray]


def names(ids: Iterable[str]) -> Mapping[str, str]:
    return {id_: id_.replace("-", " ").capitalize() for id_ in ids}


@pytest.fixture(scope="module")
def irises() -> Group:
    data = load_iris()
    flowers = tuple(
        Measured(IRISES[kind], "", tuple(Decimal(f"{value:.1f}") for value in flower))
        for flower, kind in zip(data.data, data.target, strict=True)
    )
    characters = ("sepal length", "sepal width", "petal length", "petal width")
    return Group(names(IRISES), tuple(measure(name, "cm") for name in characters), flowers)


@pytest.fixture(scope="module")
def penguins() -> Group:
    """Of males and of females each measurement by itself; 11 of 344 birds, without sex, are left out."""
    whole = load_penguins().dropna(subset=[*COLUMNS, "sex"])
    assert len(whole) == 333
    birds = tuple(
        Measured(
            PENGUINS[bird["species"]],
            bird["sex"],
            tuple(Decimal(f"{bird[column]:.{decimals}f}") for column, decimals in COLUMNS.items()),
        )
        for bird in whole.to_dict("records")
    )
    lengths = (measure(name, "mm", SEXES) for name in ("bill length", "bill depth", "flipper length"))
    return Group(names(PENGUINS.values()), (*lengths, measure("body mass", "", SEXES)), birds)


@pytest.fixture(scope="module")
def mixed(penguins: Group) -> Group:
    """The same birds, as if nobody could tell their sex."""
    characters = tuple(replace(one, stages=()) for one in penguins.characters)
    return Group(penguins.names, characters, tuple(replace(one, stage="") for one in penguins.members))


# --- the two ways


def shares_of(half: Half) -> Mapping[str, float]:
    return {kind: sum(one.kind == kind for one in half) / len(half) for kind in {one.kind for one in half}}


def from_print(group: Group, half: Half, rest: Half, priors: Mapping[str, float] | None) -> tuple[Determined, View]:
    """The other half determined by the work written of the first: records, corpus, view, columns."""
    view = view_of(Statements(group.spanned(half)))
    plants = [group.plant(one) for one in rest]
    return determined(view, columns_of(view, plants), priors), view


def taught(half: Half, rest: Half, kinds: Sequence[str], stages: Sequence[str] = ()) -> np.ndarray:
    """Probabilities by naive Bayes taught the figures, with the stage as one more column; its priors are the shares."""
    figures, given = table(half, stages)
    return in_columns(GaussianNB().fit(figures, given), table(rest, stages)[0], kinds)


def taught_evenly(half: Half, rest: Half, kinds: Sequence[str]) -> np.ndarray:
    """As `taught`, with even priors."""
    figures, given = table(half)
    model = GaussianNB(priors=[1 / len(kinds)] * len(kinds)).fit(figures, given)
    return in_columns(model, table(rest)[0], kinds)


def taught_sex(half: Half, rest: Half, kinds: Sequence[str]) -> np.ndarray:
    """As `taught`, given the sex as one more column."""
    return taught(half, rest, kinds, SEXES)


def taught_by_sex(half: Half, rest: Half, kinds: Sequence[str]) -> np.ndarray:
    """As `taught`, males by males and females by females."""
    found = np.zeros((len(rest), len(kinds)))
    for sex in SEXES:
        rows = [row for row, one in enumerate(rest) if one.stage == sex]
        same = tuple(one for one in half if one.stage == sex)
        found[rows] = taught(same, tuple(rest[row] for row in rows), kinds)
    return found


def in_columns(model: GaussianNB, figures: list[list[float]], kinds: Sequence[str]) -> np.ndarray:
    order = [list(model.classes_).index(kind) for kind in kinds]
    return np.asarray(model.predict_proba(figures)[:, order])


# --- how both come out


@dataclass(frozen=True)
class Score:
    """Means over all splits: the share of names that are wrong, and the Brier score (0 to 2)."""

    wrong: float
    brier: float

    def __str__(self) -> str:
        return f"{self.wrong:.2%} wrong, Brier {self.brier:.4f}"


@dataclass(frozen=True)
class Outcome:
    """Ours, theirs by name, and what the wordings are worth, over all members of all second halves."""

    ours: Score
    others: Mapping[str, Score]
    plain: int
    plain_wrong: int
    members: int
    wrong: int

    @property
    def wrong_abstained(self) -> float:
        """The share of the errors that bear `cf.`, `aff.` or `indet.`"""
        return 1 - self.plain_wrong / self.wrong

    def __str__(self) -> str:
        theirs = "; ".join(f"naive Bayes {name}: {score}" for name, score in self.others.items())
        return (
            f"from print {self.ours}; {theirs}; {self.plain / self.members:.1%} named plainly, of these "
            f"{self.plain_wrong / self.plain:.2%} wrong; {self.wrong_abstained:.0%} of the errors qualified"
        )


def tried(group: Group, others: Mapping[str, Taught], *, even: bool = True) -> Outcome:
    """Both ways over all splits; `even` priors, or the shares in the half."""
    scores: dict[str, list[tuple[float, float]]] = {"": [], **{name: [] for name in others}}
    plain = plain_wrong = members = wrong = 0
    for half, rest in group.splits(SPLITS):
        found, view = from_print(group, half, rest, None if even else shares_of(half))
        true = np.array([view.taxa.index(one.kind) for one in rest])
        missed, named = found.best != true, found.wordings == PLAIN
        scores[""].append((float(missed.mean()), brier(found.probabilities, true)))
        for name, teach in others.items():
            stated = teach(half, rest, view.taxa)
            scores[name].append((float((stated.argmax(axis=1) != true).mean()), brier(stated, true)))
        plain, plain_wrong = plain + int(named.sum()), plain_wrong + int((named & missed).sum())
        members, wrong = members + len(rest), wrong + int(missed.sum())
    means = {name: Score(*map(statistics.fmean, zip(*several, strict=True))) for name, several in scores.items()}
    return Outcome(means.pop(""), means, plain, plain_wrong, members, wrong)


def assert_wordings_are_worth_something(found: Outcome, other: Score) -> None:
    """Qualified names hold at least half of the errors; plain names err less than the classifier, and are common."""
    assert found.wrong_abstained >= 0.5
    assert found.plain_wrong / found.plain < other.wrong
    assert found.plain / found.members > 0.5


def test_irises(irises: Group, say: Callable[[str], None]) -> None:
    found = tried(irises, {"taught the flowers": taught})
    say(f"irises in the field, {SPLITS} halves: {found}")
    (other,) = found.others.values()
    assert found.ours.wrong <= other.wrong + POINT
    assert found.ours.brier <= other.brier
    assert_wordings_are_worth_something(found, other)


def test_penguins_whose_sex_is_told(penguins: Group, say: Callable[[str], None]) -> None:
    """Against the classifier that has the sex as a column; how it does when taught each sex by itself is recorded."""
    found = tried(penguins, {"with the sex": taught_sex, "of each sex": taught_by_sex}, even=False)
    say(f"penguins in the field, sexes told, {SPLITS} halves: {found}")
    other = found.others["with the sex"]
    assert found.ours.wrong <= other.wrong + POINT
    assert found.ours.brier <= other.brier
    assert_wordings_are_worth_something(found, other)


@pytest.mark.parametrize("even", [pytest.param(True, id="even-priors"), pytest.param(False, id="shares-of-the-half")])
def test_penguins_of_unknown_sex(mixed: Group, say: Callable[[str], None], even: bool) -> None:
    """Two sexes of one species make two humps, and four figures of one range cannot tell them.

    Names come out within a point of the classifier that has seen the figures and knows how many birds of each species
    there are. For the probabilities its Brier score is no bar; 1.15 times that of the classifier with the same priors
    as ours is one that keeps watch. Against the shares that it has learnt, even priors are at 1.2 times.
    """
    found = tried(mixed, {"with the shares": taught, "with even priors": taught_evenly}, even=even)
    shares, alike = found.others["with the shares"], found.others["with even priors" if even else "with the shares"]
    said = "even priors" if even else "the shares of the half as priors"
    say(f"penguins in the field, sexes mixed, {said}: {found}; Brier {found.ours.brier / alike.brier:.2f} of that with "
        f"the same priors, {found.ours.brier / shares.brier:.2f} of that with the shares")  # fmt: skip
    assert found.ours.wrong <= shares.wrong + POINT
    assert found.ours.brier <= 1.15 * alike.brier
    assert found.ours.brier <= 1.25 * shares.brier
    assert_wordings_are_worth_something(found, shares)


# --- second answers


def test_the_road_over_records_gives_what_the_words_say(irises: Group) -> None:
    """The densities are read from the words of the account alone, by a reader of our own, and combined by hand."""
    for half, rest in irises.splits(3):
        found, view = from_print(irises, half, rest, None)
        by_hand = np.zeros((len(rest), len(view.taxa)))
        for place, character in enumerate(irises.characters):
            told = [said_of(irises, half, kind, place) for kind in view.taxa]
            values = np.array([float(one.figures[place]) for one in rest])
            shape = numbers(character, "", [_read(one) for one in told])
            assert shape is not None
            by_hand += np.log(shape.likelihood(values, np.full(len(rest), 0.05)))
        odds = np.exp(by_hand - by_hand.max(axis=1, keepdims=True))
        assert found.probabilities == pytest.approx(odds / odds.sum(axis=1, keepdims=True), abs=1e-9)


def said_of(group: Group, half: Collection[Measured], kind: str, place: int) -> tuple[float, float, float, float]:
    """Least, fifth percentile, ninety-fifth and most by numpy, to the tenth (halves away from nought)."""
    values = np.array([float(one.figures[place]) for one in half if one.kind == kind])
    ends = (values.min(), *np.percentile(values, [5, 95]), values.max())
    least, low, high, most = (np.floor(end * 10 + 0.5 + 1e-9) / 10 for end in ends)
    return float(least), float(low), float(high), float(most)


def _read(four: tuple[float, float, float, float]) -> tuple[Shape, ...]:
    """What one account says, as one voice."""
    least, low, high, most = (Fraction(round(one * 10), 10) for one in four)
    slack = Fraction(1, 20)
    return shapes([Voice("w", 1936, "w", Fraction(1), Stretch(low, high, slack, slack), Span(least, most))])


def test_the_unit_that_is_printed_changes_no_probability(irises: Group) -> None:
    """The same flowers in tenths of the figures, as if a decimetre were the unit: values and words shrink alike."""
    small = Group(
        irises.names,
        irises.characters,
        tuple(replace(one, figures=tuple(value.scaleb(-1) for value in one.figures)) for one in irises.members),
    )
    for (half, rest), (half_small, rest_small) in zip(irises.splits(3), small.splits(3), strict=True):
        one, _ = from_print(irises, half, rest, None)
        view = view_of(Statements(small.spanned(half_small)))
        other = posteriors(view, columns_of(view, [small.plant(each) for each in rest_small]))
        assert other == pytest.approx(one.probabilities, abs=1e-6)
