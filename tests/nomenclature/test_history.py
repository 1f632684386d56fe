"""How a name moved: acts, placements, the tally of views, silence; and what the Code says of each act."""

from __future__ import annotations

import pytest

from auctorum.nomenclature.code import applied
from auctorum.nomenclature.history import history, latest_placement
from auctorum.nomenclature.standing import standing, standing_of_act
from building import corpus_of


def work(id_: str, family: str, rest: str = "", **more: str) -> str:
    extra = "".join(f", {key.replace('_', '-')}: {value}" for key, value in more.items())
    year = id_.rsplit("-", 1)[1]
    head = f'work: {{id: {id_}, type: book, author: [{{family: {family}}}], issued: "{year}", title: T{extra}}}\n'
    return head + rest


GENUS = "acts:\n- {name: Exemplum, act: new taxon}\n- {name: Exemplum album, act: new taxon}\n"
ORRIN = work(
    "orrin-1881",
    "Orrin",
    "covers: [Exemplum]\n" + GENUS + "- {name: Exemplum album var. longum, act: new taxon, page: '4'}\n"
    "treatments:\n- {taxon: Exemplum album var. longum, under: Exemplum album, page: '4'}\n",
)
TULL = work("tull-1900", "Tull", "covers: [Exemplum]\ntreatments:\n- {taxon: Exemplum album, under: Exemplum}\n")
VANE = work(
    "vane-1922", "Vane", "acts:\n- {name: Exemplum longum, act: change of rank, basionym: Exemplum album var. longum}\n"
)
SELK = work("selk-1950", "Selk", "treatments:\n- {taxon: Exemplum album, synonyms: [Exemplum longum]}\n")
MISS = work("miss-1960", "Miss", "treatments:\n- {taxon: Exemplum album, misapplied: [Exemplum longum]}\n")
LATE = work("late-1990", "Orrin", "treatments:\n- {taxon: Exemplum album var. longum, under: Exemplum album}\n")
TYPED = "acts:\n- {name: Exemplum b-c, act: new taxon, type: {kind: holotype, specimen: A 1, herbarium: X}}\n"
EARLY = work("early-1880", "Early", "covers: [Exemplum]\n")


@pytest.fixture
def found():
    corpus, problems = corpus_of(LATE, MISS, SELK, VANE, TULL, ORRIN, EARLY)
    assert problems == []
    return history(applied(corpus), "exemplum-album-var-longum")


def test_events_stand_in_order_of_time(found) -> None:
    assert [
        (event.year, event.is_act, event.what, event.rank, event.parent or event.target) for event in found.events
    ] == [
        (1881, True, "new taxon", "variety", None),
        (1881, False, "accepted", "variety", "exemplum-album"),
        (1922, True, "change of rank", "species", None),
        (1950, False, "synonym of", "species", "exemplum-album"),
        (1960, False, "misapplied to", "species", "exemplum-album"),
        (1990, False, "accepted", "variety", "exemplum-album"),
    ]


def test_views_count_authors_once(found) -> None:
    """Orrin holds the same view twice: two works, one author. An act alone is a view; a misapplication is none."""
    assert [(view.label, view.authors, view.works, view.first, view.last) for view in found.views] == [
        ("variety", ("Orrin",), ("orrin-1881", "late-1990"), 1881, 1990),
        ("species", ("Vane",), ("vane-1922",), 1922, 1922),
        ("synonym of Exemplum album", ("Selk",), ("selk-1950",), 1950, 1950),
    ]


def test_silence_is_that_of_works_that_cover_the_group_since_the_name_exists(found) -> None:
    assert found.silent == ("tull-1900",)


def test_latest_placement() -> None:
    corpus, _ = corpus_of(ORRIN, VANE, SELK)
    placed = latest_placement(corpus, "exemplum-longum")
    assert placed is not None and (placed.work, placed.accepted) == ("selk-1950", "exemplum-album")
    assert latest_placement(corpus, "exemplum") is None


@pytest.mark.parametrize(
    ("texts", "name", "label", "article"),
    [
        pytest.param(
            [work("a-1950", "A", "acts:\n- {name: Exemplum b-c, act: new taxon}\n", effectively_published="false")],
            "exemplum-b-c",
            "not valid: not effectively published",
            "Art. 29.1",
            id="thesis",
        ),
        pytest.param(
            [work("a-1950", "A", "acts:\n- {name: Exemplum b-c, act: new taxon, accepted: false}\n")],
            "exemplum-b-c",
            "not valid: not accepted by its author",
            "Art. 36.1",
            id="provisional",
        ),
        pytest.param(
            [work("a-1950", "A", "acts:\n- {name: Exemplum b-c, act: new taxon, description: {kind: none}}\n")],
            "exemplum-b-c",
            "not valid: nomen nudum",
            "Art. 38.1",
            id="nomen-nudum",
        ),
        pytest.param(
            [work("a-1952", "A", "acts:\n- {name: Exemplum b-c, act: new taxon, rank: unranked}\n")],
            "exemplum-b-c",
            "without rank",
            "Art. 37.3",
            id="unranked-to-1952",
        ),
        pytest.param(
            [work("a-1953", "A", "acts:\n- {name: Exemplum b-c, act: new taxon, rank: unranked}\n")],
            "exemplum-b-c",
            "not valid: without rank",
            "Art. 37.1",
            id="unranked-from-1953",
        ),
        pytest.param(
            [
                work("a-1900", "A", "acts:\n- {name: Exemplum b-c, act: new taxon}\n"),
                work(
                    "a-1960",
                    "A",
                    "acts:\n- {name: Exemplum d-e, act: new combination, basionym: Exemplum b-c, "
                    "basionym-reference: partial}\n",
                ),
            ],
            "exemplum-d-e",
            "not valid: reference to the basionym incomplete",
            "Art. 41.5",
            id="partial-basionym-after-1952",
        ),
        pytest.param(
            [
                work("a-1900", "A", "acts:\n- {name: Exemplum b-c, act: new taxon}\n"),
                work("d-1910", "D", "acts:\n- {name: Exemplum b-c, act: new taxon}\n"),
            ],
            "exemplum-b-c-d-1910",
            "later homonym, illegitimate",
            "Art. 53.1",
            id="later-homonym",
        ),
        pytest.param(
            [
                work("a-1900", "A", "acts:\n- {name: Exemplum b-c, act: new taxon}\n"),
                work("d-1910", "D", "acts:\n- {name: Exemplum f-g, act: new taxon, cites: [Exemplum b-c]}\n"),
            ],
            "exemplum-f-g",
            "superfluous, illegitimate",
            "Art. 52.1",
            id="superfluous, illegitimate",
        ),
        pytest.param(
            [
                work(
                    "a-1900",
                    "A",
                    TYPED,
                ),
                work(
                    "d-1910",
                    "D",
                    TYPED,
                ),
            ],
            "exemplum-b-c",
            "isonym",
            "Art. 6.3 Note 2",
            id="isonym",
        ),
    ],
)
def test_standing(texts: list[str], name: str, label: str, article: str) -> None:
    """Each rule of the Code (ICN, Shenzhen 2018) on the smallest records that show it, and nothing else said."""
    corpus, _ = corpus_of(*texts)
    remarks = [one for act in corpus.acts_of(name) for one in standing_of_act(applied(corpus), act)]
    assert [(one.label, one.article) for one in remarks] == [(label, article)]


def test_a_name_has_the_standing_of_the_act_that_published_it() -> None:
    """That somebody published it again, or spelt it otherwise, takes nothing from the first."""
    corpus, _ = corpus_of(work("a-1900", "A", TYPED), work("d-1910", "D", TYPED))
    assert standing(applied(corpus), "exemplum-b-c") == ()
    assert [one.label for one in standing_of_act(applied(corpus), corpus.acts_of("exemplum-b-c")[1])] == ["isonym"]


def test_a_circle_of_basionyms_has_a_history_all_the_same() -> None:
    circle = (
        "acts:\n- {name: Exemplum rubrum, act: new combination, basionym: Altera rubra}\n"
        "- {name: Altera rubra, act: new combination, basionym: Exemplum rubrum}\n"
    )
    corpus, problems = corpus_of(work("a-1900", "A", circle))
    assert "in a circle" in problems[0]
    assert len(history(applied(corpus), corpus.names["altera-rubra"].group).events) == 2


def test_the_first_of_two_homonyms_stands() -> None:
    corpus, _ = corpus_of(
        work("a-1900", "A", "acts:\n- {name: Exemplum b-c, act: new taxon}\n"),
        work("d-1910", "D", "acts:\n- {name: Exemplum b-c, act: new taxon}\n"),
    )
    assert standing(applied(corpus), "exemplum-b-c-a-1900") == ()
