"""Records that make no sense, and very many of them: no exception, sane words, and cost that grows with the records.

The names are invented. Cost is counted in calls of functions, which no other program on the machine can disturb.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest

from auctorum.corpus.model import Corpus
from auctorum.names.format import format_name
from auctorum.nomenclature.code import Code, applied
from auctorum.nomenclature.correct import CorrectName, Outcome, Taxon, correct_name
from auctorum.nomenclature.homonyms import homonym_note, homonymy
from auctorum.nomenclature.judgement import Legitimacy, Validity
from auctorum.nomenclature.standing import in_words, questions, standing, standing_of_act
from auctorum.nomenclature.variants import variant_of
from auctorum.nomenclature.views import correct_of
from auctorum.problems import AuctorumError
from building import code_of, corpus_of
from counting import calls
from nomenclature.code_worlds import corpus_from


def work(id_: str, *acts: str, issued: str = "") -> str:
    """A work whose author and year are those of its id."""
    family, year = id_.rsplit("-", 1)
    head = (
        f"work: {{id: {id_}, type: book, author: [{{family: {family.title()}}}], issued: '{issued or year}', title: A}}"
    )
    return "\n".join((head, "acts:", *(f"- {{{act}}}" for act in acts)))


def new(name: str, specimen: str, more: str = "") -> str:
    type_ = f"type: {{kind: holotype, specimen: {specimen}, herbarium: TESN}}"
    return f"name: {name}, act: new taxon, {type_}, description: {{kind: description, language: latin}}{more}"


def everything(code: Code) -> list[str]:
    """All that can be said of every name and act of a corpus; nothing may fail but with a known error."""
    said: list[str] = []
    for name, entry in code.corpus.names.items():
        said += [in_words(code, name), homonym_note(code, name), str(homonymy(code, name)), str(variant_of(code, name))]
        said += map(str, standing(code, name))
        said += [one.reason for one in questions(code, name)]
        try:
            said += map(str, correct_of(code, name).steps)
        except AuctorumError as error:
            said += [f"{error}; {error.remedy}"]
        if entry.rank != "unranked":
            said += map(str, correct_name(code, Taxon(frozenset({name}), "species", "Novum")).steps)
    for act in code.corpus.acts.values():
        said += map(str, standing_of_act(code, act))
    return said


ABSURD = {
    "circle-of-two": (
        work("vane-1850", "name: Exemplum album, act: new combination, basionym: Novum album"),
        work("orrin-1860", "name: Novum album, act: new combination, basionym: Exemplum album"),
    ),
    "circle-of-three-in-one-work": (
        work(
            "vane-1850",
            "name: Exemplum album, act: new combination, basionym: Altera alba",
            "name: Novum album, act: new combination, basionym: Exemplum album",
            "name: Altera alba, act: new combination, basionym: Novum album",
        ),
    ),
    "circle-of-replacements": (
        work("vane-1850", "name: Exemplum album, act: replacement name, replaces: Exemplum longum"),
        work("orrin-1860", "name: Exemplum longum, act: replacement name, replaces: Exemplum album"),
    ),
    "own-basionym": (work("vane-1850", "name: Exemplum album, act: new combination, basionym: Exemplum album"),),
    "genus-its-own-basionym": (
        work("vane-1850", "name: Exemplum, act: new combination, rank: genus, basionym: Exemplum"),
    ),
    "replaces-itself": (work("vane-1850", "name: Exemplum album, act: replacement name, replaces: Exemplum album"),),
    "variety-under-itself": (
        work("vane-1850", new("Exemplum album var. longum", "A", ", under: Exemplum album var. longum")),
    ),
    "autonym-under-itself": (
        work("vane-1850", new("Exemplum album var. album", "A", ", under: Exemplum album var. album")),
    ),
    "species-under-a-variety": (
        work(
            "vane-1850",
            new("Exemplum album", "A", ", under: Exemplum album var. longum"),
            new("Exemplum album var. longum", "B", ", under: Exemplum album"),
        ),
    ),
    "genus-under-its-species": (
        work("vane-1850", new("Exemplum album", "A"), "name: Exemplum, act: new taxon, under: Exemplum album"),
    ),
    "conservation-of-an-unknown-name": (
        work("board-1990", "name: Exemplum album, act: conservation, against: [Novum album, Exemplum album]"),
    ),
    "conserved-against-itself": (
        work("vane-1850", new("Exemplum album", "A")),
        work("board-1990", "name: Exemplum album, act: conservation, against: [Exemplum album]"),
    ),
    "conserved-and-rejected": (
        work("vane-1850", new("Exemplum album", "A")),
        work("board-1990", "name: Exemplum album, act: conservation", "name: Exemplum album, act: rejection"),
    ),
    "two-conserved-against-each-other": (
        work("vane-1850", new("Exemplum album", "A"), new("Exemplum longum", "A")),
        work(
            "board-1990",
            "name: Exemplum album, act: conservation, against: [Exemplum longum]",
            "name: Exemplum longum, act: conservation, against: [Exemplum album]",
        ),
    ),
    "chosen-over-itself": (
        work("vane-1850", new("Exemplum album", "A"), new("Exemplum longum", "A")),
        work("orrin-1860", "name: Exemplum album, act: first choice, against: [Exemplum album]"),
    ),
    "confusable-with-itself": (
        work("vane-1850", new("Exemplum album", "A")),
        work("orrin-1860", "name: Exemplum album, act: ruled confusable, against: [Exemplum album]"),
    ),
    "excludes-everything": (
        work("vane-1850", new("Exemplum album", "A")),
        work(
            "orrin-1860",
            new("Exemplum longum", "B", ", cites: [Exemplum album], excludes: [Exemplum album, Exemplum longum]"),
            "name: Novum album, act: new combination, basionym: Exemplum album, excludes: [Exemplum album]",
        ),
    ),
    "cites-itself": (work("vane-1850", new("Exemplum album", "A", ", cites: [Exemplum album]")),),
    "usage-of-nothing": (work("vane-1850", "name: Exemplum album, act: usage"),),
    "type-of-nothing": (
        work("vane-1850", "name: Exemplum album, act: type designation, type: {kind: neotype, specimen: A}"),
    ),
    "only-a-designation": (work("vane-1850", "name: Exemplum album, act: new taxon, description: {kind: none}"),),
    "unranked-of-unranked": (
        work("vane-1850", "name: 'Exemplum album [unranked] longum', act: new taxon, rank: unranked"),
        work("orrin-1860", "name: 'Exemplum album [unranked] longum', act: new taxon, rank: unranked, type: "
             "{kind: holotype, specimen: B}"),
    ),
    "two-names-at-once": (
        work("vane-1850", new("Exemplum album", "A"), new("Exemplum album", "B"), new("Exemplum album", "A")),
    ),
}  # fmt: skip


@pytest.mark.parametrize("texts", ABSURD.values(), ids=ABSURD.keys())
def test_absurd_records_are_judged_all_the_same(texts: tuple[str, ...]) -> None:
    code = code_of(*texts)
    assert set(code.acts) == {act.id for act in code.corpus.acts.values() if act.establishes}
    for said in everything(code):
        assert said and "None is" not in said and "  " not in said and not said.startswith((" ", ","))


@pytest.mark.parametrize("case", ["circle-of-two", "circle-of-three-in-one-work", "circle-of-replacements"])
def test_a_circle_is_a_problem_and_never_valid(case: str) -> None:
    corpus, problems = corpus_of(*ABSURD[case])
    assert any("the names rest on one another in a circle" in problem for problem in problems)
    verdicts = {one.validity for one in applied(corpus).acts.values()}
    assert Validity.VALID not in verdicts


@pytest.mark.parametrize("case", ["own-basionym", "genus-its-own-basionym", "replaces-itself"])
def test_a_name_that_rests_on_itself(case: str) -> None:
    corpus, problems = corpus_of(*ABSURD[case])
    assert any("is said to rest on itself" in problem for problem in problems)
    [verdict] = applied(corpus).acts.values()
    assert (verdict.validity, verdict.basionym, verdict.replaced) == (Validity.UNDETERMINED, None, None)


@pytest.mark.parametrize(
    "case", ["variety-under-itself", "autonym-under-itself", "species-under-a-variety", "genus-under-its-species"]
)
def test_a_name_placed_in_itself_is_a_problem(case: str) -> None:
    """ICN Art. 35.1: the name above must be that of a genus or species, and another."""
    assert corpus_of(*ABSURD[case])[1]


def test_what_is_not_known_is_named() -> None:
    _, problems = corpus_of(*ABSURD["conservation-of-an-unknown-name"])
    assert any("no name `Exemplum album` in the knowledge base" in problem for problem in problems)
    assert any("no name `Novum album` in the knowledge base" in problem for problem in problems)


# Dates that leave open what came first


def both(*texts: str) -> CorrectName:
    code = code_of(*texts)
    return correct_name(code, Taxon(frozenset(code.corpus.names), "species", "Exemplum"))


@pytest.mark.parametrize(
    ("one", "other"),
    [
        pytest.param("../1900", "1895", id="open-start"),
        pytest.param("1800/..", "1895", id="open-end"),
        pytest.param("1890/1910", "1900", id="one-within-the-other"),
        pytest.param("1890/1900", "1900/1910", id="overlap-in-a-year"),
        pytest.param("1900~", "1901", id="approximate"),
        pytest.param("190X", "1905-06-15", id="decade"),
        pytest.param("1900", "1900-06", id="month-within-the-year"),
        pytest.param("1900-06-15", "1900-06-15", id="one-day"),
    ],
)
def test_overlapping_dates_leave_priority_open(one: str, other: str) -> None:
    """ICN Art. 11.4: both are shown, in either order, and no author of choice is invented (11.5)."""
    for first, second in ((one, other), (other, one)):
        works = (
            work("vane-1", new("Exemplum album", "A"), issued=first),
            work("orrin-1", new("Exemplum longum", "B"), issued=second),
        )
        found = both(*works)
        assert found.outcome is Outcome.UNDETERMINED and found.name is None
        assert set(found.rivals) == {"exemplum-album", "exemplum-longum"}
        assert "Exemplum album Vane" in str(found) and "Exemplum longum Orrin" in str(found)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        pytest.param("1890/1910", "1911", id="after-the-span"),
        pytest.param("../1900", "1901", id="after-an-open-start"),
        pytest.param("1900", "1901/..", id="before-an-open-end"),
        pytest.param("1900~", "1903", id="beyond-the-doubt"),
        pytest.param("1900-06-15", "1900-06-16", id="next-day"),
    ],
)
def test_dates_that_settle_it(one: str, other: str) -> None:
    works = (
        work("vane-1", new("Exemplum longum", "A"), issued=one),
        work("orrin-1", new("Exemplum album", "B"), issued=other),
    )
    assert both(*works).id == "exemplum-longum"


SAME_DATE = work("vane-1850", *(new(f"Exemplum {word}", word) for word in ("album", "longum", "pendulum")))


def choice(year: int, adopted: str, *against: str) -> str:
    over = ", ".join(f"Exemplum {word}" for word in against)
    return work(f"orrin-{year}", f"name: Exemplum {adopted}, act: first choice, against: [{over}]")


@pytest.mark.parametrize(
    ("choices", "answer"),
    [
        pytest.param((), None, id="none-recorded"),
        pytest.param((choice(1900, "longum", "album", "pendulum"),), "longum", id="over-both"),
        pytest.param((choice(1900, "album", "longum", "pendulum"),), "album", id="first-in-order"),
        pytest.param(
            (choice(1900, "longum", "album"), choice(1910, "longum", "pendulum")), "longum", id="in-two-steps"
        ),
        pytest.param(
            (choice(1900, "longum", "album", "pendulum"), choice(1910, "album", "longum")),
            "longum",
            id="second-is-void",
        ),
        pytest.param((choice(1900, "album", "longum"),), None, id="third-left-open"),
        pytest.param(
            (choice(1900, "longum", "album"),),
            None,
            id="third-left-open-in-other-order",
        ),
        pytest.param(
            (choice(1900, "longum", "album"), choice(1910, "pendulum", "longum")),
            "pendulum",
            id="chosen-over-the-chosen",
        ),
    ],
)
def test_first_choice_among_names_of_one_date(choices: tuple[str, ...], answer: str | None) -> None:
    """ICN Art. 11.5 (from memory): it settles priority over the names it was made against; the first counts."""
    found = both(SAME_DATE, *choices)
    if answer is None:
        assert found.outcome is Outcome.UNDETERMINED
    else:
        assert found.id == f"exemplum-{answer}"


def test_a_name_that_certainly_has_an_elder_is_no_rival() -> None:
    """ICN Art. 11.4: of 1850/1910, 1880 and 1900, the last can't be the earliest."""
    found = both(
        work("vane-1850", new("Exemplum album", "A"), issued="1850/1910"),
        work("orrin-1880", new("Exemplum longum", "B")),
        work("tull-1900", new("Exemplum pendulum", "C")),
    )
    assert found.rivals == ("exemplum-album", "exemplum-longum")


HOMONYMS = (work("vane-1850", new("Exemplum album", "A")), work("orrin-1850", new("Exemplum album", "B")))


def test_homonyms_of_one_date_and_the_choice_between_them() -> None:
    """ICN Art. 53.1 Note 1, 53.5 (memory)."""
    undecided = code_of(*HOMONYMS)
    assert {one.legitimacy for one in undecided.acts.values()} == {Legitimacy.UNDETERMINED}
    chosen = work("tull-1900", "name: Exemplum album Orrin, act: first choice, against: [Exemplum album Vane]")
    decided = code_of(*HOMONYMS, chosen)
    assert {id_: str(one.legitimacy) for id_, one in decided.acts.items()} == {
        "vane-1850.1": "illegitimate",
        "orrin-1850.1": "legitimate",
    }


def test_a_choice_between_names_of_two_dates_is_void() -> None:
    """ICN Art. 11.5, 53.5 (memory): only names of one date can be chosen from."""
    code = code_of(
        work("vane-1850", new("Exemplum album", "A")),
        work("orrin-1900", new("Exemplum album", "B")),
        work("tull-1950", "name: Exemplum album Orrin, act: first choice, against: [Exemplum album Vane]"),
    )
    assert code.acts["vane-1850.1"].legitimacy is Legitimacy.LEGITIMATE


# Very many records

Works = list[dict[str, Any]]
DESCRIBED = {"kind": "description", "language": "latin"}
FIRST, YEARS = 1754, 190


def letters(number: int) -> str:
    return "".join("abcdefgklm"[int(digit)] for digit in f"{number:05}")


def published(number: int, year: int, acts: list[dict[str, Any]]) -> dict[str, Any]:
    author = [{"family": f"V{letters(number)}"}]
    record = {"id": f"work-{number:05}", "type": "book", "author": author, "issued": str(year), "title": "A book"}
    return {"work": record, "acts": acts}


def taxon(name: str, rank: str, specimen: str) -> dict[str, Any]:
    type_ = {"kind": "holotype", "specimen": specimen, "herbarium": "TESN"}
    return {"name": name, "act": "new taxon", "rank": rank, "type": type_, "description": DESCRIBED}


def one_species(count: int) -> Works:
    """A species with very many varieties."""
    works = [published(0, FIRST, [taxon("Exemplum album", "species", "A")])]
    for start in range(0, count, 100):
        names = [f"Exemplum album var. {letters(number)}atum" for number in range(start, start + 100)]
        acts = [taxon(name, "variety", name) for name in names]
        works.append(published(1 + start, FIRST + 1 + YEARS * start // count, acts))
    return works


def long_chain(count: int) -> Works:
    """Combinations, each resting on the one before."""
    works = [published(0, FIRST, [taxon(f"G{letters(0)}um album", "species", "A")])]
    for number in range(1, count):
        name, older = (f"G{letters(one)}um album" for one in (number, number - 1))
        act = {"name": name, "act": "new combination", "rank": "species", "basionym": older}
        works.append(published(number, FIRST + YEARS * number // count, [act]))
    return works


def homonyms(count: int) -> Works:
    """One epithet in one genus, on very many types."""
    acts = [taxon("Exemplum album", "species", f"S{number}") for number in range(count)]
    return [published(number, FIRST + YEARS * number // count, [act]) for number, act in enumerate(acts)]


def cost(corpus: Corpus) -> int:
    return calls(lambda: applied(corpus))


@pytest.mark.parametrize(
    ("made", "small"),
    [
        pytest.param(one_species, 500, id="varieties-of-one-species"),
        pytest.param(long_chain, 300, id="chain-of-combinations"),
        pytest.param(
            homonyms,
            60,
            id="homonyms",
        ),
    ],
)
def test_cost_grows_with_the_records(made: Callable[[int], Works], small: int) -> None:
    """Four times the names cost four times the calls, with a fifth to spare."""
    one, four = (cost(corpus_from(made(size))) for size in (small, 4 * small))
    assert four <= 4.8 * one


def many_species(count: int) -> Works:
    """Species with one variety each, one a year and more."""
    works = []
    for number in range(count):
        name = f"Exemplum {letters(number)}um"
        acts = [taxon(name, "species", f"S{number}"), taxon(f"{name} var. longum", "variety", f"V{number}")]
        works.append(published(number, FIRST + YEARS * number // count, acts))
    return works


def cost_of_an_answer(count: int, asked_for: str) -> int:
    """Calls for the correct name of one species, one variety, or the part with the type, among very many."""
    code = applied(corpus_from(many_species(count)))
    name = f"exemplum-{letters(1)}um"
    species = code.corpus.names[name]
    asked = Taxon(frozenset({name}), "species", "Exemplum")
    if asked_for != "species":
        held = name if asked_for == "autonym" else f"{name}-var-longum"
        asked = Taxon(frozenset({held}), "variety", species=species.name, species_type=species.group)
    return calls(lambda: correct_name(code, asked))


@pytest.mark.parametrize(
    "asked_for",
    [
        "species",
        "variety",
        "autonym",
    ],
)
def test_an_answer_costs_the_same_among_more_names(asked_for: str) -> None:
    small, large = (cost_of_an_answer(count, asked_for) for count in (100, 400))
    assert large <= 1.2 * small


def test_a_chain_keeps_its_basionym() -> None:
    """ICN Art. 49.1: in parentheses stands the author of the basionym, never one between."""
    code = applied(corpus_from(long_chain(300)))
    last = list(code.acts.values())[-1]
    assert last.basionym == f"g{letters(0)}um-album" and last.legitimacy is Legitimacy.LEGITIMATE
    assert format_name(code.corpus.names[last.name].name).endswith(f"(V{letters(0)}) V{letters(299)}")
    assert len(set(code.corpus.groups)) == 1


def test_every_homonym_but_the_first_is_later() -> None:
    code = applied(corpus_from(homonyms(120)))
    verdicts = [str(one.legitimacy) for one in code.acts.values()]
    assert verdicts[0] != "illegitimate" and verdicts.count("illegitimate") >= 118
    first = next(iter(code.acts.values())).name
    assert all(homonymy(code, one.name).other == first for one in list(code.acts.values())[2:])


def test_many_names_in_one_species_have_one_autonym() -> None:
    code = applied(corpus_from(one_species(500)))
    [autonym] = code.autonyms.values()
    assert (autonym.rank, autonym.act) == ("variety", "work-00001.1")
    found = correct_name(code, Taxon(frozenset(code.corpus.names), "species", "Exemplum"))
    assert found.id == "exemplum-album"
