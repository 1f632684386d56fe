"""How a name must be formed to be validly published (ICN Art. 20-24, 26, 27, H.10)."""

from __future__ import annotations

import re
from datetime import date

from auctorum.corpus.model import Act
from auctorum.names.fold import fold
from auctorum.names.hybrids import is_formula_epithet, nothogenus_parts_fit
from auctorum.names.ranks import GENUS
from auctorum.nomenclature.inquiry import Inquiry
from auctorum.nomenclature.judgement import Legitimacy, Ruling, Validity, across, barred, left_open
from auctorum.records.schema import ActKind

TERMS_FORBIDDEN_FROM = date(1912, 1, 1)
# The words of Art. 24.3 without their ending: typicus, genuinus, originalis, originarius, verus, veridicus, and eu-.
_TYPICAL = re.compile(r"(?:typic|genuin|originari|ver|veridic)(?:us|a|um)|original(?:is|e)")


def one_word(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 20.3: the name of a genus may not consist of two words, unless they are joined by a hyphen."""
    if act.rank != GENUS.name or not act.printed.species:
        return None
    return barred("generic-name-of-two-words", "generic name of two words", "20.3", "a generic name is one word")


def no_technical_term(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 20.2: a genus may not be called by a Latin term of morphology, but for those before 1912 with a species."""
    if act.rank != GENUS.name or not act.record.technical_term:
        return None
    reason = "it was a Latin term of morphology when it was published"
    told = barred("technical-term", "technical term", "20.2", reason)
    if act.record.with_species:
        return across(told, act, TERMS_FORBIDDEN_FROM)
    if act.record.with_species is None and act.work.date.first_day < TERMS_FORBIDDEN_FROM:
        look_up = "whether a binary species name was published with it"
        return left_open("technical-term", "perhaps a technical term", "20.2", reason, look_up)
    return told


def no_eu_before_the_genus(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 21.3: a subdivision of a genus may not be named by the generic name with the prefix Eu-."""
    name = act.printed
    if name.species or not name.divisions or fold(name.final_epithet) != f"eu{fold(name.genus)}":
        return None
    reason = f"the epithet is {name.genus} with the prefix Eu-"
    return barred("eu-prefix-on-generic-name", "generic name with Eu-", "21.3", reason)


def no_tautonym(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 23.4: the epithet of a species may not repeat the generic name, with or without a transcribed symbol."""
    name = act.printed
    if not name.species or name.lower:
        return None
    symbol = fold(act.record.epithet.symbol) if act.record.epithet else ""
    epithet = fold(name.species)
    bare = epithet.removesuffix(symbol).rstrip() if symbol and epithet != symbol else epithet
    if fold(name.genus) not in (epithet, bare):
        return None
    return barred("tautonym", "tautonym", "23.4", "the epithet repeats the generic name")


def no_epithet_for_the_typical_part(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 24.3: epithets such as typicus or genuinus, meant for the part with the type, make no valid name."""
    name, above = act.printed, inquiry.above(act)
    if not name.lower or name.is_autonym or act.record.typical is False or not _marks_the_typical(act):
        return None
    means_it = act.record.typical or (above is not None and inquiry.types[above] in inquiry.included(act))
    if means_it:
        reason = f"the epithet {name.final_epithet} is meant for the part that holds the type of the species"
        return barred("inadmissible-typical-epithet", "epithet for the typical part", "24.3", reason)
    return left_open(
        "inadmissible-typical-epithet",
        "perhaps an epithet for the typical part",
        "24.3",
        f"epithets such as {name.final_epithet} may not mark the typical part",
        "whether the author meant the part with the type (`typical:`)",
    )


def _marks_the_typical(act: Act) -> bool:
    epithet = fold(act.printed.final_epithet)
    with_eu = act.printed.final_epithet.startswith("eu-") or (act.record.typical is True and epithet.startswith("eu"))
    return bool(_TYPICAL.fullmatch(epithet)) or with_eu or epithet == f"eu{fold(act.printed.species)}"


def not_the_type_without_autonym(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 22.2, 26.2: the part that holds the type of the genus or species has no name but the autonym.

    Only a type that existed then counts: one stated with the name, or designated by that time.
    """
    name, above = act.printed, inquiry.above(act)
    if above is None or name.is_autonym or not (name.lower or (name.divisions and not name.species)):
        return None
    if inquiry.types[above] not in inquiry.included(act):
        return None
    if inquiry.legitimacy_of(above) is Legitimacy.ILLEGITIMATE:
        return None  # under an illegitimate name there is no autonym
    what, article = ("species", "26.2") if name.lower else ("genus", "22.2")
    key, label = f"includes-type-of-{what}-but-not-autonym", f"holds the type of the {what}, but is no autonym"
    there = True if act.record.typical else _type_existed(inquiry, above, act)
    if there:
        return barred(key, label, article, f"it takes in the type of {inquiry.called(above)}", above)
    if there is None:
        reason = f"it takes in {inquiry.called(above)}, whose type is not recorded"
        return left_open(key, f"perhaps {label}", article, reason, "whether the type existed at that time")
    return None


def _type_existed(inquiry: Inquiry, name: str, act: Act) -> bool | None:
    """Whether the type of a name existed when an act came out; None where the records do not tell."""
    designated_later = False
    for other in inquiry.corpus.groups.get(inquiry.corpus.names[name].group, (name,)):
        if inquiry.types[other] != inquiry.types[name]:
            continue
        for one in inquiry.corpus.acts_of(other):
            if one.record.type is None:
                continue
            if one.record.act is not ActKind.TYPE_DESIGNATION or not act.work.date.certainly_before(one.work.date):
                return True
            designated_later = True
    return False if designated_later else None


def no_repeated_epithet(inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 27.1: the final epithet may not repeat that of the species on another type."""
    name, above = act.printed, inquiry.above(act)
    if not name.lower or not name.is_autonym or above is None:
        return None
    if inquiry.types[above] == inquiry.types[act.name] or (act.record.type is None and not act.basionym):
        return None
    reason = f"it repeats the epithet of {inquiry.called(above)} on another type"
    return barred("repeats-species-epithet", "repeats the epithet of the species", "27.1", reason, above)


def no_formula_for_an_epithet(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. H.10.3: parental epithets joined by a hyphen are a formula and no epithet."""
    epithet = act.printed.final_epithet
    if not is_formula_epithet(epithet, act.record.parentage):
        return None
    reason = f"{epithet} is made of the epithets of the parents: a formula"
    return barred("hybrid-formula-not-epithet", "formula, not an epithet", "H.10.3", reason)


def condensed_from_its_parents(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. H.6.2-H.6.4: the name of a hybrid between genera is made of parts of the names of its parents."""
    name = act.printed
    if act.rank != GENUS.name or not name.genus_hybrid or not act.record.parentage:
        return None
    genera = [word for word in re.split(r"[\s×]+", act.record.parentage) if word[:1].isupper()]
    if len(set(genera)) < 2 or nothogenus_parts_fit(name.genus, genera) is not False:
        return None
    reason = f"{name.genus} is not made of parts of {' and '.join(genera)}"
    return barred("not-a-condensed-formula", "no condensed formula", "H.6.2", reason)


def standing_given_as_invalid(_inquiry: Inquiry, act: Act) -> Ruling | None:
    """Art. 32: a name recorded as not validly published for a reason in works that are not recorded."""
    if act.record.standing != "not valid":
        return None
    reason = act.record.note.rstrip(".") or "recorded as not validly published; the reason is not recorded"
    return barred("given", Validity.NOT_VALID, "32.1", reason)
