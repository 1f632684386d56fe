"""`compare` on the demo: from one work to another, in words to be read aloud and for machines."""

from __future__ import annotations

import itertools
import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.compare import compare
from auctorum.corpus.link import link
from auctorum.nomenclature.compare import UnknownWork
from auctorum.nomenclature.compare import compare as compare_works
from auctorum.nomenclature.compare_wording import plain, sentence
from auctorum.records.read import read

KB = str(Path(__file__).parents[2] / "kb")


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


def invoke(*arguments: str, columns: int = 400) -> tuple[int, str, str]:
    result = CliRunner().invoke(compare, [*arguments, "--kb", KB], env={"COLUMNS": str(columns)})
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


def sec(a: str, b: str) -> tuple[str, ...]:
    return ("--sec", a, "--sec", b)


@pytest.mark.parametrize(
    "works",
    [
        pytest.param([], id="none"),
        pytest.param(["orrin-1889"], id="one"),
        pytest.param(["orrin-1889", "brandow-1934", "yarrend-2022"], id="three"),
    ],
)
def test_other_than_two_works_is_misuse(works: list[str]) -> None:
    code, _, said = invoke(*(word for one in works for word in ("--sec", one)))
    assert code == 2
    assert (
        "Usage:" in said
        and f"give --sec twice, for the work to start from and the work to go to; not {len(works)}×" in said
    )


def test_an_unknown_work_names_the_nearest() -> None:
    result = CliRunner().invoke(compare, [*sec("orrin-1898", "brandow-1934"), "--kb", KB])
    assert isinstance(result.exception, UnknownWork)
    assert str(result.exception) == "no work `orrin-1898` in the knowledge base"
    assert "orrin-1889" in result.exception.remedy


def test_a_raised_variety_is_told_line_by_line() -> None:
    code, out, _ = invoke(*sec("quessel-1951", "ohrlander-marlthorpe-2016"), "Cremnocentron longum")
    assert code == 0
    assert out.splitlines() == [
        "Cremnocentron longum (Orrin) Brandow and its parts",
        "From Quessel 1951 to Ohrlander & Marlthorpe 2016, 2 types: 1 renamed on the same type, 1 doubtful. "
        "Accepted names: none gained, none lost, 1 changed.",
        "",
        "Cremnocentron",
        "Cremnocentron album var. longum in Quessel 1951 is Cremnocentron longum in Ohrlander & Marlthorpe 2016: "
        "another rank on the same type (Quessel 1951: 46; Ohrlander & Marlthorpe 2016: 124).",
        "Cremnocentron longicalcaratum: a synonym of Cremnocentron album var. longum in Quessel 1951, kept with doubt "
        "as species in Ohrlander & Marlthorpe 2016 (Quessel 1951: 46; Ohrlander & Marlthorpe 2016: 128).",
        "",
        "Accepted names",
        "Changed: Cremnocentron album var. longum Orrin to Cremnocentron longum (Orrin) Brandow.",
    ]


def test_what_one_work_leaves_aside_takes_one_line() -> None:
    _, out, _ = invoke(*sec("maddrick-1923", "wethercote-1958"))
    (line,) = [one for one in out.splitlines() if "does not set out to treat it" in one]
    assert line == (
        "Only in Wethercote 1958; Maddrick 1923 does not set out to treat it: "
        "Cremnocentron longicalcaratum Peralvo (a synonym of Cremnocentron album f. longum); "
        "Cremnocentron luteolum Orrin; Cremnocentron pendulum Vane."
    )


def test_homonyms_keep_their_authors() -> None:
    _, out, _ = invoke(*sec("vane-1874", "falkenreut-1908"))
    assert "Cremnocentron pendulum Vane: accepted as species in Vane 1874; Falkenreut 1908 covers the group" in out
    assert "Cremnocentron pendulum Falkenreut: accepted as species in Falkenreut 1908; Vane 1874 appeared before" in out


def test_json_has_every_type_and_what_the_words_say() -> None:
    found = json.loads(invoke(*sec("quessel-1951", "dunsary-1979"), "--json")[1])
    assert (found["from"]["work"], found["to"]["called"]) == ("quessel-1951", "Dunsary 1979")
    types = [one["type_of"] for one in found["types"]]
    assert len(set(types)) == len(types) == 12
    by_type = {one["type_of"]: one for one in found["types"]}
    longum = by_type["Cremnocentron album var. longum Orrin"]
    assert (longum["kind"], longum["changed"], longum["to"]["accepted_name"]) == (
        "sunk",
        True,
        "Cremnocentron album Vane",
    )
    assert longum["from"]["how"] == "accepted as variety of Cremnocentron album" and longum["from"]["page"] == "46"
    assert by_type["Cremnocentron skarroense Peralvo"]["to"] is None
    assert by_type["Cremnocentron skarroense Peralvo"]["absence"] == "covers the group and is silent"
    assert by_type["Cremnocentron pendulum Vane"]["from"]["misapplied_to"] == "Cremnocentron dependens Maddrick"
    assert [one["what"] for one in found["divisions_and_unions"]] == ["union", "union"]
    # Quessel's five taxa below or beside the species that Dunsary does not keep.
    assert found["names_lost"] == [
        "Cremnocentron album Vane var. album",
        "Cremnocentron album var. longum Orrin",
        "Cremnocentron album var. robustum Orrin",
        "Cremnocentron luteolum var. hirtum (Tolhurne) Isherow",
        "Cremnocentron skarroense Peralvo",
    ]
    assert found["names_gained"] == found["names_changed"] == []


def test_nothing_in_common_with_the_taxon_is_said_and_exits_1() -> None:
    code, out, _ = invoke(*sec("brandow-1934", "peralvo-1926"), "Cremnocentron luteolum")
    assert code == 1
    assert "no types: neither work keeps, sinks or misapplies any" in out


def test_a_work_compared_with_itself_shows_no_change() -> None:
    code, out, _ = invoke(*sec("quessel-1951", "quessel-1951"))
    assert code == 0
    assert [line.split(":")[0] for line in out.splitlines()[2:]] == [
        "Cremnocentron",
        "Kept under the same name",
        "A synonym in both",
    ]


def test_lines_wrap_at_the_width_of_the_terminal() -> None:
    out = invoke(*sec("quessel-1951", "dunsary-1979"), columns=60)[1]
    assert max(len(line) for line in out.splitlines()) <= 60


def test_every_two_works_of_the_demo_and_the_way_back() -> None:
    """Each type that a work treats once, and what one way gains, divides or widens the other loses, unites, narrows."""
    records, _ = read(Path(KB))
    corpus, _ = link(records)
    for a, b in itertools.combinations(corpus.works, 2):
        found, back = compare_works(corpus, a, b), compare_works(corpus, b, a)
        groups = [change.group for change in found.changes]
        treated = {corpus.names[one.name].group for work in (a, b) for one in corpus.by_work.get(work, ())}
        assert len(set(groups)) == len(groups) and treated <= set(groups)
        assert (found.gained, found.lost) == (back.lost, back.gained)
        assert sorted(found.renamed) == sorted((old, new) for new, old in back.renamed)
        there = {change.group: change for change in back.changes}
        for change in found.changes:
            other = there[change.group]
            assert (change.gains, change.loses, change.moves) == (other.loses, other.gains, other.moves)
            assert change.is_change is other.is_change and "None" not in plain(sentence(corpus, found, change))
        assert {(one.is_division, one.whole) for one in found.regroupings} == {
            (not one.is_division, one.whole) for one in back.regroupings
        }
