"""The working criteria of a survey: each that concerns the taxon, or else the one that the records propose."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from auctorum.circumscription.plants import Plant
from auctorum.circumscription.wording import of_habitat
from auctorum.corpus.criteria import Limit, limit_of
from auctorum.corpus.model import Corpus
from auctorum.determination.criteria.proposal import propose
from auctorum.determination.criteria.spectrum import comparable
from auctorum.determination.many import Observed
from auctorum.determination.places.of_site import habitat_giver
from auctorum.determination.survey.bases import Judged, by_criterion, concerning
from auctorum.determination.survey.curve import Decisive, decisive
from auctorum.problems import AuctorumError
from auctorum.records.schema import Criterion


@dataclass(frozen=True, slots=True, eq=False)
class Rule:
    """A criterion tried on plants; `fitting` and `proposed` as in `survey.model.Curve`."""

    found: Decisive
    judged: Judged
    fitting: bool
    proposed: bool = False


def rules_of(
    corpus: Corpus, taxon: str, ids: Sequence[str] | None, plants: Sequence[Plant], observed: Observed
) -> tuple[list[Rule], list[str]]:
    """The criteria with those ids (None: all) that concern the taxon, tried, and in sentences what could not be."""
    rules, left_out = [], []
    for criterion, fitting in concerning(corpus, taxon):
        if ids is not None and criterion.id not in ids:
            continue
        try:
            limit = limit_of(criterion.decisive, corpus.vocabulary)
        except AuctorumError as error:
            left_out.append(f"The criterion `{criterion.id}` cannot be used: {error} ({error.remedy}).")
            continue
        rules.append(_rule(corpus, criterion, limit, _seen(corpus, limit, plants, observed), fitting=fitting))
    return rules, left_out


def proposed(corpus: Corpus, taxon: str, works: Sequence[str] | None, observed: Observed) -> Rule | None:
    """The criterion that the records propose, which counts nothing but makes a curve; None where they propose none."""
    try:
        made = propose(corpus, taxon, works=works)
    except AuctorumError:
        return None
    return _rule(corpus, made.criterion, made.limit, observed, fitting=True, by_proposal=True)


def _rule(
    corpus: Corpus, criterion: Criterion, limit: Limit, observed: Observed, *, fitting: bool, by_proposal: bool = False
) -> Rule:
    found = decisive(limit, observed, corpus.vocabulary)
    at = comparable(limit, corpus.vocabulary[limit.character])
    judged = by_criterion(criterion, at, found.values, found.errors, fitting=fitting)
    return Rule(found, judged, fitting, by_proposal)


def _seen(corpus: Corpus, limit: Limit, plants: Sequence[Plant], observed: Observed) -> Observed:
    """The observations, with the habitat of the sites where that decides."""
    if not of_habitat(corpus.vocabulary[limit.character]):
        return observed
    return Observed([*map(habitat_giver(corpus), plants)])
