"""Sentences on a determination, made by hand so that each says what its figures say."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.determination.asking import Outcome, Question
from auctorum.determination.model import Candidate, Contribution, Determination, Wording
from auctorum.determination.telling.outcome_words import changes, outcomes
from auctorum.determination.telling.words import (
    candidates_line,
    headline,
    percent,
    silence,
    telling,
    times,
    told_apart,
    why,
)
from auctorum.records.schema import Thresholds

NAMES = {"a": "E. album", "n": "E. nigrum", "r": "E. rubrum"}
FULL = {"a": "Exemplum album", "n": "Exemplum nigrum", "r": "Exemplum rubrum"}
SPUR = Character("spur length", "spur", "length", Kind.MEASURE, "mm")
PETALS = Character("petal number", "petal", "count", Kind.COUNT)
COLOUR = Character("spur colour", "spur", "colour", Kind.ORDERED, states=(State("green"), State("ivory")))
ASPECT = Character("aspect", "habitat", "aspect", Kind.ANGLE, "degree")


def said(*support: float, silent: str = "", beyond: str = "", stage: str = "") -> Contribution:
    return Contribution("spur length", stage, "31 mm", support, tuple(silent), tuple(beyond))


def found(
    *chances: float, wording: Wording = Wording.CF, told: tuple[Contribution, ...] = (said(0.0, 0.0, 0.0),),
    misfits: tuple[str, ...] = (),
) -> Determination:  # fmt: skip
    several = tuple(Candidate(taxon, 1 / len(chances), one) for taxon, one in zip("anr", chances, strict=False))
    return Determination("all authors", several, told, (), wording, "a" if told else None, misfits)


@pytest.mark.parametrize(
    ("wording", "chances", "printed"),
    [
        pytest.param(Wording.PLAIN, (0.97, 0.02, 0.01), "Exemplum album — 97 %", id="plain"),
        pytest.param(
            Wording.CF, (0.9499, 0.05, 0.01), "Exemplum cf. album — 94 %", id="rounded-down-as-thresholds-are"
        ),
        pytest.param(Wording.AFF, (0.999, 0.001, 0.0), "Exemplum aff. album — over 99 %", id="never-a-hundred"),
        pytest.param(
            Wording.INDET, (0.45, 0.3, 0.25), "Exemplum indet. — Exemplum album is likeliest, 45 %", id="indet"
        ),
        pytest.param(
            Wording.INDET, (0.4, 0.4, 0.2), "Exemplum indet. — no candidate is likelier than another", id="tie"
        ),
        pytest.param(Wording.PLAIN, (1.0,), "Exemplum album — the only candidate", id="alone"),
    ],
)
def test_headline(wording: Wording, chances: tuple[float, ...], printed: str) -> None:
    assert headline(found(*chances, wording=wording), FULL, "Exemplum") == printed


def test_nothing_to_go_by() -> None:
    nothing = found(0.4, 0.3, 0.3, told=(), wording=Wording.INDET)
    assert headline(nothing, FULL, "Exemplum") == "Exemplum indet. — nothing to go by"
    assert headline(nothing, FULL) == "plant indet. — nothing to go by"  # candidates of several genera
    assert why(nothing, Thresholds()).startswith("Nothing that was observed could be used")
    assert candidates_line(nothing, NAMES) == "3 candidates, none likelier by what was observed"


@pytest.mark.parametrize(
    ("determination", "sentence"),
    [
        pytest.param(found(0.9, 0.05, 0.05), "`cf.`, to be compared: a name is given plainly from 95 % on.", id="cf"),
        pytest.param(
            found(0.6, 0.3, 0.1, wording=Wording.AFF), "`aff.`, near it: `cf.` begins at 80 %.", id="aff"
        ),
        pytest.param(
            found(0.4, 0.3, 0.3, wording=Wording.INDET),
            "`indet.`, not determined: no candidate reaches 50 %.", id="indet",
        ),
        pytest.param(
            found(0.99, 0.01, 0.0, misfits=("spur length",)),
            "Spur length lies outside all that is stated of it: `cf.` at most, to be compared.", id="one-misfit",
        ),
        pytest.param(
            found(0.99, 0.01, 0.0, misfits=("spur length", "aspect"), wording=Wording.AFF),
            "Spur length and aspect lie outside all that is stated of it: `aff.` at most, near it and not quite it.",
            id="two-misfits",
        ),
        pytest.param(
            found(0.7, 0.2, 0.1, told=(said(1.0, 0.0, 0.0, beyond="an", silent="r"),), misfits=("spur length",)),
            "What was observed of spur length lies outside all that is stated of any candidate: look at it and at its "
            "unit again, or the plant is none of them.",
            id="nonsense",
        ),
        pytest.param(
            found(1.0, wording=Wording.PLAIN, told=(said(0.0),)),
            "No other taxon was considered, so this says only that nothing observed speaks against it.", id="alone",
        ),
    ],
)  # fmt: skip
def test_why(determination: Determination, sentence: str) -> None:
    assert why(determination, Thresholds()) == sentence


@pytest.mark.parametrize(
    ("contribution", "sentence"),
    [
        pytest.param(
            said(0.3, 0.0, 0.0), "spur length 31 mm: says little between E. album and E. nigrum.", id="little"
        ),
        pytest.param(
            said(0.7, 0.0, 0.0),
            "spur length 31 mm: speaks a little for E. album (2 times as likely as in E. nigrum).", id="a-little",
        ),
        pytest.param(
            said(1.6094, 0.0, 0.0),
            "spur length 31 mm: speaks clearly for E. album (5 times as likely as in E. nigrum).", id="clearly",
        ),
        pytest.param(
            said(0.0, 3.0, 0.0),
            "spur length 31 mm: speaks strongly for E. nigrum (20 times as likely as in E. album).", id="for-the-next",
        ),
        pytest.param(
            said(9.0, 0.0, 0.0, beyond="r", stage="young"),
            "young spur length 31 mm: speaks very strongly for E. album (more than 1000 times as likely as in E. "
            "nigrum); outside all that is stated of E. rubrum.",
            id="very-strongly",
        ),
        pytest.param(
            said(0.0, 0.0, 0.0, silent="n", beyond="a"),
            "spur length 31 mm: says little between E. album and E. rubrum; outside all that is stated of E. album "
            "itself.",
            id="beside-the-next-that-it-is-stated-of",
        ),
        pytest.param(
            said(1.6094, 0.0, 0.0, silent="nr"),
            "spur length 31 mm: speaks clearly for E. album (5 times as likely as in E. nigrum); nothing is stated of "
            "it for E. nigrum, where the mean of the others stands in.",
            id="stated-of-no-other",
        ),
        pytest.param(
            said(0.0, 0.0, 0.0, beyond="anr"),
            "spur length 31 mm: outside all that is stated of any candidate, so it tells none from another.",
            id="outside-everything",
        ),
    ],
)  # fmt: skip
def test_telling(contribution: Contribution, sentence: str) -> None:
    assert telling(contribution, found(0.9, 0.05, 0.05), NAMES) == sentence


def test_silence_of_the_next_is_told_once() -> None:
    told = (said(1.0, 0.0, 0.0, silent="n"), said(0.5, 0.0, 0.0))
    sentence = "For E. nigrum, the next candidate, nothing is stated of spur length: the mean of the others stands in."
    assert silence(found(0.9, 0.05, 0.05, told=told), NAMES) == sentence
    assert silence(found(0.9, 0.05, 0.05), NAMES) == silence(found(1.0), NAMES) == ""


def outcome(taxon: str, chance: float, low: str | None = None, high: str | None = None, state: str = "",
            probability: float = 0.97, wording: Wording = Wording.PLAIN) -> Outcome:  # fmt: skip
    ends = [None if one is None else Fraction(one) for one in (low, high)]
    return Outcome(ends[0], ends[1], state, chance, taxon, probability, wording)


@pytest.mark.parametrize(
    ("character", "several", "printed"),
    [
        pytest.param(
            SPUR,
            [
                outcome("a", 0.5, "13.125", "18.389"),
                outcome("n", 0.3, None, "10.451"),
                outcome("a", 0.2, "24.4", "30.2"),
            ],
            ["13–18 mm or 24–30 mm (70 %): E. album, 97 %", "up to 10 mm (30 %): E. nigrum, 97 %"],
            id="one-result-together",
        ),
        pytest.param(
            PETALS,
            [outcome("a", 0.6, "4.5", "8.5"), outcome("n", 0.4, None, "4.5", probability=0.4, wording=Wording.INDET)],
            ["5–8 (60 %): E. album, 97 %", "up to 4 (40 %): E. nigrum likeliest, 40 %"],
            id="counts-are-whole",
        ),
        pytest.param(
            COLOUR,
            [outcome("a", 0.9, state="green", probability=0.85, wording=Wording.CF), outcome("n", 0.1, state="ivory")],
            ["green (90 %): E. cf. album, 85 %", "ivory (10 %): E. nigrum, 97 %"],
            id="states",
        ),
        pytest.param(
            ASPECT,
            [outcome("a", 0.9, "99", "255"), outcome("n", 0.1, "285", None)],
            ["E to WSW (90 %): E. album, 97 %", "WNW to N (10 %): E. nigrum, 97 %"],
            id="directions",
        ),
    ],
)
def test_outcomes(character: Character, several: list[Outcome], printed: list[str]) -> None:
    asked = Question(character.name, "", 0.5, 1.0, tuple(several))
    assert list(outcomes(asked, found(0.9, 0.05, 0.05), character, NAMES)) == printed


def test_an_outcome_does_not_undo_what_lies_outside() -> None:
    """With one character outside all that is stated of a taxon, no other makes its name plain."""
    now = found(0.9, 0.05, 0.05, told=(said(0.0, 0.0, 0.0, beyond="a"),), misfits=("spur length",))
    asked = Question("spur colour", "", 0.5, 1.0, (outcome("a", 0.9, state="green"), outcome("n", 0.1, state="ivory")))
    assert outcomes(asked, now, COLOUR, NAMES)[0] == "green (90 %): E. cf. album, 97 %"


def test_only_questions_that_may_change_the_name() -> None:
    same = Question("x", "", 0.1, 1.0, (outcome("a", 1.0, state="green"),))
    other = Question("y", "", 0.1, 1.0, (outcome("a", 0.9, state="green"), outcome("n", 0.1, state="ivory")))
    assert changes((same, other), found(0.97, 0.02, 0.01, wording=Wording.PLAIN)) == (other,)
    assert changes((same, other), found(0.9, 0.05, 0.05)) == (same, other)  # it would be given plainly


@given(st.floats(0, 1))
@settings(deadline=None, max_examples=200)
def test_percent_never_says_more_than_is_so(probability: float) -> None:
    """What is printed as a whole percentage is at most the probability, and never 0 or 100."""
    printed = percent(probability)
    number = int(printed.removeprefix("over ").removeprefix("under ").removesuffix(" %"))
    assert 1 <= number <= 99
    if printed.startswith("under"):
        assert probability < 0.01
    else:
        assert number <= probability * 100 + 1e-4 < number + 1.001


@given(st.floats(1.0, 1e9))
@settings(deadline=None, max_examples=200)
def test_times_is_near_the_factor(factor: float) -> None:
    printed = times(factor)
    assert printed.endswith(" times")
    if not printed.startswith("more"):
        assert abs(float(printed.removesuffix(" times")) - factor) <= max(0.06, 0.26 * factor)


@given(st.lists(st.floats(0, 1), min_size=1, max_size=20))
@settings(deadline=None, max_examples=100)
def test_every_candidate_is_listed_or_summed_up(chances: list[float]) -> None:
    several = tuple(Candidate(str(n), 0.0, one) for n, one in enumerate(sorted(chances, reverse=True)))
    shown, rest = told_apart(several)
    assert (*shown, *rest) == several and 1 <= len(shown) <= 8
    assert all(one.probability >= 0.01 for one in shown[1:])
