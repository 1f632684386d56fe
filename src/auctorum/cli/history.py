"""`auctorum history`"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import echo_json, find_name, json_option, kb_option, load_quietly

if TYPE_CHECKING:
    from auctorum.corpus.model import Corpus
    from auctorum.nomenclature.history import Event, History


@click.command()
@click.argument("name")
@kb_option
@json_option
def history(name: str, kb: Path, as_json: bool) -> None:
    """How NAME moved: every act and every author's placement of its type, in order of time.

    Then the state of opinion, and the works that cover the group and leave the taxon out.
    """
    from auctorum.nomenclature.history import history as history_of

    corpus = load_quietly(kb)
    entry = find_name(corpus, name)
    found = history_of(corpus, entry.group)
    if as_json:
        echo_json(_data(corpus, found))
    else:
        _show(corpus, found, entry.id)


def _plain(corpus: Corpus, name: str | None) -> str:
    from auctorum.names.format import format_name

    return format_name(corpus.names[name].name, authors=False) if name else ""


def _data(corpus: Corpus, found: History) -> dict[str, object]:
    from auctorum.names.format import format_name

    return {
        "type_of": format_name(corpus.names[found.group].name),
        "names": [format_name(corpus.names[name].name) for name in found.names],
        "events": [
            {
                "year": event.year,
                "date": event.date,
                "work": event.work,
                "page": event.page,
                "name": event.as_printed,
                "kind": "act" if event.is_act else "placement",
                "what": event.what,
                "rank": event.rank,
                "status": event.status,
                "parent": _plain(corpus, event.parent),
                "accepted_name": _plain(corpus, event.target),
                "notes": list(event.notes),
            }
            for event in found.events
        ],
        "views": [
            {
                "view": view.label,
                "authors": list(view.authors),
                "works": list(view.works),
                "since": view.first,
                "until": view.last,
            }
            for view in found.views
        ],
        "silent": list(found.silent),
    }


def _show(corpus: Corpus, found: History, asked: str) -> None:
    from rich.text import Text

    from auctorum.cli.layout import console, heading, italic, table

    out = console()
    out.print(heading(italic(corpus.names[asked].name)))
    others = [name for name in found.names if name != asked]
    if others:
        names = Text("; ").join(italic(corpus.names[name].name) for name in others)
        out.print(Text.assemble("On the same type: ", names))
    out.print()
    rows = [_row(corpus, event) for event in found.events]
    out.print(table(("year", "work", "page", "name as used", "rank", "what", "placed in"), rows))
    out.print()
    out.print(heading("State of opinion"))
    views = [
        (view.label, str(len(view.authors)), _span(view.first, view.last), "; ".join(_byline(corpus, view.works)))
        for view in found.views
    ]
    out.print(table(("view", "authors", "years", "works"), views, right=(1,)))
    if found.silent:
        out.print()
        silent = "; ".join(_byline(corpus, found.silent))
        out.print(Text.assemble(("Silent", "bold"), f" (they cover the group and leave the taxon out): {silent}"))


def _row(corpus: Corpus, event: Event) -> tuple[str, ...]:
    what = event.what if not event.notes else f"{event.what}; {'; '.join(event.notes)}"
    where = _plain(corpus, event.target or event.parent)
    used = event.as_printed
    return (str(event.year), " & ".join(corpus.works[event.work].authors), event.page, used, event.rank, what, where)


def _byline(corpus: Corpus, works: tuple[str, ...]) -> list[str]:
    return [corpus.works[work].byline for work in works]


def _span(first: int, last: int) -> str:
    return str(first) if first == last else f"{first}–{last}"
