"""`auctorum synonymy` on a small knowledge base; all of it is invented."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from auctorum.cli.synonymy import synonymy
from auctorum.problems import AuctorumError

FILES = {
    "kb.yaml": "title: Test\n",
    "characters.yaml": "characters: []\n",
    "literature/orrin-1889.yaml": """\
work: {id: orrin-1889, type: book, author: [{family: Orrin}], issued: "1889", title: Notes, volume: "4"}
acts:
- {name: Exemplum album, act: new taxon, page: "43"}
- {name: Exemplum rubrum, act: new taxon, page: "44"}
- {name: Exemplum nudum, act: new taxon, page: "45"}
""",
    "literature/tull-1920.yaml": """\
work: {id: tull-1920, type: book, author: [{family: Tull}], issued: "1920", title: List}
treatments:
- {taxon: Exemplum rubrum, page: "7"}
- {taxon: Exemplum album, page: "8"}
""",
    "literature/vane-1950.yaml": """\
work: {id: vane-1950, type: book, author: [{family: Vane}], issued: "1950", title: Flora}
treatments:
- {taxon: Exemplum album, page: "9", synonyms: [Exemplum rubrum]}
""",
}
TEXT = """\
Exemplum album Orrin, Notes 4: 43. 1889
  = Exemplum rubrum Orrin, Notes 4: 44. 1889
    [sec. Vane 1950: 9]
Over all works of the knowledge base.
"""
MARKDOWN = """\
*Exemplum album* Orrin, Notes 4: 43. 1889

- = *Exemplum rubrum* Orrin, Notes 4: 44. 1889
  - \\[sec. Vane 1950: 9\\]

Over all works of the knowledge base.
"""
HTML = """\
<div class="synonymy">
<p class="accepted"><i>Exemplum album</i> Orrin, Notes 4: 43. 1889</p>
<ul>
<li class="heterotypic">= <i>Exemplum rubrum</i> Orrin, Notes 4: 44. 1889
<ul>
<li class="according-to">[sec. Vane 1950: 9]</li>
</ul>
</li>
</ul>
<p class="sec">Over all works of the knowledge base.</p>
</div>
"""


@pytest.fixture
def kb(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    for name, text in FILES.items():
        path = tmp_path / "kb" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return tmp_path / "kb"


def invoke(kb: Path, *arguments: str, **env: str) -> Result:
    return CliRunner().invoke(synonymy, [*arguments, "--kb", str(kb)], env=env)


@pytest.mark.parametrize(
    ("arguments", "printed"),
    [
        pytest.param([], TEXT, id="text"),
        pytest.param(["--format", "text"], TEXT, id="text-asked-for"),
        pytest.param(["--format", "markdown"], MARKDOWN, id="markdown"),
        pytest.param(["--format", "html"], HTML, id="html"),
    ],
)
def test_each_form(kb: Path, arguments: list[str], printed: str) -> None:
    result = invoke(kb, "Exemplum album", *arguments)
    assert (result.exit_code, result.stderr, result.stdout) == (0, "", printed)


def test_a_synonym_leads_to_its_accepted_name_and_says_so(kb: Path) -> None:
    result = invoke(kb, "Exemplum rubrum")
    assert result.stdout == TEXT
    assert result.stderr == "Exemplum rubrum Orrin is a synonym of Exemplum album Orrin sec. Vane 1950\n"


def test_sec_a_work_that_keeps_the_synonym(kb: Path) -> None:
    result = invoke(kb, "Exemplum rubrum", "--sec", "tull-1920")
    assert result.stderr == ""
    assert result.stdout == "Exemplum rubrum Orrin, Notes 4: 44. 1889\nSec. Tull 1920.\n"


def test_the_latest_of_several_works(kb: Path) -> None:
    result = invoke(kb, "Exemplum rubrum", "--sec", "vane-1950", "--sec", "tull-1920", "--json")
    data = json.loads(result.stdout)
    assert data["accepted"]["name"] == "Exemplum album Orrin"
    assert data["sec"] == ["tull-1920", "vane-1950"]
    assert data["heterotypic"][0]["according_to"] == [{"work": "vane-1950", "page": "9"}]


def test_a_name_that_no_work_places(kb: Path) -> None:
    result = invoke(kb, "Exemplum nudum")
    assert result.exit_code == 0
    assert result.stderr == "No work says where Exemplum nudum Orrin belongs.\n"
    assert result.stdout.splitlines()[0] == "Exemplum nudum Orrin, Notes 4: 45. 1889"


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        pytest.param(
            ["Exemplum album", "--sec", "tull-1902"],
            2,
            "no work 'tull-1902' in the knowledge base; nearest: tull-1920",
            id="unknown-work",
        ),
        pytest.param(["Exemplum album", "--format", "pdf"], 2, "'pdf' is not one of", id="unknown-form"),
    ],
)
def test_misuse_is_answered(kb: Path, arguments: list[str], code: int, said: str) -> None:
    result = invoke(kb, *arguments)
    assert result.exit_code == code
    assert said in result.stderr


@pytest.mark.parametrize(
    ("arguments", "said", "remedy"),
    [
        pytest.param(
            ["Exemplum albun"], "no name `Exemplum albun` in the knowledge base", "nearest: Exemplum album", id="name"
        ),
        pytest.param(
            ["Exemplum rubrum", "--sec", "orrin-1889"],
            "orrin-1889 gives no place to Exemplum rubrum Orrin",
            "works that place it: tull-1920, vane-1950",
            id="work-that-does-not-place-it",
        ),
    ],
)
def test_what_cannot_be_answered_is_an_error_with_a_remedy(
    kb: Path, arguments: list[str], said: str, remedy: str
) -> None:
    """The group of commands turns it into words and exit code 1."""
    error = invoke(kb, *arguments).exception
    assert isinstance(error, AuctorumError)
    assert str(error) == said
    assert error.remedy.startswith(remedy)


def test_a_terminal_gets_italics_and_hanging_indents(kb: Path) -> None:
    """Wrapped at its width, what is set in stays set in."""
    result = invoke(kb, "Exemplum album", FORCE_COLOR="1", TERM="xterm", COLUMNS="30")
    lines = [line.replace("\x1b[3m", "/").replace("\x1b[0m", "/").rstrip() for line in result.stdout.splitlines()]
    assert "  = /Exemplum rubrum/ Orrin," in lines
    assert lines[lines.index("  = /Exemplum rubrum/ Orrin,") + 1] == "  Notes 4: 44. 1889"


def test_help_says_what_it_gives(kb: Path) -> None:
    told = CliRunner().invoke(synonymy, ["--help"]).stdout
    assert "--sec WORK" in told and "[text|markdown|html]" in told and "--json" in told
