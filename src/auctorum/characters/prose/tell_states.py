"""States: of which part they are told, how often, and where a span of them ends."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from auctorum.characters.prose.found import Doubt
from auctorum.characters.prose.items import Is, Item, item_at
from auctorum.characters.prose.nouns import Noun
from auctorum.characters.prose.pieces import Piece
from auctorum.characters.prose.scene import Scene
from auctorum.characters.prose.tell_places import on_side
from auctorum.characters.prose.wholes import ENDS, owned, without_part
from auctorum.characters.values import Modality, Share

_OF_AN_APEX_WORDS = "rounded round subrounded truncate narrowed tapering pointed blunt notched bluntish"
_OF_AN_APEX = frozenset(_OF_AN_APEX_WORDS.split())
_PARTS_OF_A_LEAF = frozenset({"margin", "apex", "tip", "base", "surface"})


def tell_state(scene: Scene, items: Sequence[Item], at: int) -> int:
    """The states of the item, of every subject; the second state of a span ends the first."""
    if scene.strange and scene.carried:
        return at + 1  # after words not understood nobody knows whose state it is
    pieces = [_elsewhere(scene, piece) for piece in items[at].pieces]
    if not scene.subjects and not pieces[0].structure:
        scene.strange = True
        return at + 1
    joined = item_at(items, at - 1).sort in (Is.OR, Is.TO)
    for piece in pieces:
        if _ends_span(scene, piece):
            continue
        for noun in _subjects(scene, piece):
            if not _is_no_statement(scene, noun, piece):
                _say(scene, noun, replace(piece, part=_part_of(scene, piece, joined)))
        if scene.once:
            scene.subjects, scene.once = list(scene.main), False
    return at + 1


def _elsewhere(scene: Scene, piece: Piece) -> Piece:
    """The word in the sense of the vocabulary where no organ is spoken of."""
    if piece.other is None or (scene.subject is not None and scene.subject.kind != "habitat"):
        return piece
    structure, name, words = piece.other
    return replace(piece, structure=structure, property=name, words=words, part="")


def _ends_span(scene: Scene, piece: Piece) -> bool:
    """Whether the piece is the far end of `lanceolate to ovate`, which it then closes."""
    spanning, scene.to = scene.to, False
    last = scene.last
    if not spanning or last is None or last.share is None or last.property != piece.property or last.share.to:
        return False
    last.share, last.end = replace(last.share, to=piece.words), piece.end
    return True


def _subjects(scene: Scene, piece: Piece) -> list[Noun]:
    organ = scene.subject is not None and scene.subject.kind != "habitat" and piece.structure != "habitat"
    if piece.structure and not organ:
        return [Noun(tuple(piece.structure.split()), kind="habitat" if piece.structure == "habitat" else "")]
    if scene.beside and scene.subject is not None and scene.subject.kind == "plant" and scene.subject_at < 0:
        return scene.beside  # arbusto con ramas erectas, glabras
    if scene.subject_at < 0 and not scene.unnamed and piece.property in ("surface", "colour", "other"):
        return [_whole_of_end(noun) for noun in scene.subjects]  # leaf apex acute, papery
    return scene.subjects


def _whole_of_end(noun: Noun) -> Noun:
    return without_part(noun) if noun.head in ENDS else noun


def _is_no_statement(scene: Scene, noun: Noun, piece: Piece) -> bool:
    """Growth forms and vegetation are subjects only: `erect herb`, `stony slopes`."""
    if noun.kind == "habitat":
        return not piece.structure
    return noun.kind == "plant" and piece.property == "other" and piece.start < scene.subject_at


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


def _say(scene: Scene, noun: Noun, piece: Piece) -> None:
    if scene.side:
        noun = on_side(without_part(noun), scene.side, piece.property)
    noun = _place_of(noun, piece)
    often = _frequency_of(scene, noun, piece)
    start = scene.often_at if often is not None and scene.often_at >= 0 else piece.start
    said = scene.say(noun, piece.property, start, piece.end)
    said.share = Share(piece.words, None, Modality.NEVER if scene.denied else often or Modality.ALWAYS)
    if piece.guessed:
        said.doubts.add(Doubt.GUESSED_STATE)


def _place_of(noun: Noun, piece: Piece) -> Noun:
    """The part of the organ that the state is of: its hairs, its margin, its apex, the organ itself."""
    if piece.hair:
        return noun if noun.head == "hair" else owned(Noun(("hair",), part=True), noun)
    if not piece.part or noun.kind:
        return noun
    if piece.part == "margin" and noun.head in ("base", "apex", "tip") and len(noun.names) > 1:
        return replace(noun, names=(*noun.names[:-1], piece.part))  # basi cuneata, integerrima
    return noun if noun.head in _PARTS_OF_A_LEAF else owned(Noun((piece.part,), part=True), noun)


def _frequency_of(scene: Scene, noun: Noun, piece: Piece) -> Modality | None:
    """A word of frequency covers the list that follows it, as long as it is of one property of one organ."""
    if scene.often is None or piece.hair:
        return scene.often
    about = (noun.name, piece.property)
    scene.often_about = scene.often_about or about
    if scene.often_about != about:
        scene.often = None
    return scene.often
