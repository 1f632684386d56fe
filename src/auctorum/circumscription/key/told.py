"""How the plants of each taxon are spread over each character and stage, as the steps of a key take it."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from math import inf

from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.density import Density, between, densities
from auctorum.circumscription.findings import Finding, RangeAgreement, StateAgreement

NOTHING = (inf, -inf)  # a core of which no part is left


@dataclass(frozen=True, slots=True)
class Spread:
    """The plants of one taxon over one character at one stage, as far as they have come down the key.

    Numbers have a `density`, with its `median`, and a `core` (None: the authors share none); states have `shares`,
    which sum to 1, and `core_states`. `authors` is how many say something of their own.
    """

    density: Density | None = None
    median: float = 0.0
    core: tuple[float, float] | None = None
    shares: Mapping[str, float] | None = None
    core_states: frozenset[str] | None = None
    authors: int = 1


Stages = Mapping[str, Spread]
Told = Mapping[str, Stages]  # character -> stage -> spread


def told_of(findings: Iterable[Finding], vocabulary: Vocabulary, characters: Collection[str]) -> dict[str, Stages]:
    """What a key can ask of one taxon; a character of which nobody says anything is left out."""
    found: dict[str, dict[str, Spread]] = {}
    for finding in findings:
        if finding.agreement is not None and finding.character in characters:
            spread = _spread(finding, vocabulary[finding.character])
            if spread is not None:
                found.setdefault(finding.character, {})[finding.stage] = spread
    return dict(found)


def can_be_asked(character: Character) -> bool:
    """Whether a key asks for it: directions have no lower and upper side, and stay out."""
    return character.kind is not Kind.ANGLE


def _spread(finding: Finding, character: Character) -> Spread | None:
    agreed, authors = finding.agreement, max(1, finding.count.independent)
    if isinstance(agreed, StateAgreement):
        shares = {state: float(weight) for state, weight in agreed.weights if weight}
        return Spread(shares=shares, core_states=frozenset(agreed.core) or None, authors=authors) if shares else None
    (density,) = densities([finding], character)
    if density is None or not isinstance(agreed, RangeAgreement):
        return None
    core = agreed.core
    ends = None if core is None else (_end(core.low, -inf), _end(core.high, inf))
    return Spread(density, median_of(density), ends, authors=authors)


def _end(bound: Fraction | None, otherwise: float) -> float:
    return otherwise if bound is None else float(bound)


def median_of(density: Density) -> float:
    """The value below which about half of the plants lie."""
    at = max(1, bisect_left(density.shares, 0.5))
    before, after = density.shares[at - 1], density.shares[at]
    part = (0.5 - before) / (after - before) if after > before else 0.0
    return density.places[at - 1] + part * (density.places[at] - density.places[at - 1])


def cut_off(spread: Spread, low: float | None, high: float | None, core_low: float, core_high: float) -> Spread:
    """The plants from `low` to `high` alone; one of which none are left has no density, so that it is not asked.

    The core has ends of its own, for a count is parted between two whole figures.
    """
    core = spread.core
    if core is not None:
        core = (max(core[0], core_low), min(core[1], core_high))
        core = core if core[0] <= core[1] else NOTHING
    left = None if spread.density is None else between(spread.density, low, high)
    if left is None:
        return replace(spread, density=None, core=core)
    return replace(spread, density=left[0], median=median_of(left[0]), core=core)


def only_states(spread: Spread, states: frozenset[str]) -> Spread:
    """The plants with one of these states alone."""
    assert spread.shares is not None
    left = {state: share for state, share in spread.shares.items() if state in states}
    whole = sum(left.values())
    core = None if spread.core_states is None else spread.core_states & states
    shares = {state: share / whole for state, share in left.items()} if whole else None
    return replace(spread, shares=shares, core_states=core)


def mean_shares(several: Iterable[tuple[Spread, float]]) -> dict[str, float]:
    """The mean share of each state over several taxa, each with its mass."""
    weighed = tuple(several)
    whole = sum(mass for _, mass in weighed)
    found: dict[str, float] = {}
    for spread, mass in weighed:
        for state, share in (spread.shares or {}).items():
            found[state] = found.get(state, 0.0) + share * mass / whole
    return found
