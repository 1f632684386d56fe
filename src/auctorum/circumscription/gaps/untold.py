"""Characters that nobody states or measures for a taxon, though somebody states them for its sisters."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.rank import PARTS_WELL
from auctorum.circumscription.gaps.words import listed
from auctorum.circumscription.separation_names import short_names
from auctorum.circumscription.separation_words import percent


def untold(ground: Ground) -> Iterator[Gap]:
    """One gap for each taxon that has such characters, the one that an answer would tell most by named first."""
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
    among = {name: ground.apart.value_among(ground.sisters(taxon), name) for name in lacking}
    values = {name: ground.apart.unknown_value(name) if found is None else found[0] for name, found in among.items()}
    bases = {name: values[name] * sum(name not in one for one in known.values()) / len(known) for name in lacking}
    order = sorted(lacking, key=lambda name: -bases[name])
    telling = [sister for sister in ground.sisters(taxon) if set(lacking) & known[sister]]
    it = "it" if len(order) == 1 else "them"
    why = f"Works or plants show {it} for {listed(map(ground.title, telling), 2)}."
    best = among[order[0]]
    if best is not None:
        why += _best(ground, order[0], *best)
    return Gap(
        GapKind.UNTOLD,
        ground.rank(bases[order[0]], taxon),
        question=f"{ground.title(taxon)}: what about {listed(ground.labels(order))}?",
        why=why,
        todo=f"Measure or note {it} on plants named by other characters, or look for a description that says more.",
        taxa=(taxon,),
        characters=tuple(order),
        in_field=True,
    )


def _best(ground: Ground, character: str, value: float, pair: tuple[str, str]) -> str:
    """How well the character parts two sisters; nothing where it hardly does."""
    error = (1 - value / ground.apart.most(character)) / 2
    if error > PARTS_WELL:
        return ""
    wrong = percent(error)
    how = "without error" if wrong == "none" else f"with an error of {wrong}"
    return f" As stated, {ground.label(character)} parts {listed(short_names(ground.corpus, pair).values())} {how}."
