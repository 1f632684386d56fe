"""How a name moved: every act and every author's placement of one type, in order of time."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Event:
    """One act or one placement. `used` is the id of the name at issue, `as_printed` its words in that work.

    `what` says it in words ("new taxon", "change of rank", "accepted", "synonym of"); `parent` is the id of
    the taxon it is placed in, `target` that of the accepted name where it is sunk; `rank` is the rank it has
    in that work ("synonym" placements have the rank of the accepted taxon they are sunk into).
    """

    year: int
    date: str
    work: str
    page: str
    used: str
    as_printed: str
    is_act: bool
    what: str
    rank: str
    status: str  # accepted, synonym, misapplied, doubtful; empty for an act about a name only
    parent: str | None = None
    target: str | None = None
    notes: tuple[str, ...] = ()  # standing under the Code, with article: "not effectively published (Art. 29.1)"


@dataclass(frozen=True, slots=True)
class View:
    """One way of keeping the type: at a rank, under a name, or sunk into another."""

    label: str  # "species", "variety", "synonym of Cremnocentron album"
    rank: str
    works: tuple[str, ...]  # ids by date
    authors: tuple[str, ...]  # distinct authors or teams, by first date
    first: int
    last: int


@dataclass(frozen=True, slots=True)
class History:
    """Events of one type by date, the tally of opinion (most authors first), and who covers the group in silence."""

    group: str
    names: tuple[str, ...]
    events: tuple[Event, ...]
    views: tuple[View, ...]
    silent: tuple[str, ...]
