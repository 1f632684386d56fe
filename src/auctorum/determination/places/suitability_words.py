"""What a candidate site lacks, in words; never a locality or a coordinate, and distances in one round figure."""

from __future__ import annotations

import math

from auctorum.characters.directions import arc_words, nearest_point
from auctorum.circumscription.phrases import counted, listed
from auctorum.determination.places.circular import Arc
from auctorum.determination.places.habitat import FEW, Elevations, Envelope, SiteFacts

_OF_SITES = {"area": "coordinates"}  # what a site would state, where that is another word


def guess(around: Envelope) -> str:
    """That an envelope is drawn from few sites; empty where it is not."""
    if not around.sites:
        return "no known site, no envelope"
    return f"drawn from {counted(len(around.sites), 'site')}: a guess" if len(around.sites) < FEW else ""


def unknown(factor: str, site_states_it: bool) -> str:
    """`substrate unknown`; or that no known site states it, so that there is nothing to compare with."""
    stated = _OF_SITES.get(factor, factor)
    return f"no known site states its {stated}" if site_states_it else f"{stated} unknown"


def substrate(site: SiteFacts, around: Envelope, fit: float) -> str:
    """`limestone, not that of any known site (basalt 5, tuff 1)`; or that it is seldom theirs."""
    known = ", ".join(f"{one.name} {one.sites}" for one in around.substrates)
    seldom = "seldom that of the known sites" if fit else "not that of any known site"
    return f"{listed(site.substrates)}, {seldom} ({known})"


def elevation(span: tuple[float, float], known: Elevations) -> str:
    """`350–430 m, 20 m above the known 170–330 m`; or that it is at their edge."""
    low, high = span
    place = f"{_metres(low, high)} m"
    sites = f"known {_metres(known.lowest, known.highest)} m"
    if low > known.highest:
        return f"{place}, {_up(low - known.highest)} m above the {sites}"
    if high < known.lowest:
        return f"{place}, {_up(known.lowest - high)} m below the {sites}"
    return f"{place}, at the {'upper' if low > known.middle_high else 'lower'} end of the {sites}"


def aspect(degrees: float, known: Arc, outside: float) -> str:
    """`faces N, 160° from the known arc SE to S`; or that it is on the rim of the arc."""
    faces, arc = f"faces {nearest_point(degrees)}", f"the known arc {arc_words(known.start, known.end)}"
    return f"{faces}, {_up(outside)}° from {arc}" if outside else f"{faces}, at the end of {arc}"


def area(outside_km: float) -> str:
    """`about 20 km outside the area of the known sites`, to one figure, so that no place is given away."""
    if outside_km < 1:
        return "less than 1 km outside the area of the known sites"
    unit = 10 ** math.floor(math.log10(outside_km))
    return f"about {math.floor(outside_km / unit + 0.5) * unit} km outside the area of the known sites"


def _up(amount: float) -> int:
    """A distance outside as a whole number, at least 1."""
    return max(1, math.floor(amount + 0.5))


def _metres(low: float, high: float) -> str:
    first, last = (f"{math.floor(one + 0.5)}" for one in (low, high))
    return first if first == last else f"{first}–{last}"
