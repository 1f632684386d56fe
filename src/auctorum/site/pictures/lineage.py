"""Who repeats whom: works by year, and a line from each later work to the earlier one whose figures it repeats.

Works go down by date, each further to the right than the one before, so that the place right of a mark is free for its
words, whatever lines there are. A line leaves a later work to the left and climbs to the earlier one; it is unbroken
where the later work is said to follow the earlier, broken where their figures show it. A work that repeats nobody is a
full disc, one that repeats in part half a disc, one that tells the same wherever both tell something an empty ring.
Wide, the years run across; narrow, works move aside only for the lines of those that are repeated.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from xml.sax.saxutils import escape

from auctorum.site.pictures import svg
from auctorum.site.pictures.scale import Scale, scale, tick_label

WIDE, NARROW = 880.0, 340.0
FULL, HALF, EMPTY = "own", "partly", "repeats"
_MEANING = {FULL: "repeats nobody", HALF: "repeats in part", EMPTY: "repeats all that both tell"}
_LINES = {True: "said to follow the earlier work", False: "found: knew the earlier work, tells mostly the same"}
_GAP = 12.0  # from the middle of a mark to its words

Line = tuple[str, str, bool, int, int]  # later, earlier, declared, equal, shared


@dataclass(frozen=True, slots=True)
class Lineage:
    """A whole picture. `works` are (id, label, year), `lines` (later, earlier, declared, equal, shared): of `shared`
    characters that both tell, `equal` are told alike. Lines that lead to no earlier work of the picture are left out.
    """

    title: str
    description: str
    works: tuple[tuple[str, str, int], ...]
    lines: tuple[Line, ...] = ()


@dataclass(frozen=True, slots=True)
class _Row:
    """A work with its place; `levels` are the lines that leave it, from top to bottom, each with its height."""

    id: str
    label: str
    x: float
    y: float
    levels: tuple[tuple[float, Line], ...]


def lineage_picture(lineage: Lineage, key: str, narrow: bool = False) -> str:
    """`lineage` as SVG; `key` makes its ids unique on a page, `narrow` suits a telephone."""
    works = sorted(lineage.works, key=lambda work: work[2])
    lines = _by_later(works, lineage.lines)
    width = NARROW if narrow else WIDE
    axis = _axis(works, lines) if not narrow else None
    places = _by_year(works, axis) if axis else _by_source(works, lines)
    row, more, top = (27.0, 18.0, 4.0) if narrow else (25.0, 19.0, 26.0)
    rows, y = [], top
    for (id_, label, year), x in zip(works, places, strict=True):
        mine = lines.get(id_, ())
        y += row + more * max(len(mine) - 1, 0)
        levels = tuple((y - more * (len(mine) - 1 - index), line) for index, line in enumerate(mine))
        rows.append(_Row(id_, _dated(label, year), x, y - 8, tuple((level - 8, line) for level, line in levels)))
    foot = y + 6
    radius = 5.5 if not narrow or _pitch(lines) >= 10 else 4.0
    body = [*_years(axis, top, foot)] if axis else []
    body += [*_routes(rows, radius)]
    for each in rows:
        body += [*_mark(_kind(each.levels), each.x, each.y, radius), *_words(each, rows, width, narrow)]
    height = foot + (20 if axis else 2)
    return svg.picture(key, (width, height), lineage.title, lineage.description, body, "lineage")


def explanation(lineage: Lineage) -> tuple[tuple[str, str], ...]:
    """Samples of the marks and lines that this picture has, with what they mean, for the key below it."""
    lines = _by_later(sorted(lineage.works, key=lambda work: work[2]), lineage.lines)
    kinds = {_kind(tuple((0.0, line) for line in lines.get(id_, ()))) for id_, *_ in lineage.works}
    declared = {line[2] for several in lines.values() for line in several}
    marks = [(_sample(_mark(kind, 9, 9, 5.5)), words) for kind, words in _MEANING.items() if kind in kinds]
    drawn = {kind: iter((svg.line(1, 9, 27, 9, _route(kind)),)) for kind in (True, False)}
    return (*marks, *((_sample(drawn[kind], 28), words) for kind, words in _LINES.items() if kind in declared))


def _sample(body: Iterator[str], wide: float = 18.0) -> str:
    box = f"0 0 {svg.number(wide)} 18"
    return svg.element("svg", "".join(body), class_="sample", viewBox=box, width=wide, height=18.0, aria_hidden="true")


def _dated(label: str, year: int) -> str:
    return label if str(year) in label else f"{label} {year}"


def _by_later(works: list[tuple[str, str, int]], lines: tuple[Line, ...]) -> dict[str, tuple[Line, ...]]:
    """The lines that leave each work, that to the latest source first: so a line meets no end of another."""
    order = {id_: index for index, (id_, *_) in enumerate(works)}
    found: dict[str, list[Line]] = defaultdict(list)
    for line in lines:
        if line[0] in order and line[1] in order and order[line[1]] < order[line[0]]:
            found[line[0]].append(line)
    return {id_: tuple(sorted(mine, key=lambda line: -order[line[1]])) for id_, mine in found.items()}


def _kind(levels: tuple[tuple[float, Line], ...]) -> str:
    if not levels:
        return FULL
    return EMPTY if any(equal == shared for _, (*_, equal, shared) in levels) else HALF


def _count(line: Line) -> str:
    return f"{line[3]} of {line[4]}"


def _axis(works: list[tuple[str, str, int]], lines: dict[str, tuple[Line, ...]]) -> Scale:
    """The years, with room at the right for the longest words."""
    label = {id_: _dated(words, year) for id_, words, year in works}
    wide = [svg.width_of(each) for each in label.values()]
    said = [
        svg.width_of(label[later]) + svg.width_of(f"  {_count(line)} as {label[line[1]]}")
        for later, several in lines.items() for line in several
    ]  # fmt: skip
    end = max(WIDE - max([*wide, *said, 0]) - _GAP - 14, 330.0)
    return scale([year for *_, year in works], 24, end, 7 if end > 500 else 5, whole=True)


def _by_year(works: list[tuple[str, str, int]], axis: Scale) -> list[float]:
    """Each work at its year, moved aside as little as keeps every one to the right of the one before."""
    room = min(14.0, (axis.end - axis.start) / max(len(works) - 1, 1))
    places: list[float] = []
    for *_, year in works:
        places.append(max(axis.at(year), places[-1] + room if places else axis.start))
    limit = axis.end
    for index in reversed(range(len(places))):
        places[index] = min(places[index], limit)
        limit = places[index] - room
    return places


def _pitch(lines: dict[str, tuple[Line, ...]]) -> float:
    sources = {line[1] for several in lines.values() for line in several}
    return min(18.0, 126 / max(len(sources), 1))


def _by_source(works: list[tuple[str, str, int]], lines: dict[str, tuple[Line, ...]]) -> list[float]:
    """Each work one column further right for each earlier one that is repeated, whose line comes down there."""
    sources = {line[1] for several in lines.values() for line in several}
    pitch, before = _pitch(lines), 0
    places: list[float] = []
    for id_, *_ in works:
        places.append(10 + pitch * before)
        before += id_ in sources
    return places


def _years(axis: Scale, top: float, foot: float) -> Iterator[str]:
    for tick in axis.ticks():
        x = axis.at(tick)
        yield svg.line(x, top - 4, x, foot, "grid")
        yield svg.words(x, top - 10, tick_label(tick), "tick", "middle", 11.5)
        yield svg.words(x, foot + 15, tick_label(tick), "tick", "middle", 11.5)


def _route(declared: bool) -> str:
    return "route declared" if declared else "route found"


def _routes(rows: list[_Row], radius: float) -> Iterator[str]:
    """One upright for all that repeat a work in the same way, with its arrow head; from it the way to each of them."""
    place = {row.id: row for row in rows}
    reach: dict[tuple[str, bool], float] = {}
    for row in rows:
        for y, (_, earlier, declared, *_) in row.levels:
            reach[earlier, declared] = y  # rows go down, so the last is the lowest

    def upright(earlier: str, declared: bool) -> float:
        both = (earlier, True) in reach and (earlier, False) in reach
        return place[earlier].x + ((-3.0 if declared else 3.0) if both else 0.0)

    for (earlier, declared), y in reach.items():
        x, tip = upright(earlier, declared), place[earlier].y + radius + 1.5
        yield svg.line(x, tip + 6, x, y, _route(declared))
        head = f"M{svg.number(x)} {svg.number(tip)}l-3.5 7h7Z"
        yield svg.element("path", d=head, class_="head")
    for row in rows:
        for y, (_, earlier, declared, *_) in row.levels:
            x = upright(earlier, declared)
            yield svg.line(x + 4, y, row.x, y, "gap")  # the lines that it crosses are broken there
            yield svg.line(x, y, row.x, y, _route(declared))
        if len(row.levels) > 1:
            declared = any(line[2] for _, line in row.levels[:-1])
            yield svg.line(row.x, row.levels[0][0], row.x, row.y, _route(declared))


def _mark(kind: str, x: float, y: float, radius: float) -> Iterator[str]:
    yield svg.element("circle", cx=x, cy=y, r=radius, class_="mark solid" if kind == FULL else "mark open")
    if kind == HALF:
        r = svg.number(radius)
        left = f"{svg.number(x - radius)} {svg.number(y)}"
        yield svg.element("path", d=f"M{left}a{r} {r} 0 0 0 {svg.number(2 * radius)} 0Z", class_="head")


def _words(row: _Row, rows: list[_Row], width: float, narrow: bool) -> Iterator[str]:
    """The work beside its mark, and how much it repeats beside each line that leaves it."""
    name = {each.id: each.label for each in rows}
    x, room = row.x + _GAP, width - row.x - _GAP - 4
    for y, line in row.levels[:-1]:
        said = _count(line) if narrow else f"{_count(line)} as {name[line[1]]}"
        yield svg.words(x, y + 4.5, svg.shortened(said, room), "says")
    said = ""
    if row.levels:
        last = row.levels[-1][1]
        said = _count(last) if narrow else f"{_count(last)} as {name[last[1]]}"
    kept = min(svg.width_of(said), room / 2) + 10 if said else 0
    label = svg.shortened(row.label, room - kept)
    if not said:
        yield svg.words(x, row.y + 4.5, label, "who")
        return
    said = svg.shortened(said, room - svg.width_of(label) - 10)
    yield _two(x, row.y + 4.5, label, said)


def _two(x: float, y: float, label: str, said: str) -> str:
    """Two pieces of one line of words; the second stands where the first ends when it is set."""
    second = svg.element("tspan", escape(said), class_="says", dx=10.0)
    return svg.element("text", escape(label) + second, x=x, y=y, font_size=svg.FONT, class_="who")
