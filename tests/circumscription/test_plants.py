"""Rows of specimens.csv as plants: means, pooled states, stages, names and slack."""

from __future__ import annotations

import random
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.combined_cells import about_their_mean
from auctorum.circumscription.plants import Plant, plants, plants_of
from measuring import knowledge_base, with_plants

CORPUS = knowledge_base()
COLUMNS = (
    "occurrenceID,organismID,locationID,scientificName,identifiedBy,lifeStage,sex,spur length [mm],spur length [in],"
    "petal number,style length [mm],spur colour,aspect\n"
)
SPUR = ("spur length", "mature")
KEYS = COLUMNS.strip().split(",")


def row(id_: str, **cells: str) -> str:
    """A row: `spur_mm`, `spur_in`, `petals`, `style`, `colour` stand for the columns of measurements."""
    column = {
        "plant": "organismID", "site": "locationID", "name": "scientificName", "by": "identifiedBy",
        "stage": "lifeStage", "sex": "sex", "spur_mm": "spur length [mm]", "spur_in": "spur length [in]",
        "petals": "petal number", "style": "style length [mm]", "colour": "spur colour", "aspect": "aspect",
    }  # fmt: skip
    given_ = {column[key]: value for key, value in cells.items()} | {"occurrenceID": id_}
    return ",".join(given_.get(key, "") for key in KEYS)


def read(*rows: str) -> tuple[Plant, ...]:
    return plants(with_plants(CORPUS, COLUMNS + "\n".join(rows) + "\n"))


def seen(plant: Plant, character: str, stage: str = "") -> tuple:
    one = plant.at(character, stage)
    assert one is not None
    return (one.value, one.states, one.slack, one.rows)


def test_rows_of_one_organism_are_one_plant_in_the_order_of_first_rows() -> None:
    found = read(row("A", plant="P"), row("B"), row("C", plant="P"), row("D", plant="B"))
    assert [plant.id for plant in found] == ["P", "B"]


@pytest.mark.parametrize(
    ("rows", "key", "value", "slack", "number"),
    [
        pytest.param([{"spur_mm": "22"}], SPUR, "22", "1/2", 1, id="one row"),
        pytest.param([{"spur_mm": "22"}, {"spur_mm": "25"}], SPUR, "47/2", "1/2", 2, id="mean"),
        pytest.param([{"spur_mm": "22.0"}, {"spur_mm": "25"}], SPUR, "47/2", "1/2", 2, id="coarsest"),
        pytest.param([{"spur_mm": "22.0"}, {"spur_mm": '"22,5"'}], SPUR, "89/4", "1/20", 2, id="comma"),
        pytest.param([{"spur_in": "1.25"}], SPUR, "127/4", "127/1000", 1, id="inches"),
        pytest.param([{"spur_in": "1"}, {"spur_mm": "25.4"}], SPUR, "127/5", "127/10", 2, id="two units"),
        pytest.param(
            [{"spur_in": "1.00", "spur_mm": "27.4"}, {"spur_mm": "30.4"}],
            SPUR, "142/5", "127/1000", 2, id="two columns are one row",
        ),
        pytest.param([{"petals": "5"}, {"petals": "6"}], ("petal number", ""), "11/2", "1/2", 2, id="count"),
        pytest.param([{"aspect": "350"}, {"aspect": "20"}], ("aspect", ""), "5", "1/2", 2, id="across north"),
        pytest.param([{"aspect": "80"}, {"aspect": "100"}], ("aspect", ""), "90", "1/2", 2, id="east"),
    ],
)  # fmt: skip
def test_numbers(rows, key, value, slack, number) -> None:
    (plant,) = read(*(row(f"R{place}", plant="P", **cells) for place, cells in enumerate(rows)))
    assert seen(plant, *key) == (Fraction(value), (), Fraction(slack), number)


@pytest.mark.parametrize(
    ("cells", "stage", "states"),
    [
        pytest.param(["ivory"], "mature", {"ivory": "1"}, id="one"),
        pytest.param(["ivory", "cream"], "mature", {"cream": "1/2", "ivory": "1/2"}, id="pooled"),
        pytest.param(["cream or ivory", "ivory"], "mature", {"cream": "1/4", "ivory": "3/4"}, id="each row the same"),
        pytest.param(["green when young"], "young", {"green": "1"}, id="stage of the cell"),
        pytest.param(["green when young, rarely cream"], "young", {"green": "20/21", "cream": "1/21"}, id="carried on"),
        pytest.param(["green when young, ivory at maturity"], "mature", {"ivory": "1"}, id="two stages"),
    ],
)
def test_states(cells, stage, states) -> None:
    (plant,) = read(
        *(row(f"R{place}", plant="P", stage="mature", colour=f'"{cell}"') for place, cell in enumerate(cells))
    )
    wanted = tuple((state, Fraction(share)) for state, share in states.items())
    assert seen(plant, "spur colour", stage) == (None, wanted, 0, len(cells))


@pytest.mark.parametrize(
    ("cells", "character", "stages"),
    [
        pytest.param({"stage": "young", "spur_mm": "9"}, "spur length", ["young"], id="as stated"),
        pytest.param({"stage": "old", "spur_mm": "9"}, "spur length", ["mature"], id="old is mature"),
        pytest.param({"spur_mm": "9"}, "spur length", ["mature"], id="a figure without a stage"),
        pytest.param({"colour": "green"}, "spur colour", ["stage not stated"], id="a state without a stage"),
        pytest.param({"stage": "young", "petals": "5"}, "petal number", [""], id="not split"),
        pytest.param({"stage": "mature", "sex": "female", "style": "4"}, "style length", ["female"], id="sex"),
        pytest.param({"stage": "mature", "sex": "male", "spur_mm": "9"}, "spur length", ["mature"], id="sex elsewhere"),
    ],
)
def test_stages(cells, character, stages) -> None:
    (plant,) = read(row("R", **cells))
    assert [(one.character, one.stage) for one in plant.observations] == [(character, stage) for stage in stages]


def test_a_growing_plant_has_both_stages_in_the_order_of_the_vocabulary() -> None:
    (plant,) = read(
        row("A", plant="P", stage="mature", spur_mm="36", petals="5", colour="ivory"),
        row("B", plant="P", stage="young", spur_mm="18"),
    )
    assert [(one.character, one.stage) for one in plant.observations] == [
        ("spur length", "young"),
        ("spur length", "mature"),
        ("petal number", ""),
        ("spur colour", "mature"),
    ]
    assert plant.at("spur length", "old") is None


ALBUM, NIGRUM = "exemplum-album", "exemplum-nigrum"


@pytest.mark.parametrize(
    ("names", "taxon", "name"),
    [
        pytest.param(["Exemplum album"], ALBUM, ALBUM, id="named"),
        pytest.param([""], None, None, id="not named"),
        pytest.param(["", "Exemplum album"], ALBUM, ALBUM, id="named later"),
        pytest.param(["Exemplum album", "Exemplum nigrum"], None, None, id="two taxa: no guess"),
        pytest.param(["Exemplum album", "Exemplum novum"], None, None, id="one of them unknown"),
        pytest.param(["Exemplum nullum"], None, "exemplum-nullum", id="nobody accepts it"),
    ],
)
def test_names(names, taxon, name) -> None:
    (plant,) = read(*(row(f"R{place}", plant="P", name=said) for place, said in enumerate(names)))
    assert (plant.taxon, plant.name) == (taxon, name)


def test_site_and_who_named_it() -> None:
    moved, kept = read(
        row("A", plant="P", site="S1", name="Exemplum album", by="J. Petrane"),
        row("B", plant="P", site="S2", name="Exemplum album", by="A. Sallow"),
        row("C", plant="Q", site="S1", by="M. Nobody"),
        row("D", plant="Q"),
    )
    assert (moved.site, moved.identified_by) == (None, "A. Sallow | J. Petrane")
    assert (kept.site, kept.identified_by) == ("S1", "")  # who names no name names nothing


WHO = (
    "occurrenceID,organismID,recordedBy,eventDate,degreeOfEstablishment,establishmentMeans,measurementMethod,"
    "spur length [mm],spur length [in],spur length ± [mm]\n"
)


def test_who_measured_with_what_when_and_how_well() -> None:
    (plant,) = plants(
        with_plants(
            CORPUS,
            WHO
            + "A,P,M. Sallow | J. Petrane,2023-10-03,cultivated,,caliper,30.0,,0.1\n"
            + "B,P,J. Petrane,02.10.2023,,introduced,ruler,,1.25,0.5\n",
        )
    )
    assert (plant.observed_by, plant.instrument, plant.establishment, plant.dates) == (
        "J. Petrane | M. Sallow",
        "caliper | ruler",
        "cultivated | introduced",
        ("2023-10-02", "2023-10-03"),
    )
    one = plant.at("spur length", "mature")
    assert one is not None
    assert (one.value, one.accuracy, one.by, one.instrument) == (
        Fraction("30.875"), Fraction(1, 2), "J. Petrane | M. Sallow", "caliper | ruler",
    )  # fmt: skip
    assert one.error == one.slack + one.accuracy == Fraction(127, 1000) + Fraction(1, 2)


@pytest.mark.parametrize(
    ("cell", "value", "slack"),
    [
        pytest.param("31; 33; 35", "33", "1/2", id="several"),
        pytest.param("30–34", "32", "2", id="range"),
        pytest.param("1¼ in", "127/4", "127/40", id="fraction-in-inches"),
        pytest.param("ca. 31", "31", "1", id="about"),
    ],
)
def test_cells_with_more_than_a_number(cell: str, value: str, slack: str) -> None:
    (plant,) = read(row("A", spur_mm=cell))
    assert seen(plant, *SPUR) == (Fraction(value), (), Fraction(slack), 1)


def test_plants_of_a_taxon() -> None:
    found = read(
        row("A", name="Exemplum album"), row("B", name="Exemplum nigrum"), row("C"), row("D", name="Exemplum album")
    )
    assert [plant.id for plant in plants_of(found, ALBUM)] == ["A", "D"]


@settings(deadline=None, max_examples=40)
@given(
    st.lists(st.tuples(st.sampled_from("PQ"), st.integers(1, 60), st.sampled_from(["green", "ivory"])), min_size=1),
    st.randoms(),
)
def test_the_order_of_rows_changes_no_plant(told, chance: random.Random) -> None:
    """Against means taken one by one, too."""
    rows = [
        row(f"R{n}", plant=id_, spur_mm=str(spur), colour=colour, stage="mature")
        for n, (id_, spur, colour) in enumerate(told)
    ]
    found = read(*rows)
    mixed = chance.sample(rows, len(rows))
    assert {plant.id: plant for plant in read(*mixed)} == {plant.id: plant for plant in found}
    for plant in found:
        spurs = [spur for id_, spur, _ in told if id_ == plant.id]
        green = sum(colour == "green" for id_, _, colour in told if id_ == plant.id)
        assert seen(plant, "spur length", "mature")[0] == Fraction(sum(spurs), len(spurs))
        assert dict(seen(plant, "spur colour", "mature")[1]).get("green", 0) == Fraction(green, len(spurs))


@settings(deadline=None, max_examples=100)
@given(st.lists(st.integers(0, 359), min_size=1, max_size=8), st.integers(0, 359))
def test_directions_turned_with_the_compass(degrees, turn) -> None:
    """The same directions stay the same, and lie as far apart after all are turned by one angle."""
    found = about_their_mean([Fraction(one) for one in degrees])
    assert [one % 360 for one in found] == degrees
    assert 0 <= min(found) < 360
    arc = max(degrees) - min(degrees)
    if arc < 90:  # far from cancelling out
        turned = about_their_mean([Fraction((one + turn) % 360) for one in degrees])
        assert max(turned) - min(turned) == arc
