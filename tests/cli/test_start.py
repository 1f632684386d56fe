"""The command line itself: quick help, exit codes, and no traceback for anybody."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from auctorum.cli import check as check_module
from auctorum.cli.main import COMMANDS, main

HEAVY = ("pydantic", "networkx", "numpy", "rapidfuzz", "jinja2", "yaml", "rich")


def test_help_imports_nothing_heavy() -> None:
    code = (
        "import sys\nfrom auctorum.cli.main import main\n"
        "try:\n    main(['--help'])\nexcept SystemExit: pass\n"
        f"print('loaded:', *[name for name in {HEAVY!r} if name in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines()[-1] == "loaded:"


def test_version() -> None:
    from importlib.metadata import version

    assert version("auctorum") in CliRunner().invoke(main, ["--version"]).output


@pytest.mark.parametrize(
    "arguments",
    [
        ["nothing"],
        ["check", "--kb", "no/such/folder"],
        ["history"],
        ["match"],
        ["new", "literature", "Not An Id"],
        ["export", "graph", "out.docx"],
    ],
    ids=" ".join,
)
def test_misuse_exits_2(arguments: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "kb").mkdir()
    result = CliRunner().invoke(main, arguments)
    assert result.exit_code == 2
    assert "Traceback" not in result.output


@pytest.mark.parametrize(
    ("error", "said"),
    [
        pytest.param(ValueError("odd"), "a fault of the program, not yours: ValueError: odd", id="fault"),
        pytest.param(PermissionError(13, "Permission denied", "x.yaml"), "x.yaml: Permission denied", id="file"),
    ],
)
def test_no_traceback_reaches_a_user(
    error: Exception, said: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(_kb: Path) -> None:
        raise error

    monkeypatch.delenv("AUCTORUM_TRACEBACK", raising=False)
    monkeypatch.setattr(check_module, "load", fail)
    result = CliRunner().invoke(main, ["check", "--kb", str(tmp_path)])
    assert result.exit_code == 1
    assert said in result.output and "Traceback" not in result.output


def test_every_command_says_what_its_options_are_for() -> None:
    def walk(command: click.Command) -> None:
        assert command.help, command.name
        for parameter in command.params:
            if isinstance(parameter, click.Option) and not parameter.hidden:
                assert parameter.help, f"{command.name} {parameter.opts}"
        for inner in getattr(command, "commands", {}).values():
            walk(inner)

    context = click.Context(main)
    for name in COMMANDS:
        command = main.get_command(context, name)
        assert command is not None
        walk(command)
