"""Reading a label: what is its name, and what is set aside. Names are invented."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.matching.normalise import read_label, readings


@pytest.mark.parametrize(
    ("label", "words"),
    [
        pytest.param("EXEMPLUM ALBUM", "exemplum album", id="capitals"),
        pytest.param("exemplum_album", "exemplum album", id="underscore"),
        pytest.param("Exemplum Album White Giant", "exemplum album", id="capital-epithet-and-trade-name"),
        pytest.param("Exemplum novæ-lucis", "exemplum novaelucis", id="ligature-and-hyphen"),
        pytest.param("Exemplum cf. album", "exemplum album", id="qualifier"),
        pytest.param("Exemplum sp. aff. album", "exemplum album", id="species-akin"),
        pytest.param("?Exemplum album", "exemplum album", id="question-mark"),
        pytest.param("Exemplum sp. 2", "exemplum", id="no-species"),
        pytest.param("Exemplum spp.", "exemplum", id="several-species"),
        pytest.param("Exemplum album sensu Orrin", "exemplum album", id="sense"),
        pytest.param("Exemplum album (Vane) Orrin ex Tull", "exemplum album", id="authors"),
        pytest.param("Exemplum album Tull f.", "exemplum album", id="the-son-is-no-form"),
        pytest.param("Exemplum album de Vane", "exemplum album", id="particle-of-an-author"),
        pytest.param("Exemplum album Tull var. longum", "exemplum album var:longum", id="authors-inside"),
        pytest.param("Exemplum album v longum", "exemplum album var:longum", id="odd-rank-term"),
        pytest.param("Exemplum album (var.) longum", "exemplum album var:longum", id="rank-in-parentheses"),
        pytest.param("Exemplum album subsp. var. longum", "exemplum album var:longum", id="two-ranks"),
        pytest.param("Exemplum album longum", "exemplum album longum", id="rank-left-out"),
        pytest.param("Exemplum albumvar. longum", "exemplum album var:longum", id="glued-rank"),
        pytest.param("Exemplum albumsubsplongum", "exemplum album sub:longum", id="glued-both-sides"),
        pytest.param("Exemplum 'White Giant'", "exemplum", id="cultivar-only"),
        pytest.param("E.album", "e album", id="abbreviated-without-space"),
        pytest.param("42", "", id="number"),
        pytest.param("", "", id="empty"),
    ],
)
def test_words(label: str, words: str) -> None:
    found = [f"{word.rank[:3]}:{word.letters}".removeprefix(":") for word in read_label(label).words]
    assert " ".join(found) == words


@pytest.mark.parametrize(
    ("label", "aside"),
    [
        pytest.param("Exemplum album 'White Giant'", ("cultivar name 'White Giant'",), id="cultivar"),
        pytest.param("Exemplum cf. ?album", ("qualifier cf.", "qualifier ?"), id="qualifiers"),
        pytest.param("Exemplum album (Vane) Tull", ("authors or further words (Vane) Tull",), id="authors"),
        pytest.param("Exemplum album", (), id="nothing"),
    ],
)
def test_set_aside(label: str, aside: tuple[str, ...]) -> None:
    assert read_label(label).set_aside == aside


@pytest.mark.parametrize(
    "label", ["Exemplum × album", "Exemplum x album", "Exemplum ×album", "Exemplum xalbum", "Exemplum *album"]
)
def test_forms_of_the_hybrid_sign(label: str) -> None:
    assert any(one.hybrid and one.key == "exemplumalbum" for one in readings(label))


def test_glued_sign_is_only_one_reading() -> None:
    assert [one.key for one in readings("Exemplum xanthum")] == ["exemplumxanthum", "exemplumanthum"]


@settings(deadline=None, max_examples=200)
@given(st.text(max_size=120))
def test_letters_know_their_place(label: str) -> None:
    """Reading raises on no text, and every letter stands where it says, in order."""
    for reading in readings(label):
        for word in reading.words:
            assert len(word.offsets) == len(word.letters)
            assert list(word.offsets) == sorted(word.offsets)
            assert all(label[offset] in word.printed for offset in word.offsets)
