"""Surveys of a few plants counted by hand, and the laws that counts keep."""

from __future__ import annotations

import json
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.plants import Observation, Plant, plants
from auctorum.corpus.model import Corpus
from auctorum.determination.criteria.criterion import Verdict, judge
from auctorum.determination.determine import determine
from auctorum.determination.many import Observed, columns_of
from auctorum.determination.model import Wording
from auctorum.determination.survey.data import csv_rows, survey_data
from auctorum.determination.survey.model import By, Count, Ground, Stance, Survey
from auctorum.determination.survey.survey import survey
from auctorum.determination.view import Statements, view_of, views_by_work
from auctorum.records import schema
from auctorum.records.rows import Role
from building import corpus_of, read_text
from measuring import VOCABULARY, knowledge_base, with_plants, work

TELLS = """\
work: {id: tell-1900, type: book, author: [{family: Tell}], issued: "1900", title: T}
treatments:
- taxon: Exemplum album
  traits:
  - {character: spur length, verbatim: 22–34 mm}
- taxon: Exemplum nigrum
  traits:
  - {character: spur length, verbatim: 10–18 mm}
"""
SINKS = """\
work: {id: sink-1920, type: book, author: [{family: Sink}], issued: "1920", title: T}
treatments:
- taxon: Exemplum nigrum
  synonyms: [Exemplum album]
"""
RULE = """\
id: long
taxon: Exemplum album
title: Long-spurred
otherwise: Exemplum nigrum
decisive: {character: spur length, stage: mature, at-least: 25 mm}
"""
HEADER = (
    "occurrenceID,locationID,scientificName,identifiedBy,lifeStage,degreeOfEstablishment,recordedBy,"
    "measurementMethod,spur length [mm]\n"
)
ROWS = """\
P1,W,Exemplum album,A,mature,native,A,,30
P2,W,Exemplum album,A,mature,native,A,,31
P3,W,Exemplum nigrum,A,mature,native,A,,12
P4,W,,,mature,native,A,,25
P5,W,Exemplum album,A,young,native,A,,30
P6,N,Exemplum nigrum,A,mature,native,A,,14
P7,N,Exemplum nigrum,A,mature,native,A,,16
P8,N,Exemplum nullum,A,mature,native,A,,28
P9,,Exemplum album,A,mature,native,A,,33
P10,W,Exemplum album,A,mature,cultivated,A,,30
"""
LATITUDE, LONGITUDE, REMARK = Decimal("-44.1127"), Decimal("-118.6431"), "Closed while birds nest"


def site(id_: str, role: Role = Role.KNOWN, **facts: object) -> schema.Site:
    told = {"locality": f"Hidden Wall {id_}", "island": "Ivernay", "locationRemarks": REMARK, "substrate": "basalt"}
    place = {"decimalLatitude": LATITUDE, "decimalLongitude": LONGITUDE, "aspect": "S"}
    return schema.Site(id_, role=role, **(told | place | facts))  # type: ignore[arg-type]


def base(*criteria: str) -> Corpus:
    alone = work("Alone", 1910, "spur length: 22–34 mm")
    corpus = knowledge_base(TELLS, alone, SINKS)
    sites = {one.locationID: one for one in (site("W"), site("N"), site("C", Role.CANDIDATE, aspect="N"))}
    rules = tuple(read_text(text, schema.Criterion, "rule.yaml") for text in criteria)
    return replace(corpus, sites=sites, criteria=rules)


CORPUS = with_plants(base(RULE), HEADER + ROWS)
PLANTS = plants(CORPUS)
ALBUM, NIGRUM = "exemplum-album", "exemplum-nigrum"


def counted(several: Sequence[Plant] = PLANTS, corpus: Corpus = CORPUS, taxon: str = ALBUM, **asked: object) -> Survey:
    return survey(corpus, Statements(corpus), taxon, several, **asked)  # type: ignore[arg-type]


def by(found: Survey, id_: str, site_: str | None = None) -> Count:
    place = found.whole if site_ is None else next(one for one in found.sites if one.site == site_)
    return place.counts[[basis.id for basis in found.bases].index(id_)]


def figures(one: Count) -> tuple[int, int, int, int]:
    return one.named, one.others, one.undecided, one.not_judged


# --- counted by hand


@pytest.mark.parametrize(
    ("view", "whole", "at_w", "at_n", "elsewhere"),
    [
        # P8 has a name that nobody accepts, P4 none.
        pytest.param("names given", (4, 3, 1, 1), (3, 1, 0, 1), (0, 2, 1, 0), (1, 0, 0, 0), id="names"),
        # P4 is measured at the threshold, P5 is young.
        pytest.param("long", (4, 3, 1, 1), (2, 1, 1, 1), (1, 2, 0, 0), (1, 0, 0, 0), id="criterion"),
        pytest.param("tell-1900", (5, 3, 0, 1), (3, 1, 0, 1), (1, 2, 0, 0), (1, 0, 0, 0), id="two-taxa"),
        pytest.param("alone-1910", (5, 3, 0, 1), (3, 1, 0, 1), (1, 2, 0, 0), (1, 0, 0, 0), id="no-other-taxon"),
        pytest.param("sink-1920", (0, 9, 0, 0), (0, 5, 0, 0), (0, 3, 0, 0), (0, 1, 0, 0), id="sinks-it"),
        pytest.param("first-1850", (0, 0, 0, 9), (0, 0, 0, 5), (0, 0, 0, 3), (0, 0, 0, 1), id="no-description"),
        pytest.param("all authors", (5, 3, 0, 1), (3, 1, 0, 1), (1, 2, 0, 0), (1, 0, 0, 0), id="all"),
    ],
)
def test_counts_by_hand(
    view: str, whole: tuple[int, ...], at_w: tuple[int, ...], at_n: tuple[int, ...], elsewhere: tuple[int, ...]
) -> None:
    found = counted()
    assert figures(by(found, view)) == whole
    assert [figures(by(found, view, at)) for at in ("W", "N", "")] == [at_w, at_n, elsewhere]


def test_cultivated_plants_are_left_out_and_said() -> None:
    found = counted()
    assert (found.plants, found.cultivated) == (9, 1)
    assert [(one.site, one.plants) for one in found.sites] == [("W", 5), ("N", 3), ("", 1)]


def test_authors_stand_by_date_with_what_they_make_of_it() -> None:
    found = counted()
    told = [(one.title, one.stance, one.remark) for one in found.bases if one.ground is Ground.AUTHOR]
    assert told == [
        ("First 1850", Stance.BARE, "accepts it, and states nothing by which plants could be counted"),
        ("Tell 1900", Stance.TELLS, ""),
        ("Alone 1910", Stance.ALONE, "describes no other taxon: what lies within its words counts"),
        ("Sink 1920", Stance.SINKS, "sinks it in Exemplum nigrum"),
    ]
    assert found.silent == ("Second 1851",)


def test_a_plant_within_the_error_of_the_threshold_is_borderline() -> None:
    """Common practice, no source. Half of the error of 25 ± 0.5 mm lies above 25 mm: half a plant is expected."""
    one = by(counted(), "long")
    assert one.undecided == 1
    assert one.expected is not None
    assert (one.expected.mean, one.expected.low, one.expected.high) == (4.5, 4, 5)


def test_the_taxon_of_otherwise_is_the_rest() -> None:
    one, other = by(counted(), "long"), by(counted(taxon=NIGRUM), "long")
    assert (other.named, other.others, other.undecided) == (one.others, one.named, one.undecided)
    assert other.expected is not None and other.expected.mean == 3.5
    curve = counted(taxon=NIGRUM).curve
    assert curve is not None and not curve.fitting
    assert [(int(step.threshold), step.named) for step in curve.steps][:3] == [(12, 0), (14, 1), (16, 2)]


def test_what_each_threshold_would_count() -> None:
    curve = counted().curve
    assert curve is not None
    told = [(int(step.threshold), step.named) for step in curve.steps]
    assert told == [(12, 8), (14, 7), (16, 6), (25, 5), (28, 4), (30, 3), (31, 2), (33, 1)]
    bound = curve.bounds[0]
    assert (bound.title, bound.low, bound.high) == ("Tell 1900", 22, 34)
    assert (bound.from_low, bound.inside, bound.upto_high) == (5, 5, 8)


def test_one_s_own_plants_are_a_view_that_says_so_of_itself() -> None:
    several = [*PLANTS, *(replace(one, id=f"{one.id}-{n}") for one in PLANTS for n in range(5))]
    own = [one for one in several if one.taxon is not None]
    found = counted(own=own)
    basis = next(one for one in found.bases if one.ground is Ground.OWN)
    assert basis.remark == "learnt from these very plants, so it finds them again too easily"
    own_count = by(found, "own plants")  # P1, P2 and P9 lie among the 30 to 33 mm that it has learnt of E. album
    assert own_count.named >= 3
    assert own_count.others == 3


def test_only_the_sites_authors_and_criteria_asked_for() -> None:
    found = counted(sites=("N",), works=("tell-1900",), criteria=())
    assert [one.site for one in found.sites] == ["N"]
    assert [one.id for one in found.bases] == ["names given", "all authors", "tell-1900"]
    assert found.bases[1].title == "those authors together"
    assert figures(by(found, "tell-1900")) == (1, 2, 0, 0)


# --- parts and wholes

NESTED = """\
work: {id: orrin-1900, type: book, author: [{family: Orrin}], issued: "1900", title: T}
acts:
- {name: Exemplum, act: new taxon}
- {name: Exemplum album, act: new taxon}
- {name: Exemplum album var. longum, act: new taxon}
- {name: Exemplum nigrum, act: new taxon}
treatments:
- taxon: Exemplum album
- {taxon: Exemplum album var. longum, under: Exemplum album, traits: [{character: spur length, verbatim: 22–34 mm}]}
- {taxon: Exemplum nigrum, traits: [{character: spur length, verbatim: 10–18 mm}]}
"""
NESTED_ROWS = """\
Q1,,Exemplum album var. longum,A,mature,,A,,30
Q2,,Exemplum album,A,mature,,A,,30
Q3,,Exemplum nigrum,A,mature,,A,,12
"""


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        pytest.param("Exemplum album var. longum", (1, 1, 1, 0), id="named-as-its-whole: undecided"),
        pytest.param("Exemplum album", (2, 1, 0, 0), id="named-as-its-part: counts"),
    ],
)
def test_parts_count_and_wholes_leave_it_open(said: str, expected: tuple[int, ...]) -> None:
    linked, problems = corpus_of(NESTED, characters=VOCABULARY)
    assert not problems
    corpus = with_plants(linked, HEADER + NESTED_ROWS)
    taxon = next(
        one.id for one in corpus.taxa.values() if one.current == said.lower().replace(" ", "-").replace(".", "")
    )
    assert figures(by(counted(plants(corpus), corpus, taxon), "names given")) == expected


# --- what is not there


def test_no_plants_at_all() -> None:
    found = counted(())
    assert (found.plants, found.sites, found.readings, found.measurers) == (0, (), (), ())
    assert all(figures(one) == (0, 0, 0, 0) for one in found.whole.counts)
    assert found.whole.gap is None
    assert found.wanted[0].more == 93  # 93 plants make Wilson's interval ± 0.1 at a share of a half


def test_without_a_criterion_and_sisters_there_is_no_threshold() -> None:
    found = counted(corpus=replace(CORPUS, criteria=()))
    assert not any(one.ground is Ground.CRITERION for one in found.bases)
    assert found.bases[found.main].ground is Ground.ALL
    assert (found.curve, found.readings, found.whole.gap) == (None, (), None)
    assert (found.wanted[0].named, found.wanted[0].judged) == (5, 8)


def test_a_criterion_that_cannot_be_used_is_said() -> None:
    rule = read_text(RULE.replace("25 mm", "about 25 mm"), schema.Criterion, "rule.yaml")
    found = counted(corpus=replace(CORPUS, criteria=(rule,)))
    assert found.left_out[0].startswith("The criterion `long` cannot be used: ")


def test_a_taxon_that_nobody_describes() -> None:
    corpus = with_plants(replace(knowledge_base(), sites=CORPUS.sites), HEADER + ROWS)
    found = counted(corpus=corpus, several=plants(corpus))
    assert [one.ground for one in found.bases] == [Ground.NAMES, Ground.AUTHOR]
    assert found.curve is None
    assert found.left_out == (
        "All authors together count none: more of them sink the taxon than keep it, or none describes it.",
    )
    assert found.wanted[0].judged == 8  # by the names given, which are all that is left


def test_none_of_thirty_is_below_a_tenth() -> None:
    """Hanley & Lippman-Hand 1983 (from memory): none of n means less than about 3 in n; exactly 1 − 0.05^(1/30)."""
    several = [replace(PLANTS[2], id=f"R{number}") for number in range(30)]
    wanted = counted(several).wanted[0]
    assert (wanted.named, wanted.judged) == (0, 30)
    assert wanted.none is not None
    assert wanted.none[0] == pytest.approx(0.1)
    assert wanted.none[1] == pytest.approx(1 - 0.05 ** (1 / 30))


# --- who measures differently


def measured(rows: Sequence[tuple[str, str, int]]) -> tuple[Plant, ...]:
    """Plants of E. album at W: observer, instrument, spur in mm."""
    table = "".join(
        f"M{n},W,Exemplum album,A,mature,,{who},{tool},{value}\n" for n, (who, tool, value) in enumerate(rows)
    )
    return plants(with_plants(CORPUS, HEADER + table))


def test_an_observer_who_measures_three_more() -> None:
    rows = [("A", "rod", value + 3) for value in (20, 23, 24, 26, 28)] + [("B", "rod", v) for v in (20, 23, 24, 26, 28)]
    found = counted(measured(rows))
    (pair,) = found.measurers
    assert (pair.by, pair.first, pair.second, pair.difference.median) == (By.OBSERVER, "A", "B", 3.0)
    # A has 23, 26, 27, 29, 31 and B 20, 23, 24, 26, 28: 4 and 2 lie above 25 mm beyond the half millimetre.
    assert (pair.as_measured, pair.as_second, pair.as_first) == (6, 4, 8)
    assert not found.confounded


def test_an_instrument_of_one_s_own_hides_who_differs() -> None:
    rows = [("A", "rod", 30), ("A", "rod", 31), ("B", "tape", 27), ("B", "tape", 26)]
    found = counted(measured(rows))
    assert found.confounded
    assert [one.by for one in found.measurers] == [By.OBSERVER, By.INSTRUMENT]


def test_observers_who_share_no_site_are_not_compared() -> None:
    several = measured([("A", "", 30), ("B", "", 27)])
    found = counted((several[0], replace(several[1], site="N")))
    assert [(one.difference.median, one.as_second) for one in found.measurers] == [(None, None)]


# --- laws

LENGTHS = st.lists(
    st.tuples(st.integers(5, 45), st.sampled_from(["W", "N", "elsewhere", None]),
              st.sampled_from([None, ALBUM, NIGRUM]), st.sampled_from(["mature", "young"])),
    max_size=25,
)  # fmt: skip


def made(drawn: Sequence[tuple[int, str | None, str | None, str]]) -> tuple[Plant, ...]:
    return tuple(
        Plant(f"L{n}", taxon, taxon, at, "A" if taxon else "",
              (Observation("spur length", stage, Fraction(value), (), Fraction(1, 2), 1),))
        for n, (value, at, taxon, stage) in enumerate(drawn)
    )  # fmt: skip


@settings(deadline=None, max_examples=60)
@given(LENGTHS)
def test_sites_sum_to_the_whole_and_every_plant_is_somewhere(drawn: Sequence[tuple[int, str, str, str]]) -> None:
    found = counted(made(drawn))
    for number, whole in enumerate(found.whole.counts):
        at = [figures(one.counts[number]) for one in found.sites]
        assert tuple(map(sum, zip(*at, strict=True))) == (figures(whole) if drawn else ())
        assert sum(figures(whole)) == len(drawn)


@settings(deadline=None, max_examples=60)
@given(LENGTHS)
def test_the_curve_never_rises_and_begins_with_all(drawn: Sequence[tuple[int, str, str, str]]) -> None:
    curve = counted(made(drawn)).curve
    assert curve is not None
    counts = [one.named for one in curve.steps]
    assert counts == sorted(counts, reverse=True)
    assert not counts or counts[0] == curve.measured
    values = [value for value, _, _, stage in drawn if stage == "mature"]
    assert counts == [sum(value >= one.threshold for value in values) for one in curve.steps]


@settings(deadline=None, max_examples=30)
@given(LENGTHS, st.randoms(use_true_random=False))
def test_the_order_of_plants_changes_nothing(drawn: list[tuple[int, str, str, str]], random: object) -> None:
    several = list(made(drawn))
    shuffled = several.copy()
    random.shuffle(shuffled)  # type: ignore[attr-defined]
    assert counted(several) == counted(shuffled)


@settings(deadline=None, max_examples=40)
@given(LENGTHS)
def test_many_plants_are_judged_as_one_plant_is(drawn: Sequence[tuple[int, str, str, str]]) -> None:
    several, statements = made(drawn), Statements(CORPUS)
    found = counted(several)
    verdicts = [judge(CORPUS, CORPUS.criteria[0], one).verdict for one in several]
    assert by(found, "long").named == verdicts.count(Verdict.FITS)
    assert by(found, "long").undecided == verdicts.count(Verdict.BORDERLINE)
    view = view_of(statements, works=("tell-1900",))
    told = [determine(view, one) for one in several]
    sure = [one for one in told if one.wording in (Wording.PLAIN, Wording.CF)]
    assert by(found, "tell-1900").named == sum(one.best == ALBUM for one in sure)
    assert by(found, "tell-1900").others == sum(one.best != ALBUM for one in sure)


def test_the_unit_that_was_measured_in_changes_nothing() -> None:
    head, *rows = (HEADER + ROWS).replace("spur length [mm]", "spur length [cm]").splitlines()
    table = [head, *(f"{row.rpartition(',')[0]},{int(row.rpartition(',')[2]) / 10:.1f}" for row in rows)]
    assert counted(plants(with_plants(CORPUS, "\n".join(table) + "\n"))) == counted()


def test_columns_for_many_views_are_those_of_each() -> None:
    observed = Observed(PLANTS)
    for view in views_by_work(Statements(CORPUS)):
        slow, quick = columns_of(view, PLANTS), observed.columns(view)
        assert list(slow) == list(quick)
        for key in slow:
            assert all(
                repr(getattr(slow[key], name)) == repr(getattr(quick[key], name)) for name in slow[key].__slots__
            )


# --- what leaves this machine


def test_nothing_of_a_place_leaves_but_id_and_island() -> None:
    found = counted()
    told = json.dumps(survey_data(CORPUS, found)) + "\n".join(map(",".join, csv_rows(CORPUS, found)))
    assert "Ivernay" in told and '"W"' in told
    for secret in ("Hidden Wall", "44.11", "118.64", REMARK):
        assert secret not in told


def test_candidates_are_ranked_by_where_it_is_at_home() -> None:
    found = counted().candidates
    assert found.around.sites == ("W",)  # 3 of 4 named there; N has none of 3
    assert found.worth.absent == ("N",)
    assert [one.site for one in found.ranked] == ["C"]
    assert "faces N" in "; ".join(found.ranked[0].lacks)


def test_one_odd_plant_among_many_makes_no_home() -> None:
    several = [*PLANTS, *(replace(PLANTS[5], id=f"X{n}") for n in range(7)), replace(PLANTS[0], id="Y", site="N")]
    found = counted(several).candidates
    assert found.odd == (("N", 1, 11),)
    assert found.worth.absent == ()


def test_csv_has_a_row_for_each_site_and_view() -> None:
    found = counted()
    rows = list(csv_rows(CORPUS, found))
    assert len(rows) == (len(found.sites) + 1) * len(found.bases)
    assert {row[0] for row in rows} == {"W", "N", "no site", "all"}
