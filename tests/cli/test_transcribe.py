"""`auctorum transcribe`: what is shown, what is asked, and what is written into a literature file."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable, Mapping
from decimal import Decimal
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from auctorum.characters.prose import draft as prose
from auctorum.characters.prose.draft import Choice, Draft, Transcript
from auctorum.characters.prose.found import Doubt, Leftover, Passed
from auctorum.characters.read import read_statement
from auctorum.characters.values import Range, Reading
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.cli import transcribe_review
from auctorum.cli.main import main

ROOT = Path(__file__).parents[2]
EXAMPLE = (ROOT / "examples" / "description.txt").read_text(encoding="utf-8")
TAXON = "Cremnocentron album var. longum"
BRACT = Character("bract length", "bract", "length", Kind.MEASURE, "mm")
TINY = "Spur 8–14 mm long,\r\nleaves glabrous. Bracts 3 mm. Xyzzy plugh; 2n = 26."


@pytest.fixture(autouse=True)
def own_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A copy of the demo, and a reader that knows the words of TINY by heart."""
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.chdir(tmp_path)
    shutil.copytree(ROOT / "kb", tmp_path / "kb")
    monkeypatch.setattr(prose, "transcribe", by_heart, raising=False)
    return tmp_path


def by_heart(
    text: str, vocabulary: Vocabulary, *, line: str = "english", signs: Mapping[str, str] | None = None
) -> Transcript:
    """Drafts for whatever of the known phrases stands in the text, with confidence and doubts by hand."""

    def choice(words: str, name: str) -> Choice:
        found = read_statement(words, vocabulary[name], line=line, signs=signs)
        return Choice(vocabulary[name], True, found, "; ".join(_plain(one, vocabulary[name]) for one in found))

    def draft(words: str, name: str, confidence: float, *doubts: Doubt, others: tuple[Choice, ...] = ()) -> list[Draft]:
        start = text.find(words)
        made = (start, start + len(words), choice(words, name), confidence, doubts, others)
        return [Draft(*made)] if start >= 0 else []

    def left(words: str, why: Passed | None = None) -> list[Leftover]:
        return [Leftover(text.index(words), text.index(words) + len(words), why)] if words in text else []

    width = Choice(vocabulary["leaf width"], True, (Reading(Range(Decimal(30), Decimal(60), "mm")),), "30–60 mm")
    drafts = [
        *draft("Spur 8–14 mm long", "spur length", 0.97),
        *draft("(27–)30–60 × 10–22 mm", "leaf length", 0.95, Doubt.CARRIED, others=(width,)),
        *draft("(27–)30–60 × 10–22 mm", "leaf width", 0.7, Doubt.CARRIED),
        *draft("spur green when young, ivory at maturity", "spur colour", 0.94),
        *draft("leaves glabrous", "leaf hairiness", 0.5, Doubt.NO_ORGAN),
    ]
    if "Bracts 3 mm" in text:
        at = text.index("Bracts 3 mm")
        read = (Reading(Range(Decimal(3), Decimal(3), "mm")),)
        drafts.append(Draft(at, at + 11, Choice(BRACT, False, read, "3 mm"), 0.92, (Doubt.BARE_FIGURE,)))
    return Transcript(text, tuple(drafts), (*left("Xyzzy plugh"), *left("2n = 26", Passed.CHROMOSOMES)))


def _plain(reading: Reading, character: Character) -> str:
    from auctorum.characters.show import format_value

    return format_value(reading.value, character)


def run(*arguments: str, text: str | bytes | None = None, columns: int = 120) -> Result:
    result = CliRunner().invoke(main, ["transcribe", *arguments], input=text, env={"COLUMNS": str(columns)})
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def test_the_text_is_shown_with_its_marks_and_a_numbered_table() -> None:
    result = run(text=TINY, columns=150)
    assert result.exit_code == 0
    lines = [line.rstrip() for line in result.stdout.splitlines()]
    assert lines[0] == "‹Spur 8–14 mm long›¹, ‹leaves glabrous›². ‹Bracts 3 mm›³. ‹Xyzzy plugh›?; 2n = 26."
    table = [" | ".join(part.strip() for part in line.split("   ") if part.strip()) for line in lines[2:7]]
    assert table[0] == "no. | words | character | reading | stage | confidence"
    assert table[2:] == [
        "1 | Spur 8–14 mm long | spur length | 8–14 mm | sure",
        "2 | leaves glabrous | leaf hairiness | glabrous | doubtful (a)",
        "3 | Bracts 3 mm | bract length (new) | 3 mm | sure",
    ]
    assert lines[7:11] == ["(a) no organ is named", "", "Not understood", "  Xyzzy plugh"]
    assert "1 passage passed over as no trait (--all lists them)." in lines
    assert lines[lines.index("Characters that characters.yaml lacks") + 1] == "  bract length: measure mm"
    assert "--review decides on the 1 that is not sure" in " ".join(result.stdout.split())


def test_words_with_two_readings_bear_both_numbers_and_lines_wrap() -> None:
    for width in (60, 100):
        result = run("-", text=EXAMPLE, columns=width)
        assert max(map(len, result.stdout.splitlines())) <= width
    flat = " ".join(result.stdout.split())
    assert "‹(27–)30–60 × 10–22 mm›¹,²" in flat
    assert "\n\nCremnocentron album var. longum. Perennial" in result.stdout, "paragraphs stay apart"


def test_a_reading_that_changes_with_age_has_a_line_for_each_stage() -> None:
    lines = run(text="Calyx 2 mm, spur green when young, ivory at maturity.").stdout.splitlines()
    rows = [[part.strip() for part in line.split("   ") if part.strip()] for line in lines[4:6]]
    assert rows == [
        ["1", "spur green when young, ivory at maturity", "spur colour", "green", "young", "sure"],
        ["ivory", "mature"],
    ]


def test_all_lists_what_is_no_trait() -> None:
    lines = [line.split("   ")[0].strip() for line in run("--all", text=TINY).stdout.splitlines()]
    assert lines[lines.index("No trait") + 3] == "2n = 26"


def test_a_terminal_without_the_marks_gets_plain_ones() -> None:
    from auctorum.cli.transcribe_show import marked

    transcript = Transcript("a spur", (), (Leftover(2, 6),))
    assert (marked(transcript, 0.9, raised=False).plain, marked(transcript, 0.9).plain) == ("a [spur](?)", "a ‹spur›?")


def test_marks_inside_each_other_are_closed_from_within() -> None:
    from auctorum.cli.transcribe_show import marked

    text = "leaves 3 mm long, 1 mm wide; xyzzy"
    choice = Choice(BRACT, False, (), "")
    spans = [(0, 27), (0, 16), (18, 27), (0, 16)]
    drafts = tuple(Draft(start, end, choice, 0.95) for start, end in spans)
    shown = marked(Transcript(text, drafts, (Leftover(29, 34),)), 0.9).plain
    assert shown == "‹‹leaves 3 mm long›²,⁴, ‹1 mm wide›³›¹; ‹xyzzy›?"


@pytest.mark.parametrize(
    ("arguments", "text", "said"),
    [
        pytest.param(["no-such.txt"], None, "does not exist", id="no-file"),
        pytest.param(["kb"], None, "no .txt file in kb", id="empty-folder"),
        pytest.param(["--taxon", TAXON], TINY, "give --into, too", id="taxon-alone"),
        pytest.param(["--review"], TINY, "on a terminal, and this is none", id="review-piped"),
        pytest.param(["--signs", "'ft"], TINY, "“'ft” is no sign=unit", id="signs"),
        pytest.param(["--signs", "'=fathoms"], TINY, "fathoms", id="unit-of-sign"),
        pytest.param(["--into", "x.txt"], TINY, "a literature file ends in .yaml", id="into-text"),
        pytest.param(["--into", "My File.yaml", "--taxon", TAXON], TINY, "a new file is named by the id", id="into-id"),
        pytest.param(["--into", "new-1911.yaml"], TINY, "say with --taxon what it describes", id="no-taxon"),
        pytest.param(["--into", "new-1911.yaml", "--taxon", "42 !"], TINY, "cannot read `42 !`", id="no-name"),
        pytest.param(["--into", "kb/literature/orrin-1889.yaml"], TINY, "taxa, and none is named", id="which-taxon"),
        pytest.param(["--into", "kb/literature", "--taxon", TAXON], TINY, "needs a file to go into", id="no-stem"),
        pytest.param(
            ["--into", "kb/literature/tolhurne-1896.yaml", "--taxon", TAXON, "--line", "paris"],
            TINY,
            "says otherwise, and its statements are read as it says",
            id="conventions",
        ),
    ],
)
def test_misuse_is_answered_in_words(arguments: list[str], text: str | None, said: str) -> None:
    result = run(*arguments, text=text, columns=400)
    assert result.exit_code == 2
    assert said in " ".join(result.stderr.split())


def test_a_text_that_is_not_utf8_is_told_with_its_byte(own_folder: Path) -> None:
    (own_folder / "old.txt").write_bytes("Sporn grün,\nStängel kahl".encode("latin-1"))
    result = run("old.txt")
    assert result.exit_code == 1
    assert "old.txt:1:9: not UTF-8: byte 8 is 0xfc (save it as UTF-8; it may be Latin-1" in result.stderr


def test_nothing_read_exits_1() -> None:
    result = run(text="Lorem ipsum.")
    assert result.exit_code == 1 and "Nothing could be read." in result.stdout


def test_json_says_what_the_table_says() -> None:
    (found,) = json.loads(run("--json", "--page", "107", text=TINY).stdout)
    first, second, third = found["statements"]
    assert (first["words"], first["value"], first["confidence_in_words"]) == ("Spur 8–14 mm long", "8–14 mm", "sure")
    assert found["text"][first["start"] : first["end"]] == first["words"]
    assert (
        first["readings"] == [{"stage": "mature", "low": "8", "high": "14", "unit": "mm"}]
        or not first["readings"][0]["stage"]
    )
    assert first["kept"] == [{"character": "spur length", "verbatim": "Spur 8–14 mm long", "page": "107"}]
    assert (second["doubts"], second["kept"]) == (["no organ is named"], [])
    assert (third["character"], third["known"]) == ("bract length", False)
    assert [one["words"] for one in found["not_understood"]] == ["Xyzzy plugh"]
    assert [one["what"] for one in found["no_trait"]] == ["a chromosome number"]
    assert [one["name"] for one in found["new_characters"]] == ["bract length"]


def errors(kb: str = "kb") -> list[str]:
    found = json.loads(CliRunner().invoke(main, ["check", "--json", "--kb", kb]).stdout)
    return [one["what"] for one in found["problems"] if one["severity"] == "error"]


def test_sure_statements_go_into_an_existing_file(own_folder: Path) -> None:
    file = own_folder / "kb" / "literature" / "orrin-1889.yaml"
    before = file.read_text(encoding="utf-8")
    arguments = ("--into", "kb/literature/orrin-1889.yaml", "--taxon", TAXON, "--page", "109")
    result = run(*arguments, text=TINY)
    assert result.exit_code == 0
    line = '      - {character: spur length, verbatim: "Spur 8–14 mm long", page: 109}\n'
    after = file.read_text(encoding="utf-8")
    assert after.replace(line, "") == before and after.count(line) == 1
    said = " ".join(result.stdout.split())
    assert f"orrin-1889.yaml: 1 statement added to {TAXON}." in said
    assert "1 statement of characters or states that characters.yaml lacks left out" in said
    assert "1 reading not sure left out; --review decides on each." in said
    assert errors() == []
    again = run(*arguments, text=TINY)
    assert "no statements added" in again.stdout and "1 statement stood there already." in again.stdout
    assert file.read_text(encoding="utf-8") == after


def test_a_file_keeps_its_rights_and_a_link_stays_a_link(own_folder: Path) -> None:
    file, link = own_folder / "kb" / "literature" / "orrin-1889.yaml", own_folder / "link-1889.yaml"
    file.chmod(0o640)
    link.symlink_to(file)
    assert run("--into", "link-1889.yaml", "--taxon", TAXON, text=TINY).exit_code == 0
    assert link.is_symlink() and file.stat().st_mode & 0o777 == 0o640
    assert "Spur 8–14 mm long" in file.read_text(encoding="utf-8")


def test_new_characters_are_added_only_when_asked_for(own_folder: Path) -> None:
    before = (own_folder / "kb" / "characters.yaml").read_text(encoding="utf-8")
    arguments = ("--into", "kb/literature/orrin-1889.yaml", "--taxon", TAXON)
    result = run(*arguments, "--add-characters", text=TINY)
    after = (own_folder / "kb" / "characters.yaml").read_text(encoding="utf-8")
    assert after.startswith(before) and after[len(before) :].splitlines()[0] == "  - name: bract length"
    assert "characters.yaml: added bract length" in result.stdout
    assert "2 statements added" in result.stdout and errors() == []


def test_a_new_file_is_a_form_with_the_conventions_said(own_folder: Path) -> None:
    arguments = (
        "--into",
        "kb/literature/dunn-1811.yaml",
        "--taxon",
        TAXON,
        "--line",
        "paris",
        "--signs",
        "'=in \"=line",
    )
    assert run(*arguments, text=TINY).exit_code == 0
    made = (own_folder / "kb" / "literature" / "dunn-1811.yaml").read_text(encoding="utf-8")
    assert 'conventions: {line: paris, signs: {"\\"": "line", "\'": "in"}}\n' in made
    assert f"treatments:\n- taxon: {TAXON}\n  status: accepted\n  traits:\n  - {{character: spur length" in made
    assert sorted(errors()) == [
        "the key `family` is missing",
        "the key `issued` is missing",
        "the key `title` is missing",
    ]
    again = run(*arguments[:4], text="Spur 8–14 mm long. (27–)30–60 × 10–22 mm")
    assert again.exit_code == 0, "the file's own conventions hold"


def test_a_broken_file_is_left_as_it_is(own_folder: Path) -> None:
    (own_folder / "broken-1900.yaml").write_text("work: [\n")
    result = run("--into", "broken-1900.yaml", "--taxon", TAXON, text=TINY)
    assert result.exit_code == 1
    assert "broken-1900.yaml: the file cannot be read: not readable as YAML" in result.stderr
    assert (own_folder / "broken-1900.yaml").read_text() == "work: [\n"


@pytest.fixture
def folder(own_folder: Path) -> Path:
    texts = own_folder / "texts"
    texts.mkdir()
    (texts / "Dunn 1811.txt").write_text(TINY, encoding="utf-8")
    (texts / "bad-1900.txt").write_bytes(b"caf\xe9")
    (texts / "none-1901.txt").write_text("Lorem.")
    (texts / "notes.md").write_text("not read")
    return texts


def test_a_folder_ends_in_a_table_of_its_files(folder: Path) -> None:
    result = run("texts")
    assert result.exit_code == 1, "one file is not UTF-8"
    rows = [[part.strip() for part in line.split("   ") if part.strip()] for line in result.stdout.splitlines()[2:]]
    assert rows[0] == ["texts/Dunn 1811.txt", "3", "0", "1", "1"]
    assert rows[1][0] == "texts/bad-1900.txt" and "byte 3 is 0xe9" in result.stdout
    assert ["texts/none-1901.txt", "0", "0", "0", "0"] in rows and "notes.md" not in result.stdout


def test_a_folder_goes_into_a_folder_of_drafts(folder: Path) -> None:
    assert run("texts", "--into", "drafts").exit_code == 2, "nobody said what is described"
    result = run("texts", "--into", "drafts", "--taxon", TAXON, "--json")
    by_name = {one["file"]: one for one in json.loads(result.stdout)}
    assert by_name["texts/Dunn 1811.txt"]["written"]["file"] == "drafts/dunn-1811.yaml"
    assert "byte 3" in by_name["texts/bad-1900.txt"]["problem"]
    assert [path.name for path in Path("drafts").iterdir()] == ["dunn-1811.yaml"]
    assert "  id: dunn-1811\n" in Path("drafts/dunn-1811.yaml").read_text()
    (folder / "dunn-1811.txt").write_text(TINY, encoding="utf-8")
    twice = run("texts", "--into", "drafts", "--taxon", TAXON)
    assert twice.exit_code == 2 and "would go into drafts/dunn-1811.yaml" in " ".join(twice.stderr.split())


@pytest.fixture
def ask(monkeypatch: pytest.MonkeyPatch, own_folder: Path) -> Callable[..., Result]:
    """Runs the review of a text with the answers that a person types."""
    monkeypatch.setattr(transcribe_review, "on_terminal", lambda: True)

    def asked(text: str, *answers: str, arguments: tuple[str, ...] = ()) -> Result:
        (own_folder / "text.txt").write_text(text, encoding="utf-8")
        return run("text.txt", "--review", *arguments, text="".join(f"{one}\n" for one in answers), columns=200)

    return asked


WIDE = "Leaves thin, (27–)30–60 × 10–22 mm, hairy, and leaves glabrous."


def pasted(result: Result) -> list[str]:
    lines = result.stdout.splitlines()
    return [line.strip() for line in lines[lines.index("Statements to paste under traits:") + 1 :]]


def test_review_shows_words_in_context_with_doubts(ask: Callable[..., Result]) -> None:
    said = ask(WIDE, "s", "s").stdout
    assert "1 of 2\nLeaves thin, ‹(27–)30–60 × 10–22 mm›, hairy, and leaves glabrous.\n" in said
    assert "read as: leaf width: 10–22 mm\nlikely: the organ is named in an earlier clause\n" in said
    assert "2 of 2" in said


@pytest.mark.parametrize(
    ("answers", "kept"),
    [
        pytest.param(["a", "a"], ["leaf length", "leaf width", "leaf hairiness"], id="accept"),
        pytest.param(["s", "a"], ["leaf length", "leaf hairiness"], id="skip"),
        pytest.param(["a", "q"], ["leaf length", "leaf width"], id="quit-keeps"),
        pytest.param(["a"], ["leaf length", "leaf width"], id="end-of-input-keeps"),
        pytest.param(["x", "7", "a", "s"], ["leaf length", "leaf width"], id="asks-again"),
    ],
)
def test_review_keeps_what_is_accepted(ask: Callable[..., Result], answers: list[str], kept: list[str]) -> None:
    lines = pasted(ask(WIDE, *answers))
    assert [line.removeprefix("- {character: ").split(",")[0] for line in lines if line] == kept


def test_review_takes_another_reading_and_says_its_value(ask: Callable[..., Result]) -> None:
    result = ask(WIDE, "1", "s", "s", arguments=("--sure", "0.96"))
    assert "or as:\n  1. leaf width: 30–60 mm\n" in result.stdout
    assert pasted(result) == ['- {character: leaf width, verbatim: "(27–)30–60 × 10–22 mm", value: "30–60 mm"}']


def test_review_checks_a_typed_value_at_once(ask: Callable[..., Result]) -> None:
    result = ask(WIDE, "c", "leaf lenght", "leaf length", "abc", "60-30 mm", "28–61 mm", "s")
    assert "did you mean `leaf length`?" in result.stdout
    assert "no value of `leaf length` in “abc”: they hold no figure" in result.stdout
    assert "lower bound 60 is above upper bound 30" in result.stdout
    assert pasted(result)[1] == '- {character: leaf length, verbatim: "(27–)30–60 × 10–22 mm", value: "28–61 mm"}'


def test_review_asks_for_the_stage_of_a_character_split_by_stage(ask: Callable[..., Result]) -> None:
    result = ask("Spur 8–14 mm long", "c", "", "9–14 mm", "old", "young", arguments=("--sure", "1"))
    assert "Stage (young, mature; empty: not stated): old\n“old” is none of these." in result.stdout
    assert pasted(result) == [
        '- {character: spur length, verbatim: "Spur 8–14 mm long", value: "9–14 mm", stage: young}'
    ]


def test_review_can_go_back_from_a_correction(ask: Callable[..., Result]) -> None:
    assert len(pasted(ask(WIDE, "c", "-", "c", "", "-", "a", "s"))) == 2


def test_review_writes_what_was_accepted(ask: Callable[..., Result], own_folder: Path) -> None:
    arguments = ("--into", "kb/literature/orrin-1889.yaml", "--taxon", TAXON)
    result = ask(TINY, "a", arguments=arguments)
    assert "2 statements added" in result.stdout
    said = (own_folder / "kb" / "literature" / "orrin-1889.yaml").read_text(encoding="utf-8")
    assert '{character: leaf hairiness, verbatim: "leaves glabrous"}' in said and errors() == []
