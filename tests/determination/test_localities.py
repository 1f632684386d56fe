"""Places generalised: truncation in both hemispheres, the cell, elevations, and what is said of it."""

from __future__ import annotations

import math
from dataclasses import fields
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.determination.places.localities import PublicSite, cut, elevation_band, exact, generalised, reach
from auctorum.records.rows import Site

D = Decimal
WALL = Site(
    locationID="W1", locality="Blue Step, invented", island="Nowhere", decimalLatitude=D("-44.1127"),
    decimalLongitude=D("118.6431"), minimumElevationInMeters=D(270), maximumElevationInMeters=D(330),
    habitat="Shaded wall behind the hut", substrate="basalt", aspect="S", locationRemarks="Left at the spring.",
)  # fmt: skip


@pytest.mark.parametrize(
    ("degrees", "precision", "printed"),
    [
        pytest.param("44.1127", "0.1", "44.1", id="north"),
        pytest.param("-44.1127", "0.1", "-44.1", id="south-toward-zero"),
        pytest.param("44.19", "0.1", "44.1", id="never-rounded-up"),
        pytest.param("-44.1127", "0.25", "-44.00", id="quarters"),
        pytest.param("118.6431", "0.05", "118.60", id="twentieths"),
        pytest.param("-118.6999", "0.05", "-118.65", id="twentieths-west"),
        pytest.param("-44.9", "1", "-44", id="whole-degrees"),
        pytest.param("118.6", "1E+1", "110", id="tens-as-an-exponent"),
        pytest.param("44.1127", "0.100", "44.1", id="needless-noughts-of-the-precision"),
        pytest.param("44", "0.1", "44.0", id="coarser-than-the-precision"),
        pytest.param("-0.07", "0.1", "0.0", id="no-sign-on-nought"),
        pytest.param("0.3", "0.1", "0.3", id="binary-would-say-0.2"),
        pytest.param("180", "0.1", "179.9", id="the-date-line-is-in-the-last-cell"),
        pytest.param("-180", "0.1", "-179.9", id="the-date-line-west"),
    ],
)
def test_cut(degrees: str, precision: str, printed: str) -> None:
    assert f"{cut(D(degrees), D(precision)):f}" == printed


DEGREES = st.decimals(-90, 90, allow_nan=False, places=7) | st.decimals(-90, 90, allow_nan=False, places=2)
PRECISIONS = st.sampled_from(["0.01", "0.05", "0.1", "0.25", "0.5", "1", "2.5", "10", "90", "0.016"]).map(Decimal)
MERIDIAN = D("12.345")
LAWS = settings(deadline=None, max_examples=200)


def at(latitude: Decimal, longitude: Decimal = MERIDIAN) -> Site:
    return Site(locationID="A", decimalLatitude=latitude, decimalLongitude=longitude)


@LAWS
@given(DEGREES, PRECISIONS)
def test_truncation_is_idempotent_and_prints_the_digits_of_the_precision(degrees: Decimal, precision: Decimal) -> None:
    once = cut(degrees, precision)
    assert f"{cut(once, precision):f}" == f"{once:f}"
    assert len(f"{once:f}".partition(".")[2]) <= max(0, -int(precision.as_tuple().exponent))
    assert abs(once) <= abs(degrees) < abs(once) + precision


@LAWS
@given(DEGREES, PRECISIONS, st.booleans())
def test_the_place_lies_in_the_stated_cell_and_alike_north_and_south(
    degrees: Decimal, precision: Decimal, lengthwise: bool
) -> None:
    site = at(D(10), degrees * 2) if lengthwise else at(degrees)
    shown, mirrored = (
        generalised(one, precision)
        for one in (site, at(-site.decimalLatitude, -site.decimalLongitude))  # type: ignore[operator]
    )
    for cell, point in ((shown.latitudes, site.decimalLatitude), (shown.longitudes, site.decimalLongitude)):
        assert cell is not None and point is not None
        assert cell[0] <= point <= cell[1]
        assert 0 < cell[1] - cell[0] <= 2 * precision
    assert mirrored.latitude == -(shown.latitude or D(0))
    assert mirrored.longitudes == (-shown.longitudes[1], -shown.longitudes[0])  # type: ignore[index]


@LAWS
@given(DEGREES, PRECISIONS, st.integers(0, 99999))
def test_finer_digits_change_nothing_that_is_shown(degrees: Decimal, precision: Decimal, more: int) -> None:
    """Two places of one cell look the same in every field."""
    edge = cut(degrees, precision)
    within = Fraction(edge) + Fraction(precision) * Fraction(more, 100_000) * (-1 if degrees < 0 else 1)
    other = D(within.numerator) / D(within.denominator)
    if edge and abs(other) <= 90:
        assert generalised(at(other), precision) == generalised(at(degrees), precision)


def test_what_leaves_of_a_site() -> None:
    shown = generalised(WALL, D("0.1"))
    assert (shown.id, shown.island, shown.substrate, shown.aspect) == ("W1", "Nowhere", "basalt", "S")
    assert (str(shown.latitude), str(shown.longitude), str(shown.precision)) == ("-44.1", "118.6", "0.1")
    assert (shown.latitudes, shown.longitudes) == ((D("-44.2"), D("-44.1")), (D("118.6"), D("118.7")))
    assert (shown.lowest, shown.highest) == (200, 400)
    assert (shown.locality, shown.habitat, shown.remarks) == ("", "", "")
    assert shown.withheld == ("decimalLatitude", "decimalLongitude", "locality", "habitat", "locationRemarks")
    assert shown.generalizations == (
        "Coordinates truncated toward zero to multiples of 0.1 degree: the place lies between latitudes -44.2 and "
        "-44.1 and between longitudes 118.6 and 118.7. Elevations rounded outward to full 100 m."
    )
    assert shown.information_withheld == (
        "Withheld to protect the plants: exact coordinates, the name of the locality, the habitat in words and remarks "
        "on the place. Ask who keeps the records."
    )


def test_the_exact_site_is_the_record() -> None:
    shown = exact(WALL)
    assert (shown.latitude, shown.longitude, shown.lowest) == (D("-44.1127"), D("118.6431"), 270)
    assert (shown.locality, shown.remarks) == ("Blue Step, invented", "Left at the spring.")
    assert (shown.generalizations, shown.information_withheld, shown.precision) == ("", "", None)


def test_a_site_without_coordinates_claims_none() -> None:
    shown = generalised(Site(locationID="A", island="Nowhere"), D("0.1"))
    assert (shown.latitude, shown.latitudes, shown.precision, shown.uncertainty) == (None, None, None, None)
    assert (shown.generalizations, shown.information_withheld) == ("", "")


@pytest.mark.parametrize("field", ["locationID", "island", "substrate", "aspect"])
def test_a_field_that_tells_the_place_is_left_out_and_named(field: str) -> None:
    wall = {each.name: getattr(WALL, each.name) for each in fields(Site) if each.name != "place"}
    shown = generalised(Site(**(wall | {field: "at 44.1127 S"})), D("0.1"))
    assert "44.11" not in str(shown)
    assert f"may tell a place: what stands under {field}." in shown.information_withheld


@pytest.mark.parametrize(
    ("low", "high", "band"),
    [
        pytest.param(270, 330, (200, 400), id="outward"),
        pytest.param(300, 300, (300, 400), id="a-line-is-widened"),
        pytest.param(12, 14, (0, 100), id="low"),
        pytest.param(-3, 5, (-100, 100), id="below-the-sea"),
        pytest.param(250, None, (200, None), id="one-alone"),
    ],
)
def test_elevation_band(low: int, high: int | None, band: tuple[int, int | None]) -> None:
    assert elevation_band(D(low), None if high is None else D(high)) == band


# Uncertainty from the precision of coordinates, in m, for WGS 84: Wieczorek, Guo & Hijmans (2004), International
# Journal of Geographical Information Science 18: 745-767, table on the precision of coordinates. Values from memory.
@pytest.mark.parametrize(
    ("precision", "latitude", "metres"),
    [
        ("1", 0, 156_904), ("1", 30, 146_962), ("1", 60, 124_605), ("1", 85, 112_109),
        ("0.1", 0, 15_691), ("0.1", 30, 14_697), ("0.1", 60, 12_461), ("0.1", 85, 11_211),
        ("0.01", 0, 1_570), ("0.01", 30, 1_470), ("0.01", 60, 1_247), ("0.01", 85, 1_122),
    ],
)  # fmt: skip
def test_uncertainty_against_the_published_table(precision: str, latitude: int, metres: int) -> None:
    shown = generalised(at(D(latitude) + D("0.001"), D("20.001")), D(precision))
    assert shown.uncertainty is not None
    assert metres * 0.999 <= shown.uncertainty <= metres * 1.1  # rounded up to two digits


@LAWS
@given(DEGREES, st.decimals(-180, 180, allow_nan=False, places=6), PRECISIONS)
def test_the_place_is_within_the_uncertainty(latitude: Decimal, longitude: Decimal, precision: Decimal) -> None:
    """Second answer: the great-circle distance on a sphere, of the mean radius 6,371,008.8 m (IUGG)."""
    shown = generalised(at(latitude, longitude), precision)
    assert shown.uncertainty is not None
    assert sphere(shown, latitude, longitude) <= shown.uncertainty * 1.004  # a sphere differs from the ellipsoid


def sphere(shown: PublicSite, latitude: Decimal, longitude: Decimal) -> float:
    a, b, c, d = (math.radians(float(x or 0)) for x in (shown.latitude, shown.longitude, latitude, longitude))
    half = math.sin((c - a) / 2) ** 2 + math.cos(a) * math.cos(c) * math.sin((d - b) / 2) ** 2
    return 2 * 6_371_008.8 * math.asin(min(1.0, math.sqrt(half)))


def test_a_cell_on_the_equator_is_reached_from_its_middle() -> None:
    assert reach((D("-1"), D("1")), (D("-1"), D("1"))) == 160_000
