"""What stands on a field data sheet for chosen taxa: what to measure first, how, and where the taxa part."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from auctorum.circumscription.key.words import Names, Runs
from auctorum.circumscription.separation_words import HELPS, STRENGTHS

USEFUL_ERROR = next(error for error, word in STRENGTHS if word == HELPS)  # up to which a character parts two taxa


class Where(StrEnum):
    """Where an answer is written: in the row of the plant, once for the site, or nowhere, since it is reckoned."""

    PLANT = "plant"
    SITE = "site"
    RECKONED = "reckoned"


class Why(StrEnum):
    """Why a character is on the sheet."""

    PARTS = "it parts taxa"
    CRITERION = "a working criterion asks for it"
    ASKED = "it was asked for"
    RATIO = "a ratio is reckoned from it"


@dataclass(frozen=True, slots=True)
class Boundary:
    """A threshold between taxa (ids): `upto` in print for those below, `start` for those from it on.

    `error` is the greatest among the pairs: how often a plant is misjudged, each of the two taxa as likely.
    """

    below: tuple[str, ...]
    above: tuple[str, ...]
    upto: str  # `7`, `pubescent`; empty for a measure, which ends where the others begin
    start: str  # `25 mm (0.98 in.)`, `8`, `villous`
    error: float


@dataclass(frozen=True, slots=True)
class AtStage:
    """One character at one growth stage; `says` by taxon and `errors` by pair of taxa, None where one is silent."""

    stage: str
    label: str
    worth: float  # 0 to 1, by cost: mean over the pairs of 1 - 2 * error
    says: tuple[str, ...]
    errors: tuple[float | None, ...]
    boundaries: tuple[Boundary, ...]
    decides: tuple[str, ...] = ()  # thresholds of working criteria, in print


@dataclass(frozen=True, slots=True)
class Item:
    """One character of the sheet. `states` are codes and names; `rank` counts from 0 the order in which it is kept."""

    character: str
    heading: str  # of its column, as tables read it; empty where it is reckoned
    where: Where
    why: Why
    how: str
    stages: tuple[AtStage, ...]
    states: tuple[tuple[str, str], ...]
    rank: int

    @property
    def worth(self) -> float:
        return max((one.worth for one in self.stages), default=0.0)


@dataclass(frozen=True, slots=True)
class Rule:
    """A working criterion in print; `name` and `otherwise` are names in runs, () where there is none."""

    id: str
    title: str
    by: str
    decisive: str
    name: Runs
    otherwise: Runs
    supporting: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Column:
    """A column to fill in, headed exactly as tables read it; `once` for what holds for every row of the sheet."""

    heading: str
    once: bool
    hint: str = ""
    character: str = ""


@dataclass(frozen=True, slots=True)
class Sheet:
    """All that is printed. Items stand in the order of their worth, those of the site last."""

    taxa: tuple[str, ...]
    names: Names  # by taxon, in full
    short: Names  # by taxon, as it is called in the table
    items: tuple[Item, ...]
    pairs: tuple[tuple[str, str], ...]  # in the order of the errors
    rules: tuple[Rule, ...]
    mind: tuple[Runs, ...]  # sentences on stages that mislead
    part_nothing: tuple[str, ...]  # characters left out since they part none of the taxa
    no_room: tuple[str, ...] = ()  # characters that part some, left out for want of space
    life_stages: tuple[str, ...] = ()
    sexes: tuple[str, ...] = ()
    sec: str = ""
    cautions: tuple[str, ...] = ()
    notice: str = ""

    @property
    def columns(self) -> tuple[Column, ...]:
        """Those filled in once, then those of each plant; the headings of the table that is read back."""
        at_site = (*self._accuracy(), *(_column(item, True) for item in self.items if item.where is Where.SITE))
        of_plant = tuple(_column(item, False) for item in self.items if item.where is Where.PLANT)
        stages = " or ".join(self.life_stages)
        sex = (Column("sex", False, " or ".join(self.sexes)),) if self.sexes else ()
        return (*ONCE, *at_site, PLANT, Column("lifeStage", False, stages), *sex, *of_plant, REMARKS)

    def _accuracy(self) -> tuple[Column, ...]:
        """Of the instrument for the length that decides, or else that is worth most."""
        lengths = [one for one in self.items if one.where is Where.PLANT and one.heading != one.character]
        lengths.sort(key=lambda one: not any(stage.decides for stage in one.stages))
        return tuple(
            Column(one.heading.replace(" [", " ± [", 1), True, "its error", one.character) for one in lengths[:1]
        )

    @property
    def untold(self) -> tuple[tuple[str, str], ...]:
        """The pairs of taxa that no character of the sheet parts well enough to help."""
        useful = [
            {number for number, error in enumerate(one.errors) if error is not None and error <= USEFUL_ERROR}
            for item in self.items
            for one in item.stages
        ]
        told: set[int] = set().union(*useful)
        return tuple(pair for number, pair in enumerate(self.pairs) if number not in told)

    def shortened(self, most: int) -> Sheet:
        """The sheet with no more than so many characters, those once for the site included: the first in rank.

        A measure stays as long as a ratio on the sheet is reckoned from it, and the first rank always does.
        """
        ranks = sorted({item.rank for item in self.items})
        last = max((one for one in ranks if sum(item.rank <= one for item in self.items) <= most), default=0)
        kept = tuple(item for item in self.items if item.rank <= last)
        gone = tuple(item.character for item in self.items if item.rank > last)
        return replace(self, items=kept, no_room=(*self.no_room, *gone))


ONCE: Sequence[Column] = (
    Column("locationID", True, "id, no coordinates"),
    Column("eventDate", True, "2025-06-30"),
    Column("recordedBy", True, "observer"),
    Column("measurementMethod", True, "ruler, calliper"),
    Column("degreeOfEstablishment", True, "native or cultivated"),
)
PLANT = Column("occurrenceID", False, "one for each plant")
REMARKS = Column("occurrenceRemarks", False, "photograph no., scale in it")


def _column(item: Item, once: bool) -> Column:
    """The column of a character; its hint are the codes of its states, else the stages that count."""
    stages = " or ".join(one.stage for one in item.stages if one.stage)
    hint = " ".join(code for code, _ in item.states) or stages
    if item.heading.endswith("[degree]"):
        hint = "true north"
    return Column(item.heading, once, hint, item.character)
