"""What `auctorum survey` is asked, looked up: the taxon, the plants, and whether sites and criteria are known."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.asked import check_known, check_stage, own_plants, taxon
from auctorum.problems import AuctorumError

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant
    from auctorum.corpus.model import Corpus

_MOST = 10  # sites or criteria that are listed


@dataclass(frozen=True, slots=True)
class Options:
    """The words of the command line, as they were typed."""

    taxon: str | None
    file: Path | None
    stage: str
    sites: tuple[str, ...]
    sec: tuple[str, ...]
    criteria: tuple[str, ...]
    own_plants: bool
    within: float
    sections: tuple[str, ...]
    form: str
    as_json: bool

    @property
    def text(self) -> bool:
        """Whether the result is for reading."""
        return self.form == "text" and not self.as_json


def check_options(said: Options) -> None:
    """Refuse options that say nothing together, as misuse (exit code 2)."""
    if said.as_json and said.form == "csv":
        raise click.UsageError("give --json or --format csv, not both")
    if said.sections and not said.text:
        raise click.UsageError("--section is for the text; --json and --format csv give the whole")
    if math.isnan(said.within):
        raise click.BadParameter("a share is a number", param_hint="--within")


def taxon_asked(corpus: Corpus, said: str | None) -> str:
    """Id of the taxon; without words the first focal one that plants can be, else the first that anybody keeps."""
    from auctorum.corpus.resolve import find_taxon
    from auctorum.determination.candidates import candidates, opinions

    if said is not None:
        return taxon(corpus, said)
    focal = []
    for name in corpus.focal:
        try:
            focal.append(find_taxon(corpus, name).id)
        except AuctorumError:
            continue  # nobody keeps it
    if not focal:
        raise click.UsageError("kb.yaml names no focal taxon that anybody keeps: say which TAXON to count")
    possible = candidates(corpus, opinions(corpus))
    return next((one for one in focal if one in possible), focal[0])


def check_asked(corpus: Corpus, meant: str, criteria: Sequence[str], stage: str) -> None:
    """Refuse criteria that are not known, or do not concern the taxon, and unknown stages, as misuse (exit code 2)."""
    from auctorum.determination.survey.bases import concerning

    known = [one.id for one in corpus.criteria]
    usable = [one.id for one, _ in concerning(corpus, meant)]
    for id_ in criteria:
        check_known("criterion", (id_,), known, "--criterion", most=_MOST)
        if id_ not in usable:
            raise click.BadParameter(f"the criterion {id_!r} does not concern this taxon", param_hint="--criterion")
    check_stage(corpus, stage)


def check_sites(corpus: Corpus, sites: Sequence[str], plants: Sequence[Plant]) -> None:
    """Refuse ids that are neither sites of the knowledge base nor of any of the plants, as misuse."""
    known = {**dict.fromkeys(corpus.sites), **dict.fromkeys(plant.site for plant in plants if plant.site)}
    check_known("site", sites, known, "--site", most=_MOST)


def plants_asked(corpus: Corpus, said: Options) -> tuple[Sequence[Plant], Sequence[Plant], bool]:
    """The plants to count, those to be trusted as one more view, and whether a cell of FILE could not be used."""
    from auctorum.circumscription.plants import plants
    from auctorum.cli.determine_table import Teller, plants_of_table

    own = own_plants(corpus) if said.own_plants else ()
    if said.file is None:
        return plants(corpus), own, False
    teller = Teller()
    several = plants_of_table(corpus, said.file, said.stage, teller)
    teller.end()
    return several, own, teller.errors > 0
