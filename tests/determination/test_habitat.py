"""The envelope of known sites and the candidates beside it, on sites written out here; all invented."""

from __future__ import annotations

import re
import time
from dataclasses import replace
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from auctorum.characters.directions import arc_words
from auctorum.circumscription.plants import Plant
from auctorum.corpus.model import Corpus
from auctorum.determination.places import suitability_words as words
from auctorum.determination.places.circular import Arc, within
from auctorum.determination.places.habitat import Envelope, SiteFacts, envelope_of, facts, found_at, with_plants
from auctorum.determination.places.sphere import Point
from auctorum.determination.places.suitability import absences, ranked, suitability, worth
from auctorum.records.rows import Role, Site
from building import corpus_of

CHARACTERS = """\
characters:
- {name: aspect, structure: habitat, property: aspect, kind: angle, unit: degree}
- name: substrate
  structure: habitat
  property: substrate
  kind: nominal
  states: [{name: basalt, words: [basaltic]}, {name: tuff}, {name: limestone}]
"""
# id, island, latitude, longitude, lowest, highest, substrate, aspect, role
TABLE = """\
K1|North|10.05|179.95|200|260|basalt|S|known
K2|North|10.15|-179.95|240|300|basaltic|SSE|known
K3|South|10.05|-179.85|300|340|tuff|SE|known
EMPTY|South|10.15|-179.95|220|280|basalt|S|known
FAR|Away|-40|20|900|950|limestone|N|known
C1|North|10.08|-179.99|210|230|basalt|160|candidate
C2|South|10.05|-179.85|420|450|tuff|S|candidate
C3|South|10.05|-179.85|220|240|limestone|N|candidate
C4|Else|||||||candidate
"""
FOUND = {"K1": 9, "K2": 4, "K3": 1}
DIRECTIONS = st.integers(0, 31).map(lambda one: one * 11.25)
FACTS = st.builds(
    SiteFacts,
    st.uuids().map(str),
    st.just(""),
    st.sampled_from([(), ("basalt",), ("tuff",), ("basalt", "tuff")]),
    st.none()
    | st.tuples(st.integers(0, 400), st.integers(400, 900)).map(lambda ends: (float(ends[0]), float(ends[1]))),
    st.none() | DIRECTIONS,
    st.just(11.25),
    st.none() | st.builds(Point, st.floats(-60, 60), st.floats(-30, 30)),
)
LAWS = settings(deadline=None, max_examples=80)


def sites(table: str = TABLE) -> dict[str, Site]:
    rows = (line.split("|") for line in table.splitlines())
    return {
        id_: Site(
            locationID=id_,
            locality="Hidden Combe, invented",
            island=island,
            decimalLatitude=Decimal(lat) if lat else None,
            decimalLongitude=Decimal(lon) if lon else None,
            minimumElevationInMeters=Decimal(low) if low else None,
            maximumElevationInMeters=Decimal(high) if high else None,
            substrate=substrate,
            aspect=aspect,
            role=Role(role),
        )
        for id_, island, lat, lon, low, high, substrate, aspect, role in rows
    }


@pytest.fixture(scope="module")
def corpus() -> Corpus:
    return replace(corpus_of(characters=CHARACTERS)[0], sites=sites())


def envelope(corpus: Corpus, found: dict[str, int], *, exactly: bool = False) -> Envelope:
    return envelope_of(with_plants(facts(corpus, exactly=exactly), found), found)


def of(known: list[SiteFacts]) -> Envelope:
    return envelope_of(known, {one.id: 1 for one in known})


def test_envelope(corpus: Corpus) -> None:
    found = envelope(corpus, FOUND, exactly=True)
    assert (found.sites, found.plants, found.few) == (("K1", "K2", "K3"), 14, True)
    assert [(one.name, one.sites, one.plants) for one in found.substrates] == [("basalt", 2, 13), ("tuff", 1, 1)]
    assert found.aspect == Arc(135, 180)
    # 60 + 60 + 40 m of wall, one third each: a tenth of three sites is 0.3 of the first 60 m, and of the last 40 m
    known = found.elevation
    assert known is not None and (known.lowest, known.highest) == (200, 340)
    assert (known.middle_low, known.middle_high) == (pytest.approx(218), pytest.approx(328))
    assert found.area is not None and abs(found.area.centre.longitude) > 179.9 and 5 < found.area.radius_km < 30
    assert words.guess(found) == "drawn from 3 sites: a guess"


def test_ranked(corpus: Corpus) -> None:
    found = ranked(corpus, FOUND, exactly=True)
    assert [one.site for one in found] == ["C1", "C4", "C2", "C3"]
    best, unknown, high, wrong = found
    assert (best.worst, best.best, best.lacks) == (1, 1, ())
    assert (unknown.worst, unknown.best) == (pytest.approx(1e-4), 1)
    assert unknown.lacks == ("substrate unknown", "elevation unknown", "aspect unknown", "coordinates unknown")
    assert high.lacks == (
        "tuff, seldom that of the known sites (basalt 2, tuff 1)",
        "420–450 m, 80 m above the known 200–340 m",
    )
    # substrate 1 site beside 2; elevation falls to 0 at half the height, 70 m, above 340 m, so 420 m counts a tenth
    assert high.best == high.worst == pytest.approx(0.5 * 0.1)
    # N is stated to 45°, so that it may lie 22.5° nearer to SE: 135 - 22.5
    assert wrong.lacks == (
        "limestone, not that of any known site (basalt 2, tuff 1)",
        "faces N, 113° from the known arc SE to S",
    )


def test_absences_and_worth(corpus: Corpus) -> None:
    found = worth(corpus, FOUND, exactly=True)
    assert found.absent == absences(corpus, FOUND) == ("EMPTY", "FAR")
    assert found.absent_inside == ("EMPTY",)
    assert found.tried == 3 and 0 <= found.hits <= 3
    assert worth(corpus, {"K1": 2}).tried == 0
    assert worth(corpus, {}).absent_inside == ()


def test_nothing_found(corpus: Corpus) -> None:
    assert words.guess(envelope(corpus, {})) == "no known site, no envelope"
    assert all(one.best == 1 and one.worst < 1 for one in ranked(corpus, {}))
    assert ranked(corpus, {})[0].lacks[0] == "no known site states its substrate"
    with pytest.raises(KeyError, match="K9"):
        envelope(corpus, {"K9": 1})


@pytest.mark.parametrize("exactly", [False, True])
def test_no_word_gives_a_place_away(corpus: Corpus, exactly: bool) -> None:
    for one in ranked(corpus, FOUND, [*corpus.sites], exactly=exactly):
        said = " ".join(one.lacks)
        assert "Combe" not in said
        assert not re.search(r"\d\.\d|°[NSEW]|179", said)


def test_generalised_unless_asked(corpus: Corpus) -> None:
    """The centre of one known site would be its place; what is drawn from generalised places is not."""
    shown = facts(corpus)["K1"]
    assert shown.elevation_m == (200, 300)
    moved = sites(TABLE.replace("K1|North|10.05|179.95|200", "K1|North|10.0123|179.95|211"))
    assert envelope(replace(corpus, sites=moved), {"K1": 1}) == envelope(corpus, {"K1": 1})
    assert envelope(replace(corpus, sites=moved), {"K1": 1}, exactly=True) != envelope(corpus, {"K1": 1}, exactly=True)


def test_cultivated_plants_show_no_habitat() -> None:
    def plant(id_: str, site: str | None, establishment: str, taxon: str = "album") -> Plant:
        return Plant(id_, taxon, None, site, "", (), establishment=establishment)

    several = [
        plant("1", "K1", "native"),
        plant("2", "K1", ""),
        plant("3", "K2", "cultivated"),
        plant("4", None, ""),
        plant("5", "K3", "", taxon="nigrum"),
    ]
    assert found_at(several, "album") == {"K1": 2}
    wild = [plant("6", "K3", one) for one in ("uncultivated", "unmanaged", "native, not cultivated", "Managed | x")]
    assert found_at(wild, "album") == {"K3": 3}


@LAWS
@given(st.lists(st.tuples(st.integers(0, 9), st.integers(0, 4)), min_size=1, max_size=9))
def test_the_middle_leaves_out_a_tenth_of_the_spans_at_either_end(ends: list[tuple[int, int]]) -> None:
    """By the plain sum over all spans of the share that lies below."""
    spans = [(100.0 * low, 100.0 * (low + height)) for low, height in ends]
    site = SiteFacts("", "", (), None, None, 0.0, None)
    known = of([replace(site, id=str(number), elevation_m=span) for number, span in enumerate(spans)]).elevation
    assert known is not None

    def below(at: float, *, with_it: bool) -> float:
        return sum(
            (at > low or (with_it and at == low)) if low == high else min(1.0, max(0.0, (at - low) / (high - low)))
            for low, high in spans
        )

    for at, share in ((known.middle_low, 0.1), (known.middle_high, 0.9)):
        wanted = share * len(spans)
        assert below(at, with_it=False) - 1e-6 <= wanted <= below(at, with_it=True) + 1e-6


def test_hundreds_of_sites_are_tried_without_each_other_in_a_moment(corpus: Corpus) -> None:
    many = {
        f"S{number}": replace(one, id=f"S{number}", elevation_m=(number * 1.5, number * 1.5 + 40))
        for number, one in enumerate([SiteFacts("", "", ("tuff",), None, 90.0, 11.25, None)] * 200)
    }
    begun = time.process_time()
    told = worth(replace(corpus, sites={}), dict.fromkeys(many, 1), stated=many)
    assert told.tried == 200 and time.process_time() - begun < 0.6


@pytest.mark.parametrize(
    ("arc", "said"),
    [
        pytest.param(Arc(315, 382.5), "NW to NNE", id="across-north"),
        pytest.param(Arc(90, 95), "E", id="one-point"),
        pytest.param(Arc(0, 350), "any direction", id="all-round"),
    ],
)
def test_arcs_in_words(arc: Arc, said: str) -> None:
    assert arc_words(arc.start, arc.end) == said


@pytest.mark.parametrize(
    ("km", "said"), [(0.4, "less than 1 km"), (7.6, "about 8 km"), (23.9, "about 20 km"), (960.0, "about 1000 km")]
)
def test_distances_have_one_figure(km: float, said: str) -> None:
    assert words.area(km) == f"{said} outside the area of the known sites"


@LAWS
@given(st.lists(FACTS, min_size=1, max_size=8, unique_by=lambda one: one.id), st.randoms(use_true_random=False))
def test_order_of_sites_changes_nothing(known: list[SiteFacts], random) -> None:
    one, other = of(known), of(random.sample(known, len(known)))
    assert (one.substrates, one.elevation, one.aspect, one.core_aspect) == (
        other.substrates,
        other.elevation,
        other.aspect,
        other.core_aspect,
    )


@LAWS
@given(st.lists(FACTS, min_size=1, max_size=8, unique_by=lambda one: one.id), FACTS)
def test_one_more_site_never_shrinks_the_envelope(known: list[SiteFacts], more: SiteFacts) -> None:
    before, after = of(known), of([*known, more])
    if before.elevation and after.elevation:
        assert after.elevation.lowest <= before.elevation.lowest
        assert after.elevation.highest >= before.elevation.highest
    if before.aspect and after.aspect:
        assert after.aspect.width >= before.aspect.width
    assert {one.name for one in before.substrates} <= {one.name for one in after.substrates}


@LAWS
@given(st.lists(FACTS, min_size=1, max_size=8, unique_by=lambda one: one.id))
def test_known_sites_lie_in_their_own_envelope(known: list[SiteFacts]) -> None:
    around = of(known)
    for one in known:
        found = suitability(one, around)
        assert 0 < found.worst <= found.best <= 1
        assert all((fit.fit is None or fit.fit > 0) and (fit.fit == 1) == (not fit.lacks) for fit in found.fits)
        assert one.aspect is None or (around.aspect is not None and within(one.aspect, around.aspect))


@LAWS
@given(st.lists(FACTS, min_size=1, max_size=6, unique_by=lambda one: one.id), FACTS, st.integers(0, 31))
def test_turning_the_compass_changes_no_fit(known: list[SiteFacts], candidate: SiteFacts, steps: int) -> None:
    def turned(site: SiteFacts) -> SiteFacts:
        return replace(site, aspect=None if site.aspect is None else (site.aspect + steps * 11.25) % 360)

    one, other = suitability(candidate, of(known)), suitability(turned(candidate), of([turned(site) for site in known]))
    directions = sorted({site.aspect for site in known if site.aspect is not None})
    gaps = [(b - a) % 360 for a, b in zip(directions, [*directions[1:], *directions[:1]], strict=True)]
    if gaps.count(max(gaps, default=0)) < 2:  # of two equally short arcs the first from north is taken
        assert (one.worst, one.best) == (pytest.approx(other.worst), pytest.approx(other.best))


@LAWS
@given(st.lists(FACTS, min_size=1, max_size=6, unique_by=lambda one: one.id), FACTS, FACTS)
def test_knowing_more_of_a_site_narrows_its_range(known: list[SiteFacts], site: SiteFacts, other: SiteFacts) -> None:
    around = of(known)
    unknown = suitability(replace(site, aspect=None), around)
    told = suitability(replace(site, aspect=other.aspect), around)
    assert unknown.worst - 1e-12 <= told.worst <= told.best <= unknown.best + 1e-12
