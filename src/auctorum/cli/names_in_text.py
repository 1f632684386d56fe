"""Sentences for a terminal, the names in them in italics."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator

from rich.text import Text

from auctorum.determination.model import Wording
from auctorum.names.ranks import read_term

Italic = Callable[[str], Text]

_GENUS = re.compile(r"[A-Z](?:\.|[a-z-]+)$")
_QUALIFIERS = frozenset(map(str, Wording))
_EPITHET = re.compile(r"[a-z][a-z-]*[a-z]$")


def italiciser(names: Iterable[str]) -> Italic:
    """What sets those names in italics wherever they stand in a text: genus and epithets, no ranks, no authors."""
    known = sorted({name for name in names if name}, key=lambda name: (-len(name), name))
    pattern = re.compile("|".join(rf"(?<!\w){re.escape(name)}(?!\w)" for name in known)) if known else None

    def italic(text: str) -> Text:
        made = Text(text)
        for found in pattern.finditer(text) if pattern else ():
            for start, end in _latin(found.group()):
                made.stylize("italic", found.start() + start, found.start() + end)
        return made

    return italic


def _latin(name: str) -> Iterator[tuple[int, int]]:
    """Where the Latin words of a name stand."""
    latin = True
    for number, word in enumerate(re.finditer(r"\S+", name)):
        said = word.group()
        if read_term(said):
            latin = True  # after authors the next epithet follows its rank
        elif number == 0 and _GENUS.match(said):
            yield word.span()
        elif not _EPITHET.match(said):
            latin = latin and said in _QUALIFIERS
        elif latin:
            yield word.span()
