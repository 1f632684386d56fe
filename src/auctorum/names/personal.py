"""Epithets from names of persons (ICN Art. 60.8 and Rec. 60C, Shenzhen 2018; its examples from memory).

An epithet is a stem, the name in Latin letters, with a termination that follows from the last letters of the stem and
the sex and number of those honoured.
"""

from __future__ import annotations

from auctorum.names.gender import Gender
from auctorum.names.letters import without_marks

_APOSTROPHES = str.maketrans("’‘ʼ´`", "'''''")
_ADJECTIVE = {Gender.MASCULINE: "us", Gender.FEMININE: "a", Gender.NEUTER: "um"}
# Before a surname in small letters: left out (Rec. 60C.5 d, e); with an article: joined (60C.5 c).
_NOBILITY = {"de", "von", "van", "vom", "zu", "zum", "zur", "ten", "ter", "der", "den", "af", "av"}
_ARTICLES = {"le", "la", "les", "el", "il", "lo", "du", "des", "del", "della", "las", "los"}
_SAINTS = {"st", "ste", "saint", "sainte", "san", "santa", "sankt"}

# Genitives of names with a Latin form of their own (Rec. 60C.1). The second group are forenames that serve as surnames,
# too: for them the common rule is as good.
_LATIN = {"alexander": "alexandri", "beatrix": "beatricis", "conceptio": "conceptionis", "hector": "hectoris"}
_LATIN_OR_NOT = {
    "martin": "martini",
    "august": "augusti",
    "edith": "edithae",
    "elisabeth": "elisabethae",
    "muriel": "murielae",
    "concepcion": "conceptionis",
}  # fmt: skip
# An epithet takes up no more words of a name.
_MOST_WORDS = 6
_LATIN_US = ("ius", "eus", "augustus", "martinus", "carolus", "jacobus", "wislizenus", "gulielmus", "benedictus")

# (number, female) to the inflection.
_GENITIVE = {
    ("singular", False): "i",
    ("singular", True): "ae",
    ("plural", False): "orum",
    ("plural", True): "arum",
}


def personal_epithet(
    name: str,
    *,
    sex: str = "male",
    number: str = "singular",
    form: str = "genitive",
    gender: Gender | None = None,
) -> str:
    """The epithet that honours `name` (one person, or a group that counts as male where one of them is).

    `form` is `genitive` or `adjective`, the latter in `gender` (masculine if None). Raises ValueError if `name` has no
    letters. ICN Art. 60.8; prefixes by Rec. 60C.5.

    >>> personal_epithet("Lecard"), personal_epithet("Wilson", sex="female"), personal_epithet("Mason", number="plural")
    ('lecardii', 'wilsoniae', 'masoniorum')
    >>> personal_epithet("Lindley", form="adjective", gender=Gender.FEMININE)
    'lindleyana'
    """
    stem = surname(name)
    if not stem:
        raise ValueError(f"no name of a person: {name!r}")
    if form == "adjective":
        return _adjective(stem, _ADJECTIVE[gender or Gender.MASCULINE])
    return _genitive(stem, sex == "female", number)


def _genitive(stem: str, female: bool, number: str) -> str:
    if number == "singular" and stem in _LATIN:
        return _LATIN[stem]
    inflection = _GENITIVE[number, female]
    if stem.endswith(_LATIN_US):
        return stem[:-2] + inflection
    if stem.endswith("a"):
        return stem + ("e" if number == "singular" else "rum")
    return stem + inflection if stem.endswith((*"eiouy", "er")) else f"{stem}i{inflection}"


def _adjective(stem: str, inflection: str) -> str:
    if stem.endswith(_LATIN_US):
        return f"{stem[:-2]}an{inflection}"
    link = "n" if stem.endswith("a") else "an" if stem.endswith(tuple("eiouy")) else "ian"
    return f"{stem}{link}{inflection}"


def surname(name: str) -> str:
    """The stem of an epithet from a name: small Latin letters, prefixes joined or left out as Rec. 60C.5 says.

    >>> surname("McNab"), surname("O'Brien"), surname("Le Clerc"), surname("von Ihering"), surname("Van Brunt")
    ('macnab', 'obrien', 'leclerc', 'ihering', 'vanbrunt')
    """
    words = _words(name)
    start = 0
    while start < len(words) - 1 and _is_left_out(words[start], words[start + 1]):
        start += 1
    stem = _plain("".join(words[start:]))
    return f"mac{stem[2:]}" if stem.startswith("mc") and len(stem) > 3 else stem


def _words(name: str) -> list[str]:
    """Words of a name without initials; M' is Mc, and a prefix before an apostrophe stands with its name."""
    text = without_marks(name).translate(_APOSTROPHES)
    for prefix in ("M'", "m'"):
        if text.startswith(prefix):
            text = f"Mc{text[2:]}"
    words = text.replace("-", " ").replace(".", ". ").replace("d'", "de ").split()
    return [word for word in words if not (word.endswith(".") and len(word) == 2)] or words


def _is_left_out(word: str, following: str) -> bool:
    if word.casefold().strip(".") in _SAINTS:
        return True
    # With a capital it is part of the family name; before an article, that keeps it.
    return word in _NOBILITY and not (word == "de" and following.casefold() in _ARTICLES)


def _plain(text: str) -> str:
    return "".join(letter for letter in text.casefold() if letter.isalpha())


def corrected_personal(
    epithet: str, person: str, *, sex: str = "", number: str = "", form: str = "", gender: Gender | None = None
) -> str:
    """`epithet` with the termination that Art. 60.8 asks for, or as it is.

    What is not recorded (`sex`, `number`, `form`, `gender`) is taken from the epithet. An epithet that is not the name
    with one of the terminations of that article stays: it may be latinised on purpose (Art. 60.9), have a Latin form
    (Rec. 60C.1) or be of the third declension (`richardsonis`).

    >>> corrected_personal("wilsonae", "Wilson"), corrected_personal("webbana", "Webb")
    ('wilsoniae', 'webbiana')
    """
    if epithet in (_LATIN_OR_NOT.get(surname(person)), _LATIN.get(surname(person))):
        return epithet
    for stem in _stems(person):
        for shown in _shown(stem):
            if not epithet.startswith(shown):
                continue
            # The name alone, if it ends in -i, stands for its genitive with the termination forgotten.
            termination = epithet.removeprefix(shown) or ("i" if shown.endswith("i") else "")
            made = _reformed(stem, termination, (sex, number, form), gender)
            if made:
                return made
    return epithet


def _stems(person: str) -> list[str]:
    """Stems that an epithet may show, longest first: all the words of the name, or the last of them."""
    words = _words(person)
    found = {_plain("".join(words[at:])) for at in range(len(words))[-_MOST_WORDS:]} | {surname(person)}
    if words and words[0].casefold().strip(".") == "st":
        found |= {f"st-{_plain(''.join(words[1:]))}"}
    found |= {f"mc{stem[3:]}" for stem in found if stem.startswith("mac")}
    # The article within a name: Labillardière.
    found |= {stem[2:] for stem in found if stem.startswith(("la", "le", "du", "de")) and len(stem) > 7}
    return sorted(found - {""}, key=lambda stem: (-len(stem), stem))


def _shown(stem: str) -> tuple[str, ...]:
    """What of a stem an epithet may show: it all, without a silent -e or an -o, or without the -us of a Latin name.

    Without its last letter the name was latinised in passing (Loureiro, `loureiri`), which is corrected.
    """
    if stem.endswith(_LATIN_US) and len(stem) > 3:
        return stem, stem[:-2]
    return (stem, stem[:-1]) if stem.endswith(("e", "o")) and len(stem) > 1 else (stem,)


_GENITIVES = {
    "i": ("singular", False),
    "ii": ("singular", False),
    "e": ("singular", None),
    "ae": ("singular", True),
    "iae": ("singular", True),
    "rum": ("plural", None),
    "orum": ("plural", False),
    "iorum": ("plural", False),
    "arum": ("plural", True),
    "iarum": ("plural", True),
}
_ADJECTIVES = {
    f"{link}{ending}": ending for link in ("n", "an", "ian", "ean") for ending in ("us", "a", "um")
}  # fmt: skip


def _reformed(stem: str, termination: str, known: tuple[str, str, str], gender: Gender | None) -> str:
    """The stem with the right termination in place of `termination`; empty if that is none of Art. 60.8."""
    sex, number, form = known
    # -ensis is for places only (Art. 60.8 Ex., from memory); without the gender it does not tell the other form.
    if termination in ("ensis", "ense") and gender:
        return _adjective(stem, _ADJECTIVE[gender])
    if termination in _ADJECTIVES and form != "genitive":
        return _adjective(stem, _ADJECTIVE[gender] if gender else _ADJECTIVES[termination])
    if termination not in _GENITIVES or form == "adjective":
        return ""
    shown_number, shown_female = _GENITIVES[termination]
    female = sex == "female" if sex else bool(shown_female)
    return _genitive(stem, female, number or shown_number)
