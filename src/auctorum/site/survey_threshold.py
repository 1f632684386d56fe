"""The decisive character of a survey on its page: histogram, what authors state, and how the count hangs on it."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import groupby
from math import ceil, floor

from auctorum.characters.show import format_span
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.cuts import STEPS
from auctorum.circumscription.phrases import capital
from auctorum.circumscription.separation_words import label
from auctorum.determination.many import as_float
from auctorum.determination.survey.curve_words import (
    BOUND_HEADINGS,
    bound_rows,
    curve_headings,
    curve_rows,
    curve_title,
    said,
)
from auctorum.determination.survey.model import Bound, Curve, Ground, Survey
from auctorum.site.answers import Answers
from auctorum.site.page_parts import Figure
from auctorum.site.pictures.histogram import MOST_NAMES, Column, Histogram, axis_of, histogram, key_samples
from auctorum.site.pictures.range_ladder import Rung
from auctorum.site.pictures.step_line import StepLine, step_line
from auctorum.site.survey_moving import at_place, beside_words, drawing_shift, mover, sentence
from auctorum.site.survey_parts import Table, Threshold
from auctorum.site.words import plain

MOST_COLUMNS = 24
MOST_STEPS = 400  # corners of the step line; of more, evenly chosen ones are drawn
NO_NAME, OTHERS = "no name in use", "other names"
_PATTERNS = ("slant", "dots", "level")


def threshold(answers: Answers, taxon: str, found: Survey, rows: Sequence[str]) -> Threshold | None:
    """All of it; `rows` are the ids of the sites that have a row on the page. None where nothing was measured."""
    curve = found.curve
    if curve is None or not found.readings:
        return None
    corpus = answers.corpus
    character = corpus.vocabulary[curve.limit.character]
    printed = said(curve, curve.limit.value, character)
    count, within = at_place(found.readings, curve, character, as_float(curve.limit.value))
    drawn = _histogram(answers, taxon, found, character, printed)
    line = _line(found, drawn, character)
    numbers = [one.value for one in found.readings] + [n for bound in curve.bounds for n in _ends(bound)]
    return Threshold(
        character=answers.character(character.name),
        label=capital(label(character, curve.limit.stage)),
        title=curve_title(corpus, curve),
        printed=printed,
        whose=_whose(found),
        said=sentence(count, within, curve, printed),
        beside=beside_words(curve),
        remarks=tuple(_remarks(found, count.named)),
        histogram=Figure(histogram(drawn, "h"), histogram(drawn, "hn", True), plain(_caption(drawn)),
                         key_samples(drawn, "h")),
        columns=_columns_table(drawn, curve, character),
        line=Figure(step_line(line, "s"), step_line(line, "sn", True), ()),
        curve=Table(curve_headings(curve), tuple(curve_rows(corpus, found)), (1, 2)),
        bounds=Table(BOUND_HEADINGS, tuple(bound_rows(corpus, curve)), (2, 3, 4)),
        mover=mover(curve, found.readings, character, rows, numbers),
    )  # fmt: skip


def _whose(found: Survey) -> str:
    """Whose the threshold is."""
    title = next((basis.title for basis in found.bases if basis.ground is Ground.CRITERION), "")
    return f"by the criterion {title}" if title else "as the records propose"


def _remarks(found: Survey, named: int) -> Iterator[str]:
    """How the count by the figures alone stands to that of the criterion."""
    for basis, count in zip(found.bases, found.whole.counts, strict=True):
        if basis.ground is Ground.CRITERION:
            yield (
                f"The figures alone count {named}. The criterion counts the {count.named} that lie beyond its "
                f"threshold by more than the error of measuring, and leaves {count.undecided} undecided."
            )
            return
    if found.curve is not None and found.curve.proposed:
        yield "No criterion of the knowledge base concerns the taxon: the threshold is what the records propose."


def _caption(drawn: Histogram) -> str:
    """What the rows below the axis say."""
    if not drawn.authors:
        return ""
    ends = "begins" if drawn.lower else "ends"
    return (
        f"Below the columns, what authors state: a heavy tick where the taxon {ends}, which is the threshold that the "
        "author implies, with the plants that it counts. A broken stroke repeats an earlier author."
    )


# --- the histogram


def _histogram(answers: Answers, taxon: str, found: Survey, character: Character, printed: str) -> Histogram:
    curve = found.curve
    assert curve is not None
    names = _names(found, taxon)
    lower = curve.fitting is curve.limit.at_least
    at = as_float(curve.limit.value) + drawing_shift(curve, character)
    title = f"{capital(label(character, curve.limit.stage))} of {len(found.readings)} plants"
    count, within = at_place(found.readings, curve, character, as_float(curve.limit.value))
    columns = tuple(_columns(found, [ids for _, _, ids in names], character))
    return Histogram(
        title,
        f"{sentence(count, within, curve, printed)} The table below it says the same, column by column.",
        curve.unit,
        tuple((words, kind) for words, kind, _ in names),
        columns,
        (at, "criterion" if not curve.proposed else "proposed"),
        printed,
        tuple(_rungs(curve, lower=lower)),
        f"what authors state; plants {'from its lower bound on' if lower else 'up to its upper bound'}",
        curve.states,
        character.kind is Kind.COUNT,
        lower,
    )


def _names(found: Survey, taxon: str) -> list[tuple[str, str, frozenset[str]]]:
    """Words, pattern and ids of the names given: the taxon, those given most often, all others, none."""
    words, given = dict(found.names), Counter(one.taxon for one in found.readings)
    others = sorted((one for one in given if one not in (taxon, "")), key=lambda one: (-given[one], one))
    rows = [(words.get(taxon, taxon), "solid", frozenset({taxon}))] if taxon in given else []
    alone = others if len(others) <= MOST_NAMES else others[: MOST_NAMES - 1]
    rows += [(words.get(one, one), kind, frozenset({one})) for one, kind in zip(alone, _PATTERNS, strict=False)]
    rest = frozenset(others[len(alone) :])
    rows += [(OTHERS, "other", rest)] if rest else []
    return [*rows, *([(NO_NAME, "blank", frozenset({""}))] if "" in given else [])]


def _columns(found: Survey, names: Sequence[frozenset[str]], character: Character) -> Iterator[Column]:
    """Columns of one round width, of which one begins (or ends) at the threshold, from the first plant to the last."""
    curve = found.curve
    assert curve is not None
    edge = curve.limit.value + Fraction(drawing_shift(curve, character))
    low, high = found.readings[0].value, found.readings[-1].value
    steps = [one for one in STEPS if one >= 1] if character.kind in (Kind.COUNT, Kind.ORDERED) else STEPS
    spread = max(high, edge) - min(low, edge)
    width = next((one for one in reversed(steps) if spread / one <= MOST_COLUMNS), steps[0])
    if curve.states:
        width = Fraction(1)
    place = _floor if curve.limit.at_least else _ceil
    held: dict[int, list[int]] = {}
    row_of = {id_: number for number, ids in enumerate(names) for id_ in ids}
    for one in found.readings:
        counts = held.setdefault(place((one.value - edge) / width), [0] * len(names))
        counts[row_of[one.taxon]] += 1
    for number in sorted(held):
        start = edge + number * width
        yield Column(as_float(start), as_float(start + width), tuple(held[number]))


def _floor(value: Fraction) -> int:
    """The column that holds its lower end, as plants at a lower threshold count."""
    return floor(value)


def _ceil(value: Fraction) -> int:
    """The column that holds its upper end."""
    return ceil(value) - 1


def _rungs(curve: Curve, *, lower: bool) -> Iterator[Rung]:
    """A row for each range that authors state, those who state the same in one, by the first of them."""
    first: dict[tuple[Fraction | None, ...], int] = {}
    for number, one in enumerate(curve.bounds):
        first.setdefault(_ends_of(one), number)

    def order(one: Bound) -> int:
        return first[_ends_of(one)]

    for _, several in groupby(sorted(curve.bounds, key=order), key=_ends_of):
        bounds = list(several)
        one = bounds[0]
        many = one.from_low if lower else one.upto_high
        more = f" and {len(bounds) - 1} more" if len(bounds) > 1 else ""
        low, high, least, most = (None if end is None else as_float(end) for end in _ends_of(one))
        yield Rung(
            one.title + more, "" if many is None else f"{many} plants", low, high,
            least if least != low else None, most if most != high else None, all(each.repeats for each in bounds),
        )  # fmt: skip


def _ends_of(one: Bound) -> tuple[Fraction | None, Fraction | None, Fraction | None, Fraction | None]:
    return one.low, one.high, one.least, one.most


def _ends(one: Bound) -> Iterator[Fraction]:
    yield from (end for end in (one.low, one.high) if end is not None)


def _columns_table(drawn: Histogram, curve: Curve, character: Character) -> Table:
    """The columns as a table; `all` last where there are several names."""
    several = len(drawn.names) > 1
    headings = (label(character, ""), *(name for name, _ in drawn.names), *(("all",) if several else ()))
    rows = []
    for column in drawn.columns:
        numbers = (*column.counts, *((sum(column.counts),) if several else ()))
        rows.append((_between(column, drawn, curve), *map(str, numbers)))
    return Table(headings, tuple(rows), tuple(range(1, len(headings))))


def _between(column: Column, drawn: Histogram, curve: Curve) -> str:
    """`23 to under 25 mm`, `over 25 to 27 mm`; a state, or whole numbers."""
    low, high = Fraction(column.low).limit_denominator(10**9), Fraction(column.high).limit_denominator(10**9)
    if curve.states:
        place = round((column.low + column.high) / 2)
        return curve.states[place] if 0 <= place < len(curve.states) else ""
    if drawn.whole:
        return format_span(low + Fraction(1, 2), high - Fraction(1, 2), "")
    first, last = format_span(low, low, ""), format_span(high, high, curve.unit)
    return f"{first} to under {last}" if curve.limit.at_least else f"over {first} to {last}"


# --- the step line


def _line(found: Survey, drawn: Histogram, character: Character) -> StepLine:
    curve = found.curve
    assert curve is not None
    falls = curve.fitting is curve.limit.at_least
    shift = drawing_shift(curve, character)
    counted = Counter(one.value for one in found.readings)
    total, passed, steps = len(found.readings), 0, []
    for value in sorted(counted):
        passed += counted[value]
        steps.append((as_float(value), total - passed if falls else passed))
    thin = -(-len(steps) // MOST_STEPS)
    kept = [*steps[:-1:thin], steps[-1]]
    marks = [end for bound in curve.bounds if (end := bound.low if falls else bound.high) is not None]
    return StepLine(
        f"{drawn.title}: how many count at each threshold",
        "The table below it says the same at handy thresholds.",
        drawn.unit,
        0 if not falls else total,
        tuple(kept),
        drawn.threshold,
        drawn.printed,
        (axis_of(drawn, False), axis_of(drawn, True)),
        tuple(as_float(mark) + shift for mark in marks),
        drawn.states,
    )
