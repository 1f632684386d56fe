"""Measured plants beside the authors: the value written from them, what each work covers, what they contradict."""

from __future__ import annotations

import random
from decimal import Decimal
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.values import Modality, States
from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.observed import Cover, Observed, all_observed, observed
from auctorum.circumscription.observed_value import quantile
from auctorum.circumscription.plants import plants
from auctorum.corpus.model import Corpus
from measuring import knowledge_base, with_plants, work

ALBUM = "exemplum-album"
TABLE = "occurrenceID,locationID,scientificName,identifiedBy,lifeStage,{column}\n"


def with_cells(corpus: Corpus, column: str, cells, name: str = "Exemplum album") -> Corpus:
    """The corpus with one mature plant for each cell, on two sites by turns."""
    rows = (f'R{n},S{n % 2},{name},M. Sallow,mature,"{cell}"\n' for n, cell in enumerate(cells))
    return with_plants(corpus, TABLE.format(column=column) + "".join(rows))


def found(corpus: Corpus, character: str, stage: str = "", taxon: str = ALBUM) -> Observed | None:
    findings = diagnosis(corpus, taxon).findings
    finding = next(one for one in findings if (one.character, one.stage) == (character, stage))
    return observed(corpus, finding, taxon, plants(corpus))


def seen(corpus: Corpus, character: str, stage: str = "") -> Observed:
    one = found(corpus, character, stage)
    assert one is not None
    return one


SPURS = knowledge_base(
    work("Orrin", 1889, "spur length: spur 22-34 mm"),
    work("Tolhurne", 1896, "spur length: spur (18-)22-34(-41) mm"),
    work("Maddrick", 1923, "spur length: spur up to 60 mm"),
    work("Isherow", 1938, "spur length: spur ½–1 in."),
)
ALL = knowledge_base(work("Orrin", 1889, "spur length: spur 22 mm", "petal number: petals 5", "aspect: facing N"))
ASPECTS = knowledge_base(work("Orrin", 1889, "aspect: facing NW to NE"), work("Vane", 1900, "aspect: facing S"))
COLOURS = knowledge_base(
    work("Orrin", 1889, "spur colour: spur ivory at maturity"),
    work("Vane", 1900, "spur colour: spur at maturity ivory, rarely cream"),
    work("Castle", 1930, "spur colour: spur green to ivory at maturity"),
)
TWENTY = [17, 22, 22, 25, 26, 28, 29, 30, 31, 34, 36, 37, 38, 40, 41, 42, 43, 44, 48, 52]


@pytest.mark.parametrize(
    ("column", "cells", "text"),
    [
        pytest.param("spur length [mm]", [25], "25 mm", id="one plant"),
        pytest.param("spur length [mm]", [40, 25, 31], "25–40 mm", id="few"),
        # q10 is at place 1.9: 22, q90 at place 17.1: 44 + 0.1 * 4 = 44.4
        pytest.param("spur length [mm]", TWENTY, "(17–)22–44(–52) mm", id="twenty"),
        # q10 = 22, so no lower extreme; q90 at place 8.1: 22 + 0.1 * 8 = 22.8
        pytest.param("spur length [mm]", [22] * 9 + [30], "22–23(–30) mm", id="ten"),
        pytest.param("spur length [mm]", ["22.0"] * 9 + ["30.0"], "22.0–22.8(–30.0) mm", id="tenths"),
        # to 0.1 mm, though two of ten are written without it; q10 = 22 + 0.9 * 0.5 and q90 = 22.5 + 0.1 * 7.5
        pytest.param(
            "spur length [mm]", ["22.5"] * 8 + ["22", "30"], "(22.0–)22.5–23.3(–30.0) mm", id="a nought left out"
        ),
        # three of ten are written without it: who measures so does not write tenths; q10 = 22.45, q90 = 30.1
        pytest.param("spur length [mm]", ["22.5"] * 7 + ["22", "30", "31"], "22–30(–31) mm", id="half millimetres"),
        pytest.param("spur length [cm]", [2] * 9 + [3], "20(–30) mm", id="cm"),
        # 0.50 in. is measured to 0.254 mm and so printed to 0.1 mm
        pytest.param("spur length [in]", ["0.50", "1.00"], "12.7–25.4 mm", id="inches"),
        # q10 = 4.9 and q90 = 6.1 are whole numbers of petals
        pytest.param("petal number", [4, 5, 5, 5, 5, 5, 5, 5, 6, 7], "(4–)5–6(–7)", id="count"),
        pytest.param("aspect [degree]", [350, 20, 5], "350° to 20°", id="across north"),
        pytest.param("aspect [degree]", [90, 135], "E to SE", id="east"),
    ],
)
def test_the_range_one_would_write(column, cells, text) -> None:
    character = column.partition(" [")[0]
    one = seen(with_cells(ALL, column, cells), character, "mature" if character == "spur length" else "")
    assert (one.text, one.n, one.sites) == (text, len(cells), min(2, len(cells)))
    assert (one.named_by, one.states) == (("M. Sallow",), ())


@pytest.mark.parametrize(
    ("cells", "text", "counts"),
    [
        pytest.param({"ivory": 12}, "ivory", {"ivory": 12}, id="all"),
        pytest.param({"ivory": 2, "cream": 1}, "cream or ivory", {"cream": 1, "ivory": 2}, id="few"),
        # beside 12 of ivory: 11 of cream are nearer to 1 than to 1/2, 5 of buff the other way
        pytest.param(
            {"ivory": 12, "cream": 11, "buff": 5},
            "cream or ivory; often buff",
            {"cream": 11, "ivory": 12, "buff": 5},
            id="often",
        ),
        # beside 20: 5 are 1/4, 3 near to 1/8, 1 is 1/20
        pytest.param(
            {"cream": 20, "ivory": 5, "buff": 3, "green": 1},
            "cream; sometimes ivory; occasionally buff; rarely green",
            {"green": 1, "cream": 20, "ivory": 5, "buff": 3},
            id="down to rare",
        ),
        pytest.param({"cream or ivory": 10}, "cream or ivory", {"cream": 10, "ivory": 10}, id="both on each plant"),
    ],
)
def test_the_states_one_would_write(cells, text, counts) -> None:
    plants_ = [cell for cell, number in cells.items() for _ in range(number)]
    one = seen(with_cells(COLOURS, "spur colour", plants_), "spur colour", "mature")
    assert (one.text, dict(one.states)) == (text, counts)


def cover(one: Observed, work_: str) -> Cover:
    return next(cover for cover in one.covers if cover.work == work_)


def test_what_works_cover_by_hand() -> None:
    """Of the twenty plants 9 lie from 22 to 34 mm and 14 from 18 to 41 mm; 17 mm and 18 mm, each to the millimetre,
    only touch. One inch, to the half inch, may be 31.75 mm, and so holds all up to 31 mm, which are 9."""
    one = seen(with_cells(SPURS, "spur length [mm]", TWENTY), "spur length", "mature")
    assert [cover.work for cover in one.covers] == ["orrin-1889", "tolhurne-1896", "maddrick-1923", "isherow-1938"]
    sides = {c.work: (c.typical, c.whole, c.beyond_low, c.beyond_high, c.contradicted) for c in one.covers}
    assert sides == {
        "orrin-1889": (9, 9, 1, 10, True),
        "tolhurne-1896": (9, 14, 1, 5, False),
        "maddrick-1923": (20, 20, 0, 0, False),
        "isherow-1938": (9, 9, 0, 11, True),
    }
    assert one.contradicted == (cover(one, "orrin-1889"), cover(one, "isherow-1938"))


@pytest.mark.parametrize(
    ("spur", "inside"),
    [
        ("34", True),
        ("34.5", True),
        ("34.55", False),
        ("35", False),
        ("34.6", False),
        ("21.5", True),
        ("21.49", False),
        ("21", False),
    ],
)
def test_inside_is_judged_within_the_precision_of_both(spur: str, inside: bool) -> None:
    """34 mm may be 34.5 mm; 35 mm may be as little as 34.5 mm, and then the two only touch."""
    one = seen(with_cells(SPURS, "spur length [mm]", [spur]), "spur length", "mature")
    assert bool(cover(one, "orrin-1889").whole) is inside


def test_directions_on_either_side_of_an_arc() -> None:
    """NW to NE is 315° to 45°, each to 45°: 67° is within 22.5° and half a degree of the end, 69° is not."""
    one = seen(with_cells(ASPECTS, "aspect [degree]", [350, 30, 5, 67, 293, 69, 100, 260]), "aspect")
    north, south = cover(one, "orrin-1889"), cover(one, "vane-1900")
    assert (north.typical, north.whole, north.beyond_low, north.beyond_high) == (5, 5, 1, 2)
    assert (south.whole, south.beyond_low, south.beyond_high) == (0, 5, 3)


def test_states_covered_by_hand() -> None:
    """Orrin knows ivory only; Vane takes cream for rare, and 12 of 14 plants show it; Castle covers the spectrum."""
    one = seen(
        with_cells(COLOURS, "spur colour", ["cream"] * 10 + ["ivory"] * 2 + ["cream or ivory"] * 2),
        "spur colour",
        "mature",
    )
    told = {c.work: (c.typical, c.whole, c.contradicted, c.too_rare) for c in one.covers}
    assert told == {
        "orrin-1889": (4, 4, True, ()),
        "vane-1900": (4, 14, True, ("cream",)),
        "castle-1930": (14, 14, False, ()),
    }


def test_a_rare_state_of_nine_in_twelve_plants_is_no_contradiction() -> None:
    """9 of 12 may be as few as 43 % of all plants."""
    one = seen(with_cells(COLOURS, "spur colour", ["cream"] * 9 + ["ivory"] * 3), "spur colour", "mature")
    assert not cover(one, "vane-1900").contradicted


def test_two_plants_contradict_nobody() -> None:
    """0 of 2 leaves a share of up to 84 %, 0 of 3 one of up to 71 %."""
    for spurs, contradicted in (([90, 95], False), ([90, 95, 99], True)):
        one = seen(with_cells(SPURS, "spur length [mm]", spurs), "spur length", "mature")
        assert cover(one, "orrin-1889").contradicted is contradicted


def test_nothing_measured_is_none_and_another_taxon_does_not_count() -> None:
    named_otherwise = with_cells(SPURS, "spur length [mm]", [25, 30], name="Exemplum nigrum")
    assert found(named_otherwise, "spur length", "mature") is None
    assert found(with_cells(SPURS, "petal number", [5]), "spur length", "mature") is None


def test_mature_plants_stand_for_a_character_that_nobody_speaks_of() -> None:
    corpus = with_cells(ALL, "spur colour", ["cream", "ivory"])
    (finding,) = (one for one in diagnosis(corpus, ALBUM).findings if one.character == "spur colour")
    one = observed(corpus, finding, ALBUM, plants(corpus))
    assert one is not None
    assert (one.stage, one.text, one.covers) == ("mature", "cream or ivory", ())


def test_all_findings_at_once() -> None:
    corpus = with_cells(SPURS, "petal number", [5, 6])
    every = all_observed(corpus, diagnosis(corpus, ALBUM).findings, ALBUM, plants(corpus))
    assert [*every] == [("petal number", "")]  # no spur was measured
    told = every["petal number", ""]
    assert (told.text, told.covers) == ("5–6", ())  # nobody states it


# Where the ranges of SPURS end, half their last digit out: only there may the precision of a plant decide.
ENDS = (21.5, 34.5, 17.5, 41.5, 60.5, 12.7 - 6.35, 25.4 + 6.35)
figures = st.lists(st.integers(1, 900).map(lambda tenths: f"{tenths / 10:.1f}"), min_size=1, max_size=30)


@settings(deadline=None, max_examples=30)
@given(figures, st.randoms())
def test_the_order_of_plants_changes_nothing(cells, chance: random.Random) -> None:
    corpus = with_cells(SPURS, "spur length [mm]", cells)
    every = plants(corpus)
    finding = next(one for one in diagnosis(corpus, ALBUM).findings if one.character == "spur length")
    mixed = chance.sample(every, len(every))
    assert observed(corpus, finding, ALBUM, mixed) == observed(corpus, finding, ALBUM, every)


@settings(deadline=None, max_examples=20)
@given(figures)
def test_who_states_the_lowest_and_the_highest_covers_all(cells) -> None:
    least, most = min(cells, key=float), max(cells, key=float)
    corpus = knowledge_base(work("Orrin", 1889, f"spur length: spur {least}-{most} mm"))
    one = seen(with_cells(corpus, "spur length [mm]", cells), "spur length", "mature")
    (whole,) = one.covers
    assert (whole.whole, whole.beyond_low, whole.beyond_high, whole.high) == (len(cells), 0, 0, 1.0)


@settings(deadline=None, max_examples=20)
@given(st.lists(st.integers(20, 300), min_size=1, max_size=20))
def test_the_unit_of_the_column_does_not_matter(hundredths) -> None:
    """Hundredths of an inch are multiples of 0.254 mm: value for value the same, within their own precision."""
    inches = seen(
        with_cells(SPURS, "spur length [in]", [f"{n / 100:.2f}" for n in hundredths]), "spur length", "mature"
    )
    metric = [f"{n * 254 // 1000}.{n * 254 % 1000:03}" for n in hundredths]
    mm = seen(with_cells(SPURS, "spur length [mm]", metric), "spur length", "mature")
    for bound in ("low", "high"):
        assert abs(getattr(inches.value, bound) - getattr(mm.value, bound)) <= Decimal("0.0505")
    for one, other in zip(inches.covers, mm.covers, strict=True):
        near = sum(any(abs(n * 0.254 - end) < 0.13 for end in ENDS) for n in hundredths)
        assert one.work == other.work
        assert max(abs(one.whole - other.whole), abs(one.typical - other.typical)) <= near


@settings(deadline=None, max_examples=150)
@given(st.lists(st.fractions(0, 1000), min_size=1, max_size=40), st.integers(0, 20))
def test_quantiles_are_those_of_numpy(values, twentieths) -> None:
    share = Fraction(twentieths, 20)
    wanted = np.quantile([float(one) for one in values], float(share))
    assert float(quantile(sorted(values), share)) == pytest.approx(wanted, abs=1e-9)


@settings(deadline=None, max_examples=60)
@given(st.lists(st.sampled_from(["green", "cream", "ivory", "buff"]), min_size=10, max_size=60))
def test_the_commonest_state_is_said_plainly_and_the_rarer_no_louder(cells) -> None:
    one = seen(with_cells(COLOURS, "spur colour", cells), "spur colour", "mature")
    assert isinstance(one.value, States)
    order = list(Modality)
    words = {share.state: order.index(share.modality) for share in one.value.shares}
    assert set(words) == set(cells)
    by_count = sorted(words, key=lambda state: -cells.count(state))
    assert words[by_count[0]] == 0
    assert [words[state] for state in by_count] == sorted(words.values())
