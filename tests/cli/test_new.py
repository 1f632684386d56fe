"""`auctorum new`: what it makes is a good start, and nothing is overwritten."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest
from click.testing import CliRunner

from auctorum.cli.main import main


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.chdir(tmp_path)


def invoke(*arguments: str) -> tuple[int, str]:
    result = CliRunner().invoke(main, list(arguments))
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.output


def test_a_new_knowledge_base_is_clean(tmp_path: Path) -> None:
    assert invoke("new", "kb", "mine", "--title", "Spurs: a 'group'")[0] == 0
    code, output = invoke("check", "--kb", "mine")
    assert (code, output.splitlines()[-1].endswith("no errors, no warnings.")) == (0, True)


def test_a_file_is_no_place_for_a_knowledge_base(tmp_path: Path) -> None:
    (tmp_path / "notes").write_text("x")
    code, output = invoke("new", "kb", "notes")
    assert code == 2 and "notes is a file; name a folder, a new or an empty one" in " ".join(output.split())


def test_a_new_literature_file_asks_for_what_is_missing(tmp_path: Path) -> None:
    invoke("new", "kb", "mine")
    assert invoke("new", "literature", "orrin-1911", "--kb", "mine")[0] == 0
    code, output = invoke("check", "--kb", "mine", "--json")
    assert code == 1
    whats = sorted(one["what"] for one in json.loads(output)["problems"])
    assert whats == ["the key `family` is missing", "the key `issued` is missing", "the key `title` is missing"]


def test_a_filled_form_is_clean(tmp_path: Path) -> None:
    invoke("new", "kb", "mine")
    invoke("new", "literature", "orrin-1911", "--kb", "mine")
    path = tmp_path / "mine" / "literature" / "orrin-1911.yaml"
    text = path.read_text()
    text = text.replace("family: ,", "family: Orrin,").replace("issued:    ", "issued: 1911")
    text = text.replace("  title:\n", "  title: On spurs\n").replace("# - ", "- ").replace("#   ", "  ")
    text = text.replace(
        "- name: Exemplum album var.",
        "- {name: Exemplum, act: new taxon}\n- {name: Exemplum album, act: new taxon}\n- name: Exemplum album var.",
        1,
    )
    path.write_text(text)
    code, output = invoke("check", "--kb", "mine")
    assert code == 0, output
    assert "no errors, no warnings" in output


def test_nothing_is_overwritten(tmp_path: Path) -> None:
    invoke("new", "kb", "mine")
    (tmp_path / "mine" / "kb.yaml").write_text("title: Precious\n")
    code, output = invoke("new", "kb", "mine")
    assert code == 2 and "nothing was written, for there is already: " in output
    assert (tmp_path / "mine" / "kb.yaml").read_text() == "title: Precious\n"


@pytest.mark.parametrize(
    "record", ["literature", "kb", "characters", "criterion", "site-row", "specimen-row", "label-row"]
)
def test_schema(record: str) -> None:
    code, output = invoke("new", "schema", record)
    assert code == 0
    jsonschema.Draft202012Validator.check_schema(json.loads(output))
