"""Drafts: statements of a description in the words of a vocabulary, with what is taken for granted."""

from __future__ import annotations

import pytest

from auctorum.characters.prose.draft import Draft, Transcript, one_line, transcribe
from auctorum.characters.prose.found import Doubt
from auctorum.characters.values import Share, States
from auctorum.characters.vocabulary import Character, Kind, State, Vocabulary

HAIRS = (State("glabrous", ("glaber",)), State("sparsely hairy", ("thinly hairy",)), State("villous"))
COLOURS = (State("green", ("viridis",), "5GY 6/6"), State("ivory", (), "2.5Y 9/2"))
VOCABULARY = Vocabulary(
    (
        Character("spur length", "spur", "length", Kind.MEASURE, "mm", words=("calcar", "grobble")),
        Character("spur to petal", "spur", "ratio", Kind.RATIO),
        Character("spur colour", "spur", "colour", Kind.ORDERED, states=COLOURS),
        Character("leaf hairiness", "leaf", "surface", Kind.ORDERED, states=HAIRS),
        Character("leaf tooth number", "leaf tooth", "count", Kind.COUNT),
        Character("bracteoles", "bracteole", "presence", Kind.PRESENCE),
        Character("elevation", "habitat", "elevation", Kind.MEASURE, "m"),
        Character("substrate", "habitat", "substrate", Kind.NOMINAL, states=(State("slate"), State("quorite"))),
    )
)


def shown(draft: Draft) -> str:
    stages = "/".join(reading.stage for reading in draft.choice.readings if reading.stage)
    new = "" if draft.choice.known else " (new)"
    return f"{draft.choice.character.name}{new}: {draft.choice.value}{f' [{stages}]' if stages else ''}"


def read(text: str) -> Transcript:
    return transcribe(text, VOCABULARY)


@pytest.mark.parametrize(
    ("text", "drafts"),
    [
        pytest.param("Spur 22–34(–41) mm long.", ["spur length: 22–34(–41) mm"], id="measure"),
        pytest.param("Calcar 10 lin. longum.", ["spur length: 10 lines"], id="latin"),
        pytest.param("Grobble 3 mm.", ["spur length: 3 mm"], id="a-word-of-the-vocabulary"),
        pytest.param("Spur twice as long as the petals.", ["spur to petal: 2"], id="ratio"),
        pytest.param(
            "Spur green when young, ivory at maturity.",
            ["spur colour: green [young]", "spur colour: ivory [mature]"],
            id="stages",
        ),
        pytest.param("Spur 2.5Y 9/2.", ["spur colour: ivory"], id="munsell"),
        pytest.param("Leaves thinly hairy.", ["leaf hairiness: sparsely hairy"], id="states-of-two-words"),
        pytest.param("Leaves with 4–6 (usually 5) teeth.", ["leaf tooth number: 4–6 (usually 5)"], id="usual-part"),
        pytest.param(
            "Spur mostly 7–15 mm but occasionally to 30 mm long.", ["spur length: 7–15(–30) mm"], id="now-and-then"
        ),
        pytest.param("Bracteoles absent.", ["bracteoles: absent"], id="absent"),
        pytest.param("Slate cliffs, 150–450 m.", ["substrate: slate", "elevation: 150–450 m"], id="habitat"),
        pytest.param("Quorite scree.", ["substrate: quorite"], id="a-rock-of-the-vocabulary"),
        pytest.param("Sepals 5.", ["sepal number (new): 5"], id="new-count"),
        pytest.param("Petals white.", ["petal colour (new): white"], id="new-states"),
    ],
)
def test_drafts(text: str, drafts: list[str]) -> None:
    assert [shown(draft) for draft in read(text).drafts] == drafts


def test_words_are_exact_and_what_was_not_understood_is_listed() -> None:
    text = "Spurs stout (18–24 mm); the floom wambly. 2n = 26."
    transcript = read(text)
    assert [transcript.words(draft) for draft in transcript.drafts] == ["Spurs stout", "18–24 mm"]
    assert [(transcript.words(left), bool(left.why)) for left in transcript.left] == [
        ("floom wambly", False),
        ("2n = 26", True),
    ]


@pytest.mark.parametrize(
    ("text", "doubts"),
    [
        pytest.param("Spur 3–5 mm long.", set(), id="none"),
        pytest.param("Spur 3–5 mm.", {Doubt.BARE_FIGURE}, id="bare-figure"),
        pytest.param("Leaves brownish; glabrous.", {Doubt.CARRIED}, id="carried"),
        pytest.param("Quoobs 3–5 mm long.", {Doubt.STRANGE_ORGAN}, id="strange-organ"),
        pytest.param("Leaves glabrous beneath.", {Doubt.NEAR_CHARACTER}, id="near"),
        pytest.param("Leaves farinose.", {Doubt.UNKNOWN_STATE}, id="unknown-state"),
    ],
)
def test_what_is_taken_for_granted(text: str, doubts: set[Doubt]) -> None:
    draft = read(text).drafts[-1]
    assert set(draft.doubts) == doubts
    assert (draft.confidence >= 0.9) == (doubts <= {Doubt.BARE_FIGURE})


def test_value_and_stage_stand_beside_words_that_do_not_suffice() -> None:
    whole, later = read("Spur green when young; spurs grobbly, at maturity ivory.").drafts[:2]
    assert (whole.value, whole.stage) == ("", "")
    assert later.choice.value == "ivory"


def test_a_text_without_words_has_no_drafts() -> None:
    assert read("") == Transcript("", (), ())


SHAPE = Character("leaf shape", "leaf", "shape", Kind.NOMINAL, states=(State("ovate"),))
SPECTRUM = Character("leaf outline", "leaf", "shape", Kind.ORDERED, states=(State("linear"), State("oblong")))


@pytest.mark.parametrize(
    ("text", "characters", "choices"),
    [
        pytest.param(
            "Leaves rhombic.",
            (SHAPE,),
            [("leaf shape", ("rhombic",), "rhombic")],
            id="no-second-character-of-the-name",
        ),
        pytest.param(
            "Leaves ovate or rhombic.",
            (SHAPE,),
            [("leaf shape", ("rhombic",), "ovate or rhombic"), ("leaf shape", (), "ovate")],
            id="one-of-two-is-known",
        ),
        pytest.param(
            "Leaves rhombic.",
            (SPECTRUM,),
            [("leaf outline", ("rhombic",), "rhombic"), ("leaf shape", (), "rhombic")],
            id="or-a-new-character",
        ),
        pytest.param(
            "Leaves rhombic.", (SPECTRUM, SHAPE), [("leaf shape", ("rhombic",), "rhombic")], id="without-order-first"
        ),
        pytest.param("Petals rhombic.", (SHAPE,), [("petal shape", (), "rhombic")], id="another-organ"),
        pytest.param("Leaves 5.", (Character("leaf number", "leaf", "count", Kind.MEASURE, "mm"),),
                     [("leaf number, other", (), "5")], id="a-name-that-is-taken"),
    ],
)  # fmt: skip
def test_states_are_proposed_for_the_character_that_lacks_them(
    text: str, characters: tuple[Character, ...], choices: list[tuple[str, tuple[str, ...], str]]
) -> None:
    (draft,) = transcribe(text, Vocabulary(characters)).drafts
    found = (draft.choice, *draft.others)
    assert [(one.character.name, one.new_states, one.value) for one in found] == choices
    for one in found:
        assert not one.new_states or (not one.known and one.character.states[-1].name == one.new_states[-1])


def test_a_colour_in_notation_is_a_state_with_its_reference() -> None:
    spur = Character("spur colour", "spur", "colour", Kind.NOMINAL, states=(State("green", colour="5GY 6/6"),))
    (draft,) = transcribe("Spur 7.5R 4/14.", Vocabulary((spur,))).drafts
    assert draft.choice.character.states[-1] == State("7.5R 4/14", colour="7.5R 4/14")
    assert [reading.value for reading in draft.choice.readings] == [States((Share("7.5R 4/14"),))]


def test_words_broken_at_a_line_end_need_no_value() -> None:
    text = "Spur ivo-\nry; leaves sparsely\n hairy."
    drafts = read(text).drafts
    assert [(one_line(text[one.start : one.end]), one.value) for one in drafts] == [
        ("Spur ivory", ""),
        ("leaves sparsely hairy", ""),
    ]
    assert one_line("5-\n7 mm, Maddrick-\nOrrin, well-\nknown") == "5- 7 mm, Maddrick- Orrin, wellknown"


def test_a_new_character_is_split_by_growth_and_by_nothing_else() -> None:
    found = {one.choice.character.name: one.choice.character.stages for one in read(
        "Bracts green when young. Sepals 3 mm long in fruit. Anthers 2 mm long."
    ).drafts}  # fmt: skip
    assert found == {"bract colour": ("young", "mature"), "sepal length": (), "anther length": ()}
