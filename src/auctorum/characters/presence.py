"""Presence in words: `no bracts`, `ebracteate`, `bracts developed`, `bracts 0`, or the organ merely named."""

from __future__ import annotations

from auctorum.characters.figures import Line
from auctorum.characters.frequency import frequency
from auctorum.characters.states import ABSENT, PRESENT
from auctorum.characters.tokens import Sort, folded
from auctorum.characters.values import Modality, Reading, Share, States
from auctorum.characters.vocabulary import Character

_NONE_WORDS = (
    "absent none no without lacking wanting lacks nil nullus nulla nullum nullis nulli carens carentes carentibus "
    "destitute destitutus destituta deest desunt absens missing obsolete sine"
)
_NONE = frozenset(_NONE_WORDS.split())
_SOME = frozenset({"present", "adest", "adsunt", "praesens", "with", "developed"})
OPPOSITE = {PRESENT: ABSENT, ABSENT: PRESENT}


def read_presence(line: Line, character: Character, *, named: bool) -> tuple[Reading, ...]:
    """Whether the structure is there; `named` where the words name it, which alone says that it is. () for no word."""
    shares: list[Share] = []
    modality, denied, at = Modality.ALWAYS, False, 0
    while at < len(line.tokens):
        often, after = frequency(line, at)
        modality = often or modality
        text = line.text(at)
        denied |= text in ("not", "non") and not often
        state = _state(line, at, character, named=named)
        if state:
            shares.append(_settled(Share(OPPOSITE[state] if denied else state, None, modality)))
        at = max(after, at + 1)
    if not shares and named:
        shares.append(_settled(Share(ABSENT if denied else PRESENT, None, modality)))
    return (Reading(States(tuple(dict.fromkeys(shares)))),) if shares else ()


def _state(line: Line, at: int, character: Character, *, named: bool) -> str:
    text = line.text(at)
    if text in _NONE or _is_privative(text, character) or (line.sort(at) is Sort.NUMBER and text == "0"):
        return ABSENT
    return PRESENT if text in _SOME and (text != "with" or named) else ""


def _is_privative(text: str, character: Character) -> bool:
    """`ebracteate`, `spurless` of bracts and spurs."""
    name = folded(character.structure).split()[-1:]
    return bool(name) and (text.startswith((f"e{name[0]}", f"ex{name[0]}")) or text == f"{name[0]}less")


def _settled(share: Share) -> Share:
    """`never present` is absent."""
    return Share(OPPOSITE[share.state], None, Modality.ALWAYS) if share.modality is Modality.NEVER else share
