"""Spelling folded for finding names: what differs only in case, marks, ligatures or hyphens becomes the same."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

# ICN Art. 60.7 (details from memory); letters that no rule names follow common practice.
_LETTERS = str.maketrans(
    {
        "ä": "ae", "ö": "oe", "ü": "ue", "æ": "ae", "œ": "oe", "ø": "oe", "å": "ao",
        "ß": "ss", "ł": "l", "đ": "d", "ð": "d", "þ": "th", "ı": "i", "ŋ": "ng",
    }
)  # fmt: skip
_JOINED = re.compile(r"['’‘ʼʻ´`\-‐‑\u00ad]")
_OTHER = re.compile(r"[\W_]+")


def plain_letters(text: str) -> str:
    """`text` in lower case and without diacritics or ligatures; everything else stays."""
    if text.isascii():
        return text.lower()
    # Composed first, so that a letter typed with a separate mark meets the table, too.
    folded = unicodedata.normalize("NFKC", text).casefold().translate(_LETTERS)
    marks_apart = unicodedata.normalize("NFKD", folded)
    return "".join(letter for letter in marks_apart if not unicodedata.combining(letter)).casefold()


@lru_cache(maxsize=1 << 16)  # the same names are looked up again and again
def fold(text: str) -> str:
    """`text` in lower case without marks, ligatures, hyphens, apostrophes, hybrid signs or punctuation.

    >>> fold("Exemplum Novæ-Mülleri"), fold("K.Koch")
    ('exemplum novaemuelleri', 'k koch')
    """
    return _OTHER.sub(" ", _JOINED.sub("", plain_letters(text))).strip()


# Endings of one adjective in the three genders (ICN Art. 23.5, 24.2): first, second and third declension,
# comparatives, and the Greek -os.
_DECLENSIONS = (
    ("us", "a", "um"), ("er", "ra", "rum"), ("er", "era", "erum"), ("is", "e"), ("er", "ris", "re"),
    ("ior", "ius"), ("jor", "jus"), ("nor", "nus"), ("os", "on"),
)  # fmt: skip


def same_epithet(a: str, b: str) -> bool:
    """Whether two epithets differ at most in spelling that folds and in the ending that shows gender.

    It knows no nouns: of two nouns that end so, it says the same (ICN Art. 23.5).

    >>> same_epithet("albus", "alba"), same_epithet("niger", "nigrum"), same_epithet("alba", "albida")
    (True, True, False)
    """
    return not epithet_keys(a).isdisjoint(epithet_keys(b))


@lru_cache(maxsize=1 << 16)
def epithet_keys(epithet: str) -> frozenset[str]:
    """Keys of which two epithets share one if and only if they are the same epithet (`same_epithet`)."""
    folded = fold(epithet)
    stems = {
        f"{endings[0]}-{folded.removesuffix(ending)}"
        for endings in _DECLENSIONS
        for ending in endings
        if folded.endswith(ending) and folded != ending
    }
    return frozenset({folded, *stems})
