"""What `auctorum determine` is asked, made ready: candidates, authors, criteria, and what is likely beforehand."""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import check_works, find_name

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant
    from auctorum.corpus.model import Corpus
    from auctorum.determination.telling.beforehand import Beforehand
    from auctorum.determination.view import Statements, View
    from auctorum.records.schema import Criterion, Thresholds


@dataclass(frozen=True, slots=True, eq=False)
class Setting:
    """One knowledge base as it is asked; `works` is None for all of them, `own` are trusted plants."""

    corpus: Corpus
    statements: Statements
    view: View
    stage: str
    works: tuple[str, ...] | None
    taxa: tuple[str, ...]
    criteria: tuple[Criterion, ...]
    own: tuple[Plant, ...]
    beforehand: Beforehand
    habitat: bool = False  # whether the sites of a table's plants tell their habitat

    @property
    def thresholds(self) -> Thresholds:
        """When a name is given with cf., aff. or not at all."""
        return self.corpus.settings.thresholds

    @property
    def priors(self) -> Mapping[str, float] | None:
        """What the candidates of the view are given beforehand."""
        return self.beforehand.of(self.view)


def check_options(
    *,
    file: Path | None,
    with_: tuple[str, ...],
    site: str | None,
    habitat: bool,
    ask: bool,
    evaluate: bool,
    form: str | None,
    out: Path | None,
    as_json: bool,
) -> None:
    """Refuse options that say nothing together, as misuse (exit code 2)."""
    if file is None and not (with_ or ask or evaluate or site):
        raise click.UsageError("say what was observed by --with 'CHARACTER=VALUE', or --ask, or give a FILE of plants")
    if evaluate and (with_ or site or ask):
        raise click.UsageError(
            "--evaluate tries named plants: give a FILE of them, or nothing for the knowledge base's own"
        )
    if file is not None and (with_ or site or ask):
        raise click.UsageError("give a FILE of plants, or one plant by --with, --site and --ask")
    if habitat and file is None and not evaluate:
        raise click.UsageError("--habitat is for the sites of a FILE; for one plant give --site")
    if (form or out) and (file is None or evaluate):
        raise click.UsageError("--format and --out are for the answers on a FILE of plants")
    if as_json and (form or out):
        raise click.UsageError("give --json, or --format and --out")
    if out is not None and form == "text":
        raise click.UsageError("--out writes CSV; leave --format away")


def setting(
    corpus: Corpus,
    *,
    stage: str,
    sec: tuple[str, ...],
    among: tuple[str, ...],
    criteria: tuple[str, ...],
    own_plants: bool,
    priors: tuple[str, ...],
    prior_from_plants: bool,
    habitat: bool,
) -> Setting:
    """Everything looked up; raises UnknownName, NothingStated and so on, and BadParameter for misuse."""
    from auctorum.circumscription.plants import plants
    from auctorum.determination.telling.beforehand import of_plants
    from auctorum.determination.view import Statements, view_of

    if priors and prior_from_plants:
        raise click.UsageError("give --prior or --prior-from-plants, not both")
    check_works(corpus, sec)
    _check_stage(corpus, stage)
    taxa = tuple(dict.fromkeys(_taxon(corpus, said) for said in among))
    own = tuple(one for one in plants(corpus) if one.taxon is not None) if own_plants else ()
    if own_plants and not own:
        raise click.BadParameter("the knowledge base has no plant that was given a name", param_hint="--own-plants")
    statements = Statements(corpus)
    works = tuple(dict.fromkeys(sec)) or None
    view = view_of(statements, works=works, taxa=taxa, own=own)
    beforehand = of_plants(plants(corpus)) if prior_from_plants else _priors(corpus, priors, view)
    chosen = _criteria(corpus, criteria)
    return Setting(corpus, statements, view, stage, works, taxa, chosen, own, beforehand, habitat)


def _taxon(corpus: Corpus, said: str) -> str:
    from auctorum.corpus.resolve import find_taxon

    return find_taxon(corpus, find_name(corpus, said).id).id


def _check_stage(corpus: Corpus, stage: str) -> None:
    known = {one for character in corpus.vocabulary.values() for one in character.stages} | {"young", "mature", "old"}
    if stage not in known:
        raise click.BadParameter(f"no stage {stage!r}{_near(stage, known)}", param_hint="--stage")


def _near(said: str, known: Collection[str]) -> str:
    from auctorum.names.nearest import nearest

    near = nearest(said, known)
    return f"; nearest: {', '.join(near)}" if near else f"; there are: {', '.join(sorted(known)) or 'none'}"


def _criteria(corpus: Corpus, asked: tuple[str, ...]) -> tuple[Criterion, ...]:
    known = {one.id: one for one in corpus.criteria}
    for id_ in asked:
        if id_ not in known:
            raise click.BadParameter(f"no criterion {id_!r}{_near(id_, known)}", param_hint="--criterion")
    return tuple(known[id_] for id_ in dict.fromkeys(asked)) if asked else tuple(corpus.criteria)


def _priors(corpus: Corpus, said: tuple[str, ...], view: View) -> Beforehand:
    from auctorum.determination.telling.beforehand import Beforehand

    found: dict[str, float] = {}
    for one in said:
        name, _, share = one.rpartition("=")
        taxon = _taxon(corpus, name.strip()) if name.strip() else ""
        if not taxon:
            raise click.BadParameter(f"{one!r}: write TAXON=SHARE, such as 'Exemplum album=0.3'", param_hint="--prior")
        if taxon not in view.taxa:
            several = "; ".join(view.names.values())
            raise click.BadParameter(f"{name.strip()} is no candidate here; there are: {several}", param_hint="--prior")
        found[taxon] = _share(one, share)
    if sum(found.values()) > 1 + 1e-9:
        raise click.BadParameter("the shares come to more than 1", param_hint="--prior")
    if found and not any(found.values()) and len(found) == len(view.taxa):
        raise click.BadParameter("no candidate is left with any share", param_hint="--prior")
    return Beforehand(tuple(found.items()))


def _share(said: str, share: str) -> float:
    words = share.strip().replace(",", ".")
    try:
        found = float(words.removesuffix("%")) / (100 if words.endswith("%") else 1)
    except ValueError:
        found = -1.0
    if not 0 <= found <= 1:
        raise click.BadParameter(f"{said!r}: a share lies from 0 to 1, or 0 % to 100 %", param_hint="--prior")
    return found


def check_site(corpus: Corpus, site: str) -> None:
    """Refuse an id that is no site, with the nearest, as misuse."""
    if site not in corpus.sites:
        raise click.BadParameter(f"no site {site!r} in sites.csv{_near(site, corpus.sites)}", param_hint="--site")
