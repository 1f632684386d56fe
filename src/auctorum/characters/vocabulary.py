"""The vocabulary: characters, their kinds and their states."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from enum import StrEnum


class Kind(StrEnum):
    """What sort of value a character takes (design: measure with a dimension, angle circular, ordered a spectrum)."""

    MEASURE = "measure"
    COUNT = "count"
    RATIO = "ratio"
    ANGLE = "angle"
    ORDERED = "ordered"
    NOMINAL = "nominal"
    PRESENCE = "presence"

    @property
    def is_numeric(self) -> bool:
        return self in (Kind.MEASURE, Kind.COUNT, Kind.RATIO, Kind.ANGLE)


@dataclass(frozen=True, slots=True)
class State:
    """One state of a character; `words` are synonyms and Latin forms; `colour` a reference or None."""

    name: str
    words: tuple[str, ...] = ()
    colour: str | None = None
    meaning: str = ""


@dataclass(frozen=True, slots=True)
class Character:
    """A character: structure and property, kind, canonical unit, states in order.

    `unit` is canonical for comparison (`mm`, `m`, `degree`; empty for counts, ratios and states).
    `stages` are the growth stages by which it is split, empty if it is not; `words` are other ways
    to name it; `how` says how to measure it, `cost` what trouble that is beside other characters (1 for a usual one).
    """

    name: str
    structure: str
    property: str
    kind: Kind
    unit: str = ""
    states: tuple[State, ...] = ()
    stages: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    how: str = ""
    meaning: str = ""
    cost: Decimal = Decimal(1)
    of: tuple[str, ...] = ()  # of a ratio the names of two measures, the first divided by the second; () if unknown

    def stages_in_order(self, told: Collection[str]) -> list[str]:
        """Those of `told`, each once: "" for none first, then the stages of the character, then others by name.

        >>> spur = Character("spur length", "spur", "length", Kind.MEASURE, stages=("young", "mature"))
        >>> spur.stages_in_order({"mature", "in bud", "", "young"})
        ['', 'young', 'mature', 'in bud']
        """
        known = [stage for stage in ("", *self.stages) if stage in told]
        return [*known, *sorted(set(told).difference(known))]


def folded(name: str) -> str:
    """A character's name in one spelling, whatever its case and blanks: for titles of columns.

    >>> folded(" Spur  length")
    'spur length'
    """
    return " ".join(name.split()).casefold()


@dataclass(frozen=True)
class Vocabulary(Mapping[str, Character]):
    """Every character by name, in the order of the vocabulary file."""

    characters: tuple[Character, ...] = ()
    _by_name: dict[str, Character] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "_by_name", {character.name: character for character in self.characters})

    def __getitem__(self, name: str) -> Character:
        return self._by_name[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._by_name)

    def __len__(self) -> int:
        return len(self._by_name)
