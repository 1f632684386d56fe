"""`auctorum determine --evaluate`: named plants, determined as if nobody had named them."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import at_work, echo_json
from auctorum.cli.determine_setting import Setting
from auctorum.cli.determine_table import Teller, plants_of_table

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant
    from auctorum.determination.calibration import Calibration

_MANY = 1000  # plants from which it takes seconds


def evaluated(asked: Setting, file: Path | None, as_json: bool) -> int:
    """Print how far the figures can be trusted; the exit code."""
    from auctorum.determination.calibration import calibration

    teller = Teller()
    several = _plants(asked, file, teller)
    with at_work("Determining", long=len(several) >= _MANY or bool(asked.own)):
        found = calibration(
            asked.statements, asked.view, several, own=asked.own, works=asked.works, priors=asked.priors,
            thresholds=asked.thresholds,
        )  # fmt: skip
    teller.end()
    if not found.plants:
        source = str(file) if file is not None else "the knowledge base"
        click.echo(f"No plant of {source} can be tried: {_why(found)}", err=True)
        return 1
    if as_json:
        echo_json(_data(asked, found))
    else:
        _show(asked, found)
    return 1 if teller.errors else 0


def _plants(asked: Setting, file: Path | None, teller: Teller) -> tuple[Plant, ...]:
    from auctorum.circumscription.plants import plants

    several = plants(asked.corpus) if file is None else plants_of_table(asked.corpus, file, asked.stage, teller)
    return asked.with_sites(several)


def _why(found: Calibration) -> str:
    if found.unseen:
        return "nothing was observed of the named ones that is stated (name other works by --sec, or none)"
    if found.left_out:
        return "the named ones are named as taxa that are no candidates (see --among)"
    return "none bears the name of a taxon (fill in scientificName)"


def _show(asked: Setting, found: Calibration) -> None:
    from auctorum.circumscription.phrases import capital
    from auctorum.cli.layout import console, heading, table
    from auctorum.cli.names_in_text import italiciser
    from auctorum.determination.telling import trust

    out, italic = console(), italiciser(asked.view.names.values())
    out.print(heading(f"{capital(found.view)}: how far to trust the figures"))
    for sentence in trust.sentences(found, asked.beforehand):
        out.print(sentence)
    out.print(heading("\nWhat was stated, and how often it was so"))
    out.print(table(trust.BANDS, trust.band_rows(found), right=(1, 2, 3, 4, 5)))
    out.print(heading("\nBy wording"))
    out.print(table(trust.TALLIES, trust.tally_rows(found), right=(1, 2, 3)))
    if found.mistaken:
        out.print(heading("\nTaken for another"))
        rows = [tuple(map(italic, row)) for row in trust.mistaken_rows(found, asked.view.names)]
        out.print(table(trust.MISTAKEN, rows, right=(2,)))


def _data(asked: Setting, found: Calibration) -> dict[str, object]:
    from auctorum.cli.determine_data import share
    from auctorum.determination.telling import trust

    return {
        "view": found.view,
        "plants": found.plants,
        "right": found.right,
        "brier": share(found.brier),
        "brier_of_priors": share(found.brier_unknown),
        "bands": [
            {"low": one.low, "high": one.high, "plants": one.plants, "stated": share(one.stated), "right": one.right,
             "interval": list(map(share, one.interval))}
            for one in found.bands
        ],
        "wordings": [
            {"wording": str(one.wording), "plants": one.plants, "right": one.right} for one in found.tallies
        ],
        "mistaken": [{"named": named, "likeliest": taken, "plants": many} for named, taken, many in found.mistaken],
        "left_out": found.left_out,
        "unseen": found.unseen,
        "named_by": list(found.named_by),
        "left_one_out": found.left_one_out,
        "remarks": list(trust.sentences(found, asked.beforehand)),
    }  # fmt: skip
