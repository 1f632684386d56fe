"""What happens to taxa that are asked one character: a rule for each stage, and how it sends the plants of each."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from math import inf, log2

from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.key.model import Rule, Threshold
from auctorum.circumscription.key.told import NOTHING, Spread, Stages, Told, cut_off, only_states

LEAST_SHARE = 0.05  # of its plants at a couplet: with fewer on a side, and no core there, a taxon is not led that way
FAR_LESS = 0.2  # an end leaves out a taxon less likely than the likeliest by this factor, but for its core
DOUBT = 1 / 3  # what the doubt in the authors weighs beside one of them
MISJUDGED = 0.05  # states that are taken for their opposite
HALF_A_COUNT = 0.5  # the count of 4 takes up 3½ to 4½ of a density


@dataclass(frozen=True, slots=True)
class Held:
    """A taxon at one place of the key: the part of its plants that come here, whether one inside its core at every
    character can, and how those that come are spread."""

    mass: float
    in_core: bool
    told: Told


@dataclass(frozen=True, slots=True)
class Sent:
    """How one taxon fares: the part of its plants here that take the lower side, that part as far as its authors are
    to be trusted, and for (lower, upper) whether it is led there, and whether a plant inside its core at every
    character can come there."""

    lower: float
    trusted: float
    led: tuple[bool, bool]
    in_core: tuple[bool, bool]


@dataclass(frozen=True, slots=True)
class Question:
    """One character with its rules, what becomes of each taxon, and what it is worth: bits for each plant, by cost."""

    character: Character
    rules: tuple[Rule, ...]
    sent: Mapping[str, Sent]
    worth: float


Play = Mapping[str, Held]  # taxa in play, by id, in the order of the ids


def edge_of(rule: Rule, kind: Kind) -> float:
    """Where a threshold cuts a density; 0 for states."""
    if not isinstance(rule, Threshold):
        return 0.0
    return float(rule.value) - (HALF_A_COUNT if kind is Kind.COUNT else 0.0)


def share_below(spread: Spread, rule: Rule, edge: float) -> float | None:
    """The part of the plants that take the lower side; None where there are none to go by."""
    if isinstance(rule, Threshold):
        return None if spread.density is None else spread.density.below(edge)
    if spread.shares is None:
        return None
    lower = sum([spread.shares.get(state, 0.0) for state in rule.lower])
    upper = sum([spread.shares.get(state, 0.0) for state in rule.upper])
    return lower / (lower + upper) if lower + upper else None


def _core_sides(spread: Spread, rule: Rule) -> tuple[bool, bool] | None:
    """Whether part of the core lies on the lower and the upper side; None where there is no core."""
    if isinstance(rule, Threshold):
        if spread.core is None or spread.core == NOTHING:
            return None
        at = float(rule.value)
        return spread.core[0] < at, spread.core[1] >= at
    if not spread.core_states:
        return None
    return bool(spread.core_states & set(rule.lower)), bool(spread.core_states & set(rule.upper))


def send(held: Held, character: Character, rules: Sequence[Rule]) -> Sent:
    """What the rules make of one taxon; one of which nothing is said goes both ways, half of its plants each."""
    stages = held.told.get(character.name, {})
    asked = [(stages[rule.stage], rule) for rule in rules if rule.stage in stages]
    below = (share_below(one, rule, edge_of(rule, character.kind)) for one, rule in asked)
    shares = [share for share in below if share is not None]
    if len(shares) < len(asked) or not shares:
        return Sent(0.5, 0.5, (True, True), (held.in_core, held.in_core))
    lower = sum(shares) / len(shares)
    sides = [found for one, rule in asked if (found := _core_sides(one, rule)) is not None]
    cores = (any(one for one, _ in sides), any(other for _, other in sides)) if sides else (True, True)
    in_core = (held.in_core and cores[0], held.in_core and cores[1])
    told = bool(sides)
    led = (lower >= LEAST_SHARE or (told and in_core[0]), 1 - lower >= LEAST_SHARE or (told and in_core[1]))
    return Sent(lower, trusted(lower, asked[0][0]), led, in_core)


def trusted(share: float, spread: Spread) -> float:
    """A share as one would bet on it: as if beside the authors somebody had said that half of the plants do so, and
    as if some states were misjudged, on which people differ more than on figures."""
    believed = (share * spread.authors + 0.5 * DOUBT) / (spread.authors + DOUBT)
    return believed if spread.shares is None else believed * (1 - 2 * MISJUDGED) + MISJUDGED


def follow(held: Held, sent: Sent, question_of: Character, rules: Sequence[Rule], upper: bool) -> Held:
    """The taxon on one side of a couplet, its plants cut to those that come that way."""
    mass = held.mass * ((1 - sent.lower) if upper else sent.lower)
    stages = dict(held.told.get(question_of.name, {}))
    for rule in rules:
        if rule.stage in stages:
            stages[rule.stage] = _side(stages[rule.stage], rule, question_of.kind, upper)
    told: dict[str, Stages] = {**held.told, question_of.name: stages} if stages else dict(held.told)
    return Held(mass, sent.in_core[upper], told)


def _side(spread: Spread, rule: Rule, kind: Kind, upper: bool) -> Spread:
    if not isinstance(rule, Threshold):
        return only_states(spread, frozenset(rule.upper if upper else rule.lower))
    at, edge = float(rule.value), edge_of(rule, kind)
    return cut_off(spread, edge, None, at, inf) if upper else cut_off(spread, None, edge, -inf, at)


def entropy(masses: Collection[float]) -> float:
    """Bits that it takes to tell which of these a plant is, times the sum of the masses."""
    whole = sum(masses)
    return sum(mass * log2(whole / mass) for mass in masses if mass > 0)


def named(play: Play) -> tuple[str, ...]:
    """The taxa that an end here must name, likeliest first, then by id.

    Those of which a plant inside the core can come here, the likeliest, and of the rest those with enough of their
    plants here that are not far less likely than it.
    """
    most = max(one.mass for one in play.values())
    least = max(LEAST_SHARE, FAR_LESS * most)
    kept = [id_ for id_, one in play.items() if one.in_core or one.mass >= least or one.mass == most]
    return tuple(sorted(kept, key=lambda id_: (-play[id_].mass, id_)))


def worth(play: Play, sent: Mapping[str, Sent]) -> float:
    """What the answer tells of a plant here, in bits: two thirds of what it tells by the likelihoods, and one third of
    what the taxa that stay possible on each side are fewer."""
    before = [one.mass for one in play.values()]
    sides: list[Play] = [
        {
            id_: Held(one.mass * (1 - sent[id_].lower if upper else sent[id_].lower), sent[id_].in_core[upper], {})
            for id_, one in play.items()
            if sent[id_].led[upper]
        }
        for upper in (False, True)
    ]
    if not all(sides) or not sum(before):
        return 0.0
    lower = [one.mass * sent[id_].lower for id_, one in play.items()]
    upper_ = [one.mass * (1 - sent[id_].lower) for id_, one in play.items()]
    told = entropy(before) - entropy([one.mass * sent[id_].trusted for id_, one in play.items()])
    told -= entropy([one.mass * (1 - sent[id_].trusted) for id_, one in play.items()])
    fewer = sum(before) * log2(len(named(play)))
    fewer -= sum(sum(masses) * log2(len(named(side))) for masses, side in zip((lower, upper_), sides, strict=True))
    return (2 * told + fewer) / 3 / sum(before)
