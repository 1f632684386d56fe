"""`auctorum check`"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from itertools import groupby
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import counted, echo_json, json_option, kb_option, load

if TYPE_CHECKING:
    from auctorum.corpus.model import Corpus
    from auctorum.problems import Problem


@click.command()
@click.option("--open", "with_open", is_flag=True, help="List open questions, too: what to look up about each name.")
@kb_option
@json_option
@click.pass_context
def check(ctx: click.Context, with_open: bool, kb: Path, as_json: bool) -> None:
    """List every problem of the knowledge base as file:line:column: what is wrong (what to do).

    In a CSV file the column counts cells. Exit code 1 if there is an error, 0 if there are warnings only. Open
    questions are what the records do not say, and the Code asks, about the valid publication of names.
    """
    code, problems = load(kb)
    shown = [one for one in problems if with_open or one.severity != "open"]
    counts = Counter(str(one.severity) for one in problems)
    if as_json:
        counted_in_words = {"errors": counts["error"], "warnings": counts["warning"], "open_questions": counts["open"]}
        echo_json({**counted_in_words, "problems": _rows(code.corpus, shown)})
    else:
        _show(code.corpus, shown, counts, with_open)
    ctx.exit(1 if counts["error"] else 0)


def _rows(corpus: Corpus, problems: Sequence[Problem]) -> list[dict[str, object]]:
    """What may leave the machine: a problem that tells a place is said without its words."""
    from auctorum.determination.places.public_plants import public_problem
    from auctorum.determination.places.whereabouts import whereabouts_of

    known = whereabouts_of(corpus)
    return [_row(public_problem(one, known)) for one in problems]


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


def _show(corpus: Corpus, problems: Sequence[Problem], counts: Counter[str], with_open: bool) -> None:
    from rich.text import Text

    from auctorum.cli.layout import console

    out = console()
    for file, of_file in groupby(problems, key=lambda problem: problem.place.file):
        if out.is_terminal:
            out.print(Text(file, style="bold"))
        for problem in of_file:
            style = "red" if problem.severity == "error" else "yellow"
            out.print(Text(str(problem), style=style if out.is_terminal else ""), soft_wrap=True)
    read = (
        f"{len(corpus.works)} publications, {len(corpus.names)} names, {len(corpus.acts)} acts, "
        f"{len(corpus.treatments)} treatments, {len(corpus.statements)} statements, {len(corpus.sites)} sites, "
        f"{len(corpus.specimens)} specimens, {len(corpus.labels)} labels"
    )
    found = f"{read}: {counted(counts['error'], 'error')}, {counted(counts['warning'], 'warning')}"
    asked = counts["open"]
    more = f", {counted(asked, 'open question')}{'' if with_open else ' (--open lists them)'}" if asked else ""
    out.print(f"{found}{more}.", soft_wrap=True)
