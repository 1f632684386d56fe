"""A survey as plain data for others: nothing of a place but the id and the island of its site."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from fractions import Fraction

from auctorum.corpus.model import Corpus
from auctorum.determination.counting.dip import DipTest
from auctorum.determination.many import as_float
from auctorum.determination.places.localities import public_sites
from auctorum.determination.places.public_plants import public_words
from auctorum.determination.places.whereabouts import Whereabouts, whereabouts_of
from auctorum.determination.survey.model import Basis, Bound, Count, Curve, Measurers, Place, Survey, Wanted

Data = dict[str, object]
WITHHELD = "withheld"
CSV_HEADINGS = (
    "site", "island", "counted by", "id", "title", "plants", "named", "judged", "undecided", "not judged", "share",
    "low", "high", "expected", "expected low", "expected high", "remark",
)  # fmt: skip


class Public:
    """Ids of sites and words as others may read them."""

    def __init__(self, corpus: Corpus) -> None:
        self._sites: Mapping[str, str] = {id_: one.id for id_, one in public_sites(corpus).items()}
        self._known: Whereabouts = whereabouts_of(corpus)
        self._told: dict[str, str] = {}

    def site(self, id_: str) -> str | None:
        """The id, None for no site; one that tells a place is withheld."""
        if not id_:
            return None
        if id_ not in self._told:
            self._told[id_] = (self._sites.get(id_, id_) or WITHHELD) if not self._known.told_in(id_) else WITHHELD
        return self._told[id_]

    def words(self, text: str) -> str:
        """The words, or that they are withheld."""
        return public_words(text, self._known)


def survey_data(corpus: Corpus, one: Survey) -> Data:
    """All of it; shares 0 to 1, figures in the canonical unit, null where something is not known."""
    public = Public(corpus)
    return {
        "taxon": one.taxon,
        "name": one.name,
        "plants": one.plants,
        "cultivated_left_out": one.cultivated,
        "views": [_basis(basis) for basis in one.bases],
        "whole": _place(one.whole, one.bases, public),
        "sites": [_place(place, one.bases, public) for place in one.sites],
        "silent": list(one.silent),
        "curve": None if one.curve is None else _curve(one.curve),
        "readings": [
            {"value": _figure(each.value), "error": _figure(each.error), "site": public.site(each.site),
             "named": each.taxon or None}
            for each in one.readings
        ],
        "names": dict(one.names),
        "measurers": [_measurers(each, public) for each in one.measurers],
        "observer_and_instrument_confounded": one.confounded,
        "wanted": {
            "by": one.bases[one.main].id,
            "half_width": one.half_width,
            "places": [_wanted(each, public) for each in one.wanted],
        },
        "candidates": _candidates(one, public),
        "left_out": [public.words(each) for each in one.left_out],
    }  # fmt: skip


def csv_rows(corpus: Corpus, one: Survey) -> Iterator[tuple[str, ...]]:
    """A row for each site and view, under CSV_HEADINGS; the site `all` holds all plants together."""
    public = Public(corpus)
    for place in (*one.sites, one.whole):
        site = "all" if place is one.whole else public.site(place.site) or "no site"
        for basis, count in zip(one.bases, place.counts, strict=True):
            low, high = (f"{end:.4f}" for end in count.interval) if count.judged else ("", "")
            expected = tuple(map(_plain, count.expected)) if count.expected is not None else ("", "", "")
            yield (
                site, place.island, str(basis.ground), basis.id, basis.title, str(place.plants), str(count.named),
                str(count.judged), str(count.undecided), str(count.not_judged),
                "" if count.share is None else f"{count.share:.4f}", low, high, *expected, basis.remark,
            )  # fmt: skip


def _plain(number: float) -> str:
    return f"{number:.4f}".rstrip("0").rstrip(".")


def _basis(one: Basis) -> Data:
    return {
        "counted_by": str(one.ground),
        "id": one.id,
        "title": one.title,
        "stance": str(one.stance),
        "remark": one.remark,
    }


def _place(one: Place, bases: tuple[Basis, ...], public: Public) -> Data:
    counts = zip(bases, one.counts, strict=True)
    return {
        "site": public.site(one.site),
        "island": one.island,
        "plants": one.plants,
        "counts": [{"counted_by": str(basis.ground), "id": basis.id} | _count(count) for basis, count in counts],
        "gap": None if one.gap is None else _gap(one.gap),
    }


def _count(one: Count) -> Data:
    return {
        "named": one.named,
        "judged": one.judged,
        "undecided": one.undecided,
        "not_judged": one.not_judged,
        "share": None if one.share is None else _share(one.share),
        "interval": [_share(end) for end in one.interval] if one.judged else None,
        "expected": None if one.expected is None else one.expected._asdict() | {"mean": _figure(one.expected.mean)},
    }


def _gap(one: DipTest) -> Data:
    return {"n": one.n, "dip": _share(one.dip), "p": _share(one.p), "enough": one.enough, "finding": one.finding}


def _curve(one: Curve) -> Data:
    limit = one.limit
    return {
        "character": limit.character,
        "stage": limit.stage,
        "at_least" if limit.at_least else "at_most": _figure(limit.value),
        "printed": limit.printed,
        "counts_those_that_fit": one.fitting,
        "proposed": one.proposed,
        "unit": one.unit,
        "states": list(one.states),
        "measured": one.measured,
        "steps": [
            {"threshold": _figure(step.threshold), "named": step.named, "share": _share(step.share)}
            for step in one.steps
        ],
        "authors": [_bound(bound) for bound in one.bounds],
    }


def _bound(one: Bound) -> Data:
    ends = {"low": one.low, "high": one.high, "least": one.least, "most": one.most}
    return {
        "work": one.work,
        "title": one.title,
        **{name: _figure(value) for name, value in ends.items()},
        "from_low": one.from_low,
        "from_least": one.from_least,
        "upto_high": one.upto_high,
        "inside": one.inside,
        "repeats": one.repeats or None,
    }


def _figure(value: Fraction | float | None) -> float | None:
    """With six digits, more than any ruler tells; and few enough to be mistaken for no coordinate."""
    return None if value is None else float(f"{as_float(Fraction(value)):.6g}")


def _share(value: float) -> float:
    return round(value, 4)


def _measurers(one: Measurers, public: Public) -> Data:
    found = one.difference
    return {
        "by": str(one.by),
        "first": public.words(one.first),
        "second": public.words(one.second),
        "figures": [found.first, found.second],
        "first_measures_more_by": _figure(found.median),
        "interval": None if found.low is None or found.high is None else [_figure(found.low), _figure(found.high)],
        "p": _share(found.p),
        "count_as_measured": one.as_measured,
        "count_if_first_as_second": one.as_second,
        "count_if_second_as_first": one.as_first,
        "thinned": one.thinned,
    }


def _wanted(one: Wanted, public: Public) -> Data:
    none = None
    if one.none is not None:
        none = {"rule_of_three": _share(one.none[0]), "exact": _share(one.none[1])}
    return {
        "site": "all" if one.overall else public.site(one.site),
        "named": one.named,
        "judged": one.judged,
        "more": one.more,
        "none_so_below": none,
    }


def _candidates(one: Survey, public: Public) -> Data:
    found = one.candidates
    return {
        "known": [public.site(site) for site in found.around.sites],
        "by_names_given": found.by_names,
        "too_few_to_tell": [
            {"site": public.site(site), "named": named, "judged": judged} for site, named, judged in found.odd
        ],
        "found_by_the_others": [found.worth.hits, found.worth.tried],
        "searched_without": [public.site(site) for site in found.worth.absent],
        "searched_without_though_fitting": [public.site(site) for site in found.worth.absent_inside],
        "ranked": [
            {
                "site": public.site(each.site),
                "island": each.island,
                "worst": round(each.worst, 3),
                "best": round(each.best, 3),
                "lacks": list(each.lacks),
            }
            for each in found.ranked
        ],
    }
