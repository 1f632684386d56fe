"""What a survey says, as frozen values: how many plants of a taxon there are, by whose definition, and where.

A plant counts as the taxon under the descriptions of an author, of all authors or of one's own plants where it is
determined as it plainly or with cf.; with aff. or indet. it is undecided. Under a working criterion it counts where it
fits (where it does not, for the taxon of `otherwise`), and is undecided where it is borderline. By the names given it
counts where its observer named it so, or as a part of it; named as a whole that takes in the taxon, or as nothing that
anybody accepts, it is undecided. A plant on which nothing was observed that the view states is not judged.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import NamedTuple

from auctorum.circumscription.intervals import Interval, wilson
from auctorum.corpus.criteria import Limit
from auctorum.determination.counting.comparing import Difference
from auctorum.determination.counting.counts import Expected
from auctorum.determination.counting.dip import DipTest
from auctorum.determination.places.habitat import Envelope
from auctorum.determination.places.suitability import Suitability, Worth

NO_SITE = ""  # the id under which plants without a site are counted


class Ground(StrEnum):
    """By what plants are counted."""

    NAMES = "names given"
    CRITERION = "criterion"
    ALL = "all authors"
    OWN = "own plants"
    AUTHOR = "author"


class Stance(StrEnum):
    """What an author makes of the taxon."""

    TELLS = "tells it from others"
    ALONE = "describes no other"  # a plant counts where nothing observed lies outside what is stated
    SINKS = "sinks it"  # counts none of it
    BARE = "accepts it without a description"  # so that nothing can be counted


@dataclass(frozen=True, slots=True)
class Basis:
    """One view under which plants are counted; `stance` is that of an author, TELLS for all other grounds.

    `id` is that of the work or the criterion, else the ground; unique together with the ground. `remark` says what a
    reader of the count should know: `sinks it in C. album`; "" where there is nothing.
    """

    ground: Ground
    id: str
    title: str  # byline, or the title of the criterion with its author
    stance: Stance = Stance.TELLS
    remark: str = ""


@dataclass(frozen=True, slots=True)
class Count:
    """Plants of one place under one view; the four numbers sum to all plants there.

    `expected` is the number that truly fit, given the error of each measurement; None but under a criterion.
    """

    named: int
    others: int
    undecided: int
    not_judged: int
    expected: Expected | None = None

    @property
    def judged(self) -> int:
        """Plants that could be judged, the undecided among them: what `named` is a share of."""
        return self.named + self.others + self.undecided

    @property
    def share(self) -> float | None:
        """The share named of those judged; None without any."""
        return self.named / self.judged if self.judged else None

    @property
    def interval(self) -> Interval:
        """Wilson's interval of the share, 95 %; 0 to 1 where nothing was judged."""
        return wilson(self.named, self.judged)


@dataclass(frozen=True, slots=True)
class Place:
    """The plants of one site, or of all; `counts` stand in the order of the survey's bases.

    `gap` is the dip test of the decisive character here; None where nothing was measured, or the character has states.
    """

    site: str  # id; NO_SITE for plants without one, and for all plants together
    island: str
    plants: int
    counts: tuple[Count, ...]
    gap: DipTest | None


class Reading(NamedTuple):
    """The decisive character of one plant, in its canonical unit; of ordered states the place on the spectrum."""

    value: Fraction
    error: Fraction  # half-width within which the true value lies
    site: str  # NO_SITE where it has none
    taxon: str  # as its observer named it; "" without a name, or without one that anybody accepts


@dataclass(frozen=True, slots=True)
class Step:
    """How many plants count if the threshold were here, and the share of all measured."""

    threshold: Fraction
    named: int
    share: float


@dataclass(frozen=True, slots=True)
class Bound:
    """What one author states of the taxon in the decisive character, and the plants that each bound would count.

    All in the canonical unit; None where a bound is not stated. `least` and `most` are the extremes; those of the
    typical range where none are stated. `from_low` are the plants at or above `low` (`least` for `from_least`),
    `upto_high` those at or below `high`, `inside` those from `low` to `high`. `repeats` is the byline of an earlier
    author whose figures these are; "" for own ones.
    """

    work: str
    title: str  # byline
    low: Fraction | None
    high: Fraction | None
    least: Fraction | None
    most: Fraction | None
    from_low: int | None
    from_least: int | None
    upto_high: int | None
    inside: int | None
    repeats: str = ""


@dataclass(frozen=True, slots=True)
class Curve:
    """Count against threshold in the decisive character; `steps` are all thresholds at which the count changes.

    Ascending; a plant fits at or above the threshold if `limit.at_least`, else at or below it. `fitting`: those that
    fit are counted, else all the others, for a taxon that a criterion names as `otherwise`. `proposed`: the limit is
    not that of a criterion of the knowledge base, but the one that parts the taxon best by what authors state.
    """

    limit: Limit
    fitting: bool
    proposed: bool
    measured: int
    steps: tuple[Step, ...]
    bounds: tuple[Bound, ...]  # by date
    unit: str  # canonical; "" for counts, ratios and states
    states: tuple[str, ...] = ()  # of an ordered character, by place


class By(StrEnum):
    """Who, or what, measured."""

    OBSERVER = "observer"
    INSTRUMENT = "instrument"


@dataclass(frozen=True, slots=True)
class Measurers:
    """Two observers, or two instruments, beside each other on plants of the same named taxon at the same site.

    `difference` is by how much the first measures more, its median with an interval. The counts are those
    at the threshold: as measured, with the figures of the first brought to the measure of the second, and the reverse;
    None where no site has plants of one name by both. `thinned`: only evenly chosen figures were compared, since there
    are so many.
    """

    by: By
    first: str
    second: str
    difference: Difference
    as_measured: int
    as_second: int | None
    as_first: int | None
    thinned: bool = False


@dataclass(frozen=True, slots=True)
class Wanted:
    """How many plants more to measure at one place, if the share stays as it is; `none` where no plant counts.

    `none` are the share that the rule of three gives and the exact one, below which the true share lies (95 %).
    """

    site: str  # NO_SITE for plants without one
    overall: bool
    named: int
    judged: int
    more: int
    none: tuple[float, float] | None


@dataclass(frozen=True, slots=True)
class Candidates:
    """Sites that were not searched yet, best first, beside the habitat of those where the taxon is at home.

    At home it is where it makes up at least a quarter of the plants judged. `odd` are the sites with fewer, which say
    nothing of its habitat: id, plants of it, plants judged. `worth.absent` are sites of this survey that gave none.
    """

    around: Envelope
    ranked: tuple[Suitability, ...]
    worth: Worth
    by_names: bool  # the plants are counted by the names that observers gave; else under the main view
    odd: tuple[tuple[str, int, int], ...]


@dataclass(frozen=True, slots=True)
class Survey:
    """All of it. `plants` count: wild ones. `main` is the place in `bases` of the view that decides what is wanted.

    `names` are short names of the taxa that observers gave or that stand in a remark; `silent` the bylines of authors
    that say nothing of the taxon. `left_out` says in sentences what could not be used.
    """

    taxon: str
    name: str
    names: tuple[tuple[str, str], ...]
    plants: int
    cultivated: int
    bases: tuple[Basis, ...]  # names given, criteria, all authors, own plants, then authors by date
    main: int
    whole: Place
    sites: tuple[Place, ...]  # in the order of sites.csv, then others by id, then those without a site
    silent: tuple[str, ...]
    curve: Curve | None
    readings: tuple[Reading, ...]  # in ascending order
    measurers: tuple[Measurers, ...]
    confounded: bool  # each observer had one instrument of their own: which of the two differs cannot be told
    half_width: float
    wanted: tuple[Wanted, ...]  # overall, then by site
    candidates: Candidates
    left_out: tuple[str, ...]
