"""Data -> frozen records by pydantic, every fault as a problem with its place and a remedy."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from typing import Any, TypeVar

from pydantic import TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from auctorum.names.nearest import nearest
from auctorum.problems import NOWHERE, Place, Problem
from auctorum.records import schema
from auctorum.records.schema import PLACE_KEY

T = TypeVar("T")


_ADAPTERS: dict[type, TypeAdapter[Any]] = {}


def adapter(record: type[T]) -> TypeAdapter[T]:
    """The validator of one record class, built once."""
    if record not in _ADAPTERS:
        _ADAPTERS[record] = TypeAdapter(record)
    return _ADAPTERS[record]


def validate(record: type[T], data: dict[str, Any]) -> tuple[T | None, list[Problem]]:
    """The record, or None and every fault in it.

    A problem's `within` leads from the record at its place to the faulty value, for the reader to look up.
    """
    try:
        return adapter(record).validate_python(data), []
    except ValidationError as error:
        place = data.get(PLACE_KEY, NOWHERE)
        details = [detail for detail in error.errors(include_url=False) if not _follows_from_another(detail)]
        return None, [_problem(record, detail, place) for detail in details]


def _follows_from_another(detail: ErrorDetails) -> bool:
    """A list that is too short only because its items are faulty, which is said of the items."""
    return detail["type"] == "too_short" and bool(detail["input"])


def revalidate(record: type[T], data: Any, file: str) -> T | None:
    """The record from data that was good once (places as [line, column] in `file`); None if it is not good now."""
    try:
        return adapter(record).validate_python(data, context=file)
    except (ValidationError, ValueError, TypeError, LookupError, RecursionError):
        return None


# Keys of a record that hold lists of records, so that one bad item does not cost the whole file.
_ITEMS: dict[type, tuple[tuple[str, type], ...]] = {
    schema.Literature: (("acts", schema.Act), ("treatments", schema.TreatmentRecord)),
    schema.TreatmentRecord: (("traits", schema.StatementRecord),),
    schema.Characters: (("characters", schema.CharacterRecord),),
}


def validate_and_salvage(record: type[T], data: dict[str, Any]) -> tuple[T | None, list[Problem]]:
    """The record without its faulty list items, and every fault; None where the record itself can't stand."""
    found, problems = validate(record, data)
    if found is not None:
        return found, []
    problems = _salvage(record, data)
    found, rest = validate(record, data)
    return found, problems + rest


def _salvage(record: type, data: dict[str, Any]) -> list[Problem]:
    """Take out of `data` the list items that are no good records; returns their faults."""
    problems: list[Problem] = []
    for key, item_record in _ITEMS.get(record, ()):
        items = data.get(key)
        if not isinstance(items, list):
            continue
        kept = []
        for item in items:
            if not isinstance(item, dict):
                kept.append(item)  # the whole record's validation names it
                continue
            problems += _salvage(item_record, item)
            found, faults = validate(item_record, item)
            problems += faults
            if found is not None:
                kept.append(item)
        data[key] = kept
    return problems


def _keys_at(record: type, path: tuple[str | int, ...]) -> tuple[str, ...]:
    """The keys that the record at `path` below `record` knows."""
    node: dict[str, Any] = json_schema(record)
    definitions = node.get("$defs", {})

    def resolved(at: dict[str, Any]) -> dict[str, Any]:
        for option in at.get("anyOf", ()):
            if "$ref" in option:
                at = option
        while "$ref" in at:
            at = definitions[at["$ref"].rsplit("/", 1)[1]]
        return at

    for step in path:
        node = resolved(node)
        node = node.get("items", {}) if isinstance(step, int) else node.get("properties", {}).get(step, {})
    return tuple(resolved(node).get("properties", ()))


@cache
def json_schema(record: type) -> dict[str, Any]:
    """JSON Schema (draft 2020-12) of one record class, without the key that only the reader sets."""
    made = adapter(record).json_schema(by_alias=True)
    for part in (made, *made.get("$defs", {}).values()):
        part.get("properties", {}).pop(PLACE_KEY, None)
        for shown in part.get("properties", {}).values():
            shown.pop("title", None)
    made["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    return made


def _found(detail: ErrorDetails) -> str:
    shown = detail.get("input")
    if isinstance(shown, str):
        return f"{shown[:60]!r}"
    return "a list" if isinstance(shown, list | tuple) else "a record" if isinstance(shown, dict) else repr(shown)[:60]


def _unknown_key(record: type, detail: ErrorDetails) -> tuple[str, str]:
    *inside, key = detail["loc"]
    known = _keys_at(record, tuple(inside))
    near = nearest(str(key), known, limit=1)
    remedy = f"did you mean `{near[0]}`?" if near else f"known keys: {', '.join(sorted(known))}"
    return f"unknown key `{key}`", remedy


def _one_of(detail: ErrorDetails) -> tuple[str, str]:
    expected = str(detail.get("ctx", {}).get("expected", "")).replace("'", "`")
    known = [word.strip("` ") for word in expected.replace(" or ", ",").split(",")]
    near = nearest(str(detail.get("input")), known, limit=1)
    meant = f"did you mean `{near[0]}`? " if near else ""
    return f"{_found(detail)} is none of the known words", f"{meant}one of: {', '.join(known)}"


_FAULTS: dict[str, Callable[[ErrorDetails], tuple[str, str]]] = {
    "missing": lambda detail: (f"the key `{detail['loc'][-1]}` is missing", "add it"),
    "enum": _one_of,
    "string_type": lambda detail: (
        f"{_found(detail)} where words are wanted",
        "write plain words, in quotes if need be",
    ),
    "tuple_type": lambda detail: (f"{_found(detail)} where a list is wanted", "write a list: [one, another]"),
    "dict_type": lambda detail: (f"{_found(detail)} where a record is wanted", "write `key: value` lines"),
    "dataclass_type": lambda detail: (f"{_found(detail)} where a record is wanted", "write `key: value` lines"),
    "string_too_short": lambda detail: ("nothing is written here", "fill it in, or take the key out"),
    "too_short": lambda detail: ("the list is empty", "give at least one"),
    "bool_parsing": lambda detail: (f"{_found(detail)} is neither true nor false", "write true or false"),
    "string_pattern_mismatch": lambda detail: (
        f"{_found(detail)} is no id",
        "use lower-case letters, digits and single hyphens: orrin-1911",
    ),
    "decimal_parsing": lambda detail: (f"{_found(detail)} is no number", "write digits: 31.5 or 31,5"),
    "decimal_type": lambda detail: (f"{_found(detail)} is no number", "write digits: 31.5 or 31,5"),
    "float_parsing": lambda detail: (f"{_found(detail)} is no number", "write digits: 0.95"),
    "finite_number": lambda detail: (f"{_found(detail)} is no number", "write digits: 31.5 or 31,5"),
    "less_than_equal": lambda detail: (f"{_found(detail)} is too large", f"at most {detail['ctx']['le']}"),
    "greater_than_equal": lambda detail: (f"{_found(detail)} is too small", f"at least {detail['ctx']['ge']}"),
    "greater_than": lambda detail: (f"{_found(detail)} is too small", f"more than {detail['ctx']['gt']}"),
    "value_error": lambda detail: (
        detail["msg"].removeprefix("Value error, "),
        "write dates as 1904, 1904-06 or 1904~",
    ),
}


def _problem(record: type, detail: ErrorDetails, place: Place) -> Problem:
    if detail["type"] == "unexpected_keyword_argument":
        what, remedy = _unknown_key(record, detail)
    elif detail["type"] in _FAULTS:
        what, remedy = _FAULTS[detail["type"]](detail)
    else:
        what, remedy = f"{_found(detail)}: {detail['msg']}", "correct the value"
    if detail["type"] not in ("missing", "unexpected_keyword_argument") and detail["loc"]:
        named = [str(step) for step in detail["loc"] if isinstance(step, str)]
        what = f"`{named[-1]}`: {what}" if named else what
    return Problem(place, what, remedy, within=tuple(detail["loc"]))
