"""Terms formed of others: with a prefix (`subglabrous`), an end (`reddish`), or of two printed as one (`dunkelrot`)."""

from __future__ import annotations

from dataclasses import replace
from functools import cache, lru_cache

from auctorum.characters.prose import declension, foreign_terms
from auctorum.characters.prose.term_words import (
    COLOUR_NOUNS,
    LATIN_FIRST,
    SHADES,
    Term,
    english_terms,
    latin_terms,
    term_of,
    translations,
)
from auctorum.characters.tokens import folded

_PREFIXES = (
    "sub",
    "semi",
    "hemi",
    "ob",
    "bi",
    "tri",
    "quadri",
    "quinque",
    "multi",
    "pluri",
    "pauci",
    "uni",
    "un",
    "non",
)
_LONGEST = 40
_SHORTEST_REST = 4


@lru_cache(maxsize=4096)
def formed_term(word: str) -> Term | None:
    """The term that a word not listed is formed to say, its name as printed if English; None if it is formed of none.

    >>> [formed_term(word).name for word in ("subglabra", "roseocoloured", "ovatolanceolatus", "dunkelrot", "gelbgrun")]
    ['subglabrous', 'pink-coloured', 'ovate-lanceolate', 'dark red', 'yellow-green']
    """
    if not _SHORTEST_REST < len(word) <= _LONGEST or not word.isalpha():
        return None
    return _prefixed(word) or _ended(word) or _joined(word)


def latin_first(word: str) -> str | None:
    """The first half of a compound with a hyphen, in English: `ovato-`, `lineari-`, `verde-`; None for an English word.

    >>> latin_first("ovato"), latin_first("atro"), latin_first("viridi"), latin_first("ovate")
    ('ovate', 'dark', 'green', None)
    """
    first = LATIN_FIRST.get(word) or _latin_firsts().get(word)
    if first is None and word not in english_terms():
        term = term_of(word)
        return term.name if term is not None and not term.noun else None
    return first


@cache
def _latin_firsts() -> dict[str, str]:
    found: dict[str, str] = {}
    for lemma, term in latin_terms().items():
        found.setdefault(declension.latin_combining(lemma), term.name)
    return found


@cache
def _german_firsts() -> dict[str, str]:
    """First halves with the space or hyphen that joins them."""
    return {
        folded(word): name if name.endswith("-") else name + " "
        for name, words in translations(foreign_terms.GERMAN_FIRST)
        for word in words
    }


def _prefixed(word: str) -> Term | None:
    for prefix in _PREFIXES:
        rest = word.removeprefix(prefix)
        if rest == word or len(rest) < _SHORTEST_REST:
            continue
        term = term_of(rest) or (_ended(rest) or _joined(rest) if prefix == "sub" else None)
        if term is None or term.noun or (prefix == "un" and not rest.endswith(("ed", "ate", "ing"))):
            continue
        if prefix == "ob" and term.property != "shape":
            continue
        return replace(term, name=prefix + term.name)
    return None


def _ended(word: str) -> Term | None:
    """`roundish`, `fleshcoloured`, `spoonshaped`, `dentated`, and what is formed like something (`-iform`, `-like`)."""
    for end in ("coloured", "colored", "shaped"):
        first = word.removesuffix(end)
        if first != word and len(first) > 2:
            return Term(f"{_first_of(first)}-{end}", "shape" if end == "shaped" else "colour")
    if word.endswith("ish"):
        return _weakened(word)
    if word.endswith("ated") and word[:-1] in english_terms():
        return replace(english_terms()[word[:-1]], name=word)
    if word.endswith("like") and len(word) > 7:
        return Term(word, "shape")
    return _form(word)


def _first_of(word: str) -> str:
    return word if word in english_terms() or word in COLOUR_NOUNS else latin_first(word) or word


def _weakened(word: str) -> Term | None:
    base = word.removesuffix("ish")
    for adjective in (base, base + "e", base[:-1] if base[-1:] == base[-2:-1] else base, base + "y"):
        term = english_terms().get(adjective)
        if term is not None:
            return replace(term, name=word)
    return None


def _form(word: str) -> Term | None:
    """`calyciformis` and `calyciform`: calyciform; the first half stays as printed, `caliciforme`: caliciform."""
    stem, form, end = word.rpartition("iform")
    if form and len(stem) > 2 and end in ("", "is", "e", "es", "i", "ia", "em", "ium", "ibus"):
        return Term(stem + form, "shape")
    return None


def _joined(word: str) -> Term | None:
    """Two terms printed as one; the longest second half that is a term after a known first half."""
    for cut in range(2, len(word) - 2):
        first = _half(word[:cut])
        second = term_of(word[cut:]) if first else None
        if first and second is not None and not second.noun:
            return replace(second, name=first + second.name)
    return None


def _half(word: str) -> str:
    """The first half in English with what joins it to the second; empty if it is none."""
    latin = LATIN_FIRST.get(word) or (_latin_firsts().get(word) if word[-1] in "oi" and len(word) > 3 else None)
    if latin:
        return latin + (" " if latin in SHADES else "-")
    if word in _german_firsts():
        return _german_firsts()[word]
    if word in ("pale", "dark", "light", "deep", "bright"):
        return word + " "
    return word + "-" if len(word) > 2 and (word in english_terms() or word in COLOUR_NOUNS) else ""
