"""Whose descriptions a plant is determined by: candidates, works, one's own plants."""

from __future__ import annotations

import pytest

from accounts import NAMES, OTHER, TAXON, Account, account, corpus_from
from auctorum.circumscription.sisters import wholes_by_work
from auctorum.corpus.model import Corpus
from auctorum.determination.own import ENOUGH, OWN, own_voices
from auctorum.determination.tables import Numbers, States
from auctorum.determination.view import NothingStated, Statements, view_of, views_by_work
from building import corpus_of
from core_cases import COLOUR, HEIGHT, SURFACE, corpus_with, measured, plant, shares_of, shown, stated

SPLITTER, LUMPER = "splitter-1900", "lumper-1910"


def literature(id_: str, *treatments: str, acts: str = "", year: int = 1900) -> str:
    author = id_.split("-")[0].capitalize()
    said = "treatments:\n" + "\n".join(f"- {{{one}}}" for one in treatments) if treatments else ""
    return (
        f'work: {{id: {id_}, type: book, author: [{{family: {author}}}], issued: "{year}", title: T}}\n{acts}{said}\n'
    )


FIRST = literature(
    "first-1850",
    acts="acts:\n- {name: Exemplum, act: new taxon}\n- {name: Exemplum album, act: new taxon}\n"
    "- {name: Exemplum rubrum, act: new taxon}\n- {name: Exemplum album var. longum, act: new taxon}\n",
    year=1850,
)
TRAITS = "traits: [{character: spur length, value: 10-20 mm}]"


def knowledge_base(*works: str) -> Corpus:
    corpus, problems = corpus_of(FIRST, *works)
    assert not problems, problems
    return corpus


# --- candidates


def test_what_most_works_sink_is_no_candidate() -> None:
    corpus = knowledge_base(
        literature("one-1900", f"taxon: Exemplum album, {TRAITS}", f"taxon: Exemplum rubrum, {TRAITS}"),
        literature("two-1901", "taxon: Exemplum album, synonyms: [Exemplum rubrum]", year=1901),
        literature("three-1902", "taxon: Exemplum album, synonyms: [Exemplum rubrum]", year=1902),
    )
    statements = Statements(corpus)
    taxa = {corpus.taxa[one].group for one in statements.candidates(("one-1900",))}
    assert len(taxa) == 2
    assert len({corpus.taxa[one].group for one in statements.candidates()}) == 1


def test_of_as_many_for_and_against_the_taxon_stays() -> None:
    corpus = knowledge_base(
        literature("one-1900", f"taxon: Exemplum album, {TRAITS}", f"taxon: Exemplum rubrum, {TRAITS}"),
        literature("two-1901", "taxon: Exemplum album, synonyms: [Exemplum rubrum]", year=1901),
    )
    names = {corpus.taxa[one].group for one in Statements(corpus).candidates()}
    assert len(names) == 2


def test_no_candidate_is_inside_another() -> None:
    corpus = knowledge_base(
        literature(
            "one-1900",
            f"taxon: Exemplum album, {TRAITS}",
            f"taxon: Exemplum album var. longum, under: Exemplum album, {TRAITS}",
            f"taxon: Exemplum rubrum, {TRAITS}",
        )
    )
    pairs = wholes_by_work(corpus)["one-1900"]
    assert pairs
    chosen = set(Statements(corpus).candidates())
    assert not [pair for pair in pairs if chosen.issuperset(pair)]
    assert len(chosen) == 2


# --- works


def two_works() -> Corpus:
    return corpus_from(
        [
            account(1900, "Alpha", f"{HEIGHT}: 10-20 mm", f"{SURFACE}: smooth"),
            account(1910, "Beta", f"{HEIGHT}: 60-80 mm"),
            Account(1905, "Gamma", {OTHER: stated(f"{HEIGHT}: 30-40 mm")}),
        ]
    )


def test_one_work_and_all_works() -> None:
    statements = Statements(two_works())
    every = view_of(statements)
    assert (every.title, set(every.taxa), every.left_out) == ("all authors", {TAXON, OTHER}, ())
    alpha = view_of(statements, works=("alpha-1900",))
    assert (alpha.title, alpha.works, alpha.taxa) == ("sec. Alpha 1900", ("alpha-1900",), (TAXON,))
    assert shares_of(alpha, plant(measured(35))) == [{TAXON: 1.0}]  # by lack of alternatives


def test_views_by_work_come_by_date_and_know_only_their_own_taxa() -> None:
    views = views_by_work(Statements(two_works()))
    assert [(view.title, view.taxa) for view in views] == [
        ("sec. Alpha 1900", (TAXON,)),
        ("sec. Gamma 1905", (OTHER,)),
        ("sec. Beta 1910", (TAXON,)),
    ]
    assert [view.title for view in views_by_work(Statements(two_works()), (OTHER,))] == ["sec. Gamma 1905"]


def test_a_taxon_of_which_nothing_is_stated_is_left_out_and_said() -> None:
    view = view_of(Statements(corpus_with([f"{HEIGHT}: 10-20 mm"], [])))
    assert (view.taxa, view.left_out) == ((TAXON,), (OTHER,))


def test_nothing_stated_at_all() -> None:
    statements = Statements(corpus_with([f"{HEIGHT}: 10-20 mm"], []))
    with pytest.raises(NothingStated, match="all authors: no character is stated of any of the taxa"):
        view_of(statements, taxa=(OTHER,))


def test_authors_weigh_alike_whatever_they_say() -> None:
    """Half of the plants as Alpha has them, half as Beta."""
    table = view_of(Statements(two_works()), taxa=(TAXON,)).tables[HEIGHT, ""]
    assert isinstance(table, Numbers)
    lower = float(table.below[0, table.knots.searchsorted(40.0)])
    assert lower == pytest.approx(0.5, abs=0.02)


def test_a_repetition_of_weight_nought_changes_nothing() -> None:
    alpha, gamma = account(1900, "Alpha", f"{HEIGHT}: 10-20 mm"), account(1905, "Gamma", f"{HEIGHT}: 16-30 mm")
    other = Account(1906, "Delta", {OTHER: stated(f"{HEIGHT}: 18-40 mm")})
    repeated = account(1910, "Beta", f"{HEIGHT}: 10-20 mm", follows=("alpha-1900",))
    settings = "title: Test\nrepetition-weight: 0\n"
    without, with_ = (
        shares_of(view_of(Statements(corpus_from(several, settings=settings))), plant(measured(19)))
        for several in ([alpha, gamma, other], [alpha, gamma, other, repeated])
    )
    assert with_ == [pytest.approx(without[0])]
    alone = view_of(Statements(corpus_from([alpha, other, repeated], settings=settings)), works=("beta-1910",))
    assert (HEIGHT, "") in alone.tables  # where it is alone, it counts


# --- one's own plants


def own_of(*heights: float) -> list:
    return [plant(measured(one), id_=f"own-{number}", taxon=TAXON) for number, one in enumerate(heights)]


def test_fewer_than_five_make_no_voice() -> None:
    vocabulary = two_works().vocabulary
    assert ENOUGH == 5
    assert not own_voices(own_of(30, 31, 32, 33), vocabulary)
    (voice,) = own_voices(own_of(30, 31, 32, 33, 38), vocabulary).values()
    assert voice.stretch is not None
    assert (voice.work, float(voice.stretch.low or 0), float(voice.stretch.high or 0)) == (OWN, 30, 38)


def test_of_many_the_tenths_are_typical_and_the_rest_extremes() -> None:
    (voice,) = own_voices(own_of(*range(10, 31)), two_works().vocabulary).values()
    assert voice.stretch is not None
    assert voice.extremes is not None
    ends = (voice.extremes.low, voice.stretch.low, voice.stretch.high, voice.extremes.high)
    assert [float(one or 0) for one in ends] == [10, 12, 28, 30]


def test_states_by_their_shares() -> None:
    several = [
        plant(shown(COLOUR, state), id_=f"own-{number}", taxon=TAXON)
        for number, state in enumerate(["green"] * 3 + ["buff"])
    ]
    several.append(plant(shown(COLOUR, "green", "buff"), id_="both", taxon=TAXON))
    (voice,) = own_voices(several, two_works().vocabulary).values()
    assert {state: float(share) for state, share in voice.states} == pytest.approx({"green": 0.7, "buff": 0.3})


def test_own_plants_are_one_more_author() -> None:
    statements = Statements(two_works())
    view = view_of(statements, own=own_of(*range(60, 81)), taxa=(TAXON,))
    assert view.title == "all authors and own plants"
    table = view.tables[HEIGHT, ""]
    assert isinstance(table, Numbers)
    assert float(table.below[0, table.knots.searchsorted(40.0)]) == pytest.approx(1 / 3, abs=0.02)


def test_own_plants_alone() -> None:
    statements = Statements(two_works())
    view = view_of(statements, works=(), own=own_of(*range(60, 81)))
    assert (view.title, view.works, view.taxa) == ("own plants", (), (TAXON,))
    assert view.left_out == (OTHER,)
    assert (SURFACE, "") not in view.tables


def test_plants_of_nobody_are_trusted_by_nobody() -> None:
    unnamed = [plant(measured(200 + number), id_=f"x-{number}") for number in range(20)]
    statements = Statements(two_works())
    with_, without = view_of(statements, own=unnamed), view_of(statements)
    assert shares_of(with_, plant(measured(50))) == shares_of(without, plant(measured(50)))


# --- order and names


def test_tables_stand_as_the_vocabulary_does() -> None:
    view = view_of(
        Statements(
            corpus_with(
                ["bracteoles: present", f"{SURFACE}: smooth", f"{HEIGHT}: 1-2 mm", "spur length [mature]: 4-5 mm"],
                ["spur length [young]: 1-2 mm"],
            )
        )
    )
    assert list(view.tables) == [
        ("spur length", "young"), ("spur length", "mature"), (HEIGHT, ""), (SURFACE, ""), ("bracteoles", ""),
    ]  # fmt: skip
    assert isinstance(view.tables[SURFACE, ""], States)


def test_names_are_short_in_a_view_of_all_and_the_authors_own_in_one_of_one() -> None:
    statements = Statements(corpus_with([f"{HEIGHT}: 1-2 mm"], [f"{HEIGHT}: 4-5 mm"]))
    assert view_of(statements).names == {TAXON: "E. album", OTHER: "E. rubrum"}
    assert view_of(statements, works=("alpha-1900",)).names == NAMES


def test_voices_are_weighed_once_for_each_set_of_works() -> None:
    """The second answer is that of statements which were asked nothing before."""
    corpus = two_works()
    statements, works = Statements(corpus), tuple(corpus.works)
    assert len(works) > 1
    both = statements.heard(TAXON, works)
    assert statements.heard(TAXON, [*reversed(works), works[0]]) is both
    for asked in (None, *((one,) for one in works)):
        assert dict(statements.heard(TAXON, asked)) == dict(Statements(corpus).heard(TAXON, asked))
    assert {voice.work for voice in statements.heard(TAXON, works[:1])[HEIGHT, ""]} == {works[0]}
