"""What tests share: the list of names, and lines said at the end of the run (options: auctorum.pytest_options)."""

from __future__ import annotations

import gzip
import os
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

# With a path outside the checkout among its arguments, pytest does not read pyproject.toml and its `pythonpath`.
sys.path.insert(0, str(Path(__file__).parent))

_SAID = pytest.StashKey[list[str]]()


@pytest.fixture(scope="session")
def say(pytestconfig: pytest.Config) -> Callable[[str], None]:
    """Take a line for the end of the run, where it is shown even under -q."""
    return pytestconfig.stash.setdefault(_SAID, []).append


@pytest.fixture(scope="session")
def listed_names(pytestconfig: pytest.Config) -> list[str]:
    """The large list of real names, one a line, from --names or AUCTORUM_NAMES; tests skip where it is absent."""
    kept = Path(__file__).parent / "data" / "names-sample.txt.gz"
    for place in (pytestconfig.getoption("--names"), os.environ.get("AUCTORUM_NAMES"), kept):
        if place and Path(place).is_file():
            content = Path(place).read_bytes()
            text = gzip.decompress(content) if content.startswith(b"\x1f\x8b") else content
            return text.decode("utf-8").splitlines()
    pytest.skip("no list of names: give it with --names PATH or AUCTORUM_NAMES=PATH")


@pytest.fixture(autouse=True)
def usual_width(monkeypatch: pytest.MonkeyPatch) -> None:
    """Output is as wide as in a pipe, wherever the tests start: worker processes are told a width of their own."""
    monkeypatch.delenv("COLUMNS", raising=False)


def pytest_sessionfinish(session: pytest.Session) -> None:
    """In a worker process of pytest-xdist: hand the lines to the process that shows the end of the run."""
    handed = getattr(session.config, "workeroutput", None)
    if handed is not None:
        handed["said"] = session.config.stash.get(_SAID, [])


@pytest.hookimpl(optionalhook=True)
def pytest_testnodedown(node: Any) -> None:
    """Take the lines of a worker process that has ended."""
    node.config.stash.setdefault(_SAID, []).extend(getattr(node, "workeroutput", {}).get("said", ()))


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    for line in config.stash.get(_SAID, []):
        terminalreporter.write_line(line)
