"""A table read in chunks says what the same table read whole says."""

from __future__ import annotations

import io
import math
import random
import tracemalloc
from collections.abc import Iterable

import pandas
import pytest

from auctorum.circumscription.plants import plants_in
from auctorum.corpus.field_rows import linked_rows
from auctorum.records import streamed
from auctorum.records.field_tables import read_plants_text
from auctorum.records.streamed import Chunk, plant_chunks
from measuring import knowledge_base

CORPUS = knowledge_base()
VOCABULARY = CORPUS.vocabulary


def chunks(text: str, rows: int = 3) -> list[Chunk]:
    return list(plant_chunks(io.StringIO(text, newline=""), "f.csv", VOCABULARY, rows=rows))


def said(found: Iterable[Chunk]) -> list[str]:
    return [str(problem) for chunk in found for problem in chunk.problems]


TABLE = """\
occurrenceID;organismID;locationID;lifeStage;spur length mm;spur length [in];spur length ±;petal number;spur colour
A;;S1;mature;31,5;;0,5;5;ivory
B;;S1;mature;;1.25;;2.5;octarine
C;P;S1;mature;30;;;5;ivory
;;NA;mature;30–34;;;n.d.;green
D;;S2;mature;31;1.30;;6;
E;P;S2;mature;34;;;5;ivory
F;;S2;mature;05.Jun;;;6;cream?
"""


def test_chunks_say_what_the_whole_table_says() -> None:
    table, problems = read_plants_text(TABLE, "f.csv", tuple(VOCABULARY))
    rows, more = linked_rows(table.specimens, table.measurements, CORPUS)
    whole = {plant.id: plant for plant in plants_in(rows, CORPUS)}
    found = chunks(TABLE)
    singles = {}
    for chunk in found:
        for at, id_ in enumerate(chunk.fields.get("occurrenceID", ())):
            spur, petals = chunk.figures["spur length"], chunk.figures["petal number"]
            singles[id_] = (spur.value[at], spur.slack[at], spur.accuracy[at], petals.value[at])
    assert list(singles) == ["A", "B", "row 5", "D", "F"]
    for id_, (value, slack, accuracy, petals) in singles.items():
        spur, petal = whole[id_].at("spur length", "mature"), whole[id_].at("petal number", "")
        assert (
            math.isnan(value)
            if spur is None
            else (value, slack, accuracy)
            == pytest.approx((float(spur.value or 0), float(spur.slack), float(spur.accuracy)))
        )
        assert math.isnan(petals) if petal is None else petals == petal.value
    held = [record for chunk in found for record in chunk.held]
    assert [(record.occurrenceID, record.organismID) for record in held] == [("C", "P"), ("E", "P")]
    together, _ = linked_rows(held, (), CORPUS)
    assert plants_in(together, CORPUS)[0].observations == whole["P"].observations
    sites = [site for chunk in found for site in chunk.fields.get("locationID", ())]
    assert sites == ["S1", "S1", "", "S2", "S2"]
    cells = [one for one in (*map(str, problems), *map(str, more)) if "site" not in one]
    assert sorted(said(found)) == sorted(cells)


def test_lines_count_blank_rows_and_cells_over_two_lines() -> None:
    text = 'Title\noccurrenceID,occurrenceRemarks,petal number\n\nA,"two\nlines",5\n,,\nB,,x\n'
    found = chunks(text)
    assert [line for chunk in found for line in chunk.lines] == [4, 7]
    assert said(found)[1].startswith("f.csv:7:3: column `petal number`: 'x' is no number")


@pytest.mark.parametrize(
    ("text", "what"),
    [
        pytest.param("", "the file is empty", id="empty"),
        pytest.param("occurrenceID,measurementType,measurementValue\nA,spur length,3\n", "a row for each", id="long"),
        pytest.param('occurrenceID\nA\n"B\n', "not readable as CSV from here to the end", id="open-quote"),
        pytest.param("occurrenceID\nA\n" + "x" * 1_200_000, "a line of more than 1000000 letters", id="endless-line"),
        pytest.param("occurrenceID\nA,B\n", "2 cells in a table of 1 columns; the row was left out", id="too-wide"),
        pytest.param("occurrenceID,spur lenght [mm]\nA,3\n", "did you mean `spur length`?", id="misspelt"),
    ],
)
def test_faults(text: str, what: str) -> None:
    assert what in " ".join(said(chunks(text)))


def test_too_many_rows_of_organisms_are_told(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(streamed, "HELD_BACK", 2)
    found = chunks("occurrenceID,organismID\n" + "".join(f"A{n},P\n" for n in range(5)))
    assert sum(len(chunk.held) for chunk in found) == 2
    assert "3 rows with an organismID were left out" in said(found)[0]


def table(rows: int) -> str:
    """A table as a spreadsheet of a German-speaking country saves it."""
    draw = random.Random(7)
    lines = [f"A{n};{draw.gauss(30, 5):.1f};{draw.randint(4, 6)};ivory".replace(".", ",") for n in range(rows)]
    return "occurrenceID;spur length [mm];petal number;spur colour\n" + "\n".join(lines) + "\n"


def test_figures_against_another_reader() -> None:
    """Source of the second answer: pandas.read_csv with a decimal comma."""
    text = table(2_000)
    other = pandas.read_csv(io.StringIO(text), sep=";", decimal=",")
    found = chunks(text, rows=700)
    values = [value for chunk in found for value in chunk.figures["spur length"].value]
    assert values == pytest.approx(list(other["spur length [mm]"]))
    assert [word for chunk in found for word in chunk.words["spur colour"]] == list(other["spur colour"])
    assert said(found) == []


def test_memory_does_not_grow_with_the_table() -> None:
    peaks = []
    for rows in (2_000, 20_000):
        file = io.StringIO(table(rows), newline="")
        tracemalloc.start()
        for _ in plant_chunks(file, "f.csv", VOCABULARY, rows=1_000):
            pass
        peaks.append(tracemalloc.get_traced_memory()[1])
        tracemalloc.stop()
    assert peaks[1] < 1.5 * peaks[0]
