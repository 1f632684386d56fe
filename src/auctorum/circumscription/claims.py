"""What a finding says in words, piece by piece, each piece with the works it rests on."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from auctorum.characters.show import format_range
from auctorum.characters.values import Range
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.findings import Finding, RangeAgreement, Relation, Span, StateAgreement
from auctorum.circumscription.measures import Measures, measures
from auctorum.circumscription.summary import majority_states, state_words
from auctorum.circumscription.sweep import Stretch, envelope, relation
from auctorum.circumscription.voices import Voice, independent, stretches, voices
from auctorum.circumscription.wording import wording

Piece = tuple[str, Sequence[str]]  # words, and the works they rest on
FEWEST_FOR_LONE = 3  # works among which one that goes far out is told by itself
SELDOM = Fraction(1, 4)  # a state is rare where its weight is below this part of the work's commonest


@dataclass(frozen=True, slots=True)
class Beyond:
    """What works state beyond one end of the typical range; None for nothing.

    `bracketed` goes in parentheses; `alone` is far out, and said by `voice` alone.
    """

    bracketed: Fraction | None = None
    alone: Fraction | None = None
    voice: Voice | None = None


# --- numbers


def number_claim(finding: Finding, character: Character) -> list[Piece]:
    """`22–34(–41) mm long`, then `, said to reach 60 mm`, then `, but 70–80 mm`.

    Where no single stretch has a majority: `22–34 mm long`, ` or 50–60 mm long`, side by side.
    """
    heard = voices(finding.evidence, character)
    printed, words = measures(finding.evidence, character), wording(character)
    agreed = finding.agreement
    if len(finding.evidence) == 1 and (stated := _as_stated(finding, printed)):
        return [(f"{words.before}{stated}{words.after}", _works(heard))]
    if not isinstance(agreed, RangeAgreement) or len(agreed.majority) != 1:
        sided = [(f"{own}{words.after}", works) for own, works in _alternatives(finding, heard, printed)]
        return _joined(sided, words.before)
    typical = agreed.majority[0]
    within = [voice for voice in heard if not _apart(voice, typical)]
    own = independent(within)
    ends = [(words.least, _beyond(own, typical, lower=True)), (words.most, _beyond(own, typical, lower=False))]
    range_ = printed.notation(typical, *(end.bracketed for _, end in ends))
    pieces: list[Piece] = [(f"{words.before}{range_}{words.after}", _works(within))]
    for lead, end in ends:
        if end.alone is not None and end.voice is not None:
            pieces.append((f", {lead} {printed.one(end.alone)}", _works([end.voice])))
    others = _by_range((voice for voice in heard if _apart(voice, typical)), printed)
    return pieces + [(f", but {own}", works) for own, works in others]


def _works(heard: Iterable[Voice]) -> tuple[str, ...]:
    return tuple(voice.work for voice in heard)


def _joined(pieces: Sequence[Piece], before: str) -> list[Piece]:
    """Alternatives: `a`, `, b`, ` or c`."""
    last = len(pieces) - 1
    joins = [before if at == 0 else " or " if at == last else ", " for at in range(len(pieces))]
    return [(f"{join}{words}", works) for join, (words, works) in zip(joins, pieces, strict=True)]


def _as_stated(finding: Finding, printed: Measures) -> str:
    """The range of the one work that says anything, with all its signs; empty where its unit is another."""
    value = finding.evidence[0].value
    if not isinstance(value, Range) or value.unit != printed.unit or printed.character.kind is Kind.ANGLE:
        return ""
    return format_range(value)


def _alternatives(finding: Finding, heard: Sequence[Voice], printed: Measures) -> list[Piece]:
    """Each side with its works and those that repeat one of them, then the works that stand on no side."""
    of_work = {voice.work: voice for voice in heard}
    found: list[Piece] = []
    placed: set[str] = set()
    for side in finding.sides:
        hull = envelope(stretches(of_work[work] for work in side.works))
        works = _works(voice for voice in heard if _source(voice, of_work) in side.works)
        found.append((printed.notation(hull), works))
        placed.update(works)
    return found + _by_range((voice for voice in heard if voice.work not in placed), printed)


def _source(voice: Voice, of_work: Mapping[str, Voice]) -> str:
    """The work whose figures a voice gives in the end: its own where it repeats none that is heard."""
    while voice.repeats in of_work:
        voice = of_work[voice.repeats]
    return voice.work


def _by_range(heard: Iterable[Voice], printed: Measures) -> list[Piece]:
    """Works that print the same range together."""
    said: dict[str, list[str]] = {}
    for voice in heard:
        if voice.stretch is not None:
            own = printed.notation(Span(voice.stretch.low, voice.stretch.high))
            said.setdefault(own, []).append(voice.work)
    return list(said.items())


def _apart(voice: Voice, typical: Span) -> bool:
    return voice.stretch is not None and relation(voice.stretch, Stretch(typical.low, typical.high)) is Relation.APART


def _beyond(within: Sequence[Voice], typical: Span, *, lower: bool) -> Beyond:
    """What is said beyond one end of the typical range.

    A work stands alone where its extreme lies beyond those of all others, and further beyond the typical range than
    that is wide (of a single value: than a quarter of it).
    """
    bound, sign = (typical.low, -1) if lower else (typical.high, 1)
    ends = [(sign * end, voice) for voice in within if (end := _extreme(voice, lower)) is not None]
    if bound is None or not ends:
        return Beyond()
    ends.sort(key=lambda pair: pair[0])
    farthest, voice = ends[-1]
    following = ends[-2][0] if len(ends) > 1 else farthest
    far_out = farthest > following and farthest - sign * bound > _width(typical)
    if len(within) >= FEWEST_FOR_LONE and far_out:
        return Beyond(sign * following if following > sign * bound else None, sign * farthest, voice)
    return Beyond(sign * farthest if farthest > sign * bound else None)


def _extreme(voice: Voice, lower: bool) -> Fraction | None:
    if voice.extremes is None:
        return None
    return voice.extremes.low if lower else voice.extremes.high


def _width(typical: Span) -> Fraction:
    if typical.low is None or typical.high is None:
        return abs(typical.low or typical.high or Fraction(0)) / 4
    return typical.high - typical.low or abs(typical.high) / 4


# --- states


def state_claim(finding: Finding, character: Character) -> list[Piece]:
    """`ivory or cream`, then `, rarely buff`, then `, but russet`: what most allow, what some add, who disagrees.

    Where no state has a majority, each state with its works.
    """
    heard = voices(finding.evidence, character)
    before = wording(character).before
    main = [state for state in _usual(finding, heard, character) if not _rare(state, heard)]
    if not main:
        return _joined([(state, _works(_allowing(state, heard))) for state in _named(finding)], before)
    agreeing = [voice for voice in heard if set(voice.allowed) & set(main)]
    pieces: list[Piece] = [(f"{before}{state_words(main, character)}", _works(agreeing))]
    told = {state for voice in agreeing for state in voice.allowed}  # who says one of these alone adds to it
    speaking = [voice for voice in heard if set(voice.allowed) <= told or voice in agreeing]
    pieces += _added(finding, main, speaking, "at times" if character.kind is Kind.PRESENCE else "also")
    against: dict[tuple[str, ...], list[str]] = {}
    for voice in heard:
        if voice not in speaking:
            against.setdefault(voice.allowed, []).append(voice.work)
    return pieces + [(f", but {state_words(states, character)}", works) for states, works in against.items()]


def _named(finding: Finding) -> tuple[str, ...]:
    """States that anybody allows."""
    return finding.agreement.envelope if isinstance(finding.agreement, StateAgreement) else ()


def _usual(finding: Finding, heard: Sequence[Voice], character: Character) -> list[str]:
    """States that at least half allow; where authors conflict, half against half is no majority."""
    half = list(majority_states(finding, character))
    if not finding.agreement or finding.agreement.core:
        return half
    whole = sum((voice.weight for voice in heard), Fraction(0))
    return [state for state in half if 2 * sum(voice.weight for voice in _allowing(state, heard)) > whole]


def _added(finding: Finding, main: Sequence[str], agreeing: Sequence[Voice], also: str) -> Iterator[Piece]:
    for state in _named(finding):
        some = _allowing(state, agreeing)
        if state not in main and some:
            yield f", {'rarely' if _rare(state, some) else also} {state}", _works(some)


def _allowing(state: str, heard: Iterable[Voice]) -> list[Voice]:
    return [voice for voice in heard if state in voice.allowed]


def _rare(state: str, heard: Iterable[Voice]) -> bool:
    """Whether all who allow the state give it far less weight than their commonest."""
    weights = [dict(voice.states) for voice in _allowing(state, heard)]
    return all(each[state] < SELDOM * max(each.values()) for each in weights)
