"""One voice for each work: what a work says in several places of one character and stage is taken together."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from auctorum.characters.states import position, state_names, state_weights
from auctorum.characters.values import States
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.evidence import on_one_turn
from auctorum.circumscription.findings import Count, Evidence, Span
from auctorum.circumscription.sweep import Stretch, envelope

_YEAR = re.compile(r" \d+$")


@dataclass(frozen=True, slots=True)
class Voice:
    """What one work says: a stretch and its extremes for numbers, weights of states (summing to 1) for states.

    For ordered states the stretch are the places along the spectrum; None where there are none. `repeats` is the work
    whose figures it repeats throughout; empty where it says anything of its own.
    """

    work: str
    year: int
    byline: str
    weight: Fraction
    stretch: Stretch | None = None
    extremes: Span | None = None
    states: tuple[tuple[str, Fraction], ...] = ()
    repeats: str = ""

    @property
    def author(self) -> str:
        """The byline without its year: works of one author share it."""
        return _YEAR.sub("", self.byline)

    @property
    def allowed(self) -> tuple[str, ...]:
        """States that the work allows, in the order of the vocabulary."""
        return tuple(state for state, _ in self.states)


def voices(evidence: Sequence[Evidence], character: Character) -> tuple[Voice, ...]:
    """The works that say something, by year, then byline and id; aspects turned about their mean.

    Several ranges of one work become their hull, several states the mean of their weights.
    """
    return voices_as_they_lie(on_one_turn(evidence) if character.kind is Kind.ANGLE else evidence, character)


def voices_as_they_lie(evidence: Sequence[Evidence], character: Character) -> tuple[Voice, ...]:
    """As `voices`, with aspects left where they have been turned to."""
    by_work: dict[str, list[Evidence]] = {}
    for item in evidence:
        if item.span is not None if character.kind.is_numeric else _has_state(item, character):
            by_work.setdefault(item.work, []).append(item)
    make = _range_voice if character.kind.is_numeric else _state_voice
    found = (make(items, character) for items in by_work.values())
    return tuple(sorted(found, key=lambda voice: (voice.year, voice.byline, voice.work)))


def count(heard: Sequence[Voice], silent: Collection[str]) -> Count:
    """How many works and authors stand behind a finding, and how many of the authors give something of their own."""
    own = {voice.author for voice in heard if not voice.repeats}
    repeated = sum(bool(voice.repeats) for voice in heard)
    return Count(len(heard), len({voice.author for voice in heard}), len(own), repeated, len(silent))


def independent(several: Sequence[Voice]) -> Sequence[Voice]:
    """The voices that say something of their own; all of them where none does."""
    return [voice for voice in several if not voice.repeats] or several


def weighing(several: Sequence[Voice]) -> Sequence[Voice]:
    """The voices that have weight: all but repetitions where kb.yaml gives these none; all where nothing weighs."""
    return [voice for voice in several if voice.weight] or several


def stretches(several: Iterable[Voice]) -> tuple[Stretch, ...]:
    """The stretches of those voices that have one, in their order."""
    return tuple(voice.stretch for voice in several if voice.stretch is not None)


def in_order(states: Iterable[str], character: Character) -> tuple[str, ...]:
    """States in the order of the vocabulary, those that it lacks after them."""
    names = state_names(character)
    places = {name: place for place, name in enumerate(names)}
    return tuple(sorted(set(states), key=lambda state: (places.get(state, len(names)), state)))


def _has_state(item: Evidence, character: Character) -> bool:
    return isinstance(item.value, States) and bool(state_weights(item.value, character))


def _range_voice(items: Sequence[Evidence], _character: Character) -> Voice:
    spans = [item.span for item in items if item.span is not None]
    hull = envelope(spans)
    low_slack = min((item.slack_low for item in items if item.span and item.span.low == hull.low), default=Fraction(0))
    high_slack = min(
        (item.slack_high for item in items if item.span and item.span.high == hull.high), default=Fraction(0)
    )
    first, weight = items[0], max(item.weight for item in items)
    extremes = envelope(item.extremes or item.span or Span(None, None) for item in items)
    stretch = Stretch(hull.low, hull.high, low_slack, high_slack, weight)
    return Voice(first.work, first.year, first.byline, weight, stretch, extremes, repeats=_repeated(items))


def _state_voice(items: Sequence[Evidence], character: Character) -> Voice:
    first, weight = items[0], max(item.weight for item in items)
    said = [item.value for item in items if isinstance(item.value, States)]
    means: dict[str, Fraction] = {}
    for value in said:
        for state, share in state_weights(value, character).items():
            means[state] = means.get(state, Fraction(0)) + share / len(said)
    states = tuple((state, means[state]) for state in in_order(means, character))
    stretch = _places(said, means, character, weight) if character.kind is Kind.ORDERED else None
    return Voice(first.work, first.year, first.byline, weight, stretch, states=states, repeats=_repeated(items))


def _repeated(items: Sequence[Evidence]) -> str:
    """The work whose figures all the items repeat; empty if one of them is the work's own."""
    return items[0].repeats if all(item.repeats for item in items) else ""


def _places(
    said: Iterable[States], means: Mapping[str, Fraction], character: Character, weight: Fraction
) -> Stretch | None:
    """From the lowest to the highest place on the spectrum; None where no state is on it."""
    if not set(means) & set(state_names(character)):
        return None
    names = set(state_names(character))
    ends = [position(value, character) for value in said if names & set(state_weights(value, character))]
    lows, highs = [Fraction(low) for low, _ in ends], [Fraction(high) for _, high in ends]
    return Stretch(min(lows), max(highs), weight=weight)
