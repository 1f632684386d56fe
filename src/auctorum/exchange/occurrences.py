"""Sites and measured plants under Darwin Core terms: CSV (RFC 4180), and GeoJSON (RFC 7946) for sites.

What a place may show is decided in `places.localities` of determination; here it is only written. Besides Darwin Core's
there are the columns substrate, aspect (the direction a slope faces) and role (`known` or `candidate`), and one column
`character [unit]` for each measurement, its cells as typed.
"""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from decimal import Decimal

from auctorum.corpus.model import Corpus, Specimen
from auctorum.determination.places.cultivation import in_gardens
from auctorum.determination.places.localities import (
    NO_SITE,
    Cell,
    PublicSite,
    exact,
    generalised,
    own_place,
    public_sites,
    withheld_sentence,
)
from auctorum.determination.places.public_plants import ERROR_MARK, FIELDS, PublicPlant, public_plant
from auctorum.determination.places.whereabouts import Whereabouts, whereabouts_of
from auctorum.exchange.as_csv import neutral

Row = dict[str, str]
_NUMBER = re.compile(r"[+-]?\d+(?:[.,]\d+)?")  # what a spreadsheet reads as a number, and does not run
_PLACE = (
    "locationID",
    "island",
    "locality",
    "decimalLatitude",
    "decimalLongitude",
    "coordinatePrecision",
    "coordinateUncertaintyInMeters",
    "minimumElevationInMeters",
    "maximumElevationInMeters",
)
_SAID = ("dataGeneralizations", "informationWithheld")
_SITE = (*_PLACE, "habitat", "substrate", "aspect", "role", "locationRemarks", *_SAID)
_EXACT_ONLY = ("locality", "habitat", "locationRemarks")  # columns that generalised tables do not have


def sites_csv(corpus: Corpus, *, exactly: bool = False) -> str:
    """A line for each site, in the order of sites.csv."""
    rows = [_site_row(site) for site in public_sites(corpus, exactly=exactly).values()]
    return _csv(_without_exact(_SITE, exactly), rows)


def sites_geojson(corpus: Corpus, *, exactly: bool = False) -> str:
    """A Feature for each site: the generalised cell as a Polygon, or the exact Point; null without coordinates.

    A cell is drawn as the area that it is: a point at its corner would send people to a place that is none.
    """
    features = [
        {
            "type": "Feature",
            "geometry": _geometry(site),
            "properties": {term: _json_value(term, value) for term, value in _site_row(site).items() if value},
        }
        for site in public_sites(corpus, exactly=exactly).values()
    ]
    lines = ",\n".join(json.dumps(feature, ensure_ascii=False) for feature in features)
    return f'{{"type": "FeatureCollection", "features": [\n{lines}\n]}}\n'


def specimens_csv(corpus: Corpus, *, exactly: bool = False) -> tuple[str, tuple[int, ...]]:
    """A line for each row of specimens.csv, and the lines of that file from which something was left out."""
    known = None if exactly else whereabouts_of(corpus)
    plants = [public_plant(specimen, corpus.vocabulary, known) for specimen in corpus.specimens]
    order = {character: number for number, character in enumerate(corpus.vocabulary)}
    told = dict.fromkeys((named, unit) for plant in plants for named, unit, _ in plant.measurements)
    headings = [_heading(*one) for one in sorted(told, key=lambda one: order[one[0].removesuffix(ERROR_MARK)])]
    rows = [
        _specimen_row(specimen, plant, _place(specimen, corpus, known))
        for specimen, plant in zip(corpus.specimens, plants, strict=True)
    ]
    terms = ("occurrenceID", "organismID", "basisOfRecord", *FIELDS[2:-1], *_PLACE, FIELDS[-1], *_SAID)
    lines = [one.record.place.line for one, plant in zip(corpus.specimens, plants, strict=True) if plant.withheld]
    return _csv((*_without_exact(terms, exactly), *headings), rows), tuple(lines)


def _place(specimen: Specimen, corpus: Corpus, known: Whereabouts | None) -> PublicSite | None:
    site = own_place(specimen, corpus)
    if site is None:
        return None
    shown = exact(site) if known is None else generalised(site, corpus.settings.locality_precision, known)
    return replace(shown, id="") if shown.id == NO_SITE else shown


def _without_exact(terms: Sequence[str], exactly: bool) -> tuple[str, ...]:
    return tuple(term for term in terms if exactly or term not in _EXACT_ONLY)


def _heading(character: str, unit: str) -> str:
    return f"{character} [{unit}]" if unit else character


def _site_row(site: PublicSite) -> Row:
    return {
        "locationID": site.id,
        "island": site.island,
        "locality": site.locality,
        "decimalLatitude": _figure(site.latitude),
        "decimalLongitude": _figure(site.longitude),
        "coordinatePrecision": _figure(site.precision),
        "coordinateUncertaintyInMeters": "" if site.uncertainty is None else str(site.uncertainty),
        "minimumElevationInMeters": _figure(site.lowest),
        "maximumElevationInMeters": _figure(site.highest),
        "habitat": site.habitat,
        "substrate": site.substrate,
        "aspect": site.aspect,
        "role": str(site.role),
        "locationRemarks": site.remarks,
        "dataGeneralizations": site.generalizations,
        "informationWithheld": site.information_withheld,
    }


def _specimen_row(specimen: Specimen, plant: PublicPlant, site: PublicSite | None) -> Row:
    row = dict(plant.fields)
    withheld = plant.withheld
    if site is not None:
        at_site = _site_row(site)
        row |= {term: at_site[term] for term in (*_PLACE, "dataGeneralizations")}
        withheld = (*site.withheld, *plant.withheld)
    row["basisOfRecord"] = _basis(specimen)
    row["informationWithheld"] = withheld_sentence(withheld)
    for character, unit, cell in plant.measurements:
        row[_heading(character, unit)] = cell
    return row


def _basis(specimen: Specimen) -> str:
    """What the record tells: a number in a herbarium, or a plant kept in a garden; else somebody saw a plant."""
    if specimen.record.catalogNumber:
        return "PreservedSpecimen"
    kept = in_gardens(specimen.record.degreeOfEstablishment)
    return "LivingSpecimen" if kept else "HumanObservation"


def _figure(number: Decimal | None) -> str:
    return "" if number is None else f"{number:f}"


def _csv(headings: Sequence[str], rows: Iterable[Row]) -> str:
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow([neutral(heading) for heading in headings])
    for row in rows:
        cells = (row.get(heading, "") for heading in headings)
        writer.writerow([cell if _NUMBER.fullmatch(cell) else neutral(cell) for cell in cells])
    return out.getvalue()


def _json_value(term: str, value: str) -> str | float:
    """Numbers as such: a coordinate of 44.0 stays 44.0, though its precision is told by coordinatePrecision alone."""
    if term.startswith(("decimal", "coordinate", "minimum", "maximum")):
        return int(value) if value.lstrip("-").isdigit() else float(value)
    return value


def _geometry(site: PublicSite) -> dict[str, object] | None:
    """Longitude before latitude; the ring counterclockwise and closed (RFC 7946, 3.1.1 and 3.1.6)."""
    if site.latitudes is not None and site.longitudes is not None:
        return {"type": "Polygon", "coordinates": [_ring(site.longitudes, site.latitudes)]}
    if site.latitude is not None and site.longitude is not None and site.precision is None:
        return {"type": "Point", "coordinates": [float(site.longitude), float(site.latitude)]}
    return None


def _ring(longitudes: Cell, latitudes: Cell) -> list[list[float]]:
    west, east = map(float, longitudes)
    south, north = map(float, latitudes)
    return [[west, south], [east, south], [east, north], [west, north], [west, south]]
