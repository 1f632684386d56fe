"""Orthographical variants: forms of one name on one type that are no names of their own (ICN Art. 61)."""

from __future__ import annotations

import re

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
        if _one_stem(one, two) or confusable(one, two, rank=entry.rank):
            return other
    return None


def _one_stem(one: str, other: str) -> bool:
    """Whether two words are forms of one stem: the same consonants once the ending is off, beginning alike.

    So judged are Nelumbo and Nelumbium (61.2 Ex. 1), Geaster and Geastrum (61.5 Ex. 3; both from memory); a
    judgement of ours, for names on one type only.

    >>> _one_stem("Nelumbo", "Nelumbium"), _one_stem("Calytrix", "Calycothrix")
    (True, False)
    """
    first, second = _stem(one), _stem(other)
    return first == second and (len(first) > LEAST_CONSONANTS or fold(one) == fold(other))


LEAST_CONSONANTS = 2
_ENDING = re.compile(r"(?:i?um|r?um|e?on|eris?|e[rs]|i?us|i?a|os|is|[oe])$")


def _stem(word: str) -> str:
    bare = re.sub(r"(.)\1+", r"\1", _ENDING.sub("", fold(word)))
    return bare[:1] + re.sub("[aeiouy]", "", bare[1:])


def _kinds_differ(one: EpithetRecord | None, other: EpithetRecord | None) -> bool:
    kinds = {None if record is None else record.kind for record in (one, other)}
    return EpithetKind.ADJECTIVE in kinds and EpithetKind.NOUN in kinds
