"""The arithmetic of determinations against reference libraries and slow second answers.

scipy.integrate.quad, scipy.stats.norm and scipy.special.ndtr for densities and blur, scikit-learn for mutual
information, the Brier score and calibration curves, and Bayes' theorem multiplied out one taxon after the other.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from fractions import Fraction
from itertools import pairwise

import numpy as np
import pytest
from scipy.integrate import quad
from scipy.special import ndtr
from scipy.stats import entropy, norm
from sklearn.calibration import calibration_curve
from sklearn.metrics import brier_score_loss, mutual_info_score

from accounts import NAMES, OTHER, TAXON, Account, corpus_from
from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.circumscription.density import Shape, shapes
from auctorum.circumscription.findings import Span
from auctorum.circumscription.plants import Observation, Plant
from auctorum.circumscription.sweep import Stretch
from auctorum.circumscription.voices import Voice
from auctorum.determination.asking import questions
from auctorum.determination.calibration import BANDS, brier, calibration
from auctorum.determination.determine import determine
from auctorum.determination.many import Measured, posteriors
from auctorum.determination.normal import below, density
from auctorum.determination.spread import blur_of, share_below, share_below_on_circle
from auctorum.determination.tables import Numbers, States, numbers, states
from auctorum.determination.view import Statements, View, view_of

BLUR, SINGLE, FLOOR = 0.25, 0.1, 0.01  # the choices of the modules, once more
LENGTH = Character("stem height", "stem", "length", Kind.MEASURE, "mm")
COUNT = Character("petal number", "petal", "count", Kind.COUNT)
ASPECT = Character("aspect", "habitat", "aspect", Kind.ANGLE, "degree")


def shape(least: str, low: str, high: str, most: str, slack: str = "0.5", kind: Kind = Kind.MEASURE) -> Shape:
    """What one author says who gives these four figures."""
    a, b, c, d, half = map(Fraction, (least, low, high, most, slack))
    (found,) = shapes([Voice("w", 1900, "w", Fraction(1), Stretch(b, c, half, half), Span(a, d))], kind)
    return found


SHAPES = {
    "extremes": ("5", "10", "20", "30", "0.5"),
    "no extremes": ("10", "10", "20", "20", "0.5"),
    "to the micrometre": ("10", "10", "20", "20", "0.0005"),
    "narrow": ("30", "30", "31", "31", "0.005"),
    "single figure": ("31", "31", "31", "31", "0.5"),
    "single figure to hundredths": ("31", "31", "31", "31", "0.005"),
    "single exact figure": ("31", "31", "31", "31", "0"),
    "from nought": ("0", "0", "4", "4", "0.5"),
    "steep on one side": ("9.999", "10", "20", "90", "0.0005"),
}


# --- normal distribution


def test_normal_distribution_to_the_error_of_the_formula() -> None:
    """Abramowitz & Stegun 26.2.17 errs by less than 7.5e-8 everywhere."""
    at = np.linspace(-12, 12, 24_001)
    assert np.abs(below(at) - ndtr(at)).max() < 7.5e-8
    assert density(at) == pytest.approx(norm.pdf(at), rel=1e-12)
    assert list(below(np.array([-np.inf, np.inf]))) == [0.0, 1.0]


# --- blur


def height(one: Shape, value: float) -> float:
    """The trapezium at a value, by its corners."""
    for (start, end), (left, right) in zip(pairwise(one.density.places), pairwise(one.density.heights), strict=True):
        if start <= value <= end and end > start:
            return left + (right - left) * (value - start) / (end - start)
    return 0.0


def convolved(one: Shape, at: float, sd: float) -> float:
    """The integral of the trapezium times what the normal curve has below, piece by piece and numerically."""
    return sum(
        quad(lambda u: height(one, u) * norm.cdf((at - u) / sd), start, end, epsabs=1e-12)[0]
        for start, end in pairwise(one.density.places)
        if end > start
    )


@pytest.mark.parametrize("figures", SHAPES.values(), ids=SHAPES)
def test_blurred_share_is_the_convolution(figures: Sequence[str]) -> None:
    """To twice the error of the formula for the normal distribution, however narrow the statement."""
    one = shape(*figures)
    least, low, high, most, _ = map(float, figures)
    sd = SINGLE * low if low == high else BLUR * (high - low)
    assert blur_of(one) == pytest.approx(sd)
    at = np.linspace(min(least, low) - 4 * sd, max(most, high) + 4 * sd, 25)
    assert share_below(one, at) == pytest.approx([convolved(one, value, sd) for value in at], abs=1.5e-7)


# --- densities of tables


def table_of(kind: Character, *told: Sequence[Shape]) -> Numbers:
    found = numbers(kind, "", told)
    assert found is not None
    return found


def mean_density(table: Numbers, value: float, candidate: int, error: float = 0.0) -> float:
    return float(table.likelihood(np.array([value]), np.array([error]))[0, candidate])


@pytest.mark.parametrize("kind", [LENGTH, COUNT, ASPECT], ids=lambda one: one.kind.value)
def test_every_density_integrates_to_one(kind: Character) -> None:
    """Over the knots; each piece between two of them by itself, for it is level there."""
    told = [
        [shape("5", "10", "20", "30", kind=kind.kind), shape("12", "15", "15", "18", kind=kind.kind)],
        [shape("30", "30", "40", "44", kind=kind.kind)],
        [],
    ]
    table = table_of(kind, *told)
    for candidate in range(len(told)):
        whole = sum(
            quad(lambda value: mean_density(table, value, candidate), start, end, limit=20)[0]  # noqa: B023
            for start, end in pairwise(table.knots.tolist())
        )
        assert whole == pytest.approx(1, abs=1e-5)  # the narrowest observation reaches over the edges of a piece


def test_density_of_a_taxon_is_the_weighted_mean_of_blurred_statements_and_the_floor() -> None:
    first, second = shape("5", "10", "20", "30"), shape("25", "30", "40", "44")
    table = table_of(LENGTH, [first, second], [second])
    whole = table.knots[-1] - table.knots[0]
    for value in (8.0, 15.0, 22.0, 35.0, 43.0):
        ends = [convolved(one, value + off, blur_of(one)) for off in (-0.5, 0.5) for one in (first, second)]
        mean = (ends[2] - ends[0]) / 2 + (ends[3] - ends[1]) / 2
        expected = (1 - FLOOR) * mean + FLOOR / whole
        assert mean_density(table, value, 0, 0.5) == pytest.approx(expected, rel=0.02)  # straight between knots


def folded_by_force(one: Shape, start: float, end: float) -> float:
    """The blurred part of the plants between two bearings: that of every turn added up."""
    sd = blur_of(one, circular=True)
    turns = (360 * turn for turn in range(-2, 4))
    return sum(convolved(one, end + turn, sd) - convolved(one, start + turn, sd) for turn in turns)


@pytest.mark.parametrize(
    ("low", "high"),
    [("350", "370"), ("340", "380"), ("0", "0"), ("180", "180"), ("170", "190"), ("100", "260")],
)
def test_directions_are_folded(low: str, high: str) -> None:
    one = shape(low, low, high, high, "11.25", Kind.ANGLE)
    edges = np.linspace(0.0, 360.0, 181)
    shares = share_below_on_circle(one, edges)
    assert shares[0] == pytest.approx(0, abs=1e-7)
    assert shares[-1] == pytest.approx(1, abs=1e-4)  # what lies beyond four standard deviations
    for place in range(0, 180, 20):
        expected = folded_by_force(one, edges[place], edges[place + 1])
        assert shares[place + 1] - shares[place] == pytest.approx(expected, abs=1e-6)


@pytest.mark.parametrize("turn", [0, 45, 90, 135, 180, 225, 270, 315])
def test_where_counting_of_bearings_begins_does_not_matter(turn: int) -> None:
    """Two taxa and a plant turned together come out alike, single directions included."""

    def answer(by: int) -> np.ndarray:
        told = [[shape(*[str(low + by), str(low + by)], *[str(high + by)] * 2, "22.5", Kind.ANGLE)]
                for low, high in ((0, 0), (60, 120))]  # fmt: skip
        table = table_of(ASPECT, *told)
        found = table.likelihood(np.array([30.0 + by]), np.array([5.0]))
        return np.asarray(found / found.sum())

    assert answer(turn) == pytest.approx(answer(0), abs=1e-6)


# --- Bayes


def random_view(rng: random.Random, taxa: int, characters: int) -> View:
    tables = {}
    for number in range(characters):
        told = []
        for _ in range(taxa):
            middle = rng.uniform(20, 60)
            four = (middle * part for part in (0.6, 0.8, 1.2, 1.5))
            told.append([shape(*(f"{one:.1f}" for one in four))])
        name = f"part{number} length"
        found = numbers(Character(name, f"part{number}", "length", Kind.MEASURE, "mm"), "", told)
        assert found is not None
        tables[name, ""] = found
    ids = tuple(f"taxon-{number}" for number in range(taxa))
    return View("random", (), ids, dict(zip(ids, ids, strict=True)), tables, None)  # type: ignore[arg-type]


def density_at(table: Numbers, candidate: int, value: float, error: float) -> Fraction:
    """Mean density between the limits, from the shares at the knots, by exact fractions."""
    at, row = (
        [Fraction(one) for one in table.knots.tolist()],
        [Fraction(one) for one in table.below[candidate].tolist()],
    )

    def share(place: Fraction) -> Fraction:
        if place <= at[0] or place >= at[-1]:
            inside = Fraction(0) if place <= at[0] else Fraction(1)
            edge = at[0] if place <= at[0] else at[-1]
            return inside + (place - edge) * Fraction(FLOOR) / (at[-1] - at[0])
        after = next(number for number, knot in enumerate(at) if knot > place)
        part = (place - at[after - 1]) / (at[after] - at[after - 1])
        return row[after - 1] + part * (row[after] - row[after - 1])

    low, high = Fraction(value) - Fraction(error), Fraction(value) + Fraction(error)
    return (share(high) - share(low)) / (high - low)


@pytest.mark.parametrize("seed", range(6))
def test_posterior_by_bayes_theorem_in_fractions(seed: int) -> None:
    rng = random.Random(seed)
    view = random_view(rng, taxa=4, characters=3)
    priors = {taxon: rng.randint(1, 9) for taxon in view.taxa}
    values = {key: round(rng.uniform(0, 120), 1) for key in view.tables}
    columns = {key: Measured(np.array([value]), np.array([0.5])) for key, value in values.items()}
    products = []
    for place, taxon in enumerate(view.taxa):
        product = Fraction(priors[taxon])
        for key, table in view.tables.items():
            assert isinstance(table, Numbers)
            product *= density_at(table, place, values[key], 0.5)
        products.append(product)
    expected = [float(one / sum(products)) for one in products]
    assert posteriors(view, columns, priors)[0] == pytest.approx(expected, abs=1e-9)


def test_support_is_the_logarithm_of_the_factor_by_which_odds_change() -> None:
    """In the printed decomposition, priors times the exponentials of all support are the posteriors."""
    corpus = corpus_from(
        [
            Account(
                1900,
                "Alpha",
                {
                    TAXON: (("stem height", "10-20 mm", ""), ("seed surface", "smooth", "")),
                    OTHER: (("stem height", "15-40 mm", ""), ("seed surface", "winged, rarely smooth", "")),
                },
            )
        ]
    )
    view = view_of(Statements(corpus))
    seen = (
        Observation("stem height", "", Fraction(18), (), Fraction(1, 2), 1),
        Observation("seed surface", "", None, (("smooth", Fraction(1)),), Fraction(0), 1),
    )
    found = determine(view, Plant("x", None, None, None, "", seen), priors={TAXON: 1, OTHER: 3})
    terms = []
    for place, one in enumerate(found.candidates):
        terms.append(one.prior * math.exp(sum(told.support[place] for told in found.contributions)))
    expected = [one / sum(terms) for one in terms]
    assert [one.probability for one in found.candidates] == pytest.approx(expected, abs=1e-9)
    for told in found.contributions:
        average = sum(one.prior * math.exp(told.support[place]) for place, one in enumerate(found.candidates))
        assert average == pytest.approx(1, abs=1e-9)


# --- questions


def asked(prior: Sequence[float], table: States | Numbers, character: Character) -> float:
    ids = tuple(f"taxon-{number}" for number in range(len(prior)))
    view = View(
        "", (), ids, dict(zip(ids, ids, strict=True)), {(character.name, ""): table}, {character.name: character}
    )  # type: ignore[arg-type]
    found = questions(view, Plant("x", None, None, None, "", ()), priors=dict(zip(ids, prior, strict=True)))
    return found[0].gain if found else 0.0


def test_gain_is_mutual_information() -> None:
    """Of whole numbers of plants, so that scikit-learn can count them; as a part of the entropy by scipy."""
    surface = Character(
        "seed surface", "seed", "surface", Kind.NOMINAL, states=(State("smooth"), State("reticulate"), State("winged"))
    )
    table = states(surface, "", [{"smooth": 1.0}, {"reticulate": 0.6, "smooth": 0.4}, {"winged": 0.5, "smooth": 0.5}])
    assert table is not None
    prior = (0.5, 0.3, 0.2)
    counts = np.round(60_000 * np.array(prior)[:, None] * table.shares.T).astype(int)
    by_plant = [
        (taxon, state) for taxon, row in enumerate(counts) for state, many in enumerate(row) for _ in range(many)
    ]
    taxa, outcomes = zip(*by_plant, strict=True)
    assert asked(prior, table, surface) == pytest.approx(mutual_info_score(taxa, outcomes) / entropy(prior), abs=1e-4)


def test_gain_of_a_measure_is_mutual_information_over_its_cells() -> None:
    table = table_of(LENGTH, [shape("5", "10", "20", "30")], [shape("15", "18", "28", "30")])
    prior = (0.7, 0.3)
    cells = np.diff(table.below, axis=1)
    joint = np.array(prior)[:, None] * cells
    told = entropy(prior) - sum(joint[:, cell].sum() * entropy(joint[:, cell]) for cell in range(joint.shape[1]))
    assert asked(prior, table, LENGTH) == pytest.approx(told / entropy(prior), abs=1e-9)


# --- calibration


def test_brier_score_of_two_taxa_is_twice_that_of_one_event() -> None:
    """Brier's own sum goes over all classes; scikit-learn's, of two, over one of them."""
    rng = np.random.default_rng(1)
    stated, true = rng.uniform(size=500), rng.integers(0, 2, 500)
    both = np.column_stack([1 - stated, stated])
    assert brier(both, true) == pytest.approx(2 * brier_score_loss(true, stated))


def test_bands_of_calibration_are_those_of_a_calibration_curve() -> None:
    """Of plants drawn from two overlapping taxa, by bands of even width within scikit-learn and by hand for ours."""
    corpus = corpus_from(
        [Account(1900, "Alpha", {TAXON: (("stem height", "10-20 mm", ""),), OTHER: (("stem height", "16-26 mm", ""),)})]
    )
    statements = Statements(corpus)
    view = view_of(statements)
    rng = random.Random(5)
    plants = []
    for number in range(400):
        taxon = (TAXON, OTHER)[number % 2]
        value = Fraction(round(rng.gauss(15 if taxon == TAXON else 21, 3), 1)).limit_denominator(10)
        seen = (Observation("stem height", "", value, (), Fraction(1, 20), 1),)
        plants.append(Plant(f"plant-{number}", taxon, None, None, "", seen))
    found = calibration(statements, view, plants)
    answers = [determine(view, one) for one in plants]
    top = np.array([one.candidates[0].probability for one in answers])
    right = np.array([one.best == plant.taxon for one, plant in zip(answers, plants, strict=True)])
    assert set(NAMES) == set(view.taxa)
    assert sum(band.plants for band in found.bands) == len(plants)
    assert found.right == right.sum()
    for band in found.bands:
        inside = (top >= band.low) & (top < band.high)
        # One bin of scikit-learn's that holds all the plants of the band.
        share, stated = calibration_curve(right[inside], top[inside], n_bins=1)
        assert band.plants == inside.sum()
        assert (band.stated, band.right / band.plants) == pytest.approx((stated[0], share[0]))
    assert [band.low for band in found.bands] == [low for low in BANDS[:-1] if any(b.low == low for b in found.bands)]
    assert len(found.bands) >= 3
