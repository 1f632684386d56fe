"""Ranks of gaps: laws of the figures, what they are found from, and cost."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.gaps.find import gaps
from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.rank import missing, one_more, plants_wanted, rank, ranked, value_of
from auctorum.circumscription.sisters import NEIGHBOURS, sisters
from auctorum.corpus.link import link
from auctorum.corpus.model import Corpus
from auctorum.records.read import read
from building import corpus_of
from counting import calls

KB = Path(__file__).parents[3] / "kb"
SHARE = st.floats(0, 1)


@pytest.fixture(scope="module")
def demo(tmp_path_factory: pytest.TempPathFactory) -> Corpus:
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("XDG_CACHE_HOME", str(tmp_path_factory.mktemp("cache")))
        return link(read(KB)[0])[0]


# --- laws


@settings(deadline=None, max_examples=100)
@given(SHARE, SHARE, SHARE, st.booleans())
def test_a_rank_lies_between_0_and_1_and_grows_with_each_part(
    base: float, more: float, use: float, focal: bool
) -> None:
    low, high = sorted((base, more))
    assert 0 <= rank(low, use, focal=focal) <= rank(high, use, focal=focal) <= 1
    assert rank(use, low, focal=focal) <= rank(use, high, focal=focal)
    assert rank(low, use, focal=False) <= rank(low, use, focal=True)


def test_the_parts_of_a_rank_move_one_way() -> None:
    assert [one_more(0.8, voices) for voices in range(4)] == sorted((one_more(0.8, n) for n in range(4)), reverse=True)
    assert [missing(there, 3) for there in range(5)] == [1, pytest.approx(2 / 3), pytest.approx(1 / 3), 0, 0]
    assert [value_of(error) for error in (0.0, 0.15, 0.5)] == [1, pytest.approx(0.7), 0]


# --- how many plants


def test_without_plants_about_a_hundred_are_wanted() -> None:
    """Wilson's interval at a share of one half is z / (2 sqrt(n + z²)) wide on either side: solved for n by hand.

    z = 1.96 for 95 %: a table of the normal distribution, as any handbook has it (from memory).
    """
    assert plants_wanted(0, 0) == math.ceil(1.96**2 * (1 / (4 * 0.1**2) - 1)) == 93


def _is_narrow(covered: float, plants: int) -> bool:
    """A slow second answer: the ends are the shares that lie 1.96 standard errors of their own from what is seen."""
    seen = covered / plants
    grid = [step / 4000 for step in range(4001)]
    inside = [share for share in grid if abs(seen - share) <= 1.96 * math.sqrt(share * (1 - share) / plants) + 1e-12]
    return max(inside) - min(inside) <= 0.2 + 1e-3


@pytest.mark.parametrize(
    ("covered", "plants"), [(0, 10), (5, 10), (40, 60), (60, 60), (45, 90), (46, 94), (30, 100), (3, 40)]
)
def test_the_plants_wanted_are_the_fewest_that_narrow_the_interval(covered: int, plants: int) -> None:
    wanted = plants_wanted(covered, plants)
    assert (wanted == plants) is _is_narrow(covered, plants)
    assert plants <= wanted <= 93 or wanted == plants


@settings(deadline=None, max_examples=100)
@given(st.integers(0, 300), st.data())
def test_more_plants_are_never_fewer_than_there_are(plants: int, data: st.DataObject) -> None:
    covered = data.draw(st.integers(0, plants))
    wanted = plants_wanted(covered, plants)
    assert plants <= wanted <= max(plants, 93)
    assert wanted == plants_wanted(plants - covered, plants)  # it does not matter which side is counted


# --- order


def test_the_highest_rank_comes_first_and_equal_ones_go_by_name() -> None:
    made = [Gap(GapKind.NAME, one, question, "", "") for one, question in ((0.1, "B"), (0.4, "C"), (0.1, "A"))]
    assert [gap.question for gap in ranked(made)] == ["C", "A", "B"]
    assert ranked(made) == ranked(made[::-1])


def test_every_kind_has_a_meaning_and_a_place_in_the_explanation() -> None:
    told = rank.__globals__["__doc__"]
    for kind in GapKind:
        assert kind.meaning
        assert f"    {kind} " in told


# --- what they are found from


def test_sisters_are_those_that_works_place_beside_a_taxon_but_for_parts_and_wholes(demo: Corpus) -> None:
    """Of the twelve works on the long spur eight have var. album beside it, and eight var. robustum, by hand."""
    longum, robustum = "cremnocentron-album-var-longum", "cremnocentron-album-var-robustum"
    found = sisters(demo)
    for taxon, several in found.items():
        assert several and taxon not in several
        assert all(taxon in found[one] for one in several)
        assert all(demo.taxa[one].group != demo.taxa[taxon].group for one in several)
    assert found[longum][:2] == ("cremnocentron-album-strict-sense", robustum)
    assert "cremnocentron-album-wide-sense" not in found[longum]  # whoever places both side by side has it as the whole


def test_the_value_of_a_character_is_that_of_its_best_parting(demo: Corpus) -> None:
    ground = Ground(demo)
    longum, robustum = "cremnocentron-album-var-longum", "cremnocentron-album-var-robustum"
    partings = {(one.character, one.stage): one.error for one in ground.apart.partings(longum, robustum)}
    error = partings["leaf width", ""]
    assert error is not None
    assert ground.apart.value_among((longum, robustum), "leaf width") == (
        pytest.approx(1 - 2 * error),
        (longum, robustum),
    )
    assert ground.apart.value(longum, "leaf width") >= 1 - 2 * error
    assert ground.apart.parts_well(longum, robustum)


def test_the_order_of_names_asked_for_does_not_matter(demo: Corpus) -> None:
    names = ["cremnocentron-album-var-longum", "cremnocentron-album-var-robustum"]
    both = gaps(demo, names)
    assert both == gaps(demo, names[::-1])
    every = gaps(demo)
    assert {gap.question for gap in both if gap.kind is GapKind.PAIR} <= {gap.question for gap in every}
    assert len(both) < len(every)


# --- cost


def _many(genera: int, species: int) -> Corpus:
    """Two works on several genera, each with as many species."""
    names = [f"G{letter}us" for letter in "abcdefghijklmnopqrst"[:genera]]
    literature = []
    for year in (1900, 1910):
        lines = [f'work: {{id: w-{year}, type: book, author: [{{family: A{year}}}], issued: "{year}", title: T}}']
        lines += (
            ["acts:", *(f"- {{name: {name}, act: new taxon, rank: genus}}" for name in names)] if year == 1900 else []
        )
        lines.append("treatments:")
        for name in names:
            for number in range(species):
                lines += [f"- taxon: {name} {chr(97 + number)}us", f"  under: {name}", "  traits:"]
                lines.append(f"  - {{character: spur length, verbatim: {10 + number * 7}-{22 + number * 7} mm}}")
        literature.append("\n".join(lines) + "\n")
    return corpus_of(*literature)[0]


def test_cost_grows_with_the_taxa() -> None:
    few, many = _many(4, 4), _many(16, 4)
    assert any(gap.kind is GapKind.PAIR for gap in gaps(few))
    assert calls(lambda: gaps(many)) < 5 * calls(lambda: gaps(few))


def test_in_a_large_parent_pairs_stay_as_few_as_taxa() -> None:
    ground = Ground(_many(1, 26))
    counts = [len(ground.sisters(taxon)) for taxon in ground.taxa]
    assert min(counts) == NEIGHBOURS and max(counts) == 2 * NEIGHBOURS


def test_nothing_is_asked_of_an_empty_knowledge_base() -> None:
    assert gaps(corpus_of()[0]) == ()


def test_a_work_alone_on_its_taxon_differs_from_nobody(demo: Corpus) -> None:
    ground = Ground(demo)
    assert not ground.several_works("cremnocentron-oulmyense")
    assert ground.several_works("cremnocentron-album-var-longum")
