"""How many plants of a taxon there are: at each site and in all, under one's own definition and everybody else's."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from auctorum.characters.vocabulary import Kind
from auctorum.circumscription.plants import Plant
from auctorum.circumscription.separation_names import full_name, short_names
from auctorum.corpus.model import Corpus
from auctorum.determination.many import Observed
from auctorum.determination.places.habitat import in_cultivation
from auctorum.determination.survey.bases import Asked, Judged, Progress, by_all, by_authors, by_names
from auctorum.determination.survey.curve import curve_of, readings_of
from auctorum.determination.survey.measurers import confounded, measurers
from auctorum.determination.survey.model import NO_SITE, Candidates, Curve, Ground, Measurers, Survey
from auctorum.determination.survey.places import candidates, places, rows_by_site, wanted
from auctorum.determination.survey.rules import Rule, proposed, rules_of
from auctorum.determination.survey.taxa import Scope, scope_of
from auctorum.determination.view import Statements

HALF_WIDTH = 0.1  # of a wanted interval, unless something else is asked for


def survey(
    corpus: Corpus,
    statements: Statements,
    taxon: str,
    plants: Sequence[Plant],
    *,
    works: Sequence[str] | None = None,
    criteria: Sequence[str] | None = None,
    own: Sequence[Plant] = (),
    sites: Sequence[str] | None = None,
    half_width: float = HALF_WIDTH,
    exactly: bool = False,
    progress: Progress | None = None,
) -> Survey:
    """The plants counted under every view: see `survey.model` for when one counts.

    `works` are the authors that count (None: all), `criteria` ids (None: all that concern the taxon), `own` named
    plants that are one view more, `sites` those whose plants count (None: all). Candidate sites stand beside places and
    elevations generalised, or with `exactly` as recorded: for a result that stays on this machine. Neither the order of
    the plants nor the unit that they were measured in changes anything. Plants are judged by what they show themselves,
    not by the habitat of their site, unless a criterion decides by that. Raises KeyError for an unknown taxon.
    """
    chosen = [one for one in plants if sites is None or (one.site or NO_SITE) in sites]
    wild = tuple(one for one in chosen if not in_cultivation(one))
    authors = tuple(work for work in corpus.works if works is None or work in works)
    asked = Asked(
        statements, statements.opinions, taxon, Observed(wild), corpus.settings.thresholds, authors, tuple(own)
    )
    rules, left_out = rules_of(corpus, taxon, criteria, wild, asked.observed)
    views = _views(asked, wild, rules, progress)
    ruling = rules[0] if rules else proposed(corpus, taxon, works, asked.observed)
    main = next((number for number, one in enumerate(views) if one.basis.ground in _DECIDING), 0)
    found = ruling.found if ruling is not None else None
    whole, at_sites = places(corpus, views, rows_by_site(corpus, wild), len(wild), found)
    return Survey(
        taxon=taxon,
        name=full_name(corpus, taxon),
        names=_names(corpus, taxon, wild),
        plants=len(wild),
        cultivated=len(chosen) - len(wild),
        bases=tuple(one.basis for one in views),
        main=main,
        whole=whole,
        sites=at_sites,
        silent=_silent(corpus, authors, views),
        curve=None if ruling is None else _curve(statements, ruling, taxon, authors),
        readings=() if found is None else readings_of(found, wild),
        measurers=() if ruling is None else _measurers(corpus, ruling, wild),
        confounded=found is not None and confounded(found),
        half_width=half_width,
        wanted=tuple(wanted(whole, at_sites, main, half_width)),
        candidates=_candidates(corpus, plants, scope_of(asked.held, taxon), (wild, views[main]), exactly=exactly),
        left_out=(*left_out, *_without_all(views)),
    )


_DECIDING = (Ground.CRITERION, Ground.ALL)  # the views that decide what is wanted, the first that there is


def _views(asked: Asked, wild: Sequence[Plant], rules: Sequence[Rule], progress: Progress | None) -> list[Judged]:
    """By names, by each criterion, by all authors, by each of them, in this order."""
    named = by_names(wild, scope_of(asked.held, asked.taxon))
    return [named, *(rule.judged for rule in rules), *by_all(asked), *by_authors(asked, progress)]


def _candidates(
    corpus: Corpus, plants: Sequence[Plant], scope: Scope, surveyed: tuple[Sequence[Plant], Judged], *, exactly: bool
) -> Candidates:
    """By the names given to all wild plants, of whichever site; where no plant was, by the main view of `surveyed`."""
    wild = [one for one in plants if not in_cultivation(one)]
    if any(one.taxon in scope.counts and one.site in corpus.sites for one in wild):
        return candidates(corpus, wild, by_names(wild, scope), exactly=exactly)
    return candidates(corpus, *surveyed, exactly=exactly)


def _without_all(views: Sequence[Judged]) -> Iterator[str]:
    if not any(one.basis.ground is Ground.ALL for one in views):
        yield "All authors together count none: more of them sink the taxon than keep it, or none describes it."


def _curve(statements: Statements, rule: Rule, taxon: str, works: Sequence[str]) -> Curve:
    return curve_of(statements, rule.found, taxon, works, fitting=rule.fitting, proposed=rule.proposed)


def _measurers(corpus: Corpus, rule: Rule, plants: Sequence[Plant]) -> tuple[Measurers, ...]:
    """Who measures otherwise; states on a spectrum have no amount by which one is above the other."""
    if corpus.vocabulary[rule.found.limit.character].kind is Kind.ORDERED:
        return ()
    return measurers(rule.found, rule.found.limit, plants, fitting=rule.fitting)


def _names(corpus: Corpus, taxon: str, plants: Sequence[Plant]) -> tuple[tuple[str, str], ...]:
    """Short names of the taxon and of all that observers named, in the order of the corpus."""
    given = {taxon, *(plant.taxon for plant in plants if plant.taxon is not None)}
    return tuple(short_names(corpus, [one for one in corpus.taxa if one in given]).items())


def _silent(corpus: Corpus, works: Sequence[str], views: Sequence[Judged]) -> tuple[str, ...]:
    heard = {one.basis.id for one in views if one.basis.ground is Ground.AUTHOR}
    return tuple(corpus.works[work].byline for work in works if work not in heard)
