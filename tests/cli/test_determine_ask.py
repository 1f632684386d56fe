"""`auctorum determine --ask`: over a pipe, and on a terminal."""

from __future__ import annotations

import json
import os
import re
import select
import subprocess
import sys
import time
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main

KB = Path(__file__).parents[2] / "kb"


@pytest.fixture(autouse=True, scope="module")
def own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


def ask(typed: str | bytes, *arguments: str) -> tuple[str, str]:
    """What is printed when those lines are typed; the exit code is always 0."""
    result = CliRunner().invoke(
        main, ["determine", "--ask", *arguments, "--kb", str(KB)], input=typed, env={"COLUMNS": "200"}
    )
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    assert result.exit_code == 0, result.stderr
    return result.stdout, result.stderr


def standings(out: str) -> list[str]:
    return re.findall(r"^Now: (.*)$", out, re.M)


def questions(out: str) -> list[str]:
    return re.findall(r"^([a-z][a-z ]*?)(?: \[[a-z]+\])?\? ", out, re.M)


def answer_of(out: str) -> str:
    """The answer at the end, from its first line."""
    return out[out.rindex("\nCremnocentron") :]


def test_the_character_that_tells_most_is_asked_first_with_how_to_observe_it() -> None:
    out, _ = ask("31 mm\nq\n")
    assert questions(out)[0] == "spur length"
    assert "From the mouth to the tip along the outer curve" in out
    assert standings(out)[0] == "14 candidates, none likelier by what was observed."
    assert "C. album var. longum" in standings(out)[1]
    likeliest, chance = re.match(r"indet\.: C\. (\w+) (\d+) %; ", standings(out)[1]).groups()
    assert answer_of(out).startswith(f"\nCremnocentron indet. — Cremnocentron {likeliest} is likeliest, {chance} %\n")


def test_back_undoes_any_number_of_answers() -> None:
    out, _ = ask("31 mm\nacute\nback\nback\nback\n1.2 in\nq\n")
    told = standings(out)
    assert told[0] == told[4] and told[1] == told[3]  # after each `back` as before the answer
    assert "There is no answer to take back." in out
    assert questions(out)[0] == questions(out)[-2] == "spur length"


def test_the_answer_is_that_of_the_options() -> None:
    """Asked, or told by --with: the same plant, the same answer."""
    out, _ = ask("31 mm\nother leaf apex\nacute\nq\n")
    told = (
        CliRunner()
        .invoke(
            main,
            ["determine", "--with", "spur length=31 mm", "--with", "leaf apex=acute", "--kb", str(KB)],
            env={"COLUMNS": "200"},
        )
        .stdout
    )
    assert answer_of(out).strip() == told.strip()


TYPED = [
    ("list", "  Nothing stands yet.\n"),
    ("why", "mm (1"),
    ("very long", "give the figure observed, in mm"),
    ("3 kg", "give the figure observed, in mm"),
    ("spur colour=mauve", "states: green"),
    ("help", "other CHARACTER, CHARACTER=VALUE, quit."),
    ("other", "Name the character"),
    ("other leaf apx", "did you mean `leaf apex`?"),
    ("other leaf apex", "1 acute  2 obtuse  3 rounded  4 emarginate"),
    ("acut", "Taken for acute."),
    ("other leaf apex", "leaf apex: "),
    ("2", "Now: "),
    ("flower number=5", "Now: "),
    ("other bracteoles=absent", "Now: "),
    ("?", "Now: "),
    ("list", "  leaf apex obtuse\n  flower number 5\n  bracteoles absent\n  not known: spur length\n"),
]


def test_what_may_be_typed() -> None:
    """Each line has its say, in this order, before the next is read."""
    out, err = ask("\n".join([line for line, _ in TYPED] + ["q", ""]))
    assert err == ""
    at = out.index(f"? {TYPED[0][0]}\n")
    for (line, said), (after, _) in pairwise([*TYPED, ("q", "")]):
        end = out.index(f"? {after}\n", at + len(line))
        assert said in out[at:end], line
        at = end


@pytest.mark.parametrize("typed", ["", "31 mm\n", b"\xff\xfe\x00\n\xc3\n", "q"], ids=repr)
def test_the_input_may_end_at_any_time(typed: str | bytes) -> None:
    out, _ = ask(typed)
    assert "What this rests on" in out


def test_it_ends_by_itself() -> None:
    """Every question is answered by “don't know”: in the end there is none left."""
    out, _ = ask("?\n" * 60)
    assert "Nothing more is worth asking." in out
    assert len(set(questions(out))) == len(questions(out))


def test_what_was_told_by_options_is_not_asked() -> None:
    out, _ = ask("?\n" * 60, "--with", "spur length=31 mm")
    assert "spur length" not in questions(out) and "spur to petal" not in questions(out)


def test_data_on_standard_output_and_the_talk_beside_it() -> None:
    out, err = ask("31 mm\nq\n", "--json")
    assert json.loads(out)["characters"][0]["observed"] == "31 mm" and "Now: " in err


def _read_until(terminal: int, said: str, seconds: float = 30) -> str:
    text, end = "", time.monotonic() + seconds
    while said not in text and time.monotonic() < end:
        if select.select([terminal], [], [], 0.2)[0]:
            try:
                text += os.read(terminal, 65536).decode("utf-8", "replace")
            except OSError:  # the other side is closed
                break
    assert said in text, text
    return text


@pytest.mark.parametrize("leaving", ["\x04", "\x03", "quit\n"], ids=["ctrl-d", "ctrl-c", "quit"])
def test_on_a_terminal(leaving: str, tmp_path: Path) -> None:
    pty = pytest.importorskip("pty")
    ours, theirs = pty.openpty()
    command = [
        sys.executable,
        "-c",
        "from auctorum.cli.main import main; main()",
        "determine",
        "--ask",
        "--kb",
        str(KB),
    ]
    told = os.environ | {"TERM": "xterm", "COLUMNS": "100", "XDG_CACHE_HOME": str(tmp_path)}

    def own_terminal() -> None:  # so that Ctrl-C reaches it
        import fcntl
        import signal
        import termios

        signal.signal(signal.SIGINT, signal.SIG_DFL)  # work in the background is started with it ignored
        fcntl.ioctl(0, termios.TIOCSCTTY, 0)

    with subprocess.Popen(
        command, stdin=theirs, stdout=theirs, stderr=theirs, env=told, start_new_session=True, preexec_fn=own_terminal
    ) as process:
        os.close(theirs)
        _read_until(ours, "spur length [mm]? ")
        os.write(ours, b"31 mm\n")
        shown = _read_until(ours, "? ")
        while "Now: " not in shown:
            shown += _read_until(ours, "? ")
        os.write(ours, leaving.encode())
        text = _read_until(ours, "Where this page and local")
        assert "\x1b[3m" in text or "\x1b[1;3m" in text  # names in italics
        assert process.wait(timeout=30) == 0
    os.close(ours)
