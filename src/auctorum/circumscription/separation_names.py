"""Short names of taxa that stand side by side: `var. longum` within a species, `E. album` within a genus."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from auctorum.corpus.model import Corpus
from auctorum.names.format import format_name
from auctorum.names.name import Name


def full_name(corpus: Corpus, taxon: str) -> str:
    """The name of a taxon with its authors, and the sense in which it is meant."""
    one = corpus.taxa[taxon]
    return format_name(corpus.names[one.current].name) + one.sense.suffix


def short_names(corpus: Corpus, taxa: Sequence[str]) -> Mapping[str, str]:
    """By taxon a name without what all share; the full name of those that would be called alike.

    The genus is abbreviated where it is that of all (common practice, no source). Raises KeyError for an unknown taxon.
    """
    names = {taxon: corpus.names[corpus.taxa[taxon].current].name.proper.bare for taxon in taxa}
    short = dict(zip(names, _without_what_all_share(list(names.values())), strict=True))
    return _told_apart(corpus, short)


def epithets(corpus: Corpus, taxa: Sequence[str]) -> Mapping[str, str]:
    """By taxon the last word of its name; the short name of those that share it."""
    found = {taxon: corpus.names[corpus.taxa[taxon].current].name.final_epithet for taxon in taxa}
    short, used = short_names(corpus, taxa), Counter(found.values())
    return {taxon: epithet if used[epithet] == 1 else short[taxon] for taxon, epithet in found.items()}


def _told_apart(corpus: Corpus, short: Mapping[str, str]) -> dict[str, str]:
    used = Counter(short.values())
    return {taxon: name if used[name] == 1 else full_name(corpus, taxon) for taxon, name in short.items()}


def _without_what_all_share(names: Sequence[Name]) -> Iterable[str]:
    species = {(one.genus, one.genus_hybrid, one.species, one.species_hybrid) for one in names}
    if len(species) == 1 and all(one.lower for one in names):
        above = Name(names[0].genus, names[0].species, (), (), names[0].genus_hybrid, names[0].species_hybrid)
        return [format_name(one).removeprefix(f"{format_name(above)} ") for one in names]
    if len({one.genus for one in names}) == 1 and all(one.species and not one.genus_hybrid for one in names):
        return [f"{one.genus[0]}.{format_name(one).removeprefix(one.genus)}" for one in names]
    return [format_name(one) for one in names]
