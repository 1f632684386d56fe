"""What an agreement comes to in a word, and who stands on which side.

The first rule of `RULES` that fits gives the verdict, so the table is the documentation.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence

from auctorum.characters.vocabulary import Character
from auctorum.circumscription.findings import RangeAgreement, Side, Span, StateAgreement, Verdict
from auctorum.circumscription.summary import span_words, state_words
from auctorum.circumscription.sweep import Stretch, all_same, envelope, high_of, low_of, meeting
from auctorum.circumscription.trend import drifts
from auctorum.circumscription.voices import Voice, stretches

Agreement = RangeAgreement | StateAgreement
Rule = Callable[[Sequence[Voice], Agreement], bool]


def _one_author(heard: Sequence[Voice], _agreed: Agreement) -> bool:
    return len({voice.author for voice in heard}) == 1


def _without_core(_heard: Sequence[Voice], agreed: Agreement) -> bool:
    return not agreed.core


def _all_alike(heard: Sequence[Voice], agreed: Agreement) -> bool:
    """Every bound the same within precision, and stated by all or by none; or the same states allowed."""
    if isinstance(agreed, StateAgreement):
        return len({voice.allowed for voice in heard}) == 1
    ends = [[end(one) for one in stretches(heard)] for end in (low_of, high_of)]
    stated = [[figure for figure in figures if figure is not None] for figures in ends]
    return all(len(some) in (0, len(heard)) and all_same(some) for some in stated)


def _moving(_heard: Sequence[Voice], agreed: Agreement) -> bool:
    ranges = agreed if isinstance(agreed, RangeAgreement) else agreed.positions
    return ranges is not None and (drifts(ranges.lower) or drifts(ranges.upper))


RULES: tuple[tuple[Verdict, Rule, str], ...] = (
    (Verdict.SINGLE, _one_author, "one author, or one team of authors, alone says something"),
    (Verdict.CONFLICTING, _without_core, "no value or state is allowed by all: some are apart, beyond precision"),
    (Verdict.UNANIMOUS, _all_alike, "every bound is the same within stated precision, or the same states are allowed"),
    (Verdict.DRIFTING, _moving, "a bound moves with the years, |tau| >= 0.6 and p <= 0.05, and yet a core is left"),
    (Verdict.CONSISTENT, lambda _heard, _agreed: True, "anything else: nested or overlapping, with a core"),
)


def verdict(heard: Sequence[Voice], agreed: Agreement | None) -> Verdict:
    """The verdict on one character at one stage; silent where nothing is agreed because nothing is said."""
    if agreed is None:
        return Verdict.SILENT
    return next(word for word, fits, _ in RULES if fits(heard, agreed))


def sides(heard: Sequence[Voice], agreed: Agreement | None, character: Character) -> tuple[Side, ...]:
    """The works on each side, with what they say together; one side with the core where nobody is apart.

    Where there is no core, a work that is apart from nobody stands on no side. Ranges that share a value are on
    one side, from low to high; so are works that allow the same states, by date.
    """
    if agreed is None:
        return ()
    if isinstance(agreed, StateAgreement):
        if agreed.core:
            return (Side(state_words(agreed.core, character), tuple(voice.work for voice in heard)),)
        return _state_sides(heard, character)
    if agreed.core is not None:
        return (Side(span_words(agreed.core, character), tuple(voice.work for voice in heard)),)
    return _range_sides(heard, character)


def _range_sides(heard: Sequence[Voice], character: Character) -> tuple[Side, ...]:
    """Fewest groups of which each shares a value: taken from the lowest upper bound on."""
    left = _apart_from_somebody(heard)
    found: list[Side] = []
    while left:
        point = min((one.high for _, one in left if one.high is not None), default=None)
        holds = [point is None or one.low is None or one.low <= point for _, one in left]
        group = [voice for (voice, _), held in zip(left, holds, strict=True) if held]
        left = [pair for pair, held in zip(left, holds, strict=True) if not held]
        hull: Span = envelope(stretches(group))
        found.append(Side(span_words(hull, character), tuple(voice.work for voice in group)))
    return tuple(found)


def _apart_from_somebody(heard: Sequence[Voice]) -> list[tuple[Voice, Stretch]]:
    """Each work whose range is apart from that of another, with the range as it reaches the others."""
    reached = meeting(stretches(heard))
    top = max((one.low for one in reached if one.low is not None), default=None)
    bottom = min((one.high for one in reached if one.high is not None), default=None)
    return [
        (voice, one)
        for voice, one in zip(heard, reached, strict=True)
        if (one.high is not None and top is not None and one.high < top)
        or (one.low is not None and bottom is not None and one.low > bottom)
    ]


def _state_sides(heard: Sequence[Voice], character: Character) -> tuple[Side, ...]:
    groups: dict[tuple[str, ...], list[str]] = {}
    for voice in heard:
        groups.setdefault(voice.allowed, []).append(voice.work)
    facing = [states for states in groups if any(not set(states) & set(other) for other in groups)]
    return tuple(Side(state_words(states, character), tuple(groups[states])) for states in facing or groups)
