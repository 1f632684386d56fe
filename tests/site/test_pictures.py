"""Pictures: well-formed, named for those who cannot see them, true to their values, labels clear of one another."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.site.pictures import svg
from auctorum.site.pictures.range_ladder import Ladder, Rung, range_ladder
from auctorum.site.pictures.rank_path import SHAPES, WIDE, Mark, Path, rank_path, sample
from auctorum.site.pictures.scale import round_step, scale
from auctorum.site.pictures.state_ladder import STRENGTHS, Patch, StateLadder, StateRow, state_ladder

NS = "{http://www.w3.org/2000/svg}"
LANES = ("species", "variety", "in synonymy", "left out")

authors = st.sampled_from(["Orrin", "Marsh & Tull", "Orrinsdottir & Thornquist", "Brand & al.", "Ilo"])
marks = st.builds(
    lambda year, lane, shape, author, joined: Mark(year, lane, shape, f"{author} {year}", joined and lane in LANES[:2]),
    st.integers(1750, 2026), st.sampled_from(LANES), st.sampled_from(SHAPES), authors, st.booleans(),
)  # fmt: skip
paths = st.lists(marks, min_size=1, max_size=30).map(
    lambda found: Path("A path", "What it shows.", LANES, 2, tuple(sorted(found, key=lambda mark: mark.year)))
)


def read(picture: str) -> ElementTree.Element:
    """The picture as XML, after checks that hold for every picture."""
    root = ElementTree.fromstring(picture)
    assert root.get("role") == "img"
    title, description = root.find(f"{NS}title"), root.find(f"{NS}desc")
    assert title is not None and title.text
    assert description is not None and description.text
    assert root.get("aria-labelledby") == f"{title.get('id')} {description.get('id')}"
    wanted = set(re.findall(r"url\(#([^)]+)\)", picture))
    assert wanted <= {element.get("id") for element in root.iter()}, "a fill that is not defined"
    assert not re.search(r"nan|inf", picture.split("</desc>")[1])
    return root


def boxes(root: ElementTree.Element, kind: str, size: float) -> list[tuple[float, float, float, str]]:
    """Left, right, foot and words of each text of one class."""
    found = []
    for text in root.iter(f"{NS}text"):
        if kind in (text.get("class") or "").split():
            left, words = float(text.get("x", "0")), text.text or ""
            found.append((left, left + svg.width_of(words, size), float(text.get("y", "0")), words))
    return found


@given(paths)
@settings(deadline=None, max_examples=60)
def test_labels_of_a_rank_path_never_touch(path: Path) -> None:
    labels = boxes(read(rank_path(path, "k")), "label", 12)
    assert len(labels) == len(path.marks)
    for index, (left, right, foot, words) in enumerate(labels):
        assert left >= 0 and right <= WIDE, f"{words} leaves the picture"
        for other_left, other_right, other_foot, others in labels[index + 1 :]:
            apart = right < other_left or other_right < left or abs(foot - other_foot) > 11
            assert apart, f"{words} touches {others}"


@given(paths)
@settings(deadline=None, max_examples=40)
def test_the_upright_path_has_a_mark_for_each_work_on_its_lane(path: Path) -> None:
    root = read(rank_path(path, "k", narrow=True))
    drawn = [element for element in root.iter() if (element.get("class") or "").startswith("mark")]
    assert len(drawn) == len(path.marks)


def test_the_line_steps_through_the_acts_in_order() -> None:
    acts = (Mark(1887, "variety", "square", "A 1887", True), Mark(1904, "species", "diamond", "B 1904", True))
    root = read(rank_path(Path("T", "D", LANES, 2, acts), "k"))
    (trail,) = [element.get("d", "") for element in root.iter() if element.get("class") == "trail"]
    x1, y1, x2, y2 = map(float, re.findall(r"[\d.]+", trail))
    assert x1 < x2, "later stands to the right"
    assert y2 < y1, "species stands above variety"


@given(st.lists(st.floats(-1e6, 1e6), min_size=1, max_size=20), st.booleans())
@settings(deadline=None, max_examples=200)
def test_an_axis_holds_its_values_between_round_ends(values: list[float], whole: bool) -> None:
    axis = scale(values, 100, 500, 8, whole)
    places = [axis.at(value) for value in sorted(values)]
    assert places == sorted(places)
    assert all(100 <= place <= 500 for place in places)
    assert axis.low <= min(values) + 1e-6 * axis.step and axis.high >= max(values) - 1e-6 * axis.step
    assert 2 <= len(axis.ticks()) <= 12
    if whole:
        assert all(float(tick).is_integer() for tick in axis.ticks())


@given(st.floats(1e-3, 1e6), st.integers(2, 12))
@settings(deadline=None, max_examples=200)
def test_round_steps_are_the_smallest_that_do(spread: float, most: int) -> None:
    step = round_step(spread, most)
    assert f"{step:.0e}"[0] in "125"
    assert spread / step <= most * (1 + 1e-6)
    smaller = {"1": 2, "2": 2, "5": 2.5}[f"{step:.0e}"[0]]
    assert spread / (step / smaller) > most * (1 - 1e-6)


RUNGS = (
    Rung("A 1887", "22–34 mm", 22, 34),
    Rung("B 1904", "22–41(–45) mm", 22, 41, None, 45),
    Rung("C 1911", "up to 50 mm", None, 50),
    Rung("D 1920", "more than 25 mm", 25, None),
    Rung("E 1930"),
    Rung("F 1940", "22–34 mm", 22, 34, repeats=True),
    Rung("G 1950", "30 mm", 30, 30),
)


@pytest.mark.parametrize("narrow", [False, True])
def test_range_ladder_shows_each_author_to_scale(narrow: bool) -> None:
    ladder = Ladder("Spur length", "What it shows", "mm", RUNGS, ((22, 34),), (25, 34), "25–34 mm")
    root = read(range_ladder(ladder, "k", narrow))
    words = [text.text for text in root.iter(f"{NS}text")]
    for rung in RUNGS:
        assert rung.label in words and (rung.says or "says nothing") in words
    assert "shared by all: 25–34 mm" in words
    bars = [element for element in root.iter(f"{NS}rect") if (element.get("class") or "").startswith("bar")]
    assert [bar.get("class") for bar in bars] == ["bar"] * 4 + ["bar repeated", "bar"], "silence has no bar"
    first, second = bars[0], bars[1]
    assert first.get("x") == second.get("x"), "both start at 22"
    ratio = float(first.get("width", "")) / float(second.get("width", ""))
    assert ratio == pytest.approx(12 / 19, abs=0.005)
    heads = [element for element in root.iter() if element.get("class") == "head"]
    assert len(heads) == 2, "one arrow head for each open end"


def test_bearings_stand_on_an_axis_of_compass_points() -> None:
    rungs = (Rung("A 1900", "NW to N", 315, 360), Rung("B 1950", "N to NE", 360, 405))
    root = read(range_ladder(Ladder("Aspect", "D", "degree", rungs, compass=True), "k"))
    words = [text.text for text in root.iter(f"{NS}text")]
    assert [word for word in words if word in ("NW", "N", "NE")] == ["NW", "NW", "N", "N", "NE", "NE"]
    assert "degree" not in words


@pytest.mark.parametrize("narrow", [False, True])
def test_state_ladder_shows_spans_and_strengths(narrow: bool) -> None:
    rows = (
        StateRow("A 1887", (Patch(0, 0), Patch(3, 3, "outline"))),
        StateRow("B 1904", (Patch(0, 2),)),
        StateRow("C 1911", (Patch(1, 1, "hatched"), Patch(2, 2, "cross"))),
        StateRow("D 1920"),
    )
    states = ("green", "yellow-green", "cream", "ivory")
    root = read(state_ladder(StateLadder("Spur colour", "What it shows", states, rows, True, (1,)), "k", narrow))
    words = " ".join(text.text or "" for text in root.iter(f"{NS}text"))
    assert "says nothing" in words
    assert all(state in words for state in states)
    drawn = [element for element in root.iter(f"{NS}rect") if (element.get("class") or "").startswith("patch")]
    kinds = [element.get("class") for element in drawn]
    assert kinds == [
        "patch solid",
        "patch outline",
        "patch solid",
        "patch hatched",
    ]
    single, span = float(drawn[0].get("width", "")), float(drawn[2].get("width", ""))
    assert span > 2 * single, "a span reaches from its first state to its last"
    assert sum(element.get("class") == "never" for element in root.iter()) == 2


def test_many_long_states_are_lettered_and_explained() -> None:
    states = tuple(f"a state with a rather long name number {index}" for index in range(9))
    root = read(state_ladder(StateLadder("T", "D", states, (StateRow("A 1887", (Patch(0, 8),)),), False), "k"))
    words = [text.text for text in root.iter(f"{NS}text")]
    assert {f"{letter}  {state}" for letter, state in zip("abcdefghi", states, strict=True)} <= set(words)


def test_hostile_words_stay_words() -> None:
    nasty = '</title><script>alert(1)</script>&"'
    for narrow in (False, True):
        read(rank_path(Path(nasty, nasty, ("species",), 1, (Mark(1900, "species", "disc", nasty),)), "k", narrow))
        read(range_ladder(Ladder(nasty, nasty, nasty, (Rung(nasty, nasty, 1, 2),)), "k", narrow))
        read(state_ladder(StateLadder(nasty, nasty, (nasty,), (StateRow(nasty, (Patch(0, 0),)),), True), "k", narrow))


def test_each_shape_and_strength_differs_without_colour() -> None:
    assert len({sample(shape) for shape in SHAPES}) == len(SHAPES)
    drawn = {
        strength: state_ladder(
            StateLadder("T", "D", ("x",), (StateRow("A", (Patch(0, 0, strength),)),), False), "k"
        ).split("</desc>")[1]
        for strength in STRENGTHS
    }  # fmt: skip
    assert len(set(drawn.values())) == len(STRENGTHS)


def test_widths_err_on_the_wide_side() -> None:
    """Against the widths of Times at 1000 units an em (Adobe's published metrics for Times-Roman, from memory)."""
    times = {
        "O": 722,
        "W": 944,
        "M": 889,
        "r": 333,
        "i": 278,
        "n": 500,
        "a": 444,
        "w": 722,
        " ": 250,
        "1": 500,
        "&": 778,
    }
    short = {sign for sign, units in times.items() if svg.width_of(sign, 1000) < units * 0.99}
    assert not short
