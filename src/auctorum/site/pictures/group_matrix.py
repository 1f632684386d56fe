"""The group matrix: a whole group at a glance, characters down, taxa across, in each cell the verdict and its weight.

It is a table of HTML and no drawing: each cell is read out with its taxon and its character, can be a link to the
finding, can be searched for and copied, and heads stay in sight while it scrolls in its box on a telephone. The sign
is the verdict, the figure how many works say something of their own, the ground darker with more of them. A dot is
silence; a cell that is left blank was never asked for, as when no account of the taxon is known.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import groupby
from xml.sax.saxutils import escape, quoteattr

from auctorum.site.words import Rich, counted

SILENT = "silent"
SILENCE = "nobody says anything"
SHADES = (1, 2, 4, 7)  # so many works of their own give the first, second, third and fourth ground


@dataclass(frozen=True, slots=True)
class Cell:
    """One character of one taxon: the verdict and how many works say something of their own; `href` from the root."""

    verdict: str
    independent: int
    href: str = ""


@dataclass(frozen=True, slots=True)
class Row:
    """One character at one stage, with a cell for each taxon in their order; None where there is nothing to ask."""

    character: Rich
    stage: str
    cells: tuple[Cell | None, ...]


@dataclass(frozen=True, slots=True)
class GroupMatrix:
    """A whole matrix. `signs` are the verdicts in the order of the key, each with its sign and what it means."""

    title: str
    description: str
    taxa: tuple[Rich, ...]
    rows: tuple[Row, ...]
    signs: tuple[tuple[str, str, str], ...]


def group_matrix(matrix: GroupMatrix, key: str, root: str = "") -> str:
    """`matrix` as HTML; `key` makes its ids unique on a page, `root` leads from the page to the root of the site."""
    signs = {verdict: sign for verdict, sign, _ in matrix.signs}
    title, about = quoteattr(f"{key}-title"), quoteattr(f"{key}-about")
    heads = "".join(f'<th scope="col"><span>{_rich(taxon, root)}</span></th>' for taxon in matrix.taxa)
    body = "\n".join(_row(matrix, row, signs, root) for row in matrix.rows)
    return (
        f'<div class="matrix">\n<div class="matrix-box" role="region" tabindex="0" aria-labelledby={title}>\n'
        f"<table aria-describedby={about}>"
        f"<caption id={title}>{escape(matrix.title)}</caption>\n"
        f'<thead><tr><td class="corner"></td>{heads}</tr></thead>\n<tbody>\n{body}\n</tbody></table>\n</div>\n'
        f'<p class="unseen" id={about}>{escape(matrix.description)}</p>\n{_key(matrix)}\n</div>'
    )


def _row(matrix: GroupMatrix, row: Row, signs: dict[str, str], root: str) -> str:
    stage = f' <span class="stage">({escape(row.stage)})</span>' if row.stage else ""
    cells = "".join(_cell(cell, signs, root) for cell, _ in zip(row.cells, matrix.taxa, strict=True))
    return f'<tr><th scope="row">{_rich(row.character, root)}{stage}</th>{cells}</tr>'


def _cell(cell: Cell | None, signs: dict[str, str], root: str) -> str:
    if cell is None:
        return '<td class="none"></td>'
    if is_silent(cell):
        seen, heard, kind = '<span class="dot" aria-hidden="true">·</span>', SILENCE, SILENT
    else:
        look = quoteattr(f"sign {_look(cell.verdict)}")
        sign = f'<span class={look} aria-hidden="true">{escape(signs.get(cell.verdict, "?"))}</span>'
        seen = f'{sign}<span class="own" aria-hidden="true">{cell.independent}</span>'
        heard = f"{cell.verdict}, {counted(cell.independent, 'independent work')}"
        kind = f"ground{shade(cell.independent)}"
    inside = f'{seen}<span class="unseen">{escape(heard)}</span>'
    if cell.href:
        inside = f"<a href={quoteattr(root + cell.href)} title={quoteattr(heard)}>{inside}</a>"
    return f"<td class={quoteattr(kind)}>{inside}</td>"


def is_silent(cell: Cell) -> bool:
    """Whether nobody says anything."""
    return cell.verdict == SILENT or cell.independent == 0


def shade(independent: int) -> int:
    """The ground of a cell by how many works say something of their own, 0 (none) to 4.

    >>> [shade(count) for count in (0, 1, 3, 4, 12)]
    [0, 1, 2, 3, 4]
    """
    return sum(independent >= least for least in SHADES)


def _look(verdict: str) -> str:
    """The class of a sign: the first word of its verdict, if it is a word of letters."""
    first = verdict.split(" ")[0]
    return first if first.isalpha() else "other"


def _key(matrix: GroupMatrix) -> str:
    """The signs that this matrix has, with what they mean, and the rest of what is to be seen."""
    cells = [cell for row in matrix.rows for cell in row.cells if cell is not None]
    used = {cell.verdict for cell in cells if not is_silent(cell)}
    lines = [
        f'<li><span class={quoteattr(f"sign {_look(verdict)}")} aria-hidden="true">{escape(sign)}</span>'
        f"{escape(verdict)}</li>"
        for verdict, sign, _ in matrix.signs
        if verdict in used
    ]
    if used:
        lines.append('<li><span class="own" aria-hidden="true">3</span> works with something of their own to say</li>')
    if any(map(is_silent, cells)):
        lines.append(f'<li><span class="dot" aria-hidden="true">·</span> {SILENCE}</li>')
    if len(cells) < len(matrix.rows) * len(matrix.taxa):
        lines.append("<li>blank: not asked</li>")
    return f'<ul class="key">{"".join(lines)}</ul>'


def _rich(rich: Rich, root: str) -> str:
    """Runs as HTML, escaped; neighbours with one address are one link."""
    found = []
    for href, same in groupby(rich, key=lambda run: run.href):
        words = "".join(f"<i>{escape(run.text)}</i>" if run.italic else escape(run.text) for run in same)
        found.append(f"<a href={quoteattr(root + href)}>{words}</a>" if href else words)
    return "".join(found)
