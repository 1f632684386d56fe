"""A criterion written as a file reads back as itself, whatever its words."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.records import schema
from auctorum.records.criterion_text import as_yaml
from auctorum.records.fields import Person
from auctorum.records.yamltext import CONTROL
from building import read_text


def criterion(title: str = "Long", note: str = "", **more) -> schema.Criterion:
    decisive = schema.Decisive("spur length", "mature", "25 mm")
    return schema.Criterion(id="long", taxon="Exemplum album", title=title, decisive=decisive, note=note, **more)


def test_the_file_as_a_person_reads_it() -> None:
    traits = (schema.Supporting("elevation", "(100–)150–420 m", weight=Decimal("0.5")),)
    one = criterion(note="Weak.", supporting=traits, otherwise="Exemplum nigrum")
    assert as_yaml(one, remark="Proposed.") == (
        "# Proposed.\nid: long\ntaxon: Exemplum album\ntitle: Long\ndecisive:\n  character: spur length\n"
        '  stage: mature\n  at-least: 25 mm\nsupporting:\n  - {character: elevation, value: "(100–)150–420 m", '
        "weight: 0.5}\notherwise: Exemplum nigrum\n# author: [{family: ..., given: ...}]\n# issued: 2024-10\n"
        "note: >-\n  Weak.\n"
    )


def test_author_and_date() -> None:
    one = criterion(author=(Person("O'Hara: the elder", "M."),), issued="2024-10")
    text = as_yaml(one)
    assert "# author" not in text and read_text(text, schema.Criterion, "") == one


@pytest.mark.parametrize(
    "words",
    [
        "# no comment",
        "- a list",
        "key: value",
        "yes",
        "25",
        '“quoted” and "so"',
        "two  blanks",
        "a\nb",
        "x" * 300,
        "~ a",
        "é ä",
    ],
)
def test_awkward_words(words: str) -> None:
    one = criterion(title=words.replace("\n", " "), note=words)
    assert read_text(as_yaml(one), schema.Criterion, "") == one


WORDS = st.text(min_size=1, max_size=200).filter(lambda said: not CONTROL.search(said) and said == said.strip())


@settings(deadline=None, max_examples=150)
@given(WORDS, WORDS)
def test_any_words(title: str, note: str) -> None:
    try:
        one = criterion(title, note)
    except ValueError:
        return  # words that no record holds
    assert read_text(as_yaml(one), schema.Criterion, "") == one
