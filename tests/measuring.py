"""Small tables of measured plants written as CSV inside a test, on a knowledge base of invented works."""

from __future__ import annotations

from dataclasses import replace

from auctorum.corpus.measured import CellReader
from auctorum.corpus.model import Corpus, Specimen
from auctorum.corpus.resolve import lookup
from auctorum.problems import AuctorumError, Problem
from auctorum.records import schema
from auctorum.records.tables import parse_rows
from building import corpus_of

VOCABULARY = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm, stages: [young, mature]}
- {name: petal number, structure: petal, property: count, kind: count}
- {name: style length, structure: style, property: length, kind: measure, unit: mm, stages: [female, male]}
- name: spur colour
  structure: spur
  property: colour
  kind: ordered
  stages: [young, mature]
  states: [{name: green}, {name: cream}, {name: ivory}, {name: buff}]
- {name: bracteoles, structure: bracteole, property: presence, kind: presence}
- {name: aspect, structure: habitat, property: aspect, kind: angle, unit: degree}
"""
NAMES = """\
acts:
- {name: Exemplum, act: new taxon}
- {name: Exemplum album, act: new taxon}
- {name: Exemplum nigrum, act: new taxon}
- {name: Exemplum nullum, act: new taxon}
"""


def work(author: str, year: int, *traits: str, taxon: str = "Exemplum album", acts: str = "") -> str:
    """A literature file: one work that accepts one taxon, with traits as `character: words`."""
    lines = [f"  - {{character: {name}, verbatim: {said!r}}}" for name, said in (one.split(": ", 1) for one in traits)]
    id_ = f"{author.lower()}-{year}"
    return (
        f'work: {{id: {id_}, type: book, author: [{{family: {author}}}], issued: "{year}", title: T}}\n'
        f"{acts}treatments:\n- taxon: {taxon}\n" + ("  traits:\n" + "\n".join(lines) + "\n" if lines else "")
    )


def knowledge_base(*works: str) -> Corpus:
    """The works after two of 1850 and 1851 that publish the names and accept E. album and E. nigrum."""
    first = work("First", 1850, acts=NAMES)
    second = work("Second", 1851, taxon="Exemplum nigrum")
    corpus, problems = corpus_of(first, second, *works, characters=VOCABULARY)
    assert not problems, problems
    return corpus


def with_plants(corpus: Corpus, table: str) -> Corpus:
    """The corpus with the rows of a specimens.csv; unknown names are left open, any other fault is one of the test."""
    records, problems = parse_rows(table, "specimens.csv", schema.Specimen, tuple(corpus.vocabulary))
    rows = tuple(_linked(corpus, record, problems) for record in records)
    assert not problems, problems
    return replace(corpus, specimens=rows)


def _linked(corpus: Corpus, record: schema.Specimen, problems: list[Problem]) -> Specimen:
    cells = CellReader(corpus.vocabulary, problems.append)
    measured = cells.row(record.measurements, record.place, record.accuracies)
    try:
        name = lookup(corpus, record.scientificName) if record.scientificName else None
    except AuctorumError:
        name = None
    return Specimen(record, name, record.locationID or None, measured)
