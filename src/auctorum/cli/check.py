"""`auctorum check`"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import counted, echo_json, error_count, json_option, kb_option, load

if TYPE_CHECKING:
    from auctorum.corpus.model import Corpus
    from auctorum.problems import Problem


@click.command()
@kb_option
@json_option
@click.pass_context
def check(ctx: click.Context, kb: Path, as_json: bool) -> None:
    """List every problem of the knowledge base as file:line:column: what is wrong (what to do).

    In a CSV file the column counts cells. Exit code 1 if there is an error, 0 if there are warnings only.
    """
    code, problems = load(kb)
    errors = error_count(problems)
    if as_json:
        echo_json({"errors": errors, "warnings": len(problems) - errors, "problems": [_row(one) for one in problems]})
    else:
        _show(code.corpus, problems, errors)
    ctx.exit(1 if errors else 0)


def _row(problem: Problem) -> dict[str, object]:
    place = problem.place
    return {
        "severity": str(problem.severity),
        "file": place.file,
        "line": place.line,
        "column": place.column,
        "what": problem.what,
        "remedy": problem.remedy,
    }


def _show(corpus: Corpus, problems: Sequence[Problem], errors: int) -> None:
    from rich.text import Text

    from auctorum.cli.layout import console

    out = console()
    for file, of_file in groupby(problems, key=lambda problem: problem.place.file):
        if out.is_terminal:
            out.print(Text(file, style="bold"))
        for problem in of_file:
            style = "red" if problem.severity == "error" else "yellow"
            out.print(Text(str(problem), style=style if out.is_terminal else ""), soft_wrap=True)
    warnings = len(problems) - errors
    read = (
        f"{len(corpus.works)} publications, {len(corpus.names)} names, {len(corpus.acts)} acts, "
        f"{len(corpus.treatments)} treatments, {len(corpus.statements)} statements, {len(corpus.sites)} sites, "
        f"{len(corpus.specimens)} specimens, {len(corpus.labels)} labels"
    )
    out.print(f"{read}: {counted(errors, 'error')}, {counted(warnings, 'warning')}.", soft_wrap=True)
