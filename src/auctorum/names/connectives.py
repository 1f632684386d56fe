"""Rank terms and Greek letters at a cursor: what may connect one epithet with the next."""

from __future__ import annotations

from typing import NamedTuple

from auctorum.names.ranks import UNRANKED, Rank, read_term
from auctorum.names.tokens import Cursor


class Connective(NamedTuple):
    """What stands before an epithet: its rank, whether it marks a hybrid, and printed words worth keeping."""

    rank: Rank
    hybrid: bool
    notes: tuple[str, ...]


def take_connective(cursor: Cursor) -> Connective | None:
    """A rank term, a Greek letter, or both, which the cursor passes; None, and no move, if there is neither.

    A Greek letter numbers varieties in old floras; without a term it stands for no rank.
    """
    term = _term(cursor)
    while term is not None and (nearer := _term(cursor)) is not None:
        # Of `subsp. var. longum`, where an epithet is missing, the nearer term counts.
        term = nearer._replace(notes=(*term.notes, term.rank.term, *nearer.notes))
    greek = _greek(cursor)
    if term is None:
        return Connective(UNRANKED, False, (greek,)) if greek else None
    return term._replace(notes=(*term.notes, greek)) if greek else term


def _term(cursor: Cursor) -> Connective | None:
    closing = {"[": "]", "(": ")"}.get(cursor.peek().text)
    token = cursor.peek(1 if closing else 0)
    found = read_term(token.text) if token.kind == "word" else None
    if found is None or (closing and cursor.peek(2).text != closing):
        return None
    cursor.take(3 if closing else 1)
    rank, hybrid = found
    # Terms of no rank of the Code (proles, lusus) would be lost with the canonical one.
    return Connective(rank, hybrid, (token.text,) if rank is UNRANKED and token.key != "unranked" else ())


def _greek(cursor: Cursor) -> str:
    bracketed = cursor.peek().text in ("(", "[")
    token = cursor.peek(int(bracketed))
    if len(token.bare) != 1 or not "α" <= token.bare <= "ω":
        return ""
    if bracketed and cursor.peek(2).text not in (")", "]"):
        return ""
    cursor.take(3 if bracketed else 1)
    return token.bare
