"""Determinations at scale, by hand: `python tests/benchmarks/bench_field.py`.

Synthetic; linking and reading are not measured. Printed are medians of several runs in one process, as a table:

- a million plants of ten characters determined among ten taxa, against the same arithmetic in bare numpy (budget: twice
  as long), at 10,000, 100,000 and 1,000,000 plants; peak memory above what the columns themselves hold;
- making a view of 100, 400 and 1,600 treatments, with what gathering the statements takes of it;
- one plant determined, and what to look at next, among 10 and 100 taxa;
- calibration of 1,000 plants by the authors, and with the plants themselves as one more voice;
- the dip test of 100,000 values, and a criterion over 1,000,000.
"""

from __future__ import annotations

import random
import statistics
import sys
import time
import tracemalloc
from collections.abc import Callable
from fractions import Fraction
from pathlib import Path
from typing import TypeVar

import numpy as np

from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.density import shapes
from auctorum.circumscription.findings import Span
from auctorum.circumscription.plants import Observation, Plant
from auctorum.circumscription.sweep import Stretch
from auctorum.circumscription.voices import Voice
from auctorum.corpus.criteria import limit_of
from auctorum.corpus.model import Corpus
from auctorum.determination.asking import questions
from auctorum.determination.calibration import calibration
from auctorum.determination.counting.dip import dip_test
from auctorum.determination.criteria.criterion import judge_values
from auctorum.determination.determine import determine
from auctorum.determination.many import Measured, columns_of, determined, posteriors
from auctorum.determination.normal import Floats
from auctorum.determination.tables import Numbers, numbers
from auctorum.determination.view import Statements, View, view_of
from auctorum.records import schema

sys.path.insert(0, str(Path(__file__).parent))  # pytest, which looks for doctests, does not put it there
from bench_circumscription import COUNTS, LENGTHS, linked

T = TypeVar("T")
TAXA, CHARACTERS, WORKS = 10, 10, 4
SIZES = (10_000, 100_000, 1_000_000)
ROW = "{:58} {:>12} {:>12}  {}"


def median(work: Callable[[], T], times: int = 3) -> tuple[float, T]:
    """Median seconds by the clock, and what the last run gave."""
    taken = []
    for _ in range(times):
        began = time.perf_counter()
        found = work()
        taken.append(time.perf_counter() - began)
    return statistics.median(taken), found


def row(what: str, took: float, beside: str = "", more: str = "") -> None:
    said = f"{took:.2f} s" if took >= 1 else f"{took * 1e3:.2f} ms"
    print(ROW.format(what, said, beside, more), flush=True)


def measures_view(rng: np.random.Generator) -> View:
    """Ten taxa, of each character four ranges with extremes."""
    tables = {}
    for number in range(CHARACTERS):
        character = Character(f"part{number} length", f"part{number}", "length", Kind.MEASURE, "mm")
        told = []
        for _ in range(TAXA):
            lows = [int(one) for one in rng.integers(10, 60, WORKS)]
            said = [
                Voice("w", 1900, "w", Fraction(1), Stretch(Fraction(low), Fraction(low + 10)),
                      Span(Fraction(low - 3), Fraction(low + 14)))
                for low in lows
            ]  # fmt: skip
            told.append(shapes(said, Kind.MEASURE))
        table = numbers(character, "", told)
        assert table is not None
        tables[character.name, ""] = table
    ids = tuple(f"taxon-{number}" for number in range(TAXA))
    return View("synthetic", (), ids, dict(zip(ids, ids, strict=True)), tables, Vocabulary())


def bare(view: View, values: list[Floats], error: float) -> Floats:
    """The same in a dozen lines of numpy, without missing values, floors outside, or chunks."""
    found = np.zeros((len(values[0]), TAXA))
    for table, several in zip(view.tables.values(), values, strict=True):
        assert isinstance(table, Numbers)
        for taxon, below in enumerate(table.below):
            upper, lower = (np.interp(several + off, table.knots, below) for off in (error, -error))
            found[:, taxon] += np.log((upper - lower) / (2 * error))
    found = np.exp(found - found.max(axis=1, keepdims=True))
    return np.asarray(found / found.sum(axis=1, keepdims=True))


def a_million() -> None:
    rng = np.random.default_rng(1)
    view = measures_view(rng)
    first = 0.0
    for many in SIZES:
        values = [rng.uniform(15, 65, many) for _ in range(CHARACTERS)]
        columns = {key: Measured(one, np.full(many, 0.5)) for key, one in zip(view.tables, values, strict=True)}
        ours, found = median(lambda: posteriors(view, columns))  # noqa: B023
        theirs, other = median(lambda: bare(view, values, 0.5))  # noqa: B023
        assert np.abs(found - other).max() < 1e-9
        whole, _ = median(lambda: determined(view, columns), 1)  # noqa: B023
        first = first or ours / many
        growth = f"{ours / many / first:.2f} of the smallest for each plant"
        row(f"posteriors of {many:,} plants", ours, f"{ours / theirs:.2f} x numpy", growth)
        row("  with wording and misfits", whole, f"{whole / theirs:.2f} x numpy")
        del found, other
        tracemalloc.start()
        determined(view, columns)
        peak = tracemalloc.get_traced_memory()[1]
        tracemalloc.stop()
        print(ROW.format("  peak memory", f"{peak / 1e6:.0f} MB", f"{peak / many:.0f} B each", ""))


def views() -> None:
    first = 0.0
    for genera in (1, 4, 16):
        corpus = linked(genera)
        many = len(corpus.treatments)
        gathering, _ = median(lambda: [Statements(corpus).of(taxon) for taxon in corpus.taxa], 1)  # noqa: B023
        took, _ = median(lambda: view_of(Statements(corpus)), 1)  # noqa: B023
        statements = Statements(corpus)
        view_of(statements)
        again, _ = median(lambda: view_of(statements))  # noqa: B023
        first = first or took / many
        growth = f"{took / many / first:.2f} of the smallest for each; a second view {again:.2f} s"
        row(f"view of {many:,} treatments, {len(corpus.taxa)} taxa", took, f"{gathering / took:.0%} gather", growth)


def plants_of(corpus: Corpus, view: View, many: int) -> list[Plant]:
    """Plants of two taxa, drawn about the middle of what is stated of them."""
    rng = random.Random(1)
    found = []
    for number in range(many):
        place = number % 2
        seen = []
        for name in (*LENGTHS, *COUNTS):
            table = view.tables[name, ""]
            assert isinstance(table, Numbers)
            middle = float(np.interp(0.5, table.below[place], table.knots))
            value = Fraction(max(0, round(rng.gauss(middle, middle / 10))))
            seen.append(Observation(name, "", value, (), Fraction(1, 2), 1))
        found.append(Plant(f"plant-{number}", view.taxa[place], None, None, "", tuple(seen)))
    return found


def one_plant() -> None:
    for genera in (1, 10):
        corpus = linked(genera)
        statements = Statements(corpus)
        view = view_of(statements)
        (plant,) = plants_of(corpus, view, 1)
        among = f"among {len(view.taxa)} taxa"
        row(f"one plant {among}", median(lambda: determine(view, plant), 5)[0])  # noqa: B023
        half = Plant("half", None, None, None, "", plant.observations[:3])
        row(f"what to look at next {among}", median(lambda: questions(view, half), 5)[0])  # noqa: B023


def calibrations(many: int = 1000) -> None:
    corpus = linked(1)
    statements = Statements(corpus)
    view = view_of(statements)
    plants = plants_of(corpus, view, many)
    columns, _ = median(lambda: columns_of(view, plants))
    row(f"columns of {many:,} plants, 8 characters", columns, f"{columns / many * 1e6:.0f} µs each")
    row(f"calibration of {many:,} plants by authors", median(lambda: calibration(statements, view, plants))[0])
    own = view_of(statements, own=plants)
    took, _ = median(lambda: calibration(statements, own, plants, own=plants), 1)
    row(f"  leaving each of the {many:,} out", took, f"{took / many * 1e3:.1f} ms each")


def the_rest() -> None:
    rng = np.random.default_rng(2)
    values = np.round(np.concatenate([rng.normal(20, 3, 50_000), rng.normal(34, 3, 50_000)]), 1)
    row("dip test of 100,000 values", median(lambda: dip_test(values.tolist(), 0.1))[0])
    spur = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
    at_least = schema.Decisive(**{"character": "spur length", "at-least": "25 mm"})  # type: ignore[arg-type]
    limit = limit_of(at_least, Vocabulary((spur,)))
    many = rng.normal(25, 8, 1_000_000)
    row("criterion over 1,000,000 values", median(lambda: judge_values(limit, many, 0.5))[0])


if __name__ == "__main__":
    print(ROW.format("what", "median", "beside", "growth"))
    a_million()
    views()
    one_plant()
    calibrations()
    the_rest()
