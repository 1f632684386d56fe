"""`auctorum key` from the command line, on the invented group and on the irises."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main

KB = Path(__file__).parents[2] / "kb"
IRIS = Path(__file__).parents[1] / "data" / "kb-iris"
IRISES = ("Iris setosa", "Iris versicolor", "Iris virginica")
VARIETIES = tuple(f"Cremnocentron album var. {epithet}" for epithet in ("album", "longum", "robustum"))


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def key(*arguments: str, kb: Path = KB) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, ["key", *arguments, "--kb", str(kb)])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


def test_irises_are_parted_by_their_petals() -> None:
    code, out, _ = key(*IRISES, kb=IRIS)
    assert code == 0
    first, second = out.split("\n\n")[1:3]
    assert first.startswith("1     Petals less than 2") and "Iris setosa" in first
    assert "2(1)  Petals" in second and "4.9 cm long" in second
    assert "Tried on 150 measured plants" in out


def test_the_varieties_with_cautions_and_json() -> None:
    code, out, _ = key(*VARIETIES)
    assert code == 0 and "Eat nothing on the strength of a determination" in out
    assert max(map(len, out.splitlines())) <= 88
    data = json.loads(key(*VARIETIES, "--json")[1])
    ends = {taxon for couplet in data["couplets"] for lead in couplet["leads"] for taxon in lead["taxa"]}
    assert ends == {taxon["id"] for taxon in data["taxa"]} and len(ends) == 3
    one = data["evaluation"]
    assert one["right"] + one["wrong"] + one["undecided"] == pytest.approx(one["plants"])
    low, high = one["wrong_interval"]
    assert low <= one["wrong"] / one["plants"] <= high


def test_by_the_spur_alone_few_plants_come_out_wrong() -> None:
    data = json.loads(key(*VARIETIES[1:], "--character", "spur length", "--json")[1])
    assert {name for couplet in data["couplets"] for name in couplet["characters"]} == {"spur length"}
    assert data["couplets"][0]["rules"][0] == {"stage": "mature", "threshold": 25.0}
    assert data["evaluation"]["wrong"] < 0.08 * data["evaluation"]["plants"]


def test_one_taxon_is_parted_from_those_placed_beside_it() -> None:
    out = key("Iris setosa", kb=IRIS)[1]
    assert out.startswith("Key to Iris setosa, Iris versicolor and Iris virginica: over all works")
    _, out, _ = key("Cremnocentron longum")
    assert out.startswith("Key to Cremnocentron album var. longum")


def test_characters_can_be_left_out_and_works_chosen() -> None:
    data = json.loads(key(*IRISES, "--without", "petal length", "--json", kb=IRIS)[1])
    assert "petal length" not in data["characters"]
    assert not any("petal length" in couplet["characters"] for couplet in data["couplets"])
    out = key(*IRISES, "--sec", "fisher-1936", kb=IRIS)[1]
    assert "sec. Fisher 1936" in out


@pytest.mark.parametrize("form", ["markdown", "html"])
def test_other_forms(form: str) -> None:
    code, out, _ = key(*IRISES, "--format", form, kb=IRIS)
    assert code == 0
    assert out.startswith({"markdown": "## Key to *Iris setosa*", "html": "<!DOCTYPE html>"}[form])


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        pytest.param(("Iris setos", "Iris virginica"), 1, "Iris setosa", id="the nearest name"),
        pytest.param((*IRISES, "--character", "petal lenght"), 1, "did you mean `petal length`", id="a character"),
        pytest.param((*IRISES, "--without", "petals"), 1, "no character `petals`", id="a character left out"),
        pytest.param((*IRISES, "--sec", "fisher"), 2, "fisher-1936", id="a work"),
        pytest.param((), 2, "Missing argument", id="no taxon"),
        pytest.param((*IRISES, "--format", "pdf"), 2, "pdf", id="a form"),
    ],
)
def test_misuse_is_told_in_words(arguments: tuple[str, ...], code: int, said: str) -> None:
    found, _, told = key(*arguments, kb=IRIS)
    assert found == code and said in told and "Traceback" not in told


def test_a_taxon_that_nobody_places_beside_another() -> None:
    code, _, told = key("Cremnocentron pendulum var. ramosum")
    assert code == 1
    assert "no work places another taxon of the same rank beside" in told and "name the taxa" in told
