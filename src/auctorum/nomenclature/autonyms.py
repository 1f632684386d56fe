"""Autonyms: names that come into being by themselves, with their date (ICN Art. 22.3, 26.3)."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from auctorum.names.name import Name, Ranked
from auctorum.names.ranks import SPECIES, UNRANKED, rank_named
from auctorum.nomenclature.inquiry import Inquiry
from auctorum.nomenclature.judgement import Judgement, Legitimacy


@dataclass(frozen=True, slots=True)
class Autonym:
    """A name that came into being by itself (ICN Art. 22.3, 26.3): its species or genus, rank, and the act that made
    it. `name` has the authors of the species or genus after that word, none at the end."""

    above: str
    rank: str
    name: Name
    act: str


def autonyms(inquiry: Inquiry, judged: Mapping[str, Judgement]) -> dict[tuple[str, str], Autonym]:
    """Autonyms by species or genus and rank: made by the first valid name of that rank under a legitimate name
    (ICN Art. 22.3, 26.3), with its date."""
    found: dict[tuple[str, str], Autonym] = {}
    for act in inquiry.corpus.acts.values():  # by date
        judgement = judged.get(act.id)
        above = inquiry.above(act)
        if judgement is None or not judgement.stands or above is None or judgement.isonym_of is not None:
            continue
        name, key = act.printed, (above, judgement.rank)
        if key in found or judgement.rank == UNRANKED.name or not (name.lower or (name.divisions and not name.species)):
            continue
        if inquiry.legitimacy_of(above) is not Legitimacy.ILLEGITIMATE:
            made = autonym_name(inquiry.corpus.names[above].name, judgement.rank)
            found[key] = Autonym(above, judgement.rank, made, act.id)
    return found


def autonym_name(above: Name, rank: str) -> Name:
    """The autonym of a species or genus at a rank, with the authors of that species or genus.

    >>> from auctorum.names.format import format_name
    >>> format_name(autonym_name(Name("Exemplum", "album"), "variety"))
    'Exemplum album var. album'
    """
    bare = replace(above.bare, lower=(), divisions=())
    hybrid = above.species_hybrid
    if rank_named(rank) > SPECIES:
        lower = (Ranked(rank, above.species, hybrid),)
        return replace(bare, lower=lower, species_authors=above.authors)
    return replace(bare, divisions=(Ranked(rank, above.genus),), species_authors=above.authors)
