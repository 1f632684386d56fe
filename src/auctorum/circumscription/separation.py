"""What tells taxa apart: for each pair and character how far the two overlap, where to part them, and who says so.

The figures rest on what authors state, spread as `density` spreads it, both taxa taken to be equally likely. Overlap is
the part that two taxa share; the error is that of a plant judged by this character alone.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property
from itertools import combinations, pairwise

from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.cuts import Cut, best_count_cut, best_cut
from auctorum.circumscription.diagnosis import findings_of
from auctorum.circumscription.findings import Span
from auctorum.circumscription.separation_blurs import spectrum_blur, stage_blurs
from auctorum.circumscription.separation_known import Knowledge, Known, knowledge, shared_part
from auctorum.circumscription.separation_names import short_names
from auctorum.circumscription.separation_works import stances
from auctorum.circumscription.summary import NOTHING
from auctorum.corpus.model import Corpus

POOR = 0.25  # a cut between two states that errs as much is none
_ALIKE = 1e-12  # errors that differ by no more are the same


@dataclass(frozen=True, slots=True)
class Parting:
    """One character at one stage between two taxa; ids of works by date.

    `overlap` is the overlap coefficient, 0 to 1, and `error` the expected error of the best rule where both taxa are
    equally likely, 0 to 0.5; None where nobody states the character for one of the two (which is then `silent`). `cut`
    is the best threshold, of counts the least that goes up, of ordered states a place half way between two; directions,
    presence and unordered states have none. `lower` is the taxon below it. `gap` lies between the ranges of the two,
    extremes included, where these do not meet. `support` and `against` state the character for both, and keep the two
    on two sides of the cut (states: without one in common) or not; `said_to_differ` put them apart by themselves.
    `blurs` are sentences; `says` is in print what most say of a and of b.
    """

    character: str
    stage: str
    a: str
    b: str
    overlap: float | None
    error: float | None
    cut: Cut | None = None
    lower: str = ""
    gap: Span | None = None
    support: tuple[str, ...] = ()
    against: tuple[str, ...] = ()
    said_to_differ: tuple[str, ...] = ()
    silent: tuple[str, ...] = ()
    blurs: tuple[str, ...] = ()
    says: tuple[str, str] = (NOTHING, NOTHING)


@dataclass(frozen=True)
class Separation:
    """Partings of every pair of taxa: the best first within a pair, the pairs in the order given."""

    taxa: tuple[str, ...]
    partings: tuple[Parting, ...]

    @property
    def compares(self) -> bool:
        """Whether any character is stated of both taxa of a pair."""
        return any(one.error is not None for one in self.partings)

    def of(self, a: str, b: str) -> tuple[Parting, ...]:
        """The partings of two taxa, the best first; in either order."""
        return self._of_pair.get((a, b)) or self._of_pair.get((b, a), ())

    def seen_from(self, first: str) -> Separation:
        """That of two taxa, with `first` as the first of them."""
        if self.taxa[0] == first:
            return self
        return Separation(self.taxa[::-1], tuple(map(_mirrored, self.partings)))

    @cached_property
    def _of_pair(self) -> Mapping[tuple[str, str], tuple[Parting, ...]]:
        found: dict[tuple[str, str], list[Parting]] = defaultdict(list)
        for one in self.partings:
            found[one.a, one.b].append(one)
        return {pair: tuple(partings) for pair, partings in found.items()}


def separation(corpus: Corpus, taxa: Sequence[str], *, works: Collection[str] | None = None) -> Separation:
    """What tells the taxa with these ids apart, by what all works, or `works` alone, state of them.

    Every character and stage that at least one of a pair has; those that only one has stand last. The smallest error
    comes first, then what more works support, then the order of the vocabulary. Raises KeyError for an unknown taxon,
    ValueError for fewer than two, or for one given twice.
    """
    several = tuple(taxa)
    if len(several) < 2 or len(set(several)) < len(several):
        raise ValueError("give two taxa or more, each of them once")
    return separation_known(corpus, knowledge_of(corpus, several, works=works))


def knowledge_of(corpus: Corpus, taxa: Iterable[str], *, works: Collection[str] | None = None) -> dict[str, Knowledge]:
    """What all works, or `works` alone, state of each of the taxa, in their order, made ready for any pair of them."""
    return {taxon: knowledge(findings_of(corpus, taxon, works=works), corpus.vocabulary) for taxon in taxa}


def separation_known(corpus: Corpus, found: Mapping[str, Knowledge]) -> Separation:
    """As `separation`, of what is known of two taxa or more, in their order: made ready once for many pairs."""
    several = tuple(found)
    names = short_names(corpus, several)
    partings: list[Parting] = []
    for a, b in combinations(several, 2):
        first, second = sorted((a, b))
        told = [
            _parting((first, second), found, character, stage, names)
            for character in corpus.vocabulary.values()
            for stage in _stages(character, found[first], found[second])
        ]
        told.sort(key=_rank)
        partings += [one if one.a == a else _mirrored(one) for one in told]
    return Separation(several, tuple(partings))


def _stages(character: Character, *several: Knowledge) -> list[str]:
    """Stages that any of the taxa has, in their order."""
    return character.stages_in_order({stage for known in several for name, stage in known if name == character.name})


def _rank(parting: Parting) -> tuple[bool, float, int]:
    """Sorts the best first and keeps the order of the vocabulary; errors that differ by rounding alone are equal."""
    silent = parting.error is None
    return silent, 0.0 if parting.error is None else round(parting.error, 9), -len(parting.support)


def _mirrored(one: Parting) -> Parting:
    return replace(one, a=one.b, b=one.a, silent=one.silent[::-1], says=(one.says[1], one.says[0]))


def _parting(
    taxa: tuple[str, str], found: Mapping[str, Knowledge], character: Character, stage: str, names: Mapping[str, str]
) -> Parting:
    a, b = taxa
    one, other = (found[taxon].get((character.name, stage)) for taxon in taxa)
    says = (NOTHING if one is None else one.says, NOTHING if other is None else other.says)
    if one is None or other is None or (shared := shared_part(one, other)) is None:
        silent = tuple(taxon for taxon, each in zip(taxa, (one, other), strict=True) if each is None)
        return Parting(character.name, stage, a, b, None, None, silent=silent or taxa, says=says)
    cut, swapped = _cut(one, other, character)
    who = stances(*((other, one) if swapped else (one, other)), character, cut)
    blurred = stage_blurs(taxa, found, character, stage, names)
    spectrum = spectrum_blur(one, other, character)
    by_cut = cut is not None and character.kind.is_numeric
    return Parting(
        character=character.name,
        stage=stage,
        a=a,
        b=b,
        overlap=shared,
        error=cut.error if cut is not None and by_cut else shared / 2,
        cut=cut,
        lower="" if cut is None else (b if swapped else a),
        gap=_gap(one, other, character),
        support=who.support,
        against=who.against,
        said_to_differ=who.said_to_differ,
        blurs=(*blurred, *([spectrum] if spectrum else [])),
        says=says,
    )


def _cut(one: Known, other: Known, character: Character) -> tuple[Cut | None, bool]:
    """The best cut, and whether the second of the two lies below it."""
    if character.kind is Kind.ORDERED:
        return _cut_between_states(one, other, character)
    if one.density is None or other.density is None or character.kind is Kind.ANGLE:
        return None, False
    swapped = other.density.mean < one.density.mean
    lower, upper = (other.density, one.density) if swapped else (one.density, other.density)
    return (best_count_cut if character.kind is Kind.COUNT else best_cut)(lower, upper), swapped


def _cut_between_states(one: Known, other: Known, character: Character) -> tuple[Cut | None, bool]:
    """The best place between two neighbours on the spectrum; None where it errs by a quarter or more.

    None too where another place does as well: then a state that nobody gives to either would be put on one side.
    """
    names = state_names(character)
    if (set(one.weights) | set(other.weights)) - set(names):
        return None, False
    spread = [[each.weights.get(name, Fraction(0)) for name in names] for each in (one, other)]
    means = [sum(place * weight for place, weight in enumerate(each)) for each in spread]
    swapped = means[1] < means[0]
    lower, upper = spread[::-1] if swapped else spread
    cuts = [
        Cut(Fraction(low + high, 2), float(sum(lower[high:])), float(sum(upper[:high])))
        for low, high in pairwise(range(len(names)))
    ]
    least = min((cut.error for cut in cuts), default=POOR)
    best = [cut for cut in cuts if cut.error <= least + _ALIKE]
    return (best[0], swapped) if len(best) == 1 and least < POOR else (None, False)


def _gap(one: Known, other: Known, character: Character) -> Span | None:
    """Between the ranges of two, extremes included; None where they meet, or are no ranges on a line."""
    if one.envelope is None or other.envelope is None or character.kind is Kind.ANGLE:
        return None
    for lower, upper in ((one.envelope, other.envelope), (other.envelope, one.envelope)):
        if lower.high is not None and upper.low is not None and lower.high < upper.low:
            return Span(lower.high, upper.low)
    return None
