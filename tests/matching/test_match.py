"""Which name a label means, and when none is named. The names are invented."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.matching.index import NameIndex, index_corpus, index_of
from auctorum.matching.match import match
from auctorum.names.format import format_name
from auctorum.names.name import Name, Ranked
from auctorum.names.parse import parse_name
from building import corpus_of

NAMES = (
    "Exemplum album",
    "Exemplum album var. longum",
    "Exemplum album subsp. longum",
    "Exemplum album var. pictum",
    "Exemplum sylvestre",
    "Exemplum novae-lucis",
    "Exemplum tullianum",
    "Exemplum macrophyllum",
    "Exemplum arenosum",
    "Exemplum robustum",
    "Ornatella robusta",
    "Ornatella mollissima",
    "Ornatella × mixta",
    "Ornatella",
)


def index_over(*names: str) -> NameIndex:
    return index_of((name, parse_name(name)) for name in names)


INDEX = index_over(*NAMES)


@pytest.mark.parametrize("name", NAMES)
def test_each_name_matches_itself(name: str) -> None:
    found = match(name, INDEX)
    assert found.best is not None
    assert (found.verdict, found.best.id, found.best.score, found.best.kind) == ("one", name, 1.0, "same words")


@pytest.mark.parametrize(
    ("label", "name", "kind"),
    [
        pytest.param("EXEMPLUM ALBUM", "Exemplum album", "another capital", id="capitals"),
        pytest.param("Exemplum albus", "Exemplum album", "gender ending", id="gender"),
        pytest.param("Exemplum silvestre", "Exemplum sylvestre", "Latin spelling", id="i-for-y"),
        pytest.param("Exemplum novelucis", "Exemplum novae-lucis", "Latin spelling, space or hyphen", id="e-for-ae"),
        pytest.param("Exemplum novae lucis", "Exemplum novae-lucis", "space or hyphen", id="space-for-hyphen"),
        pytest.param("Exemplumalbum", "Exemplum album", "space or hyphen", id="joined"),
        pytest.param("Exemplum tulianum", "Exemplum tullianum", "doubled letter", id="single-for-double"),
        pytest.param("Exemplum tullanum", "Exemplum tullianum", "Latin spelling", id="ana-for-iana"),
        pytest.param("Exernplum album", "Exemplum album", "look-alike letters", id="rn-for-m"),
        pytest.param("Exemplum macrohpyllum", "Exemplum macrophyllum", "letters swapped", id="swapped"),
        pytest.param("Exemplum macropyllum", "Exemplum macrophyllum", "letter missing", id="missing"),
        pytest.param("Exemplum macrovphyllum", "Exemplum macrophyllum", "letter too many", id="too-many"),
        pytest.param("Exemplum macrophxllum", "Exemplum macrophyllum", "another letter", id="another"),
        pytest.param("Exemplum macriphyllum", "Exemplum macrophyllum", "connecting vowel", id="vowel"),
        pytest.param("Exemplum macroph…", "Exemplum macrophyllum", "cut short", id="cut"),
        pytest.param("E. sylvestre", "Exemplum sylvestre", "abbreviated genus", id="abbreviated"),
        pytest.param(
            "E. macropyllum",
            "Exemplum macrophyllum",
            "letter missing, abbreviated genus",
            id="abbreviated-and-misspelt",
        ),
        pytest.param("Exemplum album v. pictum", "Exemplum album var. pictum", "same words", id="odd-rank"),
        pytest.param("Exemplum album f. pictum", "Exemplum album var. pictum", "another rank", id="wrong-rank"),
        pytest.param("Exemplum album pictum", "Exemplum album var. pictum", "rank left out", id="no-rank"),
        pytest.param("Ornatella mixta", "Ornatella × mixta", "hybrid sign", id="no-sign"),
        pytest.param("Ornatella cf. mollissima Vane", "Ornatella mollissima", "same words", id="surroundings"),
        pytest.param("exemplum album giant form", "Exemplum album", "another capital", id="further-words"),
    ],
)
def test_one_name(label: str, name: str, kind: str) -> None:
    found = match(label, INDEX)
    assert found.best is not None, found
    assert (found.best.id, found.best.kind) == (name, kind)
    assert 0.7 <= found.best.score <= 1


@pytest.mark.parametrize(
    ("label", "ids"),
    [
        pytest.param("Exemplum album longum", {NAMES[1], NAMES[2]}, id="rank-would-decide"),
        pytest.param("E. album", {"Exemplum album", "Exampla album"}, id="initial-of-two-genera"),
    ],
)
def test_several_names(label: str, ids: set[str]) -> None:
    found = match(label, index_over(*NAMES, "Exampla album"))
    assert (found.verdict, found.best, found.why) == ("several", None, "2 names are as near")
    assert {one.id for one in found.candidates[:2]} == ids


@pytest.mark.parametrize(
    ("label", "why"),
    [
        pytest.param("Exemplum", "only one word: no species is named", id="genus-only"),
        pytest.param("Exemplum sp. 3", "only one word: no species is named", id="no-species"),
        pytest.param("Exemplum nigrum", "nothing is near enough", id="other-species"),
        pytest.param("Garden hedge plant", "nothing is near enough", id="no-plant-name"),
        pytest.param("?? 12", "there is no name in it", id="no-word"),
        pytest.param("Exemplum microphyllum", "microphyllum and macrophyllum mean different things", id="contrary"),
        pytest.param("Exemplum altus", "too much of the word altus differs", id="short-word"),
        pytest.param("Ornatella alba", "nothing is near enough", id="other-genus"),
        pytest.param(
            "Exemplum longum",
            "no such combination is known; its last epithet is, at another rank or position",
            id="other-rank",
        ),
    ],
)
def test_no_name(label: str, why: str) -> None:
    found = match(label, INDEX)
    assert (found.verdict, found.best, found.why) == ("none", None, why)


def test_a_known_word_is_not_corrected() -> None:
    """Beside a genus or epithet that other names have, a near name is shown but not answered."""
    names = ("Exemplum sericeum", "Ornatella serotina", "Ornatella sericina")
    found = match("Exemplum serotinum", index_over(*names))
    assert found.verdict == "none"


def test_places_are_those_of_the_label() -> None:
    """`Exemplum cf. tulianum`: the second l belongs after the seventeenth letter, counted from 0."""
    found = match("Exemplum cf. tulianum", INDEX)
    assert found.best is not None
    difference = found.best.differences[0]
    assert (difference.label_part, difference.name_part, difference.position) == ("", "l", 16)


def test_authors_decide_between_homonyms() -> None:
    homonyms = index_of([("a", parse_name("Exemplum rarum Vane")), ("b", parse_name("Exemplum rarum Tull & Orrin"))])
    assert match("Exemplum rarum", homonyms).verdict == "several"
    best = match("Exemplum rarum Tul & Orin", homonyms).best
    assert best is not None
    assert best.id == "b"


def test_variant_spellings_lead_to_the_name() -> None:
    corpus, problems = corpus_of(
        "work: {id: vane-1900, type: book, author: [{family: Vane}], issued: '1900', title: T}\n"
        "acts:\n- {name: Exemplum, act: new taxon}\n- {name: Exemplum wrightii, act: new taxon}\n"
        "- {name: Exemplum raitii, act: variant spelling, of: Exemplum wrightii}\n"
    )
    assert problems == []
    best = match("Exemplum raitii", index_corpus(corpus)).best
    assert best is not None
    assert format_name(best.name) == "Exemplum wrightii Vane"


@settings(deadline=None, max_examples=200)
@given(st.text(max_size=80) | st.text(alphabet="Exemplum albvr.×x?'()-…1 ", max_size=60))
def test_no_text_raises(label: str) -> None:
    found = match(label, INDEX)
    assert (found.best is not None) == (found.verdict == "one")
    assert all(0 <= one.score <= 1 for one in found.candidates)


SYLLABLES = st.sampled_from(["al", "bi", "co", "dru", "fer", "gla", "mon", "nu", "pri", "ra", "sil", "tu"])
STEMS = st.lists(SYLLABLES, min_size=2, max_size=5).map("".join)
EPITHETS = st.tuples(STEMS, st.sampled_from(["us", "a", "um", "is", "e", "ii"])).map("".join)
GENERA = STEMS.map(lambda stem: f"{stem.capitalize()}a")


@settings(deadline=None, max_examples=100)
@given(st.sets(st.tuples(GENERA, EPITHETS, st.none() | EPITHETS), min_size=1, max_size=12))
def test_every_name_of_an_index_is_its_own_match(parts: set[tuple[str, str, str | None]]) -> None:
    names = [
        Name(genus, species, (Ranked("variety", lower),) if lower else ())
        for genus, species, lower in sorted(parts, key=str)
    ]
    index = index_of((format_name(name), name) for name in names)
    for name in names:
        best = match(format_name(name), index).best
        assert best is not None
        assert best.id == format_name(name)


def test_a_long_label_costs_little() -> None:
    """Only the first letters of a text are read, so a page pasted by mistake is answered at once."""
    assert match("Exemplum album " + "a" * 1_000_000, INDEX).verdict == "one"
