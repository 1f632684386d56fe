"""Items -> statements: who is spoken of, what is said of it, how often and when.

The items of a sentence are taken in their order. An organ opens a subject, which holds until the next one; `with` opens
a subject for one clause; places (`at the base`), sides (`beneath`) and stages behind a value are given back to it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import replace

from auctorum.characters.figures import Line
from auctorum.characters.prose.found import Doubt
from auctorum.characters.prose.items import Is, Item
from auctorum.characters.prose.nouns import Noun, owned, resolved, without_part
from auctorum.characters.prose.pieces import Piece
from auctorum.characters.prose.scene import Said, Scene
from auctorum.characters.prose.tell_figures import HABITAT, tell_figure, tell_likeness, tell_ratio
from auctorum.characters.values import Modality, Share

_GROUPS = frozenset({"series", "row", "whorl", "rank", "cycle", "pair", "tier", "column"})


def subject_named(structure: str) -> Noun | None:
    """The organ of that name, to begin with; None for no name."""
    if not structure:
        return None
    kind = structure if structure in ("plant", "habitat") else ""
    return Noun(tuple(structure.split()), kind=kind)


def told(line: Line, items: Sequence[Item], subject: Noun | None = None) -> list[Said]:
    """The statements of a whole description in the order of its words; `subject` is spoken of until one is named."""
    scene = Scene(subjects=[subject] if subject else [], main=[subject] if subject else [], unnamed=subject is not None,
                  given=subject is not None)  # fmt: skip
    at = 0
    while at < len(items):
        at = max(at + 1, _tell(line, scene, items, at))
    return scene.said


def _tell(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    item = items[at]
    teller = _TELLERS.get(item.sort)
    if teller is not None:
        return teller(line, scene, items, at)
    if item.sort is Is.STRANGE:
        scene.strange = True
    between = 0 < at < len(items) - 1 and items[at - 1].sort is Is.STATE and items[at + 1].sort is Is.STATE
    if item.text == "a" and between:  # Spanish: ovadas a lanceoladas
        return _to(line, scene, items, at)
    return at + 1


def _stop(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.open_sentence()
    return at + 1


def _comma(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.open_clause()
    return at + 1


def _and(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.denied = scene.denied and items[at].sort is Is.OR
    return at + 1


def _noun(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    noun = items[at].noun
    assert noun is not None
    if (end := _compared_before(scene, items, at)) > at:
        return end
    before = items[at - 1].sort if at else None
    with_ = before is Is.WITH or (before is Is.SMALL and at > 1 and items[at - 2].sort is Is.WITH)
    with_ = with_ or (before is Is.AND and bool(scene.beside) and scene.subjects == scene.beside)
    if before is Is.STRANGE and items[at].text and scene.subjects:
        return at + 1  # veins leave the midrib
    if before is Is.OF and noun.kind == "plant" and scene.subjects:
        scene.stage = noun.stage
        return at + 1
    named = owned(noun, scene.whole, within=with_)
    unsaid = scene.subject_at >= 0 and not any(one.start >= scene.subject_at for one in scene.said[-1:])
    if before in (Is.AND, Is.OR) and unsaid and scene.main and not scene.main[-1].kind:
        scene.main = [*scene.main, named]
        scene.subjects = list(scene.main)
        return at + 1
    if before is Is.OF and scene.main and unsaid:
        scene.per = scene.main[-1].name
    scene.subjects = [named]
    scene.beside = [named] if with_ else []
    if not with_:
        scene.main = [named]
        scene.organ = scene.organ if noun.part else [named]
    if not scene.named and not with_:
        scene.first, scene.named = [named], True
    scene.unnamed = False
    scene.subject_at, scene.subject_end, scene.carried = items[at].start, items[at].end, False
    scene.stage = "" if noun.kind == "habitat" else noun.stage or (scene.stage if with_ else "")
    if not with_:
        scene.mark = ""
    scene.often, scene.often_about, scene.strange = None, None, not noun.known
    return at + 1


def _compared_before(scene: Scene, items: Sequence[Item], at: int) -> int:
    """`calyce duplo longior`: the organ before the words of comparison is what they compare with."""
    following = items[at + 1] if at + 1 < len(items) else None
    noun = items[at].noun
    if following is None or following.like is None or not following.like.before or not scene.subjects or noun is None:
        return at
    after = items[at + 2] if at + 2 < len(items) else None
    if after is not None and after.sort is Is.NOUN and not following.like.against:
        return at
    if following.like.against:
        return at
    tell_likeness(scene, following, resolved(noun, scene.whole), items[at].start, following.end)
    return at + 2


def _they(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    """`...with a toothed margin; they are bright green`: the organ before its parts."""
    if scene.organ and (at == 0 or items[at - 1].sort in (Is.STOP, Is.COMMA, Is.AND)):
        scene.main, scene.beside = list(scene.organ), []
        scene.subjects = list(scene.main)
    return at + 1


def _figure(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    following = items[at + 1] if at + 1 < len(items) else None
    pairs = following is not None and following.noun is not None and following.noun.names == ("pair",)
    tell_figure(line, scene, items[at], pairs=pairs, says=_says_later(items, at),
                staged=following is not None and following.sort is Is.STAGE)  # fmt: skip
    return at + 2 if pairs else at + 1


def _says_later(items: Sequence[Item], at: int) -> tuple[str, ...]:
    for place in range(at + 1, min(at + 3, len(items))):
        if items[place].factors:
            return items[place].factors[0].says if items[place].sort is Is.FIGURE and place > at + 1 else ()
        if items[place].sort not in (Is.AND, Is.OR, Is.SMALL):
            return ()
    return ()


def _like(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    item = items[at]
    assert item.like is not None
    if item.like.against:
        tell_likeness(scene, item, "", item.start, item.end)
        return at + 1
    place = at + 1
    while place < len(items) and place < at + 3 and items[place].sort in (Is.SMALL, Is.STATE, Is.OF):
        place += 1
    target = items[place].noun if place < len(items) else None
    if target is None:
        scene.strange = True
        return at + 1
    tell_likeness(scene, item, resolved(target, scene.whole), item.start, items[place].end)
    return place + 1


def _ratio(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    return tell_ratio(line, scene, items, at)


def _state(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    item = items[at]
    if scene.strange and scene.carried:
        return at + 1  # after words not understood nobody knows whose state it is
    pieces = [_elsewhere(scene, piece) for piece in item.pieces]
    if not scene.subjects and not pieces[0].structure:
        scene.strange = True
        return at + 1
    for piece in pieces:
        last = scene.said[-1] if scene.said else None
        if scene.to and last is not None and last.share is not None and last.property == piece.property and last.share.to is None:
            last.share = replace(last.share, to=piece.words)
            last.end = piece.end
            scene.to = False
            continue
        scene.to = False
        subjects = scene.subjects
        if scene.beside and subjects and subjects[-1].kind == "plant" and scene.subject_at < 0:
            subjects = scene.beside  # arbusto con ramas erectas, glabras
        if piece.structure and piece.structure not in {noun.name for noun in subjects}:
            subjects = [Noun(tuple(piece.structure.split()), kind="habitat" if piece.structure == "habitat" else "")]
        for noun in subjects:
            if _is_no_statement(scene, noun, piece):
                continue
            part = _part_of(scene, piece, items[at - 1].sort in (Is.OR, Is.TO) if at else False)
            _say_state(scene, noun, piece.property, piece.words, part, piece.start, piece.end, hair=piece.hair)
        if scene.once:
            scene.subjects, scene.once = list(scene.main), False
        if piece.guessed and scene.said:
            scene.said[-1].doubts.add(Doubt.GUESSED_STATE)
    return at + 1


def _elsewhere(scene: Scene, piece: Piece) -> Piece:
    """The word in the sense of the vocabulary where no organ is spoken of."""
    if piece.other is None or (scene.subjects and scene.subjects[-1].kind != "habitat"):
        return piece
    structure, name, words = piece.other
    return replace(piece, structure=structure, property=name, words=words, part="")


_OF_AN_APEX = frozenset("rounded round subrounded truncate narrowed tapering pointed blunt notched bluntish".split(" "))


def _part_of(scene: Scene, piece: Piece, joined: bool) -> str:
    """The part that a shape tells of; `rounded or emarginate` is the apex in both."""
    last = scene.clause_said[-1] if joined and scene.clause_said else None
    if piece.property != "shape" or last is None or last.share is None or last.property != "shape":
        return piece.part
    if not piece.part and piece.words.split()[-1] in _OF_AN_APEX and last.noun.head == "apex":
        return "apex"
    if piece.part == "apex" and last.noun.head != "apex" and last.share.state.split()[-1] in _OF_AN_APEX:
        last.noun = owned(Noun(("apex",), part=True), last.noun)
    return piece.part


def _is_no_statement(scene: Scene, noun: Noun, piece: Piece) -> bool:
    """Growth forms and vegetation are subjects only: `erect herb`, `stony slopes`."""
    if noun.kind == "habitat":
        return not piece.structure
    return noun.kind == "plant" and piece.property == "other" and piece.start < scene.subject_at


def _say_state(scene: Scene, noun: Noun, name: str, words: str, part: str, start: int, end: int, *, hair: bool = False) -> None:
    if hair:
        noun = owned(Noun(("hair",), part=True), noun) if noun.head != "hair" else noun
    elif part and noun.head in ("base", "apex", "tip") and part == "margin" and len(noun.names) > 1:
        noun = replace(noun, names=(*noun.names[:-1], part))
    elif part and noun.head not in ("margin", "apex", "tip", "base", "surface") and not noun.kind:
        noun = owned(Noun((part,), part=True), noun)
    often = scene.often
    if often is not None and not hair:
        about = (noun.name, name + part)
        scene.often_about = scene.often_about or about
        if scene.often_about != about:
            scene.often = often = None
    modality = Modality.NEVER if scene.denied else often or Modality.ALWAYS
    begin = scene.often_at if often is not None and scene.often_at >= 0 else start
    said = new_said(scene, noun, name, begin, end)
    said.share = Share(words, None, modality)
    scene.said.append(said)


def new_said(scene: Scene, noun: Noun, name: str, start: int, end: int) -> Said:
    """A statement about the noun at the stage that holds here, with what is taken for granted."""
    doubts = set()
    if scene.carried:
        doubts.add(Doubt.CARRIED)
    if scene.unnamed:
        doubts.add(Doubt.NO_ORGAN)
    if scene.strange:
        doubts.add(Doubt.STRANGE_WORD)
    if not noun.known:
        doubts.add(Doubt.STRANGE_ORGAN)
    stage = scene.stage
    if scene.mark:
        scene.marked_property = scene.marked_property or name
        if scene.marked_property == name:
            stage = scene.mark
            start = min(start, scene.mark_at)
    first = not scene.clause_said
    if first and 0 <= scene.subject_at < start:
        start = scene.subject_at
    if scene.subject_at >= end:  # the organ behind the words: 4-8 teeth
        end = scene.subject_end
    return Said(noun, name, start, end, scene.clause, scene.sentence, stage=stage, per=scene.per, doubts=doubts)


def _stage(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    item = items[at]
    said = scene.clause_said
    following = items[at + 1].sort if at + 1 < len(items) else None
    change = item.text == "becoming"
    if change and scene.mark == "old" and scene.mark_at >= 0 and not scene.marked_property:
        return at + 1  # "at length becoming"
    opens = change or not said or following in (Is.STATE, Is.FIGURE, Is.OFTEN) and _begins(items, at)
    if opens:
        if change and said:
            scene.open_clause()
        scene.mark, scene.mark_at, scene.marked_property = ("old" if change else item.text), item.start, ""
        return at + 1
    for one in said:
        one.stage = item.text
    said[-1].end = max(said[-1].end, item.end)
    scene.open_clause()
    return at + 1


def _begins(items: Sequence[Item], at: int) -> bool:
    """Whether a stage stands at the head of what follows: after `and`, `but`, a bracket or a dash."""
    return at > 0 and items[at - 1].sort in (Is.AND, Is.OR, Is.OPEN, Is.TO, Is.NOUN)


def _often(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.often, scene.often_about, scene.often_at = items[at].often, None, items[at].start
    return at + 1


def _not(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.denied = True
    return at + 1


def _to(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.to = bool(scene.said) and scene.said[-1].share is not None and scene.said[-1].end >= items[at].start - 1
    return at + 1


def _side(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    """`tomentose beneath`, `beneath tomentose`: the surface of that side."""
    item = items[at]
    states = [one for one in scene.clause_said if one.share is not None]
    following = items[at + 1].sort if at + 1 < len(items) else None
    if not states or following in (Is.STATE, Is.OFTEN):
        if scene.main:
            scene.subjects = [_on_side(noun, item.text) for noun in scene.main]
        return at + 1
    for one in states:
        if one.property == states[-1].property or {one.property, states[-1].property} <= {"colour", "surface"}:
            one.noun = _on_side(one.noun, item.text)
    states[-1].end = max(states[-1].end, item.end)
    return at + 1


def _on_side(noun: Noun, side: str) -> Noun:
    noun = noun if noun.head in ("margin", "surface") else without_part(noun)
    names = noun.names[:1] if noun.names[:2] == ("leaf", "blade") else noun.names
    if names[-1] in ("surface", "midrib", "vein", "margin", "epidermis"):
        return noun if side in noun.places else replace(noun, places=(side, *noun.places))
    if names[-1] == "hair":
        return noun
    return replace(noun, names=(*names, "surface"), places=(side, *noun.places), part=False)


def _at(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    """`yellow at the tips`, `1.3 cm wide at the mouth`, `15 in a truss`."""
    place, states = at + 1, 0
    while place < len(items) and items[place].sort in (Is.SMALL, Is.STATE, Is.AT, Is.OFTEN) and states < 2:
        states += items[place].sort is Is.STATE
        place += 1
    noun = items[place].noun if place < len(items) else None
    if noun is None or (states and place - at > 3):
        return at + 1
    following = items[place + 1] if place + 1 < len(items) else None
    counted = following is not None and bool(following.factors) and following.start < items[place].start
    if noun.head in _GROUPS and counted and scene.subjects:
        group = replace(scene.subjects[-1], names=(*scene.subjects[-1].names, noun.head))
        scene.subjects = [group]
        return place + 1
    last = scene.clause_said[-1:] or ([scene.said[-1]] if scene.said and scene.said[-1].end == items[at].start else [])
    if not last:
        if noun.part and scene.main:
            scene.subjects = [owned(noun, whole) for whole in scene.main]
            scene.once = items[at].text == "e"
        return place + 1
    side = items[place + 1].text if following is not None and following.sort is Is.SIDE else ""
    if noun.part and not noun.kind and items[at].text != "from" and last[0].property not in ("angle", "count"):
        named = last[0].noun if noun.head == last[0].noun.head else owned(noun, last[0].noun)
        if side:
            named, place = _on_side(named, side), place + 1
        _move(scene, last[0], named)
    elif last[0].property == "count":
        last[0].per = noun.name
    last[0].end = max(last[0].end, items[place].end)
    return place + 1


def _move(scene: Scene, last: Said, named: Noun) -> None:
    """The statement is about the part; so are the dimensions of one product, and shapes joined by `or`."""
    for one in scene.clause_said:
        if one is last or (last.property == one.property == "shape" and last.noun.names[0] == one.noun.names[0]) or (one.figure is not None and last.figure is not None and one.noun == last.noun and one.start == last.start):
            one.noun = named


def _per(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    place = at + 1
    while place < len(items) and items[place].sort is Is.SMALL:
        place += 1
    noun = items[place].noun if place < len(items) else None
    if noun is None:
        return at + 1
    for one in scene.clause_said[-2:]:
        if one.property == "count":
            one.per, one.end = noun.name, max(one.end, items[place].end)
    return place + 1


def _without(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    """`petals without a beak`: presence denied."""
    place = at + 1
    while place < len(items) and items[place].sort is Is.SMALL:
        place += 1
    noun = items[place].noun if place < len(items) else None
    if noun is None:
        if items[at].text in ("lacking", "wanting", "destitute"):
            return _absent(line, scene, items, at)
        scene.denied = place < len(items) and items[place].sort is Is.STATE
        return at + 1
    said = new_said(scene, owned(noun, scene.whole), "other", items[at].start, items[place].end)
    said.share = Share("present", None, Modality.NEVER)
    scene.said.append(said)
    return place + 1


def _absent(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    for noun in scene.subjects:
        said = new_said(scene, noun, "other", items[at].start, items[at].end)
        often = scene.often if scene.often not in (None, Modality.ALWAYS) else None
        said.share = Share("absent", None, often) if often else Share("present", None, Modality.NEVER)
        scene.said.append(said)
    return at + 1


def _except(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    """`glabrous except on the midrib below`: the part has not the state, or its own."""
    last = next((one for one in reversed(scene.said) if one.share is not None), None)
    place = at + 1
    own: list[Item] = []
    while place < len(items) and items[place].sort in (Is.SMALL, Is.AT, Is.STATE, Is.OF) or (place < len(items) and items[place].text == "for"):
        own += [items[place]] if items[place].sort is Is.STATE else []
        place += 1
    noun = items[place].noun if place < len(items) else None
    if noun is None or last is None or last.share is None:
        return at + 1
    named = owned(noun, last.noun if noun.head != last.noun.head else scene.whole)
    end = place + 1
    if end < len(items) and items[end].sort is Is.SIDE:
        named, end = _on_side(named, items[end].text), end + 1
    if items[place - 1].sort is Is.SIDE:
        named = _on_side(named, items[place - 1].text)
    pieces: list[Piece | None] = [piece for item in own for piece in item.pieces]
    for piece in pieces or [None]:
        said = new_said(scene, named, piece.property if piece else last.property, items[at].start, items[end - 1].end)
        said.share = Share(piece.words) if piece else Share(last.share.state, None, Modality.NEVER)
        said.stage = said.stage or last.stage
        scene.said.append(said)
    return end


def _open(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.outer.append((scene.subjects, scene.often, scene.mark))
    scene.clause += 1
    scene.to = False
    return at + 1


def _close(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    if scene.outer:
        scene.subjects, scene.often, scene.mark = scene.outer.pop()
        scene.main = list(scene.subjects) or scene.main
        scene.clause += 1
    return at + 1


def _facing(line: Line, scene: Scene, items: Sequence[Item], at: int) -> int:
    said = new_said(scene, HABITAT, "aspect", items[at].start, items[at].end)
    said.arc = items[at].arc
    scene.said.append(said)
    return at + 1


_Teller = Callable[[Line, Scene, Sequence[Item], int], int]
_TELLERS: Mapping[Is, _Teller] = {
    Is.STOP: _stop, Is.COMMA: _comma, Is.AND: _and, Is.OR: _and, Is.NOUN: _noun, Is.FIGURE: _figure, Is.LIKE: _like,
    Is.RATIO: _ratio, Is.STATE: _state, Is.STAGE: _stage, Is.OFTEN: _often, Is.NOT: _not, Is.TO: _to, Is.SIDE: _side,
    Is.AT: _at, Is.PER: _per, Is.WITHOUT: _without, Is.ABSENT: _absent, Is.EXCEPT: _except, Is.OPEN: _open,
    Is.CLOSE: _close, Is.FACING: _facing, Is.THEY: _they,
}  # fmt: skip
