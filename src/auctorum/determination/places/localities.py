"""What of a site may leave this machine, decided in one place: every output that shows a site asks here.

Coordinates are truncated toward zero, as digits are struck off: at 0.1 degree, 44.1127 becomes 44.1 and -44.1127
becomes -44.1, north and south alike. The place lies in the cell that reaches from there one step away from zero; a
coordinate cut to 0 may lie on either side. Withheld are the exact coordinates, the name of the locality, and the words
on habitat and in remarks, which hold directions. Elevations are rounded outward to 100 m: on a small island a wall at
270 to 330 m is found by its elevation. Island, substrate and aspect are shared by many walls and leave, unless they
give a place away themselves. On an island smaller than a cell its name tells more than the coordinates do.
"""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Any

from auctorum.circumscription.phrases import listed
from auctorum.corpus.model import Corpus, Specimen
from auctorum.determination.places.whereabouts import Whereabouts, whereabouts, whereabouts_of
from auctorum.records.fields import changed
from auctorum.records.rows import Role, Site

ELEVATION_STEP = 100  # m
NO_SITE = "(none)"  # the id of a place that is no site of sites.csv
# WGS 84 (EPSG:7030): semi-major axis in m, and flattening
_AXIS, _FLATTENING = 6_378_137.0, 1 / 298.257_223_563
_POLE, _DATE_LINE = Decimal(90), Decimal(180)

Cell = tuple[Decimal, Decimal]


@dataclass(frozen=True, slots=True)
class PublicSite:
    """A site as it is shown to others; fields are named by the Darwin Core terms they fill where there is one.

    Empty words and None stand for what is unknown or withheld; `withheld` names the fields of the second sort. A
    coordinate prints the digits of the precision. `latitudes` and `longitudes` are the cell that holds the place, in
    degrees, low to high. `uncertainty` (m) reaches from the point to the farthest corner of the cell. The last three
    fields are filled for exact sites only; those have neither precision nor cell.
    """

    id: str
    island: str
    latitude: Decimal | None
    longitude: Decimal | None
    latitudes: Cell | None
    longitudes: Cell | None
    precision: Decimal | None
    uncertainty: int | None
    lowest: Decimal | None  # elevation in m
    highest: Decimal | None
    substrate: str
    aspect: str
    role: Role
    generalizations: str  # dataGeneralizations
    information_withheld: str  # informationWithheld
    withheld: tuple[str, ...]
    locality: str = ""
    habitat: str = ""
    remarks: str = ""


def public_sites(corpus: Corpus, *, exactly: bool = False) -> dict[str, PublicSite]:
    """Every site of a knowledge base by its id, generalised to the precision of its settings, or as recorded."""
    if exactly:
        return {id_: exact(site) for id_, site in corpus.sites.items()}
    known = whereabouts_of(corpus)
    precision = corpus.settings.locality_precision
    return {id_: generalised(site, precision, known) for id_, site in corpus.sites.items()}


def own_place(specimen: Specimen, corpus: Corpus) -> Site | None:
    """The site of a plant, with the plant's own coordinates and locality where its row has them; None for no place."""
    site, row = corpus.sites.get(specimen.site or ""), specimen.record
    if not row.locality and row.decimalLatitude is None and row.decimalLongitude is None:
        return site
    site = site or Site(locationID=row.locationID or NO_SITE)
    located = row.decimalLatitude is not None or row.decimalLongitude is not None
    told: dict[str, Any] = {"locality": row.locality or site.locality}
    if located:
        told |= {"decimalLatitude": row.decimalLatitude, "decimalLongitude": row.decimalLongitude}
    return changed(site, **told)


def exact(site: Site) -> PublicSite:
    """All that the record says; only for somebody who asked for it outright."""
    return PublicSite(
        site.locationID, site.island, site.decimalLatitude, site.decimalLongitude, None, None, None, None,
        site.minimumElevationInMeters, site.maximumElevationInMeters, site.substrate, site.aspect, site.role,
        "", "", (), site.locality, site.habitat, site.locationRemarks,
    )  # fmt: skip


def generalised(site: Site, precision: Decimal, known: Whereabouts | None = None) -> PublicSite:
    """The site with coordinates cut to multiples of `precision` degrees, and what would lead to it left out.

    `known` are the whereabouts of all sites, so that no text of one tells another; by default of this site alone.
    """
    known = known or whereabouts([site], precision)
    texts = {field: getattr(site, field) for field in ("locationID", "island", "substrate", "aspect")}
    telling = {field for field, text in texts.items() if known.told_in(text)}
    kept = {field: "" if field in telling else text for field, text in texts.items()}
    latitude, latitudes = _cut_with_cell(site.decimalLatitude, precision, _POLE)
    longitude, longitudes = _cut_with_cell(site.decimalLongitude, precision, _DATE_LINE)
    located = latitude is not None or longitude is not None
    lowest, highest = elevation_band(site.minimumElevationInMeters, site.maximumElevationInMeters)
    withheld = _withheld(site, telling)
    return PublicSite(
        id=kept["locationID"],
        island=kept["island"],
        latitude=latitude,
        longitude=longitude,
        latitudes=latitudes,
        longitudes=longitudes,
        precision=plain(precision) if located else None,
        uncertainty=reach(latitudes, longitudes) if latitudes and longitudes else None,
        lowest=lowest,
        highest=highest,
        substrate=kept["substrate"],
        aspect=kept["aspect"],
        role=site.role,
        generalizations=_generalizations(precision, latitudes, longitudes, (lowest, highest) != (None, None)),
        information_withheld=withheld_sentence(withheld),
        withheld=withheld,
    )


def cut(degrees: Decimal, precision: Decimal, limit: Decimal = _DATE_LINE) -> Decimal:
    """The multiple of `precision` that is next to `degrees` on the side of zero, printed with the digits of it.

    The last cell before `limit` takes in the limit itself, or a place at 180 degrees would have a cell of no width.

    >>> cut(Decimal("44.1127"), Decimal("0.1")), cut(Decimal("-44.1127"), Decimal("0.25"))
    (Decimal('44.1'), Decimal('-44.00'))
    """
    unit, places = _unit(precision)
    step = Fraction(unit, 10**places)
    steps = abs(Fraction(degrees)) // step
    if steps and steps * step >= Fraction(limit):
        steps -= 1
    digits = tuple(map(int, str(steps * unit)))
    return Decimal((int(degrees < 0 and steps > 0), digits, -places))


def plain(precision: Decimal) -> Decimal:
    """The precision without needless digits: 0.1 for 0.10, 10 for 1E+1."""
    unit, places = _unit(precision)
    return Decimal((0, tuple(map(int, str(unit))), -places))


def _unit(precision: Decimal) -> tuple[int, int]:
    """The precision as a whole number of the last of its decimal places, and how many places it has."""
    _, digits, exponent = precision.as_tuple()
    unit, places = int("".join(map(str, digits))), -int(exponent)
    if places < 0:
        return unit * 10**-places, 0
    while places and unit % 10 == 0:
        unit, places = unit // 10, places - 1
    return unit, places


def _cut_with_cell(degrees: Decimal | None, precision: Decimal, limit: Decimal) -> tuple[Decimal | None, Cell | None]:
    if degrees is None:
        return None, None
    found, step = cut(degrees, precision, limit), plain(precision)
    if not found:
        return found, (-min(step, limit), min(step, limit))
    return found, ((found, min(found + step, limit)) if found > 0 else (max(found - step, -limit), found))


def elevation_band(low: Decimal | None, high: Decimal | None) -> tuple[Decimal | None, Decimal | None]:
    """Elevations (m) rounded outward to full 100 m; a band of no height, which would be exact, gets 100 m.

    >>> elevation_band(Decimal(270), Decimal(330)), elevation_band(Decimal(300), Decimal(300))
    ((Decimal('200'), Decimal('400')), (Decimal('300'), Decimal('400')))
    """
    lowest = None if low is None else Decimal(math.floor(low / ELEVATION_STEP) * ELEVATION_STEP)
    highest = None if high is None else Decimal(math.ceil(high / ELEVATION_STEP) * ELEVATION_STEP)
    if lowest is not None and lowest == highest:
        highest = lowest + ELEVATION_STEP
    return lowest, highest


def reach(latitudes: Cell, longitudes: Cell) -> int:
    """Metres from the corner of a cell that is printed to its farthest, rounded up to two digits.

    An upper bound on the ellipsoid WGS 84: a step north or south as long as at the poleward edge, a step east or west
    as long as at the other. A cell on both sides of zero is measured from its middle.
    """
    near, far = sorted(math.radians(float(abs(edge))) for edge in latitudes)
    if latitudes[0] < 0 < latitudes[1]:
        near = 0.0
    squared = _FLATTENING * (2 - _FLATTENING)
    meridian = _AXIS * (1 - squared) / (1 - squared * math.sin(far) ** 2) ** 1.5
    parallel = _AXIS * math.cos(near) / math.sqrt(1 - squared * math.sin(near) ** 2)
    metres = math.hypot(meridian * _radians(latitudes), parallel * _radians(longitudes))
    step = int(10 ** max(0, math.floor(math.log10(max(metres, 1))) - 1))
    return math.ceil(metres / step) * step


def _radians(cell: Cell) -> float:
    """How far the cell reaches from the side that is printed."""
    low, high = cell
    return math.radians(float(high if low < 0 < high else high - low))


def _withheld(site: Site, telling: set[str]) -> tuple[str, ...]:
    """What others are not told, by the fields of the record; a field that is empty is not withheld."""
    always = ("decimalLatitude", "decimalLongitude", "locality", "habitat", "locationRemarks")
    filled = [field for field in always if getattr(site, field) not in ("", None)]
    return tuple(filled + sorted(telling))


_CALLED = {
    "decimalLatitude": "exact coordinates",
    "decimalLongitude": "exact coordinates",
    "locality": "the name of the locality",
    "habitat": "the habitat in words",
    "locationRemarks": "remarks on the place",
}


def withheld_sentence(fields: Iterable[str]) -> str:
    """The sentence for `informationWithheld`; empty where nothing is withheld."""
    named = list(fields)
    called = list(dict.fromkeys(_CALLED[field] for field in named if field in _CALLED))
    telling = list(dict.fromkeys(field for field in named if field not in _CALLED))
    said = [f"Withheld to protect the plants: {listed(called)}."] if called else []
    said += [f"Left out, because it may tell a place: what stands under {listed(telling)}."] if telling else []
    return " ".join([*said, "Ask who keeps the records."]) if said else ""


def _generalizations(precision: Decimal, latitudes: Cell | None, longitudes: Cell | None, elevations: bool) -> str:
    """The sentences for `dataGeneralizations`; empty where there was nothing to generalise."""
    said = []
    bounds = [
        f"{name} {low:f} and {high:f}"
        for name, cell in (("latitudes", latitudes), ("longitudes", longitudes))
        if cell is not None
        for low, high in (cell,)
    ]
    if bounds:
        unit = "degree" if precision <= 1 else "degrees"
        said.append(
            f"Coordinates truncated toward zero to multiples of {plain(precision):f} {unit}: the place lies between "
            f"{' and between '.join(bounds)}."
        )
    if elevations:
        said.append(f"Elevations rounded outward to full {ELEVATION_STEP} m.")
    return " ".join(said)
