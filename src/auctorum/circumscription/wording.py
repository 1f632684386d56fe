"""How a description words a structure, a property and a growth stage (common practice, no source)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from auctorum.characters.vocabulary import Character, Kind
from auctorum.corpus.readings import UNSTATED


@dataclass(frozen=True, slots=True)
class Wording:
    """Words around the figures of a property; `least` and `most` lead to a bound that one work alone gives."""

    before: str = ""
    after: str = ""
    least: str = "said to be as little as"
    most: str = "said to reach"


_OF_PROPERTY: Mapping[str, Wording] = {
    "length": Wording(after=" long", least="said to be as short as"),
    "width": Wording(after=" wide", least="said to be as narrow as"),
    "height": Wording(after=" high", least="said to be as low as"),
    "depth": Wording(after=" deep", least="said to be as shallow as"),
    "thickness": Wording(after=" thick", least="said to be as thin as"),
    "diameter": Wording(after=" in diameter", least="said to be as small as"),
    "elevation": Wording(before="at elevations of ", least="said to come down to", most="said to go up to"),
    "altitude": Wording(before="at altitudes of ", least="said to come down to", most="said to go up to"),
    "aspect": Wording(before="facing "),
    "substrate": Wording(before="on "),
}
_COUNT = Wording(least="said to be as few as", most="said to be as many as")
HABITAT = ("elevation", "altitude", "aspect", "substrate")  # properties of the place, whatever it is called
_STAGE: Mapping[str, str] = {
    "young": "when young",
    "mature": "at maturity",
    "old": "in age",
    "flower": "in flower",
    "fruit": "in fruit",
    "fresh": "when fresh",
    "dry": "when dry",
}
MATURE = "mature"
_PLURAL = {
    "anthophore": "anthophores",
    "apex": "apices",
    "axis": "axes",
    "calyx": "calyces",
    "corolla": "corollas",
    "leaf": "leaves",
    "pappus": "pappi",
    "spadix": "spadices",
    "stigma": "stigmas",
    "tooth": "teeth",
}
_SIBILANTS = ("s", "x", "z", "ch", "sh")


def of_habitat(character: Character) -> bool:
    """Whether a character is one of the place where a plant grows, and of no part of it."""
    return character.structure == "habitat" or character.property in HABITAT


def wording(character: Character) -> Wording:
    """The words of the character's property; of one that the table lacks, its name before a measured value."""
    if character.kind is Kind.COUNT:
        return _COUNT
    if character.kind is Kind.RATIO:
        return Wording(before="" if character.name.endswith("ratio") else f"{character.name} ratio ")
    if character.property in _OF_PROPERTY:
        return _OF_PROPERTY[character.property]
    return Wording(before=f"{character.property} ") if character.kind.is_numeric else Wording()


def stage_words(stage: str) -> str:
    """The growth stage as it stands before a value.

    >>> stage_words("mature"), stage_words("second year")
    ('at maturity', 'at the stage “second year”')
    """
    if stage == UNSTATED:
        return "with no stage stated"
    return _STAGE.get(stage, f"at the stage “{stage}”")


def plural(structure: str) -> str:
    """The plural of a structure; one that already ends as a plural does stays.

    >>> plural("leaf tooth"), plural("ovary"), plural("stamens"), plural("calyx")
    ('leaf teeth', 'ovaries', 'stamens', 'calyces')
    """
    *before, last = structure.split(" ")
    return " ".join([*before, _PLURAL.get(last) or _regular_plural(last)])


def _regular_plural(word: str) -> str:
    if word.endswith("y") and word[-2:-1] not in "aeiou":
        return f"{word[:-1]}ies"
    if word.endswith("s") and not word.endswith(("ss", "us", "is")):
        return word
    return f"{word}es" if word.endswith(_SIBILANTS) else f"{word}s"
