"""What every botanist takes for granted about agreement between descriptions (common practice, no source).

Each case goes the whole way, from the printed words of several works to the verdict.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest

from accounts import CHARACTERS, TAXON, Account, account, corpus_from
from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.findings import Finding, RangeAgreement, Span, StateAgreement, Verdict
from building import corpus_of

AUTHORS = ("Orrin", "Vane", "Pell", "Quist", "Thorne", "Ulm")


def works(character: str, *phrases: str, authors: tuple[str, ...] = AUTHORS, **more) -> list[Account]:
    """One work a phrase, ten years apart; a phrase for a growth stage says so itself."""
    return [
        replace(account(1900 + 10 * number, authors[number], f"{character}: {phrase}", **more), verbatim=True)
        for number, phrase in enumerate(phrases)
    ]


def findings(character: str, several: list[Account]) -> list[Finding]:
    return [one for one in diagnosis(corpus_from(several), TAXON).findings if one.character == character]


def finding(character: str, *phrases: str, authors: tuple[str, ...] = AUTHORS) -> Finding:
    (found,) = findings(character, works(character, *phrases, authors=authors))
    return found


def ranges(found: Finding) -> RangeAgreement:
    assert isinstance(found.agreement, RangeAgreement)
    return found.agreement


def span(low: int, high: int) -> Span:
    return Span(Fraction(low), Fraction(high))


@pytest.mark.parametrize(
    "phrases",
    [
        pytest.param(("leaves 10 cm long", "leaves 4 in. long"), id="10-cm-is-4-in"),
        pytest.param(("leaves 20 cm long", "leaves 8 in. long"), id="20-cm-is-8-in"),
        pytest.param(("leaves 10–20 cm long", "leaves 4–8 in. long"), id="and-so-is-the-range"),
        pytest.param(("leaves 25 mm long", "leaves 2.5 cm long", "leaves 1 in. long"), id="25-mm-is-an-inch"),
        pytest.param(("leaves 12 lines long", "leaves 1 in. long"), id="a-line-is-a-twelfth-of-an-inch"),
        pytest.param(("leaves 6 lines long", "leaves half an inch long", "leaves 12 mm long"), id="half-an-inch"),
        pytest.param(("leaves 30 cm long", "leaves 1 ft long"), id="a-foot-is-30-cm"),
        pytest.param(("leaves 8 mm long", "leaves 8.2 mm long"), id="8-mm-may-be-8.2"),
        pytest.param(("leaves 22–34 mm long", "leaves (18–)22–34(–41) mm long"), id="extremes-are-no-other-opinion"),
    ],
)
def test_the_same_said_in_other_words(phrases: tuple[str, ...]) -> None:
    found = finding("leaf length", *phrases)
    assert found.verdict is Verdict.UNANIMOUS
    for bound in (ranges(found).lower, ranges(found).upper):
        assert bound is not None
        assert bound.stable


@pytest.mark.parametrize(
    ("character", "phrases"),
    [
        pytest.param("leaf length", ("leaves 8.0 mm long", "leaves 8.2 mm long"), id="a-printed-nought-is-precision"),
        pytest.param("leaf length", ("leaves 10 lines long", "leaves 10 mm long"), id="lines-are-no-millimetres"),
        pytest.param("leaf length", ("leaves 10 cm long", "leaves 10 in. long"), id="nor-are-inches-centimetres"),
        pytest.param("petal number", ("petals 4", "petals 5"), id="four-and-five-are-not-four-and-a-half"),
        pytest.param("leaf length", ("leaves 22–34(–41) mm long", "leaves 38–50 mm long"), id="extremes-make-no-peace"),
        pytest.param("spur colour", ("spur green", "spur ivory"), id="ends-of-a-spectrum"),
    ],
)
def test_what_is_apart(character: str, phrases: tuple[str, ...]) -> None:
    assert finding(character, *phrases).verdict is Verdict.CONFLICTING


def test_up_to_15_cm_does_not_contradict_the_lower_bound_of_10_to_20_cm() -> None:
    found = finding("leaf length", "leaves 10–20 cm long", "leaves to 15 cm long")
    assert found.verdict is Verdict.CONSISTENT
    assert ranges(found).core == span(100, 150)
    assert ranges(found).lower is not None
    assert (ranges(found).lower.stated, ranges(found).lower.stable) == (1, True)


def test_a_range_that_three_works_take_from_one_another_is_one_piece_of_evidence() -> None:
    said = works("leaf length", "leaves 22–34 mm long", "leaves 22–34 mm long", "leaves 2.2–3.4 cm long")
    copied = [said[0], replace(said[1], cites=("orrin-1900",)), replace(said[2], cites=("vane-1910",))]
    other = replace(works("leaf length", "leaves 30–44 mm long")[0], year=1950, author="Ulm")
    (found,) = findings("leaf length", [*copied, other])
    assert (found.count.works, found.count.independent, found.count.repeated) == (4, 2, 2)
    assert sum(item.weight for item in found.evidence) == 2
    assert [step.share for step in ranges(found).coverage] == [Fraction(1, 2), 1, Fraction(1, 2)]
    (alone,) = findings("leaf length", copied)
    assert alone.verdict is Verdict.SINGLE
    (each,) = findings("leaf length", said)
    assert (each.verdict, each.count.independent) == (Verdict.UNANIMOUS, 3)


def test_an_author_who_only_says_that_the_spur_is_long_is_silent_on_its_length() -> None:
    several = works("spur length", "mature spur 22–34 mm long", "spur long")
    corpus, problems = corpus_of(*(one.file() for one in several), characters=CHARACTERS)
    assert any("no value of `spur length` in “spur long”: they hold no figure" in one for one in problems)
    (found,) = [one for one in diagnosis(corpus, TAXON).findings if one.character == "spur length"]
    assert (found.verdict, found.count.works) == (Verdict.SINGLE, 1)
    assert found.silent == ("vane-1910",)


def test_young_and_grown_parts_are_not_compared() -> None:
    several = works("spur length", "spur 4–6 mm long when young", "mature spur 22–34 mm long")
    young, grown = findings("spur length", several)
    assert (young.stage, young.verdict) == ("young", Verdict.SINGLE)
    assert (grown.stage, grown.verdict) == ("mature", Verdict.SINGLE)


def test_two_books_of_one_author_are_one_opinion() -> None:
    found = finding("leaf length", "leaves 22–34 mm long", "leaves 24–33 mm long", authors=("Orrin", "Orrin"))
    assert found.verdict is Verdict.SINGLE


def test_directions_on_both_sides_of_north_meet_there() -> None:
    found = finding("aspect", "NW to N", "N to NE")
    assert found.verdict is Verdict.CONSISTENT
    core = ranges(found).core
    assert core is not None
    assert (core.low % 360, core.high % 360) == (0, 0)


def test_from_green_to_ivory_takes_in_the_cream_between() -> None:
    found = finding("spur colour", "spur green to ivory", "spur cream")
    assert found.verdict is Verdict.CONSISTENT
    assert isinstance(found.agreement, StateAgreement)
    assert found.agreement.core == ("cream",)


def test_one_odd_figure_moves_the_envelope_and_not_the_majority() -> None:
    usual = ("leaves 22–34 mm long", "leaves 24–33 mm long", "leaves 20–35 mm long")
    before, after = (ranges(finding("leaf length", *said)) for said in (usual, (*usual, "leaves 60–80 mm long")))
    assert (before.envelope, after.envelope) == (span(20, 35), span(20, 80))
    assert before.majority == after.majority == (span(22, 34),)
    assert (before.core, after.core) == (span(24, 33), None)
