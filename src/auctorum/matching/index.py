"""The known names, ready to be asked which are near a label.

Behind a small interface: names with the same letters, names near them in spelling, names by epithet,
names that go on where a label stops, and whether a word is known at all.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from rapidfuzz import process
from rapidfuzz.distance import Levenshtein

from auctorum.corpus.model import Corpus
from auctorum.matching.spelling import latin, letters, stem
from auctorum.names.name import Name


@dataclass(frozen=True, slots=True)
class Entry:
    """A known name: `words` are genus and epithets in plain letters, `printed` the same as the name spells them.

    `ranks` gives the rank of each word, empty for genus and species. `name` is what is answered: the name
    itself where the entry is only a variant spelling of it.
    """

    id: str
    name: Name
    printed: tuple[str, ...]
    words: tuple[str, ...]
    ranks: tuple[str, ...]
    hybrid: bool

    @property
    def key(self) -> str:
        """All plain letters in one."""
        return "".join(self.words)


def skeleton(words: Iterable[str]) -> str:
    """Words in plain letters, in one, as spelling and gender leave them: the genus whole, each epithet its stem."""
    genus, *epithets = words
    return latin(genus) + "".join(map(stem, epithets))


def _entry(id_: str, spelt: Name, answer: Name) -> Entry:
    ranked = (*spelt.divisions, *spelt.lower) if not spelt.species else spelt.lower
    species = (spelt.species,) if spelt.species else ()
    printed = (spelt.genus, *species, *(part.epithet for part in ranked))
    ranks = ("", *("" for _ in species), *(part.rank for part in ranked))
    hybrid = spelt.genus_hybrid or spelt.species_hybrid or any(part.hybrid for part in ranked)
    return Entry(id_, answer, printed, tuple(map(letters, printed)), ranks, hybrid)


@dataclass(frozen=True)
class NameIndex:
    """Known names in order; made by `index_of` or `index_corpus`. Numbers below are places in `entries`."""

    entries: tuple[Entry, ...]
    _by_key: Mapping[str, tuple[int, ...]]
    _by_skeleton: Mapping[str, tuple[int, ...]]
    _by_epithets: Mapping[str, tuple[int, ...]]
    _by_ends: Mapping[str, tuple[int, ...]]
    _keys: tuple[str, ...]  # sorted, for what begins so
    _by_length: Mapping[int, tuple[str, ...]]  # skeletons by their length
    _genera: frozenset[str]
    _epithets: frozenset[str]

    def same(self, key: str) -> tuple[Entry, ...]:
        """Names of exactly these plain letters."""
        return self._at(self._by_key.get(key, ()))

    def near(self, form: str, most: int, limit: int = 12) -> tuple[Entry, ...]:
        """Names whose skeleton is at most `most` letters from `form`, nearest first, `limit` skeletons at most."""
        choices = [
            one for size in range(len(form) - most, len(form) + most + 1) for one in self._by_length.get(size, ())
        ]
        found = process.extract(
            form, choices, scorer=Levenshtein.distance, processor=None, score_cutoff=most, limit=limit
        )
        return tuple(entry for match in found for entry in self._at(self._by_skeleton[match[0]]))

    def with_epithets(self, epithets: str) -> tuple[Entry, ...]:
        """Names of any genus with exactly these epithets in plain letters, in one."""
        return self._at(self._by_epithets.get(epithets, ()))

    def with_ends(self, genus: str, epithet: str) -> tuple[Entry, ...]:
        """Names of this genus that end in this epithet, at any rank and in any species."""
        return self._at(self._by_ends.get(f"{genus} {epithet}", ()))

    def beginning(self, key: str, limit: int = 12) -> tuple[Entry, ...]:
        """Names whose plain letters begin so, in order of the alphabet, about `limit` at most."""
        first = bisect_left(self._keys, key)
        some = [one for one in self._keys[first : first + limit] if one.startswith(key)]
        return tuple(entry for one in some for entry in self._at(self._by_key[one]))

    def genera_beginning(self, letters_: str, most: int = 3) -> tuple[str, ...]:
        """Known genera that begin so, in plain letters, by the alphabet; none where there are more than `most`."""
        found = sorted(genus for genus in self._genera if genus.startswith(letters_))
        return tuple(found) if len(found) <= most else ()

    def knows_genus(self, word: str) -> bool:
        """Whether some known name has this genus, in plain letters."""
        return word in self._genera

    def knows_epithet(self, word: str) -> bool:
        """Whether some known name has this epithet, in plain letters."""
        return word in self._epithets

    def _at(self, places: tuple[int, ...]) -> tuple[Entry, ...]:
        return tuple(self.entries[place] for place in places)


def _grouped(pairs: Iterable[tuple[str, int]]) -> dict[str, tuple[int, ...]]:
    groups: dict[str, list[int]] = {}
    for key, place in pairs:
        groups.setdefault(key, []).append(place)
    return {key: tuple(places) for key, places in groups.items()}


def _index(entries: tuple[Entry, ...]) -> NameIndex:
    numbered = list(enumerate(entries))
    by_key = _grouped((entry.key, place) for place, entry in numbered)
    by_skeleton = _grouped((skeleton(entry.words), place) for place, entry in numbered)
    by_length: dict[int, list[str]] = {}
    for form in by_skeleton:
        by_length.setdefault(len(form), []).append(form)
    return NameIndex(
        entries,
        by_key,
        by_skeleton,
        _grouped(("".join(entry.words[1:]), place) for place, entry in numbered if len(entry.words) > 1),
        _grouped((f"{entry.words[0]} {entry.words[-1]}", place) for place, entry in numbered if len(entry.words) > 1),
        tuple(sorted(by_key)),
        {size: tuple(forms) for size, forms in by_length.items()},
        frozenset(entry.words[0] for entry in entries),
        frozenset(word for entry in entries for word in entry.words[1:]),
    )


def index_of(names: Iterable[tuple[str, Name]]) -> NameIndex:
    """The index of names with their ids; equal names under two ids are both kept."""
    return _index(tuple(_entry(id_, name, name) for id_, name in names))


def index_corpus(corpus: Corpus) -> NameIndex:
    """The index of every name of the knowledge base, found under its variant spellings, too."""
    return _index(
        tuple(
            _entry(entry.id, spelt, entry.name)
            for entry in corpus.names.values()
            for spelt in dict.fromkeys((entry.name.bare, *(variant.bare for variant in entry.variants)))
        )
    )
