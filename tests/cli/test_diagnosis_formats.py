"""`auctorum diagnosis` in every format: one table, whatever it is written in; misuse is refused in words."""

from __future__ import annotations

import csv
import io
import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main
from document_reading import latex_rows, markdown_tables, page_of, squeezed

ROOT = Path(__file__).parents[2]
KB, IRIS = str(ROOT / "kb"), str(ROOT / "tests" / "data" / "kb-iris")
LONG, STOUT, WHITE = (f"Cremnocentron album var. {one}" for one in ("longum", "robustum", "album"))
FORMATS = ("text", "markdown", "html", "csv", "latex")


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def asked(*arguments: str, kb: str = KB) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, ["diagnosis", *arguments, "--kb", kb], env={"COLUMNS": "100"})
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


def answer(*arguments: str, kb: str = KB) -> str:
    code, out, said = asked(*arguments, kb=kb)
    assert (code, said) == (0, "")
    return out


def csv_rows(made: str) -> list[list[str]]:
    return list(csv.reader(io.StringIO(made)))


def first_tables(*arguments: str) -> dict[str, list[list[str]]]:
    """The first table of the answer, by format."""
    return {
        "csv": csv_rows(answer(*arguments, "--format", "csv")),
        "markdown": markdown_tables(answer(*arguments, "--format", "markdown"))[0],
        "html": [[squeezed(cell) for cell in row] for row in page_of(answer(*arguments, "--format", "html")).tables[0]],
        "latex": latex_rows(answer(*arguments, "--format", "latex")),
    }


def test_the_trait_table_is_one_in_every_format() -> None:
    found = first_tables(LONG)
    assert found["csv"] == found["markdown"] == found["html"]
    # On paper the columns on sisters stand in a table of their own.
    assert [row[:3] for row in found["latex"]] == [row[:3] for row in found["csv"]]
    assert found["csv"][0][:7] == [
        "character", "consensus", "range of opinions", "independent", "repeat", "silent", "verdict"
    ]  # fmt: skip
    spur = next(row for row in found["csv"] if row[0] == "spur length (mature)")
    assert spur[2] == "18–60 mm" and spur[6] == "drifting" and "mm on" in spur[7]


def test_taxa_stand_side_by_side_in_every_format() -> None:
    found = first_tables(LONG, STOUT, "--observed")
    assert found["csv"] == found["markdown"] == found["html"] == found["latex"]
    head, *rows = found["csv"]
    assert head == ["character", "var. longum", "var. robustum", "tells apart"]
    useful = [row[3] not in ("–", "") for row in rows if "own plants" not in row[0]]
    assert useful == sorted(useful, reverse=True) and True in useful and False in useful
    assert any(row[0] == "spur length (mature): own plants" for row in rows)


def test_the_taxa_may_be_of_another_group() -> None:
    out = answer("Iris setosa", "Iris versicolor", "Iris virginica", kb=IRIS)
    assert re.search(r"petal\s.*I\. versicolor|I\. setosa\s+I\. versicolor\s+I\. virginica", out)
    found = json.loads(answer("Iris setosa", "Iris versicolor", "--json", kb=IRIS))
    assert [one["taxon"].split()[1] for one in found] == ["setosa", "versicolor"]


@pytest.mark.parametrize("format_", FORMATS)
@pytest.mark.parametrize("taxa", [(LONG,), (LONG, STOUT)], ids=["one", "two"])
def test_all_options_together(format_: str, taxa: tuple[str, ...]) -> None:
    options = ["--unit", "in", "--character", "spur length", "--sec", "orrin-1889", "--sec", "nunnaly-1987"]
    out = answer(*taxa, *options, "--observed", "--detail", "full", "--format", format_)
    said = " ".join(out.replace("{\\footnotesize", "").split())
    assert "in." in said and "plant height" not in said and "own plants" in said


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        pytest.param([LONG, "--json", "--format", "html"], "--json is a format of its own", id="two-formats"),
        pytest.param([LONG, STOUT, "--beside", WHITE], "--beside is for one taxon", id="beside-several"),
        pytest.param([LONG, "--detail", "description", "--observed"], "--observed adds to the table", id="observed"),
        pytest.param([LONG, "--detail", "description", "--beside", STOUT], "--beside adds to the table", id="beside"),
        pytest.param([LONG, "--format", "csv", "--detail", "description"], "CSV holds a table", id="csv"),
        pytest.param([LONG, "Cremnocentron longum"], "is a taxon given already", id="twice"),
        pytest.param([LONG, "--beside", LONG], "is a taxon given already", id="beside-itself"),
        pytest.param([LONG, "--format", "pdf"], "'pdf' is not one of", id="no-format"),
        pytest.param([LONG, "--sec", "orrin-1888"], "nearest: orrin-1889", id="no-work"),
        pytest.param([LONG, STOUT, "--unit", "parsec", "--format", "html"], "no unit `parsec`", id="no-unit"),
        pytest.param([], "Missing argument", id="no-taxon"),
    ],
)
def test_misuse(arguments: list[str], said: str) -> None:
    code, out, told = asked(*arguments)
    assert (code, out) == (2, "") and said in told


@pytest.mark.parametrize(
    "arguments", [[LONG, "Cremnocentron robustumm"], [LONG, "--beside", "Cremnocentron robustumm"]]
)
def test_a_name_that_is_misspelt_gives_the_nearest(arguments: list[str]) -> None:
    code, _, told = asked(*arguments)
    assert code == 1 and "no name `Cremnocentron robustumm`" in told and "nearest: Cremnocentron" in told


# --- detail


@pytest.mark.parametrize("format_", ["text", "markdown", "html", "latex"])
def test_the_description_stands_alone(format_: str) -> None:
    out = answer(LONG, "--detail", "description", "--format", format_)
    assert "Spur when young" in " ".join(out.split()) and "Orrin" in out
    assert "verdict" not in out and "calcare" not in out


def test_detail_adds_up() -> None:
    texts = [answer(LONG, "--detail", detail) for detail in ("description", "table", "full")]
    assert [("Traits" in one, "calcare gracili" in one, "Who repeats whom" in one) for one in texts] == [
        (False, False, False),
        (True, False, False),
        (True, True, True),
    ]
    assert answer(LONG) == texts[2]  # the text of one taxon tells everything


def test_every_mark_has_its_source() -> None:
    found = page_of(answer(LONG, STOUT, WHITE, "--format", "html"))
    marked = {
        int(number)
        for block in found.blocks
        for mark in re.findall(r"\[([\d,–]+)\]", block)
        for first, _, last in [part.partition("–") for part in mark.split(",")]
        for number in range(int(first), int(last or first) + 1)
    }
    out = answer(LONG, STOUT, WHITE, "--format", "text")
    numbers = [int(one) for one in re.findall(r"^ +\[(\d+)\] ", out, re.M)]
    assert numbers == list(range(1, len(numbers) + 1)) and marked == set(numbers)


@pytest.mark.parametrize("format_", ["markdown", "html", "latex"])
def test_what_is_published_closes_with_cautions_and_notice(format_: str) -> None:
    out = answer(LONG, "--format", format_)
    assert out.index("Before you go out") < out.index("Eat nothing") < out.index("Invented for demonstration")
    assert "Journal of the Tessarn Field Society" in out


# --- against others, own plants


def test_others_may_be_named() -> None:
    (row, *_) = csv_rows(answer(LONG, "--beside", STOUT, "--format", "csv"))
    assert row[7:] == ["against var. robustum"]
    assert len(csv_rows(answer(LONG, "--format", "csv"))[0]) == 7 + 3  # three sisters at most


def test_own_plants_stand_beside_the_authors() -> None:
    head, *rows = csv_rows(answer(LONG, "--observed", "--format", "csv"))
    assert head[-3:] == ["plants", "own range", "contradicted"]
    spur = next(row for row in rows if row[0] == "spur length (mature)")
    (found,) = [
        one
        for one in json.loads(answer(LONG, "--observed", "--json"))["characters"]
        if (one["character"], one["stage"]) == ("spur length", "mature")
    ]
    assert spur[-3:-1] == [str(found["observed"]["plants"]), found["observed"]["range"]]
    assert len(spur[-1].split("; ")) == len(found["observed"]["contradicted"]) > 0


def test_where_no_plant_is_measured_that_is_said(hostile: str) -> None:
    out = answer("Exemplum album", "--observed", kb=hostile)
    assert "No plant named as Exemplum album is measured in specimens.csv." in out and "own plants" not in out


# --- machines


def test_json_holds_counts_repetitions_and_values() -> None:
    found = json.loads(answer(LONG, "--json"))
    (spur,) = [one for one in found["characters"] if (one["character"], one["stage"]) == ("spur length", "mature")]
    assert spur["count"]["independent"] + spur["count"]["repeated"] == spur["count"]["works"]
    assert spur["opinions"] == "18–60 mm" and spur["statements"]
    assert {"later": "isherow-1938", "earlier": "maddrick-1923"}.items() <= found["repetitions"][0].items()
    worth = {one["taxon"]: one for one in spur["diagnostic_value"]}
    assert len(worth) == len(found["beside"]) == 3
    of_stout = worth[f"{STOUT} Orrin"]
    assert of_stout["side"] == f"from {of_stout['threshold']:g} mm on" and 0 < of_stout["error"] < 0.5


@pytest.mark.parametrize(("detail", "keys"), [("description", 0), ("table", 1), ("full", 2)])
def test_json_follows_the_detail(detail: str, keys: int) -> None:
    found = json.loads(answer(LONG, "--json", "--detail", detail))
    assert found["text"].startswith("Plant ") and len(found["sources"]) == 12
    assert ("characters" in found) == (keys > 0)
    assert all(("statements" in one) == (keys > 1) for one in found.get("characters", []))


def test_csv_of_every_statement() -> None:
    head, *rows = csv_rows(answer(LONG, STOUT, "--format", "csv", "--detail", "full"))
    assert head == ["taxon", "character", "stage", "year", "author", "page", "words", "read as", "repeats", "work"]
    found = json.loads(answer(LONG, STOUT, "--json"))
    assert len(rows) == sum(len(one["statements"]) for taxon in found for one in taxon["characters"])
    assert ["1938", "Isherow", "64", "spur 22–37 mm.", "22–37 mm", "Maddrick 1923"] in [row[3:9] for row in rows]


# --- hostile words

HOSTILE = (
    "spur 22–34 mm | <script>alert(1)</script> `x` \\write18{rm} &amp; *b* _c_ [d](http://x.invalid) $e$ #f ~g^ %h",
    '=cmd("x") spur 22–36 mm',
    "spur \u202e22–38\u202c mm \u200f long",
)


@pytest.fixture
def hostile(tmp_path: Path) -> str:
    """A knowledge base whose authors wrote what formats would read as commands."""
    folder = tmp_path / "kb"
    (folder / "literature").mkdir(parents=True)
    (folder / "kb.yaml").write_text("title: Test\nnotice: '</main><script>x</script>'\n", encoding="utf-8")
    (folder / "characters.yaml").write_text(
        "characters:\n- {name: spur length, structure: spur, property: length, kind: measure, unit: mm}\n",
        encoding="utf-8",
    )
    for number, verbatim in enumerate(HOSTILE):
        record = {
            "work": {"id": f"w-{number}", "type": "book", "author": [{"family": "Orrin", "given": "=A|<b>"}],
                     "issued": str(1900 + number), "title": "Of <i>spurs</i> & {more}_"},
            "acts": [{"name": "Exemplum album", "act": "new taxon"}] if not number else [],
            "treatments": [{"taxon": "Exemplum album", "traits": [
                {"character": "spur length", "verbatim": verbatim, "value": f"22–{34 + 2 * number} mm", "page": "=1+1"}
            ]}],
        }  # fmt: skip
        (folder / "literature" / f"w-{number}.yaml").write_text(json.dumps(record), encoding="utf-8")
    return str(folder)


def test_hostile_words_come_back_as_words(hostile: str) -> None:
    said = [one.replace("\u202e", "").replace("\u202c", "") for one in HOSTILE]
    full = ("Exemplum album", "--detail", "full")
    page = page_of(answer(*full, "--format", "html", kb=hostile))
    assert [row[3] for row in page.tables[1][1:]] == said
    assert not {tag for tag, _, _ in page.attributes} & {"script", "a", "img"}
    assert "<script" not in answer(*full, "--format", "html", kb=hostile)
    assert [row[3] for row in markdown_tables(answer(*full, "--format", "markdown", kb=hostile))[1][1:]] == said
    rows = csv_rows(answer(*full, "--format", "csv", kb=hostile))[1:]
    assert [row[6] for row in rows] == [said[0], f"'{said[1]}", said[2]] and {row[5] for row in rows} == {"'=1+1"}
    made = answer(*full, "--format", "latex", kb=hostile)
    assert "\\write18" not in made and "\\textbackslash{}write18\\{rm\\}" in made
    text = answer(*full, kb=hostile)
    assert "\u202e" not in text and "alert(1)" in text.replace("\n", "")
