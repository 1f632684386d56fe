"""What of a measured plant may leave this machine: its row without what would tell its place, and problems likewise."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from auctorum.characters.vocabulary import Kind, Vocabulary
from auctorum.circumscription.plants import LIST_MARK
from auctorum.circumscription.wording import of_habitat
from auctorum.corpus.model import Specimen
from auctorum.determination.places.whereabouts import Whereabouts
from auctorum.problems import Problem

# Fields of a row that leave, in the order of Darwin Core; one that is not named here stays.
FIELDS = (
    "occurrenceID",
    "organismID",
    "catalogNumber",
    "recordedBy",
    "eventDate",
    "verbatimEventDate",
    "scientificName",
    "identifiedBy",
    "lifeStage",
    "sex",
    "degreeOfEstablishment",
    "establishmentMeans",
    "measurementMethod",
    "occurrenceRemarks",
)
Measured = tuple[str, str, str]  # character, unit, cell as typed
ERROR_MARK = " ±"  # behind a character: the half-width of the instrument's error
SITES_FILE = "sites.csv"
REMEDY = "who keeps the records reads it by: auctorum check"
_NUMBER = re.compile(r"[<>~±]?\s*[+\-−]?\d+(?:[.,]\d+)?(?:\s*[–-]\s*\d+(?:[.,]\d+)?)?")


@dataclass(frozen=True, slots=True)
class PublicPlant:
    """A row of specimens.csv as it is shown to others; `withheld` names fields and characters that were left out."""

    fields: tuple[tuple[str, str], ...]
    measurements: tuple[Measured, ...]
    withheld: tuple[str, ...]


def public_plant(specimen: Specimen, vocabulary: Vocabulary, known: Whereabouts | None) -> PublicPlant:
    """The row without texts that tell a place; all of it where `known` is None, for somebody who asked outright.

    A text is left out whole. Figures stay, but for those of the habitat other than directions, such as an elevation:
    they are as exact as the place. A spur of 44.15 mm is no latitude, so other figures are not searched.
    """
    fields = tuple((field, getattr(specimen.record, field)) for field in FIELDS)
    measured = _measured(specimen)
    if known is None:
        return PublicPlant(fields, measured, ())
    telling = {field for field, text in fields if known.told_in(text)}
    places = {number for number, cell in enumerate(measured) if _tells_place(cell, vocabulary, known)}
    return PublicPlant(
        tuple((field, "" if field in telling else text) for field, text in fields),
        tuple(cell for number, cell in enumerate(measured) if number not in places),
        tuple(
            _unique([*(field for field, _ in fields if field in telling), *(measured[n][0] for n in sorted(places))])
        ),
    )


def _measured(specimen: Specimen) -> tuple[Measured, ...]:
    """The cells of the row, then their errors, then characters that only the long table measures, joined."""
    row = specimen.record
    wide = [(character, unit, cell) for character, unit, cell, _ in row.measurements]
    errors = [(f"{character}{ERROR_MARK}", unit, cell) for character, unit, cell, _ in row.accuracies]
    in_row = {character for character, _, _ in wide}
    long: dict[tuple[str, str], list[str]] = {}
    for one in specimen.measurements:
        if one.character not in in_row:
            said = one.words if one.number is None else f"{one.number:f}"
            long.setdefault((one.character, one.unit), []).append(said)
    return (*wide, *errors, *((*key, LIST_MARK.join(said)) for key, said in long.items()))


def _tells_place(measured: Measured, vocabulary: Vocabulary, known: Whereabouts) -> bool:
    character, _, cell = measured
    entry = vocabulary[character.removesuffix(ERROR_MARK)]
    if of_habitat(entry) and entry.kind.is_numeric and entry.kind is not Kind.ANGLE:
        return True
    return not (entry.kind.is_numeric and _NUMBER.fullmatch(cell)) and known.told_in(cell)


def _unique(words: list[str]) -> Iterator[str]:
    return iter(dict.fromkeys(words))


def public_words(text: str, known: Whereabouts) -> str:
    """The words, or that they are withheld, where they tell a place."""
    return "(withheld: it tells a place)" if known.told_in(text) else text


def public_problem(problem: Problem, known: Whereabouts) -> Problem:
    """The problem as others may read it: words that tell a place give way to where they stand.

    Of sites.csv no words are told at all: a cell that cannot be read is a coordinate as often as not, and unknown.
    """
    in_sites = problem.place.file.replace("\\", "/").rpartition("/")[2] == SITES_FILE
    if in_sites or known.told_in(problem.what) or known.told_in(problem.remedy):
        return replace(problem, what="what is wrong here may tell a place, and is withheld", remedy=REMEDY)
    return problem
