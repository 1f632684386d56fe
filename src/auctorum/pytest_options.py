"""Options for pytest that point the project's tests at other files of the same form.

They stand in the package, as a pytest plugin, because pytest settles its options before it looks for
tests/conftest.py when the path behind an option it does not know yet lies outside the checkout. Nothing else
happens here, and nothing is imported.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

FILES = {
    "--icn-examples": "worked examples of the Code (YAML, as tests/data/icn-examples.yaml)",
    "--notation-phrases": "labelled phrases of descriptions (as tests/data/notation-phrases.jsonl)",
    "--misspellings": "misspelt labels (as tests/data/misspellings.tsv)",
    "--names": "list of names, one a line, may be gzipped",
}


def pytest_addoption(parser: Any) -> None:
    """Add the options to a pytest parser; paths are taken from where pytest is started."""
    group = parser.getgroup("auctorum", "tests of auctorum: outside data, and renewal of kept output")
    for option, help_ in FILES.items():
        group.addoption(option, type=_absolute, metavar="PATH", default=None, help=help_)
    group.addoption("--renew", action="store_true", help="write the kept output anew, to be read in the diff")


def _absolute(path: str) -> Path:
    return Path(path).absolute()
