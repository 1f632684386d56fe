"""What one cell of a table says of a numeric character: the ways in which people and spreadsheets write a number.

Read: `31.5`, `31,5`, `1 234,5`, `1.234,5`, `31 mm`, `1.2"`, `1 1/4 in`, `1¼`, `ca. 31`, `31?`, `31 ± 0.5`, a range
`30–34`, and several of these in one cell, set apart by `;`, `|`, a line break or a comma with a blank behind it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.bounds import stated_step
from auctorum.characters.tokens import VULGAR, Number
from auctorum.characters.units import find_unit
from auctorum.characters.values import Range
from auctorum.problems import AuctorumError

MAX_LETTERS = 400  # of a cell with a measurement; what is longer was never one

# What people and programs write into a cell that holds nothing (common practice, no source), folded in case. `none` is
# not among them: of a part of a plant it says that there is none.
MISSING = frozenset(
    {
        "", "-", "--", "–", "—", "−", "?", "??", ".", "..", "...", "…", "n/a", "n.a.", "na", "#n/a", "#na", "nan",
        "n.d.", "n. d.", "nd", "no data", "null", "not measured", "not noted", "unknown",
    }
)  # fmt: skip
_BROKEN = re.compile(r"#(?:DIV/0!|REF!|VALUE!|NAME\?|NUM!|NULL!|SPILL!|CALC!|ERROR!|#+)", re.IGNORECASE)
_DASHES = "‐‑‒–—―−﹣－"
_PRINTED = str.maketrans(
    {
        **dict.fromkeys("\t\u00a0\u202f\u205f\u3000", " "),
        **dict.fromkeys((chr(code) for code in range(0x2000, 0x200B)), " "),
        **dict.fromkeys("\u200b\u200c\u200d\u2060\ufeff", ""),
        **dict.fromkeys(_DASHES, "-"),
        **dict.fromkeys("′’‘", "'"),
        **dict.fromkeys("″”“„", '"'),
    }
)  # fmt: skip
_PLAIN = re.compile(r"[0-9]{1,12}(?:\.[0-9]{1,9})?")
_SEVERAL = re.compile(r" ?[;|\n] ?|(?<=[^ ]), ")
_GROUPED = (
    re.compile(r"(?<![0-9.,])[0-9]{1,3}(?:[ '][0-9]{3})+(?![0-9/])"),  # 1 234,5
    re.compile(r"(?<![0-9.,])[0-9]{1,3}(?:\.[0-9]{3})+(?=,[0-9])"),  # 1.234,5
    re.compile(r"(?<![0-9.,])[0-9]{1,3}(?:,[0-9]{3})+(?=\.[0-9])"),  # 1,234.5
    re.compile(r"(?<![0-9.,])[0-9]{1,3}(?:(?:,[0-9]{3}){2,}|(?:\.[0-9]{3}){2,})(?![0-9.,])"),  # 1,234,567
)
_TWO_WAYS = re.compile(r"(?<![0-9.,])[1-9][0-9]{0,2},[0-9]{3}(?![0-9.,])")  # 1,234
_UNDER = frozenset((2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 16, 20, 24, 32, 64, 100))  # what rules are divided into
_DIGITS = r"[0-9]{1,12}(?:[.,·][0-9]{1,9})?(?:[eE][+-]?[0-9]{1,2})?"


def _figure(name: str) -> str:
    return (
        rf"(?:(?:(?P<{name}_whole>[0-9]{{1,6}})[ -]?)?(?P<{name}_vulgar>[¼½¾⅐-⅞])"
        rf"|(?:(?P<{name}_and>[0-9]{{1,6}}) )?(?P<{name}_over>[0-9]{{1,3}}) ?[/⁄] ?(?P<{name}_under>[0-9]{{1,3}})"
        rf"|(?P<{name}_digits>{_DIGITS}))"
    )


_UNIT = r"[^\W\d_]{1,20}\.?(?: [^\W\d_]{1,20}\.?)?|''|['\"°º˚%]"
_ONE = re.compile(
    r"(?P<about>(?:ca|circa|about|approx|approximately|c|~|≈)\.? ?)?(?P<minus>-(?=[0-9¼-¾⅐-⅞]))?"
    rf"{_figure('low')} ?(?P<low_unit>{_UNIT})?(?: ?(?:-|to) ?{_figure('high')} ?(?P<high_unit>{_UNIT})?)?"
    rf"(?: ?(?:±|\+ ?/ ?-) ?{_figure('error')} ?(?P<error_unit>{_UNIT})?)? ?(?P<doubt>\?{{1,3}}|\(\?\))?",
    re.IGNORECASE,
)
_BOUND = re.compile(
    r"(?:[<>≤≥]|(?:up to|over|under|above|below|at least|at most|more than|less than|min|max)\b)|[0-9] ?\+$",
    re.IGNORECASE,
)
_MONTH = r"(?:jan|feb|mar|mär|apr|may|mai|jun|jul|aug|sep|oct|okt|nov|dec|dez)[a-zé]{0,7}\.?"
_DATED = re.compile(
    rf"[0-9]{{1,2}}[.\- /]? ?{_MONTH}(?:[.\- /]? ?[0-9]{{2,4}})?|{_MONTH}[.\- /]? ?[0-9]{{1,4}}"
    r"|[0-9]{4}-[0-9]{1,2}-[0-9]{1,2}(?:[T ][0-9:.]{4,12})?"
    r"|[0-9]{1,2}/[0-9]{1,2}/[0-9]{2,4}|[0-9]{1,2}\.[0-9]{1,2}\.(?:[0-9]{2,4})?",
    re.IGNORECASE,
)


class UnreadableCell(AuctorumError, ValueError):
    """A cell that is no number, though one is wanted; `why` says what it seems to be."""

    def __init__(self, cell: str, why: str, remedy: str) -> None:
        super().__init__(cell, why, remedy)
        self.cell, self.why, self.remedy = cell, why, remedy

    def __str__(self) -> str:
        shown = self.cell if len(self.cell) <= 60 else self.cell[:59] + "…"
        return f"{shown!r} {self.why}"


@dataclass(frozen=True, slots=True)
class CellNumber:
    """One measurement of a cell, in `unit` ("" where the cell names none).

    `slack` is the half-width that the writing leaves (None: half the step of the printed digits), `error` the
    half-width that the cell states itself (`31 ± 0.5`; None where it states none). `remark` says what a person
    should look at.
    """

    number: Decimal
    unit: str = ""
    slack: Fraction | None = None
    error: Fraction | None = None
    remark: str = ""


def printed(cell: str) -> str:
    """The cell with blanks, dashes and quotation marks in one form, and none of the blanks round it.

    >>> printed(" 30\\u00a0\\u2013 34 ")
    '30 - 34'
    """
    if cell.isascii():
        return cell.replace("\t", " ").replace("\r", "").strip()
    return cell.translate(_PRINTED).replace("\r", "").strip()


def is_missing(cell: str) -> bool:
    """Whether the cell says that there is nothing: empty, or one of the marks in `MISSING`.

    >>> is_missing("N/A"), is_missing(" \\u2013 "), is_missing("0")
    (True, True, False)
    """
    return len(cell) < 40 and (cell in MISSING or printed(cell).casefold() in MISSING)


def check_broken(cell: str) -> None:
    """Raises UnreadableCell for what a spreadsheet writes where a formula failed or a column is too narrow."""
    if cell.startswith("#") and _BROKEN.fullmatch(cell):
        why = "is an error of the spreadsheet" if cell.strip("#") else "is what a column too narrow shows"
        raise UnreadableCell(cell, why, "correct the formula, or write the value; leave the cell empty for none")


def cell_numbers(cell: str) -> tuple[CellNumber, ...]:
    """The measurements in one cell, in their order; none for a mark of a missing value. Raises UnreadableCell.

    >>> [str(one.number) for one in cell_numbers("31; 33,5 mm")], cell_numbers("30–34")[0].slack
    (['31', '33.5'], Fraction(2, 1))
    """
    if _PLAIN.fullmatch(cell):
        return (CellNumber(Decimal(cell)),)
    if is_missing(cell):
        return ()
    if len(cell) > MAX_LETTERS:
        raise UnreadableCell(cell, f"has {len(cell)} letters and is no number", "write one number in a cell")
    check_broken(cell)
    text = " ".join(part for part in printed(cell).split(" ") if part)
    if (text[:1] + text[-1:]).strip("\"'") == "" and len(text) > 2:
        text = text.strip("\"'")
    parts = [part for part in _SEVERAL.split(text) if not is_missing(part)]
    found = [_one(part, cell) for part in parts]
    if not found:
        return ()
    last = found[-1].unit
    if last and not any(one.unit for one in found[:-1]):
        found = [replace(one, unit=last) for one in found]  # 31; 33; 34 mm
    return tuple(found)


def _one(part: str, cell: str) -> CellNumber:
    text = part
    for grouped in _GROUPED:
        text = grouped.sub(lambda match: re.sub(r"[^0-9]", "", match[0]), text)
    match = _ONE.fullmatch(text)
    if match is None:
        raise _unreadable(part, cell)
    if _DATED.fullmatch(text):
        raise _dated(part)
    remarks = []
    if _TWO_WAYS.search(text):
        remarks.append("the comma was read as a decimal mark")
    if match["doubt"]:
        remarks.append("it is marked as doubtful, and was used all the same")
    low = _number(match, "low", part)
    unit = _unit(match["high_unit"] or match["low_unit"], part)
    if match["high_unit"] and match["low_unit"] and _unit(match["low_unit"], part) != unit:
        raise UnreadableCell(part, "has two units", "write both ends in one unit")
    found = CellNumber(-low.value if match["minus"] else low.value, unit, _half_step(low), None, "; ".join(remarks))
    if match["high_digits"] or match["high_over"] or match["high_vulgar"]:
        found = _between(found, low, _number(match, "high", part), part)
    if match["about"]:
        found = replace(found, slack=2 * slack_of(found))
    if match["error_digits"] or match["error_over"] or match["error_vulgar"]:
        error_unit = _unit(match["error_unit"], part)
        if error_unit and found.unit not in ("", error_unit):
            raise UnreadableCell(part, "has two units", "write the error in the unit of the value")
        error = _number(match, "error", part).exact
        found = replace(found, unit=found.unit or error_unit, error=error)
    return found


def slack_of(one: CellNumber) -> Fraction:
    """Half the width that the writing of a measurement leaves, in its unit: as told, else half its last digit."""
    return one.slack if one.slack is not None else stated_step(Range(one.number, one.number)) / 2


def _between(low_end: CellNumber, low: Number, high: Number, part: str) -> CellNumber:
    """A range as its middle with half its width."""
    if low_end.number < 0 or high.value < low.value:
        raise UnreadableCell(part, "is a range whose lower end is above its upper", "give the lower end first")
    middle = (low.value + high.value) / 2
    step = max(slack_of(low_end), _half_step(high) or stated_step(Range(high.value, high.value)) / 2)
    return replace(low_end, number=middle, slack=max((high.exact - low.exact) / 2, step))


def _half_step(number: Number) -> Fraction | None:
    return Fraction(1, 2 * number.parts) if number.parts > 1 else None


def _number(match: re.Match[str], name: str, part: str) -> Number:
    if match[f"{name}_digits"]:
        value = Decimal(match[f"{name}_digits"].replace(",", ".").replace("·", "."))
        if value and abs(value.adjusted()) > 12:
            raise UnreadableCell(part, "is too large or too small for a measurement", "write it in a fitting unit")
        return Number(value)
    if match[f"{name}_vulgar"]:
        fraction = VULGAR[match[f"{name}_vulgar"]]
        return Number.of_fraction(int(match[f"{name}_whole"] or 0) + fraction, fraction.denominator)
    over, under = int(match[f"{name}_over"]), int(match[f"{name}_under"])
    if under not in _UNDER or over >= under:
        remedy = "write several numbers as 31; 33, a fraction as 1 1/4"
        raise UnreadableCell(part, "is no fraction of a measure", remedy)
    return Number.of_fraction(int(match[f"{name}_and"] or 0) + Fraction(over, under), under)


def _unit(word: str | None, part: str) -> str:
    if not word:
        return ""
    unit = find_unit(word)
    if unit is None:
        remedy = "write a number, or a number with its unit: 31 mm"
        raise UnreadableCell(part, f"holds `{word}`, which is no unit", remedy)
    return unit.name


def _dated(part: str) -> UnreadableCell:
    why = "is a date: the spreadsheet probably took a number such as 5.6 for one"
    return UnreadableCell(part, why, "type the number anew in a column formatted as text")


def _unreadable(part: str, cell: str) -> UnreadableCell:
    if _DATED.fullmatch(part):
        return _dated(part)
    if _BOUND.search(part):
        return UnreadableCell(part, "is a bound, no measurement", "write what was measured, or leave the cell empty")
    if cell.startswith("="):
        return UnreadableCell(part, "is a formula, not its result", "save the table with values")
    return UnreadableCell(part, "is no number", "write digits: 31.5 or 31,5")
