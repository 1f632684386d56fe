"""Statements of a description given to the characters of a vocabulary: drafts for a person to check."""

from __future__ import annotations

from dataclasses import dataclass

from auctorum.characters.prose.found import Doubt, Leftover
from auctorum.characters.values import Reading
from auctorum.characters.vocabulary import Character


@dataclass(frozen=True, slots=True)
class Choice:
    """A character, and what the words say of it. `known` is False for a character that the vocabulary lacks."""

    character: Character
    known: bool
    readings: tuple[Reading, ...]
    value: str  # the readings in plain notation (`22–34(–41) mm`, `green or ivory`), stages left out


@dataclass(frozen=True, slots=True)
class Draft:
    """One draft statement: text[start:end] are the exact words, `choice` how they are read.

    `confidence` is a share between 0 and 1 of readings with the same doubts that proved right on labelled phrases;
    `others` are other readings of the same words, the likeliest first. `value` and `stage` are what a literature file
    must give beside the words for them to be read so: both empty where the words alone suffice.
    """

    start: int
    end: int
    choice: Choice
    confidence: float
    doubts: tuple[Doubt, ...] = ()
    others: tuple[Choice, ...] = ()
    value: str = ""
    stage: str = ""


@dataclass(frozen=True, slots=True)
class Transcript:
    """A text, its drafts in order of their words, and what was not understood or is no trait."""

    text: str
    drafts: tuple[Draft, ...]
    left: tuple[Leftover, ...]

    def words(self, part: Draft | Leftover) -> str:
        """The exact words of a draft or of a leftover."""
        return self.text[part.start : part.end]
