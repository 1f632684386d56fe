"""The plants of a FILE, and what is wrong in it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import click

from auctorum.cli.common import counted
from auctorum.problems import Severity

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant
    from auctorum.corpus.model import Corpus
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


def told_table(path: Path, teller: Teller) -> tuple[str | None, str]:
    """The text of a table, None where it cannot be read, and what the file is called in problems."""
    from auctorum.records.read import read_table, shown

    text, problems = read_table(path)
    teller.tell(problems)
    return text, shown(path)


def plants_of_table(corpus: Corpus, path: Path, stage: str, teller: Teller) -> tuple[Plant, ...]:
    """The plants of a table that is read whole, wide or long; `stage` is that of plants that state none."""
    from auctorum.records.field_tables import read_plants_text

    text, name = told_table(path, teller)
    if text is None:
        return ()
    table, problems = read_plants_text(text, name, tuple(corpus.vocabulary))
    teller.tell(problems)
    return linked_plants(corpus, table.specimens, table.measurements, stage, teller)


def linked_plants(
    corpus: Corpus,
    records: Iterable[schema.Specimen],
    measurements: tuple[schema.MeasurementOrFact, ...],
    stage: str,
    teller: Teller,
) -> tuple[Plant, ...]:
    """Plants from records; one that states no growth stage is taken to be of that stage."""
    from auctorum.circumscription.plants import plants_in
    from auctorum.corpus.field_rows import linked_rows
    from auctorum.records.fields import changed

    rows, problems = linked_rows(tuple(records), measurements, corpus)
    teller.tell(problems)
    staged = [
        row if row.record.lifeStage else replace(row, record=changed(row.record, lifeStage=stage)) for row in rows
    ]
    return plants_in(staged, corpus)
