"""The page of a survey: its numbers are those of the command, at every threshold and site, and it tells no place."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Sequence
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from html.parser import HTMLParser

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.circumscription.intervals import wilson
from auctorum.circumscription.plants import plants
from auctorum.corpus.cautions import USUAL
from auctorum.corpus.criteria import Limit
from auctorum.corpus.model import Corpus
from auctorum.determination.criteria.criterion import VERDICTS, Verdict, judge_values
from auctorum.determination.criteria.spectrum import comparable
from auctorum.determination.survey.model import Count, Curve, Reading, Survey
from auctorum.nomenclature.code import applied
from auctorum.records import schema
from auctorum.records.fields import changed
from auctorum.site.answers import Answers
from auctorum.site.home_page import home_page
from auctorum.site.render import Job, Renderer, render
from auctorum.site.survey_moving import MOST_FIGURES, at_place, mover, sentence, side, slider
from auctorum.site.survey_page import survey_page
from auctorum.site.survey_threshold import threshold
from auctorum.site.surveys import Surveys
from building import corpus_of, read_text
from measuring import VOCABULARY, knowledge_base, with_plants, work

LONGUM, ROBUSTUM = "cremnocentron-album-var-longum", "cremnocentron-album-var-robustum"
FOCAL = (LONGUM, ROBUSTUM)


class Attributes(HTMLParser):
    """The attributes of the element with the id `mover`, and the words of the cells of each row that has a number."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.mover: dict[str, str] = {}
        self.rows: dict[int, list[str]] = {}
        self._row: int | None = None
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        if given.get("id") == "mover":
            self.mover = given
        if tag == "tr":
            self._row = int(given["data-row"]) if "data-row" in given else None
            if self._row is not None:
                self.rows[self._row] = []
        if tag in ("td", "th") and self._row is not None:
            self.rows[self._row].append("")

    def handle_data(self, data: str) -> None:
        if self._row is not None and self.rows[self._row]:
            self.rows[self._row][-1] += data


def words(text: str) -> str:
    return " ".join(re.sub(r"<[^>]*>", " ", text).split())


def figures(page: str) -> list[tuple[int, float, float, int]]:
    return [tuple(one) for one in json.loads(Attributes(page).mover["data-figures"])]


@pytest.fixture(scope="module")
def surveys(demo_code) -> Surveys:
    return Surveys(demo_code.corpus, plants(demo_code.corpus))


def curve_of(found: Survey) -> Curve:
    assert found.curve is not None
    return found.curve


# --- the numbers of the page are those of the command


@pytest.mark.parametrize("taxon", FOCAL)
def test_the_figures_of_the_page_count_as_the_curve_does_at_every_threshold(taxon, demo, surveys) -> None:
    page, found = demo[f"survey/{taxon}.html"], surveys.of(taxon)
    curve, told = curve_of(found), figures(page)
    assert curve.measured == sum(many for *_, many in told) > 100
    for step in curve.steps:
        place = float(step.threshold)
        fits = sum(many for _, value, _, many in told if value >= place)
        assert step.named == (fits if curve.fitting else curve.measured - fits), place


@pytest.mark.parametrize("taxon", FOCAL)
def test_what_the_page_says_at_any_threshold_agrees_with_the_readings_and_the_verdicts(taxon, demo_code, surveys):
    """Counts from exact fractions, borderline from `judge_values`, the interval from `wilson`."""
    found = surveys.of(taxon)
    curve, character = curve_of(found), demo_code.corpus.vocabulary["spur length"]
    values, errors = [float(one.value) for one in found.readings], [float(one.error) for one in found.readings]
    for number in range(80, 520, 3):
        place = Fraction(number, 10)
        named = sum((one.value >= place) is curve.fitting for one in found.readings)
        codes = judge_values(Limit("spur length", "mature", place, True, ""), values, errors)
        within = sum(VERDICTS[code] is Verdict.BORDERLINE for code in codes)
        count, near = at_place(found.readings, curve, character, float(place))
        assert (count.named, count.judged, near) == (named, len(values), within), place
        low, high = (100 * end for end in wilson(named, len(values)))
        digits = 0 if high - low > 2 else 1
        share = 100 * named / len(values)
        told = f"({share:.0f} %, {low:.{digits}f}–{high:.{digits}f} %); {near} "
        assert told in sentence(count, near, curve, "x") or 0 < share < 0.5


@pytest.mark.parametrize("taxon", FOCAL)
def test_each_site_stands_at_the_threshold_of_the_criterion(taxon, demo, surveys) -> None:
    page, found = demo[f"survey/{taxon}.html"], surveys.of(taxon)
    curve, rows = curve_of(found), Attributes(page).rows
    assert len(rows) == len(found.sites) + 1
    for number, place in enumerate((*found.sites, found.whole)):
        here = [one for one in found.readings if place is found.whole or one.site == place.site]
        named = sum((one.value >= curve.limit.value) is curve.fitting for one in here)
        assert f"{named} of {len(here)}" in rows[number], place.site
        mine = [one for one in figures(page) if one[0] == number or place is found.whole]
        assert sum(many for *_, many in mine) == len(here)


def test_the_page_tells_the_counts_of_the_command(demo, surveys) -> None:
    text = words(demo[f"survey/{LONGUM}.html"])
    found = surveys.of(LONGUM)
    for basis, count in zip(found.bases, found.whole.counts, strict=True):
        if count.judged and basis.stance != "sinks it":
            low, high = count.interval
            said = f"{100 * count.share:.0f} % ({100 * low:.0f}–{100 * high:.0f} %)"
            if 2 * count.undecided > count.judged:
                most = (count.named + count.undecided) / count.judged
                said = f"{100 * count.share:.0f}–{100 * most:.0f} % (most are undecided)"
            assert f"{count.named} of {count.judged}, {said}" in text
    assert "91 of 189 plants have 25 mm or more (48 %, 41–55 %); 27 are within the error of measuring." in text
    assert "Dunsary 1979 sinks it and counts none." in text
    assert "98 of 189 plants have less than 25 mm (52 %, 45–59 %)" in words(demo[f"survey/{ROBUSTUM}.html"])


# --- what leads there, what it weighs, what it does not tell


def test_no_page_stands_without_cautions(demo_code) -> None:
    """What the knowledge base leaves unsaid, the usual cautions say: on the first page and on that of a survey."""
    silent = changed(demo_code.corpus.settings, cautions=())
    answers = Answers(replace(demo_code, corpus=replace(demo_code.corpus, settings=silent)), ())
    for page in (home_page(answers), survey_page(answers, LONGUM)):
        assert page.cautions == USUAL and "permits" in page.cautions[0]


def test_survey_pages_are_led_to(demo) -> None:
    for taxon in FOCAL:
        assert f'href="survey/{taxon}.html"' in demo["index.html"]
        assert f'href="../survey/{taxon}.html"' in demo[f"taxa/{taxon}.html"]
        assert f'href="../survey/{taxon}.html"' in demo["survey/index.html"]
    assert 'href="survey/index.html"' in demo["index.html"]


def test_a_page_stays_light_and_has_one_script(demo) -> None:
    for taxon in FOCAL:
        page = demo[f"survey/{taxon}.html"]
        assert len(page.encode()) < 150_000
        assert re.findall(r"<script[^>]*>", page) == ['<script src="../assets/survey.js" defer>']
    assert "fetch(" not in demo["assets/survey.js"] and "innerHTML" not in demo["assets/survey.js"]


def test_no_candidate_site_and_no_locality_stands_on_any_page(demo, demo_code) -> None:
    sites = demo_code.corpus.sites.values()
    hidden = [one.locationRemarks for one in sites] + [one.locationID for one in sites if one.role == "candidate"]
    assert len(hidden) > 20
    for taxon in FOCAL:
        page = demo[f"survey/{taxon}.html"]
        assert not [one for one in hidden if one and one in page]
        assert not [one.locality for one in sites if one.locality and one.locality in page]


def test_without_plants_there_is_no_survey_and_no_entry_in_the_menu(site) -> None:
    assert not [path for path in site if path.startswith("survey/")]
    assert "Surveys" not in site["index.html"]


# --- small knowledge bases: states, counts, upper limits, nothing measured


TELLS = """\
work: {id: tell-1900, type: book, author: [{family: Tell}], issued: "1900", title: T}
treatments:
- taxon: Exemplum album
  traits:
  - {character: spur length, verbatim: 22–34 mm}
  - {character: petal number, verbatim: petals 5–6}
- taxon: Exemplum nigrum
  traits:
  - {character: spur length, verbatim: 10–18 mm}
"""
RULES = {
    "at-most": ("spur length", "mature", "at-most: 25 mm"),
    "state": ("spur colour", "mature", "at-least: cream"),
    "count": ("petal number", "", "at-least: '5'"),
}
HEADER = "occurrenceID,locationID,scientificName,lifeStage,spur length [mm],spur colour,petal number,aspect\n"
ROWS = """\
P1,W,Exemplum album,mature,30,ivory,6,S
P2,W,Exemplum album,mature,25.5,cream or ivory,5,S
P3,W,Exemplum nigrum,mature,12,green,4,N
P4,N,,mature,25,cream,5,N
P5,N,Exemplum album,mature,27.5,buff,5,N
P6,,Exemplum nigrum,mature,14,green,4,N
"""


def base(*rules: str, rows: str = ROWS, focal: Sequence[str] = ("exemplum-album",)) -> Corpus:
    corpus = with_plants(knowledge_base(TELLS, work("Also", 1910, "spur length: 22–36 mm")), HEADER + rows)
    criteria = []
    for id_ in rules:
        character, stage, limit = RULES[id_]
        text = f"id: {id_}\ntaxon: Exemplum album\ntitle: By {character}\notherwise: Exemplum nigrum\n"
        staged = f", stage: {stage}" if stage else ""
        text += f"decisive: {{character: {character}{staged}, {limit}}}\n"
        criteria.append(read_text(text, schema.Criterion, "rule.yaml"))
    names = [id_ for id_, one in corpus.names.items() if one.id in {corpus.taxa[taxon].current for taxon in focal}]
    return replace(corpus, criteria=tuple(criteria), focal=tuple(names))


def page_of(corpus: Corpus) -> str:
    return dict(render(applied(corpus), ()))["survey/exemplum-album.html"]


@pytest.mark.parametrize(
    ("rule", "told"),
    [
        pytest.param("at-most", "3 of 6 plants have 25 mm or less (50 %, 19–81 %); 1 is within", id="upper-limit"),
        pytest.param("state", "4 of 6 plants are cream or beyond (67 %, 30–90 %); 0 are within", id="state"),
        pytest.param("count", "4 of 6 plants have 5 or more (67 %, 30–90 %); 0 are within", id="count"),
    ],
)
def test_other_sorts_of_limits(rule: str, told: str) -> None:
    """Counted by hand; Wilson's intervals of 3 and 4 of 6 are 18.8–81.2 and 30.0–90.3 % (reckoned apart)."""
    page = page_of(base(rule))
    assert told in words(page)
    found = Attributes(page)
    assert found.mover["data-at-least"] == ("" if rule == "at-most" else "yes")
    assert json.loads(found.mover["data-states"] or "[]") == (
        ["green", "cream", "ivory", "buff"] if rule == "state" else []
    )
    assert "no site" in words(page), "P6 has no site"


def test_without_a_criterion_the_proposed_threshold_is_used_and_says_so(demo_code) -> None:
    corpus = replace(demo_code.corpus, criteria=())
    found = Surveys(corpus, plants(corpus)).of(LONGUM)
    made = threshold(Answers(replace(demo_code, corpus=corpus), ()), LONGUM, found, ())
    assert made is not None and curve_of(found).proposed
    assert made.whose == "as the records propose"
    assert made.remarks[0].startswith("No criterion of the knowledge base concerns the taxon")


def test_plants_on_which_nothing_was_measured_have_counts_alone() -> None:
    page = page_of(base("at-most", rows="P1,W,Exemplum album,mature,,,,\nP2,W,Exemplum nigrum,mature,,,,\n"))
    assert 'id="mover"' not in page and 'id="curve"' not in page
    assert "1 of 2" in words(page)


def test_a_site_whose_id_tells_its_place_is_withheld() -> None:
    rows = ROWS.replace("P4,N", "P4,-44.1127 -118.6431").replace("P5,N", "P5,-44.1128 -118.6432")
    site = schema.Site("W", decimalLatitude=Decimal("-44.1125"), decimalLongitude=Decimal("-118.6430"))
    page = page_of(replace(base("at-most", rows=rows), sites={"W": site}))
    assert "44.11" not in page and "118.64" not in page
    assert len(re.findall(r'<th scope="row">withheld', page)) == 4, "two sites, in two tables"


def test_the_figures_of_a_habitat_are_not_on_the_page() -> None:
    more = "- {name: elevation, structure: habitat, property: elevation, kind: measure, unit: m}\n"
    vocabulary = corpus_of(work("X", 1900), characters=VOCABULARY + more)[0].vocabulary
    low, high = Decimal(273), Decimal(277)
    site = schema.Site("W", minimumElevationInMeters=low, maximumElevationInMeters=high, island="Ivernay")
    text = "id: high\ntaxon: Exemplum album\ntitle: High\ndecisive: {character: elevation, at-least: 250 m}\n"
    rule = read_text(text, schema.Criterion, "rule.yaml")
    corpus = replace(base(), vocabulary=vocabulary, sites={"W": site}, criteria=(rule,))
    text = words(page_of(corpus))
    assert "only counts are shown here" in text and "By the criterion “High” there are 3 of 3" in text
    assert "Where the line is drawn" not in text
    assert not re.search(r"\b27[357]\b", text)


def test_hostile_names_of_states_stay_words() -> None:
    found = Surveys(base("state"), plants(base("state"))).of("exemplum-album")
    character = base().vocabulary["spur colour"]
    curve = replace(curve_of(found), states=('"><script>', "</div>"))
    made = mover(curve, found.readings, character, ["W"], [])
    assert made is not None and json.loads(made.states) == ['"><script>', "</div>"]


@pytest.mark.parametrize(
    ("different", "rows"),
    [
        pytest.param(MOST_FIGURES // 2, 2, id="by-site"),
        pytest.param(MOST_FIGURES // 2 + 1, 0, id="together"),
        pytest.param(MOST_FIGURES + 1, None, id="too-many"),
    ],
)
def test_a_page_carries_no_more_figures_than_it_can(different: int, rows: int | None) -> None:
    """Every figure was measured at both sites, so by site there are twice as many."""
    character = base().vocabulary["spur length"]
    curve = Curve(Limit("spur length", "", Fraction(25), True, "25 mm"), True, False, 3, (), (), "mm")
    readings = [Reading(Fraction(n, 10), Fraction(1, 20), site, "") for n in range(different) for site in "AB"]
    made = mover(curve, readings, character, ["A", "B"], [])
    assert (None if made is None else made.rows) == rows
    if made is not None:
        assert sum(many for *_, many in json.loads(made.figures)) == len(readings)


def test_a_large_survey_stays_light_too(demo_code) -> None:
    """Four hundred sites of fifteen plants, each figure a little other than the next."""
    several = plants(demo_code.corpus)
    many = tuple(
        replace(
            one,
            id=f"{one.id}-{copy}",
            site=f"T{(number + 7 * copy) % 400:03}",
            observations=tuple(
                replace(seen, value=seen.value + Fraction(copy, 10)) if seen.value is not None else seen
                for seen in one.observations
            ),
        )
        for copy in range(28)
        for number, one in enumerate(several)
    )
    answers = Answers(demo_code, ())
    answers.surveys.plants = many
    renderer = Renderer(demo_code, ())
    renderer.answers = answers
    _, page = renderer.text(Job("survey", LONGUM, f"survey/{LONGUM}.html"))
    assert len(page.encode()) < 150_000
    left_out = re.search(r"the most plants; (\d+) more are with the records", page)
    assert left_out is not None and int(left_out[1]) > 300


# --- laws

FRACTIONS = st.fractions(-1000, 1000, max_denominator=50)


@given(st.lists(FRACTIONS, min_size=1, max_size=9), FRACTIONS, st.booleans())
@settings(deadline=None, max_examples=150)
def test_the_slider_reaches_everything_and_stops_at_the_limit(numbers, limit, whole) -> None:
    least, most, step = slider(numbers, limit, whole=whole)
    assert least <= min(*numbers, limit) and max(*numbers, limit) <= most and step > 0
    assert ((limit - least) / step).denominator == 1 and ((most - least) / step).denominator == 1
    assert whole or (most - least) / step < 2000


@pytest.mark.parametrize(
    ("limit", "step"),
    [
        pytest.param("25", "0.5", id="round"),
        pytest.param("22.2", "0.2", id="one-decimal"),
        pytest.param("22.25", "0.05", id="two-decimals"),
    ],
)
def test_the_slider_has_round_steps(limit: str, step: str) -> None:
    assert slider([Fraction(9), Fraction(60)], Fraction(limit))[2] == Fraction(step)


def test_a_single_plant_at_the_threshold_has_a_slider() -> None:
    least, most, step = slider([Fraction(25)], Fraction(25))
    assert least <= 25 <= most and step > 0


SIDES: Iterator[tuple[bool, bool, str]] = iter(
    [(True, True, "or more"), (True, False, "or less"), (False, True, "less than"), (False, False, "more than")]
)


@pytest.mark.parametrize(("fitting", "at_least", "said"), list(SIDES))
def test_what_counts_is_said(fitting: bool, at_least: bool, said: str) -> None:
    curve = Curve(Limit("spur length", "", Fraction(25), at_least, "25 mm"), fitting, False, 3, (), (), "mm")
    assert said in side(curve)
    assert sentence(Count(1, 2, 0, 0), 1, curve, "25 mm").endswith("1 is within the error of measuring.")


def test_states_part_between_two_of_them() -> None:
    character = base().vocabulary["spur colour"]
    limit = Limit("spur colour", "mature", Fraction(1), True, "cream")
    assert comparable(limit, character).value == Fraction(1, 2)
    found = Surveys(base("state"), plants(base("state"))).of("exemplum-album")
    count, within = at_place(found.readings, curve_of(found), character, 2.0)
    assert (count.named, within) == (2, 1), "ivory and buff lie beyond; cream or ivory lies astride"
