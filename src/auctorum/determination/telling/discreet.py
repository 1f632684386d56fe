"""What a determination shows of a plant's site: elevations in bands, since an exact one finds a wall on an island."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.show import format_span
from auctorum.characters.units import UnfitUnit, convert
from auctorum.characters.vocabulary import Kind
from auctorum.circumscription.plants import Plant
from auctorum.circumscription.wording import of_habitat
from auctorum.corpus.model import Corpus
from auctorum.determination.criteria.criterion import Judgement
from auctorum.determination.model import Contribution, Determination, Unused
from auctorum.determination.places.localities import elevation_band

METRES = "m"


def of_its_site(corpus: Corpus, plant: Plant) -> dict[str, str]:
    """Elevations that the site tells of a plant which has none of its own: character -> the band that is shown."""
    site = corpus.sites.get(plant.site or "")
    if site is None:
        return {}
    own = {one.character for one in plant.observations}
    low, high = elevation_band(site.minimumElevationInMeters, site.maximumElevationInMeters)
    found = {}
    for character in corpus.vocabulary.values():
        if of_habitat(character) and character.kind is Kind.MEASURE and character.name not in own:
            found[character.name] = _band(low, high, character.unit)
    return found


def _band(low: Decimal | None, high: Decimal | None, unit: str) -> str:
    ends = [one for one in (low, high) if one is not None]
    if not ends:
        return ""
    try:
        first, last = (convert(one, METRES, unit) for one in (min(ends), max(ends)))
    except UnfitUnit:
        return ""
    return format_span(first, last, unit)


def discreet(found: Determination, bands: dict[str, str]) -> Determination:
    """The determination with those elevations as bands."""

    def told(one: Contribution) -> Contribution:
        return replace(one, said=bands[one.character]) if one.character in bands else one

    def unused(one: Unused) -> Unused:
        return replace(one, said=bands[one.character]) if one.character in bands else one

    return replace(found, contributions=tuple(map(told, found.contributions)), unused=tuple(map(unused, found.unused)))


def discreet_judgement(judged: Judgement, decisive: str, bands: dict[str, str]) -> Judgement:
    """The judgement with those elevations as bands; where one decides, how far it is from the limit is not told."""
    supports = tuple(
        replace(one, observed=bands[one.character]) if one.character in bands and one.observed else one
        for one in judged.supports
    )
    if decisive in bands and judged.observed:
        return replace(judged, observed=bands[decisive], margin=None, error=Fraction(0), supports=supports)
    return replace(judged, supports=supports)
