"""`auctorum serve`"""

from __future__ import annotations

from pathlib import Path

import click


@click.command()
@click.argument("site", default="site", type=click.Path(exists=True, file_okay=False, path_type=Path))
@click.option(
    "--port", default=8000, show_default=True, type=click.IntRange(0, 65535), help="Port; 0 takes a free one."
)
def serve(site: Path, port: int) -> None:
    """Show a built SITE in the browser of this machine only (127.0.0.1), until Ctrl-C."""
    from auctorum.site.serve import server

    with server(site, port) as running:
        click.echo(f"http://127.0.0.1:{running.server_port}/ (Ctrl-C ends)")
        try:
            running.serve_forever()
        except KeyboardInterrupt:
            click.echo()
