"""The words of a character's states, and finding them in a phrase: longest first, in any case of Latin."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from auctorum.characters.figures import Line
from auctorum.characters.tokens import Sort, folded
from auctorum.characters.vocabulary import Character

_CASES = ("ibus", "orum", "arum", "ium", "us", "um", "ae", "am", "is", "os", "as", "em", "es", "ia", "a", "i", "o", "e")
_NOMINATIVES = ("us", "um", "is", "a")
_SPELLINGS = {"gray": "grey", "grayish": "greyish", "spatulate": "spathulate", "colored": "coloured"}
_LONGEST_STATE = 8


@dataclass(frozen=True, slots=True)
class Lexicon:
    """States by their words and by the stem of a Latin word; how many words the longest has, and all first words."""

    by_words: dict[tuple[str, ...], str]
    by_stem: dict[str, str]
    longest: int
    firsts: frozenset[str]


@dataclass(frozen=True, slots=True)
class Match:
    """A state found at the tokens `start` to `end`."""

    state: str
    start: int
    end: int


@lru_cache(maxsize=1024)
def lexicon_of(character: Character) -> Lexicon:
    """The lexicon of a character. A word of the vocabulary may be a Latin stem, `glabr-`, or a nominative."""
    by_words: dict[tuple[str, ...], str] = {}
    by_stem: dict[str, str] = {}
    for state in character.states:
        for word in (state.name, *state.words):
            by_words.setdefault(_key(word), state.name)
    for state in character.states:
        for word in state.words:
            for stem in _stems(folded(word.strip())):
                by_stem.setdefault(stem, state.name)
    longest = min(max((len(words) for words in by_words), default=0), _LONGEST_STATE)
    return Lexicon(by_words, by_stem, longest, frozenset(words[0] for words in by_words if words))


def matches_of(line: Line, character: Character) -> tuple[Match, ...]:
    """The states of the character that the phrase names, in order, none inside another."""
    lexicon = lexicon_of(character)
    found: list[Match] = []
    at = 0
    while at < len(line.tokens):
        match = _match(line, at, lexicon) if line.sort(at) is Sort.WORD else None
        if match is not None:
            found.append(match)
        at = match.end if match else at + 1
    return tuple(found)


def match_at(line: Line, at: int, character: Character) -> Match | None:
    """The state of the character that the words starting here name; None if they name none."""
    return _match(line, at, lexicon_of(character)) if line.sort(at) is Sort.WORD else None


def _match(line: Line, at: int, lexicon: Lexicon) -> Match | None:
    first = _SPELLINGS.get(line.text(at), line.text(at))
    if first in lexicon.firsts:
        places = _run(line, at, lexicon.longest)
        texts = [_SPELLINGS.get(line.text(place), line.text(place)) for place in places]
        for length in range(len(texts), 0, -1):
            state = lexicon.by_words.get(tuple(texts[:length]))
            if state is not None:
                return Match(state, at, places[length - 1] + 1)
    state = _inflected(first, lexicon)
    return Match(state, at, at + 1) if state else None


def _run(line: Line, at: int, longest: int) -> list[int]:
    """Places of the words that follow each other here, hyphens between them passed over."""
    places: list[int] = []
    while line.sort(at) is Sort.WORD and len(places) < max(longest, 1):
        places.append(at)
        at += 1
        if line.sort(at) is Sort.DASH and line.tokens[at].glued and line.sort(at + 1) is Sort.WORD:
            at += line.tokens[at + 1].glued
    return places


def _inflected(text: str, lexicon: Lexicon) -> str | None:
    if text in lexicon.by_stem:
        return lexicon.by_stem[text]
    for ending in _CASES:
        if text.endswith(ending) and text[: -len(ending)] in lexicon.by_stem:
            return lexicon.by_stem[text[: -len(ending)]]
    if text.endswith("ish") and len(text) > 5:
        root = text[:-3]
        undoubled = root[:-1] if root[-1] == root[-2] else root
        for base in (root, root + "e", undoubled):
            if (base,) in lexicon.by_words:
                return lexicon.by_words[(base,)]
    return None


def _stems(word: str) -> tuple[str, ...]:
    """Stems of a Latin nominative (`albus`, `glaber`, `viridis`, `virens`) or of a word given as a stem (`glabr-`)."""
    if " " in word:
        return ()
    if word.endswith("-"):
        return (word[:-1],) if len(word) > 3 else ()
    if word.endswith("er") and len(word) > 4:
        return (word[:-2] + "r", word)
    if word.endswith("ns") and len(word) > 4:
        return (word[:-1] + "t",)
    for ending in _NOMINATIVES:
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            return (word[: -len(ending)],)
    return ()


def _key(word: str) -> tuple[str, ...]:
    parts = folded(word).replace("-", " ").split()
    return tuple(_SPELLINGS.get(part, part) for part in parts)
