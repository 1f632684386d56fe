"""The graph of a knowledge base: typed nodes, typed edges.

| edge | from | to |
|---|---|---|
| basionym, replaced | name | the older name it rests on |
| homotypic | name | its type |
| published-in | name | work |
| treats | work | treatment |
| accepts-as | treatment | the name it accepts |
| synonym-of | name | the name it is sunk into, in `work` |
| misapplies | treatment | a name that others wrongly used for the taxon |
| follows | work | the work whose figures it repeats |
| parent | name | the name it is placed in, in `work` |

Basionyms and replaced names are those of the rules, whatever the author called the act. Node ids are `name:…`,
`type:…`, `work:…`, `treatment:…`; every node has `kind` and `label`, names their `standing` too, every edge `kind`.
"""

from __future__ import annotations

from collections.abc import Iterator

import networkx as nx

from auctorum.corpus.model import Act, NameEntry, Treatment
from auctorum.names.format import format_name
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.judgement import Judgement
from auctorum.nomenclature.standing import in_words
from auctorum.records.schema import Status

NODE_KINDS = ("name", "type", "work", "treatment")
EDGE_KINDS = (
    "basionym",
    "replaced",
    "homotypic",
    "published-in",
    "treats",
    "accepts-as",
    "synonym-of",
    "misapplies",
    "follows",
    "parent",
)
Edge = tuple[str, str, str, str]  # from, to, kind, id of the work that says so (empty: computed)


def graph(code: Code) -> nx.MultiDiGraph:
    """Every name, type, work and treatment with their links; nodes and edges in order of date."""
    corpus = code.corpus
    made = nx.MultiDiGraph(name=corpus.settings.title)
    for work in corpus.works.values():
        made.add_node(f"work:{work.id}", kind="work", label=work.byline, year=work.year)
    for group in corpus.groups:
        made.add_node(f"type:{group}", kind="type", label=f"type of {_label(corpus.names[group])}")
    for entry in corpus.names.values():
        told = in_words(code, entry.id)
        made.add_node(f"name:{entry.id}", kind="name", label=_label(entry), rank=entry.rank, standing=told)
    for treatment in corpus.treatments.values():
        label = f"{treatment.record.taxon} in {treatment.work.byline}"
        made.add_node(f"treatment:{treatment.id}", kind="treatment", label=label, status=str(treatment.status))
    for start, end, kind, work_id in _edges(code):
        made.add_edge(start, end, kind=kind, **({"work": work_id} if work_id else {}))
    return made


def _label(entry: NameEntry) -> str:
    return format_name(entry.name)


def _edges(code: Code) -> Iterator[Edge]:
    corpus = code.corpus
    for entry in corpus.names.values():
        yield f"name:{entry.id}", f"type:{entry.group}", "homotypic", ""
        published = corpus.publishing_act(entry.id)
        if published is not None:
            yield from _act_edges(published, code.acts[published.id])
    for treatment in corpus.treatments.values():
        yield from _treatment_edges(treatment)


def _act_edges(act: Act, judged: Judgement) -> Iterator[Edge]:
    """What the rules make of the act: a combination on an illegitimate name replaces it (ICN Art. 58.1)."""
    yield f"name:{act.name}", f"work:{act.work.id}", "published-in", act.work.id
    if judged.basionym:
        yield f"name:{act.name}", f"name:{judged.basionym}", "basionym", act.work.id
    if judged.replaced:
        yield f"name:{act.name}", f"name:{judged.replaced}", "replaced", act.work.id


def _treatment_edges(treatment: Treatment) -> Iterator[Edge]:
    here, name, work = f"treatment:{treatment.id}", f"name:{treatment.name}", treatment.work.id
    yield f"work:{work}", here, "treats", work
    if treatment.status in (Status.ACCEPTED, Status.DOUBTFUL):
        yield here, name, "accepts-as", work
    elif treatment.status is Status.MISAPPLIED:
        yield here, name, "misapplies", work
    elif treatment.accepted_as:
        yield name, f"name:{treatment.accepted_as}", "synonym-of", work
    if treatment.parent:
        yield name, f"name:{treatment.parent}", "parent", work
    for synonym in treatment.synonyms:
        yield f"name:{synonym}", name, "synonym-of", work
    for misapplied in treatment.misapplied:
        yield here, f"name:{misapplied}", "misapplies", work
    for followed in treatment.follows:
        yield f"work:{work}", f"work:{followed}", "follows", work


def name_edges(code: Code) -> tuple[Edge, ...]:
    """The edges between names (basionym, replaced, synonym-of, parent), as ids of names, in order of date."""
    return tuple(
        (start.removeprefix("name:"), end.removeprefix("name:"), kind, work)
        for start, end, kind, work in _edges(code)
        if start.startswith("name:") and end.startswith("name:")
    )


def graphml(code: Code) -> str:
    """The graph as GraphML (Brandes et al. 2002), an open exchange format for graphs."""
    return "\n".join(nx.generate_graphml(graph(code))) + "\n"
