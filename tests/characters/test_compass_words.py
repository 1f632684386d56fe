"""The compass point nearest to a direction, and arcs in words."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.directions import NAMES, TURN, arc_words, compass_point, nearest_point


@given(st.fractions(-720, 1080, max_denominator=8))
@settings(deadline=None, max_examples=200)
def test_no_point_is_nearer(degrees: Fraction) -> None:
    """By the way round to each of the sixteen points."""
    away = [min((degrees - at) % TURN, (at - degrees) % TURN) for at in (Fraction(45, 2) * n for n in range(16))]
    assert away[NAMES.index(nearest_point(degrees))] == min(away)


@pytest.mark.parametrize("number", range(16))
def test_exact_points_and_halves(number: int) -> None:
    degrees = Fraction(45, 2) * number
    assert nearest_point(degrees) == nearest_point(float(degrees)) == compass_point(Decimal("22.5") * number)
    assert nearest_point(degrees + Fraction(45, 4)) == NAMES[(number + 1) % 16]  # half way: the one clockwise


@pytest.mark.parametrize(
    ("first", "last", "said"),
    [
        pytest.param(315.0, 382.5, "NW to NNE", id="across-north"),
        pytest.param(Fraction(90), Fraction(95), "E", id="one-point"),
        pytest.param(0, 337.5, "any direction", id="leaves-no-point-out"),
        pytest.param(0, 337, "N to NNW", id="leaves-one-out"),
    ],
)
def test_arcs(first: float | Fraction, last: float | Fraction, said: str) -> None:
    assert arc_words(first, last) == said
