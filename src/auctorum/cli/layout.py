"""Results laid out for a terminal: tables that wrap at its width, italics for names, plain words when piped."""

from __future__ import annotations

import os
from collections.abc import Iterable, Sequence

from rich.box import SIMPLE_HEAD
from rich.console import Console
from rich.table import Table
from rich.text import Text

from auctorum.names.format import parts
from auctorum.names.name import Name

PIPED_WIDTH = 120  # columns where the output is no terminal


def console() -> Console:
    """The console of standard output; COLUMNS sets the width, too."""
    found = Console(highlight=False, markup=False)
    if not found.is_terminal:
        found = Console(highlight=False, markup=False, width=_columns(), color_system=None)
    return found


def _columns() -> int:
    said = os.environ.get("COLUMNS", "")
    return int(said) if said.isdigit() and int(said) > 0 else PIPED_WIDTH


def italic(name: Name, *, authors: bool = True) -> Text:
    """The name with its Latin words in italics."""
    text = Text()
    for run, latin in parts(name if authors else name.bare):
        text.append(run, style="italic" if latin else "")
    return text


def table(headings: Sequence[str], rows: Iterable[Sequence[str | Text]], *, right: Sequence[int] = ()) -> Table:
    """A table with a rule under its headings; `right` are the columns set flush right."""
    made = Table(box=SIMPLE_HEAD, pad_edge=False, show_edge=False)
    for number, heading in enumerate(headings):
        made.add_column(heading, justify="right" if number in right else "left", overflow="fold")
    for row in rows:
        made.add_row(*(Text(cell) if isinstance(cell, str) else cell for cell in row))
    return made


def heading(text: str | Text) -> Text:
    """A line that stands out."""
    made = Text.assemble(text)
    made.stylize("bold")
    return made


def numbered(texts: Iterable[str]) -> Table:
    """Sentences with their numbers, each wrapped beside its own."""
    made = Table.grid(padding=(0, 1))
    made.add_column(justify="right")
    made.add_column(overflow="fold")
    for number, text in enumerate(texts, 1):
        made.add_row(f"  {number}.", Text(text))
    return made
