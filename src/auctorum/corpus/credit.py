"""Who is credited with a name: its own authors, by the act that publishes it (ICN Art. 46)."""

from __future__ import annotations

from dataclasses import replace

from auctorum.corpus.model import Act
from auctorum.names.name import Authors, Credit, Team
from auctorum.names.parse import parse_authors
from auctorum.problems import AuctorumError
from auctorum.records.schema import ActKind


def own_credit(act: Act) -> Credit:
    """Authors of the name after the parentheses: as recorded, else by the ascription, else those of the work.

    Without an ascription the authors of the publication are the authors (Art. 46.1 Note 1). What is ascribed
    to others is theirs if they share in the work (46.2, 46.3), if a new taxon is described by them too (46.2), or
    if the work says that they made the combination; else they stand before `ex` (46.5).
    """
    recorded = recorded_authors(act)
    if recorded.own:
        return recorded.own
    work = Team(act.work.authors)
    ascribed = _team(act.record.ascribed_to)
    if not ascribed:
        return Credit(work)
    if _shares(ascribed, work) or (act.record.described_by and _shares(ascribed, _team(act.record.described_by))):
        return Credit(ascribed)
    if act.record.act is not ActKind.NEW_TAXON and act.record.contributed:
        return Credit(ascribed)
    return Credit(work, ex_before=ascribed)


def recorded_authors(act: Act) -> Authors:
    """The citation given in `authors:`, with parentheses where the record has them; empty if none is given."""
    if not act.record.authors:
        return Authors()
    try:
        return parse_authors(act.record.authors)
    except AuctorumError:
        return Authors(own=Credit(Team((act.record.authors,))))  # named as a problem by the linker


def shown(credit: Credit) -> Credit:
    """`in` belongs to the reference, not to the name (ICN Art. 46, Rec. 46D; from memory)."""
    return replace(credit, within=Team())


def _team(said: str) -> Team:
    if not said:
        return Team()
    try:
        return parse_authors(said).own.team
    except AuctorumError:
        return Team((said,))


def _shares(one: Team, other: Team) -> bool:
    return bool(set(one.members) & set(other.members))
