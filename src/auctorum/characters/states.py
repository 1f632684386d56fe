"""How much of a taxon each state holds for, as one work states it, and where on an ordered spectrum that lies."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from auctorum.characters.values import Modality, Share, States
from auctorum.characters.vocabulary import Character, Kind

# A convention, no measurement: evenly stepped, so that "usually" outweighs "sometimes" three to one and what is
# "rarely" so still counts. Only the proportions matter, for the weights of one value are brought to the sum 1.
WEIGHT: Mapping[Modality, Fraction] = {
    Modality.ALWAYS: Fraction(1),
    Modality.USUALLY: Fraction(3, 4),
    Modality.OFTEN: Fraction(1, 2),
    Modality.SOMETIMES: Fraction(1, 4),
    Modality.OCCASIONALLY: Fraction(1, 8),
    Modality.RARELY: Fraction(1, 20),
    Modality.NEVER: Fraction(0),
}
PRESENT, ABSENT = "present", "absent"


def state_names(character: Character) -> tuple[str, ...]:
    """The states in order; present and absent for a presence that lists none."""
    names = tuple(state.name for state in character.states)
    return names or ((PRESENT, ABSENT) if character.kind is Kind.PRESENCE else ())


def state_weights(value: States, character: Character) -> dict[str, Fraction]:
    """Weight of every state with any, in the order of the vocabulary, summing to 1.

    A span spreads its weight evenly over the states it runs through. Where the work only says what a state is
    never, the other states of the character share the weight evenly; the dict is empty where none is left.
    """
    names = state_names(character)
    totals = dict.fromkeys(names, Fraction(0))
    for share in value.shares:
        covered = _covered(share, names)
        for name in covered:
            totals[name] = totals.get(name, Fraction(0)) + WEIGHT[share.modality] / len(covered)
    if not any(totals.values()):
        denied = {name for share in value.shares for name in _covered(share, names)}
        totals = {name: Fraction(name not in denied) for name in totals}
    whole = sum(totals.values(), Fraction(0))
    return {name: weight / whole for name, weight in totals.items() if weight}


def position(value: States, character: Character) -> tuple[float, float]:
    """Lowest and highest place on the spectrum (0 = first state) of the states that are at least sometimes so.

    States that are only occasionally or rarely so stretch it only where nothing else is said; a value that only
    denies states lies where the others do. Raises ValueError where no state of the character is left.
    """
    names = state_names(character)
    held = [share for share in value.shares if WEIGHT[share.modality] >= WEIGHT[Modality.SOMETIMES]]
    told = [name for share in held for name in _covered(share, names)] or list(state_weights(value, character))
    places = [names.index(name) for name in told if name in names]
    if not places:
        raise ValueError(f"no state of {character.name} is left")
    return float(min(places)), float(max(places))


def _covered(share: Share, names: tuple[str, ...]) -> tuple[str, ...]:
    """The states from one end of a span to the other; both ends alone where they are not on the spectrum."""
    if share.to is None:
        return (share.state,)
    if share.state not in names or share.to not in names:
        return (share.state, share.to)
    first, last = sorted((names.index(share.state), names.index(share.to)))
    return names[first : last + 1]
