"""Long measurements joined to specimens, errors of instruments, values far out."""

from __future__ import annotations

from fractions import Fraction

from auctorum.circumscription.plants import Plant, plants_in
from auctorum.corpus.measured import CellReader
from auctorum.corpus.model import Specimen
from auctorum.corpus.rows import told_apart
from auctorum.problems import Problem
from auctorum.records import schema
from auctorum.records.tables import parse_rows
from measuring import knowledge_base

CORPUS = knowledge_base()
NAMES = tuple(CORPUS.vocabulary)


def joined(specimens: str, measurements: str) -> tuple[dict[str, Plant], list[str]]:
    records, problems = parse_rows(specimens, "s.csv", schema.Specimen, NAMES)
    long, more = parse_rows(measurements, "m.csv", schema.MeasurementOrFact, ())
    told: list[Problem] = [*problems, *more]
    cells = CellReader(CORPUS.vocabulary, told.append)
    rows = [Specimen(record, None, None, measured, dates) for record, measured, dates in told_apart(
        records, long, cells, told.append
    )]  # fmt: skip
    told += cells.far_out()
    return {plant.id: plant for plant in plants_in(rows, CORPUS)}, [str(problem) for problem in told]


SPECIMENS = "occurrenceID,recordedBy,eventDate,lifeStage,measurementMethod,spur length [mm],spur length ± [mm]\n"
LONG = (
    "occurrenceID,measurementType,measurementValue,measurementUnit,measurementAccuracy,measurementMethod,"
    "measurementDeterminedBy,measurementDeterminedDate,lifeStage\n"
)


def test_long_measurements_join_their_specimen() -> None:
    plants, problems = joined(
        SPECIMENS + "A,M. Sallow,2023-10-03,mature,caliper,30.0,0.1\n",
        LONG + "A,spur length,34,mm,0.05 cm,ruler,J. Petrane,04.10.2023,\nA,spur length,12.0,mm,,,,,young\n",
    )
    assert problems == []
    plant = plants["A"]
    grown, young = plant.at("spur length", "mature"), plant.at("spur length", "young")
    assert grown is not None and young is not None
    assert (grown.value, grown.slack, grown.accuracy, grown.error) == (32, Fraction(1, 2), Fraction(1, 2), 1)
    assert (grown.by, grown.instrument) == ("J. Petrane | M. Sallow", "caliper | ruler")
    assert (young.value, young.accuracy, young.by, young.instrument) == (12, 0, "M. Sallow", "caliper")
    assert (plant.observed_by, plant.instrument) == ("M. Sallow", "caliper | ruler")
    assert plant.dates == ("2023-10-03", "2023-10-04")


def test_what_can_not_be_joined_is_told() -> None:
    _, problems = joined(
        SPECIMENS + "INV-0001,,,,,30,\nINV-0001,,,,,31,\n",
        LONG + "INV-0O01,spur length,34,mm,,,,,\nINV-0001,spur girth,3,mm,,,,,\nINV-0001,spur length,34,degrees,,,,,\n"
        "INV-0001,spur length,34,mm,much,,,,\n",
    )
    assert problems == [
        "s.csv:3:1: the occurrenceID `INV-0001` stands twice, first in line 2 "
        "(give each row its own; rows of one plant share an organismID)",
        "m.csv:2:1: no specimen `INV-0O01` (did you mean `INV-0001`?)",
        "m.csv:3:2: no character `spur girth` in characters.yaml (did you mean `spur length`?)",
        "m.csv:4:4: the unit `degree` does not fit the character `spur length` "
        "(correct the unit, or give the statement to the character it measures)",
        "m.csv:5:5: column `spur length ±`: 'much' is no number (write digits: 31.5 or 31,5)",
    ]


def test_the_unit_of_a_column_is_told_once() -> None:
    text = "occurrenceID,petal number [mm]\nA,5\nB,6\n"
    _, problems = joined(text, LONG)
    assert problems == [
        "s.csv:2:2: column `petal number`: the unit `mm` does not fit the character `petal number` "
        "(correct the unit, or give the statement to the character it measures)"
    ]


def test_a_value_far_out_is_a_warning_and_kept() -> None:
    rows = "".join(f"A{n},{30 + n}\n" for n in range(6))
    plants, problems = joined("occurrenceID,spur length [mm]\n" + rows + "B,20 m\nC,33000\n", LONG)
    assert problems == []  # 20 m is under a thousand times 33.5 mm; so is 33 m
    plants, problems = joined("occurrenceID,spur length [mm]\n" + rows + "B,200 m\n", LONG)
    assert problems == [
        "s.csv:8:2: warning: `spur length`: '200 m' is more than 1000 times the median of its column "
        "(check its unit and decimal mark)"
    ]
    seen = plants["B"].at("spur length", "mature")
    assert seen is not None and seen.value == 200_000


def test_an_error_is_brought_to_the_unit_of_the_measurement() -> None:
    cells = CellReader(CORPUS.vocabulary, lambda problem: None)
    place = schema.Specimen(occurrenceID="A").place
    (first,) = cells.row((("spur length", "mm", "2 in", 1),), place, (("spur length", "mm", "0.5", 2),))
    assert (first.unit, first.accuracy) == ("in", Fraction(5, 254))  # the error is in the unit of the cell
