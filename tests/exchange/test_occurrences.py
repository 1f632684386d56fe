"""Sites and plants as Darwin Core tables and GeoJSON, on rows written here."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace
from decimal import Decimal
from itertools import pairwise

import pytest

from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.corpus.model import Corpus, Measurement, Specimen
from auctorum.determination.places.localities import own_place
from auctorum.exchange.occurrences import sites_csv, sites_geojson, specimens_csv
from auctorum.problems import Place
from auctorum.records import schema
from auctorum.records.fields import PLACE_KEY
from building import corpus_of

WALL = schema.Site(
    locationID="W1", locality="Blue Step", island="Nowhere", decimalLatitude=Decimal("-44.1127"),
    decimalLongitude=Decimal("118.6431"), minimumElevationInMeters=Decimal(270), habitat="Wall", substrate="basalt",
)  # fmt: skip
NOWHERE = schema.Site(locationID="W2", island="=1+1")
ELEVATION = Character("elevation", "habitat", "elevation", Kind.MEASURE, "m")
OF_SITE = Character("site elevation", "site", "elevation", Kind.MEASURE, "m")  # of the place, by another name
STEPS = Character("steps from the path", "habitat", "steps", Kind.COUNT)


def knowledge_base(*rows: Specimen) -> Corpus:
    corpus, _ = corpus_of()
    vocabulary = Vocabulary((*corpus.vocabulary.characters, ELEVATION, OF_SITE, STEPS))
    return replace(corpus, vocabulary=vocabulary, sites={"W1": WALL, "W2": NOWHERE}, specimens=rows)


def plant(site: str | None = "W1", measured: tuple[Measurement, ...] = (), **cells: object) -> Specimen:
    return Specimen(schema.Specimen(occurrenceID="P1", **cells), None, site, measured)  # type: ignore[arg-type]


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text)))


def only(*plants: Specimen, exactly: bool = False) -> dict[str, str]:
    return rows(specimens_csv(knowledge_base(*plants), exactly=exactly)[0])[0]


def test_a_negative_latitude_stays_a_number_and_a_formula_becomes_words() -> None:
    first, second = rows(sites_csv(knowledge_base()))
    assert (first["decimalLatitude"], first["coordinatePrecision"]) == ("-44.1", "0.1")
    assert second["island"] == "'=1+1"
    assert (second["decimalLatitude"], second["dataGeneralizations"], second["informationWithheld"]) == ("", "", "")
    assert not {"locality", "habitat", "locationRemarks"} & first.keys()


def test_exact_sites_have_the_columns_that_others_lack() -> None:
    first, _ = rows(sites_csv(knowledge_base(), exactly=True))
    assert (first["decimalLatitude"], first["locality"], first["habitat"]) == ("-44.1127", "Blue Step", "Wall")
    assert (first["minimumElevationInMeters"], first["dataGeneralizations"]) == ("270", "")


def test_geojson_draws_the_cell_counterclockwise_and_closed() -> None:
    """RFC 7946, 3.1.6: a linear ring is closed, and an exterior ring counterclockwise; 3.1.1: longitude first."""
    cell, nowhere = json.loads(sites_geojson(knowledge_base()))["features"]
    ((ring),) = cell["geometry"]["coordinates"]
    assert cell["geometry"]["type"] == "Polygon"
    assert ring[0] == ring[-1] and len(ring) == 5
    twice_the_area = sum(a[0] * b[1] - b[0] * a[1] for a, b in pairwise(ring))
    assert twice_the_area == pytest.approx(2 * 0.1 * 0.1)  # positive: counterclockwise
    assert {tuple(corner) for corner in ring} == {(x, y) for x in (118.6, 118.7) for y in (-44.2, -44.1)}
    assert cell["properties"]["decimalLatitude"] == -44.1
    assert nowhere["geometry"] is None  # RFC 7946, 3.2: a Feature without a place


def test_geojson_of_exact_sites_has_points() -> None:
    wall = json.loads(sites_geojson(knowledge_base(), exactly=True))["features"][0]
    assert wall["geometry"] == {"type": "Point", "coordinates": [118.6431, -44.1127]}


@pytest.mark.parametrize(
    ("cells", "basis"),
    [
        pytest.param({}, "HumanObservation", id="somebody-saw-it"),
        pytest.param({"degreeOfEstablishment": "native"}, "HumanObservation", id="wild"),
        pytest.param({"catalogNumber": "XX 12"}, "PreservedSpecimen", id="in-a-herbarium"),
        pytest.param({"degreeOfEstablishment": "Cultivated"}, "LivingSpecimen", id="in-a-garden"),
        pytest.param({"degreeOfEstablishment": "native | managed"}, "LivingSpecimen", id="kept"),
        pytest.param({"degreeOfEstablishment": "uncultivated"}, "HumanObservation", id="wild"),
        pytest.param({"degreeOfEstablishment": "cultivated", "catalogNumber": "1"}, "PreservedSpecimen", id="both"),
    ],
)
def test_basis_of_record(cells: dict[str, str], basis: str) -> None:
    assert only(plant(**cells))["basisOfRecord"] == basis


def test_measurements_leave_as_typed_in_the_order_of_the_vocabulary() -> None:
    cells = (("spur colour", "", "ivory", 3), ("spur length", "mm", "31,50", 2), ("spur length", "mm", "-1", 5))
    text, left_out = specimens_csv(knowledge_base(plant(measurements=cells[:2], accuracies=(cells[2],))))
    (row,) = rows(text)
    assert (row["spur length [mm]"], row["spur length ± [mm]"], row["spur colour"]) == ("31,50", "-1", "ivory")
    assert text.splitlines()[0].endswith("spur length [mm],spur length ± [mm],spur colour")
    assert left_out == ()


def test_a_long_table_fills_what_the_row_leaves_open() -> None:
    long = (Measurement("petal number", "", Decimal(5), ""), Measurement("petal number", "", Decimal(6), ""))
    assert only(plant(measured=long))["petal number"] == "5 | 6"


def test_the_elevation_of_a_single_plant_stays_and_a_spur_that_looks_like_a_latitude_leaves() -> None:
    cells = (("elevation", "m", "287", 2), ("spur length", "mm", "44.11", 3), ("site elevation", "m", "287", 4))
    cells += (("steps from the path", "", "287", 5),)
    row = only(plant(measurements=cells))
    assert row["spur length [mm]"] == "44.11"
    assert "steps from the path" not in row
    assert not any("elevation" in column and "[" in column for column in row) and "287" not in str(row)
    assert "what stands under elevation" in row["informationWithheld"]


def test_a_remark_that_names_the_locality_is_left_out_and_its_line_told() -> None:
    text, left_out = specimens_csv(knowledge_base(plant(occurrenceRemarks="left of the Blue Step")))
    assert rows(text)[0]["occurrenceRemarks"] == ""
    assert len(left_out) == 1


def test_a_plant_with_coordinates_of_its_own_is_generalised_by_them() -> None:
    own = {"decimalLatitude": Decimal("12.3456"), "decimalLongitude": Decimal("-7.8912"), "locality": "Red Step"}
    shown = only(plant(None, **own))
    assert (shown["decimalLatitude"], shown["decimalLongitude"], shown["locationID"]) == ("12.3", "-7.8", "")
    assert "Red Step" not in str(shown) and "the name of the locality" in shown["informationWithheld"]
    at_site = only(plant(**own))
    assert (at_site["decimalLatitude"], at_site["locationID"], at_site["island"]) == ("12.3", "W1", "Nowhere")
    assert only(plant(None, **own), exactly=True)["decimalLatitude"] == "12.3456"


def test_a_plant_of_no_place_says_nothing_of_one() -> None:
    shown = only(plant(None))
    assert (shown["decimalLatitude"], shown["dataGeneralizations"], shown["informationWithheld"]) == ("", "", "")


def test_a_plant_with_a_locality_of_its_own_keeps_the_line_of_its_site() -> None:
    corpus, line = knowledge_base(), Place("sites.csv", 7)
    corpus = replace(corpus, sites={"W1": schema.Site(**{"locationID": "W1", PLACE_KEY: line})})
    found = own_place(plant(locality="Hidden Combe, invented"), corpus)
    assert found is not None and (found.locality, found.place) == ("Hidden Combe, invented", line)
