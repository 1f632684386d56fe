"""Every plant under every view: counted as the taxon, as something else, undecided, or not judged."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from auctorum.circumscription.phrases import listed
from auctorum.circumscription.plants import Plant
from auctorum.corpus.criteria import Limit
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import sides_of_criterion
from auctorum.determination.candidates import Opinions
from auctorum.determination.criteria.criterion import VERDICTS, Verdict, judge_values
from auctorum.determination.criteria.spectrum import chances
from auctorum.determination.criteria.words import title_of
from auctorum.determination.many import Observed, determined
from auctorum.determination.normal import Floats
from auctorum.determination.survey.model import Basis, Ground, Stance
from auctorum.determination.survey.taxa import Scope, scope_of, sunk_into
from auctorum.determination.view import NothingStated, Statements, View, view_of, views_by_work
from auctorum.determination.wording import codes
from auctorum.records.schema import Criterion, Thresholds

NOT_JUDGED, NAMED, OTHERS, UNDECIDED = range(4)
Said: TypeAlias = NDArray[np.int8]  # of each plant one of these
_COUNTS_FROM = 2  # in wording.IN_ORDER: cf. and the plain name

Progress: TypeAlias = Callable[[int, int], None]


@dataclass(frozen=True, slots=True, eq=False)
class Judged:
    """What one view says of each plant. `chances` are those of truly fitting, None but under a criterion."""

    basis: Basis
    said: Said
    chances: Floats | None = None


def by_names(plants: Sequence[Plant], scope: Scope) -> Judged:
    """By the names that observers gave."""
    said = np.full(len(plants), NOT_JUDGED, dtype=np.int8)
    for place, plant in enumerate(plants):
        if plant.taxon in scope.counts:
            said[place] = NAMED
        elif plant.taxon is not None and plant.taxon not in scope.wholes:
            said[place] = OTHERS
        elif plant.taxon is not None or plant.identified_by or plant.name is not None:
            said[place] = UNDECIDED
    return Judged(Basis(Ground.NAMES, str(Ground.NAMES), "names that observers gave"), said)


def by_criterion(criterion: Criterion, limit: Limit, values: Floats, errors: Floats, *, fitting: bool) -> Judged:
    """By a working criterion; `fitting`: the plants that fit are counted, else those that do not.

    `values` and `errors` as `judge_values` takes them. The chance is that of a true value anywhere within the error.
    """
    verdicts = judge_values(limit, values, errors)
    told = {Verdict.FITS: NAMED, Verdict.DOES_NOT_FIT: OTHERS, Verdict.BORDERLINE: UNDECIDED}
    if not fitting:
        told |= {Verdict.FITS: OTHERS, Verdict.DOES_NOT_FIT: NAMED}
    table = np.array([told.get(verdict, NOT_JUDGED) for verdict in VERDICTS], dtype=np.int8)
    said = table[verdicts]
    margin = values - float(limit.value) if limit.at_least else float(limit.value) - values
    fits = chances(margin, errors)
    share = np.where(said == UNDECIDED, fits if fitting else 1 - fits, (said == NAMED).astype(float))
    return Judged(Basis(Ground.CRITERION, criterion.id, title_of(criterion)), said, share)


@dataclass(frozen=True, slots=True, eq=False)
class Asked:
    """What views are made of and tried on: `held` are the opinions of all works, `own` named plants to be trusted."""

    statements: Statements
    held: Opinions
    taxon: str
    observed: Observed
    thresholds: Thresholds
    works: Sequence[str]  # the authors to be shown, by date
    own: Sequence[Plant] = ()


def by_all(asked: Asked) -> Iterator[Judged]:
    """Under all authors together; nothing where they state nothing, or where the taxon is no candidate.

    With own plants there is one view more, that of the plants alone.
    """
    every = len(asked.works) == len(asked.statements.corpus.works)
    among = scope_of(asked.held, asked.taxon).counts
    for ground, works, own, title in (
        (Ground.ALL, None if every else tuple(asked.works), (), "all authors" if every else "those authors together"),
        (Ground.OWN, (), tuple(asked.own), "own named plants"),
    ):
        if ground is Ground.OWN and not own:
            continue
        try:
            view = view_of(asked.statements, works=works, own=own)
        except NothingStated:
            continue
        if not among.isdisjoint(view.taxa):
            remark = _LEARNT if not asked.observed.ids.isdisjoint(one.id for one in own) else ""
            yield _judged(asked, view, among, Basis(ground, str(ground), title, remark=remark))


_LEARNT = "learnt from these very plants, so it finds them again too easily"


def by_authors(asked: Asked, progress: Progress | None = None) -> Iterator[Judged]:
    """Under each author that describes, accepts or sinks the taxon, by date."""
    corpus = asked.statements.corpus
    scopes = {work: scope_of(asked.held, asked.taxon, work) for work in asked.works}
    telling = [work for work, scope in scopes.items() if not scope.counts.isdisjoint(asked.held.accepted.get(work, ()))]
    views = {view.works[0]: view for view in views_by_work(asked.statements, works=telling) if view.works}
    sunk = sunk_into(corpus, asked.held, asked.taxon)
    for number, work in enumerate(asked.works):
        scope, title = scopes[work], corpus.works[work].byline
        view = views.get(work)
        if view is not None and not scope.counts.isdisjoint(view.taxa):
            alone = len(scope.counts.union(view.taxa)) == len(scope.counts)
            remark = "describes no other taxon: what lies within its words counts" if alone else ""
            stance = Stance.ALONE if alone else Stance.TELLS
            yield _judged(asked, view, scope.counts, Basis(Ground.AUTHOR, work, title, stance, remark))
        elif work in telling:
            said = np.full(asked.observed.number, NOT_JUDGED, dtype=np.int8)
            remark = "accepts it, and states nothing by which plants could be counted"
            yield Judged(Basis(Ground.AUTHOR, work, title, Stance.BARE, remark), said)
        elif work in sunk:
            said = np.full(asked.observed.number, OTHERS, dtype=np.int8)
            remark = f"sinks it in {listed(sunk[work])}" if sunk[work] else "sinks it"
            yield Judged(Basis(Ground.AUTHOR, work, title, Stance.SINKS, remark), said)
        if progress is not None:
            progress(number + 1, len(asked.works))


def _judged(asked: Asked, view: View, counts: frozenset[str], basis: Basis) -> Judged:
    """Every plant determined under the view. Where the taxon stands there as several parts, their chances are summed.

    A view of nothing but the taxon gives it every plant, so there misfits alone decide: one is enough against it.
    """
    said = np.full(asked.observed.number, NOT_JUDGED, dtype=np.int8)
    columns = asked.observed.columns(view)
    if not columns or not asked.observed.number:
        return Judged(basis, said)
    found = determined(view, columns, thresholds=asked.thresholds)
    inside = np.array([taxon in counts for taxon in view.taxa])
    is_it, wordings = inside[found.best], found.wordings
    if inside.all():
        is_it, wordings = found.misfits == 0, np.full(len(said), _COUNTS_FROM)
    elif inside.sum() > 1:
        summed = codes(found.probabilities[:, inside].sum(axis=1), found.misfits, asked.thresholds)
        wordings = np.where(is_it, summed, wordings)
    said[:] = np.where(wordings < _COUNTS_FROM, UNDECIDED, np.where(is_it, NAMED, OTHERS))
    said[found.used == 0] = NOT_JUDGED
    return Judged(basis, said)


def concerning(corpus: Corpus, taxon: str) -> tuple[tuple[Criterion, bool], ...]:
    """The criteria that decide about the taxon, and whether a plant that fits is one; first those where it is."""
    found = []
    for criterion in corpus.criteria:
        fits, otherwise = sides_of_criterion(corpus, criterion)
        if taxon in (fits, otherwise):
            found.append((criterion, fits == taxon))
    return tuple(sorted(found, key=lambda one: not one[1]))
