"""A determination in sentences for people: how sure it is and why, and what each character says."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from fractions import Fraction

from auctorum.characters.show import format_number
from auctorum.circumscription.phrases import at_stage, capital, listed, listed_some
from auctorum.circumscription.wording import MATURE
from auctorum.corpus.readings import UNSTATED
from auctorum.determination.model import Candidate, Contribution, Determination, Wording
from auctorum.determination.wording import MANY, qualified
from auctorum.records.schema import Thresholds

Names = Mapping[str, str]  # taxon -> what it is called

LEAST = 0.01  # candidates below this are summed up
_ROUNDING = 1e-6  # by which a float may miss a whole percent
TIE = 0.005  # less than that between two probabilities is no difference
MOST_LISTED = 8  # candidates in a table
NAMED = 3  # taxa that a clause names before it counts the rest
LITTLE = 1.5  # times as likely: below that a character says little
# Times as likely from which on a character speaks in that way; common words for them are ours.
_STRENGTHS = (
    (100.0, "speaks very strongly"),
    (10.0, "speaks strongly"),
    (3.0, "speaks clearly"),
    (0, "speaks a little"),
)
_MOST = 1000  # times as likely; beyond, a figure says no more


def percent(probability: float) -> str:
    """A probability as people read it, rounded down; never 0 or 100 %, which no determination reaches.

    >>> percent(0.924), percent(0.9991), percent(0.0004)
    ('92 %', 'over 99 %', 'under 1 %')
    """
    if probability >= 0.995:
        return "over 99 %"
    return f"{math.floor(probability * 100 + _ROUNDING)} %" if probability >= 0.01 - _ROUNDING else "under 1 %"


def times(factor: float) -> str:
    """How many times as likely, with the digits it bears.

    >>> [times(one) for one in (1.64, 4.7, 13.2, 347, 12345.0)]
    ['1.6 times', '5 times', '13 times', '300 times', 'more than 1000 times']
    """
    if factor > _MOST:
        return f"more than {_MOST} times"
    if factor < 2.95:
        return f"{format_number(Fraction(round(factor, 1)), 2)} times"
    place = -2 if factor >= 100 else (-1 if factor >= 20 else 0)
    return f"{round(factor, place):.0f} times"


def lead(one: Contribution) -> str:
    """`spur length 31 mm`, `young spur colour green`: what was observed, before what it says."""
    stage = "" if one.stage in ("", MATURE, UNSTATED) else f"{one.stage} "
    return f"{stage}{one.character} {one.said}"


# --- the name and why


def headline(found: Determination, names: Names, genus: str = "") -> str:
    """The name in open nomenclature with its probability: `Exemplum album cf. var. longum — 92 %`."""
    if found.best is None:
        return qualified(genus or "plant", Wording.INDET) + " — nothing to go by"
    likeliest = found.candidates[0]
    name = names[likeliest.taxon]
    chance = "the only candidate" if len(found.candidates) == 1 else percent(likeliest.probability)
    if found.wording is Wording.INDET:
        said = "no candidate is likelier than another" if tied(found) else f"{name} is likeliest, {chance}"
        return f"{qualified(genus or name, found.wording)} — {said}"
    return f"{qualified(name, found.wording)} — {chance}"


def why(found: Determination, thresholds: Thresholds) -> str:
    """A sentence on the wording: the thresholds, and what lies outside all that is stated of the likeliest taxon."""
    if found.best is None:
        return "Nothing that was observed could be used, so no taxon is likelier than before."
    if nowhere(found):
        told = listed(dict.fromkeys(nowhere(found)))
        return (
            f"What was observed of {told} lies outside all that is stated of any candidate: look at it and at its "
            "unit again, or the plant is none of them."
        )
    if found.misfits:
        told = listed(dict.fromkeys(found.misfits))
        lies = "lies" if len(set(found.misfits)) == 1 else "lie"
        most = (
            "`aff.` at most, near it and not quite it"
            if len(found.misfits) >= MANY
            else "`cf.` at most, to be compared"
        )
        return f"{capital(told)} {lies} outside all that is stated of it: {most}."
    if len(found.candidates) == 1:
        return "No other taxon was considered, so this says only that nothing observed speaks against it."
    return {
        Wording.PLAIN: f"A name is given plainly from {thresholds.plain * 100:.0f} % on.",
        Wording.CF: f"`cf.`, to be compared: a name is given plainly from {thresholds.plain * 100:.0f} % on.",
        Wording.AFF: f"`aff.`, near it: `cf.` begins at {thresholds.cf * 100:.0f} %.",
        Wording.INDET: f"`indet.`, not determined: no candidate reaches {thresholds.aff * 100:.0f} %.",
    }[found.wording]


def tied(found: Determination) -> bool:
    """Whether the first two candidates are as likely as each other."""
    first, *rest = found.candidates
    return bool(rest) and first.probability - rest[0].probability < TIE


def nowhere(found: Determination) -> tuple[str, ...]:
    """Characters in which the plant lies outside all that is stated of every candidate that anything is stated of."""
    whole = len(found.candidates)
    return tuple(
        one.character for one in found.contributions if one.beyond and len(one.beyond) + len(one.silent) == whole
    )


def told_apart(candidates: Sequence[Candidate]) -> tuple[tuple[Candidate, ...], tuple[Candidate, ...]]:
    """The candidates to be listed, eight at most, and those that are summed up: with all below 1 %; never the first."""
    listed_ = [one for one in candidates[:MOST_LISTED] if one is candidates[0] or one.probability >= LEAST]
    return tuple(listed_), tuple(candidates[len(listed_) :])


# --- what each character says


def telling(one: Contribution, found: Determination, names: Names) -> str:
    """What one character says of the likeliest candidate beside the next that it is stated of, and whom it excludes."""
    return f"{lead(one)}: {_said(one, found, names)}."


def _said(one: Contribution, found: Determination, names: Names) -> str:
    order = [each.taxon for each in found.candidates]
    if one.beyond and len(one.beyond) + len(one.silent) == len(order):
        nearest = one.support[0] - max(one.support[1:], default=one.support[0]) >= math.log(LITTLE)
        told = f"nearest to {names[order[0]]}" if nearest else "so it tells none from another"
        return f"outside all that is stated of any candidate, {told}"
    if len(order) == 1:
        outside = order[0] in one.beyond
        return "outside all that is stated of it" if outside else "within what is stated of it"
    first = order[0]
    place = _rival(one, order)
    said = [_between(one, place, first, order[place], names)]
    if silent := [taxon for taxon in (first, order[place]) if taxon in one.silent]:
        told = listed(names[taxon] for taxon in silent)
        said.append(f"nothing is stated of it for {told}, where the mean of the others stands in")
    if first in one.beyond:
        said.append(f"outside all that is stated of {names[first]} itself")
    if others := [taxon for taxon in one.beyond if taxon != first]:
        said.append(f"outside all that is stated of {listed_some([names[taxon] for taxon in others], NAMED)}")
    return "; ".join(said)


def _rival(one: Contribution, order: Sequence[str]) -> int:
    """The place of the likeliest other candidate of which the character is stated; else of the next one."""
    return next((place for place, taxon in enumerate(order) if place and taxon not in one.silent), 1)


def _between(one: Contribution, place: int, first: str, second: str, names: Names) -> str:
    log = one.support[0] - one.support[place]
    factor = math.exp(min(abs(log), 50.0))
    if factor < LITTLE:
        return f"says little between {names[first]} and {names[second]}"
    for_, against = (first, second) if log > 0 else (second, first)
    strength = next(words for least, words in _STRENGTHS if factor >= least)
    return f"{strength} for {names[for_]} ({times(factor)} as likely as in {names[against]})"


def silence(found: Determination, names: Names) -> str:
    """Of which characters nothing is stated for the next candidate, so that they can't tell it apart; "" for none."""
    if len(found.candidates) < 2:
        return ""
    second = found.candidates[1].taxon
    several = [one for one in found.contributions if second in one.silent]
    if not several:
        return ""
    told = listed(dict.fromkeys(one.character for one in several))
    return f"For {names[second]}, the next candidate, nothing is stated of {told}: the mean of the others stands in."


def candidates_line(found: Determination, names: Names) -> str:
    """`C. album cf. var. longum 92 %; C. album var. giganteum 7 %; 12 others 1 %`."""
    if found.best is None:
        return f"{len(found.candidates)} candidates, none likelier by what was observed"
    several, rest = told_apart(found.candidates)
    several, rest = several[:NAMED], (*several[NAMED:], *rest)
    first = (
        names[several[0].taxon] if found.wording is Wording.INDET else qualified(names[several[0].taxon], found.wording)
    )
    said = [f"{first} {percent(several[0].probability)}"]
    said += [f"{names[one.taxon]} {percent(one.probability)}" for one in several[1:]]
    if found.wording is Wording.INDET:
        said[0] = f"indet.: {said[0]}"
    return "; ".join([*said, *others(rest)])


def others(rest: Sequence[Candidate]) -> tuple[str, ...]:
    """`12 others 1 % together`; nothing for none."""
    if not rest:
        return ()
    together = percent(sum(one.probability for one in rest))
    return (f"1 other {together}",) if len(rest) == 1 else (f"{len(rest)} others {together} together",)


def unused_words(one_character: str, stage: str, said: str, reason: str) -> str:
    """`young spur length 18 mm: stated of other stages only ...`."""
    stage = "" if stage in ("", MATURE, UNSTATED) else stage
    return f"{at_stage(one_character, stage)} {said}: {reason}."
