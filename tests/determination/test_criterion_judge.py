"""Plants judged by a working criterion: verdicts, supporting traits, conflicts and the laws that they keep."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.plants import Observation, Plant
from auctorum.corpus.criteria import UnusableCriterion, limit_of
from auctorum.corpus.model import Corpus
from auctorum.determination.criteria.criterion import (
    VERDICTS,
    Judgement,
    Verdict,
    chance_of_fitting,
    judge,
    judge_values,
)
from auctorum.determination.criteria.words import words
from auctorum.determination.places.of_site import with_habitat
from auctorum.records import schema
from building import corpus_of, read_text
from measuring import NAMES

CHARACTERS = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm, stages: [young, mature]}
- {name: petal number, structure: petal, property: count, kind: count}
- {name: spur to petal, structure: spur, property: ratio, kind: ratio}
- name: leaf hairiness
  structure: leaf
  property: surface
  kind: ordered
  states: [{name: glabrous}, {name: pubescent}, {name: villous}, {name: woolly}]
- name: spur colour
  structure: spur
  property: colour
  kind: ordered
  states: [{name: green}, {name: cream}, {name: ivory}]
- {name: bracteoles, structure: bracteole, property: presence, kind: presence}
- {name: elevation, structure: habitat, property: elevation, kind: measure, unit: m}
- {name: aspect, structure: habitat, property: aspect, kind: angle, unit: degree}
- name: substrate
  structure: habitat
  property: substrate
  kind: nominal
  states: [{name: basalt}, {name: limestone}]
"""
WORK = f"""\
work: {{id: first-1850, type: book, author: [{{family: First}}], issued: "1850", title: T}}
{NAMES}treatments:
- taxon: Exemplum album
- taxon: Exemplum nigrum
"""
BASE, _PROBLEMS = corpus_of(WORK, characters=CHARACTERS)
SITE = schema.Site(
    "W", minimumElevationInMeters=Decimal(270), maximumElevationInMeters=Decimal(330), substrate="basalt", aspect="S"
)
CORPUS: Corpus = replace(BASE, sites={"W": SITE})
DECISIVE = "{character: spur length, stage: mature, at-least: 25 mm}"
SUPPORTING = """\
[{character: spur colour, value: cream to ivory, weight: 0.5},
 {character: elevation, value: 150–420 m, weight: 1}, {character: aspect, value: SE to SSW, weight: 1}]"""


def criterion(decisive: str = DECISIVE, supporting: str = "[]") -> schema.Criterion:
    text = (
        f"id: long\ntaxon: Exemplum album\ntitle: Long-spurred\notherwise: Exemplum nigrum\n"
        f"decisive: {decisive}\nsupporting: {supporting}\n"
    )
    return read_text(text, schema.Criterion, "long.yaml")


def number(character: str, value: str | Fraction, error: str | Fraction = "0.5", stage: str = "") -> Observation:
    return Observation(character, stage, Fraction(value), (), Fraction(error), 1)


def states(character: str, **weights: float) -> Observation:
    told = tuple((name, Fraction(weight)) for name, weight in weights.items())
    return Observation(character, "", None, told, Fraction(0), 1)


def plant(*observations: Observation, site: str | None = None) -> Plant:
    return Plant("P", None, None, site, "", observations)


def spur(value: str | Fraction, error: str | Fraction = "0.5", stage: str = "mature") -> Observation:
    return number("spur length", value, error, stage)


def judged(
    *observations: Observation, decisive: str = DECISIVE, supporting: str = "[]", site: str | None = None
) -> Judgement:
    return judge(CORPUS, criterion(decisive, supporting), plant(*observations, site=site))


# --- the verdict


@pytest.mark.parametrize(
    ("value", "error", "verdict", "chance"),
    [
        pytest.param("31", "0.5", Verdict.FITS, 1.0, id="over"),
        pytest.param("19", "0.5", Verdict.DOES_NOT_FIT, 0.0, id="under"),
        pytest.param("25", "0.5", Verdict.BORDERLINE, 0.5, id="on-the-threshold"),
        pytest.param("24.6", "0.5", Verdict.BORDERLINE, 0.1, id="a-little-under"),
        pytest.param("25.4", "0.5", Verdict.BORDERLINE, 0.9, id="a-little-over"),
        pytest.param("25.5", "0.5", Verdict.FITS, 1.0, id="just-at-the-limit-of-error-above"),
        pytest.param("24.5", "0.5", Verdict.DOES_NOT_FIT, 0.0, id="just-at-the-limit-of-error-below"),
        pytest.param("25", "0", Verdict.FITS, 1.0, id="exact: at least means from it on"),
    ],
)
def test_within_the_error_of_measuring_a_plant_is_borderline(
    value: str, error: str, verdict: Verdict, chance: float
) -> None:
    """Common practice, no source: a plant within instrument error of the threshold is borderline."""
    one = judged(spur(value, error))
    assert one.verdict is verdict
    assert chance_of_fitting(one) == pytest.approx(chance)
    assert one.margin == Fraction(value) - 25


def test_the_accuracy_of_the_instrument_widens_the_error() -> None:
    exact = spur("26")
    by_eye = replace(exact, accuracy=Fraction(1))
    assert judged(exact).verdict is Verdict.FITS
    assert (judged(by_eye).verdict, judged(by_eye).error) == (Verdict.BORDERLINE, Fraction(3, 2))


def test_at_most_fits_below() -> None:
    up_to = "{character: spur length, stage: mature, at-most: 2.5 cm}"
    below, above = judged(spur("19"), decisive=up_to), judged(spur("31"), decisive=up_to)
    assert (below.verdict, below.margin, below.name) == (Verdict.FITS, 6, "Exemplum album")
    assert (above.verdict, above.margin, above.name) == (Verdict.DOES_NOT_FIT, -6, "Exemplum nigrum")


@pytest.mark.parametrize(
    ("limit", "petals", "verdict"),
    [
        pytest.param("at-least: '5'", "5", Verdict.FITS, id="at-least-reached"),
        pytest.param("at-least: '5'", "4", Verdict.DOES_NOT_FIT, id="at-least-missed"),
        pytest.param("at-most: '5'", "5", Verdict.FITS, id="at-most-reached"),
        pytest.param("at-most: '5'", "6", Verdict.DOES_NOT_FIT, id="at-most-passed"),
    ],
)
def test_a_count_has_no_rounding_error(limit: str, petals: str, verdict: Verdict) -> None:
    assert judged(number("petal number", petals), decisive=f"{{character: petal number, {limit}}}").verdict is verdict


@pytest.mark.parametrize(
    ("limit", "seen", "verdict", "chance"),
    [
        pytest.param("at-least: pubescent", {"villous": 1}, Verdict.FITS, 1, id="beyond"),
        pytest.param("at-least: pubescent", {"pubescent": 1}, Verdict.FITS, 1, id="the-state-itself"),
        pytest.param("at-least: pubescent", {"glabrous": 1}, Verdict.DOES_NOT_FIT, 0, id="short-of-it"),
        pytest.param("at-least: pubescent", {"glabrous": 0.5, "pubescent": 0.5}, Verdict.BORDERLINE, 0.5, id="both"),
        pytest.param("at-most: pubescent", {"pubescent": 1}, Verdict.FITS, 1, id="at-most"),
        pytest.param("at-most: pubescent", {"pubescent": 0.5, "woolly": 0.5}, Verdict.BORDERLINE, 1 / 3, id="wide"),
    ],
)
def test_a_spectrum_of_states(limit: str, seen: dict[str, float], verdict: Verdict, chance: float) -> None:
    one = judged(states("leaf hairiness", **seen), decisive=f"{{character: leaf hairiness, {limit}}}")
    assert (one.verdict, chance_of_fitting(one)) == (verdict, pytest.approx(chance))


@pytest.mark.parametrize(
    ("observations", "why"),
    [
        pytest.param([spur("31", stage="young")], "observed on a young plant only", id="young"),
        pytest.param([spur("31", stage="stage not stated")], "observed at no stated stage", id="no-stage"),
        pytest.param([spur("31", stage="in bud")], "observed at the stage “in bud” only", id="other-stage"),
        pytest.param([number("petal number", "5")], "not observed", id="not-observed"),
        pytest.param([], "not observed", id="nothing"),
    ],
)
def test_a_young_flower_proves_nothing(observations: list[Observation], why: str) -> None:
    """Common practice, no source: organs are judged when grown out."""
    one = judged(*observations)
    assert (one.verdict, one.why, one.name, chance_of_fitting(one)) == (Verdict.INSUFFICIENT, why, "", None)


# --- what supports


@pytest.mark.parametrize(
    ("value", "observation", "agrees"),
    [
        pytest.param("150–420 m", number("elevation", "300"), 1, id="inside"),
        pytest.param("150–420 m", number("elevation", "420.8"), 1, id="within-precision"),
        pytest.param("150–420 m", number("elevation", "422"), 0, id="beyond-without-extremes"),
        pytest.param("(100–)150–420(–520) m", number("elevation", "470.5"), 0.505, id="half-way-to-the-extreme"),
        pytest.param("(100–)150–420(–520) m", number("elevation", "521"), 0, id="beyond-the-extreme"),
        pytest.param("up to 420 m", number("elevation", "3"), 1, id="open-below"),
        pytest.param("492–1378 ft", number("elevation", "300"), 1, id="another-unit"),
    ],
)  # fmt: skip
def test_agreement_with_a_range(value: str, observation: Observation, agrees: float) -> None:
    """By hand: 470.5 is 50.5 beyond 420, less 0.5 of its own step and 0.5 of the bound's, of 100 to the extreme."""
    supporting = f"[{{character: elevation, value: {value!r}}}]"
    (support,) = judged(spur("31"), observation, supporting=supporting).supports
    assert support.agrees == pytest.approx(agrees)


@pytest.mark.parametrize(
    ("degrees", "agrees"),
    [pytest.param("180", 1, id="south"), pytest.param("0", 0, id="north"), pytest.param("135", 1, id="at-its-end")],
)
def test_agreement_with_an_arc(degrees: str, agrees: float) -> None:
    (support,) = judged(
        spur("31"), number("aspect", degrees, "1"), supporting="[{character: aspect, value: SE to SSW}]"
    ).supports
    assert support.agrees == agrees


def test_an_arc_across_north() -> None:
    supporting = "[{character: aspect, value: NW to NE}]"
    for degrees, agrees in (("350", 1.0), ("10", 1.0), ("180", 0.0)):
        one = judged(spur("31"), number("aspect", degrees, "1"), supporting=supporting)
        assert one.supports[0].agrees == agrees


def test_a_rare_state_agrees_as_much_as_it_weighs() -> None:
    """Always weighs 1 and rarely 1/20, so that what is rarely so agrees in a twentieth."""
    supporting = "[{character: spur colour, value: 'ivory; rarely cream'}]"
    for seen, agrees in (("ivory", 1.0), ("cream", 0.05), ("green", 0.0)):
        (support,) = judged(spur("31"), states("spur colour", **{seen: 1}), supporting=supporting).supports
        assert support.agrees == pytest.approx(agrees)


def test_a_site_tells_the_habitat_of_its_plants() -> None:
    """By hand: colour 0.5 of 2.5 speaks against, elevation and aspect of the wall for: 2 of 2.5."""
    one = judged(spur("31"), states("spur colour", green=1), supporting=SUPPORTING, site="W")
    assert [(each.observed, each.agrees) for each in one.supports] == [("green", 0), ("270–330 m", 1), ("S", 1)]
    assert one.share == pytest.approx(0.8) and not one.conflict


def test_a_plant_keeps_what_was_seen_of_its_own_place() -> None:
    own = number("elevation", "12")
    seen = {each.character: each for each in with_habitat(CORPUS, plant(own, site="W")).observations}
    assert seen["elevation"] is own and seen["aspect"].value == 180
    assert seen["substrate"].states == (("basalt", 1),)
    nowhere = plant(own, site=None)
    assert with_habitat(CORPUS, nowhere) is nowhere


def test_a_decisive_length_outranks_colours() -> None:
    """Common practice, no source: the verdict stands, and what speaks against it is said."""
    one = judged(spur("31"), states("spur colour", green=1), supporting=SUPPORTING)
    assert (one.verdict, one.share, one.conflict) == (Verdict.FITS, 0, True)
    said = words(CORPUS, criterion(supporting=SUPPORTING), one)
    assert "Conflict: only 0 % of the weight of the supporting traits agrees; spur length decides all the same." in said


def test_traits_that_speak_for_a_plant_that_does_not_fit() -> None:
    one = judged(spur("19"), states("spur colour", ivory=1), supporting=SUPPORTING)
    assert (one.verdict, one.conflict, one.name) == (Verdict.DOES_NOT_FIT, True, "Exemplum nigrum")
    assert not judged(spur("25"), states("spur colour", green=1), supporting=SUPPORTING).conflict


def test_no_trait_observed_is_no_conflict() -> None:
    one = judged(spur("31"), supporting=SUPPORTING)
    assert (one.share, one.conflict, [each.agrees for each in one.supports]) == (None, False, [None] * 3)


def test_the_sentence_that_people_read() -> None:
    one = judged(spur("31"), states("spur colour", green=1), supporting=SUPPORTING, site="W")
    assert words(CORPUS, criterion(supporting=SUPPORTING), one) == (
        "Fits “Long-spurred”: spur 31 mm, 6 mm over the limit of 25 mm. Supporting: spur colour green does not "
        "(cream to ivory); elevation 270–330 m agrees; aspect S agrees."
    )
    young = judged(spur("18", stage="young"))
    assert words(CORPUS, criterion(), young) == (
        "Not judged by “Long-spurred”: spur length was observed on a young plant only, "
        "which proves nothing at maturity."
    )
    near = judged(spur("25.2"))
    assert words(CORPUS, criterion(), near).startswith(
        "Borderline by “Long-spurred”: spur 25.2 mm, within the error of measuring (±0.5 mm) of the limit of 25 mm"
    )


# --- hostile criteria


@pytest.mark.parametrize(
    ("decisive", "why"),
    [
        pytest.param("{character: spur length}", "needs one threshold", id="none"),
        pytest.param("{character: spur length, at-least: 20–30 mm}", "is one figure", id="range"),
        pytest.param("{character: aspect, at-least: S}", "no lower and higher", id="angle"),
        pytest.param("{character: bracteoles, at-least: present}", "no lower and higher", id="presence"),
        pytest.param("{character: leaf hairiness, at-least: pubescent to woolly}", "is one state", id="span"),
        pytest.param("{character: leaf hairiness, at-least: rarely pubescent}", "is one state", id="rarely"),
    ],
)
def test_what_decides_nothing_is_refused(decisive: str, why: str) -> None:
    with pytest.raises(UnusableCriterion, match=why):
        judged(spur("31"), decisive=decisive)


# --- laws

LENGTHS = st.decimals(min_value=0, max_value=60, places=2, allow_nan=False).map(Fraction)
ERRORS = st.sampled_from([Fraction(0), Fraction(1, 20), Fraction(1, 2), Fraction(5), Fraction(127, 100)])
SAME_LENGTH = ("25.4 mm", "2.54 cm", "1 in", "12 lines", "0.0254 m")


@settings(deadline=None, max_examples=150)
@given(
    st.lists(st.tuples(LENGTHS, ERRORS), min_size=1, max_size=20),
    st.sampled_from(["at-least", "at-most"]),
    st.sampled_from(["25 mm", "2.5 cm", "1 in", "24.75 mm"]),
)
def test_many_plants_at_once_come_out_as_one_by_one(
    measured: list[tuple[Fraction, Fraction]], side: str, limit: str
) -> None:
    decisive = f"{{character: spur length, stage: mature, {side}: {limit}}}"
    by_one = [judged(spur(value, error), decisive=decisive).verdict for value, error in measured]
    values, errors = (np.array([float(one) for one in column]) for column in zip(*measured, strict=True))
    codes = judge_values(limit_of(criterion(decisive).decisive, CORPUS.vocabulary), values, errors)
    assert [VERDICTS[code] for code in codes] == by_one


def test_what_is_not_a_number_was_not_observed() -> None:
    limit = limit_of(criterion().decisive, CORPUS.vocabulary)
    codes = judge_values(limit, [np.nan, 31.0, 25.0, 3.0], 0.5)
    assert [VERDICTS[code] for code in codes] == [
        Verdict.INSUFFICIENT, Verdict.FITS, Verdict.BORDERLINE, Verdict.DOES_NOT_FIT,
    ]  # fmt: skip


@settings(deadline=None, max_examples=100)
@given(LENGTHS, ERRORS)
def test_units_change_nothing(value: Fraction, error: Fraction) -> None:
    """The inch is 25.4 mm exactly (international yard and pound agreement of 1959; from memory), and has 12 lines."""
    found = {
        (one.verdict, one.margin, one.error)
        for printed in SAME_LENGTH
        for one in [judged(spur(value, error), decisive=f"{{character: spur length, at-least: {printed}}}")]
    }
    assert len(found) == 1


@settings(deadline=None, max_examples=100)
@given(LENGTHS, LENGTHS, ERRORS)
def test_a_longer_spur_never_fits_less(one: Fraction, other: Fraction, error: Fraction) -> None:
    rank = [Verdict.DOES_NOT_FIT, Verdict.BORDERLINE, Verdict.FITS]
    shorter, longer = (judged(spur(value, error)) for value in sorted((one, other)))
    assert rank.index(shorter.verdict) <= rank.index(longer.verdict)
    low, high = chance_of_fitting(shorter), chance_of_fitting(longer)
    assert low is not None and high is not None and 0 <= low <= high <= 1


@settings(deadline=None, max_examples=60)
@given(LENGTHS, st.sampled_from(["green", "cream", "ivory"]), st.decimals(min_value=1, max_value=9, places=1))
def test_a_trait_that_was_not_observed_changes_nothing(length: Fraction, colour: str, weight: Decimal) -> None:
    seen = (spur(length), states("spur colour", **{colour: 1}))
    with_one = "[{character: spur colour, value: cream to ivory, weight: 2}]"
    with_more = with_one[:-1] + f", {{character: bracteoles, value: absent, weight: {weight}}}]"
    one, more = judged(*seen, supporting=with_one), judged(*seen, supporting=with_more)
    assert more.supports[:1] == one.supports and more.supports[1].agrees is None
    assert replace(more, supports=()) == replace(one, supports=())
