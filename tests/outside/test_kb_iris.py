"""Anderson's measurements of three irises, kept in tests/data/kb-iris, through the command line.

Figures: Anderson, Bulletin of the American Iris Society 59: 2-5 (1935), as printed by Fisher, Annals of Eugenics 7:
179-188 (1936), table I. The name acts are from memory.
"""

from __future__ import annotations

import csv
import json
import statistics
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main

KB = Path(__file__).parents[1] / "data" / "kb-iris"
SPECIES = ("Iris setosa", "Iris versicolor", "Iris virginica")
CHARACTERS = ("sepal length", "sepal width", "petal length", "petal width")


def run(*arguments: str) -> str:
    """What the command prints; it must end with exit code 0."""
    result = CliRunner().invoke(main, [*arguments, "--kb", str(KB)])
    assert result.exit_code == 0, result.output
    return result.stdout


def measured(species: str, character: str) -> list[float]:
    with (KB / "specimens.csv").open(encoding="utf-8", newline="") as file:
        return [float(row[f"{character} [cm]"]) for row in csv.DictReader(file) if row["scientificName"] == species]


@pytest.mark.parametrize(
    ("species", "means"),
    [
        pytest.param("Iris setosa", (5.006, 3.428, 1.462, 0.246), id="setosa"),
        pytest.param("Iris versicolor", (5.936, 2.770, 4.260, 1.326), id="versicolor"),
        pytest.param("Iris virginica", (6.588, 2.974, 5.552, 2.026), id="virginica"),
    ],
)
def test_figures_are_those_of_fisher(species: str, means: tuple[float, ...]) -> None:
    """Means of fifty flowers; those of the first two stand in Fisher 1936, table II. All given here from memory."""
    flowers = [measured(species, character) for character in CHARACTERS]
    assert [len(values) for values in flowers] == [50] * 4
    assert [round(statistics.fmean(values), 3) for values in flowers] == list(means)


def test_check_finds_nothing() -> None:
    assert "150 specimens" in run("check")
    assert json.loads(run("check", "--json")) == {
        "errors": 0,
        "warnings": 0,
        "open_questions": 4,  # whether the four names were described is not recorded
        "problems": [],
    }


def test_history() -> None:
    found = json.loads(run("history", "Iris setosa", "--json"))
    assert found["names"] == ["Iris setosa Pall. ex Link"]
    assert [(event["year"], event["kind"], event["what"], event["parent"]) for event in found["events"]] == [
        (1820, "act", "new taxon", ""),
        (1936, "placement", "accepted", "Iris"),
    ]


@pytest.mark.parametrize("species", SPECIES)
@pytest.mark.parametrize("character", CHARACTERS)
def test_diagnosis_gives_the_range_of_the_flowers(species: str, character: str) -> None:
    """The second answer is computed from the flowers by the standard library: the typical range is q10 to q90."""
    found = json.loads(run("diagnosis", species, "--character", character, "--json"))
    (finding,) = found["characters"]
    (statement,) = finding["statements"]
    values = measured(species, character)
    tenths = statistics.quantiles(values, n=10, method="inclusive")
    assert (statement["work"], statement["year"]) == ("fisher-1936", 1936)
    assert (statement["low"], statement["high"]) == pytest.approx((tenths[0], tenths[-1]), abs=0.051)
    low, high = f"{min(values):.1f}", f"{max(values):.1f}"
    assert f"({low}–)" in statement["read_as"] or statement["read_as"].startswith(low)
    assert f"(–{high})" in statement["read_as"]
    assert finding["verdict"] == "single author"


@pytest.mark.parametrize(
    ("label", "name", "kind"),
    [
        pytest.param("Iris versicolour", "Iris versicolor L.", "letter too many", id="british-ending"),
        pytest.param("IRIS VIRGINICA", "Iris virginica L.", "another capital", id="capitals"),
        pytest.param("Iris setosus", "Iris setosa Pall. ex Link", "gender ending", id="gender"),
        pytest.param("I. setosa var. canadensis", "Iris setosa Pall. ex Link", "", id="unknown-variety"),
    ],
)
def test_match(label: str, name: str, kind: str) -> None:
    result = CliRunner().invoke(main, ["match", label, "--json", "--kb", str(KB)])
    (found,) = json.loads(result.stdout)
    if kind:
        assert (result.exit_code, found["verdict"]) == (0, "one")
        assert (found["candidates"][0]["name"], found["candidates"][0]["kind"]) == (name, kind)
    else:
        assert (result.exit_code, found["verdict"]) == (1, "none")


def test_build(tmp_path: Path) -> None:
    out = tmp_path / "site"
    run("build", "--out", str(out))
    pages = {path.stem for path in out.rglob("*.html")}
    assert {"index", "iris-setosa", "iris-versicolor", "iris-virginica", "fisher-1936"} <= pages
