"""Figures, comparisons and ratios -> statements: which property of which organ they give."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from auctorum.characters.figures import Line
from auctorum.characters.notation import Measure
from auctorum.characters.prose.comparisons import Likeness
from auctorum.characters.prose.found import Doubt
from auctorum.characters.prose.items import Is, Item
from auctorum.characters.prose.nouns import Noun, owned, resolved
from auctorum.characters.prose.organs import organ_of
from auctorum.characters.prose.scene import Said, Scene
from auctorum.characters.tokens import Sort
from auctorum.characters.units import convert, find_unit
from auctorum.characters.units import Dimension
from auctorum.characters.values import Modality
from auctorum.characters.wording import number_of

HABITAT = Noun(("habitat",), kind="habitat")
PLANT = Noun(("plant",), kind="plant")
_BY_FACTOR = ("length", "width", "thickness", "thickness")
_GROUND_WORDS = frozenset(
    "elevation elevations elev altitude altitudes alt altitudine altitudinem altitud altura sea asl msnm msm nm seehohe "
    "meereshohe hohenlage".split(" ")
)
_FLAT = frozenset("leaf leaflet blade petal sepal tepal bract frond pinna lobe".split(" "))
_HIGHEST_PLANT_MM = 150_000
_HIGHEST_PLAUSIBLE_LOW = 200_000


def tell_figure(
    line: Line, scene: Scene, item: Item, *, pairs: bool = False, says: tuple[str, ...] = (), staged: bool = False
) -> None:
    """Add the statements of a figure: of each factor of a product, and of a usual part.

    `pairs` where the word pairs follows, `staged` where a stage does; `says` what a later figure of the clause is said to be (`7–15 mm but
    occasionally to 30 mm wide`).
    """
    figure = item.factors[-1]
    if _is_elevation(line, scene, item):
        _say(scene, HABITAT, "elevation", item, figure, start=item.start)
        return
    if figure.times and not figure.unit:
        scene.strange = True
        if not _rare_multiple(scene, item) and scene.given:
            _say(scene, scene.subjects[-1], "figure", item, figure)
        return
    if figure.often is Modality.RARELY and _is_extreme(scene, item):
        return
    if (carried := _with_stage(scene, item, staged)) is not None:
        figure, item = carried, replace(item, factors=(carried,))
    if not figure.unit and len(item.factors) == 1 and not figure.says:
        _tell_count(scene, item, pairs)
        return
    subjects = scene.subjects or ([PLANT] if figure.says == ("height",) else [])
    if not subjects:
        scene.strange = True
        return
    factors = [_with_unit(scene, factor) for factor in item.factors]
    angle = _is_angle(figure.unit)
    if angle:
        _forget_posture(scene)
        subjects = scene.first or subjects
    for noun in subjects:
        for factor in factors:
            for name in _properties(line, replace(factor, says=factor.says or says), noun):
                _say(scene, noun, name, item, factor)


def _with_unit(scene: Scene, factor: Measure) -> Measure:
    """`quatuor pollices longa, tres lata`: the unit of the figure before."""
    if factor.unit or not factor.says:
        return factor
    before = [one.figure.unit for one in scene.said[-3:] if one.figure is not None and one.figure.unit]
    return replace(factor, unit=before[-1]) if before else factor


def _with_stage(scene: Scene, item: Item, staged: bool) -> Measure | None:
    """`8–10 mm in flower, 12–15 in fruit`: the unit of the same figure at another stage; None for anything else."""
    last, figure = (scene.said[-1] if scene.said else None), item.factors[-1]
    if not (staged or scene.mark) or last is None or last.figure is None or not last.figure.unit or figure.unit:
        return None
    same = last.sentence == scene.sentence and not item.counted and len(item.factors) == 1 and not figure.says
    return replace(figure, unit=last.figure.unit, says=(last.property,)) if same and not scene.named else None


def _is_angle(unit: str) -> bool:
    found = find_unit(unit)
    return found is not None and found.dimension is Dimension.ANGLE


def _forget_posture(scene: Scene) -> None:
    """`recurved through 45°` is an angle only."""
    while scene.clause_said and scene.said[-1].share is not None and scene.said[-1].property in ("other", "shape"):
        scene.said.pop()


def _is_extreme(scene: Scene, item: Item) -> bool:
    """`3–4 mm long, rarely to 5 mm` widens the range before; whether it was such."""
    last, figure = (scene.said[-1] if scene.said else None), item.factors[-1]
    if last is None or last.figure is None or last.sentence != scene.sentence or len(item.factors) > 1:
        return False
    if scene.subject_at >= last.end:
        return False
    before = last.figure
    outer = figure.high or figure.low
    inner = figure.low or figure.high
    if outer is None or inner is None or figure.unit != before.unit or (figure.says and last.property not in figure.says):
        return False
    if before.high is not None and outer.exact > before.high.exact:
        last.figure = replace(before, most=before.most or outer)
    elif before.low is not None and inner.exact < before.low.exact:
        last.figure = replace(before, least=before.least or inner)
    else:
        return False
    last.end = item.end
    return True


def _tell_count(scene: Scene, item: Item, pairs: bool) -> None:
    figure = item.factors[0]
    if not scene.subjects:
        scene.strange = True
        return
    subject = scene.subjects[-1]
    per = scene.per
    noun = subject
    last = scene.said[-1] if scene.said else None
    beside = last is not None and last.property == "count" and 0 <= item.start - last.end <= 2
    if beside and last is not None and figure.often is Modality.USUALLY:  # 3-9-flowered (usually 5)
        noun, per = last.noun, last.per
    elif item.counted:
        noun, per = _counted(item.counted, subject), subject.name
        if item.counted == "part":
            return
    elif pairs:
        noun = Noun((f"pair of {subject.name}",))
    elif (subject.kind or not subject.known) and not scene.given:
        scene.strange = True
        return
    if scene.given and not item.counted and not (pairs or _is_whole(figure)):
        _say(scene, noun, "figure", item, figure)
        return
    if not _is_whole(figure):
        return
    for one in _apart(figure):
        _say(scene, noun, "count", item, one, per=per)


def _apart(figure: Measure) -> tuple[Measure, ...]:
    """`3 or 5` is two values, not a range (common practice, no source)."""
    low, high = figure.low, figure.high
    if not figure.either or low is None or high is None or high.exact - low.exact <= 1:
        return (figure,)
    return replace(figure, high=low, most=None), replace(figure, low=high, least=None)


def _counted(name: str, subject: Noun) -> Noun:
    organ = organ_of(name)
    if name == "pair of leaflets":
        return Noun((f"pair of {subject.name if subject.head in ('pinna', 'leaflet', 'segment', 'pinnule') else 'leaflet'}",))
    if name == "series":
        return replace(subject, names=(*subject.names, name))
    return owned(Noun((name,), part=bool(organ and organ.part)), subject)


def _is_whole(figure: Measure) -> bool:
    numbers = (figure.low, figure.high, figure.least, figure.most)
    return all(number is None or (number.exact.denominator == 1 and number.exact >= 0) for number in numbers)


def _properties(line: Line, factor: Measure, noun: Noun) -> tuple[str, ...]:
    if _is_angle(factor.unit):
        return ("angle",)
    if factor.says:
        flat = noun.head in _FLAT and line.text(factor.end - 1) == "across"
        return tuple("width" if name == "diameter" and flat else name for name in factor.says)
    if factor.factors > 1:
        return (_BY_FACTOR[min(factor.factor, 3)],)
    if noun.kind == "plant":
        return ("height",)
    return ("length",)


def _say(scene: Scene, noun: Noun, name: str, item: Item, figure: Measure, *, per: str = "", start: int = -1) -> None:
    from auctorum.characters.prose.tell import new_said

    bare = name == "length" and not figure.says and figure.factors == 1
    often = figure.often or (scene.often if _is_near(scene, item) else None)
    said = new_said(scene, noun, name, item.start, item.end)
    said.start = start if start >= 0 else said.start
    said.figure = _turned(replace(figure, usual=None), name)
    said.often = None if often is Modality.ALWAYS else often
    said.per = per or said.per
    if bare:
        said.doubts.add(Doubt.BARE_FIGURE)
    scene.said.append(said)
    if figure.usual is not None:
        low, high = figure.usual
        usual = replace(figure, low=low, high=high, least=None, most=None, usual=None, more=False,
                        approximate=figure.usual_about)  # fmt: skip
        scene.said.append(replace(said, figure=usual, often=Modality.USUALLY, doubts=set(said.doubts)))


def _is_near(scene: Scene, item: Item) -> bool:
    """Whether the word of frequency stands just before the item, past a small word (`usually at 300 m`)."""
    return scene.often_about is None and 0 < item.start - scene.often_at <= 3


def _turned(figure: Measure, name: str) -> Measure:
    """"Bent to 90°" turns that far; it is no maximum. An arc that crosses north (315-45°) ends above 360."""
    if name != "angle":
        return figure
    low, high = figure.low, figure.high
    if low and high and 0 <= high.value < low.value <= 360:
        return replace(figure, high=replace(high, value=high.value + 360))
    return replace(figure, low=high) if figure.bare_to else figure


def _is_elevation(line: Line, scene: Scene, item: Item) -> bool:
    figure = item.factors[-1]
    if len(item.factors) > 1 or figure.unit not in ("m", "ft", "yd", "paris-foot"):
        return False
    tall = bool(scene.subjects) and scene.subjects[-1].kind == "plant" and not scene.carried
    if not tall and any(line.text(at) in _GROUND_WORDS for at in _around(line, item)):
        return True
    if scene.given and scene.unnamed:
        return scene.subjects[-1].kind == "habitat"
    top = max(convert(number.value, figure.unit, "mm") for number in (figure.low, figure.high, figure.most) if number)
    if not scene.subjects or scene.subjects[-1].kind == "habitat":
        return not figure.says or figure.says == ("elevation",) or (figure.says == ("height",) and top >= _HIGHEST_PLANT_MM)
    if figure.says:
        return False
    return top >= _HIGHEST_PLAUSIBLE_LOW or (top >= _HIGHEST_PLANT_MM and scene.carried)


def _around(line: Line, item: Item) -> range:
    first = item.start
    while first > item.start - 4 and line.sort(first - 1) not in (Sort.STOP, Sort.COMMA, None):
        first -= 1
    last = item.end
    while last < item.end + 4 and line.sort(last) not in (Sort.STOP, Sort.COMMA, None):
        last += 1
    return range(first, last)


def tell_likeness(scene: Scene, item: Item, to: str, start: int, end: int) -> None:
    """Add a comparison with another organ, or a proportion within one where `to` is empty."""
    like = item.like
    assert like is not None
    for noun in scene.subjects:
        from auctorum.characters.prose.tell import new_said

        name = like.property if to else "ratio"
        said = new_said(scene, noun, name, start, end)
        said.like, said.to = like, to
        often = item.often or (scene.often if _is_near(scene, item) else None)
        said.often = None if often is Modality.ALWAYS else often
        said.of = "" if to or not like.against else f"{like.property}/{like.against}"
        scene.said.append(said)
    if not scene.subjects:
        scene.strange = True


def _rare_multiple(scene: Scene, item: Item) -> bool:
    """`twice as long as wide, rarely 3.7 times`: an extreme of the ratio before; whether it was such."""
    last = scene.said[-1] if scene.said else None
    figure = item.factors[0]
    if last is None or last.like is None or figure.often is not Modality.RARELY:
        return False
    like, number = last.like, figure.high or figure.low
    if number is None:
        return False
    if like.high is not None and number.exact > like.high.exact:
        last.like = replace(like, most=number)
    elif like.low is not None and number.exact < like.low.exact:
        last.like = replace(like, least=number)
    last.end = item.end
    return True


def tell_ratio(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    """`ratio of width to length 0.1–0.3`, `blade/stipe ratio 2:1`; the index of the item after it."""
    item = items[at]
    place = at + 1
    while place < len(items) and items[place].sort in (Is.SMALL, Is.COMMA, Is.OFTEN):
        place += 1
    if place >= len(items) or not items[place].factors:
        return at + 1
    figure, end = _quotient(line, items, place)
    pair = _pair_before(items, at)
    like = Likeness(item.text.partition("/")[0] or "length", figure.low, figure.high, items[end].end,
                    figure.approximate, item.text.partition("/")[2], False, figure.least, figure.most)  # fmt: skip
    comparison = Item(Is.LIKE, item.start, items[end].end, like=like, often=figure.often)
    if item.text:
        tell_likeness(scene, comparison, "", item.start, items[end].end)
    elif pair is None:
        tell_likeness(scene, replace(comparison, like=replace(like, against="")), "", item.start, items[end].end)
    else:
        first, second = pair
        whole = scene.main[-1] if scene.main and scene.main[-1].name not in (first.name, second.name) else None
        scene.subjects = [owned(first, whole)]
        tell_likeness(scene, comparison, resolved(second, whole), item.start, items[end].end)
    return end + 1


def _quotient(line: Line, items: Sequence[Item], at: int) -> tuple[Measure, int]:
    first = items[at].factors[0]
    if at + 2 < len(items) and items[at + 1].text == ":" and items[at + 2].factors:
        second = items[at + 2].factors[0]
        if first.low and first.high and second.low and second.high and second.low.exact and second.high.exact:
            low, high = first.low.exact / second.high.exact, first.high.exact / second.low.exact
            return replace(first, low=number_of(low), high=number_of(high)), at + 2
    return first, at


def _pair_before(items: Sequence[Item], at: int) -> tuple[Noun, Noun] | None:
    if at < 3:
        return None
    first, joint, second = items[at - 3 : at]
    if first.noun and second.noun and joint.sort in (Is.OR, Is.TO, Is.SMALL):
        return first.noun, second.noun
    return None
