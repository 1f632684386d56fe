"""Pictures of a survey: columns, steps and shares to scale, patterns that are there, words that stay inside."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.site.pictures.histogram import (
    NARROW,
    PATTERNS,
    WIDE,
    Column,
    Histogram,
    axis_of,
    histogram,
    key_samples,
)
from auctorum.site.pictures.range_ladder import Rung
from auctorum.site.pictures.share_bars import SMALL, Share, share_bars, small_bar
from auctorum.site.pictures.step_line import StepLine, step_line

NS = "{http://www.w3.org/2000/svg}"
NAMES = (("var. longum", "solid"), ("var. robustum", "slant"), ("no name in use", "blank"))
COLUMNS = (Column(20, 22, (0, 4, 1)), Column(22, 24, (2, 3, 0)), Column(26, 28, (6, 0, 2)))
AUTHORS = (
    Rung("Orrin 1889", "9 plants", 22, 35),
    Rung("Tull 1904", "4 plants", None, 30, None, 33),
    Rung("Marsh 1911", "", 22, None, 18, None, repeats=True),
)


def made(**facts: object) -> Histogram:
    given: dict[str, object] = {
        "title": "Spur length of 18 plants", "description": "What it shows.", "unit": "mm", "names": NAMES,
        "columns": COLUMNS, "threshold": (25.0, "criterion"), "printed": "25 mm", "authors": AUTHORS,
        "heading": "what authors state",
    }  # fmt: skip
    return Histogram(**(given | facts))  # type: ignore[arg-type]


def parsed(picture: str) -> ElementTree.Element:
    """The picture as XML: every fill that it asks for is defined in it, and no number is none."""
    root = ElementTree.fromstring(picture)
    assert set(re.findall(r"url\(#([^)]+)\)", picture)) <= {each.get("id") for each in root.iter()}
    assert not re.search(r"\b(nan|inf)\b", picture.split("</desc>")[-1])
    ids = [each.get("id") for each in root.iter() if each.get("id")]
    assert len(ids) == len(set(ids))
    return root


def of_class(root: ElementTree.Element, name: str) -> list[ElementTree.Element]:
    return [each for each in root.iter() if name in (each.get("class") or "").split()]


def number(each: ElementTree.Element, name: str) -> float:
    return float(each.get(name, "nan"))


@pytest.mark.parametrize("narrow", [False, True])
def test_parts_of_columns_are_as_high_as_their_plants(narrow: bool) -> None:
    one = made()
    root, axis = parsed(histogram(one, "k", narrow)), axis_of(one, narrow)
    parts = of_class(root, "part-of")
    heights = [number(part, "height") for part in parts]
    plants = [count for column in COLUMNS for count in column.counts if count]
    assert heights == pytest.approx([heights[0] / plants[0] * count for count in plants], abs=0.11)
    for part in of_class(root, "solid"):
        left = number(part, "x")
        assert any(axis.at(column.low) < left < axis.at(column.high) for column in COLUMNS)
    floor = next(number(line, "y1") for line in of_class(root, "floor") if number(line, "x1") == axis.start)
    assert max(number(part, "y") + number(part, "height") for part in parts) == pytest.approx(floor, abs=0.11)


def test_a_name_has_its_pattern_in_picture_and_key() -> None:
    names = tuple((kind, kind) for kind in PATTERNS)
    columns = (Column(20, 22, (1,) * len(PATTERNS)),)
    one = made(names=names, columns=columns)
    root = parsed(histogram(one, "k"))
    kinds = [part.get("class", "").split()[1] for part in of_class(root, "part-of")]
    assert kinds == list(PATTERNS)
    samples = key_samples(one, "k")
    assert [words for _, words in samples] == list(PATTERNS)
    ids = [id_ for sample, _ in samples for id_ in re.findall(r'id="([^"]+)"', sample)]
    assert len(ids) == len(set(ids)) == 4, "all but solid and blank"
    for sample, _ in samples:
        parsed(sample)


@pytest.mark.parametrize("lower", [True, False])
def test_bounds_stand_at_their_values_and_the_one_that_decides_is_heavier(lower: bool) -> None:
    one = made(lower=lower)
    root, axis = parsed(histogram(one, "k")), axis_of(one, False)
    heavy = sorted(number(each, "x1") for each in of_class(root, "makes"))
    assert heavy == pytest.approx(sorted(axis.at(v) for v in ([22, 22] if lower else [30, 35])), abs=0.1)
    assert len(of_class(root, "head")) == 2, "an end of two authors is open"
    assert len(of_class(root, "beyond")) == 4, "two extremes, each with its end"
    assert len(of_class(root, "repeated")) == 1


@pytest.mark.parametrize("narrow", [False, True])
@pytest.mark.parametrize("value", [18.0, 25.0, 34.9])
def test_both_thresholds_stand_at_the_value_and_the_script_is_told_the_axis(value: float, narrow: bool) -> None:
    one = made(threshold=(value, "criterion"))
    root, axis = parsed(histogram(one, "k", narrow)), axis_of(one, narrow)
    (parting,), (cut,) = of_class(root, "parting"), of_class(root, "cut")
    assert number(parting, "x1") == pytest.approx(axis.at(value), abs=0.06)
    assert cut.get("transform") == f"translate({parting.get('x1')} 0)"
    told = [number(cut, f"data-{name}") for name in ("low", "high", "start", "end")]
    assert told == [axis.low, axis.high, axis.start, axis.end]


def test_states_have_a_column_each_and_their_words() -> None:
    columns = (Column(-0.5, 0.5, (1, 0, 0)), Column(1.5, 2.5, (3, 0, 1)))
    one = made(columns=columns, states=("glabrous", "sparsely hairy", "pubescent"), unit="", threshold=(0.5, "c"))
    for narrow in (False, True):
        root = parsed(histogram(one, "k", narrow))
        said = " ".join(text.text or "" for text in root.iter(f"{NS}text"))
        assert "glabrous" in said and "sparsely" in said and "pubescent" in said


@given(
    st.lists(st.tuples(st.floats(-1e6, 1e6), st.integers(0, 500)), min_size=0, max_size=30),
    st.floats(-1e6, 1e6),
    st.text(max_size=60),
)
@settings(deadline=None, max_examples=100)
def test_any_histogram_is_well_formed_and_stays_inside(values, limit: float, words: str) -> None:
    columns = tuple(Column(low, low + 2, (count, 1, 0)) for low, count in values)
    name = "".join(sign for sign in words if sign.isprintable())
    one = made(columns=columns, threshold=(limit, name), authors=(Rung(name, name, limit, limit + 1),), heading=name)
    for narrow, width in ((False, WIDE), (True, NARROW)):
        root = parsed(histogram(one, "k", narrow))
        for each in root.iter(f"{NS}rect"):
            assert number(each, "x") >= -1 and number(each, "x") + number(each, "width") <= width + 2


# --- the step line


@pytest.mark.parametrize(
    ("first", "steps"),
    [
        pytest.param(5, ((10.0, 4), (12.0, 1), (20.0, 0)), id="falls"),
        pytest.param(0, ((10.0, 1), (12.0, 4), (20.0, 5)), id="rises"),
        pytest.param(3, (), id="nothing-happens"),
    ],
)
def test_the_line_steps_at_its_values(first: int, steps: tuple[tuple[float, int], ...]) -> None:
    base = made(columns=(Column(10, 20, (1, 0, 0)),))
    axes = axis_of(base, False), axis_of(base, True)
    one = StepLine("T", "D", "mm", first, steps, (15.0, "criterion"), "15 mm", axes, (12.0, 12.0))
    for narrow in (False, True):
        root, axis = parsed(step_line(one, "s", narrow)), axes[narrow]
        (path,) = of_class(root, "steps")
        across = [float(x) for x in re.findall(r"H([-\d.]+)", path.get("d", ""))]
        assert across == pytest.approx([*(axis.at(value) for value, _ in steps), axis.end], abs=0.06)
        heights = [float(y) for y in re.findall(r"V([-\d.]+)", path.get("d", ""))]
        assert sorted(heights, reverse=True) == [
            y for y, _ in sorted(zip(heights, (n for _, n in steps), strict=True), key=lambda pair: pair[1])
        ]
        assert len(of_class(root, "makes")) == 1, "a threshold that two authors imply has one mark"


# --- shares


def test_bars_and_intervals_are_to_scale() -> None:
    shares = (
        Share("A", "1 of 4, 25 % (5–70 %)", 0.25, 0.05, 0.7, 0.5, True),
        Share("B", "none: sinks it"),
        Share("C", "all", 1.0, 0.5, 1.0),
    )
    for narrow in (False, True):
        root = parsed(share_bars("T", "D", shares, "v", narrow))
        quarter, whole = of_class(root, "share")
        full = number(whole, "width")
        assert number(quarter, "width") == pytest.approx(full / 4, abs=0.1)
        (left,) = of_class(root, "undecided")
        assert number(left, "width") == pytest.approx(full / 2, abs=0.1)
        interval = of_class(root, "interval")[0]
        ends = re.findall(r"M([\d.]+) [\d.]+v8", interval.get("d", ""))
        start = number(quarter, "x")
        assert [float(x) for x in ends] == pytest.approx([start + 0.05 * full, start + 0.7 * full], abs=0.1)
        assert [each.text for each in of_class(root, "silent")] == ["none: sinks it"]


def test_a_bar_for_a_table_is_hidden_from_readers_and_may_be_empty() -> None:
    full, empty = ElementTree.fromstring(small_bar(1.0, 0.5, 1.0)), ElementTree.fromstring(small_bar(None, 0, 1))
    assert full.get("aria-hidden") == "true"
    assert number(of_class(full, "share")[0], "width") == SMALL - 4
    assert of_class(empty, "interval")[0].get("d") == "M0 0"
