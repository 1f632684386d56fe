"""A dichotomous key as frozen values."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Threshold:
    """At this stage, plants of less than `value` (canonical unit) take the lower side, all others the upper."""

    stage: str
    value: Fraction


@dataclass(frozen=True, slots=True)
class Division:
    """At this stage, plants with a state of `lower` take the lower side, with one of `upper` the upper.

    States of which nobody speaks stand on no side.
    """

    stage: str
    lower: tuple[str, ...]
    upper: tuple[str, ...]


Rule = Threshold | Division


@dataclass(frozen=True, slots=True)
class Want:
    """Why taxa that end together can't be parted, and what would help.

    `silent` are characters that somebody states for one of them, with those of which nobody does. `overlapping` is
    the number of characters stated for all; `closest` names the one that overlaps least and `overlap` how much, 0 to 1.
    """

    silent: tuple[tuple[str, tuple[str, ...]], ...] = ()
    overlapping: int = 0
    closest: str = ""
    overlap: float = 0.0


@dataclass(frozen=True, slots=True)
class Lead:
    """One side of a couplet. It goes on to the couplet `goes_to`, or ends in `taxa` (likeliest first, then by id).

    `pieces` are what it says, of the main character first; `upper` is the side of the rules that it takes.
    `holds` are all the taxa that it leads to, with the part of the plants of each that comes this way.
    """

    pieces: tuple[str, ...]
    upper: bool
    goes_to: int | None  # None: it ends here
    taxa: tuple[str, ...]  # () where it goes on
    holds: tuple[tuple[str, float], ...]
    want: Want | None = None  # for an end in several taxa


@dataclass(frozen=True, slots=True)
class Couplet:
    """Two leads on the same characters in the same order; plants are sent by `rules`, which are of the first."""

    number: int
    came_from: int | None  # None for the first
    characters: tuple[str, ...]
    rules: tuple[Rule, ...]
    leads: tuple[Lead, Lead]


@dataclass(frozen=True, slots=True)
class Expected:
    """How the key does by the densities alone, all taxa alike: steps, and parts of the plants."""

    steps: float
    wrong: float
    undecided: float


@dataclass(frozen=True, slots=True)
class Key:
    """A key to `taxa`, ids in the order asked for. Without couplets nothing parts them, and `want` says why."""

    taxa: tuple[str, ...]
    characters: tuple[str, ...]  # those that could be asked
    couplets: tuple[Couplet, ...]
    expected: Expected
    want: Want | None = None
