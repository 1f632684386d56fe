"""Words so alike that they are likely to be confused (ICN Art. 53.2, Shenzhen 2018; 61.5 where the type is the same).

That two words are confusable is a judgement, in doubt one of a committee (Art. 53.4): a recorded one goes first. What
stands here are the kinds of likeness that the Code's own examples show: another transcription of the same sounds,
another linking vowel, another ending of the same stem. Two words for two things are not confusable, however near their
letters.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

from auctorum.names.fold import fold, same_epithet
from auctorum.names.gender import ELEMENTS
from auctorum.names.ranks import SPECIES, rank_named

_VOWELS = frozenset("aeiou")  # y is i here
# Other transcriptions of the same Greek or foreign sounds, in this order.
_SOUNDS = (
    ("sch", "sk"), ("ph", "f"), ("rrh", "r"), ("rh", "r"), ("th", "t"), ("ch", "k"), ("h", ""), ("c", "k"), ("y", "i"),
    ("j", "i"), ("w", "v"), ("eia", "ea"),
)  # fmt: skip
# Of generic names fewer transcriptions count: Cristella and Christella, Kochia and Kokia stand beside each other.
_CH = "χ"
_DIGRAPHS = (("ae", "e"), ("oe", "e"))
# Endings of adjectives that one stem may take in Latin and Greek, longest first.
_ENDINGS = ("ius", "ium", "eus", "eum", "ia", "ea", "us", "um", "os", "on", "is", "es", "a", "e")
# Other last words of compounds, as stems; those of generic names are ELEMENTS.
_LAST_STEMS = ("folia", "flora", "karpa", "filla", "anta", "petala", "sepala", "kaulis", "spina", "nervia", "formis",
               "fera", "gera", "stakia", "sperma", "loba", "kladia", "riza", "andra")  # fmt: skip
_NEAR = (frozenset("ao"), frozenset("ou"), frozenset("ei"))
# Shorter stems with other endings are other words: peplis and peplus.
_LONG_STEM = 6
_LONG_WORD = 9
_LONGEST_LAST = 12


def confusable(a: str, b: str, *, rank: str = "species") -> bool:
    """Whether two generic names (`rank` genus), or two epithets under one name, count as homonyms (ICN Art. 53.2).

    The order does not matter. Identical words are confusable.

    >>> confusable("Skytanthus", "Scytanthus", rank="genus"), confusable("peplis", "peplus")
    (True, False)
    """
    return bool(likeness(a, b, rank=rank))


def likeness(a: str, b: str, *, rank: str = "species") -> str:
    """In what two confusable words differ, in words; empty if they are not confusable.

    >>> likeness("trinervis", "trinervius")
    'two endings of one stem'
    """
    first, second = sorted((fold(a), fold(b)))
    if first == second:
        return "the same letters"
    if not first or not second:
        return ""
    if rank_named(rank) < SPECIES:
        return _first_likeness(first.replace("ch", _CH), second.replace("ch", _CH), _OF_GENERA)
    return _first_likeness(first, second, _OF_EPITHETS)


_Alike = Callable[[str, str], bool]


def _first_likeness(a: str, b: str, kinds: Iterable[tuple[str, _Alike]]) -> str:
    return next((words for words, alike in kinds if alike(a, b)), "")


def _sound(word: str, digraphs: bool = True) -> str:
    """`word` with one letter for all transcriptions of a sound, and single consonants for double ones."""
    word = _vowels_joined(word) if digraphs else word
    for written, sound in _SOUNDS:
        word = word.replace(written, sound)
    single = "".join(letter for at, letter in enumerate(word) if letter in _VOWELS or letter != word[at - 1 : at])
    return _without_epenthesis(_latin(single))


def _latin(word: str) -> str:
    """Greek -os and -on as Latin -us and -um."""
    for greek, latin in (("os", "us"), ("on", "um")):
        if word.endswith(greek):
            return word.removesuffix(greek) + latin
    return word


def _without_epenthesis(word: str) -> str:
    """-tr- for -ter- before a vowel: the two stems of such words as aster."""
    for vowel in "aeiou":
        word = word.replace(f"ter{vowel}", f"tr{vowel}")
    return word


def _same_sound(a: str, b: str) -> bool:
    return _sound(a) == _sound(b)


def _same_strict_sound(a: str, b: str) -> bool:
    """Of generic names: a digraph for a vowel, or other transcriptions, not both at once."""
    return _sound(a, digraphs=False) == _sound(b, digraphs=False) or _vowels_joined(a) == _vowels_joined(b)


def _vowels_joined(word: str) -> str:
    for written, sound in _DIGRAPHS:
        word = word.replace(written, sound)
    return word


def _same_soft_sound(a: str, b: str) -> bool:
    """Other transcriptions of a sibilant: ceylanica and zeylanica, chinensis and sinensis."""
    return min(len(a), len(b)) > 7 and _softened(a) == _softened(b)


def _softened(word: str) -> str:
    for written in ("ch", "c"):
        for vowel in "eiy":
            word = word.replace(written + vowel, f"s{vowel}")
    word = f"s{word[1:]}" if word.startswith("x") else word
    return _sound(word.replace("z", "s"))


def _other_linking_vowel(a: str, b: str, linking: frozenset[str] = frozenset("oie")) -> bool:
    """One vowel before the last word of a compound: longifolia and longefolia."""
    first, second = _sound(a), _sound(b)
    at = _one_vowel(first, second)
    return at >= 2 and {first[at], second[at]} <= linking and _is_last_word(first[at + 1 :])


def _o_or_i(a: str, b: str) -> bool:
    """Of generic names: the Greek and the Latin linking vowel, as in Pleuropetalum and Pleuripetalum."""
    return _other_linking_vowel(a, b, frozenset("oi"))


def _is_last_word(word: str) -> bool:
    stem, _ = _stem(word)
    return word in _ELEMENT_SOUNDS or stem in _STEM_SOUNDS


def _one_vowel(a: str, b: str) -> int:
    """Where two words of one length differ, if that is one vowel for another; else -1."""
    if len(a) != len(b):
        return -1
    places = [at for at, (one, other) in enumerate(zip(a, b, strict=True)) if one != other]
    at = places[0] if len(places) == 1 else -1
    return at if at >= 0 and {a[at], b[at]} <= _VOWELS else -1


def _near_vowel(a: str, b: str, start: int = 1) -> bool:
    """One vowel for a near one within a long word that is no compound, in which another vowel makes another word."""
    first, second = _sound(a, digraphs=False), _sound(b, digraphs=False)
    at = _one_vowel(first, second)
    if not start <= at < len(first) - 2 or len(first) < _LONG_WORD:
        return False
    compound = any(_is_last_word(word[-length:]) for word in (first, second) for length in range(4, _LONGEST_LAST))
    return not compound and any({first[at], second[at]} <= near for near in _NEAR)


def _near_vowel_within(a: str, b: str) -> bool:
    """Of generic names: behind the first syllables, as in Acanthoica and Acanthoeca."""
    return _near_vowel(a, b, start=4)


def _one_more_i(a: str, b: str) -> bool:
    """-a and -ia behind the same long name: Eschweilera and Eschweileria."""
    short, long = sorted((_sound(a, digraphs=False), _sound(b, digraphs=False)), key=len)
    stem = short.removesuffix("a")
    return long == f"{stem}ia" and len(stem) >= _LONG_STEM and stem[-1] not in _VOWELS


def _stem(sound: str) -> tuple[str, str]:
    ending = next((one for one in _ENDINGS if sound.endswith(one)), "")
    return sound.removesuffix(ending), ending


def _same_stem(a: str, b: str) -> bool:
    (first, one), (second, other) = _stem(_with_foot(_sound(a))), _stem(_with_foot(_sound(b)))
    return first == second and bool(one and other) and min(len(a), len(b)) >= _LONG_STEM + 2


def _with_foot(sound: str) -> str:
    """-pus for its other stem -podus: heteropus and heteropodus."""
    for ending in ("podus", "poda", "podum"):
        if sound.endswith(ending):
            return f"{sound.removesuffix(ending)}pus"
    return sound


def _same_place(a: str, b: str) -> bool:
    """Adjectives from one name of a place: saltensis and saltiensis, nepalensis and napaulensis."""
    (first, one), (second, other) = _place(a), _place(b)
    if not first or not second:
        return False
    if first == second:
        return len(first) > 3
    return one == other == "ensis" and _varied(first, second)


_PLACE_ENDINGS = ("ensis", "ense", "anus", "ana", "anum")


def _place(word: str) -> tuple[str, str]:
    """The place and the kind of its ending; ("", "") if there is no such ending."""
    sound = _sound(word)
    ending = next((one for one in _PLACE_ENDINGS if sound.endswith(one)), "")
    if not ending:
        return "", ""
    kind = "ensis" if ending.startswith("ens") else "anus"
    return sound.removesuffix(ending).removesuffix("i"), kind


def _varied(a: str, b: str) -> bool:
    """Whether two names of places differ in one vowel; au counts as a."""
    first, second = a.replace("au", "a"), b.replace("au", "a")
    return len(first) >= 5 and (first == second or _one_vowel(first, second) >= 0)


_ELEMENT_SOUNDS = frozenset(_sound(element) for element in ELEMENTS)
_STEM_SOUNDS = frozenset(_stem(_sound(word))[0] for word in _LAST_STEMS)
_OF_GENERA: tuple[tuple[str, _Alike], ...] = (
    ("two transcriptions of the same sounds", _same_strict_sound),
    ("two linking vowels in one compound", _o_or_i),
    ("one vowel within a long word", _near_vowel_within),
    ("-a and -ia behind the same stem", _one_more_i),
)
_OF_EPITHETS: tuple[tuple[str, _Alike], ...] = (
    ("two genders of one adjective", same_epithet),
    ("two transcriptions of the same sounds", _same_sound),
    ("two linking vowels in one compound", _other_linking_vowel),
    ("one vowel within a long word", _near_vowel),
    ("two transcriptions of a sibilant", _same_soft_sound),
    ("two endings of one stem", _same_stem),
    ("two adjectives from one place", _same_place),
)
