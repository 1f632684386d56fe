"""What blurs a character that might tell two taxa apart: another growth stage, or a spectrum that both share."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.separation_known import Knowledge, Known, shared_part
from auctorum.circumscription.summary import RARE
from auctorum.circumscription.wording import stage_words
from auctorum.corpus.readings import UNSTATED

LEAST = 0.05  # an overlap with another stage that is smaller is not told (a judgement of ours)
SHARED = Fraction(3, 4)  # part of the states that either taxon allows, from which on a spectrum is shared
_A_STAGE = {"young": "a young", "mature": "a mature", "old": "an old"}


def stage_blurs(
    taxa: Sequence[str], found: Mapping[str, Knowledge], character: Character, stage: str, names: Mapping[str, str]
) -> tuple[str, ...]:
    """A sentence for each stage of one of two taxa that shares more with the other at `stage` than it does itself.

    >>> _what("spur", "young"), _what("spur", "in bud")
    ('a young spur', 'a spur at the stage “in bud”')
    """
    one, another = taxa
    here = shared_part(found[one][character.name, stage], found[another][character.name, stage])
    if here is None or stage in ("", UNSTATED):
        return ()
    told = []
    for taxon, other in ((one, another), (another, one)):
        for another_stage, said in _other_stages(found[taxon], character, stage):
            part = shared_part(said, found[other][character.name, stage])
            if part is not None and part > max(here, LEAST):
                own, like = _what(character.structure, another_stage), _what("one", stage)
                verb = "measures as" if character.kind.is_numeric else "looks like"
                told.append(f"{own} of {names[taxon]} ({said.says}) {verb} {like} of {names[other]}")
    return tuple(told)


def spectrum_blur(one: Known, other: Known, character: Character) -> str:
    """`both run from cream to ivory`, where two taxa share most of an ordered spectrum; empty where they do not.

    `both can be cream to ivory` where most works do not say so of both.

    States that are rare in a taxon (a tenth of the weight or less) are not counted.
    """
    first, second = _usual(one), _usual(other)
    either = [state.name for state in character.states if state.name in first | second]
    both = [state for state in either if state in first & second]
    if character.kind is not Kind.ORDERED or not both or Fraction(len(both), len(either)) < SHARED:
        return ""
    alike = one.says == other.says
    if len(both) == 1:
        return f"both {'are' if alike else 'can be'} {both[0]}"
    return f"both {'run from' if alike else 'can be'} {both[0]} to {both[-1]}"


def _other_stages(known: Knowledge, character: Character, stage: str) -> Iterator[tuple[str, Known]]:
    for (name, other), said in known.items():
        if name == character.name and other not in ("", UNSTATED, stage):
            yield other, said


def _what(thing: str, stage: str) -> str:
    if stage in _A_STAGE:
        return f"{_A_STAGE[stage]} {thing}"
    return f"{'an' if thing[0] in 'aeiu' else 'a'} {thing} {stage_words(stage)}".replace("a one", "one")


def _usual(known: Known) -> set[str]:
    return {state for state, weight in known.weights.items() if weight > RARE}
