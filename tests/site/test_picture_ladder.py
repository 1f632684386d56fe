"""What the range ladder shows beside authors: repetitions, measured plants, and values that part the taxon."""

from __future__ import annotations

import re
from itertools import combinations
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.site.pictures import svg
from auctorum.site.pictures.range_ladder import (
    MEASURED,
    NARROW,
    PARTS,
    REPEATED,
    WIDE,
    Ladder,
    Rung,
    explanation,
    range_ladder,
)

NS = "{http://www.w3.org/2000/svg}"
RUNGS = (Rung("A 1887", "22–34 mm", 22, 34), Rung("B 1904", "22–34 mm", 22, 34, repeats=True), Rung("C 1911"))
PLANTS = Rung("n = 20 plants", "(19–)24–47(–53) mm", 24, 47, 19, 53)


def drawn(ladder: Ladder, narrow: bool = False) -> ElementTree.Element:
    picture = range_ladder(ladder, "k", narrow)
    assert not re.search(r"\b(nan|inf)\b", picture.split("</desc>")[1])
    return ElementTree.fromstring(picture)


def of_class(root: ElementTree.Element, name: str) -> list[ElementTree.Element]:
    return [each for each in root.iter() if name in (each.get("class") or "").split()]


def value(element: ElementTree.Element, name: str) -> float:
    return float(element.get(name, ""))


@pytest.mark.parametrize("narrow", [False, True])
def test_a_repetition_is_thin_and_has_a_mark_of_its_own(narrow: bool) -> None:
    root = drawn(Ladder("T", "D", "mm", RUNGS), narrow)
    own, repeated = of_class(root, "bar")
    assert repeated.get("class") == "bar repeated"
    assert value(repeated, "height") < value(own, "height")
    assert value(repeated, "y") + value(repeated, "height") / 2 == pytest.approx(
        value(own, "y") + value(own, "height") / 2 + (40 if narrow else 25)
    )
    assert len(of_class(root, "ditto")) == 1


@pytest.mark.parametrize("narrow", [False, True])
def test_measured_plants_stand_below_a_rule_to_the_same_scale(narrow: bool) -> None:
    root = drawn(Ladder("T", "D", "mm", RUNGS, ((22, 34),), (22, 34), plants=PLANTS), narrow)
    (rule,) = of_class(root, "apart")
    own, *_, plants = of_class(root, "bar")
    assert plants.get("class") == "bar plants"
    assert value(plants, "width") / value(own, "width") == pytest.approx(23 / 12, abs=0.01)
    assert value(own, "y") < value(rule, "y1") < value(plants, "y")
    (band,) = of_class(root, "majority")
    assert value(band, "y") + value(band, "height") < value(rule, "y1"), "plants are no authors: no majority of theirs"
    assert value(rule, "y1") < min(value(whisker, "y1") for whisker in of_class(root, "whisker"))
    assert "n = 20 plants" in [text.text for text in root.iter(f"{NS}text")]


def test_plants_alone_and_nothing_at_all_are_drawn() -> None:
    for narrow in (False, True):
        assert of_class(drawn(Ladder("T", "D", "mm", (), plants=PLANTS), narrow), "seam")
        drawn(Ladder("T", "D", "mm", ()), narrow)


@pytest.mark.parametrize("narrow", [False, True])
def test_a_threshold_crosses_the_picture_at_its_value(narrow: bool) -> None:
    ladder = Ladder("T", "D", "mm", RUNGS, thresholds=((28, "28 mm: below it var. robustum"),))
    root = drawn(ladder, narrow)
    (line,) = of_class(root, "parting")
    bar = of_class(root, "bar")[0]
    assert value(line, "x1") == value(line, "x2")
    assert value(line, "x1") == pytest.approx(value(bar, "x") + value(bar, "width") / 2, abs=0.2)
    assert value(line, "y2") > max(value(each, "y") for each in of_class(root, "bar"))
    assert "28 mm: below it var. robustum" in [text.text for text in root.iter(f"{NS}text")]


def test_a_threshold_beyond_all_that_is_stated_still_stands_at_its_value() -> None:
    root = drawn(Ladder("T", "D", "mm", RUNGS, thresholds=((80, "80 mm: above it var. giganteum"),)))
    bar, (line,) = of_class(root, "bar")[0], of_class(root, "parting")
    unit = value(bar, "width") / 12
    assert value(line, "x1") == pytest.approx(value(bar, "x") + (80 - 22) * unit, abs=1)


taxa = st.sampled_from(
    ["var. robustum", "C. tessarnense", "Cremnocentron luteolum var. hirtum, in the wide sense", "x"]
)
thresholds = st.lists(st.tuples(st.integers(0, 90), taxa), max_size=7).map(
    lambda found: tuple((float(figure), f"{figure} mm: below it {taxon}") for figure, taxon in found)
)


@given(thresholds, st.booleans())
@settings(deadline=None, max_examples=150)
def test_words_of_thresholds_never_touch(found: tuple, narrow: bool) -> None:
    root = drawn(Ladder("T", "D", "mm", RUNGS, plants=PLANTS, thresholds=found), narrow)
    boxes = [
        (value(text, "x"), value(text, "x") + svg.width_of(text.text or ""), value(text, "y"))
        for text in of_class(root, "parting-words")
    ]
    assert len(boxes) == len(found)
    for left, right, foot in boxes:
        assert left >= 0 and right <= (NARROW if narrow else WIDE) and foot >= 9
    for (left, right, foot), (other_left, other_right, other_foot) in combinations(boxes, 2):
        assert right < other_left or other_right < left or abs(foot - other_foot) >= 14
    ticks = [text for text in of_class(root, "tick") if value(text, "y") < value(of_class(root, "bar")[0], "y")]
    assert all(value(tick, "y") - foot >= 11 for tick in ticks for *_, foot in boxes), (
        "clear of the figures of the axis"
    )


def test_a_line_passes_beside_the_words_of_another_where_there_is_room() -> None:
    found = tuple((figure, f"{figure:g} mm: below it var. robustum") for figure in (20.0, 24.0, 27.0, 30.0))
    root = drawn(Ladder("T", "D", "mm", (*RUNGS, Rung("D", "9–80 mm", 9, 80)), thresholds=found))
    for line in of_class(root, "parting"):
        for text in of_class(root, "parting-words"):
            beside = not value(text, "x") < value(line, "x1") < value(text, "x") + svg.width_of(text.text or "")
            assert beside or value(line, "y1") > value(text, "y")


@pytest.mark.parametrize(
    ("ladder", "words"),
    [
        pytest.param(Ladder("T", "D", "mm", RUNGS[:1]), [], id="nothing-to-explain"),
        pytest.param(Ladder("T", "D", "mm", RUNGS), [REPEATED], id="repetition"),
        pytest.param(Ladder("T", "D", "mm", RUNGS[:1], plants=PLANTS), [MEASURED], id="plants"),
        pytest.param(Ladder("T", "D", "mm", RUNGS[:1], thresholds=((3, "3 mm"),)), [PARTS], id="threshold"),
    ],
)
def test_the_key_explains_what_is_drawn_and_nothing_else(ladder: Ladder, words: list[str]) -> None:
    found = explanation(ladder)
    assert [said for _, said in found] == words
    assert all(ElementTree.fromstring(sample).get("aria-hidden") == "true" for sample, _ in found)


def test_hostile_words_stay_words() -> None:
    nasty = '</title><script>alert(1)</script>&"<b>'
    ladder = Ladder(nasty, nasty, nasty, (Rung(nasty, nasty, 1, 2, repeats=True),), plants=Rung(nasty, nasty, 1, 2),
                    thresholds=((1, nasty), (2, nasty)))  # fmt: skip
    for narrow in (False, True):
        root = drawn(ladder, narrow)
        assert not list(root.iter(f"{NS}script"))
        assert all(value(text, "y") > 0 for text in root.iter(f"{NS}text"))
