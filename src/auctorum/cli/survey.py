"""`auctorum survey`"""

from __future__ import annotations

import math
from pathlib import Path

import click

from auctorum.cli.common import check_works, json_option, kb_option, load_quietly, progress_bar

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
    type=click.FloatRange(0, 0.5, min_open=True),
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
def survey(
    ctx: click.Context,
    taxon: str | None,
    file: Path | None,
    stage: str,
    sites: tuple[str, ...],
    sec: tuple[str, ...],
    criteria: tuple[str, ...],
    own_plants: bool,
    within: float,
    sections: tuple[str, ...],
    form: str,
    kb: Path,
    as_json: bool,
) -> None:
    """How many plants of TAXON there are, under your own definition and under everybody else's.

    Without TAXON it is the first focal taxon of the knowledge base. Wild plants are counted at each site and in all: by
    the names that observers gave, by the working criteria for TAXON, by all authors, and by each. Beside the counts
    stand the plants that measuring leaves open; how the count hangs on the threshold; whether there is a gap or a
    spectrum; whether observers measure differently; how many plants more to measure; and where to look next.

    --format csv gives a row for each site and view. Of places it and --json tell the site's id and island only.

    Exit code 1 if there is no plant to count, or if a cell of FILE could not be used; the rest is used all the same.
    """
    from auctorum.cli.survey_setting import check_asked, check_sites, plants_asked, taxon_asked
    from auctorum.determination.survey.survey import survey as surveyed
    from auctorum.determination.view import Statements
    from auctorum.records.read import collector_paused

    if as_json and form == "csv":
        raise click.UsageError("give --json or --format csv, not both")
    if sections and (as_json or form == "csv"):
        raise click.UsageError("--section is for the text; --json and --format csv give the whole")
    if math.isnan(within):
        raise click.BadParameter("a share is a number", param_hint="--within")
    corpus = load_quietly(kb).corpus
    check_works(corpus, sec)
    meant = taxon_asked(corpus, taxon)
    check_asked(corpus, meant, criteria, stage)
    with collector_paused():
        plants, own, faults = plants_asked(corpus, file, stage, own_plants=own_plants)
    check_sites(corpus, sites, plants)
    text = form == "text" and not as_json
    least = 1 if len(plants) > _MANY else len(corpus.works) + 1
    with collector_paused(), progress_bar("Counting", least) as progress:
        found = surveyed(
            corpus,
            Statements(corpus),
            meant,
            plants,
            works=sec or None,
            criteria=criteria or None,
            own=own,
            sites=sites or None,
            half_width=within,
            exactly=text,
            progress=progress,
        )
    if text:
        from auctorum.cli.survey_show import show

        show(corpus, found, sections or SECTIONS)
    else:
        from auctorum.cli.survey_show import put_out

        put_out(corpus, found, as_json=as_json)
    ctx.exit(1 if faults or not found.plants else 0)
