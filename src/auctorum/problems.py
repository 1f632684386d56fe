"""Place, Problem and the one error root.

Below, an error is an exception with fields; above, it is a Problem with a place and a remedy.

    AuctorumError
    ├── names: UnreadableName, UnknownRank
    ├── characters: UnreadableValue, UnreadableCell, UnreadableColour, ReversedRange, UnknownUnit, UnfitUnit
    ├── corpus: UnknownName, AmbiguousName, MoreThanAName, NeverAccepted, UnknownCharacter, ImpossibleValue,
    │           UnusableCriterion
    ├── nomenclature: UnknownEdition, NotPlaced, UnknownWork, NoPlace, OtherTypes, NothingIncluded
    ├── circumscription: TooFewTaxa, NoSisters
    ├── determination: NothingStated, NotUnderstood, NoThreshold, AgainstItself
    └── edges: UnusableOutput, NoRoom, UnevenTable, Unwritable, WhichTreatment, NotUtf8, TooLong, NoText, Stopped ...
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum
from typing import NamedTuple


class Place(NamedTuple):
    """Where something stands: line and column count from 1, as editors do; 0 stands for the whole file."""

    file: str
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        return ":".join(str(part) for part in self if part not in (0, ""))


NOWHERE = Place("")


class Severity(StrEnum):
    """An error makes `check` fail; a warning is worth a look; an open question is something to look up."""

    ERROR = "error"
    WARNING = "warning"
    OPEN = "open"


@dataclass(frozen=True, slots=True, order=True)
class Problem:
    """One thing that is wrong: where, what, and what to do about it.

    >>> print(Problem(Place("a.yaml", 3, 5), "lower bound 34 is above upper bound 22", "give the lower first"))
    a.yaml:3:5: lower bound 34 is above upper bound 22 (give the lower first)
    """

    place: Place
    what: str
    remedy: str
    severity: Severity = Severity.ERROR
    # Path from the record at `place` to the value that is wrong, for the reader to look up in the file.
    within: tuple[str | int, ...] = field(default=(), compare=False, repr=False)

    def __str__(self) -> str:
        label = "" if self.severity is Severity.ERROR else f"{self.severity}: "
        return f"{self.place}: {label}{self.what} ({self.remedy})"


class AuctorumError(Exception):
    """Root of every error this package raises on purpose; `remedy` tells a person what to do."""

    remedy = "see `auctorum --help`"

    def at(self, place: Place, *within: str | int, severity: Severity = Severity.ERROR) -> Problem:
        """This error as a problem of the record at `place`, at the path `within` below it."""
        return Problem(place, str(self), self.remedy, severity, within)
