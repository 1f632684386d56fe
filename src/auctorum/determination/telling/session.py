"""Asking after one plant, answer by answer: frozen states, so that any answer can be undone."""

from __future__ import annotations

from dataclasses import dataclass, replace

from auctorum.characters.vocabulary import Vocabulary
from auctorum.circumscription.plants import Observation, Plant
from auctorum.determination.telling.reckoned import to_ask, with_ratios


@dataclass(frozen=True, slots=True)
class Answer:
    """What was said of one character; `observation` is None for “don't know”."""

    character: str
    observation: Observation | None


@dataclass(frozen=True, slots=True)
class Session:
    """What was observed before, and the answers since, in their order."""

    plant: Plant
    answers: tuple[Answer, ...] = ()


def answered(session: Session, observation: Observation) -> Session:
    """With one more answer; it replaces what was said before of that character at that stage."""
    return replace(session, answers=(*session.answers, Answer(observation.character, observation)))


def not_known(session: Session, character: str) -> Session:
    """With a character that cannot be told; it is not asked for again."""
    return replace(session, answers=(*session.answers, Answer(character, None)))


def undone(session: Session) -> Session:
    """Without the last answer; a session without answers stays as it is."""
    return replace(session, answers=session.answers[:-1])


def plant_of(session: Session, vocabulary: Vocabulary) -> Plant:
    """The plant with all that was observed, of each character and stage the last, and the ratios that follow."""
    found = {(one.character, one.stage): one for one in session.plant.observations}
    for answer in session.answers:
        if (one := answer.observation) is not None:
            found[one.character, one.stage] = one
    return replace(session.plant, observations=with_ratios(vocabulary, tuple(found.values())))


def not_to_ask(session: Session, vocabulary: Vocabulary) -> frozenset[str]:
    """Characters that were answered, those that cannot be told, and ratios that a single measure will settle."""
    told = frozenset(answer.character for answer in session.answers)
    return told | to_ask(vocabulary, plant_of(session, vocabulary).observations)
