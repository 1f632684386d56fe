"""The decisive character and threshold that the accounts bear out best between a taxon and its sisters."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil, floor
from statistics import fmean

from auctorum.characters.show import format_span
from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.cuts import Cut
from auctorum.circumscription.separation import POOR, Parting
from auctorum.circumscription.separation_known import Knowledge, Known
from auctorum.circumscription.separation_works import stances
from auctorum.circumscription.wording import of_habitat
from auctorum.corpus.criteria import MAY_DECIDE, Limit
from auctorum.corpus.model import Corpus
from auctorum.corpus.readings import UNSTATED
from auctorum.problems import AuctorumError

TROUBLE = 0.01  # what each further point of `cost` counts beside the error: one plant in a hundred (our judgement)
_HALF = Fraction(1, 2)
Partings = Mapping[str, Sequence[Parting]]  # by sister, those between the taxon and it


class NoThreshold(AuctorumError, LookupError):
    """No threshold parts the taxon from any of the others; `character` is the only one that was tried, or empty."""

    remedy = "see `auctorum compare` for what tells them apart, and name other taxa with --against"

    def __init__(self, taxon: str, others: tuple[str, ...], character: str = "") -> None:
        super().__init__(taxon, others, character)
        self.taxon, self.others, self.character = taxon, others, character

    def __str__(self) -> str:
        by = f" of `{self.character}`" if self.character else ""
        return f"no threshold{by} parts {self.taxon} from {', '.join(self.others)} by what authors state"


@dataclass(frozen=True, slots=True)
class Stand:
    """How a threshold stands between the taxon and one sister, by what authors state of both.

    `lost` is the part of the taxon that does not fit, `strays` the part of the sister that does; None where nobody
    states the character for one of them. `support` and `against` are works as in `Parting`.
    """

    sister: str
    lost: float | None
    strays: float | None
    support: tuple[str, ...] = ()
    against: tuple[str, ...] = ()

    @property
    def error(self) -> float | None:
        """Expected error where a plant is as likely of the one as of the other, 0 to 1; None where nothing is known."""
        return None if self.lost is None or self.strays is None else (self.lost + self.strays) / 2

    @property
    def parts(self) -> bool:
        """Whether the threshold tells the two apart better than a guess does by half."""
        return self.error is not None and self.error < POOR

    @property
    def cautious(self) -> float:
        """The error as it would be with one more author, by whom the threshold tells nothing: few authors weigh less.

        >>> round(Stand("a", 0.0, 0.0, support=("x",)).cautious, 3)
        0.25
        """
        authors = len(self.support) + len(self.against)
        return (authors * self.error + 0.5) / (authors + 1) if self.error is not None and self.parts else 0.5


@dataclass(frozen=True, slots=True)
class Threshold:
    """A threshold with how it stands to each sister, in their order; the smaller `score`, the better."""

    limit: Limit
    stands: tuple[Stand, ...]
    score: float

    @property
    def worst(self) -> Stand:
        """The stand to the sister that it parts least well; of those that it does not part to none."""
        return max((one for one in self.stands if one.parts), key=lambda one: one.error or 0.0)


def best_threshold(
    corpus: Corpus, taxon: Knowledge, sisters: Mapping[str, Knowledge], partings: Partings, character: str | None
) -> Threshold | None:
    """The threshold with the least score; None where none parts the taxon from any sister.

    The score is the mean error over the sisters, each as `Stand.cautious`, and `TROUBLE` for what is hard to see. Of
    one character and side the value is taken that serves best for the sister that it serves worst.
    """
    found = [
        threshold
        for name, stage in taxon
        if name == character or ((character is None and _is_of_plants(corpus.vocabulary[name])) and stage != UNSTATED)
        for at_least in (True, False)
        if (threshold := _of_side(corpus.vocabulary[name], stage, at_least, taxon, sisters, partings)) is not None
    ]
    return min(found, key=lambda one: one.score, default=None)


def stand(limit: Limit, one: Known | None, sister: str, other: Known | None, character: Character) -> Stand:
    """How a threshold stands between what is known of the taxon and of a sister."""
    if one is None or other is None:
        return Stand(sister, None, None)
    low, high = _part_below(limit, one, character), _part_below(limit, other, character)
    if low is None or high is None:
        return Stand(sister, None, None)
    lost, strays = (low, 1 - high) if limit.at_least else (1 - low, high)
    lower, upper = (other, one) if limit.at_least else (one, other)
    who = stances(lower, upper, character, Cut(_first_above(limit, character), lost, strays))
    return Stand(sister, lost, strays, who.support, who.against)


def _is_of_plants(character: Character) -> bool:
    """Whether a character is of the plants themselves: where they grow supports, and does not decide."""
    return not of_habitat(character)


def _of_side(
    character: Character,
    stage: str,
    at_least: bool,
    taxon: Knowledge,
    sisters: Mapping[str, Knowledge],
    partings: Partings,
) -> Threshold | None:
    key = (character.name, stage)
    if character.kind not in MAY_DECIDE:
        return None
    tried = []
    for value in dict.fromkeys(_values(character, stage, at_least, partings)):
        limit = _limit(character, stage, value, at_least)
        stands = tuple(stand(limit, taxon[key], name, known.get(key), character) for name, known in sisters.items())
        if any(one.parts for one in stands):
            score = fmean(one.cautious for one in stands) + TROUBLE * float(character.cost - 1)
            tried.append(Threshold(limit, stands, score))
    return min(tried, key=lambda one: (-sum(each.parts for each in one.stands), one.worst.error), default=None)


def _values(character: Character, stage: str, at_least: bool, partings: Partings) -> Iterator[Fraction]:
    """The best cuts between the taxon and each sister that lies on the other side, as the first value that fits."""
    for sister, several in partings.items():
        for one in several:
            fits = one.cut is not None and (one.character, one.stage) == (character.name, stage)
            if fits and one.cut is not None and (one.lower == sister) is at_least:
                value = one.cut.value
                if character.kind is Kind.ORDERED:
                    value = Fraction(ceil(value) if at_least else floor(value))
                elif character.kind is Kind.COUNT and not at_least:
                    value -= 1
                yield value


def _limit(character: Character, stage: str, value: Fraction, at_least: bool) -> Limit:
    if character.kind is Kind.ORDERED:
        return Limit(character.name, stage, value, at_least, state_names(character)[int(value)])
    printed = format_span(value, value, character.unit)
    return Limit(character.name, stage, value, at_least, printed)


def _part_below(limit: Limit, known: Known, character: Character) -> float | None:
    """The part of the plants that lies below the first value above the limit, or below the limit itself."""
    place = _first_above(limit, character)
    if character.kind is Kind.ORDERED:
        names = state_names(character)
        if not known.weights:
            return None
        return float(sum(weight for state, weight in known.weights.items() if state in names[: ceil(place)]))
    if known.density is None:
        return None
    return known.density.below(float(place - _HALF if character.kind is Kind.COUNT else place))


def _first_above(limit: Limit, character: Character) -> Fraction:
    """Where the upper side begins, as a `Cut` has it: up to 3 petals parts at 4."""
    if limit.at_least or character.kind not in (Kind.COUNT, Kind.ORDERED):
        return limit.value
    return limit.value + 1
