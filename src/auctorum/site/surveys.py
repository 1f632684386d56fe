"""Which taxa have a survey on the site, and what of a survey others may read."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import replace
from functools import cached_property

from auctorum.circumscription.plants import Plant
from auctorum.circumscription.wording import of_habitat
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import find_taxon
from auctorum.determination.places.habitat import in_cultivation
from auctorum.determination.survey.bases import concerning
from auctorum.determination.survey.data import Public
from auctorum.determination.survey.model import NO_SITE, Survey
from auctorum.determination.survey.survey import survey
from auctorum.determination.survey.taxa import scope_of
from auctorum.determination.view import Statements
from auctorum.problems import AuctorumError
from auctorum.site.paths import slugs

WITHHELD = (
    "The criterion decides by the habitat, whose figures would tell where the plants grow: only counts are shown here."
)


class Surveys:
    """The surveys of a corpus as others may read them, each made once."""

    def __init__(self, corpus: Corpus, plants: Sequence[Plant]) -> None:
        self.corpus, self.plants = corpus, plants
        self._found: dict[str, Survey] = {}

    def of(self, taxon: str) -> Survey:
        """How many of the plants are the taxon."""
        if taxon not in self._found:
            made = survey(self.corpus, self._statements, taxon, self.plants)
            self._found[taxon] = public_survey(self.corpus, made)
        return self._found[taxon]

    @cached_property
    def paths(self) -> dict[str, str]:
        """Where the plants of each focal taxon that has any are counted; in the order of kb.yaml."""
        taxa = surveyed_taxa(self._statements, self.plants)
        own = slugs(taxa)
        return {taxon: f"survey/{own[taxon]}.html" for taxon in taxa}

    @cached_property
    def _statements(self) -> Statements:
        return Statements(self.corpus)


def surveyed_taxa(statements: Statements, plants: Sequence[Plant]) -> tuple[str, ...]:
    """The focal taxa of which some wild plant was given the name, or which a criterion decides about; ids, in order."""
    wild = [plant for plant in plants if not in_cultivation(plant)]
    if not wild:
        return ()
    corpus, held, named = statements.corpus, statements.opinions, {plant.taxon for plant in wild}
    return tuple(
        taxon
        for taxon in dict.fromkeys(_focal(corpus))
        if concerning(corpus, taxon) or not scope_of(held, taxon).counts.isdisjoint(named)
    )


def _focal(corpus: Corpus) -> Iterator[str]:
    for name in corpus.focal:
        try:
            yield find_taxon(corpus, name).id
        except AuctorumError:
            continue  # nobody keeps it


def public_survey(corpus: Corpus, found: Survey) -> Survey:
    """The survey as others may read it: ids of sites and names of observers that tell a place are withheld.

    Nothing is left of the figures where the decisive character is one of the habitat: they are as exact as the place.
    The candidate sites stay; no page shows them.
    """
    public = Public(corpus)
    site = _public_ids((place.site for place in found.sites), public)
    hidden = found.curve is not None and of_habitat(corpus.vocabulary[found.curve.limit.character])
    shown = replace(
        found,
        sites=tuple(replace(place, site=site[place.site]) for place in found.sites),
        readings=tuple(one._replace(site=site[one.site]) for one in found.readings),
        measurers=tuple(
            replace(one, first=public.words(one.first), second=public.words(one.second)) for one in found.measurers
        ),
        wanted=tuple(one if one.overall else replace(one, site=site[one.site]) for one in found.wanted),
        left_out=tuple(map(public.words, found.left_out)),
    )
    return _without_figures(shown) if hidden else shown


def _public_ids(ids: Iterable[str], public: Public) -> Mapping[str, str]:
    """Ids as others may read them; those withheld are numbered, so that they stay apart."""
    found: dict[str, str] = {NO_SITE: NO_SITE}
    for id_ in ids:
        told = public.site(id_) or NO_SITE
        found[id_] = told if told == NO_SITE or told not in found.values() else f"{told} {len(found)}"
    return found


def _without_figures(found: Survey) -> Survey:
    return replace(
        found,
        whole=replace(found.whole, gap=None),
        sites=tuple(replace(place, gap=None) for place in found.sites),
        curve=None,
        readings=(),
        measurers=(),
        left_out=(*found.left_out, WITHHELD),
    )
