"""Which parts a divided taxon falls into, said at the rank where it is divided."""

from __future__ import annotations

from auctorum.names.format import format_name
from auctorum.nomenclature.compare import compare
from building import corpus_of

ACTS = """\
work: {id: vane-1850, type: book, author: [{family: Vane}], issued: "1850", title: T}
acts:
- {name: Exemplum album, act: new taxon, type: {kind: holotype, specimen: A, herbarium: X}}
- {name: Exemplum album var. longum, act: new taxon, type: {kind: holotype, specimen: B, herbarium: X}}
- {name: Exemplum album subsp. longum, act: change of rank, basionym: Exemplum album var. longum}
- {name: Exemplum album var. tenue, act: new taxon, type: {kind: holotype, specimen: C, herbarium: X}}
"""
LUMPER = """\
work: {id: hume-1990, type: book, author: [{family: Hume}], issued: "1990", title: T}
treatments:
- {taxon: Exemplum album, synonyms: [Exemplum album var. longum]}
"""
SPLITTER = """\
work: {id: fenn-1900, type: book, author: [{family: Fenn}], issued: "1900", title: T}
treatments:
- {taxon: Exemplum album}
- {taxon: Exemplum album subsp. album, under: Exemplum album}
- {taxon: Exemplum album subsp. longum, under: Exemplum album}
- {taxon: Exemplum album var. longum, under: Exemplum album subsp. longum}
- {taxon: Exemplum album var. tenue, under: Exemplum album subsp. longum}
"""


def test_a_species_is_divided_into_subspecies_not_into_their_varieties() -> None:
    """The variety of subsp. longum that Hume does not know is no reason to go a rank deeper."""
    corpus, problems = corpus_of(ACTS, LUMPER, SPLITTER)
    assert problems == []
    (division,) = compare(corpus, "hume-1990", "fenn-1900").regroupings
    parts = [format_name(corpus.names[share.part.name].name, authors=False) for share in division.shares]
    assert parts == ["Exemplum album subsp. album", "Exemplum album subsp. longum"]
