"""Which taxa of one work another divides, and which it unites: lumping and splitting, shown by types."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Set
from dataclasses import dataclass

from auctorum.corpus.model import Corpus
from auctorum.names.format import words
from auctorum.names.ranks import SPECIES, rank_named
from auctorum.nomenclature.positions import Positions


@dataclass(frozen=True, slots=True)
class Part:
    """A taxon of one work, as one side of a division or a union.

    `strict`: the part of it that is left beside its named infraspecific taxa, where the work names no autonym.
    """

    name: str
    strict: bool = False


@dataclass(frozen=True, slots=True)
class Share:
    """A taxon that takes part in a division or union; not `entire` where only some of its types do (pro parte).

    A taxon whose own type stands outside is never entire, even if the other work does not speak of that type.
    """

    part: Part
    entire: bool


@dataclass(frozen=True, slots=True)
class Regrouping:
    """One taxon of a work that the other divides: `whole` is A's if `is_division`, else B's, which unites A's."""

    is_division: bool
    whole: Part
    shares: tuple[Share, ...]


def regroupings(corpus: Corpus, a: Positions, b: Positions, scope: Set[str]) -> tuple[Regrouping, ...]:
    """Divisions of A's taxa, then unions in B, each once: of whole species, then of the lowest taxa told apart.

    Only types that both works settle count; shown is what divides or unites types of `scope`. Taxa stand in the
    order of their words.
    """
    return tuple(dict.fromkeys(_found(corpus, a, b, scope)))


def _found(corpus: Corpus, a: Positions, b: Positions, scope: Set[str]) -> Iterator[Regrouping]:
    settled = frozenset(group for group in a.of if a.is_settled(group) and b.is_settled(group))
    for is_division, whole, other in ((True, a, b), (False, b, a)):
        for part_of in (_species, _lowest):
            both = {
                group: (part_of(corpus, whole, group, settled), part_of(corpus, other, group, settled))
                for group in sorted(settled)
            }
            yield from _split(corpus, both, scope, is_division)


def _split(
    corpus: Corpus, both: Mapping[str, tuple[Part | None, Part | None]], scope: Set[str], is_division: bool
) -> Iterator[Regrouping]:
    """The taxa of one work, first in each pair, whose types of `scope` lie in several taxa of the other."""
    members: dict[Part, dict[Part, set[str]]] = {}  # a taxon, and the types that it shares with each of the other work
    sizes: Counter[Part] = Counter()
    for group, (mine, theirs) in both.items():
        if mine is not None and theirs is not None:
            members.setdefault(mine, {}).setdefault(theirs, set()).add(group)
            sizes[theirs] += 1

    def by_words(part: Part) -> tuple[str, str]:
        return words(corpus.names[part.name].name), part.name

    for whole in sorted(members, key=by_words):
        if sum(not shared.isdisjoint(scope) for shared in members[whole].values()) > 1:
            shares = [
                Share(part, entire=corpus.names[part.name].group in shared and len(shared) == sizes[part])
                for part, shared in sorted(members[whole].items(), key=lambda item: by_words(item[0]))
            ]
            yield Regrouping(is_division, whole, tuple(shares))


def _species(corpus: Corpus, side: Positions, group: str, _settled: Set[str]) -> Part | None:
    """The taxon of species rank or below that holds a type with all its sisters; None for the type of a genus."""
    ranks = {name: rank_named(corpus.names[name].rank) for name in side.lines[group]}
    below = [name for name in ranks if ranks[name] >= SPECIES]
    return Part(min(below, key=ranks.__getitem__)) if below else None


def _lowest(corpus: Corpus, side: Positions, group: str, settled: Set[str]) -> Part | None:
    """The lowest taxon that holds a type; None for a synonym of a divided species, which may belong to any part.

    Of a subspecies and its variety that hold the same of the settled types, the subspecies.
    """
    position, (name, *above) = side.of[group], side.lines[group]
    if name in side.divided:
        return Part(name, strict=True) if position.is_kept else None
    for higher in above:
        held, more = (side.takes_in[one] & settled for one in (name, higher))
        if rank_named(corpus.names[higher].rank) <= SPECIES or more != held:
            break
        name = higher
    return Part(name)
