"""Commands on the demo: what is asked wrongly is answered helpfully, and results are there for machines."""

from __future__ import annotations

import json
import threading
import urllib.request
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main

KB = str(Path(__file__).parents[2] / "kb")


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def invoke(*arguments: str) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, [*arguments, "--kb", KB])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


@pytest.mark.parametrize("command", ["history", "diagnosis"])
def test_a_wrong_taxon_is_answered_with_the_nearest(command: str) -> None:
    code, _, said = invoke(command, "Cremnocentron albun var. longa")
    assert code == 1
    assert "no name `Cremnocentron albun var. longa`" in said
    assert "nearest: Cremnocentron album var. longum" in said


def test_homonyms_ask_for_authors() -> None:
    code, _, said = invoke("history", "Cremnocentron pendulum")
    assert code == 1
    assert (
        "may be 2 names (write it with authors: Cremnocentron pendulum Falkenreut; Cremnocentron pendulum Vane)" in said
    )
    assert invoke("history", "Cremnocentron pendulum Vane")[0] == 0


def test_what_is_no_name_is_said_to_be_none() -> None:
    code, _, said = invoke("history", "42 !!")
    assert code == 1 and "Traceback" not in said and "42 !!" in said


def test_a_name_nobody_describes_sends_to_its_history() -> None:
    code, _, said = invoke("diagnosis", "Cremnocentron")
    assert code == 1
    assert said == (
        "auctorum: no work treats Cremnocentron Vane as a taxon of its own "
        '(see `auctorum history "Cremnocentron Vane"` for what works make of it)\n'
    )


def test_any_name_on_the_type_leads_to_its_diagnosis() -> None:
    code, out, _ = invoke("diagnosis", "Cremnocentron hirtum", "--detail", "table")
    assert code == 0
    assert out.splitlines()[0] == "Cremnocentron luteolum var. hirtum (Tolhurne) Isherow"


def test_unknown_work_and_character_are_answered_with_the_nearest() -> None:
    code, _, said = invoke("diagnosis", "Cremnocentron longum", "--sec", "orrin-1898")
    assert code == 2 and "nearest: orrin-1889" in said
    code, _, said = invoke("diagnosis", "Cremnocentron longum", "--character", "spur lenght")
    assert code == 1 and "did you mean `spur length`?" in said


def test_history_follows_the_type_whichever_name_is_asked() -> None:
    asked = ["Cremnocentron album var. longum", "Cremnocentron longum", "Cremnocentron album f. longum"]
    found = [json.loads(invoke("history", name, "--json")[1]) for name in asked]
    assert found[0] == found[1] == found[2]
    years = [event["year"] for event in found[0]["events"]]
    assert years == sorted(years) and len(found[0]["silent"]) == 3


def test_diagnosis_for_machines_says_what_it_says_to_people() -> None:
    found = json.loads(invoke("diagnosis", "Cremnocentron longum", "--character", "spur length", "--json")[1])
    mature = found["characters"][-1]
    assert (mature["stage"], mature["verdict"], mature["lower_bound"]["stable"]) == ("mature", "drifting", True)
    assert mature["upper_bound"]["tau"] > 0.6 and mature["upper_bound"]["p"] < 0.05
    assert [one["year"] for one in mature["statements"]] == sorted(one["year"] for one in mature["statements"])


def test_only_chosen_works_are_asked() -> None:
    found = json.loads(invoke("diagnosis", "Cremnocentron longum", "--sec", "orrin-1889", "--json")[1])
    assert found["works"] == ["orrin-1889"]
    assert {one["verdict"] for one in found["characters"]} <= {"single author", "silent"}


def test_the_wide_and_the_strict_sense_are_two_diagnoses() -> None:
    wide = json.loads(invoke("diagnosis", "Cremnocentron album", "--json")[1])
    strict = json.loads(invoke("diagnosis", "Cremnocentron album var. album", "--json")[1])
    assert wide["taxon"].endswith("in the wide sense") and strict["taxon"].endswith("in the strict sense")
    assert set(wide["works"]) != set(strict["works"])


def test_match_gives_exit_code_1_where_a_label_has_no_name(tmp_path: Path) -> None:
    assert invoke("match", "Cremnocentron album")[0] == 0
    labels = tmp_path / "labels.txt"
    labels.write_text("Cremnocentron album\nPrimrose, white\n", encoding="utf-8")
    code, out, _ = invoke("match", "--file", str(labels), "--json")
    assert code == 1
    assert [one["verdict"] for one in json.loads(out)] == ["one", "none"]


def test_match_says_how_the_name_stands() -> None:
    (found,) = json.loads(invoke("match", "Cremnocentrum longum", "--json")[1])
    best = found["candidates"][0]
    assert best["name"] == "Cremnocentron longum (Orrin) Brandow"
    assert best["accepted_name"] == "Cremnocentron album var. longum Orrin"
    assert best["standing"].endswith("sec. Yarrend 2022")


def test_the_graph_is_written(tmp_path: Path) -> None:
    for name in ("names.graphml", "names.svg"):
        assert invoke("export", "graph", str(tmp_path / name))[0] == 0
        assert (tmp_path / name).stat().st_size > 1000


def test_output_wraps_at_the_width_of_the_terminal() -> None:
    for width in (60, 100):
        result = CliRunner().invoke(main, ["history", "Cremnocentron longum", "--kb", KB], env={"COLUMNS": str(width)})
        assert max(len(line) for line in result.stdout.splitlines()) <= width


def test_serve_shows_a_built_site_and_nothing_else(tmp_path: Path) -> None:
    from auctorum.site.serve import server

    assert invoke("build", "--out", str(tmp_path / "site"))[0] == 0
    with server(tmp_path / "site", 0) as running:
        thread = threading.Thread(target=running.serve_forever)
        thread.start()
        try:
            address = f"http://127.0.0.1:{running.server_port}/index.html"
            assert "Cremnocentron" in urllib.request.urlopen(address, timeout=10).read().decode()
        finally:
            running.shutdown()
            thread.join()


def test_an_error_in_the_records_is_told_beside_the_answer(tmp_path: Path) -> None:
    import shutil

    copy = tmp_path / "kb"
    shutil.copytree(KB, copy)
    (copy / "literature" / "broken.yaml").write_text("work: [\n")
    result = CliRunner().invoke(main, ["history", "Cremnocentron longum", "--kb", str(copy)])
    assert result.exit_code == 0
    assert "The knowledge base has 1 error; what they concern is left out" in result.stderr
