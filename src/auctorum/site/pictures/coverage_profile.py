"""The coverage profile: for each value of a measured character, the share of works whose range holds it.

Steps over the axis of values, from none to all, with the line of one half. A second taxon stands behind in slanting
lines with a broken edge, a value that parts the two as an upright line with its words. Below the axis: where half or
more agree, and what all share. An end that nobody stated runs to the edge of the picture and has an arrow head.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from auctorum.site.pictures import svg
from auctorum.site.pictures.scale import Scale, scale, tick_label

WIDE, NARROW = 880.0, 340.0
LEVELS = ((0.0, "none"), (0.5, "half"), (1.0, "all"))
HEADING = "share of the works whose range holds the value"
_LEGEND, _LINE, _BELOW, _SWATCH = 20.0, 17.0, 34.0, 26.0

Steps = tuple[tuple[float | None, float | None, float], ...]  # low, high and share (0 to 1); None: nobody stated it
Stretch = tuple[float | None, float | None]


@dataclass(frozen=True, slots=True)
class Profile:
    """A whole profile, numbers in the canonical unit; directions have no line to stand on, and so none.

    `core` is None where nothing is shared, `threshold` a value with the words that stand over it, `most` and `shared`
    are `majority` and `core` as they are to be printed.
    """

    title: str
    description: str
    unit: str
    steps: Steps
    majority: tuple[Stretch, ...] = ()
    core: Stretch | None = None
    label: str = ""
    other: tuple[str, Steps] | None = None  # another taxon: its name and its steps
    threshold: tuple[float, str] | None = None
    most: str = ""
    shared: str = ""
    whole: bool = False  # counts: the axis has whole numbers only


@dataclass(frozen=True, slots=True)
class _Frame:
    width: float
    top: float  # where all works agree
    base: float  # where none does
    axis: Scale
    narrow: bool

    def at(self, share: float) -> float:
        """The height of a share."""
        return self.base - (self.base - self.top) * min(max(share, 0.0), 1.0)

    def ends(self, low: float | None, high: float | None) -> tuple[float, float]:
        """Where a stretch begins and ends; an end that is not stated is the end of the axis."""
        return (
            self.axis.start if low is None else self.axis.at(low),
            self.axis.end if high is None else self.axis.at(high),
        )


def coverage_profile(profile: Profile, key: str, narrow: bool = False) -> str:
    """`profile` as SVG; `key` makes its ids unique on a page, `narrow` suits a telephone."""
    width = NARROW if narrow else WIDE
    legend, rows = _legend(profile, width, key)
    top = _LEGEND * rows + _LINE + (_LINE if profile.threshold else 0) + 12
    frame = _Frame(width, top, top + (130 if narrow else 170), _axis(profile, narrow), narrow)
    body = [svg.hatch(key), _other_hatch(key), *legend, *_rules(profile, frame)]
    if profile.other:
        body += _drawn(profile.other[1], frame, "other", f"url(#{key}-other)")
    body += [*_drawn(profile.steps, frame, "own", ""), *_half(frame), *_bounds(profile.steps, frame)]
    below, height = _below(profile, frame, key)
    body += [*_threshold(profile, frame), *below]
    return svg.picture(key, (width, height), profile.title, profile.description, body, "profile")


def _axis(profile: Profile, narrow: bool) -> Scale:
    """The axis of values; where an end is open, there is room beyond the last figure."""
    start, end = (46.0, NARROW - 14) if narrow else (66.0, WIDE - 22)
    stretches = [(low, high) for low, high, _ in (*profile.steps, *(profile.other[1] if profile.other else ()))]
    numbers = [number for stretch in stretches for number in stretch if number is not None]
    numbers += [profile.threshold[0]] if profile.threshold else []
    least, most = min(numbers, default=0.0), max(numbers, default=1.0)
    room = 0.12 * ((most - least) or abs(most) or 1.0)
    if any(low is None for low, _ in stretches):
        numbers.append(max(least - room, 0.0) if least >= 0 else least - room)
    if any(high is None for _, high in stretches):
        numbers.append(most + room)
    return scale(numbers, start, end, 5 if narrow else 8, profile.whole)


def _other_hatch(key: str) -> str:
    """Lines that slant the other way than those of the majority."""
    stroke = svg.line(0.0, 0.0, 0.0, 6.0, "other-line")
    pattern = svg.element(
        "pattern", stroke, id=f"{key}-other", width="6", height="6",
        patternUnits="userSpaceOnUse", patternTransform="rotate(-45)",
    )  # fmt: skip
    return svg.element("defs", pattern)


def _legend(profile: Profile, width: float, key: str) -> tuple[list[str], int]:
    """A sample and the name of each taxon, side by side where there is room; and the number of lines taken."""
    entries = [(profile.label, "own", "")] if profile.label else []
    entries += [(profile.other[0], "other", f"url(#{key}-other)")] if profile.other else []
    body: list[str] = []
    x, row = 4.0, 0
    for label, kind, fill in entries:
        name = svg.shortened(label, width - _SWATCH - 16)
        wide = _SWATCH + 8 + svg.width_of(name)
        if x > 4 and x + wide > width - 4:
            x, row = 4.0, row + 1
        y = 4 + row * _LEGEND
        outline = f"M{svg.number(x)} {svg.number(y + 11)}v-11h{svg.number(_SWATCH)}v11"
        body += [*_filled(f"{outline}Z", kind, fill), svg.element("path", d=outline, class_=f"edge {kind}")]
        body.append(svg.words(x + _SWATCH + 8, y + 10.5, name, "who"))
        x += wide + 24
    return body, row + 1 if entries else 0


def _rules(profile: Profile, frame: _Frame) -> Iterator[str]:
    axis = frame.axis
    heading = frame.top - 14 - (_LINE if profile.threshold else 0)
    yield svg.words(4, heading, svg.shortened(HEADING, frame.width - 8, 11.5), "tick", "start", 11.5)
    for share, label in LEVELS:
        y = frame.at(share)
        yield svg.line(axis.start, y, axis.end, y, "floor" if share == 0 else "grid")
        yield svg.words(axis.start - 8, y + 4, label, "tick", "end", 11.5)
    for tick in axis.ticks():
        x, label = axis.at(tick), tick_label(tick)
        yield svg.line(x, frame.top, x, frame.base, "grid")
        yield svg.words(x, frame.base + 18, label, "tick", "middle", 11.5)
    unit = svg.shortened(profile.unit, axis.start - 16, 11.5)
    yield svg.words(axis.start - 12, frame.base + 18, unit, "tick", "end", 11.5)


def _drawn(steps: Steps, frame: _Frame, kind: str, fill: str) -> Iterator[str]:
    """The steps of one taxon: what lies below them, their edge, and a head at each end that is open."""
    ordered = sorted(steps, key=lambda step: tuple(float("-inf") if end is None else end for end in step[:2]))
    area, edge, heads = "", "", []
    last = float("-inf")
    base = svg.number(frame.base)
    for low, high, share in ordered:
        left, right = frame.ends(low, high)
        y, start = svg.number(frame.at(share)), f"M{svg.number(left)} "
        area += f"{start}{base}V{y}H{svg.number(right)}V{base}Z"
        if left > last + 0.05:  # nothing before it: the edge comes up from the floor, unless the end is open
            edge += f"V{base}" if edge else ""
            edge += f"{start}{base}" if low is not None else f"{start}{y}"
        edge += f"V{y}H{svg.number(right)}"
        last = right
        heads += [(left, frame.at(share), -1)] if low is None else []
        heads += [(right, frame.at(share), 1)] if high is None else []
    yield from _filled(area, kind, fill)
    closed = ordered and ordered[-1][1] is not None
    yield svg.element("path", d=f"{edge}V{base}" if closed else edge or "M0 0", class_=f"edge {kind}")
    for x, y_, way in heads:
        yield _head(x, y_, way)


def _filled(d: str, kind: str, fill: str) -> Iterator[str]:
    given: dict[str, str | float] = {"fill": fill} if fill else {}
    yield svg.element("path", d=d or "M0 0", class_=f"area {kind}", **given)


def _head(x: float, y: float, way: int) -> str:
    back = svg.number(x - 9 * way)
    return svg.element(
        "path", d=f"M{svg.number(x)} {svg.number(y)}L{back} {svg.number(y - 5)}V{svg.number(y + 5)}Z", class_="head"
    )


def _half(frame: _Frame) -> Iterator[str]:
    y = frame.at(0.5)
    yield svg.line(frame.axis.start, y, frame.axis.end, y, "half")


def _bounds(steps: Steps, frame: _Frame) -> Iterator[str]:
    """A small tick below the floor for each bound that some work states."""
    for bound in sorted({end for low, high, _ in steps for end in (low, high) if end is not None}):
        x = frame.axis.at(bound)
        yield svg.line(x, frame.base + 1, x, frame.base + 6, "bound")


def _threshold(profile: Profile, frame: _Frame) -> Iterator[str]:
    if profile.threshold is None:
        return
    value, text = profile.threshold
    x = frame.axis.at(value)
    yield svg.line(x, frame.top - 6, x, frame.base + 6, "parting")
    yield _centred(x, frame.top - 11, text, frame, "parting-words")


def _below(profile: Profile, frame: _Frame, key: str) -> tuple[list[str], float]:
    """Below the axis: where half or more agree, and what all share; with the height of the whole picture."""
    body: list[str] = []
    y = frame.base + 34
    if profile.majority:
        for low, high in profile.majority:
            left, right = frame.ends(low, high)
            wide = max(right - left, 2.0)
            body.append(svg.element("rect", x=left, y=y - 4, width=wide, height=8.0, class_="most",
                                    fill=f"url(#{key}-hatch)"))  # fmt: skip
            body += _open_heads(low, high, frame, y)
        said = profile.most or _said(profile.majority, profile)
        body.append(_centred(_middle(profile.majority, frame), y + 18, f"half or more: {said}", frame, "core"))
        y += _BELOW + 4
    if profile.core:
        left, right = frame.ends(*profile.core)
        d = f"M{svg.number(left)} {svg.number(y - 4)}v4H{svg.number(right)}v-4"
        body.append(svg.element("path", d=d, class_="bracket"))
        body += _open_heads(*profile.core, frame, y)
        said = profile.shared or _said((profile.core,), profile)
        body.append(_centred(_middle((profile.core,), frame), y + 15, f"shared by all: {said}", frame, "core"))
        y += _BELOW
    return body, y - 8


def _open_heads(low: float | None, high: float | None, frame: _Frame, y: float) -> Iterator[str]:
    left, right = frame.ends(low, high)
    if low is None:
        yield _head(left, y, -1)
    if high is None:
        yield _head(right, y, 1)


def _middle(stretches: tuple[Stretch, ...], frame: _Frame) -> float:
    ends = [end for stretch in stretches for end in frame.ends(*stretch)]
    return (min(ends) + max(ends)) / 2


def _centred(x: float, y: float, text: str, frame: _Frame, class_: str) -> str:
    """Words about `x`, moved and if need be shortened so that they stay in the picture."""
    printed = svg.shortened(text, frame.width - 8)
    half = svg.width_of(printed) / 2
    return svg.words(min(max(x, 4 + half), frame.width - 4 - half), y, printed, class_, "middle")


def _said(stretches: tuple[Stretch, ...], profile: Profile) -> str:
    """Stretches in figures, to three digits."""
    printed = " and ".join(_stretch(*stretch) for stretch in stretches)
    return f"{printed} {profile.unit}" if profile.unit else printed


def _stretch(low: float | None, high: float | None) -> str:
    ends = [None if end is None else tick_label(_short(end)) for end in (low, high)]
    if ends[0] is None or ends[1] is None:
        return f"from {ends[0]}" if ends[0] else f"up to {ends[1]}" if ends[1] else "any"
    return ends[0] if ends[0] == ends[1] else f"{ends[0]}–{ends[1]}"


def _short(value: float) -> float:
    return float(f"{value:.3g}") if abs(value) < 1000 else float(round(value))
