"""What describes a new taxon, and in which language (ICN Art. 33.1, 38, 39, 43, 44)."""

from __future__ import annotations

import re
from datetime import date

from auctorum.corpus.model import Act
from auctorum.names.ranks import GENUS, SPECIES, rank_named
from auctorum.nomenclature.inquiry import Inquiry, described
from auctorum.nomenclature.judgement import Effect, Ruling, across, barred, left_open
from auctorum.records.schema import DescriptionKind, Organism

DESCRIPTION_FROM = date(1908, 1, 1)
LATIN_FROM = date(1935, 1, 1)
LATIN_FOR_ALGAE_FROM = date(1958, 1, 1)
ENGLISH_TOO_FROM = date(2012, 1, 1)
FOSSILS_FROM = date(1996, 1, 1)
FULL_REFERENCE_FROM = date(1973, 1, 1)


def is_described(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 38.1: a new taxon needs a description or diagnosis, or a reference to one published before."""
    if not inquiry.is_new_taxon(act) or act.record.parentage:
        return None
    given = described(act)
    if given is None:
        return left_open(
            "nomen-nudum",
            "description not recorded",
            "38.1",
            "the record does not say whether the taxon was described",
            "whether a description or diagnosis was given or referred to",
        )
    if act.record.description is not None and act.record.description.kind is DescriptionKind.ILLUSTRATION:
        return _shown_only(act)
    if given or _shares_the_description_of_its_species(inquiry, act):
        return None
    return barred("nomen-nudum", "nomen nudum", "38.1", "neither description nor diagnosis was given or referred to")


def _shown_only(act: Act) -> Ruling | None:
    """Art. 38.7, 38.8: an illustration with analysis stood for a description to the end of 1907, for species and
    below, and for a genus of one species."""
    told = barred("nomen-nudum", "nomen nudum", "38.7", "an illustration is no description, from 1908 on")
    low = rank_named(act.rank) >= SPECIES or (act.rank == GENUS.name and bool(act.record.monotypic))
    return across(told, act, DESCRIPTION_FROM) if low else told


def _shares_the_description_of_its_species(inquiry: Inquiry, act: Act) -> bool:
    """Whether one description serves a genus and its only species (Art. 38.5)."""
    if act.rank != GENUS.name or not act.record.monotypic:
        return False
    return any(one.above == act.name and described(one) for one in inquiry.corpus.acts_in(act.work.id))


def reference_is_full(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 33.1: from 1973 on, what was published before and is built upon must be fully and directly cited."""
    given = act.record.description
    if not inquiry.is_new_taxon(act) or given is None or given.kind is not DescriptionKind.REFERENCE:
        return None
    if act.work.date.last_day < FULL_REFERENCE_FROM or given.reference_full:
        return None
    key, label = "description-reference-incomplete", "reference to the description incomplete"
    if given.reference_full is False:
        told = barred(key, label, "33.1", "the earlier description is not fully and directly cited, after 1972")
        return across(told, act, FULL_REFERENCE_FROM)
    return left_open(key, label, "33.1", "how the description is cited is not recorded", "whether it is cited in full")


def in_latin(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 39, 43.1, 44.1: the languages that each date asks for.

    Plants: Latin 1935-2011, then Latin or English. Algae: Latin from 1958. Fossils: Latin or English from 1996.
    """
    given = act.record.description
    if given is None or given.kind is DescriptionKind.NONE or act.record.parentage or not inquiry.is_new_taxon(act):
        return None  # what is not described is named as such
    first, last = act.work.date.first_day, act.work.date.last_day
    limits = (LATIN_FROM, LATIN_FOR_ALGAE_FROM, FOSSILS_FROM, ENGLISH_TOO_FROM)
    told = [_told_of(inquiry, act, day) for day in (first, *(day for day in limits if first < day <= last))]
    found = next((one for one in told if one is not None), None)
    if found is None or found.effect is Effect.OPEN or all(one is not None for one in told):
        return found
    reason = f"{found.reason}; whether that was asked for depends on the date"
    return left_open(found.key, f"perhaps {found.label}", found.article, reason, "the date of publication")


def _told_of(inquiry: Inquiry, act: Act, day: date) -> Ruling | None:
    """The ruling for an act of that day."""
    wanted, given = _languages_wanted(inquiry, act, day), act.record.description
    if wanted is None or given is None:
        return None
    languages, article = wanted
    key, told = ("no-latin", "Latin") if languages == ("latin",) else ("no-latin-or-english", "Latin or English")
    said = _words(given.language)
    if not said or not _UNKNOWN.isdisjoint(said):
        reason = f"{told} was needed; the language of the description is not recorded"
        return left_open(key, f"perhaps without {told}", article, reason, "the language of the description")
    if any(word in languages for word in said):
        return None
    return barred(key, f"description without {told}", article, f"{told} was needed; it is in {given.language.lower()}")


def _words(languages: str) -> list[str]:
    """The languages named: by code, in English, or in a language that has the same word."""
    found = re.findall(r"[a-zäöü]+", languages.lower())
    return [
        next((name for start, name in _STARTS.items() if word.startswith(start)), _CODES.get(word, word))
        for word in found
    ]


_UNKNOWN = {"unknown", "unstated", "unclear", "uncertain"}
_CODES = {"la": "latin", "en": "english"}
_STARTS = {"lat": "latin", "eng": "english", "angl": "english"}


def _languages_wanted(inquiry: Inquiry, act: Act, day: date) -> tuple[tuple[str, ...], str] | None:
    """The languages of which one is needed on a day, and the article; None where none is."""
    either = ("latin", "english")
    until = inquiry.edition.latin_until
    if act.record.fossil:
        return (either, "43.1") if day >= FOSSILS_FROM else None
    if until is not None and day > until:
        return either, "39.2"
    if act.record.organism is Organism.ALGA:
        return (("latin",), "44.1") if day >= LATIN_FOR_ALGAE_FROM else None
    return (("latin",), "39.1") if day >= LATIN_FROM else None
