"""A document as Markdown: CommonMark with the tables of GitHub Flavored Markdown (both specifications from memory).

Names are set in italics by asterisks, or by a tag where asterisks would not be read as such.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import singledispatch

from auctorum.exchange.document import Block, Document, Heading, Items, Paragraph, Sources, Table, Text, joined

_SPECIAL = re.compile(r"([\\`*_\[\]<>|~$]|&(?=#?[A-Za-z0-9]+;))")
# What would start a heading, a list, a quotation or an underline, at the start of a line.
_AT_START = re.compile(r"\A(?:([#+=-])|(\d+)([.)]))")


def as_markdown(document: Document) -> str:
    """The text, blocks parted by a blank line."""
    blocks = [_block(block) for block in document.blocks]
    return "\n\n".join([f"# {_line(document.title)}", *filter(None, blocks)]) + "\n"


@singledispatch
def _block(block: Block) -> str:
    raise TypeError(type(block))


@_block.register
def _(block: Heading) -> str:
    return f"{'#' * (block.level + 1)} {_line(block.text)}"


@_block.register
def _(block: Paragraph) -> str:
    return _line(block.text)


@_block.register
def _(block: Items) -> str:
    return "\n".join(f"- {_line(text)}" for text in block.texts)


@_block.register
def _(block: Sources) -> str:
    return "\n".join(f"{number}. {_line(text)}" for number, text in enumerate(block.entries, 1))


@_block.register
def _(block: Table) -> str:
    rule = ["---:" if number in block.right else "---" for number in range(len(block.headings))]
    lines = [_row([_inline(cell) for cell in block.headings]), _row(rule)]
    lines += [_row([_inline(cell) for cell in row]) for row in block.rows]
    return "\n\n".join(filter(None, [_line(block.caption), "\n".join(lines)]))


def _row(cells: Sequence[str]) -> str:
    return f"| {' | '.join(cells)} |"


def _line(of: Text) -> str:
    """A text that starts a line."""
    return _AT_START.sub(_kept_at_start, _inline(of), count=1)


def _kept_at_start(found: re.Match[str]) -> str:
    sign, number, point = found.groups()
    return f"\\{sign}" if sign else f"{number}\\{point}"


def _inline(of: Text) -> str:
    return "".join(_italic(run.text) if run.italic else escaped(run.text) for run in joined(of)).strip(" ")


def _italic(said: str) -> str:
    """The words in italics, blanks at their ends outside; asterisks part words only beside letters and figures."""
    core = said.strip(" ")
    if not core:
        return said
    before, after = said[: len(said) - len(said.lstrip(" "))], said[len(said.rstrip(" ")) :]
    plain = core[0].isalnum() and core[-1].isalnum()
    first, last = ("*", "*") if plain else ("<i>", "</i>")
    return f"{before}{first}{escaped(core)}{last}{after}"


def escaped(said: str) -> str:
    """Words with a backslash before each sign that Markdown reads.

    >>> escaped("leaf_length <b> | 4*5")
    'leaf\\\\_length \\\\<b\\\\> \\\\| 4\\\\*5'
    """
    return _SPECIAL.sub(r"\\\1", said)
