"""Candidate sites ranked by the habitat of the known ones, and what that habitat is worth as a guide.

Each factor fits from 1, inside the middle of the envelope, down to 0 at a distance outside it that is stated here. The
overall fit is their product, since a plant needs all of them at once; a factor that does not fit counts as a tenth, for
no envelope of a few sites rules a site out. A factor that is unknown counts as a tenth in the worst case and as 1 in
the best, and both are shown. Our own scale: it orders sites, it is no probability.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from auctorum.corpus.model import Corpus
from auctorum.determination.places import suitability_words as words
from auctorum.determination.places.circular import beyond
from auctorum.determination.places.habitat import Envelope, SiteFacts, envelope_of, facts, with_plants
from auctorum.records.rows import Role

ASPECT_FALL = 90.0  # degrees outside the arc of all known aspects at which a slope does not fit at all
LEAST_ELEVATION_FALL_M = 50.0  # else half the height of the envelope, above or below it
LEAST_AREA_FALL_KM = 10.0  # else the radius of the known area, outside it
INSIDE = 0.5  # an overall fit, halfway from worst to best, from which on a site counts as inside the envelope
_LEAST = 0.1


@dataclass(frozen=True, slots=True)
class Fit:
    """How well one factor fits, 0 to 1; None where the site, or every known site, states nothing of it."""

    factor: str  # substrate, elevation, aspect, area
    fit: float | None
    lacks: str  # what is missing to a full fit, in words; empty where nothing is


@dataclass(frozen=True, slots=True)
class Suitability:
    """One site beside the envelope: its overall fit in the worst and in the best case of what is unknown."""

    site: str
    island: str
    fits: tuple[Fit, ...]
    worst: float
    best: float

    @property
    def halfway(self) -> float:
        """The fit by which sites are put in order."""
        return (self.worst + self.best) / 2

    @property
    def lacks(self) -> tuple[str, ...]:
        """What it lacks, factor by factor; empty where everything is as at the known sites."""
        return tuple(one.lacks for one in self.fits if one.lacks)


@dataclass(frozen=True, slots=True)
class Worth:
    """How far the envelope is a guide.

    `hits` of `tried` known sites lie inside the envelope of the other ones (0 of 0 with fewer than two). Of the sites
    searched without finding the taxon, `absent_inside` lie inside the envelope all the same.
    """

    hits: int
    tried: int
    absent: tuple[str, ...]
    absent_inside: tuple[str, ...]


def ranked(
    corpus: Corpus,
    found: Mapping[str, int],
    sites: Iterable[str] | None = None,
    *,
    exactly: bool = False,
    stated: Mapping[str, SiteFacts] | None = None,
) -> tuple[Suitability, ...]:
    """The candidate sites, or those named, best first; equal ones by their worst case, then by id.

    `found` gives the plants of the taxon at each site where it was found; `exactly` as `habitat.facts`, and
    `stated` what that says where it is at hand. Raises KeyError for an unknown site.
    """
    stated = facts(corpus, exactly=exactly) if stated is None else stated
    around = envelope_of(with_plants(stated, found), found)
    wanted = [id_ for id_, site in corpus.sites.items() if site.role is Role.CANDIDATE] if sites is None else sites
    rated = [suitability(stated[site], around) for site in dict.fromkeys(wanted) if not found.get(site)]
    return tuple(sorted(rated, key=lambda one: (-one.halfway, -one.worst, one.site)))


def absences(corpus: Corpus, found: Mapping[str, int]) -> tuple[str, ...]:
    """The sites that were searched, being no candidates, and gave no plant of the taxon; in the order of the table."""
    return tuple(id_ for id_, site in corpus.sites.items() if site.role is not Role.CANDIDATE and not found.get(id_))


def worth(
    corpus: Corpus,
    found: Mapping[str, int],
    *,
    exactly: bool = False,
    stated: Mapping[str, SiteFacts] | None = None,
) -> Worth:
    """Whether each known site would have been found by the others, and which searched sites belie the envelope.

    `exactly` and `stated` as `ranked` takes them.
    """
    stated = facts(corpus, exactly=exactly) if stated is None else stated
    known = with_plants(stated, found)
    around = envelope_of(known, found)
    tried = known if len(known) > 1 else ()
    hits = sum(
        suitability(one, envelope_of([other for other in known if other is not one], found)).halfway >= INSIDE
        for one in tried
    )
    absent = absences(corpus, found)
    inside = tuple(site for site in absent if known and suitability(stated[site], around).halfway >= INSIDE)
    return Worth(hits, len(tried), absent, inside)


def suitability(site: SiteFacts, around: Envelope) -> Suitability:
    """How well a site fits into an envelope."""
    fits = (_substrate(site, around), _elevation(site, around), _aspect(site, around), _area(site, around))
    worst = math.prod(_LEAST if one.fit is None else max(_LEAST, one.fit) for one in fits)
    best = math.prod(1.0 if one.fit is None else max(_LEAST, one.fit) for one in fits)
    return Suitability(site.id, site.island, fits, worst, best)


def _substrate(site: SiteFacts, around: Envelope) -> Fit:
    """The sites on its substrate (on the commonest of several) beside those on the commonest of all."""
    if not site.substrates or not around.substrates:
        return Fit("substrate", None, words.unknown("substrate", bool(site.substrates)))
    most = around.substrates[0].sites
    fit = max((one.sites / most for one in around.substrates if one.name in site.substrates), default=0.0)
    return Fit("substrate", fit, words.substrate(site, around, fit) if fit < 1 else "")


def _elevation(site: SiteFacts, around: Envelope) -> Fit:
    """1 where the site reaches the middle of the envelope, 0 from half the envelope's height outside it."""
    known = around.elevation
    if site.elevation_m is None or known is None:
        return Fit("elevation", None, words.unknown("elevation", site.elevation_m is not None))
    fall = max(LEAST_ELEVATION_FALL_M, (known.highest - known.lowest) / 2)
    low, high = site.elevation_m
    if high < known.middle_low:
        fit = _falling(known.middle_low - high, known.middle_low - known.lowest + fall)
    else:
        fit = _falling(max(0.0, low - known.middle_high), known.highest - known.middle_high + fall)
    return Fit("elevation", fit, words.elevation(site.elevation_m, known) if fit < 1 else "")


def _aspect(site: SiteFacts, around: Envelope) -> Fit:
    """1 on the arc of nine tenths of the known aspects, 0 from 90 degrees outside the arc of all."""
    if site.aspect is None or around.aspect is None or around.core_aspect is None:
        return Fit("aspect", None, words.unknown("aspect", site.aspect is not None))
    outside = max(0.0, beyond(site.aspect, around.aspect) - site.aspect_slack)
    off_core = max(0.0, beyond(site.aspect, around.core_aspect) - site.aspect_slack)
    fit = _falling(off_core, off_core - outside + ASPECT_FALL)
    return Fit("aspect", fit, words.aspect(site.aspect, around.aspect, outside) if fit < 1 else "")


def _area(site: SiteFacts, around: Envelope) -> Fit:
    """1 inside the circle about the known sites, 0 from its own radius outside it."""
    if site.point is None or around.area is None:
        return Fit("area", None, words.unknown("area", site.point is not None))
    outside = around.area.beyond_km(site.point)
    fit = _falling(outside, max(LEAST_AREA_FALL_KM, around.area.radius_km))
    return Fit("area", fit, words.area(outside) if fit < 1 else "")


def _falling(distance: float, fall: float) -> float:
    """1 at no distance, 0 from `fall` on, in a straight line."""
    return max(0.0, 1.0 - distance / fall)
