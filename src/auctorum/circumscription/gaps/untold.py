"""Characters that nobody states or measures for a taxon, though somebody states them for its sisters."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.rank import UNKNOWN_VALUE
from auctorum.circumscription.gaps.words import listed, percent

ALMOST_NONE = 0.001  # an error not worth a figure


def untold(ground: Ground) -> Iterator[Gap]:
    """One gap for each taxon that has such characters, the character that parts its sisters best named first."""
    for taxon in ground.taxa:
        sisters = ground.sisters(taxon)
        if not sisters:
            continue
        known = {one: _known(ground, one) for one in (taxon, *sisters)}
        lacking = [name for name in ground.corpus.vocabulary if name not in known[taxon]]
        lacking = [name for name in lacking if any(name in known[sister] for sister in sisters)]
        if lacking:
            yield _gap(ground, taxon, lacking, known)


def _known(ground: Ground, taxon: str) -> set[str]:
    """Characters that a work states of the taxon, or that are measured on plants of it."""
    stated = {finding.character for finding in ground.told(taxon)}
    return stated | {one.character for plant in ground.plants(taxon) for one in plant.observations}


def _gap(ground: Ground, taxon: str, lacking: Sequence[str], known: Mapping[str, set[str]]) -> Gap:
    among = {name: ground.value_among(ground.sisters(taxon), name) for name in lacking}
    values = {name: value for name, value in among.items() if value is not None}
    shares = {name: sum(name not in one for one in known.values()) / len(known) for name in lacking}
    bases = {name: values.get(name, UNKNOWN_VALUE) * shares[name] for name in lacking}
    order = sorted(lacking, key=lambda name: -bases[name])
    title, best = ground.title(taxon), max(lacking, key=lambda name: values.get(name, -1.0))
    telling = [sister for sister in ground.sisters(taxon) if set(lacking) & known[sister]]
    why = f"Works or plants show {'it' if len(order) == 1 else 'them'} for {listed(map(ground.title, telling), 2)}."
    if best in values:
        error = (1 - values[best]) / 2
        why += f" Among its sisters {best} parts two"
        why += " without error." if error < ALMOST_NONE else f" with an error of {percent(error)}."
    return Gap(
        GapKind.UNTOLD,
        ground.rank(bases[order[0]], taxon),
        question=f"{title}: what about its {listed(order)}?",
        why=why,
        todo=f"Measure or note {'it' if len(order) == 1 else 'them'} on plants named by other characters, "
        "or look for a description that says more.",
        taxa=(taxon,),
        characters=tuple(order),
        in_field=True,
    )
