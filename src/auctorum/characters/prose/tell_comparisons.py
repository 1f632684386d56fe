"""Comparisons and ratios -> statements."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from auctorum.characters.measured import Measure
from auctorum.characters.prose.comparisons import Likeness
from auctorum.characters.prose.items import Is, Item, item_at, past
from auctorum.characters.prose.nouns import Noun
from auctorum.characters.prose.scene import Scene
from auctorum.characters.prose.wholes import owned, resolved
from auctorum.characters.values import Modality
from auctorum.characters.wording import number_of


def tell_like(scene: Scene, items: Sequence[Item], at: int) -> int:
    """A comparison with the organ behind the words, or a proportion within one (`twice as long as wide`)."""
    item = items[at]
    assert item.like is not None
    if item.like.against:
        say_likeness(scene, item, "", item.start, item.end)
        return at + 1
    more = (Is.COMMA,) if scene.pending is not None else ()
    place = past(items, at + 1, Is.SMALL, Is.STATE, Is.OF, *more, most=2)
    target = item_at(items, place).noun
    if target is None:
        return _without_target(scene, items, at)
    to = resolved(target, scene.whole)
    if scene.pending is not None:
        say_likeness(scene, scene.pending, to, scene.pending.start, items[place].end)
        scene.pending = None
    say_likeness(scene, item, to, item.start, items[place].end)
    return place + 1


def _without_target(scene: Scene, items: Sequence[Item], at: int) -> int:
    """`equalling the calyx or slightly shorter`, `twice as many as the petals and half as long`."""
    item, last = items[at], scene.last
    assert item.like is not None
    before = last.like if last is not None and last.to and last.sentence == scene.sentence else None
    if before is not None and last is not None and item_at(items, at - 1).sort is Is.OR and not item.factors:
        last.like = replace(before, low=before.low and item.like.low, high=before.high and item.like.high)
        last.end = item.end
    elif before is not None and last is not None and item.factors:
        say_likeness(scene, item, last.to, item.start, item.end)
    elif item_at(items, at + 1).sort is Is.COMMA:
        scene.pending = item
    else:
        scene.strange = True
    return at + 1


def say_likeness(scene: Scene, item: Item, to: str, start: int, end: int) -> None:
    """Add a comparison with another organ, or a proportion within one where `to` is empty."""
    like = item.like
    assert like is not None
    for noun in scene.subjects:
        said = scene.say(noun, like.property if to else "ratio", start, end)
        said.like, said.to = like, to
        said.often = scene.often_of(item.often, item.start)
        said.of = "" if to or not like.against else f"{like.property}/{like.against}"
    if not scene.subjects:
        scene.strange = True


def widen_multiple(scene: Scene, item: Item) -> bool:
    """`twice as long as wide, rarely 3.7 times`: an extreme of the ratio before; whether it was such."""
    last, figure = scene.last, item.factors[0]
    number = figure.high or figure.low
    if last is None or last.like is None or figure.often is not Modality.RARELY or number is None:
        return False
    like = last.like
    if like.high is not None and number.exact > like.high.exact:
        last.like = replace(like, most=number)
    elif like.low is not None and number.exact < like.low.exact:
        last.like = replace(like, least=number)
    last.end = item.end
    return True


def tell_ratio(scene: Scene, items: Sequence[Item], at: int) -> int:
    """`ratio of width to length 0.1–0.3`, `blade/stipe ratio 2:1`, `ratio 3:2`."""
    item = items[at]
    place = past(items, at + 1, Is.SMALL, Is.COMMA, Is.OFTEN, most=4)
    if not item_at(items, place).factors:
        return at + 1
    figure, last = _quotient(items, place)
    end = items[last].end
    above, _, below = item.text.partition("/")
    like = Likeness(above or "length", figure.low, figure.high, end, figure.approximate, below,
                    least=figure.least, most=figure.most)  # fmt: skip
    comparison = Item(Is.LIKE, item.start, end, like=like, often=figure.often)
    pair = _pair_before(items, at)
    if item.text or pair is None:
        say_likeness(scene, comparison, "", item.start, end)
        return last + 1
    first, second = pair
    whole = scene.whole if scene.whole is not None and scene.whole.name not in (first.name, second.name) else None
    scene.subjects = [owned(first, whole)]
    say_likeness(scene, comparison, resolved(second, whole), item.start, end)
    return last + 1


def _quotient(items: Sequence[Item], at: int) -> tuple[Measure, int]:
    """The figure, `3:2` as 1½, and the place of its last item."""
    first = items[at].factors[0]
    second = item_at(items, at + 2).factors[:1] if item_at(items, at + 1).text == ":" else ()
    if second and first.low and first.high and second[0].low and second[0].high and second[0].low.exact > 0:
        low, high = first.low.exact / second[0].high.exact, first.high.exact / second[0].low.exact
        return replace(first, low=number_of(low), high=number_of(high)), at + 2
    return first, at


def _pair_before(items: Sequence[Item], at: int) -> tuple[Noun, Noun] | None:
    first, joint, second = (item_at(items, at - step) for step in (3, 2, 1))
    if first.noun and second.noun and joint.sort in (Is.OR, Is.TO, Is.SMALL):
        return first.noun, second.noun
    return None
