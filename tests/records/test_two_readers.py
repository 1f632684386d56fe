"""The same text says the same, and has the same problems, whether it is read whole or in chunks."""

from __future__ import annotations

import io

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from auctorum.circumscription.plants import plants_in
from auctorum.corpus.field_rows import linked_rows
from auctorum.problems import Problem
from auctorum.records.field_tables import read_plants_text
from auctorum.records.streamed import plant_chunks
from measuring import knowledge_base

CORPUS = knowledge_base()
NAMES = tuple(CORPUS.vocabulary)
# What linking the plants to the knowledge base finds is not said of a table alone.
OF_LINKING = ("knowledge base", "stands twice, first", "no name", "name `")

Ids = dict[str, dict[str, float]]


def printed(problems: tuple[Problem, ...] | list[Problem]) -> list[str]:
    return sorted(str(one) for one in problems if not any(words in one.what for words in OF_LINKING))


def whole(text: str) -> tuple[Ids, list[str]]:
    """The spurs of the plants by their id, and the problems, of the text read whole."""
    table, problems = read_plants_text(text, "f.csv", NAMES)
    rows, more = linked_rows(table.specimens, table.measurements, CORPUS)
    plants = plants_in(rows, CORPUS)
    numbers = {plant.id: {one.character: float(one.value) for one in plant.observations if one.value is not None}
               for plant in plants}  # fmt: skip
    return numbers, printed([*problems, *more])


def in_chunks(text: str, rows: int) -> tuple[Ids, list[str]]:
    """The same of the text read in chunks of so many rows."""
    numbers: Ids = {}
    problems: list[Problem] = []
    held = []
    for chunk in plant_chunks(io.StringIO(text, newline=""), "f.csv", CORPUS.vocabulary, rows=rows):
        problems += chunk.problems
        held += chunk.held
        for at, id_ in enumerate(chunk.fields.get("occurrenceID", ())):
            numbers[id_] = {
                name: one.value[at] for name, one in chunk.figures.items() if one.value[at] == one.value[at]
            }
    linked, more = linked_rows(held, (), CORPUS)
    for plant in plants_in(linked, CORPUS):
        numbers[plant.id] = {one.character: float(one.value) for one in plant.observations if one.value is not None}
    return numbers, printed([*problems, *more])


CELLS = {
    "organismID": ["", "", "", "P", "NA"],
    "eventDate": ["2023-10-03", "03/10/2023", "04/11/2023", "25/10/2023", "45202", "45203", "soon", "#REF!", ""],
    "decimalLatitude": ["", "12,5", "north", "120"],
    "recordedBy": ["M. Sallow", "a\x01b", "#NAME?", "two\nlines", "\u00a0J. Petrane ", "-"],
    "measurementRemarks": ["", "in fruit"],
    "spur length [mm]": ["31.5", "31,5", "31 mm", "3 cm", "05.Jun", "long", "n.d.", "", "30–34", "ca. 30"],
    "spur length ±": ["", "0.5", "±0.5 mm", "bad"],
    "petal number": ["5", "6", "2.5", "\x0b5", ""],
    "spur colour": ["ivory", "cream?", "octarine", "", "ivory or cream"],
    "Notes": ["", "x"],
    "": ["", "", "", "y"],
}  # fmt: skip


@st.composite
def tables(draw: st.DrawFn) -> str:
    """A table as people write one, with what goes wrong in them."""
    titles = draw(st.lists(st.sampled_from([*CELLS]), unique=True, min_size=1, max_size=6))
    count = draw(st.integers(0, 7))
    sign = draw(st.sampled_from(",;\t"))

    def line(cells: list[str]) -> str:
        return sign.join('"' + cell + '"' if sign in cell or "\n" in cell else cell for cell in cells)

    rows = [line(["occurrenceID", *titles])]
    for number in range(count):
        cells = [f"A{number}", *(draw(st.sampled_from(CELLS[title])) for title in titles)]
        extra = draw(st.sampled_from([[], [], [], [""], ["more"]]))
        rows.append(line((cells + extra)[: draw(st.sampled_from([99, 99, 99, 2]))]))
        rows += draw(st.sampled_from([[], [], [], [sign], [""], ['"']]))
    above = draw(st.sampled_from(["", "", "A survey\n", "A survey\n\nof spurs\n", "\ufeff", f"sep={sign}\n"]))
    end = draw(st.sampled_from(["\n", "\r\n", "\r"]))
    return (above + "\n".join(rows) + draw(st.sampled_from(["", "\n"]))).replace("\n", end)


@settings(deadline=None, max_examples=150)
@given(tables(), st.integers(1, 9))
@example("\ufeffA title\nand another\noccurrenceID,eventDate\nA,03/10/2023\n", 3)
@example("occurrenceID,eventDate,organismID\nA,03/10/2023,P\nB,25/10/2023,\nC,45202,P\n", 1)
def test_whole_and_in_chunks_say_the_same(text: str, rows: int) -> None:
    one, problems = whole(text)
    two, others = in_chunks(text, rows)
    assert others == problems
    assert two.keys() == one.keys()
    for id_, numbers in one.items():
        assert two[id_] == pytest.approx(numbers)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        pytest.param("A\nB\noccurrenceID,sex\nA,male\n", "f.csv:1:1: warning: lines 1 to 2 above", id="titles-above"),
        pytest.param("occurrenceID,sex\nA,ma\x02le\n", "f.csv:2:2: a control character in a cell", id="control"),
        pytest.param("occurrenceID,eventDate\nA,03/10/2023\n", "f.csv:2:2: warning: `eventDate`", id="ambiguous-date"),
        pytest.param("occurrenceID,sex\nA,x\n" + "y" * 1_100_000 + "\nB,x\n", "f.csv:3:1: a line of", id="endless"),
        pytest.param(
            'occurrenceID,sex\n"A"b,x\nC\n', "f.csv:2:1: not readable as CSV from here to the end, 2", id="csv"
        ),
        pytest.param(
            "occurrenceID,petal number\n" + "A,5\n" * 9 + "Z,6000\n",
            "f.csv:11:2: warning: `petal number`",
            id="far-out",
        ),
    ],
)
def test_what_is_wrong_is_named_by_both(text: str, said: str) -> None:
    for problems in (whole(text)[1], in_chunks(text, 100)[1]):
        assert [one for one in problems if one.startswith(said)], problems
    assert whole(text)[1] == in_chunks(text, 100)[1]
