"""Brackets beside a typical range: extremes, usual values, "or more"."""

from __future__ import annotations

from dataclasses import dataclass, replace

from auctorum.characters.bound_words import (
    ABOUT,
    AT_MOST,
    OR,
    RANGE_WORDS,
    RARELY,
    UPWARDS,
)
from auctorum.characters.figures import Figure, Line
from auctorum.characters.frequency import frequency
from auctorum.characters.tokens import Sort
from auctorum.characters.values import Modality

_LONGEST_LEAD = 6
_MEANS = ("mean", "average", "av", "avg", "median", "modal", "mode", "x")


@dataclass(frozen=True, slots=True)
class Bracket:
    first: Figure | None  # None: the bracket only says "or more"
    last: Figure | None
    end: int
    marked: bool  # rarely, a dash, "or": an extreme beyond doubt
    usual: bool = False
    about: bool = False


def read_bracket(line: Line, at: int) -> Bracket | None:
    """The figures in the bracket that opens here; None if it holds anything else."""
    if line.sort(at) is not Sort.OPEN:
        return None
    place, marked, usual, about = at + 1, False, False, False
    for _ in range(_LONGEST_LEAD):
        start = place
        if line.sort(place) is Sort.DASH and not (line.signed and _only_minus(line, place)):
            place, marked = place + 1, True
        elif (end := line.phrase(place, RARELY)) > place:
            place, marked = end, True
        elif line.text(place) in OR and line.phrase(place, UPWARDS) == place:
            place, marked = place + 1, True
        elif line.text(place) in _MEANS:
            place, usual = line.skip(place + 1, Sort.POINT), True
        elif (often := frequency(line, place))[0] in (Modality.USUALLY, Modality.OFTEN):
            place, usual = often[1], True
        elif (end := max(line.skip(place, Sort.ABOUT), line.phrase(place, ABOUT))) > place:
            place, about = end, True
        else:
            place = max(line.skip(place, Sort.LESS), line.phrase(place, AT_MOST))
        if place == start:
            break
    if (end := line.phrase(place, UPWARDS)) > place and line.sort(end) is Sort.CLOSE:
        return Bracket(None, None, end + 1, marked=True)
    return _bracket_figures(line, place, Bracket(None, None, place, marked, usual, about))


def _only_minus(line: Line, at: int) -> bool:
    """Whether a dash after the bracket opens is a minus: the bracket then closes with a dash (`(-50-)-30`)."""
    return line.sort(at + 1) is Sort.NUMBER and line.sort(at + 2) is Sort.DASH


def _bracket_figures(line: Line, at: int, lead: Bracket) -> Bracket | None:
    first = line.figure(at)
    if first is None:
        return None
    place, last, marked = first.end, first, lead.marked
    joined = line.sort(place) is Sort.DASH or line.text(place) in RANGE_WORDS or line.text(place) in OR
    if joined:
        second = line.figure(place + 1)
        place, last = (second.end, second) if second else (place + 1, first)
        marked |= second is None
    place = line.skip(place, Sort.PLUS)
    place = line.phrase(place, UPWARDS)
    if marked and line.sort(place) is Sort.WORD:  # "(rarely to 4 mm long)"
        place += 1
    return (
        replace(lead, first=first, last=last, end=place + 1, marked=marked) if line.sort(place) is Sort.CLOSE else None
    )
