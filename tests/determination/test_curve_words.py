"""How many plants count at a threshold, against counting them one by one."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.determination.survey.curve_words import at_threshold

FIGURES = st.fractions(0, 9, max_denominator=3)


@given(st.lists(FIGURES, max_size=20), FIGURES, st.booleans(), st.booleans())
@settings(deadline=None, max_examples=200)
def test_counts_at_a_threshold(values: list[Fraction], place: Fraction, at_least: bool, fitting: bool) -> None:
    slowly = sum((value >= place if at_least else value <= place) is fitting for value in values)
    assert at_threshold(sorted(values), place, at_least=at_least, fitting=fitting) == slowly
