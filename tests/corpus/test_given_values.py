"""The value given beside the words of a statement, where the words say otherwise."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.read import read_statement
from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.corpus.given_values import says_the_same
from building import corpus_of

VOCABULARY = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm, stages: [young, mature]}
- {name: petal number, structure: petal, property: count, kind: count}
- {name: aspect, structure: habitat, property: aspect, kind: angle, unit: degree}
- {name: bracteoles, structure: bracteole, property: presence, kind: presence}
- name: spur colour
  structure: spur
  property: colour
  kind: ordered
  stages: [young, mature]
  states: [{name: green}, {name: cream}, {name: ivory}]
"""
WORK = """\
work: {id: orrin-1881, type: book, author: [{family: Orrin}], issued: "1881", title: Flora}
acts:
- {name: Exemplum, act: new taxon}
- {name: Exemplum album, act: new taxon}
treatments:
- taxon: Exemplum album
  traits:
"""


def problems(trait: str) -> list[str]:
    return corpus_of(f"{WORK}  - {{{trait}}}\n", characters=VOCABULARY)[1]


REMEDY = "(correct the value, or take it out where the words are read rightly)"


@pytest.mark.parametrize(
    ("trait", "words", "read", "gives"),
    [
        pytest.param(
            'character: spur length, verbatim: "spur 22–34 mm long", value: 22–43 mm',
            "spur 22–34 mm long", "22–34 mm", "22–43 mm", id="a slip of the pen",
        ),
        pytest.param(
            'character: spur length, verbatim: "spur 22–34 mm", value: 22–34 cm',
            "spur 22–34 mm", "22–34 mm", "22–34 cm", id="unit",
        ),
        pytest.param(
            'character: spur length, verbatim: "spur 22–34(–41) mm", value: 22–34 mm',
            "spur 22–34(–41) mm", "22–34(–41) mm", "22–34 mm", id="extreme left out",
        ),
        pytest.param(
            'character: spur length, verbatim: "spur 9 mm when young", value: 9 mm',
            "spur 9 mm when young", "9 mm (young)", "9 mm (mature)", id="stage",
        ),
        pytest.param(
            'character: petal number, verbatim: "petals 5–8", value: 5–8+',
            "petals 5–8", "5–8", "5–8+", id="open end",
        ),
        pytest.param(
            'character: spur colour, verbatim: "spur green when young, ivory in age", value: "green; rarely ivory", '
            "stage: mature",
            "spur green when young, ivory in age", "green (young); ivory (mature)", "green; rarely ivory (mature)",
            id="states",
        ),
        pytest.param(
            'character: aspect, verbatim: "cliffs facing south", value: N',
            "cliffs facing south", "S", "N", id="aspect",
        ),
        pytest.param(
            'character: bracteoles, verbatim: "bracteoles absent", value: present',
            "bracteoles absent", "absent", "present", id="presence",
        ),
    ],
)  # fmt: skip
def test_words_and_value_disagree(trait: str, words: str, read: str, gives: str) -> None:
    (found,) = problems(trait)
    column = len("  - {") + trait.index("value: ") + 1
    assert found == (
        f"orrin-1881.yaml:8:{column}: warning: the words “{words}” read as {read}, but value gives {gives} {REMEDY}"
    )


@pytest.mark.parametrize(
    "trait",
    [
        'character: spur length, verbatim: "spur 22–34 mm long", value: 22–34 mm',
        'character: spur length, verbatim: "spur 22–34 mm long", value: 2.2–3.4 cm',
        'character: spur length, verbatim: "spur 4 in. long", value: 10 cm',
        'character: spur length, verbatim: "spur ca. 22 mm long", value: 22 mm',
        'character: spur length, verbatim: "spur 9 mm when young", value: 9 mm, stage: young',
        'character: spur length, verbatim: "spur 9 mm", value: 9 mm, stage: young',
        'character: spur length, verbatim: "spur 9 mm when young, 22–34 mm in fruit", value: 9 mm, stage: young',
        'character: spur length, verbatim: "spur rather long", value: 22–34 mm',
        'character: spur length, verbatim: "spur longer than the petals", value: 22–34 mm',
        'character: spur length, verbatim: "spur 34–22 mm", value: 22–34 mm',
        'character: spur colour, verbatim: "spur green when young, ivory in age", value: ivory, stage: mature',
        'character: spur colour, verbatim: "spur green, rarely ivory", value: "green; rarely ivory"',
        'character: spur colour, verbatim: "spur like a lettuce", value: green',
        'character: aspect, verbatim: "cliffs facing north-west to north-east", value: 315–45°',
        'character: petal number, verbatim: "petals 5–8", value: 5–8',
        'character: spur length, value: 22–34 mm',
        'character: spur length, verbatim: "spur 22–34 mm long"',
    ],
)  # fmt: skip
def test_words_and_value_agree_or_the_words_cannot_be_read(trait: str) -> None:
    assert problems(trait) == []


def test_a_value_that_cannot_be_read_is_one_problem() -> None:
    (found,) = problems('character: spur length, verbatim: "spur 22–34 mm", value: long')
    assert "no value of `spur length` in “long”" in found


def test_long_words_are_cut() -> None:
    (found,) = problems(f'character: spur length, verbatim: "spur {"hairy " * 30} 22 mm", value: 43 mm')
    assert len(found) < 300 and "…”" in found


def test_paris_lines_of_the_work_count_for_the_words() -> None:
    trait = 'character: spur length, verbatim: "spur 100 lines", value: VALUE mm'
    paris = WORK.replace("acts:", "conventions: {line: paris}\nacts:")
    for value, many in (("225.6", 0), ("211.7", 1)):
        said = f"{paris}  - {{{trait.replace('VALUE', value)}}}\n"
        assert len(corpus_of(said, characters=VOCABULARY)[1]) == many


LENGTH = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
COLOUR = Character(
    "spur colour", "spur", "colour", Kind.ORDERED, states=tuple(State(name) for name in ("green", "cream", "ivory"))
)
lengths = st.tuples(
    st.integers(1, 40), st.integers(0, 20), st.integers(0, 9), st.sampled_from(["mm", "cm", "in."])
).map(lambda parts: f"{parts[0]}–{parts[0] + parts[1] + 1}(–{parts[0] + parts[1] + 2 + parts[2]}) {parts[3]}")
colours = st.sampled_from(["green", "green or ivory", "green to ivory", "green; rarely cream", "not green", "ivory"])


@given(lengths, lengths)
@settings(max_examples=150, deadline=None)
def test_ranges_agree_with_themselves_in_any_order(one: str, other: str) -> None:
    (first,), (second,) = read_statement(one, LENGTH), read_statement(other, LENGTH)
    assert says_the_same(first.value, first.value, LENGTH)
    assert says_the_same(first.value, second.value, LENGTH) == says_the_same(second.value, first.value, LENGTH)


@given(colours, colours)
@settings(max_examples=50, deadline=None)
def test_states_agree_only_with_their_like(one: str, other: str) -> None:
    (first,), (second,) = read_statement(one, COLOUR), read_statement(other, COLOUR)
    assert says_the_same(first.value, second.value, COLOUR) == (one == other)
    assert not says_the_same(first.value, read_statement("5 mm", LENGTH)[0].value, COLOUR)
