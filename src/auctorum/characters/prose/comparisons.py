"""Comparisons in words: `1.5–2 times as long as`, `half the length of`, `slightly longer than`, `calyce duplo longior`.

A comparison of `n` times longer is read as n times as long, `n times shorter` as 1/n (notation.md, section 4).
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from auctorum.characters.bound_words import ABOUT, OR, TIMES_WORDS
from auctorum.characters.figures import Line
from auctorum.characters.measured import Measure
from auctorum.characters.prose.comparison_words import (
    DIMENSION,
    LESS,
    LESS_LENGTHS,
    MORE,
    MORE_LENGTHS,
    MORE_WIDTHS,
    SAME,
)
from auctorum.characters.tokens import Number, Sort
from auctorum.characters.wording import MULTIPLES, number_of

_AS_WORDS = """
    as so tan tao tam aussi ebenso genau
"""
_AS = frozenset(_AS_WORDS.split())
_LINKS_WORDS = """
    as than that of the to que como wie als quam ac di de del della dei degli delle do da dos das du des in
    ut il lo
"""
_LINKS = frozenset(_LINKS_WORDS.split())
_ADVERBS_WORDS = """
    slightly much somewhat little a far considerably distinctly rather often usually sometimes up just
    conspicuously paulo multo paullo parum aliquanto vix manifeste leviter wenig viel etwas poco algo
    ligeramente pouco un peu barely mal plo times time vezes veces fois volte x many only very scarcely
    hardly equally
"""
_ADVERBS = frozenset(_ADVERBS_WORDS.split())
_APPROXIMATE_WORDS = """
    subaequans subaequantes subaequantia subaequilonga subaequilongus subaequilongi subequal subequalling
"""
_APPROXIMATE = frozenset(_APPROXIMATE_WORDS.split())
_LATIN_ENDINGS = """
    ior ius iores iora iore ioribus iorem ans antes antia ante antibus longus longa longum longi longae longis minus
    minores major
"""
_LATIN = tuple(_LATIN_ENDINGS.split())
_JOINTS = ("or", "to", "vel", "o", "ou", "oder", "bis")
_PHRASES = ((MORE_LENGTHS, "length", True), (MORE_WIDTHS, "width", True), (LESS_LENGTHS, "length", False))
_LONGEST = 14
_ONE = number_of(Fraction(1))


@dataclass(frozen=True, slots=True)
class Likeness:
    """How many times as long, wide... as something else: `against` is a dimension for a proportion within one organ.

    None is an open end. `before` tells that the other organ may stand before these words (Latin ablative).
    """

    property: str
    low: Number | None
    high: Number | None
    end: int
    approximate: bool = False
    against: str = ""
    before: bool = False
    least: Number | None = None
    most: Number | None = None


@dataclass(slots=True)
class _Heard:
    property: str = ""
    same: bool = False
    more: bool = False
    less: bool = False
    about: bool = False
    latin: bool = False
    against: str = ""


def read_likeness(line: Line, at: int, factor: Measure | None) -> Likeness | None:
    """The comparison whose words start here, behind its factor if one is given; None if there is none."""
    if factor is None and (line.text(at) in TIMES_WORDS or line.text(at - 1) in TIMES_WORDS):
        return None  # "n times longer": a factor that is not given
    heard = _Heard()
    place = at
    end = at if factor is not None else -1
    linked = factor is not None and line.text(at - 1) in _AS
    for _ in range(_LONGEST):
        step = _step(line, place, heard, linked)
        if step == place:
            break
        decisive = heard.same or heard.more or heard.less or (factor is not None and bool(heard.property))
        if decisive:
            end = step
        linked = line.text(step - 1) in _AS or (linked and line.text(step - 1) in _ADVERBS)
        place = step
        if heard.against:
            break
    if factor is None and (not (heard.same or heard.more or heard.less) or not _is_told(line, at, end, heard)):
        return None
    if factor is not None and not heard.property and not _of_length(line, at) and not _is_multiple_of(line, at):
        return None
    return _likeness(heard, factor, _past_links(line, end, heard))


def _is_told(line: Line, at: int, end: int, heard: _Heard) -> bool:
    """Whether `longer` is followed by what it is longer than; Latin needs no word for than, nor does `equalling`."""
    if heard.latin or heard.same or heard.against or line.text(at - 1) in OR:
        return True
    exceeding = any(line.text(place)[:6] in ("exceed", "surpas", "overto") for place in range(at, end))
    return exceeding or any(line.text(place) in _THAN for place in range(max(at, end - 3), end + 1))


_THAN = frozenset({"than", "que", "als", "quam", "di", "del", "della", "dei", "delle", "do", "da"})


def _is_multiple_of(line: Line, at: int) -> bool:
    """`il doppio del calice`, `double the sepals`."""
    return line.text(at - 1) in MULTIPLES and line.text(at) in _LINKS


def _of_length(line: Line, at: int) -> bool:
    return line.text(at) == "the" and line.text(at + 1) in DIMENSION


def _step(line: Line, at: int, heard: _Heard, linked: bool) -> int:
    """Take in the words here that belong to the comparison; the place after them, `at` where it has ended."""
    for hear in (_hear_phrase, _hear_degree, _hear_equal, _hear_against):
        if (end := hear(line, at, heard)) > at:
            return end
    word = line.text(at)
    if word in DIMENSION and (end := _hear_dimension(line, at, heard, linked)) > at:
        return end
    if line.sort(at) is Sort.ABOUT or (end := line.phrase(at, ABOUT)) > at:
        heard.about = heard.about or not (heard.same or heard.more or heard.less)
        return at + 1 if line.sort(at) is Sort.ABOUT else end
    if line.sort(at) is Sort.DASH and line.text(at + 1) in ("plo", "times"):
        return at + 2
    if word in _JOINTS and _goes_on(line, at + 1):
        return at + 1
    linking = word in _LINKS and (heard.property or heard.same or word == "the")
    return at + 1 if word in _AS or word in _ADVERBS or linking else at


def _hear_phrase(line: Line, at: int, heard: _Heard) -> int:
    """`mas largo`, `plus court`."""
    for table, name, more in _PHRASES:
        if (end := line.phrase(at, table)) > at:
            _hear(heard, name, more=more, less=not more)
            return end
    return at


def _hear_degree(line: Line, at: int, heard: _Heard) -> int:
    """`longer`, `brevior`."""
    word, following = line.text(at), line.text(at + 1)
    other = (word in ("lower", "higher") and following != "than") or (word == "more" and following == "or")
    if (word not in MORE and word not in LESS) or other:
        return at
    _hear(heard, MORE.get(word) or LESS[word], more=word in MORE, less=word in LESS)
    heard.latin |= word.endswith(_LATIN)
    return at + 1


def _hear_equal(line: Line, at: int, heard: _Heard) -> int:
    """`equalling`, `aequans`."""
    word = line.text(at)
    if word not in SAME:
        return at
    heard.same, heard.property = True, heard.property or SAME[word]
    heard.about |= word in _APPROXIMATE
    heard.latin |= word.endswith(_LATIN)
    return at + 1


def _hear_against(line: Line, at: int, heard: _Heard) -> int:
    """The second dimension of `as long as wide`."""
    word, before = line.text(at), line.text(at - 1)
    begun = heard.property or (heard.same and word != "long")
    if word not in DIMENSION or not begun or before == "the" or not _is_link(before):
        return at
    heard.against = DIMENSION[word]
    return at + 1


def _hear_dimension(line: Line, at: int, heard: _Heard, linked: bool) -> int:
    """`as long`, `the length of`, `longitudine`."""
    word = line.text(at)
    of_length = line.text(at - 1) == "the" and line.text(at + 1) == "of"
    second = heard.property and not heard.more and not heard.less and heard.property != DIMENSION[word]
    if second or not (linked or of_length or word == "longitudine"):
        return at
    heard.property = DIMENSION[word]
    heard.same |= linked or word == "longitudine"
    heard.latin |= word == "longitudine"
    return at + 1


def _hear(heard: _Heard, name: str, *, more: bool, less: bool) -> None:
    heard.property = heard.property or name
    heard.more |= more
    heard.less |= less


def _is_link(word: str) -> bool:
    return word in _LINKS or word in _AS


def _goes_on(line: Line, at: int) -> bool:
    """Whether a comparison goes on here: `or slightly longer than`."""
    for place in range(at, at + 4):
        word = line.text(place)
        if word in MORE or word in LESS or word in SAME:
            return True
        if word in ("mas", "mais", "plus", "piu"):
            return True
        if word not in _ADVERBS and line.phrase(place, ABOUT) == place and word not in _AS:
            return False
    return False


def _past_links(line: Line, end: int, heard: _Heard) -> int:
    """Past `than`, `as the`, unless a second dimension has ended the comparison."""
    if heard.against:
        return end
    while line.text(end) in _LINKS and line.sort(end) is Sort.WORD:
        end += 1
    return end


def _likeness(heard: _Heard, factor: Measure | None, end: int) -> Likeness | None:
    name = heard.property or "length"
    if factor is None:
        if heard.more and heard.less:
            return None
        low = None if heard.less else _ONE
        high = None if heard.more else _ONE
        return Likeness(name, low, high, end, heard.about, heard.against, heard.latin)
    low, high, least, most = factor.low, factor.high, factor.least, factor.most
    if factor.more:
        high = None
    if heard.less:
        low, high, least, most = _inverse(high), _inverse(low), _inverse(most), _inverse(least)
    return Likeness(name, low, high, end, factor.approximate or heard.about, heard.against, heard.latin, least, most)


def _inverse(number: Number | None) -> Number | None:
    if number is None or number.exact == 0:
        return None
    exact = 1 / number.exact
    return number_of(exact) if exact.denominator <= 12 else Number(round(number_of(exact).value, 3))


_SIDES = {"l": "length", "w": "width", "length": "length", "width": "width", "breadth": "width", "long": "length",
          "wide": "width", "broad": "width", "height": "height", "diameter": "diameter",
          "thickness": "thickness"}  # fmt: skip


def read_ratio_words(line: Line, at: int) -> tuple[str, int] | None:
    """`ratio of width to length` -> (`width/length`, the place after); an empty pair for a bare `ratio`; else None."""
    word = line.text(at)
    if word in ("ratio", "quotient", "index"):
        place = at + 1 + (line.text(at + 1) == "of")
        pair = _pair(line, place)
        if pair is not None:
            return pair[0], _past_is(line, pair[1])
        return ("", _past_is(line, place)) if word == "ratio" else None
    if word in _SIDES:
        pair = _pair(line, at)
        if pair is not None and line.text(pair[1]) in ("ratio", "index", "quotient"):
            return pair[0], _past_is(line, pair[1] + 1)
        if pair is not None and line.sort(at + 1) is Sort.SLASH and line.sort(_past_is(line, pair[1])) is Sort.NUMBER:
            return pair[0], _past_is(line, pair[1])
    return None


def _pair(line: Line, at: int) -> tuple[str, int] | None:
    first = _SIDES.get(line.text(at))
    joint = line.text(at + 1) in ("to", "by") or line.sort(at + 1) in (Sort.SLASH, Sort.COLON, Sort.DASH)
    second = _SIDES.get(line.text(at + 2))
    return (f"{first}/{second}", at + 3) if first and joint and second else None


def _past_is(line: Line, at: int) -> int:
    while line.text(at) in ("is", "of", "=") or line.sort(at) is Sort.COLON:
        at += 1
    return at
