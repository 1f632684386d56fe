"""`auctorum synonymy`"""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import (
    check_works,
    echo_json,
    find_name,
    form_option,
    json_option,
    kb_option,
    load_quietly,
    sec_option,
)

if TYPE_CHECKING:
    from auctorum.corpus.model import Corpus
    from auctorum.nomenclature.synonymy import Synonymy


@click.command()
@click.argument("name")
@sec_option
@form_option
@kb_option
@json_option
def synonymy(name: str, sec: tuple[str, ...], form: str, kb: Path, as_json: bool) -> None:
    """The synonymy of the taxon that NAME belongs to, as a monograph prints it.

    The accepted name first, then the names on its type (≡), the names on other types that works sink into it (=),
    and names misapplied to it (–), by date, each with its place of publication. NAME may be any of them.
    """
    from auctorum.nomenclature.standing import abbreviations
    from auctorum.nomenclature.synonymy import synonymy as synonymy_of
    from auctorum.nomenclature.synonymy_text import as_html, as_markdown, synonymy_data

    code = load_quietly(kb)
    corpus = code.corpus
    asked = find_name(corpus, name).id
    check_works(corpus, sec)
    found = synonymy_of(corpus, _accepted(corpus, asked, sec), works=sec or None, notes=partial(abbreviations, code))
    if as_json:
        echo_json(synonymy_data(found))
    elif form == "text":
        _show(found)
    else:
        click.echo({"markdown": as_markdown, "html": as_html}[form](found), nl=False)


def _accepted(corpus: Corpus, asked: str, sec: tuple[str, ...]) -> str:
    """The accepted name that `asked` leads to; where that is another name, standard error says so."""
    from auctorum.names.format import format_name
    from auctorum.nomenclature.synonymy import accepted_name

    placed = accepted_name(corpus, asked, sec or None)
    told = format_name(corpus.names[asked].name)
    if placed is None:
        click.echo(f"No work says where {told} belongs.", err=True)
        return asked
    if placed.accepted != asked:
        accepted = format_name(corpus.names[placed.accepted].name)
        click.echo(f"{told} is a synonym of {accepted} sec. {corpus.works[placed.work].byline}", err=True)
    return placed.accepted


def _show(found: Synonymy) -> None:
    """Plain text; on a terminal with italics, wrapped under its indent."""
    from rich.padding import Padding
    from rich.text import Text

    from auctorum.cli.layout import console
    from auctorum.nomenclature.synonymy_text import INDENT, as_text, lines

    out = console()
    if not out.is_terminal:
        click.echo(as_text(found), nl=False)
        return
    for line in lines(found):
        text = Text.assemble(*((run, "italic" if latin else "") for run, latin in line.runs))
        out.print(Padding(text, (0, 0, 0, len(INDENT) * line.depth)))
