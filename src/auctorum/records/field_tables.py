"""A table of measured plants that stands in no knowledge base, wide or long: what `determine` and `survey` are given.

Wide: a row for each plant, as in specimens.csv. Long: a row for each measurement, as in measurements.csv; it may have
columns of the plant (locationID, scientificName ...) beside, and what they say first of an occurrenceID holds. Which of
the two it is, its header tells: a long one has `measurementType` or `measurementValue`.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass

from auctorum.problems import Place, Problem, Severity
from auctorum.records.columns import Column, titles_of
from auctorum.records.schema import PLACE_KEY, MeasurementOrFact, Specimen
from auctorum.records.tables import Data, Table, read_table, records_of

_LONG = (Column(field="measurementType"), Column(field="measurementValue"))
_OF_MEASUREMENT = frozenset(name for name in MeasurementOrFact.__dataclass_fields__ if name != "occurrenceID")
_CELLS = ("measurements", "accuracies")
_OF_PLANT = frozenset(Specimen.__dataclass_fields__) - {"place", "lifeStage", "measurementMethod"}


@dataclass(frozen=True, slots=True)
class FieldTable:
    """The plants of a table as records; `measurements` are those of a long one, () of a wide one."""

    specimens: tuple[Specimen, ...]
    measurements: tuple[MeasurementOrFact, ...]


def read_plants_text(text: str, file: str, characters: Collection[str]) -> tuple[FieldTable, tuple[Problem, ...]]:
    """The plants in the text of a table, and every problem; `characters` are the names of the vocabulary.

    A plant without an occurrenceID is called by its line, `row 12`. A column that is not known is a warning only.
    """
    problems: list[Problem] = []
    report = problems.append
    titles = titles_of(characters, Specimen, MeasurementOrFact, required=())
    table = read_table(text, file, titles, report, Severity.WARNING)
    if any(column in table.columns for column in _LONG):
        found = _long(table, problems)
    else:
        rows = [data if "occurrenceID" in data else data | {"occurrenceID": _row_name(data)} for data in table.rows]
        only = [{key: value for key, value in data.items() if key not in _NOT_OF_PLANT} for data in rows]
        found = FieldTable(tuple(records_of(table, Specimen, only, report)), ())
    return found, tuple(sorted(problems))


_NOT_OF_PLANT = _OF_MEASUREMENT - frozenset(Specimen.__dataclass_fields__)


def _row_name(data: Data) -> str:
    return f"row {data[PLACE_KEY].line}"


def _long(table: Table, problems: list[Problem]) -> FieldTable:
    rows = []
    for data in table.rows:
        if "measurementType" not in data and "measurementValue" in data:
            place: Place = data[PLACE_KEY]._replace(column=table.number_of("measurementValue"))
            problems.append(Problem(place, "a value without its measurementType was left out", "name the character"))
        rows.append(data if "occurrenceID" in data else data | {"occurrenceID": _row_name(data)})
    measured = [
        {key: value for key, value in data.items() if key in _OF_MEASUREMENT or key in ("occurrenceID", PLACE_KEY)}
        for data in rows
        if "measurementType" in data
    ]
    plants = [*_plants(rows, table, problems)]
    return FieldTable(
        tuple(records_of(table, Specimen, plants, problems.append)),
        tuple(records_of(table, MeasurementOrFact, measured, problems.append)),
    )


def _plants(rows: Iterable[Data], table: Table, problems: list[Problem]) -> Iterable[Data]:
    """What the rows of one occurrenceID say of the plant; a cell that says otherwise than before is a warning."""
    plants: dict[str, Data] = {}
    for data in rows:
        plant = plants.setdefault(data["occurrenceID"], {PLACE_KEY: data[PLACE_KEY]})
        for key in sorted(_OF_PLANT & data.keys()):
            if key in _CELLS:
                plant.setdefault(key, []).extend(data[key])
            elif plant.setdefault(key, data[key]) != data[key]:
                place = data[PLACE_KEY]._replace(column=table.number_of(key))
                what = f"`{key}` of `{data['occurrenceID']}` is {data[key][:60]!r} here, {plant[key][:60]!r} before"
                problems.append(Problem(place, what, "say the same in each row of a plant", Severity.WARNING))
    for plant in plants.values():
        plant.update({key: tuple(plant[key]) for key in _CELLS if key in plant})
    return plants.values()
