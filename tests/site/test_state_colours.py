"""Colours of states on the page of their character: a swatch, the reference, and differences in words."""

from __future__ import annotations

import re

import pytest

from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.site.answers import Answers
from auctorum.site.character_page import character_page
from auctorum.site.pages import StateLine
from building import code_of

WORK = 'work: {id: a-1900, type: book, author: [{family: A}], issued: "1900", title: T}\n'


def states(kind: Kind, *colours: str) -> tuple[StateLine, ...]:
    names = ("green", "cream", "ivory")
    found = tuple(State(name, (), colour or None) for name, colour in zip(names, colours, strict=True))
    character = Character("spur colour", "spur", "colour", kind, states=found)
    return character_page(Answers(code_of(WORK), ()), character).states


def test_neighbours_along_a_spectrum() -> None:
    found = states(Kind.ORDERED, "5GY 6/6", "5Y 9/4", "lab 90 0 16")
    assert [re.sub(r"\d+$", "N", one.apart) for one in found] == ["", "green to cream: N", "cream to ivory: N"]
    assert found[0].screen == "#889c4f" and found[2].colour == "lab 90 0 16"


@pytest.mark.parametrize(
    ("kind", "colours"),
    [(Kind.ORDERED, ("5GY 6/6", "", "5Y 9/4")), (Kind.NOMINAL, ("5GY 6/6", "5Y 9/4", "5Y 9/2"))],
    ids=["a gap", "no order"],
)
def test_no_difference_without_a_neighbour(kind: Kind, colours: tuple[str, ...]) -> None:
    assert {one.apart for one in states(kind, *colours)} == {""}


def test_a_colour_that_cannot_be_placed_has_no_swatch() -> None:
    found = states(Kind.ORDERED, "5GY 6/6", "5Y 9/30", "5Y 9/4")
    assert [bool(one.screen) for one in found] == [True, False, True]
    assert {one.apart for one in found} == {""}
