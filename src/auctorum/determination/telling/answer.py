"""All that is answered on one plant: under the view asked for, by each author, one's own plants, and the criteria."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from contextlib import suppress
from dataclasses import dataclass, replace

from auctorum.circumscription.plants import Plant, plants
from auctorum.circumscription.separation_names import full_name, short_names
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import called
from auctorum.determination.asking import Question, questions
from auctorum.determination.criteria.criterion import Judgement, judge
from auctorum.determination.determine import determine
from auctorum.determination.model import Determination
from auctorum.determination.places.of_site import with_habitat
from auctorum.determination.telling.authorities import Authority, Priors, agreement, authority, taxa_named
from auctorum.determination.telling.discreet import discreet, discreet_judgement, of_its_site
from auctorum.determination.telling.outcome_words import changes
from auctorum.determination.telling.reckoned import to_ask, with_ratios
from auctorum.determination.telling.words import Names
from auctorum.determination.view import NothingStated, Statements, View, title_of_view, view_of, views_by_work
from auctorum.problems import AuctorumError
from auctorum.records.schema import Criterion


@dataclass(frozen=True, slots=True)
class Answer:
    """`names` are short, `full` those of a headline. `beside` are other views of several authors, such as all of them.

    `asked` are the questions of which an answer may change the name, the most worth first. `unusable` are criteria that
    could not be tried, with why and what to do.
    """

    found: Determination
    names: Names
    full: Names
    spoken: Names  # those in the sentences on agreement, taxa of other views among them
    genus: str
    single: tuple[Authority, ...]
    beside: tuple[Authority, ...]
    judged: tuple[tuple[Criterion, Judgement], ...]
    unusable: tuple[tuple[str, str, str], ...]
    agreement: tuple[str, ...]
    asked: tuple[Question, ...]
    of_site: tuple[str, ...]  # characters that the site of the plant tells
    reckoned: tuple[str, ...]  # ratios that follow from two measures


def complete(corpus: Corpus, plant: Plant) -> Plant:
    """The plant with the habitat of its site, and the ratios that follow from two measures."""
    return _completed(corpus, plant)[0]


def _completed(corpus: Corpus, plant: Plant) -> tuple[Plant, tuple[str, ...], tuple[str, ...]]:
    """The plant as `complete` makes it, the characters that its site tells, and the ratios that follow."""
    placed = with_habitat(corpus, plant)
    whole = replace(placed, observations=with_ratios(corpus.vocabulary, placed.observations))
    return whole, _more(placed, plant), _more(whole, placed)


def answer(
    statements: Statements,
    view: View,
    plant: Plant,
    *,
    stage: str,
    taxa: Sequence[str],
    criteria: Sequence[Criterion],
    priors: Priors,
) -> Answer:
    """The plant under the view, and under every other; `taxa` narrow the candidates of these, too."""
    corpus = statements.corpus
    thresholds = corpus.settings.thresholds
    whole, of_site, reckoned = _completed(corpus, plant)

    def under(one: View) -> Determination:
        return determine(one, whole, priors=priors(one), thresholds=thresholds)

    found = under(view)
    main = authority(found, view)
    single = tuple(authority(under(one), one) for one in views_by_work(statements, taxa))
    beside = tuple(authority(under(one), one, full_names(corpus, one)) for one in _beside(statements, view, taxa))
    bands = of_its_site(corpus, plant)
    found = replace(found, unused=tuple(one for one in found.unused if one.character not in reckoned))
    judged, unusable = _judged(corpus, criteria, plant, bands)
    names = {**view.names, **short_names(corpus, taxa_named([main, *single, *beside]))}
    asked = questions(
        view, whole, stages=(stage,), priors=priors(view), thresholds=thresholds,
        without=to_ask(corpus.vocabulary, whole.observations),
    )  # fmt: skip
    return Answer(
        found=discreet(found, bands),
        names=view.names,
        full=full_names(corpus, view),
        spoken=names,
        genus=genus_of(corpus, view),
        single=single,
        beside=beside,
        judged=judged,
        unusable=unusable,
        agreement=agreement(main, single, judged, corpus, names),
        asked=changes(asked, found),
        of_site=of_site,
        reckoned=tuple(one.character for one in found.contributions if one.character in reckoned),
    )


def _beside(statements: Statements, view: View, taxa: Sequence[str]) -> tuple[View, ...]:
    """All authors, where others were asked for, and one's own plants by themselves."""
    named = [one for one in plants(statements.corpus) if one.taxon is not None]
    found = []
    for works, own in ((None, ()), ((), named)):
        if (works is None or own) and title_of_view(statements.corpus, works, bool(own)) != view.title:
            with suppress(NothingStated):
                found.append(view_of(statements, works=works, taxa=taxa, own=own))
    return tuple(found)


def _judged(
    corpus: Corpus, criteria: Sequence[Criterion], plant: Plant, bands: dict[str, str]
) -> tuple[tuple[tuple[Criterion, Judgement], ...], tuple[tuple[str, str, str], ...]]:
    found, unusable = [], []
    for criterion in criteria:
        try:
            judged = judge(corpus, criterion, plant)
        except AuctorumError as error:
            unusable.append((criterion.id, str(error), error.remedy))
            continue
        found.append((criterion, discreet_judgement(judged, criterion.decisive.character, bands)))
    return tuple(found), tuple(unusable)


def _more(whole: Plant, plant: Plant) -> tuple[str, ...]:
    """Characters observed of the whole and not of the plant."""
    own = {one.character for one in plant.observations}
    return tuple(one.character for one in whole.observations if one.character not in own)


def full_names(corpus: Corpus, view: View) -> Mapping[str, str]:
    """The name of each candidate in full; with its sense where two would be called alike."""
    if len(view.works) == 1 and view.title.startswith("sec."):
        return view.names
    found = {taxon: called(corpus, corpus.taxa[taxon].current) for taxon in view.taxa}
    alike = [name for name in found.values() if list(found.values()).count(name) > 1]
    return {taxon: full_name(corpus, taxon) if name in alike else name for taxon, name in found.items()}


def genus_of(corpus: Corpus, view: View) -> str:
    """The genus of all candidates; "" where they are of several."""
    genera = {corpus.names[corpus.taxa[taxon].current].name.genus for taxon in view.taxa}
    return genera.pop() if len(genera) == 1 else ""
