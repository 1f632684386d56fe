"""What the checking of labels gives, as frozen values; taxa are ids of `corpus.taxa`."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from auctorum.circumscription.intervals import Interval
from auctorum.determination.criteria.criterion import Judgement
from auctorum.determination.model import Wording
from auctorum.records.schema import Criterion


class How(StrEnum):
    """How the name on a label stands to the names of the knowledge base."""

    RIGHT = "right"
    MISSPELT = "misspelt"
    SEVERAL = "several possible"
    NOT_FOUND = "not found"


class LabelVerdict(StrEnum):
    """What the plant's own traits say of the name on its label."""

    CONSISTENT = "consistent"
    CONTRADICTED = "contradicted"
    NOT_TESTABLE = "not testable"


class Strength(StrEnum):
    """How far one trait speaks against the name."""

    NONE = "inside"
    WEAK = "weak"
    STRONG = "strong"


@dataclass(frozen=True, slots=True)
class Matched:
    """The name that a label means. `names` are ids, the likeliest first; `differences` are in words, `o for u`.

    `form` tells what differs in form alone (capitals, the rank left out), `set_aside` what stands beside it (`cf.`).
    `near` are printed names where none was near enough, `why` the reason.
    """

    how: How
    names: tuple[str, ...] = ()
    differences: tuple[str, ...] = ()
    form: tuple[str, ...] = ()
    set_aside: tuple[str, ...] = ()
    near: tuple[str, ...] = ()
    why: str = ""


@dataclass(frozen=True, slots=True)
class Meaning:
    """The taxon that a name stands for: None where it cannot be tested, with why. `standing` is a sentence or ""."""

    taxon: str | None
    standing: str = ""
    why: str = ""


@dataclass(frozen=True, slots=True)
class Against:
    """A work that the plant lies outside of; `gap` in the canonical unit, in steps of a spectrum, 0 for nominal states.

    `stated` is its statement in print, `verbatim` its words; of several statements of one work the nearest.
    """

    statement: str
    work: str
    byline: str
    page: str
    verbatim: str
    stated: str
    gap: Fraction
    below: bool  # the plant is below what is stated, else above it or beside it


@dataclass(frozen=True, slots=True)
class TraitTest:
    """One trait of the plant against all that is stated of the taxon; `against` stands with the nearest first.

    `works` counts those that state the trait, each once, without those that only repeat another. `why` says why it was
    not tested; "" where it was.
    """

    character: str
    stage: str
    observed: str
    works: int
    against: tuple[Against, ...]
    strength: Strength
    gap: str = ""  # how far it lies outside the nearest, in print; "" for nominal states and where nothing speaks
    why: str = ""

    @property
    def tested(self) -> bool:
        return not self.why


@dataclass(frozen=True, slots=True)
class Instead:
    """What the plant is under all authors together; `name` in open nomenclature.

    `same` where that is the taxon of the label, `inside` where works place it in that taxon.
    """

    taxon: str
    name: str
    probability: float
    wording: Wording
    same: bool
    inside: bool


@dataclass(frozen=True, slots=True)
class ByCriterion:
    """A working criterion that decides about the taxon of the label; `agrees` None where it does not decide."""

    criterion: Criterion
    judged: Judgement
    agrees: bool | None


@dataclass(frozen=True, slots=True)
class LabelFinding:
    """One label: what it says, what that means, and what the plant shows. Places and remarks are left out."""

    id: str
    seller: str
    date: str
    label: str
    matched: Matched
    meaning: Meaning
    name: str  # of the taxon, as its latest work calls it; "" where there is none
    traits: tuple[TraitTest, ...]
    verdict: LabelVerdict
    why: str  # why it was not testable; "" where it was
    instead: Instead | None
    criteria: tuple[ByCriterion, ...]
    stage_taken: bool = False  # no growth stage was noted, and figures were taken as those of a mature plant

    def of_strength(self, strength: Strength) -> tuple[TraitTest, ...]:
        """The traits that speak against the name so."""
        return tuple(one for one in self.traits if one.strength is strength)


@dataclass(frozen=True, slots=True)
class SellerSum:
    """The labels of one seller ("" where none is noted), counted.

    `interval` is Wilson's for the share of contradicted ones among those tested; None where fewer than five were.
    """

    seller: str
    labels: int
    right: int
    misspelt: int
    several: int
    not_found: int
    consistent: int
    contradicted: int
    not_testable: int
    interval: Interval | None

    @property
    def tested(self) -> int:
        return self.consistent + self.contradicted


@dataclass(frozen=True, slots=True)
class Trial:
    """The rule tried on named plants of the knowledge base: how many were tested, and contradicted under their name."""

    tested: int
    contradicted: int


@dataclass(frozen=True, slots=True)
class LabelReport:
    """The labels in the order of their table, sellers by their names, then all; criteria that could not be used."""

    findings: tuple[LabelFinding, ...]
    sellers: tuple[SellerSum, ...]
    whole: SellerSum
    trial: Trial
    unusable: tuple[tuple[str, str, str], ...]  # id of a criterion, why, what to do
