"""Verdicts, remarks and sides, from records to sentences."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.findings import Verdict
from auctorum.circumscription.summary import summary
from building import corpus_of

CHARACTERS = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm, stages: [young, mature]}
- {name: petal number, structure: petal, property: count, kind: count}
- name: spur colour
  structure: spur
  property: colour
  kind: ordered
  states: [{name: green}, {name: cream}, {name: ivory}, {name: buff}]
- name: seed surface
  structure: seed
  property: surface
  kind: nominal
  states: [{name: smooth}, {name: reticulate}]
- {name: aspect, structure: habitat, property: aspect, kind: angle, unit: degree}
"""
ACTS = "acts:\n- {name: Exemplum, act: new taxon}\n- {name: Exemplum album, act: new taxon}\n"


def said(character: str, *phrases: str | None, same_author: bool = False):
    """The finding about one character from one treatment a phrase, ten years apart; None is silence."""
    texts = []
    for number, phrase in enumerate(phrases):
        year, family = 1900 + 10 * number, "Orrin" if same_author else "ABCDEFGHIJKL"[number] + "ell"
        trait = f'[{{character: {character}, verbatim: "{phrase}"}}]' if phrase else "[]"
        texts.append(
            f'work: {{id: w-{year}, type: book, author: [{{family: {family}}}], issued: "{year}", title: T}}\n'
            + (ACTS if number == 0 else "")
            + f"treatments:\n- {{taxon: Exemplum album, traits: {trait}}}\n"
        )
    corpus, problems = corpus_of(*texts, characters=CHARACTERS)
    assert problems == []
    found = diagnosis(corpus, "exemplum-album")
    findings = [one for one in found.findings if one.character == character]
    return findings[0], corpus.vocabulary[character], found


@pytest.mark.parametrize(
    ("character", "phrases", "verdict", "core", "majority", "envelope"),
    [
        pytest.param("spur length", [None], Verdict.SILENT, "–", "–", "–", id="silent"),
        pytest.param("spur length", ["22-34 mm"], Verdict.SINGLE, "22–34 mm", "22–34 mm", "22–34 mm", id="single"),
        pytest.param(
            "spur length",
            ["22-34 mm", "22–34 mm"],
            Verdict.UNANIMOUS,
            "22–34 mm",
            "22–34 mm",
            "22–34 mm",
            id="unanimous",
        ),
        # Trade facts (common practice, no source): 10 cm and 4 in, 20 cm and 8 in are the same bound.
        pytest.param(
            "spur length",
            ["10-20 cm", "4-8 in."],
            Verdict.UNANIMOUS,
            "100–200 mm",
            "100–200 mm",
            "100–200 mm",
            id="inches-and-centimetres",
        ),
        pytest.param(
            "spur length",
            ["22-34 mm", "24–30 mm", "20–41 mm"],
            Verdict.CONSISTENT,
            "24–30 mm",
            "22–34 mm",
            "20–41 mm",
            id="nested",
        ),
        pytest.param("spur length", ["to 15 cm", "10-20 cm"], Verdict.CONSISTENT, "100–150 mm", None, None, id="up-to"),
        pytest.param(
            "spur length",
            ["12-15 mm", "22-34 mm"],
            Verdict.CONFLICTING,
            "–",
            "12–15 mm; 22–34 mm",
            "12–34 mm",
            id="apart",
        ),
        pytest.param(
            "spur length",
            ["22-30 mm", "22-32 mm", "22-34 mm", "22-36 mm", "22-38 mm"],
            Verdict.DRIFTING,
            "22–30 mm",
            "22–34 mm",
            "22–38 mm",
            id="drifting",
        ),
        pytest.param("petal number", ["5", "5", "5"], Verdict.UNANIMOUS, "5", "5", "5", id="count"),
        pytest.param(
            "spur colour",
            ["green to ivory", "cream"],
            Verdict.CONSISTENT,
            "cream",
            "green to ivory",
            "green to ivory",
            id="span",
        ),
        pytest.param(
            "spur colour",
            ["green", "ivory"],
            Verdict.CONFLICTING,
            "–",
            "green or ivory",
            "green or ivory",
            id="colours",
        ),
        pytest.param(
            "seed surface", ["smooth", "smooth"], Verdict.UNANIMOUS, "smooth", "smooth", "smooth", id="states"
        ),
        pytest.param(
            "aspect",
            ["facing NW to N", "facing N to NE"],
            Verdict.CONSISTENT,
            "N",
            "NW to NE",
            "NW to NE",
            id="across-north",
        ),
        pytest.param("aspect", ["facing N", "facing S"], Verdict.CONFLICTING, "–", None, None, id="opposite"),
    ],
)
def test_verdict(character, phrases, verdict, core, majority, envelope) -> None:
    finding, vocabulary_entry, _ = said(character, *phrases)
    assert finding.verdict is verdict
    line = summary(finding, vocabulary_entry)
    assert line.core == core
    if majority is not None:
        assert (line.majority, line.envelope) == (majority, envelope)


@pytest.mark.parametrize(
    ("character", "phrases", "remark"),
    [
        pytest.param(
            "spur length",
            ["22-30 mm", "⅞–1¼ in.", "22-34 mm", "2.2–3.6 cm", "22-38 mm"],
            "The lower bound never moved: 22 mm in all 5 works, within stated precision, 1900 to 1940.",
            id="stable",
        ),
        pytest.param(
            "spur length",
            ["22-30 mm", "22-32 mm", "22-34 mm", "22-36 mm", "22-38 mm"],
            "The upper bound rose from 30 mm (Aell 1900) to 38 mm (Eell 1940); tau 1.00, p 0.017.",
            id="rose",
        ),
        pytest.param(
            "spur length",
            ["22-38 mm", "24-36 mm", "21-30 mm"],
            "Too few works (3) state the bounds to judge a trend.",
            id="too-few",
        ),
        pytest.param(
            "spur length",
            ["22-34 mm", "12-15 mm", "20-30 mm"],
            "Aell 1900 (22–34 mm) and Bell 1910 (12–15 mm) are 7 mm apart; such a gap has stood since 1910.",
            id="apart-widest-pair",
        ),
        pytest.param(
            "spur length",
            ["3-4 lines", "6-8 lines"],
            "Aell 1900 (6–8 mm) and Bell 1910 (13–17 mm) are 5 mm apart; such a gap has stood since 1910.",
            id="apart-in-lines",
        ),
        pytest.param(
            "spur colour",
            ["green or cream", "cream", "cream to buff"],
            "All 3 authors allow cream; 1 green (Aell 1900), 1 ivory (Cell 1920), 1 buff (Cell 1920).",
            id="states-counted",
        ),
        pytest.param(
            "spur length",
            ["22-30 mm", "22-38 mm", "22-31 mm", "22-37 mm", "22-32 mm"],
            "The upper bound varies from 30 mm (Aell 1900) to 38 mm (Bell 1910) without a clear trend; "
            "tau 0.20, p 0.82.",
            id="to-and-fro",
        ),
        pytest.param(
            "spur length",
            ["22-34 mm", "24-34 mm", "to 34 mm"],
            "The upper bound never moved: 34 mm in all 3 works, 1900 to 1920.",
            id="open-below",
        ),
        pytest.param("petal number", ["5", "5"], "The figure never moved: 5 in both works, 1900 to 1910.", id="figure"),
        pytest.param(
            "spur length",
            ["12-15(-22) mm", "(20-)22-34 mm"],
            "Aell 1900 (12–15 mm) and Bell 1910 (22–34 mm) are 7 mm apart, though the extremes they give meet; "
            "such a gap has stood since 1910.",
            id="extremes-meet",
        ),
        pytest.param(
            "aspect",
            ["facing N", "facing NE to E"],
            "Aell 1900 (N) and Bell 1910 (NE to E) are 45° apart; such a gap has stood since 1910.",
            id="directions-apart",
        ),
        pytest.param(
            "spur colour",
            ["green", "green to cream", "cream to ivory", "ivory", "ivory to buff", "buff"],
            "Aell 1900 (green) and Cell 1920 (cream or ivory) have no state in common; "
            "authors have differed so since 1920.",
            id="colours-apart",
        ),
        pytest.param(
            "spur colour",
            ["ivory", "ivory", "cream to ivory", "cream to ivory", "green to ivory", "green to buff"],
            "The first state along the spectrum moved from ivory (Aell 1900) to green (Fell 1950); tau −0.89, p 0.022.",
            id="colours-drift",
        ),
        pytest.param("seed surface", ["smooth", "smooth"], "Both authors say smooth.", id="same-states"),
    ],
)
def test_remarks(character: str, phrases: list[str], remark: str) -> None:
    finding, _, _ = said(character, *phrases)
    assert remark in finding.remarks


def test_sides_name_the_works_and_leave_out_who_meets_both() -> None:
    finding, _, _ = said("spur length", "12-15 mm", "22-34 mm", "13-30 mm", "11-14 mm")
    assert [(side.says, side.works) for side in finding.sides] == [
        ("11–15 mm", ("w-1900", "w-1930")),
        ("22–34 mm", ("w-1910",)),
    ]


def test_three_sides() -> None:
    finding, _, _ = said("petal number", "5", "8", "5", "12-13", "8-9")
    assert [(side.says, side.works) for side in finding.sides] == [
        ("5", ("w-1900", "w-1920")),
        ("8–9", ("w-1910", "w-1940")),
        ("12–13", ("w-1930",)),
    ]


def test_states_without_a_core_conflict_though_every_two_share_one() -> None:
    finding, _, _ = said("spur colour", "green or cream", "cream or ivory", "green or ivory")
    assert finding.verdict is Verdict.CONFLICTING
    assert finding.remarks[0] == "No state is allowed by all, though every two share one."
    assert len(finding.sides) == 3


def test_one_author_twice_is_one_author() -> None:
    finding, _, _ = said("spur length", "22-34 mm", "30-41 mm", same_author=True)
    assert finding.verdict is Verdict.SINGLE


def test_like_stages_only_are_compared() -> None:
    _, _, found = said("spur length", "22-34 mm, when young 9-12 mm", "22-36 mm")
    stages = {
        one.stage: [len(one.evidence), str(one.verdict)] for one in found.findings if one.character == "spur length"
    }
    assert stages == {"young": [1, "single author"], "mature": [2, "consistent"]}


def test_silence_is_named() -> None:
    finding, _, _ = said("spur length", "22-34 mm", None, "22-36 mm")
    assert finding.silent == ("w-1910",)


def test_only_chosen_works() -> None:
    _, _, found = said("spur length", "22-34 mm", "30-41 mm")
    assert found.works == ("w-1900", "w-1910")


@settings(deadline=None, max_examples=40)
@given(st.lists(st.tuples(st.integers(1, 30), st.integers(0, 12)), min_size=2, max_size=6))
def test_core_lies_in_majority_lies_in_envelope(pairs) -> None:
    finding, _, _ = said("spur length", *(f"{low}-{low + more} mm" for low, more in pairs))
    agreed = finding.agreement
    assert (agreed.core is None) is (max(low for low, _ in pairs) > min(low + more for low, more in pairs))
    # Three single values are held by a third each: no majority.
    assert not agreed.majority or agreed.majority[0].low >= agreed.envelope.low
    assert not agreed.majority or agreed.majority[-1].high <= agreed.envelope.high
