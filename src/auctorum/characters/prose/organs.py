"""The words for plant structures in six languages: what organ a word names, and which of several it picks out.

One look-up a word: all forms are written out once, when the module is loaded. English comes before Latin, Latin before
the others, where a word of one is spelt like a word of another.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass

from auctorum.characters.prose import (
    organ_french,
    organ_german,
    organ_italian,
    organ_latin,
    organ_portuguese,
    organ_spanish,
    organ_words,
    place_words,
)
from auctorum.characters.prose.compound_words import COMPOUNDS, LONGEST_COMPOUND
from auctorum.characters.prose.declension import latin_forms
from auctorum.characters.prose.english_nouns import plurals
from auctorum.characters.prose.english_nouns import singular as _singular
from auctorum.characters.prose.entries import entries
from auctorum.characters.prose.organ_forms import german_adjective, german_noun, latin_noun, romance

__all__ = ["COMPOUNDS", "LONGEST_COMPOUND", "Organ", "organ_of", "place_of", "singular"]


@dataclass(frozen=True, slots=True)
class Organ:
    """A plant structure by its English singular.

    `part` is True for a part or mark that takes the name of its whole (lobe, tube, spot); `subject` for a growth form,
    which stands for the `plant`, and for a place of growth, which stands for the `habitat`.
    """

    name: str
    part: bool = False
    subject: bool = False


def organ_of(word: str) -> Organ | None:
    """The structure that a folded word names, in any number and case; None for any other word.

    >>> organ_of("foliis"), organ_of("lobes"), organ_of("arbusto")
    (Organ(name='leaf', part=False, subject=False), Organ(name='lobe', part=True, subject=False), \
Organ(name='plant', part=False, subject=True))
    """
    return _ORGANS.get(word)


def place_of(word: str) -> str | None:
    """The English adjective of position or subset that a folded word is; None for any other word.

    >>> place_of("inferiora"), place_of("disk"), place_of("wide")
    ('lower', 'disc', None)
    """
    return _PLACES.get(word)


def singular(word: str) -> str:
    """The English singular of a folded noun of the trade, known or not; a word that is singular stays.

    >>> [singular(word) for word in ("teeth", "phyllaries", "perigynia", "pappus")]
    ['tooth', 'phyllary', 'perigynium', 'pappus']
    """
    return word if word in _ENGLISH else _NUMBER.get(word) or _singular(word)


_ROMANCE = {
    "es": organ_spanish.NOUNS,
    "pt": organ_portuguese.NOUNS,
    "fr": organ_french.NOUNS,
    "it": organ_italian.NOUNS,
}


def _english() -> Iterator[tuple[str, str]]:
    """English singulars with the names they stand for."""
    for word in f"{organ_words.PLAIN} {organ_words.PARTS}".split():
        yield word, word
    yield from ((word, name) for name, words in entries(organ_words.SYNONYMS) for word in words)
    yield from ((word, "plant") for word in organ_words.PLANT.split())
    yield from ((word, "habitat") for word in organ_words.HABITAT.split())


def _foreign() -> Iterator[tuple[str, str]]:
    """Forms of all other languages with the English names, Latin first."""
    yield from ((form, name) for name, words in entries(organ_latin.FORMS) for form in words)
    yield from _inflected(organ_latin.NOUNS, latin_noun)
    for language, text in _ROMANCE.items():
        for name, words in entries(text):
            yield from ((form, name) for word in words for form in romance(language, word))
    yield from _inflected(organ_german.NOUNS, german_noun)
    for whole, firsts in entries(organ_german.WHOLES):
        for part, lasts in entries(organ_german.PARTS):
            name = _part_of(whole, part)
            yield from ((form, name) for one in firsts for other in lasts for form in german_noun(_joined(one, other)))


def _inflected(text: str, forms: Callable[[str], Iterable[str]]) -> Iterator[tuple[str, str]]:
    for name, words in entries(text):
        yield from ((form, name) for word in words for form in forms(word))


def _joined(first: str, last: str) -> str:
    one, _, several = last.casefold().partition("/")
    return f"{first}{one}/{first}{several}" if several else first + one


def _part_of(whole: str, part: str) -> str:
    """`leaf` and `lower surface` to `lower leaf surface`; `leaf` and `apex` to `leaf apex`."""
    *places, noun = part.split()
    return " ".join((*places, whole, noun))


def _organ(name: str) -> Organ:
    return Organ(name, name.split()[-1] in _PARTS and not _owned(name), name in ("plant", "habitat"))


def _owned(name: str) -> bool:
    """True for a name of several words that holds the whole (`calyx lobe`), not only a place (`upper surface`)."""
    return any(word not in _PLACES for word in name.split()[:-1])


def _places() -> Iterator[tuple[str, str]]:
    yield from ((word, word) for word in place_words.ENGLISH.split())
    yield from place_words.SYNONYMS.items()
    yield from _inflected(place_words.LATIN, latin_forms)
    for language, text in place_words.ROMANCE.items():
        for name, words in entries(text):
            yield from ((form, name) for word in words for form in romance(language, word))
    yield from _inflected(place_words.GERMAN, german_adjective)


def _first_of(pairs: Iterable[tuple[str, str]]) -> dict[str, str]:
    found: dict[str, str] = {}
    for word, name in pairs:
        found.setdefault(word, name)
    return found


_PARTS = frozenset(organ_words.PARTS.split()) | {"blade"}
_PLACES = _first_of(_places())
_ENGLISH: Mapping[str, str] = _first_of(_english())
_NUMBER = _first_of((form, word) for word in _ENGLISH for form in sorted(plurals(word)) if form not in _ENGLISH)
_NAMES = _first_of((*_ENGLISH.items(), *((form, _ENGLISH[word]) for form, word in _NUMBER.items()), *_foreign()))
_BY_NAME = {name: _organ(name) for name in sorted(set(_NAMES.values()))}
_ORGANS: Mapping[str, Organ] = {word: _BY_NAME[name] for word, name in _NAMES.items()}
LONGEST_ORGAN = max(map(len, _ORGANS))  # letters
