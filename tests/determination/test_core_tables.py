"""Tables of candidates side by side: what is stated, what is silent, and what lies outside."""

from __future__ import annotations

import numpy as np
import pytest

from accounts import OTHER, TAXON
from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.determination.tables import Numbers, States, states
from core_cases import ASPECT, COLOUR, HEIGHT, SURFACE, many_names, three_names, view_with

FLOOR, FLOOR_OF_STATES, BLURRED = 0.01, 0.05, 0.1  # the choices of the module, once more
COLOURS = Character(COLOUR, "spur", "colour", Kind.ORDERED, states=tuple(map(State, ("green", "cream", "ivory"))))
SURFACES = Character(SURFACE, "seed", "surface", Kind.NOMINAL, states=tuple(map(State, ("smooth", "winged"))))


def numbers_of(*told: str, character: str = HEIGHT) -> Numbers:
    """The table of up to three taxa; an empty line says nothing of the character."""
    lines = [[f"{character}: {one}", "petal number: 5"] if one else ["petal number: 5"] for one in told]
    table = view_with(*lines, names=three_names()).tables[character, ""]
    assert isinstance(table, Numbers)
    return table


def at(table: Numbers, value: float, error: float = 0.5) -> np.ndarray:
    return table.likelihood(np.array([float(value)]), np.array([error]))[0]


def beyond(table: Numbers, candidate: int, value: float, error: float = 0.5) -> bool:
    return bool(table.beyond(candidate, np.array([float(value)]), np.array([error]))[0])


# --- numbers


def test_rows_rise_from_nought_to_one() -> None:
    table = numbers_of("10–20 mm", "(5–)12–14(–40) mm", "30 mm")
    assert (np.diff(table.below, axis=1) >= 0).all()
    assert table.below[:, 0] == pytest.approx(0)
    assert table.below[:, -1] == pytest.approx(1)
    assert (np.diff(table.knots) > 0).all()
    assert table.knots[0] >= 0  # nothing stated of a length lies below nought


def test_silence_is_the_mean_of_those_who_speak() -> None:
    table = numbers_of("10–20 mm", "30–40 mm", "")
    assert table.stated == (True, True, False)
    for value in (3, 15, 25, 35, 80):
        first, second, silent = at(table, value)
        assert silent == pytest.approx((first + second) / 2)
    assert not beyond(table, 2, 1000)


def test_far_off_only_the_floor_is_left_and_nobody_gains_by_it() -> None:
    table = numbers_of("10–20 mm", "30–40 mm")
    floor = FLOOR / (table.knots[-1] - table.knots[0])
    assert at(table, 5000) == pytest.approx([floor, floor])


@pytest.mark.parametrize("value", [1e17, 1e300, -1e300])
def test_a_huge_number_is_far_off_and_no_fault(value: float) -> None:
    """Its limits of error vanish in rounding, and yet it has a density."""
    found = at(numbers_of("10–20 mm", "30–40 mm"), value)
    assert (found > 0).all()
    assert found[0] == pytest.approx(found[1])


def test_a_huge_error_tells_nothing() -> None:
    found = at(numbers_of("10–20 mm", "30–40 mm"), 15, 1e12)
    assert found[0] == pytest.approx(found[1], rel=1e-3)
    assert (found > 0).all()


def test_a_wide_error_is_the_mean_over_the_stretch() -> None:
    """A value of 15 ± 5 is worth what ten values of ± 0.5 from 10 to 20 are on average."""
    table = numbers_of("10–20 mm", "18–30 mm")
    parts = np.mean([at(table, 10.5 + step) for step in range(10)], axis=0)
    assert at(table, 15, 5) == pytest.approx(parts)


@pytest.mark.parametrize(
    ("value", "error", "outside"),
    [(15, 0.5, False), (20.4, 0.5, False), (22.1, 0.5, True), (22.1, 1.5, False), (7.9, 0.5, True), (0, 0.5, True)],
)
def test_beyond_counts_shoulders_and_errors(value: float, error: float, outside: bool) -> None:
    """10–20 mm has shoulders of a tenth: from 9 to 21 mm; what reaches in is not outside."""
    assert beyond(numbers_of("10–20 mm", "80 mm"), 0, value, error) is outside


@pytest.mark.parametrize(("value", "outside"), [(15, False), (10, False), (45, True)])
def test_an_exact_value_inside_is_not_outside(value: float, outside: bool) -> None:
    assert beyond(numbers_of("10–20 mm", "80 mm"), 0, value, 0.0) is outside


def test_extremes_are_not_outside() -> None:
    table = numbers_of("10–20(–40) mm", "10–20 mm")
    assert (beyond(table, 0, 38), beyond(table, 1, 38)) == (False, True)


# --- directions


def test_across_north_both_sides_are_inside() -> None:
    table = numbers_of("NNW–NNE", "SSE–SSW", character=ASPECT)
    assert table.circular
    for value in (340, 355, 0, 5, 20, 360):
        assert not beyond(table, 0, value, 1)
        assert beyond(table, 1, value, 1)
        assert at(table, value)[0] > 5 * at(table, value)[1]


@pytest.mark.parametrize("turns", [-720, -360, 360, 3600])
def test_a_whole_turn_is_no_difference(turns: int) -> None:
    table = numbers_of("NNW–NNE", "SSE–SSW", character=ASPECT)
    assert at(table, 10 + turns, 5) == pytest.approx(at(table, 10, 5))
    assert [beyond(table, place, 10 + turns, 5) for place in range(2)] == [False, True]


@pytest.mark.parametrize(
    ("value", "error", "outside"), [(0, 25, False), (0, 5, True), (358, 60, False), (100, 5, True)]
)
def test_an_error_that_reaches_over_north_reaches_what_lies_there(value: float, error: float, outside: bool) -> None:
    """NW, as a word of the compass, goes from 292½ to 337½, NE from 22½ to 67½."""
    assert beyond(numbers_of("NW", "S", character=ASPECT), 0, value, error) is outside
    assert beyond(numbers_of("NE", "S", character=ASPECT), 0, 360 - value, error) is outside


@pytest.mark.parametrize("value", [0, 359.9])
def test_an_error_reaches_over_north(value: float) -> None:
    table = numbers_of("N–NNE", "SSE–SSW", character=ASPECT)
    parts = np.mean([at(table, value + step, 1) for step in (-4, -2, 0, 2, 4)], axis=0)
    assert at(table, value, 5) == pytest.approx(parts)


# --- states


def states_of(character: Character, *told: dict[str, float]) -> States:
    found = states(character, "", told)
    assert found is not None
    return found


def test_states_sum_to_one_and_none_is_shut_out() -> None:
    table = states_of(SURFACES, {"smooth": 2.0}, {"smooth": 1.0, "winged": 3.0})
    assert table.shares.sum(axis=0) == pytest.approx([1, 1])
    assert table.shares[:, 0] == pytest.approx([1 - FLOOR_OF_STATES / 2, FLOOR_OF_STATES / 2])
    assert table.shares[:, 1] == pytest.approx(
        [0.25 * (1 - FLOOR_OF_STATES) + 0.025, 0.75 * (1 - FLOOR_OF_STATES) + 0.025]
    )


def test_neighbours_on_a_spectrum_are_easily_taken_for_each_other() -> None:
    """By a tenth to each side; at an end nothing goes off the spectrum."""
    table = states_of(COLOURS, {"green": 1.0}, {"cream": 1.0})
    kept = (table.shares - FLOOR_OF_STATES / 3) / (1 - FLOOR_OF_STATES)
    assert kept[:, 0] == pytest.approx([1 - BLURRED, BLURRED, 0])
    assert kept[:, 1] == pytest.approx([BLURRED, 1 - 2 * BLURRED, BLURRED])


def test_states_without_an_order_have_no_neighbours() -> None:
    table = states_of(SURFACES, {"smooth": 1.0}, {"winged": 1.0})
    assert table.shares[1, 0] == pytest.approx(FLOOR_OF_STATES / 2)


def test_a_state_that_the_vocabulary_lacks_has_its_row() -> None:
    table = states_of(COLOURS, {"green": 1.0}, {"lilac": 1.0})
    assert table.states == ("green", "cream", "ivory", "lilac")
    assert table.shares[3, 1] > 0.9
    assert table.shares[:, 1].sum() == pytest.approx(1)


def test_silence_on_states() -> None:
    table = states_of(SURFACES, {"smooth": 1.0}, {"winged": 1.0}, {})
    assert table.shares[:, 2] == pytest.approx(table.shares[:, :2].mean(axis=1))
    weights = np.array([[1.0, 0.0]])
    assert [bool(table.beyond(place, weights)[0]) for place in range(3)] == [False, True, False]


def test_a_plant_of_two_states_is_beyond_only_where_neither_is_stated() -> None:
    table = states_of(COLOURS, {"green": 1.0}, {"ivory": 1.0})
    both = np.array([[0.5, 0.5, 0.0]])
    assert [bool(table.beyond(place, both)[0]) for place in range(2)] == [False, True]


def test_a_character_with_one_state_tells_nothing() -> None:
    only = Character(SURFACE, "seed", "surface", Kind.NOMINAL, states=(State("smooth"),))
    table = states_of(only, {"smooth": 1.0}, {})
    assert table.likelihood(np.array([[1.0]])) == pytest.approx(np.array([[1.0, 1.0]]))


def test_nothing_said_is_no_table() -> None:
    assert states(SURFACES, "", [{}, {}]) is None


def test_a_small_taxon_among_many_large_ones_keeps_its_shape() -> None:
    """Two narrow statements beside three hundred wide ones are told apart as they are by themselves."""
    names = many_names(300)
    told = [[f"{HEIGHT}: 2.0–3.0 mm"], [f"{HEIGHT}: 4.0–5.0 mm"]]
    told += [[f"{HEIGHT}: {500 + 4 * number}–{700 + 5 * number} mm"] for number in range(298)]
    table = view_with(*told, names=names).tables[HEIGHT, ""]
    alone = view_with(*told[:2], names=dict(list(names.items())[:2])).tables[HEIGHT, ""]
    assert isinstance(table, Numbers) and isinstance(alone, Numbers)
    for value in (2.2, 2.5, 3.5, 4.5):
        found, expected = at(table, value, 0.05), at(alone, value, 0.05)
        assert found[0] == pytest.approx(expected[0], rel=0.02, abs=0.01)
        assert found[1] == pytest.approx(expected[1], rel=0.02, abs=0.01)
    assert len(table.knots) < 5000


def test_taxa_stand_as_the_corpus_has_them() -> None:
    assert view_with([f"{HEIGHT}: 1 mm"], [f"{HEIGHT}: 2 mm"]).taxa == (TAXON, OTHER)
