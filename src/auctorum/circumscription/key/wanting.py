"""Why taxa can't be parted, and what would have to be known to part them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import combinations

from auctorum.characters.vocabulary import Character
from auctorum.circumscription.density import overlap, overlap_of_states
from auctorum.circumscription.key.model import Want
from auctorum.circumscription.key.told import Spread, Told

_MOST_PAIRS = 60  # beyond them it is not worth telling which character overlaps least


def want(taxa: Sequence[str], told: Mapping[str, Told], characters: Sequence[Character]) -> Want:
    """What is stated for some of the taxa and not for others, and how those do that are stated for all."""
    silent: list[tuple[str, tuple[str, ...]]] = []
    shared: list[tuple[float, str]] = []
    for character in characters:
        missing = tuple(id_ for id_ in taxa if character.name not in told[id_])
        if not missing:
            shared.append((_most_alike(taxa, told, character.name), character.name))
        elif len(missing) < len(taxa):
            silent.append((character.name, missing))
    if not shared:
        return Want(tuple(silent))
    least = min(shared, key=lambda one: round(one[0], 9))
    return Want(tuple(silent), len(shared), least[1], least[0])


def _most_alike(taxa: Sequence[str], told: Mapping[str, Told], character: str) -> float:
    """How much the two most alike of the taxa overlap at the stage that parts them best; 1 for very many taxa."""
    if len(taxa) * (len(taxa) - 1) > 2 * _MOST_PAIRS:
        return 1.0
    return max(_alike(told[one][character], told[other][character]) for one, other in combinations(taxa, 2))


def _alike(one: Mapping[str, Spread], other: Mapping[str, Spread]) -> float:
    return min((_shared(one[stage], other[stage]) for stage in one if stage in other), default=1.0)


def _shared(one: Spread, other: Spread) -> float:
    if one.density is not None and other.density is not None:
        return overlap(one.density, other.density)
    return overlap_of_states(one.shares or {}, other.shares or {})
