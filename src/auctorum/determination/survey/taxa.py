"""What a survey counts as the taxon: itself and its parts, but no whole that takes it in; and who sinks it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass

from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import called
from auctorum.determination.candidates import Opinions
from auctorum.records.schema import Status


@dataclass(frozen=True, slots=True)
class Scope:
    """`counts` are the taxon and those that lie in it, `wholes` those that it lies in; ids of taxa."""

    taxon: str
    counts: frozenset[str]
    wholes: frozenset[str]


def scope_of(held: Opinions, taxon: str, work: str | None = None) -> Scope:
    """The scope as one work places taxa in each other, or as most of the works that place two of them do (None)."""
    works = held.wholes if work is None else (work,)
    pairs = Counter(pair for one in works for pair in held.wholes.get(one, ()) if taxon in pair)
    parts = {part for (part, whole), many in pairs.items() if whole == taxon and many > pairs.get((whole, part), 0)}
    wholes = {whole for (part, whole), _ in pairs.items() if part == taxon and whole not in parts}
    return Scope(taxon, frozenset({taxon, *parts}), frozenset(wholes))


def sunk_into(corpus: Corpus, held: Opinions, taxon: str) -> dict[str, tuple[str, ...]]:
    """Work -> what it sinks the type of the taxon into, names in running text, in the order of its record.

    Only works that do not accept the taxon. There is no name where a work does not say what it sinks it into.
    """
    found: dict[str, dict[str, None]] = {}
    for work, into in _sinking(corpus, corpus.taxa[taxon].group):
        if taxon not in held.accepted.get(work, ()):
            found.setdefault(work, {}).update({into: None} if into else {})
    return {work: tuple(names) for work, names in found.items()}


def _sinking(corpus: Corpus, group: str) -> Iterator[tuple[str, str]]:
    for one in corpus.treatments.values():
        own = corpus.names[one.name].group
        if one.status is Status.SYNONYM and own == group:
            into = one.accepted_as or one.parent
            yield one.work.id, called(corpus, into) if into else ""
        elif own != group and any(corpus.names[name].group == group for name in one.synonyms):
            yield one.work.id, called(corpus, one.name)
