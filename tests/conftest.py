"""Options for outside data, and lines that a test says at the end of the run."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

_SAID = pytest.StashKey[list[str]]()


def pytest_addoption(parser: pytest.Parser) -> None:
    group = parser.getgroup("auctorum", "outside data of the same form, and renewal of kept output")
    group.addoption("--misspellings", type=Path, metavar="PATH", help="misspelt labels, as tests/data/misspellings.tsv")
    group.addoption("--names", type=Path, metavar="PATH", help="list of names, one a line, may be gzipped")
    group.addoption("--icn-examples", type=Path, metavar="PATH", help="worked examples of the Code (YAML)")
    group.addoption("--notation-phrases", type=Path, metavar="PATH", help="phrases of descriptions (JSON lines)")
    group.addoption("--renew", action="store_true", help="write the kept output anew, to be read in the diff")


@pytest.fixture(scope="session")
def say(pytestconfig: pytest.Config) -> Callable[[str], None]:
    """Take a line for the end of the run, where it is shown even under -q."""
    return pytestconfig.stash.setdefault(_SAID, []).append


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    for line in config.stash.get(_SAID, []):
        terminalreporter.write_line(line)
