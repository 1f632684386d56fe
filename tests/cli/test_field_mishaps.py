"""Records and options that went wrong, and what the commands for the field make of them."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from auctorum.cli.main import main

KB = Path(__file__).parents[2] / "kb"
TABLE = "occurrenceID,lifeStage,spur length [mm]\nINV-T1,Mature,31\nINV-T2,MATURE,19\n"


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, list(arguments))


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    return Path(shutil.copytree(KB, tmp_path / "kb"))


@pytest.mark.parametrize(
    "arguments",
    [("gaps",), ("determine", "--with", "spur length=31 mm"), ("survey",), ("criterion", "Cremnocentron longum")],
    ids=lambda arguments: str(arguments[0]),
)
def test_a_statement_of_an_unknown_character_is_left_out(copy: Path, arguments: tuple[str, ...]) -> None:
    file = copy / "literature" / "orrin-1889.yaml"
    text = file.read_text(encoding="utf-8")
    assert "character: spur length" in text
    file.write_text(text.replace("character: spur length", "character: spurr length", 1), encoding="utf-8")
    found = run(*arguments, "--kb", str(copy))
    assert found.exit_code == 0, found.output
    assert "fault of the program" not in found.output


def test_a_criterion_of_an_unknown_character_is_no_gap(copy: Path) -> None:
    file = next((copy / "criteria").glob("*.yaml"))
    text = file.read_text(encoding="utf-8")
    file.write_text(text.replace("character: spur length", "character: spurr length", 1), encoding="utf-8")
    found = run("gaps", "--kb", str(copy))
    assert found.exit_code == 0, found.output


def test_a_growth_stage_is_known_whatever_its_capitals(tmp_path: Path) -> None:
    file = tmp_path / "plants.csv"
    file.write_text(TABLE, encoding="utf-8")
    found = run("determine", str(file), "--kb", str(KB), "--format", "csv")
    assert found.exit_code == 0, found.output
    assert "insufficient" not in found.output


def test_answers_take_the_place_of_no_record(copy: Path) -> None:
    file = copy.parent / "plants.csv"
    file.write_text(TABLE, encoding="utf-8")
    for out in (file, copy / "specimens.csv"):
        before = out.read_text(encoding="utf-8")
        found = run("determine", str(file), "--kb", str(copy), "--out", str(out))
        assert found.exit_code == 2, found.output
        assert out.read_text(encoding="utf-8") == before


def test_an_interval_without_end_is_not_asked_for() -> None:
    assert run("survey", "--kb", str(KB), "--within", "1e-9").exit_code == 2
