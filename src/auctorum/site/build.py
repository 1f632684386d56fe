"""Build the whole site: render every page, then swap the finished folder in."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from pathlib import Path

from auctorum.nomenclature.code import Code
from auctorum.problems import Problem
from auctorum.site.render import render
from auctorum.site.write import write

Progress = Callable[[str], None]


def build(code: Code, problems: Sequence[Problem], out: Path, progress: Progress | None = None) -> int:
    """Write the site of a knowledge base to the folder `out`; returns the number of files.

    `progress` is called with the path of each file as it is done. Raises UnusableOutput where `out` holds
    anything but an earlier site; then, and at any other failure, `out` stays as it was.
    """
    return write(_told(render(code, problems), progress), out)


def _told(texts: Iterator[tuple[str, str]], progress: Progress | None) -> Iterator[tuple[str, str]]:
    for path, text in texts:
        yield path, text
        if progress is not None:
            progress(path)
