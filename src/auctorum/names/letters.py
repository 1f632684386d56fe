"""Letters of a name in modern usage: marks, ligatures, u and v, i and j (ICN Art. 60.4-60.7, Shenzhen 2018)."""

from __future__ import annotations

import unicodedata

from auctorum.names.fold import plain_letters

_VOWELS = frozenset("aeiouy")
# Beside one of these, v may be a consonant (or is doubled, as in `vvedenskyi`).
_NO_NEIGHBOURS = _VOWELS | {"v"}
_ALWAYS_DIAERESIS = frozenset("ëïÿ")
_UMLAUT_OR_DIAERESIS = frozenset("äöü")


def without_marks(word: str, diaeresis: bool = False) -> str:
    """`word` with diacritical marks and ligatures transcribed; with `diaeresis`, that mark stays (ICN Art. 60.7).

    The diaeresis is a help to the reader and not part of the spelling. On a, o, u it is told from an umlaut by the a,
    e or o before it. German ß becomes ss (Art. 60.4).

    >>> without_marks("Mülleri"), without_marks("isoëtes"), without_marks("isoëtes", diaeresis=True)
    ('Muelleri', 'isoetes', 'isoëtes')
    """
    if word.isascii():
        return word
    made = ""
    for letter in unicodedata.normalize("NFC", word):
        if not letter.isalpha() or letter.isascii():
            made += letter
        elif _is_diaeresis(letter.casefold(), made):
            made += letter if diaeresis else unicodedata.normalize("NFD", letter)[0]
        else:
            made += _transcribed(letter)
    return made


def _is_diaeresis(letter: str, before: str) -> bool:
    return letter in _ALWAYS_DIAERESIS or (letter in _UMLAUT_OR_DIAERESIS and before[-1:].casefold() in set("aeo"))


def _transcribed(letter: str) -> str:
    plain = plain_letters(letter)
    return plain.capitalize() if letter.isupper() else plain


# Greek words in eu- that were printed with ev-, and Greek elements within a word.
_GREEK_EU = ("evonym", "evodi", "evosm", "evphorb", "evphras", "evpator", "evcalypt", "evgeni")
_GREEK_WITHIN = (("levco", "leuco"), ("levca", "leuca"), ("psevdo", "pseudo"), ("plevro", "pleuro"), ("nevro", "neuro"))
# Beginnings of Latin words and of place names with consonantal i; Greek words keep theirs (ianthinus, ionanthus).
_CONSONANTAL_I = ("iapon", "iavan", "iamaic", "ialap", "iacob", "iacea", "iasmin", "iu")


def with_eu(word: str) -> str:
    """`word` with eu for the Greek diphthong printed as ev, in words known to have it (ICN Art. 60.6).

    >>> with_eu("Evonymus"), with_eu("Evansia")
    ('Euonymus', 'Evansia')
    """
    lower = word.lower()
    if lower.startswith(_GREEK_EU):
        lower = f"eu{lower[2:]}"
    for printed, modern in _GREEK_WITHIN:
        lower = lower.replace(printed, modern)
    return _as_capitalised(word, lower)


def _as_capitalised(word: str, lower: str) -> str:
    if lower == word.lower():
        return word
    return f"{lower[0].upper()}{lower[1:]}" if word[0].isupper() else lower


def modern_letters(word: str, interchanged: bool | None = None) -> str:
    """`word` with u and v, i and j as botanists use them today (ICN Art. 60.5).

    `interchanged` says that the work uses the letters without distinction (or has only one of a pair). Where that is
    not known (None), only what no other word explains is changed, and a word that has such a letter counts as of such
    a work; where it is False, nothing is.

    >>> modern_letters("Cvrcvligo"), modern_letters("iaponicus"), modern_letters("favrei")
    ('Curculigo', 'japonicus', 'favrei')
    """
    if interchanged is False:
        return word
    lower = word.lower()
    if interchanged or shows_interchange(lower):
        lower = _sorted_out(lower)
    return _as_capitalised(word, _sure_j(lower))


def shows_interchange(word: str) -> bool:
    """Whether a v stands where only a vowel can: between consonants, at the end, or as in `Vffenbachia`; or uu- begins.

    Slavonic and other names begin with vl, vr, vs and the like: that shows nothing.
    """
    padded = f"-{word.lower()}-"
    for at in range(1, len(padded) - 1):
        before, after = padded[at - 1], padded[at + 1]
        # At the beginning, v before these letters is found in names of persons and places.
        named = before == "-" and after in "rlsdnzkth-"
        if padded[at] == "v" and not named and not {before, after} & _NO_NEIGHBOURS:
            return True
    return padded.startswith("-uu")


def _sorted_out(word: str) -> str:
    """u for v before and between consonants, v for u before a vowel at the beginning and between vowels; j likewise."""
    padded = f"-{word}-"
    made = ""
    for at in range(1, len(padded) - 1):
        before, letter, after = padded[at - 1], padded[at], padded[at + 1]
        vowel_after = after in _VOWELS or (after == "v" and letter in "uv" and before == "-")
        if letter == "v":
            after_q = before == "q" or padded[at - 2 : at] == "ng"
            letter = "v" if vowel_after and not after_q else "u"
        elif letter == "u" and vowel_after and (before == "-" or (before in _VOWELS and after != "-")):
            letter = "v"
        elif letter == "j" and after not in _VOWELS:
            letter = "i"
        made += letter
    return made


def _sure_j(word: str) -> str:
    """j for i where a Latin word or a place name has it, and i for j before a consonant and at the end."""
    if word.startswith(_CONSONANTAL_I):
        word = f"j{word[1:]}"
    elif word.startswith("j") and word[1:2] not in _VOWELS:
        word = f"i{word[1:]}"
    if word.endswith("ij"):
        word = f"{word[:-1]}i"
    for comparative in ("maior", "maius", "peior", "peius"):
        if word == comparative:
            word = word.replace("i", "j", 1)
    return word
