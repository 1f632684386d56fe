"""Nineteen worked examples of the Code, kept as a knowledge base in tests/data/kb-icn, through the command line.

Each act there names its article and example (ICN, editions from Tokyo 1994 to Shenzhen 2018, read on published pages
or from memory, as it says). What the examples answer stands here.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main
from building import corpus_of

KB = Path(__file__).parents[1] / "data" / "kb-icn"


def run(*arguments: str) -> str:
    """What the command prints; it must end with exit code 0."""
    result = CliRunner().invoke(main, [*arguments, "--kb", str(KB)])
    assert result.exit_code == 0, result.output
    return result.stdout


def test_check_finds_nothing() -> None:
    found = json.loads(run("check", "--json"))
    assert (found["errors"], found["warnings"], found["problems"]) == (0, 0, [])


@pytest.mark.parametrize(
    ("asked", "acts", "names"),
    [
        pytest.param(
            "Centaurea benedicta",
            [(1753, "new taxon"), (1763, "new combination")],
            ["Cnicus benedictus L.", "Centaurea benedicta (L.) L."],
            id="Art-6.10-one-author-in-and-after-the-parentheses",
        ),
        pytest.param(
            "Tsuga mertensiana",
            [(1832, "new taxon"), (1867, "new combination")],
            ["Pinus mertensiana Bong.", "Tsuga mertensiana (Bong.) Carrière"],
            id="Art-7.3-combination",
        ),
        pytest.param(
            "Helianthemum aegyptiacum",
            [(1753, "new taxon"), (1768, "new combination")],
            ["Cistus aegyptiacus L.", "Helianthemum aegyptiacum (L.) Mill."],
            id="Art-49.1-Ex-4",
        ),
        pytest.param(
            "Medicago orbicularis",
            [(1753, "new taxon"), (1776, "change of rank")],
            ["Medicago polymorpha var. orbicularis L.", "Medicago orbicularis (L.) Bartal."],
            id="Art-49.1-Ex-1-change-of-rank",
        ),
        pytest.param(
            "Hemerocallis flava",
            [(1753, "new taxon"), (1762, "change of rank")],
            ["Hemerocallis lilioasphodelus var. flava L.", "Hemerocallis flava (L.) L."],
            id="Art-11.2-Ex-4",
        ),
        pytest.param(
            "Lythrum salicaria var. intermedium",
            [(1822, "new taxon"), (1881, "change of rank")],
            ["Lythrum intermedium Ledeb.", "Lythrum salicaria var. intermedium (Ledeb.) Koehne"],
            id="Art-11.2-Ex-3",
        ),
        pytest.param(
            "Dracunculus vulgaris",
            [(1753, "new taxon"), (1832, "replacement name")],
            ["Arum dracunculus L.", "Dracunculus vulgaris Schott"],
            id="Art-11.4-epithet-barred-by-tautonymy",
        ),
        pytest.param(
            "Cytisus fontanesii",
            [(1798, "new taxon"), (1878, "replacement name")],
            ["Spartium biflorum Desf.", "Cytisus fontanesii Spach ex Ball"],
            id="Art-11.4-epithet-barred-by-homonymy",
        ),
        pytest.param(
            "Ptilostemon chamaepeuce",
            [(1753, "new taxon"), (1826, "replacement name"), (1832, "new combination")],
            ["Serratula chamaepeuce L.", "Ptilostemon muticus Cass.", "Ptilostemon chamaepeuce (L.) Less."],
            id="Art-11.4-three-acts",
        ),
        pytest.param(
            "Lithocarpus polystachyus",
            [(1864, "new taxon"), (1919, "new combination")],
            ["Quercus polystachya Wall. ex A. DC.", "Lithocarpus polystachyus (Wall. ex A. DC.) Rehder"],
            id="Art-46.5-ex-in-the-parentheses",
        ),
        pytest.param(
            "Picea abies",
            [(1753, "new taxon"), (1779, "new taxon"), (1841, "new combination"), (1881, "new combination")],
            ["Pinus abies L.", "Pinus excelsa Lam.", "Picea excelsa Link", "Picea abies (L.) H. Karst."],
            id="Art-52.1-Ex-2-superfluous-name-shares-the-type",
        ),
        pytest.param(
            "Astragalus cariensis",
            [(1843, "new taxon"), (1849, "replacement name")],
            ["Astragalus rhizanthus Boiss.", "Astragalus cariensis Boiss."],
            id="Art-53.1-Ex-3-replaces-the-later-homonym",
        ),
        pytest.param(
            "Zingiber neotruncatum",
            [(1987, "new taxon"), (2000, "replacement name")],
            ["Zingiber truncatum S. Q. Tong", "Zingiber neotruncatum T. L. Wu & al."],
            id="Art-53.1-Ex-4-replaces-the-later-homonym",
        ),
        pytest.param(
            "Thuspeinanta",
            [(1848, "new taxon"), (1888, "replacement name")],
            ["Tapeinanthus Boiss. ex Benth.", "Thuspeinanta T. Durand"],
            id="Art-41.2-Ex-1-genus",
        ),
    ],
)
def test_history(asked: str, acts: list[tuple[int, str]], names: list[str]) -> None:
    """Acts in order of time, and every name on the type as the Code cites it."""
    found = json.loads(run("history", asked, "--json"))
    assert [(event["year"], event["what"]) for event in found["events"]] == acts
    assert found["names"] == names
    assert found["type_of"] == names[0]


@pytest.mark.parametrize(
    ("asked", "notes"),
    [
        pytest.param(
            "Astragalus rhizanthus Boiss.", {1843: "later homonym, illegitimate (Art. 53.1)"}, id="Art-53.1-Ex-3"
        ),
        pytest.param("Astragalus rhizanthus Royle ex Benth.", {}, id="Art-53.1-Ex-3-the-earlier"),
        pytest.param(
            "Zingiber truncatum S. Q. Tong", {1987: "later homonym, illegitimate (Art. 53.1)"}, id="Art-53.1-Ex-4"
        ),
        pytest.param(
            "Zingiber truncatum Stokes", {1812: "superfluous, illegitimate (Art. 52.1)"}, id="Art-52.1-Amomum-cited"
        ),
        pytest.param(
            "Pinus excelsa",
            {
                1779: "superfluous, illegitimate (Art. 52.1)",
                1841: "rests on an illegitimate name (Art. 6.10, 58.1); superfluous, illegitimate (Art. 52.1)",
            },
            id="Art-52.1-Ex-2",
        ),
        pytest.param(
            "Tapeinanthus Boiss. ex Benth.", {1848: "later homonym, illegitimate (Art. 53.1)"}, id="Art-41.2-Ex-1"
        ),
        pytest.param("Sebertia", {1891: "not valid: not accepted by its author (Art. 36.1)"}, id="Art-36.1-Ex-1"),
        pytest.param("Sersalisia acuminata", {}, id="Art-36.1-Ex-1-doubt-does-not-matter"),
        pytest.param("Arabis beckwithii", {}, id="Art-47.1-Ex-1"),
        pytest.param("Schiedea kealiae", {}, id="Art-39.1-Ex-2-with-Latin"),
    ],
)
def test_remarks_of_the_code(asked: str, notes: dict[int, str]) -> None:
    found = json.loads(run("history", asked, "--json"))
    assert {event["year"]: "; ".join(event["notes"]) for event in found["events"] if event["notes"]} == notes


@pytest.mark.parametrize(
    ("label", "name"),
    [
        pytest.param("Picea Abies 'Nidiformis'", "Picea abies (L.) H. Karst.", id="cultivar"),
        pytest.param("Tsuga mertensianna", "Tsuga mertensiana (Bong.) Carrière", id="doubled-letter"),
        pytest.param("Cytisus fontanesi", "Cytisus fontanesii Spach ex Ball", id="one-i"),
        pytest.param("Lythrum salicaria glabrum", "Lythrum salicaria var. glabrum Ledeb.", id="rank-left-out"),
        pytest.param("Zingiber truncatum Tong", "Zingiber truncatum S. Q. Tong", id="authors-tell-homonyms"),
    ],
)
def test_match(label: str, name: str) -> None:
    (found,) = json.loads(run("match", label, "--json"))
    assert (found["verdict"], found["candidates"][0]["name"]) == ("one", name)


def test_match_of_homonyms_without_authors() -> None:
    (found,) = json.loads(run("match", "Astragalus rhizanthus", "--json"))
    assert found["verdict"] == "several"
    assert {one["name"] for one in found["candidates"]} == {
        "Astragalus rhizanthus Royle ex Benth.",
        "Astragalus rhizanthus Boiss.",
    }


def test_build(tmp_path: Path) -> None:
    """A site without any description: a page for each name and each work."""
    out = tmp_path / "site"
    run("build", "--out", str(out))
    pages = {path.stem for path in out.rglob("*.html")}
    assert {"index", "picea-abies", "zingiber-neotruncatum", "boissier-1849"} <= pages


def test_an_isonym_may_replace_its_own_words() -> None:
    """Art. 6.3 Note 2, Ex. 2 (Saint Louis Code 2000): Canarium pimela of 1959, for the illegitimate one of 1805."""
    acts = "acts:\n- {{name: Canarium pimela, rank: species, {}}}\n"
    work = "work: {{id: {}, type: document, author: [{{family: {}}}], issued: '{}', title: T}}\n"
    corpus, problems = corpus_of(
        work.format("koenig-1805", "König", 1805) + acts.format("act: new taxon"),
        work.format("leenhouts-1959", "Leenhouts", 1959)
        + acts.format("act: replacement name, replaces: Canarium pimela König"),
    )
    assert list(corpus.names) == ["canarium-pimela"]
    assert len(corpus.acts_of("canarium-pimela")) == 2
    assert problems == []
