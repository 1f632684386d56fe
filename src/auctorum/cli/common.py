"""What commands share: the options, the loading of a knowledge base, and output as JSON."""

from __future__ import annotations

import contextlib
import json
import sys
from collections.abc import Callable, Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

import click

if TYPE_CHECKING:
    from auctorum.corpus.model import Corpus, NameEntry
    from auctorum.nomenclature.code import Code
    from auctorum.problems import Problem

F = TypeVar("F", bound=Callable[..., Any])

kb_option = click.option(
    "--kb",
    default="kb",
    show_default=True,
    type=click.Path(exists=True, file_okay=False, path_type=Path),
    help="Folder of the knowledge base.",
)
sec_option = click.option("--sec", multiple=True, metavar="WORK", help="Only this work (its id); may be given again.")
form_option = click.option(
    "--format",
    "form",
    type=click.Choice(["text", "markdown", "html"]),
    default="text",
    show_default=True,
    help="Form of the result.",
)
json_option = click.option("--json", "as_json", is_flag=True, help="Print the result as JSON.")


def load(kb: Path) -> tuple[Code, tuple[Problem, ...]]:
    """The linked knowledge base under the Code, and every problem in it at its very place; shows progress."""
    from auctorum.nomenclature.checks import check
    from auctorum.records.read import pinpoint

    code, problems = _read(kb)
    return code, pinpoint([*problems, *check(code)])


def load_quietly(kb: Path) -> Code:
    """The knowledge base; errors in it are counted on standard error, since an answer may miss something."""
    code, problems = _read(kb)
    errors = error_count(problems)
    if errors:
        told = counted(errors, "error")
        click.echo(f"The knowledge base has {told}; what they concern is left out: auctorum check", err=True)
    return code


def _read(kb: Path) -> tuple[Code, list[Problem]]:
    """The knowledge base under the Code, and the problems of reading and linking."""
    from auctorum.corpus.link import link
    from auctorum.nomenclature.code import applied
    from auctorum.records.read import collector_paused, read

    with collector_paused(), progress_bar("Reading") as progress:
        records, problems = read(kb, progress=progress)
        corpus, more = link(records)
        return applied(corpus), [*problems, *more]


def error_count(problems: Iterable[Problem]) -> int:
    """How many of the problems are errors."""
    return sum(problem.severity == "error" for problem in problems)


def counted(number: int, noun: str) -> str:
    """`no errors`, `1 error`, `3 errors`."""
    return f"{number or 'no'} {noun}{'' if number == 1 else 's'}"


def find_name(corpus: Corpus, said: str) -> NameEntry:
    """The name meant by the words of a user; raises UnknownName with the nearest, or AmbiguousName."""
    from auctorum.corpus.resolve import lookup

    return corpus.names[lookup(corpus, said)]


def check_works(corpus: Corpus, works: Iterable[str]) -> None:
    """Refuse ids that are no work of the knowledge base, with the nearest, as misuse (exit code 2)."""
    from auctorum.names.nearest import nearest

    for work in works:
        if work not in corpus.works:
            near = ", ".join(nearest(work, corpus.works))
            told = f"; nearest: {near}" if near else ""
            raise click.BadParameter(f"no work {work!r} in the knowledge base{told}", param_hint="--sec")


def echo_json(data: object) -> None:
    """Print as JSON: keys in the order given, letters as they are."""
    click.echo(json.dumps(data, ensure_ascii=False, indent=2, default=str))


@contextlib.contextmanager
def at_work(what: str, *, long: bool) -> Iterator[None]:
    """A sign of life on standard error while one long step goes on; nothing where that is no terminal."""
    if not long or not sys.stderr.isatty():
        yield
        return
    from rich.console import Console

    with Console(stderr=True).status(what):
        yield


class progress_bar:
    """A bar on standard error while long work goes on; nothing where that is no terminal or the work is short."""

    LEAST = 50  # steps below which no bar is shown

    def __init__(self, what: str, least: int = LEAST) -> None:
        self._what, self._least = what, least
        self._bar: Any = None
        self._task: Any = None

    def __enter__(self) -> Callable[[int, int], None]:
        return self._step

    def _step(self, done: int, total: int) -> None:
        if total < self._least or not sys.stderr.isatty():
            return
        if self._bar is None:
            from rich.console import Console
            from rich.progress import Progress

            self._bar = Progress(console=Console(stderr=True), transient=True)
            self._bar.start()
            self._task = self._bar.add_task(self._what, total=total)
        self._bar.update(self._task, completed=done, total=total)

    def __exit__(self, *_exc: object) -> None:
        if self._bar is not None:
            self._bar.stop()
