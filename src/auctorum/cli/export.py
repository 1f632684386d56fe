"""`auctorum export`"""

from __future__ import annotations

from pathlib import Path

import click

from auctorum.cli.common import find_name, kb_option, load_quietly


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
