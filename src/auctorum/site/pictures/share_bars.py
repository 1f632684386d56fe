"""Shares side by side: how many plants each view counts, with the interval of the share and what stays open.

A row for each view: a bar from none to the share, hatched beyond it as far as the undecided plants reach, and over it a
line with ends, the interval. A view that counts nothing has words in place of the bar.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from auctorum.site.pictures import svg
from auctorum.site.pictures.scale import Scale

WIDE, NARROW = 880.0, 340.0
SMALL, SMALL_HIGH = 150.0, 16.0
_ROW = 46.0
LEVELS = (0, 25, 50, 75, 100)


@dataclass(frozen=True, slots=True)
class Share:
    """One view: shares 0 to 1, `share` None where nothing is counted; `says` in print, `marked`: to stand out."""

    label: str
    says: str
    share: float | None = None
    low: float = 0.0
    high: float = 1.0
    undecided: float = 0.0  # share of those judged
    marked: bool = False


def share_bars(title: str, description: str, shares: tuple[Share, ...], key: str, narrow: bool = False) -> str:
    """`shares` as SVG; `key` makes its ids unique on a page, `narrow` suits a telephone."""
    width = NARROW if narrow else WIDE
    label = min(max((svg.width_of(one.label) for one in shares), default=0) * 1.05 + 18, 320)
    axis = Scale(0, 1, 16, NARROW - 16, 0.25) if narrow else Scale(0, 1, label, WIDE - 220, 0.25)
    top = 20.0
    heights = [_height(one) if narrow else 27.0 for one in shares]
    foot = top + sum(heights) + 4
    body = [svg.hatch(key)]
    for level in LEVELS:
        x = axis.at(level / 100)
        body.append(svg.line(x, top - 2, x, foot, "grid"))
        body += [svg.words(x, y, f"{level} %", "tick", "middle", 11.5) for y in (12, foot + 15)]
    for one, high in zip(shares, heights, strict=True):
        body += _narrow(one, axis, top, high, key) if narrow else _wide(one, axis, top + 14, key)
        top += high
    return svg.picture(key, (width, foot + 22), title, description, body, "shares")


def _wide(one: Share, axis: Scale, y: float, key: str) -> Iterator[str]:
    yield svg.words(axis.start - 14, y + 4.5, svg.shortened(one.label, axis.start - 18), _who(one), "end")
    if one.share is None:
        yield svg.words(axis.start + 6, y + 4.5, svg.shortened(one.says, WIDE - axis.start - 10), "silent")
        return
    yield svg.words(axis.end + 14, y + 4.5, svg.shortened(one.says, WIDE - axis.end - 16), "says")
    yield from _bar(one, axis, y, f"url(#{key}-hatch)")


def _narrow(one: Share, axis: Scale, top: float, high: float, key: str) -> Iterator[str]:
    """The words stand over the bar, in two lines where one is too short."""
    yield svg.words(4, top + 15, svg.shortened(one.label, NARROW - 8), _who(one))
    if one.share is None:
        yield svg.words(4, top + 32, svg.shortened(one.says, NARROW - 8), "silent")
        return
    if high > _ROW:
        yield svg.words(4, top + 31, one.says, "says")
    else:
        yield svg.words(NARROW - 4, top + 15, one.says, "says", "end")
    yield from _bar(one, axis, top + high - 15, f"url(#{key}-hatch)")


def _height(one: Share) -> float:
    """The height of a row on a telephone."""
    wide = 1.05 * svg.width_of(one.label) + svg.width_of(one.says)
    return _ROW if one.share is None or wide < NARROW - 24 else _ROW + 16


def _who(one: Share) -> str:
    return "who plants" if one.marked else "who"


def _bar(one: Share, axis: Scale, y: float, fill: str) -> Iterator[str]:
    assert one.share is not None
    x, wide = axis.start, axis.at(one.share) - axis.start
    if one.undecided:
        end = axis.at(min(one.share + one.undecided, 1.0))
        yield svg.element("rect", x=x + wide, y=y - 6, width=end - x - wide, height=12.0, class_="undecided", fill=fill)
    yield svg.box(x, y - 6, wide, 12, "share")
    d = whisker(axis.at(one.low), axis.at(one.high), y)
    yield svg.element("path", d=d, class_="interval-halo") + svg.element("path", d=d, class_="interval")


def whisker(low: float, high: float, y: float) -> str:
    """The path of a line with ends."""
    up = svg.number(y - 4)
    return f"M{svg.number(low)} {up}v8M{svg.number(low)} {svg.number(y)}H{svg.number(high)}M{svg.number(high)} {up}v8"


def small_bar(share: float | None, low: float, high: float) -> str:
    """A bar alone for the row of a table, whose words say the same; empty where nothing was measured.

    A script sets the width of `.share` and the path of `.interval`, both in parts of SMALL.
    """
    y, wide = SMALL_HIGH / 2, SMALL - 4
    d = whisker(2 + wide * low, 2 + wide * high, y) if share is not None else ""
    body = [
        svg.box(2, y - 5, wide, 10, "track"),
        svg.box(2, y - 5, wide * (share or 0.0), 10, "share"),
        svg.element("path", d=d or "M0 0", class_="interval-halo"),
        svg.element("path", d=d or "M0 0", class_="interval"),
    ]
    return svg.element(
        "svg", "".join(body), class_="small-bar", viewBox=f"0 0 {svg.number(SMALL)} {svg.number(SMALL_HIGH)}",
        width=SMALL, height=SMALL_HIGH, aria_hidden="true",
    )  # fmt: skip
