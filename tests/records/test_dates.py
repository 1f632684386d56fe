"""EDTF dates (ISO 8601-2:2019; Library of Congress, Extended Date/Time Format Specification, levels 0 and 1)."""

from __future__ import annotations

import re
from datetime import date

import pytest

from auctorum.records.dates import Dated


@pytest.mark.parametrize(
    ("text", "earliest", "latest", "approximate"),
    [
        ("1904", date(1904, 1, 1), date(1904, 12, 31), False),
        ("1904-02", date(1904, 2, 1), date(1904, 2, 29), False),
        ("1900-02", date(1900, 2, 1), date(1900, 2, 28), False),
        ("1904-06-15", date(1904, 6, 15), date(1904, 6, 15), False),
        ("1904-06/1904-07", date(1904, 6, 1), date(1904, 7, 31), False),
        ("1904~", date(1904, 1, 1), date(1904, 12, 31), True),
        ("1904?", date(1904, 1, 1), date(1904, 12, 31), True),
        ("190X", date(1900, 1, 1), date(1909, 12, 31), False),
        ("18XX", date(1800, 1, 1), date(1899, 12, 31), False),
        ("1904/..", date(1904, 1, 1), date(1904, 12, 31), False),
    ],
)
def test_span_of_days(text: str, earliest: date, latest: date, approximate: bool) -> None:
    found = Dated.parse(text)
    assert (found.earliest, found.latest, found.approximate, found.text) == (earliest, latest, approximate, text)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1904-13", "'1904-13' gives month 13, which does not exist"),
        ("1904-00", "'1904-00' gives month 00, which does not exist"),
        ("1905-02-29", "'1905-02-29' gives day 29, which that month does not have"),
        ("04-06-1904", "'04-06-1904' is no EDTF date"),
        ("June 1904", "'June 1904' is no EDTF date"),
        ("1905/1904", "'1905/1904' ends before it begins"),
        ("1904/1905/1906", "'1904/1905/1906' has more than one '/'"),
        ("../..", "'../..' gives no date at all"),
        ("190X-05", "'190X-05' gives a month of an unknown year"),
        ("0000", "'0000' gives the year 0"),
        ("١٩٠٤", "'١٩٠٤' is no EDTF date"),
    ],
)
def test_refused_in_words(text: str, said: str) -> None:
    with pytest.raises(ValueError, match=f"^{re.escape(said)}$"):
        Dated.parse(text)
