"""Cases of a monographer's day that the rules must get right, each the smallest records that show it (all invented)."""

from __future__ import annotations

import json

import pytest

from auctorum.names.format import format_name
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.correct import Taxon, correct_name
from auctorum.nomenclature.history import history
from auctorum.nomenclature.judgement import Legitimacy, Validity
from auctorum.nomenclature.standing import standing_of_act
from auctorum.nomenclature.synonymy import accepted_name, synonymy
from auctorum.nomenclature.synonymy_text import as_text
from building import code_of, corpus_of

DESCRIBED = "description: {kind: description, language: latin}"


def work(id_: str, *acts: str, treatments: tuple[str, ...] = (), issued: str = "", more: str = "") -> str:
    family, year = id_.rsplit("-", 1)
    made = {"id": id_, "type": "book", "author": [{"family": family.title()}], "issued": issued or year, "title": "A"}
    lines = [f"work: {json.dumps(made)[:-1]}{more}}}"]
    lines += ["acts:", *(f"- {{{act}}}" for act in acts)] if acts else []
    lines += ["treatments:", *(f"- {{{one}}}" for one in treatments)] if treatments else []
    return "\n".join(lines)


def new(name: str, specimen: str = "", more: str = "") -> str:
    type_ = f", type: {{kind: holotype, specimen: {specimen}, herbarium: X}}" if specimen else ""
    return f"name: {name}, act: new taxon, {DESCRIBED}{type_}{more}"


def called(code: Code, act: str) -> str:
    return format_name(code.corpus.names[code.corpus.acts[act].name].name)


def test_a_chain_of_choices_leads_to_its_head() -> None:
    """ICN Art. 11.5 (from memory): album was chosen before longum, longum before pendulum."""
    code = code_of(
        work("vane-1850", new("Exemplum album", "A"), new("Exemplum longum", "B"), new("Exemplum pendulum", "C")),
        work("orrin-1900", "name: Exemplum album, act: first choice, against: [Exemplum longum]"),
        work("tull-1910", "name: Exemplum longum, act: first choice, against: [Exemplum pendulum]"),
    )
    asked = Taxon(frozenset({"exemplum-album", "exemplum-longum", "exemplum-pendulum"}), "species", "Exemplum")
    assert correct_name(code, asked).id == "exemplum-album"


@pytest.mark.parametrize(
    ("older", "same_type"),
    [
        pytest.param(new("Exemplum nudum", "A"), True, id="a-name"),
        pytest.param("name: Exemplum nudum, act: new taxon, description: {kind: none}", False, id="nomen-nudum"),
        pytest.param(new("Exemplum nudum", "A", ", accepted: false"), False, id="not-accepted"),
    ],
)
def test_a_superfluous_name_takes_the_type_only_of_a_name(older: str, same_type: bool) -> None:
    """ICN Art. 7.5: of what it ought to have been; a designation ought to have been nothing."""
    code = code_of(work("vane-1850", older), work("orrin-1860", new("Exemplum album", "", ", cites: [Exemplum nudum]")))
    groups = {code.corpus.names[name].group for name in ("exemplum-nudum", "exemplum-album")}
    assert (len(groups) == 1) is same_type


ENGLISH = "description: {kind: diagnosis, language: english}"
IN_ENGLISH = f"name: Exemplum album, act: new taxon, {ENGLISH}"
UNTYPED = f"name: Exemplum album, act: new taxon, {DESCRIBED}, type-indicated: false"


@pytest.mark.parametrize(
    ("issued", "act", "validity"),
    [
        pytest.param("../1940", IN_ENGLISH, "undetermined", id="perhaps-old"),
        pytest.param("1900/..", UNTYPED, "undetermined", id="perhaps-late"),
        pytest.param("1957~", UNTYPED, "undetermined", id="about-the-limit"),
        pytest.param("1955~", UNTYPED, "validly published", id="about-and-early-enough"),
        pytest.param("1900/2020", IN_ENGLISH, "undetermined", id="limits-within"),
        pytest.param("../1930", IN_ENGLISH, "validly published", id="old-anyway"),
    ],
)
def test_open_and_approximate_dates_leave_open_what_hangs_on_them(issued: str, act: str, validity: str) -> None:
    """ICN Art. 39.1 (Latin 1935-2011), 40.1 (type from 1958)."""
    code = code_of(work("vane-1900", act, issued=issued))
    assert str(code.acts["vane-1900.1"].validity) == validity


def test_under_an_illegitimate_species_there_is_no_autonym_to_be_used() -> None:
    """ICN Art. 26.2 speaks of legitimate species names: under a later homonym a variety may hold its type."""
    varied = new("Exemplum album var. longum", "C", ", under: Exemplum album Orrin, cites: [Exemplum album Orrin]")
    later = work("orrin-1860", new("Exemplum album", "B"), varied)
    code = code_of(work("vane-1850", new("Exemplum album", "A")), later)
    assert code.acts["orrin-1860.2"].validity is Validity.VALID
    alone = code_of(later)
    assert alone.acts["orrin-1860.2"].validity is Validity.NOT_VALID


@pytest.mark.parametrize(
    ("more", "cited"),
    [
        pytest.param("", "Novum album (Vane) Roe ex Dell", id="ascribed-only"),
        pytest.param(", contributed: true", "Novum album (Vane) Roe", id="said-to-have-contributed"),
    ],
)
def test_a_combination_is_theirs_who_contributed(more: str, cited: str) -> None:
    """ICN Art. 46.2, 46.5 (from memory)."""
    moved = f"name: Novum album, act: new combination, basionym: Exemplum album, ascribed-to: Roe{more}"
    code = code_of(work("vane-1850", new("Exemplum album", "A")), work("dell-1900", moved))
    assert called(code, "dell-1900.1") == cited


def test_a_living_type_goes_before_a_fossil() -> None:
    """ICN Art. 11.7 (from memory): whatever the dates."""
    code = code_of(
        work("vane-1850", new("Exemplum vetus", "A", ", fossil: true")), work("tull-1900", new("Exemplum album", "B"))
    )
    asked = Taxon(frozenset({"exemplum-vetus", "exemplum-album"}), "species", "Exemplum")
    assert correct_name(code, asked).id == "exemplum-album"


def test_what_a_work_sinks_into_its_own_new_species_is_included() -> None:
    """ICN Art. 52.2: citing the name is inclusion, in the treatment as well as in the act."""
    own = work(
        "tull-1900", new("Exemplum vulgare", "B"), treatments=("taxon: Exemplum vulgare, synonyms: [Exemplum album]",)
    )
    code = code_of(work("vane-1850", new("Exemplum album", "A")), own)
    assert code.acts["tull-1900.1"].legitimacy is Legitimacy.ILLEGITIMATE


def test_a_later_homonym_breaks_no_older_record() -> None:
    """A name of 1990 can't be meant in 1860, nor a designation beside a name."""
    texts = (
        work("vane-1850", new("Exemplum album", "A")),
        work("roe-1860", "name: Novum album, act: new combination, basionym: Exemplum album"),
        work("selk-1870", treatments=("taxon: Exemplum album",)),
        work("zed-1990", new("Exemplum album", "B")),
    )
    corpus, problems = corpus_of(*texts)
    assert problems == []
    assert corpus.by_work["selk-1870"][0].name == "exemplum-album-vane-1850"


def test_a_thesis_is_no_isonym() -> None:
    """ICN Art. 6.3 Note 2, 30.9: what is not effectively published repeats no name."""
    thesis = work("ken-1870", new("Exemplum album", "A"), more=', "effectively-published": false')
    code = code_of(thesis, work("ken-1880", new("Exemplum album", "A")))
    (name,) = (id_ for id_ in code.corpus.names if id_.startswith("exemplum-album"))
    assert "isonym" not in as_text(synonymy(code.corpus, name))


def test_the_latest_work_on_the_type_decides_what_heads_the_synonymy() -> None:
    code = code_of(
        work("vane-1850", new("Exemplum album", "A"), treatments=("taxon: Exemplum album",)),
        work("roe-1900", "name: Novum album, act: new combination, basionym: Exemplum album",
             treatments=("taxon: Novum album",)),
    )  # fmt: skip
    placed = accepted_name(code.corpus, "exemplum-album")
    assert placed is not None and placed.accepted == "novum-album"


def test_the_dispute_about_the_genus_shows() -> None:
    code = code_of(
        work("vane-1850", new("Exemplum album", "A"), treatments=("taxon: Exemplum album",)),
        work("roe-1900", "name: Novum album, act: new combination, basionym: Exemplum album",
             treatments=("taxon: Novum album",)),
    )  # fmt: skip
    found = history(code, "exemplum-album")
    assert {view.label for view in found.views} == {"species in Exemplum", "species in Novum"}


@pytest.mark.parametrize(
    ("year", "words", "remark"),
    [
        pytest.param("1995", "lectotype A", "", id="before-2001"),
        pytest.param("2005", "lectotype A, designated here", "", id="designated-here"),
        pytest.param("2005", "lectotype A", "no designation (Art. 7.11)", id="without-the-words"),
    ],
)
def test_a_type_must_be_designated_here_from_2001_on(year: str, words: str, remark: str) -> None:
    """ICN Art. 7.11 (from memory)."""
    chosen = f"{{kind: lectotype, specimen: A, herbarium: X, verbatim: '{words}'}}"
    act = f"name: Exemplum album, act: type designation, of: Exemplum album, type: {chosen}"
    code = code_of(work("vane-1850", new("Exemplum album")), work(f"ken-{year}", act))
    told = standing_of_act(code, code.corpus.acts[f"ken-{year}.1"])
    assert "; ".join(map(str, told)) == remark


@pytest.mark.parametrize(
    ("act", "told"),
    [
        pytest.param(
            "act: first choice, against: [Exemplum album]", "a first choice of a name against itself", id="itself"
        ),
        pytest.param("act: ruled confusable", "`ruled confusable` without `against:`", id="nobody"),
        pytest.param("act: type designation, of: Exemplum album", "a type designation without `type:`", id="no-type"),
    ],
)
def test_decisions_that_decide_nothing_are_problems(act: str, told: str) -> None:
    _, problems = corpus_of(
        work("vane-1850", new("Exemplum album", "A")), work("ken-1900", f"name: Exemplum album, {act}")
    )
    assert len(problems) == 1 and told in problems[0]


@pytest.mark.parametrize(
    ("epithet", "validity"),
    [
        pytest.param("albus", "validly published", id="the-epithet-in-its-gender"),
        pytest.param("albifolius", "not validly published", id="another-that-begins-alike"),
    ],
)
def test_an_uncited_epithet_must_be_the_same(epithet: str, validity: str) -> None:
    """ICN Art. 41.1, 41.4: before 1953 an older epithet may be taken up without reference, but only that epithet."""
    moved = (
        f"name: Novus {epithet}, act: new combination, basionym: Exemplum album, basionym-reference: none, {DESCRIBED}"
    )
    code = code_of(work("vane-1850", new("Exemplum album", "A")), work("roe-1900", moved))
    assert str(code.acts["roe-1900.1"].validity) == validity
