"""The frozen pieces of pages that tell what the Code makes of names: badges, reasons, synonymies, rules."""

from __future__ import annotations

from dataclasses import dataclass

from auctorum.site.words import Rich


@dataclass(frozen=True, slots=True)
class Badge:
    """A standing in words; `look` is good, bad, none or open, and shapes the frame round the words."""

    words: str
    look: str


@dataclass(frozen=True, slots=True)
class Reason:
    """One step of a chain of reasons, with its article where one is at issue."""

    text: Rich
    article: str


@dataclass(frozen=True, slots=True)
class Question:
    """What the records leave open, and what would settle it."""

    label: str
    article: str
    reason: Rich
    look_up: Rich


@dataclass(frozen=True, slots=True)
class Called:
    """What a taxon must be called: a badge, the name or what would be needed, and why. A plain name needs no badge.

    `same` says that the answer is the one that stands before it, so that its reasons are not repeated.
    """

    badge: Badge | None
    answer: Rich
    reasons: tuple[Reason, ...]
    same: bool = False


@dataclass(frozen=True, slots=True)
class AuthorRow:
    """What one work calls the taxon, whether that was correct for its own view at its time, and is today."""

    who: Rich
    name: Rich
    rank: str
    then: Called
    now: Called


@dataclass(frozen=True, slots=True)
class RankRow:
    """What the taxon must be called at one rank; `where` is the place that was assumed."""

    rank: str
    where: Rich
    called: Called


@dataclass(frozen=True, slots=True)
class SynonymyLine:
    """One line of a synonymy: what it holds (accepted, homotypic, type ...), how far it is set in, and its words."""

    what: str
    depth: int
    text: Rich


@dataclass(frozen=True, slots=True)
class SynonymyView:
    """The synonymy over all works or of one, line by line. `remark` is what has to be said first; `sec` whose it is."""

    anchor: str
    label: str
    remark: Rich
    lines: tuple[SynonymyLine, ...]
    sec: Rich


@dataclass(frozen=True, slots=True)
class RuleRow:
    """One rule of the Code as the engine asks it, and the acts that it speaks of, each with what it does there."""

    article: str
    sentence: str
    acts: tuple[tuple[Rich, Rich, str], ...]  # name, work, ground in the trade's words


@dataclass(frozen=True, slots=True)
class OtherWork:
    """From the work of the page to another: the summary, then sentences under headings."""

    anchor: str
    who: Rich
    summary: str
    groups: tuple[tuple[str, tuple[Rich, ...]], ...]


@dataclass(frozen=True, slots=True)
class Start:
    """A work to start from, and the works to go to, each with the address of their comparison."""

    anchor: str
    label: str
    ends: tuple[Rich, ...]
