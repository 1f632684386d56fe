"""`auctorum survey` on the demo, on a file of plants, and on hostile ones."""

from __future__ import annotations

import csv
import io
import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from auctorum.cli.main import main
from auctorum.cli.survey import survey
from auctorum.determination.survey.survey import HALF_WIDTH

KB = str(Path(__file__).parents[2] / "kb")
HEADER = "occurrenceID,locationID,scientificName,spur length [mm],lifeStage\n"


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, ["survey", "--kb", KB, *arguments])


@pytest.fixture(scope="module")
def data() -> dict[str, object]:
    found = run("--json")
    assert found.exit_code == 0, found.output
    return json.loads(found.stdout)


def test_the_usual_interval_is_that_of_the_core() -> None:
    """The command says it by itself, so that its help needs no arithmetic to be loaded."""
    assert {one.name: one.default for one in survey.params}["within"] == HALF_WIDTH


def test_it_can_be_read_section_by_section() -> None:
    found = run()
    assert found.exit_code == 0, found.output
    headings = (
        "How many, and by whose definition",
        "At each site",
        "How the count hangs on the threshold",
        "Gap or spectrum",
        "Who measures differently",
        "How many plants more",
        "Where to look next",
        "Before you go",
    )
    places = [found.output.index(heading) for heading in headings]
    assert places == sorted(places)
    assert "8 plants in cultivation left out" in found.output  # the garden of the demo has eight
    assert "sinks it in Cremnocentron album" in found.output


@pytest.mark.parametrize(
    ("section", "heading"),
    [
        ("counts", "How many, and by whose definition"),
        ("curve", "How the count hangs on the threshold"),
        ("spectrum", "Gap or spectrum"),
        ("observers", "Who measures differently"),
        ("wanted", "How many plants more"),
        ("candidates", "Where to look next"),
    ],
)
def test_one_section_alone(section: str, heading: str) -> None:
    found = run("--section", section)
    assert heading in found.output
    others = {"How many, and by", "Gap or", "Who measures", "Where to look"} - {heading[:16], heading[:6], heading[:12]}
    assert not any(other in found.output for other in others if not heading.startswith(other))


def test_counts_are_those_of_the_criterion_by_hand(data: dict) -> None:
    """Mature wild plants over 25 mm by more than their error, counted from the table itself."""
    from auctorum.circumscription.plants import plants
    from auctorum.corpus.link import link
    from auctorum.records.read import read

    corpus, _ = link(read(Path(KB))[0])
    spurs = [one.at("spur length", "mature") for one in plants(corpus) if one.establishment != "cultivated"]
    fits = sum(one is not None and one.value is not None and one.value - one.error >= 25 for one in spurs)
    criterion = next(one for one in data["whole"]["counts"] if one["counted_by"] == "criterion")
    assert (criterion["named"], criterion["judged"]) == (fits, sum(one is not None for one in spurs))


def test_csv_is_tidy() -> None:
    found = run("--format", "csv")
    rows = list(csv.DictReader(io.StringIO(found.stdout)))
    whole = {(row["counted by"], row["id"]): int(row["named"]) for row in rows if row["site"] == "all"}
    for view, total in whole.items():
        assert sum(int(row["named"]) for row in rows if (row["counted by"], row["id"]) == view) == 2 * total


def test_neither_json_nor_csv_tells_a_place_or_a_remark() -> None:
    told = run("--json").stdout + run("--format", "csv").stdout
    with Path(KB, "sites.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            for secret in (row["locality"].partition(",")[0], row["decimalLatitude"][:6], row["locationRemarks"]):
                assert not secret or secret not in told


def test_without_a_criterion_the_records_propose_the_threshold() -> None:
    found = run("Cremnocentron luteolum", "--section", "curve")
    assert "the one that the records propose is used" in found.output
    assert "proposed from the records" in found.output


def test_remarks_stand_on_the_terminal_of_who_goes_there() -> None:
    assert "Nesting birds of prey: ask the ranger for dates." in run("--section", "candidates").output


def test_a_file_of_plants_instead(tmp_path: Path) -> None:
    file = tmp_path / "season.csv"
    file.write_text(
        HEADER + "A1,INV-S01,Cremnocentron longum,31,\nA2,INV-S01,,19,\nA3,,,25,mature\nA4,,,30,young\n",
        encoding="utf-8",
    )
    found = run("--plants", str(file), "--json")
    assert found.exit_code == 0, found.output
    told = json.loads(found.stdout)
    criterion = next(one for one in told["whole"]["counts"] if one["counted_by"] == "criterion")
    assert (criterion["named"], criterion["judged"], criterion["undecided"], criterion["not_judged"]) == (1, 3, 1, 1)
    assert [one["site"] for one in told["sites"]] == ["INV-S01", None]
    assert "no site" in run("--plants", str(file), "--section", "counts").output


def test_no_plants_to_count(tmp_path: Path) -> None:
    file = tmp_path / "empty.csv"
    file.write_text(HEADER, encoding="utf-8")
    found = run("--plants", str(file))
    assert found.exit_code == 1
    assert "No wild plants at no sites." in found.output


def test_a_bad_cell_costs_only_itself(tmp_path: Path) -> None:
    file = tmp_path / "bad.csv"
    file.write_text(HEADER + "A1,INV-S01,,31,\nA2,INV-S01,,thirty,\n", encoding="utf-8")
    found = run("--plants", str(file), "--section", "counts")
    assert found.exit_code == 1
    assert "2 wild plants at 1 site" in found.output
    assert "bad.csv:3:" in found.output


@pytest.mark.parametrize(
    ("arguments", "code", "words"),
    [
        pytest.param(["Cremnocentron longun"], 1, "nearest: Cremnocentron longum", id="misspelt-taxon"),
        pytest.param(["--site", "INV-S1"], 2, "nearest: INV-S", id="misspelt-site"),
        pytest.param(["--criterion", "longispur"], 2, "nearest: longispur-like", id="misspelt-criterion"),
        pytest.param(
            ["Cremnocentron luteolum", "--criterion", "longispur-like"], 2, "does not concern", id="not-its-own"
        ),
        pytest.param(["--by", "orrin-1888"], 2, "nearest: orrin-1889", id="misspelt-work"),
        pytest.param(["--within", "0"], 2, "--within", id="no-width"),
        pytest.param(["--within", "nan"], 2, "--within", id="width-that-is-no-number"),
        pytest.param(["--stage", "ripe"], 2, "no stage", id="unknown-stage"),
        pytest.param(["--json", "--format", "csv"], 2, "not both", id="two-forms"),
        pytest.param(["--json", "--section", "curve"], 2, "--section is for the text", id="section-of-json"),
        pytest.param(["--plants", "nowhere.csv"], 2, "nowhere.csv", id="no-file"),
    ],
)
def test_misuse_is_said(arguments: list[str], code: int, words: str) -> None:
    found = run(*arguments)
    assert (found.exit_code, words in found.output) == (code, True), found.output


@pytest.mark.parametrize(
    "row",
    [
        pytest.param("A1,INV-S01,,1e400,\n", id="beyond-floats"),
        pytest.param("A1,INV-S01,,-5,\n", id="below-nothing"),
        pytest.param("A1,INV-S01,,0,\n", id="nothing"),
        pytest.param("=cmd,=1+1,=x,31,\n", id="formulas"),
        pytest.param("A1,\x1b[31m,,31,\n", id="escape"),
        pytest.param(
            "A1,INV-S01,,999999999999999999999999999999,\nA2,INV-S01,,0.000000000000000001,\n", id="far-apart"
        ),
    ],
)
def test_hostile_plants_leave_no_traceback(row: str, tmp_path: Path) -> None:
    file = tmp_path / "hostile.csv"
    file.write_text(HEADER + row, encoding="utf-8")
    for form in ([], ["--json"]):
        found = run("--plants", str(file), *form)
        assert found.exit_code in (0, 1)
        assert "a fault of the program" not in found.output


def test_cells_that_a_spreadsheet_would_run_are_mere_words(tmp_path: Path) -> None:
    file = tmp_path / "hostile.csv"
    file.write_text(HEADER + "A1,=1+1,,31,\n", encoding="utf-8")
    assert "\n'=1+1," in run("--plants", str(file), "--format", "csv").stdout
