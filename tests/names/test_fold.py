"""Folded spelling and gender endings; outside values from the ICN examples and Art. 60."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import pytest
import yaml
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.names.fold import fold, same_epithet

EXAMPLES = Path(__file__).parent.parent / "data" / "icn-examples.yaml"


@pytest.mark.parametrize(
    ("printed", "folded"),
    [
        # Transcriptions by ICN Art. 60.7, from memory; the words are invented.
        ("Exemplum mülleri", "exemplum muelleri"),
        ("Exemplum mu\u0308lleri", "exemplum muelleri"),
        ("ångströmii", "aongstroemii"),
        ("señalense", "senalense"),
        ("phaëthon", "phaethon"),
        ("cœlestis-ægyptiaca", "coelestisaegyptiaca"),
        ("NOVAE-TERRAE", "novaeterrae"),
        ("×Exemplum  album", "exemplum album"),
        ("O’Brien", "obrien"),
        ("K.Koch", "k koch"),
        ("K. Koch", "k koch"),
    ],
)
def test_fold(printed: str, folded: str) -> None:
    assert fold(printed) == folded


@given(st.text())
@settings(deadline=None, max_examples=200)
def test_folding_twice_changes_nothing(text: str) -> None:
    assert fold(fold(text)) == fold(text)


@given(st.text("ABCéüæß-' ."))
@settings(deadline=None, max_examples=100)
def test_case_and_marks_are_gone(text: str) -> None:
    assert fold(text) == fold(text.lower())
    assert fold(text).isascii()


def agreements() -> list[tuple[str, list[str]]]:
    """Adjectives of the Code's examples in the forms it gives for several genera (ICN Art. 23.5, 62)."""
    cases = yaml.safe_load(EXAMPLES.read_text(encoding="utf-8"))
    cases = cases["cases"] if isinstance(cases, dict) else cases
    return [
        (case["id"], [spelling.split()[-1] for spelling in case["expect"]["spelling"]])
        for case in cases
        if case["question"]["ask"] == "agreement"
    ]


@pytest.mark.parametrize(("case", "forms"), agreements())
def test_forms_of_one_adjective_in_the_code(case: str, forms: list[str]) -> None:
    assert all(same_epithet(a, b) for a, b in combinations(forms, 2)), case


@pytest.mark.parametrize(
    ("a", "b", "same"),
    [
        ("albus", "album", True), ("niger", "nigra", True), ("tener", "tenera", True), ("brevis", "breve", True),
        ("acer", "acre", True), ("major", "majus", True), ("minor", "minus", True),
        ("alba", "albida", False), ("albus", "niger", False), ("brevis", "brevior", False), ("us", "um", False),
    ],
)  # fmt: skip
def test_same_epithet(a: str, b: str, same: bool) -> None:
    assert same_epithet(a, b) is same
    assert same_epithet(b, a) is same
