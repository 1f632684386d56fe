"""What is not known: one open question, with what to do about it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from auctorum.problems import NOWHERE, Place


class GapKind(StrEnum):
    """Kinds of open questions, in the order in which they are explained."""

    PAIR = "pair"
    UNTOLD = "untold"
    SILENT = "silent"
    NAME = "name"
    UNCLEAR = "unclear"
    CONFLICT = "conflict"
    REPETITION = "repetition"
    CRITERION = "criterion"
    SITE = "site"

    @property
    def meaning(self) -> str:
        """The kind in a few words."""
        return _MEANINGS[self]


_MEANINGS = {
    GapKind.PAIR: "two sister taxa that no stated character tells apart",
    GapKind.UNTOLD: "characters stated for the sisters of a taxon, and not for it",
    GapKind.SILENT: "a work that leaves out what nearly all others give",
    GapKind.NAME: "a name without protologue, without type, or with a type only partly known",
    GapKind.UNCLEAR: "statements that could not be read, or that leave the growth stage open",
    GapKind.CONFLICT: "authors who differ, where measured plants would settle it",
    GapKind.REPETITION: "a work that says what another says, and does not cite it",
    GapKind.CRITERION: "a working definition that rests on few works or few plants",
    GapKind.SITE: "a candidate site that nobody has searched",
}


@dataclass(frozen=True, slots=True)
class Gap:
    """One open question. `rank` is how much an answer would change, 0 to 1 (see `rank`).

    `question`, `why` and `todo` are sentences; the question begins with what it is about. The rest are ids of what is
    named in them (`characters` by their names); `place` is where the answer belongs, NOWHERE where that is open.
    `in_field` is true where somebody has to go out for it; `remarks` are those of the site, for that person alone:
    dangers and permits stand in them, and directions, too.
    """

    kind: GapKind
    rank: float
    question: str
    why: str
    todo: str
    taxa: tuple[str, ...] = ()
    names: tuple[str, ...] = ()
    works: tuple[str, ...] = ()
    characters: tuple[str, ...] = ()
    sites: tuple[str, ...] = ()
    place: Place = NOWHERE
    in_field: bool = False
    remarks: str = ""
