"""The habitat of the sites where a taxon was found, as an envelope: substrates, elevation, aspect and area.

Each site counts once, however many plants were measured there: numbers of plants tell of the effort, too.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from itertools import pairwise

from auctorum.characters.directions import TURN
from auctorum.circumscription.plants import Plant
from auctorum.corpus.model import Corpus
from auctorum.determination.places.circular import Arc, arc_holding
from auctorum.determination.places.cultivation import in_gardens
from auctorum.determination.places.localities import PublicSite, public_sites
from auctorum.determination.places.of_site import habitat_of
from auctorum.determination.places.sphere import Circle, Point, centre_and_radius

FEW = 5  # an envelope of fewer sites is a guess (our choice, no source)
_CORE = 0.9  # the share of sites that the narrower arc holds
_ROUNDING = 1e-9  # sites; what sums of shares may be off
_LEFT_OUT = 0.1  # the share of the sites' elevations that the middle leaves out at either end


@dataclass(frozen=True, slots=True)
class SiteFacts:
    """What a site states of its habitat; None and () where it states nothing that can be read."""

    id: str
    island: str
    substrates: tuple[str, ...]
    elevation_m: tuple[float, float] | None
    aspect: float | None  # degrees, of an arc its middle
    aspect_slack: float  # half the arc, or half the step of the compass it was read on
    point: Point | None


@dataclass(frozen=True, slots=True)
class Substrate:
    """One substrate of the known sites, with the sites and the plants found on it."""

    name: str
    sites: int
    plants: int


@dataclass(frozen=True, slots=True)
class Elevations:
    """From the lowest to the highest known site in m, and the middle 80 % of them."""

    lowest: float
    middle_low: float
    middle_high: float
    highest: float


@dataclass(frozen=True, slots=True)
class Envelope:
    """The habitat of the sites where a taxon was found; None where none of them states it."""

    sites: tuple[str, ...]  # in the order of the table
    plants: int
    substrates: tuple[Substrate, ...]  # the commonest first
    elevation: Elevations | None
    aspect: Arc | None  # the shortest arc that holds all known aspects
    core_aspect: Arc | None  # the shortest that holds nine tenths of them
    area: Circle | None

    @property
    def few(self) -> bool:
        """Whether the sites are too few to draw more than a guess from."""
        return len(self.sites) < FEW


def in_cultivation(plant: Plant) -> bool:
    """Whether somebody put the plant where it grows, or keeps it there: it is no sign of a habitat."""
    return in_gardens(plant.establishment)


def found_at(several: Iterable[Plant], taxon: str) -> dict[str, int]:
    """Site -> plants named as the taxon there, by id of the site; without those in cultivation."""
    found: dict[str, int] = {}
    for plant in several:
        if plant.taxon == taxon and plant.site is not None and not in_cultivation(plant):
            found[plant.site] = found.get(plant.site, 0) + 1
    return dict(sorted(found.items()))


def envelope_of(known: Iterable[SiteFacts], found: Mapping[str, int]) -> Envelope:
    """The envelope of sites; `found` gives the plants of each."""
    sites = tuple(known)
    aspects = [site.aspect for site in sites if site.aspect is not None]
    return Envelope(
        tuple(site.id for site in sites),
        sum(found[site.id] for site in sites),
        _substrates(sites, found),
        _elevations([site.elevation_m for site in sites if site.elevation_m is not None]),
        arc_holding(aspects) if aspects else None,
        arc_holding(aspects, _CORE) if aspects else None,
        centre_and_radius(site.point for site in sites if site.point is not None),
    )


def facts(corpus: Corpus, *, exactly: bool = False) -> dict[str, SiteFacts]:
    """What sites.csv states of every site, in the order of the table.

    Places and elevations are generalised before anything is drawn from them, so that neither an envelope nor a fit
    gives a place away; with `exactly` they are as recorded, for a result that stays on this machine.
    """
    return {id_: _facts_of(corpus, id_, site) for id_, site in public_sites(corpus, exactly=exactly).items()}


def with_plants(sites: Mapping[str, SiteFacts], found: Mapping[str, int]) -> tuple[SiteFacts, ...]:
    """The sites where a plant was found, in their order. Raises KeyError for one that is unknown."""
    if unknown := sorted(found.keys() - sites.keys()):
        raise KeyError(unknown[0])
    return tuple(site for id_, site in sites.items() if found.get(id_, 0) > 0)


def _facts_of(corpus: Corpus, id_: str, site: PublicSite) -> SiteFacts:
    """`id_` is the id in the table, by which plants are counted; that of `site` is empty where it tells a place."""
    states: tuple[str, ...] = ()
    aspect, slack = None, 0.0
    for one in habitat_of(corpus, id_):
        told = corpus.vocabulary[one.character].property
        if told == "substrate" and site.substrate:  # else it is withheld
            states = tuple(state for state, _ in one.states)
        elif told == "aspect" and site.aspect and one.value is not None and one.slack < TURN / 2:  # it faces one way
            aspect, slack = float(one.value), float(one.slack)
    words = site.substrate.strip().casefold()
    substrates = states or ((words,) if words else ())
    return SiteFacts(id_, site.island.strip(), substrates, _elevation(site), aspect, slack, _point(site))


def _elevation(site: PublicSite) -> tuple[float, float] | None:
    ends = [float(one) for one in (site.lowest, site.highest) if one is not None]
    return (min(ends), max(ends)) if ends else None


def _point(site: PublicSite) -> Point | None:
    """The middle of the cell that is shown, or the point itself."""
    if site.latitudes is not None and site.longitudes is not None:
        return Point(*(float(sum(cell)) / 2 for cell in (site.latitudes, site.longitudes)))
    if site.latitude is None or site.longitude is None:
        return None
    return Point(float(site.latitude), float(site.longitude))


def _substrates(sites: Iterable[SiteFacts], found: Mapping[str, int]) -> tuple[Substrate, ...]:
    on: dict[str, list[int]] = {}
    for site in sites:
        for name in site.substrates:
            on.setdefault(name, []).append(found[site.id])
    counted = [Substrate(name, len(plants), sum(plants)) for name, plants in on.items()]
    return tuple(sorted(counted, key=lambda one: (-one.sites, -one.plants, one.name)))


def _elevations(spans: list[tuple[float, float]]) -> Elevations | None:
    """The spans of the sites together; the middle leaves out a tenth at each end, every span taken as evenly filled."""
    if not spans:
        return None
    levels = _levels(spans)
    low, high = (_level_of(levels, share * len(spans)) for share in (_LEFT_OUT, 1 - _LEFT_OUT))
    return Elevations(levels[0].at, low, high, levels[-1].at)


@dataclass(frozen=True, slots=True)
class _Level:
    """The end of a span: how many of the evenly filled spans lie below it, and how many with it."""

    at: float
    below: float
    upto: float  # more than below by the spans without height that lie here


def _levels(spans: list[tuple[float, float]]) -> list[_Level]:
    """Every end of a span, from the lowest; in one sweep, by what the spans that are open rise by for each metre."""
    turns: dict[float, list[float]] = {}
    opened: Counter[float] = Counter()
    flat: Counter[float] = Counter()
    for low, high in spans:
        if low == high:
            flat[low] += 1
            turns.setdefault(low, [])
            continue
        for end, sign in ((low, 1), (high, -1)):
            turns.setdefault(end, []).append(sign / (high - low))
            opened[end] += sign
    found: list[_Level] = []
    slope, passed, is_open = 0.0, 0.0, 0
    for end in sorted(turns):
        below = passed + slope * (end - found[-1].at) if found else 0.0
        passed = below + flat[end]
        found.append(_Level(end, below, passed))
        is_open += opened[end]
        slope = slope + math.fsum(turns[end]) if is_open else 0.0  # else what rounding leaves would rise on
    return found


def _level_of(levels: list[_Level], wanted: float) -> float:
    """The elevation below which so many of the spans lie."""
    for before, level in pairwise(levels):
        if before.upto >= wanted - _ROUNDING:
            return before.at
        rising = level.below - before.upto
        if rising and level.below >= wanted - _ROUNDING:
            return min(level.at, before.at + (level.at - before.at) * (wanted - before.upto) / rising)
    return levels[-1].at
