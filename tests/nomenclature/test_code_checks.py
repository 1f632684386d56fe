"""Checks that need the Code, each as its whole line; and the editions by which articles are numbered."""

from __future__ import annotations

import pytest

from auctorum.nomenclature.checks import check
from auctorum.nomenclature.code import applied
from auctorum.nomenclature.editions import EDITIONS, UnknownEdition, edition_named
from auctorum.nomenclature.standing import standing
from building import corpus_of

DESCRIBED = "description: {kind: description, language: latin}"


def work(id_: str, family: str, *acts: str, treatments: str = "") -> str:
    year = id_.rsplit("-", 1)[1]
    text = f'work: {{id: {id_}, type: book, author: [{{family: {family}}}], issued: "{year}", title: T}}\n'
    listed = "".join(f"- {{{act}}}\n" for act in acts)
    return text + (f"acts:\n{listed}" if acts else "") + (f"treatments:\n{treatments}" if treatments else "")


def new(name: str, specimen: str, more: str = "") -> str:
    type_ = f"type: {{kind: holotype, specimen: {specimen}, herbarium: X}}"
    return f"name: {name}, act: new taxon, {DESCRIBED}, {type_}{more}"


def said(*texts: str, settings: str = "title: Test\n") -> list[str]:
    """What the checks say, without the open questions, as printed."""
    corpus, problems = corpus_of(*texts, settings=settings)
    assert problems == []
    return [f"{one.what} ({one.remedy})" for one in check(applied(corpus)) if one.severity != "open"]


ORRIN = work("orrin-1850", "Orrin", new("Exemplum album", "A 1"))
MOVED = "name: Novum album, act: new combination, basionym: Exemplum album"
ILLEGITIMATE = work("tull-1860", "Tull", new("Exemplum pallens", "B 1", ", cites: [Exemplum album]"))
AS_PRINTED = "nothing to do if the work prints it so; else correct the record"


@pytest.mark.parametrize(
    ("texts", "told"),
    [
        pytest.param(
            [ORRIN, work("vane-1870", "Vane", f"{MOVED}, printed: Novum album Vane")],
            "printed as `Novum album Vane`, by the rules Novum album (Orrin) Vane: "
            "the authors of the basionym are missing (Art. 49.1)",
            id="parentheses-missing",
        ),
        pytest.param(
            [ORRIN, work("vane-1870", "Vane", f"{MOVED}, printed: Novum album (Tull) Vane")],
            "printed as `Novum album (Tull) Vane`, by the rules Novum album (Orrin) Vane: "
            "the authors of the basionym itself are Orrin (Art. 49.1)",
            id="other-parentheses",
        ),
        pytest.param(
            [
                ORRIN,
                ILLEGITIMATE,
                work(
                    "vane-1870",
                    "Vane",
                    "name: Novum pallens, act: new combination, basionym: Exemplum pallens, "
                    "printed: Novum pallens (Tull) Vane",
                ),
            ],
            "printed as `Novum pallens (Tull) Vane`, by the rules Novum pallens Vane: "
            "there is no basionym whose authors could stand in parentheses (Art. 58.1)",
            id="basionym-illegitimate",
        ),
        pytest.param(
            [work("orrin-1850", "Orrin", new("Exemplum album", "A 1", ", printed: Exemplum album Tull"))],
            "printed as `Exemplum album Tull`, by the rules Exemplum album Orrin: its authors are Orrin (Art. 46.1)",
            id="other-authors",
        ),
        pytest.param(
            [work("orrin-1850", "Orrin", new("Exemplum album", "A 1", ", printed: Exemplum alvum Orrin"))],
            "printed as `Exemplum alvum Orrin`, by the rules Exemplum album Orrin: another spelling (Art. 60.1)",
            id="other-spelling",
        ),
        pytest.param(
            [
                ORRIN,
                work("vane-1870", "Vane", MOVED),
                work(
                    "selk-1900", "Selk", treatments="- {taxon: Novum album (Tull) Vane, synonyms: [Exemplum album]}\n"
                ),
            ],
            "printed as `Novum album (Tull) Vane`, by the rules Novum album (Orrin) Vane: "
            "the authors of the basionym itself are Orrin (Art. 49.1)",
            id="in-a-treatment",
        ),
    ],
)
def test_printed_citations_are_compared_with_the_rules(texts: list[str], told: str) -> None:
    assert said(*texts) == [f"{told} ({AS_PRINTED})"]


@pytest.mark.parametrize(
    "printed",
    ["Novum album (Orrin) Vane", "Novum album (Orr.) Vane", "Novum album"],
    ids=["the-same", "abbreviated", "without-authors"],
)
def test_a_citation_by_the_rules_is_no_problem(printed: str) -> None:
    assert said(ORRIN, work("vane-1870", "Vane", f"{MOVED}, printed: {printed}")) == []


def test_a_name_used_without_its_type() -> None:
    """Selk keeps Exemplum longum for another plant: its type he takes into Exemplum album."""
    acts = work("orrin-1850", "Orrin", new("Exemplum album", "A 1"), new("Exemplum longum", "B 1"))
    moved = work("vane-1870", "Vane", "name: Novum longum, act: new combination, basionym: Exemplum longum")
    view = work(
        "selk-1900",
        "Selk",
        treatments="- {taxon: Exemplum album, synonyms: [Novum longum]}\n- {taxon: Exemplum longum}\n",
    )
    assert said(acts, moved, view) == [
        "Exemplum longum Orrin is used in a sense that excludes its type, "
        "which the work takes into Exemplum album Orrin (record it as misapplied, or correct the synonyms)"
    ]


def test_a_species_may_sink_what_its_part_holds() -> None:
    """The species and its variety both hold the type."""
    acts = work("orrin-1850", "Orrin", new("Exemplum album", "A 1"), new("Exemplum album var. longum", "B 1"))
    view = work(
        "selk-1900",
        "Selk",
        treatments="- {taxon: Exemplum album, synonyms: [Exemplum album var. longum]}\n",
    )
    assert said(acts, view) == []


@pytest.mark.parametrize(
    ("one", "other", "how"),
    [
        pytest.param("trinervis", "trinervius", "two endings of one stem", id="ending"),
        pytest.param("album", "longum", "", id="different"),
    ],
)
def test_names_too_alike_are_pointed_at(one: str, other: str, how: str) -> None:
    """ICN Art. 53.2: a judgement, so that nothing is ruled; a recorded ruling ends it."""
    texts = (
        work("orrin-1850", "Orrin", new(f"Exemplum {one}", "A 1")),
        work("vane-1860", "Vane", new(f"Exemplum {other}", "B 1")),
    )
    ruling = work("board-1990", "Board", f"name: Exemplum {one}, act: ruled confusable, against: [Exemplum {other}]")
    told = (
        f"Exemplum {one} Orrin and Exemplum {other} Vane may be too alike ({how}; Art. 53.2) "
        "(if a ruling counts them as homonyms, record it as `act: ruled confusable`)"
    )
    assert said(*texts) == ([told] if how else [])
    assert said(*texts, ruling) == []


def test_open_questions_say_what_to_look_up() -> None:
    corpus, _ = corpus_of(work("orrin-1960", "Orrin", "name: Exemplum album, act: new taxon"))
    assert [(str(one.severity), one.what, one.remedy) for one in check(applied(corpus))] == [
        (
            "open",
            "Exemplum album: the record does not say whether the taxon was described (Art. 38.1)",
            "look up whether a description or diagnosis was given or referred to",
        ),
        ("open", "Exemplum album: a type was needed from 1958 on (Art. 40.1)", "look up which type was indicated"),
    ]


def test_an_unknown_edition_is_a_problem() -> None:
    (told,) = said(ORRIN, settings="title: Test\ncode-edition: Berlin 1988\n")
    assert told.startswith("no edition of the Code `Berlin 1988` is known (one of: Tokyo 1994, Saint Louis 2000")


@pytest.mark.parametrize(
    ("edition", "shenzhen", "cited"),
    [
        # Numbers that moved: ICBN Tokyo 1994, Saint Louis 2000, Vienna 2006 and ICN Melbourne 2012, Shenzhen 2018.
        pytest.param("Shenzhen 2018", "53.3", "Art. 53.3", id="shenzhen"),
        pytest.param("Melbourne 2012", "53.3", "Art. 53.4", id="melbourne-homonyms-below-the-species"),
        pytest.param("Vienna 2006", "39.1", "Art. 36.1", id="vienna-latin"),
        pytest.param("Vienna 2006", "41.5", "Art. 33.4", id="vienna-basionym"),
        pytest.param("Saint Louis 2000", "41.5", "Art. 33.3", id="saint-louis-basionym"),
        pytest.param("Tokyo 1994", "41.5", "Art. 33.2", id="tokyo-basionym"),
        pytest.param("Vienna 2006", "6.10, 58.1", "Art. 6.10, 58.1", id="not-moved"),
        pytest.param("Vienna 2006", "H.10.3", "Art. H.10.3", id="of-chapter-h"),
    ],
)
def test_articles_are_numbered_as_the_edition_does(edition: str, shenzhen: str, cited: str) -> None:
    assert EDITIONS[edition].cite(shenzhen) == cited


def test_an_edition_is_known_by_place_or_year() -> None:
    assert edition_named("Vienna Code") == edition_named("2006") == EDITIONS["Vienna 2006"]
    with pytest.raises(UnknownEdition, match="no edition of the Code `Sydney 1983` is known"):
        edition_named("Sydney 1983")


def test_dates_that_moved_follow_the_edition() -> None:
    """From 2012 English is enough since Melbourne (Art. 39.2); the Vienna Code asked for Latin without end (36.1)."""
    english = "description: {kind: diagnosis, language: english}"
    typed = "type: {kind: holotype, specimen: A 1, herbarium: X, word: holotype}"
    text = work("orrin-2013", "Orrin", f"name: Exemplum album, act: new taxon, {english}, {typed}")
    for edition, remarks in (
        ("Shenzhen 2018", []),
        ("Vienna 2006", ["not valid: description without Latin (Art. 36.1)"]),
    ):
        corpus, _ = corpus_of(text, settings=f"title: Test\ncode-edition: {edition}\n")
        assert list(map(str, standing(applied(corpus), "exemplum-album"))) == remarks
