"""The state ladder: which states each author gives, in order of time.

States stand as columns. Along an ordered spectrum a span of states is one bar, from state to state;
otherwise each state has its own mark. How often a state is said to occur is told by the mark: solid
(always, usually), hatched (often, sometimes), outline (occasionally, rarely), cross (never).
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from string import ascii_lowercase

from auctorum.site.pictures import svg
from auctorum.site.pictures.range_ladder import NARROW, SILENCE, WIDE

STRENGTHS = ("solid", "hatched", "outline", "cross")


@dataclass(frozen=True, slots=True)
class Patch:
    """States from column `first` to `last` (from 0, the same for one state), with a strength of STRENGTHS."""

    first: int
    last: int
    strength: str = "solid"


@dataclass(frozen=True, slots=True)
class StateRow:
    """One author; no patches: silence."""

    label: str
    patches: tuple[Patch, ...] = ()
    repeats: bool = False


@dataclass(frozen=True, slots=True)
class StateLadder:
    """A whole ladder; `shared` are the columns that every author allows."""

    title: str
    description: str
    states: tuple[str, ...]
    rows: tuple[StateRow, ...]
    ordered: bool
    shared: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class _Grid:
    width: float
    start: float
    column: float
    row: float
    top: float
    lettered: bool

    def middle(self, index: int) -> float:
        return self.start + (index + 0.5) * self.column


def state_ladder(ladder: StateLadder, key: str, narrow: bool = False) -> str:
    """`ladder` as SVG; `key` makes its ids unique on a page, `narrow` suits a telephone."""
    count = max(len(ladder.states), 1)
    width = NARROW if narrow else WIDE
    label = min(max(svg.width_of(row.label) for row in ladder.rows) + 16, 150 if narrow else 230)
    column = min((width - label - 10) / count, 150)
    heads = [svg.wrapped(state, column - 8, 11.5) for state in ladder.states]
    lettered = narrow or any(len(lines) > 3 or any("…" in each for each in lines) for lines in heads)
    depth = 1 if lettered else max((len(lines) for lines in heads), default=1)
    grid = _Grid(width, label + 4, column, 23, 12 + 14 * depth, lettered)
    foot = grid.top + grid.row * len(ladder.rows) + 4
    body = [svg.hatch(key), *_columns(ladder, grid, heads, foot, key)]
    for index, row in enumerate(ladder.rows):
        body += _row(row, ladder, grid, grid.top + (index + 0.5) * grid.row, key)
    key_lines = list(_key(ladder, foot + 18)) if lettered else []
    height = foot + 8 + 16 * len(key_lines)
    return svg.picture(key, (width, height), ladder.title, ladder.description, body + key_lines, "ladder states")


def _columns(ladder: StateLadder, grid: _Grid, heads: list[tuple[str, ...]], foot: float, key: str) -> Iterator[str]:
    for index, lines in enumerate(heads):
        x = grid.middle(index)
        if index in ladder.shared:
            yield svg.element(
                "rect", x=x - grid.column / 2 + 2, y=grid.top - 2, width=grid.column - 4, height=foot - grid.top,
                fill=f"url(#{key}-hatch)", class_="majority",
            )  # fmt: skip
        yield svg.line(x, grid.top - 2, x, foot, "grid")
        printed = (_letter(index),) if grid.lettered else lines
        for depth, words in enumerate(reversed(printed)):
            yield svg.words(x, grid.top - 9 - 14 * depth, words, "tick", "middle", 11.5)


def _row(row: StateRow, ladder: StateLadder, grid: _Grid, y: float, key: str) -> Iterator[str]:
    yield svg.words(grid.start - 10, y + 4.5, svg.shortened(row.label, grid.start - 12), "who", "end")
    if not row.patches:
        end = grid.middle(len(ladder.states) - 1) + grid.column / 2
        yield svg.line(grid.start, y, end, y, "unsaid")
        wide = svg.width_of(SILENCE) + 12
        yield svg.box((grid.start + end - wide) / 2, y - 9, wide, 18, "blank")
        yield svg.words((grid.start + end) / 2, y + 4.5, SILENCE, "silent", "middle")
        return
    for patch in row.patches:
        yield from _patch(patch, row, grid, y, key)


def _patch(patch: Patch, row: StateRow, grid: _Grid, y: float, key: str) -> Iterator[str]:
    left, right = grid.middle(patch.first), grid.middle(patch.last)
    if patch.strength == "cross":
        for x in dict.fromkeys((left, right)):
            yield svg.line(x - 5, y - 5, x + 5, y + 5, "never")
            yield svg.line(x - 5, y + 5, x + 5, y - 5, "never")
        return
    shape = {"x": left - 7, "y": y - 6, "width": right - left + 14, "height": 12.0, "rx": 6.0}
    if patch.strength == "hatched":
        yield svg.element("rect", class_="blank", **shape)
        yield svg.element("rect", class_="patch hatched", fill=f"url(#{key}-hatch)", **shape)
    else:
        kind = "patch repeated" if row.repeats and patch.strength == "solid" else f"patch {patch.strength}"
        yield svg.element("rect", class_=kind, **shape)


def _key(ladder: StateLadder, top: float) -> Iterator[str]:
    for index, state in enumerate(ladder.states):
        yield svg.words(4, top + 16 * index, f"{_letter(index)}  {state}", "says", size=11.5)


def _letter(index: int) -> str:
    return ascii_lowercase[index] if index < len(ascii_lowercase) else str(index + 1)
