"""Single figures among tokens: numbers in digits, fractions and words, with the unit that stands behind them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.bound_words import INCH_BEFORE, PREPOSITION_AFTER_IN
from auctorum.characters.tokens import Number, Sort, Token
from auctorum.characters.units import SIGNS, convert, find_unit, paris
from auctorum.characters.wording import (
    ARTICLES,
    FRACTION_WORDS,
    GROUPED,
    MULTIPLES,
    NUMBER_WORDS,
    TENS,
    Phrase,
    counted_adjective,
    measured_adjective,
    number_of,
    prefix_number,
    unit_adjective,
)

_MEASURED_ACCUSATIVES = frozenset({"lineam", "pollicem", "unciam", "pedem"})
_LARGEST_PART = 1000
_NEXT_SMALLER = {"ft": "in", "in": "line", "paris-foot": "paris-inch", "paris-inch": "paris-line"}


@dataclass(frozen=True, slots=True)
class Figure:
    """A number with its own unit (empty where none is printed beside it); `end` is the token after it."""

    number: Number
    unit: str
    end: int
    about: bool = False
    spelt: bool = False  # a number word, not digits


@dataclass(frozen=True, slots=True)
class Line:
    """The tokens of a phrase, and how its work prints measures: its key to signs and its line."""

    tokens: tuple[Token, ...]
    signs: Mapping[str, str] = field(default_factory=dict)
    line: str = "english"
    signed: bool = False  # elevations may start with a minus

    def sort(self, at: int) -> Sort | None:
        return self.tokens[at].sort if 0 <= at < len(self.tokens) else None

    def text(self, at: int) -> str:
        return self.tokens[at].text if 0 <= at < len(self.tokens) else ""

    def skip(self, at: int, *sorts: Sort) -> int:
        """The place after one token of these sorts, or the same place."""
        return at + 1 if self.sort(at) in sorts else at

    def phrase(self, at: int, table: Mapping[str, tuple[Phrase, ...]]) -> int:
        """The place after the longest phrase of the table that stands here, with its point; `at` if none does."""
        for words in table.get(self.text(at), ()):
            if all(self.text(at + step) == word for step, word in enumerate(words)):
                return self.skip(at + len(words), Sort.POINT)
        return at

    def unit(self, at: int) -> tuple[str, int]:
        """The unit that stands here behind a figure, and the place after it; empty and `at` if none does."""
        sort, text = self.sort(at), self.text(at)
        if sort is Sort.SIGN and (self.tokens[at].glued or text in "°%"):
            said = self.signs.get(text) or SIGNS.get(text) or SIGNS['"']
            unit = find_unit(said)
        elif sort is Sort.WORD and not self._is_preposition(at):
            if text == "paris" and self.sort(at + 1) is Sort.WORD and (unit := find_unit(self.text(at + 1))):
                return paris(unit.name), self.skip(at + 2, Sort.POINT)
            unit = find_unit(text) or find_unit(unit_adjective(text))
        else:
            return "", at
        if unit is None:
            return "", at
        name = paris(unit.name) if self.line == "paris" else unit.name
        return name, self.skip(at + 1, Sort.POINT)

    def _is_preposition(self, at: int) -> bool:
        if self.text(at) != "in" or self.sort(at + 1) is Sort.POINT:
            return False
        following = self.text(at + 1)
        if self.sort(at + 1) is Sort.WORD and not self.tokens[at].glued:
            return following in PREPOSITION_AFTER_IN or following not in INCH_BEFORE
        return self.sort(at + 1) is Sort.NUMBER

    def figure(self, at: int) -> Figure | None:
        """The figure that starts here with its unit, or None."""
        found = self._digits(at) or self._spelt(at)
        if found is None or found.unit:
            return found
        of_one = found.end + 2 if self.text(found.end) == "of" and self.text(found.end + 1) in ("a", "an") else 0
        if of_one and found.number.value < 1 and self.unit(of_one)[0]:  # ¾ of an inch
            return Figure(found.number, *self.unit(of_one), found.about, found.spelt)
        unit, end = self.unit(self.skip(found.end, Sort.DASH))
        if not unit:
            return found
        number, end = self._and_a_half(found.number, end)
        return self._with_rest(Figure(number, unit, end, found.about, found.spelt))

    def _with_rest(self, whole: Figure) -> Figure:
        """`3 ft. 6 in.`, `1 in. 6 lin.`: both together in the smaller unit."""
        rest = self._digits(whole.end) if whole.unit in _NEXT_SMALLER else None
        unit, end = self.unit(rest.end) if rest else ("", 0)
        if rest is None or unit != _NEXT_SMALLER[whole.unit] or not 0 < rest.number.value < 12:
            return whole
        return Figure(number_of(whole.number.exact * 12 + rest.number.exact), unit, end, whole.about)

    def _digits(self, at: int) -> Figure | None:
        if self.signed and self.sort(at) is Sort.DASH and self.text(at) == "-" and self._is_minus(at):
            number = self.tokens[at + 1].number
            return Figure(Number(-number.value, number.parts), "", at + 2) if number else None
        if self.sort(at) is not Sort.NUMBER:
            return None
        number = self.tokens[at].number
        return Figure(number, "", at + 1) if number else None

    def _is_minus(self, at: int) -> bool:
        follows = self.sort(at + 1) is Sort.NUMBER and self.tokens[at + 1].glued
        return follows and self.sort(at - 1) not in (Sort.NUMBER, Sort.CLOSE)

    def _spelt(self, at: int) -> Figure | None:
        if self.sort(at) is not Sort.WORD:
            return None
        text = self.text(at)
        if text == "half" and self.text(at + 1) == "again":
            return Figure(number_of(Fraction(3, 2)), "", at + 2, spelt=True)
        fraction, end = self._fraction(at)
        if fraction is not None:
            return Figure(fraction, "", end, spelt=True)
        if text in ("a", "an", "the") or text in _MEASURED_ACCUSATIVES:
            return self._one(at if text in _MEASURED_ACCUSATIVES else at + 1)
        if text in NUMBER_WORDS and (text not in GROUPED or self._is_grouped(at)):
            return self._number_word(at)
        if text in MULTIPLES:
            return Figure(Number(Decimal(MULTIPLES[text])), "", at + 1, text.startswith("sub"), spelt=True)
        if (prefix := prefix_number(text)) and self.sort(at + 1) is Sort.DASH and measured_adjective(self.text(at + 3)):
            return Figure(prefix, "", at + 2, spelt=True)
        adjective = measured_adjective(text)
        if adjective is not None:
            unit = paris(adjective[1]) if self.line == "paris" else adjective[1]
            return Figure(adjective[0], unit, at + 1, adjective[2], spelt=True)
        counted = counted_adjective(text)
        return Figure(counted, "", at + 1, spelt=True) if counted else None

    def _one(self, at: int) -> Figure | None:
        """`an inch`, `lineam longus`: one of the unit that stands here."""
        unit, end = self.unit(at)
        preposition = self.text(at) == "in" and self.sort(at + 1) is not Sort.POINT
        if not unit or self.sort(at) is not Sort.WORD or preposition:
            return None
        number, end = self._and_a_half(Number(Decimal(1)), end)
        return Figure(number, unit, end, spelt=True)

    def _is_grouped(self, at: int) -> bool:
        """`in pairs, threes`, `solitary`; but not the pairs of `eight pairs of leaflets`."""
        before = at - 1 - (self.sort(at - 1) is Sort.COMMA)
        counted = self.sort(before) is Sort.NUMBER or self.text(before) in NUMBER_WORDS.keys() - GROUPED
        return not counted and not (self.text(at) == "pairs" and self.text(at - 1) != "in")

    def _number_word(self, at: int) -> Figure:
        value, end = NUMBER_WORDS[self.text(at)], at + 1
        second = self.skip(end, Sort.DASH)
        if self.text(at) in TENS and second > end and 0 < NUMBER_WORDS.get(self.text(second), 10) < 10:
            value, end = value + NUMBER_WORDS[self.text(second)], second + 1
        number, end = self._and_a_half(Number(Decimal(value)), end)
        return Figure(number, "", end, spelt=True)

    def _and_a_half(self, number: Number, at: int) -> tuple[Number, int]:
        if self.text(at) == "and" and self.text(at + 1) in ("a", "one") and self.text(at + 2) in FRACTION_WORDS:
            return number_of(number.exact + FRACTION_WORDS[self.text(at + 2)]), at + 3
        return number, at

    def _fraction(self, at: int) -> tuple[Number | None, int]:
        """`half`, `a quarter of an`, `three fourths of an`; the words up to the unit are taken along."""
        many, end = 1, at
        if self.text(at) in ARTICLES:
            end = self.skip(at + 1, Sort.DASH)
        elif 1 < NUMBER_WORDS.get(self.text(at), 0) < 10:
            many, end = NUMBER_WORDS[self.text(at)], self.skip(at + 1, Sort.DASH)
        word = self.text(end)
        if word not in FRACTION_WORDS or (end == at and word not in ("half", "dimidium", "dimidiam", "semis")):
            return None, at
        end = self.skip(end + 1, Sort.DASH)
        end += self.text(end) == "of"
        if self.text(end) in ARTICLES and self.unit(end + 1)[0]:
            end += 1
        return number_of(many * FRACTION_WORDS[word]), end


def in_unit(number: Number, stated: str, wanted: str) -> Number:
    """The number in another unit: metric by moving the point, others as a fraction with the finer parts.

    >>> in_unit(Number(Decimal(8)), "mm", "cm").value, in_unit(Number(Decimal(8)), "in", "ft").parts
    (Decimal('0.8'), 12)
    """
    if not stated or stated == wanted:
        return number
    factor = convert(Decimal(1), stated, wanted)
    exact = number.exact * factor
    for power in range(-6, 7):
        if number.parts == 1 and factor == Fraction(10) ** power:
            return Number(number.value.scaleb(power))
    parts = number.parts * factor.denominator
    if exact.denominator == 1 and parts == 1:
        return Number(Decimal(int(exact)))
    return Number.of_fraction(exact, parts if parts <= _LARGEST_PART and parts % exact.denominator == 0 else 1)
