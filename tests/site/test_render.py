"""Whole pages from a small corpus: what they say, that nothing runs from the data, that links lead somewhere."""

from __future__ import annotations

import json
import re
from html.parser import HTMLParser
from pathlib import Path
from posixpath import dirname, join, normpath
from xml.etree import ElementTree

import pytest

from auctorum.nomenclature.code import applied
from auctorum.site import render as rendering
from auctorum.site.build import build
from auctorum.site.render import render
from building import CHARACTERS, corpus_of

NASTY = "<script>alert(1)</script>"


class Page(HTMLParser):
    """Links, ids, scripts and visible words of a page."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.links: list[tuple[str, str]] = []
        self.ids: list[str] = []
        self.scripts: list[str] = []
        self.tags: list[str] = []
        self.words = ""
        self.attributes: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append(tag)
        if tag in ("td", "th", "li", "dd", "dt"):
            self.words += " "
        for name, value in attrs:
            self.attributes.append(name)
            if name == "id":
                self.ids.append(value or "")
            if name in ("href", "src", "action"):
                self.links.append((tag, value or ""))
        if tag == "script":
            self.scripts.append(dict(attrs).get("src") or "")

    def handle_data(self, data: str) -> None:
        self.words += data


def pages(site: dict[str, str]) -> dict[str, Page]:
    return {path: Page(text) for path, text in site.items() if path.endswith(".html")}


def words(text: str) -> str:
    return " ".join(Page(text).words.split())


def assert_links_lead_somewhere(site: dict[str, str]) -> None:
    read = pages(site)
    for path, page in read.items():
        assert len(page.ids) == len(set(page.ids)), f"{path}: an id twice"
        for tag, link in page.links:
            if link.startswith(("https://", "http://", "mailto:")):
                assert tag == "a", f"{path}: {tag} asks another host"
                continue
            assert not link.startswith("/") and ":" not in link, f"{path}: {link} is not relative"
            file, _, anchor = link.partition("#")
            target = normpath(join(dirname(path), file)) if file else path
            assert target in site, f"{path}: {link} leads nowhere"
            if anchor:
                assert anchor in read[target].ids, f"{path}: {link} has no such anchor"


def test_every_internal_link_resolves(site) -> None:
    assert_links_lead_somewhere(site)


def test_every_internal_link_of_the_shipped_knowledge_base_resolves(demo) -> None:
    assert_links_lead_somewhere(demo)
    for path, page in pages(demo).items():
        assert "Invented" in page.words, path


def test_every_kind_of_page_is_there(site) -> None:
    assert {
        "index.html", "search.html", "problems.html", "glossary.html", "names/index.html", "characters/index.html",
        "publications/index.html", "authors/index.html", "taxa/exemplum-album-var-longum.html",
        "names/exemplum-longum.html", "characters/spur-length.html", "publications/marsh-1904.html",
        "authors/tull.html", "assets/site.css", "assets/search.js", "assets/index.js", "assets/mark.svg",
    } <= set(site)  # fmt: skip


def test_every_page_says_whose_and_that_all_is_invented(site) -> None:
    for path, page in pages(site).items():
        text = site[path]
        assert '<html lang="en">' in text
        assert text.lstrip().lower().startswith("<!doctype html>")
        assert 'href="#main"' in text and "main" in page.ids
        assert "Invented: no such plants, people or places." in page.words
        assert "CC0-1.0" in page.words and "Nobody" in page.words
        assert page.tags.count("h1") == 1


def test_the_answer_of_a_taxon(site) -> None:
    """Written out from the literature of conftest.py by hand."""
    text = words(site["taxa/exemplum-album-var-longum.html"])
    assert "Described as a variety by Orrin 1887, as Exemplum album var. longum." in text
    assert "Raised to species by Marsh & Tull 1904, as Exemplum longum." in text
    assert "as Exemplum album f. longum (not valid: not effectively published, Art. 29.1)." in text
    assert "One work that covers the group leaves it out." in text
    assert "Of four authors or teams who place it, two keep it as a variety (1887–1961)" in text
    assert "The latest, Hask 1961, keeps it as a variety, Exemplum album var. longum." in text
    assert "Holotype: Orrin 212, XX (Orrin 1887)." in text


def test_a_taxon_shows_the_words_with_page_and_reading(site) -> None:
    text = words(site["taxa/exemplum-album-var-longum.html"])
    assert "spur 22–34(–41) mm long" in text
    assert "22–34(–41) mm" in text
    assert "The words" in text


def test_the_first_page_has_cautions_counts_and_the_contested_name(site) -> None:
    text = words(site["index.html"])
    assert "Cliffs are dangerous: never go alone." in text
    assert re.search(r"\b5 ?publications read", text)
    assert "variety (2 authors), species (1), synonym of Exemplum album (1)" in text


def test_a_name_tells_its_standing(site) -> None:
    assert "not effectively published (Art. 29.1)" in words(site["names/exemplum-album-f-longum.html"])
    longum = words(site["names/exemplum-longum.html"])
    assert "Exemplum longum (Orrin) Marsh & Tull" in longum
    assert "No rule that is checked here speaks against the name." in longum


def test_a_publication_has_its_entry_and_doi(site) -> None:
    text = site["publications/marsh-1904.html"]
    assert 'href="https://doi.org/10.9999/nowhere.1904"' in text
    assert "Marsh, A. & Tull, B. 1904. A synopsis. Press, Harbour." in words(text)
    entry = words(site["publications/orrin-1887.html"])
    assert "Orrin, T. 1887. Plantae novae. Annals of Nowhere 4: 1–20." in entry
    assert "leaves out Exemplum album var. longum" in words(site["publications/quill-1938.html"])


def test_problems_are_listed_with_their_place(site) -> None:
    text = words(site["problems.html"])
    assert "2 errors and 1 warning" in text
    assert "literature/selk-1923.yaml:12:7 no name `Exemplum albun` nearest: Exemplum album" in text
    assert "literature/a.yaml:2:1 also in literature/b.yaml keep one" in text


def test_pictures_are_well_formed_and_have_a_table_beside_them(site) -> None:
    text = site["taxa/exemplum-album-var-longum.html"]
    found = re.findall(r"<svg xmlns.*?</svg>", text, re.DOTALL)
    assert len(found) >= 4
    for picture in found:
        root = ElementTree.fromstring(picture)
        assert root.get("role") == "img" and root[0].tag.endswith("title") and root[1].tag.endswith("desc")
    assert "The same as a table" in text


def test_no_machine_path_and_no_time_of_building(site) -> None:
    for path, text in site.items():
        assert str(Path.cwd()) not in text and str(Path.home()) + "/" not in text, path
        assert "/secret" not in text, path
        assert not re.search(r"\b\d\d:\d\d:\d\d\b", text), path


def test_the_same_records_give_the_same_bytes_on_one_core_and_on_all(corpus, problems, site, monkeypatch) -> None:
    assert list(render(applied(corpus), problems)) == list(site.items())
    monkeypatch.setattr(rendering, "SERIAL_UP_TO", 0)
    monkeypatch.setattr(rendering.os, "cpu_count", lambda: 2)
    assert list(render(applied(corpus), problems)) == list(site.items())


def test_building_tells_each_file(corpus, problems, site, tmp_path) -> None:
    told: list[str] = []
    assert build(applied(corpus), problems, tmp_path / "site", told.append) == len(site) == len(told)
    for path, text in site.items():
        assert (tmp_path / "site" / path).read_bytes() == text.encode()


@pytest.fixture(scope="module")
def hostile() -> dict[str, str]:
    """A site of records that try to break out wherever the schema leaves them free."""
    quoted = json.dumps(NASTY)
    literature = f"""\
work: {{id: nasty-1900, type: {quoted}, author: [{{family: {quoted}, given: {quoted}}}], issued: "1900",
  title: {quoted}, container-title: {quoted}, DOI: "javascript:alert(1)", URL: "javascript:alert(1)", note: {quoted}}}
acts:
- {{name: Exemplum album, act: new taxon, page: {quoted}, verbatim: {quoted}, note: {quoted},
   type: {{kind: holotype, specimen: {quoted}, verbatim: {quoted}}}}}
treatments:
- taxon: Exemplum album
  note: {quoted}
  traits: [{{character: spur length, verbatim: {json.dumps(NASTY + " 5 mm")}, page: {quoted}, note: {quoted}}}]
"""
    characters = CHARACTERS.replace("{name: green}", f"{{name: green, meaning: {quoted}}}")
    settings = f"title: {quoted}\ndescription: {quoted}\nnotice: {quoted}\ncautions: [{quoted}]\neditors: [{quoted}]\n"
    corpus, _ = corpus_of(literature, characters=characters, settings=settings)
    return dict(render(applied(corpus), ()))


def test_hostile_words_are_shown_and_never_run(hostile) -> None:
    for path, page in pages(hostile).items():
        expected = ["assets/index.js", "assets/search.js"] if path == "search.html" else []
        assert page.scripts == expected, f"{path}: a script of the data"
        assert not [name for name in page.attributes if name.startswith("on")], path
        assert NASTY in page.words, f"{path} has the hostile notice, as words"
        assert all("javascript" not in link for _, link in page.links), path
    assert_links_lead_somewhere(hostile)


def test_the_index_of_search_is_data_alone(hostile) -> None:
    text = hostile["assets/index.js"]
    assert "<" not in text and ">" not in text and "&" not in text
    head, _, rows = text.partition("=")
    assert head == "window.auctorumIndex"
    assert [row[0] for row in json.loads(rows.rstrip(";\n"))].count("names") == 1


def test_an_empty_knowledge_base_has_pages_too() -> None:
    corpus, _ = corpus_of()
    assert_links_lead_somewhere(dict(render(applied(corpus), ())))


def test_epithets_over_a_comparison_are_set_as_names(demo) -> None:
    page = demo["apart/cremnocentron-album-var-longum.html"]
    assert '<th scope="col"><i>longum</i></th><th scope="col"><i>robustum</i></th>' in page
    assert "<i>Cremnocentron album</i> var. <i>robustum</i></a></li>" in page.replace("</i> <i>", " ")
    assert "<i>longum</i> from 25 mm on" in page and 'data-label="longum"' in page
