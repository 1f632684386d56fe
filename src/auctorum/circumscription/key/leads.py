"""What the leads of a couplet say: the main character, and others that part the same taxa."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property

from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.density import mixed, overlap, overlap_of_states
from auctorum.circumscription.findings import Evidence, Finding, RangeAgreement, Span, StateAgreement
from auctorum.circumscription.key.model import Division, Rule
from auctorum.circumscription.key.questions import Play, Question
from auctorum.circumscription.key.told import Spread, mean_shares
from auctorum.circumscription.key.trying import stages_to_ask
from auctorum.circumscription.measures import Measures, measures
from auctorum.circumscription.summary import majority_states, state_words
from auctorum.circumscription.voices import in_order
from auctorum.circumscription.wording import HABITAT, plural, stage_words, wording

MOST_OVERLAP = 0.3  # above it, a further character does not confirm a lead
MOST_SHARED = Fraction(1, 5)  # nor where its printed ranges share more than this part of the narrower
MOST_FURTHER = 2
_IN_NUMBERS = frozenset(  # organs of which a plant bears several, so that they are told in the plural
    {"anther", "bract", "bracteole", "flower", "fruit", "hair", "leaf", "leaflet", "petal", "sepal", "seed", "spine"}
    | {"stamen", "stem", "stipule", "tepal"}
)
_SEXES = {"female": "in females", "male": "in males", "bisexual": "in bisexual plants"}
Pair = tuple[str, str]  # what the lower and the upper side say
Reached = tuple[frozenset[str], frozenset[str]]  # taxa of the lower and of the upper side


@dataclass(frozen=True)
class Telling:
    """What is said of the taxa of a key, as its leads need it; repetitions are left out."""

    findings: Mapping[str, Mapping[tuple[str, str], Finding]]  # taxon -> character and stage -> finding

    @cached_property
    def _printed(self) -> dict[str, Measures]:
        return {}

    def measures(self, character: Character) -> Measures:
        """How the figures of a character are printed all through the key."""
        if character.name not in self._printed:
            every = (one for by in self.findings.values() for (name, _), one in by.items() if name == character.name)
            self._printed[character.name] = measures([item for one in every for item in _own(one)], character)
        return self._printed[character.name]


def _own(finding: Finding) -> Sequence[Evidence]:
    return [item for item in finding.evidence if item.weight] or finding.evidence


def main_pair(play: Play, question: Question, telling: Telling) -> Pair:
    """What the two sides say of the character that parts them: `spur less than 25 mm long`, `spur at least ...`."""
    character = question.character
    sides = []
    for upper in (False, True):
        said = [_rule_words(play, rule, character, upper, telling) for rule in question.rules]
        several = (_staged(words, rule.stage) for words, rule in zip(said, question.rules, strict=True))
        sides.append(f"{_subject(character)}{', '.join(several)}")
    return sides[0], sides[1]


def _rule_words(play: Play, rule: Rule, character: Character, upper: bool, telling: Telling) -> str:
    words = wording(character)
    if isinstance(rule, Division):
        spoken = {
            state
            for held in play.values()
            if (one := held.told.get(character.name, {}).get(rule.stage)) is not None
            for state in one.shares or ()
        }
        states = [state for state in (rule.upper if upper else rule.lower) if state in spoken]
        return words.before + state_words(in_order(states, character), character)
    if character.kind is Kind.COUNT:
        return _count_words(rule.value, upper)
    figure = telling.measures(character).one(rule.value)
    return f"{words.before}{'at least' if upper else 'less than'} {figure}{words.after}"


def _count_words(value: Fraction, upper: bool) -> str:
    if upper:
        return f"{int(value)} or more"
    most = int(value) - 1
    return f"{most} or fewer" if most > 1 else "1 at most" if most else "none"


def _staged(words: str, stage: str) -> str:
    if not stage:
        return words
    return f"{words} {_SEXES.get(stage) or stage_words(stage)}"


def _subject(character: Character) -> str:
    """What the words are about, with a space behind it; nothing where they say it themselves."""
    if character.property in HABITAT:
        return ""
    if character.kind is Kind.RATIO:
        return f"{character.name} " if character.name.endswith("ratio") else ""
    several = character.kind in (Kind.COUNT, Kind.PRESENCE) or character.structure in _IN_NUMBERS
    return f"{plural(character.structure) if several else character.structure} "


def further_pairs(
    play: Play, question: Question, characters: Sequence[Character], reached: Reached, telling: Telling
) -> list[tuple[Character, Pair]]:
    """Up to two more of the characters that part the same two sets of taxa, those first that overlap least.

    `reached` are the taxa named further on by the lower and the upper side: what a lead says holds for all of them, so
    that nothing parts a taxon that is named by both.
    """
    if reached[0] & reached[1]:
        return []
    found: list[tuple[float, int, Character, Pair]] = []
    for place, character in enumerate(characters):
        for stage in stages_to_ask(play, character)[:1]:
            sides = _two_sides(play, reached, character, stage)
            shared = None if sides is None else _shared(*sides)
            if shared is not None and shared < MOST_OVERLAP:
                pair = _values(reached, character, stage, telling)
                if pair is not None:
                    found.append((round(shared, 6), place, character, pair))
    return [(character, pair) for _, _, character, pair in sorted(found, key=lambda one: one[:2])[:MOST_FURTHER]]


Weighted = Sequence[tuple[Spread, float]]  # spread, mass


def _two_sides(play: Play, reached: Reached, character: Character, stage: str) -> tuple[Weighted, Weighted] | None:
    """The taxa of both sides; None where one of them is not told of."""
    sides: tuple[list[tuple[Spread, float]], list[tuple[Spread, float]]] = ([], [])
    for side, taxa in zip(sides, reached, strict=True):
        for id_ in sorted(taxa):
            spread = play[id_].told.get(character.name, {}).get(stage)
            if spread is None or (spread.density is None and spread.shares is None):
                return None
            side.append((spread, play[id_].mass))
    return sides


def _shared(lower: Weighted, upper: Weighted) -> float | None:
    """How much two sides overlap, 0 to 1; None for numbers where their medians are mixed."""
    if not (sum(mass for _, mass in lower) and sum(mass for _, mass in upper)):
        return None
    if lower[0][0].shares is not None:
        return overlap_of_states(mean_shares(lower), mean_shares(upper))
    below, above = ([one.median for one, _ in side] for side in (lower, upper))
    if not (max(below) < min(above) or max(above) < min(below)):
        return None
    densities = [[(one.density, mass) for one, mass in side if one.density is not None] for side in (lower, upper)]
    return overlap(mixed(densities[0]), mixed(densities[1]))


def _values(reached: Reached, character: Character, stage: str, telling: Telling) -> Pair | None:
    """What most say of the taxa of each side; None where that is no contrast."""
    said = [[telling.findings[id_][character.name, stage] for id_ in sorted(taxa)] for taxa in reached]
    if character.kind.is_numeric:
        spans = [_range(side) for side in said]
        if spans[0] is None or spans[1] is None or _meet(spans[0], spans[1]):
            return None
        values = [telling.measures(character).notation(span) for span in spans if span is not None]
    else:
        states = [
            in_order({state for one in side for state in _usual_states(one, character)}, character) for side in said
        ]
        if set(states[0]) & set(states[1]) or not all(states):
            return None
        values = [state_words(side, character) for side in states]
    before, after = wording(character).before, wording(character).after
    first, second = (_subject(character) + _staged(before + value + after, stage) for value in values)
    return None if first == second else (first, second)


def _meet(one: Span, other: Span) -> bool:
    """Whether two ranges share more than a little of the narrower."""
    if one.low is None or one.high is None or other.low is None or other.high is None:
        return True
    shared = min(one.high, other.high) - max(one.low, other.low)
    return shared > MOST_SHARED * min(one.high - one.low, other.high - other.low)


def _range(said: Iterable[Finding]) -> Span | None:
    spans = [span for one in said if isinstance(one.agreement, RangeAgreement) for span in _usual(one.agreement)]
    if not spans:
        return None
    lows, highs = [span.low for span in spans], [span.high for span in spans]
    low = None if None in lows else min(end for end in lows if end is not None)
    high = None if None in highs else max(end for end in highs if end is not None)
    return None if low is None and high is None else Span(low, high)


def _usual(agreed: RangeAgreement) -> tuple[Span, ...]:
    return agreed.majority or (agreed.envelope,)


def _usual_states(finding: Finding, character: Character) -> Iterator[str]:
    usual = majority_states(finding, character)
    if not usual and isinstance(finding.agreement, StateAgreement):
        usual = finding.agreement.core or finding.agreement.envelope
    yield from usual
