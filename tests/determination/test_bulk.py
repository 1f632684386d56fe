"""Columns of a table against plants made one by one: the same observations, determinations and verdicts."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.plants import plants
from auctorum.corpus.criteria import limit_of
from auctorum.determination.bulk import Bulk, Part, values_at
from auctorum.determination.criteria.columns import verdicts
from auctorum.determination.criteria.criterion import judge_each
from auctorum.determination.many import Measured, Shown, columns_of
from auctorum.determination.model import Wording
from auctorum.determination.telling.table_answers import Finder, Sum
from auctorum.determination.view import Statements, view_of
from auctorum.records import schema
from auctorum.records.schema import Thresholds
from building import read_text
from measuring import knowledge_base, with_plants, work

CORPUS = knowledge_base(
    work("Orrin", 1900, "spur length: 25-30 mm", "petal number: 5-6",
         "spur colour: ivory at maturity, green when young", "style length: 4-6 mm (female)",
         "bracteoles: bracteoles absent"),
    work("Brand", 1910, "spur length: 10-18 mm", "petal number: 5-8", "spur colour: cream", taxon="Exemplum nigrum"),
)  # fmt: skip
VIEW = view_of(Statements(CORPUS))
COLOURS = ["", "ivory", "cream", "green when young, ivory at maturity", "green or cream"]
ROW = st.tuples(
    st.sampled_from(["", "young", "mature", "old", "seedling"]),
    st.sampled_from(["", "female", "male"]),
    st.one_of(st.none(), st.integers(1, 60)),
    st.one_of(st.none(), st.integers(1, 12)),
    st.sampled_from(COLOURS),
    st.sampled_from(["", "present", "absent"]),
)


def both(rows):
    """The rows as plants, and as a part of a table."""
    lines = ["occurrenceID,lifeStage,sex,spur length [mm],petal number,spur colour,bracteoles"]
    for number, (stage, sex, spur, petals, colour, bracteoles) in enumerate(rows):
        cells = (f"p{number}", stage, sex, spur, petals, f'"{colour}"', bracteoles)
        lines.append(",".join("" if cell is None else str(cell) for cell in cells))
    several = plants(with_plants(CORPUS, "\n".join(lines) + "\n"))
    nan, none = float("nan"), [0.0] * len(rows)
    spurs = [nan if row[2] is None else float(row[2]) for row in rows]
    petals = [nan if row[3] is None else float(row[3]) for row in rows]
    figures = {"spur length": (spurs, [0.5] * len(rows), none), "petal number": (petals, [0.5] * len(rows), none)}
    words = {"spur colour": [row[4] for row in rows], "bracteoles": [row[5] for row in rows]}
    return several, Part(len(rows), [row[0] for row in rows], [row[1] for row in rows], (), figures, words)


@given(st.lists(ROW, min_size=1, max_size=6))
@settings(deadline=None, max_examples=100)
def test_the_columns_are_those_of_the_plants(rows) -> None:
    several, part = both(rows)
    bulk = Bulk(CORPUS.vocabulary, "")
    found = bulk.columns(VIEW, part, bulk.measured(part))
    for key, column in columns_of(VIEW, several).items():
        other = found[key]
        if isinstance(column, Measured):
            assert isinstance(other, Measured)
            np.testing.assert_array_equal(column.values, other.values)
            seen = np.isfinite(column.values)
            if key[0] == "spur length":
                np.testing.assert_allclose(column.errors[seen], other.errors[seen])
        else:
            assert isinstance(other, Shown)
            np.testing.assert_allclose(column.weights, other.weights)
    for key in found.keys() - columns_of(VIEW, several).keys():  # columns in which nothing was observed
        one = found[key]
        assert not (np.isfinite(one.values) if isinstance(one, Measured) else one.weights).any()


RATIO = Character("spur to width", "spur", "ratio", Kind.RATIO, of=("spur length", "wide"))
WIDE = Character("wide", "spur", "width", Kind.MEASURE, "cm")
FIGURE = st.one_of(st.none(), st.integers(0, 60))


@given(st.lists(st.tuples(st.sampled_from(["", "young", "mature"]), FIGURE, FIGURE, FIGURE), min_size=1, max_size=6))
@settings(deadline=None, max_examples=100)
def test_ratios_are_those_of_the_plants(rows) -> None:
    """A width in cm under a length in mm, the ratio itself measured on some: value and error are those of one row."""
    wider = replace(CORPUS, vocabulary=Vocabulary([*CORPUS.vocabulary.values(), WIDE, RATIO]))
    lines = ["occurrenceID,lifeStage,spur length [mm],wide [cm],spur to width"]
    for number, (stage, *cells) in enumerate(rows):
        lines.append(",".join([f"p{number}", stage, *("" if cell is None else str(cell) for cell in cells)]))
    several = plants(with_plants(wider, "\n".join(lines) + "\n"))
    halves, none = [0.5] * len(rows), [0.0] * len(rows)
    figures = {
        name: ([float("nan") if row[at] is None else float(row[at]) for row in rows], halves, none)
        for at, name in enumerate(("spur length", "wide", "spur to width"), 1)
    }
    found = Bulk(wider.vocabulary, "").measured(Part(len(rows), [row[0] for row in rows], (), (), figures, {}))
    values, errors = values_at(found, ("spur to width", ""), len(rows))
    for plant, value, error in zip(several, values, errors, strict=True):
        one = plant.at("spur to width", "")
        assert (one is None) == bool(np.isnan(value))
        if one is not None and one.value is not None:
            assert (value, error) == pytest.approx((float(one.value), float(one.error)))


@pytest.mark.parametrize(
    "decisive",
    [
        "{character: spur length, stage: mature, at-least: 25 mm}",
        "{character: petal number, at-most: '6'}",
        "{character: spur colour, stage: mature, at-least: cream}",
        "{character: spur colour, stage: young, at-most: cream}",
    ],
)
@given(st.lists(ROW, min_size=1, max_size=6))
@settings(deadline=None, max_examples=50)
def test_verdicts_are_those_of_the_plants(decisive: str, rows) -> None:
    text = f"id: x\ntaxon: Exemplum album\ntitle: T\ndecisive: {decisive}\n"
    criterion = read_text(text, schema.Criterion, "x.yaml")
    several, part = both(rows)
    bulk = Bulk(CORPUS.vocabulary, "")
    limit = limit_of(criterion.decisive, CORPUS.vocabulary)
    found = verdicts(limit, CORPUS.vocabulary, bulk, part, bulk.measured(part))
    assert list(found) == [one.verdict for one in judge_each(CORPUS, criterion, several)]


def test_rows_and_their_sum() -> None:
    """A long and a short spur, one between that fits neither, and a plant of which nothing is known."""
    rows = [("mature", "", spur, None, "", "") for spur in (28, 14, 90, None)]
    several, _ = both(rows)
    names = {taxon: CORPUS.names[CORPUS.taxa[taxon].current].name.species for taxon in VIEW.taxa}
    find = Finder(VIEW, {taxon: f"Exemplum {name}" for taxon, name in names.items()}, "Exemplum", None, Thresholds())
    found = list(find.rows(columns_of(VIEW, several), len(several)))
    assert [one.name for one in found[:2]] == ["Exemplum album", "Exemplum nigrum"]
    assert found[2].misfits == ("spur length",) and found[2].wording is not Wording.PLAIN
    assert (found[3].taxon, found[3].name, found[3].used) == (None, "Exemplum indet.", 0)
    total = Sum(VIEW.taxa)
    album, nigrum = VIEW.taxa
    for one, given_ in zip(found, (album, album, None, "somewhere-else"), strict=True):
        total.add(one, given_)
    assert (total.plants, total.agree, total.undetermined, total.strange) == (4, 1, 1, 1)
    assert dict(total.disagree) == {(album, nigrum): 1}


def test_no_columns_at_all() -> None:
    find = Finder(VIEW, VIEW.names, "", None, Thresholds())
    assert [one.name for one in find.rows({}, 2)] == ["plant indet."] * 2
