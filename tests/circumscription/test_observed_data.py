"""Observed ranges of whole tables, against a second reading of the same files and against Anderson's irises."""

from __future__ import annotations

import csv
import statistics
from collections import defaultdict
from pathlib import Path

import numpy as np
import pytest
from sklearn.datasets import load_iris

from auctorum.characters.values import Range
from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.observed import Observed, all_observed
from auctorum.circumscription.plants import plants
from auctorum.corpus.link import link
from auctorum.corpus.model import Corpus
from auctorum.nomenclature.code import applied
from auctorum.records.read import read

ROOT = Path(__file__).parents[2]
LONGUM = "cremnocentron-album-var-longum"
OF_LONGUM = {"Cremnocentron album var. longum", "Cremnocentron longum"}  # names on one type
INCH = 25.4


def corpus_in(folder: Path) -> Corpus:
    corpus, _ = link(read(folder, use_cache=False)[0])
    return applied(corpus).corpus


@pytest.fixture(scope="module")
def demo() -> dict[tuple[str, str], Observed]:
    """What was observed of var. longum in the invented demo, by character and stage."""
    corpus = corpus_in(ROOT / "kb")
    every = all_observed(corpus, diagnosis(corpus, LONGUM).findings, LONGUM, plants(corpus))
    return {(one.character, one.stage): one for one in every.values()}


def longum() -> dict[str, list[dict[str, str]]]:
    """The rows of each plant whose rows name it var. longum, under either name, and nothing else."""
    by_plant: dict[str, list[dict[str, str]]] = defaultdict(list)
    with (ROOT / "kb" / "specimens.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            by_plant[row["organismID"] or row["occurrenceID"]].append(row)
    names = {id_: {row["scientificName"] for row in rows} - {""} for id_, rows in by_plant.items()}
    return {id_: rows for id_, rows in by_plant.items() if names[id_] and names[id_] <= OF_LONGUM}


def mature_spurs() -> list[tuple[float, float]]:
    """Mature spurs in mm and half the last digit of each; no plant was measured twice."""
    found = []
    for rows in longum().values():
        cells = [(row[f"spur length [{unit}]"], factor) for row in rows if row["lifeStage"] == "mature"
                 for unit, factor in (("mm", 1.0), ("in", INCH)) if row[f"spur length [{unit}]"]]  # fmt: skip
        assert len(cells) < 2
        found += [(float(cell) * factor, factor * 0.5 * 10 ** -len(cell.partition(".")[2])) for cell, factor in cells]
    return found


def test_mature_spurs_of_the_demo(demo) -> None:
    one = demo["spur length", "mature"]
    spurs = [spur for spur, _ in mature_spurs()]
    tenths = statistics.quantiles(spurs, n=10, method="inclusive")
    assert one.n == len(spurs)
    assert isinstance(one.value, Range)
    bounds = (one.value.least, one.value.low, one.value.high, one.value.most)
    for bound, wanted in zip(bounds, (min(spurs), tenths[0], tenths[-1], max(spurs)), strict=True):
        assert float(bound) == pytest.approx(wanted, abs=0.5 + 1e-9)  # rounded to the millimetre


@pytest.mark.parametrize(
    ("work", "low", "high", "half_step"),
    [
        pytest.param("Maddrick 1923", 22, 37, 0.5, id="mm"),
        pytest.param("Orrin 1889", 7 / 8 * INCH, 11 / 8 * INCH, INCH / 16, id="eighths of an inch"),
        pytest.param("Tolhurne 1896", 10.5 * INCH / 12, 17 * INCH / 12, INCH / 48, id="half lines"),
    ],
)
def test_what_works_of_the_demo_cover(demo, work, low, high, half_step) -> None:
    """The ranges are those that the demo's files print; counted again in floating point."""
    spurs = mature_spurs()
    below = sum(low - spur >= half_step + slack - 1e-9 for spur, slack in spurs)
    above = sum(spur - high >= half_step + slack - 1e-9 for spur, slack in spurs)
    cover = next(c for c in demo["spur length", "mature"].covers if work.split()[0].lower() in c.work)
    assert (cover.beyond_low, cover.beyond_high, cover.whole) == (below, above, len(spurs) - below - above)
    assert cover.contradicted


def test_leaves_of_the_demo_are_averaged_over_visits(demo) -> None:
    plants_ = [
        [float(row["leaf length [mm]"]) for row in rows if row["leaf length [mm]"]] for rows in longum().values()
    ]
    leaves = [statistics.fmean(cells) for cells in plants_ if cells]
    assert any(len(cells) > 1 for cells in plants_)
    tenths = statistics.quantiles(leaves, n=10, method="inclusive")
    one = demo["leaf length", ""]
    assert isinstance(one.value, Range)
    assert one.n == len(leaves)
    assert float(one.value.low) == pytest.approx(tenths[0], abs=0.5 + 1e-9)
    assert float(one.value.high) == pytest.approx(tenths[-1], abs=0.5 + 1e-9)


def test_spur_colours_of_the_demo_are_counted(demo) -> None:
    """One mature cell for each plant, each of one state."""
    colours = [row["spur colour"] for rows in longum().values() for row in rows if row["lifeStage"] == "mature"]
    one = demo["spur colour", "mature"]
    assert dict(one.states) == {state: colours.count(state) for state in set(colours) - {""}}
    sites = {row["locationID"] for rows in longum().values() for row in rows if row["spur colour"]}
    assert one.sites == len(sites)
    assert one.named_by == ("J. Petrane", "M. Sallow")


@pytest.fixture(scope="module")
def irises() -> Corpus:
    return corpus_in(ROOT / "tests" / "data" / "kb-iris")


@pytest.mark.parametrize("species", ["setosa", "versicolor", "virginica"])
@pytest.mark.parametrize("column", [0, 1, 2, 3], ids=["sepal length", "sepal width", "petal length", "petal width"])
def test_irises_against_numpy(irises, species: str, column: int) -> None:
    """scikit-learn's copy of the flowers that E. Anderson measured (1935) and R. A. Fisher printed (1936)."""
    copy = load_iris()
    values = copy.data[copy.target == list(copy.target_names).index(species), column]
    taxon = f"iris-{species}"
    every = all_observed(irises, diagnosis(irises, taxon).findings, taxon, plants(irises))
    one = [*every.values()][column]
    assert isinstance(one.value, Range)
    wanted = [np.min(values), *np.quantile(values, [0.1, 0.9]), np.max(values)]
    least, most = (one.value.least, one.value.low), (one.value.most, one.value.high)
    found = [
        next(b for b in least if b is not None),
        one.value.low,
        one.value.high,
        next(b for b in most if b is not None),
    ]
    assert [float(bound) for bound in found] == pytest.approx(wanted, abs=0.05 + 1e-9)
    assert (one.n, one.covers[0].whole) == (50, 50)  # Fisher 1936 gives the lowest and the highest of the same flowers
