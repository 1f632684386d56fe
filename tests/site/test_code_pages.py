"""What the Code makes of names, as the pages show it: in words, with reasons, without a script.

The small literature below was judged by hand, with the articles of the Shenzhen Code; the site has to say the same.
"""

from __future__ import annotations

import re
from functools import partial
from html import unescape

import pytest

from auctorum.nomenclature.code import applied
from auctorum.nomenclature.standing import abbreviations
from auctorum.nomenclature.synonymy import synonymy
from auctorum.nomenclature.synonymy_text import INDENT, as_text
from auctorum.site.answers import Answers
from auctorum.site.extract import Extracts
from auctorum.site.render import render
from auctorum.site.synonymies import synonymy_views
from auctorum.site.words import text_of
from building import corpus_of

VANE = """\
work: {id: vane-1850, type: book, author: [{family: Vane}], issued: "1850", title: Flora prima}
acts:
- {name: Exemplum, act: new taxon, page: "1", description: {kind: description}}
- {name: Exemplum album, act: new taxon, page: "2", description: {kind: description},
   type: {kind: holotype, specimen: Vane 1, herbarium: XX}}
treatments:
- {taxon: Exemplum album, under: Exemplum}
"""
FALK = """\
work: {id: falk-1900, type: book, author: [{family: Falk}], issued: "1900", title: Flora altera}
acts:
- {name: Exemplum niveum, act: new taxon, page: "3", description: {kind: description}, cites: [Exemplum album Vane],
   type: {kind: holotype, specimen: Falk 7, herbarium: XX}}
- {name: Exemplum rubrum, act: new taxon, page: "5", description: {kind: description},
   type: {kind: holotype, specimen: Falk 11, herbarium: XX}}
treatments:
- {taxon: Exemplum niveum, under: Exemplum, synonyms: [Exemplum album Vane], page: "3"}
- {taxon: Exemplum rubrum, under: Exemplum, page: "5"}
"""
MARSH = """\
work: {id: marsh-1910, type: book, author: [{family: Marsh}], issued: "1910", title: Plantae}
acts:
- {name: Exemplum album, act: new taxon, page: "4", description: {kind: description},
   type: {kind: holotype, specimen: Marsh 9, herbarium: XX}}
"""
HASK = """\
work: {id: hask-1960, type: book, author: [{family: Hask}], issued: "1960", title: Flora tertia}
acts:
- {name: Exemplum album var. rubrum, act: change of rank, basionym: Exemplum rubrum, page: "8",
   basionym-reference: partial}
- {name: Exemplum roseum, act: new taxon, page: "9", description: {kind: description},
   type: {kind: holotype, specimen: Hask 2, herbarium: XX}}
treatments:
- {taxon: Exemplum album Vane, under: Exemplum}
- {taxon: Exemplum album var. rubrum, under: Exemplum album Vane, page: "8"}
"""
TULL = """\
work: {id: tull-1990, type: book, author: [{family: Tull}], issued: "1990", title: Flora quarta}
treatments:
- {taxon: Exemplum album Vane, under: Exemplum}
- {taxon: Exemplum rubrum, under: Exemplum}
"""

LITERATURE = (VANE, FALK, MARSH, HASK, TULL)
NAME, TAXON = "names/exemplum-{}.html", "taxa/exemplum-{}.html"


@pytest.fixture(scope="module")
def judged() -> dict[str, str]:
    corpus, problems = corpus_of(*LITERATURE)
    assert problems == []
    return dict(render(applied(corpus), ()))


def words(text: str) -> str:
    """The words between the tags of a page or a part of one."""
    spaced = re.sub(r"</?(?:td|th|tr|p|li|ul|ol|h\d|summary|details|dt|dd|small|div|label|option)\b[^>]*>", " ", text)
    return " ".join(unescape(re.sub(r"<[^>]*>", "", spaced)).split())


def part(text: str, anchor: str) -> str:
    """One section of a page."""
    return text.partition(f'<section class="part" id="{anchor}">')[2].partition("</section>")[0]


def badges(text: str) -> list[tuple[str, str]]:
    """Look and words of every badge."""
    return re.findall(r'<span class="badge (\w+)">([^<]+)</span>', text)


@pytest.mark.parametrize(
    ("name", "look", "standing"),
    [
        pytest.param("album-vane-1850", "good", "validly published, legitimate", id="legitimate"),
        pytest.param("niveum", "bad", "validly published, illegitimate", id="superfluous"),
        pytest.param("album-marsh-1910", "bad", "validly published, illegitimate", id="homonym"),
        pytest.param("album-var-rubrum", "none", "not validly published", id="designation"),
        pytest.param("roseum", "open", "validity undetermined, legitimate", id="open"),
    ],
)
def test_a_name_carries_its_standing_in_words(judged, name: str, look: str, standing: str) -> None:
    assert badges(judged[NAME.format(name)])[0] == (look, standing)


def test_a_name_without_protologue_says_so(demo) -> None:
    assert badges(demo["names/cremnocentron-album-var-giganteum.html"]) == [
        ("open", "no protologue recorded"),
        ("open", "open"),  # so that nobody can say whether Hollinsay 1962 should have used it
    ]
    assert badges(demo["names/cremnocentron-album-var-album.html"])[0] == ("good", "autonym")


@pytest.mark.parametrize(
    ("name", "told"),
    [
        pytest.param("niveum", "superfluous, illegitimate (Art. 52.1)", id="superfluous"),
        pytest.param("album-marsh-1910", "later homonym, illegitimate (Art. 53.1)", id="homonym"),
        pytest.param("album-marsh-1910", "homonym Exemplum album Vane, an earlier name of the same words", id="other"),
        pytest.param("album-marsh-1910", "cited as Exemplum album Marsh, non Vane 1850", id="homonym-note"),
        pytest.param("album-vane-1850", "cited as Exemplum album Vane, non Marsh 1910", id="note-of-the-earlier"),
        pytest.param("album-var-rubrum", "basionym Exemplum rubrum Falk", id="basionym"),
        pytest.param("roseum", "To look up: the language of the description.", id="open-question"),
    ],
)
def test_a_name_tells_what_its_standing_rests_on(judged, name: str, told: str) -> None:
    assert told in words(judged[NAME.format(name)])


def test_a_corrected_spelling_is_shown_beside_the_printed_one() -> None:
    """ICN Art. 60.7 (Shenzhen; from memory): diacritical signs are not used; `ö` becomes `oe`."""
    work = VANE.replace("Exemplum album", "Exemplum böhmii")
    site = dict(render(applied(corpus_of(work)[0]), ()))
    told = words(site[NAME.format("boehmii")])
    assert re.search(r"spelling printed Exemplum böhmii, corrected to Exemplum boehmii: .*\(Art\. 60\.", told)


def test_an_act_that_is_another_kind_than_its_author_called_it() -> None:
    """ICN Art. 58.1: an epithet moved from an illegitimate name makes a replacement name, without parentheses."""
    more = """\
work: {id: selk-1930, type: book, author: [{family: Selk}], issued: "1930", title: Flora nova}
acts:
- {name: Novum, act: new taxon, page: "1", description: {kind: description}}
- {name: Novum album, act: new combination, basionym: Exemplum album Marsh, page: "2"}
"""
    site = dict(render(applied(corpus_of(VANE, MARSH, more)[0]), ()))
    told = words(site["names/novum-album.html"])
    assert "published as replacement name, though called new combination replaces Exemplum album Marsh" in told
    assert "<h1><i>Novum album</i> Selk</h1>" in site["names/novum-album.html"]


def rows(table: str) -> list[str]:
    return [words(row) for row in re.findall(r"<tr>(.*?)</tr>", table, re.DOTALL)]


def test_what_a_taxon_must_be_called_at_each_rank(judged) -> None:
    at_ranks, by_author = part(judged[TAXON.format("rubrum")], "correct-name").split("</table>")[:2]
    assert "drawn as Tull 1990 draws it" in words(at_ranks)
    _, species, variety = rows(at_ranks)
    assert species.startswith(
        "species Exemplum rubrum Falk why Taken in is the type of Exemplum rubrum Falk (Art. 11.1)."
    )
    assert variety.startswith(
        "variety in Exemplum album Vane, as Hask 1960 has it no name available "
        "a new combination would be needed, Exemplum album var. rubrum, based on Exemplum rubrum Falk why"
    )
    _, falk, hask, tull = rows(by_author)
    assert falk.startswith("Falk 1900 Exemplum rubrum species correct why") and falk.endswith("the same")
    assert hask.startswith("Hask 1960 Exemplum album var. rubrum variety not the correct name none was available: ")
    assert tull.endswith("the same")


def test_reasons_are_a_numbered_list_to_be_unfolded_with_names_linked(judged) -> None:
    found = part(judged[TAXON.format("niveum")], "correct-name")
    chain = re.search(r'<details class="why"><summary>why</summary><ol>(.*?)</ol></details>', found)
    assert chain is not None
    steps = [words(step) for step in re.findall(r"<li>(.*?)</li>", chain[1])]
    assert steps[-1] == "The correct name is Exemplum album Vane."
    assert "Exemplum niveum Falk is illegitimate" in " ".join(steps)
    assert 'href="../names/exemplum-album-vane-1850.html"' in chain[1]
    assert "The earliest epithet at the rank of species is <i>album</i>, from" in chain[1]


def test_history_says_of_each_author_whether_the_name_was_correct(judged) -> None:
    table = part(judged[TAXON.format("niveum")], "path").partition("<table")[2]
    assert badges(table) == [("bad", "not the correct name")]
    assert "not the correct name that was Exemplum album Vane why" in words(table)
    uses = judged[NAME.format("album-vane-1850")]
    assert [told for _, told in badges(uses)[1:]] == ["correct"] * 3


def test_a_view_without_rank_is_open(demo) -> None:
    told = words(demo["names/cremnocentron-album-unranked-pallens.html"])
    assert "open the work states no rank" in told


def test_priority_between_names_of_one_date_is_undetermined() -> None:
    """ICN Art. 11.5: of names of one date the first choice decides; none is recorded here."""
    one = """\
work: {id: orrin-1887, type: book, author: [{family: Orrin}], issued: "1887", title: Flora}
acts:
- {name: Exemplum, act: new taxon, page: "1", description: {kind: description}}
- {name: Exemplum unum, act: new taxon, page: "2", description: {kind: description},
   type: {kind: holotype, specimen: Orrin 1, herbarium: XX}}
- {name: Exemplum alterum, act: new taxon, page: "3", description: {kind: description},
   type: {kind: holotype, specimen: Orrin 2, herbarium: XX}}
"""
    two = """\
work: {id: selk-1990, type: book, author: [{family: Selk}], issued: "1990", title: Hand list}
treatments:
- {taxon: Exemplum tertium, under: Exemplum, synonyms: [Exemplum unum, Exemplum alterum]}
"""
    third = one.replace("1887", "1890").replace("Exemplum unum", "Exemplum tertium").replace("Orrin 1", "Orrin 3")
    third = third.replace('- {name: Exemplum, act: new taxon, page: "1", description: {kind: description}}\n', "")
    third = third[: third.index("- {name: Exemplum alterum")]
    site = dict(render(applied(corpus_of(one, two, third)[0]), ()))
    found = part(site[TAXON.format("tertium")], "correct-name")
    assert badges(found) == [("open", "open")] * 2, "at the rank of species, and beside Selk 1990"
    assert "priority is undetermined between Exemplum alterum Orrin and Exemplum unum Orrin" in words(found)


def test_a_correct_name_that_may_not_be_validly_published_says_so() -> None:
    more = """\
work: {id: selk-1970, type: book, author: [{family: Selk}], issued: "1970", title: Hand list}
treatments:
- {taxon: Exemplum roseum, under: Exemplum}
"""
    site = dict(render(applied(corpus_of(*LITERATURE, more)[0]), ()))
    found = part(site[TAXON.format("roseum")], "correct-name")
    assert badges(found) == [
        ("open", "if validly published"), ("open", "correct if validly published"),
    ]  # fmt: skip
    assert "look up the language of the description" in words(found)


def test_the_autonym_of_a_species_gives_the_whole_species_no_other_rank(demo) -> None:
    wide = part(demo["taxa/cremnocentron-album-wide-sense.html"], "correct-name").split("</table>")[0]
    strict = part(demo["taxa/cremnocentron-album-strict-sense.html"], "correct-name").split("</table>")[0]
    assert [row.split()[0] for row in rows(wide)[1:]] == ["species"]
    assert [row.split()[0] for row in rows(strict)[1:]] == ["species", "subspecies", "variety", "form"]


# --- synonymy


def test_the_synonymy_can_be_chosen_by_work_without_a_script(judged) -> None:
    text = judged[TAXON.format("album-vane-1850")]
    found = part(text, "synonymy")
    assert "<script" not in text
    chosen = re.findall(r'<input type="radio" name="synonymy" id="([^"]+)"( checked)?><label for="([^"]+)">', found)
    assert [one for one, *_ in chosen] == [one for *_, one in chosen], "each button has its label"
    assert [bool(checked) for _, checked, _ in chosen] == [True, False, False, False, False]
    assert [one for one, *_ in chosen] == [
        "sec-all-works", "sec-vane-1850", "sec-falk-1900", "sec-hask-1960", "sec-tull-1990",
    ]  # fmt: skip
    falk = found.partition('id="sec-falk-1900"')[2].partition('<input type="radio"')[0]
    assert "Falk 1900 sinks it into Exemplum niveum, of which it has:" in words(falk)
    assert "Exemplum niveum Falk, Flora altera: 3. 1900, nom. illeg., nom. superfl." in words(falk)
    assert "= Exemplum album Vane, Flora prima: 2. 1850" in words(falk)
    assert "Sec. Falk 1900." in words(falk)


def test_the_style_shows_the_chosen_view_and_prints_no_chooser(judged) -> None:
    style = judged["assets/site.css"]
    assert ".views .view { order: 2; display: none;" in style
    assert ".views input:checked ~ .view { display: block; }" in style
    assert ".views > legend, .views label { display: none; }" in style.partition("@media print")[2]


def test_every_synonymy_of_the_pages_reads_as_the_engine_writes_it(demo_code) -> None:
    """Two ways: the lines of the pages, asked of a part of the corpus, and the text over the whole corpus."""
    answers = Answers(demo_code, ())
    count = 0
    for taxon in answers.corpus.taxa.values():
        for view in synonymy_views(answers, taxon):
            work = view.anchor.removeprefix("sec-")
            first = next(run.href for run in view.lines[0].text if run.href.startswith("names/"))
            accepted = next(one for one, path in answers.name_paths.items() if path == first)
            works = None if work == "all-works" else [work]
            whole = synonymy(answers.corpus, accepted, works, partial(abbreviations, demo_code))
            shown = "".join(f"{INDENT * line.depth}{text_of(line.text)}\n" for line in view.lines) + text_of(view.sec)
            assert shown + "\n" == as_text(whole)
            count += 1
    assert count > 100


def test_the_cost_of_a_synonymy_does_not_grow_with_the_rest(demo_code) -> None:
    corpus = demo_code.corpus
    found = Extracts(corpus).of("cremnocentron-luteolum", "quessel-1951")
    kept = [one.name for one in found.by_work["quessel-1951"]]
    assert kept == ["cremnocentron-luteolum"], "one of the ten treatments of that work"
    assert len(found.names) < len(corpus.names) / 2
