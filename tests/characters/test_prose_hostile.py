"""Time on hostile descriptions grows with their length: counted in steps, which no busy machine changes."""

from __future__ import annotations

import sys
from collections.abc import Callable
from itertools import permutations
from pathlib import Path
from time import process_time
from types import FrameType
from typing import Any

import pytest

from auctorum.characters.prose.draft import transcribe
from auctorum.characters.prose.read import read_description
from auctorum.characters.vocabulary import Vocabulary
from auctorum.cli.transcribe_run import vocabulary_in
from counting import calls

LINEAR = 4.6  # times the steps for four times the text: 4 if linear, 16 if quadratic
ROOT = Path(__file__).parents[2]


def steps(run: Callable[[], object]) -> int:
    """How many lines of Python are run: loops that call nothing count as well."""
    count = 0

    def counted(_frame: FrameType, event: str, _arg: object) -> Any:
        nonlocal count
        count += event == "line"
        return counted

    sys.settrace(counted)
    try:
        run()
    finally:
        sys.settrace(None)
    return count


def growth(text: Callable[[int], str], copies: int, run: Callable[[str], object] = read_description) -> float:
    """Steps for four times the copies, divided by those for the copies; what is built once is built before."""
    run(text(4))
    small, large = (steps(lambda times=times: run(text(times))) for times in (copies, 4 * copies))  # type: ignore[misc]
    return large / small


PIECES = (
    "(", ")", "( ", "[", "(rarely ", "(3-)", "leaf green (young red, ", "-", "- ", "—", "−", "'", '"', ",", ", ",
    ";", ". A", ".",
    "1", "3 ", "3, ", "1,000,", "1.", "1/2 ", "1-1/2-", "3 mm ", "3 mm, ", "3 ft. ", "3% ", "3 × ", "3 × 4 mm × ",
    "30° ",
    "leaf ", "leaf or ", "leaf and ", "leaf green ", "leaf green, stem red, ", "corolla tube ", "lower ", "pairs of ",
    "3 pairs of ", "8-flowered ", "leaf 3 mm long ", "or ", "and ", "to ", "of ", "of the ", "the ", "at ",
    "at the ", "with ",
    "without ", "except ", "glabrous except ", "per ", "not ", "no ", "either ", "as long as ",
    "as long as the leaf ", "half as ",
    "twice ", "longer than ", "calyce duplo longior ", "ratio of ", "length/width = ", "ratio ", ": ", "a-",
    "leaf-", "green-",
    "blarg-", "leaf/", "densely ", "very slightly ", "pale ", "green ", "green, ", "green or ", "green and ",
    "green to ",
    "tinged with ", "tinged ", "purple-spotted ", "veined with ", "green below ", "below ", "becoming green ",
    "becoming ",
    "when young green ", "in age ", "usually ", "rarely ", ", rarely to 3 mm", "recurved 30° ", "facing south ",
    "blarg ",
    "foo bar ", "Foo bar var. ", "May ", "V-", "vol. 3, ", "2n = ", "2n = 4, ", "3° 4' N ", "5YR 5/6 ", "12 species ",
    "foliis ovatis 3-5 cm longis, ", "lea\u00adf ", "\u00ad", "e\u0301", "\u0301\u0316", "leaf-\n", "\n", "\n\n",
    " ", "\t", "=", "+",
    "±", "<", "\x00", "葉", "issim", "iform ", "it ", "their ", "-ly ", "leaves ovate with ", "stem leaf and petal, ",
)  # fmt: skip


@pytest.mark.parametrize("piece", PIECES, ids=ascii)
def test_time_is_linear(piece: str) -> None:
    assert growth(lambda times: "leaf " + piece * times, max(48, 240 // len(piece))) < LINEAR


def test_wholes_of_wholes() -> None:
    assert read_description("lobe of the " * 2_000).named


@pytest.mark.parametrize(
    ("first", "second"),
    [("leaf and ", "green "), ("leaf, petal and ", "3 mm "), ("leaf green, ", "becoming red "), ("green 3 mm ",
    "except at "),
     ("leaf (", "green) "), ("with spots, ", "red, ")],
)  # fmt: skip
def test_time_of_two_runs_is_linear(first: str, second: str) -> None:
    assert growth(lambda times: first * times + second * times, 40) < LINEAR


def organs(count: int) -> list[str]:
    places = ("basal", "lower", "upper", "inner", "outer", "lateral", "median", "radial", "central", "dorsal")
    nouns = ("leaf", "petal", "sepal", "bract", "stem", "spur", "scale", "seed", "capsule", "style", "anther")
    return [f"{one} {two} {noun}" for one, two in permutations(places, 2) for noun in nouns][:count]


def test_drafts_of_organs_that_come_back() -> None:
    """Statements of one organ at both ends of a sentence do not hold all that is between."""
    demo = vocabulary_in(ROOT / "kb")

    def text(count: int) -> str:
        return ", ".join([f"{organ} green" for organ in organs(count)] + [f"{organ} red" for organ in organs(count)])

    small, large = (calls(lambda count=count: transcribe(text(count), demo)) for count in (40, 160))  # type: ignore[misc]
    assert large / small < LINEAR


@pytest.mark.parametrize(
    "piece", ["leaf green, 3 mm long, ", "folia ovata, becoming red; ", "spur 22-34(-41) mm, ", "blarg "]
)
def test_time_of_drafts_is_linear(piece: str) -> None:
    demo = vocabulary_in(ROOT / "kb")

    def run(text: str) -> object:
        return transcribe(text, demo)

    assert growth(lambda times: piece * times, 20, run) < LINEAR


LONG = {
    "one line": (
        "leaves ovate to lanceolate 3-5 cm long blarg densely pubescent beneath and petals white or yellow ",
        100_000,
    ),
    "latin": (
        "foliis ovatis vel lanceolatis 3-5 cm longis subtus dense tomentosis, calyce duplo longioribus; ",
        100_000,
    ),
    "soft hyphens": ("lea\u00adves ov\u00adate, ", 20_000),
    "accents": ("se\u0301palos blancos de 3 mm, ", 20_000),
    "runs of accents": ("\u0301\u0316\u0301\u0316", 100_000),
    "hyphens at the ends of lines": ("leaves lan-\nceolate and pubes-\ncent, 3-5 cm\nlong, ", 20_000),
    "one word": ("leaf", 100_000),
}


@pytest.mark.parametrize(("piece", "length"), LONG.values(), ids=list(LONG))
def test_long_descriptions(piece: str, length: int) -> None:
    text = (piece * (length // len(piece) + 1))[:length]
    small, large = (calls(lambda part=part: read_description(part)) for part in (text[: length // 4], text))  # type: ignore[misc]
    assert large < LINEAR * small + 100


def test_runs_of_accents_are_not_sorted() -> None:
    """The library's own sorting of accents takes time by their square, and shows in no count: 100 kB took seconds."""
    began = process_time()
    read_description("e" + "\u0316\u0301" * 200_000)
    assert process_time() - began < 5  # 100 s if sorted


def test_a_run_of_letters_is_not_cut_everywhere() -> None:
    """Two organs run together are sought in words that may be two: the copies of a long word show in no count."""
    began = process_time()
    read_description("x" * 400_000)
    assert process_time() - began < 5  # 40 s if cut at each letter


def test_vocabulary_does_not_multiply() -> None:
    """An empty vocabulary reads, and what has no character is proposed."""
    drafts = transcribe("leaf green, " * 200, Vocabulary()).drafts
    assert drafts and not any(draft.choice.known for draft in drafts)
