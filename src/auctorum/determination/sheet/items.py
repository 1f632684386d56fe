"""The characters of a field sheet in the order of their worth, each with what parts the taxa by it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import ceil

from auctorum.characters.show import format_span
from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.phrases import at_stage
from auctorum.circumscription.separation import Parting, Separation
from auctorum.circumscription.separation_table import Row, pairs, rows
from auctorum.circumscription.separation_words import upper
from auctorum.circumscription.summary import NOTHING
from auctorum.circumscription.wording import of_habitat
from auctorum.corpus.readings import UNSTATED
from auctorum.determination.sheet.sheet import USEFUL_ERROR, AtStage, Boundary, Item, Where, Why
from auctorum.determination.sheet.units import codes, in_both_units

HINT_ERROR = 0.30  # up to which a threshold is of any use, where nothing better is known of the character
_FEW = 3  # taxa up to which every pair has its threshold at each character
_BEST = 1  # thresholds of a pair among more taxa

Decides = Mapping[tuple[str, str], tuple[str, ...]]  # by character and stage, thresholds of working criteria in print


@dataclass(frozen=True, slots=True)
class Wanted:
    """Characters that stand on the sheet whatever they are worth, with their stage; "" for the best of them."""

    asked: tuple[str, ...] = ()
    criterion: tuple[tuple[str, str], ...] = ()
    without: frozenset[str] = frozenset()


def worth(errors: Sequence[float | None], character: Character) -> float:
    """What a character is worth measuring: mean over the pairs of 1 - 2 * error, by its cost; silence is worth nothing.

    >>> worth((0.0, 0.25, None), Character("spur", "spur", "length", Kind.MEASURE, "mm"))
    0.5
    """
    told = sum(1 - 2 * error for error in errors if error is not None)
    return told / len(errors) / float(character.cost)


def items(found: Separation, vocabulary: Vocabulary, wanted: Wanted, decides: Decides) -> tuple[Item, ...]:
    """The characters that part any two of the taxa, and those that are wanted; the best first, of the site last."""
    table: dict[str, list[Row]] = defaultdict(list)
    for row in rows(found, vocabulary):
        if row.stage != UNSTATED and row.character not in wanted.without:
            table[row.character].append(row)
    why = _why(table, vocabulary, wanted)
    shown = _pairs_shown(found)
    made = [
        _item(vocabulary[name], _rows_of(name, table, wanted, found), reason, found, shown, decides)
        for name, reason in why.items()
    ]
    made.sort(key=lambda item: (item.where is Where.SITE, -round(item.worth, 9)))
    return _ranked(made, found, vocabulary, wanted)


def part_nothing(found: Separation, several: Iterable[Item], vocabulary: Vocabulary) -> tuple[str, ...]:
    """The characters of which something is stated of two taxa, and that are not on the sheet."""
    known = {one.character for one in found.partings if one.error is not None}
    on_it = {item.character for item in several}
    return tuple(name for name in vocabulary if name in known and name not in on_it)


def _why(table: Mapping[str, Sequence[Row]], vocabulary: Vocabulary, wanted: Wanted) -> dict[str, Why]:
    found = {name: Why.PARTS for name, told in table.items() if any(map(_parts, told))}
    for name, _ in wanted.criterion:
        found.setdefault(name, Why.CRITERION)
    for name in wanted.asked:
        found.setdefault(name, Why.ASKED)
    for name in list(found):
        for part in vocabulary[name].of:
            found.setdefault(part, Why.RATIO)
    return {name: why for name, why in found.items() if name not in wanted.without}


def _parts(row: Row) -> bool:
    return any(error is not None and error <= USEFUL_ERROR for error in row.errors)


def _rows_of(name: str, table: Mapping[str, Sequence[Row]], wanted: Wanted, found: Separation) -> list[Row]:
    """The stages at which it parts taxa or is asked for by a criterion; else the best one, or one of silence."""
    told = table.get(name, [])
    stages = {stage for one, stage in wanted.criterion if one == name}
    some = [row for row in told if _parts(row) or row.stage in stages] or list(told[:1])
    missing = stages - {row.stage for row in some} if some else (stages or {""})
    silent = [Row(name, stage, (NOTHING,) * len(found.taxa), (None,) * len(pairs(found))) for stage in sorted(missing)]
    return [*some, *silent]


def _item(
    character: Character,
    told: Sequence[Row],
    why: Why,
    found: Separation,
    shown: Mapping[tuple[str, str], Collection[tuple[str, str]]],
    decides: Decides,
) -> Item:
    where = Where.SITE if of_habitat(character) else Where.RECKONED if character.of else Where.PLANT
    stages = tuple(
        AtStage(
            row.stage,
            at_stage(character.name, row.stage),
            worth(row.errors, character),
            row.says,
            row.errors,
            _boundaries(shown.get((row.character, row.stage), ()), row, found, character),
            decides.get((row.character, row.stage), ()),
        )
        for row in told
    )
    names = () if character.kind.is_numeric else codes(state_names(character))
    heading = "" if where is Where.RECKONED else column_heading(character)
    return Item(character.name, heading, where, why, character.how, stages, names, 0)


def column_heading(character: Character) -> str:
    """The heading of its column as tables read it: `spur length [mm]`, `spur colour`."""
    return f"{character.name} [{character.unit}]" if character.unit else character.name


# --- thresholds


def _pairs_shown(found: Separation) -> dict[tuple[str, str], list[tuple[str, str]]]:
    """By character and stage the pairs whose threshold is printed; among many taxa each pair at its best alone."""
    shown: dict[tuple[str, str], list[tuple[str, str]]] = defaultdict(list)
    for pair in pairs(found):
        cut = [one for one in found.of(*pair) if one.cut is not None and one.error is not None]
        usual = [one for one in cut if one.stage != UNSTATED and (one.error or 0) <= HINT_ERROR]
        for one in usual if len(found.taxa) <= _FEW else usual[:_BEST]:
            shown[one.character, one.stage].append(pair)
    return shown


def _boundaries(
    shown: Collection[tuple[str, str]], row: Row, found: Separation, character: Character
) -> tuple[Boundary, ...]:
    """The thresholds of these pairs, the lowest first; pairs that one threshold parts are taken together.

    Those that help, or where none does those that give a hint.
    """
    some = [
        one for pair in shown for one in found.of(*pair) if (one.character, one.stage) == (row.character, row.stage)
    ]
    useful = [one for one in some if one.error is not None and one.error <= USEFUL_ERROR] or some
    by_cut: dict[tuple[object, str], list[Parting]] = defaultdict(list)
    for one in useful:
        if one.cut is not None:
            by_cut[one.cut.value, one.lower].append(one)
    joined: dict[tuple[object, tuple[str, ...]], list[tuple[str, list[Parting]]]] = defaultdict(list)
    for (value, lower), several in by_cut.items():
        above = tuple(taxon for taxon in found.taxa if taxon in {upper(one) for one in several})
        joined[value, above].append((lower, several))
    made = [_boundary(several, above, found, character) for (_, above), several in joined.items()]
    return tuple(boundary for _, boundary in sorted(made, key=lambda one: one[0]))


def _boundary(
    several: Sequence[tuple[str, Sequence[Parting]]], above: tuple[str, ...], found: Separation, character: Character
) -> tuple[float, Boundary]:
    partings = [one for _, told in several for one in told]
    lowers = {lower for lower, _ in several}
    cut = partings[0].cut
    assert cut is not None
    upto, start = "", in_both_units(cut.value, character)
    if character.kind is Kind.COUNT:
        upto = format_span(cut.value - 1, cut.value - 1, "")
    elif character.kind is Kind.ORDERED:
        names = state_names(character)
        upto, start = names[ceil(cut.value) - 1], names[ceil(cut.value)]
    below = tuple(taxon for taxon in found.taxa if taxon in lowers)
    return float(cut.value), Boundary(below, above, upto, start, max(one.error or 0.0 for one in partings))


# --- which are kept where not all have room


def _ranked(several: Sequence[Item], found: Separation, vocabulary: Vocabulary, wanted: Wanted) -> tuple[Item, ...]:
    """Items with their rank: what was asked for, what decides, what parts each pair best, what supports, then by worth.

    The measures of a ratio have the rank of the ratio, or their own if that is better.
    """
    by_name = {item.character: item for item in several}
    order = [name for name in wanted.asked if name in by_name]
    order += [item.character for item in several if any(stage.decides for stage in item.stages)]
    for number in range(len(pairs(found))):
        best = min(several, key=lambda item: _error_of(item, number), default=None)
        if best is not None and _error_of(best, number) <= USEFUL_ERROR:
            order.append(best.character)
    order += [name for name, _ in wanted.criterion if name in by_name]
    order += [item.character for item in several if item.why is not Why.RATIO]
    ranks: dict[str, int] = {}
    for rank, name in enumerate(dict.fromkeys(order)):
        for one in (name, *vocabulary[name].of):
            if one in by_name:
                ranks.setdefault(one, rank)
    return tuple(replace(one, rank=ranks[one.character]) for one in several)


def _error_of(item: Item, pair: int) -> float:
    """Its least error for the pair; 1 for the site's, which says nothing of the plant."""
    if item.where is Where.SITE:
        return 1.0
    errors = [one.errors[pair] for one in item.stages]
    return min((error for error in errors if error is not None), default=1.0)
