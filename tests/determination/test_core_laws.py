"""Laws that determinations keep, whatever is stated and whatever is measured."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from accounts import CHARACTERS, NAMES, OTHER, TAXON, Account, corpus_from
from auctorum.circumscription.plants import Plant
from auctorum.determination.determine import determine
from auctorum.determination.many import Measured, Shown, columns_of, determined, posteriors
from auctorum.determination.view import Statements, View, view_of
from auctorum.determination.wording import IN_ORDER
from core_cases import COLOUR, HEIGHT, SURFACE, measured, plant, shares_of, shown, stated, three_names

THIRD = "exemplum-nigrum"
LAWS = settings(deadline=None, max_examples=40)
COLOURS, SURFACES = ("green", "cream", "ivory", "buff"), ("smooth", "reticulate", "winged")


@st.composite
def ranges(draw: st.DrawFn) -> str:
    """`(least–)low–high(–most) mm`, with or without extremes, or a single figure, or one end."""
    low = draw(st.integers(1, 80))
    high = low + draw(st.integers(0, 40))
    kind = draw(st.sampled_from(["plain", "extremes", "up to", "single"]))
    if kind == "single":
        return f"{low} mm"
    if kind == "up to":
        return f"up to {high} mm"
    least, most = low - draw(st.integers(1, low)), high + draw(st.integers(1, 30))
    return f"({least}–){low}–{high}(–{most}) mm" if kind == "extremes" and high > low else f"{low}–{high} mm"


@st.composite
def descriptions(draw: st.DrawFn) -> list[str]:
    """What one work says of one taxon: at least of the height."""
    said = [f"{HEIGHT}: {draw(ranges())}"]
    if draw(st.booleans()):
        said.append(f"leaf length: {draw(ranges())}")
    if draw(st.booleans()):
        said.append(
            f"{COLOUR}: {' or '.join(draw(st.lists(st.sampled_from(COLOURS), min_size=1, max_size=3, unique=True)))}"
        )
    if draw(st.booleans()):
        said.append(f"{SURFACE}: {draw(st.sampled_from(SURFACES))}")
    return said


@st.composite
def plants(draw: st.DrawFn) -> Plant:
    seen = [measured(draw(st.integers(0, 150)), error=draw(st.sampled_from(["0", "0.05", "0.5", "5"])))]
    if draw(st.booleans()):
        seen.append(measured(draw(st.integers(0, 150)), "leaf length"))
    if draw(st.booleans()):
        seen.append(shown(COLOUR, *draw(st.lists(st.sampled_from(COLOURS), min_size=1, max_size=2, unique=True))))
    if draw(st.booleans()):
        seen.append(shown(SURFACE, draw(st.sampled_from(SURFACES))))
    return plant(*seen)


WORKS = st.lists(st.tuples(descriptions(), descriptions(), descriptions()), min_size=1, max_size=3)
Told = list[tuple[list[str], list[str], list[str]]]


def accounts_of(works: Told) -> list[Account]:
    names = three_names()
    return [
        Account(
            1900 + number,
            f"Author{'abc'[number]}",
            {taxon: stated(*lines) for taxon, lines in zip(names, told, strict=True)},
            names=names,
        )
        for number, told in enumerate(works)
    ]


def view_from(works: Told, characters: str = CHARACTERS) -> View:
    return view_of(Statements(corpus_from(accounts_of(works), characters=characters)))


def alike(one: dict[str, float], other: dict[str, float], within: float = 1e-9) -> bool:
    return one == pytest.approx(other, abs=within)


@LAWS
@given(WORKS, plants())
def test_probabilities_sum_to_one_and_one_plant_is_determined_as_many_are(works: Told, one: Plant) -> None:
    view = view_from(works)
    found = determine(view, one)
    assert sum(each.probability for each in found.candidates) == pytest.approx(1)
    assert all(0 < each.probability <= 1 for each in found.candidates)
    columns = columns_of(view, [plant(), one])
    many = determined(view, columns)
    assert dict(zip(view.taxa, many.probabilities[1], strict=True)) == pytest.approx(
        {each.taxon: each.probability for each in found.candidates}
    )
    assert (view.taxa[many.best[1]], IN_ORDER[many.wordings[1]]) == (found.best, found.wording)
    assert many.misfits[1] == len(found.misfits)
    assert IN_ORDER[many.wordings[0]].value == "indet."  # nothing observed


@LAWS
@given(WORKS, plants(), st.randoms())
def test_order_changes_nothing(works: Told, one: Plant, rng: random.Random) -> None:
    """That of works, of statements in them, of observations."""
    several = accounts_of(works)
    mixed = [
        replace(each, says={taxon: tuple(rng.sample(lines, len(lines))) for taxon, lines in each.says.items()})
        for each in several
    ]
    rng.shuffle(mixed)
    first = view_of(Statements(corpus_from(several)))
    second = view_of(Statements(corpus_from(mixed)))
    turned = replace(one, observations=one.observations[::-1])
    assert alike(shares_of(first, one)[0], shares_of(second, turned)[0])
    assert determine(first, one).wording == determine(first, turned).wording


@LAWS
@given(WORKS, st.lists(plants(), min_size=2, max_size=6), st.randoms())
def test_plants_are_determined_each_by_itself(works: Told, several: list[Plant], rng: random.Random) -> None:
    view = view_from(works)
    mixed = rng.sample(several, len(several))
    together = {id(one): found for one, found in zip(mixed, shares_of(view, *mixed), strict=True)}
    for one in several:
        assert alike(shares_of(view, one)[0], together[id(one)])


@LAWS
@given(WORKS, plants())
def test_swapping_two_taxa_swaps_their_probabilities(works: Told, one: Plant) -> None:
    swapped: Told = [(second, first, third) for first, second, third in works]
    found, other = shares_of(view_from(works), one)[0], shares_of(view_from(swapped), one)[0]
    assert alike(found, {TAXON: other[OTHER], OTHER: other[TAXON], THIRD: other[THIRD]})


@LAWS
@given(WORKS, plants(), st.sampled_from(["mm", "cm", "in.", "m"]))
def test_units_change_nothing(works: Told, one: Plant, unit: str) -> None:
    """Whatever the canonical unit of the vocabulary, the same statements and plants give the same answer."""
    size = {"mm": Fraction(1), "cm": Fraction(10), "in.": Fraction("25.4"), "m": Fraction(1000)}[unit]
    written = CHARACTERS.replace("kind: measure, unit: mm", f"kind: measure, unit: {unit.rstrip('.')}")
    other = replace(
        one,
        observations=tuple(
            seen if seen.value is None else replace(seen, value=seen.value / size, slack=seen.slack / size)
            for seen in one.observations
        ),
    )
    first, second = view_from(works), view_from(works, written)
    assert alike(shares_of(first, one)[0], shares_of(second, other)[0], 1e-6)
    assert determine(first, one).wording == determine(second, other).wording


@LAWS
@given(WORKS, plants(), st.integers(1, 9))
def test_a_character_stated_alike_of_all_changes_nothing(works: Told, one: Plant, petals: int) -> None:
    with_more: Told = [tuple([*lines, "petal number: 4-6"] for lines in told) for told in works]  # type: ignore[misc]
    more = replace(one, observations=(*one.observations, measured(petals, "petal number")))
    found = determine(view_from(with_more), more)
    before = determine(view_from(works), one)
    assert [each.taxon for each in found.candidates] == [each.taxon for each in before.candidates]
    assert [each.probability for each in found.candidates] == pytest.approx(
        [each.probability for each in before.candidates]
    )


@LAWS
@given(WORKS, plants())
def test_a_missing_value_is_as_an_absent_column(works: Told, one: Plant) -> None:
    view = view_from(works)
    columns = dict(columns_of(view, [one]))
    for key, table in view.tables.items():
        if key not in columns:
            empty = np.zeros((1, len(getattr(table, "states", ()))))
            columns[key] = Shown(empty) if hasattr(table, "states") else Measured(np.array([np.nan]), np.zeros(1))
    assert posteriors(view, columns) == pytest.approx(posteriors(view, columns_of(view, [one])))
    found, bare = determined(view, columns), determined(view, columns_of(view, [one]))
    assert (found.wordings[0], found.used[0], found.misfits[0]) == (bare.wordings[0], bare.used[0], bare.misfits[0])


@LAWS
@given(st.integers(5, 40), st.integers(2, 30), st.integers(1, 100), st.sampled_from(["0", "0.5", "2"]), ranges())
def test_the_middle_of_a_taxon_never_speaks_against_it_beside_a_value_outside(
    low: int, width: int, off: int, error: str, other: str
) -> None:
    """Of one statement; the other taxon may be anything that does not lie about the middle."""
    names = {TAXON: NAMES[TAXON], OTHER: NAMES[OTHER]}
    high = low + width
    told = {TAXON: stated(f"{HEIGHT}: {low}–{high} mm"), OTHER: stated(f"{HEIGHT}: {other}")}
    view = view_of(Statements(corpus_from([Account(1900, "Alpha", told, names=names)])))
    table = view.tables[HEIGHT, ""]
    inside, outside = ((low + high) / 2, high * 1.1 + width + float(error) + off)
    found = table.likelihood(np.array([inside, outside]), np.full(2, float(error)))  # type: ignore[union-attr,arg-type]
    assert found[0, 0] >= found[1, 0]
    if found[0, 1] <= found[1, 1]:  # and where it tells the other less, it is a gain on balance
        middle, away = shares_of(view, plant(measured(inside, error=error)), plant(measured(outside, error=error)))
        assert middle[TAXON] >= away[TAXON] - 1e-12


@LAWS
@given(WORKS, plants(), st.integers(1, 4), st.integers(1, 4), st.integers(1, 4))
def test_priors_multiply_odds(works: Told, one: Plant, first: int, second: int, third: int) -> None:
    view = view_from(works)
    even = shares_of(view, one)[0]
    priors = {TAXON: float(first), OTHER: float(second), THIRD: float(third)}
    weighted = shares_of(view, one, priors=priors)[0]
    whole = sum(even[taxon] * priors[taxon] for taxon in priors)
    assert alike(weighted, {taxon: even[taxon] * priors[taxon] / whole for taxon in priors})


@LAWS
@given(WORKS, st.integers(0, 150))
def test_a_repetition_of_weight_nought_changes_nothing(works: Told, value: int) -> None:
    several = accounts_of(works)
    repeated = replace(several[0], year=1950, author="Copyist", follows=(several[0].id,))
    light = "title: Test\nrepetition-weight: 0\n"
    assume(len(works) > 1)
    without = view_of(Statements(corpus_from(several, settings=light)))
    with_ = view_of(Statements(corpus_from([*several, repeated], settings=light)))
    one = plant(measured(value))
    assert alike(shares_of(without, one)[0], shares_of(with_, one)[0])
