"""Every range of a phrase in order, with what it measures: products, named properties, multiples of other organs."""

from __future__ import annotations

from dataclasses import replace

from auctorum.characters.bound_words import (
    AND,
    BEFORE_DE,
    DOWNWARDS,
    SAYS,
    TIMES_WORDS,
    UPWARDS,
)
from auctorum.characters.figures import Line
from auctorum.characters.measured import Measure
from auctorum.characters.notation import read_range
from auctorum.characters.tokens import Sort
from auctorum.characters.wording import MULTIPLES

_MOST_FACTORS = 4
_TIMES = ("x", "by", "sur", "por")
_COMPARED = ("as", "long", "longer", "shorter", "wider", "broader", "smaller", "larger", "taller", "the", "mas", "mais",
             "menor", "maior", "mayor", "so", "longior", "brevior")  # fmt: skip
_BEFORE = ("of", "about", "ca", "c", "up", "to", "is", "from", "de", "von", "usually", "mostly", "over", "at", "least")


def measures_of(line: Line) -> tuple[Measure, ...]:
    """The ranges in the order of the phrase; the factors of a product follow each other."""
    found: list[Measure] = []
    at = 0
    while at < len(line.tokens):
        first = read_range(line, at)
        if first is None:
            at += 1
            continue
        factors = _product(line, _described(line, first))
        if found and len(factors) == 1:
            factors = [_covered(line, found[-1], factors[0])]
        found.extend(factors)
        at = max(at + 1, factors[-1].end)
    return tuple(found)


def _product(line: Line, first: Measure) -> list[Measure]:
    factors = [first]
    while len(factors) < _MOST_FACTORS and not factors[-1].times:
        at = factors[-1].end
        if not (line.sort(at) is Sort.TIMES or line.text(at) in _TIMES):
            break
        factor = read_range(line, at + 1)
        if factor is None:
            break
        factors.append(_described(line, factor))
    if len(factors) == 1:
        return factors
    return _shared(factors)


def _shared(factors: list[Measure]) -> list[Measure]:
    """Units are carried back, then forward; a lead before the product (to, c.) covers every factor."""
    units = [factor.unit for factor in factors]
    for index in (*range(len(units) - 2, -1, -1), *range(1, len(units))):
        units[index] = units[index] or units[min(index + 1, len(units) - 1)] or units[max(index - 1, 0)]
    first = factors[0]
    return [
        replace(
            factor,
            unit=units[index],
            factor=index,
            begins=first.start,
            factors=len(factors),
            approximate=factor.approximate or first.approximate,
            low=None if first.at_most and factor.low == factor.high else factor.low,
        )
        for index, factor in enumerate(factors)
    ]


def _covered(line: Line, before: Measure, after: Measure) -> Measure:
    """`to 0.6 cm long, 0.3 cm diam.`: the maximum covers the second of a pair of single figures."""
    place = before.end
    joined = line.sort(place) is Sort.COMMA or line.text(place) in AND
    pair = joined and after.start == place + 1 and before.says and after.says and before.says != after.says
    single = after.low is not None and after.low == after.high and after.most is None
    if pair and single and before.at_most and before.unit and after.unit:
        return replace(after, low=None)
    return after


def _described(line: Line, measure: Measure) -> Measure:
    """The measure with the properties named behind it (`long and wide`, `in diameter`) or before (`height 5 cm`)."""
    at = measure.end
    if line.text(at - 1) in MULTIPLES:
        return replace(measure, times=True)
    if line.text(at + (line.sort(at) is Sort.DASH)) in TIMES_WORDS or _is_comparison(line, at):
        return replace(measure, times=True, end=at + 1)
    at = _skip_hyphen(line, at)
    says, end = _named_after(line, at)
    if end == at:
        return replace(measure, says=_named_before(line, measure.start))
    # "1¼ in. long or less", "30 cm long and more"
    if (after := line.phrase(end, DOWNWARDS)) > end:
        return replace(measure, says=says, end=after, low=None)
    if (after := line.phrase(end, UPWARDS)) > end:
        alone = measure.low == measure.high
        return replace(measure, says=says, end=after, high=None if alone else measure.high, more=not alone)
    return replace(measure, says=says, end=end)


def _skip_hyphen(line: Line, at: int) -> int:
    return at + 1 if line.sort(at) is Sort.DASH and line.text(at + 1) in SAYS else at


def _is_comparison(line: Line, at: int) -> bool:
    """`3 x as long as`, `1/2 as long`: the sign or the bare figure is followed by a comparison."""
    if line.sort(at) is Sort.TIMES or line.text(at) == "x":
        return line.text(at + 1) in _COMPARED
    of_length = line.text(at) == "the" and line.text(at + 1) in SAYS and line.text(at + 2) in ("of", "and")
    return of_length or (line.text(at) in ("as", "so") and (line.text(at + 1) in SAYS or line.text(at + 1) == "many"))


def _named_after(line: Line, at: int) -> tuple[tuple[str, ...], int]:
    if [line.text(at + step) for step in range(5)] == ["d", ".", "b", ".", "h"]:
        return ("diameter",), line.skip(at + 5, Sort.POINT)  # of a trunk at breast height
    place = at + (line.text(at) in ("in", "im", "de", "of", "en", "di"))
    word = line.text(place)
    if word not in SAYS:
        return (), at
    says, end = [SAYS[word]], line.skip(place + 1, Sort.POINT)
    if line.text(end) in ("and", "or", "et") and line.text(end + 1) in SAYS:
        says.append(SAYS[line.text(end + 1)])
        end = line.skip(end + 2, Sort.POINT)
    return tuple(says), end


def _named_before(line: Line, at: int) -> tuple[str, ...]:
    """The property just before the figure (`trunk diameter about 6 inches`), if nothing has ended between them."""
    place = at - 1
    while place >= at - 3 and (line.text(place) in _BEFORE or line.sort(place) in (Sort.COLON, Sort.POINT)):
        place -= 1
    word = line.text(place)
    if line.text(place + 1) in ("de", "di") and word in BEFORE_DE:
        return (BEFORE_DE[word],)
    if word not in SAYS or word in ("long", "wide", "broad", "high", "tall", "thick", "across", "deep"):
        return ()
    used = line.sort(place - 1) is Sort.NUMBER or bool(line.unit(place - 1)[0]) or line.text(place - 1) == "in"
    return () if used else (SAYS[word],)
