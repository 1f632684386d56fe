"""Who repeats whom, in sentences and as plain data."""

from __future__ import annotations

from collections.abc import Mapping

from auctorum.circumscription.findings import Count
from auctorum.circumscription.independence import Line, Lineage, Tie
from auctorum.circumscription.phrases import at_stage
from auctorum.corpus.model import Work

_SHOWN_BY = {
    Tie.DECLARED: "as it is said to",
    Tie.CITED: "which it cites, or follows elsewhere, or whose author it shares",
    Tie.NAME: "whose name it uses",
    Tie.NONE: "though nothing shows that it knew it",
}


def lineage_sentences(found: Lineage, works: Mapping[str, Work]) -> tuple[str, ...]:
    """One sentence for each direct line, by later work: `Isherow 1938 repeats Maddrick 1923 ... in 7 of 7.`"""
    return tuple(line_sentence(line, works) for line in found.direct)


def line_sentence(line: Line, works: Mapping[str, Work]) -> str:
    """The line in a sentence, with what shows it and how much is equal."""
    later, earlier = works[line.later].byline, works[line.earlier].byline
    much = f"in {len(line.equal)} of {len(line.shared)} characters that both tell"
    return f"{later} repeats {earlier}, {_SHOWN_BY[line.tie]}, {much}."


def lineage_data(found: Lineage) -> list[dict[str, object]]:
    """The direct lines as plain data for JSON."""
    return [
        {
            "later": line.later,
            "earlier": line.earlier,
            "shown_by": line.tie.name.lower(),
            "shared": [at_stage(*told) for told in line.shared],
            "equal": [at_stage(*told) for told in line.equal],
        }
        for line in found.direct
    ]


def count_words(count: Count) -> str:
    """How many stand behind a finding.

    >>> count_words(Count(works=7, authors=6, independent=3, repeated=3, silent=2))
    '6 authors, 3 independent; 3 works repeat another; 2 silent'
    >>> count_words(Count(1, 1, 1, 0, 0))
    '1 author'
    """
    said = f"{count.authors} author{'' if count.authors == 1 else 's'}"
    if count.independent != count.authors:
        said += f", {count.independent} independent"
    if count.repeated:
        said += f"; {count.repeated} work{' repeats' if count.repeated == 1 else 's repeat'} another"
    return f"{said}; {count.silent} silent" if count.silent else said
