"""What a proposed working criterion consists of."""

from __future__ import annotations

from dataclasses import dataclass

from auctorum.circumscription.findings import Finding
from auctorum.circumscription.separation import Parting
from auctorum.corpus.criteria import Limit
from auctorum.determination.criteria.proposal_threshold import Stand
from auctorum.determination.criteria.tally import OnPlants, Tally
from auctorum.records.schema import Criterion


@dataclass(frozen=True, slots=True)
class SaidOf:
    """What one work states of the decisive character, in print, of the taxon and of the sister that is hardest to part;
    `for_it` says whether it keeps the two on two sides of the threshold."""

    work: str
    own: str
    others: str
    for_it: bool


@dataclass(frozen=True, slots=True)
class Proposal:
    """A working criterion with its grounds.

    `stands` are in the order of the sisters, `worst` is the one of those it parts that it parts least well. `said` is
    what works state of the taxon and of that sister, by date; `findings` are on the decisive character of the two.
    `tallies` are of the taxon first, then of the sisters. `on_plants` is None for too few plants, and for states.
    `better` are characters that part the worst sister better, and cannot have a threshold. `weak` are sentences.
    """

    taxon: str
    criterion: Criterion
    limit: Limit
    stands: tuple[Stand, ...]
    worst: Stand
    said: tuple[SaidOf, ...]
    findings: tuple[Finding, Finding]
    tallies: tuple[Tally, ...]
    on_plants: OnPlants | None
    better: tuple[Parting, ...]
    blurs: tuple[str, ...]
    weak: tuple[str, ...] = ()

    @property
    def against(self) -> tuple[str, ...]:
        """The taxa that it was to be parted from."""
        return tuple(one.sister for one in self.stands)

    @property
    def parted(self) -> tuple[str, ...]:
        """Those of them that the threshold parts it from."""
        return tuple(one.sister for one in self.stands if one.parts)

    @property
    def not_parted(self) -> tuple[str, ...]:
        """Those that it does not."""
        return tuple(one.sister for one in self.stands if not one.parts)
