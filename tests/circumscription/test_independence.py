"""Who repeats whom, case by case."""

from __future__ import annotations

import json
from fractions import Fraction

import pytest

from accounts import CHARACTERS, TAXON, Account, account, corpus_from
from auctorum.circumscription.diagnosis import diagnosis
from auctorum.circumscription.findings import RangeAgreement, Span, Verdict
from auctorum.circumscription.independence import Tie, lineage, suspects
from building import corpus_of

LENGTH, HEIGHT, LEAF = "spur length [mature]: 22–34 mm", "stem height: 10 cm", "leaf length: 30–50 mm"
PETALS, COLOUR = "petal number: 5", "spur colour: ivory"
FIVE = (LENGTH, HEIGHT, LEAF, PETALS, COLOUR)
PUBLISHED = {"name": "Exemplum album", "act": "new taxon"}
GENUS = {"name": "Exemplum", "act": "new taxon"}


def first(*said: str, author: str = "Orrin", acts=()) -> Account:
    return account(1900, author, *said, acts=acts)


def sources(*works: Account, asked: tuple[str, ...] | None = None, settings: str = "title: Test\n") -> dict[str, str]:
    """Character by work: `orrin-1900` for a repetition of it; statements of a work's own are left out."""
    found = diagnosis(corpus_from(works, settings=settings), TAXON, works=asked)
    return {
        f"{item.work}: {finding.character}": item.repeats
        for finding in found.findings
        for item in finding.evidence
        if item.repeats
    }


def lines(*works: Account):
    corpus = corpus_from(works)
    return lineage(corpus, [corpus.treatments[one] for one in corpus.taxa[TAXON].treatments]).lines


def pairs_suspected(*works: Account) -> list[tuple[str, str]]:
    corpus = corpus_from(works)
    treatments = [corpus.treatments[one] for one in corpus.taxa[TAXON].treatments]
    return [(line.later, line.earlier) for line in suspects(corpus, treatments)]


# --- what shows that a work repeats another


def test_declared_what_is_equal_is_repeated_and_the_rest_is_its_own() -> None:
    later = account(1920, "Vane", LENGTH, "stem height: 30 cm", "leaf length: 80–90 mm", follows=["orrin-1900"])
    assert sources(first(*FIVE), later) == {"vane-1920: spur length": "orrin-1900"}
    (line,) = lines(first(*FIVE), later)
    assert (line.tie, len(line.shared), len(line.equal)) == (Tie.DECLARED, 3, 1)


def test_declared_and_nothing_equal() -> None:
    assert lines(first(*FIVE), account(1920, "Vane", "stem height: 30 cm", follows=["orrin-1900"])) == ()


@pytest.mark.parametrize(
    ("said", "repeated"),
    [
        pytest.param((LENGTH, HEIGHT, "leaf length: 80–90 mm"), ["spur length", "stem height"], id="2-of-3"),
        pytest.param((LENGTH, "stem height: 30 cm", "leaf length: 80–90 mm"), [], id="1-of-3"),
        pytest.param((LENGTH, HEIGHT, LEAF), ["spur length", "stem height", "leaf length"], id="3-of-3"),
        pytest.param((LENGTH, HEIGHT, "leaf length: 80–90 mm", "petal number: 6"), [], id="2-of-4"),
        pytest.param((LENGTH,), ["spur length"], id="1-of-1"),
        pytest.param(("spur colour: green",), [], id="0-of-1"),
        pytest.param(("seed surface: smooth",), [], id="nothing-in-common"),
        pytest.param((LENGTH, HEIGHT, "leaf length: 80–90 mm", "seed surface: smooth"), ["spur length", "stem height"],
                     id="2-of-3-and-one-that-the-earlier-lacks"),
    ],
)  # fmt: skip
def test_cited(said: tuple[str, ...], repeated: list[str]) -> None:
    found = sources(first(*FIVE), account(1920, "Vane", *said, cites=["orrin-1900"]))
    assert found == {f"vane-1920: {character}": "orrin-1900" for character in repeated}


def test_whom_a_work_follows_for_another_taxon_it_has_read() -> None:
    """As if it cited it: two thirds have to be equal. What rests on own material stands for itself."""

    def found(basis: str):
        later = json.loads(account(1920, "Vane", LENGTH, HEIGHT, "leaf length: 80–90 mm", basis=basis).file())
        later["treatments"].append({"taxon": "Exemplum rubrum", "follows": ["orrin-1900"], "traits": []})
        corpus, _ = corpus_of(first(*FIVE).file(), json.dumps(later), characters=CHARACTERS)
        treatments = [corpus.treatments[one] for one in corpus.taxa[TAXON].treatments]
        return [(line.tie, len(line.shared), len(line.equal)) for line in lineage(corpus, treatments).lines]

    assert (found("compiled"), found("own material")) == ([(Tie.CITED, 3, 2)], [])


def test_works_of_one_author_know_each_other() -> None:
    again = account(1920, "Orrin", LENGTH, HEIGHT, "leaf length: 80–90 mm")
    assert sources(first(*FIVE), again) == {
        "orrin-1920: spur length": "orrin-1900",
        "orrin-1920: stem height": "orrin-1900",
    }
    assert sources(first(*FIVE), account(1920, "Vane", LENGTH, HEIGHT, LEAF)) == {}


@pytest.mark.parametrize(
    ("said", "basis", "repeated"),
    [
        pytest.param((LENGTH, HEIGHT, LEAF), "unstated", 3, id="three-characters"),
        pytest.param((LENGTH, HEIGHT, "leaf length: 80–90 mm"), "compiled", 2, id="two-of-three"),
        pytest.param((LENGTH, HEIGHT), "unstated", 0, id="two-characters-show-nothing"),
        pytest.param((LENGTH, HEIGHT, LEAF, PETALS), "own material", 0, id="own-material-stands-for-itself"),
    ],
)
def test_the_work_that_published_the_name(said: tuple[str, ...], basis: str, repeated: int) -> None:
    protologue = first(*FIVE, acts=[GENUS, PUBLISHED])
    found = sources(protologue, account(1920, "Vane", *said, basis=basis))
    assert list(found.values()) == ["orrin-1900"] * repeated


def test_own_material_does_not_undo_what_is_declared_or_cited() -> None:
    for known in ({"follows": ["orrin-1900"]}, {"cites": ["orrin-1900"]}):
        later = account(1920, "Vane", LENGTH, HEIGHT, LEAF, basis="own material", **known)
        assert len(sources(first(*FIVE), later)) == 3


def test_a_new_combination_is_of_the_plant_of_its_basionym() -> None:
    """Who uses the combination cites, in the parenthesis, whoever published the epithet (ICN Art. 49.1)."""
    protologue = account(
        1900, "Orrin", *FIVE, name="Exemplum album var. longum",
        acts=[GENUS, PUBLISHED, {"name": "Exemplum album var. longum", "act": "new taxon"}],
    )  # fmt: skip
    raised = account(
        1910, "Pell", PETALS, name="Exemplum longum",
        acts=[{"name": "Exemplum longum", "act": "change of rank", "basionym": "Exemplum album var. longum"}],
    )  # fmt: skip
    later = account(1920, "Vane", LENGTH, HEIGHT, LEAF, name="Exemplum longum")
    works = [one.file().replace('"exemplum-album"', '"Exemplum album"') for one in (protologue, raised, later)]
    corpus, _ = corpus_of(*works, characters=CHARACTERS)
    (taxon,) = corpus.taxa.values()
    found = diagnosis(corpus, taxon.id)
    assert {item.repeats for one in found.findings for item in one.evidence if item.work == "vane-1920"} == {
        "orrin-1900"
    }


def test_only_an_earlier_work_is_repeated() -> None:
    early = account(1900, "Orrin", LENGTH, HEIGHT, LEAF, follows=["vane-1920"], cites=["vane-1920"])
    corpus, problems = corpus_of(
        early.file(), account(1920, "Vane", LENGTH, HEIGHT, LEAF).file(), characters=CHARACTERS
    )
    assert any("published only later" in one for one in problems)
    assert lineage(corpus, corpus.treatments.values()).lines == ()


# --- copies of copies, and works chosen

CHAIN = (
    first(*FIVE),
    account(1920, "Vane", LENGTH, "stem height: 30 cm", follows=["orrin-1900"]),
    account(1940, "Pell", LENGTH, "stem height: 30 cm", follows=["vane-1920"]),
)


def test_a_copy_of_a_copy() -> None:
    assert sources(*CHAIN) == {
        "vane-1920: spur length": "orrin-1900",
        "pell-1940: spur length": "vane-1920",
        "pell-1940: stem height": "vane-1920",
    }


@pytest.mark.parametrize(
    ("asked", "found"),
    [
        pytest.param(("orrin-1900", "pell-1940"), {"pell-1940: spur length": "orrin-1900"}, id="without-the-middle"),
        pytest.param(
            ("vane-1920", "pell-1940"),
            {"pell-1940: spur length": "vane-1920", "pell-1940: stem height": "vane-1920"},
            id="without-the-original",
        ),
        pytest.param(("pell-1940",), {}, id="the-copy-alone-speaks"),
    ],
)
def test_of_the_works_asked(asked: tuple[str, ...], found: dict[str, str]) -> None:
    assert sources(*CHAIN, asked=asked) == found


def test_two_copies_of_an_original_that_is_not_asked_each_speak() -> None:
    copies = [
        account(year, author, LENGTH, follows=["orrin-1900"]) for year, author in ((1920, "Vane"), (1940, "Pell"))
    ]
    asked = ("vane-1920", "pell-1940")
    assert sources(first(*FIVE), *copies, asked=asked) == {}


def test_of_two_sources_the_one_it_is_said_to_follow() -> None:
    both = account(1940, "Pell", LENGTH, HEIGHT, LEAF, follows=["vane-1920"], cites=["orrin-1900"])
    found = sources(first(*FIVE), account(1920, "Vane", LENGTH), both)
    assert found == {
        "pell-1940: spur length": "vane-1920",
        "pell-1940: stem height": "orrin-1900",
        "pell-1940: leaf length": "orrin-1900",
    }


# --- what says no more than another


@pytest.mark.parametrize(
    ("character", "earlier", "later", "same"),
    [
        pytest.param("leaf length", "22–34 mm", "2–3 cm", True, id="cm-rounded"),
        pytest.param("leaf length", "22–34 mm", "0.9–1.3 in.", True, id="inches"),
        pytest.param("stem height", "10 cm", "4 in", True, id="10-cm-4-in"),
        pytest.param("stem height", "10–20 cm", "4–8 in", True, id="10-20-cm-4-8-in"),
        pytest.param("leaf length", "22–34 mm", "22–35 mm", False, id="one-mm-more"),
        pytest.param("leaf length", "22–34 mm", "2.3–3.4 cm", False, id="cm-to-the-mm-one-more"),
        pytest.param("leaf length", "22–34 mm", "c. 22–34 mm", True, id="about"),
        pytest.param("leaf length", "(18–)22–34(–41) mm", "22–34 mm", True, id="extremes-dropped"),
        pytest.param("leaf length", "(18–)22–34(–41) mm", "22–34(–41) mm", True, id="one-extreme-dropped"),
        pytest.param("leaf length", "(18–)22–34(–41) mm", "(1.8–)2.2–3.4(–4.1) cm", True, id="extremes-converted"),
        pytest.param("leaf length", "22–34 mm", "22–34(–41) mm", False, id="extreme-added"),
        pytest.param("leaf length", "22–34(–41) mm", "22–34(–45) mm", False, id="extreme-changed"),
        pytest.param("leaf length", "22–34(–41) mm", "22–41 mm", False, id="extreme-made-typical"),
        pytest.param("leaf length", "up to 34 mm", "up to 34 mm", True, id="open-below"),
        pytest.param("leaf length", "up to 34 mm", "22–34 mm", False, id="bound-added"),
        pytest.param("leaf length", "22–34 mm", "up to 34 mm", True, id="lower-bound-dropped"),
        pytest.param("leaf length", "22–34(–41) mm", "up to 41 mm", False, id="extreme-told-as-the-bound"),
        pytest.param("petal number", "8–13", "8–13+", False, id="upper-end-opened"),
        pytest.param("petal number", "8–13+", "8–13+", True, id="open-above"),
        pytest.param("petal number", "8–13+", "8–13", False, id="upper-end-closed"),
        pytest.param("petal number", "5", "5", True, id="count"),
        pytest.param("petal number", "4–5", "4–6", False, id="counts-are-exact"),
        pytest.param("spur colour", "green or cream", "cream or green", True, id="states-in-another-order"),
        pytest.param("spur colour", "green or cream", "green", False, id="state-left-out"),
        pytest.param("spur colour", "green, rarely cream", "green or cream", False, id="another-frequency"),
        pytest.param("spur colour", "green to ivory", "green, cream or ivory", True, id="span-spelt-out"),
        pytest.param("aspect", "N to NE", "N to NE", True, id="directions"),
        pytest.param("aspect", "NW to N", "NW to NE", False, id="other-directions"),
        pytest.param("aspect", "N", "360°", True, id="north-is-360-degrees"),
        pytest.param("aspect", "NW to N", "315–360°", True, id="directions-in-degrees"),
    ],
)  # fmt: skip
def test_what_is_said_again(character: str, earlier: str, later: str, same: bool) -> None:
    found = sources(
        first(f"{character}: {earlier}"), account(1920, "Vane", f"{character}: {later}", follows=["orrin-1900"])
    )
    assert bool(found) is same


def test_a_growth_stage_is_compared_with_its_like() -> None:
    later = account(1920, "Vane", "spur length [young]: 22–34 mm", follows=["orrin-1900"])
    assert sources(first(LENGTH), later) == {}


def test_two_statements_of_one_work_of_which_one_is_its_own() -> None:
    """`22–34 mm; in shade 40–44 mm`: the work adds to what it took over, so all it says is its own."""
    later = account(1920, "Vane", "leaf length: 30–50 mm", "leaf length: 60–64 mm", follows=["orrin-1900"])
    assert sources(first(LEAF), later) == {}
    both = account(1920, "Vane", "leaf length: 30–50 mm", "leaf length: 3–5 cm", follows=["orrin-1900"])
    assert sources(first(LEAF), both) == {"vane-1920: leaf length": "orrin-1900"}


# --- weight

WEIGHED = (
    account(1900, "Orrin", "leaf length: 10–20 mm"),
    account(1910, "Pell", "leaf length: 16–30 mm"),
    account(1920, "Vane", "leaf length: 10–20 mm", follows=["orrin-1900"]),
)


@pytest.mark.parametrize(
    ("weight", "at_12", "at_25"),
    [
        pytest.param("0", Fraction(1, 2), Fraction(1, 2), id="none"),
        pytest.param("0.5", Fraction(3, 5), Fraction(2, 5), id="half"),
        pytest.param("1", Fraction(2, 3), Fraction(1, 3), id="as-much"),
    ],
)
def test_repetition_weight(weight: str, at_12: Fraction, at_25: Fraction) -> None:
    corpus = corpus_from(WEIGHED, settings=f"title: Test\nrepetition-weight: {weight}\n")
    (finding,) = [one for one in diagnosis(corpus, TAXON).findings if one.character == "leaf length"]
    assert [item.weight for item in finding.evidence] == [1, 1, Fraction(weight)]
    assert isinstance(finding.agreement, RangeAgreement)
    share = {
        value: step.share for value in (12, 25) for step in finding.agreement.coverage if step.low <= value < step.high
    }
    assert (share[12], share[25]) == (at_12, at_25)
    assert finding.agreement.core == Span(Fraction(16), Fraction(20))
    assert finding.agreement.lower.stated == 2  # whatever it weighs, it is no measurement of its own
    assert (finding.count.works, finding.count.independent, finding.count.repeated) == (3, 2, 1)


def test_one_author_repeated_is_still_one_author() -> None:
    found = diagnosis(corpus_from([WEIGHED[0], WEIGHED[2]]), TAXON)
    (finding,) = [one for one in found.findings if one.character == "leaf length"]
    assert finding.verdict is Verdict.SINGLE


# --- suspicions


def test_suspects_are_alike_beyond_chance_and_not_known_to_be_related() -> None:
    four = (LENGTH, HEIGHT, LEAF, PETALS)
    assert pairs_suspected(first(*FIVE), account(1920, "Vane", *four)) == [("vane-1920", "orrin-1900")]
    assert pairs_suspected(first(*FIVE), account(1920, "Vane", *four[:3])) == []
    assert pairs_suspected(first(*FIVE), account(1920, "Vane", *four, basis="own material")) == []
    differing = (LENGTH, HEIGHT, "leaf length: 80–90 mm", "petal number: 9")
    assert pairs_suspected(first(*FIVE), account(1920, "Vane", *differing)) == []


@pytest.mark.parametrize(
    "known", [{"follows": ["orrin-1900"]}, {"cites": ["orrin-1900"]}], ids=["declared", "cited"]
)  # fmt: skip
def test_what_is_known_to_be_repeated_is_no_suspicion(known) -> None:
    assert pairs_suspected(first(*FIVE), account(1920, "Vane", *FIVE, **known)) == []


def test_a_repetition_found_by_the_name_alone_is_no_suspicion_either() -> None:
    protologue = first(*FIVE, acts=[GENUS, PUBLISHED])
    assert len(lines(protologue, account(1920, "Vane", *FIVE))) == 1
    assert pairs_suspected(protologue, account(1920, "Vane", *FIVE)) == []
