"""Which works part two taxa by a character, which do not, and which say themselves that the two differ."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from auctorum.characters.directions import TURN
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.cuts import Cut
from auctorum.circumscription.findings import Relation
from auctorum.circumscription.separation_known import Known
from auctorum.circumscription.sweep import Stretch, high_of, low_of, relation
from auctorum.circumscription.voices import Voice

_HALF = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class Stances:
    """Ids of works by date; all of them state the character for both taxa, in words of their own."""

    support: tuple[str, ...]
    against: tuple[str, ...]
    said_to_differ: tuple[str, ...]


def stances(lower: Known, upper: Known, character: Character, cut: Cut | None) -> Stances:
    """What the works say that state the character for both; `lower` lies below the cut where there is one.

    Numbers support the cut where their typical ranges lie on its two sides, within stated precision; one that only
    touches it is on its side. A work that does not state the bounds that face each other takes no stand, unless the
    ones it states are enough to speak against the cut. States and directions have to have nothing in common. A work
    that repeats another for either taxon has no say.
    """
    support: list[str] = []
    against: list[str] = []
    differ: list[str] = []
    for work, below, above in _of_both(lower, upper):
        parted = _apart(below, above, character)
        by_cut = cut is not None and character.kind.is_numeric
        holds = _on_two_sides(below, above, _place(cut, character)) if cut is not None and by_cut else parted
        if holds is not None:
            (support if holds else against).append(work)
        if parted:
            differ.append(work)
    return Stances(tuple(support), tuple(against), tuple(differ))


def _of_both(lower: Known, upper: Known) -> Iterator[tuple[str, Voice, Voice]]:
    for work, voice in lower.own.items():
        if work in upper.own:
            yield work, voice, upper.own[work]


def _place(cut: Cut, character: Character) -> Fraction:
    """Where the cut lies on the line: that of counts from 4 on between 3 and 4."""
    return cut.value - _HALF if character.kind is Kind.COUNT else cut.value


def _on_two_sides(below: Voice, above: Voice, place: Fraction) -> bool | None:
    """Whether two ranges lie on the two sides of the place; None where the bounds that are stated cannot tell."""
    high = high_of(below.stretch) if below.stretch is not None else None
    low = low_of(above.stretch) if above.stretch is not None else None
    reaches = None if high is None else high.value - high.slack >= place and high.value > place
    falls = None if low is None else low.value + low.slack <= place and low.value < place
    if reaches or falls:
        return False
    return None if reaches is None or falls is None else True


def _apart(one: Voice, other: Voice, character: Character) -> bool:
    """Whether what one work says of two taxa has nothing in common."""
    if not character.kind.is_numeric:
        return not set(one.allowed) & set(other.allowed)
    if one.stretch is None or other.stretch is None:
        return False
    turns = range(-2, 3) if character.kind is Kind.ANGLE else (0,)
    return all(relation(one.stretch, _turned(other.stretch, turn)) is Relation.APART for turn in turns)


def _turned(stretch: Stretch, turns: int) -> Stretch:
    low, high = (None if end is None else end + turns * TURN for end in (stretch.low, stretch.high))
    return replace(stretch, low=low, high=high)
