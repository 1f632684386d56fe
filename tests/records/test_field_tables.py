"""Tables that stand in no knowledge base: wide and long, as spreadsheets save them, hostile ones too."""

from __future__ import annotations

import io
import time
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.plants import Plant, plants_in
from auctorum.corpus.field_rows import linked_rows
from auctorum.records.field_tables import read_plants_text
from auctorum.records.read import opened_table, read_table
from auctorum.records.streamed import plant_chunks
from measuring import knowledge_base

CORPUS = knowledge_base()
NAMES = tuple(CORPUS.vocabulary)


def read(text: str) -> tuple[tuple[Plant, ...], list[str]]:
    """The plants of a free table, and its problems as printed."""
    table, problems = read_plants_text(text, "f.csv", NAMES)
    rows, more = linked_rows(table.specimens, table.measurements, CORPUS)
    return plants_in(rows, CORPUS), [str(problem) for problem in (*problems, *more)]


def spurs(text: str) -> dict[str, str]:
    plants, _ = read(text)
    found = {plant.id: plant.at("spur length", "mature") for plant in plants}
    return {id_: str(one.value) for id_, one in found.items() if one is not None}


PLAIN = "occurrenceID,recordedBy,spur length [mm],petal number\nA,M. Sallow,31.5,5\nB,J. Petrane,28,6\n"


@pytest.mark.parametrize(
    "text",
    [
        pytest.param(PLAIN.replace(",", ";").replace("31.5", "31,5"), id="semicolons"),
        pytest.param(PLAIN.replace(",", "\t"), id="tabs"),
        pytest.param("sep=;\n" + PLAIN.replace(",", ";"), id="sep-line"),
        pytest.param('"sep=;"\r\n' + PLAIN.replace(",", ";"), id="quoted-sep-line"),
        pytest.param(PLAIN.replace("\n", "\r\n"), id="windows-lines"),
        pytest.param(PLAIN.replace("spur length [mm]", '"Spur  Length (MM)"'), id="round-brackets"),
        pytest.param(PLAIN.replace("spur length [mm]", "spur length mm"), id="no-brackets"),
        pytest.param(PLAIN.replace("occurrenceID", "Occurrence ID").replace("recordedBy", "recorded_by"), id="blanks"),
        pytest.param(PLAIN.replace("\n", ",,\n") + ",,,,,\n\n", id="empty-rows-and-columns"),
        pytest.param(PLAIN.replace("31.5", "3.15 cm"), id="unit-in-the-cell"),
        pytest.param(PLAIN.replace("31.5", "\u00a031.5 "), id="no-break-blank"),
    ],
)
def test_quirks_read_as_the_plain_table(text: str) -> None:
    plants, problems = read(text)
    assert problems == []
    assert [
        (one.id, one.observed_by, [(seen.character, seen.value) for seen in one.observations]) for one in plants
    ] == [
        (one.id, one.observed_by, [(seen.character, seen.value) for seen in one.observations]) for one in read(PLAIN)[0]
    ]


def test_a_title_above_the_header_is_passed_over_and_told() -> None:
    text = "Spurs, leaves; a survey\n\n" + PLAIN
    assert spurs(text) == spurs(PLAIN)
    assert read(text)[1] == [
        "f.csv:1:1: warning: line 1 above the column names: passed over (begin the table with its column names)"
    ]


def test_every_bad_cell_is_named_and_the_rest_of_its_row_used() -> None:
    text = (
        "locationID;eventDate;scientificName;"
        "spur length [mm];spur length ± [mm];petal number;spur colour;bracteoles;Notes\n"
        "S9;03/10/2023;Exemplum albun;05.Jun;0,5;2.5;ivory;-;x\n"
        "S9;25/10/2023;Exemplum album;31;±0.5 mm;#REF!;octarine;yes;\n"
    )
    plants, problems = read(text)
    assert [(one.id, one.site, one.taxon, one.dates) for one in plants] == [
        ("row 2", "S9", None, ("2023-10-03",)),
        ("row 3", "S9", "exemplum-album", ("2023-10-25",)),
    ]
    assert [[seen.character for seen in one.observations] for one in plants] == [
        ["spur colour"],
        ["spur length", "bracteoles"],
    ]
    seen = plants[1].at("spur length", "mature")
    assert seen is not None and str(seen.error) == "1"  # half a millimetre of the digits, half of the instrument
    assert [problem.split(": ", 1)[0] for problem in problems] == [
        "f.csv:1:9", "f.csv:2:1", "f.csv:2:1", "f.csv:2:4", "f.csv:2:6", "f.csv:2:8", "f.csv:3:6", "f.csv:3:7",
    ]  # fmt: skip


LONG = """\
occurrenceID,measurementType,measurementValue,measurementUnit,measurementAccuracy,measurementMethod,lifeStage,locationID
A,Spur Length,31,mm,±0.5,caliper,mature,S1
A,spur length,12,mm,,ruler,young,S1
A,spur lenght,12,mm,,,,
B,spur length,1.25,in,,,,
,petal number,5,,,,,
"""


def test_a_long_table_is_told_by_its_header() -> None:
    plants, problems = read(LONG)
    assert [(one.id, one.site, one.instrument) for one in plants] == [
        ("A", "S1", "caliper | ruler"), ("B", None, ""), ("row 6", None, ""),
    ]  # fmt: skip
    grown, young = plants[0].at("spur length", "mature"), plants[0].at("spur length", "young")
    assert grown is not None and young is not None
    assert (str(grown.value), str(grown.accuracy), grown.instrument) == ("31", "1/2", "caliper")
    assert (str(young.value), young.instrument) == ("12", "ruler")
    assert [problem for problem in problems if "warning" not in problem] == [
        "f.csv:4:2: no character `spur lenght` in characters.yaml (did you mean `spur length`?)"
    ]


def test_wide_and_long_say_the_same() -> None:
    long = "occurrenceID,measurementType,measurementValue,measurementUnit\n" + "".join(
        f"{row[0]},spur length,{row[1]},mm\n{row[0]},petal number,{row[2]},\n"
        for row in (["A", "31.5", "5"], ["B", "28", "6"])
    )
    wide = PLAIN.replace("recordedBy,", "").replace("M. Sallow,", "").replace("J. Petrane,", "")
    assert read(long) == read(wide)


ROWS = st.lists(
    st.tuples(st.integers(100, 400), st.integers(3, 8), st.sampled_from(["green", "ivory", ""])), min_size=1, max_size=8
)


@settings(deadline=None, max_examples=60)
@given(ROWS, st.randoms(), st.sampled_from(["mm", "cm", "m", "µm"]), st.sampled_from(["", "NA", "–", "n.d.", "?"]))
def test_order_units_and_marks_change_no_value(rows, chance, unit, mark) -> None:
    power = {"mm": 0, "cm": -1, "m": -3, "µm": 3}[unit]

    def table(unit: str, power: int, mark: str, order) -> str:
        lines = [
            f"P{n};{spur * 10**power / 10:.6f};{petals};{colour or mark};{mark}"
            for n, (spur, petals, colour) in enumerate(rows)
        ]
        return f"occurrenceID;spur length [{unit}];petal number;spur colour;style length [mm]\n" + "\n".join(
            order(lines)
        )

    plain = "occurrenceID;spur length [mm];petal number;spur colour\n" + "\n".join(
        f"P{n};{spur / 10:.6f};{petals};{colour}" for n, (spur, petals, colour) in enumerate(rows)
    )
    mixed, problems = read(table(unit, power, mark, lambda lines: chance.sample(lines, len(lines))))
    assert problems == []

    def values(plants):
        return {one.id: [(seen.character, seen.value, seen.states) for seen in one.observations] for one in plants}

    assert values(mixed) == values(read(plain)[0])


@pytest.mark.parametrize(
    ("content", "said"),
    [
        pytest.param("occurrenceID,recordedBy\nA,Müller\n".encode("cp1252"), "read as Windows-1252", id="windows"),
        pytest.param("occurrenceID,recordedBy\nA,Müller\n".encode("utf-16"), "in UTF-16", id="utf-16"),
        pytest.param("\ufeffoccurrenceID,recordedBy\nA,Müller\n".encode(), "byte order mark", id="mark"),
    ],
)
def test_encodings(tmp_path: Path, content: bytes, said: str) -> None:
    path = tmp_path / "t.csv"
    path.write_bytes(content)
    text, problems = read_table(path)
    assert text is not None
    table, more = read_plants_text(text, "t.csv", NAMES)
    assert [one.recordedBy for one in table.specimens] == ["Müller"]
    assert said in str((*problems, *more)[0])
    with opened_table(path) as (file, _):
        assert file is not None
        assert next(plant_chunks(file, "t.csv", CORPUS.vocabulary)).fields["recordedBy"] == ["Müller"]


@pytest.mark.parametrize(
    "text",
    [
        pytest.param("occurrenceID,spur length [mm]\nA,3\x001\n", id="nul"),
        pytest.param("occurrenceID,spur length [mm]\nA," + "9" * 1_000_000 + "\nB,31\n", id="large-cell"),
        pytest.param('occurrenceID,spur length [mm]\nA,"31\nB,31\n', id="open-quote"),
        pytest.param(",".join(f"c{n}" for n in range(10_000)) + "\n" + "," * 9_999 + "\n", id="many-columns"),
        pytest.param("[[[[" * 1_000 + "\n", id="brackets"),
        pytest.param("sep=" * 1_000, id="sep"),
        pytest.param('"' * 10_001, id="quotes"),
        pytest.param("measurementType,measurementValue\n" + "spur length,31\n" * 2_000, id="no-ids"),
    ],
)
def test_hostile_tables_are_read_in_time_and_told(text: str) -> None:
    start = time.perf_counter()
    plants, problems = read(text)
    chunks = list(plant_chunks(io.StringIO(text, newline=""), "f.csv", CORPUS.vocabulary))
    assert time.perf_counter() - start < 10
    assert problems or len(plants) == 2_000
    assert any(chunk.problems for chunk in chunks)
