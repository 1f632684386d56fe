"""Numbers of plants wanted, against every number tried in turn and statsmodels."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats
from statsmodels.stats.proportion import proportion_confint, samplesize_confint_proportion

from auctorum.determination.counting.planning import more_plants_wanted, plants_wanted, rule_of_three, share_if_none

LAWS = settings(deadline=None, max_examples=60)


def half_width(k: int, n: int, level: float) -> float:
    low, high = proportion_confint(k, n, alpha=1 - level, method="wilson")
    return (high - low) / 2


def good(share: Fraction, n: int, wanted: float, level: float) -> bool:
    return all(half_width(k, n, level) <= wanted for k in (math.floor(share * n), math.ceil(share * n)))


@LAWS
@given(st.integers(0, 20), st.sampled_from([0.05, 0.08, 0.1, 0.2]), st.sampled_from([0.8, 0.95]))
def test_against_every_number_in_turn(twentieths: int, wanted: float, level: float) -> None:
    share = Fraction(twentieths, 20)
    enough = [n for n in range(1, 500) if good(share, n, wanted, level)]
    last_bad = max((n for n in range(1, 500) if n not in set(enough)), default=0)
    assert last_bad < 450
    assert plants_wanted(float(share), wanted, level) == last_bad + 1


@pytest.mark.parametrize("share", [0.05, 0.2, 0.5, 0.7])
@pytest.mark.parametrize("wanted", [0.01, 0.02, 0.05])
def test_close_to_the_plain_normal_number(share: float, wanted: float) -> None:
    """statsmodels sizes the symmetric interval; for many plants the two go together, at the edges less closely."""
    rough = samplesize_confint_proportion(share, wanted, alpha=0.05)
    assert plants_wanted(share, wanted) == pytest.approx(rough, rel=0.15, abs=20)


@LAWS
@given(st.floats(0, 1), st.floats(0.02, 0.4))
def test_the_number_does_and_one_less_does_not(share: float, wanted: float) -> None:
    n = plants_wanted(share, wanted)
    exact = Fraction(share).limit_denominator(10**9)
    assert all(good(exact, later, wanted, 0.95) for later in (n, n + 1, n + 2, n + 7, 2 * n))
    assert n == 1 or not good(exact, n - 1, wanted, 0.95)
    assert plants_wanted(1 - exact, wanted) == pytest.approx(n, abs=1)


@LAWS
@given(st.integers(0, 60).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n))), st.floats(0.03, 0.3))
def test_more_plants(counted: tuple[int, int], wanted: float) -> None:
    k, n = counted
    more = more_plants_wanted(k, n, wanted)
    share = Fraction(k, n) if n else Fraction(1, 2)
    if more:
        assert n + more == plants_wanted(share, wanted)
        assert n == 0 or half_width(k, n, 0.95) > wanted
    else:
        assert n > 0 and half_width(k, n, 0.95) <= wanted


def test_numbers_that_people_know() -> None:
    """About 385 for half of the plants to ± 5 %: common practice, no source; Wilson's interval spares z² of them."""
    assert plants_wanted(0.5, 0.05) == 381
    assert math.ceil(samplesize_confint_proportion(0.5, 0.05)) == 385
    assert plants_wanted(0.5, 0.5) == 0 or half_width(0, 1, 0.95) <= 0.5
    assert more_plants_wanted(15, 30, 0.1) == 93 - 30


@pytest.mark.parametrize("n", [10, 30, 60, 100, 1000])
def test_rule_of_three(n: int) -> None:
    """The rule lies above the exact bound, and within a tenth of it from 30 on (Hanley & Lippman-Hand 1983)."""
    exact = share_if_none(n)
    assert stats.binom.cdf(0, n, exact) == pytest.approx(0.05)
    assert exact <= rule_of_three(n) <= exact * (1.1 if n >= 30 else 1.2)
    assert exact == pytest.approx(1 - 0.05 ** (1 / n))


def test_few_or_no_plants() -> None:
    assert [rule_of_three(n) for n in (0, 1, 2, 3, 6)] == [1, 1, 1, 1, 0.5]
    assert share_if_none(0) == 1 and share_if_none(1) == pytest.approx(0.95)


@pytest.mark.parametrize(
    ("share", "wanted", "level"), [(-0.1, 0.1, 0.95), (1.1, 0.1, 0.95), (0.5, 0.0, 0.95), (0.5, 0.1, 1.0)]
)
def test_refused(share: float, wanted: float, level: float) -> None:
    with pytest.raises(ValueError, match=r"share|level"):
        plants_wanted(share, wanted, level)
