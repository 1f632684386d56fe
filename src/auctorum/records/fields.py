"""What every record class is built from: configuration, kinds of words, and the place it was read from."""

from __future__ import annotations

from dataclasses import field, fields
from typing import Annotated, Any, TypeVar

from pydantic import AfterValidator, BeforeValidator, ConfigDict, Field, GetPydanticSchema, StringConstraints
from pydantic.dataclasses import dataclass
from pydantic_core import core_schema

from auctorum.problems import NOWHERE, Place
from auctorum.records.dates import check_date

PLACE_KEY = "@"  # no YAML plain word can start so; the reader refuses it as a key


def _kebab(name: str) -> str:
    return PLACE_KEY if name == "place" else name.rstrip("_").replace("_", "-")


CONFIG = ConfigDict(extra="forbid", alias_generator=_kebab, str_strip_whitespace=True)

Words = Annotated[str, StringConstraints(min_length=1)]
ID_PATTERN = r"^[a-z0-9]+(?:-[a-z0-9]+)*$"
Identifier = Annotated[str, StringConstraints(pattern=ID_PATTERN, max_length=80)]
Date = Annotated[str, AfterValidator(check_date)]


def _read_place(place: Any, info: core_schema.ValidationInfo) -> Place:
    """A place as the parser gives it, or [line, column] as the cache keeps it, in the file of the context."""
    return place if isinstance(place, Place) else Place(str(info.context), int(place[0]), int(place[1]))


# A place is put in by the reader and is no key of the file (and no part of its JSON Schema).
_PLACE_SCHEMA = GetPydanticSchema(
    lambda _source, _handler: core_schema.with_info_before_validator_function(_read_place, core_schema.any_schema())
)
RecordPlace = Annotated[Place, _PLACE_SCHEMA]


def without_place(data: Any) -> Any:
    """A mapping of free keys, without the place that the reader puts into every mapping."""
    return {key: value for key, value in data.items() if key != PLACE_KEY} if isinstance(data, dict) else data


def place_field() -> Any:
    """The field that keeps the place of a record, out of equality and of its printed form."""
    return field(default=NOWHERE, compare=False, repr=False)


Record = TypeVar("Record")


def changed(record: Record, **told: Any) -> Record:
    """The same record with some fields told otherwise, by their names here; checked again, its place is kept."""
    known = {one.name: getattr(record, one.name) for one in fields(record)}  # type: ignore[arg-type]
    return type(record)(**{_kebab(name): value for name, value in (known | told).items()})


# A mapping of free keys, such as signs and their meaning.
FreeKeys = BeforeValidator(without_place)


@dataclass(frozen=True, slots=True, config=CONFIG)
class Person:
    """A person as CSL names one."""

    family: Annotated[Words, Field(description="Family name, with any particle that belongs to it.")]
    given: Annotated[str, Field(description="Given names or initials.")] = ""
    literal: Annotated[str, Field(description="The form in author citations, where it is not the family name.")] = ""
    place: RecordPlace = place_field()
