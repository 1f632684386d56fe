"""Places told behind or before a value: `yellow at the tips`, `tomentose beneath`, `glabrous except on the midrib`."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from auctorum.characters.prose.items import Is, Item, item_at, past
from auctorum.characters.prose.mark_words import MARKS
from auctorum.characters.prose.nouns import Noun
from auctorum.characters.prose.pieces import Piece
from auctorum.characters.prose.scene import Said, Scene
from auctorum.characters.prose.wholes import owned, root_of, without_part
from auctorum.characters.values import Modality, Share

_GROUPS = frozenset({"series", "row", "whorl", "rank", "cycle", "pair", "tier", "column"})
_FLAT_WORDS = """
    leaf leaflet blade bract bracteole frond pinna pinnule petal sepal tepal phyllode segment phyllary scale stipule
    labellum lip standard fall glume lemma corolla calyx perianth lobe
"""
_FLAT = frozenset(_FLAT_WORDS.split())
_SIDED = frozenset({"surface", "midrib", "vein", "margin", "epidermis"})


def tell_side(scene: Scene, items: Sequence[Item], at: int) -> int:
    """`tomentose beneath`, `beneath tomentose`: the surface of that side."""
    item = items[at]
    states = [one for one in scene.clause_said if one.share is not None]
    if not states or item_at(items, at + 1).sort in (Is.STATE, Is.OFTEN):
        scene.side = item.text
        return at + 1
    for one in states:
        if one.property == states[-1].property or {one.property, states[-1].property} <= {"colour", "surface"}:
            one.noun = on_side(one.noun, item.text, one.property)
    states[-1].end = max(states[-1].end, item.end)
    return at + 1


def on_side(noun: Noun, side: str, name: str) -> Noun:
    """The upper or lower surface of a flat organ where hair or colour is told; the upper or lower organs elsewhere."""
    if side in (*noun.places, *noun.names):
        return noun
    noun = noun if noun.head in _SIDED else without_part(noun)
    if name not in ("colour", "surface") or root_of(noun).head not in _FLAT:
        return replace(noun, places=(side, *noun.places))
    names = noun.names[:1] if noun.names[:2] == ("leaf", "blade") else noun.names
    if names[-1] in _SIDED:
        return replace(noun, places=(side, *noun.places))
    if names[-1] == "hair":
        return noun
    return replace(noun, names=(*names, "surface"), places=(side, *noun.places), part=False)


def tell_place(scene: Scene, items: Sequence[Item], at: int) -> int:
    """`yellow at the tips`, `1.3 cm wide at the mouth`, `15 in a truss`, `in 2 series`."""
    place = past(items, at + 1, Is.SMALL, Is.STATE, Is.AT, Is.OFTEN, most=4)
    found = item_at(items, place).noun
    if found is None or not found.names:
        place = past(items, at + 1, Is.SMALL, Is.STRANGE, Is.OF, most=6)  # at the middle of the pedicel
    item, noun = items[at], item_at(items, place).noun
    states = sum(one.sort is Is.STATE for one in items[at + 1 : place])
    if noun is None or states > 1 or (states and place - at > 3):
        return at + 1
    if noun.head in _GROUPS and _is_counted(items, place) and scene.subject is not None:
        scene.subjects = [replace(scene.subject, names=(*scene.subject.names, noun.head))]
        return place + 1
    measure = item_at(items, past(items, place + 1, Is.OF, Is.SMALL))
    if not noun.part and not noun.kind and (_measures(measure) or _is_described(items, place)):
        return place  # on stems 18 inches high, in a lax raceme: the organ is spoken of
    last = _told_before(scene, item)
    if last is not None and last.share is not None and last.property == "other" and not noun.kind:
        last.end = max(last.end, items[place].end)
        return past(items, place + 1, Is.STATE, most=int(_is_described(items, place)))  # hanging on thin stalks
    if last is None:
        if noun.part and scene.main:
            scene.subjects = [owned(noun, whole) for whole in scene.main]
            scene.once = item.text == "e"
        return place + 1
    if last.noun.head in MARKS:
        return place + 1  # a blotch at the base
    if noun.part and not noun.kind and item.text != "from" and last.property not in ("angle", "count"):
        named = last.noun if noun.head == last.noun.head else owned(noun, last.noun)
        if noun.head == "surface" and noun.places and last.noun.head in _SIDED:
            named = on_side(last.noun, noun.places[0], last.property)  # the midrib on the lower surface
        if (side := item_at(items, place + 1)).sort is Is.SIDE:
            named, place = on_side(named, side.text, last.property), place + 1
        _move(scene, last, named)
    elif last.property == "count":
        last.per = noun.name
    last.end = max(last.end, items[place].end)
    return place + 1


def _is_described(items: Sequence[Item], place: int) -> bool:
    """Whether states that stood before the organ follow it now: `a creeping rhizome`."""
    following = item_at(items, past(items, place + 1, Is.SMALL))
    return following.sort is Is.STATE and following.start < items[place].start


def _measures(following: Item) -> bool:
    return following.sort is Is.FIGURE and bool(following.factors[-1].unit)


def _is_counted(items: Sequence[Item], place: int) -> bool:
    """Whether a figure that stood before the organ counts it: `in 2 series`."""
    following = item_at(items, place + 1)
    return bool(following.factors) and following.start < items[place].start


def _told_before(scene: Scene, item: Item) -> Said | None:
    """What the clause has said last, or what was said just before the word."""
    if scene.clause_said:
        return scene.clause_said[-1]
    return scene.last if scene.last is not None and scene.last.end == item.start else None


def _move(scene: Scene, last: Said, named: Noun) -> None:
    """The statement is about the part; so are the dimensions of one product, and shapes joined by `or`."""
    for one in scene.clause_said:
        shapes = last.property == one.property == "shape" and last.noun.names[0] == one.noun.names[0]
        factors = bool(one.figure and last.figure) and one.noun == last.noun and one.start == last.start
        if one is last or shapes or factors:
            one.noun = named


def tell_except(scene: Scene, items: Sequence[Item], at: int) -> int:
    """`glabrous except on the midrib below`: the part has not the state, or its own."""
    last = next((one for one in reversed(scene.said[-12:]) if one.share is not None), None)
    place = past(items, at + 1, Is.SMALL, Is.AT, Is.STATE, Is.OF, Is.STRANGE)
    noun = item_at(items, place).noun
    if noun is None or last is None or last.share is None:
        return at + 1
    named = owned(noun, last.noun if noun.head != last.noun.head else scene.whole)
    end = place + 1
    if (side := item_at(items, end)).sort is Is.SIDE:
        named, end = on_side(named, side.text, last.property), end + 1
    own: list[Piece | None] = [piece for item in items[at + 1 : place] for piece in item.pieces]
    for piece in own or [None]:
        said = scene.say(named, piece.property if piece else last.property, items[at].start, items[end - 1].end)
        said.share = Share(piece.words) if piece else Share(last.share.state, None, Modality.NEVER)
        said.stage = said.stage or last.stage
    return end
