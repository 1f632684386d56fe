"""`auctorum determine` on one plant."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from auctorum.cli.asked import check_known
from auctorum.cli.common import echo_json
from auctorum.cli.determine_setting import Setting

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant


def plant_from(asked: Setting, said: tuple[str, ...], site: str | None) -> Plant:
    """The plant of --with and --site; raises NotUnderstood and what reading raises, and BadParameter for misuse."""
    from auctorum.circumscription.plants import Plant
    from auctorum.determination.said import observed
    from auctorum.determination.telling.reckoned import pooled

    if site is not None:
        check_known("site", (site,), sorted(asked.corpus.sites), "--site", where=" in sites.csv")
    several = []
    for one in said:
        if not one.partition("=")[2].strip():
            raise click.BadParameter(
                f"{one!r}: write 'CHARACTER=VALUE', such as 'spur length=31 mm'", param_hint="--with"
            )
        several.append(observed(asked.corpus.vocabulary, one, asked.stage))
    return Plant("plant", None, None, site, "", pooled(asked.corpus.vocabulary, several))


def of_one(asked: Setting, plant: Plant, as_json: bool) -> bool:
    """Print all that is answered on the plant; whether anything of it could be used."""
    from auctorum.determination.telling.answer import answer

    told = answer(
        asked.statements, asked.view, plant, stage=asked.stage, taxa=asked.taxa, criteria=asked.criteria,
        priors=asked.beforehand.of,
    )  # fmt: skip
    for id_, error, remedy in told.unusable:
        click.echo(f"The criterion `{id_}` cannot be used: {error} ({remedy})", err=True)
    if as_json:
        from auctorum.cli.determine_data import data

        echo_json(data(asked, plant, told))
    else:
        from auctorum.cli.determine_show import show

        show(asked, plant, told)
    return told.found.best is not None
