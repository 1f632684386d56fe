"""What the figures of a determination rest on, in sentences, and the cautions that go with them."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from auctorum.circumscription.phrases import capital, counted, listed
from auctorum.circumscription.plants import Observation
from auctorum.corpus.cautions import OPINION, cautions_of, first_sentence
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import called
from auctorum.determination.tables import FLOOR, FLOOR_OF_STATES
from auctorum.determination.telling.beforehand import Beforehand
from auctorum.determination.telling.words import percent
from auctorum.determination.view import View

INDEPENDENT = (
    "Characters are taken as independent within a taxon. A plant that is big is big in all its parts, so several "
    "measures of one organ make a name surer than it is."
)
ONE_OF_THEM = "The plant is taken to be one of the candidates. It may be none of them, a hybrid, or a cultivated plant."


def grounds(
    corpus: Corpus, view: View, beforehand: Beforehand, *, among: bool, of_site: Sequence[str], reckoned: Sequence[str]
) -> Iterator[str]:
    """The candidates, whose statements, what was likely beforehand, and what is taken for granted."""
    chosen = "those asked for" if among else "the taxa that they accept, none inside another"
    yield f"{capital(view.title)}: {counted(len(view.taxa), 'candidate')}, {chosen}. {_left_out(corpus, view)}".strip()
    yield _beforehand(view, beforehand)
    yield INDEPENDENT
    yield (
        f"No single figure shuts a taxon out: {FLOOR * 100:.0f} % of its plants may show any figure, "
        f"{FLOOR_OF_STATES * 100:.0f} % any state."
    )
    if reckoned:
        yield f"Reckoned from two measures, and so no evidence of its own: {listed(reckoned)}."
    if of_site:
        yield f"Told by the site: {listed(of_site)}."
    yield ONE_OF_THEM


def _left_out(corpus: Corpus, view: View) -> str:
    if not view.left_out:
        return ""
    from_names = [called(corpus, corpus.taxa[taxon].current) for taxon in view.left_out]
    return f"Nothing is stated of {listed(from_names)}, which {'is' if len(from_names) == 1 else 'are'} left out."


def _beforehand(view: View, beforehand: Beforehand) -> str:
    weights = beforehand.of(view)
    if weights is None:
        return "Before the plant was looked at, all candidates were as likely."
    whole = sum(weights.values())
    several = sorted(weights.items(), key=lambda one: -one[1])[:3]
    told = ", ".join(f"{view.names[taxon]} {percent(weight / whole)}" for taxon, weight in several)
    more = ", ..." if len(weights) > len(several) else ""
    counted_ = "by the named plants of the knowledge base, one added to each"
    source = counted_ if beforehand.counted is not None else "as told"
    return f"Before the plant was looked at, {source}: {told}{more}."


def staged(several: Sequence[Observation], corpus: Corpus, stage: str) -> str:
    """What is taken to be of that stage without having been said; "" where no character changes with age."""
    split = [one.character for one in several if corpus.vocabulary[one.character].stages and one.stage == stage]
    if not split:
        return ""
    return f"Taken as that of a {stage} plant: {listed(dict.fromkeys(split))}."


def cautions(corpus: Corpus) -> tuple[str, ...]:
    """The first sentence of each caution, after that on determinations."""
    return (OPINION, *map(first_sentence, cautions_of(corpus)))
