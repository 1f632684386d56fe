"""Items brought into the order in which they are told: an organ before the words that stand in front of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from auctorum.characters.figures import Line
from auctorum.characters.prose.items import Is, Item
from auctorum.characters.prose.nouns import Noun
from auctorum.characters.prose.organs import singular
from auctorum.characters.wording import SAYS

_OPENERS = frozenset({Is.STOP, Is.COMMA, Is.WITH, Is.AND, Is.OF, Is.OPEN, Is.EXCEPT, Is.AT, Is.CLOSE})
_FRONT = frozenset({Is.FIGURE, Is.STATE, Is.OFTEN, Is.STAGE, Is.OR, Is.TO, Is.NOT, Is.SMALL, Is.AND})
_LONGEST_RUN = 8


def arranged(line: Line, items: Sequence[Item]) -> list[Item]:
    """The items with unknown adjectives joined to their organs, unknown organs named, organs fronted."""
    return _fronted(_named(line, _joined(line, items)))


def _joined(line: Line, items: Sequence[Item]) -> list[Item]:
    """`involucral bracts`: an unknown word just before an organ picks out a subset of it."""
    found: list[Item] = []
    for item in items:
        before = found[-1] if found else None
        opens = before is not None and before.sort is Is.STRANGE and before.text.isalpha() and len(before.text) > 3
        if opens and before is not None and item.noun is not None and _stands_free(found) and not item.noun.kind:
            noun = item.noun
            found[-1] = replace(item, start=before.start, noun=replace(noun, places=(before.text, *noun.places)))
        else:
            found.append(item)
    return found


def _stands_free(found: Sequence[Item]) -> bool:
    """Whether the unknown word at the end begins its clause, or follows an article, a figure or a state."""
    if len(found) == 1:
        return True
    return found[-2].sort in (*_OPENERS, Is.SMALL, Is.FIGURE, Is.STATE)


def _named(line: Line, items: Sequence[Item]) -> list[Item]:
    """An unknown word at the head of a sentence, with a measure or a state behind it, is an organ not known here."""
    found = list(items)
    for at, item in enumerate(found):
        if item.text in SAYS and item.sort is Is.STRANGE:
            continue  # a height or a length, and no organ
        if item.sort is not Is.STRANGE or not item.text.isalpha() or len(item.text) < 3 or at + 1 >= len(found):
            continue
        if at and found[at - 1].sort not in (Is.STOP, Is.SMALL) or (at > 1 and found[at - 1].sort is Is.SMALL and found[at - 2].sort is not Is.STOP):
            continue
        following = found[at + 1]
        measured = following.sort is Is.FIGURE and (bool(following.factors[-1].unit) or bool(following.counted))
        if measured or following.sort is Is.STATE:
            found[at] = replace(item, sort=Is.NOUN, noun=Noun((singular(item.text),), known=False))
    return found


def _fronted(items: Sequence[Item]) -> list[Item]:
    found = list(items)
    at = 0
    while at < len(found):
        end = _front_end(found, at)
        if end > at:
            found[at : end + 1] = [found[end], *found[at:end]]
            at = end
        at += 1
    return found


def _front_end(items: Sequence[Item], at: int) -> int:
    """The place of the organ whose figures and states stand before it, from `at` on; `at` if there is none."""
    if at and items[at - 1].sort not in _OPENERS and not (items[at - 1].sort is Is.SMALL and at > 1 and items[at - 2].sort in _OPENERS):
        return at
    end = at
    while end < len(items) and items[end].sort in _FRONT and end - at < _LONGEST_RUN:
        end += 1
    if end == at or end >= len(items) or items[end].noun is None or items[end - 1].sort not in (Is.FIGURE, Is.STATE):
        return at
    if not any(item.sort in (Is.FIGURE, Is.STATE) for item in items[at:end]):
        return at
    following = items[end + 1].like if end + 1 < len(items) else None
    if following is not None and following.before:
        return at
    return end
