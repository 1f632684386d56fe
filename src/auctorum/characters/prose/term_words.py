"""The lexicon of descriptive terms: what one word of a description says of an organ, in English words of the trade.

Words come folded (no case, no accents). English words keep their spelling; those of Latin, Spanish, Portuguese,
Italian, French and German are translated. A shade after its colour (`verde claro`) is for the reader to put before it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache

from auctorum.characters.prose import (
    colour_terms,
    declension,
    degree_words,
    foreign_terms,
    other_terms,
    shape_terms,
    surface_terms,
)
from auctorum.characters.tokens import folded


@dataclass(frozen=True, slots=True)
class Term:
    """A word of the trade: its English name and what it says.

    `property` is shape, surface, colour or other; `part` is margin or apex for a shape that said of a leaf is that of
    its margin (`serrate`) or apex (`acute`), else empty. `noun`: the word is a noun of the covering (`tomentum`), the
    name its adjective (`tomentose`).
    """

    name: str
    property: str
    part: str = ""
    noun: bool = False


COLOUR_NOUNS = frozenset(colour_terms.NOUNS.split())
"""Nouns that name a shade only before a colour or `-coloured` (`sky-blue`, `flesh-coloured`); some are organs too."""

_ENGLISH = (
    (shape_terms.MARGIN, "shape", "margin"),
    (shape_terms.APEX, "shape", "apex"),
    (shape_terms.OUTLINES, "shape", ""),
    (shape_terms.DIVISION, "shape", ""),
    (shape_terms.SOLIDS, "shape", ""),
    (shape_terms.BASE, "shape", ""),
    (surface_terms.HAIRS, "surface", ""),
    (surface_terms.GLANDS_AND_WAX, "surface", ""),
    (surface_terms.RELIEF_AND_GLOSS, "surface", ""),
    (surface_terms.ARMS, "surface", ""),
    (colour_terms.COLOURS, "colour", ""),
    (other_terms.TEXTURE, "other", ""),
    (other_terms.POSTURE, "other", ""),
    (other_terms.PLACED, "other", ""),
    (other_terms.LIFE, "other", ""),
    (colour_terms.TINTED, "colour", ""),
)
_LATIN = (
    (colour_terms.LATIN, "colour"),
    (surface_terms.LATIN, "surface"),
    (shape_terms.LATIN, "shape"),
    (other_terms.LATIN, "other"),
    (colour_terms.LATIN_TINTED, "colour"),
)
LATIN_FIRST = {
    **dict.fromkeys(("atro", "obscure", "obscuro"), "dark"),
    **dict.fromkeys(("pallide", "pallido", "dilute"), "pale"),
    **dict.fromkeys(("laete", "laeto"), "bright"),
    **dict.fromkeys(("angusto", "anguste", "angusti"), "narrowly"),
    **dict.fromkeys(("lato", "late", "lati"), "broadly"),
    **dict.fromkeys(("leuco", "leuce"), "white"),
    "melano": "black",
    "chryso": "golden",
    "cyano": "blue",
    "erythro": "red",
    "xantho": "yellow",
    "rhodo": "pink",
    "chloro": "green",
    "ochro": "yellowish",
    "intense": "deep",
    "saturate": "deep",
    "integro": "entire",
    "brevi": "shortly",
    "cuneo": "cuneate",
    "retro": "retrorsely",
    "denso": "densely",
    "minute": "minutely",
    "semi": "semi",
}
SHADES = frozenset(
    ("dark", "pale", "bright", "deep", "narrowly", "broadly", "shortly", "densely", "minutely", "retrorsely", "semi")
)
_PLACES = frozenset(
    ("apically", "basally", "dorsally", "laterally", "marginally", "medianly", "radially", "terminally", "ventrally")
)
_NOT_TERMS = frozenset(foreign_terms.OTHER_WORDS.split())


def translations(table: str) -> Iterator[tuple[str, tuple[str, ...]]]:
    """The names of a table with their words: `english = word word; ...`."""
    for entry in table.split(";"):
        name, _, words = entry.partition("=")
        if name.strip():
            yield name.strip().replace("_", " "), tuple(words.split())


@cache
def english_terms() -> dict[str, Term]:
    """The listed English words; a word of several tables has the sense of the first."""
    found: dict[str, Term] = {}
    for words, kind, part in _ENGLISH:
        for word in words.split():
            found.setdefault(word, Term(word, kind, part))
    return found


@cache
def latin_terms() -> dict[str, Term]:
    """Latin nominatives: the listed ones, then those that English words are regularly made from."""
    found: dict[str, Term] = {}
    for table, kind in _LATIN:
        for name, words in translations(table):
            for word in words:
                found.setdefault(word, _named(name, kind))
    for term in english_terms().values():
        for word in declension.latin_cognates(term.name):
            found.setdefault(word, term)
    return found


def _named(name: str, kind: str) -> Term:
    """The English term of that name; of `star-shaped` and `dark purple` the kind is that of the last word."""
    term = english_terms().get(name)
    if term is not None:
        return term
    last = english_terms().get(name.replace("-", " ").split()[-1])
    return Term(name, last.property if last else kind, last.part if last else "")


@cache
def all_terms() -> dict[str, Term]:
    """Every form of every word; what was listed goes before what was formed by rule, English before all."""
    found = dict(english_terms())
    _add(found, ((word, replace(_named(name, "surface"), noun=True)) for name, word in _nouns()))
    latin, listed = latin_terms(), {term.name: term for term in latin_terms().values()}
    _add(found, ((form, term) for lemma, term in latin.items() for form in declension.latin_forms(lemma)))
    for table, forms in (
        (foreign_terms.ROMANCE, declension.romance_forms),
        (foreign_terms.GERMAN, declension.german_forms),
    ):
        for name, words in translations(table):
            term = listed.get(name) or _named(name, "other")
            _add(found, ((form, term) for word in words for form in forms(word)))
    for term in english_terms().values():
        for word in declension.romance_cognates(term.name):
            _add(found, ((form, term) for form in _safe_forms(word)))
    return found


def _safe_forms(word: str) -> tuple[str, ...]:
    """Forms of a word made by rule: without Italian plurals, and French `-é` without its accent is often an organ."""
    forms = declension.romance_forms(word)
    if word.endswith("é"):
        return forms[1::2]
    return forms[:4] if word.endswith("o") else forms


def _nouns() -> Iterator[tuple[str, str]]:
    return ((name, word) for name, words in translations(surface_terms.NOUNS) for word in words)


def _add(found: dict[str, Term], words: Iterator[tuple[str, Term]]) -> None:
    for word, term in words:
        if word not in _NOT_TERMS:
            found.setdefault(word, term)


def term_of(word: str) -> Term | None:
    """What the word says; None for an organ, a stage, a growth form, a number and any word not known here.

    >>> term_of("glabra").name, term_of("serrulate").part
    ('glabrous', 'margin')
    """
    return all_terms().get(word) or _superlative(word)


def _superlative(word: str) -> Term | None:
    """`obtusissimis`, Spanish `ramosisimo`: very obtuse, very branched."""
    stem, superlative, end = word.rpartition("issim" if "issim" in word else "isim")
    if not superlative or end not in declension.latin_forms("us"):
        return None
    for nominative in ("us", "is", "ns"):
        term = latin_terms().get(stem.removesuffix("nt" if nominative == "ns" else "") + nominative)
        if term is not None:
            return replace(term, name=f"very {term.name}")
    return None


@cache
def _degrees() -> dict[str, str]:
    found = {word: word for word in degree_words.ENGLISH.split()} | {"±": "±"}
    for name, words in translations(degree_words.FOREIGN):
        for word in words:
            found.setdefault(folded(word), name)
    return found


def degree_of(word: str) -> str | None:
    """The English word of degree or manner that stays part of a state; None for any other word.

    >>> degree_of("pallide"), degree_of("stellately"), degree_of("densamente"), degree_of("woolly")
    ('pale', 'stellately', 'densely', None)
    """
    if word in _degrees():
        return _degrees()[word]
    if word.endswith("ly") and word not in english_terms() and word not in _PLACES:
        base = word[:-2]
        made_from = (base, base + "e", base + "le", base[:-2], base[:-1] + "y")
        return word if any(_is_adjective(adjective) for adjective in made_from) else None
    term = all_terms().get(word.removesuffix("mente")) if word.endswith("mente") else None
    return _adverb(term.name) if term else None


def _is_adjective(word: str) -> bool:
    return word in english_terms() and len(word) > 3


def _adverb(adjective: str) -> str:
    """`elliptically`, `simply`, `ovately`."""
    if adjective.endswith("ic"):
        return adjective + "ally"
    return adjective[:-1] + "y" if adjective.endswith("le") else adjective + "ly"


TINTS: frozenset[str] = frozenset(
    form
    for _, words in translations(colour_terms.LATIN_TINTED)
    for word in words
    for form in declension.latin_forms(word)
) | frozenset(colour_terms.TINTED.split())
"""Words that lay the colour after them over another: `tinged rose`, `striped with purple`, `roseo suffusa`."""
