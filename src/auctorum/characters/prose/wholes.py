"""Parts and their wholes: which organ a lobe, a tip or a surface belongs to."""

from __future__ import annotations

from dataclasses import replace

from auctorum.characters.prose.nouns import SURFACES, Noun
from auctorum.characters.prose.organs import organ_of

_SIDE_OF = {"adaxial": "upper", "abaxial": "lower", "under": "lower"}


def resolved(noun: Noun, whole: Noun | None) -> str:
    """The full name of the organ, a part taking the name of its whole, `lower leaf surface`.

    >>> resolved(Noun(("tube",), part=True), Noun(("corolla", "lobe")))
    'corolla tube'
    >>> resolved(Noun(("tip",), part=True), Noun(("corolla", "lobe")))
    'corolla lobe tip'
    """
    return owned(noun, whole).name


def owned(noun: Noun, whole: Noun | None, *, within: bool = False) -> Noun:
    """The noun with the names of its whole before its own, where it is a part that may belong to it.

    `within`: it is told of as a part of the very organ before (`segments with a darker midrib`).
    """
    names, places = noun.names, noun.places
    if not names:
        return (
            replace(without_part(whole), places=places, stage=noun.stage) if whole else replace(noun, names=("part",))
        )
    if names == ("blade",) and whole is not None and root_of(whole).head in ("leaflet", "pinna", "frond"):
        return root_of(whole)
    if names == ("blade",) and (whole is None or root_of(whole).head not in _BLADED):
        if whole is not None and whole.names == ("leaf",):
            places = (*places, *whole.places)
        return replace(noun, names=("leaf", "blade"), places=places, part=False)
    if noun.part and whole is not None and not whole.kind and _can_own(whole, noun):
        owner = whole if within and noun.head in _MARKS else _owner(noun, whole)
        names, places = (*owner.names, *names), (*places, *owner.places)
    if names[-1] in SURFACES and len(names) > 1:
        names = (*names[:-1], "surface")
        places = tuple(_SIDE_OF.get(place, place) for place in places)
    if len(names) > 2 and names[:2] == ("leaf", "blade"):
        names = ("leaf", *names[2:])
    return replace(noun, names=names, places=places)


_NO_WHOLES_WORDS = """
    umbel raceme panicle cyme spike corymb head inflorescence thyrse fascicle spikelet
    spur pedicel petiole stem hair stamen anther ovary spine filament style peduncle culm shoot
    branch branchlet twig scape
"""
_NO_WHOLES = frozenset(_NO_WHOLES_WORDS.split())
_BOWLS = frozenset({"limb", "tube", "lobe", "throat", "valve", "lip", "segment", "tooth"})
_FREE_PARTS = frozenset({"lip", "keel", "wing"})
# a pea flower has a keel and wings of their own standing; a glume or a fruit owns its keel or wing
_PEA_WORDS = """
    flower corolla standard banner wing keel petal calyx raceme inflorescence
"""
_PEA = frozenset(_PEA_WORDS.split())
_BLADED_WORDS = """
    bract bracteole spathe petal sepal tepal labellum stipule cataphyll
"""
_BLADED = frozenset(_BLADED_WORDS.split())
ENDS = frozenset({"tip", "apex", "base", "margin"})
# parts that every other part has as well
_OF_ANY_PART = ENDS | {"surface", "side", "face", "mouth", "hair"}


def _can_own(whole: Noun, part: Noun) -> bool:
    if part.head == whole.head and len(whole.names) == 1:
        return False
    if part.head in _FREE_PARTS and (part.head == "lip" or root_of(whole).head in _PEA):
        return False
    if part.head == "vein" and part.places:
        return False  # lateral veins are told of alone
    return not (part.head in _BOWLS and root_of(whole).head in _NO_WHOLES)


_MARKS_WORDS = """
    midrib spot stripe blotch band streak dot fleck gland hair
"""
_MARKS = frozenset(_MARKS_WORDS.split())


def _owner(part: Noun, whole: Noun) -> Noun:
    """Every part has a tip, but the tip has no base: those are parts of one whole."""
    if part.head not in _OF_ANY_PART or whole.head == "tooth":
        return root_of(whole)
    return without_part(whole)


def without_part(noun: Noun) -> Noun:
    """The organ itself where its base, margin, side... is spoken of."""
    if noun.head not in _OF_ANY_PART or len(noun.names) == 1:
        return noun
    places = () if noun.head == "surface" else noun.places
    return replace(noun, names=noun.names[:-1], places=places)


def root_of(noun: Noun) -> Noun:
    """The whole that a part belongs to, so that its sister parts can be named: of `corolla lobe` the corolla."""
    organ = organ_of(noun.head) if len(noun.names) > 1 else None
    if organ is not None and organ.part:
        return root_of(replace(noun, names=noun.names[:-1]))
    return noun
