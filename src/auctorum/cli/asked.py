"""What users name on the command line, looked up; what is not known is misuse, answered with the nearest."""

from __future__ import annotations

from collections.abc import Collection, Iterable
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import find_name

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant
    from auctorum.corpus.model import Corpus

_ALWAYS = ("young", "mature", "old")  # stages that may be told of any plant


def taxon(corpus: Corpus, said: str) -> str:
    """Id of the taxon that the words mean; raises UnknownName, AmbiguousName or NeverAccepted."""
    from auctorum.corpus.resolve import find_taxon

    return find_taxon(corpus, find_name(corpus, said).id).id


def check_known(
    what: str, said: Iterable[str], known: Collection[str], option: str, *, where: str = "", most: int | None = None
) -> None:
    """Refuse words that are none of those known; where none of these is near, so many of them are listed at most."""
    for one in said:
        if one not in known:
            raise click.BadParameter(f"no {what} {one!r}{where}{near(one, known, most)}", param_hint=option)


def check_stage(corpus: Corpus, stage: str) -> None:
    """Refuse a growth stage that no character has."""
    known = {*_ALWAYS}.union(*(character.stages for character in corpus.vocabulary.values()))
    check_known("stage", (stage,), sorted(known), "--stage")


def near(said: str, known: Collection[str], most: int | None = None) -> str:
    """`; nearest: ...`; else what there is, in the order given, so many at most."""
    from auctorum.names.nearest import nearest

    found = nearest(said, known)
    return f"; nearest: {', '.join(found)}" if found else f"; there are: {', '.join(list(known)[:most]) or 'none'}"


def own_plants(corpus: Corpus) -> tuple[Plant, ...]:
    """The plants of the knowledge base that bear the name of a taxon; refused where there is none."""
    from auctorum.circumscription.plants import plants

    own = tuple(one for one in plants(corpus) if one.taxon is not None)
    if not own:
        raise click.BadParameter("the knowledge base has no plant that was given a name", param_hint="--own-plants")
    return own
