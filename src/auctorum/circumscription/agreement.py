"""What several works say of one character at one stage, brought together."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from auctorum.characters.vocabulary import Character
from auctorum.circumscription.findings import Evidence, RangeAgreement, StateAgreement
from auctorum.circumscription.sweep import core, coverage, envelope, high_of, low_of, majority
from auctorum.circumscription.trend import bound
from auctorum.circumscription.voices import Voice, in_order, independent, stretches, voices, weighing


def agreement(evidence: Sequence[Evidence], character: Character) -> RangeAgreement | StateAgreement:
    """Agreement of ranges in the unit of the character, or of states, weighted; the order of evidence never matters.

    Each work has one voice. Core, coverage and bounds are of typical ranges, the envelope takes extremes in. Works that
    repeat another have no say in core and bounds, and in the rest a say by their weight, none at 0. Aspects are turned
    about their circular mean first (`evidence.on_one_turn`). Ordered states have positions beside their weights. Raises
    ValueError if nothing is said: silence is judged by the caller.
    """
    return agreement_of(voices(evidence, character), character)


def agreement_of(heard: Sequence[Voice], character: Character) -> RangeAgreement | StateAgreement:
    """As `agreement`, of the voices of the works."""
    if not heard:
        raise ValueError(f"nothing is said of {character.name}")
    return _of_ranges(heard) if character.kind.is_numeric else _of_states(heard, character)


def _of_ranges(heard: Sequence[Voice]) -> RangeAgreement:
    own, weighty = independent(heard), weighing(heard)
    steps = coverage(stretches(weighty))
    lows = [(voice.year, low) for voice in own if voice.stretch and (low := low_of(voice.stretch))]
    highs = [(voice.year, high) for voice in own if voice.stretch and (high := high_of(voice.stretch))]
    return RangeAgreement(
        core=core(stretches(own)),
        envelope=envelope(each for voice in weighty if (each := voice.extremes or voice.stretch) is not None),
        coverage=steps,
        majority=majority(steps),
        lower=bound([year for year, _ in lows], [figure for _, figure in lows]),
        upper=bound([year for year, _ in highs], [figure for _, figure in highs]),
    )


def _of_states(heard: Sequence[Voice], character: Character) -> StateAgreement:
    weighty = weighing(heard)
    each = [voice.weight or Fraction(1) for voice in weighty]  # where nothing weighs, all count alike
    whole = sum(each, Fraction(0))
    means: dict[str, Fraction] = {}
    for voice, weight in zip(weighty, each, strict=True):
        for state, share in voice.states:
            means[state] = means.get(state, Fraction(0)) + share * weight / whole
    order = in_order(means, character)
    own = independent(heard)
    placed = [voice for voice in heard if voice.stretch is not None]
    return StateAgreement(
        weights=tuple((state, means[state]) for state in order),
        core=tuple(state for state in order if all(state in voice.allowed for voice in own)),
        envelope=order,
        positions=_of_ranges(placed) if placed else None,
    )
