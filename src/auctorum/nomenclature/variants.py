"""Orthographical variants: forms of one name on one type that are no names of their own (ICN Art. 61)."""

from __future__ import annotations

from auctorum.names.agreement import EpithetKind
from auctorum.names.confusable import confusable
from auctorum.names.fold import fold
from auctorum.nomenclature.code import Code
from auctorum.records.schema import EpithetRecord


def variant_of(code: Code, name: str) -> str | None:
    """The earlier name on the same type, of the same rank in the same place, of which a name is but another spelling,
    compounding or inflection (Art. 61.2), or that it is confusably like (61.5); None if it is a name of its own.

    An adjective and a noun are no variants of each other (61.2 Ex. 2).
    """
    entry = code.corpus.names[name]
    own = code.inquiry.publishing(name)
    for other in code.corpus.groups.get(entry.group, ()):
        like, first = code.corpus.names[other], code.inquiry.publishing(other)
        if other == name or like.rank != entry.rank or own is None or first is None:
            continue
        if not first.work.date.certainly_before(own.work.date):
            continue
        if entry.name.species and (like.name.genus, like.name.species if entry.name.lower else "") != (
            entry.name.genus,
            entry.name.species if entry.name.lower else "",
        ):
            continue
        if _kinds_differ(own.record.epithet, first.record.epithet):
            continue
        one, two = entry.name.final_epithet, like.name.final_epithet
        if fold(one) == fold(two) or confusable(one, two, rank=entry.rank):
            return other
    return None


def _kinds_differ(one: EpithetRecord | None, other: EpithetRecord | None) -> bool:
    kinds = {None if record is None else record.kind for record in (one, other)}
    return EpithetKind.ADJECTIVE in kinds and EpithetKind.NOUN in kinds
