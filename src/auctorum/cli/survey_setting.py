"""What `auctorum survey` is asked, looked up: the taxon, the plants, and whether sites and criteria are known."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import fields, replace
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import find_name
from auctorum.problems import AuctorumError

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant
    from auctorum.corpus.model import Corpus, Specimen


def taxon_asked(corpus: Corpus, said: str | None) -> str:
    """Id of the taxon; without words the first focal one that plants can be, else the first that anybody keeps."""
    from auctorum.corpus.resolve import find_taxon
    from auctorum.determination.candidates import candidates, opinions

    if said is not None:
        return find_taxon(corpus, find_name(corpus, said).id).id
    focal = []
    for name in corpus.focal:
        try:
            focal.append(find_taxon(corpus, name).id)
        except AuctorumError:
            continue  # nobody keeps it
    if not focal:
        raise click.UsageError("kb.yaml names no focal taxon that anybody keeps: say which TAXON to count")
    possible = candidates(corpus, opinions(corpus))
    return next((taxon for taxon in focal if taxon in possible), focal[0])


def check_asked(corpus: Corpus, taxon: str, criteria: Sequence[str], stage: str) -> None:
    """Refuse criteria that are not known, or do not concern the taxon, and unknown stages, as misuse (exit code 2)."""
    from auctorum.determination.survey.bases import concerning

    known = [one.id for one in corpus.criteria]
    usable = [one.id for one, _ in concerning(corpus, taxon)]
    for id_ in criteria:
        if id_ not in known:
            raise click.BadParameter(f"no criterion {id_!r}{near(id_, known)}", param_hint="--criterion")
        if id_ not in usable:
            raise click.BadParameter(f"the criterion {id_!r} does not concern this taxon", param_hint="--criterion")
    stages = {"young", "mature", "old"}.union(*(character.stages for character in corpus.vocabulary.values()))
    if stage not in stages:
        raise click.BadParameter(f"no stage {stage!r}{near(stage, sorted(stages))}", param_hint="--stage")


def check_sites(corpus: Corpus, sites: Sequence[str], plants: Sequence[Plant]) -> None:
    """Refuse ids that are neither sites of the knowledge base nor of any of the plants, as misuse."""
    known = {**dict.fromkeys(corpus.sites), **dict.fromkeys(plant.site for plant in plants if plant.site)}
    for site in sites:
        if site not in known:
            raise click.BadParameter(f"no site {site!r}{near(site, known)}", param_hint="--site")


def near(said: str, known: Collection[str]) -> str:
    """`; nearest: ...`; else what there is."""
    from auctorum.names.nearest import nearest

    found = nearest(said, known)
    return f"; nearest: {', '.join(found)}" if found else f"; there are: {', '.join(list(known)[:10]) or 'none'}"


def plants_asked(
    corpus: Corpus, file: Path | None, stage: str, *, own_plants: bool
) -> tuple[Sequence[Plant], Sequence[Plant], bool]:
    """The plants to count, those to be trusted as one more view, and whether a cell of FILE could not be used."""
    from auctorum.circumscription.plants import plants

    of_base = plants(corpus) if file is None or own_plants else ()
    own = [one for one in of_base if one.taxon is not None] if own_plants else []
    if own_plants and not own:
        raise click.BadParameter("the knowledge base has no plant that was given a name", param_hint="--own-plants")
    if file is None:
        return of_base, own, False
    several, faults = plants_of_file(corpus, file, stage)
    return several, own, faults


def plants_of_file(corpus: Corpus, path: Path, stage: str) -> tuple[Sequence[Plant], bool]:
    """The plants of a table, wide or long; every problem is told on standard error, errors make the flag true."""
    from auctorum.circumscription.plants import plants_in
    from auctorum.cli.determine_table import Teller
    from auctorum.corpus.field_rows import linked_rows
    from auctorum.records.field_tables import read_plants_text
    from auctorum.records.read import read_table, shown

    teller = Teller()
    text, problems = read_table(path)
    teller.tell(problems)
    found: Sequence[Plant] = ()
    if text is not None:
        table, problems = read_plants_text(text, shown(path), tuple(corpus.vocabulary))
        teller.tell(problems)
        rows, problems = linked_rows(table.specimens, table.measurements, corpus)
        teller.tell(problems)
        found = plants_in([row if row.record.lifeStage else _at(stage, row) for row in rows], corpus)
    teller.end()
    return found, teller.errors > 0


def _at(stage: str, row: Specimen) -> Specimen:
    """The row with that growth stage; records are made from their columns, which have no place."""
    told = {one.name: getattr(row.record, one.name) for one in fields(row.record) if one.name != "place"}
    return replace(row, record=type(row.record)(**told | {"lifeStage": stage}))
