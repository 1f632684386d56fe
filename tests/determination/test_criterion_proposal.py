"""Working criteria proposed from small knowledge bases whose best threshold can be seen by eye, and from the demo."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest

from accounts import NAMES, OTHER, TAXON, Account, corpus_from
from auctorum.circumscription.intervals import wilson
from auctorum.circumscription.plants import Observation, Plant, plants
from auctorum.corpus.criteria import Limit, UnusableCriterion
from auctorum.corpus.link import link
from auctorum.corpus.model import Corpus
from auctorum.corpus.readings import UnknownCharacter
from auctorum.corpus.resolve import find_taxon, lookup, sides_of_criterion
from auctorum.determination.criteria.criterion import Verdict, judge, judge_each
from auctorum.determination.criteria.kept import criteria_for, tried
from auctorum.determination.criteria.proposal import AgainstItself, NothingBeside, propose
from auctorum.determination.criteria.proposal_threshold import NoThreshold
from auctorum.determination.criteria.proposal_words import accounts as account_words
from auctorum.determination.criteria.proposal_words import on_plants, proposal_data, rule
from auctorum.determination.criteria.tally import best_on_plants
from auctorum.nomenclature.code import applied
from auctorum.records import schema
from auctorum.records.criterion_text import as_yaml
from auctorum.records.read import read
from building import read_text

THIRD = "exemplum-tertium"
THREE = {**NAMES, THIRD: "Exemplum tertium"}
SPUR, PETALS = "spur length", "petal number"


def said(album: str, rubrum: str, character: str = SPUR, stage: str = "mature") -> dict[str, tuple]:
    return {TAXON: ((character, album, stage),), OTHER: ((character, rubrum, stage),)}


def account(year: int, author: str, *pairs: dict[str, tuple], **more) -> Account:
    says: dict[str, tuple] = {}
    for pair in pairs:
        for taxon, stated in pair.items():
            says[taxon] = (*says.get(taxon, ()), *stated)
    return Account(year, author, says, names=THREE, **more)


def apart(*years: int, low: str = "8–14 mm", high: str = "22–34 mm") -> list[Account]:
    authors = ("Orrin", "Vane", "Maddrick", "Tolhurne", "Quessel")
    return [account(year, author, said(high, low)) for year, author in zip(years, authors, strict=False)]


def test_a_criterion_for_a_name_nobody_accepts_is_not_laid_to_the_other_taxon() -> None:
    corpus = corpus_from(apart(1900, 1920, 1940))
    text = """{id: x, title: Unknown, taxon: Exemplum ignotum, otherwise: Exemplum rubrum,
      decisive: {character: spur length, stage: mature, at-least: 18 mm}}"""
    kept = replace(corpus, criteria=(read_text(text, schema.Criterion, "x.yaml"),))
    assert criteria_for(kept, OTHER) == ()
    assert sides_of_criterion(kept, kept.criteria[0]) == (None, OTHER)
    with pytest.raises(ValueError, match="nobody accepts Exemplum ignotum"):
        tried(kept, kept.criteria[0], ())


# --- the threshold


def test_a_gap_is_parted_in_its_middle() -> None:
    made = propose(corpus_from(apart(1900, 1920, 1940)), TAXON, against=[OTHER])
    assert (made.limit.character, made.limit.stage, made.limit.at_least) == (SPUR, "mature", True)
    assert 15 <= made.limit.value <= 21 and made.worst.error == 0
    assert len(made.worst.support) == 3 and made.worst.against == ()
    assert made.criterion.otherwise == "Exemplum rubrum"


def test_the_shorter_one_fits_up_to_its_threshold() -> None:
    corpus = corpus_from(apart(1900, 1920, 1940))
    long, short = propose(corpus, TAXON, against=[OTHER]), propose(corpus, OTHER, against=[TAXON])
    assert not short.limit.at_least and short.criterion.decisive.at_most == long.criterion.decisive.at_least
    assert (short.worst.lost, short.worst.strays) == (long.worst.strays, long.worst.lost)


@pytest.mark.parametrize(
    ("album", "rubrum", "limit"),
    [
        pytest.param("4–6", "1–3", Limit(PETALS, "", Fraction(4), True, "4"), id="more"),
        pytest.param("1–3", "4–6", Limit(PETALS, "", Fraction(3), False, "3"), id="fewer"),
    ],
)
def test_counts_are_parted_between_two_numbers(album: str, rubrum: str, limit: Limit) -> None:
    several = [
        account(year, author, said(album, rubrum, PETALS, "")) for year, author in ((1900, "Orrin"), (1930, "Vane"))
    ]
    made = propose(corpus_from(several), TAXON, against=[OTHER])
    assert (made.limit, made.worst.error) == (limit, 0)


@pytest.mark.parametrize(
    ("album", "rubrum", "key", "state"),
    [
        pytest.param("ivory to buff", "green to cream", "at_least", "ivory", id="further"),
        pytest.param("green to cream", "ivory to buff", "at_most", "cream", id="less-far"),
    ],
)
def test_states_are_parted_on_their_spectrum(album: str, rubrum: str, key: str, state: str) -> None:
    several = [account(year, "Orrin", said(album, rubrum, "spur colour", "")) for year in (1900, 1930)]
    made = propose(corpus_from(several), TAXON, against=[OTHER])
    assert getattr(made.criterion.decisive, key) == state and made.on_plants is None


def test_one_author_weighs_less_than_four() -> None:
    """Petals part without error, but one author alone counts them; four measure spurs that overlap a little."""
    several = apart(1900, 1910, 1920, 1930, low="8–22 mm", high="21–34 mm")
    several.append(account(1940, "Quessel", said("5–6", "1–3", PETALS, "")))
    assert propose(corpus_from(several), TAXON, against=[OTHER]).limit.character == SPUR
    several += [account(year, f"A{year}", said("5–6", "1–3", PETALS, "")) for year in (1950, 1960, 1970, 1980)]
    assert propose(corpus_from(several), TAXON, against=[OTHER]).limit.character == PETALS


def test_where_a_plant_grows_decides_only_when_asked_for() -> None:
    characters = """\
characters:
- {name: spur length, structure: spur, property: length, kind: measure, unit: mm, stages: [young, mature]}
- {name: elevation, structure: habitat, property: elevation, kind: measure, unit: m}
"""
    high = said("300–400 m", "10–90 m", "elevation", "")
    several = [account(year, f"A{year}", said("20–34 mm", "12–24 mm"), high) for year in (1900, 1920, 1940)]
    corpus = corpus_from(several, characters=characters)
    assert propose(corpus, TAXON, against=[OTHER]).limit.character == SPUR
    assert propose(corpus, TAXON, against=[OTHER], character="elevation").limit.character == "elevation"


def test_one_threshold_cannot_part_a_taxon_that_lies_between_two() -> None:
    lengths = {TAXON: "20–24 mm", OTHER: "5–9 mm", THIRD: "40–44 mm"}
    several = [
        Account(year, f"A{year}", {one: ((SPUR, words, "mature"),) for one, words in lengths.items()}, names=THREE)
        for year in (1900, 1920, 1940)
    ]
    made = propose(corpus_from(several), TAXON, against=[OTHER, THIRD])
    assert len(made.parted) == 1 and len(made.not_parted) == 1
    assert made.weak[0].startswith("One threshold cannot part it from E. ") and made.criterion.otherwise == ""
    assert "Other plants may be E. " in rule(corpus_from(several), made)


def test_for_several_sisters_the_hardest_sets_the_threshold() -> None:
    lengths = {TAXON: "30–44 mm", OTHER: "18–26 mm", THIRD: "5–9 mm"}
    several = [
        Account(year, f"A{year}", {one: ((SPUR, words, "mature"),) for one, words in lengths.items()}, names=THREE)
        for year in (1900, 1920, 1940)
    ]
    made = propose(corpus_from(several), TAXON, against=[OTHER, THIRD])
    assert made.parted == (OTHER, THIRD) and 26 < made.limit.value < 30


def test_only_the_works_asked_are_heard() -> None:
    several = [*apart(1900, 1920), account(1940, "Maddrick", said("41–60 mm", "8–39 mm"))]
    corpus = corpus_from(several)
    made = propose(corpus, TAXON, against=[OTHER], works=["maddrick-1940"])
    assert 39 < made.limit.value <= 41 and [one.work for one in made.said] == ["maddrick-1940"]


# --- what supports


def test_traits_that_part_nothing_support_nothing() -> None:
    several = [
        account(
            year, f"A{year}", said("22–34 mm", "8–14 mm"), said("30–40 mm", "30–40 mm", "leaf length", ""),
            said("smooth", "reticulate", "seed surface", ""), said("5–9 mm", "2–4 mm", SPUR, "young"),
        )
        for year in (1900, 1920, 1940)
    ]  # fmt: skip
    made = propose(corpus_from(several), TAXON, against=[OTHER])
    assert [(one.character, one.value, str(one.weight)) for one in made.criterion.supporting] == [
        ("seed surface", "smooth", "1.0")
    ]


def test_a_weaker_trait_weighs_less() -> None:
    """By hand: seeds part without error, leaves share a third; with three authors that is 1 to less than 0.7."""
    several = [
        account(
            year, f"A{year}", said("22–34 mm", "8–14 mm"), said("smooth", "reticulate", "seed surface", ""),
            said("20–50 mm", "40–70 mm", "leaf length", ""),
        )
        for year in (1900, 1920, 1940)
    ]  # fmt: skip
    weights = {
        one.character: one.weight for one in propose(corpus_from(several), TAXON, against=[OTHER]).criterion.supporting
    }
    assert weights["seed surface"] == 1 and 0 < weights["leaf length"] < Fraction(7, 10)


# --- weak points, each only where it applies


def weak(*several: Account, text: str) -> bool:
    return any(text in one for one in propose(corpus_from(several), TAXON, against=[OTHER]).weak)


def test_weak_points() -> None:
    clean = apart(1900, 1920, 1940)
    assert not weak(*clean, text="overlap") and weak(*apart(1900, 1920, 1940, low="8–25 mm"), text="overlap")
    assert not weak(*clean, text="rests on little") and weak(
        *apart(1900), text="rests on little: only 1 independent work states"
    )
    copied = account(1960, "Hollinsay", said("22–34 mm", "8–14 mm"), follows=("orrin-1900",))
    assert not weak(*clean, text="only repeat") and weak(*clean, copied, text="1 only repeats the figures of another")
    young = account(1950, "Wethercote", said("9–13 mm", "4–6 mm", SPUR, "young"))
    assert not weak(*clean, text="judge no plant at another stage")
    assert weak(*clean, young, text="young spur of E. album (9–13 mm) measures as a mature one of E. rubrum")
    shapes = [account(1950 + n, f"B{n}", said("smooth", "winged", "seed surface", "")) for n in range(2)]
    wide = apart(1900, 1920, 1940, low="8–25 mm")
    assert not weak(*wide, text="no threshold can be set") and weak(
        *wide, *shapes, text="seed surface (smooth against winged)"
    )
    assert weak(*clean, text="Few plants were measured for it: no plants of E. album and no plants of E. rubrum")


def test_a_bound_that_moved_is_a_weak_point() -> None:
    years = range(1900, 1960, 10)
    moved = [account(year, f"A{year}", said(f"{22 + n}–60 mm", "8–14 mm")) for n, year in enumerate(years)]
    assert weak(*moved, text="The lower bound of E. album, which faces the limit, moved over the years.")
    away = [account(year, f"A{year}", said(f"22–{50 + n} mm", "8–14 mm")) for n, year in enumerate(years)]
    assert not weak(*away, text="which faces the limit")


# --- hostile knowledge bases


def test_what_cannot_be_proposed_is_refused() -> None:
    corpus = corpus_from(apart(1900, 1920, 1940))
    with pytest.raises(AgainstItself, match="cannot be parted from itself"):
        propose(corpus, TAXON, against=[TAXON])
    with pytest.raises(KeyError):
        propose(corpus, "exemplum-nullum")
    with pytest.raises(UnknownCharacter):
        propose(corpus, TAXON, against=[OTHER], character="spur lenth")
    with pytest.raises(UnusableCriterion, match="directions have no lower and higher"):
        propose(corpus, TAXON, against=[OTHER], character="aspect")
    with pytest.raises(NoThreshold, match="no threshold of `petal number` parts Exemplum album"):
        propose(corpus, TAXON, against=[OTHER], character="petal number")


def test_one_taxon_alone_and_taxa_without_a_word() -> None:
    alone = corpus_from([Account(1900, "Orrin", {TAXON: ((SPUR, "22–34 mm", "mature"),)})])
    with pytest.raises(NothingBeside, match="no work places another taxon of the same rank beside Exemplum album"):
        propose(alone, TAXON)
    silent = corpus_from([Account(1900, "Orrin", {TAXON: (), OTHER: ()})])
    with pytest.raises(NoThreshold):
        propose(silent, TAXON, against=[OTHER])
    alike = corpus_from([account(1900, "Orrin", said("22–34 mm", "22–34 mm"))])
    with pytest.raises(NoThreshold):
        propose(alike, TAXON, against=[OTHER])


# --- on plants


def measured(taxon: str, *lengths: str) -> list[Plant]:
    return [
        Plant(f"{taxon}{n}", taxon, taxon, None, "", (Observation(SPUR, "mature", Fraction(one), (), Fraction(0), 1),))
        for n, one in enumerate(lengths)
    ]


@pytest.mark.parametrize("at_least", [True, False], ids=["at-least", "at-most"])
def test_the_threshold_that_plants_favour_by_counting_every_one(at_least: bool) -> None:
    """A slow second answer: no figure to the tenth misplaces a smaller mean share."""
    low = [str(10 + n) for n in range(12)]
    high = [str(19 + n) for n in range(14)]
    own, others = (high, low) if at_least else (low, high)
    several = [*measured(TAXON, *own), *measured(OTHER, *others)]
    best = best_on_plants(Limit(SPUR, "mature", Fraction(20), at_least, "20 mm"), TAXON, OTHER, several)
    assert best is not None

    def shares(limit: Fraction) -> tuple[int, int]:
        fits = [(Fraction(one) >= limit) if at_least else (Fraction(one) <= limit) for one in (*own, *others)]
        return sum(not one for one in fits[: len(own)]), sum(fits[len(own) :])

    assert shares(best.value) == (best.wrong, best.others_wrong)
    least = min(a / len(own) + b / len(others) for a, b in (shares(Fraction(n, 10)) for n in range(400)))
    assert best.wrong / best.n + best.others_wrong / best.others == pytest.approx(least)


def test_few_plants_favour_no_threshold() -> None:
    several = [*measured(TAXON, *map(str, range(20, 29))), *measured(OTHER, *map(str, range(1, 19)))]
    assert best_on_plants(Limit(SPUR, "mature", Fraction(20), True, "20 mm"), TAXON, OTHER, several) is None


# --- the file


def test_a_proposal_reads_back_from_its_file() -> None:
    made = propose(corpus_from([*apart(1900, 1920), *apart(1940, low="8–25 mm")]), TAXON, against=[OTHER])
    assert made.criterion.note
    assert read_text(as_yaml(made.criterion, remark="Proposed."), schema.Criterion, "") == made.criterion


# --- the invented group of the demo


@pytest.fixture(scope="module")
def demo() -> Corpus:
    records, _ = read(Path(__file__).parents[2] / "kb", use_cache=False)
    return applied(link(records)[0]).corpus


def taxon(corpus: Corpus, words: str) -> str:
    return find_taxon(corpus, lookup(corpus, f"Cremnocentron album var. {words}")).id


def test_the_demo_proposes_what_its_author_found(demo: Corpus) -> None:
    """The note of the kept criterion gives 25 mm as the length where the two lose about as many plants."""
    longum, robustum = taxon(demo, "longum"), taxon(demo, "robustum")
    made = propose(demo, longum)
    kept = criteria_for(demo, longum)[0].decisive
    assert (made.criterion.decisive.character, made.criterion.decisive.stage) == (kept.character, kept.stage)
    assert made.criterion.decisive.at_least == kept.at_least == "25 mm"
    assert made.worst.sister == robustum and robustum in made.parted
    assert "aspect" in {one.character for one in made.criterion.supporting}
    assert any("those named by “Long-spurred from 25 mm”" in one for one in made.weak)
    assert read_text(as_yaml(made.criterion), schema.Criterion, "") == made.criterion


def test_the_demo_plants_counted_by_hand(demo: Corpus) -> None:
    """Spurs of the mature plants named var. longum, straight from the table: on which side of 25 mm they lie."""
    longum = taxon(demo, "longum")
    made, several = propose(demo, longum), plants(demo)
    seen = [one.at(SPUR, "mature") for one in several if one.taxon == longum]
    lengths = [one.value for one in seen if one is not None and one.value is not None]
    tally = made.tallies[0]
    assert tally.taxon == longum and tally.measured == len(lengths)
    assert tally.fits == sum(one.value - one.error >= 25 for one in seen if one is not None and one.value is not None)
    assert tally.interval(fitting=True) == wilson(tally.does_not_fit, tally.measured)
    assert any(f"none of {len(lengths)} plants on the wrong side" in one for one in on_plants(demo, made))


def test_the_demo_kept_criterion_and_its_conflicts(demo: Corpus) -> None:
    longum = taxon(demo, "longum")
    kept = tried(demo, criteria_for(demo, longum)[0], plants(demo))
    assert kept.stand is not None and kept.stand.sister == taxon(demo, "robustum")
    assert 0.05 < (kept.stand.error or 0) < 0.25
    judged = judge_each(demo, kept.criterion, plants(demo))
    of_it = [one for one, plant in zip(judged, plants(demo), strict=True) if plant.taxon == longum]
    assert sum(one.conflict for one in of_it) == kept.tallies[0].conflicts > 0
    first = next(plant for plant in plants(demo) if plant.id == "INV-0001")
    assert judge(demo, kept.criterion, first).verdict is Verdict.FITS  # 38.5 mm in the table


def test_what_authors_state_is_told_with_their_bylines(demo: Corpus) -> None:
    told = account_words(demo, made := propose(demo, taxon(demo, "longum")))
    assert any("never moved: 22 mm" in one for one in told)
    data = proposal_data(demo, made)
    assert data["decisive"] == {
        "character": SPUR, "stage": "mature", "unit": "mm", "at_least": 25.0, "printed": "25 mm",
    }  # fmt: skip


def test_every_taxon_of_the_demo_has_a_proposal_or_a_reason(demo: Corpus) -> None:
    few = replace(demo, specimens=())
    for one in demo.taxa:
        try:
            made = propose(few, one)
        except (NoThreshold, NothingBeside) as error:
            assert error.remedy
            continue
        assert made.parted and made.criterion.taxon and made.worst.error is not None and made.worst.error < 0.25
        assert read_text(as_yaml(made.criterion), schema.Criterion, "") == made.criterion
