"""What the site of a plant tells of its habitat: elevation, aspect and substrate as observations of the plant."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from fractions import Fraction
from functools import cache, partial

from auctorum.characters.bounds import bounds, stated_step
from auctorum.characters.directions import TURN
from auctorum.characters.read import read_statement
from auctorum.characters.states import state_weights
from auctorum.characters.units import UnfitUnit, convert
from auctorum.characters.values import Range, States
from auctorum.characters.vocabulary import Character, Kind
from auctorum.circumscription.plants import Observation, Plant
from auctorum.circumscription.wording import of_habitat
from auctorum.corpus.model import Corpus
from auctorum.problems import AuctorumError
from auctorum.records.schema import Site


def with_habitat(corpus: Corpus, plant: Plant) -> Plant:
    """The plant with elevation, aspect and substrate of its site, where it has none of its own.

    An elevation that the site gives as a range is its middle, give or take half the range; so is an arc of aspects.
    """
    return habitat_giver(corpus)(plant)


def habitat_giver(corpus: Corpus) -> Callable[[Plant], Plant]:
    """`with_habitat` for many plants: each site is read once."""
    told = cache(partial(habitat_of, corpus))

    def given(plant: Plant) -> Plant:
        if plant.site is None or plant.site not in corpus.sites:
            return plant
        own = {one.character for one in plant.observations}
        more = tuple(one for one in told(plant.site) if one.character not in own)
        return replace(plant, observations=(*plant.observations, *more)) if more else plant

    return given


def habitat_of(corpus: Corpus, site: str) -> tuple[Observation, ...]:
    """What a site tells, in the order of the vocabulary; words that cannot be read are left out (`check` names them).

    Only characters that are not split by growth stages. Raises KeyError for an unknown site.
    """
    return tuple(_observations(corpus, corpus.sites[site]))


def _observations(corpus: Corpus, site: Site) -> Iterator[Observation]:
    for character in corpus.vocabulary.values():
        if not of_habitat(character) or character.stages:
            continue
        found: Observation | None = None
        if character.property in ("elevation", "altitude") and character.kind is Kind.MEASURE:
            found = _elevation(site, character)
        elif character.property == "aspect" and site.aspect:
            found = _read(site.aspect, character)
        elif character.property == "substrate" and site.substrate:
            found = _read(site.substrate, character)
        if found is not None:
            yield found


def _elevation(site: Site, character: Character) -> Observation | None:
    ends = [one for one in (site.minimumElevationInMeters, site.maximumElevationInMeters) if one is not None]
    if not ends:
        return None
    low, high = min(ends), max(ends)
    try:
        first, last, step = (
            convert(one, "m", character.unit) for one in (low, high, stated_step(Range(low, high, "m")))
        )
    except UnfitUnit:
        return None
    return Observation(character.name, "", (first + last) / 2, (), max((last - first) / 2, step / 2), 1)


def _read(words: str, character: Character) -> Observation | None:
    if character.kind is Kind.ANGLE and (bare := words.strip().removesuffix("°")).replace(".", "", 1).isdecimal():
        words = f"{bare}°"  # sites.csv may give bare degrees
    try:
        readings = read_statement(words, character)
    except AuctorumError:
        return None
    value = readings[0].value
    if isinstance(value, States):
        weights = state_weights(value, character)
        return Observation(character.name, "", None, tuple(weights.items()), Fraction(0), 1) if weights else None
    stated = bounds(value, character.unit)
    if stated.low is None or stated.high is None:
        return None
    middle, half = (stated.low + stated.high) / 2, (stated.high - stated.low) / 2
    middle = middle % TURN if character.kind is Kind.ANGLE else middle
    return Observation(character.name, "", middle, (), max(half, stated.low_slack), 1)
