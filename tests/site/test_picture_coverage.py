"""The coverage profile: steps to scale, open ends, marks of agreement, words that stay in the picture."""

from __future__ import annotations

import re
from xml.etree import ElementTree

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.site.pictures import svg
from auctorum.site.pictures.coverage_profile import HEADING, NARROW, WIDE, Profile, coverage_profile

NS = "{http://www.w3.org/2000/svg}"
STEPS = ((22, 24, 0.5), (24, 34, 1.0), (34, 44, 0.25))


def drawn(profile: Profile, narrow: bool = False) -> ElementTree.Element:
    """The picture as XML; every fill that it asks for is defined in it, and there is no number that is none."""
    picture = coverage_profile(profile, "k", narrow)
    root = ElementTree.fromstring(picture)
    assert set(re.findall(r"url\(#([^)]+)\)", picture)) <= {each.get("id") for each in root.iter()}
    assert not re.search(r"\b(nan|inf)\b", picture.split("</desc>")[1])
    return root


def of_class(root: ElementTree.Element, name: str) -> list[ElementTree.Element]:
    return [each for each in root.iter() if name in (each.get("class") or "").split()]


def words(root: ElementTree.Element) -> list[str]:
    return [text.text or "" for text in root.iter(f"{NS}text")]


def at(root: ElementTree.Element, label: str) -> float:
    """Where a tick stands across."""
    return next(float(text.get("x", "")) for text in root.iter(f"{NS}text") if text.text == label)


def corners(edge: ElementTree.Element) -> list[tuple[float, float]]:
    """The corners of a path of M, V and H."""
    found: list[tuple[float, float]] = []
    for letter, first, second in re.findall(r"([MVH])(-?[\d.]+)(?: (-?[\d.]+))?", edge.get("d", "")):
        x, y = found[-1] if found else (0.0, 0.0)
        found.append({"M": (float(first), float(second or 0)), "V": (x, float(first)), "H": (float(first), y)}[letter])
    return found


@pytest.mark.parametrize("narrow", [False, True])
def test_steps_stand_at_their_values_and_shares(narrow: bool) -> None:
    root = drawn(Profile("Spur length", "What it shows.", "mm", STEPS, label="var. longum"), narrow)
    legend, edge = of_class(root, "edge")
    assert legend.get("class") == "edge own"
    unit = (at(root, "40") - at(root, "20")) / 20
    base, top = (float(next(line.get("y1", "") for line in of_class(root, name))) for name in ("floor", "half"))
    height = 2 * (base - top)
    wanted = [(22, 0), (22, 0.5), (24, 0.5), (24, 1), (34, 1), (34, 0.25), (44, 0.25), (44, 0)]
    wanted = [(at(root, "20") + (value - 20) * unit, base - share * height) for value, share in wanted]
    assert corners(edge) == [pytest.approx(point, abs=0.11) for point in wanted]
    assert len(of_class(root, "bound")) == 4


def test_majority_and_core_stand_below_where_the_figures_say() -> None:
    profile = Profile("T", "D", "mm", STEPS, ((22, 34),), (24, 34))
    root = drawn(profile)
    (most,) = of_class(root, "most")
    left, unit = at(root, "20"), (at(root, "40") - at(root, "20")) / 20
    assert float(most.get("x", "")) == pytest.approx(left + 2 * unit, abs=0.1)
    assert float(most.get("width", "")) == pytest.approx(12 * unit, abs=0.1)
    (bracket,) = of_class(root, "bracket")
    assert re.findall(r"[\d.]+", bracket.get("d", ""))[0] == svg.number(left + 4 * unit)
    assert {"half or more: 22–34 mm", "shared by all: 24–34 mm"} <= set(words(root))


@pytest.mark.parametrize(
    ("steps", "heads"),
    [
        pytest.param(((None, 30, 1.0),), 1, id="lower-open"),
        pytest.param(((30, None, 1.0),), 1, id="upper-open"),
        pytest.param(((None, 10, 0.5), (10, 20, 1.0), (30, None, 0.5)), 2, id="both-with-a-gap"),
        pytest.param(((None, None, 1.0),), 2, id="nothing-stated"),
        pytest.param(((10, 20, 1.0),), 0, id="closed"),
        pytest.param((), 0, id="empty"),
    ],
)
def test_an_end_that_is_not_stated_has_a_head(steps: tuple, heads: int) -> None:
    for narrow in (False, True):
        root = drawn(Profile("T", "D", "mm", steps), narrow)
        assert len(of_class(root, "head")) == heads


def test_an_open_step_has_room_on_the_axis() -> None:
    """Without room the step would be nothing but its head."""
    root = drawn(Profile("T", "D", "mm", ((20, 50, 0.5), (50, None, 1.0))))
    points = corners(of_class(root, "edge")[0])
    assert points[-1][0] - points[-2][0] > 20


def test_a_gap_between_steps_goes_down_to_the_floor() -> None:
    root = drawn(Profile("T", "D", "mm", ((10, 20, 0.5), (30, 40, 0.5))))
    assert of_class(root, "edge")[0].get("d", "").count("M") == 2


def test_a_single_value_that_more_works_hold_is_a_spike() -> None:
    root = drawn(Profile("T", "D", "mm", ((10, 20, 0.5), (20, 20, 1.0), (20, 30, 0.5))))
    points = corners(of_class(root, "edge")[0])
    top = min(y for _, y in points)
    assert {x for x, y in points if y == top} == {at(root, "20")}


def test_the_other_taxon_differs_without_colour_and_the_threshold_has_its_words() -> None:
    profile = Profile(
        "T", "D", "mm", STEPS, label="var. longum", other=("var. robustum", ((14, 26, 1.0),)),
        threshold=(23, "23 mm: below it var. robustum"),
    )  # fmt: skip
    for narrow in (False, True):
        root = drawn(profile, narrow)
        assert {"var. longum", "var. robustum", "23 mm: below it var. robustum"} <= set(words(root))
        assert {each.get("fill") for each in of_class(root, "area") if "other" in each.get("class", "")} == {
            "url(#k-other)"
        }
        (parting,) = of_class(root, "parting")
        unit = (at(root, "40") - at(root, "20")) / 20
        assert float(parting.get("x1", "")) == pytest.approx(at(root, "20") + 3 * unit, abs=0.1)


labels = st.sampled_from(["var. longum", "Cremnocentron album var. longum, in the strict sense", "<b>", "W" * 90, ""])
ends = st.integers(0, 60)
some_steps = st.lists(st.tuples(ends, ends, st.sampled_from([0.25, 0.5, 1.0])), max_size=6).map(
    lambda found: tuple((min(low, high), max(low, high), share) for low, high, share in found)
)


@given(some_steps, labels, labels, st.booleans(), st.booleans(), ends)
@settings(deadline=None, max_examples=100)
def test_words_stay_in_the_picture_and_do_not_touch(
    steps: tuple, label: str, other: str, both: bool, narrow: bool, value: int
) -> None:
    threshold = (float(value), f"{value} mm: below it {other}") if both else None
    core = (steps[0][0], steps[0][1]) if steps else None
    profile = Profile(
        "T", "D", "mm", steps, ((0, 1),) if both else (), core, label, (other, steps) if both else None, threshold
    )  # fmt: skip
    boxes = []
    for text in drawn(profile, narrow).iter(f"{NS}text"):
        wide = svg.width_of(text.text or "", float(text.get("font-size", "")))
        left = float(text.get("x", "")) - wide * {"start": 0, "middle": 0.5, "end": 1}[text.get("text-anchor", "start")]
        foot = float(text.get("y", ""))
        assert left >= -2 and left + wide <= (NARROW if narrow else WIDE) + 2, text.text
        boxes.append((left, left + wide, foot - 9, foot + 2, text.text))
    for index, (left, right, top, foot, said) in enumerate(boxes):
        for other_left, other_right, other_top, other_foot, others in boxes[index + 1 :]:
            apart = right < other_left or other_right < left or foot <= other_top or other_foot <= top
            assert apart, f"{said!r} touches {others!r}"


def test_hostile_words_stay_words() -> None:
    nasty = '</desc><script>alert(1)</script>&"<b>'
    for narrow in (False, True):
        profile = Profile(
            nasty, nasty, nasty, STEPS, ((22, 34),), (24, 34), nasty, (nasty, STEPS), (3, nasty), nasty, nasty
        )  # fmt: skip
        root = drawn(profile, narrow)
        assert not list(root.iter(f"{NS}script")) and not list(root.iter(f"{NS}b"))
        description = root.find(f"{NS}desc")
        assert description is not None and description.text == nasty


def test_the_same_values_give_the_same_picture_and_say_what_is_shown() -> None:
    profile = Profile("T", "D", "mm", STEPS, ((22, 34),), (24, 34), "a")
    assert coverage_profile(profile, "k") == coverage_profile(profile, "k")
    assert HEADING in words(drawn(profile))
