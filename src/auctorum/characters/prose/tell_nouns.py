"""Organs as subjects: who is spoken of from here on, what a count is counted in, what is absent."""

from __future__ import annotations

from collections.abc import Sequence

from auctorum.characters.prose.items import Is, Item, item_at, past
from auctorum.characters.prose.nouns import Noun
from auctorum.characters.prose.scene import Scene
from auctorum.characters.prose.tell_comparisons import say_likeness
from auctorum.characters.prose.tell_places import tell_place
from auctorum.characters.prose.wholes import ENDS, owned, resolved
from auctorum.characters.states import ABSENT, PRESENT
from auctorum.characters.values import Modality, Share

_MOST_TOGETHER = 6


def tell_noun(scene: Scene, items: Sequence[Item], at: int) -> int:
    """An organ opens a subject, joins one (`leaves and bracts`), or is what something else is told by."""
    item, noun = items[at], items[at].noun
    assert noun is not None
    if _is_compared(scene, items, at):
        following = items[at + 1]
        say_likeness(scene, following, resolved(noun, scene.whole), item.start, following.end)
        return at + 2
    before = item_at(items, at - 1).sort
    if before is Is.STRANGE and item.text and scene.subjects:
        return at + 1  # veins leave the midrib
    if before is Is.OF and noun.kind == "plant" and scene.subjects:
        scene.stage = noun.stage  # leaves of juvenile trees
        return at + 1
    if before is Is.OF and noun.part and scene.subjects and item_at(items, at + 1).sort is not Is.FIGURE:
        return at + 1  # rameuses dès la base
    if _is_place_only(scene, items, at):
        return at + 1
    within = _is_within(scene, items, at)
    named = owned(noun, _whole_for(scene, noun), within=within)
    unsaid = scene.subject_at >= 0 and (scene.last is None or scene.last.start < scene.subject_at)
    if before in (Is.AND, Is.OR) and unsaid and 0 < len(scene.main) < _MOST_TOGETHER and not scene.main[-1].kind:
        scene.main = [*scene.main, named]
        scene.subjects = list(scene.main)
        return at + 1
    if before is Is.OF and scene.main and unsaid:
        scene.per = scene.main[-1].name
    _open_subject(scene, item, named, within=within)
    return at + 1


def _is_place_only(scene: Scene, items: Sequence[Item], at: int) -> bool:
    """`bearded inside`, `free nearly to the base`: where something is, and no organ to speak of."""
    noun, before = items[at].noun, item_at(items, at - 1).sort
    if noun is None or not noun.part or not scene.subjects:
        return False
    return before is Is.TO or (before is Is.STATE and noun.head in _PLACES_ONLY)


_POSSESSIVES = frozenset({"its", "their", "su", "sus", "seu", "seus", "sua", "suas", "ses", "son", "sa"})
_PLACES_ONLY = frozenset({"inside", "outside", "middle", "top", "end", "back"})
_VEINS = frozenset({"vein", "veinlet", "midrib", "rib"})


def _whole_for(scene: Scene, noun: Noun) -> Noun | None:
    """The organ that a part belongs to; veins have neither base nor margin, so that the leaf's are meant."""
    whole = scene.whole
    ends = noun.part and noun.head in ENDS
    return scene.organ[-1] if ends and whole is not None and whole.head in _VEINS and scene.organ else whole


def _open_subject(scene: Scene, item: Item, named: Noun, *, within: bool) -> None:
    assert item.noun is not None
    scene.subjects = [named]
    scene.beside = [named] if within else []
    if not within:
        scene.main, scene.mark = [named], ""
        scene.organ = scene.organ if item.noun.part else [named]
        if not scene.named:
            scene.first, scene.named = [named], True
    scene.unnamed = scene.carried = False
    scene.elliptic = not item.noun.names
    scene.subject_at, scene.subject_end = item.start, item.end
    scene.stage = "" if named.kind == "habitat" else named.stage or (scene.stage if within else "")
    scene.often, scene.often_about, scene.strange = None, None, False


def _is_within(scene: Scene, items: Sequence[Item], at: int) -> bool:
    """Whether the organ stands behind `with`, or behind `and` after one that does."""
    if items[at].text in _POSSESSIVES and scene.main:
        return True  # the uppermost male, its scales obovate
    back = 1
    while back < 4 and item_at(items, at - back).sort in (Is.SMALL, Is.STRANGE):
        back += 1  # with short hairs
    before = item_at(items, at - back).sort
    if before is Is.AT and scene.main:
        return True  # upon stalks an inch long
    return before is Is.WITH or (before is Is.AND and bool(scene.beside) and scene.subjects == scene.beside)


def _is_compared(scene: Scene, items: Sequence[Item], at: int) -> bool:
    """`calyce duplo longior`: the organ before the words of comparison is what they compare with."""
    like = item_at(items, at + 1).like
    if like is None or not like.before or like.against or not scene.subjects:
        return False
    return item_at(items, at + 2).sort is not Is.NOUN


def tell_they(scene: Scene, items: Sequence[Item], at: int) -> int:
    """`...with a toothed margin; they are bright green`: the organ before its parts."""
    if scene.organ and item_at(items, at - 1).sort in (Is.STOP, Is.COMMA, Is.AND):
        scene.main, scene.beside = list(scene.organ), []
        scene.subjects = list(scene.main)
    return at + 1


def tell_per(scene: Scene, items: Sequence[Item], at: int) -> int:
    """`3 per culm`."""
    place = past(items, at + 1, Is.SMALL)
    noun = item_at(items, place).noun
    if noun is None:
        return at + 1
    if noun.part:
        return tell_place(scene, items, at)  # glabras por el haz
    for one in scene.clause_said[-2:]:
        if one.property == "count":
            one.per, one.end = noun.name, max(one.end, items[place].end)
    return place + 1


def tell_without(scene: Scene, items: Sequence[Item], at: int) -> int:
    """`petals without a beak`: presence denied; before a state a plain denial."""
    place = past(items, at + 1, Is.SMALL, Is.OF)
    noun = item_at(items, place).noun
    if noun is None:
        scene.denied = item_at(items, place).sort is Is.STATE
        return at + 1
    said = scene.say(owned(noun, scene.whole), "other", items[at].start, items[place].end)
    said.share = Share(PRESENT, None, Modality.NEVER)
    return place + 1


def tell_absent(scene: Scene, items: Sequence[Item], at: int) -> int:
    """`bracteoles absent`, `bracteoles sometimes wanting`."""
    often = scene.often if scene.often is not Modality.ALWAYS else None
    for noun in scene.subjects:
        said = scene.say(noun, "other", items[at].start, items[at].end)
        said.share = Share(ABSENT, None, often) if often else Share(PRESENT, None, Modality.NEVER)
    return at + 1
