"""Checks across records, and of the rest of a knowledge base: criteria, sites, the vocabulary."""

from __future__ import annotations

import pytest

from auctorum.corpus.link import link
from auctorum.records import schema
from auctorum.records.tables import parse_rows
from building import CHARACTERS, corpus_of, read_text

BASE = """\
work: {id: orrin-1881, type: book, author: [{family: Orrin}], issued: "1881", title: Flora}
acts:
- {name: Exemplum, act: new taxon}
- {name: Exemplum album, act: new taxon}
- {name: Exemplum nigrum, act: new taxon}
treatments:
"""


@pytest.mark.parametrize(
    ("treatments", "said"),
    [
        pytest.param(
            ["taxon: Exemplum album", "taxon: Exemplum album, status: synonym, accepted-as: Exemplum nigrum"],
            ["Exemplum album Orrin has a treatment in this work already, at orrin-1881.yaml:7:3"],
            id="treated-twice",
        ),
        pytest.param(
            ["taxon: Exemplum album, synonyms: [Exemplum nigrum]", "taxon: Exemplum nigrum"],
            ["accepted here, but a synonym of Exemplum album Orrin in the same work"],
            id="accepted-and-sunk",
        ),
        pytest.param(
            [
                "taxon: Exemplum album, status: synonym, accepted-as: Exemplum nigrum",
                "taxon: Exemplum nigrum, status: synonym, accepted-as: Exemplum album",
            ],
            ["the taxa are placed in one another in a circle: Exemplum album → Exemplum nigrum → Exemplum album"],
            id="circle-of-synonyms",
        ),
        pytest.param(
            ["taxon: Exemplum album, accepted-as: Exemplum nigrum"],
            ["kept as accepted, and yet accepted as another name"],
            id="accepted-as-another",
        ),
        pytest.param(
            ["taxon: Exemplum album, follows: [orrin-1881]"], ["the work is said to follow itself"], id="follows-itself"
        ),
        pytest.param(
            ["taxon: Exemplum album, status: synonym"],
            ["`Exemplum album` is kept as synonym, but not of what"],
            id="of-what",
        ),
        pytest.param(
            ["taxon: Exemplum album, follows: [nobody-1900]"],
            ["no work `nobody-1900` in the knowledge base"],
            id="unknown-work",
        ),
    ],
)
def test_treatments(treatments: list[str], said: list[str]) -> None:
    _, problems = corpus_of(BASE + "".join(f"- {{{one}}}\n" for one in treatments))
    assert [problem.split(": ", 1)[1].split(" (")[0] for problem in problems] == said


def problems_of(characters: str = CHARACTERS, criterion: str = "", sites: str = "") -> list[str]:
    """Problems of a knowledge base with one publication and what else is given."""
    records = schema.Records(
        settings=read_text("title: T\n", schema.Settings, "kb.yaml"),
        characters=read_text(characters, schema.Characters, "characters.yaml"),
        literature=(read_text(BASE + "- taxon: Exemplum album\n", schema.Literature, "x.yaml"),),
        criteria=(read_text(criterion, schema.Criterion, "c.yaml"),) if criterion else (),
        sites=parse_rows(sites, "sites.csv", schema.Site, ())[0] if sites else (),
    )
    return [f"{one.what} ({one.remedy})" for one in link(records)[1]]


MORE_CHARACTERS = """\
- {name: petal length, structure: petal, property: length, kind: measure, unit: mm}
- {name: spur to petal, structure: spur, property: ratio, kind: ratio, of: [spur length, petal length]}
- {name: leaf shape, structure: leaf, property: shape, kind: nominal, states: [{name: ovate}, {name: linear}]}
- {name: aspect, structure: habitat, property: aspect, kind: angle, unit: degree}
"""
CRITERION = """\
id: long
title: Long
taxon: Exemplum album
decisive: {character: spur length, at-least: 25 mm}
supporting: [{character: spur colour, value: cream or ivory}]
"""


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        pytest.param("", "", [], id="good"),
        pytest.param("25 mm", "25 kg", ["no value of `spur length` in “25 kg”"], id="unit"),
        pytest.param(
            "at-least: 25 mm", "at-least: 25 mm, at-most: 30 mm", ["the decisive trait needs one threshold"], id="two"
        ),
        pytest.param(", at-least: 25 mm", "", ["the decisive trait needs one threshold"], id="no-threshold"),
        pytest.param("cream or ivory", "octarine", ["no value of `spur colour` in “octarine”"], id="state"),
        pytest.param("spur colour", "spur color", ["no character `spur color` in characters.yaml"], id="character"),
        pytest.param("Exemplum album", "Exemplum alba", ["no name `Exemplum alba` in the knowledge base"], id="name"),
        pytest.param("25 mm}", "25 mm, stage: zork}", ["no growth stage `zork` of `spur length`"], id="stage"),
        pytest.param("25 mm}", "'25'}", ["no value of `spur length` in “25”: the figure has no unit"], id="no-unit"),
        pytest.param("25 mm", "22–34 mm", ["`22–34 mm` is no threshold, which is one figure"], id="range"),
        pytest.param("at-least: 25 mm", "at-least: up to 25 mm", ["`up to 25 mm` is no threshold"], id="open"),
        pytest.param("at-least: 25 mm", "at-least: ca. 25 mm", ["`ca. 25 mm` is no threshold"], id="about"),
        pytest.param(
            "{character: spur length, at-least: 25 mm}",
            "{character: leaf shape, at-least: ovate}",
            ["`leaf shape` has no threshold: its states have no lower and higher"],
            id="nominal",
        ),
        pytest.param(
            "{character: spur length, at-least: 25 mm}",
            "{character: aspect, at-least: S}",
            ["`aspect` has no threshold: its directions have no lower and higher"],
            id="angle",
        ),
        pytest.param(
            "{character: spur length, at-least: 25 mm}",
            "{character: petal number, at-least: cream or ivory}",
            ["no value of `petal number`"],
            id="states-of-a-count",
        ),
        pytest.param(
            "{character: spur colour, value: cream or ivory}",
            "{character: spur length, value: 25–40 mm}",
            ["`spur length` decides, and supports itself"],
            id="supports-itself",
        ),
        pytest.param(
            "[{character: spur colour, value: cream or ivory}]",
            "[{character: spur colour, value: cream}, {character: spur colour, value: ivory}]",
            ["`spur colour` supports twice at one stage"],
            id="supports-twice",
        ),
        pytest.param(
            "{character: spur colour, value: cream or ivory}",
            "{character: spur to petal, value: 1–2}",
            ["`spur to petal` is reckoned from `spur length`, which decides"],
            id="ratio-of-it",
        ),
        pytest.param(
            "taxon: Exemplum album",
            "taxon: Exemplum nigrum",
            ["criterion `long`: no work treats Exemplum nigrum Orrin as a taxon of its own"],
            id="never-accepted",
        ),
        pytest.param(
            "supporting:",
            "otherwise: Exemplum album\nsupporting:",
            ["the criterion `long` gives every plant the same name"],
            id="one-name",
        ),
    ],
)
def test_criteria(old: str, new: str, said: list[str]) -> None:
    more = CHARACTERS + MORE_CHARACTERS
    found = problems_of(more, criterion=CRITERION.replace(old, new) if old else CRITERION)
    assert len(found) == len(said), found
    assert all(one.startswith(start) for one, start in zip(found, said, strict=True)), found


LENGTH = "name: leaf length, structure: leaf, property: length, kind: measure"
SHAPE = "name: leaf shape, structure: leaf, property: shape, kind: nominal"


@pytest.mark.parametrize(
    ("character", "said"),
    [
        pytest.param(
            "name: petal number, structure: petal, property: count, kind: count, unit: mm",
            "the count `petal number` has the unit mm",
            id="count-with-unit",
        ),
        pytest.param(f"{LENGTH}", "the measure `leaf length` has no unit", id="no-unit"),
        pytest.param(f"{LENGTH}, unit: mn", "no unit `mn`", id="unknown-unit"),
        pytest.param(
            f"{LENGTH}, unit: mm, stages: [young, young]",
            "the stages of `leaf length` are not all different words",
            id="stage-twice",
        ),
        pytest.param(f"{SHAPE}", "the nominal character `leaf shape` has fewer than two states", id="no-states"),
        pytest.param(
            f"{SHAPE}, states: [{{name: ovate}}, {{name: Ovate}}]", "the state `Ovate` stands twice", id="state-twice"
        ),
    ],
)
def test_vocabulary(character: str, said: str) -> None:
    (found,) = problems_of(characters=f"characters:\n- {{{character}}}\n")
    assert found.startswith(said)


@pytest.mark.parametrize("states", ["", ", states: [{name: ovate}]"], ids=["no-states", "one-state"])
def test_a_character_that_is_still_to_be_filled_is_a_warning(states: str) -> None:
    records = schema.Records(
        settings=read_text("title: T\n", schema.Settings, "kb.yaml"),
        characters=read_text(f"characters:\n- {{{SHAPE}{states}}}\n", schema.Characters, "characters.yaml"),
    )
    (found,) = link(records)[1]
    assert found.severity == "warning"
    assert found.remedy == "list more under `states:` as you meet them; with fewer than two it tells no plants apart"


def test_sites() -> None:
    text = "locationID,minimumElevationInMeters,maximumElevationInMeters\nA,500,100\nA,1,2\n"
    assert [one.split(" (")[0] for one in problems_of(sites=text)] == [
        "the lowest elevation 500 m of `A` is above the highest, 100 m",
        "the site `A` stands twice",
    ]
