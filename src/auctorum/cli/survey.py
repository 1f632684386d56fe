"""`auctorum survey`"""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from auctorum.cli.common import check_works, json_option, kb_option, load_quietly, progress_bar

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant
    from auctorum.cli.survey_setting import Options
    from auctorum.corpus.model import Corpus
    from auctorum.determination.survey.model import Survey

_MANY = 5_000  # plants from which it takes long enough for a sign of life
SECTIONS = ("counts", "curve", "spectrum", "observers", "wanted", "candidates")


@click.command()
@click.argument("taxon", required=False, metavar="[TAXON]")
@click.option(
    "--plants",
    "file",
    type=click.Path(exists=True, dir_okay=False, path_type=Path),
    metavar="FILE",
    help="Count the plants of this table instead of those of the knowledge base.",
)
@click.option(
    "--stage",
    default="mature",
    show_default=True,
    help="Growth stage of the plants of FILE that state none.",
)
@click.option("--site", "sites", multiple=True, metavar="ID", help="Only plants of this site; repeatable.")
@click.option(
    "--by", "--sec", "sec", multiple=True, metavar="WORK", help="Under this author (the id of the work); repeatable."
)
@click.option("--criterion", "criteria", multiple=True, metavar="ID", help="By this working criterion; repeatable.")
@click.option("--own-plants", is_flag=True, help="Count by what the knowledge base's own named plants show, too.")
@click.option(
    "--within",
    type=click.FloatRange(0.001, 0.5),
    default=0.1,
    show_default=True,
    metavar="SHARE",
    help="Half width of the interval that is wanted for the share.",
)
@click.option("--section", "sections", multiple=True, type=click.Choice(SECTIONS), help="Only this part; repeatable.")
@click.option(
    "--format",
    "form",
    type=click.Choice(["text", "csv"]),
    default="text",
    show_default=True,
    help="Form of the result.",
)
@kb_option
@json_option
@click.pass_context
def survey(ctx: click.Context, /, kb: Path, **said: Any) -> None:
    """How many plants of TAXON there are, under your own definition and under everybody else's.

    Without TAXON it is the first focal taxon of the knowledge base. Wild plants are counted at each site and in all: by
    the names that observers gave, by the working criteria for TAXON, by all authors, and by each. Beside the counts
    stand the plants that measuring leaves open; how the count hangs on the threshold; whether there is a gap or a
    spectrum; whether observers measure differently; how many plants more to measure; and where to look next.

    --format csv gives a row for each site and view. Of places it and --json tell the site's id and island only.

    Exit code 1 if there is no plant to count, or if a cell of FILE could not be used; the rest is used all the same.
    """
    from auctorum.cli.survey_setting import Options, check_asked, check_options, check_sites, plants_asked, taxon_asked
    from auctorum.records.read import collector_paused

    options = Options(**said)
    check_options(options)
    corpus = load_quietly(kb).corpus
    check_works(corpus, options.sec)
    meant = taxon_asked(corpus, options.taxon)
    check_asked(corpus, meant, options.criteria, options.stage)
    with collector_paused():
        plants, own, faults = plants_asked(corpus, options)
    check_sites(corpus, options.sites, plants)
    found = _counted(corpus, options, meant, plants, own)
    if options.text:
        from auctorum.cli.survey_show import show

        show(corpus, found, options.sections or SECTIONS)
    else:
        from auctorum.cli.survey_show import put_out

        put_out(corpus, found, as_json=options.as_json)
    ctx.exit(1 if faults or not found.plants else 0)


def _counted(corpus: Corpus, options: Options, meant: str, plants: Sequence[Plant], own: Sequence[Plant]) -> Survey:
    """The plants counted under every view asked for; shows progress."""
    from auctorum.determination.survey.survey import survey as surveyed
    from auctorum.determination.view import Statements
    from auctorum.records.read import collector_paused

    least = 1 if len(plants) > _MANY else len(corpus.works) + 1
    with collector_paused(), progress_bar("Counting", least) as progress:
        return surveyed(
            corpus,
            Statements(corpus),
            meant,
            plants,
            works=options.sec or None,
            criteria=options.criteria or None,
            own=own,
            sites=options.sites or None,
            half_width=options.within,
            exactly=options.text,
            progress=progress,
        )
