"""Every open question of a knowledge base, the one first whose answer would change most."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence

from auctorum.circumscription.gaps.conflicts import conflicts
from auctorum.circumscription.gaps.criteria import criteria
from auctorum.circumscription.gaps.ground import Ground
from auctorum.circumscription.gaps.model import Gap, GapKind
from auctorum.circumscription.gaps.names import names
from auctorum.circumscription.gaps.pairs import pairs
from auctorum.circumscription.gaps.rank import ranked
from auctorum.circumscription.gaps.repetitions import repetitions
from auctorum.circumscription.gaps.silent import silent
from auctorum.circumscription.gaps.sites import sites
from auctorum.circumscription.gaps.unclear import unclear
from auctorum.circumscription.gaps.untold import untold
from auctorum.corpus.model import Corpus

FINDERS: Mapping[GapKind, Callable[[Ground], Iterator[Gap]]] = {
    GapKind.PAIR: pairs,
    GapKind.UNTOLD: untold,
    GapKind.SILENT: silent,
    GapKind.NAME: names,
    GapKind.UNCLEAR: unclear,
    GapKind.CONFLICT: conflicts,
    GapKind.REPETITION: repetitions,
    GapKind.CRITERION: criteria,
    GapKind.SITE: sites,
}


def gaps(corpus: Corpus, names: Sequence[str] | None = None, kinds: Collection[GapKind] = ()) -> tuple[Gap, ...]:
    """The open questions by rank; if given, only those about the taxa of `names` (ids) and their names, and of `kinds`.

    Raises KeyError for an unknown name.
    """
    ground = Ground(corpus, names)
    wanted = [find for kind, find in FINDERS.items() if not kinds or kind in kinds]
    return ranked(gap for find in wanted for gap in find(ground))
