"""What the Code makes of an act, as frozen values: rulings by article, validity, legitimacy, the kind of name."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from enum import StrEnum

from auctorum.corpus.model import Act
from auctorum.nomenclature.editions import Edition
from auctorum.records.schema import ActKind


class Validity(StrEnum):
    """Whether an act publishes its name validly (ICN Art. 32-45). A designation that is not valid is no name."""

    VALID = "validly published"
    NOT_VALID = "not validly published"
    UNDETERMINED = "undetermined"


class Legitimacy(StrEnum):
    """Whether a validly published name is in accordance with the rules (ICN Art. 6.4, 52-54)."""

    LEGITIMATE = "legitimate"
    ILLEGITIMATE = "illegitimate"
    UNDETERMINED = "undetermined"


class Effect(StrEnum):
    """What one ruling does to the name."""

    BARS = "bars"  # it is not validly published, or not legitimate
    OPEN = "open"  # the records do not say enough
    REMARK = "remark"  # worth saying, without harm to the name


@dataclass(frozen=True, slots=True)
class Ruling:
    """What one rule says of one act.

    `key` names the ground (`no-latin`), `label` is the ground in the trade's words, `article` its number in the
    Shenzhen Code, `reason` a sentence, `look_up` what would settle an open question, `other` the name that stands
    in the way, if one does.
    """

    key: str
    effect: Effect
    label: str
    article: str
    reason: str
    look_up: str = ""
    other: str | None = None

    def shown(self, edition: Edition) -> str:
        """In short, with the article as the edition numbers it: `later homonym (Art. 53.1)`."""
        return f"{self.label} ({edition.cite(self.article)})" if self.article else self.label


@dataclass(frozen=True, slots=True)
class Judgement:
    """What the rules make of one act that puts a name forward.

    `treated_as` is the kind of act it is under the rules, whatever its author called it; `basionym` the name in
    parentheses, if it has one; `replaced` the older name whose type it takes without its epithet; `rank` its rank.
    `isonym_of` is the act that published the same name first (Art. 6.3 Note 2). `legitimacy` is None where the
    name is not validly published.
    """

    act: str
    name: str
    rank: str
    validity: Validity
    legitimacy: Legitimacy | None
    rulings: tuple[Ruling, ...]
    treated_as: ActKind
    basionym: str | None = None
    replaced: str | None = None
    isonym_of: str | None = None
    superfluous: bool = False
    conserved: bool = False

    @property
    def stands(self) -> bool:
        """Whether it may have published a name: it is not found to be invalid."""
        return self.validity is not Validity.NOT_VALID

    def bars(self) -> tuple[Ruling, ...]:
        """The rulings by which it is not validly published or not legitimate, first failure first."""
        return tuple(one for one in self.rulings if one.effect is Effect.BARS)

    def open(self) -> tuple[Ruling, ...]:
        """What the records leave open."""
        return tuple(one for one in self.rulings if one.effect is Effect.OPEN)


def barred(key: str, label: str, article: str, reason: str, other: str | None = None) -> Ruling:
    """A ruling against the name."""
    return Ruling(key, Effect.BARS, label, article, reason, other=other)


def left_open(key: str, label: str, article: str, reason: str, look_up: str) -> Ruling:
    """A question that the records leave open, and what to look up."""
    return Ruling(key, Effect.OPEN, label, article, reason, look_up)


def across(ruling: Ruling | None, act: Act, day: date) -> Ruling | None:
    """A ruling of a rule that holds from a day on, for an act whose date may fall on either side of it.

    None if the act certainly came out before; open if its span of dates holds the day.
    """
    if ruling is None or act.work.date.last_day < day:
        return None
    if act.work.date.first_day >= day or ruling.effect is not Effect.BARS:
        return ruling
    reason = f"{ruling.reason}; whether that was asked for depends on the date"
    return left_open(ruling.key, f"perhaps {ruling.label}", ruling.article, reason, "the date of publication")


def remarked(key: str, label: str, article: str, reason: str, other: str | None = None) -> Ruling:
    """A remark that does the name no harm."""
    return Ruling(key, Effect.REMARK, label, article, reason, other=other)
