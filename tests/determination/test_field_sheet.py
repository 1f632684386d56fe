"""What stands on a field sheet: the order of worth, thresholds in both units, codes of states, criteria."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from functools import cache
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.units import convert
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.key.beside import with_sisters
from auctorum.circumscription.separation import separation
from auctorum.corpus.cautions import first_sentence
from auctorum.corpus.link import link
from auctorum.corpus.model import Corpus
from auctorum.corpus.readings import UNSTATED
from auctorum.corpus.resolve import find_taxon, lookup
from auctorum.determination.sheet.build import field_sheet
from auctorum.determination.sheet.items import worth
from auctorum.determination.sheet.sheet import Sheet, Where, Why
from auctorum.determination.sheet.units import codes, in_both_units, stated_in_both_units
from auctorum.nomenclature.code import applied
from auctorum.records.read import read

ROOT = Path(__file__).parents[2]
SPUR = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
HILL = Character("elevation", "habitat", "elevation", Kind.MEASURE, "m")
STEM = Character("plant height", "plant", "height", Kind.MEASURE, "cm")
TREE = Character("tree height", "tree", "height", Kind.MEASURE, "m")


@cache
def demo() -> Corpus:
    return applied(link(read(ROOT / "kb")[0])[0]).corpus


def taxon(name: str) -> str:
    return find_taxon(demo(), lookup(demo(), name)).id


LONGUM, ROBUSTUM = (f"Cremnocentron album var. {one}" for one in ("longum", "robustum"))


@cache
def of_two() -> Sheet:
    return field_sheet(demo(), [taxon(LONGUM), taxon(ROBUSTUM)])


@cache
def of_three() -> Sheet:
    return field_sheet(demo(), with_sisters(demo(), taxon(LONGUM)))


# --- order


@pytest.mark.parametrize("sheet", [of_two, of_three])
def test_the_best_first_and_the_site_last(sheet) -> None:
    items = sheet().items
    plants = [item.worth for item in items if item.where is not Where.SITE]
    sites = [item.worth for item in items if item.where is Where.SITE]
    assert plants == sorted(plants, reverse=True) and sites == sorted(sites, reverse=True)
    assert [item.where is Where.SITE for item in items] == [False] * len(plants) + [True] * len(sites)


def test_worth_is_what_is_parted_for_the_trouble() -> None:
    lens = Character("seed surface", "seed", "surface", Kind.NOMINAL, cost=Decimal(5))
    assert worth((0.0, 0.0), SPUR) == 1 and worth((0.5, None), SPUR) == 0
    assert worth((0.0, 0.5), SPUR) == 0.5
    assert worth((0.05,), lens) == pytest.approx(0.9 / 5)


def test_worth_is_reckoned_from_the_separation() -> None:
    sheet = of_three()
    found = separation(demo(), sheet.taxa)
    for item in sheet.items:
        for at in item.stages:
            told = [one for one in found.partings if (one.character, one.stage) == (item.character, at.stage)]
            by_hand = sum(1 - 2 * one.error for one in told if one.error is not None) / len(sheet.pairs)
            assert at.worth == pytest.approx(by_hand / float(demo().vocabulary[item.character].cost))


def test_what_parts_nothing_is_left_out_unless_asked_for() -> None:
    plain = {item.character for item in of_two().items}
    assert "plant height" not in plain and "plant height" in of_two().part_nothing
    asked = field_sheet(demo(), of_two().taxa, characters=["plant height"])
    item = next(item for item in asked.items if item.character == "plant height")
    assert item.why is Why.ASKED and "plant height" not in asked.part_nothing
    assert [one.character for one in asked.shortened(1).items] == ["plant height"]
    hairs = field_sheet(demo(), of_three().taxa, characters=["leaf hairiness"])  # which parts some by itself
    assert [one.character for one in hairs.shortened(1).items] == ["leaf hairiness"]
    without = field_sheet(demo(), of_two().taxa, without=["leaf apex"])
    assert "leaf apex" not in {item.character for item in without.items}


def test_habitat_is_written_once_and_a_ratio_not_at_all() -> None:
    once = {column.heading: column.once for column in of_two().columns}
    assert once["aspect [degree]"] and once["elevation [m]"] and once["eventDate"]
    assert not once["spur length [mm]"] and not once["occurrenceID"]
    assert "spur to petal" not in " ".join(once)
    petal = next(item for item in of_two().items if item.character == "petal length")
    assert petal.why is Why.RATIO  # by itself it parts nothing


@pytest.mark.parametrize("most", range(1, 12))
def test_a_shorter_sheet_keeps_what_decides_and_names_what_is_gone(most: int) -> None:
    whole = of_three()
    short = whole.shortened(most)
    assert 1 <= len(short.items) <= most
    assert short.items[0].character == "spur length" or most > 1
    assert [item for item in whole.items if item in short.items] == list(short.items)
    assert {item.character for item in short.items} | set(short.no_room) == {item.character for item in whole.items}
    kept = {item.character for item in short.items}
    assert all(set(demo().vocabulary[name].of) <= kept for name in kept)


def test_no_stage_that_nobody_stated_is_asked_for() -> None:
    assert all(at.stage != UNSTATED for item in of_three().items for at in item.stages)
    assert any("var. album" in "".join(text for text, _ in one) for one in of_three().mind)


# --- thresholds


@pytest.mark.parametrize("sheet", [of_two, of_three])
def test_thresholds_are_those_of_the_separation(sheet) -> None:
    """Every cut that helps a pair stands on the sheet, with that pair on its two sides, and no other does."""
    told = sheet()
    found = separation(demo(), told.taxa)
    for item in told.items:
        character = demo().vocabulary[item.character]
        for at in item.stages:
            printed = {(a, b, one.start) for one in at.boundaries for a in one.below for b in one.above}
            cuts = [
                one
                for one in found.partings
                if (one.character, one.stage) == (item.character, at.stage) and one.cut is not None
            ]
            useful = [one for one in cuts if (one.error or 0) <= 0.15]
            wanted = {(one.lower, one.b if one.lower == one.a else one.a) for one in useful}
            if useful:
                assert {(a, b) for a, b, _ in printed} == wanted
            if character.kind is Kind.MEASURE:
                for one in useful:
                    upper = one.b if one.lower == one.a else one.a
                    assert (one.lower, upper, in_both_units(one.cut.value, character)) in printed


def test_the_spur_decides_at_25_mm() -> None:
    spur = next(item for item in of_two().items if item.character == "spur length")
    (at,) = spur.stages
    assert at.stage == "mature" and at.decides == ("at least 25 mm (0.98 in.)",)
    (boundary,) = at.boundaries
    assert boundary.start == "25 mm (0.98 in.)"
    assert (boundary.below, boundary.above) == ((taxon(ROBUSTUM),), (taxon(LONGUM),))
    (rule,) = of_two().rules
    assert rule.decisive == "spur length (mature) at least 25 mm (0.98 in.)"
    assert "elevation 150–420 m (490–1380 ft)" in rule.supporting


def test_steps_of_counts_and_of_spectra() -> None:
    by_name = {item.character: item for item in of_three().items}
    (teeth,) = by_name["leaf tooth number"].stages[0].boundaries
    assert int(teeth.upto) + 1 == int(teeth.start)
    states = [name for _, name in by_name["leaf hairiness"].states]
    for one in by_name["leaf hairiness"].stages[0].boundaries:
        assert states.index(one.start) == states.index(one.upto) + 1


# Inches of 25.4 mm and feet of 304.8 mm (international yard and pound agreement of 1959), worked out by hand.
@pytest.mark.parametrize(
    ("value", "character", "printed"),
    [
        ("25", SPUR, "25 mm (0.98 in.)"),  # 0.9843
        ("13.5", SPUR, "13.5 mm (0.53 in.)"),  # 0.5315
        ("254", SPUR, "254 mm (10 in.)"),
        ("0.4", SPUR, "0.4 mm (0.016 in.)"),  # two decimals would be a quarter too much
        ("22", STEM, "22 cm (8.66 in.)"),  # 8.661
        ("200", HILL, "200 m (660 ft)"),  # 656.2
        ("4.6", HILL, "4.6 m (15 ft)"),  # 15.09
        ("12.5", TREE, "12.5 m (41 ft)"),  # 41.01
    ],
)
def test_both_units(value: str, character: Character, printed: str) -> None:
    assert in_both_units(Fraction(value), character) == printed


@given(st.integers(1, 100_000).map(lambda tenths: Fraction(tenths, 10)))
@settings(deadline=None, max_examples=200)
def test_inches_are_true_to_the_millimetres(value: Fraction) -> None:
    inches = in_both_units(value, SPUR).split("(")[1].removesuffix(" in.)")
    back = convert(Fraction(inches), "in", "mm")
    assert abs(back - value) <= max(value / 16, Fraction(127, 1000))  # half a hundredth of an inch


def test_a_value_that_cannot_be_read_stays_as_it_is() -> None:
    assert stated_in_both_units("about so long", SPUR) == "about so long"
    assert stated_in_both_units("150–420 m", HILL) == "150–420 m (490–1380 ft)"


# --- states


@given(st.lists(st.text("abcé -", min_size=1, max_size=6).map(str.strip).filter(bool), max_size=8, unique=True))
@settings(deadline=None, max_examples=200)
def test_a_code_is_the_beginning_of_one_state_alone(states: list[str]) -> None:
    for code, name in codes(states):
        assert name.startswith(code)
        assert code == name or [one for one in states if one.startswith(code)] == [name]
    assert [name for _, name in codes(states)] == states


def test_cautions_in_short() -> None:
    assert first_sentence("Ask first. Then go.") == "Ask first." and first_sentence("Eat nothing") == "Eat nothing"
    assert "Ask first: wild plants and whole cliffs may be protected." in of_two().cautions
    assert "collect nothing" in of_two().cautions[0] and "opinion" in of_two().cautions[-1]


def test_one_taxon_alone_is_refused() -> None:
    with pytest.raises(ValueError, match="two taxa or more"):
        field_sheet(demo(), [taxon(LONGUM)])
