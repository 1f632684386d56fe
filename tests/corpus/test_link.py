"""Records -> Corpus: names from acts, references by words, taxa by type and sense, and every problem with its place."""

from __future__ import annotations

import time
from itertools import pairwise, permutations

import pytest

from auctorum.names.format import format_name
from building import corpus_of

ORRIN = """\
work: {id: orrin-1881, type: book, author: [{family: Orrin}], issued: "1881", title: Flora}
covers: [Exemplum]
acts:
- {name: Exemplum, rank: genus, act: new taxon, type: {kind: name, specimen: Exemplum album}}
- {name: Exemplum album, act: new taxon, type: {kind: holotype, specimen: Orrin 7, herbarium: XQ}}
- {name: Exemplum album var. longum, act: new taxon, type: {kind: holotype, specimen: Orrin 9, herbarium: XQ}}
treatments:
- {taxon: Exemplum album, under: Exemplum, page: "3"}
- {taxon: Exemplum album var. album, under: Exemplum album}
- {taxon: Exemplum album var. longum, under: Exemplum album, page: "4", traits: [
    {character: spur length, verbatim: "spur 22-34 mm long"}]}
"""
VANE = """\
work: {id: vane-1922, type: article-journal, author: [{family: Vane}, {family: Tull}], issued: "1922-03", title: Notes}
acts:
- {name: Exemplum longum, rank: species, act: change of rank, basionym: Exemplum album var. longum}
treatments:
- {taxon: Exemplum longum, under: Exemplum}
- {taxon: Exemplum album, under: Exemplum}
"""
SELK = """\
work: {id: selk-1950, type: book, author: [{family: Selk}], issued: "1950", title: Handbook}
covers: [Exemplum]
treatments:
- {taxon: Exemplum album, under: Exemplum, synonyms: [Exemplum longum, Exemplum album var. longum]}
"""


def test_names_are_cited_from_their_acts() -> None:
    corpus, problems = corpus_of(ORRIN, VANE)
    assert problems == []
    assert {id_: format_name(entry.name) for id_, entry in corpus.names.items()} == {
        "exemplum": "Exemplum Orrin",
        "exemplum-album": "Exemplum album Orrin",
        "exemplum-album-var-longum": "Exemplum album var. longum Orrin",
        "exemplum-longum": "Exemplum longum (Orrin) Vane & Tull",
        "exemplum-album-var-album": "Exemplum album Orrin var. album",
    }


def test_homotypic_names_make_one_group() -> None:
    corpus, _ = corpus_of(ORRIN, VANE)
    assert dict(corpus.groups) == {
        "exemplum": ("exemplum",),
        "exemplum-album": ("exemplum-album", "exemplum-album-var-album"),
        "exemplum-album-var-longum": ("exemplum-album-var-longum", "exemplum-longum"),
    }


def test_a_species_is_kept_in_the_wide_and_in_the_strict_sense() -> None:
    """Orrin's species takes in var. longum; that of Vane & Tull does not, and is Orrin's var. album."""
    corpus, _ = corpus_of(ORRIN, VANE, SELK)
    senses = {taxon.id: (str(taxon.sense), taxon.treatments) for taxon in corpus.taxa.values()}
    assert senses["exemplum-album-wide-sense"] == ("wide", ("orrin-1881:1", "selk-1950:1"))
    assert senses["exemplum-album-strict-sense"] == ("strict", ("orrin-1881:2", "vane-1922:2"))
    assert senses["exemplum-album-var-longum"] == ("", ("orrin-1881:3", "vane-1922:1"))


def test_the_order_of_files_does_not_matter() -> None:
    """Same corpus and same problems, whatever the order; records compare without their places."""
    first = corpus_of(ORRIN, VANE, SELK)
    for texts in permutations((ORRIN, VANE, SELK)):
        assert corpus_of(*texts) == first


def test_isonym_and_homonym() -> None:
    again = """\
work: {id: moss-1930, type: book, author: [{family: Moss}], issued: "1930", title: X}
acts:
- {name: Exemplum longum, act: change of rank, basionym: Exemplum album var. longum}
"""
    other = """\
work: {id: pell-1940, type: book, author: [{family: Pell}], issued: "1940", title: X}
acts:
- {name: Exemplum longum, act: new taxon, type: {kind: holotype, specimen: Pell 1, herbarium: XQ}}
treatments:
- {taxon: Exemplum longum, under: Exemplum}
"""
    sunk = """\
work: {id: dorn-1960, type: book, author: [{family: Dorn}], issued: "1960", title: X}
treatments:
- {taxon: Exemplum album, synonyms: [Exemplum longum, Exemplum longum Pell]}
"""
    corpus, problems = corpus_of(ORRIN, VANE, again, other, sunk)
    vane, pell = "exemplum-longum-vane-tull-1922", "exemplum-longum-pell-1940"
    assert corpus.names[vane].acts == ("vane-1922.1", "moss-1930.1")
    assert corpus.names[pell].acts == ("pell-1940.1",)
    # Pell means the own name; Dorn's bare words may be either.
    assert corpus.by_work["pell-1940"][0].name == pell
    assert problems == [
        "dorn-1960.yaml:3:38: `Exemplum longum` may be 2 names "
        "(write it with authors: Exemplum longum Pell; Exemplum longum Vane & Tull)"
    ]


def test_variant_spelling_leads_to_its_name() -> None:
    variant = """\
work: {id: moss-1930, type: book, author: [{family: Moss}], issued: "1930", title: X}
acts:
- {name: Exemplum albidum, act: variant spelling, of: Exemplum album}
treatments:
- {taxon: Exemplum albidum}
"""
    corpus, problems = corpus_of(ORRIN, variant)
    assert problems == []
    assert corpus.by_work["moss-1930"][0].name == "exemplum-album"
    assert [format_name(name) for name in corpus.names["exemplum-album"].variants] == ["Exemplum albidum"]


def in_orrin(old: str, new: str) -> str:
    assert old in ORRIN
    return ORRIN.replace(old, new)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        pytest.param(
            in_orrin("under: Exemplum, page", "under: Exemplun, page"),
            ["orrin-1881.yaml:8:27: no name `Exemplun` in the knowledge base (nearest: Exemplum; Exemplum album)"],
            id="unknown-name-lists-candidates",
        ),
        pytest.param(
            in_orrin("Exemplum album var. longum, under", "Exemplum rubrum, under"),
            ["orrin-1881.yaml:10:4: warning: no act publishes the name `Exemplum rubrum`: a name without protologue "],
            id="name-without-protologue-is-a-warning",
        ),
        pytest.param(
            in_orrin("character: spur length", "character: spur lenght"),
            ["orrin-1881.yaml:11:6: no character `spur lenght` in characters.yaml (did you mean `spur length`?)"],
            id="unknown-character",
        ),
        pytest.param(
            in_orrin("spur 22-34 mm long", "spur 34-22 mm long"),
            [
                "orrin-1881.yaml:11:30: lower bound 34 is above upper bound 22 "
                "(give the lower bound first, or correct the words)"
            ],
            id="reversed-range",
        ),
        pytest.param(
            in_orrin("var. longum, act", "var. longum, rank: subspecies, act"),
            [
                "orrin-1881.yaml:6:38: the rank subspecies contradicts the name `Exemplum album var. longum`, "
                "by its form a variety (correct the rank or the name)"
            ],
            id="rank-against-term",
        ),
        pytest.param(
            in_orrin(
                "var. longum, act: new taxon", "var. longum, act: change of rank, basionym: Exemplum album var. longum"
            ),
            [
                "orrin-1881.yaml:6:59: `Exemplum album var. longum` is said to rest on itself "
                "(name the older name, with authors if it is a homonym)"
            ],
            id="rests-on-itself",
        ),
        pytest.param(
            in_orrin("taxon: Exemplum album var. longum, under", "taxon: Exemplum cf. album, under"),
            [
                "orrin-1881.yaml:10:4: `Exemplum cf. album` holds more than a name: Exemplum album, and `cf.` "
                "(write the name alone;"
            ],
            id="a-doubt-is-no-part-of-a-name",
        ),
        pytest.param(
            in_orrin("under: Exemplum album}", "under: Exemplum album Nobody}"),
            [
                "orrin-1881.yaml:9:38: no name `Exemplum album Nobody` in the knowledge base "
                "(nearest: Exemplum album Orrin)"
            ],
            id="authors-that-are-not-those-of-the-name",
        ),
        pytest.param(
            in_orrin('verbatim: "spur 22-34 mm long"', 'value: "1e9 mm"'),
            ["orrin-1881.yaml:11:30: `1e9 mm`: 1 was not understood"],
            id="a-value-read-by-pieces",
        ),
        pytest.param(
            in_orrin('verbatim: "spur 22-34 mm long"', 'value: "-5 mm"'),
            ["orrin-1881.yaml:11:30: `-5 mm`: the sign was not understood"],
            id="a-value-below-nothing",
        ),
        pytest.param(
            in_orrin(
                'character: spur length, verbatim: "spur 22-34 mm long"',
                "character: petal number, verbatim: petals 3.5",
            ),
            ["orrin-1881.yaml:11:31: `3.5`: a count is whole and not below 0"],
            id="a-count-that-is-not-whole",
        ),
        pytest.param(
            in_orrin('verbatim: "spur 22-34 mm long"', 'verbatim: "spur 3 mm", stage: zygote'),
            [
                "orrin-1881.yaml:11:53: no growth stage `zygote` of `spur length` "
                "(known stages: none for this character)"
            ],
            id="an-unknown-stage",
        ),
        pytest.param(
            in_orrin("covers: [Exemplum]", "covers: [Nothing atrum]"),
            ["orrin-1881.yaml:2:10: no name `Nothing atrum` in the knowledge base"],
            id="covers-an-unknown-name",
        ),
    ],
)
def test_problems_of_linking(text: str, said: list[str]) -> None:
    _, problems = corpus_of(text)
    assert len(problems) == len(said), problems
    for problem, start in zip(problems, said, strict=True):
        assert problem.startswith(start)


def test_a_unit_that_does_not_fit() -> None:
    _, problems = corpus_of(in_orrin("spur 22-34 mm long", "spur 22-34°"))
    assert len(problems) == 1
    assert problems[0].startswith("orrin-1881.yaml:11:30: ")
    assert "degree" in problems[0] and "spur length" in problems[0]


def test_two_works_with_one_id() -> None:
    corpus, problems = corpus_of(ORRIN, VANE.replace("vane-1922", "orrin-1881"), files=("a.yaml", "b.yaml"))
    assert problems == ["b.yaml:1:8: the work id `orrin-1881` is that of a.yaml:1:7 too (give each work its own id)"]
    assert list(corpus.works) == ["orrin-1881"]


def test_a_long_chain_and_a_circle_of_parents_take_no_time() -> None:
    """Every treatment of a circle twice over, and a chain of 600: neither walks a way twice."""
    letters = [f"x{'abcdefghij'[n // 100]}{'abcdefghij'[n // 10 % 10]}{'abcdefghij'[n % 10]}um" for n in range(600)]
    acts = "".join(f"- {{name: Exemplum {one}, act: new taxon}}\n" for one in letters)
    chain = "".join(f"- {{taxon: Exemplum {one}, under: Exemplum {up}}}\n" for one, up in pairwise(letters))
    circle = f"- {{taxon: Exemplum {letters[-1]}, under: Exemplum {letters[0]}}}\n" * 8
    text = (
        'work: {id: moss-1930, type: book, author: [{family: Moss}], issued: "1930", title: X}\n'
        f"acts:\n{acts}treatments:\n{chain}{circle}"
    )
    began = time.perf_counter()
    corpus, _ = corpus_of(text)
    assert time.perf_counter() - began < 20
    assert len(corpus.treatments["moss-1930:1"].includes) == 600


def test_cycles_are_named_once() -> None:
    circle = """\
work: {id: moss-1930, type: book, author: [{family: Moss}], issued: "1930", title: X}
acts:
- {name: Prima rubra, act: new combination, basionym: Secunda rubra}
- {name: Secunda rubra, act: new combination, basionym: Tertia rubra}
- {name: Tertia rubra, act: new combination, basionym: Prima rubra}
treatments:
- {taxon: Prima rubra, under: Secunda rubra}
- {taxon: Secunda rubra, under: Prima rubra}
"""
    _, problems = corpus_of(circle)
    assert [problem.split(" (")[0] for problem in problems] == [
        "moss-1930.yaml:3:3: the names rest on one another in a circle: "
        "Prima rubra → Secunda rubra → Tertia rubra → Prima rubra",
        "moss-1930.yaml:7:24: the taxa are placed in one another in a circle: "
        "Prima rubra → Secunda rubra → Prima rubra",
    ]


@pytest.mark.parametrize(
    ("basionym", "name", "warned"),
    [
        pytest.param("Exemplum album", "Altera alba", False, id="gender-agrees-with-the-genus"),
        pytest.param("Exemplum album", "Altera nigra", True, id="another-epithet"),
        pytest.param("Exemplum album var. longum", "Altera longa", False, id="final-epithet-moves"),
        pytest.param("Exemplum album var. longum", "Altera alba", True, id="not-the-epithet-of-the-species"),
    ],
)
def test_a_combination_keeps_the_final_epithet_of_its_basionym(basionym: str, name: str, warned: bool) -> None:
    other = f"""\
work: {{id: moss-1930, type: book, author: [{{family: Moss}}], issued: "1930", title: X}}
acts:
- {{name: {name}, act: new combination, basionym: {basionym}}}
"""
    _, problems = corpus_of(ORRIN, other)
    assert bool(problems) is warned
    assert all("is not that of the basionym" in problem for problem in problems)


def test_every_statement_is_kept_even_unread() -> None:
    corpus, problems = corpus_of(in_orrin("spur 22-34 mm long", "spur of moderate length"))
    (statement,) = corpus.statements.values()
    assert statement.readings == () and statement.verbatim == "spur of moderate length"
    assert len(problems) == 1


def test_homonyms_by_one_author_are_told_apart_by_year() -> None:
    """As `Protea L.` of 1753 and of 1771: the year behind the authors tells which is meant."""
    first = work_of("orrin-1900", "name: Exemplum rarum, act: new taxon, type: {kind: holotype, specimen: A}")
    second = work_of("orrin-1910", "name: Exemplum rarum, act: new taxon, type: {kind: holotype, specimen: B}")
    replaced = "name: Exemplum novum, act: replacement name, replaces: Exemplum rarum Orrin 1910"
    corpus, problems = corpus_of(first, second, work_of("vane-1920", replaced))
    assert problems == []
    assert corpus.names["exemplum-novum"].group == "exemplum-rarum-orrin-1910"
    _, problems = corpus_of(first, second, work_of("vane-1920", replaced.replace(" 1910", "")))
    assert problems == [
        "vane-1920.yaml:3:49: `Exemplum rarum Orrin` may be 2 names "
        "(write it with authors: Exemplum rarum Orrin 1900; Exemplum rarum Orrin 1910)"
    ]


def work_of(id_: str, act: str) -> str:
    family, year = id_.split("-")
    head = f'work: {{id: {id_}, type: book, author: [{{family: {family.title()}}}], issued: "{year}", title: X}}\n'
    return f"{head}acts:\n- {{{act}}}\n"
