"""Figures -> statements: which property of which organ they give."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from auctorum.characters.measured import Measure
from auctorum.characters.prose.elevations import is_elevation
from auctorum.characters.prose.found import Doubt
from auctorum.characters.prose.items import Is, Item, item_at
from auctorum.characters.prose.nouns import HABITAT, PLANT, Noun
from auctorum.characters.prose.scene import Scene
from auctorum.characters.prose.tell_comparisons import widen_multiple
from auctorum.characters.prose.tell_counts import tell_count
from auctorum.characters.units import Dimension, find_unit
from auctorum.characters.values import Modality

_BY_FACTOR = ("length", "width", "thickness")
_FLAT_WORDS = "leaf leaflet blade petal sepal tepal bract frond pinna lobe"
_FLAT = frozenset(_FLAT_WORDS.split())


def tell_figure(scene: Scene, items: Sequence[Item], at: int) -> int:
    """The statements of a figure: an elevation, a count, an extreme of the range before, or dimensions."""
    item, figure = items[at], items[at].factors[-1]
    if scene.denied or _is_difference(scene, items, at) or _is_subset(items, at):
        scene.strange = True
        return at + 1
    if is_elevation(scene, item):
        scene.say_figure(HABITAT, "elevation", item, figure).start = item.start
        return at + 1
    if figure.times and not figure.unit:
        scene.strange = True
        if not widen_multiple(scene, item) and scene.given and scene.subject is not None:
            scene.say_figure(scene.subject, "figure", item, figure)
        return at + 1
    if figure.often is Modality.RARELY and _widens(scene, item):
        return at + 1
    if (staged := _with_unit_of_stage(scene, items, at)) is not None:
        item, figure = replace(item, factors=(staged,)), staged
    if not figure.unit and len(item.factors) == 1 and not figure.says:
        return tell_count(scene, items, at)
    _tell_dimensions(scene, item, _says_later(items, at))
    return at + 1


def _is_difference(scene: Scene, items: Sequence[Item], at: int) -> bool:
    """`3–5 mm longer than the petal`, `exceeding the petals by 5 mm`."""
    if not items[at].factors[-1].unit:
        return False
    by = item_at(items, at - 1).text == "by" and scene.last is not None and scene.last.like is not None
    return by or (item_at(items, at + 1).sort is Is.LIKE and not item_at(items, at + 1).factors)


def _is_subset(items: Sequence[Item], at: int) -> bool:
    """`two 6 mm, three 4 mm`: a number that picks out some of the organs."""
    following = item_at(items, at + 1)
    bare = not items[at].factors[-1].unit and not items[at].counted
    return bare and following.sort is Is.FIGURE and bool(following.factors[-1].unit)


def _tell_dimensions(scene: Scene, item: Item, says: tuple[str, ...]) -> None:
    figure = item.factors[-1]
    subjects = scene.subjects or ([PLANT] if figure.says == ("height",) else [])
    if not subjects:
        scene.strange = True
        return
    if _is_angle(figure.unit):
        _forget_posture(scene)
        subjects = scene.first or subjects
    for noun in subjects:
        for printed in item.factors:
            factor = _with_unit(scene, printed)
            for name in _properties(scene, replace(factor, says=factor.says or says), noun):
                bare = name == "length" and not factor.says and factor.factors == 1
                doubts = [Doubt.BARE_FIGURE] if bare else [] if factor.unit == printed.unit else [Doubt.UNIT]
                scene.say_figure(noun, name, item, factor, *doubts)


def _properties(scene: Scene, factor: Measure, noun: Noun) -> tuple[str, ...]:
    if _is_angle(factor.unit):
        return ("angle",)
    if factor.says:
        flat = noun.head in _FLAT and scene.line.text(factor.end - 1) == "across"
        return tuple("width" if name == "diameter" and flat else name for name in factor.says)
    if factor.factors > 1:
        return (_BY_FACTOR[min(factor.factor, 2)],)
    return ("height",) if noun.kind == "plant" else ("length",)  # common practice, no source


def _says_later(items: Sequence[Item], at: int) -> tuple[str, ...]:
    """What a later figure of the clause is said to be: `7–15 mm but occasionally to 30 mm wide`."""
    if item_at(items, at + 1).sort in (Is.AND, Is.OR, Is.SMALL):
        later = item_at(items, at + 2)
        return later.factors[0].says if later.sort is Is.FIGURE else ()
    return ()


def _with_unit(scene: Scene, factor: Measure) -> Measure:
    """`quatuor pollices longa, tres lata`: the unit of the figure before."""
    if factor.unit or not factor.says:
        return factor
    before = [one.figure.unit for one in scene.said[-3:] if one.figure is not None and one.figure.unit]
    return replace(factor, unit=before[-1]) if before else factor


def _with_unit_of_stage(scene: Scene, items: Sequence[Item], at: int) -> Measure | None:
    """`8–10 mm in flower, 12–15 in fruit`: the unit of the same figure at another stage; None for anything else."""
    item, last, figure = items[at], scene.last, items[at].factors[-1]
    staged = bool(scene.mark) or item_at(items, at + 1).sort is Is.STAGE or scene.elliptic
    if not staged or last is None or last.figure is None or not last.figure.unit or figure.unit or figure.says:
        return None
    if last.sentence != scene.sentence or item.counted or len(item.factors) > 1 or (scene.named and not scene.elliptic):
        return None
    return replace(figure, unit=last.figure.unit, says=(last.property,))


def _widens(scene: Scene, item: Item) -> bool:
    """`3–4 mm long, rarely to 5 mm` widens the range before; whether it was such."""
    last, figure = scene.last, item.factors[-1]
    if last is None or last.figure is None or last.sentence != scene.sentence or len(item.factors) > 1:
        return False
    before, outer, inner = last.figure, figure.high or figure.low, figure.low or figure.high
    other = figure.unit != before.unit or (figure.says and last.property not in figure.says)
    if scene.subject_at >= last.end or outer is None or inner is None or other:
        return False
    if before.high is not None and outer.exact > before.high.exact:
        last.figure = replace(before, most=before.most or outer)
    elif before.low is not None and inner.exact < before.low.exact:
        last.figure = replace(before, least=before.least or inner)
    else:
        return False
    last.end = item.end
    return True


def _is_angle(unit: str) -> bool:
    found = find_unit(unit)
    return found is not None and found.dimension is Dimension.ANGLE


def _forget_posture(scene: Scene) -> None:
    """`recurved through 45°` is an angle only."""
    while scene.clause_said and scene.said[-1].share is not None and scene.said[-1].property in ("other", "shape"):
        scene.said.pop()
