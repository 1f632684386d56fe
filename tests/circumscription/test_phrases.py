"""Lists that are cut short, and shares and intervals in percent."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.phrases import interval_words, listed_some, share_words
from auctorum.circumscription.separation_words import percent


@pytest.mark.parametrize(
    ("words", "most", "said"),
    [
        pytest.param("A", 2, "A", id="one"),
        pytest.param("ABC", 2, "A, B and C", id="nobody-is-counted-who-could-be-named"),
        pytest.param("ABCD", 2, "A, B and 2 more", id="two-more"),
        pytest.param(["Orrin, Vale & Moss 1900"], 2, "Orrin, Vale & Moss 1900", id="one-of-three-authors"),
        pytest.param(["A, B & C 1", "D 2", "E 3", "F 4"], 2, "A, B & C 1; D 2; and 2 more", id="names-with-commas"),
    ],
)
def test_lists_are_cut_short(words: str | list[str], most: int, said: str) -> None:
    assert listed_some(list(words), most) == said


@given(st.lists(st.text("abc", min_size=1), min_size=1, max_size=12), st.integers(1, 5))
@settings(deadline=None, max_examples=200)
def test_named_and_counted_are_all(words: list[str], most: int) -> None:
    said = listed_some(words, most)
    named = re.split(r", | and ", said)
    counted = re.fullmatch(r"(\d+) more", named[-1])
    assert (len(named) - 1 + int(counted[1]) if counted else len(named)) == len(words)
    assert counted is None or int(counted[1]) > 1


@pytest.mark.parametrize(
    ("share", "said"),
    [(0.0, "0 %"), (1e-9, "under 1 %"), (0.0049, "under 1 %"), (0.007, "1 %"), (0.426, "43 %"), (1.0, "100 %")],
)
def test_shares(share: float, said: str) -> None:
    assert share_words(share) == said


@given(st.floats(1e-6, 1))
@settings(deadline=None, max_examples=200)
def test_an_expected_error_reads_like_a_counted_share(share: float) -> None:
    assert percent(share) == share_words(share)


def test_narrow_intervals_have_a_decimal() -> None:
    assert interval_words((0.3, 0.32)) == "30.0–32.0 %"
    assert interval_words((0.3, 0.33)) == "30–33 %"
