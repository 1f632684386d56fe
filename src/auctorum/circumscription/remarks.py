"""A finding in plain sentences, with authors and figures in the unit of the character."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction

from auctorum.characters.show import format_span
from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.findings import Bound, RangeAgreement, Span, StateAgreement
from auctorum.circumscription.measures import no_finer
from auctorum.circumscription.summary import span_words, state_words
from auctorum.circumscription.sweep import Figure, Stretch, high_of, low_of, meeting, same
from auctorum.circumscription.trend import FEWEST_FOR_A_TREND, drifts
from auctorum.circumscription.voices import Voice, independent, stretches

Said = Sequence[tuple[Voice, Figure]]
LOWER, UPPER, ONLY = "lower bound", "upper bound", "figure"
_WAY = {True: "rose", False: "fell"}
_END: Mapping[str, Callable[[Stretch], Figure | None]] = {LOWER: low_of, UPPER: high_of, ONLY: low_of}


def remarks(
    heard: Sequence[Voice], agreed: RangeAgreement | StateAgreement | None, character: Character
) -> tuple[str, ...]:
    """Sentences, the weightiest first, on what authors say of their own; who repeats whom, where that is all.

    None where one work alone says anything.
    """
    own = independent(heard)
    sort = "independent " if len(own) < len(heard) else ""
    if agreed is None or len(heard) < 2:
        return ()
    if len({voice.author for voice in own}) < 2:
        return _repetitions(heard)
    if isinstance(agreed, StateAgreement):
        found = [*_state_conflict(own, agreed, character), *_counted(own, agreed, character, sort)]
        found += _moved_states(own, agreed, character)
    else:
        found = _range_conflict(own, character) if agreed.core is None else []
        found += [] if character.kind is Kind.ANGLE else _bounds(own, agreed, character, f"{sort}works")
    return tuple(found)


def _repetitions(heard: Sequence[Voice]) -> tuple[str, ...]:
    """Who repeats whom, in a sentence."""
    bylines = {voice.work: voice.byline for voice in heard}
    told = [f"{voice.byline} repeats {bylines[voice.repeats]}" for voice in heard if voice.repeats in bylines]
    return (f"{'; '.join(told)}: no new evidence.",) if told else ()


# --- ranges


def _range_conflict(heard: Sequence[Voice], character: Character) -> list[str]:
    """The two that are farthest apart, by how much, and since when some two have been."""
    reached = meeting(stretches(heard))
    pairs = list(zip(heard, reached, strict=True))
    low = min(((voice, one.high) for voice, one in pairs if one.high is not None), key=lambda pair: pair[1])[0]
    high = max(((voice, one.low) for voice, one in pairs if one.low is not None), key=lambda pair: pair[1])[0]
    width = _figure(_gap(low, high, character), character)
    first, second = (_with_range(voice, character) for voice in sorted((low, high), key=heard.index))
    meet = ", though the extremes they give meet" if _extremes_meet(low, high) else ""
    return [f"{first} and {second} are {width} apart{meet}; such a gap has stood since {_apart_since(pairs)}."]


def _gap(low: Voice, high: Voice, character: Character) -> Fraction:
    """How far the ranges of two are apart, by the figures that are printed of them."""
    below, above = (end(voice.stretch) if voice.stretch else None for end, voice in ((high_of, low), (low_of, high)))
    return Fraction(0) if below is None or above is None else _printed(above, character) - _printed(below, character)


def _with_range(voice: Voice, character: Character) -> str:
    said = None
    if voice.stretch:
        ends = (low_of(voice.stretch), high_of(voice.stretch))
        low, high = (None if end is None else _printed(end, character) for end in ends)
        said = Span(low, high)
    return f"{voice.byline} ({span_words(said, character)})"


def _printed(figure: Figure, character: Character) -> Fraction:
    return figure.value if character.kind is Kind.ANGLE else no_finer(*figure)


def _extremes_meet(low: Voice, high: Voice) -> bool:
    most = low.extremes.high if low.extremes else None
    least = high.extremes.low if high.extremes else None
    return most is not None and least is not None and most >= least


def _apart_since(pairs: Sequence[tuple[Voice, Stretch]]) -> int:
    """Year of the first work, by date, that leaves no value common to all so far."""
    low: Fraction | None = None
    high: Fraction | None = None
    for voice, one in pairs:
        low = max((end for end in (low, one.low) if end is not None), default=None)
        high = min((end for end in (high, one.high) if end is not None), default=None)
        if low is not None and high is not None and low > high:
            return voice.year
    raise ValueError("all share a value")


def _bounds(heard: Sequence[Voice], agreed: RangeAgreement, character: Character, noun: str) -> list[str]:
    """What each bound does over the years; a single figure once where all state single values."""
    points = all(one.low == one.high for one in stretches(heard))
    bounds = {ONLY: agreed.lower} if points else {LOWER: agreed.lower, UPPER: agreed.upper}
    found = []
    for name, bound in bounds.items():
        end = _END[name]
        said = [(voice, figure) for voice in heard if voice.stretch and (figure := end(voice.stretch))]
        if bound is not None and len({voice.author for voice, _ in said}) > 1:
            found.append(_bound(name, said, _works(len(said), len(heard), noun), bound, character))
    if len(found) == 2 and all(map(_is_too_few, found)) and found[0].replace(LOWER, UPPER) == found[1]:
        return [found[0].replace(LOWER, "bounds")]
    return found


def _is_too_few(told: str) -> bool:
    return told.startswith("Too few works")


def _bound(name: str, said: Said, works: str, bound: Bound, character: Character) -> str:
    if bound.stable:
        return f"The {name} never moved: {_held(said, works, character)}, {_years(said[0][0], said[-1][0])}."
    if drifts(bound) and bound.tau is not None:
        ends = f"from {_stated(said[0], character)} to {_stated(said[-1], character)}"
        return f"The {name} {_way(said, bound.tau)} {ends}; {_chance(bound)}."
    if len(said) < FEWEST_FOR_A_TREND:
        return f"Too few works ({len(said)}) state the {name} to judge a trend."
    low, high = (choose(said, key=lambda pair: pair[1].value) for choose in (min, max))
    varied = f"varies from {_stated(low, character)} to {_stated(high, character)}"
    return f"The {name} {varied} without a clear trend; {_chance(bound)}."


def _held(said: Said, works: str, character: Character) -> str:
    """`22 mm in all 9 works`; where the digits differ, what they are and that this is within what they state."""
    values = {figure.value for _, figure in said}
    printed = {_figure(no_finer(*figure), character) for _, figure in said}
    figure = _figure(no_finer(*_finest(said)), character)
    if len(values) == 1 and printed == {figure}:
        return f"{figure} {works}"
    if printed == {figure}:
        return f"{figure} {works}, within stated precision"
    low, high = (no_finer(*choose(figure for _, figure in said)) for choose in (min, max))
    return f"{figure} {works}, within stated precision ({format_span(low, high, character.unit)})"


def _way(said: Said, tau: float) -> str:
    """`rose` or `fell`; `on the whole` where the last figure does not lie that way from the first."""
    first, last = said[0][1], said[-1][1]
    along = not same(first, last) and (last.value > first.value) == (tau > 0)
    return _WAY[tau > 0] + ("" if along else " on the whole,")


def _finest(said: Said) -> Figure:
    """Of figures that are the same, the one that is stated most finely; of these the one stated most often."""
    finest = min(figure.slack for _, figure in said)
    counted = Counter(figure.value for _, figure in said if figure.slack == finest)
    return Figure(min(counted, key=lambda value: (-counted[value], value)), finest)


def _figure(value: Fraction, character: Character) -> str:
    return format_span(value, value, character.unit)


def _stated(pair: tuple[Voice, Figure], character: Character) -> str:
    voice, figure = pair
    return f"{_figure(no_finer(figure.value, figure.slack), character)} ({voice.byline})"


def _works(count: int, works: int, noun: str) -> str:
    """`in all 9 works`, of so many works as there are."""
    if count < works:
        return f"in the {count} {noun} that state it"
    return f"in both {noun}" if count == 2 else f"in all {count} {noun}"


def _years(first: Voice, last: Voice) -> str:
    return f"{first.year}" if first.year == last.year else f"{first.year} to {last.year}"


def _chance(bound: Bound) -> str:
    if bound.tau is None or bound.p is None:
        return "all of one year"
    return f"tau {bound.tau:.2f}, p {_p(bound.p)}".replace("-", "−")


def _p(p: float) -> str:
    """Two digits: `0.10`, `0.033`."""
    return "< 0.0001" if p < 0.0001 else f"{p:#.2g}"


# --- states


def _state_conflict(heard: Sequence[Voice], agreed: StateAgreement, character: Character) -> list[str]:
    if agreed.core:
        return []
    first_with: dict[tuple[str, ...], Voice] = {}
    for voice in heard:
        first_with.setdefault(voice.allowed, voice)
        for states, earlier in first_with.items():
            if not set(states) & set(voice.allowed):
                one, other = (f"{each.byline} ({state_words(each.allowed, character)})" for each in (earlier, voice))
                return [f"{one} and {other} have no state in common; authors have differed so since {voice.year}."]
    return ["No state is allowed by all, though every two share one."]


def _counted(heard: Sequence[Voice], agreed: StateAgreement, character: Character, sort: str) -> list[str]:
    """How many allow each state, most allowed first; who, where it is one of several."""
    works = len(heard)
    noun = sort + ("authors" if len({voice.author for voice in heard}) == works else "works")
    if len({voice.allowed for voice in heard}) == 1:
        return [f"{_all(works, noun)} say {state_words(agreed.core, character)}."]
    allowing = {state: [voice for voice in heard if state in voice.allowed] for state in agreed.envelope}
    ordered = sorted(allowing, key=lambda state: -len(allowing[state]))
    told = []
    for state in ordered:
        some = allowing[state]
        who = f" ({some[0].byline})" if len(some) == 1 else ""
        told.append(f"{len(some)} {state}{who}")
    most = len(allowing[ordered[0]])
    if most == 1:
        return []  # every work says something else: the conflict has been told, and the sides tell the rest
    head = f"{_all(works, noun)} allow" if most == works else f"{most} of {works} {noun} allow"
    rest = f"; {', '.join(told[1:])}" if told[1:] else ""
    return [f"{head} {ordered[0]}{rest}."]


def _all(works: int, noun: str) -> str:
    return f"Both {noun}" if works == 2 else f"All {works} {noun}"


def _moved_states(heard: Sequence[Voice], agreed: StateAgreement, character: Character) -> list[str]:
    """How the ends of an ordered spectrum moved with the years."""
    if agreed.positions is None:
        return []
    names = state_names(character)
    placed = [(voice, voice.stretch) for voice in heard if voice.stretch]
    found = []
    for name, end, bound in (("first", low_of, agreed.positions.lower), ("last", high_of, agreed.positions.upper)):
        if bound is not None and drifts(bound):
            (old, at), (new, to) = ((voice, end(stretch)) for voice, stretch in (placed[0], placed[-1]))
            if at and to:
                way = f"from {names[int(at.value)]} ({old.byline}) to {names[int(to.value)]} ({new.byline})"
                found.append(f"The {name} state along the spectrum moved {way}; {_chance(bound)}.")
    return found
