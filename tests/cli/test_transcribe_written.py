"""`auctorum transcribe` with the real reader: what it writes reads back as it was shown, and nothing is lost."""

from __future__ import annotations

import json
import shutil
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import click
import pytest
from click.testing import CliRunner, Result

from auctorum.characters.prose import draft as prose
from auctorum.characters.prose.draft import Transcript, transcribe
from auctorum.characters.read import read_statement
from auctorum.cli import transcribe_into, transcribe_review
from auctorum.cli.main import main
from auctorum.cli.transcribe_kept import as_drafted, proposals, statements
from auctorum.cli.transcribe_run import LONG, vocabulary_in
from auctorum.records.append_characters import states_in

ROOT = Path(__file__).parents[2]
TAXON = "Cremnocentron album var. longum"
FILE = "kb/literature/orrin-1889.yaml"
INTO = ("--into", FILE, "--taxon", TAXON)


@pytest.fixture(autouse=True)
def own_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    monkeypatch.chdir(tmp_path)
    shutil.copytree(ROOT / "kb", tmp_path / "kb")
    return tmp_path


def auctorum(*arguments: str, text: str | bytes | None = None, columns: int = 200) -> Result:
    result = CliRunner().invoke(main, list(arguments), input=text, env={"COLUMNS": str(columns)})
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result


def run(*arguments: str, text: str | bytes | None = None, columns: int = 200) -> Result:
    return auctorum("transcribe", *arguments, text=text, columns=columns)


def errors(kb: str = "kb") -> list[str]:
    found = json.loads(auctorum("check", "--json", "--kb", kb).stdout)
    return [one["what"] for one in found["problems"] if one["severity"] == "error"]


def flat(said: str) -> str:
    return " ".join(said.split())


def characters(kb: str = "kb") -> str:
    return Path(kb, "characters.yaml").read_text(encoding="utf-8")


# --- where statements may go


@pytest.mark.parametrize("file", ["kb/kb.yaml", "kb/characters.yaml", "kb/criteria/longispur-like.yaml"])
def test_only_a_literature_file_is_written_into(file: str) -> None:
    before = Path(file).read_bytes()
    result = run("--into", file, "--taxon", TAXON, text="Spur 3 mm long.")
    assert result.exit_code == 1 and Path(file).read_bytes() == before
    said = f"{file}: no literature file: it has no `work:` (line 1) (name the file of a publication; `auctorum new"
    assert said in flat(result.stderr)


def test_a_file_outside_the_literature_is_written_and_said() -> None:
    said = "auctorum check reads kb/literature only"
    assert said in run("--into", "drafts/dunn-1811.yaml", "--taxon", TAXON, text="Spur 3 mm long.").stdout
    assert said not in run(*INTO, text="Spur 3 mm long.").stdout


def test_the_status_of_a_new_treatment_is_said_to_be_assumed() -> None:
    said = "Its status was taken as accepted; change it there if the work keeps the name otherwise."
    new = ("--into", FILE, "--taxon", "Cremnocentron novum")
    assert said in run(*new, text="Spur 3 mm long.").stdout
    assert said not in run(*new, text="Spur 4 mm long.").stdout


@pytest.mark.parametrize(
    ("taxon", "said"),
    [
        pytest.param("Cremnocentron ×album", "the knowledge base knows no hybrid of that name (write", id="hybrid"),
        pytest.param("Cremnocentron cf. album", "holds more than a name: Cremnocentron album, and `cf.`", id="cf"),
        pytest.param("Cremnocentron aff. album", "holds more than a name", id="aff"),
        pytest.param("Cremnocentron rubrum sp. nov.", "and `sp. nov.` (write the name alone", id="sp-nov"),
        pytest.param(f"{TAXON} Marsh", f"(write `{TAXON}`, or {TAXON} Orrin)", id="authors"),
        pytest.param("C. album", "the genus of `C. album` is abbreviated; write it in full", id="abbreviated"),
        pytest.param("42 !", "cannot read `42 !`", id="no-name"),
    ],
)
def test_a_taxon_is_a_plain_name(taxon: str, said: str) -> None:
    before = Path(FILE).read_bytes()
    result = run("--into", FILE, "--taxon", taxon, text="Spur 3 mm long.", columns=400)
    assert result.exit_code == 2 and said in flat(result.stderr) and Path(FILE).read_bytes() == before


def test_a_name_that_is_not_known_is_taken_and_said() -> None:
    result = run("--into", FILE, "--taxon", "Cremnocentron albun", text="Spur 3 mm long.")
    assert result.exit_code == 0
    told = "`Cremnocentron albun` is no name of the knowledge base yet, and was taken as it stands; nearest: "
    assert f"{told}Cremnocentron album" in flat(result.stderr)
    assert "no name" not in run(*INTO, text="Spur 3 mm long.").stderr
    assert "no name" not in run("--into", FILE, "--taxon", f"{TAXON} Orrin", text="Spur 3 mm long.").stderr


def test_the_same_words_are_not_added_with_another_page() -> None:
    run(*INTO, "--page", "5", text="Spur 3 mm long.")
    after = Path(FILE).read_bytes()
    for page in ("7", ""):
        said = run(*INTO, "--page", page, text="Spur 3 mm long. ").stdout
        assert "1 statement stood there already with page 5." in said and Path(FILE).read_bytes() == after
    assert "stood there already.\n" in run(*INTO, "--page", "5", text="Spur 3 mm long.").stdout


# --- words as they are written


BROKEN = """Spur slen-
der, 22–34 mm
long; leaves glab-
rous. Spur green when
young, ivory at ma-
turity. Seeds retic-
ulate. Bracts 2–
3 mm long; petals pink-
ish."""


def test_words_broken_at_a_line_end_are_written_joined_and_read_as_shown() -> None:
    vocabulary = vocabulary_in(Path("kb"))
    transcript = transcribe(BROKEN, vocabulary)
    said = [statements(transcript, [as_drafted(draft)], "")[0] for draft in transcript.drafts]
    words = " | ".join(one.verbatim for one in said)
    for one in ("slender", "glabrous", "ivory at maturity", "reticulate", "2– 3 mm long", "pinkish"):
        assert one in words
    assert not any("- " in one.verbatim for one in said)
    for draft, one in zip(transcript.drafts, said, strict=True):
        character = draft.choice.character
        found = read_statement(one.value or one.verbatim, character)
        wanted = [reading.value for reading in draft.choice.readings]
        assert [reading.value for reading in found] == wanted, one
        assert one.value or found == draft.choice.readings


def test_broken_words_go_into_a_file_that_check_accepts() -> None:
    assert run(*INTO, "--add-characters", "--sure", "0", text=BROKEN).exit_code == 0
    assert 'reticulate"' in Path(FILE).read_text(encoding="utf-8")
    assert errors() == []


# --- what the vocabulary lacks


NEW_KB = """characters:
  - name: leaf shape
    structure: leaf
    property: shape
    kind: nominal
    states: [{name: ovate}, {name: lanceolate}]
  - name: stem colour
    structure: stem
    property: colour
    kind: ordered
    how: In the shade.
    states:
      - {name: green}   # the usual one
      - {name: brown}
"""


@pytest.fixture
def small() -> None:
    Path("kb/characters.yaml").write_text(NEW_KB, encoding="utf-8")
    Path("kb/kb.yaml").write_text("title: T\n", encoding="utf-8")
    for path in [*Path("kb/literature").glob("*.yaml"), *Path("kb/criteria").glob("*.yaml"), *Path("kb").glob("*.csv")]:
        path.unlink()


NEW = ("--into", "kb/literature/dunn-1811.yaml", "--taxon", TAXON)


def of_characters(kb: str = "kb") -> list[str]:
    """Errors but those of the work that is still to be filled in."""
    return [one for one in errors(kb) if not one.startswith("the key `")]


@pytest.mark.usefixtures("small")
def test_a_state_that_a_character_lacks_is_proposed_for_that_character() -> None:
    result = run(text="Leaves oblong; stems purple.")
    rows = [
        " | ".join(part.strip() for part in line.split("   ") if part.strip()) for line in result.stdout.split("\n")
    ]
    assert "1 | Leaves oblong | leaf shape: new state oblong | oblong | doubtful (a)" in rows
    assert "(a) the character has no such state" in rows
    at = rows.index("States that characters.yaml lacks")
    assert rows[at + 1 : at + 3] == ["leaf shape: oblong", "stem colour: purple"]
    assert "Characters that characters.yaml lacks" not in rows
    pasted = run("--yaml", text="Leaves oblong.").stdout
    assert "States that characters.yaml lacks\n  # leaf shape\n      - {name: oblong}\n" in pasted
    (data,) = json.loads(run("--json", text="Leaves oblong.").stdout)
    assert data["new_states"] == {"leaf shape": ["oblong"]} and data["new_characters"] == []


@pytest.mark.usefixtures("small")
def test_a_state_is_added_where_it_belongs_and_nothing_else_changes() -> None:
    result = run(*NEW, text="Leaves ovate or oblong; stems purple.")
    assert characters() == NEW_KB and "2 readings not sure left out" in result.stdout
    result = run(*NEW, "--add-characters", text="Leaves ovate or oblong; stems purple.")
    grown = NEW_KB.replace("{name: lanceolate}]", "{name: lanceolate}, {name: oblong}]")
    assert characters() == f"{grown}      - {{name: purple}}\n"
    assert "added the state oblong to leaf shape, at the end of its states; if these have an order" in flat(
        result.stdout
    )
    assert of_characters() == []


SHAPES = ["ovate", "oblong", "elliptic", "obovate", "linear", "spathulate", "orbicular", "rhombic", "deltoid", "oval"]
COLOURS = ["white", "pink", "red", "purple"]
SURFACES = ["smooth", "reticulate", "rugose", "tuberculate"]


def test_forty_descriptions_in_a_row_fill_a_vocabulary() -> None:
    auctorum("new", "kb", "mine")
    for number in range(40):
        text = (
            f"Leaves {SHAPES[number % 10]}, {number + 3}–{number + 9} mm long. Petals 5, {COLOURS[number % 4]}. "
            f"Seeds {SURFACES[number // 10]}. Bracts green when young, {COLOURS[number // 13]} at maturity."
        )
        arguments = (f"--into=mine/literature/dunn-{1811 + number}.yaml", "--taxon", TAXON, "--kb", "mine")
        assert run(*arguments, "--add-characters", text=text).exit_code == 0
    assert of_characters("mine") == []
    states = states_in(characters("mine"))
    assert sorted(states["leaf shape"]) == sorted(SHAPES)
    assert (states["petal colour"], states["seed surface"]) == (COLOURS, SURFACES)
    assert len([name for name in states if name.startswith("leaf shape")]) == 1


def test_a_batch_fills_a_vocabulary_as_well(own_folder: Path) -> None:
    auctorum("new", "kb", "mine")
    texts = own_folder / "texts"
    texts.mkdir()
    for number, shape in enumerate(SHAPES):
        (texts / f"dunn-{1811 + number}.txt").write_text(f"Leaves {shape}.")
    result = run("texts", "--into", "mine/literature", "--taxon", TAXON, "--kb", "mine", "--add-characters", columns=80)
    assert result.exit_code == 0, result.output
    assert states_in(characters("mine"))["leaf shape"] == SHAPES and of_characters("mine") == []


def test_new_characters_do_not_make_check_fail() -> None:
    assert errors() == []
    assert run(*INTO, "--add-characters", text="Rootstock woody. Bracts ovate, 3 mm long.").exit_code == 0
    assert errors() == [] and "rootstock, other" in characters()
    warnings = json.loads(auctorum("check", "--json").stdout)["problems"]
    assert "the nominal character `rootstock, other` has fewer than two states" in [one["what"] for one in warnings]


def test_a_new_character_is_split_by_the_stages_that_are_named() -> None:
    vocabulary = vocabulary_in(Path("kb"))
    drafts = transcribe("Bracts green when young, brown at maturity. Sepals 3 mm long in fruit.", vocabulary).drafts
    found = {one.name: one.stages for one in proposals(draft.choice for draft in drafts)}
    assert found["bract colour"] == ("young", "mature") and found.get("sepal length", ()) == ()
    run(*INTO, "--add-characters", text="Bracts green when young, brown at maturity.")
    assert "property: colour\n    kind: nominal\n    stages: [young, mature]\n" in characters() and errors() == []


@pytest.mark.usefixtures("small")
def test_a_stage_that_a_character_does_not_have_is_left_to_the_words() -> None:
    Path("text.txt").write_text("Stems at first green, lanky; leaves when young ovate. Young ones oblong, grobbly.")
    assert run("text.txt", *NEW, "--add-characters", "--sure", "0").exit_code == 0
    assert of_characters() == []
    vocabulary = vocabulary_in(Path("kb"))
    (draft,) = transcribe("Leaves ovate.", vocabulary).drafts
    young = replace(as_drafted(draft), said=(("ovate", "young"), ("ovate", "mature")))
    said = statements(Transcript("Leaves ovate.", (draft,), ()), [young], "")
    assert [(one.value, one.stage) for one in said] == [("ovate", ""), ("ovate", "mature")]


# --- decisions of a person are not lost


@pytest.fixture
def ask(monkeypatch: pytest.MonkeyPatch, own_folder: Path) -> Callable[..., Result]:
    """Runs the review of a text with the answers that a person types."""
    monkeypatch.setattr(transcribe_review, "on_terminal", lambda: True)

    def asked(text: str, *answers: str, arguments: tuple[str, ...] = INTO) -> Result:
        (own_folder / "text.txt").write_text(text, encoding="utf-8")
        return run("text.txt", "--review", *arguments, text="".join(f"{one}\n" for one in answers))

    return asked


def test_a_new_character_accepted_by_hand_is_written(ask: Callable[..., Result]) -> None:
    result = ask("Bracts 3 mm long; sepals 4 mm long.", "a", "s", arguments=(*INTO, "--sure", "1"))
    assert "characters.yaml: added bract length;" in result.stdout and "sepal length" not in characters()
    assert '{character: bract length, verbatim: "Bracts 3 mm long"}' in Path(FILE).read_text(encoding="utf-8")
    assert errors() == []


@pytest.mark.usefixtures("small")
def test_a_new_state_accepted_by_hand_is_written(ask: Callable[..., Result]) -> None:
    result = ask("Stems purple.", "a", arguments=NEW)
    assert "read as: stem colour: new state purple\n" in result.stdout
    assert states_in(characters())["stem colour"] == ["green", "brown", "purple"] and of_characters() == []


@pytest.mark.usefixtures("small")
def test_a_new_state_corrected_away_is_not_written(ask: Callable[..., Result]) -> None:
    ask("Stems purple.", "c", "", "brown", arguments=NEW)
    assert characters() == NEW_KB
    assert 'verbatim: "Stems purple", value: "brown"' in Path(NEW[1]).read_text(encoding="utf-8")


def test_a_target_that_cannot_be_written_is_told_before_the_review(ask: Callable[..., Result]) -> None:
    Path("notes").write_text("x")
    result = ask("Spur perhaps 3 mm long.", "a", arguments=("--into", "notes/dunn-1811.yaml", "--taxon", TAXON))
    assert result.exit_code == 1 and "? " not in result.stdout
    assert "notes/dunn-1811.yaml cannot be written: Not a directory (name another file" in flat(result.stderr)
    assert "tmp" not in result.stderr.replace(str(Path.cwd()), "")


def test_a_broken_vocabulary_is_told_before_anything_is_written() -> None:
    Path("kb/characters.yaml").write_text("characters: [\n")
    before = Path(FILE).read_bytes()
    result = run(*INTO, "--add-characters", text="Bracts 3 mm long.")
    assert result.exit_code == 1 and "kb/characters.yaml: the file cannot be read" in result.stderr
    assert Path(FILE).read_bytes() == before


def test_decisions_are_printed_where_they_cannot_be_written(
    ask: Callable[..., Result], monkeypatch: pytest.MonkeyPatch
) -> None:
    before, vocabulary = Path(FILE).read_bytes(), characters()

    def full(path: Path, _: str) -> None:
        raise OSError(28, "No space left on device", str(path))

    monkeypatch.setattr(transcribe_into, "write_text", full)
    result = ask("Bracts 3 mm long", "a", arguments=(*INTO, "--sure", "1"))
    assert result.exit_code == 1
    assert f"{FILE} cannot be written: No space left on device (make room on the disk" in flat(result.stderr)
    shown = result.stdout[result.stdout.index("Statements to paste under traits:") :]
    assert '- {character: bract length, verbatim: "Bracts 3 mm long"}' in shown
    assert "  - name: bract length\n    structure: bract\n" in result.stdout
    assert Path(FILE).read_bytes() == before and characters() == vocabulary


def test_characters_that_cannot_be_written_are_printed(
    ask: Callable[..., Result], monkeypatch: pytest.MonkeyPatch
) -> None:
    real = transcribe_into.write_text

    def full_for_characters(path: Path, text: str) -> None:
        if path.name == "characters.yaml":
            raise OSError(28, "No space left on device", str(path))
        real(path, text)

    monkeypatch.setattr(transcribe_into, "write_text", full_for_characters)
    result = ask("Bracts 3 mm long", "a", arguments=(*INTO, "--sure", "1"))
    assert result.exit_code == 1 and "1 statement added" in result.stdout
    assert "kb/characters.yaml cannot be written" in flat(result.stderr)
    assert "  - name: bract length\n    structure: bract\n" in result.stdout


# --- what is shown


@pytest.mark.parametrize("text", ["", " \n\n", "\ufeff"], ids=["nothing", "space", "mark"])
def test_an_empty_text_exits_as_help_says(text: str) -> None:
    result = run(text=text)
    assert result.exit_code == 1
    assert result.stderr == (
        "auctorum: there is no text in standard input (paste a description, or name the file of one)\n"
    )


def test_utf16_is_named(own_folder: Path) -> None:
    (own_folder / "wide.txt").write_text("Spur 3 mm long.", encoding="utf-16")
    result = run("wide.txt")
    assert result.exit_code == 1 and "the text is in UTF-16, by its byte-order mark (save it as UTF-8" in result.stderr


def test_to_stop_a_plain_run_is_to_write_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    def stopped(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    before = Path(FILE).read_bytes()
    monkeypatch.setattr(prose, "transcribe", stopped)
    result = run(*INTO, text="Spur 3 mm long.")
    assert result.exit_code == 1 and "auctorum: stopped; written: nothing" in result.stderr
    assert Path(FILE).read_bytes() == before


def test_to_stop_before_a_text_is_read_is_to_write_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    def stopped(_: Path) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr("auctorum.cli.transcribe_run.vocabulary_in", stopped)
    assert "auctorum: stopped; written: nothing" in run(text="Spur 3 mm long.").stderr


def test_a_batch_that_is_stopped_names_what_was_written(own_folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for number in range(3):
        (own_folder / f"dunn-181{number}.txt").write_text("Spur 3 mm long." if number < 2 else "Spur 4 mm long.")

    def stopped(text: str, *arguments: object, **named: object) -> object:
        if "4 mm" in text:
            raise KeyboardInterrupt
        return transcribe(text, *arguments, **named)  # type: ignore[arg-type]

    monkeypatch.setattr(prose, "transcribe", stopped)
    files = [f"dunn-181{number}.txt" for number in range(3)]
    result = run(*files, "--into", "drafts", "--taxon", TAXON)
    assert result.exit_code == 1
    assert "stopped; written: drafts/dunn-1810.yaml, drafts/dunn-1811.yaml (run the command again" in result.stderr


@pytest.mark.parametrize("into", [(), ("--into", "drafts", "--taxon", TAXON)], ids=["read", "written"])
def test_the_table_of_a_batch_fits_eighty_columns(own_folder: Path, into: tuple[str, ...]) -> None:
    long = "description-of-a-plant-from-the-northern-walls-of-the-island-1889.txt"
    for name in (long, "none-1901.txt"):
        (own_folder / name).write_text(
            "Spur 3 mm long; perhaps glabrous; Bracts 3 mm long." if name == long else "Lorem."
        )
    result = run(long, "none-1901.txt", *into, columns=80)
    lines = result.stdout.splitlines()
    assert max(map(len, lines[:4])) <= 80
    assert lines[0].split() == ["file", "read", "likely", "doubtful", "unread", *(["added"] if into else []), "remark"]
    assert lines[2].startswith("descrip") and "…" in lines[2] and "1889.txt " in lines[2]


def test_a_long_text_is_shown_whole_only_if_asked_for() -> None:
    text = ("Spur 3–4 mm long; petals 14 mm long, white. Xyzzy plugh. " * (LONG // 50)).rstrip()
    short = run(text=text)
    assert short.stdout.startswith(f"The text has {len(text):,} letters; --all shows it with its marks.\n")
    assert "‹" not in short.stdout and "Xyzzy plugh" in short.stdout
    rows = [line for line in short.stdout.splitlines() if line.startswith("1 ")]
    assert [" ".join(row.split()) for row in rows] == ["1 Spur 3–4 mm long spur length 3–4 mm sure"]
    assert "‹Spur 3–4 mm long›" in run("--all", text=text).stdout


def test_a_terminal_sees_a_sign_of_life(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    from auctorum.cli import common

    with common.at_work("Reading", long=True):
        pass
    assert capsys.readouterr().err == "", "no terminal"
    monkeypatch.setattr(common.sys.stderr, "isatty", lambda: True, raising=False)
    monkeypatch.setenv("FORCE_COLOR", "1")
    with common.at_work("Reading 1,700,000 letters", long=True):
        pass
    assert "Reading 1,700,000 letters" in capsys.readouterr().err


def test_help_names_the_exit_codes() -> None:
    assert "Exit code 1 if nothing could be read" in flat(run("--help").stdout)
    assert isinstance(main, click.Group)
