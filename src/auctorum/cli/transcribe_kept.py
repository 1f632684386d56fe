"""What is kept of a transcript: drafts as read, or as a person corrected them, made into statements of a file."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from auctorum.characters.prose.draft import Choice, Draft, Transcript, confidence, one_line, plain_values
from auctorum.characters.prose.found import Doubt
from auctorum.characters.read import read_statement
from auctorum.characters.values import Reading
from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.problems import AuctorumError
from auctorum.records.schema import Conventions, StatementRecord

_YOUNG = "young"
LIKELY = 0.6  # share of right readings below which one is called doubtful


@dataclass(frozen=True, slots=True)
class Kept:
    """A draft that goes into a file: how it is read, and what a statement says beside the words.

    `said` is value and stage of each statement; both empty where the words alone suffice. `by_hand` says that a person
    decided on it.
    """

    draft: Draft
    choice: Choice
    said: tuple[tuple[str, str], ...]
    by_hand: bool = False


def confidence_word(draft: Draft, sure: float) -> str:
    """`sure` from `sure` upwards, then `likely`, below that `doubtful`."""
    return "sure" if draft.confidence >= sure else "likely" if draft.confidence >= LIKELY else "doubtful"


def as_drafted(draft: Draft) -> Kept:
    """The draft as it was read."""
    return Kept(draft, draft.choice, ((draft.value, draft.stage),))


def as_chosen(draft: Draft, words: str, choice: Choice, conventions: Conventions) -> Kept:
    """The draft read otherwise, with the values that a file must give for its words to be read so."""
    if choice == draft.choice:
        return as_drafted(draft)
    try:
        line, signs = conventions.line, conventions.signs
        suffice = read_statement(words, choice.character, line=line, signs=signs) == choice.readings
    except AuctorumError:
        suffice = False
    said = (("", ""),) if suffice else tuple((value, stage) for stage, value in by_stage(choice))
    return Kept(draft, choice, said)


def by_stage(choice: Choice) -> list[tuple[str, str]]:
    """Stage and value in plain notation, for each stage that the readings name."""
    stages: dict[str, list[Reading]] = {}
    for reading in choice.readings:
        stages.setdefault(reading.stage, []).append(reading)
    if len(stages) < 2:
        return [(next(iter(stages), ""), choice.value)]
    return [(stage, plain_values(readings, choice.character)) for stage, readings in stages.items()]


def statements(transcript: Transcript, kept: Iterable[Kept], page: str) -> list[StatementRecord]:
    """Statements of a literature file in the order of the words, which stand on one line there."""
    return [
        StatementRecord(
            one.choice.character.name,
            one_line(transcript.words(one.draft)),
            value,
            _stage(stage, one.choice.character),
            page,
        )
        for one in kept
        for value, stage in one.said
    ]


def _stage(stage: str, character: Character) -> str:
    """The stage; none where it is that of a young plant and the character is not split by it, as `check` has it."""
    return "" if stage == _YOUNG and _YOUNG not in character.stages else stage


def proposals(choices: Iterable[Choice]) -> tuple[Character, ...]:
    """The characters that the vocabulary lacks, each once, with the states and stages that any of the choices has."""
    found: dict[str, Character] = {}
    for choice in choices:
        one = choice.character
        if choice.known or choice.new_states:
            continue
        known = found.setdefault(one.name, one)
        more = tuple(state for state in one.states if state.name not in {old.name for old in known.states})
        kind = one.kind if one.kind is Kind.ORDERED else known.kind  # a span anywhere makes it a spectrum
        found[one.name] = replace(known, kind=kind, states=(*known.states, *more), stages=known.stages or one.stages)
    return tuple(found.values())


def state_proposals(choices: Iterable[Choice]) -> dict[str, tuple[State, ...]]:
    """The states that characters of the vocabulary lack, each once, by the name of the character."""
    found: dict[str, dict[str, State]] = {}
    for choice in choices:
        for state in choice.character.states if choice.new_states else ():
            if state.name in choice.new_states:
                found.setdefault(choice.character.name, {}).setdefault(state.name, state)
    return {name: tuple(states.values()) for name, states in found.items()}


def settled(transcript: Transcript) -> Transcript:
    """The transcript for one who adds what the vocabulary lacks: to lack a state is no doubt then."""
    return replace(transcript, drafts=tuple(map(_settled, transcript.drafts)))


def _settled(draft: Draft) -> Draft:
    if not draft.choice.new_states:
        return draft
    doubts = tuple(doubt for doubt in draft.doubts if doubt is not Doubt.UNKNOWN_STATE)
    return replace(draft, doubts=doubts, confidence=confidence(set(doubts)))


def signs_from(said: str) -> Mapping[str, str]:
    """The key to signs that `'=in "=line` spells; raises ValueError with the part that is none."""
    found = {}
    for part in said.split():
        sign, equals, unit = part.partition("=")
        if not equals or len(sign) != 1 or sign.isalnum() or not unit:
            raise ValueError(part)
        found[sign] = unit
    return found


@dataclass(frozen=True, slots=True)
class Counts:
    """Statements read in all, those of them that are likely or doubtful, and passages not understood."""

    read: int
    likely: int
    doubtful: int
    lost: int

    @property
    def unsure(self) -> int:
        """Statements that nobody should keep unseen."""
        return self.likely + self.doubtful


def counts(transcript: Transcript, sure: float) -> Counts:
    """How many statements of each sort a transcript has."""
    said = [confidence_word(draft, sure) for draft in transcript.drafts]
    lost = sum(one.why is None for one in transcript.left)
    return Counts(len(said), said.count("likely"), said.count("doubtful"), lost)


def sure_ones(drafts: Sequence[Draft], sure: float) -> list[Kept]:
    """The drafts with confidence enough to be kept unseen."""
    return [as_drafted(draft) for draft in drafts if draft.confidence >= sure]
