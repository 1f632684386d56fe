"""The correct name under a view, and a view changed in thought, with its reasons (ICN Art. 11, 14, 23, 26, 53, 56).

The records are invented: no real plant, person or publication. Articles are those of the Shenzhen Code (2018).
"""

from __future__ import annotations

import json

import pytest

from auctorum.corpus.model import Treatment
from auctorum.names.format import format_name
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.correct import CorrectName, Outcome, Taxon, correct_name
from auctorum.nomenclature.views import (
    Change,
    NoPlace,
    NothingIncluded,
    accepting,
    correct_in,
    correct_of,
    correct_then,
    is_used,
)
from building import code_of


def judged_use(code: Code, treatment: Treatment) -> bool | None:
    return is_used(code, treatment, correct_then(code, treatment))


def work(id_: str, *acts: str, treatments: tuple[str, ...] = (), issued: str = "") -> str:
    """A work whose author and year are those of its id."""
    family, year = id_.rsplit("-", 1)
    made = {"id": id_, "type": "book", "author": [{"family": family.title()}], "issued": issued or year, "title": "A"}
    lines = [f"work: {json.dumps(made)}"]
    lines += ["acts:", *(f"- {{{act}}}" for act in acts)] if acts else []
    lines += ["treatments:", *(f"- {{{one}}}" for one in treatments)] if treatments else []
    return "\n".join(lines)


def new(name: str, specimen: str, more: str = "") -> str:
    type_ = f"type: {{kind: holotype, specimen: {specimen}, herbarium: TESN}}"
    return f"name: {name}, act: new taxon, {type_}, description: {{kind: description, language: latin}}{more}"


def genus(name: str, more: str = "") -> str:
    return f"name: {name}, act: new taxon, rank: genus, description: {{kind: description}}{more}"


def moved(name: str, older: str, act: str = "new combination") -> str:
    return f"name: {name}, act: {act}, basionym: {older}"


def view(code: Code, id_: str, name: str) -> Treatment:
    found = accepting(code, name, id_)
    assert found is not None
    return found


def shown(found: CorrectName) -> str:
    """Outcome and name in a line."""
    told = format_name(found.name) if found.name is not None else ", ".join(found.rivals)
    return f"{found.outcome}: {told}"


def steps(found: CorrectName) -> list[str]:
    return [str(step) for step in found.steps]


def barred(found: CorrectName) -> list[tuple[str, str, str]]:
    return [(one.epithet, one.key, one.article) for one in found.barred]


VANE = work("vane-1850", genus("Exemplum"), genus("Altera"), genus("Novum"), new("Exemplum album", "A"))
ORRIN = work("orrin-1870", new("Exemplum album var. longum", "B"))
TULL = work("tull-1890", moved("Exemplum longum", "Exemplum album var. longum", "change of rank"))
PERALVO = work("peralvo-1880", new("Exemplum pendulum", "C"))


# A rank in thought


def test_as_a_species_its_line_dates_from_the_change_of_rank() -> None:
    """ICN Art. 11.2, 11.4: longum has priority as a species from 1890 only, after pendulum of 1880."""
    code = code_of(VANE, ORRIN, TULL, PERALVO)
    alone = correct_of(code, "exemplum-longum")
    assert shown(alone) == "name: Exemplum longum (Orrin) Tull"
    both = correct_of(code, "exemplum-longum", Change(include=("exemplum-pendulum",)))
    assert shown(both) == "name: Exemplum pendulum Peralvo"


@pytest.mark.parametrize(
    ("rank", "answer"),
    [
        pytest.param("species", "name: Exemplum longum (Orrin) Tull", id="species"),
        pytest.param("variety", "name: Exemplum album var. longum Orrin", id="variety"),
        pytest.param("subspecies", "new combination needed: Exemplum album subsp. longum", id="subspecies"),
        pytest.param("form", "new combination needed: Exemplum album f. longum", id="form"),
    ],
)
def test_at_another_rank(rank: str, answer: str) -> None:
    code = code_of(VANE, ORRIN, TULL)
    found = correct_of(code, "exemplum-longum", Change(rank=rank, under="exemplum-album"))
    assert shown(found) == answer
    if found.outcome is Outcome.COMBINATION_NEEDED:
        assert found.based_on == "exemplum-album-var-longum"


def test_a_rank_below_the_species_needs_a_species() -> None:
    with pytest.raises(NoPlace, match="at the rank of variety has to stand in a species") as raised:
        correct_of(code_of(VANE), "exemplum-album", Change(rank="variety"))
    assert raised.value.remedy == "name the species with --under"


def test_a_name_without_rank_is_never_the_correct_one() -> None:
    """ICN Art. 37.3, 11.2."""
    code = code_of(VANE, work("orrin-1870", new("'Exemplum album [unranked] longum'", "B", ", rank: unranked")))
    assert correct_of(code, "exemplum-album-unranked-longum").outcome is not Outcome.NAME


def test_a_family_told_by_its_ending_is_a_family() -> None:
    """ICN Art. 37.2: from 1887 on a standard ending shows the rank."""
    code = code_of(
        work("vane-1890", "name: Exemplaceae, act: new taxon, rank: unranked, description: {kind: description}")
    )
    assert shown(correct_name(code, Taxon(frozenset({"exemplaceae"}), "family"))) == "name: Exemplaceae Vane"


# A place in thought


@pytest.mark.parametrize(
    ("epithet", "more", "wanted"),
    [
        pytest.param("album", "", "Altera alba", id="us-a-um"),
        pytest.param("viride", "", "Altera viridis", id="is-is-e"),
        pytest.param("nigrum", "", "Altera nigra", id="niger"),
        pytest.param("bicolor", "", "Altera bicolor", id="one-form"),
        pytest.param("vanei", "", "Altera vanei", id="genitive"),
        pytest.param("corona", "", "Altera corona", id="noun-by-its-look"),
        pytest.param("bulbum", ", epithet: {kind: noun}", "Altera bulbum", id="recorded-noun"),
        pytest.param(
            "rubrum", ", epithet: {kind: adjective, declension: ruber/rubra/rubrum}", "Altera rubra", id="declined"
        ),
    ],
)
def test_a_combination_that_would_be_needed_agrees_in_gender(epithet: str, more: str, wanted: str) -> None:
    """ICN Art. 23.5: adjectives follow the gender of the genus, nouns do not. No authors are invented."""
    code = code_of(VANE, work("orrin-1870", new(f"Exemplum {epithet}", "B", more)))
    if epithet == "album":
        code = code_of(VANE)
    found = correct_of(code, f"exemplum-{epithet}", Change(under="altera"))
    assert shown(found) == f"new combination needed: {wanted}"
    assert found.based_on == f"exemplum-{epithet}" and found.id is None
    assert steps(found)[-1].endswith("(Art. 11.4, 41.5).")


def test_the_recorded_gender_of_a_genus_counts() -> None:
    """ICN Art. 62.1, 23.5: Karax was treated as masculine by its author, and tradition keeps it."""
    code = code_of(VANE, work("orrin-1870", genus("Karax", ", gender: masculine")))
    found = correct_of(code, "exemplum-album", Change(under="karax"))
    assert shown(found) == "new combination needed: Karax albus"


def test_no_tautonym_is_advised() -> None:
    """ICN Art. 23.4: Alba alba can't be validly published."""
    code = code_of(VANE, work("orrin-1870", genus("Alba")))
    found = correct_of(code, "exemplum-album", Change(under="alba"))
    assert found.outcome is Outcome.NAME_NEEDED and barred(found) == [("alba", "tautonym", "23.4")]


def test_the_basionym_of_a_combination_needed_is_the_first_name() -> None:
    """ICN Art. 6.10, 49.1: not a combination between."""
    code = code_of(VANE, ORRIN, TULL)
    found = correct_of(code, "exemplum-longum", Change(under="altera"))
    assert shown(found) == "new combination needed: Altera longa"
    assert found.based_on == "exemplum-album-var-longum"


def test_a_published_combination_is_the_answer_in_its_genus() -> None:
    code = code_of(VANE, work("orrin-1870", moved("Altera alba", "Exemplum album")))
    assert shown(correct_of(code, "exemplum-album", Change(under="altera"))) == "name: Altera alba (Vane) Orrin"
    assert shown(correct_of(code, "altera-alba", Change(under="exemplum"))) == "name: Exemplum album Vane"


# What stands in the way


def test_a_homonym_bars_the_epithet_and_the_next_is_taken() -> None:
    """ICN Art. 53.1, 11.4: Novum album is another plant, so that longum, though later, is used there."""
    code = code_of(
        VANE,
        work("orrin-1860", new("Novum album", "N")),
        work("tull-1870", new("Exemplum longum", "B")),
    )
    asked = Taxon(frozenset({"exemplum-album", "exemplum-longum"}), "species", "Novum")
    found = correct_name(code, asked)
    assert shown(found) == "new combination needed: Novum longum"
    assert barred(found) == [("album", "homonym", "53.1")]
    assert found.barred[0].by == "novum-album" and "Novum album Orrin (1860)" in found.barred[0].reason


def test_a_later_homonym_of_the_combination_is_not_in_the_way() -> None:
    """ICN Art. 53.1: only an earlier one is."""
    code = code_of(
        VANE,
        work("orrin-1860", moved("Novum album", "Exemplum album")),
        work("tull-1870", new("Novum album", "N")),
    )
    assert shown(correct_of(code, "exemplum-album", Change(under="novum"))) == "name: Novum album (Vane) Orrin"


def test_a_tautonym_is_passed_over() -> None:
    """ICN Art. 23.4."""
    code = code_of(VANE, work("orrin-1860", new("Exemplum novum", "B")), PERALVO)
    found = correct_of(code, "exemplum-novum", Change(under="novum", include=("exemplum-pendulum",)))
    assert shown(found) == "new combination needed: Novum pendulum"
    assert barred(found) == [("novum", "tautonym", "23.4")]


def test_the_epithet_of_the_species_is_passed_over_below_it() -> None:
    """ICN Art. 27.1: not Exemplum longum var. longum, on another type than that of the species."""
    code = code_of(VANE, ORRIN, work("tull-1890", new("Exemplum longum", "L")))
    found = correct_of(code, "exemplum-album-var-longum", Change(under="exemplum-longum"))
    assert barred(found) == [("longum", "repeats-species-epithet", "27.1")]
    assert found.outcome is Outcome.NAME_NEEDED


def test_a_new_name_is_needed_where_only_an_illegitimate_one_is_left() -> None:
    """ICN Art. 53.1, 58.1."""
    code = code_of(VANE, work("orrin-1870", new("Exemplum album", "B")))
    found = correct_of(code, "exemplum-album-orrin-1870")
    assert (found.outcome, found.name, found.id) == (Outcome.NAME_NEEDED, None, None)
    assert "Exemplum album Orrin is illegitimate: Exemplum album Vane (1850) has the same words" in steps(found)[1]
    replaced = work("tull-1890", "name: Exemplum novissimum, act: replacement name, replaces: Exemplum album Orrin")
    renamed = code_of(VANE, work("orrin-1870", new("Exemplum album", "B")), replaced)
    assert shown(correct_of(renamed, "exemplum-album-orrin-1870")) == "name: Exemplum novissimum Tull"


def test_where_no_name_is_left_at_the_rank_another_rank_may_lend_its_epithet() -> None:
    """ICN Art. 11.2, 58.1: without obligation."""
    found = correct_of(code_of(VANE, ORRIN), "exemplum-album-var-longum", Change(rank="species", under="exemplum"))
    assert shown(found) == "new combination needed: Exemplum longum"
    assert "no epithet of another rank has a claim" in str(found)


def test_a_designation_never_competes() -> None:
    """ICN Art. 12.1 (memory), 38.1."""
    nude = work("orrin-1855", "name: Exemplum vetus, act: new taxon, description: {kind: none}")
    code = code_of(nude, VANE)
    found = correct_of(code, "exemplum-album", Change(include=("exemplum-vetus",)))
    assert shown(found) == "name: Exemplum album Vane"
    assert "Exemplum vetus Orrin is no name: nomen nudum (Art. 38.1)." in steps(found)


# Decisions


def test_two_names_of_one_work_are_undetermined_without_a_choice() -> None:
    """ICN Art. 11.5."""
    code = code_of(work("vane-1850", new("Exemplum album", "A"), new("Exemplum longum", "B")))
    found = correct_of(code, "exemplum-album", Change(include=("exemplum-longum",)))
    assert shown(found) == "undetermined: exemplum-album, exemplum-longum"
    assert steps(found)[-1] == (
        "Priority between Exemplum album Vane and Exemplum longum Vane is undetermined: they are of one date, and no "
        "choice between them is recorded (Art. 11.5)."
    )


CONSERVED = "name: Exemplum pendulum, act: conservation, against: [Exemplum album]"


def test_a_conserved_species_goes_before_what_it_is_conserved_against() -> None:
    """ICN Art. 14.4: the listed names, and combinations based on them; not other names."""
    made = (VANE, PERALVO, work("orrin-1860", moved("Novum album", "Exemplum album")), work("board-1990", CONSERVED))
    code = code_of(*made)
    both = frozenset({"exemplum-album", "exemplum-pendulum"})
    assert shown(correct_name(code, Taxon(both, "species", "Exemplum"))) == "name: Exemplum pendulum Peralvo"
    elsewhere = correct_name(code, Taxon(both, "species", "Novum"))
    assert shown(elsewhere) == "new combination needed: Novum pendulum"
    third = code_of(*made, work("tull-1870", new("Exemplum longum", "L")))
    asked = Taxon(both | {"exemplum-longum"}, "species", "Exemplum")
    assert shown(correct_name(third, asked)) == "name: Exemplum longum Tull"


def test_what_a_name_is_conserved_against_may_be_used_apart_from_it() -> None:
    """ICN Art. 14.6 (memory): listed heterotypic names are rejected only against the conserved one."""
    code = code_of(VANE, PERALVO, work("board-1990", CONSERVED))
    assert shown(correct_of(code, "exemplum-album")) == "name: Exemplum album Vane"


HOMONYM = work("orrin-1900", new("Exemplum album", "B"))
OVER_HOMONYM = work("board-1990", "name: Exemplum album Orrin, act: conservation, against: [Exemplum album Vane]")


def test_a_conserved_later_homonym_may_be_used() -> None:
    """ICN Art. 14.1, 14.10 (memory): a conserved name is conserved against its earlier homonyms."""
    code = code_of(VANE, HOMONYM, OVER_HOMONYM)
    assert shown(correct_of(code, "exemplum-album-orrin-1900")) == "name: Exemplum album Orrin"


def test_the_earlier_homonym_of_a_conserved_name_may_not_be_used() -> None:
    """ICN Art. 14.10 (memory): rejected in favour of the conserved homonym, whatever the taxon."""
    code = code_of(VANE, HOMONYM, OVER_HOMONYM)
    assert correct_of(code, "exemplum-album-vane-1850").outcome is Outcome.NAME_NEEDED


def test_a_rejected_name_is_passed_over() -> None:
    """ICN Art. 56.1."""
    code = code_of(VANE, PERALVO, work("board-1990", "name: Exemplum album, act: rejection"))
    found = correct_of(code, "exemplum-album", Change(include=("exemplum-pendulum",)))
    assert shown(found) == "name: Exemplum pendulum Peralvo"
    assert "Exemplum album Vane is rejected (Art. 56.1)." in steps(found)


def test_what_rests_on_a_rejected_name_is_rejected_with_it() -> None:
    """ICN Art. 56.1: a suppressed name and all names for which it is the basionym are not to be used."""
    code = code_of(
        VANE,
        work("orrin-1860", moved("Novum album", "Exemplum album")),
        work("peralvo-1880", new("Novum pendulum", "C")),
        work("board-1990", "name: Exemplum album, act: rejection"),
    )
    asked = Taxon(frozenset({"exemplum-album", "novum-pendulum"}), "species", "Novum")
    assert shown(correct_name(code, asked)) == "name: Novum pendulum Peralvo"


# Autonyms


def test_the_part_with_the_type_of_the_species_is_the_autonym() -> None:
    """ICN Art. 26.1, 11.6: cited with the authors of the species after its epithet, whatever the dates."""
    code = code_of(VANE, ORRIN, work("early-1840", new("Exemplum nanum var. altum", "Z")))
    change = Change(rank="variety", under="exemplum-album", include=("exemplum-nanum-var-altum",))
    found = correct_of(code, "exemplum-album", change)
    assert shown(found) == "autonym: Exemplum album Vane var. album"
    assert steps(found)[1] == (
        "The taxon holds the type of the species: its name is the autonym, without authors of its own "
        "(Art. 26.1, 11.6)."
    )


def test_an_autonym_goes_before_the_names_that_made_it() -> None:
    """ICN Art. 11.6, 26.3: where Exemplum album is sunk, var. album of 1870 competes before var. longum of 1870."""
    code = code_of(VANE, ORRIN, work("tull-1840", new("Exemplum nanum", "N")))
    change = Change(under="exemplum-nanum", include=("exemplum-album",))
    found = correct_of(code, "exemplum-album-var-longum", change)
    assert shown(found) == "new combination needed: Exemplum nanum var. album"
    assert "established by Exemplum album var. longum Orrin (1870) (Art. 11.6, 26.3)." in steps(found)[-3]


def test_a_section_with_the_type_of_the_genus_is_the_autonym() -> None:
    """ICN Art. 22.1."""
    code = code_of(VANE)
    found = correct_name(code, Taxon(frozenset({"exemplum"}), "section", "Exemplum", genus_type="exemplum"))
    assert shown(found) == "autonym: Exemplum Vane sect. Exemplum"


# A work's own view


LUMPER = work(
    "zell-1900",
    treatments=(
        "taxon: Exemplum longum, synonyms: [Exemplum candidum]",
        "taxon: Exemplum longum var. pendulum, under: Exemplum longum",
    ),
)
OF_ZELL = (
    VANE,
    work("early-1855", new("Exemplum pendulum", "C")),
    work("orrin-1860", new("Exemplum longum", "B")),
    work("tull-1870", new("Exemplum candidum", "D")),
    work("vost-1880", moved("Exemplum longum var. pendulum", "Exemplum pendulum", "change of rank")),
    LUMPER,
)


def test_a_taxon_stands_on_the_types_of_its_parts_too() -> None:
    """ICN Art. 11.4: with the type of Exemplum pendulum in it, that is the oldest epithet of the whole."""
    code = code_of(*OF_ZELL)
    whole = view(code, "zell-1900", "exemplum-longum")
    assert shown(correct_in(code, whole)) == "name: Exemplum pendulum Early"
    assert judged_use(code, whole) is False
    without = correct_in(code, whole, Change(exclude=("exemplum-pendulum",)))
    assert shown(without) == "name: Exemplum longum Orrin"
    wider = correct_in(code, whole, Change(include=("exemplum-album",)))
    assert shown(wider) == "name: Exemplum album Vane"


def test_the_part_is_named_under_the_correct_name_of_the_species() -> None:
    """ICN Art. 26.1: the part holds the type of Exemplum pendulum, which is correct for the whole."""
    code = code_of(*OF_ZELL)
    part = view(code, "zell-1900", "exemplum-longum-var-pendulum")
    assert shown(correct_in(code, part)) == "autonym: Exemplum pendulum Early var. pendulum"


def test_a_taxon_without_types_is_refused() -> None:
    code = code_of(*OF_ZELL)
    whole = view(code, "zell-1900", "exemplum-longum")
    everything = Change(exclude=("exemplum-longum", "exemplum-candidum", "exemplum-pendulum"))
    with pytest.raises(NothingIncluded, match="no type is left in the taxon"):
        correct_in(code, whole, everything)


def test_a_synonym_leads_to_the_taxon_that_takes_it_in() -> None:
    code = code_of(*OF_ZELL)
    assert accepting(code, "exemplum-candidum", "zell-1900") == view(code, "zell-1900", "exemplum-longum")
    assert accepting(code, "exemplum-album", "zell-1900") is None


# A work's own view, and its own time


def test_of_its_time_only_names_of_the_time_count() -> None:
    """The combination of 1950 was not there in 1900, nor was the name of a later rank."""
    code = code_of(
        VANE,
        work("zell-1900", treatments=("taxon: Novum album, rank: species, under: Novum, synonyms: [Exemplum album]",)),
        work("orrin-1950", moved("Novum album", "Exemplum album")),
    )
    one = code.corpus.by_work["zell-1900"][0]
    assert shown(correct_in(code, one)) == "name: Novum album (Vane) Orrin"
    then = correct_in(code, one, then=True)
    assert shown(then) == "new combination needed: Novum album"
    assert then.based_on == "exemplum-album"


@pytest.mark.parametrize(
    ("year", "use"), [pytest.param("1889", False, id="year-before"), pytest.param("1890", True, id="same-year")]
)
def test_a_name_of_the_year_of_the_work_counts(year: str, use: bool) -> None:
    code = code_of(VANE, ORRIN, TULL, work(f"zell-{year}", treatments=("taxon: Exemplum longum",)))
    one = code.corpus.by_work[f"zell-{year}"][0]
    assert (correct_in(code, one, then=True).outcome is Outcome.NAME) is use


def test_who_adopts_one_of_two_names_of_one_date_chooses_it() -> None:
    """ICN Art. 11.5 (from memory): adopting one and sinking the other is the choice, and binds who comes later."""
    pair = work("vane-1850", new("Exemplum album", "A"), new("Exemplum longum", "B"))
    first = work("zell-1900", treatments=("taxon: Exemplum album, synonyms: [Exemplum longum]",))
    second = work("tull-1950", treatments=("taxon: Exemplum longum, synonyms: [Exemplum album]",))
    code = code_of(pair, first, second)
    assert judged_use(code, code.corpus.by_work["zell-1900"][0]) is True
    assert judged_use(code, code.corpus.by_work["tull-1950"][0]) is False


def test_of_its_time_a_later_choice_does_not_count() -> None:
    """ICN Art. 11.5: in 1900 nobody had chosen; the choice of 1950 can't make the use of 1900 wrong."""
    code = code_of(
        work("vane-1850", new("Exemplum album", "A"), new("Exemplum longum", "B")),
        work("zell-1900", treatments=("taxon: Exemplum album, synonyms: [Exemplum longum]",)),
        work("orrin-1950", "name: Exemplum longum, act: first choice, against: [Exemplum album]"),
    )
    one = code.corpus.by_work["zell-1900"][0]
    assert correct_in(code, one, then=True).outcome is Outcome.UNDETERMINED


def test_of_its_time_the_species_above_is_named_as_of_then() -> None:
    """ICN Art. 11.4: in 1900 Novum album was free for the species; the homonym that bars it is of 1920."""
    code = code_of(
        VANE,
        work("orrin-1890", new("Novum longum", "B")),
        work("tull-1895", new("Novum longum var. pilosum", "C")),
        work(
            "zell-1900",
            treatments=(
                "taxon: Novum longum, synonyms: [Exemplum album]",
                "taxon: Novum longum var. pilosum, under: Novum longum",
            ),
        ),
        work("later-1920", new("Novum album", "D")),
    )
    species, part = code.corpus.by_work["zell-1900"]
    assert shown(correct_in(code, species, then=True)) == "new combination needed: Novum album"
    assert shown(correct_in(code, part, then=True)) == "new combination needed: Novum album var. pilosum"


# Whole chains


def test_a_chain_to_a_name() -> None:
    """Every reason in order: what is in, what is out and why, the lines in turn, the answer."""
    code = code_of(
        work("early-1855", "name: Exemplum vetus, act: new taxon, description: {kind: none}"),
        VANE,
        ORRIN,
        TULL,
        work("vost-1860", new("Novum album", "N")),
        work("peralvo-1895", moved("Novum longum", "Exemplum album var. longum", "change of rank")),
    )
    names = frozenset({"exemplum-vetus", "exemplum-album", "exemplum-longum"})
    assert steps(correct_name(code, Taxon(names, "species", "Novum"))) == [
        "Taken in are the types of Exemplum album Vane, Exemplum album var. longum Orrin and Exemplum vetus Early "
        "(Art. 11.1).",
        "Exemplum vetus Early is no name: nomen nudum (Art. 38.1).",
        "Of other ranks, and so without priority here: Exemplum album var. longum Orrin (Art. 11.2).",
        "The earliest epithet at the rank of species is album, from Exemplum album Vane (1850) (Art. 11.4).",
        "The epithet album can't be used there: Novum album Vost (1860) has that epithet there on another type "
        "(Art. 53.1).",
        "The next epithet at the rank of species is longum, from Exemplum longum (Orrin) Tull (1890) (Art. 11.4).",
        "The correct name is Novum longum (Orrin) Peralvo.",
    ]


def test_a_chain_to_a_combination_under_an_older_edition() -> None:
    """The same rules, as the Vienna Code numbers them: 41.5 is 33.4 there, 53.3 is 53.4."""
    code = code_of(
        VANE,
        ORRIN,
        work("tull-1880", new("Exemplum nanum", "N"), new("Exemplum nanum f. longum", "F")),
        work("vost-1885", new("Exemplum album var. pilosum", "P")),
        settings="title: Test\ncode-edition: Vienna 2006\n",
    )
    change = Change(under="exemplum-nanum", include=("exemplum-album-var-pilosum",))
    assert steps(correct_of(code, "exemplum-album-var-longum", change)) == [
        "Taken in are the types of Exemplum album var. longum Orrin and Exemplum album var. pilosum Vost (Art. 11.1).",
        "The earliest epithet at the rank of variety is longum, from Exemplum album var. longum Orrin (1870) "
        "(Art. 11.4).",
        "The epithet longum can't be used there: Exemplum nanum f. longum Tull (1880) has that epithet there on "
        "another type (Art. 53.4).",
        "The next epithet at the rank of variety is pilosum, from Exemplum album var. pilosum Vost (1885) (Art. 11.4).",
        "No name is available at this rank: a new combination Exemplum nanum var. pilosum would be needed, based on "
        "Exemplum album var. pilosum Vost (Art. 11.4, 33.4).",
    ]
