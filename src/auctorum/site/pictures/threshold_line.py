"""A threshold across a picture, with its words: one that stands, and one that a script moves along the axis."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from auctorum.site.pictures import svg
from auctorum.site.pictures.scale import Scale, tick_label

TIER = 17.0  # height of a line of words over a picture


@dataclass(frozen=True, slots=True)
class Across:
    """Where thresholds cross: `top` is the upper edge of the plot, `foot` where their lines end."""

    axis: Scale
    width: float
    top: float
    foot: float


def standing(value: float, text: str, across: Across) -> Iterator[str]:
    """The threshold of the criterion, its words in the first line over the plot."""
    x = across.axis.at(value)
    yield svg.line(x, across.top - 7, x, across.foot, "parting")
    left = x + 7 + svg.width_of(text) > across.width - 4
    yield svg.words(x - 7 if left else x + 7, across.top - 11, text, "parting-words", "end" if left else "start")


def moving(value: float, text: str, across: Across) -> str:
    """The threshold that a script moves: a group that is shifted, its words in the second line over the plot.

    The script reads the axis off the group: `data-low` to `data-high` lie at `data-start` to `data-end`.
    """
    axis, x = across.axis, across.axis.at(value)
    y = across.top - 11 - TIER
    head = f"M-6 {svg.number(y + 5)}h12l-6 8Z"
    parts = (
        svg.line(0, y + 8, 0, across.foot, "cut-line"),
        svg.element("path", d=head, class_="cut-head"),
        svg.words(*_shift(x, across), text, "cut-words", _anchor(x, across)),
    )
    ends = {f"data_{name}": f"{value:.10g}" for name, value in zip(_ENDS, _of(axis), strict=True)}
    return svg.element(
        "g", "".join(parts), class_="cut", transform=f"translate({svg.number(x)} 0)",
        data_width=svg.number(across.width), **ends,
    )  # fmt: skip


_ENDS = ("low", "high", "start", "end")
_ROOM = 46.0  # to either side of a line, for words about it


def _of(axis: Scale) -> tuple[float, float, float, float]:
    return axis.low, axis.high, axis.start, axis.end


def _shift(x: float, across: Across) -> tuple[float, float]:
    """Where the words of the moving line stand, seen from the line."""
    return {"start": -6.0, "end": 6.0, "middle": 0.0}[_anchor(x, across)], across.top - 11 - TIER


def _anchor(x: float, across: Across) -> str:
    """About the line, unless the words would leave the picture; the script does the same."""
    return "start" if x < _ROOM else "end" if x > across.width - _ROOM else "middle"


def value_ticks(axis: Scale, base: float, width: float, unit: str) -> Iterator[str]:
    """Ticks below the floor with their figures, the unit behind the last."""
    ticks: Sequence[float] = axis.ticks()
    for tick in ticks:
        x, text = axis.at(tick), tick_label(tick)
        yield svg.line(x, base, x, base + 4, "floor")
        if tick != ticks[-1] or not unit:
            yield svg.words(x, base + 18, text, "tick", "middle", 11.5)
            continue
        start = x - svg.width_of(text, 11.5) / 2
        whole = f"{text} {unit}"
        end = start + svg.width_of(whole, 11.5) > width - 2
        yield svg.words(width - 2 if end else start, base + 18, whole, "tick", "end" if end else "start", 11.5)
