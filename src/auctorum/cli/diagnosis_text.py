"""A document laid out for a terminal."""

from __future__ import annotations

from collections.abc import Sequence
from functools import singledispatch

from rich.console import Group, RenderableType
from rich.table import Table as Grid
from rich.text import Text as Styled

from auctorum.cli.layout import console, heading, table
from auctorum.exchange.document import (
    Block,
    Document,
    Heading,
    Items,
    Paragraph,
    Sources,
    Table,
    Text,
    is_unbroken,
    words,
)

BETWEEN = 3  # blanks between columns


def show(document: Document) -> None:
    """Print the document on standard output, sections parted by blank lines."""
    out = console()
    out.print(heading(_styled(document.title)))
    before: Block | None = None
    for block in document.blocks:
        if _parted(before, block):
            out.print()
        out.print(_laid_out(block))
        before = block


def _parted(before: Block | None, block: Block) -> bool:
    """Whether a blank line stands before the block: before each heading, and between a table and what follows it."""
    return isinstance(block, Heading) or (isinstance(before, Table) and isinstance(block, Table))


@singledispatch
def _laid_out(block: Block) -> RenderableType:
    raise TypeError(type(block))


@_laid_out.register
def _(block: Heading) -> RenderableType:
    return heading(_styled(block.text))


@_laid_out.register
def _(block: Paragraph) -> RenderableType:
    return _styled(block.text)


@_laid_out.register
def _(block: Items) -> RenderableType:
    return _marked(["–"] * len(block.texts), block.texts)


@_laid_out.register
def _(block: Sources) -> RenderableType:
    return _marked([f"[{number}]" for number in range(1, len(block.entries) + 1)], block.entries)


@_laid_out.register
def _(block: Table) -> RenderableType:
    rows = [[_styled(cell) for cell in row] for row in block.rows]
    made = table([_styled(one).plain for one in block.headings], rows, right=block.right)
    for column, width in zip(made.columns, _widths(block, console().width), strict=True):
        column.width = width
    return Group(_styled(block.caption), Styled(""), made) if block.caption else made


def _widths(of: Table, whole: int) -> list[int | None]:
    """Columns wide enough for their words and figures, what is left given to those that wrap most.

    None where the line is too short for that.
    """
    columns = list(zip(of.headings, *of.rows, strict=True))
    wanted = [max(len(words(cell)) for cell in column) for column in columns]
    widths = [max(map(_least, column)) for column in columns]
    left = whole - BETWEEN * (len(widths) - 1) - sum(widths)
    if left < 0:
        return [None] * len(widths)
    for _ in range(left):
        share, at = min((width / max(want, 1), at) for at, (width, want) in enumerate(zip(widths, wanted, strict=True)))
        widths[at] += share < 1
    return list(widths)


def _least(cell: Text) -> int:
    said = words(cell)
    return len(said) if is_unbroken(cell) else max(map(len, said.split()), default=0)


def _styled(of: Text) -> Styled:
    return Styled.assemble(*((run.text, "italic" if run.italic else "") for run in of))


def _marked(marks: Sequence[str], texts: Sequence[Text]) -> Grid:
    made = Grid.grid(padding=(0, 1))
    made.add_column(justify="right", no_wrap=True)
    made.add_column(overflow="fold")
    for mark, said in zip(marks, texts, strict=True):
        made.add_row(f"  {mark}", _styled(said))
    return made
