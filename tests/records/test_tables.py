"""CSV text -> rows: quirks are read, faults are named by row and column."""

from __future__ import annotations

import pytest

from auctorum.records import schema
from auctorum.records.tables import parse_rows

CHARACTERS = ("spur length", "spur colour")


def test_measurements_are_kept_as_typed() -> None:
    text = "occurrenceID,spur length [mm],spur colour,spur length [in]\nA1,31.50,ivory,\nA2,,,1.25\n"
    rows, problems = parse_rows(text, "s.csv", schema.Specimen, CHARACTERS)
    assert problems == []
    assert [row.measurements for row in rows] == [
        (("spur length", "mm", "31.50", 2), ("spur colour", "", "ivory", 3)),
        (("spur length", "in", "1.25", 4),),
    ]
    assert rows[1].place == ("s.csv", 3, 1)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        pytest.param("", ["s.csv:1:1: the file is empty (give a line of column names)"], id="empty"),
        pytest.param(
            "occurenceID\nA\n",
            [
                "s.csv:1:1: the column `occurenceID` is not known and was left out "
                "(did you mean `occurrenceID`? use a Darwin Core term of the record, or `character [unit]`)",
                "s.csv:1:1: the column `occurrenceID` is missing (add it)",
                "s.csv:2:1: the key `occurrenceID` is missing (add it)",
            ],
            id="misspelt-column",
        ),
        pytest.param(
            "occurrenceID,recordedBy,recordedBy\nA,B,C\n",
            ["s.csv:1:3: the column `recordedBy` stands twice (keep one; the first was read)"],
            id="column-twice",
        ),
        pytest.param(
            "occurrenceID\nA,B\n",
            [
                "s.csv:2:1: 2 cells in a table of 1 columns; the row was left out "
                "(put cells that hold a separator in quotation marks)"
            ],
            id="too-many-cells",
        ),
        pytest.param(
            "occurrenceID,spur lenght [mm]\nA,31\nB,32\n",
            [
                "s.csv:1:2: the column `spur lenght [mm]` is not known and was left out "
                "(did you mean `spur length`? use a Darwin Core term of the record, or `character [unit]`)"
            ],
            id="unknown-character-once-at-its-column",
        ),
        pytest.param(
            'occurrenceID\n"A\n',
            [
                "s.csv:2:1: not readable as CSV from here to the end, 1 lines: unexpected end of data "
                "(check the quotation marks)"
            ],
            id="open-quote",
        ),
    ],
)
def test_faults(text: str, said: list[str]) -> None:
    _, problems = parse_rows(text, "s.csv", schema.Specimen, CHARACTERS)
    assert [str(problem) for problem in problems] == said


def test_a_number_may_have_a_comma_and_must_be_one() -> None:
    text = 'locationID;decimalLatitude;role\nA;"-45,3";candidate\nB;north;known\nC;1;lost\n'
    rows, problems = parse_rows(text, "s.csv", schema.Site, ())
    assert [(row.locationID, str(row.decimalLatitude), row.role) for row in rows] == [
        ("A", "-45.3", "candidate"),
        ("B", "None", "known"),
        ("C", "1", "known"),
    ]
    assert [str(one).split(" (")[0] for one in problems] == [
        "s.csv:3:2: `decimalLatitude`: 'north' is no number",
        "s.csv:4:3: `role`: 'lost' is none of the known words",
    ]


def test_a_bad_cell_is_named_by_its_column() -> None:
    text = "locationID,locality,decimalLatitude\nA,Cliff,120\nB,Cliff,-12.5\n"
    rows, problems = parse_rows(text, "s.csv", schema.Site, ())
    assert [(row.locationID, row.locality, row.decimalLatitude is None) for row in rows] == [
        ("A", "Cliff", True),
        ("B", "Cliff", False),
    ]
    assert str(problems[0]).startswith("s.csv:2:3: `decimalLatitude`: '120'")


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_separators_blank_rows_and_stray_spaces(delimiter: str) -> None:
    text = f"\ufefflocationID{delimiter}locality\r\n A {delimiter} High Cliff \r\n\r\n"
    rows, problems = parse_rows(text, "s.csv", schema.Site, ())
    assert [(row.locationID, row.locality) for row in rows] == [("A", "High Cliff")]
    assert [problem.severity for problem in problems] == ["warning"]
