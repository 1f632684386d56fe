"""Agreement of evidence of every kind; Anderson's irises as an outside check."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from sklearn.datasets import load_iris

from auctorum.characters.bounds import bounds
from auctorum.characters.values import Modality, Range, Share, States
from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.circumscription.agreement import agreement
from auctorum.circumscription.evidence import on_one_turn
from auctorum.circumscription.findings import Evidence, RangeAgreement, Relation, Span, StateAgreement, Verdict
from auctorum.circumscription.sweep import relation
from auctorum.circumscription.verdict import verdict
from auctorum.circumscription.voices import stretches, voices

SPUR = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
ASPECT = Character("aspect", "habitat", "aspect", Kind.ANGLE, "degree")
FLOWERS = Character("flower number", "flower", "count", Kind.COUNT)
COLOUR = Character(
    "spur colour", "spur", "colour", Kind.ORDERED, states=tuple(map(State, ("green", "cream", "ivory", "buff")))
)
BRACTEOLES = Character("bracteoles", "bracteole", "presence", Kind.PRESENCE)


def evidence(
    number: int, value: Range | States, unit: str = "", weight: int = 1, work: str = "", repeats: str = ""
) -> Evidence:
    """One statement of a work of its own, ten years after the one before."""
    year = 1900 + 10 * number
    span = extremes = None
    slack = Fraction(0)
    if isinstance(value, Range):
        found = bounds(value, unit)
        span, slack = Span(found.low, found.high), found.low_slack
        extremes = span
    work = work or f"w-{year}"
    byline = f"{chr(65 + number)}ell {year}"
    return Evidence(
        f"{work}:{number}", work, year, byline, "", "", value, Fraction(weight), span, extremes, slack, slack, repeats
    )


def said(character: Character, *values: Range | States) -> list[Evidence]:
    return [evidence(number, value, character.unit) for number, value in enumerate(values)]


def numbers(low, high, unit: str = "") -> Range:
    return Range(None if low is None else Decimal(low), None if high is None else Decimal(high), unit)


def states(*shares: str | Share) -> States:
    return States(tuple(Share(share) if isinstance(share, str) else share for share in shares))


def compass(low: int, high: int) -> Range:
    return Range(Decimal(low), Decimal(high), "degree", step=Decimal(45))


def test_silence_is_for_the_caller() -> None:
    with pytest.raises(ValueError, match="nothing is said of spur length"):
        agreement([], SPUR)


def test_units_are_brought_to_the_one_of_the_character() -> None:
    found = agreement(said(SPUR, numbers("10", "20", "cm"), numbers("4", "8", "in")), SPUR)
    assert isinstance(found, RangeAgreement)
    assert found.core == Span(Fraction("101.6"), Fraction(200))
    assert found.lower is not None
    assert found.upper is not None
    assert found.lower.stable
    assert found.upper.stable


@pytest.mark.parametrize(
    ("counts", "word"),
    [
        pytest.param([("5", "5"), ("5", "5")], Verdict.UNANIMOUS, id="the-same-number"),
        pytest.param([("3", "7"), ("3", "8")], Verdict.CONSISTENT, id="one-more-is-not-the-same"),
        pytest.param([("4", "4"), ("5", "5")], Verdict.CONFLICTING, id="four-is-not-five"),
    ],
)
def test_counts_are_exact(counts, word: Verdict) -> None:
    items = said(FLOWERS, *(numbers(*pair) for pair in counts))
    assert verdict(voices(items, FLOWERS), agreement(items, FLOWERS)) is word


def test_one_work_has_one_voice() -> None:
    """Two statements of one work, `22–34 mm` and `in rich soil 40–44 mm`, are its range from 22 to 44 mm."""
    first, again = (evidence(0, numbers(*pair, "mm"), "mm", work="w-a") for pair in (("22", "34"), ("40", "44")))
    other = evidence(1, numbers("30", "41", "mm"), "mm")
    found = agreement([first, again, other], SPUR)
    assert isinstance(found, RangeAgreement)
    assert (found.core, found.envelope) == (Span(Fraction(30), Fraction(41)), Span(Fraction(22), Fraction(44)))
    assert found.lower is not None
    assert found.lower.stated == 2


def test_a_repetition_adds_no_weight_and_no_trend() -> None:
    own = [evidence(at, numbers("22", str(30 + at), "mm"), "mm") for at in range(2)]
    copies = [evidence(at, numbers("22", str(30 + at), "mm"), "mm", 0, repeats="w-1910") for at in range(2, 6)]
    items = [*own, *copies]
    found = agreement(items, SPUR)
    assert isinstance(found, RangeAgreement)
    assert found.majority == (Span(Fraction(22), Fraction(31)),)
    assert found.upper is not None
    assert (found.upper.stated, found.upper.tau) == (2, None)


@pytest.mark.parametrize(
    ("arcs", "core", "envelope"),
    [
        pytest.param([(315, 360), (0, 45)], (360, 360), (315, 405), id="about-north"),
        pytest.param([(315, 360), (0, 0), (315, 405)], (360, 360), (315, 405), id="north-said-three-ways"),
        pytest.param([(135, 180), (135, 135)], (135, 135), (135, 180), id="away-from-north"),
        pytest.param([(675, 720), (0, 45)], (360, 360), (315, 405), id="a-turn-too-many"),
        pytest.param([(0, 0), (180, 180)], None, (0, 180), id="opposite-has-no-mean"),
    ],
)
def test_directions_meet_across_north(arcs, core, envelope) -> None:
    found = agreement(said(ASPECT, *(compass(*arc) for arc in arcs)), ASPECT)
    assert isinstance(found, RangeAgreement)
    assert found.core == (None if core is None else Span(*map(Fraction, core)))
    assert found.envelope == Span(*map(Fraction, envelope))


@settings(deadline=None, max_examples=100)
@given(
    st.lists(st.tuples(st.integers(0, 7), st.integers(0, 2)), min_size=1, max_size=6),
    st.lists(st.integers(-2, 2), min_size=6, max_size=6),
)
def test_whole_turns_do_not_matter(arcs, turns) -> None:
    plain = said(ASPECT, *(compass(45 * at, 45 * (at + more)) for at, more in arcs))
    pairs = [(at + 8 * by, more) for (at, more), by in zip(arcs, turns, strict=False)]
    moved = said(ASPECT, *(compass(45 * at, 45 * (at + more)) for at, more in pairs))
    assert agreement(plain, ASPECT) == agreement(moved, ASPECT)
    turned = on_one_turn(plain)
    assert on_one_turn(turned) == turned
    assert 0 <= min(item.span.low for item in turned if item.span) < 360


def test_states_have_weights_and_an_ordered_spectrum_has_positions() -> None:
    last = states("cream", Share("buff", None, Modality.RARELY))
    found = agreement(said(COLOUR, states(Share("green", "ivory")), states("cream"), last), COLOUR)
    assert isinstance(found, StateAgreement)
    # cream: a third of the first, all of the second, 20/21 of the third (`rarely` weighs 1/20)
    cream = (Fraction(1, 3) + 1 + Fraction(20, 21)) / 3
    assert dict(found.weights) == {
        "green": Fraction(1, 9),
        "cream": cream,
        "ivory": Fraction(1, 9),
        "buff": Fraction(1, 63),
    }
    assert (found.core, found.envelope) == (("cream",), ("green", "cream", "ivory", "buff"))
    assert found.positions is not None
    assert found.positions.core == Span(Fraction(1), Fraction(1))
    assert found.positions.envelope == Span(Fraction(0), Fraction(2))


def test_presence() -> None:
    found = agreement(said(BRACTEOLES, states("absent"), states("absent", "present")), BRACTEOLES)
    assert isinstance(found, StateAgreement)
    assert found.weights == (("present", Fraction(1, 4)), ("absent", Fraction(3, 4)))
    assert (found.core, found.positions) == (("absent",), None)


units = st.sampled_from(["mm", "cm", "in", "line"])
ranges = st.tuples(st.integers(0, 30), st.integers(0, 12), st.booleans(), units).map(
    lambda drawn: numbers(None if drawn[2] else str(drawn[0]), str(drawn[0] + drawn[1]), drawn[3])
)
colours = st.lists(st.sampled_from([state.name for state in COLOUR.states]), min_size=1, max_size=3).map(
    lambda names: states(*names)
)


@settings(deadline=None, max_examples=100)
@given(st.lists(ranges, min_size=1, max_size=7), st.randoms())
def test_order_of_ranges_does_not_matter(values, random) -> None:
    items = said(SPUR, *values)
    shuffled = list(items)
    random.shuffle(shuffled)
    found = agreement(items, SPUR)
    assert agreement(shuffled, SPUR) == found
    assert verdict(voices(shuffled, SPUR), found) is verdict(voices(items, SPUR), found)


@settings(deadline=None, max_examples=100)
@given(st.lists(colours, min_size=1, max_size=7), st.randoms())
def test_order_of_states_does_not_matter_and_weights_are_whole(values, random) -> None:
    items = said(COLOUR, *values)
    shuffled = list(items)
    random.shuffle(shuffled)
    found = agreement(items, COLOUR)
    assert isinstance(found, StateAgreement)
    assert agreement(shuffled, COLOUR) == found
    assert sum(weight for _, weight in found.weights) == 1
    assert set(found.core) <= set(found.envelope)


def iris_lengths() -> dict[str, list[Decimal]]:
    """Petal lengths in cm of three irises: Anderson, Bull. Amer. Iris Soc. 59: 2-5 (1935), as printed by Fisher,
    Annals of Eugenics 7: 179-188 (1936); read from scikit-learn's copy."""
    data = load_iris()
    lengths: dict[str, list[Decimal]] = {}
    for row, species in zip(data.data, data.target, strict=True):
        lengths.setdefault(str(data.target_names[species]), []).append(Decimal(f"{row[2]:.1f}"))
    return lengths


PETAL = Character("petal length", "petal", "length", Kind.MEASURE, "mm")


@pytest.mark.parametrize(
    ("species", "least", "most"),
    [
        # the figures in any handbook of statistics, here from memory
        pytest.param("setosa", 10, 19, id="setosa"),
        pytest.param("versicolor", 30, 51, id="versicolor"),
        pytest.param("virginica", 45, 69, id="virginica"),
    ],
)
def test_ranges_of_flowers_merge_into_the_range_of_the_species(species: str, least: int, most: int) -> None:
    """Ten works that each measured five flowers: their envelope is the species', whoever measured what."""
    flowers = iris_lengths()[species]
    fives = [flowers[at : at + 5] for at in range(0, 50, 5)]
    found = agreement(said(PETAL, *(Range(min(five), max(five), "cm") for five in fives)), PETAL)
    assert isinstance(found, RangeAgreement)
    assert found.envelope == Span(Fraction(least), Fraction(most))
    assert (min(flowers) * 10, max(flowers) * 10) == (least, most)


def test_petals_of_setosa_are_apart_from_those_of_versicolor_and_versicolor_overlaps_virginica() -> None:
    whole = {name: Range(min(flowers), max(flowers), "cm") for name, flowers in iris_lengths().items()}
    items = said(PETAL, whole["setosa"], whole["versicolor"], whole["virginica"])
    setosa, versicolor, virginica = stretches(voices(items, PETAL))
    assert relation(setosa, versicolor) is Relation.APART
    assert relation(versicolor, virginica) is Relation.OVERLAPS
    assert verdict(voices(items[:2], PETAL), agreement(items[:2], PETAL)) is Verdict.CONFLICTING
