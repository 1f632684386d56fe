"""The merged description reads as the trade writes it, with a source behind every clause."""

from __future__ import annotations

import re

import pytest

from auctorum.circumscription.diagnosis import diagnosis
from building import corpus_of

CHARACTERS = """\
characters:
- {name: plant height, structure: plant, property: height, kind: measure, unit: mm}
- {name: leaf tooth number, structure: leaf tooth, property: count, kind: count, words: [teeth]}
- name: leaf surface
  structure: leaf
  property: surface
  kind: ordered
  states: [{name: glabrous}, {name: pubescent}, {name: villous}]
- {name: leaf length, structure: leaf, property: length, kind: measure, unit: mm}
- {name: bracteoles, structure: bracteole, property: presence, kind: presence}
- {name: elevation, structure: habitat, property: elevation, kind: measure, unit: m}
- {name: aspect, structure: habitat, property: aspect, kind: angle, unit: degree}
"""


def work(year: int, family: str, traits: dict[str, str], acts: str = "") -> str:
    rows = "".join(f'\n  - {{character: {name}, verbatim: "{words}"}}' for name, words in traits.items())
    return (
        f'work: {{id: w-{year}, type: book, author: [{{family: {family}}}], issued: "{year}", title: T}}\n{acts}'
        f"treatments:\n- taxon: Exemplum album\n  traits: {rows}\n"
    )


FIRST = work(
    1900,
    "Orrin",
    {
        "plant height": "15–34 cm high",
        "leaf tooth number": "teeth 4–8",
        "leaf surface": "leaves glabrous",
        "leaf length": "leaves 30–58 mm long",
        "bracteoles": "bracteoles absent",
        "elevation": "150–420 m",
        "aspect": "facing SE",
    },
    "acts:\n- {name: Exemplum album, act: new taxon}\n",
)
SECOND = work(
    1950,
    "Vane",
    {
        "plant height": "plants 15–34(–40) cm high",
        "leaf surface": "leaves villous",
        "leaf length": "leaves (25–)30–58 mm",
        "elevation": "150–480 m",
    },
)


def test_text() -> None:
    corpus, problems = corpus_of(FIRST, SECOND, characters=CHARACTERS)
    assert problems == []
    found = diagnosis(corpus, "exemplum-album")
    assert found.text == (
        "Plant 15–34(–40) cm high [1,2]. "
        "Leaf teeth 4–8 [1]. "
        "Leaf glabrous [1] or villous [2], (25–)30–58 mm long [1,2]. "
        "Bracteoles absent [1]. "
        "At elevations of 150–480 m [1,2], facing south-east [1]."
    )


def test_a_repetition_stands_with_the_side_that_it_repeats() -> None:
    works = [work(1900, "Orrin", {"leaf length": "10–20 mm"}), work(1910, "Vane", {"leaf length": "1–2 cm"}),
             work(1920, "Pell", {"leaf length": "25–30 mm"})]  # fmt: skip
    works[1] = works[1].replace("  traits:", "  follows: [w-1900]\n  traits:")
    corpus, _ = corpus_of(*works, characters=CHARACTERS)
    assert diagnosis(corpus, "exemplum-album").text == "Leaf 10–20 mm long [1,2] or 25–30 mm long [3]."


def test_every_mark_leads_to_a_source_and_every_source_is_marked() -> None:
    corpus, _ = corpus_of(FIRST, SECOND, characters=CHARACTERS)
    found = diagnosis(corpus, "exemplum-album")
    marked = {int(number) for mark in re.findall(r"\[([\d,–]+)\]", found.text) for number in re.findall(r"\d+", mark)}
    assert marked == set(range(1, len(found.sources) + 1))


def test_nobody_says_anything() -> None:
    corpus, _ = corpus_of(work(1900, "Orrin", {}, "acts:\n- {name: Exemplum album, act: new taxon}\n"))
    found = diagnosis(corpus, "exemplum-album")
    assert (found.text, found.sources, found.works) == ("", (), ("w-1900",))


def described(*accounts: dict[str, str], characters: str) -> str:
    """The merged text of one account a work, fifty years apart."""
    acts = "acts:\n- {name: Exemplum album, act: new taxon}\n"
    families = ("Orrin", "Vane", "Tolhurne", "Maddrick", "Brandow", "Quessel")
    texts = [
        work(1750 + 50 * number, families[number], traits, "" if number else acts)
        for number, traits in enumerate(accounts)
    ]
    corpus, problems = corpus_of(*texts, characters=characters)
    assert problems == []
    return diagnosis(corpus, "exemplum-album").text


SPUR = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm, stages: [young, mature]}
- name: spur colour
  structure: spur
  property: colour
  kind: ordered
  stages: [young, mature]
  states: [{name: green}, {name: cream}, {name: ivory}, {name: buff}]
- {name: spur to petal, structure: spur, property: ratio, kind: ratio}
- {name: bracteoles, structure: bracteole, property: presence, kind: presence}
"""


@pytest.mark.parametrize(
    ("character", "words", "text"),
    [
        pytest.param("spur length", ["spur 22–34 mm"], "Spur 22–34 mm long [1].", id="one-work"),
        pytest.param("spur length", ["spur 8–13+ mm"], "Spur 8–13+ mm long [1].", id="as-stated-with-its-signs"),
        pytest.param("spur length", ["spur 1–2 in. long"], "Spur 25–50 mm long [1].", id="inches"),
        pytest.param(
            "spur length", ["6½–8 lines", "14–17 mm"], "Spur 14–17 mm long [1,2].", id="half-lines-no-extreme"
        ),
        pytest.param("spur length", ["1¼–2½ in."], "Spur 32–64 mm long [1].", id="quarters-of-inches"),
        pytest.param("spur length", ["spur 6–12 in. long"], "Spur 15–30 cm long [1].", id="many-inches"),
        pytest.param("spur length", ["2–3 cm", "2–3 cm", "20–31 mm"], "Spur 2–3(–3.1) cm long [1–3].", id="usual-unit"),
        pytest.param("spur length", ["to 5 mm", "up to 7 mm"], "Spur up to 7 mm long [1,2].", id="open-below"),
        pytest.param(
            "spur length",
            ["22–34 mm", "(18–)22–34(–41) mm", "23–33 mm", "22–60 mm"],
            "Spur (18–)22–34(–41) mm long [1–4], said to reach 60 mm [4].",
            id="far-out-and-alone",
        ),
        pytest.param(
            "spur length",
            ["22–34 mm", "24–36 mm", "23–35 mm", "22–34 mm", "50–60 mm"],
            "Spur (22–)23–34(–36) mm long [1–4], but 50–60 mm [5].",
            id="apart-from-the-rest",
        ),
        pytest.param(
            "spur length", ["22–34 mm", "50–60 mm"], "Spur 22–34 mm long [1] or 50–60 mm long [2].", id="two-sides"
        ),
        pytest.param(
            "spur length",
            ["when young 9–12 mm, at maturity 22–34 mm", "22–36 mm"],
            "Spur when young 9–12 mm long [1], at maturity 22–36 mm long [1,2].",
            id="stages",
        ),
        pytest.param(
            "spur colour",
            ["ivory", "cream or ivory", "ivory, rarely buff", "green"],
            "Spur ivory [1–3], also cream [2], rarely buff [3], but green [4].",
            id="states",
        ),
        pytest.param(
            "spur colour", ["green", "cream", "buff"], "Spur green [1], cream [2] or buff [3].", id="every-one-another"
        ),
        pytest.param(
            "spur colour",
            ["green", "green, rarely buff", "buff"],
            "Spur green [1,2], also buff [2,3].",
            id="what-one-adds-and-another-says-alone",
        ),
        pytest.param("spur colour", ["green to ivory", "cream"], "Spur green to ivory [1,2].", id="along-the-spectrum"),
        pytest.param("spur to petal", ["1.5–2 times", "1.4–2 times"], "Spur to petal ratio 1.4–2 [1,2].", id="ratio"),
        pytest.param(
            "bracteoles",
            ["bracteoles absent", "bracteoles absent", "bracteoles absent, sometimes present"],
            "Bracteoles absent [1–3], at times present [3].",
            id="presence",
        ),
    ],
)
def test_one_character(character: str, words: list[str], text: str) -> None:
    assert described(*({character: said} for said in words), characters=SPUR) == text


PARTS = """\
characters:
- {name: leaf length, structure: leaf, property: length, kind: measure, unit: mm}
- name: leaf apex
  structure: leaf apex
  property: shape
  kind: nominal
  states: [{name: acute}, {name: obtuse}]
- {name: leaf width, structure: leaf, property: width, kind: measure, unit: mm}
- {name: stamen number, structure: stamen, property: count, kind: count}
- {name: stamen length, structure: stamen, property: length, kind: measure, unit: mm}
- {name: leaf tooth number, structure: leaf tooth, property: count, kind: count, words: [teeth]}
- {name: elevation, structure: habitat, property: elevation, kind: measure, unit: m}
- {name: substrate, structure: habitat, property: substrate, kind: nominal, states: [{name: basalt}, {name: tuff}]}
"""


def test_parts_of_a_structure_follow_it_in_one_sentence_and_what_is_counted_is_several() -> None:
    account = {
        "leaf length": "leaves 30–58 mm long",
        "leaf apex": "leaf apex acute",
        "leaf width": "leaves 10–20 mm wide",
        "stamen number": "stamens 5",
        "stamen length": "stamens 4–6 mm long",
        "leaf tooth number": "teeth 4–8",
        "elevation": "150–420 m",
        "substrate": "on basalt",
    }
    assert described(account, characters=PARTS) == (
        "Leaf 30–58 mm long [1], 10–20 mm wide [1]; apex acute [1]; teeth 4–8 [1]. "
        "Stamens 5 [1], 4–6 mm long [1]. "
        "At elevations of 150–420 m [1], on basalt [1]."
    )
