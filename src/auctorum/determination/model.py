"""What a determination says, as frozen values; taxa are ids of `corpus.taxa`."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Wording(StrEnum):
    """How sure a name is said to be, in open nomenclature (common practice, no source)."""

    PLAIN = "plain name"
    CF = "cf."  # to be compared: probably this
    AFF = "aff."  # near this, and not quite it
    INDET = "indet."  # not determined


@dataclass(frozen=True, slots=True)
class Candidate:
    """A taxon that the plant may be; `prior` is what it was given beforehand. Both are shares of 1."""

    taxon: str
    prior: float
    probability: float


@dataclass(frozen=True, slots=True)
class Contribution:
    """What one observed character at one stage says of the candidates.

    `support` stands in the order of the determination's candidates: the natural logarithm of how many times as likely
    the observation is in the taxon as on an average of all candidates; 0 says nothing, and so does one value for all.
    """

    character: str
    stage: str
    said: str  # the observation in print
    support: tuple[float, ...]
    silent: tuple[str, ...]  # taxa of which the view states nothing here; for them the average of the others stands
    beyond: tuple[str, ...]  # taxa for which it lies outside all that the view states, extremes and precision included


@dataclass(frozen=True, slots=True)
class Unused:
    """An observation that could not be used, and why."""

    character: str
    stage: str
    said: str
    why: str


@dataclass(frozen=True, slots=True)
class Determination:
    """A plant determined under one view.

    `candidates` and what hangs on them stand with the likeliest first; `contributions` with the one first that says
    most between the first two. `misfits` are the characters in which the plant lies outside all that is stated of the
    best candidate. `best` is None where nothing could be used.
    """

    view: str
    candidates: tuple[Candidate, ...]
    contributions: tuple[Contribution, ...]
    unused: tuple[Unused, ...]
    wording: Wording
    best: str | None
    misfits: tuple[str, ...]

    def probability(self, taxon: str) -> float:
        """That of the plant being this taxon; 0 for one that is no candidate."""
        return next((one.probability for one in self.candidates if one.taxon == taxon), 0.0)
