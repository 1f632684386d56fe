"""Three penguins described from half of their number, and the other half told apart: a group that really overlaps.

Figures: Horst, A. M., Hill, A. P. & Gorman, K. B. (2020), palmerpenguins, through the package of that name; measured by
Gorman, K. B., Williams, T. D. & Fraser, W. R. (2014), PLoS ONE 9(3): e90081 (cited from memory). One invented work
writes `(min–)q10–q90(–max)` for each measurement, of males and of females, over 200 random halves. The bird counts
here for the figures alone: nothing else is told of it.
"""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

import pytest
from palmerpenguins import load_penguins

from auctorum.circumscription.separation import separation
from splitting import Group, Measured, compared, measure

SPLITS = 200
SPECIES = {"Adelie": "pygoscelis-adeliae", "Chinstrap": "pygoscelis-antarcticus", "Gentoo": "pygoscelis-papua"}
SEXES = ("male", "female")
# Column of the table, and decimals that it was measured to.
COLUMNS = {"bill_length_mm": 1, "bill_depth_mm": 1, "flipper_length_mm": 0, "body_mass_g": 0}
LEFT_OUT = 11  # of 344, without sex; two of these have no measurements either


@pytest.fixture(scope="module")
def penguins() -> Group:
    data = load_penguins()
    whole = data.dropna(subset=[*COLUMNS, "sex"])
    assert (len(data), len(data) - len(whole)) == (344, LEFT_OUT)
    birds = tuple(
        Measured(
            SPECIES[bird["species"]],
            bird["sex"],
            tuple(Decimal(f"{bird[column]:.{decimals}f}") for column, decimals in COLUMNS.items()),
        )
        for bird in whole.to_dict("records")
    )
    lengths = (measure(name, "mm", SEXES) for name in ("bill length", "bill depth", "flipper length"))
    mass = measure("body mass", "", SEXES)  # in grams, as a bare number: a description of plants weighs nothing
    names = {id_: id_.replace("-", " ").capitalize() for id_ in SPECIES.values()}
    return Group(names, (*lengths, mass), birds)


def test_the_longer_bill_parts_the_chinstrap_from_the_adelie_and_the_shallow_one_the_gentoo(penguins: Group) -> None:
    """What the publishers of these figures show of them (from memory): Adélie bills are short, Gentoo bills shallow."""
    half, _ = next(penguins.splits(1))
    found = separation(penguins.described(half), tuple(SPECIES.values()))
    adelie, chinstrap, gentoo = SPECIES.values()
    for sex in SEXES:
        (best, *_) = [one for one in found.of(adelie, chinstrap) if one.stage == sex]
        assert (best.character, best.lower) == ("bill length", adelie)
        for other in (adelie, chinstrap):
            (depth,) = [one for one in found.of(other, gentoo) if (one.character, one.stage) == ("bill depth", sex)]
            assert depth.lower == gentoo
            assert depth.error is not None
            assert depth.error < 0.05


def test_a_key_from_printed_ranges_errs_no_more_than_a_tree_taught_the_birds(
    penguins: Group, say: Callable[[str], None]
) -> None:
    """Within one and a half points of the classification tree, one-sided, which has the sex as a column."""
    found = compared(penguins, SPLITS)
    say(f"penguins, {SPLITS} halves, {LEFT_OUT} birds without sex left out: {found}")
    assert found.key <= found.tree + 0.015
    assert found.tree < 0.07
