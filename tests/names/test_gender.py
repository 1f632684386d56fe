"""Gender of generic names. Examples of ICN Art. 62 (Shenzhen 2018; 62.2-62.4 from memory)."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.names.gender import Gender, GenusGender, gender_of

M, F, N = Gender.MASCULINE, Gender.FEMININE, Gender.NEUTER


@pytest.mark.parametrize(
    ("genera", "gender", "article"),
    [
        # Art. 62.1 Ex. 1, read on the page of the Shenzhen Code.
        pytest.param("Adonis Atriplex Diospyros Eucalyptus Hemerocallis", F, "62.1", id="62.1-feminine"),
        pytest.param("Orchis Stachys Strychnos Cedrus Fagus Rhamnus", F, "62.1", id="62.1-feminine-and-trees"),
        pytest.param("Lotus Melilotus Erigeron Sicyos", M, "62.1", id="62.1-masculine"),
        pytest.param("Phyteuma", N, "62.1", id="62.1-neuter"),
        # Art. 62.2 and its examples, from memory.
        pytest.param("Andropogon Oplopanax", M, "62.1", id="62.2-a-whatever-the-author-gave"),
        pytest.param("Dendromecon Hesperomecon", F, "62.2", id="62.2-b"),
        pytest.param("Aceras Xanthoceras", N, "62.2", id="62.2-c"),
        pytest.param("Stenocarpus Dipterocarpus Hymenocarpos", M, "62.2", id="62.2-carpus"),
        pytest.param("Callicarpa Polycarpaea", F, "62.2", id="62.2-carpa"),
        pytest.param("Polycarpon Ormocarpum Pisocarpium", N, "62.2", id="62.2-carpon"),
        pytest.param("Parasitaxus", F, "62.1", id="62.2-taxus"),
        pytest.param("Taonabo Agati Manihot", F, "62.1", id="62.3-settled-by-the-code"),
        # Invented words by the elements of Art. 62.2, from memory.
        pytest.param("Fictocodon Fictomyces Fictodon Fictostemon", M, "62.2", id="62.2-masculine-elements"),
        pytest.param("Fictanthus Fictanthos Fictocheilos Fictophycus Fictogaster", M, "62.2", id="62.2-custom"),
        pytest.param(
            "Fictachne Fictochlamys Fictodaphne Fictosma Fictoglochin", F, "62.2", id="62.2-feminine-elements"
        ),
        pytest.param("Fictodendron Fictonema Fictostigma Fictostoma", N, "62.2", id="62.2-neuter-elements"),
        pytest.param("Fictoides Fictodes Fictanthes", F, "62.4", id="62.4-feminine"),
        pytest.param("Fictites", M, "62.4", id="62.4-masculine"),
    ],
)
def test_gender_and_article(genera: str, gender: Gender, article: str) -> None:
    found = {genus: gender_of(genus) for genus in genera.split()}
    assert {genus: one and (one.gender, one.article) for genus, one in found.items()} == dict.fromkeys(
        found, (gender, article)
    )


@pytest.mark.parametrize(
    ("genus", "facts", "gender", "article"),
    [
        pytest.param("Fictus", {"tradition": F, "by_author": M}, F, "62.1", id="tradition-before-the-author"),
        pytest.param("Rhamnus", {"by_author": M}, F, "62.1", id="62.1-ex-1-rhamnus-linnaeus-masculine"),
        pytest.param("Dendromecon", {"by_author": N}, F, "62.2", id="62.2-ex-dendromecon-bentham-neuter"),
        pytest.param("Xanthoceras", {"by_author": F}, N, "62.2", id="62.2-ex-xanthoceras-bunge-feminine"),
        pytest.param("Fictoides", {"by_author": N}, F, "62.4", id="62.4-irrespective-of-the-author"),
        pytest.param("Ficti", {"by_author": F}, F, "62.3", id="62.3-arbitrary-word"),
        pytest.param("Fictus", {"by_author": F}, F, "62.3", id="the-author-before-the-common-ending"),
        pytest.param("Fictolympha", {"last_part": "lympha", "last_part_gender": F}, F, "62.2", id="recorded-last-part"),
        pytest.param(
            "Fictodrus", {"last_part": "drus", "last_part_gender": F}, F, "62.2", id="last-part-before-ending"
        ),
        pytest.param("Fictokomum", {"last_part": "kome", "last_part_gender": F}, N, "62.2", id="altered-termination"),
        pytest.param(
            "Fictanthus", {"last_part": "anthos", "last_part_gender": N}, M, "62.2", id="custom-before-grammar"
        ),
        pytest.param("Fictus", {}, M, "62.1", id="only-the-ending"),
    ],
)
def test_order_of_the_grounds(genus: str, facts: dict[str, Gender], gender: Gender, article: str) -> None:
    found = gender_of(genus, **facts)  # type: ignore[arg-type]
    assert found is not None
    assert (found.gender, found.article) == (gender, article)


@pytest.mark.parametrize("genus", ["Fictax", "Ficti", "Fictu", "Ficter", "Fictoyo", ""])
def test_nothing_tells(genus: str) -> None:
    assert gender_of(genus) is None


def test_why() -> None:
    assert gender_of("Fictus") == GenusGender(M, "nothing is recorded; words in -us are mostly masculine", "62.1")
    assert gender_of("Fictanthus") == GenusGender(M, "compounds in -anthus are masculine by botanical custom", "62.2")
    assert gender_of("×Fictanthus") == gender_of("Fictanthus")


@given(st.text(max_size=20), st.sampled_from(Gender))
@settings(deadline=None, max_examples=100)
def test_recorded_tradition_wins_over_everything(genus: str, gender: Gender) -> None:
    found = gender_of(genus, tradition=gender, by_author=M, last_part="carpa")
    assert found is not None
    assert found.gender is gender


@given(st.text(max_size=20), st.sampled_from(Gender))
@settings(deadline=None, max_examples=100)
def test_with_the_authors_use_there_is_always_an_answer(genus: str, gender: Gender) -> None:
    assert gender_of(genus, by_author=gender) is not None
