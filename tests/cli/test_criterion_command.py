"""`auctorum criterion` from the command line, on the invented group."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main

KB = Path(__file__).parents[2] / "kb"
LONGUM, ROBUSTUM = (f"Cremnocentron album var. {epithet}" for epithet in ("longum", "robustum"))


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def criterion(*arguments: str, kb: Path = KB) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, ["criterion", *arguments, "--kb", str(kb)])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


def test_a_summary_to_be_read_aloud() -> None:
    code, out, err = criterion(LONGUM)
    assert (code, err) == (0, "")
    assert "Spur length at maturity at least 25 mm: Cremnocentron album var. longum." in out
    parts = ("What authors state", "What the named plants show", "Weak points", "Before you go out to measure")
    assert sorted(map(out.index, parts)) == list(map(out.index, parts))
    assert "In the knowledge base: “Long-spurred from 25 mm” (M. Sallow 2024)" in out
    assert "permits" in out and "Eat nothing on the strength of a determination" in out


def test_json() -> None:
    data = json.loads(criterion(LONGUM, "--against", ROBUSTUM, "--json")[1])
    assert [one["taxon"] for one in data["proposal"]["against"]] == ["cremnocentron-album-var-robustum"]
    assert data["proposal"]["names"]["otherwise"] == ROBUSTUM and data["cautions"]
    (kept,) = data["kept"]
    assert (kept["id"], kept["at_least"]) == ("longispur-like", 25.0)
    for one in kept["plants"]:
        assert min(one[key] for key in ("fits", "does_not_fit", "borderline", "insufficient")) >= 0
        low, high = one["wrong_interval"]
        assert 0 <= low <= high <= 1


def test_the_file_is_good_in_a_knowledge_base(tmp_path: Path) -> None:
    """What --yaml prints, put into criteria/, has no error that `check` would name, and is tried beside the other."""
    kb = tmp_path / "kb"
    shutil.copytree(KB, kb)
    code, text, _ = criterion(LONGUM, "--against", ROBUSTUM, "--yaml")
    assert code == 0 and text.startswith("# Proposed from the records")
    (kb / "criteria" / "proposed.yaml").write_text(text, encoding="utf-8")
    checked = CliRunner().invoke(main, ["check", "--kb", str(kb)])
    assert checked.exit_code == 0, checked.stdout
    assert "proposed.yaml" not in checked.stdout
    assert len(json.loads(criterion(LONGUM, "--json", kb=kb)[1])["kept"]) == 2


def test_another_character_and_another_view() -> None:
    data = json.loads(criterion(LONGUM, "--character", "leaf hairiness", "--json")[1])
    assert data["proposal"]["decisive"]["character"] == "leaf hairiness"
    data = json.loads(criterion(LONGUM, "--against", ROBUSTUM, "--sec", "quessel-1951", "--json")[1])
    assert [one["work"] for one in data["proposal"]["stated"]] == ["quessel-1951"]


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        pytest.param(["Cremnocentron album var. lngum"], 1, f"nearest: {LONGUM}", id="misspelt"),
        pytest.param([LONGUM, "--against", LONGUM], 1, "cannot be parted from itself", id="itself"),
        pytest.param([LONGUM, "--character", "spur lenth"], 1, "did you mean `spur length`?", id="character"),
        pytest.param([LONGUM, "--sec", "quesel-1951"], 2, "nearest: quessel-1951", id="work"),
        pytest.param([LONGUM, "--yaml", "--json"], 2, "not both", id="two-forms"),
        pytest.param(["Cremnocentron pendulum var. ramosum"], 1, "with --against", id="no-sisters"),
    ],
)  # fmt: skip
def test_what_goes_wrong_is_said(arguments: list[str], code: int, said: str) -> None:
    found, out, err = criterion(*arguments)
    assert found == code and said in err and "Traceback" not in err + out


def test_a_kept_criterion_is_shown_where_nothing_can_be_proposed(tmp_path: Path) -> None:
    code, out, err = criterion(LONGUM, "--character", "flower number", "--against", ROBUSTUM)
    assert code == 0 and "Nothing is proposed: no threshold of `flower number` parts" in err
    assert "In the knowledge base: “Long-spurred from 25 mm”" in out and "Weak points" not in out


def test_yaml_without_a_proposal_is_an_error() -> None:
    code, out, err = criterion(LONGUM, "--character", "flower number", "--against", ROBUSTUM, "--yaml")
    assert (code, out) == (1, "") and "no threshold" in err
