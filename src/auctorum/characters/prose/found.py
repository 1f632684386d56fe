"""What a description was read to say: statements with the exact words, and the words that said nothing."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum

from auctorum.characters.values import Modality, Range, States


@dataclass(frozen=True, slots=True)
class Comparison:
    """A multiple of the same property of another structure; one end of `times` may be open (`longer than`: 1+)."""

    to: str
    times: Range


@dataclass(frozen=True, slots=True)
class Found:
    """One statement of a description, before it is given to a character of a vocabulary.

    `structure` is singular, with its position and whole (`basal leaf`, `corolla tube`); `property` is length, width,
    thickness, diameter, height, depth, count, angle, ratio, elevation, aspect, shape, surface, colour, other, or
    figure: a bare number that is no count, of an organ that was given.
    States are English words of the trade as printed, with their degree (`densely pubescent`).
    `stage` is the growth stage or condition, empty where none is named; `modality` is that of a figure (states carry
    their own), None where stated plainly; `per` what a count is counted in; `of` the two sides of a ratio
    (`length/width`). text[start:end] are the exact words; `doubts` are what was taken for granted in reading them.
    """

    structure: str
    property: str
    value: Range | States | Comparison
    stage: str = ""
    modality: Modality | None = None
    per: str = ""
    of: str = ""
    start: int = 0
    end: int = 0
    doubts: tuple[Doubt, ...] = ()


class Doubt(StrEnum):
    """What a reading takes for granted; the words are shown to the reader of a draft."""

    CARRIED = "the organ is named in an earlier clause"
    NO_ORGAN = "no organ is named"
    STRANGE_ORGAN = "the organ is no word known here"
    BARE_FIGURE = "no dimension is named; a bare figure is read as a length"
    OTHER_TAXON = "another plant is named beside it"
    ASIDE = "the passage is a key or a remark, and no description"
    DOUBTED = "the author is not certain"
    UNIT = "the unit stands with another figure"
    STRANGE_WORD = "a word between was not understood"
    GUESSED_STATE = "the state is no word known here, but formed like one"
    NEAR_CHARACTER = "the character is near, but not quite what the words say"
    UNKNOWN_STATE = "the character has no such state"


class Passed(StrEnum):
    """Numbers and words that are no trait (notation.md, section 6)."""

    CHROMOSOMES = "a chromosome number"
    DATE = "a date or flowering time"
    REFERENCE = "a reference to a page, plate, figure or volume"
    KEY = "the leader of a key"
    COLLECTION = "a collector's number"
    NAME = "the name of a plant"
    PLACE = "a position on the map"
    TALLY = "a number of species, counts or specimens"


@dataclass(frozen=True, slots=True)
class Leftover:
    """Words that gave no statement: `why` is what they are if they are known to be no trait, else None."""

    start: int
    end: int
    why: Passed | None = None


@dataclass(frozen=True, slots=True)
class Description:
    """A text with its statements in order of their words, and everything in it that gave none."""

    text: str
    statements: tuple[Found, ...]
    left: tuple[Leftover, ...]
    named: tuple[str, ...] = ()  # the organs that the words name, with or without a statement
