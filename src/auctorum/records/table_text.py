"""How the text of a table is written: its encoding, separator, the place of its header, control characters in cells."""

from __future__ import annotations

import codecs
import csv
import io
import re
from collections.abc import Callable
from dataclasses import dataclass
from itertools import islice

from auctorum.problems import Place, Problem, Severity
from auctorum.records.yamltext import CONTROL

MAX_LETTERS = 10_000  # of one cell: three pages of remarks
LARGEST_FIELD = 20_000_000  # no less than a whole file may have, so that one large cell costs no other
_LOOKED_AT = 10  # rows among which the header is looked for
_LETTERS_LOOKED_AT = 100_000
_QUOTED = re.compile(r'"[^"]*"')
SEPARATOR_LINE = re.compile(r'"?sep=(?P<delimiter>[^"\r\n])"?;?,?[ \t]*(?:\r\n|\r|\n)', re.IGNORECASE)
_SAVE_AS = "save the table as CSV UTF-8, and look at letters with accents"

Report = Callable[[Problem], None]
Knows = Callable[[list[str]], int]  # cells of a row -> how many of them are titles of columns


@dataclass(frozen=True, slots=True)
class Layout:
    """How a table is written: its separator, whether a line says so, and the rows that stand above the header."""

    delimiter: str
    said: bool
    above: int


def layout_of(text: str, knows: Knows) -> Layout:
    """The layout under which some row near the top has the most titles of columns; needs the first rows only.

    Where no row has any, the separator is the sign that the first row has most of, and the header the first row.
    """
    if said := SEPARATOR_LINE.match(text):
        return Layout(said["delimiter"], True, _best_row(text[said.end() :], said["delimiter"], knows)[1])
    first = _QUOTED.sub("", re.split(r"[\r\n]", text, maxsplit=1)[0])
    found = []
    for place, delimiter in enumerate(",;\t"):
        known, above = _best_row(text, delimiter, knows)
        found.append((known, first.count(delimiter), -place, above, delimiter))
    *_, above, delimiter = max(found)
    return Layout(delimiter, False, above)


def _best_row(text: str, delimiter: str, knows: Knows) -> tuple[int, int]:
    """How many titles the likeliest header has, and how many rows that are not blank stand above it."""
    csv.field_size_limit(LARGEST_FIELD)
    reader = csv.reader(io.StringIO(text[:_LETTERS_LOOKED_AT], newline=""), delimiter=delimiter)
    best = (0, 0)
    try:
        rows = (cells for row in reader if any(cells := [cell.strip() for cell in row]))
        for above, cells in enumerate(islice(rows, _LOOKED_AT)):
            known = knows(cells)
            if known > best[0]:
                best = (known, above)
    except csv.Error:
        pass  # reading the rows says so
    return best


def decoded_table(content: bytes, file: str) -> tuple[str, Problem | None]:
    """The text of a table's bytes, and a warning where they are not UTF-8."""
    encoding, problem = encoding_of(content, file, whole=True)
    return content.decode(encoding, "replace").removeprefix("" if encoding == "utf-8" else "\ufeff"), problem


def encoding_of(content: bytes, file: str, *, whole: bool = False) -> tuple[str, Problem | None]:
    """The encoding of a table, by its bytes or (not `whole`) the first of them, and a warning where it is not UTF-8.

    Spreadsheets save `Unicode text` as UTF-16 with its mark, and plain CSV of western countries as Windows-1252.
    """
    if content.startswith((b"\xff\xfe", b"\xfe\xff")):
        what = "the table is in UTF-16; it was read all the same"
        return "utf-16", Problem(Place(file, 1, 1), what, _SAVE_AS, Severity.WARNING)
    try:
        codecs.getincrementaldecoder("utf-8")().decode(content, final=whole)
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        column = error.start - content.rfind(b"\n", 0, error.start)
        what = f"not UTF-8: byte 0x{content[error.start]:02x}; the table was read as Windows-1252"
        return "cp1252", Problem(Place(file, line, column), what, _SAVE_AS, Severity.WARNING)
    return "utf-8", None


def cleaned_row(row: list[str], place: Place, report: Report) -> list[str]:
    """The cells of a row without control characters and blanks round them; what had to be left out is told."""
    whole = "".join(row)
    if len(whole) <= MAX_LETTERS and (whole.isprintable() or not CONTROL.search(whole)):
        return list(map(str.strip, row))
    return [_cleaned(cell, place._replace(column=number), report) for number, cell in enumerate(row, 1)]


def _cleaned(cell: str, place: Place, report: Report) -> str:
    """The cell without control characters and blanks round it; "" and a problem where it is far too long."""
    if len(cell) > MAX_LETTERS:
        what = f"a cell of {len(cell)} letters was left out; {MAX_LETTERS} are read"
        report(Problem(place, what, "shorten it; check the quotation marks"))
        return ""
    if CONTROL.search(cell):
        report(Problem(place, "a control character in a cell", "delete it"))
        cell = CONTROL.sub("", cell)
    return cell.strip()
