"""The frozen pieces that the page of a survey is put together from."""

from __future__ import annotations

from dataclasses import dataclass

from auctorum.site.page_parts import Figure
from auctorum.site.words import Rich

Cells = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """Rows under headings; `figures` are the columns that are set to the right."""

    headings: Cells
    rows: tuple[Cells, ...]
    figures: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class CountRow:
    """Plants under one view, or under several that count alike; `cells` are those under HEADINGS but for the first."""

    who: Rich
    cells: Cells
    remark: Rich


@dataclass(frozen=True, slots=True)
class PlaceRow:
    """One site, or all together (`site` is `all`): `bar` is the share at the threshold as SVG, `now`, `share` and
    `within` say it in words; `cells` are the counts of the views. `number` finds it for the script."""

    number: int
    site: str
    island: str
    plants: str
    bar: str
    now: str
    share: str
    within: str
    cells: Cells


@dataclass(frozen=True, slots=True)
class Mover:
    """What the script needs to move the threshold; everything in words or figures as they stand in attributes.

    `figures` is a list in JSON: row of the site, figure, half-width of its error, plants. `rows` are the rows of sites
    without the last, which is all; 0 where there are too many figures to tell them by site. `side` says what counts,
    with `{}` for the threshold. `drawn` is how far beside the threshold its line stands, `parted` how far beside it
    plants part (counts and states lie in steps). `beside` is another unit with the canonical units it holds. `states`
    is a list in JSON.
    """

    figures: str
    rows: int
    least: str
    most: str
    step: str
    value: str
    at_least: bool
    fitting: bool
    side: str
    unit: str
    drawn: str
    parted: str
    beside: str
    factor: str
    states: str


@dataclass(frozen=True, slots=True)
class Threshold:
    """The decisive character, its histogram and curve. `said` is the count at the threshold of the criterion,
    `printed` that threshold, `whose` tells whose it is; `mover` is None where there are too many figures for a page."""

    character: Rich
    label: str
    title: str
    printed: str
    whose: str
    said: str
    beside: str
    remarks: tuple[str, ...]
    histogram: Figure
    columns: Table
    line: Figure
    curve: Table
    bounds: Table
    mover: Mover | None
