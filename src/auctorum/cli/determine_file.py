"""`auctorum determine FILE`: every plant of a table, and the sum of it."""

from __future__ import annotations

import csv
import json
import sys
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import IO, TYPE_CHECKING

import click

from auctorum.cli.common import progress_bar
from auctorum.cli.determine_rows import WHOLE, Row, Streamed, usable, whole_rows
from auctorum.cli.determine_setting import Setting
from auctorum.cli.determine_sum import show_sum, sum_data
from auctorum.cli.determine_table import Teller
from auctorum.determination.telling.table_answers import Sum
from auctorum.determination.telling.words import LEAST, percent

if TYPE_CHECKING:
    from auctorum.corpus.criteria import Limit
    from auctorum.records.schema import Criterion

_FIXED = (
    "plant", "named", "determined as", "wording", "probability", "next best", "its probability", "characters used",
    "outside what is stated of it",
)  # fmt: skip
_NEXT = "observe next"


def of_file(asked: Setting, file: Path, form: str | None, out: Path | None, as_json: bool) -> int:
    """Print or write the answers as they are worked out, then the sum; the exit code."""
    teller, total = Teller(), Sum(asked.view.taxa)
    good, bad = usable(asked)
    for id_, error in bad:
        click.echo(f"The criterion `{id_}` cannot be used: {error} ({error.remedy})", err=True)
    criteria = [one for one, _ in good]
    long = file.stat().st_size > WHOLE
    with progress_bar("Determining") as step:
        if sys.stdout.isatty() and (as_json or form == "csv"):
            step = _no_bar  # the rows themselves show how far it is
        rows = _rows(asked, file, teller, good, step, long=long)
        counted = _counted(rows, total)
        if as_json:
            _as_json(asked, counted, criteria, total)
        elif out is not None:
            _to_file(out, counted, criteria, with_next=not long)
        elif form == "csv":
            _as_csv(sys.stdout, counted, criteria, with_next=not long)
        elif long:
            _pass_over(counted)
        else:
            _as_table(asked, list(counted), criteria)
    teller.end()
    if not as_json:
        show_sum(asked, total, teller, aside=form == "csv" and out is None)
        if long and form != "csv" and out is None:
            click.echo("The table is long: --format csv or --out FILE gives the answer on each plant.", err=True)
        elif out is not None:
            click.echo(f"wrote {out}")
    return 1 if teller.errors or total.plants == total.undetermined else 0


def _no_bar(_done: int, _total: int) -> None:
    pass


def _rows(
    asked: Setting,
    file: Path,
    teller: Teller,
    criteria: Sequence[tuple[Criterion, Limit]],
    step: Callable[[int, int], None],
    *,
    long: bool,
) -> Iterator[Row]:
    if long:
        return Streamed(asked, teller, criteria).rows(file, step)
    return whole_rows(asked, file, teller, [one for one, _ in criteria], step)


def _counted(rows: Iterable[Row], total: Sum) -> Iterator[Row]:
    for row in rows:
        total.add(row.found, row.taxon_given)
        yield row


def _pass_over(rows: Iterable[Row]) -> None:
    for _ in rows:
        pass


def _headings(criteria: Sequence[Criterion], *, with_next: bool) -> list[str]:
    return [*_FIXED, *(f"by {one.id}" for one in criteria), *([_NEXT] if with_next else [])]


def _as_csv(file: IO[str], rows: Iterable[Row], criteria: Sequence[Criterion], *, with_next: bool) -> None:
    """A line for each plant; no cell that a spreadsheet would run as a formula."""
    from auctorum.exchange.as_csv import neutral

    writer = csv.writer(file, lineterminator="\n")
    writer.writerow([neutral(one) for one in _headings(criteria, with_next=with_next)])
    for row in rows:
        found = row.found
        chances = (f"{found.probability:.4f}", f"{found.next_probability:.4f}") if found.taxon else ("", "")
        cells = [
            neutral(row.plant), neutral(row.given), found.name, found.wording, chances[0], found.next_best,
            chances[1] if found.next_best else "", found.used, "; ".join(found.misfits), *row.verdicts,
        ]  # fmt: skip
        if with_next:
            cells.append(row.ask or "")
        writer.writerow(cells)


def _to_file(out: Path, rows: Iterable[Row], criteria: Sequence[Criterion], *, with_next: bool) -> None:
    from auctorum.records.write import written

    with written(out) as file:
        _as_csv(file, rows, criteria, with_next=with_next)


def _as_table(asked: Setting, rows: Sequence[Row], criteria: Sequence[Criterion]) -> None:
    """A row for each plant; columns that would be empty are left out, names are short."""
    from auctorum.cli.layout import console, table
    from auctorum.cli.names_in_text import italiciser
    from auctorum.determination.criteria.words import title_of
    from auctorum.determination.model import Wording
    from auctorum.determination.wording import qualified

    if not rows:
        return
    names = {qualified(name, word) for name in asked.view.names.values() for word in Wording}
    italic = italiciser({*names, *(row.given for row in rows), *(row.found.name for row in rows)})
    columns: list[tuple[str, list[str]]] = [
        ("plant", [row.plant for row in rows]),
        ("named", [asked.view.names.get(row.taxon_given or "", row.given) for row in rows]),
        ("determined as", [row.found.name for row in rows]),
        ("prob.", [percent(row.found.probability) if row.found.taxon else "none" for row in rows]),
        ("next best", [_next_best(row) for row in rows]),
        *(
            (f"criterion {place + 1}" if len(criteria) > 1 else "criterion", [row.verdicts[place] for row in rows])
            for place in range(len(criteria))
        ),
        ("outside what is stated", [", ".join(row.found.misfits) for row in rows]),
        (_NEXT, [row.ask or "" for row in rows]),
    ]
    filled = [column for column in columns if any(column[1])]
    out = console()
    cells = zip(*(column for _, column in filled), strict=True)
    out.print(table([heading for heading, _ in filled], [tuple(map(italic, row)) for row in cells]))
    for place, one in enumerate(criteria):
        number = f"Criterion {place + 1}" if len(criteria) > 1 else "Criterion"
        out.print(f"{number}: {title_of(one)}.")


def _next_best(row: Row) -> str:
    found = row.found
    return f"{found.next_best}, {percent(found.next_probability)}" if found.next_probability >= LEAST else ""


def _as_json(asked: Setting, rows: Iterable[Row], criteria: Sequence[Criterion], total: Sum) -> None:
    """An object with a list of plants, a line for each as it is worked out, and the sum."""
    click.echo('{"plants": [', nl=False)
    for number, row in enumerate(rows):
        line = json.dumps(_data(row, criteria), ensure_ascii=False)
        click.echo(f"{',' if number else ''}\n  {line}", nl=False)
    click.echo('\n],\n"summary": ' + json.dumps(sum_data(asked, total), ensure_ascii=False) + "}")


def _data(row: Row, criteria: Sequence[Criterion]) -> dict[str, object]:
    found = row.found
    data: dict[str, object] = {
        "plant": row.plant,
        "named": row.given or None,
        "taxon_named": row.taxon_given,
        "name": found.name,
        "taxon": found.taxon,
        "wording": str(found.wording),
        "probability": round(found.probability, 6) if found.taxon else None,
        "next_best": found.next_best or None,
        "next_probability": round(found.next_probability, 6) if found.next_best else None,
        "characters_used": found.used,
        "misfits": list(found.misfits),
        "criteria": {one.id: verdict for one, verdict in zip(criteria, row.verdicts, strict=True)},
    }
    return data if row.ask is None else data | {"observe_next": row.ask or None}
