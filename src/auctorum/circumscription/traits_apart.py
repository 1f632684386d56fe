"""What each trait is worth against other taxa, and the traits of several taxa side by side."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations
from math import ceil

from auctorum.characters.show import format_span
from auctorum.characters.states import state_names
from auctorum.characters.vocabulary import Character, Kind, Vocabulary
from auctorum.circumscription.findings import Finding
from auctorum.circumscription.measures import measures
from auctorum.circumscription.separation import Parting, Separation, separation_known
from auctorum.circumscription.separation_known import Knowledge
from auctorum.circumscription.separation_words import FAILS, USEFUL, strength, threshold
from auctorum.circumscription.sisters import sisters
from auctorum.circumscription.summary import NOTHING
from auctorum.circumscription.traits import Trait, Traits
from auctorum.corpus.model import Corpus

MOST_SISTERS = 3
Key = tuple[str, str]  # character and stage
Partings = Mapping[Key, Parting]


@dataclass(frozen=True, slots=True)
class Contrast:
    """One character at one stage across taxa: the trait of each (None where nobody speaks of it), and the best parting.

    `best` is the parting of the two taxa that the character tells apart best; None where no two can be compared.
    """

    character: str
    stage: str
    traits: tuple[Trait | None, ...]
    best: Parting | None


def nearest_sisters(corpus: Corpus, taxon: str) -> tuple[str, ...]:
    """The taxa that most works place beside it, at most three."""
    return sisters(corpus).get(taxon, ())[:MOST_SISTERS]


def against(corpus: Corpus, taxon: str, known: Mapping[str, Knowledge]) -> tuple[Partings, ...]:
    """By character and stage the parting of the taxon from each of the others that are `known`, in their order.

    Left out is what cannot be compared, since nobody states it for one of the two.
    """
    others = (other for other in known if other != taxon)
    pairs = (separation_known(corpus, {one: known[one] for one in (taxon, other)}) for other in others)
    return tuple(_comparable(found.partings) for found in pairs)


def contrasts(corpus: Corpus, several: Sequence[Traits], known: Mapping[str, Knowledge]) -> tuple[Contrast, ...]:
    """The traits of several taxa side by side: those first that part two of them well, else as in the vocabulary.

    What nobody speaks of is left out. `known` is what is known of these taxa, in their order.
    """
    best = _best_of_pairs(separation_known(corpus, known))
    of_taxon = [{one.key: one for one in traits.traits if one.finding.agreement is not None} for traits in several]
    found_all = (
        Contrast(*key, tuple(told.get(key) for told in of_taxon), best.get(key))
        for key in _keys(of_taxon, corpus.vocabulary)
    )
    return tuple(sorted(found_all, key=_class))


def worth(parting: Parting | None, character: Character, taxon: str, printed: Finding) -> str:
    """What a character is worth, with the side that the taxon is on: `separates: from 25 mm on`, `hints`, or a dash."""
    word = FAILS if parting is None else strength(_error(parting))
    if parting is None or word == FAILS:
        return NOTHING
    where = side(parting, character, taxon, printed) if word in USEFUL else ""
    return f"{word}: {where}" if where else word


def side(parting: Parting, character: Character, taxon: str, printed: Finding) -> str:
    """Where that one of the two taxa lies: `from 25 mm on`, `below 25 mm`, `with fewer than 4`; empty without a cut.

    The unit is that in which the finding on one of the two is printed.
    """
    if parting.cut is None:
        return ""
    value, lower = parting.cut.value, taxon == parting.lower
    if character.kind in (Kind.MEASURE, Kind.RATIO):
        figure = measures(printed.evidence, character).one(value)
        return f"below {figure}" if lower else f"from {figure} on"
    if not lower:
        return threshold(parting, character)
    if character.kind is Kind.COUNT:
        return f"with fewer than {format_span(value, value, '')}"
    below = state_names(character)[: ceil(value)]
    return f"if {below[0]}" if len(below) == 1 else f"up to {below[-1]}"


def _class(contrast: Contrast) -> int:
    """The place of its strength, the best first; all that is of no use alike."""
    word = FAILS if contrast.best is None else strength(_error(contrast.best))
    return USEFUL.index(word) if word in USEFUL else len(USEFUL)


def _comparable(partings: Iterable[Parting]) -> Partings:
    return {(one.character, one.stage): one for one in partings if one.error is not None}


def _best_of_pairs(found: Separation) -> Partings:
    """By character and stage the parting with the least error; of equal ones that of the pair asked first."""
    best: dict[Key, Parting] = {}
    for a, b in combinations(found.taxa, 2):
        for key, one in _comparable(found.of(a, b)).items():
            if key not in best or _error(one) < _error(best[key]):
                best[key] = one
    return best


def _error(one: Parting) -> float:
    return 1.0 if one.error is None else one.error


def _keys(of_taxon: Sequence[Mapping[Key, Trait]], vocabulary: Vocabulary) -> Iterator[Key]:
    told = {key for traits in of_taxon for key in traits}
    for character in vocabulary.values():
        stages = character.stages_in_order({stage for name, stage in told if name == character.name})
        yield from ((character.name, stage) for stage in stages)
