"""The dip against diptest, against its definition solved as a linear programme, and laws."""

from __future__ import annotations

import importlib.util
import math
import time
from itertools import pairwise
from pathlib import Path
from types import ModuleType

import diptest
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import linprog

from auctorum.determination.counting.dip import ENOUGH, dip, dip_p, dip_test, spread_ties
from auctorum.determination.counting.dip_quantiles import LEVELS, TEN_THOUSANDTHS

LAWS = settings(deadline=None, max_examples=100)
SAMPLES = st.lists(st.integers(-400, 400).map(lambda one: one / 8), min_size=2, max_size=60)


def samples(seed: int, several: int, most: int) -> list[np.ndarray]:
    """Samples of four shapes in turn: one peak, two, one tail, none."""
    random = np.random.default_rng(seed)
    shapes = [
        lambda n: random.normal(size=n),
        lambda n: np.concatenate([random.normal(size=n), random.normal(3.5, 1, size=n // 2 + 1)]),
        lambda n: random.exponential(size=n),
        lambda n: random.random(n),
    ]
    return [shapes[place % 4](int(random.integers(3, most))) for place in range(several)]


def by_definition(values: np.ndarray) -> float:
    """The dip by the smallest error of any curve that is convex up to a peak and concave from it: one linear programme
    for each place of the peak. The curve may jump at the peak alone."""
    at, counts = np.unique(values, return_counts=True)
    upto = np.cumsum(counts)
    below = upto - counts
    return min(_with_peak(at, below, upto, peak) for peak in range(len(at))) / len(values)


def _with_peak(at: np.ndarray, below: np.ndarray, upto: np.ndarray, peak: int) -> float:
    size = len(at)
    before_jump, error = size, size + 1
    rows: list[np.ndarray] = []
    limits: list[float] = []

    def row(parts: dict[int, float], limit: float) -> None:
        line = np.zeros(size + 2)
        for place, factor in parts.items():
            line[place] += factor
        rows.append(line)
        limits.append(limit)

    for place in range(size):
        left = before_jump if place == peak else place
        row({place: -1, error: -1}, -upto[place])
        row({left: 1, error: -1}, below[place])
        row({left: -1, error: -1}, -below[place])
        row({place: 1, error: -1}, upto[place])
    row({before_jump: 1, peak: -1}, 0)
    for line, places, sign in (
        ([*range(peak), before_jump], at[: peak + 1], 1),
        (list(range(peak, size)), at[peak:], -1),
    ):
        for first, second in pairwise(line):
            row({first: 1, second: -1}, 0)
        for place in range(len(line) - 2):
            one, other = places[place + 1] - places[place], places[place + 2] - places[place + 1]
            bend = {line[place + 1]: 1 / one + 1 / other, line[place]: -1 / one, line[place + 2]: -1 / other}
            row({key: sign * factor for key, factor in bend.items()}, 0)
    wanted = np.zeros(size + 2)
    wanted[error] = 1
    found = linprog(wanted, A_ub=np.array(rows), b_ub=limits, bounds=[(None, None)] * (size + 1) + [(0, None)])
    return float(found.fun) if found.status == 0 else math.inf


def test_against_diptest() -> None:
    for values in samples(1, 400, 300):
        assert dip(values) == pytest.approx(diptest.dipstat(values, allow_zero=False), rel=0, abs=1e-12)


def test_against_diptest_with_ties() -> None:
    for values in samples(2, 400, 120):
        rounded = np.round(values * 2)
        if len(set(rounded.tolist())) > 1:
            assert dip(rounded) == pytest.approx(diptest.dipstat(rounded, allow_zero=False), rel=0, abs=1e-12)


@pytest.mark.parametrize("factor", [None, 1.5])
def test_against_the_definition(factor: float | None) -> None:
    for values in samples(3, 24, 11):
        values = values if factor is None else np.round(values * factor)
        if len(set(values.tolist())) > 1:
            assert dip(values) == pytest.approx(by_definition(values), rel=0, abs=1e-7)


@pytest.mark.parametrize(
    ("values", "found"),
    [
        pytest.param([], 0.0, id="none"),
        pytest.param([5.0], 0.0, id="one"),
        pytest.param([5.0] * 9, 0.0, id="all-equal-have-one-peak"),
        pytest.param([1.0, 2.0], 1 / 4, id="two"),
        pytest.param([1.0, 2.0, 7.0], 1 / 6, id="three"),
        pytest.param([1.0, 2.0, 8.0, 9.0], 0.25 * (1 - 1 / 7), id="four"),
        pytest.param([0.0, 0.0, 5.0, 5.0], 1 / 4, id="two-heaps"),
    ],
)
def test_by_hand(values: list[float], found: float) -> None:
    """The least dip of n untied plants is 1/(2n): the curve jumps by 1/n, and a line passes halfway."""
    assert dip(values) == pytest.approx(found)


@pytest.mark.parametrize("value", [math.nan, math.inf])
def test_only_finite_values(value: float) -> None:
    with pytest.raises(ValueError, match="finite"):
        dip([1.0, value])


def test_p_against_diptest() -> None:
    """The table of diptest is another simulation; for fewer than 20 plants its rows lie too far apart to go by."""
    for values in samples(4, 600, 700):
        n, found = len(values), dip(values)
        if n >= 20 and found > 0.5 / n + 1e-12:
            theirs = diptest.diptest(values)[1]
            assert dip_test(values).p == pytest.approx(theirs, rel=0, abs=0.005 if theirs < 0.1 else 0.015)


@pytest.mark.parametrize("n", [4, 5, 7, 11, 12, 25, 75, 300])
def test_p_against_a_simulation_of_diptest(n: int) -> None:
    values = next(one[:n] for one in samples(n, 80, 900) if len(one) >= n and dip(one[:n]) > 0.8 / n)
    simulated = diptest.diptest(values, boot_pval=True, n_boot=10_000, seed=7, n_threads=1)[1]
    assert dip_test(values).p == pytest.approx(simulated, rel=0, abs=0.02)


def script() -> ModuleType:
    path = Path(__file__).parents[2] / "examples" / "dip_quantiles.py"
    spec = importlib.util.spec_from_file_location("dip_quantiles_script", path)
    assert spec is not None and spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_the_table_is_what_the_script_simulates() -> None:
    simulating = script()
    assert simulating.LEVELS == LEVELS and tuple(TEN_THOUSANDTHS) == simulating.SIZES
    found = simulating.quantiles(30, samples=1500, seed=1)
    assert found[1:12] == pytest.approx(np.array(TEN_THOUSANDTHS[30][1:12]) / 10_000, abs=0.012)


def test_enough_is_where_half_of_the_gaps_are_found() -> None:
    """At 1500 samples the share is known to about 0.013."""
    simulating = script()
    assert simulating.share_found(ENOUGH, samples=1500, seed=1) > 0.47
    assert simulating.share_found(ENOUGH - 15, samples=1500, seed=1) < 0.45


def test_quantiles_rise() -> None:
    for n in (4, 6, 13, 40, 999, 5000, 70_000):
        at = [dip_p(share / math.sqrt(n), n) for share in np.linspace(0.1, 0.8, 200)]
        assert at == sorted(at, reverse=True)
        assert at[-1] == pytest.approx(0.001)


@pytest.mark.parametrize(
    ("values", "finding"),
    [
        pytest.param([*range(40)], "cannot tell", id="few-and-even"),
        pytest.param([*range(80)], "spectrum", id="many-and-even"),
        pytest.param([*range(40), *range(80, 120)], "gap", id="many-with-a-gap"),
        pytest.param([*range(10), *range(60, 70)], "gap", id="few-with-a-wide-gap"),
        pytest.param([1, 9], "cannot tell", id="two"),
        pytest.param([], "cannot tell", id="none"),
    ],
)
def test_findings(values: list[float], finding: str) -> None:
    assert dip_test(values).finding == finding


def test_whole_millimetres_make_no_gap() -> None:
    """240 plants of one peak between 28 and 34 mm, read to 1 mm: a false gap without the step, none with it."""
    read = np.round(np.random.default_rng(8).normal(31, 1.2, size=240))
    assert dip_test(read).finding == "gap"
    assert dip_test(read, step=1.0).finding == "spectrum"
    apart = np.concatenate([read, read + 12])
    assert dip_test(apart, step=1.0).finding == "gap"


@LAWS
@given(SAMPLES, st.floats(0.01, 1000), st.floats(-1000, 1000))
def test_units_and_origin_change_nothing(values: list[float], factor: float, offset: float) -> None:
    whole = dip(values)
    assert dip([factor * one for one in values]) == pytest.approx(whole, abs=1e-9)
    assert dip([one + round(offset) for one in values]) == pytest.approx(whole, abs=1e-9)
    assert dip([-one for one in values]) == pytest.approx(whole, abs=1e-9)


@LAWS
@given(SAMPLES, st.randoms(use_true_random=False))
def test_order_changes_nothing(values: list[float], random) -> None:
    shuffled = random.sample(values, len(values))
    assert dip_test(shuffled, step=0.125) == dip_test(values, step=0.125)


@LAWS
@given(SAMPLES)
def test_bounds(values: list[float]) -> None:
    least = 1 / (2 * len(values)) if len(set(values)) > 1 else 0.0
    assert least - 1e-12 <= dip(values) <= 0.25 + 1e-12


@LAWS
@given(st.lists(st.integers(-20, 20), min_size=1, max_size=60), st.sampled_from([0.5, 1.0]))
def test_spread_values_stay_in_their_cell(values: list[int], step: float) -> None:
    spread = spread_ties(map(float, values), step)
    assert len(set(spread)) == len(values)
    for read, moved in zip(sorted(values), spread, strict=True):
        assert abs(moved - read) < step / 2
    assert sum(spread) == pytest.approx(sum(values), abs=1e-9)


@pytest.mark.parametrize("shape", ["normal", "two-sided", "bowl", "staircase"])
def test_many_plants_are_quick(shape: str) -> None:
    """100,000 values in well under two seconds, those too that make a hull of every point."""
    n = 100_000
    even = (np.arange(n) + 0.5) / n
    values = {
        "normal": np.random.default_rng(1).normal(size=n),
        "two-sided": np.sign(even - 0.5) * np.abs(even - 0.5) ** 2,
        "bowl": np.sign(even - 0.5) * np.sqrt(np.abs(even - 0.5)),
        "staircase": np.floor(even * 300) + (even * 300 % 1) ** 3,
    }[shape]
    began = time.perf_counter()
    found = dip(values)
    assert time.perf_counter() - began < 2
    assert found == pytest.approx(diptest.dipstat(values), rel=0, abs=1e-12)
