"""How a field sheet goes on one page: paper, direction, widths of columns, and how many plants have room.

Heights are reckoned, since nobody is there to look: from the widths of letters, on the safe side by a twentieth.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from auctorum.circumscription.key.words import Runs
from auctorum.determination.sheet import Column, Sheet
from auctorum.exchange.scale_bar import HEIGHT_MM, WIDTH_MM
from auctorum.exchange.sheet_words import character_words, notes, said_of, thresholds, title
from auctorum.problems import AuctorumError

MARGIN = 8.0  # mm, which every printer leaves
ROW = 7.4  # mm for each plant: room for a hand in gloves
POINT = 25.4 / 72  # mm
SIZE, TITLE_SIZE, SMALL = 9.0, 12.0, 7.5  # points; nothing that is read outdoors is smaller than 9
LEADING = 1.16
PAD = 0.8  # mm on either side of a cell
GAP = 1.8  # mm between blocks
LEAST_ROWS = 8  # plants for which there should be room before all characters have it
MOST = 10  # characters in a row of a plant
_SAFETY = 1.05
_BOLD = 1.1


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
    wanted = plants or LEAST_ROWS
    for most in range(MOST, 0, -1):
        one = sheet.shortened(most)
        fit = [found for turned in (False, True) if (found := _fitted(one, paper, turned, wanted)) is not None]
        if fit:
            best = max(fit, key=lambda found: found.rows)
            return best if plants is None else _with_rows(best, plants)
    raise NoRoom(len(sheet.taxa), wanted)


def _with_rows(one: Layout, rows: int) -> Layout:
    return Layout(one.sheet, one.paper, one.landscape, rows, one.guide, one.once, one.plants)


def _fitted(sheet: Sheet, paper: Paper, landscape: bool, wanted: int) -> Layout | None:
    """The sheet with all the rows that have room; None where these are fewer than wanted."""
    bare = Layout(sheet, paper, landscape, 0, (), (), ())
    once, plants = (_widths(columns, bare.width) for columns in (_once(sheet), _of_plant(sheet)))
    guide = _guide_widths(len(sheet.taxa), bare.width)
    if once is None or plants is None or guide is None:
        return None
    rows = int((bare.height - _used(sheet, bare.width, guide, once, plants)) / ROW)
    return Layout(sheet, paper, landscape, rows, guide, once, plants) if rows >= wanted else None


def _once(sheet: Sheet) -> list[Column]:
    return [one for one in sheet.columns if one.once]


def _of_plant(sheet: Sheet) -> list[Column]:
    return [one for one in sheet.columns if not one.once]


# --- widths


def _guide_widths(taxa: int, width: float) -> tuple[float, ...] | None:
    """Characters, each taxon, thresholds; None where the taxa leave too little for words."""
    each = 27.0 if taxa <= 3 else 22.0
    limits = min(78.0, 0.3 * width)
    first = width - limits - taxa * each
    return (first, *[each] * taxa, limits) if first >= 45 else None


def _widths(columns: Sequence[Column], width: float) -> tuple[float, ...] | None:
    """Room for the longest word of each heading, and for what is written; what is left goes to words, most to remarks.

    None where the headings alone are too wide.
    """
    least = [max(_longest(one.heading) * _BOLD, _room(one)) + 2 * PAD for one in columns]
    left = width - sum(least)
    if left < 0:
        return None
    shares = [0.0 if one.heading.endswith("]") else 3.0 if one.heading.endswith("Remarks") else 1.0 for one in columns]
    each = left / sum(shares)
    return tuple(one + share * each for one, share in zip(least, shares, strict=True))


def _room(column: Column) -> float:
    if column.once:
        return 20.0
    return 13.0 if column.character else 18.0


def _longest(text: str) -> float:
    return max((text_width(word, SIZE) for word in text.split()), default=0.0)


# --- heights


def _used(sheet: Sheet, width: float, guide: Sequence[float], once: Sequence[float], plants: Sequence[float]) -> float:
    """What all but the rows of the plants takes up, in mm."""
    heads = [_head_height(columns, each) for columns, each in ((_once(sheet), once), (_of_plant(sheet), plants))]
    cautions = " ".join(sheet.cautions)
    beside = max(HEIGHT_MM + line_height(SIZE) * 2, _height(cautions, width - WIDTH_MM - 3))
    below = HEIGHT_MM + line_height(SIZE) + _height(cautions, width)
    return (
        _lines(plain(title(sheet)), width - 32, TITLE_SIZE) * line_height(TITLE_SIZE)
        + _guide_height(sheet, guide)
        + sum(_height(plain(one), width) + 0.5 for one in notes(sheet))
        + sum(heads)
        + ROW
        + (beside if is_beside(width) else below)
        + (_lines(sheet.notice, width, SMALL) * line_height(SMALL) if sheet.notice else 0)
        + 6 * GAP
    )


def is_beside(width: float) -> bool:
    """Whether the cautions stand beside the scale bar, or below it."""
    return width - WIDTH_MM > 110


def _guide_height(sheet: Sheet, widths: Sequence[float]) -> float:
    first, *taxa, limits = (one - 2 * PAD for one in widths)
    heads = [
        _lines(plain(sheet.short[taxon]), room, SIZE, bold=True) for taxon, room in zip(sheet.taxa, taxa, strict=True)
    ]
    total = max(heads, default=1) * line_height(SIZE) + 1
    for item in sheet.items:
        cells = [_lines(" ".join(character_words(item)), first, SIZE)]
        cells += [_lines(said_of(item, number), room, SIZE) for number, room in enumerate(taxa)]
        cells.append(sum(_lines(plain(one), limits, SIZE) for one in thresholds(item, sheet)))
        total += max(cells) * line_height(SIZE) + 0.8
    return total


def _head_height(columns: Sequence[Column], widths: Sequence[float]) -> float:
    """Heading and hint, each on lines of its own."""
    lines = [
        _lines(one.heading, room - 2 * PAD, SIZE, bold=True)
        + (_lines(one.hint, room - 2 * PAD, SIZE) if one.hint else 0)
        for one, room in zip(columns, widths, strict=True)
    ]
    return max(lines) * line_height(SIZE) + 1


def _height(text: str, width: float) -> float:
    return _lines(text, width, SIZE) * line_height(SIZE)


def line_height(size: float) -> float:
    """In mm, of a size in points."""
    return size * POINT * LEADING


def plain(runs: Runs) -> str:
    """The runs without their styles."""
    return "".join(text for text, _ in runs)


def _lines(text: str, width: float, size: float, *, bold: bool = False) -> int:
    """On how many lines the words come to stand; a word that is too long is broken."""
    lines, at, space = 1, 0.0, text_width(" ", size)
    for word in text.split():
        long = text_width(word, size) * _SAFETY * (_BOLD if bold else 1.0)
        if at and at + space + long > width:
            lines, at = lines + 1, 0.0
        at += long + (space if at else 0.0)
        more, at = divmod(at, width) if at > width else (0, at)
        lines += int(more)
    return lines


def text_width(text: str, size: float) -> float:
    """About how wide a line of sans-serif letters is, in mm, at a size in points."""
    return sum(map(_em, text)) * size * POINT


_NARROW, _WIDE = frozenset("ijl.,:;'|!()[]ft/ -r’"), frozenset("mwMW—%×≤@")


def _em(letter: str) -> float:
    if letter in _NARROW:
        return 0.3
    if letter in _WIDE:
        return 0.86
    return 0.7 if letter.isupper() else 0.55 if ord(letter) < 0x2E80 else 1.0
