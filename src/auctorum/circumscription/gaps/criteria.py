"""Working definitions whose decisive character rests on few works or few plants."""

from __future__ import annotations

from collections.abc import Iterator

from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.rank import missing
from auctorum.circumscription.gaps.words import listed, plants_at
from auctorum.circumscription.phrases import counted
from auctorum.circumscription.voices import voices
from auctorum.corpus.resolve import taxa_of_criterion
from auctorum.records.schema import Criterion

WORKS_WANTED = 3  # that state the decisive character for both taxa, of their own
PLANTS_WANTED = 20  # of each taxon, with the decisive character measured; both figures are judgements of ours


def criteria(ground: Ground) -> Iterator[Gap]:
    """Of each working definition a gap for works that are wanting, and one for plants of its taxa.

    Those whose taxon is none that works accept are left out.
    """
    for criterion in ground.corpus.criteria:
        taxa = taxa_of_criterion(ground.corpus, criterion)
        known = criterion.decisive.character in ground.corpus.vocabulary  # `check` names one that is not
        if known and taxa and any(ground.asks_taxon(taxon) for taxon in taxa):
            yield from _works(ground, criterion, taxa)
            yield from _plants(ground, criterion, taxa)


def _works(ground: Ground, criterion: Criterion, taxa: tuple[str, ...]) -> Iterator[Gap]:
    works = set.intersection(*(_stating(ground, criterion, taxon) for taxon in taxa))
    if len(works) >= WORKS_WANTED:
        return
    what = ground.label(criterion.decisive.character, criterion.decisive.stage)
    titles = listed(map(ground.title, taxa))
    number = WORKS_WANTED - len(works)
    of_all = "both" if len(taxa) > 1 else "it"
    yield Gap(
        GapKind.CRITERION,
        ground.rank(missing(len(works), WORKS_WANTED), taxa[0]),
        question=f"{criterion.title}: is the limit of {what} sound?",
        why=f"It decides between {titles}, and {counted(len(works), 'independent work')} give{'s' * (len(works) == 1)} "
        f"{what} of {of_all}.",
        todo=f"Look for {counted(number, 'more work')} that give{'s' * (number == 1)} {what} of {of_all}.",
        taxa=taxa,
        works=tuple(sorted(works)),
        characters=(criterion.decisive.character,),
        place=criterion.place,
    )


def _stating(ground: Ground, criterion: Criterion, taxon: str) -> set[str]:
    """The works that give the decisive character of the taxon, and repeat no other."""
    decisive = criterion.decisive
    character = ground.corpus.vocabulary[decisive.character]
    of_it = (one for one in ground.told(taxon) if (one.character, one.stage) == (decisive.character, decisive.stage))
    return {voice.work for one in of_it for voice in voices(one.evidence, character) if not voice.repeats}


def _plants(ground: Ground, criterion: Criterion, taxa: tuple[str, ...]) -> Iterator[Gap]:
    decisive = criterion.decisive
    seen = {id_: sum(plant.at(decisive.character, decisive.stage) is not None for plant in ground.plants(id_))
            for id_ in taxa}  # fmt: skip
    few = {taxon: number for taxon, number in seen.items() if number < PLANTS_WANTED}
    if not few:
        return
    what, plants = ground.label(decisive.character, decisive.stage), plants_at(decisive.stage)
    has = "; ".join(f"{counted(number, 'plant')} of {ground.title(taxon)}" for taxon, number in few.items())
    more = " and ".join(f"{PLANTS_WANTED - number} {plants} of {ground.title(taxon)}" for taxon, number in few.items())
    yield Gap(
        GapKind.CRITERION,
        max(ground.rank(missing(number, PLANTS_WANTED), taxon) for taxon, number in few.items()),
        question=f"{criterion.title}: do plants bear out the limit of {what}?",
        why=f"Measured for it: {has}. {PLANTS_WANTED} of each would show how many the limit misplaces.",
        todo=f"Measure the {ground.label(decisive.character)} of {more}, named by other characters; add them to "
        "specimens.csv.",
        taxa=tuple(few),
        characters=(decisive.character,),
        place=criterion.place,
        in_field=True,
    )
