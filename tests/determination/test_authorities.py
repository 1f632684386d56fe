"""On whose authority: sentences of agreement made by hand, and what is likely beforehand."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.plants import Plant
from auctorum.determination.determine import determine
from auctorum.determination.model import Wording
from auctorum.determination.said import observed
from auctorum.determination.telling.authorities import Authority, agreement, authority
from auctorum.determination.telling.beforehand import Beforehand, of_plants, shared
from auctorum.determination.view import Statements, view_of, views_by_work
from measuring import knowledge_base, work

NAMES = {"a": "E. album", "n": "E. nigrum"}


def says(taxon: str | None, wording: Wording = Wording.PLAIN, view: str = "sec. A 1900", used: int = 2,
         candidates: int = 2, works: int = 1) -> Authority:  # fmt: skip
    return Authority(view, ("w",) * works, taxon, "", wording, 0.9, used, candidates)


ALL = says("a", view="all authors", works=3)


@pytest.mark.parametrize(
    ("whole", "single", "sentences"),
    [
        pytest.param(
            ALL, [says("a"), says("a"), says("n"), says("a", Wording.INDET)],
            ["All authors together say E. album, and so do 2 of 4 single authors; one says E. nigrum; 1 does not "
             "decide."],
            id="most-agree",
        ),
        pytest.param(
            ALL, [says("n"), says("n")],
            ["All authors together say E. album, and none of 2 single authors does; 2 say E. nigrum."], id="none-does",
        ),
        pytest.param(
            ALL, [says("a"), says("a", candidates=1), says(None, Wording.INDET, used=0)],
            ["All authors together say E. album, and so does the only author that can be asked.",
             "1 more describes only one candidate and 1 says nothing of what was observed."],
            id="some-cannot-be-asked",
        ),
        pytest.param(
            says("a", Wording.INDET, view="all authors", works=2), [says("a"), says("n", Wording.INDET)],
            ["All authors together do not decide; of 2 single authors one says E. album; 1 does not decide."],
            id="all-do-not-decide",
        ),
        pytest.param(
            says("a"), [says("a")], ["A 1900 says E. album, and so does the only author that can be asked."],
            id="one-work",
        ),
        pytest.param(
            ALL, [says("n")],
            ["All authors together say E. album, and the only author that can be asked does not; one says E. nigrum."],
            id="the-only-one-differs",
        ),
        pytest.param(ALL, [], ["No single author parts the candidates by what was observed."], id="nobody"),
    ],
)  # fmt: skip
def test_agreement(whole: Authority, single: list[Authority], sentences: list[str]) -> None:
    assert list(agreement(whole, single, (), knowledge_base(), NAMES)) == sentences


def test_each_author_by_what_that_author_states() -> None:
    """Orrin gives E. album long spurs, Brand gives them to E. nigrum: each names a spur of 28 mm by his own figures."""
    corpus = knowledge_base(
        work("Orrin", 1900, "spur length: 25-30 mm"),
        work("Brand", 1910, "spur length: 25-30 mm", taxon="Exemplum nigrum"),
    )  # fmt: skip
    statements = Statements(corpus)
    plant = Plant("x", None, None, None, "", (observed(corpus.vocabulary, "spur length=28 mm", "mature"),))
    told = {one.title: authority(determine(one, plant), one) for one in views_by_work(statements)}
    assert {title: (one.name, one.alone) for title, one in told.items()} == {
        "sec. Orrin 1900": ("Exemplum album", True), "sec. Brand 1910": ("Exemplum nigrum", True),
    }  # fmt: skip
    every = view_of(statements)
    together = authority(determine(every, plant), every)
    assert math.isclose(together.probability, 0.5) and together.wording is not Wording.PLAIN
    nothing = authority(determine(every, Plant("x", None, None, None, "", ())), every)
    assert (nothing.taxon, nothing.name, nothing.used) == (None, "", 0)


@given(st.dictionaries(st.sampled_from("abcdez"), st.floats(0, 0.16), max_size=6))
@settings(deadline=None, max_examples=200)
def test_stated_shares_stay_and_the_rest_is_split_evenly(given_: dict[str, float]) -> None:
    taxa = list("abcde")
    found = shared(given_, taxa)
    if found is None:
        assert not any(given_.get(taxon) for taxon in taxa)
        return
    assert list(found) == taxa
    assert all(found[taxon] == given_[taxon] for taxon in taxa if taxon in given_)
    free = {found[taxon] for taxon in taxa if taxon not in given_}
    assert len(free) <= 1
    if free and "z" not in given_:
        assert math.isclose(sum(found.values()), 1)


def test_named_plants_count_and_one_is_added_to_each() -> None:
    view = view_of(Statements(knowledge_base(work("Orrin", 1900, "spur length: 25-30 mm"))))
    (taxon,) = view.taxa
    several = [Plant(str(number), taxon, None, None, "", ()) for number in range(3)]
    assert of_plants([*several, Plant("y", None, None, None, "", ())]).of(view) == {taxon: 4.0}
    assert of_plants([]).of(view) == {taxon: 1.0}
    assert Beforehand().of(view) is None
