"""The type of a new name (ICN Art. 40): needed from 1958 on, for genera and below."""

from __future__ import annotations

import re
from datetime import date

from auctorum.corpus.model import Act
from auctorum.names.ranks import GENUS, SPECIES, rank_named
from auctorum.nomenclature.inquiry import Inquiry
from auctorum.nomenclature.judgement import Ruling, across, barred, left_open
from auctorum.records.schema import TypeKind

# typus, holotypus, type, Typ, tipo, but not typical.
_WORD = re.compile(r"typ(?:us|um|e|en|o|i)?\b|tipo\b")
TYPE_FROM = date(1958, 1, 1)
WORD_AND_HERBARIUM_FROM = date(1990, 1, 1)
SPECIMEN_FROM = date(2007, 1, 1)


def type_indicated(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 40.1: from 1958 on a new name of a genus or below needs an indicated type (nothotaxa: H.9.1, none)."""
    if not _asked(inquiry, act, TYPE_FROM):
        return None
    if act.record.type is not None or act.record.type_indicated:
        return None
    if act.record.type_indicated is False:
        told = barred("type-not-indicated", "type not indicated", "40.1", "no type was indicated, on or after 1958")
        return across(told, act, TYPE_FROM)
    return left_open(
        "type-not-indicated", "type not recorded", "40.1", "a type was needed from 1958 on", "which type was indicated"
    )


def one_gathering(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 40.2: from 1958 on the type of a species or below is one gathering, in however many duplicates."""
    given = act.record.type
    if given is None or not _asked(inquiry, act, TYPE_FROM) or not _has_specimen(act):
        return None
    if given.gatherings is None or given.gatherings <= 1:
        return None
    reason = f"{given.gatherings} gatherings are given as type, on or after 1958"
    told = barred("more-than-one-gathering-as-type", "more than one gathering as type", "40.2", reason)
    return across(told, act, TYPE_FROM)


def specimen_for_type(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 40.4: from 2007 on a specimen is needed; an illustration is a type only for some algae and fungi."""
    given = act.record.type
    if given is None or not _asked(inquiry, act, SPECIMEN_FROM) or not _has_specimen(act) or act.record.fossil:
        return None
    if given.kind is not TypeKind.ILLUSTRATION or act.record.organism != "plant":
        return None
    told = barred("illustration-as-type", "illustration as type", "40.4", "the type is an illustration, after 2006")
    return across(told, act, SPECIMEN_FROM)


def type_named_as_such(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 40.6: from 1990 on the word typus, holotypus or an equivalent must stand with the type."""
    given = act.record.type
    if given is None or not _asked(inquiry, act, WORD_AND_HERBARIUM_FROM):
        return None
    said = f"{given.word} {given.verbatim}".casefold()
    if _WORD.search(said):
        return None
    key, label = "type-word-missing", "word for the type missing"
    if given.word or given.verbatim:
        told = barred(key, label, "40.6", "no word such as typus or holotypus stands with it, on or after 1990")
        return across(told, act, WORD_AND_HERBARIUM_FROM)
    return left_open(key, label, "40.6", "a word such as holotypus was needed from 1990 on", "the words about the type")


def in_one_herbarium(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 40.7: from 1990 on one single herbarium must be named that keeps the type of a species or below."""
    given = act.record.type
    if given is None or not _asked(inquiry, act, WORD_AND_HERBARIUM_FROM) or not _has_specimen(act):
        return None
    if given.kind is TypeKind.ILLUSTRATION:
        return None
    key, label = "type-not-in-one-specified-herbarium", "type not in one specified herbarium"
    if given.herbaria is not None and given.herbaria != 1:
        told = f"{given.herbaria} herbaria are" if given.herbaria else "no herbarium is"
        ruling = barred(key, label, "40.7", f"{told} given for the type, on or after 1990")
        return across(ruling, act, WORD_AND_HERBARIUM_FROM)
    if given.herbaria == 1 or given.herbarium:
        return None
    return left_open(key, label, "40.7", "one herbarium was to be named from 1990 on", "which herbarium keeps the type")


def _asked(inquiry: Inquiry, act: Act, day: date) -> bool:
    """Whether a rule about types from that day on may be asked of the act."""
    if act.work.date.last_day < day or rank_named(act.rank) < GENUS or act.record.parentage:
        return False
    return inquiry.is_new_taxon(act)


def _has_specimen(act: Act) -> bool:
    return rank_named(act.rank) >= SPECIES
