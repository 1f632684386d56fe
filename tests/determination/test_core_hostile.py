"""Determinations at their edges: crowds of taxa, empty columns, statements with an open end; and facts of the trade."""

from __future__ import annotations

import time
import warnings
from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest

from accounts import OTHER, TAXON, Account
from auctorum.determination.asking import questions
from auctorum.determination.counting.planning import rule_of_three, share_if_none
from auctorum.determination.criteria.criterion import Verdict, judge
from auctorum.determination.determine import determine
from auctorum.determination.many import CHUNK, Measured, Shown, columns_of, determined, posteriors
from auctorum.determination.model import Wording
from auctorum.determination.view import Statements, View, view_of
from auctorum.records import schema
from building import corpus_of, read_text
from core_cases import (
    ASPECT,
    COLOUR,
    HEIGHT,
    SURFACE,
    corpus_with,
    many_names,
    measured,
    plant,
    shares_of,
    shown,
    view_with,
)

VIEW = view_with([f"{HEIGHT}: 10-20 mm", f"{SURFACE}: smooth"], [f"{HEIGHT}: 30-40 mm", f"{SURFACE}: winged"])


@pytest.fixture(autouse=True)
def _no_warnings() -> Iterator[None]:
    """Division by nought and the like would only be warned of."""
    with warnings.catch_warnings():
        warnings.simplefilter("error")
        yield


# --- crowds


@pytest.fixture(scope="module")
def crowded() -> View:
    names = many_names(300)
    told = [
        [f"{HEIGHT}: {10 + number}-{20 + number} mm", f"leaf length: {400 - number}-{430 - number} mm"]
        for number in range(300)
    ]
    return view_of(Statements(corpus_with(*told, names=names)))


def test_three_hundred_taxa(crowded: View) -> None:
    assert len(crowded.taxa) == 300
    one = plant(measured(115), measured(315, "leaf length"))  # the middle of the hundred-and-first
    found = determine(crowded, one)
    assert sum(each.probability for each in found.candidates) == pytest.approx(1)
    assert abs(crowded.taxa.index(found.best or "") - 100) <= 3
    assert found.wording is Wording.INDET  # neighbours overlap
    began = time.process_time()
    assert questions(crowded, plant(measured(115)))
    assert time.process_time() - began < 5


def test_ten_thousand_plants(crowded: View) -> None:
    rng = np.random.default_rng(1)
    true = rng.integers(0, 300, 10_000)
    columns = {
        (HEIGHT, ""): Measured(true + rng.uniform(10, 20, 10_000), np.full(10_000, 0.5)),
        ("leaf length", ""): Measured(400 - true + rng.uniform(0, 30, 10_000), np.full(10_000, 0.5)),
    }
    began = time.process_time()
    found = determined(crowded, columns)
    assert time.process_time() - began < 20
    assert found.probabilities.shape == (10_000, 300)
    assert found.probabilities.sum(axis=1) == pytest.approx(np.ones(10_000))
    assert np.abs(found.best - true).mean() < 6


def test_pieces_of_a_long_table_are_joined_in_order() -> None:
    """More plants than are worked on at a time: each row is what the plant gets by itself."""
    many = 2 * CHUNK + 77
    values, errors = np.arange(many) % 61.0, 0.5 + np.arange(many) % 3
    seen = np.eye(3)[np.arange(many) % 3]
    told: list[tuple[int, int]] = []
    found = determined(
        VIEW,
        {(HEIGHT, ""): Measured(values, errors), (SURFACE, ""): Shown(seen)},
        progress=lambda done, whole: told.append((done, whole)),
    )
    assert told == [(CHUNK, many), (2 * CHUNK, many), (many, many)]
    for row in (0, 1, CHUNK - 1, CHUNK, CHUNK + 1, 2 * CHUNK, many - 1):
        state = ("smooth", "reticulate", "winged")[row % 3]
        alone = determine(VIEW, plant(measured(row % 61, error=str(0.5 + row % 3)), shown(SURFACE, state)))
        assert found.probabilities[row] == pytest.approx([alone.probability(taxon) for taxon in VIEW.taxa])
        assert found.misfits[row] == len(alone.misfits)


def test_what_the_instrument_errs_widens_an_observation() -> None:
    """A ruler good to 6 mm is as a figure that is known to 6 mm more."""
    coarse = replace(measured(24), accuracy=Fraction(6))
    wide = measured(24, error="6.5")
    assert shares_of(VIEW, plant(coarse)) == shares_of(VIEW, plant(wide))
    assert determine(VIEW, plant(measured(24))).misfits == (HEIGHT,)
    assert determine(VIEW, plant(coarse)).misfits == ()


# --- columns


def test_columns_without_any_value() -> None:
    columns = {(HEIGHT, ""): Measured(np.full(4, np.nan), np.zeros(4)), (SURFACE, ""): Shown(np.zeros((4, 3)))}
    found = determined(VIEW, columns, {TAXON: 3, OTHER: 1})
    assert found.probabilities == pytest.approx(np.array([[0.75, 0.25]] * 4))
    assert list(found.used) == [0] * 4
    assert list(found.wordings) == [0] * 4
    assert list(found.misfits) == [0] * 4


def test_infinite_numbers_are_no_observations_and_huge_ones_lie_outside() -> None:
    values = np.array([np.inf, -np.inf, 1e300, -1e300, 1e17, 15.0])
    found = determined(VIEW, {(HEIGHT, ""): Measured(values, np.full(6, 0.5))})
    assert np.isfinite(found.probabilities).all()
    assert list(found.used) == [0, 0, 1, 1, 1, 1]
    assert list(found.misfits) == [0, 0, 1, 1, 1, 0]
    assert found.probabilities[:5] == pytest.approx(np.full((5, 2), 0.5))


def test_infinite_bearings() -> None:
    view = view_with([f"{ASPECT}: NNW-NNE"], [f"{ASPECT}: SSE-SSW"])
    values = np.array([np.inf, 1e17, 725.0, 5.0])
    found = determined(view, {(ASPECT, ""): Measured(values, np.full(4, 1.0))})
    assert np.isfinite(found.probabilities).all()
    assert found.probabilities[0] == pytest.approx([0.5, 0.5])
    assert found.probabilities[2] == pytest.approx(found.probabilities[3])


def test_a_number_too_large_for_any_floating_one() -> None:
    found = determine(VIEW, plant(measured(10**400)))
    assert [one.probability for one in found.candidates] == pytest.approx([0.5, 0.5])
    assert found.misfits == (HEIGHT,)


def test_no_plants_and_no_columns() -> None:
    assert posteriors(VIEW, {}).shape == (0, 2)
    assert posteriors(VIEW, columns_of(VIEW, [])).shape == (0, 2)
    assert len(determined(VIEW, {}).best) == 0


# --- statements


@pytest.mark.parametrize(
    ("first", "second"),
    [
        pytest.param("up to 20 mm", "over 30 mm", id="open-below-and-above"),
        pytest.param("up to 20 mm", "up to 20 mm", id="open-alike"),
        pytest.param("over 30 mm", "10-20 mm", id="open-above"),
        pytest.param("15 mm", "15.000 mm", id="single-figures"),
        pytest.param("0 mm", "0-1 mm", id="nought"),
        pytest.param("10-10 mm", "1000000 mm", id="far-apart"),
        pytest.param("0.001 mm", "0.002 mm", id="tiny"),
    ],
)
def test_statements_at_the_edge(first: str, second: str) -> None:
    view = view_with([f"{HEIGHT}: {first}"], [f"{HEIGHT}: {second}"])
    for value in (0, "0.0015", 5, 15, 25, 35, 500, 10**6, 10**12):
        for error in ("0", "0.5", "1000"):
            (found,) = shares_of(view, plant(measured(value, error=error)))
            assert sum(found.values()) == pytest.approx(1)
            assert min(found.values()) > 0
            if first == second:
                assert found[TAXON] == pytest.approx(0.5)
    assert all(0 < one.gain <= 1 for one in questions(view, plant()))


def test_open_ends_point_the_right_way() -> None:
    view = view_with([f"{HEIGHT}: up to 20 mm"], [f"{HEIGHT}: over 30 mm"])
    low, high = shares_of(view, plant(measured(12)), plant(measured(45)))
    assert low[TAXON] > 0.95
    assert high[OTHER] > 0.95


def test_a_character_with_one_state() -> None:
    tendrils = "{name: tendrils, structure: tendril, property: form, kind: nominal, states: [{name: coiled}]}"
    says = {TAXON: (("tendrils", "coiled", ""),), OTHER: (("tendrils", "coiled", ""),)}
    corpus, _ = corpus_of(
        Account(1900, "Alpha", says).file(), characters=f"characters:\n- {tendrils}\n"
    )  # it is warned of
    view = view_of(Statements(corpus))
    found = determine(view, plant(shown("tendrils", "coiled")))
    assert [one.probability for one in found.candidates] == pytest.approx([0.5, 0.5])
    assert questions(view, plant()) == ()


def test_colours_across_a_spectrum() -> None:
    """The farther from what is stated, the less likely; a neighbour is not shut out."""
    view = view_with([f"{COLOUR}: green"], [f"{COLOUR}: buff"])
    found = [
        one[TAXON]
        for one in shares_of(view, *(plant(shown(COLOUR, state)) for state in ("green", "cream", "ivory", "buff")))
    ]
    assert found == sorted(found, reverse=True)
    assert found[0] > found[1] > 0.5 > found[2] > found[3]


# --- trade facts (common practice, no source, unless another is named)

CRITERION = """\
id: tall-stem
title: Stems
taxon: Exemplum album
otherwise: Exemplum rubrum
decisive: {character: stem height, at-least: "25 mm"}
supporting:
- {character: spur colour, value: green}
- {character: seed surface, value: smooth}
"""


def criterion() -> schema.Criterion:
    found = read_text(CRITERION, schema.Criterion, "kb.yaml")
    assert isinstance(found, schema.Criterion)
    return found


def test_a_decisive_length_over_its_threshold_outranks_colours() -> None:
    corpus = corpus_with([f"{HEIGHT}: 25-40 mm"], [f"{HEIGHT}: 10-24 mm"])
    against = plant(measured(31), shown(COLOUR, "buff"), shown(SURFACE, "winged"))
    found = judge(corpus, criterion(), against)
    assert (found.verdict, found.name, found.conflict, found.share) == (Verdict.FITS, "Exemplum album", True, 0.0)
    short = judge(corpus, criterion(), plant(measured(20), shown(COLOUR, "green"), shown(SURFACE, "smooth")))
    assert (short.verdict, short.conflict) == (Verdict.DOES_NOT_FIT, True)


@pytest.mark.parametrize(
    ("value", "error", "verdict"),
    [("24.8", "0.5", Verdict.BORDERLINE), ("25.4", "0.5", Verdict.BORDERLINE), ("25.6", "0.5", Verdict.FITS),
     ("24.4", "0.5", Verdict.DOES_NOT_FIT), ("26.5", "2", Verdict.BORDERLINE)],
)  # fmt: skip
def test_within_the_error_of_the_instrument_a_plant_is_borderline(value: str, error: str, verdict: Verdict) -> None:
    corpus = corpus_with([f"{HEIGHT}: 25-40 mm"], [f"{HEIGHT}: 10-24 mm"])
    assert judge(corpus, criterion(), plant(measured(value, error=error))).verdict is verdict


@pytest.mark.parametrize("n", [20, 30, 50, 100, 300, 1000])
def test_none_of_n_means_less_than_about_three_nths(n: int) -> None:
    """Hanley, J. A. & Lippman-Hand, A., JAMA 249: 1743–1745 (1983; from memory): at the level of 95 %."""
    assert rule_of_three(n) == pytest.approx(3 / n)
    exact = 1 - 0.05 ** (1 / n)  # the share at which none of n comes out once in twenty times
    assert share_if_none(n) == pytest.approx(exact)
    assert rule_of_three(n) == pytest.approx(exact, rel=0.08)
    assert Fraction(0) < Fraction(exact) < Fraction(3, n)
