"""One trait of a labelled plant against every work that states it of the taxon.

The rule, and why. A work speaks against the name where the plant lies outside its whole range, extremes, printed
precision and the error of the measurement included; of states, where none that was observed is allowed, however
rarely. Works count once, and those that only repeat another not at all, so that a copied figure gets no second vote.

- strong: outside what every work gives, two at least. Not one author has seen such a plant under the name.
- weak: outside what more than half of them give. Some author has seen it, or it is one word against a plant: a single
  work counts as weak, however far from it a state lies, since one range misses plants; a figure that lies farther
  outside than that range is wide is strong even so. Weak, too, where the next state on a spectrum is allowed: two
  people read neighbouring colours or hairs differently.

Not tested are sizes and numbers of a young plant that the vocabulary does not part by stage (works describe grown
plants; common practice, no source), where the plant grew (a sold plant grows where it was put), and ratios of two
measures that are tested themselves.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from fractions import Fraction

from auctorum.characters.bounds import agree
from auctorum.characters.directions import TURN
from auctorum.characters.show import format_value
from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.findings import Evidence, Span
from auctorum.circumscription.plants import Observation, Plant
from auctorum.circumscription.voices import Voice, independent
from auctorum.circumscription.wording import of_habitat
from auctorum.corpus.readings import UNSTATED
from auctorum.determination.labels.model import Against, Strength, TraitTest
from auctorum.determination.printed import figure, printed
from auctorum.determination.view import Heard, Statements

YOUNG = frozenset({"young", "juvenile", "seedling", "immature"})
_ENOUGH = 2  # works from which all of them together are strong


@dataclass(frozen=True, slots=True)
class Gap:
    """How far a plant lies outside what one work gives; `width` is that of its range, None where an end is open."""

    size: Fraction
    below: bool
    width: Fraction | None = None


class Stated:
    """What is stated of each taxon, and who has a vote on it; worked out once for many plants."""

    def __init__(self, statements: Statements) -> None:
        self.vocabulary = statements.corpus.vocabulary
        self._statements = statements
        self._heard: dict[str, Heard] = {}

    def heard(self, taxon: str) -> Heard:
        """By character and stage the voices of the works, those that only repeat another left out."""
        if taxon not in self._heard:
            every = self._statements.heard(taxon, None)
            self._heard[taxon] = {key: independent(several) for key, several in every.items()}
        return self._heard[taxon]

    def evidence(self, taxon: str, character: str, stage: str, work: str) -> Sequence[Evidence]:
        """The readings of one work."""
        return [item for item in self._statements.of(taxon)[character, stage] if item.work == work]


def traits_of(stated: Stated, taxon: str, plant: Plant, stage: str) -> tuple[TraitTest, ...]:
    """Every observed trait in the order of the observations; `stage` is the growth stage noted for the plant."""
    return tuple(_tested(stated, taxon, one, why) for one, why in with_reasons(stated, plant, stage))


def with_reasons(stated: Stated, plant: Plant, stage: str) -> tuple[tuple[Observation, str], ...]:
    """Every observation with why it proves nothing of a name; "" where it may."""
    seen = {one.character for one in plant.observations}
    vocabulary = stated.vocabulary
    return tuple((one, _unfit(one, vocabulary[one.character], stage, seen)) for one in plant.observations)


def _unfit(one: Observation, character: Character, stage: str, seen: set[str]) -> str:
    if of_habitat(character):
        return "a plant for sale grows where it was put"
    if stage.casefold() in YOUNG and character.kind.is_numeric and not character.stages:
        return "the plant is young, and works describe grown ones"
    if character.of and seen.issuperset(character.of):
        return f"it follows from {character.of[0]} and {character.of[1]}"
    if one.value is None and not set(_seen(one)) & set(state_names(character)):
        return "it is no state of the vocabulary"
    return ""


def _tested(stated: Stated, taxon: str, one: Observation, why: str) -> TraitTest:
    character = stated.vocabulary[one.character]
    said = printed(one, character)
    key = (one.character, one.stage)
    heard = stated.heard(taxon).get(key, ())
    speaking = [voice for voice in heard if not _is_no_range(voice, character)]
    if not why and not speaking:
        why = _silence(stated, taxon, one)
    if why:
        return TraitTest(one.character, one.stage, said, 0, (), Strength.NONE, why=why)
    gaps = {voice.work: found for voice in speaking if (found := gap_of(one, voice, character)) is not None}
    against = sorted(
        (_against(character, stated.evidence(taxon, *key, work), gap) for work, gap in gaps.items()),
        key=lambda each: each.gap,
    )
    strength = _strength(list(gaps.values()), len(speaking), character)
    told = _gap_in_print(min(gap.size for gap in gaps.values()), one, character) if gaps else ""
    return TraitTest(one.character, one.stage, said, len(speaking), tuple(against), strength, told)


def _silence(stated: Stated, taxon: str, one: Observation) -> str:
    stages = {stage for name, stage in stated.heard(taxon) if name == one.character}
    if not stages:
        return "no work states it of this taxon"
    if (one.character, one.stage) in stated.heard(taxon):
        return "works give single figures of it, and no range"
    if one.stage in ("", UNSTATED):
        return "the growth stage of the plant is not known, and it changes with age"
    return f"no work states it of a {one.stage} plant"


def _is_no_range(voice: Voice, character: Character) -> bool:
    """One figure, measured on who knows how many plants, shuts no other out; a count does."""
    reach = _reach(voice)
    return character.kind in (Kind.MEASURE, Kind.RATIO) and reach.low is not None and reach.low == reach.high


def _reach(voice: Voice) -> Span:
    if voice.extremes is not None:
        return voice.extremes
    return Span(None, None) if voice.stretch is None else Span(voice.stretch.low, voice.stretch.high)


def gap_of(one: Observation, voice: Voice, character: Character) -> Gap | None:
    """How far the plant lies outside what the work gives, errors and precision considered; None inside it."""
    if one.value is None:
        return _gap_of_states(one, voice, character)
    measured: Callable[[Fraction, Fraction, Voice], Gap | None] = _on_line
    if character.kind is Kind.ANGLE:
        measured = _on_compass
    return measured(one.value, one.error, voice)


def _on_line(value: Fraction, error: Fraction, voice: Voice) -> Gap | None:
    reach, (low_slack, high_slack) = _reach(voice), _slacks(voice)
    width = None if reach.low is None or reach.high is None else reach.high - reach.low
    if reach.low is not None and value < reach.low and not agree(value, error, reach.low, low_slack):
        return Gap(reach.low - value, True, width)
    if reach.high is not None and value > reach.high and not agree(value, error, reach.high, high_slack):
        return Gap(value - reach.high, False, width)
    return None


def _on_compass(value: Fraction, error: Fraction, voice: Voice) -> Gap | None:
    reach, (low_slack, high_slack) = _reach(voice), _slacks(voice)
    if reach.low is None or reach.high is None:
        return None
    width = reach.high - reach.low
    beyond = (value - reach.low) % TURN - width  # past the upper end, clockwise
    short = TURN - (value - reach.low) % TURN  # short of the lower end
    if beyond <= 0 or beyond < error + high_slack or short < error + low_slack:
        return None
    return Gap(min(beyond, short), short < beyond, width)


def _slacks(voice: Voice) -> tuple[Fraction, Fraction]:
    stretch = voice.stretch
    return (Fraction(0), Fraction(0)) if stretch is None else (stretch.low_slack, stretch.high_slack)


def _gap_of_states(one: Observation, voice: Voice, character: Character) -> Gap | None:
    seen, allowed = _seen(one), voice.allowed
    if set(seen) & set(allowed):
        return None
    if character.kind is not Kind.ORDERED:
        return Gap(Fraction(0), False)
    names = state_names(character)
    steps = [
        (names.index(there) - names.index(here)) for here in seen for there in allowed if {here, there} <= {*names}
    ]
    nearest = min(steps, key=abs, default=0)
    return Gap(Fraction(abs(nearest)), nearest > 0)


def _seen(one: Observation) -> tuple[str, ...]:
    return tuple(state for state, weight in one.states if weight)


def _strength(gaps: Sequence[Gap], works: int, character: Character) -> Strength:
    """By how many of the works speak against the name: see the head of this module."""
    if 2 * len(gaps) <= works:
        return Strength.NONE
    if len(gaps) < works:
        return Strength.WEAK
    if character.kind is Kind.ORDERED and any(gap.size == 1 for gap in gaps):
        return Strength.WEAK
    return Strength.STRONG if works >= _ENOUGH or _is_far(gaps[0], character) else Strength.WEAK


def _is_far(gap: Gap, character: Character) -> bool:
    """Whether a figure lies farther outside than the range is wide; a range of counts holds both its ends."""
    if gap.width is None:
        return False
    return gap.size > gap.width + (1 if character.kind is Kind.COUNT else 0)


def _against(character: Character, items: Sequence[Evidence], gap: Gap) -> Against:
    """The statement of the work that comes nearest to the plant."""
    nearest = min if gap.below else max
    item = nearest(items, key=lambda one: _end(one, gap.below)) if character.kind.is_numeric else items[0]
    said = format_value(item.value, character)
    return Against(item.statement, item.work, item.byline, item.page, item.verbatim, said, gap.size, gap.below)


def _end(item: Evidence, below: bool) -> Fraction:
    reach = item.extremes or item.span or Span(None, None)
    end = reach.low if below else reach.high
    return Fraction(0) if end is None else end


def _gap_in_print(size: Fraction, one: Observation, character: Character) -> str:
    if character.kind is Kind.ORDERED:
        return f"{size} step{'' if size == 1 else 's'} of the spectrum"
    return figure(size, one.slack, character) if character.kind.is_numeric else ""
