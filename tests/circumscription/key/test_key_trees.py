"""Keys from half of the plants, tried on the other half, beside a decision tree that saw the same half.

The irises are E. Anderson's, as printed by R. A. Fisher (Annals of Eugenics 7 (1936): 179-188), here from scikit-learn;
the second answer is its DecisionTreeClassifier. A small number of splits: enough to notice a key that went bad.
"""

from __future__ import annotations

import random
from fractions import Fraction

import pytest

from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.diagnosis import finding
from auctorum.circumscription.key import identify, key_of
from auctorum.circumscription.plants import Observation, Plant
from key_cases import evidence

NAMES = ("sepal length", "sepal width", "petal length", "petal width")
CHARACTERS = tuple(Character(name, *name.split(), Kind.MEASURE, "cm") for name in NAMES)
SPLITS = 25


def stated(values, np):
    """(min–)q10–q90(–max) to the tenth."""
    return tuple(f"{one:.1f}" for one in np.quantile(values, (0, 0.1, 0.9, 1)))


def test_irises_come_out_about_as_often_as_by_a_decision_tree() -> None:
    np = pytest.importorskip("numpy")
    datasets, tree = pytest.importorskip("sklearn.datasets"), pytest.importorskip("sklearn.tree")
    data = datasets.load_iris()
    draw = random.Random(1936)
    wrong = by_tree = tried = 0
    for _ in range(SPLITS):
        half = sorted(number for kind in range(3) for number in draw.sample(range(50 * kind, 50 * kind + 50), 25))
        rest = sorted(set(range(150)) - set(half))
        known = data.data[half]
        findings = {
            str(kind): [
                finding(one, "", [evidence(one, stated(known[data.target[half] == kind, column], np))], ())
                for column, one in enumerate(CHARACTERS)
            ]
            for kind in range(3)
        }
        found = key_of(findings, Vocabulary(CHARACTERS))
        fitted = tree.DecisionTreeClassifier(random_state=0).fit(known, data.target[half])
        by_tree += sum(fitted.predict(data.data[rest]) != data.target[rest])
        for number in rest:
            seen = zip(NAMES, data.data[number], strict=True)
            flower = tuple(Observation(name, "", Fraction(f"{value:.1f}"), (), Fraction(0), 1) for name, value in seen)
            outcome = identify(found, Plant("f", None, None, None, "", flower))
            wrong += outcome[0][0] != (str(data.target[number]),)
        tried += len(rest)
    assert wrong / tried <= by_tree / tried + 0.015
