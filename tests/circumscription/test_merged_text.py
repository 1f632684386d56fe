"""The merged description reads as the trade writes it, with a source behind every clause."""

from __future__ import annotations

import re

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
        "Plant 15–34(–40) cm high [1, 2]. "
        "Leaf teeth 4–8 [1]. "
        "Leaf glabrous or villous [1, 2], with glabrous [1] against villous [2]; (25–)30–58 mm long [1, 2]. "
        "Bracteoles absent [1]. "
        "Found at 150–480 m [1, 2]; facing SE [1]."
    )


def test_every_mark_leads_to_a_source_and_every_source_is_marked() -> None:
    corpus, _ = corpus_of(FIRST, SECOND, characters=CHARACTERS)
    found = diagnosis(corpus, "exemplum-album")
    marked = {int(number) for mark in re.findall(r"\[([\d, –]+)\]", found.text) for number in re.findall(r"\d+", mark)}
    assert marked == set(range(1, len(found.sources) + 1))


def test_nobody_says_anything() -> None:
    corpus, _ = corpus_of(work(1900, "Orrin", {}, "acts:\n- {name: Exemplum album, act: new taxon}\n"))
    found = diagnosis(corpus, "exemplum-album")
    assert (found.text, found.sources, found.works) == ("", (), ("w-1900",))
