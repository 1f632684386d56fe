"""What `auctorum determine` is asked, made ready: candidates, authors, criteria, and what is likely beforehand."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.asked import check_known, check_stage, own_plants, taxon
from auctorum.cli.common import check_works

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant
    from auctorum.corpus.model import Corpus
    from auctorum.determination.telling.beforehand import Beforehand
    from auctorum.determination.view import Statements, View
    from auctorum.records.schema import Criterion, Thresholds


@dataclass(frozen=True, slots=True)
class Options:
    """The words of the command line, as they were typed."""

    file: Path | None
    with_: tuple[str, ...]
    stage: str
    site: str | None
    habitat: bool
    sec: tuple[str, ...]
    among: tuple[str, ...]
    criteria: tuple[str, ...]
    own_plants: bool
    priors: tuple[str, ...]
    prior_from_plants: bool
    ask: bool
    evaluate: bool
    form: str | None
    out: Path | None
    as_json: bool


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

    def taken(self, plant: Plant) -> str:
        """What is taken to be of the stage asked for, and how to say otherwise; "" where nothing is."""
        from auctorum.determination.telling.grounds import staged

        told = staged(plant.observations, self.corpus, self.stage)
        return told and f"{told.removesuffix('.')} (--stage says otherwise)."

    def with_sites(self, several: tuple[Plant, ...]) -> tuple[Plant, ...]:
        """The plants, with the habitat of their sites where that was asked for."""
        from auctorum.determination.places.of_site import habitat_giver

        return tuple(map(habitat_giver(self.corpus), several)) if self.habitat else several


def check_options(said: Options, kb: Path) -> None:
    """Refuse options that say nothing together, as misuse (exit code 2)."""
    one_plant = bool(said.with_ or said.site or said.ask)
    if said.file is None and not (one_plant or said.evaluate):
        raise click.UsageError("say what was observed by --with 'CHARACTER=VALUE', or --ask, or give a FILE of plants")
    if said.evaluate and one_plant:
        raise click.UsageError(
            "--evaluate tries named plants: give a FILE of them, or nothing for the knowledge base's own"
        )
    if said.file is not None and one_plant:
        raise click.UsageError("give a FILE of plants, or one plant by --with, --site and --ask")
    if said.habitat and said.file is None and not said.evaluate:
        raise click.UsageError("--habitat is for the sites of a FILE; for one plant give --site")
    if (said.form or said.out) and (said.file is None or said.evaluate):
        raise click.UsageError("--format and --out are for the answers on a FILE of plants")
    if said.as_json and (said.form or said.out):
        raise click.UsageError("give --json, or --format and --out")
    if said.out is not None and said.form == "text":
        raise click.UsageError("--out writes CSV; leave --format away")
    if said.out is not None and said.file is not None and said.out.resolve() == said.file.resolve():
        raise click.BadParameter("the answers would take the place of the table itself", param_hint="--out")
    if said.out is not None and kb.resolve() in said.out.resolve().parents:
        raise click.BadParameter("the answers would stand among the records of the knowledge base", param_hint="--out")


def setting(corpus: Corpus, said: Options) -> Setting:
    """Everything looked up; raises UnknownName, NothingStated and so on, and BadParameter for misuse."""
    from auctorum.circumscription.plants import plants
    from auctorum.determination.telling.beforehand import of_plants
    from auctorum.determination.view import Statements, view_of

    if said.priors and said.prior_from_plants:
        raise click.UsageError("give --prior or --prior-from-plants, not both")
    check_works(corpus, said.sec)
    check_stage(corpus, said.stage)
    taxa = tuple(dict.fromkeys(taxon(corpus, one) for one in said.among))
    own = own_plants(corpus) if said.own_plants else ()
    statements = Statements(corpus)
    works = tuple(dict.fromkeys(said.sec)) or None
    view = view_of(statements, works=works, taxa=taxa, own=own)
    beforehand = of_plants(plants(corpus)) if said.prior_from_plants else _priors(corpus, said.priors, view)
    chosen = _criteria(corpus, said.criteria)
    return Setting(corpus, statements, view, said.stage, works, taxa, chosen, own, beforehand, said.habitat)


def _criteria(corpus: Corpus, asked: tuple[str, ...]) -> tuple[Criterion, ...]:
    known = {one.id: one for one in corpus.criteria}
    check_known("criterion", asked, sorted(known), "--criterion")
    return tuple(known[id_] for id_ in dict.fromkeys(asked)) if asked else tuple(corpus.criteria)


def _priors(corpus: Corpus, said: tuple[str, ...], view: View) -> Beforehand:
    from auctorum.determination.telling.beforehand import Beforehand

    found: dict[str, float] = {}
    for one in said:
        name, _, share = one.rpartition("=")
        meant = taxon(corpus, name.strip()) if name.strip() else ""
        if not meant:
            raise click.BadParameter(f"{one!r}: write TAXON=SHARE, such as 'Exemplum album=0.3'", param_hint="--prior")
        if meant not in view.taxa:
            several = "; ".join(view.names.values())
            raise click.BadParameter(f"{name.strip()} is no candidate here; there are: {several}", param_hint="--prior")
        found[meant] = _share(one, share)
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
