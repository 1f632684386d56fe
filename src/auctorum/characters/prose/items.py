"""A description as a row of items: organs, figures, states, stages, and the small words that tie them together."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from auctorum.characters.measured import Measure
from auctorum.characters.prose.comparisons import Likeness
from auctorum.characters.prose.found import Passed
from auctorum.characters.prose.nouns import Noun
from auctorum.characters.prose.pieces import Piece
from auctorum.characters.values import Modality, Range


class Is(StrEnum):
    """The sorts of item."""

    NOUN = "noun"
    FIGURE = "figure"
    STATE = "state"
    STAGE = "stage"
    OFTEN = "often"
    LIKE = "like"  # a comparison with another organ, or within one
    RATIO = "ratio"
    FACING = "facing"
    SIDE = "side"  # above, beneath
    AT = "at"  # near the, on the
    OF = "of"
    PER = "per"
    WITH = "with"
    WITHOUT = "without"
    ABSENT = "absent"
    EXCEPT = "except"
    NOT = "not"
    TO = "to"
    OR = "or"
    AND = "and"
    COMMA = "comma"
    STOP = "stop"
    OPEN = "open"
    CLOSE = "close"
    THEY = "they"
    VERSUS = "versus"
    UNCERTAIN = "uncertain"
    SMALL = "small"  # articles, verbs and signs that carry nothing
    PASSED = "passed"
    STRANGE = "strange"


@dataclass(frozen=True, slots=True)
class Item:
    """One item, of the tokens `start` to `end`, with what it holds."""

    sort: Is
    start: int
    end: int
    text: str = ""  # the word or sign; of an organ its article, of a stage or side its name, of a ratio its sides
    noun: Noun | None = None
    factors: tuple[Measure, ...] = ()
    counted: str = ""  # the noun in "8-12-flowered"
    pieces: tuple[Piece, ...] = ()
    often: Modality | None = None
    like: Likeness | None = None
    passed: Passed | None = None
    arc: Range | None = None  # of an aspect


NOTHING = Item(Is.STOP, -1, -1)


def item_at(items: Sequence[Item], at: int) -> Item:
    """The item at this place, a stop outside of the row."""
    return items[at] if 0 <= at < len(items) else NOTHING


def past(items: Sequence[Item], at: int, *sorts: Is, most: int = 12) -> int:
    """The place of the first item from `at` on that is none of these sorts."""
    end = at
    while end < at + most and end < len(items) and items[end].sort in sorts:
        end += 1
    return end
