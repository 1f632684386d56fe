"""The words that a vocabulary adds to those of the trade: its own organs and states."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from auctorum.characters.figures import Line
from auctorum.characters.lexicon import match_at
from auctorum.characters.prose.organs import organ_of
from auctorum.characters.tokens import folded
from auctorum.characters.vocabulary import Character


@dataclass(frozen=True, slots=True)
class OwnWords:
    """Organs by their words where the trade does not know them, and the characters that have states."""

    organs: Mapping[str, str]
    characters: tuple[Character, ...]

    def state(self, line: Line, at: int) -> tuple[Character, str, int] | None:
        """The first character with a state of the words here, the words as printed, and the place after them."""
        for character in self.characters:
            match = match_at(line, at, character)
            if match is not None:
                words = " ".join(line.text(place) for place in range(at, match.end) if line.text(place).isalpha())
                return character, words, match.end
        return None


def _is_new(word: str, character: Character) -> bool:
    """A word that the trade does not know as an organ, or knows only as a part (`walls`) of what is no habitat."""
    organ = organ_of(word)
    return organ is None or (organ.part and character.structure == "habitat")


@lru_cache(maxsize=64)
def own_words(characters: tuple[Character, ...]) -> OwnWords:
    """What these characters add: organs named by a single word, and states of one word or several."""
    organs = {
        folded(word): character.structure
        for character in characters
        for word in (character.structure, *character.words)
        if " " not in word and "-" not in word and _is_new(folded(word), character)
    }
    return OwnWords(organs, tuple(character for character in characters if character.states))
