"""A table as CSV (RFC 4180): quoted where needed, lines ended by a line feed, italics lost.

A cell that a spreadsheet would run as a formula gets an apostrophe in front, as spreadsheets mark words themselves.
"""

from __future__ import annotations

import csv
import io

from auctorum.exchange.document import Table, words

_RUN = ("=", "+", "-", "@", "\t", "\r", "＝", "＋", "－", "＠")  # the wide forms are run in some countries


def as_csv(table: Table) -> str:
    """The headings, then a line for each row."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    for row in (table.headings, *table.rows):
        writer.writerow([neutral(words(cell)) for cell in row])
    return out.getvalue()


def neutral(cell: str) -> str:
    """The cell, made mere words if a spreadsheet would run it.

    >>> neutral("=1+1"), neutral("22–34 mm"), neutral("–")
    ("'=1+1", '22–34 mm', '–')
    """
    return f"'{cell}" if cell.lstrip(" \u00a0").startswith(_RUN) else cell
