"""What in a text gives a place away, in the many ways in which coordinates and names are written."""

from __future__ import annotations

from decimal import Decimal

import pytest

from auctorum.determination.places.whereabouts import whereabouts
from auctorum.records.rows import Site

SITE = Site(
    locationID="A",
    locality="Widow's High-Stair, invented",
    island="Nowhere",
    decimalLatitude=Decimal("-44.112712"),
    decimalLongitude=Decimal("118.643155"),
)
KNOWN = whereabouts([SITE], Decimal("0.1"))


@pytest.mark.parametrize(
    "text",
    [
        "44.112712", "-44.1127", "at 44.11", "44.113 (rounded)", "44,1127 S", "44·1127", "S44.1127°",
        "44.1127S118.6431E",
        "lat=-44.112712;lon=118.643155", "118.64", "４４．１１２７", "44.1127120000", "0044.1127",
        "44°06'45.8\"S", "44° 6′ 46″ S", "44 06 45", "44°6.7627'", "44d06m46s", "44:06:45.76", "44 deg 6 min",
        "44º06’46” S, 118º38’35” E", "118 38 35", "44-06-46", "44 1127", "44_1127", "44-112712", "44 .1127",
        "441127", "S441127E1186431", "440645", "site-44112712", "https://maps.invalid/?q=-44.1127,118.6431",
        '{"x": -44.11271}', "seen 2023-10-03 at 44.1127",
        "above Widow's High-Stair", "WIDOWS HIGH STAIR, 3rd ledge", "widow’s_high_stair_12",
    ],
)  # fmt: skip
def test_told(text: str) -> None:
    assert KNOWN.told_in(text)


@pytest.mark.parametrize(
    "text",
    [
        "", "In bud the month before", "INV-0044", "44.1", "-44.1, 118.6", "44", "118", "44 plants, 6 of them young",
        "44°", "spur 44 mm", "2023-10-03", "2023-10-03/2023-10-06", "45.1127", "43.11", "118.7431", "44°30'", "4411",
        "No. 118", "Widow's steps", "Nowhere", "the stair is high", "44 and 1127", "12345678", "INV-S01",
    ],
)  # fmt: skip
def test_not_told(text: str) -> None:
    assert not KNOWN.told_in(text)


def test_coarse_precision_asks_for_less() -> None:
    coarse = whereabouts([SITE], Decimal(1))
    assert coarse.told_in("44.1") and coarse.told_in("44°06'")
    assert not coarse.told_in("44") and not coarse.told_in("118")


def test_a_quarter_of_a_degree_lies_between_the_digits() -> None:
    quarter = whereabouts([SITE], Decimal("0.25"))
    assert quarter.told_in("44.1") and not quarter.told_in("44")


def test_a_locality_that_is_the_island_may_be_told() -> None:
    known = whereabouts([Site(locationID="A", locality="Skarn", island="Skarn")], Decimal("0.1"))
    assert not known.told_in("from Skarn")


def test_minutes_of_the_date_are_no_coordinate() -> None:
    known = whereabouts([Site(locationID="A", decimalLatitude=Decimal("10.05"))], Decimal("0.1"))
    assert known.told_in("10 03") and not known.told_in("2023-10-03")


@pytest.mark.parametrize("piece", ["44.", "4", "44 06 ", "high ", "44°'", "·,."])
def test_long_texts_take_linear_time(piece: str) -> None:
    """A hundred thousand letters, or the run would take minutes."""
    KNOWN.told_in(piece * (100_000 // len(piece)))
