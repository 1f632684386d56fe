"""The synonymy of a taxon: which names stand in which block, according to whom, and how they are printed.

The records are invented: no real plant, person, place or publication. The form (≡, =, –, `auct. non`) is common
practice, no source; what articles of the ICN are named is from memory.
"""

from __future__ import annotations

import json
import re
from html.parser import HTMLParser

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.corpus.model import Corpus
from auctorum.names.format import format_name
from auctorum.nomenclature.cited import cited, date_in_short, types_of
from auctorum.nomenclature.synonymy import NotPlaced, Synonymy, accepted_name, synonymy
from auctorum.nomenclature.synonymy_text import as_html, as_markdown, as_text, synonymy_data
from building import corpus_of


def work(id_: str, rest: str = "", **more: str) -> str:
    """A work whose author and year are those of its id."""
    family, year = id_.rsplit("-", 1)
    fields = {"type": "book", "issued": year, "title": f"{family.title()}'s book"} | more
    extra = "".join(f", {key.replace('_', '-')}: {json.dumps(value)}" for key, value in fields.items())
    return f"work: {{id: {id_}, author: [{{family: {family.title()}}}]{extra}}}\n{rest}"


def acts(*flow: str) -> str:
    return "acts:\n" + "".join(f"- {{{one}}}\n" for one in flow)


def treats(*flow: str) -> str:
    return "treatments:\n" + "".join(f"- {{{one}}}\n" for one in flow)


def holotype(specimen: str) -> str:
    return f"type: {{kind: holotype, specimen: {specimen}, herbarium: TESN}}"


VANE = work(
    "vane-1874",
    acts(
        f"name: Exemplum album, act: new taxon, page: '43', plate: '3', {holotype('Corrand 17')}",
        f"name: Exemplum pendulum, act: new taxon, page: '47', {holotype('Corrand 22')}",
    ),
    container_title="Acta Societatis Corvessensis",
    container_title_short="Acta Soc. Corvess.",
    volume="2",
    issue="1",
)
ORRIN = work(
    "orrin-1889",
    acts(f"name: Exemplum album var. longum, act: new taxon, page: '107', {holotype('Orrin 212')}")
    + treats("taxon: Exemplum album var. album", "taxon: Exemplum album var. longum, page: '107'"),
    title="Journal of Orrin",
    volume="4",
)
PERALVO = work(
    "peralvo-1926",
    acts(
        "name: Exemplum longicalcaratum, act: new taxon, page: '81', "
        "type: {kind: syntype, specimen: Peralvo 54, herbarium: SKAR}"
    ),
    container_title_short="Anales",
)
BRANDOW = work(
    "brandow-1934",
    acts("name: Exemplum longum, act: change of rank, basionym: Exemplum album var. longum, page: '18'")
    + treats("taxon: Exemplum longum, page: '18', synonyms: [Exemplum album var. longum]"),
    issued="1933-12",
    effective="1934-02-06",
)
CANDID = work("candid-1940", acts("name: Exemplum candidum, act: new taxon, cites: [Exemplum longicalcaratum]"))
AGAIN = work(
    "again-1950",
    acts(
        "name: Exemplum longum, act: change of rank, basionym: Exemplum album var. longum, page: '3'",
        "name: Exemplum longecalcaratum, act: variant spelling, of: Exemplum longicalcaratum, page: '4'",
        "name: Exemplum longicalcaratum, act: type designation, of: Exemplum longicalcaratum, "
        "type: {kind: lectotype, specimen: Peralvo 54, herbarium: SKAR}",
    )
    + treats(
        "taxon: Exemplum longum, page: '5', synonyms: [Exemplum candidum], misapplied: [Exemplum pendulum], "
        'verbatim: "E. pendulum auct. non Vane: Tull, Fl. Tessarn 1: 217; Brenner, Blicke: 9. 1908; a common mistake."',
    ),
)
LATE = work(
    "late-1990",
    treats(
        "taxon: Exemplum album var. longum, page: '10', synonyms: [Exemplum longum, Exemplum longicalcaratum]",
        "taxon: Exemplum pendulum, status: misapplied, accepted-as: Exemplum album var. longum, page: '11'",
    ),
)
ALL = (VANE, ORRIN, PERALVO, BRANDOW, CANDID, AGAIN, LATE)


def made(*texts: str) -> Corpus:
    corpus, problems = corpus_of(*texts)
    assert problems == []
    return corpus


def named(corpus: Corpus, text: str) -> str:
    """`text` with each id in angle brackets replaced by its name, with authors as the corpus gives them."""
    return re.sub(r"<([a-z-]+)>", lambda found: format_name(corpus.names[found[1]].name), text)


def ids(found: Synonymy) -> list[str]:
    """Every name of the blocks, in order of print."""
    sunk = [one.id for block in found.heterotypic for one in block.names]
    return [found.accepted.id, *(one.id for one in found.homotypic), *sunk]


def test_over_all_works() -> None:
    corpus = made(*ALL)
    assert as_text(synonymy(corpus, "exemplum-album-var-longum")) == named(
        corpus,
        """\
Exemplum album var. longum Orrin, Journal of Orrin 4: 107. 1889
  ≡ <exemplum-longum>, Brandow's book: 18. 1933 [6 Feb. 1934]; isonym: Again, Again's book: 3. 1950
  Type: Orrin 212 (TESN, holotype)
  = Exemplum longicalcaratum Peralvo, Anales: 81. 1926 (as “longecalcaratum” in Again 1950: 4)
    ≡ Exemplum candidum Candid, Candid's book. 1940
    Type: Peralvo 54 (SKAR, lectotype, designated by Again 1950)
    [sec. Again 1950: 5; Late 1990: 10]
  – Exemplum pendulum auct. non Vane: Tull, Fl. Tessarn 1: 217; Brenner, Blicke: 9. 1908 \
[sec. Again 1950: 5; Late 1990: 11]
Over all works of the knowledge base.
""",
    )


@pytest.mark.parametrize(
    ("works", "blocks", "misapplied", "last"),
    [
        pytest.param(["brandow-1934"], [], [], "Sec. Brandow 1934.", id="sinks-a-name-on-the-same-type"),
        pytest.param(
            ["again-1950"],
            [["exemplum-longicalcaratum", "exemplum-candidum"]],
            ["exemplum-pendulum"],
            "Sec. Again 1950.",
            id="sinks-a-type-by-its-younger-name",
        ),
        pytest.param(
            ["late-1990", "brandow-1934"],
            [["exemplum-longicalcaratum", "exemplum-candidum"]],
            ["exemplum-pendulum"],
            "Sec. Brandow 1934; Late 1990.",
            id="two-works-by-date",
        ),
        pytest.param(["vane-1874"], [], [], "Sec. Vane 1874.", id="before-the-taxon"),
    ],
)
def test_sec_works(works: list[str], blocks: list[list[str]], misapplied: list[str], last: str) -> None:
    found = synonymy(made(*ALL), "exemplum-longum", works)
    assert [[one.id for one in block.names] for block in found.heterotypic] == blocks
    assert [one.id for one in found.misapplied] == misapplied
    assert as_text(found).splitlines()[-1] == last


def test_sec_one_work_the_blocks_need_no_source() -> None:
    text = as_text(synonymy(made(*ALL), "exemplum-longum", ["late-1990"]))
    assert "sec. Late 1990: 10" not in text
    assert "  – Exemplum pendulum auct. non Vane [sec. Late 1990: 11]\n" in text


def test_blocks_stand_by_date_of_their_first_name() -> None:
    corpus = made(
        work("a-1900", acts("name: Exemplum primum, act: new taxon")),
        work("b-1905", acts("name: Exemplum secundum, act: new taxon")),
        work("c-1910", acts("name: Exemplum tertium, act: new taxon")),
        work("d-1920", acts("name: Alterum primum, act: new combination, basionym: Exemplum primum")),
        work(
            "e-1930",
            treats("taxon: Exemplum tertium, synonyms: [Exemplum secundum, Alterum primum]"),
        ),
    )
    found = synonymy(corpus, "exemplum-tertium")
    assert [[one.id for one in block.names] for block in found.heterotypic] == [
        ["exemplum-primum", "alterum-primum"],
        ["exemplum-secundum"],
    ]


def test_a_name_recorded_as_a_synonym_brings_along_what_is_sunk_into_it() -> None:
    """A checklist has no entry that keeps the taxon: each name says where it belongs."""
    corpus = made(
        work(
            "a-1900",
            acts(*(f"name: Exemplum {one}, act: new taxon" for one in ("primum", "secundum", "tertium", "quartum"))),
        ),
        work(
            "list-1950",
            treats(
                "taxon: Exemplum secundum, status: synonym, accepted-as: Exemplum primum, page: '7', "
                "synonyms: [Exemplum quartum]",
                "taxon: Exemplum tertium, status: synonym, accepted-as: Exemplum secundum, page: '8'",
            ),
        ),
    )
    found = synonymy(corpus, "exemplum-primum")
    assert [(block.names[0].id, str(block.according_to[0])) for block in found.heterotypic] == [
        ("exemplum-secundum", "List 1950: 7"),
        ("exemplum-tertium", "List 1950: 8"),
        ("exemplum-quartum", "List 1950: 7"),
    ]


def test_a_circle_of_synonyms_ends() -> None:
    corpus, _ = corpus_of(
        work("a-1900", acts("name: Exemplum bonum, act: new taxon", "name: Exemplum carum, act: new taxon")),
        work(
            "d-1950",
            treats(
                "taxon: Exemplum bonum, status: synonym, accepted-as: Exemplum carum",
                "taxon: Exemplum carum, status: synonym, accepted-as: Exemplum bonum",
            ),
        ),
    )
    assert ids(synonymy(corpus, "exemplum-bonum")) == ["exemplum-bonum", "exemplum-carum"]


def test_an_autonym_stands_in_the_block_of_its_type_from_the_date_that_established_it() -> None:
    """ICN Art. 26.3: the variety of 1889 established var. album; the name of 1900 on that type is younger."""
    corpus = made(VANE, ORRIN, work("x-1900", acts("name: Exemplum niveum, act: new taxon, cites: [Exemplum album]")))
    assert as_text(synonymy(corpus, "exemplum-album")) == (
        "Exemplum album Vane, Acta Soc. Corvess. 2(1): 43, t. 3. 1874\n"
        "  ≡ Exemplum album Vane var. album\n"
        "  ≡ Exemplum niveum X, X's book. 1900\n"
        "  Type: Corrand 17 (TESN, holotype)\n"
        "Over all works of the knowledge base.\n"
    )


@pytest.mark.parametrize(
    ("beside", "notes", "order"),
    [
        pytest.param("var. longum", {}, ["album-var-album", "niveum"], id="variety"),
        pytest.param("subsp. longum", {}, ["niveum", "album-var-album"], id="another-rank"),
        pytest.param("var. longum", {"longum": ("nom. inval.",)}, ["niveum", "album-var-album"], id="designation"),
    ],
)
def test_what_establishes_an_autonym(beside: str, notes: dict[str, tuple[str, ...]], order: list[str]) -> None:
    """A validly published name of the same rank (ICN Art. 26.3); without one it has no date and stands last."""
    corpus = made(
        work("a-1850", acts("name: Exemplum album, act: new taxon")),
        work("b-1860", acts(f"name: Exemplum album {beside}, act: new taxon")),
        work("c-1900", acts("name: Exemplum niveum, act: new taxon, cites: [Exemplum album]")),
        work("d-1950", treats("taxon: Exemplum album var. album")),
    )
    found = synonymy(corpus, "exemplum-album", notes=lambda name: notes.get(name.rpartition("-")[2], ()))
    assert [one.id.removeprefix("exemplum-") for one in found.homotypic] == order


def test_the_autonym_of_the_code_s_example_stands_by_its_own_date() -> None:
    """ICN Art. 11.6, the example of Heracleum, years too from memory: the autonym dates from subsp. lecokii, 1879."""
    corpus = made(
        work("l-1753", acts("name: Heracleum sibiricum, act: new taxon, authors: L.")),
        work("godron-1848", acts("name: Heracleum lecokii, act: new taxon, authors: Godr. & Gren.")),
        work(
            "nyman-1879",
            acts("name: Heracleum sibiricum subsp. lecokii, act: change of rank, basionym: Heracleum lecokii"),
        ),
        work(
            "simonk-1887",
            acts("name: Heracleum sphondylium subsp. sibiricum, act: change of rank, basionym: Heracleum sibiricum")
            + treats(
                "taxon: Heracleum sphondylium subsp. sibiricum, "
                "synonyms: [Heracleum sibiricum subsp. sibiricum, Heracleum sibiricum subsp. lecokii]"
            ),
        ),
    )
    found = synonymy(corpus, "heracleum-sphondylium-subsp-sibiricum")
    assert [format_name(one.name) for one in found.homotypic] == [
        "Heracleum sibiricum L.",
        "Heracleum sibiricum L. subsp. sibiricum",
    ]
    assert [one.id for one in found.heterotypic[0].names] == ["heracleum-lecokii", "heracleum-sibiricum-subsp-lecokii"]
    later = synonymy(corpus, "heracleum-sibiricum")
    assert [one.id for one in later.homotypic] == [
        "heracleum-sibiricum-subsp-sibiricum",
        "heracleum-sphondylium-subsp-sibiricum",
    ]


def test_a_misapplication_is_cited_as_the_code_recommends() -> None:
    """ICN Rec. 50D, the example of Ficus exasperata, from memory: the author whose name it is, then who misused it."""
    uses = "Durand in Ann. Mus. Congo Belge, Bot., ser. 2, 1: 54. 1899; De Wildeman, Miss. Laurent: 26. 1905"
    corpus = made(
        work("vahl-1805", acts("name: Ficus exasperata, act: new taxon")),
        work("warb-1904", acts("name: Ficus stortophylla, act: new taxon")),
        work(
            "later-1909",
            treats(
                "taxon: Ficus stortophylla, misapplied: [Ficus exasperata], "
                f'verbatim: "F. exasperata auct. non Vahl: {uses}."'
            ),
        ),
    )
    text = as_text(synonymy(corpus, "ficus-stortophylla"))
    assert f"  – Ficus exasperata auct. non Vahl: {uses} [sec. Later 1909]\n" in text


def test_the_wide_and_the_strict_sense_have_synonymies_of_their_own() -> None:
    """What is sunk into the species beside sisters is no synonym of its autonym, and the reverse."""
    corpus = made(
        VANE,
        ORRIN,
        PERALVO,
        work("m-1890", acts("name: Exemplum minus, act: new taxon")),
        work(
            "wide-1960",
            treats(
                "taxon: Exemplum album, synonyms: [Exemplum longicalcaratum]",
                "taxon: Exemplum album var. album, under: Exemplum album, synonyms: [Exemplum minus]",
                "taxon: Exemplum album var. longum, under: Exemplum album",
            ),
        ),
    )
    wide, strict = (synonymy(corpus, name) for name in ("exemplum-album", "exemplum-album-var-album"))
    assert [block.names[0].id for block in wide.heterotypic] == ["exemplum-longicalcaratum"]
    assert [block.names[0].id for block in strict.heterotypic] == ["exemplum-minus"]
    assert sorted(one.id for one in (wide.accepted, *wide.homotypic)) == sorted(
        one.id for one in (strict.accepted, *strict.homotypic)
    )


def test_who_keeps_the_very_name_is_asked_in_whichever_sense() -> None:
    """The second work keeps no sister in the species: it means the strict sense, and yet the species."""
    corpus = made(
        VANE,
        ORRIN,
        PERALVO,
        work("m-1890", acts("name: Exemplum minus, act: new taxon")),
        work(
            "wide-1960",
            treats(
                "taxon: Exemplum album",
                "taxon: Exemplum album var. album, under: Exemplum album",
                "taxon: Exemplum album var. longum, under: Exemplum album",
            ),
        ),
        work("strict-1970", treats("taxon: Exemplum album, synonyms: [Exemplum minus]", "taxon: Exemplum longum")),
        BRANDOW,
    )
    assert {taxon.sense for taxon in corpus.taxa.values() if taxon.group == "exemplum-album"} == {"wide", "strict"}
    for name in ("exemplum-album", "exemplum-album-var-album"):
        assert [block.names[0].id for block in synonymy(corpus, name).heterotypic] == ["exemplum-minus"]


def test_a_work_is_named_once_for_a_type_and_misapplied_names_stand_by_date() -> None:
    both = "taxon: Exemplum album, page: '2', synonyms: [Exemplum longum, Exemplum album var. longum]"
    misapplied = "misapplied: [Exemplum longicalcaratum, Exemplum pendulum]"
    found = synonymy(
        made(VANE, ORRIN, PERALVO, BRANDOW, work("w-1950", treats(f"{both}, {misapplied}"))), "exemplum-album"
    )
    assert [[str(one) for one in block.according_to] for block in found.heterotypic] == [["W 1950: 2"]]
    assert [one.id for one in found.misapplied] == ["exemplum-pendulum", "exemplum-longicalcaratum"]


def test_notes_follow_the_place_and_designations_stand_in_quotation_marks() -> None:
    """A designation leads no block, though it be the oldest; it is no name (ICN Art. 12.1)."""
    given_notes = {"exemplum-longicalcaratum": ("nom. inval. (Art. 36.1)",), "exemplum-candidum": ("nom. illeg.",)}
    found = synonymy(made(*ALL), "exemplum-longum", ["late-1990"], lambda name: given_notes.get(name, ()))
    assert [line.strip() for line in as_text(found).splitlines() if "candidum" in line or "calcar" in line] == [
        "= Exemplum candidum Candid, Candid's book. 1940, nom. illeg.",
        "≡ “Exemplum longicalcaratum” Peralvo, Anales: 81. 1926, nom. inval. (Art. 36.1) "
        "(as “longecalcaratum” in Again 1950: 4)",
    ]
    assert "≡ “*Exemplum longicalcaratum*” Peralvo" in as_markdown(found)
    assert "≡ “<i>Exemplum longicalcaratum</i>” Peralvo" in as_html(found)
    assert synonymy_data(found)["heterotypic"][0]["names"][1]["designation"] is True


@pytest.mark.parametrize(
    ("fields", "act", "place"),
    [
        pytest.param({}, "", "A's book. 1900", id="bare"),
        pytest.param({"issued": "1900-05"}, "page: '7'", "A's book: 7. 1900", id="book-with-page"),
        pytest.param({"volume": "4", "issue": "2"}, "page: '7'", "A's book 4(2): 7. 1900", id="volume-and-issue"),
        pytest.param({"volume": "4"}, "plate: '9'", "A's book 4: t. 9. 1900", id="plate-alone"),
        pytest.param({}, "page: '7', plate: 'fig. 2'", "A's book: 7, fig. 2. 1900", id="figure"),
        pytest.param({"container_title": "Annals"}, "page: '7'", "Annals: 7. 1900", id="journal-without-short-title"),
        pytest.param({"title": "Fl. Isl."}, "", "Fl. Isl. 1900", id="title-ends-in-a-stop"),
        pytest.param({"title": "Two\n lines"}, "", "Two lines. 1900", id="white-space"),
        pytest.param({"effective": "1901"}, "", "A's book. 1900 [1901]", id="effective-year"),
        pytest.param({"effective": "1900-03"}, "", "A's book. 1900 [Mar. 1900]", id="effective-month"),
        pytest.param({"issued": "1900", "effective": "1900"}, "", "A's book. 1900", id="effective-as-printed"),
        pytest.param({"issued": "1900-06/1901-02"}, "", "A's book. 1900–1901", id="over-two-years"),
        pytest.param({"issued": "1900-06/1900-08"}, "", "A's book. 1900", id="over-some-months"),
        pytest.param({"issued": "1900~"}, "", "A's book. ca. 1900", id="about"),
        pytest.param({}, "authors: Tull in Orrin, page: '7'", "in Orrin, A's book: 7. 1900", id="in"),
    ],
)
def test_place_of_publication(fields: dict[str, str], act: str, place: str) -> None:
    corpus = made(work("a-1900", acts(f"name: Exemplum bonum, act: new taxon, {act}"), **fields))
    assert cited(corpus, "exemplum-bonum").place == place


@pytest.mark.parametrize(
    ("date", "words"),
    [
        ("1934-02-06", "6 Feb. 1934"),
        ("1934-02-16", "16 Feb. 1934"),
        ("1896-05", "May 1896"),
        ("1896", "1896"),
        ("190X", "190X"),
        ("1896-09?", "Sept. 1896?"),
        ("1896%", "ca. 1896?"),
        ("1904-06/1904-07", "June 1904–July 1904"),
        ("../1904", "not later than 1904"),
    ],
)
def test_dates_in_short(date: str, words: str) -> None:
    assert date_in_short(date) == words


DESIGNATION = "name: Exemplum bonum, act: type designation, of: Exemplum bonum, type: "


@pytest.mark.parametrize(
    ("protologue", "later", "line"),
    [
        pytest.param("{kind: holotype, specimen: B 1, herbarium: X}", [], "Type: B 1 (X, holotype)", id="holotype"),
        pytest.param("{kind: holotype, herbarium: X}", [], "Type: (X, holotype)", id="no-specimen"),
        pytest.param("{kind: holotype, verbatim: on rocks}", [], "Type: “on rocks” (holotype)", id="words-only"),
        pytest.param(
            "{kind: holotype, specimen: B 1, herbarium: X}",
            ["{kind: neotype, specimen: C 2, herbarium: Y}"],
            "Types: B 1 (X, holotype); C 2 (Y, neotype, designated by N 1950)",
            id="neotype-beside-the-lost-holotype",
        ),
        pytest.param(
            "{kind: syntype, specimen: B 1, herbarium: X}",
            ["{kind: lectotype, specimen: B 1, herbarium: X}", "{kind: epitype, specimen: E 5, herbarium: X}"],
            "Types: B 1 (X, lectotype, designated by N 1950); E 5 (X, epitype, designated by N 1950)",
            id="lectotype-in-place-of-syntypes",
        ),
        pytest.param(
            "{kind: lectotype, specimen: B 1, herbarium: X}",
            ["{kind: lectotype, specimen: B 1, herbarium: X}"],
            "Type: B 1 (X, lectotype)",
            id="said-twice",
        ),
    ],
)
def test_types(protologue: str, later: list[str], line: str) -> None:
    corpus = made(
        work("a-1900", acts(f"name: Exemplum bonum, act: new taxon, type: {protologue}")),
        work("n-1950", acts(*(DESIGNATION + one for one in later)) if later else ""),
    )
    assert as_text(synonymy(corpus, "exemplum-bonum")).splitlines()[1].strip() == line


def test_a_choice_of_type_that_was_not_effectively_published_is_none() -> None:
    corpus = made(
        work("a-1900", acts("name: Exemplum bonum, act: new taxon, type: {kind: syntype, specimen: B 1}")),
        work("n-1950", acts(DESIGNATION + "{kind: lectotype, specimen: B 1}")).replace(
            "type: ", "effectively-published: false, type: ", 1
        ),
    )
    assert [one.kind for one in types_of(corpus, "exemplum-bonum")] == ["syntype"]


def test_the_type_of_a_genus_is_a_name() -> None:
    genus = "name: Exemplum, act: new taxon, type: {kind: name, specimen: Exemplum album}"
    corpus = made(work("a-1900", acts(genus, "name: Exemplum album, act: new taxon")))
    found = synonymy(corpus, "exemplum")
    assert as_text(found).splitlines()[1] == "  Type: Exemplum album"
    assert "Type: <i>Exemplum album</i>" in as_html(found)


@pytest.mark.parametrize(
    ("printed", "shown"),
    [
        pytest.param("Exemplum longecalcaratum", "(as “longecalcaratum” in S 1950)", id="epithet"),
        pytest.param("Exemplun longicalcaratum", "(as “Exemplun longicalcaratum” in S 1950)", id="genus"),
    ],
)
def test_other_spellings(printed: str, shown: str) -> None:
    variant = work("s-1950", acts(f"name: {printed}, act: variant spelling, of: Exemplum longicalcaratum"))
    assert as_text(synonymy(made(PERALVO, variant), "exemplum-longicalcaratum")).splitlines()[0].endswith(shown)


def test_a_spelling_is_given_once_as_the_first_work_prints_it() -> None:
    said = "name: Exemplum longecalcaratum, act: variant spelling, of: Exemplum longicalcaratum"
    first = as_text(
        synonymy(made(PERALVO, work("t-1960", acts(said)), work("s-1950", acts(said))), "exemplum-longicalcaratum")
    ).splitlines()[0]
    assert first == "Exemplum longicalcaratum Peralvo, Anales: 81. 1926 (as “longecalcaratum” in S 1950)"


def test_a_spelling_of_the_protologue_itself_needs_no_source() -> None:
    own = PERALVO + "- {name: Exemplum longecalcaratum, act: variant spelling, of: Exemplum longicalcaratum}\n"
    first = as_text(synonymy(made(own), "exemplum-longicalcaratum")).splitlines()[0]
    assert first.endswith("1926 (as “longecalcaratum”)")


@pytest.mark.parametrize(
    ("verbatim", "used_in"),
    [
        pytest.param("E. album auct. non Vane: Tull, Fl. 1: 2.", ("Tull, Fl. 1: 2",), id="one"),
        pytest.param("E. album auct. non Vane: Tull, Fl. 2; Orr, Rev. 3", ("Tull, Fl. 2", "Orr, Rev. 3"), id="two"),
        pytest.param("E. album auctt. non Vane: Tull, Fl. 2; not seen", ("Tull, Fl. 2",), id="remark"),
        pytest.param("E. rubrum auct. non Vane: Tull, Fl. 2", (), id="another-name"),
        pytest.param("E. rubrum auct.: Orr 1; E. album auct.: Tull 2", ("Tull 2",), id="two-names"),
        pytest.param("E. album auct. non Vane", (), id="nowhere"),
        pytest.param("E. album auct. non Vane, Fl. 1: 217", (), id="no-colon-before-the-place"),
        pytest.param("grown here as album: often", (), id="no-auct"),
    ],
)
def test_uses_meant_by_a_misapplication(verbatim: str, used_in: tuple[str, ...]) -> None:
    corpus = made(
        VANE,
        PERALVO,
        work(
            "w-1950",
            treats(f"taxon: Exemplum longicalcaratum, misapplied: [Exemplum album], verbatim: {json.dumps(verbatim)}"),
        ),
    )
    (found,) = synonymy(corpus, "exemplum-longicalcaratum").misapplied
    assert found.used_in == used_in


@pytest.mark.parametrize(
    ("name", "works", "accepted"),
    [
        pytest.param("exemplum-longicalcaratum", None, ("late-1990", "exemplum-album-var-longum"), id="latest"),
        pytest.param("exemplum-longum", ["brandow-1934"], ("brandow-1934", "exemplum-longum"), id="sec"),
        pytest.param("exemplum-album-var-longum", ["brandow-1934"], ("brandow-1934", "exemplum-longum"), id="sunk-sec"),
        pytest.param("exemplum-album-var-longum", ["again-1950"], ("again-1950", "exemplum-longum"), id="by-its-type"),
        pytest.param("exemplum-candidum", ["late-1990"], ("late-1990", "exemplum-album-var-longum"), id="type-sunk"),
        pytest.param("exemplum-pendulum", None, None, id="misapplied-only"),
    ],
)
def test_accepted_name(name: str, works: list[str] | None, accepted: tuple[str, str] | None) -> None:
    found = accepted_name(made(*ALL), name, works)
    assert (found and (found.work, found.accepted)) == accepted


@pytest.mark.parametrize(
    ("effective", "accepted"),
    [
        pytest.param("true", ("late-1960", "exemplum-album"), id="species-before-its-autonym"),
        pytest.param(
            "false", ("early-1950", "exemplum-album-var-album"), id="works-not-effectively-published-do-not-count"
        ),
    ],
)
def test_accepted_name_of_a_name_that_only_its_type_places(effective: str, accepted: tuple[str, str]) -> None:
    late = treats("taxon: Exemplum album var. album, under: Exemplum album", "taxon: Exemplum album")
    corpus = made(
        VANE,
        work("x-1900", acts("name: Exemplum niveum, act: new taxon, cites: [Exemplum album]")),
        work("early-1950", treats("taxon: Exemplum album var. album")),
        work("late-1960", late).replace("type: ", f"effectively-published: {effective}, type: ", 1),
    )
    found = accepted_name(corpus, "exemplum-niveum")
    assert found is not None and (found.work, found.accepted) == accepted


def test_who_places_a_plant_in_a_taxon_accepts_it() -> None:
    corpus = made(VANE, ORRIN, work("p-1950", treats("taxon: Exemplum album var. longum, under: Exemplum album")))
    found = accepted_name(corpus, "exemplum-album", ["p-1950"])
    assert found is not None and found.accepted == "exemplum-album"


def test_works_that_do_not_place_a_name_are_told_from_those_that_do() -> None:
    with pytest.raises(NotPlaced, match="vane-1874 gives no place to Exemplum candidum Candid") as caught:
        accepted_name(made(*ALL), "exemplum-candidum", ["vane-1874"])
    assert caught.value.remedy == "works that place it: again-1950, late-1990"


def test_markdown() -> None:
    corpus = made(*ALL)
    assert as_markdown(synonymy(corpus, "exemplum-album-var-longum", ["late-1990"])) == (
        "*Exemplum album* var. *longum* Orrin, Journal of Orrin 4: 107. 1889\n"
        "\n"
        f"- ≡ *Exemplum longum*{named(corpus, '<exemplum-longum>').removeprefix('Exemplum longum')}, "
        "Brandow's book: 18. 1933 \\[6 Feb. 1934\\]; isonym: Again, Again's book: 3. 1950\n"
        "- Type: Orrin 212 (TESN, holotype)\n"
        "- = *Exemplum longicalcaratum* Peralvo, Anales: 81. 1926 (as “*longecalcaratum*” in Again 1950: 4)\n"
        "  - ≡ *Exemplum candidum* Candid, Candid's book. 1940\n"
        "  - Type: Peralvo 54 (SKAR, lectotype, designated by Again 1950)\n"
        "- – *Exemplum pendulum* auct. non Vane \\[sec. Late 1990: 11\\]\n"
        "\n"
        "Sec. Late 1990.\n"
    )


HOSTILE = "<b>*A_b* & [x](y) `c` \\ &amp; | ~"


def test_specials_are_escaped() -> None:
    found = synonymy(
        made(work("a-1900", acts("name: Exemplum bonum, act: new taxon"), title=HOSTILE)), "exemplum-bonum"
    )
    assert r", \<b\>\*A\_b\* & \[x\](y) \`c\` \\ \&amp; \| \~. 1900" in as_markdown(found)
    assert ", &lt;b&gt;*A_b* &amp; [x](y) `c` \\ &amp;amp; | ~. 1900" in as_html(found)
    assert words_of_html(as_html(found)) == as_text(found).split()


def test_html() -> None:
    assert as_html(synonymy(made(PERALVO, CANDID, AGAIN, BRANDOW, ORRIN, VANE), "exemplum-candidum")) == (
        '<div class="synonymy">\n'
        '<p class="accepted"><i>Exemplum candidum</i> Candid, Candid&#x27;s book. 1940</p>\n'
        "<ul>\n"
        '<li class="homotypic">≡ <i>Exemplum longicalcaratum</i> Peralvo, Anales: 81. 1926 '
        "(as “<i>longecalcaratum</i>” in Again 1950: 4)</li>\n"
        '<li class="type">Type: Peralvo 54 (SKAR, lectotype, designated by Again 1950)</li>\n'
        "</ul>\n"
        '<p class="sec">Over all works of the knowledge base.</p>\n'
        "</div>\n"
    )


def test_data_is_ready_for_json() -> None:
    data = json.loads(json.dumps(synonymy_data(synonymy(made(*ALL), "exemplum-longum", ["late-1990", "again-1950"]))))
    assert list(data) == ["accepted", "homotypic", "types", "heterotypic", "misapplied", "sec"]
    assert data["sec"] == ["again-1950", "late-1990"]
    (block,) = data["heterotypic"]
    assert [one["id"] for one in block["names"]] == ["exemplum-longicalcaratum", "exemplum-candidum"]
    assert block["names"][0]["spellings"] == [{"name": "Exemplum longecalcaratum", "work": "again-1950"}]
    assert block["according_to"] == [{"work": "again-1950", "page": "5"}, {"work": "late-1990", "page": "10"}]
    assert data["accepted"]["isonyms"] == [{"authors": "Again", "place": "Again's book: 3. 1950", "work": "again-1950"}]
    assert data["types"] == [{"kind": "holotype", "type": "Orrin 212", "herbarium": "TESN", "designated_by": ""}]
    assert data["misapplied"][0]["not_of"] == "Vane"


class Reader(HTMLParser):
    """The words of a fragment; an element that is closed where it is not open is an error."""

    def __init__(self) -> None:
        super().__init__()
        self.text = ""
        self.open: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert all(key == "class" for key, _ in attrs)
        self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.text += data


def words_of_html(html: str) -> list[str]:
    reader = Reader()
    reader.feed(html)
    reader.close()
    assert reader.open == []
    return reader.text.split()


def words_of_markdown(text: str) -> list[str]:
    """The words without list marks, emphasis and escapes."""
    plain = re.sub(r"^ *- ", "", text, flags=re.MULTILINE)
    return re.sub(r"\\(.)|\*", lambda found: found[1] or "", plain).split()


EPITHETS = ("unum", "duo", "tria", "quattuor", "quinque")


@st.composite
def knowledge_bases(draw: st.DrawFn) -> list[str]:
    """Species of several years, some moved to another genus, and works that sink some of them into others."""
    texts = []
    for number, epithet in enumerate(EPITHETS):
        texts.append(work(f"a{number}-19{number}0", acts(f"name: Exemplum {epithet}, act: new taxon")))
        if draw(st.booleans()):
            moved = f"name: Alterum {epithet}, act: new combination, basionym: Exemplum {epithet}"
            texts.append(work(f"b{number}-195{draw(st.integers(0, 9))}", acts(moved)))
    for number in range(draw(st.integers(1, 3))):
        kept, *others = draw(st.permutations(EPITHETS))
        sunk = others[: draw(st.integers(0, 3))]
        wrong = others[3 : 3 + draw(st.integers(0, 1))]
        listed = ", ".join(f"Exemplum {one}" for one in sunk)
        missed = ", ".join(f"Exemplum {one}" for one in wrong)
        said = f"taxon: Exemplum {kept}, synonyms: [{listed}], misapplied: [{missed}], page: '5'"
        texts.append(work(f"c{number}-197{number}", treats(said)))
    return draw(st.permutations(texts))


@settings(deadline=None, max_examples=60)
@given(knowledge_bases(), st.sampled_from(EPITHETS))
def test_laws(texts: list[str], epithet: str) -> None:
    corpus = made(*texts)
    name = f"exemplum-{epithet}"
    found = synonymy(corpus, name)
    # Every name on an included type once: a slow second answer, from the treatments themselves.
    kept = [one for one in corpus.treatments.values() if one.name == name]
    included = {name, *(sunk for one in kept for sunk in one.synonyms)}
    groups = {corpus.names[one].group for one in included}
    assert sorted(ids(found)) == sorted(one.id for one in corpus.names.values() if one.group in groups)
    # Blocks and names stand by date, each block led by its oldest name.
    year = {one: corpus.publishing_act(one).work.year for one in corpus.names}
    blocks = [[year[one.id] for one in block.names] for block in found.heterotypic]
    assert all(block == sorted(block) for block in blocks) and blocks == sorted(blocks)
    # The order of files does not matter, and every form says the same words.
    assert synonymy(made(*sorted(texts)), name) == found
    spoken = as_text(found).split()
    assert words_of_html(as_html(found)) == spoken == words_of_markdown(as_markdown(found))


@settings(deadline=None, max_examples=30)
@given(knowledge_bases())
def test_over_all_works_is_the_union_of_what_each_work_sinks(texts: list[str]) -> None:
    corpus = made(*texts)
    for name in corpus.names:
        each = [synonymy(corpus, name, [one]) for one in corpus.works]
        union = {one for found in each for one in ids(found)}
        assert union == set(ids(synonymy(corpus, name)))
