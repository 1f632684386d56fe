"""The rank path: how one type moved from rank to rank, with every author's placement.

Years run across, ranks stand as steps. An act that publishes a name is a square (new taxon) or a diamond
(moved or renamed), joined by a line; a work that accepts the name is a disc, one that sinks it a ring, one
that covers the group and leaves it out a small open tick on a lane of its own.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import groupby, pairwise

from auctorum.site.pictures import svg
from auctorum.site.pictures.scale import Scale, scale, tick_label

WIDE, NARROW = 880.0, 340.0
SHAPES = ("square", "diamond", "disc", "ring", "query", "cross", "hollow", "tick")
SMALL = 12.0
_TIER, _CLEAR, _RADIUS = 15.0, 5.0, 5.5
_Stretches = tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Mark:
    """One work on one lane: its shape of SHAPES, and whether the line of acts runs through it."""

    year: int
    lane: str
    shape: str
    label: str
    joined: bool = False


@dataclass(frozen=True, slots=True)
class Path:
    """A whole picture: `lanes` from top to bottom, `ranks` how many of them are ranks, `marks` by year."""

    title: str
    description: str
    lanes: tuple[str, ...]
    ranks: int
    marks: tuple[Mark, ...]


@dataclass(frozen=True, slots=True)
class _Label:
    mark: Mark
    x: float
    left: float
    tier: int


@dataclass(frozen=True, slots=True)
class _Lane:
    name: str
    y: float
    labels: tuple[_Label, ...]


def rank_path(path: Path, key: str, narrow: bool = False) -> str:
    """`path` as SVG; `key` makes its ids unique on a page; `narrow` turns it upright, for a telephone."""
    return _upright(path, key) if narrow else _across(path, key)


def _across(path: Path, key: str) -> str:
    margin = max(svg.width_of(lane, SMALL) for lane in path.lanes) + 18
    axis = scale([mark.year for mark in path.marks], margin + 14, WIDE - 22, 9, whole=True)
    places = _places(path, axis, margin)
    risers = _risers(path, places)
    lanes: list[_Lane] = []
    y = 8.0
    for name in path.lanes:
        marks = [(mark, x) for mark, x in zip(path.marks, places, strict=True) if mark.lane == name]
        labels = _labels(marks, risers.get(name, ()), margin)
        y += 14 + _TIER * (1 + max((label.tier for label in labels), default=0)) + 6
        lanes.append(_Lane(name, y, labels))
    foot = y + 20
    body = [*_years(axis, foot), *_rules(lanes, path.ranks, margin), *_line(path, places, lanes), *_leaders(lanes)]
    for lane in lanes:
        for label in lane.labels:
            body += _shape(label.mark.shape, label.x, lane.y)
            kind = "label act" if label.mark.joined else "label"
            body.append(svg.words(label.left, _foot_of(label, lane.y), label.mark.label, kind, size=SMALL))
    return svg.picture(key, (WIDE, foot + 20), path.title, path.description, body, "path")


def _places(path: Path, axis: Scale, margin: float) -> list[float]:
    """Where each mark stands across: at its year, moved aside where others on the same lane stand there."""
    found = [0.0] * len(path.marks)
    for lane in path.lanes:
        mine = [index for index, mark in enumerate(path.marks) if mark.lane == lane]
        room = 2 * _RADIUS + 2
        last = margin
        for index in mine:
            last = found[index] = max(axis.at(path.marks[index].year), last + room)
        limit = WIDE - _RADIUS
        for index in reversed(mine):
            found[index] = min(found[index], limit)
            limit = found[index] - room
    return found


def _risers(path: Path, places: list[float]) -> dict[str, _Stretches]:
    """For each lane, the stretches above it through which the line of acts climbs or falls: no room for labels."""
    order = {lane: index for index, lane in enumerate(path.lanes)}
    stops = [(x, order[mark.lane]) for mark, x in zip(path.marks, places, strict=True) if mark.joined]
    found: dict[str, list[tuple[float, float]]] = {}
    for (_, before), (x, after) in pairwise(stops):
        for lane in path.lanes[min(before, after) + 1 : max(before, after) + 1]:
            found.setdefault(lane, []).append((x - 2, x + 2))
    return {lane: tuple(stretches) for lane, stretches in found.items()}


def _labels(marks: list[tuple[Mark, float]], risers: _Stretches, margin: float) -> tuple[_Label, ...]:
    """Each mark with the lowest free place for its label; `risers` are stretches to be kept free at every height."""
    placed: list[_Label] = []
    taken: list[list[tuple[float, float]]] = [[] for _ in range(len(marks) + 1)]
    for mark, x in marks:
        wide = svg.width_of(mark.label, SMALL)
        tier, left = _free(x, wide, taken, risers, margin)
        taken[tier].append((left, left + wide))
        for below in range(tier):  # the thin line from mark to label keeps its way free
            taken[below].append((x - 1, x + 1))
        placed.append(_Label(mark, x, left, tier))
    return tuple(placed)


def _free(
    x: float, wide: float, taken: list[list[tuple[float, float]]], risers: _Stretches, margin: float
) -> tuple[int, float]:
    """Height (0 nearest to the lane) and left end of the first place where a label touches nothing.

    The last of `taken` is empty, so that there is a place for every label; if need be across a riser.
    """
    starts = [min(max(x + shift, margin), WIDE - wide - 2) for shift in (-wide / 2, -8, 8 - wide, 8, -wide - 8)]
    for kept_free in (risers, ()):
        for tier, others in enumerate(taken):
            for left in starts:
                if not any(_touch(left, left + wide, other) for other in (*others, *kept_free)):
                    return tier, left
    raise AssertionError("the highest tier is empty")


def _touch(left: float, right: float, other: tuple[float, float]) -> bool:
    return left <= other[1] + _CLEAR and other[0] - _CLEAR <= right


def _foot_of(label: _Label, y: float) -> float:
    return y - 10 - label.tier * _TIER


def _years(axis: Scale, foot: float) -> Iterator[str]:
    for tick in axis.ticks():
        x = axis.at(tick)
        yield svg.line(x, 8, x, foot, "grid")
        yield svg.words(x, foot + 15, tick_label(tick), "tick", "middle", 11.5)


def _rules(lanes: list[_Lane], ranks: int, margin: float) -> Iterator[str]:
    for index, lane in enumerate(lanes):
        yield svg.line(margin, lane.y, WIDE - 4, lane.y, "lane" if index < ranks else "lane aside")
        yield svg.words(margin - 10, lane.y + 4, lane.name, "lane-name", "end", SMALL)


def _line(path: Path, places: list[float], lanes: list[_Lane]) -> Iterator[str]:
    """Steps through the joined marks, in order of year."""
    height = {lane.name: lane.y for lane in lanes}
    stops = [(x, height[mark.lane]) for mark, x in zip(path.marks, places, strict=True) if mark.joined]
    if len(stops) < 2:
        return
    (x, y), *rest = stops
    steps = f"M{svg.number(x)} {svg.number(y)}" + "".join(f"H{svg.number(x)}V{svg.number(y)}" for x, y in rest)
    yield svg.element("path", d=steps, class_="halo")
    yield svg.element("path", d=steps, class_="trail")


def _leaders(lanes: list[_Lane]) -> Iterator[str]:
    for lane in lanes:
        for label in lane.labels:
            if label.tier:
                yield svg.line(label.x, lane.y - 6, label.x, _foot_of(label, lane.y) + 3, "leader")


def _shape(shape: str, x: float, y: float) -> Iterator[str]:
    """One mark of SHAPES, centred."""
    place, r = f"{svg.number(x)} {svg.number(y)}", _RADIUS
    if shape == "square":
        yield svg.box(x - r, y - r, 2 * r, 2 * r, "mark solid")
    elif shape in ("diamond", "hollow"):
        kind = "mark solid" if shape == "diamond" else "mark open"
        yield svg.element("path", d=f"M{place}m0-7l7 7l-7 7l-7-7z", class_=kind)
    elif shape == "tick":
        yield svg.box(x - 2, y - 6, 4, 12, "mark open")
    elif shape == "cross":
        yield svg.element("path", d=f"M{place}m-5-5l10 10m0-10l-10 10", class_="mark stroke")
    else:
        yield svg.element("circle", cx=x, cy=y, r=r, class_="mark solid" if shape == "disc" else "mark open")
        if shape == "query":
            yield svg.words(x, y + 3.6, "?", "inside", "middle", 10)


def sample(shape: str) -> str:
    """One mark of SHAPES alone, for the explanation under a picture; hidden from those who listen."""
    body = "".join(_shape(shape, 9, 9))
    return svg.element("svg", body, class_="sample", viewBox="0 0 18 18", width=18.0, height=18.0, aria_hidden="true")


def _upright(path: Path, key: str) -> str:
    """The same, with time running down: one row a work, lanes as columns."""
    rows = [list(same) for _, same in groupby(path.marks, key=lambda mark: (mark.year, mark.label))]
    slant = 0.5 * max(svg.width_of(lane, SMALL) for lane in path.lanes[-2:])  # the last heads lean out to the right
    names = min(max(svg.width_of(mark.label) for mark in path.marks) + 4, 165)
    column = min((NARROW - names - 8 - slant) / len(path.lanes), 46)
    middle = {lane: names + 10 + (index + 0.5) * column for index, lane in enumerate(path.lanes)}
    top = 16 + 0.87 * max(svg.width_of(lane, SMALL) for lane in path.lanes)
    body: list[str] = []
    for index, lane in enumerate(path.lanes):
        x = middle[lane]
        kind = "lane" if index < path.ranks else "lane aside"
        body.append(svg.line(x, top - 4, x, top + 24 * len(rows), kind))
        turned = svg.words(0, 0, lane, "lane-name", size=SMALL)
        body.append(
            svg.element("g", turned, transform=f"translate({svg.number(x + 3)} {svg.number(top - 10)}) rotate(-60)")
        )
    heights = {id(mark): top + 24 * index + 14 for index, row in enumerate(rows) for mark in row}
    stops = [(middle[mark.lane], heights[id(mark)]) for mark in path.marks if mark.joined]
    if len(stops) > 1:
        (x, y), *rest = stops
        steps = f"M{svg.number(x)} {svg.number(y)}" + "".join(f"V{svg.number(y)}H{svg.number(x)}" for x, y in rest)
        body.append(svg.element("path", d=steps, class_="trail"))
    for row in rows:
        y = heights[id(row[0])]
        joined = any(mark.joined for mark in row)
        label = svg.shortened(row[0].label, names)
        body.append(svg.words(names, y + 4.5, label, "label act" if joined else "label", "end"))
        for mark in row:
            body += _shape(mark.shape, middle[mark.lane], y)
    return svg.picture(key, (NARROW, top + 24 * len(rows) + 6), path.title, path.description, body, "path upright")
