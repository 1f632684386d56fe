"""Homonyms of a name, and the note that tells them apart (ICN Art. 53, Rec. 50C)."""

from __future__ import annotations

from dataclasses import dataclass

from auctorum.names.format import format_authors, format_name, words
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.judgement import Validity


@dataclass(frozen=True, slots=True)
class Homonymy:
    """Another name of the same words, or one ruled confusably alike, on another type.

    `other` is the earliest such name, `later` whether the name at issue is later than it.
    """

    other: str
    later: bool
    kind: str  # identical | confusable


def homonymy(code: Code, name: str) -> Homonymy | None:
    """The earliest homonym of a name, before it or after; None if it has none."""
    own = code.inquiry.publishing(name)
    alike = [(one, "identical") for one in same_words(code, name)]
    alike += [(one, "confusable") for one in sorted(code.inquiry.decisions.alike.get(name, ()))]
    found = [(one, kind) for one, kind in alike if code.inquiry.types[one] != code.inquiry.types[name]]
    if not found or own is None:
        return None
    other, kind = min(found, key=lambda pair: code.inquiry.position(pair[0]))
    first = code.inquiry.publishing(other)
    later = first is not None and first.work.id != own.work.id and first.work.date.certainly_before(own.work.date)
    return Homonymy(other, later, kind)


def same_words(code: Code, name: str) -> tuple[str, ...]:
    """Other validly published names that would be homonyms of a name: the same words from species up, the same
    epithet at whatever rank below the species or among the subdivisions of a genus (Art. 53.1, 53.3)."""
    entry = code.corpus.names[name]
    found = []
    for other in code.inquiry.of_like_epithet(entry.name):
        judged = code.of_name(other)
        ranked_apart = code.corpus.names[other].rank != entry.rank and not (entry.name.lower or entry.name.divisions)
        if other != name and not ranked_apart and judged is not None and judged.validity is not Validity.NOT_VALID:
            found.append(other)
    return tuple(found)


def homonym_note(code: Code, name: str) -> str:
    """The name with its authors and, after a comma, its homonyms by author and year, earlier and later ones alike:
    `Bartlingia Brongn., non Rchb. 1824 nec F. Muell. 1882` (ICN Rec. 50C; the example from memory)."""
    entry = code.corpus.names[name]
    others = [one for one in same_words(code, name) if words(code.corpus.names[one].name) == words(entry.name)]
    others = [one for one in others if code.inquiry.types[one] != code.inquiry.types[name]]
    notes = []
    for other in sorted(others, key=code.inquiry.position):
        act = code.inquiry.publishing(other)
        authors = format_authors(code.corpus.names[other].name.authors)
        notes.append(f"{authors} {act.work.year}" if act is not None else authors)
    cited = format_name(entry.name)
    return f"{cited}, non {' nec '.join(notes)}" if notes else cited
