"""A pasted description -> its statements, each with its exact words, and what was left over.

The reading goes in four steps: tokens, items (organs, figures, states, stages...), their order, and the telling of
them. Each step looks at a bounded number of neighbours, so that the whole is linear in the length of the text.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence

from auctorum.characters.figures import Line
from auctorum.characters.measured import Measure, range_of
from auctorum.characters.munsell import munsell_in
from auctorum.characters.prose.arrange import arranged
from auctorum.characters.prose.comparisons import Likeness
from auctorum.characters.prose.found import Comparison, Description, Found, Leftover
from auctorum.characters.prose.items import Is, Item
from auctorum.characters.prose.nouns import noun_named
from auctorum.characters.prose.own_words import own_words
from auctorum.characters.prose.passed import running_heads
from auctorum.characters.prose.scan import items_of
from auctorum.characters.prose.scene import Said
from auctorum.characters.prose.stages_over import staged
from auctorum.characters.prose.tell import told
from auctorum.characters.tokens import tokens_of
from auctorum.characters.units import Dimension, find_unit
from auctorum.characters.values import Range, ReversedRange, States
from auctorum.characters.vocabulary import Character, Vocabulary

_SIGNS = {"′": "'", "’": "'", "″": '"', "”": '"', "º": "°"}
_UNSEEN = dict.fromkeys(map(ord, "\u00ad\u200b\u200c\u200d\ufeff"))
_GROUND = re.compile(
    r"elev|altitud|(?<![\w.,)])[-−]\d{1,4}\s{0,3}(?:--|[–—]|to\s)\s{0,3}[-−]?\d{1,5}\s{0,3}(?:m|ft)\b", re.IGNORECASE
)


def read_description(
    text: str,
    *,
    vocabulary: Vocabulary | Iterable[Character] | None = None,
    line: str = "english",
    signs: Mapping[str, str] | None = None,
    subject: str = "",
    strict: bool = False,
) -> Description:
    """The statements of the text in the order of its words; raises on no text, but for ReversedRange if `strict`.

    `vocabulary` are characters whose own words of organs and states are known beside those of the trade. `line` is
    `english` or `paris`; `signs` is the work's key to signs (`{"'": "in", '"': "line"}`), without which ' is foot and
    " inch. `subject` is the organ that is spoken of before any is named.

    >>> [one.structure for one in read_description("Leaves 3–5 cm long; petals white").statements]
    ['leaf', 'petal']
    """
    key = {_SIGNS.get(sign, sign): unit for sign, unit in (signs or {}).items()}
    phrase = Line(tokens_of(text), key, line, _GROUND.search(text.translate(_UNSEEN)) is not None)
    characters = vocabulary.characters if isinstance(vocabulary, Vocabulary) else tuple(vocabulary or ())
    items = items_of(phrase, own_words(characters), munsell_in(text), running_heads(text))
    said = staged(told(phrase, arranged(phrase, items), noun_named(subject) if subject else None))
    found = [one for group in _grouped(said) if (one := _found(phrase, group, strict=strict)) is not None]
    found.sort(key=lambda one: (one.start, one.end))
    named = dict.fromkeys(item.noun.name for item in items if item.noun is not None)
    return Description(text, tuple(found), tuple(_left(phrase, items, found)), tuple(named))


_FARTHEST = 60  # tokens


def _grouped(said: Iterable[Said]) -> Iterator[list[Said]]:
    """States of one organ, property and stage in a sentence together, unless far apart; every figure alone."""
    groups: list[list[Said]] = []
    latest: dict[tuple[object, ...], list[Said]] = {}
    for one in said:
        key = (one.sentence, one.noun.name, one.property, one.stage)
        group = latest.get(key) if one.share is not None else None
        if group is None or one.start - group[-1].end > _FARTHEST:
            group = []
            groups.append(group)
            if one.share is not None:
                latest[key] = group
        group.append(one)
    return iter(groups)


def _found(line: Line, group: Sequence[Said], *, strict: bool) -> Found | None:
    first = group[0]
    try:
        value = _value(group)
    except ReversedRange:
        if strict:
            raise
        return None
    if not strict and not _has_unit(first.property, value):
        return None
    start, end = min(one.start for one in group), max(one.end for one in group)
    doubts = sorted({doubt for one in group for doubt in one.doubts})
    often = first.often if first.share is None else None
    return Found(
        first.noun.name, first.property, value, first.stage, often, first.per, first.of,
        line.tokens[start].start, line.tokens[min(end, len(line.tokens)) - 1].end, tuple(doubts),
    )  # fmt: skip


def _has_unit(name: str, value: Range | States | Comparison) -> bool:
    """Whether the unit is one of the property: a length without any, or in percent, says nothing that can be kept."""
    if not isinstance(value, Range) or name in _UNITLESS:
        return True
    unit = find_unit(value.unit)
    return unit is not None and unit.dimension is (Dimension.ANGLE if name in _ANGLES else Dimension.LENGTH)


def _value(group: Sequence[Said]) -> Range | States | Comparison:
    first = group[0]
    if first.share is not None:
        return States(tuple(dict.fromkeys(one.share for one in group if one.share is not None)))
    if first.like is not None:
        return Comparison(first.to, _ratio(first.like)) if first.to else _ratio(first.like)
    if first.arc is not None:
        return first.arc
    assert first.figure is not None
    return range_of(first.figure)


def _ratio(like: Likeness) -> Range:
    return range_of(Measure(like.low, like.high, "", like.end, like.end, like.least, like.most,
                            approximate=like.approximate))  # fmt: skip


_UNITLESS = ("count", "ratio", "figure")
_ANGLES = ("angle", "aspect")
_TELLING = (Is.STRANGE, Is.STATE, Is.FIGURE, Is.LIKE, Is.RATIO)
_KEPT = (Is.STRANGE, Is.STATE, Is.NOUN, Is.FIGURE, Is.LIKE, Is.RATIO, Is.PASSED)


def _left(line: Line, items: Sequence[Item], found: Sequence[Found]) -> Iterator[Leftover]:
    """Runs of words that lie in no statement; words that are no trait apart from those not understood."""
    covered = [False] * (len(line.tokens) + 1)
    spans = sorted((one.start, one.end) for one in found)
    index = 0
    reach = -1
    for at, token in enumerate(line.tokens):
        while index < len(spans) and spans[index][0] <= token.start:
            reach = max(reach, spans[index][1])
            index += 1
        covered[at] = token.start < reach
    run: list[Item] = []
    for item in items:
        free = not any(covered[item.start : item.end])
        if item.sort is Is.PASSED:
            yield from _run(line, run)
            run = []
            yield Leftover(line.tokens[item.start].start, line.tokens[item.end - 1].end, item.passed)
        elif not free or item.sort in (Is.STOP, Is.COMMA):
            yield from _run(line, run)
            run = []
        else:
            run.append(item)
    yield from _run(line, run)


def _run(line: Line, run: Sequence[Item]) -> Iterator[Leftover]:
    if any(item.sort in _TELLING for item in run):
        kept = [item for item in run if item.sort in _KEPT]
        yield Leftover(line.tokens[kept[0].start].start, line.tokens[kept[-1].end - 1].end)
