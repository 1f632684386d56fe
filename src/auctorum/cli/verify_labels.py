"""`auctorum verify-labels`"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import echo_json, json_option, kb_option, load_quietly, progress_bar

if TYPE_CHECKING:
    from auctorum.corpus.model import Corpus, Label
    from auctorum.determination.labels.model import LabelReport

FEW = 3  # labels up to which each is told at length


@click.command("verify-labels")
@click.argument("file", required=False, type=click.Path(exists=True, dir_okay=False, path_type=Path), metavar="[FILE]")
@click.option("--seller", "sellers", multiple=True, metavar="NAME", help="Only labels of this seller; repeatable.")
@click.option("--id", "ids", multiple=True, metavar="ID", help="Only this label, told at length; repeatable.")
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "csv", "markdown", "html"]),
    help="Form of the result.  [default: text]",
)
@kb_option
@json_option
@click.pass_context
def verify_labels(
    ctx: click.Context,
    file: Path | None,
    sellers: tuple[str, ...],
    ids: tuple[str, ...],
    form: str | None,
    kb: Path,
    as_json: bool,
) -> None:
    """Whether labels spell a known name, and whether the plant beside each can be what its label says.

    The labels are those of FILE (CSV, the columns of labels.csv), else of the knowledge base. Each name is matched,
    with what differs; then the traits noted of the plant are tested against all that works state of the taxon:
    consistent, contradicted (by which statements, and by how much), or not testable. Sellers are summed up.

    Exit code 0 whatever was found; 1 if no label could be read. Cells and rows that could not are named on standard
    error, and the rest is used.
    """
    if as_json and form is not None:
        raise click.UsageError("--json is a format of its own; leave --format out")
    from auctorum.determination.labels.labels import verified

    corpus = load_quietly(kb).corpus
    labels = corpus.labels if file is None else _of_file(file, corpus)
    if not labels:
        click.echo(f"There is no label in {kb / 'labels.csv' if file is None else file}.", err=True)
        ctx.exit(1)
    chosen = _chosen(labels, sellers, ids)
    with progress_bar("Checking labels") as progress:
        report = verified(corpus, chosen, progress)
    _put_out(corpus, report, form or "text", as_json=as_json, full=bool(ids) or len(chosen) <= FEW)


def _of_file(path: Path, corpus: Corpus) -> tuple[Label, ...]:
    """The labels of a table; what is wrong in it is told on standard error."""
    from auctorum.cli.determine_table import Teller, told_table
    from auctorum.corpus.rows import linked_labels
    from auctorum.problems import Problem
    from auctorum.records.label_tables import read_labels_text

    teller = Teller()
    text, name = told_table(path, teller)
    if text is None:
        return ()
    records, problems = read_labels_text(text, name, tuple(corpus.vocabulary))
    more: list[Problem] = []
    labels = linked_labels(records, corpus.vocabulary, more)
    teller.tell(sorted((*problems, *more)))
    teller.end()
    return labels


def _chosen(labels: Sequence[Label], sellers: Sequence[str], ids: Sequence[str]) -> tuple[Label, ...]:
    """The labels of those sellers and ids; one that stands on no label is misuse, answered with the nearest."""
    found = tuple(labels)
    wanted = {_known(said, [one.record.seller for one in labels], "--seller") for said in sellers}
    if wanted:
        found = tuple(one for one in found if one.record.seller in wanted)
    chosen = {_known(said, [one.record.occurrenceID for one in found], "--id") for said in ids}
    return tuple(one for one in found if one.record.occurrenceID in chosen) if chosen else found


def _known(said: str, several: Sequence[str], option: str) -> str:
    from auctorum.names.nearest import nearest

    known = tuple(dict.fromkeys(filter(None, several)))
    for one in known:
        if one.casefold() == said.strip().casefold():
            return one
    near = ", ".join(nearest(said, known))
    raise click.BadParameter(f"no label of {said!r}{f'; nearest: {near}' if near else ''}", param_hint=option)


def _put_out(corpus: Corpus, report: LabelReport, form: str, *, as_json: bool, full: bool) -> None:
    if as_json:
        from auctorum.determination.labels.data import data

        echo_json(data(corpus, report))
        return
    from auctorum.cli.verify_labels_document import csv_table, document

    if form == "csv":
        from auctorum.exchange.as_csv import as_csv

        click.echo(as_csv(csv_table(report)), nl=False)
        return
    made = document(corpus, report, full=full, published=form != "text")
    if form == "text":
        from auctorum.cli.diagnosis_text import show

        show(made)
        return
    from auctorum.exchange.as_html import as_html
    from auctorum.exchange.as_markdown import as_markdown

    click.echo({"markdown": as_markdown, "html": as_html}[form](made), nl=False)
