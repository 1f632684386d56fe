"""The best question to ask of the taxa at one place of a key."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.cuts import STEPS
from auctorum.circumscription.key.model import Division, Rule, Threshold
from auctorum.circumscription.key.questions import Play, Question, edge_of, send, share_below, worth
from auctorum.circumscription.key.told import mean_shares
from auctorum.circumscription.key.trying import (
    Here,
    by_median,
    cut_between,
    known_states,
    rules_to_try,
    stages_to_ask,
    tells,
    told_here,
)
from auctorum.circumscription.wording import of_habitat

_REFINED = 12  # of all ways to part the taxa, those that are looked at closely
_NEAR = 4  # taxa on each side of a threshold that settle where among many it lies
_CLEAR = 0.65  # a taxon with this part of its plants on one side belongs there, at every stage
_ROUNDINGS = (0.05, 0.02, 0.01)  # tried in turn, parts of the threshold
_OF_THE_PLACE = 2  # what asking for habitat costs beside a character of the plant
_HARDLY_WORSE = 0.02  # a rounder threshold may tell less by this part


def best_question(play: Play, characters: Sequence[Character]) -> Question | None:
    """The question worth most; of several alike that of the first character. None where nothing parts the taxa.

    Every way to part the taxa is judged roughly, the best of them closely.
    """
    found: list[tuple[float, int, Rule, tuple[str, ...]]] = []
    for place, character in enumerate(characters):
        stages = stages_to_ask(play, character)
        for stage in stages:
            told = told_here(play, character, stage)
            for rule in rules_to_try(told, character, stage):
                found.append((-tells(told, rule, character.kind) / _trouble(character), place, rule, stages))
    found = sorted(found, key=lambda one: one[:2])[:_REFINED]
    best: Question | None = None
    for _, place, rule, stages in sorted(found, key=lambda one: one[1]):
        question = _refined(play, characters[place], rule, stages)
        if question.worth > (best.worth + 1e-9 if best is not None else 0.0):
            best = question
    return best


def asked(play: Play, character: Character, rules: tuple[Rule, ...], stages: int) -> Question:
    """The question of these rules, where plants of so many stages may be asked."""
    sent = {id_: send(held, character, rules) for id_, held in play.items()}
    value = worth(play, sent) * len(rules) / stages / _trouble(character)
    return Question(character, rules, sent, value)


def _trouble(character: Character) -> float:
    """Its cost; double for where a plant grows, which is no part of it and not known of one that was brought in."""
    return float(character.cost) * (_OF_THE_PLACE if of_habitat(character) else 1)


def _refined(play: Play, character: Character, rule: Rule, stages: Sequence[str]) -> Question:
    """The question with its best threshold, and with rules for all stages that send the taxa to the same sides.

    A rounder threshold is taken where it is hardly worse.
    """
    if not isinstance(rule, Threshold):
        return _with_stages(play, character, rule, stages)
    told = told_here(play, character, rule.stage)
    values = [rule.value, _settled(told, rule, character.kind)]
    tried = dict.fromkeys(_rounded(value, part, character.kind) for part in _ROUNDINGS for value in values)
    questions = [_with_stages(play, character, Threshold(rule.stage, value), stages) for value in tried]
    most = max(question.worth for question in questions)
    return next(question for question in questions if question.worth >= most - abs(most) * _HARDLY_WORSE)


def _rounded(value: Fraction, part: float, kind: Kind) -> Fraction:
    """The roundest figure that differs by no more than this part of the value."""
    if kind is Kind.COUNT:
        return value
    at = float(value)
    near = (step for step in STEPS if abs(round(at / float(step)) * float(step) - at) <= abs(at) * part)
    return next((round(value / step) * step for step in near), value)


def _settled(told: Here, rule: Threshold, kind: Kind) -> Fraction:
    """The best threshold between the taxa below and above; among many, the nearest settle it."""
    order = by_median(told)
    at = sum(spread.median < float(rule.value) for _, _, spread in order)
    if at in (0, len(order)):
        return rule.value
    return cut_between(order[max(0, at - _NEAR) : at], order[at : at + _NEAR], kind)


def _with_stages(play: Play, character: Character, rule: Rule, stages: Sequence[str]) -> Question:
    told = told_here(play, character, rule.stage)
    edge = edge_of(rule, character.kind)
    sides = {id_: share for id_, _, spread in told if (share := share_below(spread, rule, edge)) is not None}
    others = (stage for stage in stages if stage != rule.stage)
    same = (_same_sides(told_here(play, character, stage), sides, character, stage) for stage in others)
    by_stage = {one.stage: one for one in same if one is not None} | {rule.stage: rule}
    return asked(play, character, tuple(by_stage[stage] for stage in stages if stage in by_stage), len(stages))


def _same_sides(told: Here, sides: Mapping[str, float], character: Character, stage: str) -> Rule | None:
    """The rule at another stage that parts the same taxa; None where there is none."""
    lower = [one for one in told if sides.get(one[0], 0.5) > 0.5]
    upper = [one for one in told if sides.get(one[0], 0.5) < 0.5]
    if not lower or not upper:
        return None
    rule = _rule_between(lower, upper, character, stage)
    for id_, _, spread in told:
        share = None if rule is None else share_below(spread, rule, edge_of(rule, character.kind))
        first = sides.get(id_, 0.5)
        if share is not None and max(first, 1 - first) >= _CLEAR and (share > 0.5) != (first > 0.5):
            return None
    return rule


def _rule_between(lower: Here, upper: Here, character: Character, stage: str) -> Rule | None:
    if character.kind.is_numeric:
        return Threshold(stage, cut_between(by_median(lower)[-_NEAR:], by_median(upper)[:_NEAR], character.kind))
    first, second = (mean_shares((spread, mass) for _, mass, spread in side) for side in (lower, upper))
    names = known_states([*lower, *upper], character)
    if character.kind is Kind.ORDERED:
        return _best_place(first, second, names, stage)
    spoken = [state for state in names if state in first or state in second]
    below = tuple(state for state in spoken if first.get(state, 0.0) >= second.get(state, 0.0))
    above_ = tuple(state for state in spoken if state not in below)
    return Division(stage, below, above_) if below and above_ else None


def _best_place(
    first: dict[str, float], second: dict[str, float], names: tuple[str, ...], stage: str
) -> Division | None:
    """The place on the spectrum that parts two sides best, whichever of them comes first."""
    best, rule = 1.0, None
    for at in range(1, len(names)):
        below = sum(first.get(state, 0.0) for state in names[:at])
        lost = 1 - below + sum(second.get(state, 0.0) for state in names[:at])
        if lost < best - 1e-9:
            best, rule = lost, Division(stage, names[:at], names[at:])
        if 2 - lost < best - 1e-9:
            best, rule = 2 - lost, Division(stage, names[at:], names[:at])
    return rule
