"""README tells the truth: every command it shows is run, and prints what README shows.

A block marked `console` holds commands after `$ ` with their output; a line `[…]` stands for left-out lines.
`pytest --renew` writes today's output into README; read the difference before you keep it.
"""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import COMMANDS, main

ROOT = Path(__file__).parent.parent.parent
README = ROOT / "README.md"
LEFT_OUT = "[…]"
WIDTH = "100"


def shown_commands(text: str) -> list[tuple[str, str]]:
    """Command and output shown, for every `auctorum` command in a console block."""
    found = []
    for block in re.findall(r"^```console\n(.*?)^```$", text, re.S | re.M):
        for part in re.split(r"^\$ ", block, flags=re.M)[1:]:
            command, _, output = part.partition("\n")
            if command.startswith("auctorum "):
                found.append((command, output))
    return found


SHOWN = shown_commands(README.read_text(encoding="utf-8"))


def run(command: str, tmp_path: Path) -> str:
    """What the command prints, run at the top of the checkout with folders of its own."""
    arguments = [part.replace("/tmp/", f"{tmp_path}/") for part in shlex.split(command)[1:]]
    result = CliRunner().invoke(main, arguments, env={"COLUMNS": WIDTH}, prog_name="auctorum")
    assert result.exit_code in (0, 1), result.output
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    lines = result.output.replace(str(tmp_path), "/tmp").splitlines()
    return "".join(f"{line.rstrip()}\n" for line in lines)


@pytest.mark.parametrize(("command", "shown"), SHOWN, ids=[command for command, _ in SHOWN])
def test_readme_shows_real_output(
    command: str, shown: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, request: pytest.FixtureRequest
) -> None:
    monkeypatch.chdir(ROOT)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "cache"))
    printed = run(command, tmp_path)
    if request.config.getoption("--renew"):
        renewed = _renewed(shown, printed)
        text = README.read_text(encoding="utf-8")
        assert f"$ {command}\n{shown}" in text
        README.write_text(text.replace(f"$ {command}\n{shown}", f"$ {command}\n{renewed}"), encoding="utf-8")
        return
    at = 0
    for piece in (f"\n{shown}").split(f"\n{LEFT_OUT}\n"):
        wanted = piece.strip("\n")
        found = printed.find(wanted, at)
        assert found >= 0, f"README shows:\n{wanted}\n\nbut the command prints:\n{printed}"
        at = found + len(wanted)
    if LEFT_OUT not in shown:
        assert printed.strip("\n") == shown.strip("\n")


def _renewed(shown: str, printed: str) -> str:
    """Today's output, cut where the shown one was cut: as many first lines as were shown before the cut."""
    if LEFT_OUT not in shown:
        return printed.strip("\n") + "\n"
    kept = shown.splitlines().index(LEFT_OUT)
    return "\n".join([*printed.splitlines()[:kept], LEFT_OUT]) + "\n"


def test_every_command_has_help_and_a_place_in_readme() -> None:
    text = README.read_text(encoding="utf-8")
    for name in COMMANDS:
        result = CliRunner().invoke(main, [name, "--help"])
        assert result.exit_code == 0
        assert result.output.count("\n") > 4
        assert f"auctorum {name}" in text, f"README says nothing of `auctorum {name}`"


def test_readme_shows_enough_commands() -> None:
    assert len(SHOWN) >= 6
