"""The plants of a FILE for `auctorum determine`, and what is wrong in it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import fields, replace
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import counted
from auctorum.cli.determine_setting import Setting
from auctorum.problems import Severity

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant
    from auctorum.problems import Problem
    from auctorum.records import schema

MOST_TOLD = 100  # problems on standard error; the rest are counted


class Teller:
    """Tells problems on standard error as they come up, so many at most, and counts those that left something out."""

    def __init__(self) -> None:
        self.errors = self.told = self.untold = 0

    def tell(self, problems: Iterable[Problem]) -> None:
        """Each in a line, file:line:column first."""
        for one in problems:
            self.errors += one.severity is Severity.ERROR
            if self.told < MOST_TOLD:
                click.echo(str(one), err=True)
                self.told += 1
            else:
                self.untold += 1

    def end(self) -> None:
        """How many were not told one by one."""
        if self.untold:
            click.echo(f"... and {counted(self.untold, 'more problem')} of this table", err=True)


def plants_of_table(asked: Setting, path: Path, teller: Teller) -> tuple[Plant, ...]:
    """The plants of a table that is read whole, wide or long."""
    from auctorum.records.field_tables import read_plants_text
    from auctorum.records.read import read_table, shown

    text, problems = read_table(path)
    teller.tell(problems)
    if text is None:
        return ()
    table, problems = read_plants_text(text, shown(path), tuple(asked.corpus.vocabulary))
    teller.tell(problems)
    return linked_plants(asked, table.specimens, table.measurements, teller)


def linked_plants(
    asked: Setting,
    records: Iterable[schema.Specimen],
    measurements: tuple[schema.MeasurementOrFact, ...],
    teller: Teller,
) -> tuple[Plant, ...]:
    """Plants from records; one that states no growth stage is taken to be of the stage asked for."""
    from auctorum.circumscription.plants import plants_in
    from auctorum.corpus.field_rows import linked_rows

    rows, problems = linked_rows(tuple(records), measurements, asked.corpus)
    teller.tell(problems)
    staged = [row if row.record.lifeStage else replace(row, record=_at(asked.stage, row.record)) for row in rows]
    return with_sites(asked, plants_in(staged, asked.corpus))


def _at(stage: str, record: schema.Specimen) -> schema.Specimen:
    told = {one.name: getattr(record, one.name) for one in fields(record) if one.name != "place"}
    return type(record)(**told | {"lifeStage": stage})


def with_sites(asked: Setting, several: tuple[Plant, ...]) -> tuple[Plant, ...]:
    """The plants, with the habitat of their sites where that was asked for."""
    from auctorum.determination.places.of_site import habitat_giver

    return tuple(map(habitat_giver(asked.corpus), several)) if asked.habitat else several
