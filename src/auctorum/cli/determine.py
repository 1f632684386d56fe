"""`auctorum determine`"""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from auctorum.cli.common import json_option, kb_option, load_quietly

if TYPE_CHECKING:
    from auctorum.cli.determine_setting import Options, Setting


@click.command()
@click.argument("file", required=False, type=click.Path(exists=True, dir_okay=False, path_type=Path), metavar="[FILE]")
@click.option(
    "--with",
    "with_",
    multiple=True,
    metavar="CHARACTER=VALUE",
    help="What was observed: 'spur length=31 mm'; repeatable.",
)
@click.option(
    "--stage",
    default="mature",
    show_default=True,
    help="Growth stage of the plant, where it states none itself.",
)
@click.option("--site", metavar="ID", help="Site of sites.csv: its elevation, aspect and substrate are used, too.")
@click.option(
    "--habitat",
    is_flag=True,
    help="Use the habitat of the sites of a FILE, too; it is the same for all plants of a site.",
)
@click.option("--sec", multiple=True, metavar="WORK", help="According to this work (its id) alone; repeatable.")
@click.option("--among", multiple=True, metavar="TAXON", help="Only these candidates; repeatable.")
@click.option(
    "--criterion",
    "criteria",
    multiple=True,
    metavar="ID",
    help="Judge by this working criterion; repeatable.  [default: all of the knowledge base]",
)
@click.option(
    "--own-plants", is_flag=True, help="Trust the named plants of the knowledge base: they count as one more author."
)
@click.option(
    "--prior",
    "priors",
    multiple=True,
    metavar="TAXON=SHARE",
    help="How likely the taxon is here beforehand: 'Exemplum album=0.3'; repeatable.  [default: all alike]",
)
@click.option(
    "--prior-from-plants", is_flag=True, help="Beforehand as likely as the knowledge base's own named plants are many."
)
@click.option("--ask", is_flag=True, help="Ask for one character after another, the one that tells most first.")
@click.option("--evaluate", is_flag=True, help="How far to trust the figures: determine named plants as if unnamed.")
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "csv"]),
    help="Form of the answers on a FILE.  [default: text; csv for --out]",
)
@click.option(
    "--out", type=click.Path(dir_okay=False, path_type=Path), help="Write the answers on a FILE to this CSV file."
)
@kb_option
@json_option
@click.pass_context
def determine(ctx: click.Context, /, kb: Path, **said: Any) -> None:
    """What a plant is, how sure that is, and on whose authority.

    Say what you observed by --with, again and again; or be asked (--ask); or give a table of plants, FILE (CSV, a row
    for each plant or for each measurement; the columns of `auctorum field-sheet --format csv` do). The name is given
    in open nomenclature (cf., aff., indet.) with its probability, what each character says, what single authors and
    working criteria would say, and what to observe next. --evaluate tries all this on named plants: those of FILE, or
    of the knowledge base.

    Exit code 1 if nothing could be used, or if a cell of FILE could not; the rest is used all the same.
    """
    from auctorum.cli.determine_setting import Options, check_options, setting

    options = Options(**said)
    check_options(options, kb)
    asked = setting(load_quietly(kb).corpus, options)
    ctx.exit(_answered(options, asked))


def _answered(options: Options, asked: Setting) -> int:
    """Print the answer to the options; the exit code."""
    if options.evaluate:
        from auctorum.cli.determine_evaluate import evaluated

        return evaluated(asked, options.file, options.as_json)
    if options.file is not None:
        from auctorum.cli.determine_file import of_file

        return of_file(asked, options.file, options.form, options.out, options.as_json)
    from auctorum.cli.determine_one import of_one, plant_from

    plant = plant_from(asked, options.with_, options.site)
    if options.ask:
        from auctorum.cli.determine_ask import asked_for

        plant = asked_for(asked, plant, aside=options.as_json)
    used = of_one(asked, plant, options.as_json)
    return 0 if used or options.ask else 1
