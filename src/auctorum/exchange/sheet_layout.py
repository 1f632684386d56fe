"""How a field sheet goes on one page: paper, direction, widths of columns, and how many plants have room.

Heights are reckoned, since nobody is there to look: from the widths of letters, on the safe side.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from math import ceil

from auctorum.circumscription.key.words import Runs
from auctorum.determination.sheet.sheet import Column, Item, Sheet
from auctorum.exchange.scale_bar import HEIGHT_MM, WIDTH_MM
from auctorum.exchange.sheet_words import (
    CHECK_SCALE,
    FILL_IN,
    TAKE_CARE,
    best_first,
    character_words,
    how_to_measure,
    notes,
    said_of,
    small_print,
    thresholds,
    title,
)
from auctorum.problems import AuctorumError

MARGIN = 8.0  # mm, which every printer leaves
ROW = 7.4  # mm for each plant: room for a hand in gloves
POINT = 25.4 / 72  # mm
SIZE, TITLE_SIZE, SMALL = 9.0, 11.0, 7.5  # points; nothing that is read outdoors is smaller than 9
LEADING = 1.16
PAD = 0.8  # mm on either side of a cell
GAP = 1.6  # mm between blocks
BESIDE = 4.0  # mm between the scale bar and the words beside it
ROWS = (7, 6, 5, 4)  # plants for which there should be room, tried in turn
MOST, FEW = 12, 5  # characters: fewer rows are better than fewer than FEW of them
MANY_TAXA = 4  # from which on thresholds stand below what the taxa show
_SAFETY = 1.02
_BOLD = 1.14  # bold words beside plain ones, the widest of them
_RULE = 1.05  # mm of rule and padding in a row of a table
_PIXEL = 25.4 / 96  # mm
_SPARE = 1.5  # mm that stay free


class Paper(StrEnum):
    """ISO 216 A4, or ANSI letter."""

    A4 = "a4"
    LETTER = "letter"

    @property
    def size(self) -> tuple[float, float]:
        """Width and height in mm, upright."""
        return {Paper.A4: (210.0, 297.0), Paper.LETTER: (215.9, 279.4)}[self]


class NoRoom(AuctorumError, ValueError):
    """More taxa, words or plants than one page holds."""

    remedy = "name fewer taxa, ask for fewer plants, or leave characters out (--without)"

    def __init__(self, taxa: int, rows: int) -> None:
        super().__init__(taxa, rows)
        self.taxa, self.rows = taxa, rows

    def __str__(self) -> str:
        return f"a sheet for {self.taxa} taxa with {self.rows} rows for plants does not go on one page"


@dataclass(frozen=True, slots=True)
class Layout:
    """A sheet on its paper: `width` and `height` inside the margins, widths of columns in mm, rows for plants."""

    sheet: Sheet
    paper: Paper
    landscape: bool
    rows: int
    guide: tuple[float, ...]
    once: tuple[float, ...]
    plants: tuple[float, ...]

    @property
    def page(self) -> tuple[float, float]:
        """Width and height of the paper in mm, as it is turned."""
        return self.paper.size[::-1] if self.landscape else self.paper.size

    @property
    def width(self) -> float:
        return self.page[0] - 2 * MARGIN

    @property
    def height(self) -> float:
        return self.page[1] - 2 * MARGIN


def laid_out(sheet: Sheet, paper: Paper, plants: int | None = None) -> Layout:
    """The sheet with as many characters as leave room for so many plants, turned as more plants go on it.

    Raises NoRoom where not even one character does.
    """
    tries = [(rows, most) for rows in ROWS for most in range(MOST, FEW - 1, -1)] if plants is None else []
    last = plants or ROWS[-1]
    for rows, most in (*tries, *((last, most) for most in range(MOST, 0, -1))):
        one = sheet.shortened(most)
        fit = [found for turned in (False, True) if (found := _fitted(one, paper, turned, rows)) is not None]
        if fit:
            best = max(fit, key=lambda found: found.rows)
            return best if plants is None else replace(best, rows=plants)
    raise NoRoom(len(sheet.taxa), last)


def _fitted(sheet: Sheet, paper: Paper, landscape: bool, wanted: int) -> Layout | None:
    """The sheet with all the rows that have room; None where these are fewer than wanted."""
    bare = Layout(sheet, paper, landscape, 0, (), (), ())
    once, plants = (_widths(columns, bare.width) for columns in (_once(sheet), _of_plant(sheet)))
    guide = _guide_widths(len(sheet.taxa), bare.width)
    if once is None or plants is None or guide is None:
        return None
    rows = int((bare.height - _SPARE - _used(sheet, bare.width, guide, once, plants)) / ROW)
    return Layout(sheet, paper, landscape, rows, guide, once, plants) if rows >= wanted else None


def _once(sheet: Sheet) -> list[Column]:
    return [one for one in sheet.columns if one.once]


def _of_plant(sheet: Sheet) -> list[Column]:
    return [one for one in sheet.columns if not one.once]


# --- widths


def _guide_widths(taxa: int, width: float) -> tuple[float, ...] | None:
    """Characters, each taxon, thresholds; of many taxa no thresholds. None where too little is left for words."""
    if taxa < MANY_TAXA:
        left = width - taxa * 24.0
        return (left * 0.4, *[24.0] * taxa, left * 0.6)
    first = max(36.0, 0.2 * width)
    each = (width - first) / taxa
    return (first, *[each] * taxa) if each >= 18 else None


def _widths(columns: Sequence[Column], width: float) -> tuple[float, ...] | None:
    """Room for the longest word of each heading, and for what is written; what is left goes to words, most to remarks.

    None where the headings alone are too wide.
    """
    least = [max(_longest(one.heading) * _BOLD, _room(one)) + 2 * PAD for one in columns]
    left = width - sum(least)
    if left < 0:
        return None
    shares = [0.3 if one.heading.endswith("]") else 2.0 if one.heading.endswith("Remarks") else 1.0 for one in columns]
    each = left / sum(shares)
    return tuple(one + share * each for one, share in zip(least, shares, strict=True))


def _room(column: Column) -> float:
    """For a hand: figures and codes, or words."""
    return max(13.0 if column.character else 18.0, _longest(column.hint))


def _longest(text: str) -> float:
    return max((text_width(word, SIZE) for word in text.split(" ")), default=0.0)


# --- heights


def _used(sheet: Sheet, width: float, guide: Sequence[float], once: Sequence[float], plants: Sequence[float]) -> float:
    """What all but the rows of the plants takes up, in mm."""
    heads = [_head_height(columns, each) for columns, each in ((_once(sheet), once), (_of_plant(sheet), plants))]
    how = _bold_first(how_to_measure(sheet))
    return (
        _lines(plain(title(sheet)), width - 32, TITLE_SIZE, bold=True) * line_height(TITLE_SIZE)
        + _guide_height(sheet, guide)
        + (_lines_of(how, width, SIZE) * line_height(SIZE) if how else 0)
        + sum(_height(plain(one), width) + 0.5 for one in notes(sheet))
        + sum(heads)
        + ROW
        + _foot_height(sheet, width)
        + 6 * GAP
    )


def _foot_height(sheet: Sheet, width: float) -> float:
    """The scale bar on the left, and the words that run beside and below it."""
    high = HEIGHT_MM + line_height(SIZE) * _lines(CHECK_SCALE, WIDTH_MM, SIZE)
    narrow, beside = width - WIDTH_MM - BESIDE, int(high / line_height(SIZE)) + 1
    first = _lines(FILL_IN, narrow, SIZE)
    cautions = f"{TAKE_CARE} {' '.join(sheet.cautions)}"
    lines = first + _lines(cautions, width, SIZE, narrow=(narrow, max(beside - first, 0)))
    small = _lines(small_print(sheet), width, SMALL) * line_height(SMALL)
    return max(high, lines * line_height(SIZE)) + small


def _guide_height(sheet: Sheet, widths: Sequence[float]) -> float:
    first, *rest = (one - 2 * PAD for one in widths)
    taxa = rest[: len(sheet.taxa)]
    heads = [
        _lines(plain(sheet.short[taxon]), room, SIZE, bold=True) for taxon, room in zip(sheet.taxa, taxa, strict=True)
    ]
    beside = len(rest) > len(taxa)
    height = max(_lines(best_first(beside=beside), first, SIZE, bold=True), *heads) * line_height(SIZE) + _RULE
    for item in sheet.items:
        height += _item_lines(item, sheet, first, taxa, rest[len(taxa) :]) * line_height(SIZE) + _RULE * (2 - beside)
    return height


def _item_lines(item: Item, sheet: Sheet, first: float, taxa: Sequence[float], limits: Sequence[float]) -> int:
    """Thresholds beside what the taxa show, or one after the other below it."""
    head = _lines_of(_bold_first([character_words(item)]), first, SIZE)
    said = max(_lines(said_of(item, number), room, SIZE) for number, room in enumerate(taxa))
    parted = [plain(one) for one in thresholds(item, sheet)]
    if limits:
        return max(head, said, sum(_lines(one, limits[0], SIZE) for one in parted))
    below = "; ".join(parted)
    return max(head, said + (_lines(below, sum(taxa), SIZE) if below else 0))


def _head_height(columns: Sequence[Column], widths: Sequence[float]) -> float:
    """Heading and hint, each on lines of its own."""
    lines = [
        _lines(one.heading, room - 2 * PAD, SIZE, bold=True)
        + (_lines(one.hint, room - 2 * PAD, SIZE) if one.hint else 0)
        for one, room in zip(columns, widths, strict=True)
    ]
    return max(lines) * line_height(SIZE) + _RULE


def _height(text: str, width: float) -> float:
    return _lines(text, width, SIZE) * line_height(SIZE)


def line_height(size: float) -> float:
    """In mm, of a size in points; a browser sets lines in whole pixels of 1/96 in."""
    return ceil(size * POINT * LEADING / _PIXEL - 1e-9) * _PIXEL


def plain(runs: Runs) -> str:
    """The runs without their styles."""
    return "".join(text for text, _ in runs)


def _lines(text: str, width: float, size: float, *, bold: bool = False, narrow: tuple[float, int] = (0.0, 0)) -> int:
    """On how many lines the words come to stand; `narrow` is the width of so many first lines."""
    return _lines_of([(text, bold)], width, size, narrow)


def _lines_of(
    pieces: Iterable[tuple[str, bool]], width: float, size: float, narrow: tuple[float, int] = (0.0, 0)
) -> int:
    """As `_lines`, of pieces that are bold or not, with a blank between them; a word that is too long is broken."""
    lines, at, space = 1, 0.0, text_width(" ", size)
    for word, bold in ((word, bold) for text, bold in pieces for word in text.split(" ")):
        long = text_width(word, size) * _SAFETY * (_BOLD if bold else 1.0)
        room = narrow[0] if lines <= narrow[1] else width
        if at and at + space + long > room:
            lines, at = lines + 1, 0.0
        at += long + (space if at else 0.0)
        more, at = divmod(at, room) if at > room else (0, at)
        lines += int(more)
    return lines


def _bold_first(pairs: Iterable[tuple[str, str]]) -> list[tuple[str, bool]]:
    """Names in bold, each before what is said of it."""
    return [piece for name, said in pairs for piece in ((name, True), (said, False)) if piece[0]]


def text_width(text: str, size: float) -> float:
    """How wide a line of Helvetica, or of a face made to its measure, is in mm, at a size in points.

    >>> round(text_width("spur length", 9), 1)
    15.7
    """
    return sum(_THOUSANDTHS.get(letter, _OTHER) for letter in text) / 1000 * size * POINT


# Widths of Helvetica in thousandths of the size, as its maker publishes them for every printer (from memory).
_THOUSANDTHS = {
    letter: width
    for width, letters in {
        191: "'", 222: "ijl’", 260: "|", 278: " \u00a0!,./:;I[]\\ft", 333: "()-`r“”", 334: "{}", 355: '"', 389: "*",
        400: "°", 469: "^", 500: "Jckvsxyz", 549: "≤≥", 556: "#$?_0123456789abdeghnopquL–", 584: "+<=>~×±",
        611: "FTZ", 667: "&ABEKPSVXY", 722: "CDHNRUw", 778: "GOQ", 833: "Mm", 889: "%", 944: "W", 1000: "—", 1015: "@",
    }.items()
    for letter in letters
}  # fmt: skip
_OTHER = 1000  # letters that the table lacks; of most scripts none is wider
