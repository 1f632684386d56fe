"""Colour references in characters.yaml: those that cannot be read, and states that look alike."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from building import corpus_of

COLOUR = """\
characters:
- name: spur colour
  structure: spur
  property: colour
  kind: ordered
  states:
  - {name: green, colour: 5GY 6/6}
  - {name: cream, colour: CREAM}
  - {name: ivory, colour: IVORY}
"""


def problems(cream: str, ivory: str) -> list[str]:
    return corpus_of(characters=COLOUR.replace("CREAM", cream).replace("IVORY", ivory))[1]


@pytest.mark.parametrize(
    ("cream", "ivory"),
    [("5Y 9/4", "2.5Y 9/2"), ("lab 90 -4 31", "lab 90 0 16"), ("5Y 9/4", "lab 90 0 16"), ('""', "N 9/")],
    ids=["Munsell", "CIELAB", "both", "none"],
)
def test_colours_apart(cream: str, ivory: str) -> None:
    assert problems(cream, ivory) == []


@pytest.mark.parametrize(
    ("cream", "ivory", "far"),
    [("5Y 9/4", "5Y 9/4", "0.0"), ("2.5Y 9/2", "lab 90.2 -0.3 16.7", "0.6"), ("lab 90 0 16", "lab 91 0 16", "0.6")],
    ids=["same", "Munsell and CIELAB", "a step of lightness"],
)
def test_colours_that_the_eye_can_hardly_tell(cream: str, ivory: str, far: str) -> None:
    assert problems(cream, ivory) == [
        f"characters.yaml:9:5: warning: the colours of `cream` and `ivory` are only {far} apart: an eye can hardly "
        "tell them (correct one of them, or make one state of the two)"
    ]


def test_what_is_no_colour() -> None:
    (found,) = problems("5RG 9/4", "N 9/")
    assert found == (
        "characters.yaml:8:5: no colour `5RG 9/4`: there is no hue `RG`; hues are R, YR, Y, GY, G, BG, B, PB, P, RP "
        "(write Munsell notation (5GY 6/6, N 5/) or CIELAB (lab 62 -20 40))"
    )


def test_a_colour_beyond_the_renotation() -> None:
    (found,) = problems("5Y 9/30", "5Y 9/29.5")
    assert "the Munsell renotation knows no such colour" in found


def test_states_far_apart_by_their_notation_cost_nothing() -> None:
    code = """
import sys
from building import corpus_of
assert corpus_of(characters=sys.argv[1])[1] == []
assert "colour" not in sys.modules and "coloraide" not in sys.modules
"""
    path = str(Path(__file__).parents[1])
    said = COLOUR.replace("CREAM", "5Y 9/4").replace("IVORY", "2.5Y 9/2")
    subprocess.run([sys.executable, "-c", f"import sys; sys.path.insert(0, {path!r})\n{code}", said], check=True)
