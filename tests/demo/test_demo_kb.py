"""The literature of the demo knowledge base holds what it promises: its size and every special case."""

from __future__ import annotations

from decimal import Decimal

import pytest

from auctorum.characters.units import convert
from auctorum.characters.values import Range, States
from auctorum.characters.vocabulary import Kind
from auctorum.corpus.model import Corpus, Treatment
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.standing import standing_of_act
from auctorum.records.schema import ActKind, Basis

CONTESTED = "cremnocentron-album-var-longum"
SISTER = "cremnocentron-album-var-robustum"


def kept(corpus: Corpus, name: str) -> list[Treatment]:
    """Treatments, by date, that accept a name on the same type as `name`."""
    return [
        one
        for one in corpus.treatments.values()
        if corpus.names[one.name].group == name and one.status.value == "accepted"
    ]


def ranges(corpus: Corpus, treatment: Treatment, character: str, stage: str = "mature") -> list[Range]:
    """What a treatment says of a measured character."""
    return [
        reading.value
        for statement in corpus.statements_of(treatment.id)
        if statement.character == character
        for reading in statement.readings
        if reading.stage in ("", stage) and isinstance(reading.value, Range)
    ]


def said(corpus: Corpus, treatment: Treatment, character: str) -> list[str]:
    return [one.verbatim.lower() for one in corpus.statements_of(treatment.id) if one.character == character]


def test_one_warning_and_nothing_else(linked: tuple[Corpus, list[str]]) -> None:
    _, problems = linked
    assert len(problems) == 1, problems
    assert "literature/hollinsay-1962.yaml" in problems[0]
    assert "warning: no act publishes the name `Cremnocentron album var. giganteum`" in problems[0]


def test_every_statement_is_read(corpus: Corpus) -> None:
    assert [one.id for one in corpus.statements.values() if not one.readings] == []


def test_size(corpus: Corpus) -> None:
    years = [work.year for work in corpus.works.values()]
    assert len(years) >= 16
    assert (min(years) // 10, max(years) // 10) == (187, 202)
    assert len(corpus.names) >= 26
    assert len(corpus.treatments) >= 36
    assert len(corpus.taxa) >= 10
    assert len(corpus.vocabulary) in range(14, 17)
    assert {character.kind for character in corpus.vocabulary.values()} == set(Kind)
    roles = [site.role for site in corpus.sites.values()]
    assert roles.count("known") >= 13
    assert roles.count("candidate") == 4
    assert len(corpus.specimens) >= 190
    assert len(corpus.labels) >= 32


def test_every_character_says_how_and_what(corpus: Corpus) -> None:
    for character in corpus.vocabulary.values():
        assert character.how, character.name
        assert character.meaning, character.name
        assert character.words, character.name


def test_colours_along_the_spectrum_have_references(corpus: Corpus) -> None:
    states = corpus.vocabulary["spur colour"].states
    assert len(states) == 6
    assert all(state.colour for state in states)


@pytest.mark.parametrize(
    ("act", "name", "label", "article"),
    [
        pytest.param(
            "falkenreut-1908.2", "Cremnocentron pendulum", "later homonym, illegitimate", "53.1", id="later-homonym"
        ),
        pytest.param("isherow-1938.1", "Cremnocentron album subsp. longum", "isonym", "6.3", id="isonym"),
        pytest.param(
            "falkenreut-1908.1", "Cremnocentron candidum", "superfluous, illegitimate", "52.1", id="superfluous"
        ),
        pytest.param(
            "tolhurne-1896.1", "Cremnocentron album [unranked] pallens", "without rank", "37.3", id="no-rank"
        ),
        pytest.param(
            "quessel-1951.1", "Cremnocentron longecalcaratum", "orthographical variant", "61.1", id="other-spelling"
        ),
        pytest.param(
            "wethercote-1958.2", "Cremnocentron album f. robustum", "not valid: reference to the basionym incomplete",
            "41.5", id="partial",
        ),
        pytest.param("hollinsay-1962.1", "Cremnocentron album var. roseum", "not valid: nomen nudum", "38.1",
            id="no-description",),
        pytest.param(
            "nunnaly-1987.1", "Cremnocentron ivernayense", "not valid: not effectively published", "29.1",
            id="thesis",
        ),
    ],
)  # fmt: skip
def test_case_of_the_code_is_found_and_documented(code: Code, act: str, name: str, label: str, article: str) -> None:
    found = code.corpus.acts[act]
    assert found.record.name == name
    assert [one.label for one in standing_of_act(code, found)] == [label]
    assert f"Art. {article}" in found.record.note


def test_no_other_act_has_a_fault(code: Code) -> None:
    assert sum(bool(standing_of_act(code, act)) for act in code.corpus.acts.values()) == 8


def test_replacement_name_takes_the_type_of_the_homonym(corpus: Corpus) -> None:
    acts = [act for act in corpus.acts.values() if act.record.act is ActKind.REPLACEMENT_NAME]
    assert [(act.record.name, act.record.replaces) for act in acts] == [
        ("Cremnocentron dependens", "Cremnocentron pendulum Falkenreut")
    ]
    assert corpus.names["cremnocentron-dependens"].group == "cremnocentron-pendulum-falkenreut-1908"


def test_misapplied_name_is_told_from_its_homonym(corpus: Corpus) -> None:
    misapplied = {(one.work.id, one.name): one.misapplied for one in corpus.treatments.values() if one.misapplied}
    assert misapplied == {("quessel-1951", "cremnocentron-dependens"): ("cremnocentron-pendulum-vane-1874",)}


def test_one_basionym_in_two_species_at_one_rank(corpus: Corpus) -> None:
    on_it = [
        act.record.name
        for act in corpus.acts.values()
        if act.basionym == "cremnocentron-hirtum" and act.rank == "variety"
    ]
    assert on_it == ["Cremnocentron album var. hirtum", "Cremnocentron luteolum var. hirtum"]


def test_autonyms_are_treated_by_several_works(corpus: Corpus) -> None:
    assert corpus.names["cremnocentron-album-var-album"].is_autonym
    assert len(corpus.by_name["cremnocentron-album-var-album"]) >= 5


def test_contested_taxon_has_stood_at_every_rank(corpus: Corpus) -> None:
    assert corpus.focal == (CONTESTED, SISTER)
    first = corpus.acts_of(CONTESTED)[0]
    assert (first.rank, first.work.id, first.record.act) == ("variety", "orrin-1889", ActKind.NEW_TAXON)
    ranks = [(one.work.year, one.rank) for one in kept(corpus, CONTESTED)]
    assert {rank for _, rank in ranks} == {"variety", "subspecies", "species", "form"}
    sunk = [
        one.work.id
        for one in corpus.treatments.values()
        if CONTESTED in one.synonyms and one.name == "cremnocentron-album"
    ]
    assert sunk == ["dunsary-1979"]
    assert (2016, "species") in ranks, "raised again after it was sunk"


def test_works_that_cover_the_genus_in_silence(corpus: Corpus) -> None:
    names = set(corpus.groups[CONTESTED])
    first = corpus.acts_of(CONTESTED)[0].work.date
    silent = [
        work.id
        for work in corpus.works.values()
        if "cremnocentron" in work.covers
        and work.date > first
        and not any(names & {one.name, *one.synonyms} for one in corpus.by_work[work.id])
    ]
    assert silent == ["falkenreut-1908", "fenwold-2003", "jolmark-2013"]


def test_lower_bound_of_the_spur_never_moves_while_the_upper_rises(corpus: Corpus) -> None:
    low, high, authors = [], [], set()
    for treatment in kept(corpus, CONTESTED):
        (stated,) = ranges(corpus, treatment, "spur length")
        assert stated.low is not None and stated.high is not None
        low.append(float(convert(stated.low, stated.unit, "mm")))
        authors.add(treatment.work.authors)
        if not treatment.follows and treatment.work.id != "isherow-1938":  # copies, declared and not
            high.append((treatment.work.year, float(convert(stated.high, stated.unit, "mm"))))
    assert len(authors) >= 9
    assert low == pytest.approx([22] * len(low), abs=0.25)
    by_year = [value for _, value in sorted(high)]
    assert by_year == sorted(by_year)
    assert by_year[-1] - by_year[0] > 20


def test_one_character_is_in_real_conflict(corpus: Corpus) -> None:
    told = {one.work.id: ranges(corpus, one, "flower number") for one in kept(corpus, CONTESTED)}
    poor, rich = told["brandow-1934"][0], told["castivell-1994"][0]
    assert (poor.high, rich.low) == (Decimal(2), Decimal(4))
    assert poor.most is None and rich.least is None


def test_figures_copied_openly_and_in_silence(corpus: Corpus) -> None:
    by_work = {one.work.id: one for one in kept(corpus, CONTESTED)}
    field_guide, monograph = by_work["yarrend-2007"], by_work["quessel-1951"]
    assert field_guide.follows == ("quessel-1951",)
    assert ranges(corpus, field_guide, "spur length") == ranges(corpus, monograph, "spur length")
    note, revision = by_work["isherow-1938"], by_work["maddrick-1923"]
    assert note.follows == ()
    assert "Cites Maddrick 1923" in note.record.note
    shared = [character for character in corpus.vocabulary if said(corpus, note, character)]
    same = [
        character
        for character in shared
        if ranges(corpus, note, character) == ranges(corpus, revision, character)
        and bool(said(corpus, revision, character))
    ]
    assert len(same) >= len(shared) * 2 / 3


def test_both_varieties_share_the_spectrum_of_colour(corpus: Corpus) -> None:
    def mature(name: str) -> set[str]:
        return {
            share.state
            for treatment in kept(corpus, name)
            for statement in corpus.statements_of(treatment.id)
            if statement.character == "spur colour"
            for reading in statement.readings
            if reading.stage == "mature" and isinstance(reading.value, States)
            for share in reading.value.shares
        }

    assert {"cream", "ivory"} <= mature(CONTESTED) & mature(SISTER)


@pytest.mark.parametrize(
    ("character", "unit", "least", "most"),
    [
        ("spur length", "mm", 4, 70),
        ("petal length", "mm", 7, 23),
        ("plant height", "mm", 40, 800),
        ("elevation", "m", 0, 480),
    ],
)
def test_no_figure_is_out_of_nature(corpus: Corpus, character: str, unit: str, least: int, most: int) -> None:
    """A slip of the pen, inches for lines or cm for mm, would stand out."""
    for treatment in corpus.treatments.values():
        for stage in ("mature", "young"):
            for stated in ranges(corpus, treatment, character, stage):
                bounds = [stated.least, stated.low, stated.high, stated.most]
                values = [float(convert(one, stated.unit, unit)) for one in bounds if one is not None]
                assert all(least <= one <= most for one in values), (treatment.id, character, values)


def test_many_treatments_leave_a_character_out(corpus: Corpus) -> None:
    told = {one.work.id: len({s.character for s in corpus.statements_of(one.id)}) for one in kept(corpus, CONTESTED)}
    assert min(told.values()) < 8 < max(told.values())
    assert max(told.values()) == len(corpus.vocabulary)


def test_every_new_name_is_typed_and_described(corpus: Corpus) -> None:
    for act in corpus.acts.values():
        record = act.record
        if record.act is ActKind.NEW_TAXON and act.id not in ("falkenreut-1908.1", "hollinsay-1962.1"):
            assert record.type is not None and record.description is not None, act.id
            if 1935 <= act.work.year <= 2011:
                assert record.description.language == "latin", act.id


def test_two_works_came_out_later_than_they_say(corpus: Corpus) -> None:
    late = {work.id: work.record.issued for work in corpus.works.values() if work.record.effective}
    assert late == {"tolhurne-1896": "1895", "brandow-1934": "1933-12"}


def test_latest_works_measured_for_themselves(corpus: Corpus) -> None:
    assert kept(corpus, CONTESTED)[-1].record.basis is Basis.OWN_MATERIAL
