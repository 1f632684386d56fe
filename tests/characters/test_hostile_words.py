"""Any words end in readings or in one of our errors, in time that grows with their length and no faster."""

from __future__ import annotations

from time import process_time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.read import read_statement
from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.problems import AuctorumError

STATES = tuple(State(name, ("alb-",)) for name in ("green", "pale green", "white"))
CHARACTERS = [
    Character("spur length", "spur", "length", Kind.MEASURE, "mm"),
    Character("elevation", "habitat", "elevation", Kind.MEASURE, "m"),
    Character("spur number", "spur", "number", Kind.COUNT),
    Character("spur ratio", "spur", "ratio", Kind.RATIO),
    Character("aspect", "habitat", "aspect", Kind.ANGLE, "degree"),
    Character("spur colour", "spur", "colour", Kind.ORDERED, states=STATES),
    Character("spur", "spur", "presence", Kind.PRESENCE),
]
PIECES = (
    "(3-)", "3-", "spur 3 mm ", "(", "[3+]", "3 × ", "1,000,", "1 1/2 ", "green to ", "not ", "usually ", "young, ",
    "a half ", "in pairs, ", "3, 4 or ", "'", "to ", "½", "N-", "1-1/", "rarely ", "becoming ", "99999", "1/", "a-\n",
    "twice ", "3:", "(rarely ", "as long as ", "−", ", rarely 3", "3 ft. ", "with spots, ", "mm ", ")", "; ", ". S",
)  # fmt: skip


def read_quietly(words: str, character: Character) -> None:
    try:
        assert read_statement(words, character)
    except AuctorumError as error:
        assert str(error) and error.remedy


@settings(max_examples=200, deadline=None)
@given(st.text() | st.lists(st.sampled_from(PIECES), max_size=30).map("".join), st.sampled_from(CHARACTERS))
def test_no_words_raise_anything_else(words: str, character: Character) -> None:
    read_quietly(words, character)


@pytest.mark.parametrize("piece", ["(3-)", "1,000,", "spur 3 mm ", "(rarely ", "N-", "3, 4 or ", "not green to "])
def test_time_is_linear(piece: str) -> None:
    for character in CHARACTERS:
        taken = []
        for copies in (500, 4_000):
            start = process_time()
            read_quietly(piece * copies, character)
            taken.append(process_time() - start)
        assert taken[1] < 24 * taken[0] + 0.1, character.name  # 8 if linear, 64 if quadratic


def test_long_hostile_words_are_read_in_seconds() -> None:
    start = process_time()
    read_quietly("(3-)" * 20_000, CHARACTERS[0])
    assert process_time() - start < 10
