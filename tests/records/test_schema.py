"""The JSON Schema is held to the models: same keys, same verdict, a description on every field."""

from __future__ import annotations

import dataclasses
from typing import Any

import jsonschema
import pytest

from auctorum.records import schema
from auctorum.records.faults import json_schema, validate
from auctorum.records.schema import PLACE_KEY

RECORDS = [
    schema.Settings,
    schema.Characters,
    schema.Literature,
    schema.Criterion,
    schema.Site,
    schema.Specimen,
    schema.MeasurementOrFact,
    schema.Label,
]
GOOD: dict[str, Any] = {
    "work": {"id": "a-1", "type": "book", "author": [{"family": "Orrin"}], "issued": "1911", "title": "T"},
    "acts": [{"name": "Exemplum album", "act": "new taxon", "basionym-reference": "full"}],
    "treatments": [{"taxon": "Exemplum album", "traits": [{"character": "spur length", "verbatim": "22 mm"}]}],
}


def definitions(record: type) -> dict[str, dict[str, Any]]:
    made = json_schema(record)
    return {record.__name__: made, **made.get("$defs", {})}


@pytest.mark.parametrize("record", RECORDS, ids=lambda record: record.__name__)
def test_every_field_has_a_description(record: type) -> None:
    for name, part in definitions(record).items():
        for key, shown in part.get("properties", {}).items():
            assert shown.get("description"), f"{name}.{key} has no description"


@pytest.mark.parametrize("record", RECORDS, ids=lambda record: record.__name__)
def test_the_schema_is_a_schema_and_names_every_field(record: type) -> None:
    made = json_schema(record)
    jsonschema.Draft202012Validator.check_schema(made)
    fields = {field.name.rstrip("_").replace("_", "-") for field in dataclasses.fields(record)} - {"place"}
    assert set(made["properties"]) == fields
    assert made["additionalProperties"] is False
    assert PLACE_KEY not in made["properties"]


@pytest.mark.parametrize(
    ("path", "value", "good"),
    [
        pytest.param((), None, True, id="as-it-is"),
        pytest.param(("work", "id"), "A 1", False, id="bad-id"),
        pytest.param(("work", "author"), [], False, id="no-author"),
        pytest.param(("work", "publisher_place"), "X", False, id="underscore-for-hyphen"),
        pytest.param(("work", "publisher-place"), "X", True, id="kebab-case"),
        pytest.param(("acts", 0, "act"), "new", False, id="unknown-act"),
        pytest.param(("acts", 0, "name"), "", False, id="empty-name"),
        pytest.param(("treatments", 0, "status"), "sunk", False, id="unknown-status"),
        pytest.param(("treatments", 0, "synonyms"), "Exemplum nigrum", False, id="word-for-list"),
        pytest.param(("treatments", 0, "traits", 0, "colour"), "red", False, id="unknown-key-deep"),
        pytest.param(("conventions",), {"signs": {"'": "ft"}}, True, id="signs"),
    ],
)
def test_schema_and_models_agree(path: tuple[str | int, ...], value: object, good: bool) -> None:
    import copy

    data = copy.deepcopy(GOOD)
    if path:
        at: Any = data
        for step in path[:-1]:
            at = at[step]
        at[path[-1]] = value
    validator = jsonschema.Draft202012Validator(json_schema(schema.Literature))
    assert validator.is_valid(data) is good
    found, problems = validate(schema.Literature, copy.deepcopy(data))
    assert (found is not None) is good
    assert bool(problems) is not good
