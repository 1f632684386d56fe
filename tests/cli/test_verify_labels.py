"""`auctorum verify-labels`: the demo's labels checked by hand, filters, every format, and hostile tables."""

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
LONGUM, ROBUSTUM = "Cremnocentron album var. longum", "Cremnocentron album var. robustum"


@pytest.fixture(autouse=True, scope="module")
def own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


def verify(*arguments: str, kb: Path = KB) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, ["verify-labels", *arguments, "--kb", str(kb)], env={"COLUMNS": "200"})
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


def table(folder: Path, text: str) -> str:
    path = folder / "labels.csv"
    path.write_text(text, encoding="utf-8")
    return str(path)


@pytest.fixture(scope="module")
def demo() -> dict[str, dict[str, object]]:
    code, out, err = verify("--json")
    assert (code, err) == (0, "")
    return {one["id"]: one for one in json.loads(out)["labels"]}


# Looked up by hand in the accounts of the demo: the spur of var. longum is 22 mm or longer for all but Quessel (18),
# Ohrlander & Marlthorpe (19) and Nunnaly (20); that of C. tessarnense 27 mm or longer; leaves of var. hirtum are hairy.
@pytest.mark.parametrize(
    ("id_", "verdict", "name", "could_be"),
    [
        pytest.param("INV-L01", "consistent", LONGUM, None, id="34-mm-under-longum"),
        pytest.param("INV-L02", "consistent", ROBUSTUM, None, id="19-mm-under-robustum"),
        pytest.param("INV-L04", "contradicted", LONGUM, ROBUSTUM, id="17-mm-under-longum"),
        pytest.param("INV-L06", "consistent", LONGUM, None, id="three-names-of-one-taxon"),
        pytest.param("INV-L07", "consistent", LONGUM, None, id="1.55-in-under-another-rank"),
        pytest.param("INV-L08", "contradicted", LONGUM, ROBUSTUM, id="0.70-in-and-an-obtuse-leaf"),
        pytest.param("INV-L11", "consistent", "Cremnocentron album", None, id="synonym-that-was-never-needed"),
        pytest.param("INV-L18", "not testable", None, "Cremnocentron pendulum Vane", id="homonyms"),
        pytest.param("INV-L21", "contradicted", "Cremnocentron tessarnense", ROBUSTUM, id="18-mm-under-tessarnense"),
        pytest.param("INV-L23", "consistent", LONGUM, None, id="capitals"),
        pytest.param("INV-L25", "consistent", LONGUM, None, id="sunk-by-most"),
        pytest.param("INV-L30", "contradicted", "Cremnocentron luteolum var. hirtum", "Cremnocentron aff. luteolum",
                     id="bald-hirtum"),
        pytest.param("INV-L31", "not testable", None, LONGUM, id="cultivar"),
        pytest.param("INV-L34", "not testable", None, None, id="another-genus-no-trait"),
    ],
)  # fmt: skip
def test_labels_of_the_demo(
    demo: dict[str, dict[str, object]], id_: str, verdict: str, name: str | None, could_be: str | None
) -> None:
    found = demo[id_]
    other = found["could_be"]
    assert (found["verdict"], found["taxon_name"]) == (verdict, name)
    assert (other["name"] if isinstance(other, dict) else None) == could_be


def test_by_which_statements_and_by_how_much(demo: dict[str, dict[str, object]]) -> None:
    traits = demo["INV-L04"]["traits"]
    assert isinstance(traits, list)
    (spur,) = [one for one in traits if one["character"] == "spur length"]
    assert (spur["observed"], spur["works"], spur["strength"], spur["gap"]) == ("17 mm", 10, "strong", "1 mm")
    nearest = spur["against"][0]
    assert (nearest["byline"], nearest["page"], nearest["gap"]) == ("Quessel 1951", "47", 1.0)
    assert nearest["verbatim"] == "Spur (18–)22–42(–46) mm long"


def test_sellers_of_the_demo_are_summed_up() -> None:
    code, out, err = verify()
    assert (code, err) == (0, "")
    assert "36 labels of 5 sellers." in out
    names, plants = (line.split()[4:] for line in out.splitlines() if line.startswith("Haven market stall 4"))
    assert (names, " ".join(plants)) == (["7", "1", "5", "1", "0"], "5 0 2 of 7 (8–64 %)")


def test_no_heading_breaks_at_a_hundred_columns() -> None:
    out = CliRunner().invoke(main, ["verify-labels", "--kb", str(KB)], env={"COLUMNS": "100"}).stdout
    heads = [line.split() for line in out.splitlines() if line.startswith(("seller", "label "))]
    assert heads == [
        ["seller", "labels", "right", "misspelt", "several", "not", "found"],
        ["seller", "consistent", "not", "testable", "contradicted"],
        ["label", "says", "name", "plant", "what", "the", "plant", "shows"],
    ]
    assert max(map(len, out.splitlines())) <= 100


@pytest.mark.parametrize("label", ["INV-L07", "INV-L24"])
def test_a_synonym_matches_and_stands_for_its_taxon(label: str) -> None:
    """Both epithets are printed as synonyms of var. longum by works of the demo."""
    out = " ".join(verify("--id", label)[1].split())
    assert "The name is right. Cremnocentron long" in out
    assert f"is a synonym of {LONGUM} (sec. " in out
    row = next(line for line in verify()[1].splitlines() if line.startswith(label))
    assert "right; stands for C. album var." in row


def test_a_single_label_is_not_summed_up() -> None:
    out = verify("--id", "INV-L04")[1]
    assert "Sellers" not in out and "1 label" not in out
    assert "Sellers: plants" in verify("--id", "INV-L04", "--id", "INV-L05")[1]


def test_the_wording_blames_nobody_and_says_what_else_may_be() -> None:
    flowing = " ".join(verify()[1].split())
    for word in ("cheat", "fraud", "fake", "dishonest", "wrong plant", "deceive"):
        assert word not in flowing.casefold()
    assert flowing.count("may have been mislabelled before it reached the seller") == 1
    assert "protected species may not be sold at all" in flowing
    assert "A determination is an opinion" in flowing


def test_one_label_is_told_at_length() -> None:
    code, out, _ = verify("--id", "inv-l06")
    flowing = " ".join(out.split())
    assert code == 0 and "INV-L06, Haven market stall 4: “Cremnocentron album longum”" in flowing
    assert "flower number 4 (the plant is young, and works describe grown ones)" in flowing
    assert "INV-L07" not in flowing


def test_one_seller(demo: dict[str, dict[str, object]]) -> None:
    code, out, _ = verify("--seller", "seed SWAP", "--json")
    found = json.loads(out)
    assert code == 0 and [one["id"] for one in found["labels"]] == [
        id_ for id_, one in demo.items() if one["seller"] == "Seed swap"
    ]
    assert [one["seller"] for one in found["sellers"]] == ["Seed swap"]


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        pytest.param(("--seller", "Seed swop"), "nearest: Seed swap", id="seller"),
        pytest.param(("--id", "INV-L99"), "no label of 'INV-L99'; nearest: INV-L", id="id"),
        pytest.param(("--json", "--format", "csv"), "leave --format out", id="two-formats"),
    ],
)
def test_misuse(arguments: tuple[str, ...], said: str) -> None:
    code, _, err = verify(*arguments)
    assert code == 2 and said in err


def test_no_place_no_remark_and_no_recorder_leaves() -> None:
    for form in (("--json",), ("--format", "csv"), ("--format", "html"), ("--format", "markdown"), ()):
        out = verify(*form)[1]
        for word in ("Petrane", "faded label", "In bud", "old list"):
            assert word not in out, (form, word)


def test_csv_has_a_row_for_each_label() -> None:
    rows = list(csv.DictReader(io.StringIO(verify("--format", "csv")[1])))
    assert len(rows) == 36
    fourth = rows[3]
    assert (fourth["plant"], fourth["strong"], fourth["could be"]) == ("contradicted", "spur length 17 mm", ROBUSTUM)
    assert fourth["weak"] == "leaf apex obtuse; leaf hairiness villous"


HOSTILE = """\
verbatimIdentification;seller;lifeStage;spur length [in];Leaf apex;locality
Cremnocentron album var. longum;=HYPERLINK("x");mature;0,67;obtuse;Secret cove
;Nobody;mature;1;acute;
<b>Cremnocentron album</b>;<i>x</i>;mature;12 bananas;purple;
"""


def test_a_table_with_bad_cells_is_used_all_the_same(tmp_path: Path) -> None:
    code, out, err = verify(table(tmp_path, HOSTILE), "--json")
    assert code == 0
    first, last = json.loads(out)["labels"]
    assert (first["id"], first["verdict"], last["id"], last["verdict"]) == (
        "row 2", "contradicted", "row 4", "not testable",
    )  # fmt: skip
    lines = [line.split("labels.csv:")[1].split(" (")[0] for line in err.splitlines()]
    assert lines == [
        "1:6: warning: the column `locality` is not known and was left out",
        "3:1: no name; the row was left out",
        "4:4: column `spur length`: '12 bananas' holds `bananas`, which is no unit",
        "4:5: column `leaf apex`: 'purple' names no state of `leaf apex`",
    ]
    assert "Secret cove" not in out + err


def test_hostile_cells_are_mere_words_in_each_format(tmp_path: Path) -> None:
    file = table(tmp_path, HOSTILE)
    html = verify(file, "--format", "html")[1]
    assert "<i>x</i>" not in html and "<b>" not in html
    assert "&lt;i&gt;x&lt;/i&gt;" in html and "&lt;b&gt;<i>Cremnocentron album</i>&lt;/b&gt;" in html
    assert "<b>" not in verify(file, "--format", "markdown")[1].replace("\\<b>", "")
    rows = list(csv.DictReader(io.StringIO(verify(file, "--format", "csv")[1])))
    assert rows[0]["seller"] == '\'=HYPERLINK("x")'


@pytest.mark.parametrize(
    "text",
    [
        pytest.param("", id="empty"),
        pytest.param("seller,spur length [mm]\nA,3\n", id="no-names"),
        pytest.param("verbatimIdentification,seller\n", id="no-rows"),
        pytest.param("verbatimIdentification,seller\n,A\n", id="no-name"),
    ],
)
def test_nothing_to_read(tmp_path: Path, text: str) -> None:
    code, out, err = verify(table(tmp_path, text))
    assert (code, out) == (1, "") and err.rstrip().splitlines()[-1].startswith("There is no label in ")


def test_names_in_markdown_are_italic_as_one() -> None:
    assert "*Cremnocentron album* var. *longum*" in verify("--id", "INV-L04", "--format", "markdown")[1]
