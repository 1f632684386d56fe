"""Epithets in agreement with the gender of their genus (ICN Art. 21.2, 23.5, 24.2, 32.2).

The declensions are those of Latin and botanical grammar, from memory. An ending does not tell an adjective from a noun:
the kind of an epithet is recorded with the name.
"""

from __future__ import annotations

from enum import StrEnum

from auctorum.names.gender import Gender


class EpithetKind(StrEnum):
    """What an epithet is: only adjectives follow the gender of the genus."""

    ADJECTIVE = "adjective"
    NOUN = "noun"
    PLURAL_NOUN = "noun-nominative-plural"


_ORDER = (Gender.MASCULINE, Gender.FEMININE, Gender.NEUTER)
Forms = tuple[str, str, str]

_FIRST: Forms = ("us", "a", "um")
_GREEK: Forms = ("os", "os", "on")
_THIRD: Forms = ("is", "is", "e")
_COMPARATIVE: Forms = ("ior", "ior", "ius")

# Stems of adjectives in -er that lose the e before other endings (niger, nigra), keep it (asper, aspera) or are of the
# third declension (acer, acris); each also at the end of a compound such as atroruber.
_LOSE_E = ("nigr", "rubr", "glabr", "scabr", "pulchr", "integr", "sacr", "atr", "macr", "pigr", "aegr", "crebr",
           "dextr", "sinistr", "vafr", "taetr")  # fmt: skip
_KEEP_E = ("fer", "ger", "asper", "tener", "lacer", "miser", "liber", "prosper", "gibber")
_ACER = ("estr", "acr", "alacr", "salubr", "celebr", "volucr", "equestr")
# Too short to be looked for at the end of other words: they stand alone, or behind a linking -o-.
_SHORT = frozenset({"atr", "macr", "acr"})
# Stems known as comparatives: their neuter has no look of its own, since -ius ends other adjectives, too.
_COMPARATIVES = """
    acut alb ampl alt angust asper brev clar clem crass dens dulc elat elegant exter firm flav glabr glauc gracil
    grand hirt humil infer inter lat lax long mel mit moll nan nigr nobil obscur obtus pallid poster pr procer
    pulchr rar rigid robust rubr serot suav super tard tenu ulter virid
"""
_COMPARED = frozenset(_COMPARATIVES.split())
_MAJOR: tuple[tuple[str, str], ...] = (("major", "majus"), ("minor", "minus"), ("maior", "maius"), ("pejor", "pejus"))
# One form for all genders: participles, adjectives in -x, Greek compounds in -oides, -odes and -pus, and nouns in
# -cola and -gena (Art. 23.5).
_ONE_FORM = ("ens", "ans", "x", "ceps", "color", "opus", "ypus", "odon", "stemon", "pogon", "ys", "es", "par", "icola",
             "igena")  # fmt: skip


def declined(epithet: str, gender: Gender, declension: str = "") -> str | None:
    """An adjective, given in any gender, in the form for `gender`; None if it has the look of none.

    `declension` are its forms as a dictionary gives them, `niger/nigra/nigrum` or `mollis/molle`; an epithet that is
    none of them is declined by its own ending. Greek adjectives in -os keep it in the feminine.

    >>> declined("albus", Gender.NEUTER), declined("molle", Gender.FEMININE), declined("bicolor", Gender.NEUTER)
    ('album', 'mollis', 'bicolor')
    """
    at = _ORDER.index(gender)
    forms = _stated(declension)
    if epithet in forms:
        return forms[at]
    found = _forms(epithet)
    return found[at] if found else None


def _stated(declension: str) -> tuple[str, ...]:
    """Masculine, feminine and neuter of `a/b/c`, `a/b` (common and neuter) or `a` (one form); else none."""
    forms = tuple(form.strip() for form in declension.replace(",", "/").split("/") if form.strip())
    return {1: forms * 3, 2: (*forms[:1], *forms), 3: forms}.get(len(forms), ())


def _forms(epithet: str) -> Forms | None:
    """The three forms of the adjective of which `epithet` is one; None, too, if one of them would be read otherwise."""
    forms = _by_ending(epithet)
    if forms is None:
        return None
    # The masculine is left out: -estris stands for -ester.
    read = [_by_ending(form) for form in forms]
    return forms if all(other and other[1:] == forms[1:] for other in read) else None


def _by_ending(epithet: str) -> Forms | None:
    return _of_major(epithet) or _of_er(epithet) or _of_one_form(epithet) or _of_endings(epithet)


def _of_major(epithet: str) -> Forms | None:
    for common, neuter in _MAJOR:
        for ending in (common, neuter):
            stem = epithet.removesuffix(ending)
            if stem != epithet and stem in ("", "sub"):
                return stem + common, stem + common, stem + neuter
    return None


def _of_er(epithet: str) -> Forms | None:
    """By the lists above, since the ending does not tell whether the e is lost."""
    root = next((epithet.removesuffix(end) for end in ("um", "a", "") if epithet.endswith(f"r{end}")), "")
    short = f"{root[:-2]}r" if root.endswith("er") else root
    if _ends(short, _LOSE_E):
        return f"{short[:-1]}er", f"{short}a", f"{short}um"
    if _ends(root, _KEEP_E):
        return root, f"{root}a", f"{root}um"
    return _like_acer(epithet)


def _like_acer(epithet: str) -> Forms | None:
    """Of the masculine in -er only: without it, -estris stands for the masculine, too, as botanists use it."""
    stem = f"{epithet[:-2]}r" if epithet.endswith("er") else ""
    return (epithet, f"{stem}is", f"{stem}e") if stem and _ends(stem, _ACER) else None


def _ends(stem: str, known: tuple[str, ...]) -> bool:
    return any(stem == one or (stem.endswith(one) and (one not in _SHORT or stem.endswith(f"o{one}"))) for one in known)


def _of_one_form(epithet: str) -> Forms | None:
    return (epithet, epithet, epithet) if epithet.endswith(_ONE_FORM) else None


def _of_endings(epithet: str) -> Forms | None:
    if epithet.endswith(("ior", "ius")) and epithet[:-3] in _COMPARED:
        return _with(epithet[:-3], _COMPARATIVE)
    if epithet.endswith("ae"):
        return None  # a genitive
    for endings in (_FIRST, _GREEK, _THIRD):
        for ending in endings:
            if epithet.endswith(ending) and epithet != ending:
                return _with(epithet.removesuffix(ending), endings)
    return None


def _with(stem: str, endings: Forms) -> Forms:
    return stem + endings[0], stem + endings[1], stem + endings[2]


_PLURALS = (("i", "ae", "a"), ("enses", "enses", "ensia"))


def declined_plural(epithet: str, gender: Gender) -> str:
    """The epithet of a subdivision of a genus, an adjective in the plural, in the form for `gender` (ICN Art. 21.2).

    What has the look of no plural, or of one in -a, which may be a singular, stays.

    >>> declined_plural("Anomali", Gender.FEMININE), declined_plural("Rigida", Gender.NEUTER)
    ('Anomalae', 'Rigida')
    """
    for endings in _PLURALS:
        for ending in endings:
            if epithet.endswith(ending) and ending != "a" and len(epithet) > len(ending) + 1:
                return epithet.removesuffix(ending) + endings[_ORDER.index(gender)]
    return epithet


def agreeing(epithet: str, gender: Gender, kind: EpithetKind, noun: str = "", declension: str = "") -> str:
    """The epithet as it has to read in a genus of that gender (ICN Art. 23.5, 24.2; 21.2 for nouns in the plural).

    An adjective takes the form of the gender, if its declension is known; a noun stands as `noun`, its nominative (or
    genitive, where the epithet is one), or as it is, but for -colus and -colum, which stand for -cola; a noun in the
    nominative plural is put in the singular (Art. 32.2).

    >>> agreeing("salpoense", Gender.FEMININE, EpithetKind.ADJECTIVE)
    'salpoensis'
    >>> agreeing("amnicolus", Gender.MASCULINE, EpithetKind.NOUN)
    'amnicola'
    """
    if kind is EpithetKind.ADJECTIVE:
        return without_cola(epithet) or declined(epithet, gender, declension) or epithet
    return noun or (singular(epithet) if kind is EpithetKind.PLURAL_NOUN else without_cola(epithet) or epithet)


def without_cola(epithet: str) -> str:
    """The noun in -cola that was used as an adjective, `amnicolus`; empty if it was not (ICN Art. 23.5)."""
    for ending in ("colus", "colum"):
        stem = epithet.removesuffix(ending)
        # Where no linking vowel stands before it, -colus is no form of -cola.
        if stem != epithet and stem.endswith("i"):
            return f"{stem}cola"
    return ""


def singular(noun: str) -> str:
    """A noun of the first or second declension in the nominative singular; others, and singulars, as they are.

    >>> singular("Chamaecristae")
    'Chamaecrista'
    """
    for plural, one in (("ae", "a"), ("i", "us")):
        if noun.endswith(plural) and len(noun) > len(plural) + 1:
            return noun.removesuffix(plural) + one
    return noun
