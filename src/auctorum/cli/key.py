"""`auctorum key`"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import (
    at_work,
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
    from auctorum.circumscription.key.words import Page
    from auctorum.corpus.model import Corpus

_MANY = 12  # taxa from which on it may take seconds


@click.command()
@click.argument("taxa", nargs=-1, required=True, metavar="TAXON...")
@sec_option
@click.option("--character", "characters", multiple=True, help="Ask only for this character; may be given again.")
@click.option("--without", "without", multiple=True, metavar="CHARACTER", help="Never ask for it; may be given again.")
@form_option
@kb_option
@json_option
def key(
    taxa: tuple[str, ...],
    sec: tuple[str, ...],
    characters: tuple[str, ...],
    without: tuple[str, ...],
    form: str,
    kb: Path,
    as_json: bool,
) -> None:
    """A dichotomous key to two or more TAXON, from what their authors state.

    For one TAXON alone it is a key to that and the taxa of the same rank that the latest work places beside it. Each
    couplet asks what tells most for the trouble; taxa that overlap are found on both sides. Below the key stands
    how often it errs, by what is stated and on the measured plants of the knowledge base. `--format html` is a page of
    its own.
    """
    from auctorum.circumscription.key import evaluate
    from auctorum.circumscription.key import key as key_to
    from auctorum.circumscription.key.words import page
    from auctorum.circumscription.plants import plants

    corpus = load_quietly(kb).corpus
    check_works(corpus, sec)
    asked = _asked(corpus, characters, without)
    ids = _taxa(corpus, taxa)
    with at_work("Building the key", long=len(ids) >= _MANY):
        found = key_to(corpus, ids, works=sec or None, characters=asked)
        tried = evaluate(found, plants(corpus)) if corpus.specimens else None
    _show(page(corpus, found, tried, sec), form, as_json)


def _asked(corpus: Corpus, characters: tuple[str, ...], without: tuple[str, ...]) -> list[str] | None:
    """The characters that may be asked for; None for all."""
    from auctorum.corpus.readings import find_character

    if not characters and not without:
        return None
    chosen = [find_character(said, corpus.vocabulary).name for said in characters] or list(corpus.vocabulary)
    left_out = {find_character(said, corpus.vocabulary).name for said in without}
    return [name for name in chosen if name not in left_out]


def _taxa(corpus: Corpus, said: tuple[str, ...]) -> list[str]:
    """Ids of the taxa, each once; one alone with the taxa beside it."""
    from auctorum.circumscription.key.beside import with_sisters
    from auctorum.corpus.resolve import find_taxon

    ids = list(dict.fromkeys(find_taxon(corpus, find_name(corpus, one).id).id for one in said))
    return list(with_sisters(corpus, ids[0])) if len(ids) == 1 else ids


def _show(told: Page, form: str, as_json: bool) -> None:
    from auctorum.circumscription.key.forms import as_markdown, as_text, key_data
    from auctorum.circumscription.key.page import as_html
    from auctorum.cli.layout import console

    if as_json:
        echo_json(key_data(told))
    elif form != "text":
        click.echo({"markdown": as_markdown, "html": as_html}[form](told), nl=False)
    elif (out := console()).is_terminal:
        _print_in_italics(told, out.width)
    else:
        click.echo(as_text(told), nl=False)


def _print_in_italics(told: Page, width: int) -> None:
    from rich.text import Text

    from auctorum.circumscription.key.forms import WIDTH, lines
    from auctorum.cli.layout import console

    out = console()
    for line in lines(told, min(width, WIDTH)):
        text = Text.assemble(*((run, "italic" if latin else "") for run, latin in line))
        out.print(text, no_wrap=True, overflow="ignore", crop=False)
