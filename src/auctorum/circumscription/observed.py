"""Measured plants as one more row beside the authors, and the statements that they contradict."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from auctorum.characters.bounds import agree
from auctorum.characters.directions import TURN
from auctorum.characters.show import format_value
from auctorum.characters.states import WEIGHT, state_weights
from auctorum.characters.values import Modality, Range, States
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.findings import Evidence, Finding, Span
from auctorum.circumscription.intervals import clopper_pearson
from auctorum.circumscription.observed_value import observed_range, observed_states
from auctorum.circumscription.plants import LIST_MARK, Observation, Plant, plants_of
from auctorum.circumscription.summary import span_words
from auctorum.circumscription.voices import Voice, in_order, voices_as_they_lie
from auctorum.circumscription.wording import MATURE
from auctorum.corpus.model import Corpus

# A judgement of ours, no standard: the typical range of a description leaves out about a tenth at each end, so that a
# range which even at the best holds fewer than eight plants in ten is not that of these plants.
HOLDS_AT_LEAST = 0.8
HALF = 0.5  # what more than half of the plants show is neither rare nor occasional
_SELDOM = WEIGHT[Modality.OCCASIONALLY]


@dataclass(frozen=True, slots=True)
class Cover:
    """How far the statement of one work covers the plants.

    A plant counts as inside within its slack and that of the bound. For states it is inside where it shows one that
    the work allows, and inside the typical ones where that is said to be more than rare or occasional.
    """

    work: str
    typical: int  # plants within its typical range
    whole: int  # plants within its extremes
    n: int
    low: float  # Clopper–Pearson interval at 95 % of whole/n
    high: float
    beyond_low: int  # plants below and above its whole range, for directions on either side of its arc; 0 for states
    beyond_high: int
    contradicted: bool
    too_rare: tuple[str, ...] = ()  # states it calls rare or occasional, and more than half of the plants show


@dataclass(frozen=True, slots=True)
class Observed:
    """What the plants of one taxon show of one character at one stage."""

    character: str
    stage: str
    n: int
    sites: int  # different sites; 0 where none is stated
    value: Range | States  # as one would write it from the plants
    text: str  # the value in print
    covers: tuple[Cover, ...]  # works by date
    states: tuple[tuple[str, int], ...]  # plants that show each state, in the order of the vocabulary; () for numbers
    named_by: tuple[str, ...]  # who named the plants, sorted
    taxon: str  # id of the taxon that the plants were named as

    @property
    def contradicted(self) -> tuple[Cover, ...]:
        """The works whose statements the plants contradict, by date."""
        return tuple(cover for cover in self.covers if cover.contradicted)


def observed(corpus: Corpus, finding: Finding, taxon: str, plants: Iterable[Plant]) -> Observed | None:
    """The plants named as that taxon beside what works say in the finding; None where none was measured for it.

    The order of `plants` does not matter. Where no work speaks of a character that is split by stage, the mature plants
    are taken.
    """
    character = corpus.vocabulary[finding.character]
    stage = finding.stage if finding.evidence or MATURE not in character.stages else MATURE
    told = [(plant, one) for plant in plants_of(plants, taxon) if (one := plant.at(character.name, stage)) is not None]
    if not told:
        return None
    seen = [one for _, one in told]
    value = observed_range(seen, character) if character.kind.is_numeric else observed_states(seen, character)
    return Observed(
        character.name,
        stage,
        len(seen),
        len({plant.site for plant, _ in told if plant.site is not None}),
        value,
        _printed(value, character),
        tuple(_covers(finding, seen, character)),
        _counted(seen, character),
        tuple(sorted({by for plant, _ in told for by in plant.identified_by.split(LIST_MARK) if by})),
        taxon,
    )


def all_observed(
    corpus: Corpus, findings: Iterable[Finding], taxon: str, plants: Iterable[Plant]
) -> dict[tuple[str, str], Observed]:
    """`observed` for each finding on that taxon, by character and stage of the finding, in their order.

    Findings for which no plant was measured are left out.
    """
    own = plants_of(plants, taxon)
    found = (((one.character, one.stage), observed(corpus, one, taxon, own)) for one in findings) if own else ()
    return {key: seen for key, seen in found if seen is not None}


def _printed(value: Range | States, character: Character) -> str:
    if character.kind is Kind.ANGLE and isinstance(value, Range) and value.low is not None and value.high is not None:
        return span_words(Span(Fraction(value.low), Fraction(value.high)), character)
    return format_value(value, character)


def _counted(seen: Sequence[Observation], character: Character) -> tuple[tuple[str, int], ...]:
    shown = [state for one in seen for state, _ in one.states]
    return tuple((state, shown.count(state)) for state in in_order(shown, character))


def _covers(finding: Finding, seen: Sequence[Observation], character: Character) -> Iterable[Cover]:
    for voice in voices_as_they_lie(finding.evidence, character):
        if character.kind.is_numeric:
            yield _range_cover(voice, seen, character.kind)
        else:
            said = [item for item in finding.evidence if item.work == voice.work]
            yield _state_cover(voice, said, seen, character)


def _range_cover(voice: Voice, seen: Sequence[Observation], kind: Kind) -> Cover:
    """What one work covers; a single measurement is no range, and contradicted only where all lie on one side of it."""
    stretch, n = voice.stretch, len(seen)
    typical = Span(None, None) if stretch is None else Span(stretch.low, stretch.high)
    slacks = (Fraction(0), Fraction(0)) if stretch is None else (stretch.low_slack, stretch.high_slack)
    side = _side_of_arc if kind is Kind.ANGLE else _side
    reach = voice.extremes or typical
    single = kind in (Kind.MEASURE, Kind.RATIO) and reach.low == reach.high is not None
    sides = [side(one, reach, slacks) for one in seen]
    inside = sum(side(one, typical, slacks) == 0 for one in seen)
    low, high = clopper_pearson(sides.count(0), n)
    below, above = sides.count(-1), sides.count(1)
    against = high < HOLDS_AT_LEAST and (not single or max(below, above) == n)
    return Cover(voice.work, inside, sides.count(0), n, low, high, below, above, against)


def _side(one: Observation, span: Span, slacks: tuple[Fraction, Fraction]) -> int:
    """0 for a plant inside the range, within its slack and that of the bound; -1 below it, 1 above it."""
    value = one.value if one.value is not None else Fraction(0)
    for bound, slack, side in ((span.low, slacks[0], -1), (span.high, slacks[1], 1)):
        if bound is not None and (value - bound) * side > 0 and not agree(value, one.slack, bound, slack):
            return side
    return 0


def _side_of_arc(one: Observation, span: Span, slacks: tuple[Fraction, Fraction]) -> int:
    """As `_side`, on the compass: a direction outside the arc lies on the side of the nearer end."""
    if span.low is None or span.high is None or one.value is None:
        return 0
    beyond = (one.value - span.low) % TURN - (span.high - span.low)  # past the upper end, clockwise
    short = TURN - (one.value - span.low) % TURN  # short of the lower end
    if beyond <= 0 or beyond < one.slack + slacks[1] or short < one.slack + slacks[0]:
        return 0
    return -1 if short < beyond else 1


def _state_cover(voice: Voice, said: Sequence[Evidence], seen: Sequence[Observation], character: Character) -> Cover:
    seldom = {state for state, modality in _loudest(said, character).items() if WEIGHT[modality] <= _SELDOM}
    allowed = set(voice.allowed)
    whole = _showing(seen, allowed)
    low, high = clopper_pearson(whole, len(seen))
    too_rare = [state for state in sorted(seldom & allowed) if _is_common(_showing(seen, {state}), len(seen))]
    return Cover(
        voice.work,
        _showing(seen, allowed - seldom or allowed),
        whole,
        len(seen),
        low,
        high,
        0,
        0,
        high < HOLDS_AT_LEAST or bool(too_rare),
        in_order(too_rare, character),
    )


def _showing(seen: Sequence[Observation], states: Collection[str]) -> int:
    """Plants that show any of the states."""
    return sum(any(state in states for state, _ in one.states) for one in seen)


def _is_common(k: int, n: int) -> bool:
    return clopper_pearson(k, n)[0] > HALF


def _loudest(said: Sequence[Evidence], character: Character) -> Mapping[str, Modality]:
    """By state the strongest word that the work has for it, of all its statements."""
    found: dict[str, Modality] = {}
    for item in said:
        for share in item.value.shares if isinstance(item.value, States) else ():
            for state in state_weights(States((share,)), character) if WEIGHT[share.modality] else ():
                found[state] = max(found.get(state, share.modality), share.modality, key=WEIGHT.__getitem__)
    return found
