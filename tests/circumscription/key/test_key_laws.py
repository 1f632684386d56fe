"""Laws of every key: taxa reached, cores kept, order and repetitions without effect, leads that contrast."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.findings import RangeAgreement
from auctorum.circumscription.key import Key, Threshold, evaluate, identify, key_of
from auctorum.circumscription.plants import Observation, Plant
from key_cases import HAIRS, SEED, VOCABULARY, said

ranges = st.tuples(st.integers(1, 60), st.integers(0, 30)).map(lambda pair: (pair[0], pair[0] + pair[1]))
states = {
    character.name: st.lists(st.sampled_from([state.name for state in character.states]), min_size=1, unique=True).map(
        tuple
    )
    for character in (HAIRS, SEED)
}
taxon = st.fixed_dictionaries(
    {"leaf_length": ranges},
    optional={
        "spur_length__mature": ranges,
        "spur_length__young": ranges,
        "flower_number": ranges,
        "leaf_hairiness": states["leaf hairiness"],
        "seed_surface": states["seed surface"],
    },
)
groups = st.lists(taxon, min_size=2, max_size=5).map(lambda several: dict(zip("abcde", several, strict=False)))
lawful = settings(deadline=None, max_examples=40)


def made(group) -> Key:
    return key_of({id_: said(**values) for id_, values in group.items()}, VOCABULARY)


def ends(found: Key) -> list[tuple[str, ...]]:
    if not found.couplets:
        return [found.taxa]
    return [lead.taxa for couplet in found.couplets for lead in couplet.leads if lead.goes_to is None]


@lawful
@given(groups)
def test_every_taxon_is_reached_and_every_couplet_is_led_to_once(group) -> None:
    found = made(group)
    assert {id_ for taxa in ends(found) for id_ in taxa} == set(group)
    led_to = [lead.goes_to for couplet in found.couplets for lead in couplet.leads if lead.goes_to is not None]
    assert sorted(led_to) == list(range(2, len(found.couplets) + 1))
    assert [couplet.number for couplet in found.couplets] == list(range(1, len(found.couplets) + 1))
    for couplet in found.couplets:
        for lead in couplet.leads:
            if lead.goes_to is not None:
                assert found.couplets[lead.goes_to - 1].came_from == couplet.number < lead.goes_to


@lawful
@given(groups, st.data())
def test_a_plant_inside_its_core_is_led_to_its_taxon(group, data) -> None:
    found = made(group)
    id_ = data.draw(st.sampled_from(sorted(group)))
    stage = data.draw(st.sampled_from(["mature", "young"]))  # a plant has one stage
    seen = []
    for finding in said(**group[id_]):
        agreed = finding.agreement
        if finding.stage not in ("", stage):
            continue
        if isinstance(agreed, RangeAgreement):
            low, high = agreed.core.low, agreed.core.high
            value = low + (high - low) * Fraction(data.draw(st.integers(0, 8)), 8)
            if finding.character == "flower number":
                value = Fraction(int(value))
            seen.append(Observation(finding.character, finding.stage, value, (), Fraction(0), 1))
        else:
            state = data.draw(st.sampled_from(agreed.core))
            seen.append(Observation(finding.character, finding.stage, None, ((state, Fraction(1)),), Fraction(0), 1))
    outcome = identify(found, Plant("p", id_, id_, None, "", tuple(seen)))
    assert sum(weight for _, weight in outcome) == 1.0
    asked = {(one.character, one.stage) for one in seen}
    whole = all(
        any((couplet.characters[0], rule.stage) in asked for rule in couplet.rules) for couplet in found.couplets
    )
    if whole:  # nothing is missing, so there is one way
        assert all(id_ in taxa for taxa, _ in outcome)
    assert any(id_ in taxa for taxa, _ in outcome)


@lawful
@given(groups, st.randoms())
def test_the_order_of_the_taxa_changes_nothing(group, random) -> None:
    items = list(group.items())
    random.shuffle(items)
    first, second = made(group), made(dict(items))
    assert (first.couplets, first.expected, first.want) == (second.couplets, second.expected, second.want)


@lawful
@given(groups)
def test_a_repetition_changes_nothing(group) -> None:
    again = key_of({id_: said(repeated=True, **values) for id_, values in group.items()}, VOCABULARY)
    assert again == made(group)


@lawful
@given(groups)
def test_leads_contrast_the_same_characters_in_the_same_order(group) -> None:
    for couplet in made(group).couplets:
        first, second = couplet.leads
        assert len(first.pieces) == len(second.pieces) == len(couplet.characters) <= 3
        assert {first.upper, second.upper} == {False, True}
        assert all(one != other for one, other in zip(first.pieces, second.pieces, strict=True))
        for name, *pieces in zip(couplet.characters, first.pieces, second.pieces, strict=True):
            structure = VOCABULARY[name].structure[:3]  # leaf, leaves
            assert all(piece.startswith(structure[:3]) for piece in pieces)
        for rule in couplet.rules:
            if not isinstance(rule, Threshold):
                assert not set(rule.lower) & set(rule.upper)


@lawful
@given(groups)
def test_what_confirms_a_lead_denies_no_taxon_that_the_lead_goes_on_to(group) -> None:
    """Further characters part the taxa of both leads, and none of them was asked on the way, with another limit."""
    found = made(group)
    by_number = {couplet.number: couplet for couplet in found.couplets}

    def named(lead) -> set[str]:
        return set(lead.taxa) if lead.goes_to is None else set().union(*map(named, by_number[lead.goes_to].leads))

    for couplet in found.couplets:
        first, second = map(named, couplet.leads)
        further = couplet.characters[1:]
        assert not (further and first & second)
        above = couplet
        while above.came_from is not None:
            above = by_number[above.came_from]
            assert above.characters[0] not in further


@lawful
@given(groups)
def test_expected_figures_are_parts_of_all_plants(group) -> None:
    expected = made(group).expected
    assert 0 <= expected.wrong <= 1 and 0 <= expected.undecided <= 1 + 1e-9
    assert expected.wrong + expected.undecided <= 1 + 1e-9
    assert 0 <= expected.steps <= len(made(group).couplets)


@lawful
@given(groups)
def test_right_wrong_and_undecided_add_up(group) -> None:
    tried = [
        Plant(id_, id_, id_, None, "", (Observation("leaf length", "", Fraction(size), (), Fraction(0), 1),))
        for id_ in group
        for size in (5, 25, 45)
    ]
    one = evaluate(made(group), tried)
    assert abs(one.right + one.wrong + one.undecided - one.plants) < 1e-9
    assert abs(sum(many for *_, many in one.mistaken) - one.wrong) < 1e-9
