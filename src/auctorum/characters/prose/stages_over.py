"""Stages that follow from others: what stands before a change is the young state, before drying the fresh one."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from auctorum.characters.prose.scene import Said
from auctorum.characters.values import Share

_MOST_BEFORE = 40
_EARLIER = {"old": "young", "dry": "fresh"}
_LOSING_HAIR = ("glabrescent", "glabrescens", "calvescent")


def staged(said: Iterable[Said]) -> list[Said]:
    """The statements with the stages that a change tells; `glabrescent` is hairy when young and glabrous in age."""
    found = [one for several in said for one in _parted(several)]
    earlier: dict[tuple[object, ...], list[Said]] = {}
    for one in found:
        if one.share is None:
            continue
        key = (one.sentence, one.noun.names[:1], one.property)
        before = earlier.setdefault(key, [])
        if one.stage in _EARLIER:
            for other in before[-_MOST_BEFORE:]:
                if _is_same(other, one) and not other.stage:
                    other.stage = _EARLIER[one.stage]
        if not one.stage:
            before.append(one)
    _give_hairs_their_stage(found)
    return _without_needless(found)


def _give_hairs_their_stage(found: list[Said]) -> None:
    """The colour of hairs holds for the stage of the hairiness in the same clause."""
    young = {one.clause for one in found if one.property == "surface" and one.stage == "young"}
    for one in found:
        if one.noun.names[-1] == "hair" and not one.stage and one.share is not None and one.clause in young:
            one.stage = "young"


def _is_same(other: Said, one: Said) -> bool:
    """The same organ, or the whole of the part that has changed."""
    whole = one.noun.names[: len(other.noun.names)] == other.noun.names
    side = one.noun.names[-1] == "surface" and len(other.noun.names) < len(one.noun.names)
    return other.noun.name == one.noun.name or (whole and (side or other.noun.places == one.noun.places))


def _parted(one: Said) -> list[Said]:
    if one.share is None or one.share.state not in _LOSING_HAIR:
        return [one]
    hairy = replace(
        one, share=Share("hairy", None, one.share.modality), stage="young", doubts=set(one.doubts), implied=True
    )
    bare = replace(one, share=Share("glabrous", None, one.share.modality), stage="old", doubts=set(one.doubts))
    return [hairy, bare]


def _without_needless(found: list[Said]) -> list[Said]:
    """`tomentose, glabrescent` names the young state itself."""
    named = {(one.sentence, one.noun.name, one.property) for one in found if one.stage == "young" and not one.implied}
    return [one for one in found if not one.implied or (one.sentence, one.noun.name, one.property) not in named]
