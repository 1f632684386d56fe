"""Hybrid formulae and condensed names: ICN Chapter H (Shenzhen 2018; from memory where no page is named)."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.names.hybrids import formula, formula_faults, is_formula_epithet, nothogenus_parts_fit
from auctorum.names.name import Name, Ranked
from auctorum.names.parse import parse_name

# Art. H.2.1 Ex. 1: the first and the last read on the page of the Shenzhen Code, the others from memory.
FORMULAE = [
    pytest.param("Agrostis stolonifera L. × Polypogon monspeliensis (L.) Desf.", id="H.2.1-agrostis"),
    pytest.param("Agrostis L. × Polypogon Desf.", id="H.2.1-genera"),
    pytest.param("Melampsora medusae Thüm. × M. occidentalis H. S. Jacks.", id="H.2.1-melampsora"),
    pytest.param("Mentha aquatica L. × M. arvensis L. × M. spicata L.", id="H.2.1-three-parents"),
    pytest.param(
        "Polypodium vulgare subsp. prionodes (Asch.) Rothm. × P. vulgare L. subsp. vulgare", id="H.2.1-subspecies"
    ),
    pytest.param("Tilletia caries (Bjerk.) Tul. & C. Tul. × T. foetida (Wallr.) Liro", id="H.2.1-tilletia"),
    pytest.param("Salix aurita L. × S. caprea L.", id="H.2.1-salix"),
]


def parents_of(text: str) -> list[Name]:
    """The parents with the genus of each in full, that of an initial being the one before."""
    names: list[Name] = []
    for part in text.split(" × "):
        genus = names[-1].genus if part[1] == "." else part.split()[0]
        names.append(parse_name(" ".join([genus, *part.split()[1:]])))
    return names


@pytest.mark.parametrize("text", FORMULAE)
def test_formulae_of_the_code_are_written_and_found_well_formed(text: str) -> None:
    assert formula(parents_of(text), abbreviate_genus=True) == text
    assert formula_faults(text) == ()


def test_order_and_authors() -> None:
    # Rec. H.2A.1; the names are those of Art. H.2.1 Ex. 1.
    caprea, aurita = parse_name("Salix caprea L."), parse_name("Salix aurita L.")
    assert formula([caprea, aurita], alphabetical=True, abbreviate_genus=True) == "Salix aurita L. × S. caprea L."
    assert formula([caprea, aurita], authors=False) == "Salix caprea × Salix aurita"


def test_an_initial_of_two_genera_is_written_out() -> None:
    parents = [Name("Ficta", "alba"), Name("Fictula", "nigra"), Name("Ficta", "rubra")]
    assert formula(parents, abbreviate_genus=True) == "Ficta alba × Fictula nigra × Ficta rubra"
    assert formula([Name("Ficta"), Name("Ficta")], abbreviate_genus=True) == "Ficta × Ficta"


def test_one_parent_makes_no_formula() -> None:
    with pytest.raises(ValueError, match="two parents or more: 1 given"):
        formula([Name("Ficta")])


@pytest.mark.parametrize(
    ("text", "faults"),
    [
        pytest.param("Salix aurita × caprea", ("no generic name or initial before `caprea`",), id="H.2.1-no-genus"),
        pytest.param(
            "Salix aurita L. × caprea L.", ("no generic name or initial before `caprea L.`",), id="no-genus-authors"
        ),
        pytest.param(
            "Polypodium vulgare × subsp. vulgare",
            ("no generic name or initial before `subsp. vulgare`",),
            id="no-species",
        ),
        pytest.param("Salix aurita x S. caprea", (), id="letter-x"),
        pytest.param("♀ Salix aurita × ♂ S. caprea", (), id="signs-of-sex"),
        pytest.param("Salix ×capreola × S. aurita", (), id="a-nothospecies-as-parent"),
        pytest.param("×Agropogon littoralis × Agrostis stolonifera", (), id="a-nothogenus-as-parent"),
        pytest.param("Verbascum lychnitis × V. nigrum", (), id="initial-like-a-rank"),
        pytest.param(
            "Salix aurita×S. caprea", ("no space on each side of the sign", "fewer than two parents"), id="no-spaces"
        ),
        pytest.param("Salix aurita", ("fewer than two parents",), id="one-parent"),
        pytest.param("", ("fewer than two parents",), id="nothing"),
        pytest.param("Salix aurita ×", ("no name on one side of a sign",), id="nothing-behind"),
        pytest.param("Salix aurita × P. nigra", ("`P.` stands for no genus written before",), id="unknown-initial"),
        pytest.param(
            "Ficta alba × Fictula nigra × F. rubra", ("`F.` may stand for Ficta or Fictula",), id="ambiguous-initial"
        ),
        pytest.param("Salix aurita × S.", ("`S.` is no name",), id="initial-alone"),
    ],
)
def test_faults(text: str, faults: tuple[str, ...]) -> None:
    assert formula_faults(text) == faults


@pytest.mark.parametrize(
    ("epithet", "parents", "expected"),
    [
        # Art. H.10.3 Ex. 2 (Vienna 2006, page read); the others of that article from memory.
        pytest.param("atrosanguinea-pedata", "Potentilla atrosanguinea × P. pedata", True, id="H.10.3-ex-2"),
        pytest.param("nigro-lychnitis", "Verbascum lychnitis × V. nigrum", True, id="H.10.3-changed-termination"),
        pytest.param("schiedeanum", "Verbascum lychnitis × V. nigrum", False, id="H.10.3-a-true-epithet"),
        pytest.param("anserovina", "Acaena anserinifolia × A. ovina", False, id="H.10.3-a-blend-is-an-epithet"),
        pytest.param("ficta-alba", "Ficta nigra × Fictula alba", True, id="genus-of-one-epithet-of-the-other"),
        pytest.param("ficta-nigra", "Ficta nigra × Fictula alba", False, id="both-of-one-parent"),
        pytest.param("novae-terrae", "Ficta nigra × F. alba", False, id="common-hyphen"),
        pytest.param("atrosanguinea-pedata", "", False, id="parents-unknown"),
    ],
)
def test_epithets_that_are_formulae(epithet: str, parents: str, expected: bool) -> None:
    assert is_formula_epithet(epithet, parents) is expected


@pytest.mark.parametrize(
    ("name", "genera", "fits"),
    [
        # Art. H.3.1, H.6.2-H.6.4 and their examples, from memory.
        pytest.param("×Agropogon", "Agrostis Polypogon", True, id="H.6.2-agropogon"),
        pytest.param("×Gymnanacamptis", "Anacamptis Gymnadenia", True, id="H.6.2-whole-of-one"),
        pytest.param("×Cupressocyparis", "Chamaecyparis Cupressus", True, id="H.6.2-linking-vowel"),
        pytest.param("Philageria", "Lapageria Philesia", True, id="H.6.2-philageria"),
        pytest.param("×Sophrolaeliocattleya", "Sophronitis Laelia Cattleya", True, id="H.6.4-three-genera"),
        pytest.param("×Potinara", "Brassavola Cattleya Laelia Sophronitis", None, id="H.6.3-ara"),
        pytest.param("×Fictapolypogon", "Ficta Polypogon", False, id="H.6.2-the-whole-of-both"),
        pytest.param("×Crindonna", "Crinum Amaryllis", False, id="H.6.2-of-an-epithet"),
        pytest.param("×Agrostypolypogonara", "Agrostis", False, id="one-parent"),
        pytest.param("×Fictopogon", "Ficta Polypogon Laelia Cattleya", False, id="H.6.3-four-genera-without-ara"),
        pytest.param("×Abacadafagahajakara", "Ficta Fictula Fictella", False, id="H.6.3-too-many-syllables"),
        pytest.param("×" + "Fict" * 20, "Fict Fict", False, id="no-word-so-long"),
    ],
)
def test_condensed_names(name: str, genera: str, fits: bool | None) -> None:
    assert nothogenus_parts_fit(name, genera.split()) is fits


GENERA = st.sampled_from(["Ficta", "Alba", "Polypogon", "Vetus"])
EPITHETS = st.sampled_from(["nigra", "alba", "pedata", "repens"])
NAMES = st.builds(
    lambda genus, species, lower, hybrid: Name(genus, species, lower, species_hybrid=hybrid),
    GENERA,
    EPITHETS,
    st.sampled_from([(), (Ranked("variety", "longa"),)]),
    st.booleans(),
)


@given(st.lists(NAMES, min_size=2, max_size=5), st.booleans(), st.booleans())
@settings(deadline=None, max_examples=150)
def test_what_is_written_is_well_formed(parents: list[Name], alphabetical: bool, short: bool) -> None:
    assert formula_faults(formula(parents, alphabetical=alphabetical, abbreviate_genus=short)) == ()


@given(st.lists(NAMES, min_size=2, max_size=5))
@settings(deadline=None, max_examples=50)
def test_alphabetical_order_does_not_depend_on_that_given(parents: list[Name]) -> None:
    text = formula(parents, alphabetical=True, authors=False)
    parts = [part.replace("×", "") for part in text.split(" × ")]
    assert all(one <= other for one, other in pairwise(parts))


@given(GENERA, GENERA, st.integers(2, 4), st.integers(2, 4), st.sampled_from(["", "o", "i"]))
@settings(deadline=None, max_examples=100)
def test_every_condensed_name_so_made_fits(first: str, second: str, begun: int, ended: int, link: str) -> None:
    made = first[:begun] + link + second.casefold()[-ended:]
    if begun < len(first) and ended < len(second):
        whole = made.casefold().startswith(first.casefold()) and made.endswith(second.casefold())
        assert whole or nothogenus_parts_fit(made, [second, first]) is True


@given(st.text(max_size=40), st.text(max_size=40))
@settings(deadline=None, max_examples=150)
def test_any_text_is_taken(text: str, other: str) -> None:
    assert isinstance(formula_faults(text), tuple)
    assert is_formula_epithet(text, other) in (True, False)
    assert nothogenus_parts_fit(text, other.split()) in (True, False, None)
