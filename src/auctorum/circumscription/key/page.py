"""A key as a web page of its own: no script, nothing fetched, every number a link."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from html import escape

from auctorum.circumscription.key.model import Couplet, Lead
from auctorum.circumscription.key.words import Page, Runs, below, end, notes, statement, title
from auctorum.names.typeset import html

_STYLE = """\
:root { color-scheme: light dark; --ink: #1d211c; --paper: #fdfcf8; --soft: #5b6158; --line: #c9c9bd;
  --link: #1c5c3a; --lit: #f3edc6; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e6e6dd; --paper: #181b17; --soft: #a6ab9f; --line: #454a42; --link: #93cfa6; --lit: #3a3a1f; }
}
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.25rem 1rem 3rem; max-width: 46rem; background: var(--paper); color: var(--ink);
  font: 1rem/1.5 Georgia, "Times New Roman", serif; overflow-wrap: break-word; }
h1 { font-size: 1.35rem; line-height: 1.3; margin: 0 0 1.25rem; font-weight: 600; }
h2 { font-size: 1.05rem; margin: 2rem 0 .5rem; }
ol.key { list-style: none; margin: 0; padding: 0; }
.couplet { padding: .5rem .6rem; border-top: 1px solid var(--line); scroll-margin-top: 1rem; }
.couplet:last-child { border-bottom: 1px solid var(--line); }
.couplet:target { background: var(--lit); }
.lead { display: grid; grid-template-columns: 3.2rem 1fr; margin: .2rem 0; }
.said { display: flex; flex-wrap: wrap; align-items: baseline; }
.said::after { content: none; }
.dots { flex: 1 1 1.5rem; min-width: 1.5rem; margin: 0 .4rem; border-bottom: 2px dotted var(--line); }
.to { margin-left: auto; text-align: right; }
.number { font-weight: 600; }
.number a { font-weight: 400; }
a { color: var(--link); padding: .1rem .25rem; }
a:focus-visible { outline: 3px solid var(--link); outline-offset: 1px; }
.below, .notes { color: var(--soft); font-size: .95rem; }
@media print { body { max-width: none; padding: 0; } .couplet { break-inside: avoid; } a { color: inherit; } }
"""


def as_html(told: Page) -> str:
    """The whole page; ends in a line feed."""
    heading = html(title(told))
    plain = escape("".join(text for text, _ in title(told)))
    return "\n".join(
        [
            "<!DOCTYPE html>",
            '<html lang="en">',
            "<head>",
            '<meta charset="utf-8">',
            '<meta name="viewport" content="width=device-width, initial-scale=1">',
            f"<title>{plain}</title>",
            f"<style>\n{_STYLE}</style>",
            "</head>",
            "<body>",
            "<main>",
            f"<h1>{heading}</h1>",
            *_couplets(told),
            *_paragraphs("notes", notes(told)),
            *_paragraphs("below", below(told)),
            *_cautions(told.cautions),
            "</main>",
            "</body>",
            "</html>\n",
        ]
    )


def _couplets(told: Page) -> Iterator[str]:
    if told.key.couplets:
        yield '<ol class="key">'
        for couplet in told.key.couplets:
            yield f'<li class="couplet" id="couplet-{couplet.number}">'
            yield from (_lead(mark, lead, told) for mark, lead in zip(_marks(couplet), couplet.leads, strict=True))
            yield "</li>"
        yield "</ol>"


def _marks(couplet: Couplet) -> tuple[str, str]:
    """What stands before the two leads; the number of the couplet links back to the one that led to it."""
    back = ""
    if couplet.came_from is not None:
        back = f'<a href="#couplet-{couplet.came_from}" aria-label="back to couplet {couplet.came_from}">'
        back = f"{back}({couplet.came_from})</a>"
    return f"{couplet.number}{back}", "–"


def _lead(mark: str, lead: Lead, told: Page) -> str:
    if lead.goes_to is not None:
        to = f'<a href="#couplet-{lead.goes_to}" aria-label="go to couplet {lead.goes_to}">{lead.goes_to}</a>'
    else:
        to = html(end(lead, told))
    said = f'{escape(statement(lead))}<span class="dots"></span><span class="to">{to}</span>'
    return f'<div class="lead"><span class="number">{mark}</span><span class="said">{said}</span></div>'


def _paragraphs(what: str, several: Iterable[Runs]) -> list[str]:
    made = [f"<p>{html(runs)}</p>" for runs in several]
    return [f'<section class="{what}">', *made, "</section>"] if made else []


def _cautions(cautions: Iterable[str]) -> list[str]:
    made = [f"<li>{escape(caution)}</li>" for caution in cautions]
    return ["<h2>Cautions</h2>", "<ul>", *made, "</ul>"] if made else []
