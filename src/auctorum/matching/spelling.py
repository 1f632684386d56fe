"""Forms of a word under which spellings of the same epithet or genus fall together.

`letters` is the word without capitals and marks, `latin` joins the spellings that Latin allows or that
writers confuse (ICN Art. 60), `stem` leaves out the ending that agrees with the genus (Art. 23.5, 32.2).
"""

from __future__ import annotations

from functools import lru_cache

from auctorum.names.fold import fold

# Written alike by authors and printers: ICN Art. 60.1-60.8 and common practice. In this order.
_LATIN = (
    ("ae", "e"),
    ("oe", "e"),
    ("ph", "f"),
    ("rh", "r"),
    ("th", "t"),
    ("ch", "c"),
    ("gh", "g"),
    ("ue", "u"),
    ("w", "v"),
    ("y", "i"),
    ("j", "i"),
    ("k", "c"),
)
# Endings of adjectives, participles and genitives, after `latin`; longest first.
_STEM_ENDINGS = ("ie", "us", "um", "is", "os", "on", "a", "e", "i")
_SHORTEST_STEM = 3

# As printed: one of these for another at the end of an epithet is a matter of gender, case or number.
_ENDINGS = "a us um is e i ii ei ae iae os on er era erum ra rum ris re eus ea eum ius ia ium orum arum ior"
ENDINGS = frozenset(_ENDINGS.split())


@lru_cache(maxsize=4096)
def letters_of(char: str) -> str:
    """What one printed character is among plain letters and digits: none, one, or two for a ligature.

    >>> letters_of("Æ"), letters_of("ë"), letters_of("-")
    ('ae', 'e', '')
    """
    return "".join(char for char in fold(char) if char.isalnum())


def letters(word: str) -> str:
    """The word in plain small letters, without hyphens and marks.

    >>> letters("Novae-Hollandiæ")
    'novaehollandiae'
    """
    if word.isascii() and word.isalpha():
        return word.lower()
    return "".join(map(letters_of, word))


def squeeze(word: str) -> str:
    """The word with runs of one letter written once.

    >>> squeeze("millii")
    'mili'
    """
    return "".join(char for char, before in zip(word, " " + word, strict=False) if char != before)


def latin(word: str) -> str:
    """The word in one spelling for all that Latin confuses.

    >>> latin("sylvestris") == latin("silvestris"), latin("macrorrhyncha")
    (True, 'macrorinca')
    """
    for written, joined in _LATIN:
        if written in word:
            word = word.replace(written, joined)
    return squeeze(word)


def stem(epithet: str) -> str:
    """`latin` without the ending that agrees with the genus; `-er` gives up its vowel, as in glaber, glabra.

    >>> stem("corniculatus") == stem("corniculata"), stem("glaber") == stem("glabrum")
    (True, True)
    """
    word = latin(epithet)
    if word.endswith("er") and len(word) - 1 >= _SHORTEST_STEM:
        return word[:-2] + "r"
    for ending in _STEM_ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= _SHORTEST_STEM:
            return word[: -len(ending)]
    return word
