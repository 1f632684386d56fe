"""Ratios that nobody measured, reckoned from the two measures of a plant."""

from __future__ import annotations

from fractions import Fraction

import pytest

from auctorum.circumscription.plants import plants
from building import corpus_of
from measuring import NAMES, with_plants

CHARACTERS = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm, stages: [young, mature]}
- {name: petal length, structure: petal, property: length, kind: measure, unit: cm}
- {name: spur to petal, structure: spur, property: ratio, kind: ratio, of: [spur length, petal length]}
"""
WORK = 'work: {id: w, type: book, author: [{family: Orrin}], issued: "1900", title: T}\n'


def measured(*rows: str):
    corpus, problems = corpus_of(f"{WORK}{NAMES}treatments:\n- taxon: Exemplum album\n", characters=CHARACTERS)
    assert problems == []
    head = "occurrenceID,organismID,lifeStage,spur length [mm],petal length [mm],spur to petal\n"
    return plants(with_plants(corpus, head + "\n".join(rows) + "\n"))


@pytest.mark.parametrize(
    ("row", "value", "slack"),
    [
        # 30 ± 0.5 over 15 ± 0.5: 2 ± 2 × (1/60 + 1/30), to the first order
        pytest.param("A,,mature,30,15,", Fraction(2), Fraction(1, 10), id="both"),
        pytest.param("A,,,30,15,", Fraction(2), Fraction(1, 10), id="no-stage-is-mature"),
        pytest.param("A,,mature,30,15,2.5", Fraction(5, 2), Fraction(1, 20), id="what-is-measured-stands"),
    ],
)
def test_a_ratio_is_reckoned_from_its_parts(row: str, value: Fraction, slack: Fraction) -> None:
    (plant,) = measured(row)
    found = plant.at("spur to petal", "")
    assert found is not None
    assert (found.value, found.slack, found.rows) == (value, slack, 1)


@pytest.mark.parametrize("row", ["A,,mature,30,,", "A,,mature,,15,", "A,,young,9,15,", "A,,mature,0,15,", "A,,,30,0,"])
def test_without_both_parts_of_a_grown_plant_there_is_none(row: str) -> None:
    (plant,) = measured(row)
    assert plant.at("spur to petal", "") is None


def test_flowers_of_one_plant_give_the_mean_of_their_ratios() -> None:
    (plant,) = measured("A,P,mature,30,15,", "B,P,mature,40,10,")
    found = plant.at("spur to petal", "")
    assert found is not None
    assert (found.value, found.rows) == (Fraction(3), 2)


@pytest.mark.parametrize(
    "of",
    [
        pytest.param("[spur length]", id="one"),
        pytest.param("[spur length, leaf length]", id="unknown"),
        pytest.param("[spur length, petal number]", id="a-count"),
        pytest.param("[spur length, crown angle]", id="another-dimension"),
    ],
)
def test_what_is_no_ratio_of_two_measures_is_a_problem(of: str) -> None:
    characters = CHARACTERS.replace("[spur length, petal length]", of) + (
        "- {name: petal number, structure: petal, property: count, kind: count}\n"
        "- {name: crown angle, structure: crown, property: angle, kind: angle, unit: degree}\n"
    )
    corpus, problems = corpus_of(f"{WORK}{NAMES}treatments: []\n", characters=characters)
    assert corpus.vocabulary["spur to petal"].of == ()
    assert len(problems) == 1
    assert "`of:` does not make `spur to petal` a ratio of two measures of one sort" in problems[0]
