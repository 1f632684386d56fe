"""`auctorum determine` on one plant, on the invented group and on hostile knowledge bases."""

from __future__ import annotations

import json
import math
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from click.testing import CliRunner

from auctorum.cli.main import main

KB = Path(__file__).parents[2] / "kb"
LONGUM, ROBUSTUM = (f"Cremnocentron album var. {epithet}" for epithet in ("longum", "robustum"))
CLEAR = (
    "--with",
    "spur length=31 mm",
    "--with",
    "leaf apex=acute",
    "--with",
    "flower number=5",
    "--with",
    "petal length=16 mm",
)


@pytest.fixture(autouse=True, scope="module")
def own_cache(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        yield


def determine(*arguments: str, kb: Path = KB) -> tuple[int, str, str]:
    result = CliRunner().invoke(main, ["determine", *arguments, "--kb", str(kb)], env={"COLUMNS": "100"})
    assert result.exception is None or isinstance(result.exception, SystemExit), result.exception
    return result.exit_code, result.stdout, result.stderr


def data_of(*arguments: str, kb: Path = KB) -> dict:
    code, out, err = determine(*arguments, "--json", kb=kb)
    assert (code, err) == (0, ""), err
    return json.loads(out)


def test_first_the_name_then_why() -> None:
    code, out, err = determine(*CLEAR)
    assert (code, err) == (0, "")
    assert re.match(rf"{LONGUM} — 9[5-9] %\nA name is given plainly from 95 % on.\nAll authors together say", out)
    parts = ("What each character says", "What to observe next", "On whose authority", "What this rests on", "Mind")
    assert sorted(map(out.index, parts)) == list(map(out.index, parts))
    flowing = " ".join(out.split())
    for told in (
        "Taken as that of a mature plant: spur length (--stage says otherwise).",
        "Characters are taken as independent within a taxon.",
        "It may be none of them",
        "Before the plant was looked at, all candidates were as likely.",
        "A determination is an opinion",
        "Eat nothing on the strength of a determination",
        "Fits “Long-spurred from 25 mm” (M. Sallow 2024): spur 31 mm, 6 mm over the limit of 25 mm.",
    ):
        assert told in flowing, told


def test_each_author_in_his_own_words() -> None:
    """The same taxon is a subspecies, a form or a species for others; one who describes a single taxon can't differ."""
    authors = {one["works"][0]: one for one in data_of("--with", "spur length=31 mm")["authors"]}
    names = {work: one["name"] for work, one in authors.items()}
    assert names["maddrick-1923"].endswith("subsp. longum") and names["wethercote-1958"].endswith("f. longum")
    assert re.fullmatch(r"Cremnocentron (cf\. |aff\. )?longum", names["ohrlander-marlthorpe-2016"])
    assert {authors[work]["taxon"] for work in ("maddrick-1923", "ohrlander-marlthorpe-2016")} == {
        "cremnocentron-album-var-longum"
    }
    alone = [one for one in authors.values() if one["only_candidate"]]
    assert alone and all(one["probability"] is None for one in alone)
    silent = [one for one in authors.values() if not one["characters_used"]]
    assert silent and all(one["name"] is None and one["probability"] is None for one in silent)


def test_json_has_its_shape() -> None:
    data = data_of(*CLEAR, "--own-plants")
    assert list(data) == [
        "determination", "view", "works", "stage", "candidates", "characters", "unused", "agreement", "authors",
        "other_views", "criteria", "criteria_not_tried", "questions", "rests_on", "cautions",
    ]  # fmt: skip
    assert data["view"] == "all authors and own plants" and data["determination"]["name"] == LONGUM
    assert math.isclose(sum(one["probability"] for one in data["candidates"]), 1, abs_tol=1e-5)
    assert math.isclose(sum(one["prior"] for one in data["candidates"]), 1, abs_tol=1e-5)
    taxa = [one["taxon"] for one in data["candidates"]]
    for one in data["characters"]:
        assert list(one["support"]) == taxa and one["in_words"].endswith(".")
    for one in data["questions"]:
        assert one["how"] and 0 < one["gain"] <= 1
        assert sum(outcome["chance"] for outcome in one["outcomes"]) <= 1 + 1e-6
    assert {one["view"] for one in data["other_views"]} == {"all authors", "own plants"}
    (criterion,) = data["criteria"]
    assert (criterion["verdict"], criterion["margin"], criterion["chance_of_fitting"]) == ("fits", 6.0, 1.0)


def test_a_character_speaks_as_its_support_says() -> None:
    """The product of priors and supports is the probability: what is shown of each character is all there is."""
    data = data_of(*CLEAR)
    taxa = [one["taxon"] for one in data["candidates"]]
    logs = [
        math.log(one["prior"]) + sum(said["support"][one["taxon"]] for said in data["characters"])
        for one in data["candidates"]
    ]
    whole = sum(map(math.exp, logs))
    for one, log in zip(data["candidates"], logs, strict=True):
        assert math.isclose(one["probability"], math.exp(log) / whole, abs_tol=2e-4), taxa


def test_a_unit_changes_nothing() -> None:
    in_mm, in_cm = (data_of("--with", f"spur length={said}") for said in ("31 mm", "3.1 cm"))
    assert in_mm["candidates"] == in_cm["candidates"]


def test_several_measurements_are_one_observation() -> None:
    several = data_of("--with", "spur length=30 mm", "--with", "spur length=32 mm")
    assert several["candidates"] == data_of("--with", "spur length=31 mm")["candidates"] and not several["unused"]


def test_a_young_flower_proves_nothing_by_the_criterion() -> None:
    code, out, _ = determine("--with", "spur length=18 mm", "--stage", "young")
    flowing = " ".join(out.split())
    assert code == 0 and out.startswith("Cremnocentron indet. — ")
    assert "young spur length 18 mm:" in flowing and "Taken as that of a young plant" in flowing
    assert "spur length was observed on a young plant only, which proves nothing at maturity" in flowing
    assert "The criterion “Long-spurred from 25 mm” (M. Sallow 2024) does not decide." in flowing


def test_a_stage_in_the_words_goes_before_the_option() -> None:
    (one,) = data_of("--with", "spur colour=green when young")["characters"]
    assert one["stage"] == "young"


def test_nonsense_is_said_to_be_so() -> None:
    code, out, _ = determine("--with", "spur length=90 mm")
    flowing = " ".join(out.split())
    assert code == 0
    assert "lies outside all that is stated of any candidate: look at it and at its unit again" in flowing
    assert "spur length 90 mm: outside all that is stated of any candidate" in flowing
    assert "Nothing more that authors state is likely to change the name." in flowing


def test_a_disagreement_of_all_authors_and_the_criterion_is_told() -> None:
    _, out, _ = determine("--with", "spur length=24 mm", "--site", "INV-S03")
    flowing = " ".join(out.split())
    assert "All authors together say C. album var. longum" in flowing
    assert f"The criterion “Long-spurred from 25 mm” (M. Sallow 2024) says {ROBUSTUM}, which differs." in flowing
    assert "Told by the site: elevation, aspect and substrate." in flowing


@pytest.mark.parametrize("form", [(), ("--json",)])
def test_the_elevation_of_a_site_is_a_band(form: tuple[str, ...]) -> None:
    """The site lies at 170 to 240 m; all that leaves is the full hundred on either side."""
    code, out, _ = determine("--with", "spur length=24 mm", "--site", "INV-S03", *form)
    assert code == 0 and "elevation 100–300 m" in out
    assert not re.search(r"\b(170|205|240)\b", out)


def test_a_criterion_on_elevation_tells_no_elevation(tmp_path: Path) -> None:
    """Neither the elevation of the site nor how far it lies from the limit, from which it would follow."""
    kb = tmp_path / "kb"
    shutil.copytree(KB, kb)
    text = f"id: high\ntaxon: {LONGUM}\ntitle: High walls\ndecisive: {{character: elevation, at-least: 150 m}}\n"
    (kb / "criteria" / "high.yaml").write_text(text, encoding="utf-8")
    asked = ("--with", "spur length=24 mm", "--site", "INV-S03", "--criterion", "high")
    (one,) = data_of(*asked, kb=kb)["criteria"]
    assert (one["verdict"], one["observed"], one["margin"]) == ("fits", "100–300 m", None)
    flowing = " ".join(determine(*asked, kb=kb)[1].split())
    assert "Fits, by “High walls”: elevation 100–300 m by its site." in flowing
    assert not re.search(r"\b(55|170|205|240)\b", flowing)


def test_what_cannot_be_used_is_said_with_the_reason() -> None:
    code, out, _ = determine("--with", "seed surface=smooth", "--with", "spur length=31", "--sec", "jolmark-2013")
    assert code == 1 and out.startswith("Cremnocentron indet. — nothing to go by")
    assert "Not used" in out and "seed surface smooth: not stated of any candidate." in out


def test_candidates_and_priors() -> None:
    two = ("--with", "spur length=31 mm", "--among", LONGUM, "--among", ROBUSTUM)
    even = data_of(*two)
    assert [one["prior"] for one in even["candidates"]] == [0.5, 0.5]
    uneven = data_of(*two, "--prior", f"{ROBUSTUM}=90%")
    odds, other = (one["candidates"] for one in (even, uneven))
    ratio = {one["taxon"]: one["probability"] for one in odds}
    weights = {one["taxon"]: ratio[one["taxon"]] * one["prior"] for one in other}
    for one in other:  # Bayes' rule: odds are multiplied by the odds beforehand
        assert math.isclose(one["probability"], weights[one["taxon"]] / sum(weights.values()), abs_tol=1e-4)
    counted = data_of(*two, "--prior-from-plants")
    assert [one["prior"] for one in counted["candidates"]] != [0.5, 0.5]
    assert "by the named plants of the knowledge base" in " ".join(counted["rests_on"])


def test_an_only_candidate_is_no_certainty() -> None:
    code, out, _ = determine("--with", "spur length=31 mm", "--among", LONGUM)
    assert code == 0 and out.startswith(f"{LONGUM} — the only candidate\nNo other taxon was considered")


def test_one_author() -> None:
    data = data_of("--with", "spur length=31 mm", "--sec", "orrin-1889")
    assert (data["view"], data["works"]) == ("sec. Orrin 1889", ["orrin-1889"])
    assert "all authors" in [one["view"] for one in data["other_views"]]
    assert data["agreement"][0].startswith("Orrin 1889 says")


@pytest.mark.parametrize(
    ("arguments", "code", "said"),
    [
        pytest.param([], 2, "say what was observed by --with", id="nothing"),
        pytest.param(["--with", "spur length"], 2, "write 'CHARACTER=VALUE'", id="no-value"),
        pytest.param(["--with", "spur lenth=3"], 1, "did you mean `spur length`?", id="misspelt-character"),
        pytest.param(["--with", "spur colour=ivry"], 1, "did you mean `ivory`?", id="misspelt-state"),
        pytest.param(["--with", "spur length=31 kg"], 1, "in mm or a unit that fits", id="unit"),
        pytest.param(["--with", "spur length=at least 3 mm"], 1, "give the figure measured", id="bound"),
        pytest.param(["--with", "spur length=3", "--sec", "orrin-1888"], 2, "nearest: orrin-1889", id="work"),
        pytest.param(["--with", "spur length=3", "--site", "INV-S3"], 2, "nearest: INV-S03", id="site"),
        pytest.param(["--with", "spur length=3", "--criterion", "x"], 2, "there are: longispur-like", id="criterion"),
        pytest.param(["--with", "spur length=3", "--stage", "yung"], 2, "nearest: young", id="stage"),
        pytest.param(["--with", "spur length=3", "--among", "C. albun"], 1, "no name", id="name"),
        pytest.param(["--with", "spur length=3", "--prior", f"{LONGUM}=2"], 2, "a share lies from 0 to 1", id="share"),
        pytest.param(["--with", "spur length=3", "--prior", f"{LONGUM}=nan"], 2, "a share lies from 0 to 1", id="nan"),
        pytest.param(["--with", "spur length=3", "--prior", "0.3"], 2, "write TAXON=SHARE", id="prior"),
        pytest.param(
            ["--with", "spur length=3", "--prior", f"{LONGUM}=0.6", "--prior", f"{ROBUSTUM}=0.6"], 2, "more than 1",
            id="too-much",
        ),
        pytest.param(
            ["--with", "spur length=3", "--among", ROBUSTUM, "--prior", f"{LONGUM}=0.6"], 2, "is no candidate here",
            id="no-candidate",
        ),
        pytest.param(
            ["--with", "a=b", "--prior", f"{LONGUM}=0.6", "--prior-from-plants"], 2, "not both", id="two-priors"
        ),
        pytest.param([str(KB / "specimens.csv"), "--with", "a=b"], 2, "give a FILE of plants, or one plant", id="both"),
        pytest.param(["--evaluate", "--ask"], 2, "--evaluate tries named plants", id="evaluate-and-ask"),
        pytest.param(["--with", "spur length=3", "--out", "x.csv"], 2, "for the answers on a FILE", id="out"),
        pytest.param(["--with", "spur length=3", "--habitat"], 2, "give --site", id="habitat"),
        pytest.param(["nowhere.csv"], 2, "does not exist", id="no-file"),
    ],
)  # fmt: skip
def test_misuse_has_its_remedy(arguments: list[str], code: int, said: str) -> None:
    found, out, err = determine(*arguments)
    assert (found, out) == (code, "") and said in err and "Traceback" not in err


VOCABULARY = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm}
- {name: spur colour, structure: spur, property: colour, kind: nominal, states: [{name: green}, {name: ivory}]}
"""


def knowledge_base(folder: Path, literature: str, characters: str = VOCABULARY) -> Path:
    (folder / "literature").mkdir(parents=True)
    (folder / "kb.yaml").write_text("title: Hostile\n", encoding="utf-8")
    (folder / "characters.yaml").write_text(characters, encoding="utf-8")
    (folder / "literature" / "auctor-1900.yaml").write_text(literature, encoding="utf-8")
    return folder


WORK = 'work: {id: auctor-1900, type: book, author: [{family: Auctor}], issued: "1900", title: T}\n'
ONE = f"""{WORK}acts:
- {{name: Exemplum, act: new taxon}}
- {{name: Exemplum d'alembertii-ñandú, act: new taxon}}
treatments:
- taxon: Exemplum d'alembertii-ñandú
"""
STATED = ONE + '  traits:\n  - {character: spur length, verbatim: "20-30 mm"}\n'


def test_a_knowledge_base_that_states_nothing(tmp_path: Path) -> None:
    kb = knowledge_base(tmp_path / "kb", ONE)
    for arguments in (["--with", "spur length=3"], ["--ask"], ["--evaluate"]):
        code, _, err = determine(*arguments, kb=kb)
        assert code == 1 and "no character is stated of any of the taxa (ask other works or other taxa)" in err


def test_an_empty_vocabulary(tmp_path: Path) -> None:
    kb = knowledge_base(tmp_path / "kb", ONE, "characters: []\n")
    code, _, err = determine("--with", "spur length=3", kb=kb)
    assert code == 1 and "Traceback" not in err and "a fault of the program" not in err


def test_one_taxon_with_odd_letters(tmp_path: Path) -> None:
    kb = knowledge_base(tmp_path / "kb", STATED)
    data = data_of("--with", "spur length=25 mm", "--with", "spur colour=ivory", kb=kb)
    assert [one["probability"] for one in data["candidates"]] == [1.0] and not data["questions"]
    assert data["unused"][0]["why"] == "not stated of any candidate"
    code, out, _ = determine("--with", "spur length=99 mm", kb=kb)
    assert code == 0 and "the only candidate" in out and "outside all that is stated" in out
