"""Items -> statements: who is spoken of, what is said of it, how often and when.

The items of a sentence are taken in their order. An organ opens a subject, which holds until the next one; `with` opens
a subject for one clause; places (`at the base`), sides (`beneath`) and stages behind a value are given back to it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from auctorum.characters.figures import Line
from auctorum.characters.prose.found import Doubt, Passed
from auctorum.characters.prose.items import Is, Item, item_at, past
from auctorum.characters.prose.nouns import HABITAT, Noun
from auctorum.characters.prose.scene import Said, Scene
from auctorum.characters.prose.small_words import CITATIONS, DESCRIPTIONS, REMARKS
from auctorum.characters.prose.tell_comparisons import tell_like, tell_ratio
from auctorum.characters.prose.tell_figures import tell_figure
from auctorum.characters.prose.tell_nouns import tell_absent, tell_noun, tell_per, tell_they, tell_without
from auctorum.characters.prose.tell_places import tell_except, tell_place, tell_side
from auctorum.characters.prose.tell_states import tell_state
from auctorum.characters.tokens import Sort


def told(line: Line, items: Sequence[Item], subject: Noun | None) -> list[Said]:
    """The statements of a whole description in the order of its words; `subject` is spoken of until one is named."""
    scene = Scene(line, unnamed=subject is not None, given=subject is not None)
    if subject is not None:
        scene.subjects, scene.main = [subject], [subject]
    scene.elsewhere = any(item.passed is Passed.KEY for item in items)
    at = 0
    while at < len(items):
        if item_at(items, at - 1).sort is Is.STOP:
            _open_section(scene, items[at])
        at = max(at + 1, _TELLERS[items[at].sort](scene, items, at))
    return scene.said


def _open_section(scene: Scene, item: Item) -> None:
    """`Etymology: ...`, `Description.—`: whether what follows describes the plant."""
    word, ends = scene.line.text(item.start), (Sort.COLON, Sort.POINT, Sort.STOP, Sort.DASH)
    if scene.line.sort(item.start + 1) not in ends and scene.line.sort(item.start + 2) is not Sort.COLON:
        return
    if word in CITATIONS:
        scene.section = "sentence"
    elif word in REMARKS:
        scene.section = "paragraph"
    elif word in DESCRIPTIONS:
        scene.section, scene.elsewhere = "", False


def _stop(scene: Scene, items: Sequence[Item], at: int) -> int:
    if scene.section == "sentence" or (scene.section and "\n" in scene.line.text(items[at].start)):
        scene.section = ""
    scene.open_sentence()
    return at + 1


def _comma(scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.open_clause()
    return at + 1


def _and(scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.denied = scene.denied and items[at].sort is Is.OR
    return at + 1


def _open(scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.outer.append((scene.subjects, scene.often, scene.mark))
    scene.clause += 1
    scene.subject_at, scene.to = -1, False
    return at + 1


def _close(scene: Scene, items: Sequence[Item], at: int) -> int:
    if scene.outer:
        scene.subjects, scene.often, scene.mark = scene.outer.pop()
        scene.main = list(scene.subjects) or scene.main
        scene.clause += 1
    return at + 1


def _often(scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.often, scene.often_about, scene.often_at = items[at].often, None, items[at].start
    return at + 1


def _not(scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.denied = True
    return at + 1


def _to(scene: Scene, items: Sequence[Item], at: int) -> int:
    last = scene.last
    if scene.line.text(items[at].end) == "each":
        return tell_per(scene, items, at)  # 5 ribs to each carpel
    beside = last is not None and last.end >= items[at].start - 1
    staged = item_at(items, at - 1).sort is Is.CLOSE  # green (young) to ivory (old)
    scene.to = beside and last is not None and last.share is not None and not (staged and last.stage)
    return at + 1


def _small(scene: Scene, items: Sequence[Item], at: int) -> int:
    between = item_at(items, at - 1).sort is item_at(items, at + 1).sort is Is.STATE
    if items[at].text == "?":
        for one in scene.clause_said:
            one.doubts.add(Doubt.DOUBTED)
    if items[at].text == "a" and between:  # Spanish: ovadas a lanceoladas
        return _to(scene, items, at)
    return at + 1


def _passed(scene: Scene, items: Sequence[Item], at: int) -> int:
    """The name of another plant than the one described puts the sentence in doubt, as a heading all that follows."""
    if items[at].passed is not Passed.NAME:
        return at + 1
    epithet = scene.line.text(items[at].end - 1)
    if not scene.taxon and not scene.said:
        scene.taxon = epithet
    if epithet == scene.taxon:
        scene.elsewhere = False
        return at + 1
    scene.aside = True
    scene.elsewhere |= _is_heading(items, at)
    for one in scene.clause_said:
        one.doubts.add(Doubt.OTHER_TAXON)
    return at + 1


def _is_heading(items: Sequence[Item], at: int) -> bool:
    """Whether the name, with a number before it and authors behind, is a sentence of its own."""
    before = at - 1
    while item_at(items, before).sort is Is.PASSED:
        before -= 1
    end = past(items, at + 1, Is.STRANGE, Is.PASSED, Is.SMALL, most=5)
    return item_at(items, before).sort is Is.STOP and item_at(items, end).sort is Is.STOP


def _versus(scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.aside = True
    return at + 1


def _uncertain(scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.uncertain = True
    return at + 1


def _strange(scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.strange = True
    return at + 1


def _facing(scene: Scene, items: Sequence[Item], at: int) -> int:
    scene.say(HABITAT, "aspect", items[at].start, items[at].end).arc = items[at].arc
    return at + 1


def _stage(scene: Scene, items: Sequence[Item], at: int) -> int:
    """A stage before a value rules what follows in the clause, one behind it what the clause has said."""
    item, said = items[at], scene.clause_said
    if item_at(items, at - 1).sort is Is.OPEN and item_at(items, at + 1).sort is Is.CLOSE and scene.last is not None:
        scene.last.stage, scene.last.end = item.text, items[at + 1].end  # green (young) to ivory (old)
        return at + 1
    change = item.text == "becoming"
    if change and scene.mark == "old" and not scene.marked_property:
        return at + 1  # at length becoming
    if change or not said or _leads(items, at):
        if change and said:
            scene.open_clause()
        scene.mark, scene.mark_at, scene.marked_property = ("old" if change else item.text), item.start, ""
        return at + 1
    for one in said:
        one.stage = item.text
    said[-1].end = max(said[-1].end, item.end)
    scene.open_clause()
    return at + 1


def _leads(items: Sequence[Item], at: int) -> bool:
    """Whether a stage stands at the head of a value: after `and`, `but`, a bracket, a dash or the organ."""
    value = item_at(items, at + 1).sort in (Is.STATE, Is.FIGURE, Is.OFTEN)
    return value and item_at(items, at - 1).sort in (Is.AND, Is.OR, Is.OPEN, Is.TO, Is.NOUN)


def _nothing(scene: Scene, items: Sequence[Item], at: int) -> int:
    return at + 1


_TELLERS: Mapping[Is, Callable[[Scene, Sequence[Item], int], int]] = dict.fromkeys(Is, _nothing) | {
    Is.STOP: _stop, Is.COMMA: _comma, Is.AND: _and, Is.OR: _and, Is.OPEN: _open, Is.CLOSE: _close, Is.OFTEN: _often,
    Is.PASSED: _passed, Is.VERSUS: _versus, Is.UNCERTAIN: _uncertain, Is.NOT: _not, Is.TO: _to, Is.SMALL: _small,
    Is.STRANGE: _strange, Is.FACING: _facing, Is.STAGE: _stage,
    Is.NOUN: tell_noun, Is.THEY: tell_they, Is.PER: tell_per, Is.WITHOUT: tell_without, Is.ABSENT: tell_absent,
    Is.FIGURE: tell_figure, Is.LIKE: tell_like, Is.RATIO: tell_ratio, Is.STATE: tell_state,
    Is.SIDE: tell_side, Is.AT: tell_place, Is.EXCEPT: tell_except,
}  # fmt: skip
