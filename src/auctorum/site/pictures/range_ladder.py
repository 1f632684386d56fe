"""The range ladder: what each author gives for one measured character, in order of time.

One row an author: a bar for the typical range, thin whiskers for extremes, an arrow head where an end is left
open, words where the work is silent. A hatched band marks the majority range, a bracket what all share.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from auctorum.site.pictures import svg
from auctorum.site.pictures.scale import Scale, compass_label, compass_scale, scale, tick_label

SILENCE = "says nothing"
WIDE, NARROW = 880.0, 340.0


@dataclass(frozen=True, slots=True)
class Rung:
    """One author. Numbers in the canonical unit; None is an end that is not stated. Empty `says`: silence."""

    label: str
    says: str = ""
    low: float | None = None
    high: float | None = None
    least: float | None = None
    most: float | None = None
    repeats: bool = False

    @property
    def numbers(self) -> tuple[float, ...]:
        return tuple(end for end in (self.least, self.low, self.high, self.most) if end is not None)


@dataclass(frozen=True, slots=True)
class Ladder:
    """A whole ladder; `majority` and `core` in the canonical unit, `core` None where nothing is shared."""

    title: str
    description: str
    unit: str
    rungs: tuple[Rung, ...]
    majority: tuple[tuple[float, float], ...] = ()
    core: tuple[float, float] | None = None
    shared: str = ""  # the core in words, as it is to be printed
    whole: bool = False  # counts: the axis has whole numbers only
    compass: bool = False  # bearings: the axis shows points of the compass


@dataclass(frozen=True, slots=True)
class _Frame:
    width: float
    start: float
    end: float
    row: float
    top: float
    bar: float  # where the bar stands within its row
    narrow: bool


def range_ladder(ladder: Ladder, key: str, narrow: bool = False) -> str:
    """`ladder` as SVG; `key` makes its ids unique on a page, `narrow` suits a telephone."""
    if narrow:
        frame = _Frame(NARROW, 12, NARROW - 12, 40, 34, 28, True)
    else:
        label = min(max(svg.width_of(rung.label) for rung in ladder.rungs) + 16, 230)
        says = min(max(svg.width_of(rung.says or SILENCE) for rung in ladder.rungs) + 20, 210)
        frame = _Frame(WIDE, label + 8, WIDE - says, 25, 34, 12.5, False)
    numbers = [number for rung in ladder.rungs for number in rung.numbers]
    if ladder.compass:
        axis = compass_scale(numbers, frame.start, frame.end)
    else:
        axis = scale(numbers, frame.start, frame.end, 5 if narrow else 8, ladder.whole)
    foot = frame.top + frame.row * len(ladder.rungs) + 4
    body = [svg.hatch(key), *_bands(ladder, axis, frame, foot, key), *_axis(ladder, axis, frame, foot)]
    for index, rung in enumerate(ladder.rungs):
        body += _rung(rung, axis, frame, frame.top + index * frame.row)
    body += _core(ladder, axis, foot)
    height = foot + (44 if ladder.core else 22)
    return svg.picture(key, (frame.width, height), ladder.title, ladder.description, body, "ladder")


def _bands(ladder: Ladder, axis: Scale, frame: _Frame, foot: float, key: str) -> Iterator[str]:
    for low, high in ladder.majority:
        left, right = axis.at(low), axis.at(high)
        yield svg.element(
            "rect", x=left - 1, y=frame.top - 4, width=max(right - left, 0) + 2, height=foot - frame.top + 4,
            fill=f"url(#{key}-hatch)", class_="majority",
        )  # fmt: skip


def _axis(ladder: Ladder, axis: Scale, frame: _Frame, foot: float) -> Iterator[str]:
    for tick in axis.ticks():
        x, label = axis.at(tick), compass_label(tick) if ladder.compass else tick_label(tick)
        yield svg.line(x, frame.top - 8, x, foot, "grid")
        yield svg.words(x, frame.top - 13, label, "tick", "middle", 11.5)
        yield svg.words(x, foot + 14, label, "tick", "middle", 11.5)
    if ladder.compass:
        return
    if ladder.unit and not frame.narrow:
        yield svg.words(frame.start - 14, frame.top - 13, ladder.unit, "tick", "end", 11.5)
    elif ladder.unit:
        yield svg.words(frame.start - 8, 9, f"in {ladder.unit}", "tick", "start", 11.5)


def _rung(rung: Rung, axis: Scale, frame: _Frame, top: float) -> Iterator[str]:
    y = top + frame.bar
    words_y = top + 15 if frame.narrow else y + 4.5
    says = rung.says or SILENCE
    said = "says" if rung.says else "silent"
    if frame.narrow:
        room = frame.width - 24 - svg.width_of(rung.label)
        yield svg.words(frame.start - 8, words_y, rung.label, "who")
        yield svg.words(frame.end + 8, words_y, svg.shortened(says, room), said, "end")
    else:
        yield svg.words(frame.start - 14, words_y, svg.shortened(rung.label, frame.start - 16), "who", "end")
        yield svg.words(frame.end + 14, words_y, svg.shortened(says, frame.width - frame.end - 16), said)
    if not rung.numbers:
        yield svg.line(frame.start, y, frame.end, y, "unsaid")
        return
    yield from _whiskers(rung, axis, y)
    yield from _bar(rung, axis, y)


def _whiskers(rung: Rung, axis: Scale, y: float) -> Iterator[str]:
    low, high = _typical(rung)
    for extreme, end in ((rung.least, low), (rung.most, high)):
        if extreme is not None:
            yield svg.line(axis.at(extreme), y, axis.at(end), y, "whisker")
            yield svg.line(axis.at(extreme), y - 4, axis.at(extreme), y + 4, "whisker")


def _typical(rung: Rung) -> tuple[float, float]:
    low = rung.low if rung.low is not None else rung.high
    high = rung.high if rung.high is not None else rung.low
    if low is None or high is None:  # only extremes are known
        return min(rung.numbers), max(rung.numbers)
    return low, high


def _bar(rung: Rung, axis: Scale, y: float) -> Iterator[str]:
    kind = "bar repeated" if rung.repeats else "bar"
    low, high = _typical(rung)
    left, right = axis.at(low), axis.at(high)
    if rung.low is None:
        yield svg.line(axis.start, y, right, y, "reach")
        yield svg.element("path", d=_arrow(axis.start, y, -1), class_="head")
    if rung.high is None:
        yield svg.line(left, y, axis.end, y, "reach")
        yield svg.element("path", d=_arrow(axis.end, y, 1), class_="head")
    if rung.low is None or rung.high is None:
        edge = right if rung.low is None else left
        yield svg.box(edge - 2.5, y - 6, 5, 12, kind)
    elif right - left < 5:
        yield svg.box((left + right) / 2 - 2.5, y - 6, 5, 12, kind)
    else:
        yield svg.box(left, y - 5, right - left, 10, kind, 1.5)


def _arrow(x: float, y: float, way: int) -> str:
    back = x - 8 * way
    return f"M{svg.number(x)} {svg.number(y)}L{svg.number(back)} {svg.number(y - 5)}V{svg.number(y + 5)}Z"


def _core(ladder: Ladder, axis: Scale, foot: float) -> Iterator[str]:
    if ladder.core is None:
        return
    low, high = ladder.core
    left, right = axis.at(low), axis.at(high)
    y = foot + 22
    yield svg.element("path", d=f"M{svg.number(left)} {svg.number(y - 4)}v4H{svg.number(right)}v-4", class_="bracket")
    label = f"shared by all: {ladder.shared}"
    half = svg.width_of(label) / 2
    middle = min(max((left + right) / 2, axis.start + half - 10), max(axis.end - half + 10, axis.start + half - 10))
    yield svg.words(middle, y + 15, label, "core", "middle")
