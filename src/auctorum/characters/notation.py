"""One range among tokens: typical figures, extremes in brackets, open ends, approximation, unit.

The grammar, with brackets round or square (dashes may stand inside or outside of them):

    range   = lead* [extreme dash?] figure [(dash | to | or) figure] {extreme | usual | conversion} [unit] [tail]
    lead    = about | at most | at least | how often | between
    extreme = "(" [rarely | to | dash] figure [dash figure] [dash | or | +] ")"
    tail    = "+" | or more | or less | ", rarely" [to] figure

A bracket that holds a full range far off, or another unit, converts the range; it is no extreme.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from auctorum.characters.bound_words import (
    ABOUT,
    AND,
    AT_LEAST,
    AT_MOST,
    BETWEEN,
    DOWNWARDS,
    EXTREME,
    OR,
    RANGE_WORDS,
    UPWARDS,
)
from auctorum.characters.brackets import Bracket, read_bracket
from auctorum.characters.figures import Figure, Line
from auctorum.characters.frequency import frequency
from auctorum.characters.measured import Measure
from auctorum.characters.range_draft import RangeDraft, finished, of_one_dimension, take_bracket
from auctorum.characters.tokens import Number, Sort
from auctorum.characters.values import Modality

_MANY = ("several", "many", "numerous", "more", "multi", "multa", "multae", "varios", "viele")
_LONGEST_LEAD = 6
_LONGEST_LIST = 6
_MOST_BRACKETS = 3


def read_range(line: Line, at: int) -> Measure | None:
    """The range that starts at this token, or None; looks at a bounded number of tokens beyond it."""
    draft = RangeDraft()
    place = _lead(line, at, draft)
    place = _low_brackets(line, place, draft)
    place = _lead(line, place, draft) if draft.least else place
    first = line.figure(place)
    if first is None:
        return None
    draft.low = draft.high = first
    draft.about |= first.about
    place = _second(line, first.end, draft)
    place = _high_brackets(line, place, draft)
    place = _unit(line, place, draft)
    place = _tail(line, place, draft)
    return finished(draft, at, place)


def _lead(line: Line, at: int, draft: RangeDraft) -> int:
    for _ in range(_LONGEST_LEAD):
        start = at
        at = _lead_word(line, at, draft)
        if at == start:
            break
    return at


def _lead_word(line: Line, at: int, draft: RangeDraft) -> int:
    sort = line.sort(at)
    if sort is Sort.ABOUT:
        draft.about = True
        return at + 1
    if sort in (Sort.LESS, Sort.MORE):
        draft.at_most, draft.at_least = sort is Sort.LESS, sort is Sort.MORE
        return at + 1
    if sort is not Sort.WORD:
        return at
    # the longest phrase wins: "rarely more than" is a maximum, "more than" a minimum
    ends = {"most": line.phrase(at, AT_MOST), "least": line.phrase(at, AT_LEAST), "about": line.phrase(at, ABOUT)}
    kind, end = max(ends.items(), key=lambda item: item[1])
    often, after = frequency(line, at)
    if often is not None and after >= end:
        draft.often = often
        return after
    if end > at:
        if often is Modality.RARELY:  # "rarely more than 3" is usually at most that
            draft.often = Modality.USUALLY
        draft.about |= kind == "about"
        if kind == "least" and draft.often in (Modality.RARELY, Modality.NEVER):  # "rarely above 600 m"
            kind, draft.often = "most", Modality.USUALLY if draft.often is Modality.RARELY else None
        draft.at_most |= kind == "most"
        draft.at_least |= kind == "least"
        draft.bare_to |= kind == "most" and line.text(at) == "to" and end == at + 1
        return end
    if line.text(at) in BETWEEN:
        draft.between = True
        return at + 1
    return at


def _low_brackets(line: Line, at: int, draft: RangeDraft) -> int:
    """Extremes before the typical range: `(3-)5`, `[3](4)-5`, `(3 or)5`; `at` if no figure follows them."""
    place, least = at, draft.least
    for _ in range(_MOST_BRACKETS):
        bracket = read_bracket(line, place)
        if bracket is None or bracket.first is None or bracket.usual:
            break
        place = bracket.end
        least = least or bracket.first
    if place == at:
        return at
    after = line.skip(place, Sort.DASH)
    if after > place and line.figure(place) is not None:
        after = place  # a minus, not a dash
    if line.figure(after) is None:
        return at
    draft.least = least
    return after


def _second(line: Line, at: int, draft: RangeDraft) -> int:
    """The upper figure, if a dash or a joining word leads to one; of a mean and its deviation the mean is about."""
    if line.sort(at) is Sort.ABOUT and (deviation := line.figure(at + 1)) is not None:
        draft.about = True
        return deviation.end
    if line.sort(at) is Sort.DASH and line.sort(at + 1) is Sort.OPEN:
        return at
    many = at + 1 if line.sort(at) is Sort.DASH or line.text(at) in RANGE_WORDS | OR else at
    if many > at and line.text(many) in _MANY:  # 1–several
        draft.more = True
        return many + 1
    if (end := _list(line, at, draft)) > at:
        return end
    place = line.skip(at, Sort.DASH)
    word = line.text(place)
    joins_or = word in OR
    joins = word in RANGE_WORDS or joins_or or (draft.between and word in AND)
    if not joins and place == at:
        return at
    place += joins
    about = max(line.skip(place, Sort.ABOUT), line.phrase(place, ABOUT))
    second = line.figure(about)
    if second is None or (word == "a" and line.sort(about) is not Sort.NUMBER):
        return at
    first = draft.low or second
    if not of_one_dimension(first.unit, second.unit):
        return at
    if _is_mixed(line, first, second, at):
        mixed = Number.of_fraction(first.number.exact + second.number.exact, second.number.parts)
        draft.low = draft.high = replace(second, number=mixed)
        return _second(line, second.end, draft)  # `1-1/2 to 2 in.`
    draft.high, draft.either = second, joins_or
    if joins_or and second.number.exact < first.number.exact and not (first.unit and second.unit):
        draft.low, draft.high = second, first
    return second.end


def _list(line: Line, at: int, draft: RangeDraft) -> int:
    """`3, 4 or 5`, `in pairs, threes, or solitary`: from the least to the greatest; `at` if it is no list."""
    first = draft.low
    if first is None or first.unit:
        return at
    figures, place, last = [first], at, False
    while len(figures) < _LONGEST_LIST and not last:
        after = line.skip(place, Sort.COMMA)
        last = line.text(after) in OR
        figure = line.figure(after + last)
        if figure is None or (after == place and not last) or (figure.unit and not last):
            return at
        figures.append(figure)
        place = figure.end
    rising = all(one.number.exact < two.number.exact for one, two in pairwise(figures))
    if not last or len(figures) < 3 or not (rising or all(figure.spelt for figure in figures)):
        return at
    ordered = sorted(figures, key=lambda figure: figure.number.exact)
    draft.low, draft.high = ordered[0], replace(ordered[-1], unit=figures[-1].unit)
    return place


def _is_mixed(line: Line, first: Figure, second: Figure, at: int) -> bool:
    """`1-1/2 in.` is one and a half: a whole number, a hyphen without spaces, a proper fraction."""
    hyphen = line.sort(at) is Sort.DASH and line.text(at) == "-" and line.tokens[at].glued
    whole = first.number.parts == 1 and first.number.exact.denominator == 1 and first.number.value >= 1
    return hyphen and whole and not first.unit and second.number.parts > 1 and 0 < second.number.value < 1


def _high_brackets(line: Line, at: int, draft: RangeDraft) -> int:
    for _ in range(_MOST_BRACKETS):
        if line.sort(at) is Sort.PLUS:
            draft.more, at = True, at + 1
        bracket = read_bracket(line, line.skip(at, Sort.DASH))
        if bracket is None:
            break
        if bracket.first is None:
            draft.more = True
        else:
            take_bracket(_unsigned(bracket, draft), draft)
        at = bracket.end
    return at


def _unsigned(bracket: Bracket, draft: RangeDraft) -> Bracket:
    """`3(−4)`: a minus printed for the dash, beside figures that have none."""
    first, low = bracket.first, draft.low
    if first is None or low is None or first.number.value >= 0 or low.number.value < 0:
        return bracket
    number = replace(first.number, value=-first.number.value)
    return replace(bracket, first=replace(first, number=number), marked=True, last=replace(first, number=number)
                   if bracket.last is first else bracket.last)  # fmt: skip


def _unit(line: Line, at: int, draft: RangeDraft) -> int:
    """A unit behind the extremes, for every figure that has none of its own."""
    unit, end = line.unit(line.skip(at, Sort.DASH))
    draft.unit = unit
    return end if unit else at


def _tail(line: Line, at: int, draft: RangeDraft) -> int:
    if line.sort(at) is Sort.PLUS:
        draft.more, at = True, at + 1
    at = read_open_end(line, at, draft)
    if draft.unit:
        at = _high_brackets(line, at, draft)
    return _rare_tail(line, at, draft)


def read_open_end(line: Line, at: int, draft: RangeDraft) -> int:
    """`or more`, `et longiora` (after a comma too), `or less`."""
    place = line.skip(at, Sort.COMMA)
    if (end := line.phrase(place, UPWARDS)) > place:
        draft.more = True
        return end
    if (end := line.phrase(place, DOWNWARDS)) > place:
        draft.less = True
        return end
    return at


def _rare_tail(line: Line, at: int, draft: RangeDraft) -> int:
    """`, rarely 6-9`, `but exceptionally to 25 cm`: an extreme, the outer end of a rare range."""
    place = line.skip(at, Sort.COMMA)
    place += line.text(place) in ("but", "or", "and", "sed")
    end = line.phrase(place, EXTREME)
    if end == place:
        return at
    end = max(line.skip(end, Sort.LESS), line.phrase(end, AT_MOST), line.phrase(end, ABOUT))
    first = line.figure(end)
    if first is None:
        return at
    joined = line.sort(first.end) is Sort.DASH or line.text(first.end) in RANGE_WORDS | OR
    last = (line.figure(first.end + 1) if joined else None) or first
    take_bracket(Bracket(first, last, last.end, marked=True), draft)
    return last.end
