"""Which figures are elevations of the habitat, and no measure of a plant."""

from __future__ import annotations

from auctorum.characters.prose.items import Item
from auctorum.characters.prose.scene import Scene
from auctorum.characters.tokens import Sort
from auctorum.characters.units import convert

_UNITS = ("m", "ft", "yd", "paris-foot")
_GROUND = """
    elevation elevations elev altitude altitudes alt altitudine altitudinem altitud altura sea asl msnm msm nm seehohe
    meereshohe hohenlage
"""
_GROUND_WORDS = frozenset(_GROUND.split())
# Taller than any plant: the tallest tree known stands some 116 m high (from memory).
_NO_PLANT_MM = 150_000
_BEYOND_DOUBT_MM = 200_000
_NEAR = 4


def is_elevation(scene: Scene, item: Item) -> bool:
    """Whether the figure says how high above the sea: by a word beside it, by its size, or for want of an organ."""
    figure, subject = item.factors[-1], scene.subject
    if len(item.factors) > 1 or figure.unit not in _UNITS:
        return False
    of_plant = subject is not None and subject.kind == "plant" and not scene.carried
    if not of_plant and _ground_is_named(scene, item):
        return True
    if subject is not None and scene.given and scene.unnamed:
        return subject.kind == "habitat"
    top = max(convert(number.value, figure.unit, "mm") for number in (figure.low, figure.high, figure.most) if number)
    if subject is None or subject.kind == "habitat":
        high = figure.says == ("height",) and top >= _NO_PLANT_MM
        return not figure.says or figure.says == ("elevation",) or high
    return not figure.says and (top >= _BEYOND_DOUBT_MM or (top >= _NO_PLANT_MM and scene.carried))


def _ground_is_named(scene: Scene, item: Item) -> bool:
    ends = (Sort.STOP, Sort.COMMA, None)
    first, last = item.start, item.end
    while first > item.start - _NEAR and scene.line.sort(first - 1) not in ends:
        first -= 1
    while last < item.end + _NEAR and scene.line.sort(last) not in ends:
        last += 1
    return any(scene.line.text(at) in _GROUND_WORDS for at in range(first, last))
