"""The header of a table -> what each column holds: a field of the record, or a measurement of a character in a unit.

Titles may differ in case and blanks from the terms and characters (`Occurrence ID`, `Spur  length (MM)`). A column
`character ± [unit]` holds the half-width of the instrument's error for the measured columns of that character.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping
from dataclasses import dataclass, field

from auctorum.characters.units import UnknownUnit, find_unit, unit_named
from auctorum.characters.vocabulary import folded
from auctorum.names.nearest import nearest
from auctorum.problems import Place, Problem, Severity
from auctorum.records.faults import json_schema
from auctorum.records.rows import FILLED_IN
from auctorum.records.table_text import Report

_BRACKETED = re.compile(r"(?P<character>[^\[\]()]+)(?:\[(?P<square>[^\[\]]*)\]|\((?P<round>[^()]*)\))")
_ERROR = re.compile(r"±|\+/-|\+-")
_NOT_LETTERS = re.compile(r"[\W_]+")
_MOST_NAMED = 50  # unknown columns with a suggestion each; of more only the number is told


@dataclass(frozen=True, slots=True)
class Column:
    """What one column holds; all empty for one that is not read. `error`: half-widths of the error of `character`."""

    field: str = ""
    character: str = ""
    unit: str = ""
    error: bool = False


UNREAD = Column()


@dataclass(frozen=True, slots=True)
class Titles:
    """The titles that a table of some records may have, by their folded spelling."""

    fields: Mapping[str, str]
    characters: Mapping[str, str]
    required: tuple[str, ...] = ()
    names: tuple[str, ...] = field(default=())  # every title as it is best written, for suggestions

    def column(self, title: str) -> Column:
        """What the column of that title holds; UNREAD if it is not known. Raises UnknownUnit."""
        if name := self.fields.get(_folded_field(title)):
            return Column(field=name)
        if name := self.characters.get(folded(title)):
            return Column(character=name)
        error = _ERROR.search(title) is not None
        if error:
            title = _ERROR.sub(" ", title)
        if match := _BRACKETED.fullmatch(title.strip()):
            if name := self.characters.get(folded(match["character"])):
                said = (match["square"] if match["square"] is not None else match["round"]).strip()
                return Column(character=name, unit=unit_named(said).name if said else "", error=error)
            return UNREAD
        if error and (name := self.characters.get(folded(title))):
            return Column(character=name, error=True)
        *words, last = title.replace(",", " ").split() or [""]
        unit, name = find_unit(last), self.characters.get(folded(" ".join(words)), "")
        return Column(character=name, unit=unit.name, error=error) if unit and name else UNREAD

    def knows(self, cells: list[str]) -> int:
        """How many cells of a row are titles of columns."""
        count = 0
        for cell in cells:
            try:
                count += bool(cell) and len(cell) < 200 and self.column(cell) != UNREAD
            except UnknownUnit:
                count += 1
        return count


def _folded_field(title: str) -> str:
    return _NOT_LETTERS.sub("", title.casefold().removeprefix("dwc:"))


def titles_of(characters: Collection[str], *records: type, required: Collection[str] | None = None) -> Titles:
    """The titles of a table of these records; those with measurements may have columns of the characters."""
    fields: dict[str, str] = {}
    needed: list[str] = []
    measured = False
    for record in records:
        made = json_schema(record)
        for key in made["properties"]:
            if key not in FILLED_IN:
                fields.setdefault(_folded_field(key), key)
        measured |= "measurements" in made["properties"]
        needed += made.get("required", ())
    known = {folded(name): name for name in (characters if measured else ())}
    names = tuple(dict.fromkeys((*fields.values(), *known.values())))
    return Titles(fields, known, tuple(needed if required is None else required), names)


def columns_of(
    header: list[str], place: Place, titles: Titles, report: Report, severity: Severity = Severity.ERROR
) -> list[Column]:
    """One column for each title, UNREAD for what is not known, and a problem for it of that severity."""
    columns: list[Column] = []
    seen: set[Column] = set()
    unknown = 0
    for number, title in enumerate(header, 1):
        here = place._replace(column=number)
        column = _column(title, here, titles, report)
        if column == UNREAD:
            unknown += 1
            if unknown <= _MOST_NAMED:
                report(_unknown(title[:80], here, titles, severity))
        elif column in seen:
            report(Problem(here, f"the column `{title}` stands twice", "keep one; the first was read"))
            column = None
        columns.append(column or UNREAD)
        if column is not None:
            seen.add(column)
    if unknown > _MOST_NAMED:
        what = f"{unknown - _MOST_NAMED} more columns are not known and were left out"
        report(Problem(place, what, "check that the first row holds the column names", severity))
    for key in titles.required:
        if Column(field=key) not in seen:
            report(Problem(place, f"the column `{key}` is missing", "add it"))
    return columns


def _column(title: str, here: Place, titles: Titles, report: Report) -> Column | None:
    """None for a column that is left out for a reason already told, or that has no title."""
    if not title:
        return None
    try:
        return titles.column(title)
    except UnknownUnit as error:
        report(Problem(here, f"the column `{title}` was left out: {error}", error.remedy))
        return None


def _unknown(title: str, here: Place, titles: Titles, severity: Severity) -> Problem:
    near = nearest(title, titles.names, limit=1)
    meant = f"did you mean `{near[0]}`? " if near else ""
    remedy = f"{meant}use a Darwin Core term of the record, or `character [unit]`"
    return Problem(here, f"the column `{title}` is not known and was left out", remedy, severity)
