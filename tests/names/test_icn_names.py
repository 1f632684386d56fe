"""Names and citations in the examples of the ICN (source and page of each beside it in data/icn-examples.yaml)."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
import yaml

from auctorum.names.format import format_name
from auctorum.names.parse import parse, parse_name
from auctorum.names.ranks import implied_rank, rank_named

OWN = Path(__file__).parent.parent / "data" / "icn-examples.yaml"
Case = dict[str, Any]


def read(path: Path) -> list[Case]:
    return yaml.load(path.read_text(encoding="utf-8"), yaml.CSafeLoader)


def cited(cases: list[Case]) -> list[tuple[str, str]]:
    """Id of the case and text of every name with authors that an answer holds."""
    texts = [(case["id"], case["expect"].get(key)) for case in cases for key in ("citation", "formatted")]
    listed = [(id_, one) for id_, text in texts for one in (text if isinstance(text, list) else [text]) if one]
    return sorted(set(listed))


def names_in(cases: list[Case]) -> list[tuple[str, str]]:
    return [(id_, text) for id_, text in cited(cases) if " × " not in text]


def formulae_in(cases: list[Case]) -> list[tuple[str, str]]:
    return [(id_, text) for id_, text in cited(cases) if " × " in text]


def parsed_in(cases: list[Case]) -> list[Case]:
    return [case for case in cases if case["question"]["ask"] == "parse"]


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """One test a citation."""
    cases = read(OWN)
    for argument, found in (("name", names_in(cases)), ("formula", formulae_in(cases))):
        if argument in metafunc.fixturenames:
            metafunc.parametrize(argument, [text for _, text in found], ids=[f"{id_}-{text}" for id_, text in found])
    if "case" in metafunc.fixturenames:
        found_cases = parsed_in(cases)
        metafunc.parametrize("case", found_cases, ids=[case["id"] for case in found_cases])


def test_the_examples_are_there() -> None:
    cases = read(OWN)
    assert (len(names_in(cases)), len(formulae_in(cases)), len(parsed_in(cases))) == (66, 2, 2)


def test_citation_is_read_and_written_the_same(name: str) -> None:
    usage = parse(name)
    assert format_name(usage.name) == name
    assert not (usage.remainder or usage.notes or usage.sense or usage.qualifiers)


def test_initials_joined_and_et_mean_the_same(name: str) -> None:
    assert parse_name(name.replace(". ", ".").replace(" & ", " et ")) == parse_name(name)


def test_formula_gives_its_first_parent_and_the_rest(formula: str) -> None:
    first, _, second = formula.partition(" × ")
    usage = parse(formula)
    assert (format_name(usage.name), usage.remainder) == (first, f"× {second}")


def test_parts_as_the_code_names_them(case: dict[str, Any]) -> None:
    expect = case["expect"]
    name = parse_name(case["given"]["string"])
    assert format_name(name.proper, authors=False) == expect["name"]
    assert (name.genus, name.species) == (expect["genus"], expect["specific_epithet"])
    assert name.final_epithet == expect["infraspecific_epithet"]
    assert implied_rank(name) == rank_named(expect["rank"]).name
    assert list(name.authors.own.team.members) == expect["authors"]
    assert list(name.authors.basionym.team.members) == expect.get("paren_authors", [])
    assert name.lower[-1].hybrid is expect.get("hybrid", False)
    assert (len(name.lower) > 1) is (expect.get("is") == "classification-string")
