"""The histogram of a survey: how many plants measure how much, by the names that observers gave, and who draws the line
where.

Columns stand on an axis of values; in each, the plants of one name above those of another, told apart by the pattern
they are filled with. A broken upright line is the threshold of the criterion, a second one is moved by a script. Below
the axis stands what authors state, a row for each range: a stroke with a tick at each stated bound, the tick that makes
a threshold heavier, extremes as thin strokes, an arrow head where an end is left open.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from auctorum.site.pictures import svg
from auctorum.site.pictures.range_ladder import Rung
from auctorum.site.pictures.scale import Scale, scale, tick_label
from auctorum.site.pictures.threshold_line import TIER, Across, moving, standing, value_ticks

WIDE, NARROW = 880.0, 340.0
MOST_NAMES = 3  # beside the taxon itself, that have a pattern of their own
PATTERNS = ("solid", "slant", "dots", "level", "other", "blank")
_LABEL, _SAYS = 210.0, 100.0


@dataclass(frozen=True, slots=True)
class Column:
    """Plants from `low` to `high`, as many of each name as `counts` says, in the order of the names."""

    low: float
    high: float
    counts: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Histogram:
    """A whole histogram, numbers in the canonical unit.

    `names` are words and pattern (one of PATTERNS) of the parts of columns, from the floor up. `threshold` is where the
    line stands, `printed` the words on the moving one. `states` are those of a spectrum, which stand at 0, 1, 2 ...
    `lower`: the lower bound of an author makes the threshold, else the upper one.
    """

    title: str
    description: str
    unit: str
    names: tuple[tuple[str, str], ...]
    columns: tuple[Column, ...]
    threshold: tuple[float, str]
    printed: str
    authors: tuple[Rung, ...] = ()
    heading: str = ""  # over what authors state
    states: tuple[str, ...] = ()
    whole: bool = False  # counts: the axis has whole numbers only
    lower: bool = True

    @property
    def most(self) -> int:
        """The plants of the highest column."""
        return max((sum(column.counts) for column in self.columns), default=0)

    @property
    def numbers(self) -> tuple[float, ...]:
        """Everything that stands on the axis."""
        ends = [end for column in self.columns for end in (column.low, column.high)]
        return (*ends, *(number for rung in self.authors for number in rung.numbers), self.threshold[0])


@dataclass(frozen=True, slots=True)
class _Frame:
    width: float
    top: float  # where the axis of plants ends
    base: float  # the floor
    axis: Scale
    plants: Scale
    narrow: bool

    def at(self, plants: float) -> float:
        """The height of a number of plants."""
        return self.base - (self.base - self.top) * plants / self.plants.high


def histogram(one: Histogram, key: str, narrow: bool = False) -> str:
    """`one` as SVG; `key` makes its ids unique on a page, `narrow` suits a telephone."""
    width = NARROW if narrow else WIDE
    top = 14 + 2 * TIER + 8
    base = top + (150 if narrow else 200)
    plants = scale([0, max(one.most, 1)], 0, 1, 4, whole=True)
    frame = _Frame(width, top, base, axis_of(one, narrow), plants, narrow)
    ticks, foot = _ticks(one, frame)
    rows, end = _authors(one, frame, foot)
    across = Across(frame.axis, width, top, max(end - 4, base + 6))
    body = [_patterns(key, [kind for _, kind in one.names]), *ticks]
    body += [part for column in one.columns for part in _column(column, one, frame, key)]
    body.append(svg.line(frame.axis.start, base, frame.axis.end, base, "floor"))
    body += [moving(one.threshold[0], one.printed, across), *standing(*one.threshold, across), *rows]
    return svg.picture(key, (width, end), one.title, one.description, body, "histogram")


def axis_of(one: Histogram, narrow: bool) -> Scale:
    """The axis of values, with room for labels at its sides."""
    start, end = (30.0, NARROW - 12) if narrow else (_LABEL, WIDE - _SAYS)
    if one.states:
        return Scale(-0.5, len(one.states) - 0.5, start, end, 1.0)
    return scale(one.numbers, start, end, 5 if narrow else 8, one.whole)


def key_samples(one: Histogram, key: str) -> tuple[tuple[str, str], ...]:
    """A sample of each pattern with its name, for the key below the picture."""
    found = []
    for number, (name, kind) in enumerate(one.names):
        own = f"{key}-k{number}"
        body = _patterns(own, [kind]) + _part(2, 3, 24, 12, kind, own)
        found.append((svg.element("svg", body, class_="sample", viewBox="0 0 28 18", width=28.0, height=18.0,
                                  aria_hidden="true"), name))  # fmt: skip
    return tuple(found)


def _patterns(key: str, kinds: list[str]) -> str:
    """The definitions of those patterns that are no plain fill."""
    drawn = {
        "slant": (svg.line(0, 0, 0, 6, "pattern-line"), "rotate(45)"),
        "level": (svg.line(0, 1, 6, 1, "pattern-line thin"), "rotate(0)"),
        "other": (svg.line(1, 0, 1, 6, "pattern-line thin"), "rotate(0)"),
        "dots": (svg.element("circle", cx=2.0, cy=2.0, r=1.2, class_="pattern-dot"), "rotate(0)"),
    }
    side = {"dots": "4.5", "level": "4", "other": "4"}
    found = [
        svg.element("pattern", drawn[kind][0], id=f"{key}-{kind}", width=side.get(kind, "6"),
                    height=side.get(kind, "6"), patternUnits="userSpaceOnUse", patternTransform=drawn[kind][1])
        for kind in dict.fromkeys(kinds) if kind in drawn
    ]  # fmt: skip
    return svg.element("defs", "".join(found)) if found else ""


def _part(x: float, y: float, width: float, height: float, kind: str, key: str) -> str:
    """One part of a column: paper below, so that the grid does not shine through, then the pattern and its outline."""
    given: dict[str, str | float] = {} if kind in ("solid", "blank") else {"fill": f"url(#{key}-{kind})"}
    under = "" if kind == "solid" else svg.box(x, y, width, height, "blank")
    return under + svg.element(
        "rect", x=x, y=y, width=max(width, 0.8), height=max(height, 0), class_=f"part-of {kind}", **given
    )


def _column(column: Column, one: Histogram, frame: _Frame, key: str) -> Iterator[str]:
    left, right = frame.axis.at(column.low), frame.axis.at(column.high)
    gap = min(1.5, (right - left) / 6) if not one.states else (right - left) / 8
    below = 0
    for (_, kind), count in zip(one.names, column.counts, strict=True):
        if count:
            y, foot = frame.at(below + count), frame.at(below)
            yield _part(left + gap, y, right - left - 2 * gap, foot - y, kind, key)
            below += count


def _ticks(one: Histogram, frame: _Frame) -> tuple[list[str], float]:
    """Both axes with their words; and the height at which the rows of authors begin."""
    body = [svg.words(4, frame.top - 11 - TIER if frame.narrow else frame.top + 4, "plants", "tick", "start", 11.5)]
    for tick in frame.plants.ticks():
        y = frame.at(tick)
        if tick:
            body.append(svg.line(frame.axis.start, y, frame.axis.end, y, "grid"))
        body.append(svg.words(frame.axis.start - 6, y + 4, tick_label(tick), "tick", "end", 11.5))
    if one.states:
        lines = 1
        room = (frame.axis.end - frame.axis.start) / len(one.states) - 6
        for place, state in enumerate(one.states):
            broken = svg.wrapped(state, room, 11.5)
            lines = max(lines, len(broken))
            body += [
                svg.words(frame.axis.at(place), frame.base + 16 + 13 * row, text, "tick", "middle", 11.5)
                for row, text in enumerate(broken)
            ]
        return body, frame.base + 16 + 13 * lines
    return [*body, *value_ticks(frame.axis, frame.base, frame.width, one.unit)], frame.base + 26


def _authors(one: Histogram, frame: _Frame, foot: float) -> tuple[list[str], float]:
    """A row for each range that authors state, and the height of the whole picture."""
    if not one.authors:
        return [], foot + 6
    y = foot + 14
    body = [svg.words(4, y, svg.shortened(one.heading, frame.width - 8, 11.5), "tick", "start", 11.5)]
    for rung in one.authors:
        y += 34 if frame.narrow else 19
        body += _author(rung, one, frame, y)
    return body, y + 10


def _author(rung: Rung, one: Histogram, frame: _Frame, y: float) -> Iterator[str]:
    """Label, stroke with ticks and what it counts; on a telephone the words stand over the stroke."""
    axis = frame.axis
    if frame.narrow:
        yield svg.words(4, y - 10, svg.shortened(rung.label, frame.width * 0.7), "who")
        yield svg.words(frame.width - 4, y - 10, svg.shortened(rung.says, frame.width * 0.26), "says", "end")
    else:
        yield svg.words(axis.start - 12, y + 4, svg.shortened(rung.label, _LABEL - 16), "who", "end")
        yield svg.words(axis.end + 12, y + 4, svg.shortened(rung.says, _SAYS - 14), "says")
    low, high = rung.low, rung.high
    left, right = (axis.start if low is None else axis.at(low)), (axis.end if high is None else axis.at(high))
    yield svg.line(left, y, right, y, "span repeated" if rung.repeats else "span")
    for bound, x, way, makes in ((low, left, -1, one.lower), (high, right, 1, not one.lower)):
        if bound is None:
            back = svg.number(x - 8 * way)
            d = f"M{svg.number(x)} {svg.number(y)}L{back} {svg.number(y - 4)}V{svg.number(y + 4)}Z"
            yield svg.element("path", d=d, class_="head")
        else:
            half = 6.0 if makes else 4.0
            yield svg.line(x, y - half, x, y + half, "bound makes" if makes else "bound")
    for extreme, end in ((rung.least, left), (rung.most, right)):
        if extreme is not None:
            yield svg.line(axis.at(extreme), y, end, y, "beyond")
            yield svg.line(axis.at(extreme), y - 2.5, axis.at(extreme), y + 2.5, "beyond")
