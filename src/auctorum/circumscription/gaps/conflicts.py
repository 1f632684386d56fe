"""Characters on which authors differ, or which drift, and the plants that would settle them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from auctorum.characters.bounds import agree
from auctorum.characters.directions import TURN
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.findings import Finding, StateAgreement, Verdict
from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.rank import missing, plants_wanted
from auctorum.circumscription.gaps.words import listed, plants_at
from auctorum.circumscription.measures import measures
from auctorum.circumscription.phrases import counted
from auctorum.circumscription.plants import Observation
from auctorum.circumscription.summary import state_words
from auctorum.circumscription.sweep import Stretch, envelope
from auctorum.circumscription.voices import Voice, in_order, independent, stretches, voices

HALF = Fraction(1, 2)


@dataclass(frozen=True, slots=True)
class _Part:
    """What some works say together: a stretch or states, as words."""

    says: str
    works: tuple[str, ...]
    stretch: Stretch | None = None
    states: tuple[str, ...] = ()


def conflicts(ground: Ground) -> Iterator[Gap]:
    """One gap for each conflicting or drifting character and stage that too few plants are measured for.

    Where a taxon grows is no character of a plant, and left out.
    """
    for taxon in ground.taxa:
        if ground.several_works(taxon):
            for finding in ground.told(taxon):
                at_odds = finding.verdict in (Verdict.CONFLICTING, Verdict.DRIFTING)
                if at_odds and not ground.apart.is_habitat(finding.character):
                    yield from _gap(ground, taxon, finding)


def _gap(ground: Ground, taxon: str, finding: Finding) -> Iterator[Gap]:
    character = ground.corpus.vocabulary[finding.character]
    heard = independent(voices(finding.evidence, character))
    parts = _parts(finding, heard, character)
    if len({part.says for part in parts}) < 2:
        return
    narrow = min(parts, key=_width)
    seen = [one for plant in ground.plants(taxon) if (one := plant.at(finding.character, finding.stage)) is not None]
    covered = sum(_inside(one, narrow, character) for one in seen)
    wanted = plants_wanted(covered, len(seen))
    if wanted == len(seen):
        return
    sides = " or ".join(f"{part.says} ({_by(ground, part.works)})" for part in parts)
    yield Gap(
        GapKind.CONFLICT,
        ground.rank(float(_smaller_share(finding, heard) * _apart(parts)) * missing(len(seen), wanted), taxon),
        question=f"{ground.title(taxon)}{_asked(ground, finding, character)} {sides}?",
        why=_why(finding, narrow, covered, len(seen), wanted),
        todo=_todo(ground, finding, wanted - len(seen), more=bool(seen)),
        taxa=(taxon,),
        works=tuple(voice.work for voice in heard),
        characters=(finding.character,),
        in_field=True,
    )


def _parts(finding: Finding, heard: Sequence[Voice], character: Character) -> list[_Part]:
    """The sides of a conflict; of a drift what the first work says, and what the last does.

    A single figure among ranges is what somebody measured, and no opinion of how far the taxon goes.
    """
    if finding.verdict is Verdict.DRIFTING:
        own = [voice for voice in heard if not character.kind.is_numeric or _is_range(voice)]
        return [_part([voice], finding, character) for voice in (own[0], own[-1])] if own else []
    of_sides = ([voice for voice in heard if voice.work in side.works] for side in finding.sides)
    return [_part(several, finding, character) for several in of_sides if several]


def _is_range(voice: Voice) -> bool:
    return voice.stretch is not None and (voice.stretch.low is None or voice.stretch.low != voice.stretch.high)


def _part(several: Sequence[Voice], finding: Finding, character: Character) -> _Part:
    works = tuple(voice.work for voice in several)
    if not character.kind.is_numeric:
        states = in_order((state for voice in several for state in voice.allowed), character)
        return _Part(state_words(states, character), works, states=states)
    said = stretches(several)
    hull = envelope(said)
    slack = max(max(one.low_slack, one.high_slack) for one in said)
    about = "about " if hull.low == hull.high else ""  # a single figure holds what its precision does
    says = about + measures(finding.evidence, character).notation(hull)
    return _Part(says, works, Stretch(hull.low, hull.high, slack, slack))


def _width(part: _Part) -> tuple[bool, Fraction]:
    """Open stretches are wider than any other."""
    if part.stretch is None:
        return False, Fraction(len(part.states))
    if part.stretch.low is None or part.stretch.high is None:
        return True, Fraction(0)
    return False, part.stretch.high - part.stretch.low


def _inside(seen: Observation, part: _Part, character: Character) -> bool:
    """Whether a plant lies in the stretch within stated precision, or shows mostly the states."""
    if seen.value is None or part.stretch is None:
        return sum((share for state, share in seen.states if state in part.states), Fraction(0)) >= HALF
    turns = (-TURN, 0, TURN) if character.kind is Kind.ANGLE else (0,)
    return any(_within(seen.value + turn, seen.slack, part.stretch) for turn in turns)


def _within(value: Fraction, slack: Fraction, said: Stretch) -> bool:
    above = said.low is None or value >= said.low or agree(value, slack, said.low, said.low_slack)
    below = said.high is None or value <= said.high or agree(value, slack, said.high, said.high_slack)
    return above and below


def _smaller_share(finding: Finding, heard: Sequence[Voice]) -> Fraction:
    """The share of the weight that stands on the smaller side.

    Of a conflict all but the heaviest side; of a drift the smaller part, where opinions are most evenly divided
    whether a value belongs to the taxon.
    """
    agreed = finding.agreement
    if finding.verdict is Verdict.DRIFTING:
        ranges = agreed.positions if isinstance(agreed, StateAgreement) else agreed
        return max((min(step.share, 1 - step.share) for step in ranges.coverage), default=HALF) if ranges else HALF
    weight = {voice.work: voice.weight or Fraction(1) for voice in heard}
    sides = [sum((weight.get(work, Fraction(0)) for work in side.works), Fraction(0)) for side in finding.sides]
    return 1 - max(sides) / sum(sides)


def _apart(parts: Sequence[_Part]) -> Fraction:
    """The part of what the first and the last say that is not common to both, 0 to 1; 1 where an end is open."""
    one, other = parts[0].stretch, parts[-1].stretch
    if one is None or other is None:
        first, last = set(parts[0].states), set(parts[-1].states)
        return 1 - Fraction(len(first & last), len(first | last))
    if one.low is None or one.high is None or other.low is None or other.high is None:
        return Fraction(1)
    common = min(one.high, other.high) - max(one.low, other.low)
    return 1 - max(common, Fraction(0)) / ((max(one.high, other.high) - min(one.low, other.low)) or 1)


def _by(ground: Ground, works: Sequence[str]) -> str:
    return listed((ground.corpus.works[work].byline for work in works), 2)


def _why(finding: Finding, part: _Part, covered: int, seen: int, wanted: int) -> str:
    said = "Works have moved from the one to the other. "
    if finding.verdict is Verdict.CONFLICTING:
        said = f"{finding.remarks[0].rstrip('.')}. " if finding.remarks else ""
    if not seen:
        return f"{said}No plant is measured for it; about {wanted} would tell to ±10 points how many are {part.says}."
    several = f"{covered or 'none'} of them" if covered < seen else "all of them" if seen > 1 else "and it is"
    return (
        f"{said}{counted(seen, 'plant')} {'is' if seen == 1 else 'are'} measured, {several} {part.says}: "
        "too few to tell their share to ±10 points."
    )


def _asked(ground: Ground, finding: Finding, character: Character) -> str:
    """`: is its spur length at maturity`, before the sides; presence is `: bracteoles`."""
    if character.kind is Kind.PRESENCE:
        return f": {character.name}"
    return f": is its {ground.label(finding.character, finding.stage)}"


def _todo(ground: Ground, finding: Finding, number: int, *, more: bool) -> str:
    verb = "Measure" if ground.corpus.vocabulary[finding.character].kind is Kind.MEASURE else "Note"
    several = f"{number}{' more' if more else ''} {plants_at(finding.stage)}"
    return (
        f"{verb} the {ground.label(finding.character)} of {several} at several sites, named by other characters than "
        "this one; add them to specimens.csv."
    )
