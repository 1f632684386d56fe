"""Sister taxa that no stated character tells apart."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from auctorum.circumscription.findings import Span
from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.words import listed
from auctorum.circumscription.separation import Parting
from auctorum.circumscription.separation_words import percent
from auctorum.circumscription.summary import span_words


def pairs(ground: Ground) -> Iterator[Gap]:
    """One gap for each pair of sisters whose best character errs for more than 15 in 100 plants.

    Where they grow does not count: it tells nothing of a plant in the hand. None for two of which the characters told
    of the one are not told of the other: that is a gap of its own kind.
    """
    seen = set()
    for taxon in ground.taxa:
        for sister in ground.sisters(taxon):
            pair = frozenset((taxon, sister))
            if pair not in seen:
                seen.add(pair)
                yield from _pair(ground, taxon, sister)


def _pair(ground: Ground, one: str, other: str) -> Iterator[Gap]:
    if ground.apart.parts_well(one, other):
        return
    partings = [each for each in ground.apart.partings(one, other) if not ground.apart.is_habitat(each.character)]
    of_one = [parting for parting in partings if len(parting.silent) == 1]
    known = next((parting for parting in partings if parting.error is not None), None)
    if known is None and of_one:
        return
    error = 0.5 if known is None or known.error is None else known.error
    named = {id_: ground.title(id_) for id_ in (one, other)}
    yield Gap(
        GapKind.PAIR,
        ground.rank(2 * error, one, other),
        question=f"{listed(named.values())}: what tells them apart?",
        why=_why(ground, known),
        todo=_todo(ground, known, of_one, named),
        taxa=(one, other),
        characters=tuple(_names(([known] if known else []) + of_one)),
        in_field=True,
    )


def _why(ground: Ground, known: Parting | None) -> str:
    if known is None or known.error is None:
        return "No character is stated for either of them."
    limit = ""
    character = ground.corpus.vocabulary[known.character]
    if known.cut is not None and character.kind.is_numeric:
        limit = f" with a limit at {span_words(Span(known.cut.value, known.cut.value), character)}"
    said = f"The best character stated for both, {ground.label(known.character, known.stage)}{limit},"
    said += f" errs for {percent(known.error)} of the plants."
    if known.against:
        works = listed(ground.corpus.works[work].byline for work in known.against)
        said += f" It does not part them for {works}."
    return said


def _todo(ground: Ground, known: Parting | None, of_one: Sequence[Parting], named: dict[str, str]) -> str:
    if of_one:
        parts = (f"{listed(ground.labels(_names(several)))} of {named[taxon]}" for taxon, several in _by_silent(of_one))
        return f"Measure or look up {'; '.join(parts)}: stated of the other one only, and so not yet compared."
    if known is None:
        return "Describe both from plants that grow at one site."
    several = f"the {ground.label(known.character, known.stage)} of both at one site"
    return f"Measure {several}, and look there for a character that nobody states yet."


def _by_silent(of_one: Sequence[Parting]) -> Iterable[tuple[str, list[Parting]]]:
    found: dict[str, list[Parting]] = {}
    for parting in of_one:
        found.setdefault(parting.silent[0], []).append(parting)
    return found.items()


def _names(partings: Sequence[Parting]) -> Iterator[str]:
    return iter(dict.fromkeys(parting.character for parting in partings))
