"""Do observers, or their instruments, measure differently, and what would that do to the count?"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from itertools import combinations

import numpy as np

from auctorum.circumscription.plants import LIST_MARK, Plant
from auctorum.corpus.criteria import Limit
from auctorum.determination.counting.comparing import Difference, difference_within
from auctorum.determination.criteria.criterion import VERDICTS, Verdict, judge_values
from auctorum.determination.normal import Floats
from auctorum.determination.survey.curve import Decisive
from auctorum.determination.survey.model import By, Measurers

MOST = 5  # observers, and instruments, that are compared: those with most figures
MOST_PAIRS = 1_000_000  # of figures in one comparison; of more, evenly chosen ones stand for all
NOTHING = Difference(0, 0, None, None, None, 1.0)
_LEAST = 2  # figures of each of the two, below which nothing is compared

Group = tuple[str, str]  # site and taxon, within which figures are compared
Figures = Mapping[str, Mapping[Group, Sequence[float]]]  # of each observer
Count = Callable[[Floats], int]  # figures of all plants -> how many count


def measurers(found: Decisive, limit: Limit, plants: Sequence[Plant], *, fitting: bool = True) -> tuple[Measurers, ...]:
    """Observers beside each other, then instruments, those with most figures first.

    Plants are compared that were given the same name at the same site. Figures with several observers, or with none
    named, are left out. `limit` is that of the count; `fitting`: those that fit are counted, else those that do not.
    """
    verdict = Verdict.FITS if fitting else Verdict.DOES_NOT_FIT

    def count(values: Floats) -> int:
        return int((judge_values(limit, values, found.errors) == VERDICTS.index(verdict)).sum())

    return (*_compared(By.OBSERVER, found, plants, count), *_compared(By.INSTRUMENT, found, plants, count))


def confounded(found: Decisive) -> bool:
    """Whether each observer had one instrument and each instrument one observer, so that neither can be told apart."""
    pairs = {(one.by, one.instrument) for _, one, _, _, _ in found.seen if one.by and one.instrument}
    observers, instruments = {by for by, _ in pairs}, {instrument for _, instrument in pairs}
    return len(pairs) > 1 and len(pairs) == len(observers) == len(instruments)


def _compared(by: By, found: Decisive, plants: Sequence[Plant], count: Count) -> Iterator[Measurers]:
    figures: dict[str, dict[Group, list[float]]] = {}
    rows: dict[str, list[int]] = {}
    total: Counter[str] = Counter()
    for place, one, _, _, _ in found.seen:
        who = one.by if by is By.OBSERVER else one.instrument
        if not who or LIST_MARK in who:
            continue
        total[who] += 1
        rows.setdefault(who, []).append(place)
        plant = plants[place]
        if plant.site is not None and plant.taxon is not None:
            figures.setdefault(who, {}).setdefault((plant.site, plant.taxon), []).append(float(found.values[place]))
    now = count(found.values)
    most = sorted(total, key=lambda one: (-total[one], one))[:MOST]
    for first, second in combinations(most, 2):
        yield _pair(Measurers(by, first, second, NOTHING, now, None, None), figures, rows, found.values, count)


def _pair(
    empty: Measurers, figures: Figures, rows: Mapping[str, Sequence[int]], values: Floats, count: Count
) -> Measurers:
    one, other = figures.get(empty.first, {}), figures.get(empty.second, {})
    pairs = [(sorted(one[group]), sorted(other[group])) for group in sorted(one.keys() & other.keys())]
    many = sum(len(a) * len(b) for a, b in pairs)
    part = min(1.0, (MOST_PAIRS / many) ** 0.5) if many else 1.0
    measured = difference_within([(_some(a, part), _some(b, part)) for a, b in pairs])
    if measured.median is None or min(measured.first, measured.second) < _LEAST:
        return replace(empty, difference=measured)
    as_second = count(_shifted(values, rows[empty.first], -measured.median))
    as_first = count(_shifted(values, rows[empty.second], measured.median))
    return replace(empty, difference=measured, as_second=as_second, as_first=as_first, thinned=part < 1)


def _some(ascending: Sequence[float], part: float) -> Sequence[float]:
    """Evenly chosen ones of the figures, one at least."""
    wanted = max(1, int(len(ascending) * part))
    if wanted >= len(ascending):
        return ascending
    return [ascending[int((number + 0.5) * len(ascending) / wanted)] for number in range(wanted)]


def _shifted(values: Floats, rows: Sequence[int], shift: float) -> Floats:
    found = values.copy()
    found[np.array(rows, dtype=np.intp)] += shift
    return found
