"""A field sheet as one HTML page for the printer, black on white: no script, no colour, no request to any host."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from html import escape

from auctorum.circumscription.key.words import Runs
from auctorum.determination.sheet.sheet import Column, Item, Sheet
from auctorum.exchange.as_csv import as_csv
from auctorum.exchange.document import Run, Table, text
from auctorum.exchange.scale_bar import WIDTH_MM, scale_bar
from auctorum.exchange.sheet_layout import (
    BESIDE,
    GAP,
    LEADING,
    MARGIN,
    PAD,
    ROW,
    SIZE,
    SMALL,
    TITLE_SIZE,
    Layout,
    plain,
)
from auctorum.exchange.sheet_words import (
    CHECK_SCALE,
    FILL_IN,
    LIMITS,
    TAKE_CARE,
    best_first,
    character_words,
    how_to_measure,
    notes,
    said_of,
    small_print,
    thresholds,
    title,
)

_STYLE = f"""\
* {{ box-sizing: border-box; }}
html {{ background: #fff; color: #000; }}
body {{ margin: 0 auto; font: {SIZE}pt/{LEADING} Arial, Helvetica, "Liberation Sans", sans-serif; color: #000; }}
main {{ display: flex; flex-direction: column; gap: {GAP}mm; overflow-wrap: break-word; }}
h1 {{ font-size: {TITLE_SIZE}pt; line-height: {LEADING}; margin: 0; }}
header {{ display: flex; justify-content: space-between; gap: 4mm; }}
header p {{ white-space: nowrap; }}
p {{ margin: 0; }}
.notes p + p {{ margin-top: .5mm; }}
table {{ border-collapse: collapse; table-layout: fixed; width: 100%; }}
caption {{ position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }}
th, td {{ border: .2mm solid #000; padding: .3mm {PAD}mm; text-align: left; vertical-align: top; font-weight: 400; }}
thead th {{ vertical-align: bottom; }}
thead th, tbody th b {{ font-weight: 700; }}
thead th span {{ display: block; font-weight: 400; }}
.limits b {{ border: .3mm solid #000; padding: 0 .5mm; }}
.form tbody td {{ height: {ROW}mm; padding: 0; }}
.plants {{ flex: 1; }}
.bar {{ float: left; width: {WIDTH_MM}mm; margin-right: {BESIDE}mm; }}
.scale {{ display: block; font-family: inherit; }}
.small {{ font-size: {SMALL}pt; }}
@media screen {{ body {{ padding: {MARGIN}mm; }} }}
"""


def as_html(layout: Layout) -> str:
    """The whole page; ends in a line feed."""
    sheet = layout.sheet
    columns = sheet.columns
    return "\n".join(
        [
            "<!DOCTYPE html>",
            '<html lang="en">',
            "<head>",
            '<meta charset="utf-8">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            f"<title>{_said(plain(title(sheet)))}</title>",
            f"<style>\n{_STYLE}{_page_style(layout)}</style>",
            "</head>",
            "<body>",
            "<main>",
            f"<header><h1>{_html(title(sheet))}</h1><p>Sheet ____ of ____</p></header>",
            *_guide(layout),
            *_words(sheet),
            *_form("once", "Once for the sheet", [one for one in columns if one.once], layout.once, 1),
            *_form(
                "plants", "A row for each plant", [one for one in columns if not one.once], layout.plants, layout.rows
            ),
            *_foot(layout),
            "</main>",
            "</body>",
            "</html>\n",
        ]
    )


def table_csv(sheet: Sheet) -> str:
    """The table to type into: its headings alone, as CSV (RFC 4180)."""
    return as_csv(Table(caption=(), headings=tuple(text(one.heading) for one in sheet.columns), rows=()))


def _page_style(layout: Layout) -> str:
    width, height = layout.page
    return (
        f"@page {{ size: {width:g}mm {height:g}mm; margin: {MARGIN:g}mm; }}\n"
        f"main {{ width: {layout.width:g}mm; min-height: {layout.height - 0.3:g}mm; }}\n"
        f"@media screen {{ body {{ width: {width:g}mm; }} }}\n"
    )


def _guide(layout: Layout) -> Iterator[str]:
    """What to measure, what each taxon shows, where they part."""
    sheet = layout.sheet
    beside = len(layout.guide) > len(sheet.taxa) + 1
    yield '<table class="guide"><caption>Characters</caption>'
    yield _widths(layout.guide)
    names = "".join(f'<th scope="col">{_html(sheet.short[taxon])}</th>' for taxon in sheet.taxa)
    last = f'<th scope="col">{LIMITS}</th>' if beside else ""
    yield f'<thead><tr><th scope="col">{best_first(beside=beside)}</th>{names}{last}</tr></thead><tbody>'
    yield from (_row(item, sheet, beside) for item in sheet.items)
    yield "</tbody></table>"


def _row(item: Item, sheet: Sheet, beside: bool) -> str:
    """One character; its thresholds beside what the taxa show, or in a row below."""
    name, states = character_words(item)
    said = "".join(f"<td>{_said(said_of(item, number))}</td>" for number in range(len(sheet.taxa)))
    limits = [_limit(one) for one in thresholds(item, sheet)]
    below = "; ".join(limits) if not beside else ""
    rows = ' rowspan="2"' if below else ""
    head = f'<th scope="row"{rows}><b>{_said(name)}</b> {_said(states)}</th>'
    if beside:
        said += f'<td class="limits">{"".join(f"<p>{one}</p>" for one in limits)}</td>'
    second = f'<tr><td class="limits" colspan="{len(sheet.taxa)}">{below}</td></tr>' if below else ""
    return f"<tr>{head}{said}</tr>{second}"


def _limit(runs: Runs) -> str:
    """A threshold; what decides stands in a frame."""
    return f"<b>{_html(runs)}</b>" if "DECIDES" in plain(runs) else _html(runs)


def _words(sheet: Sheet) -> Iterator[str]:
    """How to measure, then the notes; nothing where there are none."""
    if how := how_to_measure(sheet):
        yield f"<p>{' '.join(f'<b>{_said(name)}</b> {_said(words)}' for name, words in how)}</p>"
    if told := [f"<p>{_html(one)}</p>" for one in notes(sheet)]:
        yield f'<section class="notes">{"".join(told)}</section>'


def _form(name: str, caption: str, columns: Sequence[Column], widths: Iterable[float], rows: int) -> Iterator[str]:
    """A table to write in, headed as tables are read."""
    yield f'<table class="form {name}"><caption>{caption}</caption>'
    yield _widths(widths)
    yield f"<thead><tr>{''.join(map(_heading, columns))}</tr></thead><tbody>"
    yield from [f"<tr>{'<td></td>' * len(columns)}</tr>"] * rows
    yield "</tbody></table>"


def _heading(column: Column) -> str:
    hint = f"<span>{_said(column.hint)}</span>" if column.hint else ""
    return f'<th scope="col">{_said(column.heading)}{hint}</th>'


def _widths(widths: Iterable[float]) -> str:
    columns = "".join(f'<col style="width:{one:.2f}mm">' for one in widths)
    return f"<colgroup>{columns}</colgroup>"


def _foot(layout: Layout) -> Iterator[str]:
    """The scale bar, how to fill in, the cautions; below, what nobody has to read outdoors."""
    yield f'<footer><div class="bar">{scale_bar()}<p>{CHECK_SCALE}</p></div>'
    yield f"<p>{_said(FILL_IN)}</p>"
    yield f"<p><b>{TAKE_CARE}</b> {_said(' '.join(layout.sheet.cautions))}</p></footer>"
    if said := small_print(layout.sheet):
        yield f'<p class="small">{_said(said)}</p>'


def _html(runs: Runs) -> str:
    return "".join(f"<i>{_said(words)}</i>" if latin else _said(words) for words, latin in runs)


def _said(words: str) -> str:
    """Words escaped, without control characters and marks that turn the direction of what follows."""
    return escape(Run(words).text)
