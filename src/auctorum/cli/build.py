"""`auctorum build`"""

from __future__ import annotations

from pathlib import Path

import click

from auctorum.cli.common import counted, error_count, kb_option, load, progress_bar


@click.command()
@kb_option
@click.option("--out", default="site", show_default=True, type=click.Path(path_type=Path), help="Folder of the site.")
@click.pass_context
def build(ctx: click.Context, kb: Path, out: Path) -> None:
    """Build the site: a folder of pages that works from a disk, a stick or any web host.

    The finished site takes the place of the old one in whole. Problems of the knowledge base are on its
    problems page; exit code 1 if any of them is an error.
    """
    from auctorum.site.build import build as build_site

    code, problems = load(kb)
    corpus = code.corpus
    pages = 0

    def told(_path: str) -> None:
        nonlocal pages
        pages += 1
        show(pages, len(corpus.names) + len(corpus.works) + len(corpus.taxa) + len(corpus.vocabulary))

    with progress_bar("Building") as show:
        written = build_site(code, problems, out, progress=told)
    errors = error_count(problems)
    click.echo(f"{written} files in {out}; open {out / 'index.html'}")
    if errors:
        click.echo(f"{counted(errors, 'error')} in the knowledge base: auctorum check --kb {kb}", err=True)
    ctx.exit(1 if errors else 0)
