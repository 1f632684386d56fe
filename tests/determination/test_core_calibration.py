"""Named plants determined as if nobody had named them: who is right, and that no plant speaks for itself."""

from __future__ import annotations

import random
from collections.abc import Sequence
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from accounts import OTHER, TAXON, Account, corpus_from
from auctorum.circumscription.intervals import wilson
from auctorum.circumscription.plants import Plant
from auctorum.determination.calibration import Calibration, brier, calibration
from auctorum.determination.determine import determine
from auctorum.determination.leave_out import GROUPS, views_without
from auctorum.determination.model import Wording
from auctorum.determination.own import Learnt, own_voices
from auctorum.determination.tables import Numbers
from auctorum.determination.view import NothingStated, Statements, View, view_of
from core_cases import ASPECT, HEIGHT, SURFACE, corpus_with, measured, plant, shares_of, shown, stated

CORPUS = corpus_with(
    [f"{HEIGHT}: 10-20 mm", f"{SURFACE}: smooth"], [f"{HEIGHT}: 18-40 mm", f"{SURFACE}: winged or smooth"]
)


def crowd(seed: int, many: int, *, angle: bool = False) -> list[Plant]:
    """Plants of both taxa, about half of each, with a height and sometimes seeds or the slope's aspect."""
    rng = random.Random(seed)
    found = []
    for number in range(many):
        taxon = (TAXON, OTHER)[number % 2]
        middle = 15 if taxon == TAXON else 29
        seen = [measured(max(1, round(rng.gauss(middle, 4))))]
        if rng.random() < 0.7:
            seen.append(shown(SURFACE, "smooth" if taxon == TAXON or rng.random() < 0.3 else "winged"))
        if angle:
            seen.append(measured(round(rng.gauss(0 if taxon == TAXON else 180, 30)) % 360, ASPECT))
        found.append(plant(*seen, id_=f"plant-{number}", taxon=taxon, by="A. Orrin" if number % 3 else "B. Vale"))
    return found


# --- each plant by the others alone


def rebuilt(statements: Statements, own: Sequence[Plant], out: set[str], works: tuple[str, ...] | None) -> View:
    return view_of(statements, works=works, own=[one for one in own if one.id not in out])


@pytest.mark.parametrize(("seed", "works"), [(1, None), (2, None), (3, ()), (4, ())])
def test_leaving_out_is_rebuilding_without(seed: int, works: tuple[str, ...] | None) -> None:
    """The slow second answer: for each plant a view made anew of all the others.

    Where its figures are no end of a range, the answers are the same; else the knots, and with them the floor, move a
    little. What lies outside all that is stated is the same to the last plant.
    """
    statements, own = Statements(CORPUS), crowd(seed, 60, angle=True)
    view = view_of(statements, works=works, own=own)
    met, same = 0, 0
    for places, without in views_without(statements, view, own, own, works):
        (place,) = places
        again = rebuilt(statements, own, {own[place].id}, works)
        one = own[place]
        found, expected = shares_of(without, one)[0], shares_of(again, one)[0]
        assert found == pytest.approx(expected, abs=0.03)
        table, other = without.tables[HEIGHT, ""], again.tables[HEIGHT, ""]
        assert isinstance(table, Numbers) and isinstance(other, Numbers)
        if len(table.knots) == len(other.knots) and np.allclose(table.knots, other.knots):
            same += 1
            values, errors = np.arange(0.0, 60.0, 0.7), np.full(86, 0.5)
            assert table.likelihood(values, errors) == pytest.approx(other.likelihood(values, errors), rel=1e-9)
        assert determine(without, one).misfits == determine(again, one).misfits
        assert [told.beyond for told in determine(without, one).contributions] == [
            told.beyond for told in determine(again, one).contributions
        ]
        met += 1
    assert met == len(own)
    assert same > 20


def test_bounds_that_are_not_stated_are_filled_in_without_the_plant() -> None:
    """Where an author says `up to 40 mm`, the lower bound comes from the others, one's own plants among them."""
    corpus = corpus_from(
        [
            Account(1900, "Alpha", {TAXON: stated(f"{HEIGHT}: up to 30 mm"), OTHER: stated(f"{HEIGHT}: 35-50 mm")}),
        ]
    )
    statements = Statements(corpus)
    own = [plant(measured(20 + number / 4), id_=f"own-{number}", taxon=TAXON) for number in range(40)]
    view = view_of(statements, own=own)
    for (place,), without in views_without(statements, view, own, own, None):
        again = rebuilt(statements, own, {own[place].id}, None)
        for height in (5, 15, 25, 33, 45):
            one = plant(measured(height))
            assert shares_of(without, one)[0] == pytest.approx(shares_of(again, one)[0], abs=0.02)


def test_an_odd_plant_is_outside_of_what_the_others_show() -> None:
    """Although with it the range reaches out to it: its own extreme leaves with it."""
    statements = Statements(CORPUS)
    own = [plant(measured(12 + number / 3), id_=f"own-{number}", taxon=TAXON) for number in range(24)]
    odd = plant(measured(90), id_="odd", taxon=TAXON)
    view = view_of(statements, own=[*own, odd], taxa=(TAXON, OTHER))
    assert determine(view, odd).misfits == ()
    ((_, without),) = [
        (places, one) for places, one in views_without(statements, view, [odd], [*own, odd], None) if places == [0]
    ]
    found = determine(without, odd)
    assert TAXON in found.contributions[0].beyond


def test_without_one_of_five_the_voice_is_gone() -> None:
    statements = Statements(CORPUS)
    own = [plant(measured(60 + number), id_=f"own-{number}", taxon=TAXON) for number in range(5)]
    view, bare = view_of(statements, own=own), view_of(statements)
    for _, without in views_without(statements, view, own, own, None):
        assert shares_of(without, plant(measured(62)))[0] == pytest.approx(
            shares_of(bare, plant(measured(62)))[0], abs=0.02
        )


def test_of_more_than_two_hundred_several_leave_together_and_each_once() -> None:
    statements, own = Statements(CORPUS), crowd(7, 900)
    view = view_of(statements, own=own)
    groups = [places for places, _ in views_without(statements, view, own, own, None)]
    assert len(groups) == 2 * GROUPS
    assert sorted(place for places in groups for place in places) == list(range(900))
    assert all(len({own[place].taxon for place in places}) == 1 for places in groups)


# --- calibration


def by_hand(view: View, plants: Sequence[Plant]) -> tuple[int, float]:
    """How many are right, and Brier's sum, one plant after the other."""
    right, total = 0, 0.0
    for one in plants:
        found = determine(view, one)
        right += found.best == one.taxon
        total += sum((each.probability - (each.taxon == one.taxon)) ** 2 for each in found.candidates)
    return right, total / len(plants)


def test_calibration_by_hand() -> None:
    statements, plants = Statements(CORPUS), crowd(5, 80)
    view = view_of(statements)
    found = calibration(statements, view, plants)
    assert (found.plants, found.left_one_out, found.left_out, found.unseen) == (80, False, 0, 0)
    right, score = by_hand(view, plants)
    assert found.right == right
    assert found.brier == pytest.approx(score)
    assert found.brier_unknown == pytest.approx(0.5)  # of two taxa, even priors: (1/2)² twice
    assert found.named_by == ("A. Orrin", "B. Vale")
    said = [determine(view, one) for one in plants]
    for tally in found.tallies:
        these = [(one, it) for one, it in zip(said, plants, strict=True) if one.wording is tally.wording]
        assert (tally.plants, tally.right) == (len(these), sum(one.best == it.taxon for one, it in these))
    for band in found.bands:
        assert band.interval == wilson(band.right, band.plants)
        assert band.low <= band.stated <= band.high
    assert sum(many for _, _, many in found.mistaken) == found.plants - found.right


def test_calibration_leaves_each_plant_out() -> None:
    """The same as determining each by the view made anew without it."""
    statements, plants = Statements(CORPUS), crowd(6, 50)
    view = view_of(statements, own=plants)
    found = calibration(statements, view, plants, own=plants)
    again = [determine(rebuilt(statements, plants, {one.id}, None), one) for one in plants]
    assert found.left_one_out
    assert abs(found.right - sum(one.best == it.taxon for one, it in zip(again, plants, strict=True))) <= 1
    score = np.mean(
        [
            sum((each.probability - (each.taxon == it.taxon)) ** 2 for each in one.candidates)
            for one, it in zip(again, plants, strict=True)
        ]
    )
    assert found.brier == pytest.approx(float(score), abs=0.005)


def test_plants_learnt_from_and_others_together() -> None:
    """Of a crowd, one half teaches; the other half is determined by the whole view."""
    statements, plants = Statements(CORPUS), crowd(8, 60)
    own, rest = plants[:30], plants[30:]
    view = view_of(statements, own=own)
    both = calibration(statements, view, plants, own=own)
    first, second = (calibration(statements, view, part, own=own) for part in (own, rest))
    assert both.right == first.right + second.right
    assert both.brier == pytest.approx((first.brier + second.brier) / 2)
    right, score = by_hand(view, rest)
    assert (second.right, second.brier) == (right, pytest.approx(score))


def test_who_is_not_counted_is_said() -> None:
    statements = Statements(CORPUS)
    view = view_of(statements, taxa=(TAXON, OTHER))
    several = [
        plant(measured(12), id_="a", taxon=TAXON),
        plant(measured(12), id_="b", taxon="exemplum-nullum"),
        plant(measured(12, "leaf length"), id_="c", taxon=TAXON),
        plant(measured(12), id_="d"),
    ]
    found = calibration(statements, view, several)
    assert (found.plants, found.right, found.left_out, found.unseen) == (1, 1, 1, 1)


def test_of_nobody() -> None:
    statements = Statements(CORPUS)
    found = calibration(statements, view_of(statements), [])
    assert (found.plants, found.right, found.brier, found.bands, found.mistaken) == (0, 0, 0.0, (), ())
    assert [one.wording for one in found.tallies] == [Wording.INDET, Wording.AFF, Wording.CF, Wording.PLAIN]


def test_mistaken_the_most_first() -> None:
    statements = Statements(CORPUS)
    view = view_of(statements)
    tall = [plant(measured(38), id_=f"t{number}", taxon=TAXON) for number in range(3)]
    low = [plant(measured(11), id_=f"l{number}", taxon=OTHER) for number in range(2)]
    found = calibration(statements, view, [*low, *tall])
    assert found.mistaken == ((TAXON, OTHER, 3), (OTHER, TAXON, 2))


def test_a_probability_at_the_edge_of_two_bands_is_in_the_upper_one() -> None:
    """Of two taxa described alike each plant is as likely the one as the other; of one taxon alone it is certain."""
    alike = Statements(corpus_with([f"{HEIGHT}: 10-20 mm"], [f"{HEIGHT}: 10-20 mm"]))
    several = [plant(measured(12 + number), id_=f"p{number}", taxon=TAXON) for number in range(6)]
    (half,) = calibration(alike, view_of(alike), several).bands
    assert (half.low, half.high, half.plants, half.stated) == (0.5, 0.8, 6, 0.5)
    (certain,) = calibration(alike, view_of(alike, taxa=(TAXON,)), several).bands
    assert (certain.low, certain.high, certain.plants) == (0.99, 1.0, 6)


# --- Brier


@settings(deadline=None, max_examples=50)
@given(st.lists(st.tuples(st.integers(1, 9), st.integers(1, 9), st.integers(1, 9), st.integers(0, 2)), min_size=1))
def test_brier_in_fractions(rows: list[tuple[int, int, int, int]]) -> None:
    total = Fraction(0)
    for *weights, true in rows:
        shares = [Fraction(one, sum(weights)) for one in weights]
        total += sum((share - (place == true)) ** 2 for place, share in enumerate(shares))
    stated_ = np.array([[one / sum(weights) for one in weights] for *weights, _ in rows])
    assert brier(stated_, np.array([row[-1] for row in rows])) == pytest.approx(float(total / len(rows)))


@pytest.mark.parametrize(("stated_", "expected"), [([1.0, 0.0], 0.0), ([0.0, 1.0], 2.0), ([0.5, 0.5], 0.5)])
def test_brier_of_one(stated_: list[float], expected: float) -> None:
    assert brier(np.array([stated_]), np.array([0])) == expected


def test_a_view_of_own_plants_that_loses_its_only_voice() -> None:
    """With five plants and no author, leaving one out leaves nothing stated: it is not determined, and that is said."""
    statements = Statements(CORPUS)
    own = [plant(measured(60 + number), id_=f"own-{number}", taxon=TAXON) for number in range(5)]
    view = view_of(statements, works=(), own=own)
    found: Calibration = calibration(statements, view, own, own=own, works=())
    assert (found.plants, found.unseen) == (0, 5)
    with pytest.raises(NothingStated, match="own plants"):
        rebuilt(statements, own, {"own-0"}, ())


@given(st.integers(0, 10_000), st.integers(5, 40), st.sets(st.integers(0, 39), max_size=12))
@settings(deadline=None, max_examples=60)
def test_voices_without_some_are_those_of_the_rest(seed: int, many: int, out: set[int]) -> None:
    several = crowd(seed, many, angle=True)
    less = [one for place, one in enumerate(several) if place in out]
    rest = [one for place, one in enumerate(several) if place not in out]
    learnt = Learnt(several, CORPUS.vocabulary)
    assert learnt.voices(learnt.keys, less) == own_voices(rest, CORPUS.vocabulary)
