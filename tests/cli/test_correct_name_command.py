"""`auctorum correct-name` on the demo (invented): answers, reasons, exit codes, misuse; README shows it in words."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from auctorum.cli.main import main

KB = str(Path(__file__).parents[2] / "kb")


def run(*arguments: str) -> Result:
    return CliRunner().invoke(main, ["correct-name", *arguments, "--kb", KB])


def answer(*arguments: str, code: int = 0) -> dict[str, Any]:
    result = run(*arguments, "--json")
    assert result.exit_code == code, result.output
    return json.loads(result.stdout)


@pytest.mark.parametrize(
    ("arguments", "outcome", "name"),
    [
        pytest.param(
            ["Cremnocentron longum", "--sec", "brandow-1934"],
            "name",
            "Cremnocentron longum (Orrin) Brandow",
            id="as-its-author-had-it",
        ),
        pytest.param(
            ["Cremnocentron longum", "--sec", "brandow-1934", "--include", "Cremnocentron longicalcaratum"],
            "name",
            "Cremnocentron longicalcaratum Peralvo",
            id="with-an-older-species",
        ),
        pytest.param(
            ["Cremnocentron candidum", "--sec", "falkenreut-1908"],
            "name",
            "Cremnocentron album Vane",
            id="superfluous-name-used",
        ),
        pytest.param(
            ["Cremnocentron album var. album", "--sec", "orrin-1889"],
            "autonym",
            "Cremnocentron album Vane var. album",
            id="autonym",
        ),
    ],
)
def test_answer(arguments: list[str], outcome: str, name: str) -> None:
    found = answer(*arguments)
    assert (found["outcome"], found["name"]) == (outcome, name)
    assert found["reasons"][-1]["text"] == f"The correct name is {name}"
    assert found["edition"] == "Shenzhen 2018"


def test_a_species_that_is_lowered_keeps_the_epithet_of_its_autonym() -> None:
    """ICN Art. 11.6: var. luteolum was established in 1938 together with var. hirtum, and goes before it."""
    found = answer("Cremnocentron luteolum", "--rank", "variety", "--under", "Cremnocentron album", code=1)
    assert found["name"] == "Cremnocentron album var. luteolum"
    assert "that of the autonym" in found["reasons"][-2]["text"]


def test_a_combination_needed_is_no_name_and_ends_with_1() -> None:
    sec = ("--sec", "tolhurne-1896")
    found = answer("Cremnocentron hirtum", *sec, "--rank", "subspecies", "--under", "Cremnocentron album", code=1)
    assert found["outcome"] == "new combination needed"
    assert found["name"] == "Cremnocentron album subsp. hirtum"
    assert found["based_on"] == "Cremnocentron hirtum Tolhurne"


def test_without_a_work_the_latest_that_keeps_it() -> None:
    assert answer("Cremnocentron hirtum")["sec"] == "dunsary-1979"


@pytest.mark.parametrize(
    ("arguments", "code", "told"),
    [
        pytest.param(["Cremnocentron longum", "--sec", "nobody-1900"], 2, "no work 'nobody-1900'", id="no-such-work"),
        pytest.param(["Cremnocentron longum", "--sec", "falkenreut-1908"], 2, "does not place", id="not-placed-there"),
        pytest.param(["Cremnocentron longum", "--rank", "vareity"], 2, "no rank `vareity`", id="no-such-rank"),
        pytest.param(["Cremnocentron langum"], 1, "nearest: Cremnocentron longum", id="no-such-name"),
        pytest.param(
            ["Cremnocentron longum", "--exclude", "Cremnocentron longum", "--exclude", "Cremnocentron longicalcaratum"],
            1,
            "no type is left in the taxon",
            id="nothing-left",
        ),
        pytest.param([], 2, "Missing argument", id="no-taxon"),
    ],
)
def test_what_can_not_be_answered_is_said(arguments: list[str], code: int, told: str) -> None:
    result = run(*arguments)
    assert result.exit_code == code
    assert told in result.output and "Traceback" not in result.output
