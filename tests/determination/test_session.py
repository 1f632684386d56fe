"""Asking after one plant: answers stand until they are undone, and undoing brings back what was before."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.plants import Observation, Plant
from auctorum.determination.telling.reckoned import pooled, to_ask, with_ratios
from auctorum.determination.telling.session import Session, answered, not_known, not_to_ask, plant_of, undone

SPUR = Character("spur length", "spur", "length", Kind.MEASURE, "mm", stages=("young", "mature"))
PETAL = Character("petal length", "petal", "length", Kind.MEASURE, "cm")
RATIO = Character("spur to petal", "spur", "ratio", Kind.RATIO, of=("spur length", "petal length"))
COLOUR = Character("spur colour", "spur", "colour", Kind.NOMINAL)
ASPECT = Character("aspect", "habitat", "aspect", Kind.ANGLE, "degree")
VOCABULARY = Vocabulary((SPUR, PETAL, RATIO, COLOUR, ASPECT))
NOBODY = Plant("x", None, None, None, "", ())


def length(name: str, value: int | str, stage: str = "") -> Observation:
    return Observation(name, stage, Fraction(value), (), Fraction(1, 2), 1)


def colour(*states: str) -> Observation:
    weights = tuple((state, Fraction(1, len(states))) for state in states)
    return Observation("spur colour", "", None, weights, Fraction(0), 1)


STEPS = st.one_of(
    st.integers(1, 60).map(lambda value: lambda one: answered(one, length("spur length", value, "mature"))),
    st.integers(1, 60).map(lambda value: lambda one: answered(one, length("petal length", value))),
    st.sampled_from(["green", "ivory"]).map(lambda state: lambda one: answered(one, colour(state))),
    st.sampled_from(list(VOCABULARY)).map(lambda name: lambda one: not_known(one, name)),
    st.just(undone),
)


@given(st.lists(STEPS, max_size=8), STEPS.filter(lambda step: step is not undone))
@settings(deadline=None, max_examples=200)
def test_an_answer_undone_leaves_what_was_before(steps, last) -> None:
    session = Session(NOBODY)
    for step in steps:
        session = step(session)
    after = last(session)
    assert undone(after) == session
    assert plant_of(undone(after), VOCABULARY) == plant_of(session, VOCABULARY)


def test_nothing_to_undo() -> None:
    assert undone(Session(NOBODY)) == Session(NOBODY)


def test_the_last_answer_counts_and_what_was_given_before_stands() -> None:
    given_ = Plant("x", None, None, None, "", (length("spur length", 20, "mature"), colour("green")))
    session = answered(answered(Session(given_), length("spur length", 31, "mature")), colour("ivory"))
    seen = {one.character: one for one in plant_of(session, VOCABULARY).observations}
    assert seen["spur length"].value == 31 and seen["spur colour"].states == (("ivory", 1),)
    assert plant_of(undone(undone(session)), VOCABULARY).observations == given_.observations


def test_what_is_not_known_is_not_asked_again() -> None:
    session = not_known(Session(NOBODY), "aspect")
    assert not_to_ask(session, VOCABULARY) == {"aspect"}
    assert not_to_ask(undone(session), VOCABULARY) == frozenset()
    assert plant_of(session, VOCABULARY) == NOBODY


def test_a_ratio_follows_from_its_measures() -> None:
    """45 mm and 1.5 cm are 3 to 1; the error is that of both: 0.5 in 45 and 0.5 in 1.5."""
    several = with_ratios(VOCABULARY, (length("spur length", 45, "mature"), length("petal length", "3/2")))
    assert several[-1].character == "spur to petal" and several[-1].value == 3
    assert several[-1].slack == 3 * (Fraction(1, 90) + Fraction(1, 3))
    assert to_ask(VOCABULARY, several[:1]) == {"spur to petal"} and to_ask(VOCABULARY, ()) == frozenset()


def test_no_ratio_of_young_parts_nor_over_one_that_was_observed() -> None:
    young = (length("spur length", 45, "young"), length("petal length", 2))
    assert with_ratios(VOCABULARY, young) == young
    own = (length("spur length", 45, "mature"), length("petal length", 2), length("spur to petal", 9))
    assert with_ratios(VOCABULARY, own) == own
    assert with_ratios(VOCABULARY, (length("spur length", 4, "mature"), length("petal length", 0)))[2:] == ()


def test_several_measurements_of_one_plant_are_averaged() -> None:
    several = (
        length("spur length", 30, "mature"),
        colour("green"),
        length("spur length", 33, "mature"),
        colour("ivory"),
    )
    spur, shade = pooled(VOCABULARY, several)
    assert (spur.value, spur.rows, spur.slack) == (Fraction(63, 2), 2, Fraction(1, 2))
    assert dict(shade.states) == {"green": Fraction(1, 2), "ivory": Fraction(1, 2)}
    north = pooled(VOCABULARY, (length("aspect", 350), length("aspect", 20)))
    assert [one.value for one in north] == [5]  # across north, and not south
