"""The page of the rules, the pages that compare works, and the terms that they use."""

from __future__ import annotations

import re
from html import unescape

import pytest

from auctorum.nomenclature.code import applied
from auctorum.nomenclature.compare import compare
from auctorum.nomenclature.compare_wording import plain, sentence, summary
from auctorum.nomenclature.rules.table import VALIDITY
from auctorum.site.answers import Answers
from auctorum.site.compared import MOST, Compared
from auctorum.site.render import Renderer, render
from auctorum.site.rules_page import LEGITIMACY, rules_page, told
from auctorum.site.words import text_of
from building import corpus_of


def words(text: str) -> str:
    spaced = re.sub(r"</?(?:td|th|tr|p|li|ul|h\d|summary|details|dt|dd|small|div)\b[^>]*>", " ", text)
    return " ".join(unescape(re.sub(r"<[^>]*>", "", spaced)).split())


# --- the rules


def test_every_rule_of_the_engine_has_its_line(demo) -> None:
    text = words(demo["rules.html"])
    for rule in (*VALIDITY, *(rule for rule, _ in LEGITIMACY)):
        article, sentences = told(rule)
        assert sentences and sentences in text, rule.__name__
        assert not article or f"Art. {article}" in text, rule.__name__


@pytest.mark.parametrize(
    ("article", "speaks_of"),
    [
        pytest.param("38.1", [("Cremnocentron album var. roseum Hollinsay", "Hollinsay 1962")], id="nomen-nudum"),
        pytest.param("29–31", [("Cremnocentron ivernayense Nunnaly", "Nunnaly 1987")], id="thesis"),
        pytest.param("53.1, 53.3", [("Cremnocentron pendulum Falkenreut", "Falkenreut 1908")], id="later-homonym"),
        pytest.param("52.1", [("Cremnocentron candidum Falkenreut", "Falkenreut 1908")], id="superfluous"),
        pytest.param("23.4", [], id="no-tautonym-here"),
    ],
)
def test_a_rule_links_to_the_acts_it_speaks_of(demo_code, article: str, speaks_of: list[tuple[str, str]]) -> None:
    page = rules_page(Answers(demo_code, ()))
    row = next(row for *_, rows in page.groups for row in rows if row.article == f"Art. {article}")
    assert [(text_of(name), text_of(work)) for name, work, _ in row.acts] == speaks_of
    for name, work, _ in row.acts:
        assert name[0].href.startswith("names/") and work[0].href.startswith("publications/")


def test_every_ruling_is_found_under_some_rule(demo_code) -> None:
    """Two ways: counted from the judgements, and rule by rule."""
    page = rules_page(Answers(demo_code, ()))
    by_rule = sum(len(row.acts) for *_, rows in page.groups for row in rows)
    assert by_rule == sum(len(one.rulings) for one in demo_code.acts.values()) > 0


def test_the_edition_followed_numbers_its_articles() -> None:
    """Art. 53.2 of Shenzhen 2018 is Art. 53.3 of Vienna 2006, which asks for Latin without end (from memory)."""
    corpus, _ = corpus_of(settings="title: Test\ncode-edition: Vienna 2006\n")
    text = words(dict(render(applied(corpus), ()))["rules.html"])
    assert "Vienna 2006" in text and "without end of date" in text
    assert "Art. 53.3 Names on different types so alike as to be confused count as homonyms" in text


# --- works compared


def test_each_two_works_of_the_demo_have_their_section(demo, demo_code) -> None:
    works = Compared(demo_code.corpus).works
    assert len(works) == 19 <= MOST
    for work in works:
        text = demo[f"compare/{work}.html"]
        anchors = re.findall(r'<section class="part" id="([^"]+)">', text)
        assert anchors == [other for other in works if other != work]
        assert "<script" not in text
        assert f'href="../compare/{work}.html"' in demo[f"publications/{work}.html"]
    assert demo["compare.html"].count('type="radio"') == len(works)
    assert 'href="compare/quessel-1951.html#yarrend-2022"' in demo["compare.html"]


@pytest.mark.parametrize(("a", "b"), [("quessel-1951", "yarrend-2022"), ("maddrick-1923", "brandow-1934")])
def test_a_section_says_what_the_engine_says_of_the_whole_corpus(demo, demo_code, a: str, b: str) -> None:
    corpus = demo_code.corpus
    whole = compare(corpus, a, b)
    text = demo[f"compare/{a}.html"].partition(f'id="{b}">')[2].partition("</section>")[0]
    assert summary(whole) in words(text)
    told = [one for one in whole.changes if one.is_change and one.absence != "does not set out to treat it"]
    for change in told:
        assert plain(sentence(corpus, whole, change)) in words(text)


def test_a_page_leads_from_the_menu_to_the_comparison_and_the_rules(demo) -> None:
    for path, text in demo.items():
        if path.endswith(".html"):
            root = "../" * path.count("/")
            assert f'href="{root}compare.html"' in text and f'href="{root}rules.html"' in text, path


def test_of_many_works_those_that_place_the_most_are_compared() -> None:
    names = ("album", "rubrum", "nigrum")
    acts = "\n".join(f'- {{name: Exemplum {one}, act: new taxon, page: "1"}}' for one in names)
    first = f"""\
work: {{id: vane-1800, type: book, author: [{{family: Vane}}], issued: "1800", title: Flora}}
acts:
- {{name: Exemplum, act: new taxon, page: "1"}}
{acts}
"""
    later = [
        f'work: {{id: w-{year}, type: book, author: [{{family: Tull}}], issued: "{year}", title: Flora}}\ntreatments:\n'
        + "".join(f"- {{taxon: Exemplum {one}, under: Exemplum}}\n" for one in names[: 3 if year % 2 else 2])
        for year in range(1801, 1846)
    ]
    found = Compared(corpus_of(first, *later)[0])
    assert len(found.works) == MOST
    assert all(int(work[2:]) % 2 for work in found.works), "those that place all three"
    assert list(found.works) == sorted(found.works)


def test_a_single_work_is_compared_with_nothing(site) -> None:
    corpus, _ = corpus_of()
    assert Compared(corpus).works == ()
    assert "No two works here" in dict(render(applied(corpus), ()))["compare.html"]


# --- the terms


@pytest.mark.parametrize(
    "term",
    [
        "validly published", "legitimate", "illegitimate", "superfluous", "isonym", "homonym", "autonym", "basionym",
        "replacement name", "designation", "undetermined", "correct name",
    ],
)  # fmt: skip
def test_the_terms_that_pages_show_are_explained(demo, term: str) -> None:
    assert f'<dt id="{term.replace(" ", "-")}">{term}</dt>' in demo["glossary.html"]


def test_heavy_answers_are_computed_once(demo_code) -> None:
    renderer = Renderer(demo_code, ())
    treatment = next(iter(demo_code.corpus.treatments.values()))
    assert renderer.answers.correct_then(treatment) is renderer.answers.correct_then(treatment)
    assert renderer.answers.correct_now(treatment) is renderer.answers.correct_now(treatment)
