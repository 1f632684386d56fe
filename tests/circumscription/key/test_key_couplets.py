"""Keys to small groups, worked out by hand; how plants go down them, and how often they err."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal

import pytest

from auctorum.characters.vocabulary import Character, Kind, State, Vocabulary
from auctorum.circumscription.diagnosis import finding
from auctorum.circumscription.key import TooFewTaxa, evaluate, identify, key_of
from key_cases import VOCABULARY, evidence, plant, said


def leads(found) -> list[str]:
    return [
        f"{couplet.number}: {'; '.join(lead.pieces)} > {lead.goes_to or '/'.join(lead.taxa)}"
        for couplet in found.couplets
        for lead in couplet.leads
    ]


@pytest.mark.parametrize(
    ("taxa", "expected"),
    [
        pytest.param(
            {"a": said(leaf_length=(10, 18)), "b": said(leaf_length=(22, 30))},
            ["1: leaves at least 20 mm long > b", "1: leaves less than 20 mm long > a"],
            id="a gap: the roundest figure of its middle half",
        ),
        pytest.param(
            {"a": said(flower_number=(1, 3)), "b": said(flower_number=(4, 7))},
            ["1: flowers 4 or more > b", "1: flowers 3 or fewer > a"],
            id="counts are whole",
        ),
        pytest.param(
            {"a": said(spur_length__mature=(30, 40), spur_length__young=(14, 20)),
             "b": said(spur_length__mature=(10, 20), spur_length__young=(4, 8))},
            ["1: spur at least 25 mm long at maturity, at least 10 mm long when young > a",
             "1: spur less than 25 mm long at maturity, less than 10 mm long when young > b"],
            id="a threshold for each stage",
        ),
        pytest.param(
            {"a": said(spur_length__mature=(30, 40), spur_length__young=(14, 20)),
             "b": said(spur_length__mature=(10, 20))},
            ["1: spur at least 25 mm long at maturity > a", "1: spur less than 25 mm long at maturity > b"],
            id="a stage told of one alone is not used",
        ),
        pytest.param(
            {"a": said(leaf_hairiness=("glabrous",)), "b": said(leaf_hairiness=("pubescent", "woolly"))},
            ["1: leaves glabrous > a", "1: leaves pubescent or woolly > b"],
            id="a place on a spectrum",
        ),
        pytest.param(
            {"a": said(seed_surface=("netted",)), "b": said(seed_surface=("smooth", "warty"))},
            ["1: seeds smooth or warty > b", "1: seeds netted > a"],
            id="states without order in two groups",
        ),
        pytest.param(
            {"a": said(leaf_length=(10, 18), seed_surface=("netted",), flower_number=(1, 5)),
             "b": said(leaf_length=(22, 30), seed_surface=("smooth",), flower_number=(1, 6))},
            ["1: leaves at least 20 mm long; seeds smooth > b", "1: leaves less than 20 mm long; seeds netted > a"],
            id="a character that parts the same taxa confirms, one that overlaps does not",
        ),
        pytest.param(
            {"a": said(leaf_length=(10, 18)), "b": said(leaf_length=(22, 30)), "c": said(leaf_length=(44, 60))},
            ["1: leaves at least 35 mm long > c", "1: leaves less than 35 mm long > 2",
             "2: leaves at least 20 mm long > b", "2: leaves less than 20 mm long > a"],
            id="a character is used again with another threshold",
        ),
    ],
)  # fmt: skip
def test_couplets(taxa, expected) -> None:
    found = leads(key_of(taxa, VOCABULARY))
    assert found == expected


def test_an_overlap_goes_both_ways_and_what_it_leaves_is_a_group() -> None:
    found = key_of({"a": said(leaf_length=(10, 30)), "b": said(leaf_length=(20, 40))}, VOCABULARY)
    ends = [lead.taxa for couplet in found.couplets for lead in couplet.leads if lead.goes_to is None]
    assert sorted(map(sorted, ends)) == [["a"], ["a", "b"], ["b"]]
    assert identify(found, plant(leaf_length=12)) == ((("a",), 1.0),)
    assert set(identify(found, plant(leaf_length=25))[0][0]) == {"a", "b"}
    assert 0.3 < found.expected.undecided < 0.7


def test_what_cannot_be_parted_says_what_is_missing() -> None:
    alike = {"a": said(leaf_length=(10, 30), seed_surface=("smooth",)), "b": said(leaf_length=(10, 30))}
    found = key_of(alike, VOCABULARY)
    assert found.couplets == () and found.want is not None
    assert found.want.silent == (("seed surface", ("b",)),)
    assert (found.want.overlapping, found.want.closest) == (1, "leaf length")
    assert found.want.overlap == pytest.approx(1.0)
    assert identify(found, plant(leaf_length=20)) == ((("a", "b"), 1.0),)


def test_cost_turns_the_choice() -> None:
    taxa = {
        "a": said(leaf_length=(10, 18), flower_number=(1, 3)),
        "b": said(leaf_length=(22, 30), flower_number=(4, 9)),
    }
    assert key_of(taxa, VOCABULARY).couplets[0].characters[0] == "leaf length"  # alike: the first of the vocabulary
    dear = [replace(one, cost=Decimal(2)) if one.name == "leaf length" else one for one in VOCABULARY.characters]
    assert key_of(taxa, Vocabulary(tuple(dear))).couplets[0].characters[0] == "flower number"
    only = key_of(taxa, VOCABULARY, characters=["flower number"])
    assert [couplet.characters for couplet in only.couplets] == [("flower number",)]


def test_a_plant_without_the_character_follows_both_leads_by_halves() -> None:
    found = key_of({"a": said(leaf_length=(10, 18)), "b": said(leaf_length=(22, 30))}, VOCABULARY)
    assert identify(found, plant(seed_surface="smooth")) == ((("a",), 0.5), (("b",), 0.5))
    # on the threshold itself it goes up
    assert identify(found, plant(leaf_length=20)) == ((("b",), 1.0),)


def test_plants_are_counted_right_wrong_and_unseen() -> None:
    found = key_of({"a": said(leaf_length=(10, 18)), "b": said(leaf_length=(22, 30))}, VOCABULARY)
    tried = [plant("a", leaf_length=12), plant("a", leaf_length=25), plant("b", leaf_length=25)]
    tried += [plant("b"), plant("c", leaf_length=9)]
    one = evaluate(found, tried)
    assert (one.plants, one.right, one.wrong, one.undecided, one.unseen) == (3, 2.0, 1.0, 0.0, 1)
    assert one.mistaken == (("a", "b", 1.0),)
    assert one.misled == ((1, 1.0, 3.0),)
    assert one.named_by == ("A. Collector",)
    assert one.interval[0] < 1 / 3 < one.interval[1]


def test_one_taxon_is_too_few() -> None:
    with pytest.raises(TooFewTaxa, match="a key parts two taxa at least, and 1 is given"):
        key_of({"a": said(leaf_length=(10, 18))}, VOCABULARY)


def test_a_character_of_the_plant_is_asked_before_its_habitat() -> None:
    place = Character("substrate", "habitat", "substrate", Kind.NOMINAL, states=(State("chalk"), State("slate")))
    findings = {
        id_: (finding(place, "", [evidence(place, (rock,))], ()), *said(seed_surface=(seed,)))
        for id_, rock, seed in (("a", "chalk", "smooth"), ("b", "slate", "warty"))
    }
    (couplet,) = key_of(findings, Vocabulary((place, *VOCABULARY.characters))).couplets
    assert couplet.characters == ("seed surface", "substrate")
    assert couplet.leads[0].pieces == ("seeds smooth", "on chalk")
