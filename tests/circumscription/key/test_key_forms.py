"""Keys as text, Markdown, a web page and data: numbering, links, italics, escapes and what stands below."""

from __future__ import annotations

import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from auctorum.characters.vocabulary import Character, Kind, State, Vocabulary
from auctorum.circumscription.diagnosis import finding
from auctorum.circumscription.key import evaluate, key_of
from auctorum.circumscription.key.forms import as_markdown, as_text, key_data, wrapped
from auctorum.circumscription.key.page import as_html
from auctorum.circumscription.key.words import ONLY_THESE, Page, notes
from key_cases import VOCABULARY, evidence, plant, said

NAMES = {id_: ((f"Exemplum {id_}", True),) for id_ in "abc"}


def page(group, plants=(), cautions=("Ask first.",)) -> Page:
    found = key_of(group, VOCABULARY)
    return Page(found, NAMES, evaluate(found, plants), "over all works", cautions)


THREE = {"a": said(leaf_length=(10, 18)), "b": said(leaf_length=(22, 30)), "c": said(leaf_length=(44, 60))}
ALIKE = {"a": said(leaf_length=(10, 30), seed_surface=("smooth",)), "b": said(leaf_length=(10, 30))}


def test_text_has_numbered_couplets_with_the_way_back() -> None:
    lines = as_text(page(THREE)).splitlines()
    assert lines[0] == "Key to Exemplum a, Exemplum b and Exemplum c: over all works"
    assert re.fullmatch(r"1     Leaves at least 35 mm long \.+ Exemplum c", lines[2])
    assert re.fullmatch(r"–     Leaves less than 35 mm long \.+ 2", lines[3])
    assert re.fullmatch(r"2\(1\)  Leaves at least 20 mm long \.+ Exemplum b", lines[5])
    assert all(len(line) == 88 for line in lines[2:4])
    assert lines[-1] == "- Ask first."


def test_below_stands_what_to_expect_and_the_limits() -> None:
    told = as_text(
        page(THREE, [plant("a", leaf_length=12), plant("a", leaf_length=25), plant("b", seed_surface="smooth")])
    )
    plain = " ".join(told.split())
    assert "1.7 steps to a name; 0 % of plants come out wrong." in plain
    assert "Tried on 2 measured plants of the knowledge base, named by A. Collector: right 1, wrong 1 (50 %" in plain
    assert "On 1 more nothing was observed that the key asks." in plain
    assert "Most often mistaken: Exemplum a for Exemplum b (1)" in plain
    assert "Most go astray at couplet 2, on leaf length: 1 of 2 plants." in plain
    assert ONLY_THESE in plain


def test_without_plants_it_says_so() -> None:
    assert "No measured plant of the knowledge base bears the name" in as_text(page(THREE)).replace("\n", " ")


def test_a_group_says_why_and_what_would_help() -> None:
    (note,) = notes(page(ALIKE))
    assert "".join(text for text, _ in note) == (
        "(a) Exemplum a and Exemplum b can’t be parted here. One character alone is stated for each of them, leaf "
        "length; it overlaps. What would help: seed surface of Exemplum b, of which nobody says anything."
    )
    assert ("Exemplum b", True) in note


def test_markdown_has_italics_and_escapes() -> None:
    told = as_markdown(page(THREE))
    assert told.startswith("## Key to *Exemplum a*, *Exemplum b* and *Exemplum c*: over all works\n\n")
    assert "**1** Leaves at least 35 mm long … *Exemplum c*\\\n**–** Leaves less than 35 mm long … **2**\n" in told
    odd = replace(page(THREE), names={**NAMES, "c": (("Exemplum c*", True),)}, cautions=("<b>",))
    assert r"*Exemplum c\**" in as_markdown(odd) and r"- \<b\>" in as_markdown(odd)


class Links(HTMLParser):
    """Ids, links and tags of a page; a tag left open is a fault."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.ids: list[str] = []
        self.links: list[str] = []
        self.tags: list[str] = []
        self.open: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag, attrs) -> None:
        told = dict(attrs)
        self.ids += [told["id"]] if "id" in told else []
        self.links += [told["href"]] if "href" in told else []
        self.tags.append(tag)
        if tag != "meta":
            self.open.append(tag)

    def handle_endtag(self, tag) -> None:
        assert self.open.pop() == tag


def test_the_page_links_there_and_back_and_fetches_nothing() -> None:
    told = as_html(page(THREE))
    found = Links(told)
    assert found.open == []
    assert found.ids == ["couplet-1", "couplet-2"]
    assert sorted(found.links) == ["#couplet-1", "#couplet-2"]
    assert not {"script", "link", "img", "iframe"} & set(found.tags)
    assert "http" not in told and "url(" not in told and "@import" not in told
    assert "<i>Exemplum a</i>" in told and ":target" in told and "prefers-color-scheme" in told


@pytest.mark.parametrize("bad", ["<b>", '"><script>alert(1)</script>', "&amp;"])
def test_the_page_escapes_names_states_and_cautions(bad) -> None:
    seed = Character("seed surface", "seed", "surface", Kind.NOMINAL, states=(State(bad), State("smooth")))
    findings = {
        id_: (finding(seed, "", [evidence(seed, (state,))], ()),) for id_, state in (("a", bad), ("b", "smooth"))
    }
    found = key_of(findings, Vocabulary((seed,)))
    told = as_html(Page(found, {**NAMES, "a": ((bad, True),)}, None, bad, (bad,)))
    tags = Links(told).tags
    assert "b" not in tags and "script" not in tags
    assert bad not in told.replace("&amp;amp;", "")


def test_data_hold_rules_and_ends() -> None:
    data = key_data(page(THREE))
    first = data["couplets"][0]
    assert first["rules"] == [{"stage": "", "threshold": 35.0}]
    assert [lead["goes_to"] for lead in first["leads"]] == [None, 2]
    assert [lead["taxa"] for lead in first["leads"]] == [["c"], []]
    assert data["cautions"] == ["Ask first."] and data["evaluation"]["plants"] == 0


@pytest.mark.parametrize("width", [20, 40, 88])
def test_wrapping_loses_no_word(width) -> None:
    runs = (("Most often mistaken: ", False), ("Exemplum album", True), (" for ", False), ("Exemplum luteum", True))
    lines = list(wrapped(runs, width))
    text = " ".join("".join(run for run, _ in line) for line in lines)
    assert text.split() == "".join(run for run, _ in runs).split()
    assert all(len("".join(run for run, _ in line)) <= width for line in lines)
