"""A document before any format: headings, paragraphs, lists, tables and numbered sources, as frozen values.

A text is a row of runs, each upright or italic, and one line of words: breaks of line, control characters and marks
that turn the direction of what follows are cleaned away here, so that no renderer meets them. Each format has its
renderer beside this module; all are pure, and escape every word.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import groupby
from typing import TypeAlias

from auctorum.names.format import parts
from auctorum.names.name import Name
from auctorum.problems import AuctorumError

_TURNING = dict.fromkeys((*range(0x202A, 0x202F), *range(0x2066, 0x206A)))  # embeddings, overrides and isolates
_BLANK = re.compile("[\x00-\x20\x7f-\x9f\u2028\u2029]+")


@dataclass(frozen=True, slots=True)
class Run:
    """Words in one style. Blanks and control characters become one space.

    >>> Run("22–34\\n mm").text
    '22–34 mm'
    """

    text: str
    italic: bool = False

    def __post_init__(self) -> None:
        object.__setattr__(self, "text", _BLANK.sub(" ", self.text.translate(_TURNING)))


Text: TypeAlias = tuple[Run, ...]


class UnevenTable(AuctorumError, ValueError):
    """A row with more or fewer cells than its table has headings."""

    remedy = "give each row one cell for each heading"

    def __init__(self, cells: int, headings: int) -> None:
        super().__init__(cells, headings)
        self.cells, self.headings = cells, headings

    def __str__(self) -> str:
        return f"a row of {self.cells} cells under {self.headings} headings"


@dataclass(frozen=True, slots=True)
class Heading:
    """The head of a section (level 1) or of a part of one (level 2)."""

    text: Text
    level: int = 1


@dataclass(frozen=True, slots=True)
class Paragraph:
    """Running text; `aside` for what stands in small print."""

    text: Text
    aside: bool = False


@dataclass(frozen=True, slots=True)
class Items:
    """A list without numbers."""

    texts: tuple[Text, ...]


@dataclass(frozen=True, slots=True)
class Table:
    """A table; the first cell of a row heads it. `right` are the columns set flush right. Raises UnevenTable."""

    caption: Text
    headings: tuple[Text, ...]
    rows: tuple[tuple[Text, ...], ...]
    right: tuple[int, ...] = ()

    def __post_init__(self) -> None:
        for row in self.rows:
            if len(row) != len(self.headings):
                raise UnevenTable(len(row), len(self.headings))


@dataclass(frozen=True, slots=True)
class Sources:
    """Works, numbered from 1 as the marks [1], [2] of a text count them."""

    entries: tuple[Text, ...]


Block: TypeAlias = Heading | Paragraph | Items | Table | Sources


@dataclass(frozen=True, slots=True)
class Document:
    """A title and what follows; `lang` is a BCP 47 tag."""

    title: Text
    blocks: tuple[Block, ...]
    lang: str = "en"

    @property
    def tables(self) -> tuple[Table, ...]:
        """Its tables, in order."""
        return tuple(block for block in self.blocks if isinstance(block, Table))


def text(*pieces: str | Name | Text) -> Text:
    """Words as they are, and names with their Latin words in italics.

    >>> text("From ", Name("Exemplum", "album"), ".")
    (Run(text='From ', italic=False), Run(text='Exemplum album', italic=True), Run(text='.', italic=False))
    """
    found: list[Run] = []
    for piece in pieces:
        if isinstance(piece, str):
            found.append(Run(piece))
        elif isinstance(piece, Name):
            found += (Run(words, latin) for words, latin in parts(piece))
        else:
            found += piece
    return joined(found)


def joined(runs: Iterable[Run]) -> Text:
    """Neighbours of one style as one run; empty ones left out."""
    some = (run for run in runs if run.text)
    return tuple(
        Run("".join(run.text for run in group), style) for style, group in groupby(some, lambda run: run.italic)
    )


SHORT = 24  # signs up to which a cell with figures is kept on one line


def is_unbroken(cell: Text) -> bool:
    """Whether a cell is to stay on one line: a short one with figures, `(18–)22–34(–41) mm`."""
    said = words(cell)
    return len(said) <= SHORT and any(sign.isdigit() for sign in said)


def words(of: Text) -> str:
    """The words alone, without blanks at the ends.

    >>> words(text(" spur 22–34 mm "))
    'spur 22–34 mm'
    """
    return _BLANK.sub(" ", "".join(run.text for run in of)).strip(" ")
