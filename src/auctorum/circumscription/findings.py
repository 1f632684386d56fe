"""What the statements about one taxon come to, character by character, as frozen values.

Numbers are exact Fractions in the character's canonical unit; for ordered states they are positions along
the spectrum (0 = first state).
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from auctorum.characters.values import Value


@dataclass(frozen=True, slots=True, order=True)
class Span:
    """A closed interval in the canonical unit; None is an end that nobody stated (open)."""

    low: Fraction | None
    high: Fraction | None


@dataclass(frozen=True, slots=True)
class Evidence:
    """One reading of one statement as it enters the agreement.

    `weight` is 1 for a statement of its own; a repetition has the weight that kb.yaml gives it, 0 unless it says more.
    `repeats` is the id of the work whose figures it repeats; empty for a statement of its own.
    `span` is its typical range and `extremes` its whole range for numbers; None for states.
    """

    statement: str
    work: str
    year: int
    byline: str
    page: str
    verbatim: str
    value: Value
    weight: Fraction = Fraction(1)
    span: Span | None = None
    extremes: Span | None = None
    slack_low: Fraction = Fraction(0)  # half the stated precision of each bound
    slack_high: Fraction = Fraction(0)
    repeats: str = ""


class Relation(StrEnum):
    """How one range lies to another, judged within their stated precision. `open`: a bound is not stated."""

    EQUAL = "equal"
    WITHIN = "within"
    CONTAINS = "contains"
    OVERLAPS = "overlaps"
    APART = "apart"
    OPEN = "open"


@dataclass(frozen=True, slots=True)
class Step:
    """Coverage is `share` (0 to 1 of the weight) from `low` to `high`; None is an end that nobody stated.

    Where two steps meet, the value belongs to the higher one. A single value that more works hold than its
    neighbours is a step of its own, with `low` equal to `high`.
    """

    low: Fraction | None
    high: Fraction | None
    share: Fraction


@dataclass(frozen=True, slots=True)
class Bound:
    """How one bound behaves over the years: median, spread (highest - lowest), and trend.

    `stable` = all equal within stated precision. `tau` is Kendall's rank correlation of bound with year (tau-b),
    `p` its two-sided p (see `trend.kendall`); both None where fewer than four works state the bound, or where all
    state the same or in one year.
    """

    stated: int
    median: Fraction
    spread: Fraction
    stable: bool
    tau: float | None
    p: float | None


class Verdict(StrEnum):
    """What the statements come to."""

    UNANIMOUS = "unanimous"
    CONSISTENT = "consistent"
    DRIFTING = "drifting"
    CONFLICTING = "conflicting"
    SINGLE = "single author"
    SILENT = "silent"


@dataclass(frozen=True, slots=True)
class Side:
    """Authors who say the same, with what they say in print form."""

    says: str
    works: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class RangeAgreement:
    """Agreement of ranges. `core` is None where no value is in all; `majority` are the stretches with share >= 1/2.

    `envelope` is the hull of all that anybody states, extremes included; the rest is of typical ranges.
    """

    core: Span | None
    envelope: Span
    coverage: tuple[Step, ...]
    majority: tuple[Span, ...]
    lower: Bound | None
    upper: Bound | None


@dataclass(frozen=True, slots=True)
class StateAgreement:
    """Agreement of states: mean weight of each state named by anybody (in vocabulary order, sums to 1).

    `core` are the states that every author allows, `envelope` those that any allows. `positions` is the agreement
    of places along the spectrum (0 = first state) for ordered states; None for others.
    """

    weights: tuple[tuple[str, Fraction], ...]
    core: tuple[str, ...]
    envelope: tuple[str, ...]
    positions: RangeAgreement | None = None


@dataclass(frozen=True, slots=True)
class Count:
    """How many stand behind a finding: works that speak, their authors or teams of authors, those of these who give
    something of their own, works that only repeat another, and works that treat the taxon and say nothing."""

    works: int
    authors: int
    independent: int
    repeated: int
    silent: int


@dataclass(frozen=True, slots=True)
class Finding:
    """One character at one stage: the evidence by year, the agreement, the verdict in a word and in a sentence."""

    character: str
    stage: str
    evidence: tuple[Evidence, ...]
    agreement: RangeAgreement | StateAgreement | None  # None: nobody says anything
    verdict: Verdict
    remarks: tuple[str, ...]  # "the lower bound never moved (22 mm in 8 works); the upper rose from 34 to 60 mm"
    sides: tuple[Side, ...]  # more than one where the verdict is conflicting
    silent: tuple[str, ...]  # ids of works that treat the taxon and leave the character out
    count: Count


@dataclass(frozen=True, slots=True)
class Diagnosis:
    """Findings in the order of the vocabulary, and the merged text with source marks [1], [2] into `sources`."""

    findings: tuple[Finding, ...]
    text: str
    sources: tuple[str, ...]  # ids of works, numbered from 1 in the text
    works: tuple[str, ...]  # ids of all works whose treatments were asked
