"""Which clauses of a phrase speak of the structure a character belongs to, and which of another part."""

from __future__ import annotations

from itertools import pairwise

from auctorum.characters.figures import Line
from auctorum.characters.tokens import Sort

_PART_WORDS = (
    "apex base margin tip tube limb throat blade lamina petiole lip midrib keel wing standard mouth spur edge beak "
    "centre center eye disc disk interior exterior nectary stalk rachis nerve vein teeth"
)
_PARTS = frozenset(_PART_WORDS.split())
_NO_PLURALS = ("ss", "ous", "is", "us", "as", "os", "ns")
_NO_NOUNS = frozenset({"sometimes", "times", "at", "always", "perhaps"})


def own_tokens(line: Line, places: tuple[int, ...]) -> list[bool]:
    """For every token whether it may speak of the structure that is mentioned at these places.

    All may where it is mentioned nowhere. A clause opened by another part (`, veins brown`, `with purple spots`)
    does not, nor do the clauses of a sentence before the first mention in it.
    """
    own = [True] * len(line.tokens)
    if not places:
        return own
    mentioned, speaks = set(places), False
    for start, end in _clauses(line):
        if line.sort(start) is Sort.STOP:
            speaks = False
        here = any(at in mentioned for at in range(start, end))
        speaks = here or (speaks and not _of_other_part(line, start, end))
        own[start:end] = [speaks] * (end - start)
    return own


def _clauses(line: Line) -> list[tuple[int, int]]:
    cuts = [at for at in range(len(line.tokens)) if line.sort(at) in (Sort.COMMA, Sort.STOP) or line.text(at) == "with"]
    edges = sorted({0, *cuts, len(line.tokens)})
    return [(start, end) for start, end in pairwise(edges) if start < end]


def _of_other_part(line: Line, start: int, end: int) -> bool:
    """Whether the clause opens with a part, or is a `with` that leads to one."""
    if line.text(start) == "with":
        return any(_is_part(line, at) for at in range(start + 1, end))
    first = start + (line.sort(start) in (Sort.COMMA, Sort.STOP))
    return _is_part(line, first) or (line.text(first) in ("the", "its", "and") and _is_part(line, first + 1))


def _is_part(line: Line, at: int) -> bool:
    text = line.text(at)
    if line.sort(at) is not Sort.WORD or text in _NO_NOUNS:
        return False
    return text in _PARTS or (len(text) > 3 and text.endswith("s") and not text.endswith(_NO_PLURALS))
