"""Whether --taxon is the plain name of a taxon, and one that the knowledge base knows."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import click

from auctorum.corpus.link import link
from auctorum.corpus.model import Corpus
from auctorum.corpus.resolve import AmbiguousName, MoreThanAName, UnknownName, lookup, name_alone
from auctorum.names.format import format_name
from auctorum.names.name import Name, UnreadableName
from auctorum.problems import AuctorumError
from auctorum.records.read import read


def check_taxon(taxon: str, kb: Path) -> None:
    """Misuse where words are no plain name of a taxon; one that the knowledge base does not know is told of."""
    if not taxon:
        return
    try:
        name = name_alone(taxon)
    except (UnreadableName, MoreThanAName) as error:
        raise _misuse(f"{error} ({error.remedy})") from None
    if name.genus.endswith("."):
        raise _misuse(f"the genus of `{taxon}` is abbreviated; write it in full")
    corpus, near = link(read(kb)[0])[0], tuple[str, ...]()
    try:
        known: Name | None = corpus.names[lookup(corpus, taxon)].name
    except AmbiguousName as error:  # the work itself may tell which is meant
        click.echo(f"{error} ({error.remedy})", err=True)
        return
    except UnknownName as error:
        known = None
        _check_authors(corpus, taxon, name, error.near)
        near = error.near
    if _is_hybrid(name) and not (known and _is_hybrid(known)):
        plain = format_name(_plain(name))
        why = f"`{taxon}` is the name of a hybrid, and the knowledge base knows no hybrid of that name"
        raise _misuse(f"{why} (write `{plain}` if that is meant; a hybrid needs the act that published it first)")
    if known is None:
        told = f"; nearest: {', '.join(near)}" if near else ""
        click.echo(f"`{taxon}` is no name of the knowledge base yet, and was taken as it stands{told}", err=True)


def _check_authors(corpus: Corpus, taxon: str, name: Name, near: tuple[str, ...]) -> None:
    """Misuse where the name is known, but not with the authors given; `near` is the name with its own."""
    bare = format_name(name.bare)
    if name.authors and _knows(corpus, bare):
        raise _misuse(f"`{taxon}` has other authors in the knowledge base (write `{bare}`, or {' or '.join(near)})")


def _misuse(why: str) -> click.BadParameter:
    return click.BadParameter(why, param_hint="--taxon")


def _knows(corpus: Corpus, said: str) -> bool:
    try:
        lookup(corpus, said)
    except AmbiguousName:
        return True
    except AuctorumError:
        return False
    return True


def _is_hybrid(name: Name) -> bool:
    return name.genus_hybrid or name.species_hybrid or any(one.hybrid for one in name.lower)


def _plain(name: Name) -> Name:
    """The name without signs of hybrids."""
    lower = tuple(replace(one, hybrid=False) for one in name.lower)
    return replace(name, genus_hybrid=False, species_hybrid=False, lower=lower)
