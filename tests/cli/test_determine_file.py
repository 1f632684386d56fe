"""`auctorum determine FILE`: tables short and long, what is wrong in them, and --evaluate."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main

KB = Path(__file__).parents[2] / "kb"
LONGUM = "Cremnocentron album var. longum"
TABLE = f"""\
occurrenceID,scientificName,locationID,lifeStage,spur length [mm],leaf apex,flower number,petal length [mm]
A1,{LONGUM},INV-S01,mature,31,acute,5,16
A2,,INV-S01,young,18,,,
A3,Cremnocentron album var. robustum,,mature,31,acute,5,16
A4,,,mature,,,,
A5,,,mature,90,,,
"""


@pytest.fixture(autouse=True, scope="module")
def own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


def determine(*arguments: str) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, ["determine", *arguments, "--kb", str(KB)], env={"COLUMNS": "160"})
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


def table(folder: Path, text: str) -> str:
    path = folder / "plants.csv"
    path.write_text(text, encoding="utf-8")
    return str(path)


def rows_of(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text)))


def test_a_row_for_each_plant_then_the_sum(tmp_path: Path) -> None:
    code, out, err = determine(table(tmp_path, TABLE))
    assert (code, err) == (0, "")
    lines = {line.split()[0]: line for line in out.splitlines() if line.startswith("A")}
    assert "C. album var. longum" in lines["A1"] and "fits" in lines["A1"]
    assert "insufficient" in lines["A2"] and "spur length" in lines["A5"]
    flowing = " ".join(out.split())
    assert "5 plants, all authors" in flowing
    assert "Of 2 named plants that were determined, 1 as named." in flowing
    assert "On 1 plant nothing was observed that could be used." in flowing
    assert "Characters are taken as independent" in flowing and "A determination is an opinion" in flowing


def test_csv_holds_the_same_and_no_place(tmp_path: Path) -> None:
    code, out, _ = determine(table(tmp_path, TABLE), "--format", "csv")
    rows = rows_of(out)
    assert code == 0 and [row["plant"] for row in rows] == ["A1", "A2", "A3", "A4", "A5"]
    assert rows[0]["determined as"] == "C. album var. longum" and float(rows[0]["probability"]) > 0.95
    assert rows[3]["determined as"] == "Cremnocentron indet." and rows[3]["probability"] == ""
    assert rows[4]["outside what is stated of it"] == "spur length" and rows[4]["by longispur-like"] == "fits"
    assert rows[3]["observe next"] == "spur length (mature)" and rows[1]["by longispur-like"] == "insufficient"
    assert "INV-S01" not in out


def test_a_file_of_answers(tmp_path: Path) -> None:
    path, out = table(tmp_path, TABLE), tmp_path / "answers.csv"
    _, printed, _ = determine(path, "--format", "csv")
    code, said, _ = determine(path, "--out", str(out))
    assert code == 0 and f"wrote {out}" in said
    assert out.read_text(encoding="utf-8") == printed


def test_json(tmp_path: Path) -> None:
    code, out, _ = determine(table(tmp_path, TABLE), "--json")
    data = json.loads(out)
    assert code == 0 and list(data) == ["plants", "summary"]
    first = data["plants"][0]
    assert (first["plant"], first["criteria"]) == ("A1", {"longispur-like": "fits"})
    assert first["taxon"] == first["taxon_named"] == "cremnocentron-album-var-longum"
    assert data["summary"]["otherwise_named"] == [
        {"named": "cremnocentron-album-var-robustum", "determined": "cremnocentron-album-var-longum", "plants": 1}
    ]
    assert data["summary"]["plants"] == 5 and data["summary"]["undetermined"] == 1


def test_a_plant_of_a_table_is_answered_as_one_from_options(tmp_path: Path) -> None:
    (row,) = json.loads(determine(table(tmp_path, "\n".join(TABLE.splitlines()[:2])), "--json")[1])["plants"]
    told = ("spur length=31 mm", "leaf apex=acute", "flower number=5", "petal length=16 mm")
    one = json.loads(determine(*(part for said in told for part in ("--with", said)), "--json")[1])
    assert row["probability"] == one["candidates"][0]["probability"]
    assert row["characters_used"] == len(one["characters"]) == 5  # spur to petal follows from two of them


def test_bad_cells_have_their_place_and_the_rest_is_used(tmp_path: Path) -> None:
    text = "occurrenceID,spur length [mm],leaf apex\nA1,31,acute\nA2,long,acute\nA3,31,pointy-ish\n"
    path = table(tmp_path, text)
    code, out, err = determine(path, "--format", "csv")
    assert code == 1
    assert f"{path}:3:2: column `spur length`: 'long' is no number" in err and f"{path}:4:3: " in err
    assert "2 faults in the table" in err
    assert [row["characters used"] for row in rows_of(out)] == ["2", "1", "1"]


def test_a_long_table(tmp_path: Path) -> None:
    text = """\
occurrenceID,measurementType,measurementValue,measurementUnit
a,spur length,31,mm
a,leaf apex,acute,
b,spur length,1.2,in
"""
    code, out, _ = determine(table(tmp_path, text), "--format", "csv")
    assert code == 0 and [(row["plant"], row["characters used"]) for row in rows_of(out)] == [("a", "2"), ("b", "1")]


@pytest.mark.parametrize("text", ["", "\n\n", "foo\n1\n", "occurrenceID\n", "\x00\x01"], ids=repr)
def test_a_table_with_nothing_in_it(text: str, tmp_path: Path) -> None:
    code, _, err = determine(table(tmp_path, text))
    assert code == 1 and "a fault of the program" not in err


def test_cells_that_a_spreadsheet_would_run(tmp_path: Path) -> None:
    _, out, _ = determine(table(tmp_path, "occurrenceID,spur length [mm]\n=1+1,31\n"), "--format", "csv")
    assert rows_of(out)[0]["plant"] == "'=1+1"


HOSTILE = """\
occurrenceID,organismID,scientificName,locationID,lifeStage,sex,plant height [cm],leaf length [mm],leaf length [in],\
leaf apex,leaf hairiness,bracteoles,flower number,petal length [mm],spur length [mm],spur length ± [mm],spur colour,\
aspect
A1,,Cremnocentron album var. longum,INV-S01,mature,,24,39,,acute,sparsely hairy,absent,5,17.1,38.5,0.7,ivory,SSE
A2,P1,,INV-S01,young,,24,,,acute or obtuse,,no,5,17.1,18,0.7,green,
A3,P1,,,mature,,25,,,,,,6,17.1,30,0.7,cream,S
A4,,Nomen nullum,INV-S99,,,abc,,1.5,rounded,villous,+,0,0,28,,"green when young, ivory at maturity",400
A5,,Cremnocentron album,INV-S03,,female,,-3,,,glabrous to pubescent,,1.5,12,25,2,buff,120
A6,,,,old,,,12,0.6,emarginate,woolly,absent,3,,1e9,,russet,
A7,,,,,,,,,,,,,,,,,
"""


def test_read_in_chunks_or_whole_the_answers_are_the_same(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The two ways of reading share no code from the cell to the column: each checks the other."""
    path = table(tmp_path, HOSTILE)
    for arguments in ((), ("--habitat",), ("--stage", "young"), ("--sec", "quessel-1951")):
        whole = {row["plant"]: row for row in json.loads(determine(path, "--json", *arguments)[1])["plants"]}
        monkeypatch.setattr("auctorum.cli.determine_file.WHOLE", 0)
        chunks = {row["plant"]: row for row in json.loads(determine(path, "--json", *arguments)[1])["plants"]}
        monkeypatch.undo()
        assert set(whole) == set(chunks) == {"A1", "P1", "A4", "A5", "A6", "A7"}
        for plant, row in chunks.items():
            other = {key: value for key, value in whole[plant].items() if key != "observe_next"}
            assert row["probability"] == pytest.approx(other.pop("probability"), abs=2e-6)
            assert row["next_probability"] == pytest.approx(other.pop("next_probability"), abs=2e-6)
            given = {"named": other.pop("named")}  # as typed, or as the knowledge base spells it
            assert bool(given["named"]) <= bool(row["named"])
            assert {key: row[key] for key in other} == other, (arguments, plant)


def test_a_long_table_prints_the_sum_and_offers_the_rest(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("auctorum.cli.determine_file.WHOLE", 0)
    code, out, err = determine(table(tmp_path, TABLE))
    assert code == 0 and "5 plants, all authors" in out and "--format csv or --out FILE" in err


def test_evaluate() -> None:
    """The bands and the wordings add up, and the score is that of Brier's formula at both ends."""
    code, out, err = determine("--evaluate", "--json")
    data = json.loads(out)
    assert (code, err) == (0, "")
    assert sum(one["plants"] for one in data["bands"]) == data["plants"]
    assert sum(one["right"] for one in data["wordings"]) == data["right"] <= data["plants"]
    assert sum(one["plants"] for one in data["mistaken"]) == data["plants"] - data["right"]
    assert 0 <= data["brier"] < data["brier_of_priors"] == pytest.approx(1 - 1 / 14, abs=1e-5)  # 14 even candidates
    for one in data["bands"]:
        low, high = one["interval"]
        assert one["low"] <= one["stated"] <= one["high"] and low <= one["right"] / one["plants"] <= high
    assert any("look better than it is" in one for one in data["remarks"])


def test_evaluate_leaves_out_each_plant_that_taught() -> None:
    _, out, _ = determine(
        "--evaluate", "--own-plants", "--among", LONGUM, "--among", LONGUM.replace("longum", "robustum")
    )
    flowing = " ".join(out.split())
    assert "each was judged without what it says itself" in flowing
    assert "cf., aff. and indet. were said of" in flowing and "By wording" in flowing


def test_evaluate_a_file(tmp_path: Path) -> None:
    code, out, _ = determine("--evaluate", table(tmp_path, TABLE), "--json")
    data = json.loads(out)
    assert code == 0 and (data["plants"], data["right"]) == (2, 1)
    code, out, err = determine("--evaluate", table(tmp_path, "occurrenceID,spur length [mm]\nA1,31\n"))
    assert (code, out) == (1, "") and "none bears the name of a taxon (fill in scientificName)" in err
