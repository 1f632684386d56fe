"""Proportions: `1.5–2 times as long as the petals`, `half as long`, `3:2`, `shorter than`."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

from auctorum.characters.figures import Line
from auctorum.characters.notation import Measure
from auctorum.characters.tokens import Number, Sort
from auctorum.characters.values import Modality
from auctorum.characters.wording import TIMES_WORDS, number_of, phrases

_INVERSE_WORDS = "shorter smaller narrower menor menores brevior brevius breviores breviora brevioribus"
_INVERSE = frozenset(_INVERSE_WORDS.split())
_LONGER = phrases(
    "longer", "exceeding", "exceeds", "longior", "longius", "longiores", "longiora", "longioribus", "superans",
    "superantes", "surpassing", "wider", "broader", "taller", "or slightly longer", "or longer", "mas largo",
    "mas largos", "mas largas",
)  # fmt: skip
_SHORTER = phrases(
    "shorter", "brevior", "brevius", "breviores", "breviora", "brevioribus", "narrower", "smaller", "mas corto",
    "mas cortos", "mas cortas", "not exceeding",
)  # fmt: skip
_EQUAL = phrases(
    "as long as", "as wide as", "as broad as", "as high as", "as tall as", "as many as", "equalling", "equaling",
    "equals", "equal to", "equal", "aequans", "aequantes", "aequantia", "aequilongus", "aequilonga", "aequilongum",
    "aequilongis", "longitudine", "tan largos", "tan largo", "tan largas", "of the same length",
)  # fmt: skip
_ONE = Number(Decimal(1))


def read_ratio(line: Line, found: Iterable[Measure]) -> Measure | None:
    """The factor that the words state, `shorter` ones as 1/n; None where they state none."""
    ranges = tuple(found)
    multiples = [one for one in ranges if one.times]
    if multiples:
        return _with_rare(line, [_directed(line, one) for one in multiples])
    quotient = _quotient(line, ranges)
    if quotient is not None:
        return quotient
    compared = _compared(line)
    plain = [one for one in ranges if not one.unit]
    return compared or (plain[0] if plain else None)


def _with_rare(line: Line, multiples: list[Measure]) -> Measure:
    """`twice as long as wide, rarely 3.7 times`: the later multiple is an extreme."""
    first = multiples[0]
    for later in multiples[1:2]:
        rare = later.often is Modality.RARELY
        if rare and later.high and first.high and later.high.exact > first.high.exact:
            return replace(first, most=later.high)
        if rare and later.low and first.low and later.low.exact < first.low.exact:
            return replace(first, least=later.low)
    return first


def _directed(line: Line, measure: Measure) -> Measure:
    near = {line.text(at) for at in range(measure.end, measure.end + 2)}
    if not near & _INVERSE:
        return measure
    return replace(
        measure,
        low=_inverse(measure.high),
        high=_inverse(measure.low),
        least=_inverse(measure.most),
        most=_inverse(measure.least),
    )


def _inverse(number: Number | None) -> Number | None:
    if number is None or number.exact == 0:
        return None
    exact = 1 / number.exact
    return number_of(exact) if exact.denominator <= 12 else Number(Decimal(f"{float(exact):.3f}"))


def _quotient(line: Line, ranges: tuple[Measure, ...]) -> Measure | None:
    """`ratio 3:2`."""
    for before, after in pairwise(ranges):
        colon = line.sort(before.end) is Sort.COLON and after.start == before.end + 1
        if colon and before.low and after.low and after.low.exact:
            exact: Fraction = before.low.exact / after.low.exact
            return replace(before, low=number_of(exact), high=number_of(exact), end=after.end)
    return None


def _compared(line: Line) -> Measure | None:
    """`equalling`, `longer than`, `as long as or slightly longer`: 1, with an open end."""
    if any(token.text in TIMES_WORDS for token in line.tokens):
        return None  # "n times longer": a factor that is not given
    equal = longer = shorter = False
    for at in range(len(line.tokens)):
        shorter |= line.phrase(at, _SHORTER) > at
        longer |= line.phrase(at, _LONGER) > at
        equal |= line.phrase(at, _EQUAL) > at
    if not (equal or longer or shorter) or (longer and shorter):
        return None
    return Measure(None if shorter else _ONE, None if longer else _ONE, "", 0, len(line.tokens))
