"""What a vocabulary lacks for a statement: a character, or states of one that it has."""

from __future__ import annotations

from collections.abc import Container, Iterable, Sequence
from dataclasses import replace

from auctorum.characters.colours import lab_of
from auctorum.characters.munsell import UnreadableColour, munsell_in
from auctorum.characters.prose.assign import is_of, untold
from auctorum.characters.prose.found import Comparison, Found
from auctorum.characters.states import ABSENT, PRESENT
from auctorum.characters.values import States
from auctorum.characters.vocabulary import Character, Kind, State

STAGES = ("young", "mature")  # the growth stages by which a new character is split if a statement names one
_GROWTH = frozenset({*STAGES, "old"})  # what is old is mature; fresh, dry, in flower and in fruit split nothing
_KINDS = {"count": Kind.COUNT, "ratio": Kind.RATIO, "angle": Kind.ANGLE}
_UNITS = {Kind.MEASURE: "mm", Kind.ANGLE: "degree"}


def lacking_states(found: Found, characters: Iterable[Character]) -> Character | None:
    """The character of the organ and the property that has states, but not all that the words say; None if none is.

    One without order comes first: in a spectrum a new state needs a place.
    """
    if not isinstance(found.value, States):
        return None
    of_it = [
        character for character in characters
        if character.states and character.kind is not Kind.PRESENCE and character.property == found.property
        and is_of(found.structure, character) and untold(found, character)
    ]  # fmt: skip
    return min(of_it, key=lambda character: character.kind is Kind.ORDERED, default=None)


def with_new_states(found: Found, character: Character) -> tuple[Character, tuple[str, ...]]:
    """The character with the states said that it lacks at the end, and the names of these."""
    names = tuple(dict.fromkeys(map(_plain, untold(found, character))))
    return replace(character, states=(*character.states, *map(_state, names))), names


def new_character(group: Sequence[Found], taken: Container[str]) -> Character:
    """A character for statements that the vocabulary has none for, with the states they name; its name is not taken."""
    character = _proposed(group[0])
    name = character.name
    while name in taken:
        name += ", other"
    stages = STAGES if any(found.stage in _GROWTH for found in group) else ()
    return replace(character, name=name, stages=stages)


def new_name(group: Sequence[Found]) -> str:
    """The name that a new character would have if it were not taken."""
    return _proposed(group[0]).name


def _proposed(first: Found) -> Character:
    if isinstance(first.value, Comparison):
        name = first.structure if first.property == "length" else f"{first.structure} {first.property}"
        return Character(f"{name} to {first.value.to}", first.structure, "ratio", Kind.RATIO)
    if isinstance(first.value, States):
        if first.property == "other" and {share.state for share in first.value.shares} <= {PRESENT, ABSENT}:
            return Character(first.structure, first.structure, "presence", Kind.PRESENCE)
        said = (words for share in first.value.shares for words in (share.state, share.to) if words)
        states = tuple(map(_state, dict.fromkeys(map(_plain, said))))
        kind = Kind.ORDERED if any(share.to for share in first.value.shares) else Kind.NOMINAL  # a span has an order
        return Character(_name(first), first.structure, first.property, kind, states=states)
    kind = _KINDS.get(first.property, Kind.MEASURE)
    unit = "m" if first.property == "elevation" else _UNITS.get(kind, "")
    name = f"{first.structure} number" if kind is Kind.COUNT else _name(first)
    return Character(name, first.structure, first.property, kind, unit)


def _name(found: Found) -> str:
    """A name for a new character: `leaf shape`, `upper leaf surface`, `leaf length/width`."""
    name = found.of or found.property
    if found.structure.endswith(name):
        return found.structure
    return f"{found.structure}, other" if name == "other" else f"{found.structure} {name}"


def _plain(words: str) -> str:
    """The words of a state; the sign for `more or less` is none of them."""
    return words.replace("±", "").strip()


def _state(name: str) -> State:
    """A state of that name, which is its own reference if it is a colour in Munsell notation."""
    if "/" not in name or not munsell_in(name):
        return State(name)
    try:
        lab_of(name)
    except UnreadableColour:
        return State(name)
    return State(name, colour=name)
