"""A working criterion made ready: its limit and its supporting traits as values, and what `check` says against it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.bounds import bounds
from auctorum.characters.read import read_statement
from auctorum.characters.states import state_names
from auctorum.characters.values import Modality, Range, Reading, Share, States, Value
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.corpus.model import Corpus
from auctorum.corpus.readings import check_readings, find_character, stage_that_counts
from auctorum.corpus.resolve import NeverAccepted, find_taxon, lookup
from auctorum.problems import AuctorumError, Problem, Severity
from auctorum.records.schema import Criterion, Decisive, Supporting

MAY_DECIDE = (Kind.MEASURE, Kind.COUNT, Kind.RATIO, Kind.ORDERED)  # of these one value lies beyond another
_ONE_STATE = "give one state of the character: `at-least: pubescent`"


class UnusableCriterion(AuctorumError, ValueError):
    """A decisive trait that decides nothing; `why` in a clause, `todo` what to do about it."""

    def __init__(self, why: str, todo: str) -> None:
        super().__init__(why, todo)
        self.why, self.todo = why, todo

    def __str__(self) -> str:
        return self.why

    @property
    def remedy(self) -> str:  # type: ignore[override]
        return self.todo


@dataclass(frozen=True, slots=True)
class Limit:
    """A threshold: plants fit from `value` on if `at_least`, else up to it.

    `value` is in the canonical unit of the character; of ordered states it is the place of the state on the spectrum
    (0 = first). `stage` is the one under which the character is compared.
    """

    character: str
    stage: str
    value: Fraction
    at_least: bool
    printed: str  # as the criterion spells it: `25 mm`


@dataclass(frozen=True, slots=True)
class Trait:
    """A supporting trait; `values` are the ranges, or the states in one value, that speak for the taxon."""

    character: str
    stage: str
    values: tuple[Value, ...]
    printed: str
    weight: Decimal


def limit_of(decisive: Decisive, vocabulary: Vocabulary) -> Limit:
    """The threshold of a decisive trait.

    Raises UnusableCriterion where it gives none, or both, or none that a plant can pass; UnknownCharacter, and what
    `read_statement` raises, for words that cannot be read.
    """
    character = find_character(decisive.character, vocabulary)
    if bool(decisive.at_least) == bool(decisive.at_most):
        raise UnusableCriterion("the decisive trait needs one threshold", "give one of `at-least:` and `at-most:`")
    if character.kind not in MAY_DECIDE:
        why = f"`{character.name}` has no threshold: its {_THINGS[character.kind]} have no lower and higher"
        raise UnusableCriterion(why, "decide by a measure, a count, a ratio or an ordered character; let it support")
    said = decisive.at_least or decisive.at_most
    readings = _read(said, character)
    one = _figure(readings, said, character) if character.kind.is_numeric else _state(readings, said, character)
    return Limit(character.name, stage_that_counts(decisive.stage, character), one, bool(decisive.at_least), said)


_THINGS = {Kind.ANGLE: "directions", Kind.NOMINAL: "states", Kind.PRESENCE: "states"}


def trait_of(supporting: Supporting, vocabulary: Vocabulary) -> Trait:
    """A supporting trait; raises UnknownCharacter, and what `read_statement` raises."""
    character = find_character(supporting.character, vocabulary)
    readings = _read(supporting.value, character)
    stage = supporting.stage or next((one.stage for one in readings if one.stage), "")
    values: tuple[Value, ...] = tuple(one.value for one in readings if isinstance(one.value, Range))
    shares = [share for one in readings if isinstance(one.value, States) for share in one.value.shares]
    if shares:
        values = (States(tuple(dict.fromkeys(shares))),)
    return Trait(
        character.name, stage_that_counts(stage, character), values, supporting.value, supporting.weight
    )  # fmt: skip


def check_criteria(corpus: Corpus) -> list[Problem]:
    """What makes a working criterion decide nothing, or not what is meant; unreadable words are told by the linker."""
    return [problem for criterion in corpus.criteria for problem in _faults(criterion, corpus)]


def _faults(criterion: Criterion, corpus: Corpus) -> list[Problem]:
    decisive, found = criterion.decisive, []
    if bool(decisive.at_least) == bool(decisive.at_most):
        return []  # the linker tells it
    try:
        limit_of(decisive, corpus.vocabulary)
    except UnusableCriterion as error:
        found.append(error.at(decisive.place, "at-least" if decisive.at_least else "at-most"))
    except AuctorumError:
        return []
    found += _repeated_traits(criterion, corpus)
    for key, said in (("taxon", criterion.taxon), ("otherwise", criterion.otherwise)):
        found += _never_accepted(criterion, key, said, corpus)
    if criterion.otherwise and criterion.otherwise.split() == criterion.taxon.split():
        what = f"the criterion `{criterion.id}` gives every plant the same name"
        found.append(Problem(criterion.place, what, "give `otherwise:` another name, or none", within=("otherwise",)))
    return found


def _repeated_traits(criterion: Criterion, corpus: Corpus) -> list[Problem]:
    """Supporting traits that are the decisive one, or one another, or a ratio that the decisive measure is part of."""
    decisive, found = criterion.decisive, []
    deciding, seen = _compared(decisive, corpus.vocabulary), set()
    for trait in criterion.supporting:
        key = _compared(trait, corpus.vocabulary)
        if key == deciding:
            what, todo = f"`{trait.character}` decides, and supports itself", "leave it out of `supporting:`"
            found.append(Problem(trait.place, what, todo, within=("character",)))
        elif key in seen:
            what = f"`{trait.character}` supports twice at one stage"
            found.append(Problem(trait.place, what, "make one value of the two", within=("character",)))
        elif trait.character in corpus.vocabulary and decisive.character in corpus.vocabulary[trait.character].of:
            what = f"`{trait.character}` is reckoned from `{decisive.character}`, which decides: it tells nothing new"
            todo = "leave it out, or know that it counts the same trait again"
            found.append(Problem(trait.place, what, todo, Severity.WARNING, ("character",)))
        seen.add(key)
    return found


def _compared(trait: Decisive | Supporting, vocabulary: Vocabulary) -> tuple[str, str]:
    """Character, and the stage under which it is compared."""
    known = vocabulary.get(trait.character)
    return trait.character, stage_that_counts(trait.stage, known) if known is not None else trait.stage


def _never_accepted(criterion: Criterion, key: str, said: str, corpus: Corpus) -> list[Problem]:
    try:
        if said:
            find_taxon(corpus, lookup(corpus, said))
    except NeverAccepted as error:
        what = f"criterion `{criterion.id}`: {error}"
        severity = Severity.ERROR if key == "taxon" else Severity.WARNING
        return [Problem(criterion.place, what, "name a taxon that some work accepts", severity, (key,))]
    except AuctorumError:
        pass  # the linker tells it
    return []


def _read(said: str, character: Character) -> tuple[Reading, ...]:
    readings = read_statement(said, character)
    check_readings(readings, character, said)
    return readings


def _figure(readings: tuple[Reading, ...], said: str, character: Character) -> Fraction:
    """The one figure of a threshold in the canonical unit."""
    ranges = [one.value for one in readings if isinstance(one.value, Range)]
    if len(ranges) == 1 and (one := ranges[0]).low is not None and not one.more and not one.approximate:
        found = bounds(one, character.unit)
        if found.low is not None and found.low == found.high and found.least is found.most is None:
            return found.low
    raise UnusableCriterion(f"`{said}` is no threshold, which is one figure", "give one figure with its unit: `25 mm`")


def _state(readings: tuple[Reading, ...], said: str, character: Character) -> Fraction:
    """The place of the one state of a threshold."""
    shares = [share for one in readings if isinstance(one.value, States) for share in one.value.shares]
    names = state_names(character)
    if len(shares) != 1 or shares[0] != Share(shares[0].state, None, Modality.ALWAYS):
        raise UnusableCriterion(f"`{said}` is no threshold, which is one state", _ONE_STATE)
    if shares[0].state not in names:
        raise UnusableCriterion(f"`{said}` is no state on the spectrum of `{character.name}`", _ONE_STATE)
    return Fraction(names.index(shares[0].state))
