"""One plant determined: its wording, what each character says, what could not be used, what to look at next."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest

from accounts import OTHER, TAXON
from auctorum.corpus.readings import UNSTATED, ImpossibleValue, UnknownCharacter
from auctorum.determination.asking import LEAST_GAIN, questions
from auctorum.determination.determine import determine
from auctorum.determination.model import Wording
from auctorum.determination.printed import printed
from auctorum.determination.said import NotUnderstood, observed
from auctorum.determination.wording import qualified, wording
from auctorum.records.schema import Thresholds
from core_cases import ASPECT, COLOUR, HEIGHT, SURFACE, corpus_with, measured, plant, shown, three_names, view_with

VIEW = view_with(
    [f"{HEIGHT}: 10-20 mm", "spur length [mature]: 30-40 mm", f"{SURFACE}: smooth", f"{COLOUR}: green"],
    [f"{HEIGHT}: 15-40 mm", "spur length [mature]: 10-20 mm", f"{SURFACE}: winged", f"{ASPECT}: NNW-NNE"],
)
VOCABULARY = corpus_with([f"{HEIGHT}: 1 mm"], []).vocabulary


# --- wording


@pytest.mark.parametrize(
    ("probability", "misfits", "expected"),
    [
        (1.0, 0, Wording.PLAIN), (0.95, 0, Wording.PLAIN), (0.94, 0, Wording.CF), (0.8, 0, Wording.CF),
        (0.79, 0, Wording.AFF), (0.5, 0, Wording.AFF), (0.49, 0, Wording.INDET),
        (1.0, 1, Wording.CF), (0.7, 1, Wording.AFF), (1.0, 2, Wording.AFF), (1.0, 5, Wording.AFF),
        (0.4, 2, Wording.INDET),
    ],
)  # fmt: skip
def test_wording(probability: float, misfits: int, expected: Wording) -> None:
    assert wording(probability, misfits, Thresholds()) is expected


def test_thresholds_of_the_knowledge_base_count() -> None:
    assert wording(0.9, 0, Thresholds(plain=0.9)) is Wording.PLAIN
    strict = determine(VIEW, plant(measured(12)), thresholds=Thresholds(plain=1.0, cf=1.0, aff=1.0))
    assert strict.wording is Wording.INDET


@pytest.mark.parametrize(
    ("name", "said", "expected"),
    [
        ("Exemplum album", Wording.PLAIN, "Exemplum album"),
        ("E. album", Wording.CF, "E. cf. album"),
        ("Exemplum album", Wording.INDET, "Exemplum indet."),
        ("Exemplum album subsp. rubrum var. longum", Wording.AFF, "Exemplum album subsp. rubrum aff. var. longum"),
        ("Exemplum", Wording.CF, "cf. Exemplum"),
        ("Exemplum album Auctor s. lat.", Wording.CF, "Exemplum cf. album Auctor s. lat."),
        ("Exemplum album var. longum L.", Wording.CF, "Exemplum album cf. var. longum L."),
        ("Exemplum album Auctor f.", Wording.AFF, "Exemplum aff. album Auctor f."),
        ("var. longum", Wording.CF, "cf. var. longum"),
        ("var. longum", Wording.INDET, "indet."),
        ("Exemplum ×album", Wording.CF, "Exemplum cf. ×album"),
    ],
)
def test_qualifier_stands_before_the_epithet_in_question(name: str, said: Wording, expected: str) -> None:
    assert qualified(name, said) == expected


# --- determinations


def test_what_each_character_says() -> None:
    found = determine(VIEW, plant(measured(12), measured(35, "spur length", stage="mature"), shown(SURFACE, "smooth")))
    assert (found.best, found.wording, found.misfits) == (TAXON, Wording.PLAIN, ())
    assert [one.taxon for one in found.candidates] == [TAXON, OTHER]
    assert sum(one.probability for one in found.candidates) == pytest.approx(1)
    said = {one.character: one for one in found.contributions}
    assert said["spur length"].said == "35 mm"
    assert said["spur length"].beyond == (OTHER,)
    assert all(one.support[0] > 0 > one.support[1] for one in found.contributions)
    gaps = [one.support[0] - one.support[1] for one in found.contributions]
    assert gaps == sorted(gaps, reverse=True)  # what says most comes first


def test_silence_is_named_and_speaks_for_nobody() -> None:
    found = determine(VIEW, plant(shown(COLOUR, "green")))
    (told,) = found.contributions
    assert told.silent == (OTHER,)
    assert told.support == pytest.approx((0, 0))
    assert (found.wording, found.probability(TAXON)) == (Wording.INDET, pytest.approx(0.5))  # nobody is likelier


def test_support_stands_in_the_order_of_candidates() -> None:
    found = determine(VIEW, plant(measured(12, "spur length", stage="mature"), shown(SURFACE, "winged")))
    assert [one.taxon for one in found.candidates] == [OTHER, TAXON]
    assert all(one.support[0] > one.support[1] for one in found.contributions)
    assert {one.character: one.beyond for one in found.contributions} == {"spur length": (TAXON,), SURFACE: (TAXON,)}


def test_one_misfit_takes_the_plain_name_and_two_leave_affinity() -> None:
    """The other taxon fits even less, so that the probability stays high."""
    view = view_with(
        [f"{HEIGHT}: 10-20 mm", "leaf length: 10-20 mm", f"{SURFACE}: smooth"],
        [f"{HEIGHT}: 100-200 mm", "leaf length: 100-200 mm", f"{SURFACE}: winged"],
    )
    inside = determine(view, plant(measured(15), measured(15, "leaf length"), shown(SURFACE, "smooth")))
    one = determine(view, plant(measured(24), measured(15, "leaf length"), shown(SURFACE, "smooth")))
    two = determine(view, plant(measured(24), measured(24, "leaf length"), shown(SURFACE, "smooth")))
    assert [found.wording for found in (inside, one, two)] == [Wording.PLAIN, Wording.CF, Wording.AFF]
    assert [set(found.misfits) for found in (inside, one, two)] == [set(), {HEIGHT}, {HEIGHT, "leaf length"}]
    assert all(found.best == TAXON and found.probability(TAXON) > 0.95 for found in (inside, one, two))


def test_priors_are_weights() -> None:
    even = determine(VIEW, plant(measured(17)))
    weighted = determine(VIEW, plant(measured(17)), priors={TAXON: 1, OTHER: 9})
    odds = even.probability(OTHER) / even.probability(TAXON)
    assert weighted.probability(OTHER) / weighted.probability(TAXON) == pytest.approx(9 * odds)
    assert {one.taxon: one.prior for one in weighted.candidates} == pytest.approx({TAXON: 0.1, OTHER: 0.9})


@pytest.mark.parametrize("priors", [{}, {TAXON: 0.0}, {TAXON: -1.0, OTHER: 2.0}, {TAXON: float("nan")}])
def test_priors_that_are_none(priors: dict[str, float]) -> None:
    with pytest.raises(ValueError, match="priors are weights not below 0"):
        determine(VIEW, plant(measured(17)), priors=priors)


# --- what could not be used


def test_nothing_observed_is_not_determined() -> None:
    found = determine(VIEW, plant(), priors={TAXON: 3, OTHER: 1})
    assert (found.best, found.wording, found.contributions) == (None, Wording.INDET, ())
    assert found.probability(TAXON) == pytest.approx(0.75)


@pytest.mark.parametrize(
    ("seen", "why"),
    [
        (measured(5, "petal number"), "not stated of any candidate"),
        (measured(5, "spur length", stage="young"),
         "stated of other stages only (mature), and the character changes with age"),
        (measured(5, "spur length", stage=UNSTATED),
         "its growth stage is not known, and the character changes with age"),
    ],
)  # fmt: skip
def test_what_could_not_be_used_is_said(seen: object, why: str) -> None:
    found = determine(VIEW, plant(seen))  # type: ignore[arg-type]
    assert [one.why for one in found.unused] == [why]
    assert (found.best, found.wording) == (None, Wording.INDET)


def test_a_state_that_nobody_knows_is_said() -> None:
    """It is neither evidence for the first candidate nor swallowed."""
    found = determine(VIEW, plant(shown(SURFACE, "tuberculate")))
    assert [(one.character, one.why) for one in found.unused] == [
        (SURFACE, "neither stated of any candidate nor a state of the vocabulary")
    ]
    assert (found.best, found.wording, found.contributions) == (None, Wording.INDET, ())


def test_of_a_character_observed_twice_the_last_counts_and_the_first_is_said() -> None:
    twice = determine(VIEW, plant(measured(35), measured(12)))
    once = determine(VIEW, plant(measured(12)))
    assert twice.candidates == once.candidates
    assert [(one.said, one.why) for one in twice.unused] == [("35 mm", "observed more than once, and the last counts")]


# --- said and printed


@pytest.mark.parametrize(
    ("said", "value", "error"),
    [
        (f"{HEIGHT}=31 mm", "31", "0.5"),
        (f"{HEIGHT} = 31", "31", "0.5"),
        (f"{HEIGHT}=3.1 cm", "31", "0.5"),
        (f"{HEIGHT}=30–34 mm", "32", "2.5"),
        (f"{HEIGHT}=31.0 mm", "31", "0.05"),
        (f"{ASPECT}=S", "180", "22.5"),
        (f"{ASPECT}=180", "180", "0.5"),
        (f"{HEIGHT}=30-34", "32", "2.5"),
        (f"{HEIGHT}=3½ cm", "35", "2.5"),
        ("petal number=5", "5", "0.5"),
    ],
)
def test_said_of_one_plant(said: str, value: str, error: str) -> None:
    found = observed(VOCABULARY, said)
    assert (found.value, found.error) == (Fraction(value), Fraction(error))


def test_said_of_states_and_stages() -> None:
    assert observed(VOCABULARY, f"{SURFACE}=winged").states == (("winged", Fraction(1)),)
    assert observed(VOCABULARY, "spur length=31 mm", "young").stage == "young"
    assert observed(VOCABULARY, f"{HEIGHT}=31 mm", "young").stage == ""


@pytest.mark.parametrize(
    ("said", "error", "words"),
    [
        (HEIGHT, NotUnderstood, "names no value"),
        (f"{HEIGHT}=", NotUnderstood, "names no value"),
        ("stem hight=31 mm", UnknownCharacter, "stem hight"),
        (f"{HEIGHT}=over 30 mm", NotUnderstood, "a bound is no measurement"),
        (f"{COLOUR}=creem", Exception, "creem"),
        (f"{HEIGHT}=-3 mm", ImpossibleValue, "-3 mm"),
    ],
)
def test_not_understood(said: str, error: type[Exception], words: str) -> None:
    with pytest.raises(error, match=words):
        observed(VOCABULARY, said)


@pytest.mark.parametrize("said", ["31 mm", "31.0 mm", "3.1 cm", "120 mm", "0 mm", "0.25 mm"])
def test_printed_reads_back(said: str) -> None:
    """As the same value, with no more digits than were said."""
    once = observed(VOCABULARY, f"{HEIGHT}={said}")
    again = observed(VOCABULARY, f"{HEIGHT}={printed(once, VOCABULARY[HEIGHT])}")
    assert again.value == once.value
    assert again.error >= once.error


# --- what to look at next


def test_the_question_that_tells_most_comes_first() -> None:
    found = questions(VIEW, plant())
    assert found[0].character in ("spur length", SURFACE)
    assert [one.worth for one in found] == sorted((one.worth for one in found), reverse=True)
    assert all(LEAST_GAIN <= one.gain <= 1 for one in found)
    for one in found:
        assert 0.9 <= sum(each.chance for each in one.outcomes) <= 1 + 1e-9


def test_what_was_seen_is_not_asked_again_nor_what_cannot_be_looked_at() -> None:
    found = questions(VIEW, plant(measured(17)), without=(SURFACE,))
    assert {one.character for one in found}.isdisjoint({HEIGHT, SURFACE})


def test_of_a_character_split_by_stage_the_stage_counts() -> None:
    assert "spur length" not in {one.character for one in questions(VIEW, plant(), stages=("young",))}
    assert "spur length" in {one.character for one in questions(VIEW, plant(), stages=("mature",))}


def test_nothing_is_asked_where_nothing_is_open() -> None:
    assert questions(VIEW, plant(), priors={TAXON: 1}) == ()
    assert questions(replace(VIEW, tables={}), plant()) == ()


def test_trouble_counts() -> None:
    """A character that costs twice as much comes first only where it tells more than twice as much."""
    costly = replace(VOCABULARY[SURFACE], cost=4)  # type: ignore[arg-type]
    view = replace(VIEW, vocabulary={**VIEW.vocabulary, SURFACE: costly})  # type: ignore[arg-type]
    cheap = {one.character: one for one in questions(VIEW, plant())}
    dear = {one.character: one for one in questions(view, plant())}
    assert dear[SURFACE].gain == cheap[SURFACE].gain
    assert dear[SURFACE].worth == pytest.approx(cheap[SURFACE].worth / 4)


def test_outcomes_say_what_would_then_be_known() -> None:
    """Each outcome of a state is what determining the plant with it gives."""
    (asked,) = [one for one in questions(VIEW, plant()) if one.character == SURFACE]
    for outcome in asked.outcomes:
        found = determine(VIEW, plant(shown(SURFACE, outcome.state)))
        if found.best != outcome.taxon:  # as likely as another
            assert found.candidates[0].probability == pytest.approx(found.candidates[1].probability)
        assert outcome.probability == pytest.approx(found.candidates[0].probability)


def test_outcomes_of_numbers_are_stretches_that_lead_to_different_names() -> None:
    view = view_with([f"{HEIGHT}: 10-20 mm"], [f"{HEIGHT}: 40-60 mm"], [f"{HEIGHT}: 100-150 mm"], names=three_names())
    (asked,) = questions(view, plant())
    inner = [(one.low, one.high) for one in asked.outcomes]
    assert all(high is not None and low is not None and high <= low for (_, high), (low, _) in pairwise(inner))
    assert list(dict.fromkeys(one.taxon for one in asked.outcomes)) == list(view.taxa)
    for one in asked.outcomes:
        if one.low is not None and one.high is not None:
            middle = (one.low + one.high) / 2
            assert determine(view, plant(measured(middle))).best == one.taxon
