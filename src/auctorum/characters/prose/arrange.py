"""Items brought into the order in which they are told: an organ before the words that stand in front of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from auctorum.characters.figures import Line
from auctorum.characters.prose.items import Is, Item
from auctorum.characters.prose.nouns import Noun
from auctorum.characters.prose.organs import singular

_OPENERS = frozenset({Is.STOP, Is.COMMA, Is.WITH, Is.AND, Is.OF, Is.OPEN, Is.EXCEPT, Is.AT, Is.CLOSE})
_FRONT = frozenset({Is.FIGURE, Is.STATE, Is.OFTEN, Is.STAGE, Is.OR, Is.TO, Is.NOT, Is.SMALL, Is.AND})
_LONGEST_RUN = 8
# how adjectives of position and sort end: involucral, capillary, paired, innermost, inflated, winged
_ADJECTIVAL_ENDINGS = "al ar ary ate ous ed ic ive ose ant ent ine oid ing ory est ish fold"
_ADJECTIVAL = tuple(_ADJECTIVAL_ENDINGS.split())


def arranged(line: Line, items: Sequence[Item]) -> list[Item]:
    """The items with unknown adjectives joined to their organs, unknown organs named, organs fronted."""
    return _fronted(_named(_joined(line, items)))


def _joined(line: Line, items: Sequence[Item]) -> list[Item]:
    """`involucral bracts`: an unknown word just before an organ picks out a subset of it."""
    found: list[Item] = []
    for item in items:
        before = found[-1] if found else None
        if before is not None and item.noun is not None and _picks_out(line, before, item) and _stands_free(found):
            noun = item.noun
            found[-1] = replace(item, start=before.start, noun=replace(noun, places=(before.text, *noun.places)))
        else:
            found.append(item)
    return found


def _picks_out(line: Line, before: Item, item: Item) -> bool:
    """Whether the unknown word may be an adjective of the organ, with no article between them."""
    adjective = before.sort is Is.STRANGE and before.text.isalpha() and before.text.endswith(_ADJECTIVAL)
    german = _is_german(line, before, item)
    return (adjective or german) and not item.text and item.noun is not None and not item.noun.kind


def _is_german(line: Line, before: Item, item: Item) -> bool:
    """`spreizenden Griffeln`: a small word with a German ending before a noun with a capital."""
    if before.sort is not Is.STRANGE or line.tokens[before.start].capital or not line.tokens[item.start].capital:
        return False
    measured = before.text.startswith(("dick", "lang", "breit", "hoh"))  # bis 2 cm dickem
    return not measured and before.text.endswith(("en", "em", "er", "es", "e"))


def _stands_free(found: Sequence[Item]) -> bool:
    """Whether the unknown word at the end begins its clause, or follows an article, a figure or a state."""
    if len(found) == 1:
        return True
    return found[-2].sort in (*_OPENERS, Is.SMALL, Is.FIGURE, Is.STATE)


def _named(items: Sequence[Item]) -> list[Item]:
    """An unknown word at the head of a sentence, with a measure or a state behind it, is an organ not known here."""
    found = list(items)
    for at, item in enumerate(found):
        if item.sort is not Is.STRANGE or not item.text.isalpha() or len(item.text) < 3 or at + 1 >= len(found):
            continue
        following = found[at + 1]
        measured = following.sort is Is.FIGURE and (bool(following.factors[-1].unit) or bool(following.counted))
        after_comma = at > 0 and found[at - 1].sort is Is.COMMA and item.text.endswith("s")
        told = after_comma and measured and bool(following.factors[-1].says)
        if told or (_opens_sentence(found, at) and (measured or following.sort is Is.STATE)):
            found[at] = replace(item, sort=Is.NOUN, noun=Noun((singular(item.text),), known=False))
    return found


def _opens_sentence(items: Sequence[Item], at: int) -> bool:
    """Whether nothing but an article stands between the last stop and the item."""
    if at and items[at - 1].sort is Is.SMALL:
        at -= 1
    return at == 0 or items[at - 1].sort is Is.STOP


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


def _lists(items: Sequence[Item], at: int, place: int) -> bool:
    """`with upright, hairy stems`, `Oval, toothed leaves`: a comma between adjectives of an organ behind them."""
    if items[place].sort is not Is.COMMA or place + 1 >= len(items):
        return False
    led = (
        at == 0
        or items[at - 1].sort in (Is.WITH, Is.STOP)
        or (at > 1 and items[at - 1].sort is Is.SMALL and items[at - 2].sort is Is.WITH)
    )
    return led and place > 0 and items[place - 1].sort is Is.STATE and items[place + 1].sort is Is.STATE


def _may_front(items: Sequence[Item], at: int) -> bool:
    """At the head of a clause, past an article; a bare figure behind a verb too (`bulbs producing 2–4 scapes`)."""
    before = items[at - 1].sort if at else Is.STOP
    if before is Is.SMALL:
        before = items[at - 2].sort if at > 1 else Is.STOP
    if before is Is.STRANGE:
        return items[at].sort is Is.FIGURE and not items[at].factors[-1].unit
    return before in _OPENERS


def _front_end(items: Sequence[Item], at: int) -> int:
    """The place of the organ whose figures and states stand before it, from `at` on; `at` if there is none."""
    if not _may_front(items, at):
        return at
    end = at
    while end < len(items) and end - at < _LONGEST_RUN and (items[end].sort in _FRONT or _lists(items, at, end)):
        end += 1
    if end == at or end >= len(items) or items[end].noun is None or items[end - 1].sort not in (Is.FIGURE, Is.STATE):
        return at
    following = items[end + 1].like if end + 1 < len(items) else None
    if following is not None and following.before:
        return at
    return end
