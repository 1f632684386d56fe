"""`auctorum export`"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import counted, find_name, kb_option, load_quietly

if TYPE_CHECKING:
    from auctorum.corpus.model import Corpus

EXACT_WARNING = """\
Exact localities leave: {leaves}.
Rare and protected plants are lost when such a file gets about: to collectors, and to visitors' feet. Give it only to
those who need it, keep to the terms of your permits, and never publish it."""
exact_option = click.option(
    "--exact",
    "exactly",
    is_flag=True,
    help="With exact coordinates, localities, elevations and remarks. Never publish such a file.",
)


@click.group()
def export() -> None:
    """Write the knowledge base, or a part of it, in an open format."""


@export.command("graph")
@click.argument("out", type=click.Path(path_type=Path, dir_okay=False))
@click.option("--name", "name", default="", help="SVG: only names on the type of this name, and what they touch.")
@kb_option
def export_graph(out: Path, name: str, kb: Path) -> None:
    """Write the graph of names, types, works and treatments to OUT: .graphml for programs, .svg drawn for people."""
    from auctorum.records.write import write_text

    if out.suffix not in (".graphml", ".svg"):
        raise click.BadParameter("end it in .graphml or .svg", param_hint="OUT")
    if name and out.suffix == ".graphml":
        raise click.BadParameter("GraphML holds the whole graph; draw one type as .svg", param_hint="--name")
    code = load_quietly(kb)
    if out.suffix == ".graphml":
        from auctorum.nomenclature.graph import graphml

        text = graphml(code)
    else:
        from auctorum.exchange.drawing import draw_names

        group = find_name(code.corpus, name).group if name else None
        text = draw_names(code, group)
    write_text(out, text)
    click.echo(f"wrote {out}")


@export.command("specimens")
@click.argument("out", type=click.Path(path_type=Path, dir_okay=False))
@exact_option
@kb_option
def export_specimens(out: Path, exactly: bool, kb: Path) -> None:
    """Write the measured plants to OUT (.csv), a line for each row of specimens.csv, under Darwin Core terms.

    Coordinates are cut to the precision in kb.yaml, elevations rounded outward to 100 m. Localities, elevations of
    single plants, and any text that holds a name of a locality or digits of its coordinates are left out; the columns
    dataGeneralizations and informationWithheld say so. A text can tell a place in other words, which no program
    finds: read what you publish.
    """
    from auctorum.exchange.occurrences import specimens_csv
    from auctorum.records.write import write_text

    _check_ending(out, ".csv")
    corpus = load_quietly(kb).corpus
    text, left_out = specimens_csv(corpus, exactly=exactly)
    if exactly:
        _warn("coordinates, localities and elevations of sites, remarks as typed")
    write_text(out, text)
    click.echo(f"wrote {out}: {counted(len(corpus.specimens), 'row')}{_how_exact(corpus, exactly)}")
    if left_out:
        lines = ", ".join(map(str, left_out))
        told = (
            f"Left out of {counted(len(left_out), 'row')}, because it may tell a place (informationWithheld says what)"
        )
        click.echo(f"{told}; lines of specimens.csv: {lines}", err=True)


@export.command("sites")
@click.argument("out", type=click.Path(path_type=Path, dir_okay=False))
@exact_option
@kb_option
def export_sites(out: Path, exactly: bool, kb: Path) -> None:
    """Write the sites to OUT under Darwin Core terms: .csv, or .geojson for maps.

    Coordinates are cut to the precision in kb.yaml, on a map the site is the cell that holds it. Elevations are rounded
    outward to 100 m; locality, habitat in words and remarks are withheld, and the file says so.
    """
    from auctorum.exchange.occurrences import sites_csv, sites_geojson
    from auctorum.records.write import write_text

    _check_ending(out, ".csv", ".geojson")
    corpus = load_quietly(kb).corpus
    if exactly:
        _warn("coordinates, localities, elevations, habitats and remarks of sites")
    form = sites_geojson if out.suffix == ".geojson" else sites_csv
    write_text(out, form(corpus, exactly=exactly))
    click.echo(f"wrote {out}: {counted(len(corpus.sites), 'site')}{_how_exact(corpus, exactly)}")


def _check_ending(out: Path, *endings: str) -> None:
    if out.suffix not in endings:
        raise click.BadParameter(f"end it in {' or '.join(endings)}", param_hint="OUT")


def _warn(leaves: str) -> None:
    click.echo(EXACT_WARNING.format(leaves=leaves), err=True)


def _how_exact(corpus: Corpus, exactly: bool) -> str:
    return ", exact" if exactly else f", coordinates cut to {corpus.settings.locality_precision} degree"
