"""`auctorum gaps`: the list for people and as JSON, its limits, and what it never tells."""

from __future__ import annotations

import contextlib
import csv
import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.circumscription.gaps.model import GapKind
from auctorum.cli.main import main

KB = Path(__file__).parents[2] / "kb"


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.setenv("COLUMNS", "100")


def gaps(*options: str, kb: Path = KB) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, ["gaps", *options, "--kb", str(kb)])
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


@pytest.fixture(scope="module")
def every(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[dict[str, object]]]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        return json.loads(gaps("--json", "--limit", "0")[1])


def test_the_first_entries_are_about_the_contested_varieties() -> None:
    code, out, _ = gaps("--limit", "6")
    told = " ".join(out.split())
    assert code == 0
    assert out.startswith("1. ")
    assert "Cremnocentron album var. album, in the strict sense: what about aspect?" in told
    assert "is its spur to petal ratio" not in told  # 75 plants of the long spur have both measures, and settle it
    assert "To do: Read page" in told and "dunsary-1979.yaml:" in told
    assert "more open questions; --limit 0 lists all." in told
    assert max(map(len, out.splitlines())) <= 100


def test_the_plants_of_the_demo_leave_the_long_spur_a_few_short() -> None:
    _, out, _ = gaps("Cremnocentron album var. longum", "--kind", "conflict")
    told = " ".join(out.split())
    assert "is its spur length at maturity 22–35 mm (Orrin 1889) or 22–56 mm (Yarrend 2022)?" in told
    assert "80 plants are measured" in told
    assert "flower number" not in told  # 80 plants have settled it


def test_json_holds_every_entry_by_rank(every) -> None:
    found = every["gaps"]
    assert every["open_questions"] == len(found) > 20
    assert [one["number"] for one in found] == list(range(1, len(found) + 1))
    ranks = [one["rank"] for one in found]
    assert ranks == sorted(ranks, reverse=True) and 0 <= ranks[-1] <= ranks[0] <= 1
    assert {one["kind"] for one in found} <= set(GapKind)
    for one in found:
        assert one["question"].endswith("?") and one["why"].endswith(".") and one["to_do"].endswith(".")
        assert "  " not in one["question"] + one["why"] + one["to_do"]
    assert every["cautions"]


def test_entries_that_one_act_would_settle_are_one(every) -> None:
    for kind, key in (("untold", "taxa"), ("silent", "works"), ("unclear", "works")):
        named = [tuple(one[key]) for one in every["gaps"] if one["kind"] == kind]
        assert len(named) == len(set(named)) > 0


def test_the_default_is_twenty(every) -> None:
    assert json.loads(gaps("--json")[1])["gaps"] == every["gaps"][:20]


def test_kinds_may_be_given_again(every) -> None:
    _, out, _ = gaps("--kind", "site", "--kind", "name", "--json", "--limit", "0")
    found = json.loads(out)["gaps"]
    assert [one["question"] for one in found] == [
        one["question"] for one in every["gaps"] if one["kind"] in ("site", "name")
    ]
    assert {one["kind"] for one in found} == {"site", "name"}


def test_the_name_that_nobody_published_is_asked_for_and_valid_publication_left_to_check() -> None:
    _, out, _ = gaps("--kind", "name")
    assert "Cremnocentron album var. giganteum: where was it published?" in out
    assert out.count("auctorum check --open") == 1
    assert "Before anybody goes out" not in out  # reading needs no caution
    assert "check --open" not in gaps("--kind", "site")[1]


def test_field_work_comes_with_cautions_once_and_without_exact_localities() -> None:
    _, out, _ = gaps("--limit", "0")
    assert out.count("Before anybody goes out") == 1
    assert "permits" in out and "Cliffs" in out
    with (KB / "sites.csv").open(encoding="utf-8") as rows:
        for row in csv.DictReader(rows):
            assert row["locality"].split(",")[0] not in out
            assert row["decimalLatitude"] not in out and row["decimalLongitude"] not in out


def test_the_usual_cautions_stand_in_where_a_knowledge_base_has_none(tmp_path: Path) -> None:
    (tmp_path / "kb.yaml").write_text("title: Empty\n")
    (tmp_path / "characters.yaml").write_text("characters: []\n")
    (tmp_path / "sites.csv").write_text("locationID,role\nS1,candidate\n")
    code, out, _ = gaps(kb=tmp_path)
    assert code == 0 and "Site S1: what grows there?" in out
    assert "permits" in out and "eat nothing" in out


def test_nothing_open_is_exit_1() -> None:
    code, out, _ = gaps("Cremnocentron album var. longum", "--kind", "name")
    assert (code, out) == (1, "No open question of these kinds.\n")


def test_a_misspelt_name_gives_the_nearest() -> None:
    code, _, told = gaps("Cremnocentron album var. longun")
    assert code == 1
    assert "no name `Cremnocentron album var. longun`" in told and "nearest: Cremnocentron album var. longum" in told


@pytest.mark.parametrize("options", [("--kind", "nonsense"), ("--limit", "-1"), ("--limit", "many")])
def test_misuse_is_exit_2(options: tuple[str, ...]) -> None:
    assert gaps(*options)[0] == 2


def test_help_explains_each_kind_and_the_figure() -> None:
    out = CliRunner().invoke(main, ["gaps", "--help"]).output
    for kind in GapKind:
        assert kind.meaning in out
    assert "a simple judgement of ours" in " ".join(out.split())


def test_long_work_gives_a_sign_of_life(monkeypatch: pytest.MonkeyPatch) -> None:
    shown: list[tuple[str, bool]] = []

    @contextlib.contextmanager
    def at_work(what: str, *, long: bool) -> Iterator[None]:
        shown.append((what, long))
        yield

    monkeypatch.setattr("auctorum.cli.gaps.at_work", at_work)
    gaps("--limit", "1")
    monkeypatch.setattr("auctorum.cli.gaps.MANY", 10)
    gaps("--limit", "1")
    assert shown == [("Looking for open questions", False), ("Looking for open questions", True)]
