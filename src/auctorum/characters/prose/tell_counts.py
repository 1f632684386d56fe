"""Counts: what is counted, and in what."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from auctorum.characters.measured import Measure
from auctorum.characters.prose.items import Is, Item, item_at
from auctorum.characters.prose.nouns import Noun
from auctorum.characters.prose.organs import organ_of
from auctorum.characters.prose.scene import Scene
from auctorum.characters.prose.wholes import owned
from auctorum.characters.values import Modality

_DIVIDED = frozenset({"pinna", "leaflet", "segment", "pinnule"})


def tell_count(scene: Scene, items: Sequence[Item], at: int) -> int:
    """`petals 5`, `8–12-flowered`, `leaflets about eight pairs`, `3–9-flowered (usually 5)`."""
    item, figure, subject = items[at], items[at].factors[0], scene.subject
    pairs = item_at(items, at + 1)
    paired = pairs.noun is not None and pairs.noun.names == ("pair",)
    end = at + 2 if paired else at + 1
    of = item_at(items, at - 1)
    if subject is None or (of.sort is Is.OF and of.start == scene.subject_end and not item.counted):
        scene.strange = True  # a raceme of 6 to 12
        return end
    noun, per = subject, scene.per
    if (before := _narrowed(scene, item)) is not None:
        noun, per = before
    elif item.counted:
        noun, per = _counted(item.counted, subject), subject.name
    elif paired:
        noun = Noun((f"pair of {subject.name}",))
    elif (subject.kind or not subject.known) and not scene.given:
        scene.strange = True
        return end
    _say(scene, noun, item, figure, per, plain=not item.counted and not paired)
    return end


def _say(scene: Scene, noun: Noun, item: Item, figure: Measure, per: str, *, plain: bool) -> None:
    if not _is_whole(figure):
        if scene.given and plain:  # a ratio, or a count that somebody got wrong
            scene.say_figure(noun, "figure", item, figure)
        return
    for one in _apart(figure):
        scene.say_figure(noun, "count", item, one).per = per


def _narrowed(scene: Scene, item: Item) -> tuple[Noun, str] | None:
    """The organ counted just before, of which a bracket tells the usual number."""
    last = scene.last
    if last is None or last.property != "count" or not 0 <= item.start - last.end <= 2:
        return None
    return (last.noun, last.per) if item.factors[0].often is Modality.USUALLY else None


def _apart(figure: Measure) -> tuple[Measure, ...]:
    """`3 or 5` is two values, not a range (common practice, no source)."""
    low, high = figure.low, figure.high
    if not figure.either or low is None or high is None or high.exact - low.exact <= 1:
        return (figure,)
    return replace(figure, high=low, most=None), replace(figure, low=high, least=None)


def _counted(name: str, subject: Noun) -> Noun:
    if name == "pair of leaflets":
        return Noun((f"pair of {subject.name if subject.head in _DIVIDED else 'leaflet'}",))
    if name == "series":
        return replace(subject, names=(*subject.names, name))
    organ = organ_of(name)
    return owned(Noun((name,), part=bool(organ and organ.part) or name == "angle"), subject)


def _is_whole(figure: Measure) -> bool:
    numbers = (figure.low, figure.high, figure.least, figure.most)
    return all(number is None or (number.exact.denominator == 1 and number.exact >= 0) for number in numbers)
