"""The graph of names drawn as SVG: types as bands, years across, arrows to what a name rests on.

Each name stands on its own line at its year; a solid arrow leads to its basionym, a dashed one to the name it
replaces; the words at the right say who sinks it into what.
"""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass
from xml.sax.saxutils import escape

from auctorum.corpus.model import Corpus
from auctorum.names.format import format_name, parts
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.graph import Edge, name_edges

LINE = 26  # px between names
LEFT, RIGHT, TOP = 30, 420, 58
YEARS_WIDTH = 760
LABEL_SPACE = 300  # px kept right of the last year for the name that stands there


@dataclass(frozen=True, slots=True)
class _Spot:
    x: float
    y: float


def draw_names(code: Code, group: str | None = None) -> str:
    """SVG of every published name, or of those on one type; a text is escaped, no size depends on fonts."""
    corpus = code.corpus
    groups = [group] if group else [one for one in corpus.groups if _years(corpus, one)]
    edges = [edge for edge in name_edges(code) if not group or group in _groups_of(corpus, edge)]
    years = [year for one in groups for year in _years(corpus, one).values()]
    first, last = min(years, default=1900), max(years, default=1901)
    spots: dict[str, _Spot] = {}
    body: list[str] = []
    y = TOP
    for one in groups:
        y += 10
        start = y
        for name, year in sorted(_years(corpus, one).items(), key=lambda pair: (pair[1], pair[0])):
            spots[name] = _Spot(LEFT + YEARS_WIDTH * (year - first) / max(1, last - first), y + LINE / 2)
            y += LINE
        body.append(_band(start, y))
    body += _axis(first, last, y)
    body += [_arrow(spots[start], spots[end], kind) for start, end, kind, _ in edges if _both(spots, start, end, kind)]
    sunk = Counter((start, end) for start, end, kind, _ in edges if kind == "synonym-of")
    for name, spot in spots.items():
        body += _label(corpus, name, spot, sunk)
    return _svg(corpus, body, LEFT + YEARS_WIDTH + LABEL_SPACE + RIGHT, y + 20)


def _years(corpus: Corpus, group: str) -> dict[str, int]:
    """Published names of a type with the year of the act that published them."""
    return {name: act.work.year for name in corpus.groups[group] if (act := corpus.publishing_act(name)) is not None}


def _groups_of(corpus: Corpus, edge: Edge) -> set[str]:
    return {corpus.names[edge[0]].group, corpus.names[edge[1]].group}


def _both(spots: dict[str, _Spot], start: str, end: str, kind: str) -> bool:
    return kind in ("basionym", "replaced") and start in spots and end in spots


def _band(top: float, bottom: float) -> str:
    width = YEARS_WIDTH + LABEL_SPACE + RIGHT
    return f'<rect class="band" x="{LEFT - 12}" y="{top:g}" width="{width}" height="{bottom - top:g}" rx="4"/>'


def _axis(first: int, last: int, bottom: float) -> list[str]:
    step = next(size for size in (1, 2, 5, 10, 20, 50, 100, 1000) if (last - first) / size <= 12)
    made = []
    for year in range(-(-first // step) * step, last + 1, step):
        x = LEFT + YEARS_WIDTH * (year - first) / max(1, last - first)
        made.append(f'<path class="tick" d="M{x:.1f} {TOP - 8}V{bottom:g}"/>')
        made.append(f'<text class="year" x="{x:.1f}" y="{TOP - 14}">{year}</text>')
    return made


def _arrow(start: _Spot, end: _Spot, kind: str) -> str:
    """From the name to the older one it rests on: back through the years, then up to it.

    Names stand right of their points and later ones below earlier ones, so that the way is free.
    """
    dash = ' stroke-dasharray="5 3"' if kind == "replaced" else ""
    tip = end.y + (7 if start.y > end.y else -7)
    way = f"M{start.x:.1f} {start.y:.1f}H{end.x:.1f}V{tip:.1f}"
    return f'<path class="arrow"{dash} d="{way}" marker-end="url(#tip)"/>'


def _label(corpus: Corpus, name: str, spot: _Spot, sunk: Counter[tuple[str, str]]) -> list[str]:
    runs = "".join(
        f"<tspan{_LATIN if latin else ''}>{escape(text)}</tspan>" for text, latin in parts(corpus.names[name].name)
    )
    made = [
        f'<circle class="name" cx="{spot.x:.1f}" cy="{spot.y:.1f}" r="4"/>',
        f'<text x="{spot.x + 9:.1f}" y="{spot.y + 4:.1f}" xml:space="preserve">{runs}</text>',
    ]
    into = [
        f"{_short(corpus, end)}{f' ({count} works)' if count > 1 else ''}"
        for (start, end), count in sorted(sunk.items())
        if start == name
    ]
    if into:
        x = LEFT + YEARS_WIDTH + LABEL_SPACE
        made.append(f'<text class="sunk" x="{x}" y="{spot.y + 4:.1f}">sunk into {escape("; ".join(into))}</text>')
    return made


def _short(corpus: Corpus, name: str) -> str:
    """The name with its genus cut to the initial."""
    genus, _, rest = format_name(corpus.names[name].name, authors=False).partition(" ")
    return f"{genus[:1]}. {rest}" if rest else genus


_LATIN = ' class="latin"'
_STYLE = (
    "text{font:13px Georgia,serif;fill:#222}.latin{font-style:italic}.year{font-size:11px;text-anchor:middle;fill:#555}"
    ".sunk{font-size:11px;fill:#555}.band{fill:#f3f1ea}.tick{stroke:#ddd;fill:none}"
    ".arrow{stroke:#444;fill:none;stroke-width:1.4}.name{fill:#222}"
)
_TIP = (
    '<defs><marker id="tip" viewBox="0 0 8 8" refX="7" refY="4" markerWidth="7" markerHeight="7" orient="auto">'
    '<path d="M0 0L8 4L0 8z" fill="#444"/></marker></defs>'
)


def _svg(corpus: Corpus, body: list[str], width: float, height: float) -> str:
    title = escape(corpus.settings.title)
    notice = escape(corpus.settings.notice)
    return "\n".join(
        [
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {width:g} {height:g}" role="img">',
            f"<title>Names of {title}</title>",
            "<desc>Names by year, in bands of one type each; an arrow leads to the basionym (solid) or the replaced "
            f"name (dashed). {notice}</desc>",
            f"<style>{_STYLE}</style>{_TIP}",
            f'<rect width="100%" height="100%" fill="#fff"/><text x="{LEFT}" y="22">{title}. {notice}</text>',
            *body,
            "</svg>",
            "",
        ]
    )
