"""A small invented literature that has a bit of everything a page can show."""

from __future__ import annotations

from pathlib import Path

import pytest

from auctorum.corpus.model import Corpus
from auctorum.nomenclature.code import Code, applied
from auctorum.problems import Place, Problem, Severity
from building import CHARACTERS, corpus_of

SETTINGS = """\
title: Plants of Nowhere
description: An invented genus, with every account of Exemplum album var. longum.
notice: "Invented: no such plants, people or places."
focal-taxa: [Exemplum album var. longum]
licence: CC0-1.0
editors: [Nobody]
cautions: ["Cliffs are dangerous: never go alone.", "Protected: ask for a permit first."]
"""
MORE = """\
- name: leaf margin
  structure: leaf
  property: margin
  kind: nominal
  states: [{name: entire}, {name: toothed}]
- {name: leaf hairs, structure: leaf, property: hairs, kind: presence}
"""
ORRIN = """\
work: {id: orrin-1887, type: article-journal, author: [{family: Orrin, given: T.}], issued: "1887",
  title: Plantae novae, container-title: Annals of Nowhere,
  container-title-short: Ann. Nowhere, volume: "4", page: 1-20}
covers: [Exemplum]
acts:
- {name: Exemplum, act: new taxon, page: "1"}
- {name: Exemplum album, act: new taxon, page: "2", type: {kind: holotype, specimen: Orrin 3, herbarium: XX}}
- {name: Exemplum album var. longum, act: new taxon, page: "7",
   type: {kind: holotype, specimen: Orrin 212, herbarium: XX}, description: {kind: description, language: latin}}
treatments:
- taxon: Exemplum album
  under: Exemplum
  traits: [{character: spur length, verbatim: "spur 8–15 mm long", page: "2"}]
- taxon: Exemplum album var. longum
  under: Exemplum album
  traits:
  - {character: spur length, verbatim: "spur 22–34(–41) mm long", page: "7"}
  - {character: spur colour, verbatim: "spur green, rarely ivory", page: "7"}
  - {character: leaf margin, verbatim: "leaves toothed", page: "7"}
  - {character: leaf hairs, verbatim: "leaves hairless", page: "7"}
"""
MARSH = """\
work: {id: marsh-1904, type: book, author: [{family: Marsh, given: A.}, {family: Tull, given: B.}], issued: "1904",
  title: A synopsis, publisher: Press, publisher-place: Harbour, DOI: 10.9999/nowhere.1904}
covers: [Exemplum]
acts:
- {name: Exemplum longum, act: change of rank, basionym: Exemplum album var. longum, page: "55"}
treatments:
- taxon: Exemplum longum
  under: Exemplum
  page: "55"
  traits:
  - {character: spur length, verbatim: "spur 22-40 mm", page: "55"}
  - {character: spur colour, verbatim: "spur green to cream", page: "55"}
  - {character: leaf margin, verbatim: "leaves entire", page: "55"}
"""
SELK = """\
work: {id: selk-1923, type: book, author: [{family: Selk, given: C.}], issued: "1923", title: Flora}
covers: [Exemplum]
treatments:
- {taxon: Exemplum album, under: Exemplum, synonyms: [Exemplum longum]}
"""
QUILL = """\
work: {id: quill-1938, type: book, author: [{family: Quill}], issued: "1938", title: Hand list}
covers: [Exemplum]
treatments:
- {taxon: Exemplum album, under: Exemplum}
"""
HASK = """\
work: {id: hask-1961, type: thesis, author: [{family: Hask}], issued: "1961", title: A thesis,
  effectively-published: false}
acts:
- {name: Exemplum album f. longum, act: change of rank, basionym: Exemplum album var. longum, page: "3"}
treatments:
- taxon: Exemplum album var. longum
  under: Exemplum album
  traits: [{character: spur length, verbatim: "spur up to 60 mm", page: "3"}]
"""
LITERATURE = (ORRIN, MARSH, SELK, QUILL, HASK)


def small_corpus(*more: str) -> Corpus:
    """The corpus of the literature above and of `more`."""
    corpus, problems = corpus_of(*LITERATURE, *more, characters=CHARACTERS + MORE, settings=SETTINGS)
    assert problems == []
    return corpus


@pytest.fixture(scope="session")
def corpus() -> Corpus:
    return small_corpus()


@pytest.fixture(scope="session")
def problems() -> tuple[Problem, ...]:
    return (
        Problem(Place("literature/selk-1923.yaml", 12, 7), "no name `Exemplum albun`", "nearest: Exemplum album"),
        Problem(Place("/secret/kb/literature/a.yaml", 2, 1), "also in /secret/kb/literature/b.yaml", "keep one"),
        Problem(Place("kb.yaml", 3, 1), "no site is described", "add sites.csv", Severity.WARNING),
    )


@pytest.fixture(scope="session")
def site(corpus, problems) -> dict[str, str]:
    """Every text of the site, by path."""
    from auctorum.site.render import render

    return dict(render(applied(corpus), problems))


@pytest.fixture(scope="session")
def demo_read() -> tuple[Code, tuple[Problem, ...]]:
    """The knowledge base that is shipped, under the Code, and its problems."""
    from auctorum.corpus.link import link
    from auctorum.records.read import read

    records, problems = read(Path(__file__).parents[2] / "kb")
    corpus, more = link(records)
    return applied(corpus), tuple(sorted([*problems, *more]))


@pytest.fixture(scope="session")
def demo_code(demo_read) -> Code:
    return demo_read[0]


@pytest.fixture(scope="session")
def demo(demo_read) -> dict[str, str]:
    """Every text of the site of the knowledge base that is shipped."""
    from auctorum.site.render import render

    return dict(render(*demo_read))
