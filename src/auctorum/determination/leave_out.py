"""A view that has learnt from plants, without some of them: so that no plant is determined by what it says itself."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import replace

import numpy as np

from auctorum.circumscription.density import Shape, shapes
from auctorum.circumscription.plants import Plant, plants_of
from auctorum.circumscription.voices import Voice
from auctorum.determination.normal import Floats
from auctorum.determination.own import Learnt, Told
from auctorum.determination.tables import Numbers, Table, floored, plain_of, row_of, summed
from auctorum.determination.view import Heard, Key, Statements, View, joined, table_of

GROUPS = 200  # views at most for one taxon: of more plants several are left out at a time

Sums = Mapping[Key, tuple[Sequence[Shape], Floats]]  # what authors draw, and its sum at the knots of the view


def views_without(
    statements: Statements, view: View, plants: Sequence[Plant], own: Sequence[Plant], works: Collection[str] | None
) -> Iterator[tuple[list[int], View]]:
    """Places in `plants` of some that the view has learnt from, and the view without these; each such plant once.

    One at a time, or several of one taxon where more than 200 would make as many views.
    """
    places = {plant.id: place for place, plant in enumerate(plants)}
    authors = {taxon: statements.heard(taxon, works) for taxon in view.taxa}
    learnt = {taxon: plants_of(own, taxon) for taxon in view.taxa}
    shown = {taxon: Learnt(learnt[taxon], view.vocabulary) for taxon in view.taxa}
    heard = {taxon: joined(authors[taxon], shown[taxon].voices(shown[taxon].keys)) for taxon in view.taxa}
    whole = dict(view.tables)
    for taxon in view.taxa:
        sums = _sums(view, authors[taxon])
        asked = [plant for plant in learnt[taxon] if plant.id in places]
        for first in range(min(GROUPS, len(asked))):
            group = asked[first::GROUPS]
            out = {plant.id for plant in group}
            keys = {(one.character, one.stage) for plant in group for one in plant.observations} & set(view.tables)
            told = shown[taxon].voices(keys, [plant for plant in learnt[taxon] if plant.id in out])
            less = heard | {taxon: joined(authors[taxon], told)}
            tables = whole | {key: _table(view, key, less, taxon, told, sums) for key in keys}
            yield [places[plant.id] for plant in group], replace(view, tables=_some(tables))


def _some(tables: Mapping[Key, Table | None]) -> dict[Key, Table]:
    return {key: table for key, table in tables.items() if table is not None}


def _sums(view: View, authors: Heard) -> Sums:
    """What the authors alone say of each number, where they state both bounds: it stays, whoever is left out.

    A bound that is not stated is taken from the others, and one's own plants are among these.
    """
    found = {}
    for key, several in authors.items():
        table, weighty = view.tables.get(key), [voice for voice in several if voice.weight]
        if isinstance(table, Numbers) and weighty and all(map(_closed, several)):
            drawn = shapes(weighty, view.vocabulary[key[0]].kind)
            found[key] = drawn, summed(drawn, table.knots, circular=table.circular)
    return found


def _closed(voice: Voice) -> bool:
    return voice.stretch is not None and voice.stretch.low is not None and voice.stretch.high is not None


def _table(view: View, key: Key, heard: Mapping[str, Heard], taxon: str, told: Told, sums: Sums) -> Table | None:
    """The table with the row of that taxon as the voices now have it; None where none is left."""
    table, character = view.tables[key], view.vocabulary[key[0]]
    if not isinstance(table, Numbers) or key not in told:
        return table_of(character, key[1], [heard[one].get(key, ()) for one in view.taxa])
    before, total = sums.get(key, ((), np.zeros_like(table.knots)))
    drawn = shapes([told[key]] if key in sums else heard[taxon][key], character.kind)
    total = total + summed(drawn, table.knots, circular=table.circular)
    place, rows, stated, plain = view.taxa.index(taxon), table.below.copy(), np.array(table.stated), list(table.plain)
    rows[place] = floored(row_of(total), table.knots)
    rows[~stated] = rows[stated].mean(axis=0)
    plain[place] = plain_of((*before, *drawn), circular=table.circular)
    return replace(table, below=rows, plain=tuple(plain))
