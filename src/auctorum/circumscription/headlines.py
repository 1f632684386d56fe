"""What stands out in what authors say of a taxon: bounds that held or moved, conflicts, and who is silent on them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from enum import IntEnum

from auctorum.circumscription.findings import Bound, Finding, RangeAgreement, Verdict
from auctorum.circumscription.phrases import at_stage, capital
from auctorum.circumscription.trend import FEWEST_FOR_A_TREND, drifts
from auctorum.corpus.model import Work

MOST = 6  # more than these are no headlines


class Weight(IntEnum):
    """How much a finding stands out; the least of these stands first."""

    HELD_AND_MOVED = 0  # one bound never moved, the other did
    CONFLICT = 1
    MOVED = 2
    HELD = 3  # a bound that many state and nobody moved
    NONE = 4


@dataclass(frozen=True, slots=True)
class Headline:
    """A finding that stands out, in sentences: its remarks, and who is silent."""

    character: str
    stage: str
    told: str

    def __str__(self) -> str:
        return f"{capital(at_stage(self.character, self.stage))}. {self.told}"


def headlines(findings: Iterable[Finding], works: Mapping[str, Work], most: int = MOST) -> tuple[Headline, ...]:
    """The findings that stand out, in a sentence or two each, the weightiest first; those alike by how many speak."""
    weighed = [(_weight(finding), -finding.count.independent, place, finding) for place, finding in enumerate(findings)]
    told = sorted((one for one in weighed if one[0] is not Weight.NONE), key=lambda one: one[:3])
    return tuple(_headline(finding, works) for *_, finding in told[:most])


def _weight(finding: Finding) -> Weight:
    agreed = finding.agreement
    bounds = (agreed.lower, agreed.upper) if isinstance(agreed, RangeAgreement) else ()
    held = any(_held(bound) for bound in bounds)
    if finding.verdict in (Verdict.SINGLE, Verdict.SILENT):
        return Weight.NONE
    if held and any(drifts(bound) for bound in bounds):
        return Weight.HELD_AND_MOVED
    if finding.verdict is Verdict.CONFLICTING:
        return Weight.CONFLICT
    if finding.verdict is Verdict.DRIFTING:
        return Weight.MOVED
    return Weight.HELD if held else Weight.NONE


def _held(bound: Bound | None) -> bool:
    return bound is not None and bound.stable and bound.stated >= FEWEST_FOR_A_TREND


def _headline(finding: Finding, works: Mapping[str, Work]) -> Headline:
    silent = "; ".join(works[work].byline for work in finding.silent)
    told = (*finding.remarks, *([f"Silent: {silent}."] if silent else []))
    return Headline(finding.character, finding.stage, " ".join(told))
