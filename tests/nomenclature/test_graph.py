"""The graph: typed nodes and edges, GraphML that reads back, and its drawing."""

from __future__ import annotations

from xml.etree import ElementTree

import networkx as nx
import pytest

from auctorum.exchange.drawing import draw_names
from auctorum.nomenclature.code import applied
from auctorum.nomenclature.graph import EDGE_KINDS, NODE_KINDS, graph, graphml
from building import corpus_of

FIRST = """\
work: {id: orrin-1881, type: book, author: [{family: Orrin}], issued: "1881", title: Flora}
acts:
- {name: Exemplum, act: new taxon}
- {name: Exemplum album, act: new taxon}
- {name: Exemplum album var. longum, act: new taxon}
- {name: Exemplum nigrum, act: new taxon}
treatments:
- {taxon: Exemplum album, under: Exemplum}
- {taxon: Exemplum album var. longum, under: Exemplum album}
"""
SECOND = """\
work: {id: vane-1922, type: book, author: [{family: Vane}], issued: "1922", title: Notes & <queries>}
acts:
- {name: Exemplum longum, act: change of rank, basionym: Exemplum album var. longum}
- {name: Exemplum novum, act: replacement name, replaces: Exemplum nigrum}
treatments:
- {taxon: Exemplum longum, under: Exemplum, synonyms: [Exemplum novum],
   misapplied: [Exemplum album], follows: [orrin-1881]}
- {taxon: Exemplum nigrum, status: synonym, accepted-as: Exemplum longum}
"""
EDGES = {
    ("name:exemplum-longum", "name:exemplum-album-var-longum", "basionym"),
    ("name:exemplum-novum", "name:exemplum-nigrum", "replaced"),
    ("name:exemplum-longum", "type:exemplum-album-var-longum", "homotypic"),
    ("name:exemplum-longum", "work:vane-1922", "published-in"),
    ("work:vane-1922", "treatment:vane-1922:1", "treats"),
    ("treatment:vane-1922:1", "name:exemplum-longum", "accepts-as"),
    ("name:exemplum-novum", "name:exemplum-longum", "synonym-of"),
    ("name:exemplum-nigrum", "name:exemplum-longum", "synonym-of"),
    ("treatment:vane-1922:1", "name:exemplum-album", "misapplies"),
    ("work:vane-1922", "work:orrin-1881", "follows"),
    ("name:exemplum-album-var-longum", "name:exemplum-album", "parent"),
}


@pytest.fixture
def corpus():
    found, problems = corpus_of(FIRST, SECOND)
    assert problems == []
    return found


def test_every_kind_of_edge_is_there(corpus) -> None:
    edges = {(start, end, kind) for start, end, kind in graph(applied(corpus)).edges(data="kind")}
    assert edges >= EDGES
    assert {kind for _, _, kind in EDGES} == set(EDGE_KINDS) == {kind for _, _, kind in edges}


def test_nodes_are_typed_by_their_id(corpus) -> None:
    nodes = graph(applied(corpus)).nodes(data="kind")
    assert {kind for _, kind in nodes} == set(NODE_KINDS)
    assert all(node.startswith(f"{kind}:") for node, kind in nodes)


def test_graphml_is_read_back_whole(corpus) -> None:
    """Second answer: networkx's own reader of GraphML."""
    made = graph(applied(corpus))
    read = nx.parse_graphml(graphml(applied(corpus)))
    assert dict(read.nodes(data=True)) == dict(made.nodes(data=True))
    assert sorted(read.edges(data="kind")) == sorted(made.edges(data="kind"))


def test_same_records_same_bytes(corpus) -> None:
    again, _ = corpus_of(SECOND, FIRST)
    assert graphml(applied(again)) == graphml(applied(corpus))


@pytest.mark.parametrize("group", [None, "exemplum-album-var-longum"])
def test_the_drawing_is_well_formed_and_names_everything(corpus, group: str | None) -> None:
    root = ElementTree.fromstring(draw_names(applied(corpus), group))
    shown = " ".join("".join(text.itertext()) for text in root.iter("{http://www.w3.org/2000/svg}text"))
    assert "Exemplum longum (Orrin) Vane" in shown
    assert ("Exemplum nigrum Orrin" in shown) is (group is None)
    arrows = [path for path in root.iter("{http://www.w3.org/2000/svg}path") if path.get("class") == "arrow"]
    assert len(arrows) == (2 if group is None else 1)


def test_the_drawing_escapes_what_authors_wrote() -> None:
    hostile = FIRST.replace("family: Orrin", 'family: "Orrin</text><script>"')
    found, _ = corpus_of(hostile)
    text = draw_names(applied(found))
    assert "<script>" not in text
    ElementTree.fromstring(text)
