"""Ranks in the order in which pictures and lists show them."""

from __future__ import annotations

from collections.abc import Iterable

from auctorum.names.ranks import UNRANKED, rank_of_term


def height(rank: str) -> int:
    """Where `rank` stands, a smaller number higher up; words that are no rank stand lowest."""
    return (rank_of_term(rank) or UNRANKED).level


def by_rank(ranks: Iterable[str]) -> tuple[str, ...]:
    """`ranks` from the highest to the lowest, each once.

    >>> by_rank(["variety", "species", "variety", "unranked"])
    ('species', 'variety', 'unranked')
    """
    return tuple(sorted(set(ranks), key=lambda rank: (height(rank), rank)))
