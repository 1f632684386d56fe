"""The step line of a survey: how many plants count, for each place at which the threshold may be drawn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from auctorum.site.pictures import svg
from auctorum.site.pictures.scale import Scale, scale, tick_label
from auctorum.site.pictures.threshold_line import TIER, Across, moving, standing, value_ticks

WIDE, NARROW = 880.0, 340.0
HEADING = "plants that count, by where the threshold is"


@dataclass(frozen=True, slots=True)
class StepLine:
    """The line begins at `first` plants; at each threshold of `steps` (ascending) it goes to that many.

    `marks` are thresholds that authors imply; `threshold` and `printed` as in `histogram.Histogram`, `axis` the ends of
    its axis, so that the two pictures stand one under the other.
    """

    title: str
    description: str
    unit: str
    first: int
    steps: tuple[tuple[float, int], ...]
    threshold: tuple[float, str]
    printed: str
    axis: tuple[Scale, Scale]  # wide, narrow
    marks: tuple[float, ...] = ()
    states: tuple[str, ...] = ()

    @property
    def most(self) -> int:
        """The most plants that count anywhere."""
        return max([self.first, *(count for _, count in self.steps)])


def step_line(one: StepLine, key: str, narrow: bool = False) -> str:
    """`one` as SVG; `key` makes its ids unique on a page, `narrow` suits a telephone."""
    width, axis = (NARROW, one.axis[1]) if narrow else (WIDE, one.axis[0])
    top = 14 + 3 * TIER
    base = top + (120 if narrow else 150)
    plants = scale([0, max(one.most, 1)], 0, 1, 4, whole=True)

    def at(count: float) -> float:
        return base - (base - top) * count / plants.high

    body = [svg.words(4, 13, svg.shortened(HEADING, width - 8, 11.5), "tick", "start", 11.5)]
    for tick in plants.ticks():
        body.append(svg.line(axis.start, at(tick), axis.end, at(tick), "grid" if tick else "floor"))
        body.append(svg.words(axis.start - 6, at(tick) + 4, tick_label(tick), "tick", "end", 11.5))
    body += _ticks(one, axis, base, width)
    d = f"M{svg.number(axis.start)} {svg.number(at(one.first))}"
    for value, count in one.steps:
        d += f"H{svg.number(axis.at(value))}V{svg.number(at(count))}"
    body.append(svg.element("path", d=f"{d}H{svg.number(axis.end)}", class_="edge steps"))
    for mark in sorted(set(one.marks)):
        body.append(svg.line(axis.at(mark), base - 5, axis.at(mark), base + 5, "bound makes"))
    across = Across(axis, width, top, base + 6)
    body += [moving(one.threshold[0], one.printed, across), *standing(*one.threshold, across)]
    return svg.picture(key, (width, base + 28), one.title, one.description, body, "histogram")


def _ticks(one: StepLine, axis: Scale, base: float, width: float) -> Iterator[str]:
    if not one.states:
        yield from value_ticks(axis, base, width, one.unit)
        return
    room = (axis.end - axis.start) / len(one.states) - 6
    for place, state in enumerate(one.states):
        yield svg.words(axis.at(place), base + 18, svg.shortened(state, room, 11.5), "tick", "middle", 11.5)
