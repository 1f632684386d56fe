"""States out of a phrase, with how often each is said to occur: alternatives, spans of a spectrum, negation.

    list  = [modality] item {("," | or | and | "/") [modality] item}
    item  = [not | without] state [("to" | dash) state]

A word of frequency covers what follows it until the next one, the end of its bracket or of the sentence.
"""

from __future__ import annotations

from dataclasses import dataclass

from auctorum.characters.choose import mentions
from auctorum.characters.clauses import own_tokens
from auctorum.characters.figures import Line
from auctorum.characters.frequency import frequency
from auctorum.characters.lexicon import Match, matches_of
from auctorum.characters.stages import becomes, stages_of
from auctorum.characters.states import ABSENT, PRESENT
from auctorum.characters.tokens import Sort, folded
from auctorum.characters.values import Modality, Reading, Share, States
from auctorum.characters.vocabulary import Character, Kind

_NOT_WORDS = "not non nec neque without sine lacking neither nor haud never nunquam numquam except"
_NONE_WORDS = (
    "absent none no without lacking wanting lacks nil nullus nulla nullum nullis nulli carens carentes carentibus "
    "destitute destitutus destituta deest desunt absens missing obsolete sine"
)
_NOT = frozenset(_NOT_WORDS.split())
_NONE = frozenset(_NONE_WORDS.split())
_SOME = frozenset({"present", "adest", "adsunt", "praesens", "with", "developed"})
_GOES_ON = frozenset({"or", "nor", "nec", "neque", "vel", "and", "et"})
_TO = frozenset({"to", "ad", "through", "bis"})


@dataclass(frozen=True, slots=True)
class _Said:
    """A match with the modality that covers it, and whether it is denied."""

    match: Match
    modality: Modality
    denied: bool


def read_states(line: Line, character: Character) -> tuple[Reading, ...]:
    """Readings of a character of states, one for each growth stage in the order of the phrase; () for none."""
    places = mentions(line, (character.structure, *character.words))
    own_part = own_tokens(line, places)
    every = matches_of(line, character)
    matches = tuple(match for match in every if own_part[match.start]) or every
    own = {part for state in character.states for word in (state.name, *state.words) for part in folded(word).split()}
    own &= {"dry", "fresh", "old", "young", "mature", "ripe"}
    stages = stages_of(line, {match.start for match in matches}, own)
    said = _said(line, matches)
    groups: dict[str, list[Share]] = {}
    index = 0
    while index < len(said):
        share, taken = _share(line, said, index, character)
        groups.setdefault(stages[said[index].match.start], []).extend(share)
        index += taken
    if becomes(line, own) or "old" in groups:
        groups = _renamed(groups, "young")
    elif "dry" in groups:
        groups = _renamed(groups, "fresh")
    return tuple(Reading(States(_unique(shares)), stage) for stage, shares in groups.items())


def read_presence(line: Line, character: Character) -> tuple[Reading, ...]:
    """Presence: the vocabulary's own words first, then `no bracts`, `bracts absent`, `bracts 3`, bare mention."""
    own = read_states(line, character)
    if own:
        return own
    shares: list[Share] = []
    modality = Modality.ALWAYS
    denied = False
    at = 0
    while at < len(line.tokens):
        often, after = frequency(line, at)
        modality = often or modality
        text = line.text(at)
        denied |= text in ("not", "non") and not often
        if (
            text in _NONE
            or _is_privative(text, character)
            or (line.sort(at) is Sort.NUMBER and line.tokens[at].text == "0")
        ):
            shares.append(Share(PRESENT if denied else ABSENT, None, modality))
        elif text in _SOME and not (text == "with" and not mentions(line, (character.structure,))):
            shares.append(Share(ABSENT if denied else PRESENT, None, modality))
        at = max(after, at + 1)
    if not shares and mentions(line, (character.structure, *character.words)):
        shares.append(Share(ABSENT if denied else PRESENT, None, modality))
    return (Reading(States(_unique(_settled(shares)))),) if shares else ()


def _is_privative(text: str, character: Character) -> bool:
    """`ebracteate`, `spurless` of bracts and spurs."""
    name = folded(character.structure).split()[-1:]
    return bool(name) and (text.startswith((f"e{name[0]}", f"ex{name[0]}")) or text == f"{name[0]}less")


def _settled(shares: list[Share]) -> list[Share]:
    """`never present` is absent."""
    other = {PRESENT: ABSENT, ABSENT: PRESENT}
    return [
        Share(other[share.state], None, Modality.ALWAYS) if share.modality is Modality.NEVER else share
        for share in shares
    ]


def _said(line: Line, matches: tuple[Match, ...]) -> list[_Said]:
    found: list[_Said] = []
    modality, outer, denied, at = Modality.ALWAYS, Modality.ALWAYS, False, 0
    for match in matches:
        fresh = not found
        while at < match.start:
            sort, text, (often, after) = line.sort(at), line.text(at), frequency(line, at)
            if sort is Sort.STOP:
                modality = outer = Modality.ALWAYS
                denied = False
            elif sort is Sort.OPEN:
                outer = modality
            elif sort is Sort.CLOSE:
                modality = outer
            elif text in _NOT and often is not Modality.OFTEN:
                denied = fresh = True
            elif sort is Sort.COMMA or (sort is Sort.WORD and text not in _GOES_ON | _TO and not fresh):
                denied = False
            modality = often or modality
            at = max(after, at + 1)
        found.append(_Said(match, modality, denied or modality is Modality.NEVER))
        at = match.end
    return found


def _share(line: Line, said: list[_Said], index: int, character: Character) -> tuple[list[Share], int]:
    """The shares of the item that starts with this match, and how many matches it takes."""
    first = said[index]
    modality = Modality.NEVER if first.denied else first.modality
    if index + 1 < len(said) and _spans(line, first.match, said[index + 1].match, character):
        second = said[index + 1].match.state
        if character.kind is Kind.ORDERED and second != first.match.state:
            return [Share(first.match.state, second, modality)], 2
        return [Share(first.match.state, None, modality), Share(second, None, modality)], 2
    return [Share(first.match.state, None, modality)], 1


def _spans(line: Line, first: Match, second: Match, character: Character) -> bool:
    """Whether `to` or a dash leads from the first to the second, past at most two words of degree."""
    place = first.end
    if line.sort(place) is Sort.DASH:
        return second.start == place + 1 and (character.kind is Kind.ORDERED or not line.tokens[place].glued)
    return line.text(place) in _TO and place < second.start <= place + 3


def _renamed(groups: dict[str, list[Share]], stage: str) -> dict[str, list[Share]]:
    """What stands without a stage before a change is the young, or the fresh, state."""
    if "" not in groups or stage in groups or len(groups) == 1:
        return groups
    return {name or stage: shares for name, shares in groups.items()}


def _unique(shares: list[Share]) -> tuple[Share, ...]:
    return tuple(dict.fromkeys(shares))
