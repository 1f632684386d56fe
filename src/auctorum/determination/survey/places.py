"""What a survey says of each site: counts, gap or spectrum, how many plants more to measure, and where to look next."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from auctorum.circumscription.plants import Plant
from auctorum.corpus.model import Corpus
from auctorum.determination.counting.counts import expected_count
from auctorum.determination.counting.planning import more_plants_wanted, rule_of_three, share_if_none
from auctorum.determination.places.habitat import envelope_of, facts, with_plants
from auctorum.determination.places.localities import public_sites
from auctorum.determination.places.suitability import ranked, worth
from auctorum.determination.survey.bases import NAMED, NOT_JUDGED, OTHERS, UNDECIDED, Judged
from auctorum.determination.survey.curve import Decisive, gap_of
from auctorum.determination.survey.model import NO_SITE, Candidates, Count, Ground, Place, Wanted

Rows = NDArray[np.intp]
HOME = 0.25  # the share of the plants judged at a site from which on the taxon is at home there; a judgement of ours
_SAID = (NAMED, OTHERS, UNDECIDED, NOT_JUDGED)


def rows_by_site(corpus: Corpus, plants: Sequence[Plant]) -> dict[str, Rows]:
    """Places of the plants by site: in the order of sites.csv, then other ids, then the plants without a site."""
    found: dict[str, list[int]] = {}
    for place, plant in enumerate(plants):
        found.setdefault(plant.site or NO_SITE, []).append(place)
    order = {id_: number for number, id_ in enumerate(corpus.sites)}
    ids = sorted(found, key=lambda id_: (id_ == NO_SITE, order.get(id_, len(order)), id_))
    return {id_: np.array(found[id_], dtype=np.intp) for id_ in ids}


def places(
    corpus: Corpus, views: Sequence[Judged], where: Mapping[str, Rows], plants: int, found: Decisive | None
) -> tuple[Place, tuple[Place, ...]]:
    """All plants together, and each site; `where` as `rows_by_site` gives them."""
    of_plant = {place: row for row, (place, *_) in enumerate(found.seen)} if found is not None else {}
    islands = {id_: site.island for id_, site in public_sites(corpus).items()}

    def at(site: str, rows: Rows) -> Place:
        seen = [of_plant[row] for row in rows.tolist() if row in of_plant]
        gap = None
        if found is not None:
            gap = gap_of(found, seen, corpus.vocabulary[found.limit.character])
        return Place(site, islands.get(site, ""), len(rows), tuple(_count(view, rows) for view in views), gap)

    whole = at(NO_SITE, np.arange(plants, dtype=np.intp))
    return whole, tuple(at(site, rows) for site, rows in where.items())


def _count(view: Judged, rows: Rows) -> Count:
    said = np.bincount(view.said[rows], minlength=len(_SAID))
    expected = None
    if view.chances is not None:
        expected = expected_count(view.chances[rows][view.said[rows] != NOT_JUDGED].tolist())
    named, others, undecided, not_judged = (int(said[one]) for one in _SAID)
    return Count(named, others, undecided, not_judged, expected)


def wanted(whole: Place, sites: Sequence[Place], main: int, half_width: float) -> Iterator[Wanted]:
    """How many plants more to measure, overall and then at each site, under the view at `main`."""
    for number, place in enumerate((whole, *sites)):
        one = place.counts[main]
        more = more_plants_wanted(one.named, one.judged, half_width)
        none = (rule_of_three(one.judged), share_if_none(one.judged)) if one.judged and not one.named else None
        yield Wanted(place.site, not number, one.named, one.judged, more, none)


def candidates(corpus: Corpus, plants: Sequence[Plant], counts: Judged, *, exactly: bool) -> Candidates:
    """The candidate sites beside those where the taxon is at home by the names given; `counts` are those names.

    Where nobody named a plant so, `counts` may be any other view.
    """
    where = {site: rows for site, rows in rows_by_site(corpus, plants).items() if site in corpus.sites}
    at = {site: _count(counts, rows) for site, rows in where.items()}
    some = {site: one.named for site, one in sorted(at.items()) if one.named}
    home = {site: many for site, many in some.items() if many >= HOME * at[site].judged}
    stated = facts(corpus, exactly=exactly)
    told = worth(corpus, home, stated=stated)
    searched = {site for site, one in at.items() if not one.named}
    return Candidates(
        envelope_of(with_plants(stated, home), home),
        ranked(corpus, home, stated=stated),
        replace(
            told,
            absent=tuple(site for site in told.absent if site in searched),
            absent_inside=tuple(site for site in told.absent_inside if site in searched),
        ),
        counts.basis.ground is Ground.NAMES,
        tuple((site, many, at[site].judged) for site, many in some.items() if site not in home),
    )
