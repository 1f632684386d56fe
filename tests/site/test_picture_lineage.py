"""Who repeats whom: every line leads from its later to its earlier work, and no words touch anything."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.site.pictures import svg
from auctorum.site.pictures.lineage import NARROW, WIDE, Lineage, explanation, lineage_picture

NS = "{http://www.w3.org/2000/svg}"
NAMES = ("Orrin", "Marsh & Tull", "Orrinsdottir & Thornquist", "Brand & al.", "Ilo")
WORKS = (("a", "Orrin 1889", 1889), ("b", "Marsh & Tull 1904", 1904), ("c", "Selk 1923", 1923), ("d", "Ilo", 1951))
LINES = (("b", "a", True, 7, 8), ("c", "a", False, 5, 5), ("d", "b", False, 3, 4), ("d", "a", True, 2, 4))


def drawn(lineage: Lineage, narrow: bool = False) -> ElementTree.Element:
    picture = lineage_picture(lineage, "k", narrow)
    assert not re.search(r"\b(nan|inf)\b", picture.split("</desc>")[1])
    return ElementTree.fromstring(picture)


def of_class(root: ElementTree.Element, name: str) -> list[ElementTree.Element]:
    return [each for each in root.iter() if name in (each.get("class") or "").split()]


def said(text: ElementTree.Element) -> str:
    return "  ".join(filter(None, (text.text, *(part.text for part in text))))


def marks(root: ElementTree.Element) -> list[tuple[float, float, str]]:
    """Middle and look of each mark, from top to bottom."""
    return [
        (float(mark.get("cx", "")), float(mark.get("cy", "")), (mark.get("class") or "").split()[1])
        for mark in of_class(root, "mark")
    ]


def pieces(root: ElementTree.Element) -> list[tuple[float, float, float, float]]:
    return [
        (float(x.get("x1", "")), float(x.get("y1", "")), float(x.get("x2", "")), float(x.get("y2", "")))
        for x in of_class(root, "route")
    ]


@pytest.mark.parametrize("narrow", [False, True])
def test_works_that_repeat_nobody_are_full_the_others_open(narrow: bool) -> None:
    root = drawn(Lineage("Who repeats whom", "What it shows.", WORKS, LINES), narrow)
    found = marks(root)
    assert [look for *_, look in found] == ["solid", "open", "open", "open"]
    halves = [each for each in of_class(root, "head") if "a" in each.get("d", "")]
    assert len(halves) == 2, "b and d tell some things otherwise; c repeats all that both tell"
    assert [x for x, *_ in found] == sorted(x for x, *_ in found)
    words = [said(text) for text in root.iter(f"{NS}text")]
    tail = "" if narrow else " as Orrin 1889"
    assert f"Marsh & Tull 1904  7 of 8{tail}" in words
    assert f"Ilo 1951  2 of 4{tail}" in words, "the year is added where the label has none"
    assert ("3 of 4" if narrow else "3 of 4 as Marsh & Tull 1904") in words


@pytest.mark.parametrize("narrow", [False, True])
def test_each_line_runs_from_the_later_to_the_earlier_work(narrow: bool) -> None:
    root = drawn(Lineage("T", "D", WORKS, (LINES[1],)), narrow)
    place = {id_: mark for (id_, *_), mark in zip(WORKS, marks(root), strict=True)}
    upright, level = pieces(root)
    assert upright[0] == upright[2] == pytest.approx(place["a"][0], abs=0.1)
    assert place["a"][1] < upright[1] < place["b"][1], "it begins just below the earlier mark"
    assert upright[3] == level[1] == level[3] == pytest.approx(place["c"][1], abs=0.1)
    assert (level[0], level[2]) == pytest.approx((place["a"][0], place["c"][0]), abs=0.1)
    assert all("found" in (each.get("class") or "") for each in of_class(root, "route"))


def test_declared_and_found_lines_to_one_work_stand_side_by_side() -> None:
    root = drawn(Lineage("T", "D", WORKS, LINES[:2]))
    uprights = {x1 for x1, _, x2, _ in pieces(root) if x1 == x2}
    assert len(uprights) == 2 and max(uprights) - min(uprights) >= 5


def test_years_run_across_in_the_wide_form() -> None:
    root = drawn(Lineage("T", "D", WORKS))
    xs = [x for x, *_ in marks(root)]
    assert (xs[1] - xs[0]) / (xs[3] - xs[0]) == pytest.approx(15 / 62, abs=0.01)


def test_lines_that_lead_nowhere_are_left_out() -> None:
    lines = (("a", "b", True, 1, 1), ("c", "gone", True, 1, 1), ("gone", "a", True, 1, 1), ("a", "a", True, 1, 1))
    root = drawn(Lineage("T", "D", WORKS, lines))
    assert not of_class(root, "route") and all(look == "solid" for *_, look in marks(root))


def test_the_key_explains_what_is_drawn_and_nothing_else() -> None:
    assert [words for _, words in explanation(Lineage("T", "D", WORKS))] == ["repeats nobody"]
    full = explanation(Lineage("T", "D", WORKS, LINES))
    assert len(full) == 5 == len({sample for sample, _ in full})
    assert all(ElementTree.fromstring(sample).get("aria-hidden") == "true" for sample, _ in full)


@st.composite
def lineages(draw: st.DrawFn) -> Lineage:
    count = draw(st.integers(1, 30))
    works = tuple(
        (f"w{number}", f"{draw(st.sampled_from(NAMES))} {year}", year)
        for number, year in enumerate(sorted(draw(st.lists(st.integers(1753, 2026), min_size=count, max_size=count))))
    )
    pairs = draw(st.lists(st.tuples(st.integers(0, count - 1), st.integers(0, count - 1)), max_size=25, unique=True))
    lines = tuple((f"w{a}", f"w{b}", draw(st.booleans()), 7, 8 - (a + b) % 2) for a, b in pairs if b < a)
    return Lineage("T", "D", works, lines)


@given(lineages(), st.booleans())
@settings(deadline=None, max_examples=100)
def test_words_touch_neither_words_nor_lines_nor_marks(lineage: Lineage, narrow: bool) -> None:
    root = drawn(lineage, narrow)
    boxes = []
    for text in root.iter(f"{NS}text"):
        if text.get("text-anchor") == "middle":  # the years of the axis
            continue
        extra = 10 if len(text) else 0
        wide = extra + sum(svg.width_of(part) for part in (text.text or "", *(each.text or "" for each in text)))
        left, foot = float(text.get("x", "")), float(text.get("y", ""))
        assert left + wide <= (NARROW if narrow else WIDE) + 1, said(text)
        boxes.append((left, left + wide, foot - 10, foot + 2.5))
    assert len(boxes) >= len(lineage.works)
    obstacles = [(min(a, c), max(a, c), min(b, d), max(b, d)) for a, b, c, d in pieces(root)]
    obstacles += [(x - 4, x + 4, y - 4, y + 4) for x, y, _ in marks(root)]
    for index, one in enumerate(boxes):
        for other in (*boxes[index + 1 :], *obstacles):
            apart = one[1] <= other[0] or other[1] <= one[0] or one[3] <= other[2] or other[3] <= one[2]
            assert apart, (one, other)


@given(lineages(), st.booleans())
@settings(deadline=None, max_examples=60)
def test_no_upright_passes_through_the_mark_of_another_work(lineage: Lineage, narrow: bool) -> None:
    root = drawn(lineage, narrow)
    for x1, y1, x2, y2 in pieces(root):
        for x, y, _ in marks(root):
            if x1 == x2 and y1 < y - 7 and y + 7 < y2:
                assert abs(x - x1) > 1.5


def test_one_work_and_thirty_that_repeat_the_first_are_drawn() -> None:
    many = tuple((f"w{n}", f"Orrinsdottir & Thornquist {1800 + n}", 1800 + n) for n in range(30))
    lines = tuple((f"w{n}", "w0", n % 2 == 0, 7, 8) for n in range(1, 30))
    for narrow in (False, True):
        assert len(marks(drawn(Lineage("T", "D", WORKS[:1]), narrow))) == 1
        root = drawn(Lineage("T", "D", many, lines), narrow)
        assert len(marks(root)) == 30
        assert sum("7 of 8" in said(text) for text in root.iter(f"{NS}text")) == 29


def test_hostile_words_stay_words() -> None:
    nasty = '</title><script>alert(1)</script>&"<b>'
    for narrow in (False, True):
        lineage = Lineage(nasty, nasty, ((nasty, nasty, 1900), ("b", nasty, 1901)), (("b", nasty, True, 1, 1),))
        root = drawn(lineage, narrow)
        assert not list(root.iter(f"{NS}script")) and of_class(root, "route")
