"""The range ladder: what each author gives for one measured character, in order of time.

One row an author: a bar for the typical range, thin whiskers for extremes, an arrow head where an end is left
open, words where the work is silent. A hatched band marks the majority range, a bracket what all share.
A work that repeats another has a thin hollow bar and two strokes, as for "the same again". Measured plants
stand below a rule, in a bar with a line through it; values that part the taxon from another cross the picture.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace

from auctorum.site.pictures import svg
from auctorum.site.pictures.scale import Scale, compass_label, compass_scale, scale, tick_label

SILENCE = "says nothing"
WIDE, NARROW = 880.0, 340.0
REPEATED = "repeats an earlier work"
MEASURED = "measured plants: the middle eight tenths, and the extremes"
PARTS = "value that parts it from another taxon"
_TIER, _APART = 16.0, 14.0


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
    plants: Rung | None = None  # measured plants: the middle eight tenths, with the extremes
    thresholds: tuple[tuple[float, str], ...] = ()  # values that part it from others, with the words over each


@dataclass(frozen=True, slots=True)
class _Frame:
    width: float
    start: float
    end: float
    row: float
    top: float
    bar: float  # where the bar stands within its row
    narrow: bool


@dataclass(frozen=True, slots=True)
class _Parting:
    """A threshold with the place of its words; tier 0 is nearest to the picture."""

    x: float
    left: float
    tier: int
    words: str


def range_ladder(ladder: Ladder, key: str, narrow: bool = False) -> str:
    """`ladder` as SVG; `key` makes its ids unique on a page, `narrow` suits a telephone."""
    rungs = (*ladder.rungs, ladder.plants) if ladder.plants else ladder.rungs
    frame = _frame(rungs, narrow)
    numbers = [number for rung in rungs for number in rung.numbers] + [value for value, _ in ladder.thresholds]
    if ladder.compass:
        axis = compass_scale(numbers, frame.start, frame.end)
    else:
        axis = scale(numbers, frame.start, frame.end, 5 if narrow else 8, ladder.whole)
    partings = _partings(ladder, axis, frame.width)
    tiers = max((parting.tier + 1 for parting in partings), default=0)
    frame = replace(frame, top=frame.top + _TIER * tiers)
    low_row = frame.top + frame.row * len(ladder.rungs) + 4
    foot = low_row + (frame.row + _APART if ladder.plants else 0)
    body = [svg.hatch(key), *_bands(ladder, axis, frame, low_row, key), *_lines(partings, frame, foot)]
    body += _axis(ladder, axis, frame, foot)
    for index, rung in enumerate(ladder.rungs):
        body += _rung(rung, axis, frame, frame.top + index * frame.row)
    if ladder.plants:
        body.append(svg.line(4, low_row + _APART / 2 - 1, frame.width - 4, low_row + _APART / 2 - 1, "apart"))
        body += _rung(ladder.plants, axis, frame, low_row + _APART - 2, "plants")
    body += _core(ladder, axis, foot)
    height = foot + (44 if ladder.core else 22)
    return svg.picture(key, (frame.width, height), ladder.title, ladder.description, body, "ladder")


def explanation(ladder: Ladder) -> tuple[tuple[str, str], ...]:
    """Samples of what is drawn in this ladder and not plain by itself, with words, for the key below it."""
    axis, whole = Scale(0, 1, 4, 24, 1), Rung("", low=0.0, high=1.0)
    found = []
    if any(rung.repeats for rung in ladder.rungs):
        found.append((_sample([_ditto(4, 9), *_bar(replace(whole, low=0.4, repeats=True), axis, 9)]), REPEATED))
    if ladder.plants:
        found.append((_sample(_bar(whole, axis, 9, "plants")), MEASURED))
    if ladder.thresholds:
        found.append((_sample([svg.line(14, 0, 14, 18, "parting")]), PARTS))
    return tuple(found)


def _sample(body: Iterable[str]) -> str:
    return svg.element(
        "svg", "".join(body), class_="sample", viewBox="0 0 28 18", width=28.0, height=18.0, aria_hidden="true"
    )


def _frame(rungs: tuple[Rung, ...], narrow: bool) -> _Frame:
    if narrow:
        return _Frame(NARROW, 12, NARROW - 12, 40, 34, 28, True)
    label = min(max((svg.width_of(rung.label) for rung in rungs), default=0) + 20, 230)
    says = min(max((svg.width_of(rung.says or SILENCE) for rung in rungs), default=0) + 20, 210)
    return _Frame(WIDE, label + 8, WIDE - says, 25, 34, 12.5, False)


def _partings(ladder: Ladder, axis: Scale, width: float) -> tuple[_Parting, ...]:
    """Each threshold with a place for its words, from right to left: so the words run to the right of their line, and
    the line to words on a higher tier passes beside those below."""
    placed: list[_Parting] = []
    for value, text in sorted(ladder.thresholds, reverse=True):
        printed = svg.shortened(text, width - 8)
        x, wide = axis.at(value), svg.width_of(printed)
        starts = [min(max(x + shift, 4.0), width - 4 - wide) for shift in (-6.0, 6.0 - wide, -wide / 2)]
        options = [_Parting(x, left, tier, printed) for left in starts for tier in range(len(placed) + 1)]
        free = [option for option in options if not any(_overlap(option, other) for other in placed)]
        clear = [option for option in free if not any(_cross(option, other) for other in placed)]
        placed.append((clear or free)[0])  # the highest tier is always free
    return tuple(placed)


def _overlap(one: _Parting, other: _Parting) -> bool:
    """Whether the words of two thresholds touch."""
    ends = one.left + svg.width_of(one.words), other.left + svg.width_of(other.words)
    return one.tier == other.tier and one.left - 8 < ends[1] and other.left - 8 < ends[0]


def _cross(one: _Parting, other: _Parting) -> bool:
    """Whether the line to the higher words passes through the lower ones."""
    low, high = sorted((one, other), key=lambda parting: parting.tier)
    return low.tier < high.tier and low.left - 2 < high.x < low.left + svg.width_of(low.words) + 2


def _lines(partings: tuple[_Parting, ...], frame: _Frame, foot: float) -> Iterator[str]:
    for parting in partings:
        y = frame.top - (38 if frame.narrow else 30) - _TIER * parting.tier
        yield svg.line(parting.x, y + 4, parting.x, foot, "parting")
        yield svg.words(parting.left, y, parting.words, "parting-words")


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
        if all(abs(axis.at(value) - x) > 1 for value, _ in ladder.thresholds):  # a grid line would hide a threshold
            yield svg.line(x, frame.top - 8, x, foot, "grid")
        yield svg.words(x, frame.top - 13, label, "tick", "middle", 11.5)
        yield svg.words(x, foot + 14, label, "tick", "middle", 11.5)
    if ladder.compass:
        return
    if ladder.unit and not frame.narrow:
        yield svg.words(frame.start - 14, frame.top - 13, ladder.unit, "tick", "end", 11.5)
    elif ladder.unit:
        yield svg.words(frame.start - 8, frame.top - 25, f"in {ladder.unit}", "tick", "start", 11.5)


def _rung(rung: Rung, axis: Scale, frame: _Frame, top: float, kind: str = "") -> Iterator[str]:
    y = top + frame.bar
    words_y = top + 15 if frame.narrow else y + 4.5
    says = rung.says or SILENCE
    said = "says" if rung.says else "silent"
    who = f"who {kind}".strip()
    if frame.narrow:
        label = svg.shortened(rung.label, frame.width * 0.6)
        room = frame.width - 24 - svg.width_of(label)
        yield svg.words(frame.start - 8, words_y, label, who)
        yield svg.words(frame.end + 8, words_y, svg.shortened(says, room), said, "end")
    else:
        yield svg.words(frame.start - 18, words_y, svg.shortened(rung.label, frame.start - 20), who, "end")
        yield svg.words(frame.end + 14, words_y, svg.shortened(says, frame.width - frame.end - 16), said)
    if rung.repeats:
        yield _ditto(frame.start - (8 if frame.narrow else 10), y)
    if not rung.numbers:
        yield svg.line(frame.start, y, frame.end, y, "unsaid")
        return
    yield from _whiskers(rung, axis, y)
    yield from _bar(rung, axis, y, kind)


def _ditto(x: float, y: float) -> str:
    """Two short strokes, "the same again", for a work that repeats another."""
    x, y = x + 2, y - 4
    strokes = f"M{svg.number(x)} {svg.number(y)}l-2 8M{svg.number(x + 4.5)} {svg.number(y)}l-2 8"
    return svg.element("path", d=strokes, class_="ditto")


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


def _bar(rung: Rung, axis: Scale, y: float, kind: str = "") -> Iterator[str]:
    kind = "bar repeated" if rung.repeats else f"bar {kind}".strip()
    half = 3.0 if rung.repeats else 5.0
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
        yield svg.box(edge - 2.5, y - half - 1, 5, 2 * half + 2, kind)
    elif right - left < 5:
        yield svg.box((left + right) / 2 - 2.5, y - half - 1, 5, 2 * half + 2, kind)
    else:
        yield svg.box(left, y - half, right - left, 2 * half, kind, 1.5)
        if kind == "bar plants":
            yield svg.line(left + 3, y, right - 3, y, "seam")


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
