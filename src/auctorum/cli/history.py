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

    code = load_quietly(kb)
    corpus = code.corpus
    entry = find_name(corpus, name)
    found = history_of(code, entry.group)
    if as_json:
        echo_json(_data(corpus, found))
    else:
        _show(corpus, found, entry.id)


def _plain(corpus: Corpus, name: str | None) -> str:
    from auctorum.corpus.resolve import called

    return called(corpus, name) if name else ""


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
                "validly_published": event.stands if event.is_act else None,
                "illegitimate": event.illegitimate if event.is_act else None,
                "correct_name_for_its_view": event.correct,
                "correct_would_be": event.instead,
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
    rows = [_row(corpus, events, found) for events in _by_treatment(found)]
    out.print(table(("year", "work", "page", "name as used", "rank", "what", "placed in"), rows))
    if found.views:
        _show_views(corpus, found)
    if found.silent:
        out.print()
        silent = "; ".join(_byline(corpus, found.silent))
        out.print(Text.assemble(("Silent", "bold"), f" (they cover the group and leave the taxon out): {silent}"))


def _show_views(corpus: Corpus, found: History) -> None:
    from auctorum.cli.layout import console, heading, table

    rows = [
        (view.label, str(len(view.authors)), _span(view.first, view.last), "; ".join(_byline(corpus, view.works)))
        for view in found.views
    ]
    out = console()
    out.print()
    out.print(heading("State of opinion"))
    out.print(table(("view", "authors", "years", "works"), rows, right=(1,)))


def _by_treatment(found: History) -> list[list[Event]]:
    """Events in order; what one work does with one name on one page, and how it keeps it, together."""
    rows: list[list[Event]] = []
    for event in found.events:
        before = rows[-1][-1] if rows else None
        same = before and (before.work, before.used, before.page) == (event.work, event.used, event.page)
        if same and before and before.is_act and not event.is_act:
            rows[-1].append(event)
        else:
            rows.append([event])
    return rows


def _row(corpus: Corpus, events: list[Event], found: History) -> tuple[str, ...]:
    last = events[-1]
    genus = corpus.names[found.group].name.genus
    told = [*(event.what for event in events), *(note for event in events for note in event.notes)]
    told += [f"correct for that view: {_short(event.instead, genus)}" for event in events if event.correct is False]
    what = "; ".join(told)
    where = _plain(corpus, last.target or last.parent)
    work = " & ".join(corpus.works[last.work].authors)
    used, where = (_short(text, genus) for text in (last.as_printed, where))
    # A synonym has no rank of its own in that work.
    rank = "" if last.target else last.rank
    return (str(last.year), work, last.page, used, rank, what, where)


def _short(text: str, genus: str) -> str:
    """Names with the genus cut to its initial, as the trade does where it goes without saying."""
    return text.replace(f"{genus} ", f"{genus[:1]}.\u00a0")


def _byline(corpus: Corpus, works: tuple[str, ...]) -> list[str]:
    return [corpus.works[work].byline for work in works]


def _span(first: int, last: int) -> str:
    return str(first) if first == last else f"{first}–{last}"
