"""`compare` with two taxa or more: what tells them apart, for people and for machines, and how it is misused."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main

KB = str(Path(__file__).parents[2] / "kb")
IRIS = str(Path(__file__).parents[1] / "data" / "kb-iris")
LONGUM, ROBUSTUM = "Cremnocentron album var. longum", "Cremnocentron album var. robustum"
IRISES = ("Iris setosa", "Iris versicolor", "Iris virginica")


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def compare(*arguments: str, kb: str = KB, columns: int = 100) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, ["compare", *arguments, "--kb", kb], env={"COLUMNS": str(columns)})
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


def cells(out: str, character: str) -> list[str]:
    """The row of a character, wrapped cells left out."""
    row = next(line for line in out.splitlines() if line.startswith(character))
    return [cell.strip() for cell in row.split("   ") if cell.strip()]


def test_two_taxa_side_by_side() -> None:
    code, out, _ = compare(LONGUM, ROBUSTUM, columns=200)
    assert code == 0
    head = "character longum robustum overlap threshold error works strength"
    assert [" ".join(line.split()) for line in out.splitlines()].count(head) == 1
    spur = cells(out, "spur length (mature)")
    assert spur[:3] == ["spur length (mature)", "22–44 mm", "15–25 mm"]
    assert "longum ≥ 25 mm" in spur and spur[-1] == "helps"
    assert cells(out, "spur colour (mature)")[-1] == "no use"
    told = " ".join(out.split())
    assert "Mind the stage: a young spur of var. longum (9–20 mm) measures as a mature one of var. robustum." in told
    assert "no plants were counted" in told


def test_no_line_is_wider_than_the_terminal() -> None:
    for taxa, kb in (((LONGUM, ROBUSTUM), KB), (IRISES, IRIS)):
        _, out, _ = compare(*taxa, kb=kb)
        assert max(map(len, out.splitlines())) <= 100


def test_three_taxa_have_a_row_a_character_and_sentences_a_pair() -> None:
    code, out, _ = compare(*IRISES, kb=IRIS)
    assert code == 0
    assert cells(out, "petal length") == ["petal length", "1.3–1.7 cm", "3.6–4.8 cm", "4.9–6.3 cm", "0", "0", "8 %"]
    rows = [line.split("  ")[0] for line in out.splitlines() if line.startswith(("petal", "sepal"))]
    assert (rows[:2], rows[-1]) == (["petal length", "petal width"], "sepal width")
    assert [line for line in out.splitlines() if "–" in line and " and " in line and line[0].isdigit()] == [
        "1–2  I. setosa and I. versicolor",
        "1–3  I. setosa and I. virginica",
        "2–3  I. versicolor and I. virginica",
    ]


def test_four_taxa_have_a_column_of_the_pairs_that_part() -> None:
    four = (LONGUM, ROBUSTUM, "Cremnocentron album var. album", "Cremnocentron hirtum")
    _, out, _ = compare(*four, columns=250)
    assert "separates" in out.splitlines()[5]
    assert cells(out, "spur length (mature)")[-1] == "(1–2), 1–3, 1–4, (2–3)"
    assert cells(out, "bracteoles")[-1] == "1–2, 2–3"


def test_only_the_works_and_characters_asked() -> None:
    code, out, _ = compare(LONGUM, ROBUSTUM, "--sec", "orrin-1889", "--character", "leaf apex", "--json")
    assert code == 0
    data = json.loads(out)
    assert data["sec"] == [{"work": "orrin-1889", "called": "Orrin 1889"}]
    (one,) = data["pairs"][0]["characters"]
    assert (one["character"], one["overlap"], one["support"]) == ("leaf apex", 0, ["orrin-1889"])


def test_json_names_every_figure() -> None:
    _, out, _ = compare("Iris versicolor", "Iris virginica", "--json", kb=IRIS)
    data = json.loads(out)
    (pair,) = data["pairs"]
    assert pair["sentences"].startswith("Petal length tells them best: from 4.9 cm on it is I. virginica; ")
    best = pair["characters"][0]
    assert (best["character"], best["unit"], best["strength"]) == ("petal length", "cm", "helps")
    cut = best["threshold"]
    assert (cut["value"], cut["below"], cut["above"]) == (4.9, "iris-versicolor", "iris-virginica")
    assert (cut["lost_below"] + cut["lost_above"]) / 2 == pytest.approx(best["error"], abs=1e-5)


def test_exit_code_1_where_nothing_can_be_compared() -> None:
    code, out, _ = compare(LONGUM, ROBUSTUM, "--sec", "vane-1874")
    assert code == 1
    assert "Nothing is stated of any of them." in out and "After Vane 1874 alone." in out


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        pytest.param((), "give --sec twice, for the work to start from", id="nothing"),
        pytest.param((LONGUM,), "Or name two taxa or more, to see what tells them apart", id="one-taxon"),
        pytest.param((LONGUM, LONGUM), "are one taxon: Cremnocentron album var. longum Orrin", id="twice"),
        pytest.param((LONGUM, "Cremnocentron longum"), "are one taxon", id="two-names-of-one"),
        pytest.param((LONGUM, ROBUSTUM, "--sec", "orrin-1898"), "nearest: orrin-1889", id="unknown-work"),
        pytest.param(
            ("--sec", "orrin-1889", "--sec", "brandow-1934", "--character", "leaf apex"),
            "--character goes with two taxa or more",
            id="character-of-works",
        ),
    ],
)
def test_misuse(arguments: tuple[str, ...], said: str) -> None:
    code, out, told = compare(*arguments)
    assert (code, out) == (2, "")
    assert said in told


def test_a_misspelt_name_or_character_gives_the_nearest() -> None:
    code, _, told = compare(LONGUM, "Cremnocentron hirtm")
    assert code == 1 and "Cremnocentron hirtum" in told
    code, _, told = compare(LONGUM, ROBUSTUM, "--character", "leaf apx")
    assert code == 1 and "did you mean `leaf apex`?" in told


def test_two_works_and_one_taxon_are_compared_as_views() -> None:
    code, out, _ = compare("Cremnocentron album", "--sec", "quessel-1951", "--sec", "ohrlander-marlthorpe-2016")
    assert code == 0
    assert "Accepted names" in out
