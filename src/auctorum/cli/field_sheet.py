"""`auctorum field-sheet`"""

from __future__ import annotations

from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import check_works, echo_json, find_name, json_option, kb_option, load_quietly, sec_option

if TYPE_CHECKING:
    from collections.abc import Sequence

    from auctorum.circumscription.key.words import Runs
    from auctorum.corpus.model import Corpus
    from auctorum.determination.sheet.sheet import AtStage, Boundary, Item, Rule, Sheet
    from auctorum.exchange.sheet_layout import Layout

_MOST_PLANTS = 60


@click.command("field-sheet")
@click.argument("taxa", nargs=-1, required=True, metavar="TAXON...")
@sec_option
@click.option(
    "--character", "characters", multiple=True, help="Put this character on it, too, whatever it parts; repeatable."
)
@click.option("--without", "without", multiple=True, metavar="CHARACTER", help="Leave this character out; repeatable.")
@click.option("--paper", type=click.Choice(["a4", "letter"]), default="a4", show_default=True, help="Size of the page.")
@click.option(
    "--plants", type=click.IntRange(1, _MOST_PLANTS), metavar="N", help="Rows for plants.  [default: as many as fit]"
)
@click.option(
    "--format",
    "form",
    type=click.Choice(["html", "csv"]),
    default="html",
    show_default=True,
    help="The page to print, or its empty table to type into.",
)
@kb_option
@json_option
def field_sheet(
    taxa: tuple[str, ...],
    sec: tuple[str, ...],
    characters: tuple[str, ...],
    without: tuple[str, ...],
    paper: str,
    plants: int | None,
    form: str,
    kb: Path,
    as_json: bool,
) -> None:
    """A data sheet of one page for two or more TAXON, to print, fill in outdoors and type in again.

    For one TAXON alone it is a sheet for that and the taxa of the same rank that the latest work places beside it. The
    characters stand in the order of their worth: how well they part the taxa, for the trouble they take. Beside each
    stands how to measure it, what each taxon shows and where they part, in millimetres and inches. The columns are
    headed as tables of plants are read: type the rows under these headings (--format csv writes them). Print the page
    at 100 %, and check its scale bar against a ruler.
    """
    from auctorum.determination.sheet.build import field_sheet as sheet_for
    from auctorum.exchange.field_sheet import as_html, table_csv
    from auctorum.exchange.sheet_layout import Paper, laid_out

    corpus = load_quietly(kb).corpus
    check_works(corpus, sec)
    asked, left_out = (_characters(corpus, several) for several in (characters, without))
    sheet = sheet_for(corpus, _taxa(corpus, taxa), characters=asked, without=left_out, works=sec or None)
    layout = laid_out(sheet, Paper(paper), plants)
    if as_json:
        echo_json(_data(layout))
    else:
        click.echo(as_html(layout) if form == "html" else table_csv(layout.sheet), nl=False)


def _characters(corpus: Corpus, said: tuple[str, ...]) -> tuple[str, ...]:
    from auctorum.corpus.readings import find_character

    return tuple(dict.fromkeys(find_character(one, corpus.vocabulary).name for one in said))


def _taxa(corpus: Corpus, said: tuple[str, ...]) -> list[str]:
    """Ids of the taxa, each once; one alone with the taxa beside it."""
    from auctorum.circumscription.key.beside import with_sisters
    from auctorum.corpus.resolve import find_taxon

    ids = list(dict.fromkeys(find_taxon(corpus, find_name(corpus, one).id).id for one in said))
    return list(with_sisters(corpus, ids[0])) if len(ids) == 1 else ids


# --- as data


def _data(layout: Layout) -> dict[str, object]:
    """What stands on the sheet; `error` and `worth` are figures of 0 to 1, null where one of two taxa is silent."""
    sheet = layout.sheet
    return {
        "taxa": [{"id": taxon, "name": _plain(sheet.names[taxon])} for taxon in sheet.taxa],
        "sec": sheet.sec,
        "paper": str(layout.paper),
        "landscape": layout.landscape,
        "plants": layout.rows,
        "columns": [asdict(one) for one in sheet.columns],
        "characters": [_item(one, sheet) for one in sheet.items],
        "criteria": [_rule(one) for one in sheet.rules],
        "mind": [_plain(one) for one in sheet.mind],
        "not_parted": [list(pair) for pair in sheet.untold],
        "part_nothing": list(sheet.part_nothing),
        "no_room": list(sheet.no_room),
        "cautions": list(sheet.cautions),
        "notice": sheet.notice,
    }


def _item(one: Item, sheet: Sheet) -> dict[str, object]:
    return {
        "character": one.character,
        "column": one.heading or None,
        "where": str(one.where),
        "why": str(one.why),
        "worth": round(one.worth, 6),
        "how": one.how,
        "states": [{"code": code, "name": name} for code, name in one.states],
        "stages": [_stage(stage, sheet) for stage in one.stages],
    }


def _stage(one: AtStage, sheet: Sheet) -> dict[str, object]:
    return {
        "stage": one.stage,
        "shows": dict(zip(sheet.taxa, one.says, strict=True)),
        "errors": [
            {"taxa": list(pair), "error": None if error is None else round(error, 6)}
            for pair, error in zip(sheet.pairs, one.errors, strict=True)
        ],
        "thresholds": [_boundary(boundary) for boundary in one.boundaries],
        "decides": list(one.decides),
    }


def _boundary(one: Boundary) -> dict[str, object]:
    return {
        "below": list(one.below),
        "above": list(one.above),
        "up_to": one.upto or None,
        "from": one.start,
        "error": round(one.error, 6),
    }


def _rule(one: Rule) -> dict[str, object]:
    return asdict(one) | {"name": _plain(one.name), "otherwise": _plain(one.otherwise) or None}


def _plain(runs: Runs | Sequence[tuple[str, bool]]) -> str:
    return "".join(text for text, _ in runs)
