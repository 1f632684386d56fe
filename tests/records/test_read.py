"""A folder -> records and every problem: bad input gives a clear problem and costs nothing but itself."""

from __future__ import annotations

import json
import os
import time
from pathlib import Path

import pytest

from auctorum.records import cache
from auctorum.records import read as reading
from auctorum.records.read import read

CHARACTERS = "characters:\n- {name: spur length, structure: spur, property: length, kind: measure, unit: mm}\n"
WORK = """\
work:
  id: orrin-1911
  type: article-journal
  author: [{family: Orrin}]
  issued: 1911-05
  title: On spurs
"""
GOOD = WORK + "acts:\n- {name: Exemplum album, act: new taxon}\n"


@pytest.fixture(autouse=True)
def own_cache(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))


@pytest.fixture
def kb(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A small good knowledge base, named by a relative path."""
    folder = tmp_path / "kb"
    (folder / "literature").mkdir(parents=True)
    (folder / "kb.yaml").write_text("title: Spurs\n")
    (folder / "characters.yaml").write_text(CHARACTERS)
    (folder / "literature" / "orrin-1911.yaml").write_text(GOOD)
    monkeypatch.chdir(tmp_path)
    return Path("kb")


def lines(kb: Path) -> list[str]:
    return [str(problem) for problem in read(kb)[1]]


def test_a_good_folder(kb: Path) -> None:
    records, problems = read(kb)
    assert problems == ()
    assert records.literature[0].acts[0].name == "Exemplum album"
    assert records.literature[0].acts[0].place == ("kb/literature/orrin-1911.yaml", 8, 3)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        pytest.param(
            GOOD.replace("title:", "titel:"),
            [
                "kb/literature/x.yaml:1:1: the key `title` is missing (add it)",
                "kb/literature/x.yaml:6:3: unknown key `titel` (did you mean `title`?)",
            ],
            id="unknown-key",
        ),
        pytest.param(
            GOOD.replace("1911-05", "1904-13"),
            [
                "kb/literature/x.yaml:5:3: `issued`: '1904-13' gives month 13, which does not exist "
                "(write dates as 1904, 1904-06 or 1904~)"
            ],
            id="impossible-date",
        ),
        pytest.param(
            GOOD.replace("new taxon", "new tacson"),
            [
                "kb/literature/x.yaml:8:26: `act`: 'new tacson' is none of the known words "
                "(did you mean `new taxon`? "
                "one of: new taxon, new combination, change of rank, replacement name, "
                "usage, type designation, variant spelling, conservation, rejection, first choice, ruled confusable)"
            ],
            id="unknown-word",
        ),
        pytest.param(
            GOOD.replace("[{family: Orrin}]", "Orrin"),
            ["kb/literature/x.yaml:4:3: `author`: 'Orrin' where a list is wanted (write a list: [one, another])"],
            id="word-for-a-list",
        ),
        pytest.param(
            GOOD.replace("id: orrin-1911", "id: ../../etc"),
            [
                "kb/literature/x.yaml:2:3: `id`: '../../etc' is no id "
                "(use lower-case letters, digits and single hyphens: orrin-1911)"
            ],
            id="id-that-leaves-the-folder",
        ),
    ],
)
def test_a_fault_is_named_where_it_stands(kb: Path, text: str, said: list[str]) -> None:
    (kb / "literature" / "x.yaml").write_text(text)
    assert lines(kb) == said


def test_not_utf8(kb: Path) -> None:
    (kb / "literature" / "latin1.yaml").write_bytes(GOOD.replace("spurs", "Sporne, grün").encode("latin-1"))
    assert lines(kb) == ["kb/literature/latin1.yaml:6:23: not UTF-8: byte 0xfc (save the file as UTF-8)"]
    assert len(read(kb)[0].literature) == 1


def test_a_huge_file_is_refused_unread(kb: Path) -> None:
    with (kb / "literature" / "huge.yaml").open("wb") as file:
        file.seek(100_000_000)
        file.write(b"\0")
    assert lines(kb) == [
        "kb/literature/huge.yaml:1:1: the file has 100 MB; records are read up to 20 MB "
        "(split it; one file holds one publication)"
    ]


def test_one_bad_statement_costs_only_itself(kb: Path) -> None:
    treatments = (
        "treatments:\n"
        "- taxon: Exemplum album\n"
        "  traits:\n"
        '  - {character: spur length, verbatim: "spur 22-34 mm"}\n'
        '  - {charakter: spur length, verbatim: "spur 22-36 mm"}\n'
    )
    (kb / "literature" / "orrin-1911.yaml").write_text(GOOD + treatments)
    records, problems = read(kb)
    assert [str(problem) for problem in problems] == [
        "kb/literature/orrin-1911.yaml:13:5: the key `character` is missing (add it)",
        "kb/literature/orrin-1911.yaml:13:6: unknown key `charakter` (did you mean `character`?)",
    ]
    assert [one.verbatim for one in records.literature[0].treatments[0].traits] == ["spur 22-34 mm"]


def test_every_problem_of_every_file_in_one_run(kb: Path) -> None:
    (kb / "literature" / "a.yaml").write_text("a: [\n")
    (kb / "literature" / "b.yaml").write_text("")
    (kb / "kb.yaml").write_text("titel: x\n")
    (kb / "sites.csv").write_text("locationID,lat\nA,1\n")
    files = {line.split(":")[0] for line in lines(kb)}
    assert files == {"kb/literature/a.yaml", "kb/literature/b.yaml", "kb/kb.yaml", "kb/sites.csv"}


def test_missing_files_are_named(tmp_path: Path) -> None:
    (tmp_path / "empty").mkdir()
    whats = [(Path(one.place.file).name, one.what) for one in read(tmp_path / "empty")[1]]
    assert whats == [("characters.yaml", "the file is missing"), ("kb.yaml", "the file is missing")]


def test_a_file_that_would_be_passed_over_is_named(kb: Path) -> None:
    (kb / "literature" / "late.yml").write_text(GOOD)
    assert lines(kb) == [
        "kb/literature/late.yml: a file that is not read "
        "(literature goes to literature/*.yaml, working definitions to criteria/*.yaml, tables beside kb.yaml)"
    ]


@pytest.mark.parametrize("name", ["x.yaml", "Labels.csv", "literature/deep/x.YAML", "criteria/x.yml"])
def test_whatever_looks_like_a_record_is_read_or_named(kb: Path, name: str) -> None:
    path = kb / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(GOOD)
    assert [line.split(" (")[0] for line in lines(kb)] == [f"kb/{name}: a file that is not read"]


def test_long_measurements_stand_beside_the_specimens(kb: Path) -> None:
    (kb / "specimens.csv").write_text("occurrenceID\nA\n")
    (kb / "measurements.csv").write_bytes(
        "occurrenceID;measurementType;measurementValue;measurementRemarks\nA;spur length;31 mm;größer\n".encode(
            "cp1252"
        )
    )
    records, problems = read(kb)
    assert [(one.measurementValue, one.measurementRemarks) for one in records.measurements] == [("31 mm", "größer")]
    assert [str(one) for one in problems] == [
        "kb/measurements.csv:2:23: warning: not UTF-8: byte 0xf6; the table was read as Windows-1252 "
        "(save the table as CSV UTF-8, and look at letters with accents)"
    ]


def test_a_link_that_leads_nowhere_is_named(kb: Path) -> None:
    (kb / "labels.csv").symlink_to("nowhere.csv")
    assert lines(kb) == [
        "kb/labels.csv:1:1: can't be opened: No such file or directory (check the file and its rights)"
    ]


def test_a_pipe_is_not_waited_for(kb: Path) -> None:
    os.mkfifo(kb / "literature" / "x.yaml")
    assert lines(kb) == ["kb/literature/x.yaml:1:1: is no plain file (put a file there, or take it away)"]


def test_a_file_name_that_is_not_utf8_is_written_out(kb: Path) -> None:
    with open(os.fsencode(kb / "literature") + b"/b\xff.yaml", "w") as file:  # noqa: PTH123
        file.write("a: [")
    (line,) = lines(kb)
    assert line.startswith("kb/literature/b\\xff.yaml:2:1: not readable as YAML")


def test_a_control_character_is_named_and_taken_out(kb: Path) -> None:
    text = GOOD.replace("title: On spurs", 'title: "On \\e[31mspurs"')
    (kb / "literature" / "orrin-1911.yaml").write_text(text)
    records, problems = read(kb)
    assert [str(one) for one in problems] == [
        "kb/literature/orrin-1911.yaml:6:10: a control character inside the words (delete it)"
    ]
    assert records.literature[0].work.title == "On [31mspurs"


def test_many_problems_are_placed_in_one_pass(kb: Path) -> None:
    acts = "".join(f"- {{name: Exemplum no{'abcdefghij'[n % 10] * 3}, act: new tacson}}\n" for n in range(2000))
    (kb / "literature" / "x.yaml").write_text(WORK + "acts:\n" + acts)
    began = time.perf_counter()
    assert len(lines(kb)) == 2000
    assert time.perf_counter() - began < 10


def test_no_home_folder_is_no_problem(kb: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def nowhere() -> Path:
        raise RuntimeError("no home")

    monkeypatch.setenv("XDG_CACHE_HOME", "relative")
    monkeypatch.setattr(Path, "home", nowhere)
    assert lines(kb) == []


def test_reading_never_changes_a_file(kb: Path) -> None:
    (kb / "literature" / "bad.yaml").write_bytes(b"\xef\xbb\xbfa: \t[\n")
    before = {path: path.read_bytes() for path in kb.rglob("*") if path.is_file()}
    read(kb)
    assert {path: path.read_bytes() for path in kb.rglob("*") if path.is_file()} == before


class TestCache:
    def test_warm_is_cold(self, kb: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        cold = read(kb)
        monkeypatch.setattr(reading, "parse", lambda *_: pytest.fail("parsed although unchanged"))
        warm = read(kb)
        assert warm == cold
        assert warm[0].literature[0].acts[0].place == cold[0].literature[0].acts[0].place

    def test_a_changed_file_is_read_anew(self, kb: Path) -> None:
        read(kb)
        (kb / "literature" / "orrin-1911.yaml").write_text(GOOD.replace("album", "nigrum"))
        assert read(kb)[0].literature[0].acts[0].name == "Exemplum nigrum"

    def test_problems_are_never_cached_away(self, kb: Path) -> None:
        (kb / "literature" / "x.yaml").write_text(GOOD.replace("title:", "titel:"))
        assert lines(kb) == lines(kb) != []

    @pytest.mark.parametrize(
        "content",
        [
            pytest.param(b"", id="empty"),
            pytest.param(b"\x80\x04}.", id="a-pickle"),
            pytest.param(b'{"version": "other", "files": {}}', id="other-version"),
            pytest.param(b"[1, 2]", id="other-shape"),
            pytest.param(b"[" * 100_000, id="deep"),
        ],
    )
    def test_a_corrupt_or_foreign_cache_is_rebuilt(self, kb: Path, content: bytes) -> None:
        good = read(kb)
        cache.cache_file(kb).write_bytes(content)
        assert read(kb) == good
        assert json.loads(cache.cache_file(kb).read_text())["version"] == cache.reader_version()

    def test_a_cache_with_wrong_data_under_the_right_key(self, kb: Path) -> None:
        good = read(kb)
        stored = json.loads(cache.cache_file(kb).read_text())
        for key in stored["files"]:
            stored["files"][key] = {"@": [1, 1], "work": 7}
        cache.cache_file(kb).write_text(json.dumps(stored))
        assert read(kb) == good

    @pytest.mark.skipif(os.geteuid() == 0, reason="root may write anywhere")
    def test_no_cache_folder_is_no_problem(self, kb: Path, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setenv("XDG_CACHE_HOME", "/proc/none")
        assert read(kb)[1] == ()
