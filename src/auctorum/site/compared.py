"""Which works are compared: those that place at least two taxa of the genera at issue, at most MOST of them.

Every two of these are compared, both ways, on what they say of these genera; so the cost is that of a few works on
a few genera, however large the knowledge base.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace

from auctorum.corpus.model import Corpus
from auctorum.names.ranks import SPECIES, rank_named
from auctorum.site.paths import slugs

MOST = 20


class Compared:
    """The works that are compared, by date, with the part of the corpus that it is about, and their pages."""

    def __init__(self, corpus: Corpus) -> None:
        self.genera = genera_at_issue(corpus)
        groups = {group for group, names in corpus.groups.items() if _in(corpus, names, self.genera)}
        placed = Counter(
            work
            for work, treatments in corpus.by_work.items()
            for _ in {corpus.names[one.name].group for one in treatments if _is_taxon(one.rank)} & groups
        )
        most = [work for work, count in placed.most_common() if count > 1][:MOST]
        self.works = tuple(work for work in corpus.works if work in set(most))
        if len(self.works) < 2:
            self.works = ()
        self.paths = {work: f"compare/{own}.html" for work, own in slugs(self.works).items()}
        self.corpus = replace(
            corpus,
            by_work={
                work: tuple(one for one in corpus.by_work[work] if corpus.names[one.name].group in groups)
                for work in self.works
            },
            acts_by_work={
                work: tuple(act for act in corpus.acts_in(work) if corpus.names[act.name].group in groups)
                for work in self.works
            },
        )


def genera_at_issue(corpus: Corpus) -> tuple[str, ...]:
    """The genera of the focal names; where none is focal, the genus that most taxa are in."""
    focal = dict.fromkeys(corpus.names[name].name.genus for name in corpus.focal)
    if focal:
        return tuple(focal)
    tally = Counter(corpus.names[taxon.current].name.genus for taxon in corpus.taxa.values())
    return tuple(genus for genus, _ in tally.most_common(1))


def _in(corpus: Corpus, names: Iterable[str], genera: Iterable[str]) -> bool:
    return any(corpus.names[name].name.genus in genera for name in names)


def _is_taxon(rank: str) -> bool:
    return rank_named(rank) >= SPECIES
