"""Author citations by the rules: whose name it is, and whose the basionym (ICN Art. 46, 49)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from auctorum.corpus.credit import own_credit, recorded_authors, shown
from auctorum.corpus.model import Act, NameEntry
from auctorum.names.name import Authors, Credit
from auctorum.names.ranks import GENUS, rank_named
from auctorum.nomenclature.inquiry import Inquiry
from auctorum.nomenclature.judgement import Judgement
from auctorum.records.schema import ActKind


def cited_names(
    inquiry: Inquiry, judged: Mapping[str, Judgement], names: Mapping[str, NameEntry]
) -> dict[str, NameEntry]:
    """Every name with its authors by the rules, its rank, and the act that publishes it."""
    found = {id_: _cited(inquiry, judged, entry) for id_, entry in names.items()}
    return {id_: _above_cited(found, entry) for id_, entry in found.items()}


def _cited(inquiry: Inquiry, judged: Mapping[str, Judgement], entry: NameEntry) -> NameEntry:
    """The entry with its authors by the rules, and the act that publishes it."""
    act = inquiry.publishing(entry.id)
    if act is None:
        return entry
    own = shown(own_credit(act))
    basionym = _in_parentheses(inquiry, judged[act.id], act)
    name = replace(entry.name, authors=Authors(basionym, own))
    return replace(entry, name=name, rank=judged[act.id].rank, published_by=act.id)


def _in_parentheses(inquiry: Inquiry, judged: Judgement, act: Act) -> Credit:
    """Authors of the basionym itself, never of a step between (ICN Art. 49.1); none above genus (49.2, from memory).

    Where the record names no basionym, those of the citation it gives.
    """
    if rank_named(judged.rank) < GENUS:
        return Credit()
    if judged.basionym is not None:
        first = inquiry.publishing(judged.basionym)
        if first is None:
            return Credit()
        recorded = recorded_authors(first).basionym  # its own record may know of a basionym that is not recorded
        return shown(recorded or own_credit(first))
    if judged.replaced is None and judged.treated_as in (ActKind.NEW_COMBINATION, ActKind.CHANGE_OF_RANK):
        return shown(recorded_authors(act).basionym)
    return Credit()


def _above_cited(names: Mapping[str, NameEntry], entry: NameEntry) -> NameEntry:
    """An autonym with the authors of its species or genus (ICN Art. 22.1, 26.1)."""
    if entry.autonym_of is None:
        return entry
    return replace(entry, name=replace(entry.name, species_authors=names[entry.autonym_of].name.authors))
