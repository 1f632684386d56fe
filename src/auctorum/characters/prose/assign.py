"""Which character of a vocabulary a statement is about, and what it says in the words of that vocabulary."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace
from functools import lru_cache

from auctorum.characters.colours import lab_of, nearest_state
from auctorum.characters.figures import Line
from auctorum.characters.lexicon import matches_of
from auctorum.characters.munsell import UnreadableColour, munsell_in
from auctorum.characters.presence import OPPOSITE
from auctorum.characters.prose.found import Comparison, Doubt, Found
from auctorum.characters.prose.nouns import read_noun
from auctorum.characters.prose.organs import organ_of, place_of
from auctorum.characters.states import ABSENT, PRESENT
from auctorum.characters.tokens import tokens_of
from auctorum.characters.units import UnfitUnit, UnknownUnit, unit_fits, unit_named
from auctorum.characters.values import Modality, Range, Reading, Share, States
from auctorum.characters.vocabulary import Character, Kind

_CLOSE = {
    "length": {"height", "depth"},
    "height": {"length"},
    "altitude": {"elevation"},
    "width": {"diameter"},
    "breadth": {"width", "diameter"},
    "diameter": {"width", "thickness"},
    "thickness": {"diameter", "width"},
    "depth": {"length", "height", "thickness"},
}
# CIEDE2000 up to which a measured colour may be called by the word for another: a convention, some four steps of
# Munsell chroma, beyond which people do not name colours alike (common practice, no source)
_NEAR_COLOUR = 12.0
_SIDES_OF_IT = 3  # the structure ranks of the organ itself, its positions and its sides
_NOW_AND_THEN = (Modality.SOMETIMES, Modality.OCCASIONALLY, Modality.RARELY)
_SAID_OF_ALL = frozenset({"surface", "blade"})


def rank(found: Found, character: Character, *, given: bool = False) -> int | None:
    """How well the statement fits the character, 0 best; None where it is about something else.

    `given`: the words are known to be about the character, so that a figure that names no property is its.
    """
    place = _structure_rank(found.structure, character)
    if place is None and given and _is_related(found.structure, character):
        place = 4
    if place is None:
        return None
    how = _property_rank(found, character)
    if how is None and given:
        how = _given_rank(found, character)
    return None if how is None else place * 10 + how


def _is_related(structure: str, character: Character) -> bool:
    """Said of the organ at large where the character is of a part of it, or the other way about."""
    names = _names(character)
    return structure == _bare(character.structure) or _bare(structure).rpartition(" ")[0] in names


def is_about(structure: str, character: Character) -> bool:
    """Whether the organ is one that the character may be told of."""
    return _structure_rank(structure, character) is not None


def is_of(structure: str, character: Character) -> bool:
    """Whether the organ, or a side of it, is the very one that the character belongs to."""
    return _structure_rank(structure, character) in (0, 2)


def _given_rank(found: Found, character: Character) -> int | None:
    if not isinstance(found.value, Range):
        return None
    if not found.value.unit and not found.per:
        return 4 if character.kind in (Kind.COUNT, Kind.RATIO) and found.property in ("figure", "count") else None
    unsaid = Doubt.BARE_FIGURE in found.doubts or (found.property == "height" and character.property != "width")
    measured = character.kind in (Kind.MEASURE, Kind.ANGLE) and _fits(found.value.unit, character)
    return 4 if measured and (unsaid or character.kind is Kind.ANGLE) else None


def _structure_rank(structure: str, character: Character) -> int | None:
    names = _names(character)
    if structure in names:
        return names[structure]
    bare = _bare(structure)
    if bare in names:
        return names[bare] + 2
    owner, _, part = bare.rpartition(" ")
    told = part and (part in character.name.split() or part == character.property)
    return names[owner] if owner in names and told else None


def _bare(structure: str) -> str:
    """The organ without its position, its blade or its sides: `lower leaf surface` is said of the leaf."""
    words = [word for word in structure.split() if place_of(word) is None and organ_of(word) is not None]
    while len(words) > 1 and words[-1] in _SAID_OF_ALL:
        words.pop()
    return " ".join(words)


@lru_cache(maxsize=4096)
def _names(character: Character) -> dict[str, int]:
    """The structure of a character (0) and the others that its words name (1), in the reader's English."""
    found: dict[str, int] = {}
    for index, words in enumerate((character.structure, *character.words)):
        line = Line(tokens_of(words))
        noun = read_noun(line, 0)
        whole = noun is not None and noun[1] >= len(line.tokens)
        name = noun[0].name if noun is not None and whole else " ".join(token.text for token in line.tokens)
        found.setdefault("leaf blade" if name == "blade" else name, min(index, 1))
    found.setdefault(character.structure, 0)
    return found


def _property_rank(found: Found, character: Character) -> int | None:
    kind, wanted = character.kind, character.property
    if isinstance(found.value, Comparison):
        if kind is not Kind.RATIO or (found.property != "length" and found.property not in character.name):
            return None
        return 0 if found.value.to.split()[-1] in character.name else 2
    if isinstance(found.value, States):
        return _states_rank(found, character)
    if kind is Kind.PRESENCE:
        return 3 if found.property == "count" else None
    if kind is Kind.COUNT:
        if found.property != "count":
            return None
        # 2-flowered spikelets are no inflorescence: the number is of something else than the character's
        elsewhere = found.per and found.per != found.structure and found.per not in _names(character)
        return 2 if elsewhere and character.structure == found.structure and character.words else 0
    if kind is Kind.RATIO:
        return 0 if found.property == "ratio" else None
    if kind is Kind.ANGLE:
        return 0 if found.property == wanted else 1 if found.property == "angle" and wanted != "aspect" else None
    if kind is not Kind.MEASURE or not _fits(found.value.unit, character):
        return None
    return 0 if found.property == wanted else 1 if found.property in _CLOSE.get(wanted, ()) else None


def _states_rank(found: Found, character: Character) -> int | None:
    if character.kind.is_numeric or not isinstance(found.value, States):
        return None
    if character.kind is Kind.PRESENCE:
        told = found.property == "other" and all(share.state in (PRESENT, ABSENT) for share in found.value.shares)
        return 0 if told or _told(found.value, character) else None
    if not _told(found.value, character):
        return None
    own = found.property == character.property or not untold(found, character)
    return 0 if own else 2


def _fits(unit: str, character: Character) -> bool:
    try:
        unit_fits(unit_named(unit), character)
    except (UnfitUnit, UnknownUnit):
        return False
    return True


def state_named(words: str, character: Character) -> str | None:
    """The state of the character that these words name, words of degree left aside; None if they name none.

    A colour in Munsell notation is the state whose reference is nearest, if any is near.
    """
    if "/" in words and munsell_in(words):
        return _nearest(words, character)
    found = matches_of(Line(tokens_of(words)), character)
    if not found:
        return None
    longest = max(match.end - match.start for match in found)
    return [match for match in found if match.end - match.start == longest][-1].state


def _nearest(notation: str, character: Character) -> str | None:
    try:
        near = nearest_state(lab_of(notation), character)
    except UnreadableColour:  # beyond the renotation, or a reference of the vocabulary that is reported elsewhere
        return None
    return near[0].name if near is not None and near[1] <= _NEAR_COLOUR else None


def _told(value: States, character: Character) -> tuple[Share, ...]:
    """The shares whose states the character has."""
    told = []
    for share in value.shares:
        if (between := _hyphened(share, character)) is not None:
            told.append(between)
            continue
        state = state_named(share.state, character)
        to = state_named(share.to, character) if share.to else None
        if state is None:
            state, to = to, None
        if state is not None:
            span = to if to != state and character.kind is Kind.ORDERED else None
            told.append(Share(state, span, share.modality))
            if to is not None and span is None and to != state:
                told.append(Share(to, None, share.modality))
    return tuple(dict.fromkeys(told))


def _hyphened(share: Share, character: Character) -> Share | None:
    """`linear-lanceolate` lies between the two where the spectrum has both, but not the compound."""
    if share.to is not None or character.kind is not Kind.ORDERED or "-" not in share.state:
        return None
    found = matches_of(Line(tokens_of(share.state)), character)
    if len(found) != 2 or found[0].state == found[1].state:
        return None
    return Share(found[0].state, found[1].state, share.modality)


def untold(found: Found, character: Character) -> tuple[str, ...]:
    """The states said that the character does not have."""
    if not isinstance(found.value, States) or character.kind is Kind.PRESENCE:
        return ()
    said = [words for share in found.value.shares for words in (share.state, share.to) if words]
    return tuple(words for words in said if state_named(words, character) is None)


def readings_of(several: Sequence[Found], character: Character) -> tuple[Reading, ...]:
    """What statements that fit the character say of it: a value for each stage, in the order of the words."""
    numbers: dict[str, Range] = {}
    shares: dict[str, list[Share]] = {}
    for found in several:
        value = found.value
        if isinstance(value, States):
            shares.setdefault(found.stage, []).extend(_shares(value, character))
        elif character.kind is Kind.PRESENCE and isinstance(value, Range):
            none = value.high == 0
            shares.setdefault(found.stage, []).append(Share(ABSENT if none else PRESENT))
        else:
            stated = value.times if isinstance(value, Comparison) else value
            before = numbers.get(found.stage)
            numbers[found.stage] = stated if before is None else _combined(before, stated, found.modality)
    readings = [Reading(value, stage) for stage, value in numbers.items()]
    return (*readings, *(Reading(States(tuple(dict.fromkeys(told))), stage) for stage, told in shares.items() if told))


def _shares(value: States, character: Character) -> tuple[Share, ...]:
    if character.kind is not Kind.PRESENCE:
        return _told(value, character)
    own = _told(value, character)
    if own:
        return own
    return tuple(Share(OPPOSITE[one.state]) if one.modality is Modality.NEVER else one for one in value.shares)


def _combined(first: Range, second: Range, often: Modality | None) -> Range:
    """One range of two that a work gives: the usual part, or what happens now and then, which is an extreme."""
    if often is Modality.USUALLY and second.low is not None and second.high is not None:
        return replace(first, usual=(second.low, second.high))
    if often in _NOW_AND_THEN and second.unit == first.unit:
        most = second.high if second.high is not None and first.high is not None and second.high > first.high else None
        least = second.low if second.low is not None and first.low is not None and second.low < first.low else None
        return replace(first, most=first.most or most, least=first.least or least)
    return first


def best_fitting(statements: Iterable[Found], character: Character) -> tuple[Found, ...]:
    """The statements of words about the character that fit it best.

    Figures are of one rank, states of one property and of all sides of the organ.
    """
    ranked = [(found, place) for found in statements if (place := rank(found, character, given=True)) is not None]
    best = min((place for _, place in ranked), default=0)
    if character.kind.is_numeric:
        return tuple(found for found, place in ranked if place == best)
    near = [(found, place) for found, place in ranked if place % 10 == best % 10]
    closest = min((place for _, place in near), default=0) // 10
    return tuple(found for found, place in near if place // 10 <= max(closest, _SIDES_OF_IT))
