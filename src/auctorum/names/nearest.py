"""The known words most like a word: for "did you mean"."""

from __future__ import annotations

from collections.abc import Iterable

from rapidfuzz import fuzz, process

from auctorum.names.fold import fold


def nearest(word: str, known: Iterable[str], limit: int = 3, cutoff: float = 60) -> tuple[str, ...]:
    """At most `limit` of `known` whose folded spelling is like that of `word` by `cutoff` percent or more.

    Best first; equally good ones by the alphabet.

    >>> nearest("Exemplum albun", ["Exemplum nigrum", "Exemplum album"], limit=1)
    ('Exemplum album',)
    """
    choices = sorted(set(known))
    folded = [fold(choice) for choice in choices]
    found = process.extract(fold(word), folded, scorer=fuzz.ratio, limit=None, score_cutoff=cutoff)
    best = sorted(found, key=lambda hit: (-hit[1], hit[2]))[:limit]
    return tuple(choices[index] for _, _, index in best)
