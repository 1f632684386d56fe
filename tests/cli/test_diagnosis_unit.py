"""`auctorum diagnosis --unit`: lengths in the unit asked for, and what is said of it."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main

KB = str(Path(__file__).parents[2] / "kb")


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def diagnosis(*options: str) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, ["diagnosis", "Cremnocentron longum", *options, "--kb", KB])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


def test_lengths_are_converted_and_said_to_be() -> None:
    code, out, _ = diagnosis("--unit", "inches")
    assert code == 0
    told = " ".join(out.split())
    assert "Lengths are converted from the units that the works print to in., and rounded. Left in its own" in told
    assert "unit: elevation." in told
    assert "14–28 lines = 1.2–2.3 in." in out and "1¼–2½ in. =" not in out
    rows = [
        line for line in out.splitlines() if line.startswith(("plant height", "leaf", "petal length", "spur length"))
    ]
    assert not any(re.search(r"\d (mm|cm)\b", row) for row in rows)
    assert not re.search(r"\d\.\d{4,} in", out)
    assert "in.." not in diagnosis("--unit", "inches", "--observed")[1]  # the point of the unit ends the sentence


def test_without_it_nothing_is_converted() -> None:
    _, out, _ = diagnosis("--detail", "table")
    assert "converted" not in out and " in." not in out


def test_the_verdicts_are_those_of_any_unit() -> None:
    (_, plain, _), (_, metres, _) = diagnosis("--json"), diagnosis("--json", "--unit", "ft")
    one, other = json.loads(plain), json.loads(metres)
    assert other["converted_to"] == "ft" and "converted_to" not in one
    for found, same in zip(one["characters"], other["characters"], strict=True):
        assert (found["character"], found["verdict"]) == (same["character"], same["verdict"])
        said, again = ([item["read_as"] for item in each["statements"]] for each in (found, same))
        assert said == again  # the unit as stated
    assert {found["unit"] for found in other["characters"]} == {"ft", "", "degree"}


@pytest.mark.parametrize(
    ("unit", "said"),
    [("parsec", "no unit `parsec`"), ("degree", "the unit `degree` does not fit a length"), ("", "no unit ``")],
)
def test_what_is_no_unit_of_length_is_misuse(unit: str, said: str) -> None:
    code, _, told = diagnosis("--unit", unit)
    assert code == 2 and said in told and "--unit" in told
