"""`auctorum field-sheet` from the command line: the page, its empty table, and the table read back."""

from __future__ import annotations

import csv
import io
import json
import re
import shutil
from html.parser import HTMLParser
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.circumscription.plants import plants
from auctorum.cli.main import main
from auctorum.corpus.link import link
from auctorum.corpus.model import Corpus
from auctorum.nomenclature.code import applied
from auctorum.records.read import read

ROOT = Path(__file__).parents[2]
KB, IRIS = ROOT / "kb", ROOT / "tests" / "data" / "kb-iris"
LONGUM, ROBUSTUM, ALBUM = (f"Cremnocentron album var. {one}" for one in ("longum", "robustum", "album"))


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def run(*arguments: str, kb: Path = KB, command: str = "field-sheet") -> tuple[int, str, str]:
    result = CliRunner().invoke(main, [command, *arguments, "--kb", str(kb)])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


class Page(HTMLParser):
    """Tags with their attributes, the texts of the cells that head columns, and all italics."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []
        self.headings: list[str] = []
        self.italics: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        if tag not in ("meta", "col", "path"):
            self.open.append(tag)
        if tag == "th" and ("scope", "col") in attrs:
            self.headings.append("")

    def handle_endtag(self, tag: str) -> None:
        if tag in self.open:
            while self.open.pop() != tag:
                pass

    def handle_data(self, data: str) -> None:
        if self.open[-1:] == ["th"] and "thead" in self.open:
            self.headings[-1] += data
        if "i" in self.open:
            self.italics.append(data)


def headings_of(text: str) -> list[str]:
    return next(csv.reader(io.StringIO(text)))


@pytest.mark.parametrize("taxa", [(LONGUM, ROBUSTUM), (LONGUM,), (LONGUM, ROBUSTUM, ALBUM)])
def test_page_table_and_data_have_the_same_columns(taxa: tuple[str, ...]) -> None:
    page, table, data = (run(*taxa, *more)[1] for more in ((), ("--format", "csv"), ("--json",)))
    headings = headings_of(table)
    assert headings == [column["heading"] for column in json.loads(data)["columns"]]
    assert [one for one in Page(page).headings if one in headings] == headings
    assert {"occurrenceID", "locationID", "eventDate", "recordedBy", "lifeStage", "spur length [mm]"} <= set(headings)


def test_the_page_stands_alone_and_has_names_in_italics() -> None:
    code, text, _ = run(LONGUM, ROBUSTUM)
    page = Page(text)
    assert code == 0 and text.startswith("<!DOCTYPE html>")
    tags = {tag for tag, _ in page.tags}
    assert not tags & {"script", "link", "img", "iframe", "form", "a"}
    assert not {name for _, attributes in page.tags for name in attributes} & {"src", "href", "onclick", "onload"}
    assert set(re.findall(r"https?://[^\"'\s<]+", text)) == {"http://www.w3.org/2000/svg"}  # a namespace, never fetched
    assert "url(" not in text and "@import" not in text
    assert {"longum", "robustum", "Cremnocentron album"} <= set(page.italics)
    assert "100 %" in text and "ruler" in text
    assert "Invented for demonstration" in text


def test_no_coordinate_and_no_locality_is_on_it() -> None:
    text = run(LONGUM, ROBUSTUM)[1] + run(LONGUM, ROBUSTUM, "--json")[1]
    with (KB / "sites.csv").open(encoding="utf-8", newline="") as file:
        for site in csv.DictReader(file):
            assert site["decimalLatitude"] not in text and site["locality"].split(",")[0] not in text
    assert "decimalL" not in text


def test_rows_for_plants() -> None:
    whole = json.loads(run(LONGUM, ROBUSTUM, "--json")[1])
    assert whole["plants"] >= 7
    three = run(LONGUM, ROBUSTUM, "--plants", "3")[1]
    body = three.split('class="form plants"')[1].split("<tbody>")[1].split("</tbody>")[0]
    assert body.count("<tr>") == 3
    many = json.loads(run(LONGUM, ROBUSTUM, "--plants", "14", "--json")[1])
    assert many["plants"] == 14 and many["no_room"]  # characters give way to plants that were asked for
    code, _, said = run(LONGUM, ROBUSTUM, "--plants", "60")
    assert code == 1 and "does not go on one page" in said and "--without" in said


def test_letter_is_another_page() -> None:
    assert "size: 210mm 297mm" in run(LONGUM, ROBUSTUM)[1]
    assert "size: 215.9mm 279.4mm" in run(LONGUM, ROBUSTUM, "--paper", "letter")[1]


# --- read back

FILLED = {
    "locationID": "INV-S03", "eventDate": "2025-10-04", "recordedBy": "T. Example",
    "measurementMethod": "calliper", "degreeOfEstablishment": "native", "spur length ± [mm]": "0.5",
    "elevation [m]": "220", "aspect [degree]": "158", "lifeStage": "mature", "spur length [mm]": "31.5",
    "petal length [mm]": "15", "leaf apex": "acute", "bracteoles": "absent", "seed surface": "reticulate",
    "spur colour": "ivory", "leaf width [mm]": "14", "occurrenceRemarks": "photograph 12",
}  # fmt: skip


def filled(table: str) -> str:
    """Two plants typed under the headings of the empty table; the second was measured with a decimal comma."""
    headings = headings_of(table)
    first = {name: FILLED.get(name, "") for name in headings} | {"occurrenceID": "INV-9001"}
    second = first | {"occurrenceID": "INV-9002", "spur length [mm]": "18,5", "bracteoles": ""}
    out = io.StringIO()
    writer = csv.DictWriter(out, headings, lineterminator="\n")
    writer.writeheader()
    writer.writerows([first, second])
    return out.getvalue()


def read_back(table: str, folder: Path) -> Corpus:
    """The demo knowledge base with this table in place of its plants; no problem may arise from the table."""
    shutil.copytree(KB, folder)
    (folder / "specimens.csv").write_text(table, encoding="utf-8")
    records, problems = read(folder)
    corpus, more = link(records)
    told = [str(one) for one in (*problems, *more) if "specimens.csv" in one.place.file]
    assert told == []
    return applied(corpus).corpus


def test_the_table_reads_back(tmp_path: Path) -> None:
    corpus = read_back(filled(run(LONGUM, ROBUSTUM, "--format", "csv")[1]), tmp_path / "kb")
    first, second = plants(corpus)
    assert (first.id, first.site, first.observed_by, first.dates) == (
        "INV-9001", "INV-S03", "T. Example", ("2025-10-04",),
    )  # fmt: skip
    assert (first.instrument, first.establishment) == ("calliper", "native")
    spur = first.at("spur length", "mature")
    assert spur is not None and (float(spur.value), float(spur.accuracy)) == (31.5, 0.5)
    for character, value in (("petal length", 15), ("elevation", 220), ("aspect", 158)):
        assert float(first.at(character, "").value) == value
    ratio = first.at("spur to petal", "")
    assert ratio is not None and float(ratio.value) == pytest.approx(2.1)  # reckoned, without a column
    for character, stage, state in (
        ("leaf apex", "", "acute"), ("bracteoles", "", "absent"), ("spur colour", "mature", "ivory"),
    ):  # fmt: skip
        assert first.at(character, stage).states == ((state, 1),)
    assert float(second.at("spur length", "mature").value) == 18.5 and second.at("bracteoles", "") is None


def test_every_state_that_is_printed_reads_back(tmp_path: Path) -> None:
    taxa = (LONGUM, ROBUSTUM, ALBUM, "--character", "leaf hairiness", "--character", "spur colour")
    data = json.loads(run(*taxa, "--json")[1])
    headings = headings_of(run(*taxa, "--format", "csv")[1])
    told = [(one["column"], state["name"]) for one in data["characters"] for state in one["states"]]
    assert {"leaf hairiness", "spur colour"} <= {name for name, _ in told}
    rows = [
        ",".join({"occurrenceID": f"INV-{n}", "lifeStage": "mature", name: state}.get(head, "") for head in headings)
        for n, (name, state) in enumerate(told)
    ]
    corpus = read_back("\n".join([",".join(headings), *rows]), tmp_path / "kb")
    for (name, state), plant in zip(told, plants(corpus), strict=True):
        assert [(one.character, one.states) for one in plant.observations] == [(name, ((state, 1),))]


def test_determine_reads_it(tmp_path: Path) -> None:
    table = tmp_path / "sheet.csv"
    table.write_text(filled(run(LONGUM, ROBUSTUM, "--format", "csv")[1]), encoding="utf-8")
    code, out, said = run(str(table), "--among", LONGUM, "--among", ROBUSTUM, "--format", "csv", command="determine")
    assert code == 0 and "not known" not in said
    rows = list(csv.DictReader(io.StringIO(out)))
    assert [row["plant"] for row in rows] == ["INV-9001", "INV-9002"]
    assert "longum" in rows[0]["determined as"]


# --- hostile and mistaken words


def test_hostile_words_stay_words(tmp_path: Path) -> None:
    shutil.copytree(KB, tmp_path / "kb")
    characters = tmp_path / "kb" / "characters.yaml"
    text = characters.read_text(encoding="utf-8")
    how = 'Lay the leaf flat <img src=x onerror=alert(1)> & "so" </style><script>alert(2)</script>'
    text = text.replace("Lay the leaf flat; leave the last tooth out of the judgement.", json.dumps(how))
    characters.write_text(text, encoding="utf-8")
    settings = tmp_path / "kb" / "kb.yaml"
    words = settings.read_text(encoding="utf-8").replace("Eat nothing on", "Eat <b onclick=x>nothing</b> on")
    settings.write_text(words, encoding="utf-8")
    code, page, _ = run(LONGUM, ROBUSTUM, kb=tmp_path / "kb")
    assert code == 0 and "&lt;img src=x onerror=alert(1)&gt; &amp; &quot;so&quot;" in page
    assert not {tag for tag, _ in Page(page).tags} & {"img", "script"}
    assert "Eat &lt;b onclick=x&gt;" in page


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        pytest.param(("Iris setos", "Iris virginica"), 1, "Iris setosa", id="the nearest name"),
        pytest.param(
            ("Iris setosa", "--character", "petal lenght"), 1, "did you mean `petal length`", id="a character"
        ),
        pytest.param(("Iris setosa", "--without", "petal lenght"), 1, "did you mean `petal length`", id="left out"),
        pytest.param(("Iris setosa", "--sec", "fisher"), 2, "fisher-1936", id="a work"),
        pytest.param((), 2, "Missing argument", id="no taxon"),
        pytest.param(("Iris setosa", "--paper", "a5"), 2, "a5", id="a paper"),
        pytest.param(("Iris setosa", "--format", "pdf"), 2, "pdf", id="a form"),
        pytest.param(("Iris setosa", "--plants", "0"), 2, "0", id="no plants"),
    ],
)
def test_misuse_is_told_in_words(arguments: tuple[str, ...], code: int, said: str) -> None:
    found, _, told = run(*arguments, kb=IRIS)
    assert found == code and said in told and "Traceback" not in told


def test_taxa_that_nothing_parts() -> None:
    code, out, said = run("Cremnocentron album var. giganteum", "Cremnocentron album var. roseum")
    assert (code, out) == (1, "") and "no character" in said and "--character" in said
    code, out, _ = run(
        "Cremnocentron album var. giganteum", "Cremnocentron album var. roseum", "--character", "spur length"
    )
    assert code == 0 and "spur length [mm]" in out


def test_help() -> None:
    result = CliRunner().invoke(main, ["field-sheet", "--help"])
    assert result.exit_code == 0
    assert all(one in result.output for one in ("TAXON...", "--paper", "--plants", "--format", "--character", "--json"))


def test_a_base_without_cautions_has_the_standing_ones() -> None:
    text = run("Iris setosa", kb=IRIS)[1]
    assert "collect nothing without them" in text and "eat nothing on the strength of a determination" in text
