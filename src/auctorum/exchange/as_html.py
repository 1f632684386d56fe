"""A document as one HTML page that stands alone: its style inside, no script, no request to any host.

It follows the reader's choice of a dark screen, keeps wide tables in a box of their own, and prints in black.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import singledispatch
from html import escape

from auctorum.exchange.document import (
    Block,
    Document,
    Heading,
    Items,
    Paragraph,
    Sources,
    Table,
    Text,
    is_unbroken,
    joined,
    words,
)

_STYLE = """\
:root { color-scheme: light dark; --paper: #fbfaf6; --ink: #20262a; --soft: #566067; --line: #c9cdc4;
  --band: #f1f1ea; --head: #23504a; }
@media (prefers-color-scheme: dark) { :root { --paper: #15191a; --ink: #e3e6e0; --soft: #a7b0ae; --line: #414a4b;
  --band: #1d2324; --head: #9ccfc3; } }
* { box-sizing: border-box; }
body { margin: 0 auto; max-width: 76rem; padding: 1.5rem clamp(1rem, 4vw, 3rem) 3rem; background: var(--paper);
  color: var(--ink); font: 1.0625rem/1.55 Charter, "Iowan Old Style", "Palatino Linotype", Cambria, Georgia, serif;
  overflow-wrap: break-word; }
h1 { font-size: clamp(1.5rem, 1.1rem + 1.9vw, 2.2rem); line-height: 1.2; font-weight: 400; margin: 0 0 1rem; }
h2 { font-size: 1.2rem; color: var(--head); margin: 2.2rem 0 .6rem; }
h3 { font-size: 1.05rem; margin: 1.6rem 0 .4rem; }
h2, h3, caption { break-after: avoid; }
p, ul, ol { max-width: 44rem; }
.aside, caption { color: var(--soft); font-size: .94rem; }
.box { overflow-x: auto; margin: 1rem 0 1.4rem; }
.box:focus-visible { outline: 2px solid var(--head); outline-offset: 2px; }
table { border-collapse: collapse; font-size: .94rem; line-height: 1.35; width: 100%; }
caption { text-align: left; padding: 0 0 .5rem; max-width: min(44rem, calc(100vw - 2.2rem)); }
th, td { text-align: left; vertical-align: top; padding: .38rem .9rem .38rem 0; min-width: 5.6rem;
  border-bottom: 1px solid var(--line); font-variant-numeric: lining-nums tabular-nums; }
thead th { vertical-align: bottom; border-bottom: 2px solid var(--head); }
tbody th { font-weight: 600; min-width: 7rem; }
tbody tr:nth-child(even) > * { background: var(--band); }
th:first-child, td:first-child { padding-left: .5rem; }
.figure { white-space: nowrap; min-width: 0; } tbody th.figure { min-width: 0; }
.right { text-align: right; min-width: 0; }
ol { padding-left: 2.2rem; } li { margin: .2rem 0; }
@media (max-width: 40rem) { table { font-size: .88rem; } th, td { padding-right: .7rem; }
  tbody th { min-width: 5.5rem; } }
@media print { :root { --paper: #fff; --ink: #000; --soft: #333; --line: #999; --band: #fff; --head: #000; }
  body { max-width: none; padding: 0; font-size: 10pt; } .box { overflow: visible; } table { font-size: 8.5pt; }
  th, td { min-width: 0; padding-right: .5rem; } tbody th { min-width: 0; } tr, li { break-inside: avoid; }
  thead { display: table-header-group; } @page { margin: 15mm; } }
"""


def as_html(document: Document) -> str:
    """The whole page, from the doctype on."""
    title = escape(words(document.title))
    return "\n".join(
        [
            "<!doctype html>",
            f'<html lang="{escape(document.lang)}">',
            "<head>",
            '<meta charset="utf-8">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            f"<title>{title}</title>",
            f"<style>\n{_STYLE}</style>",
            "</head>",
            "<body>",
            "<main>",
            f"<h1>{_inline(document.title)}</h1>",
            *(_block(block) for block in document.blocks),
            "</main>",
            "</body>",
            "</html>",
            "",
        ]
    )


@singledispatch
def _block(block: Block) -> str:
    raise TypeError(type(block))


@_block.register
def _(block: Heading) -> str:
    return f"<h{block.level + 1}>{_inline(block.text)}</h{block.level + 1}>"


@_block.register
def _(block: Paragraph) -> str:
    return f"<p{_ASIDE if block.aside else ''}>{_inline(block.text)}</p>"


@_block.register
def _(block: Items) -> str:
    return _listed("ul", block.texts)


@_block.register
def _(block: Sources) -> str:
    return _listed("ol", block.entries)


@_block.register
def _(block: Table) -> str:
    caption = words(block.caption)
    head = "".join(_cell("th", cell, number in block.right, "col") for number, cell in enumerate(block.headings))
    return "\n".join(
        [
            '<div class="box" role="region" tabindex="0" aria-label="Table, scrolls sideways">',
            "<table>",
            *([f"<caption>{_inline(block.caption)}</caption>"] if caption else []),
            f"<thead><tr>{head}</tr></thead>",
            "<tbody>",
            *(_row(row, block.right) for row in block.rows),
            "</tbody>",
            "</table>",
            "</div>",
        ]
    )


_ASIDE = ' class="aside"'


def _listed(tag: str, texts: Sequence[Text]) -> str:
    items = "\n".join(f"<li>{_inline(text)}</li>" for text in texts)
    return f"<{tag}>\n{items}\n</{tag}>"


def _row(row: Sequence[Text], right: Sequence[int]) -> str:
    cells = [
        _cell("td" if number else "th", cell, number in right, "" if number else "row")
        for number, cell in enumerate(row)
    ]
    return f"<tr>{''.join(cells)}</tr>"


def _cell(tag: str, cell: Text, right: bool, scope: str) -> str:
    scoped = f' scope="{scope}"' if scope else ""
    named = " ".join(filter(None, ["right" if right else "", "figure" if is_unbroken(cell) else ""]))
    classed = f' class="{named}"' if named else ""
    return f"<{tag}{scoped}{classed}>{_inline(cell)}</{tag}>"


# A range or a row of source marks: (18–)22–34(–41), [1–3,5]
_RANGE = re.compile(r"(?<![^ ])(?=[^ ]*\d)(?=[^ ]*–)[^ ]{3,24}(?![^ ])")
_SPAN = r'<span class="figure">\g<0></span>'


def _inline(of: Text) -> str:
    """Runs with their italics; figures that a line must not part stand in spans."""
    runs = ((_RANGE.sub(_SPAN, escape(run.text)), run.italic) for run in joined(of))
    return "".join(f"<i>{said}</i>" if italic else said for said, italic in runs).strip(" ")
