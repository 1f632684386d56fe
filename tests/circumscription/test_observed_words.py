"""The sentences about measured plants, whole."""

from __future__ import annotations

from dataclasses import replace

import pytest

from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.observed import observed
from auctorum.circumscription.observed_words import sentences
from auctorum.circumscription.plants import plants
from auctorum.corpus.model import Corpus
from auctorum.records import schema
from building import read_text
from measuring import knowledge_base, with_plants, work

ALBUM = "exemplum-album"
WORKS = (
    work("Orrin", 1889, "spur length: spur 22-34.9 mm", "petal number: petals 5", "bracteoles: bracteoles absent"),
    work("Tolhurne", 1896, "spur length: spur ⅞–1⅜ in.", "spur colour: spur at maturity ivory, rarely cream"),
    work("Vane", 1911, "spur length: spur 20-52 mm", "aspect: facing N to E"),
    work("Maddrick", 1923, "spur length: spur (17-)22-48(-52) mm", "petal number: petals 4-6"),
)
CORPUS = knowledge_base(*WORKS)
CRITERION = """\
id: long
taxon: Exemplum album
title: Long from 25 mm
otherwise: Exemplum nigrum
decisive: {character: spur length, stage: mature, at-least: 25 mm}
supporting: [{character: petal number, value: "5"}]
"""
TWENTY = [17, 22, 22, 25, 26, 28, 29, 30, 31, 36, 37, 38, 38, 40, 41, 42, 43, 44, 48, 52]


def said(column: str, cells, stage: str = "", corpus: Corpus = CORPUS, by: str = "", site: str = "S{}") -> list[str]:
    """The sentences on one mature plant for each cell, on four sites by turns."""
    rows = (f'R{n},{site.format(n % 4)},Exemplum album,{by},mature,"{cell}"\n' for n, cell in enumerate(cells))
    head = f"occurrenceID,locationID,scientificName,identifiedBy,lifeStage,{column}\n"
    measured = with_plants(corpus, head + "".join(rows))
    character = column.partition(" [")[0]
    finding = next(
        one for one in diagnosis(measured, ALBUM).findings if (one.character, one.stage) == (character, stage)
    )
    found = observed(measured, finding, ALBUM, plants(measured))
    assert found is not None
    return list(sentences(measured, finding, found))


def test_twenty_plants() -> None:
    """By hand: from 22 to 34.9 mm lie 8, up to 31 mm. 1⅜ in., to the eighth of an inch, may be 36.51 mm, and 37 mm may
    be 36.5 mm, so that these are two more. The intervals of 8 and 10 of 20 are 19.1–63.9 and 27.2–72.8 % (from memory).
    """
    assert said("spur length [mm]", TWENTY, "mature") == [
        "20 plants of 4 sites: (17–)22–44(–52) mm.",
        "Orrin 1889 (22–34.9 mm) covers 8 of 20 plants (19–64 %); 1 is shorter and 11 are longer: contradicted.",
        "Tolhurne 1896 (⅞–1⅜ in., 22–35 mm) covers 10 of 20 plants (27–73 %); "
        "1 is shorter and 9 are longer: contradicted.",
        "The other 2 works cover 95 to 100 % of them.",
    ]


def test_a_single_measurement_is_no_range_to_fall_out_of() -> None:
    corpus = knowledge_base(work("Orrin", 1889, "spur length: spur ca. 30 mm"))
    *_, lie_around = said("spur length [mm]", TWENTY, "mature", corpus)
    assert lie_around.startswith("Orrin 1889 covers ") and "contradicted" not in lie_around
    assert any("contradicted" in one for one in said("spur length [mm]", [40, 42, 44, 45] * 5, "mature", corpus))


@pytest.mark.parametrize(
    ("column", "cells", "stage", "lines"),
    [
        pytest.param(
            "petal number",
            [5, 5, 6, 7, 8, 8, 8, 9, 9, 9, 3],
            "",
            [
                "11 plants of 4 sites: (3–)5–9.",
                "Orrin 1889 (5) covers 2 of 11 plants (2–52 %); 1 has fewer and 8 have more: contradicted.",
                "Maddrick 1923 (4–6) covers 3 of 11 plants (6–61 %); 1 has fewer and 7 have more: contradicted.",
                "No other work states it.",
            ],
            id="count",
        ),
        pytest.param(
            "bracteoles",
            ["present", "absent", "absent"],
            "",
            [
                "3 plants of 3 sites: present or absent (present in 1, absent in 2). The plants are few.",
                "Orrin 1889 covers 2 of the 3.",
            ],
            id="few",
        ),
        pytest.param(
            "spur colour",
            ["cream"] * 14 + ["ivory"] * 2,
            "mature",
            [
                "16 plants of 4 sites: cream; occasionally ivory (cream in 14, ivory in 2).",
                "Tolhurne 1896 (ivory; rarely cream) makes cream an exception, "
                "but 14 of 16 plants show it (62–98 %): contradicted.",
                "No other work states it.",
            ],
            id="rare",
        ),
        pytest.param(
            "spur colour",
            ["green"] * 5,
            "mature",
            [
                "5 plants of 4 sites: green. The plants are few.",
                "Tolhurne 1896 (ivory; rarely cream) covers 0 of 5 plants (0–52 %); 5 show other states: contradicted.",
                "No other work states it.",
            ],
            id="other states",
        ),
        pytest.param(
            "aspect [degree]",
            [180, 200, 210, 190],
            "",
            [
                "4 plants of 4 sites: 180° to 210°. The plants are few: only the lowest and the highest value are "
                "given.",
                "Vane 1911 (N to E) covers 0 of 4 plants (0–60 %); 4 face elsewhere: contradicted.",
                "No other work states it.",
            ],
            id="aspect",
        ),
        pytest.param(
            "spur length [mm]",
            [19],
            "mature",
            ["1 plant of 1 site: 19 mm. One plant tells nothing of how they vary.", "1 of the 4 works covers it."],
            id="one plant",
        ),
        pytest.param(
            "spur length [mm]",
            [99],
            "mature",
            ["1 plant of 1 site: 99 mm. One plant tells nothing of how they vary.", "None of the 4 works covers it."],
            id="one giant",
        ),
        pytest.param(
            "spur length [mm]",
            [34, 36],
            "mature",
            [
                "2 plants of 2 sites: 34–36 mm. The plants are few: only the lowest and the highest value are given.",
                "The 4 works cover 1 to 2 of the 2.",
            ],
            id="two plants contradict nobody",
        ),
    ],
)
def test_sentences(column, cells, stage, lines) -> None:
    assert said(column, cells, stage) == lines


def test_what_nobody_states() -> None:
    silent = knowledge_base(work("Orrin", 1889, "petal number: petals 5"))
    assert said("bracteoles", ["absent"] * 12, corpus=silent) == ["12 plants of 4 sites: absent.", "No work states it."]


def test_sites_that_nobody_noted_are_not_counted() -> None:
    assert said("petal number", [5] * 12, site="")[0] == "12 plants: 5."


@pytest.mark.parametrize(
    ("column", "stage", "by", "last"),
    [
        pytest.param("petal number", "", "", ["The 2 works cover all of them."], id="nobody named them"),
        pytest.param(
            "petal number",
            "",
            "M. Sallow",
            [
                "Plants as named by M. Sallow.",
                "Plants named by the working criterion “Long from 25 mm” cannot test that criterion.",
            ],
            id="a supporting trait",
        ),
        pytest.param("bracteoles", "", "X. Y.", ["Plants as named by X. Y."], id="a name that ends in a point"),
        pytest.param("bracteoles", "", "A | C | B", ["Plants as named by A, B and C."], id="no trait of the criterion"),
    ],
)
def test_who_named_the_plants(column, stage, by, last) -> None:
    corpus = replace(CORPUS, criteria=(read_text(CRITERION, schema.Criterion, "long.yaml"),))
    cells = ["absent"] * 12 if column == "bracteoles" else [5] * 12
    assert said(column, cells, stage, corpus=corpus, by=by)[-len(last) :] == last
