"""What to mind outdoors, and of a determination: the knowledge base's own cautions, else the usual ones."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from auctorum.corpus.model import Corpus

OPINION = "A determination is an opinion: where it matters, have it confirmed from a voucher by a specialist."
PERMITS = (
    "Ask for the permits and the leave that local law and the landowner ask for, before you go; collect nothing "
    "without them."
)
OUTDOORS = (
    "Keep exact localities to yourself and your herbarium.",
    "Cliffs, water and weather kill: do not go alone, and measure only what you can reach from safe ground.",
    "Take every part of an unknown plant for poisonous, and eat nothing on the strength of a determination.",
)
USUAL = (PERMITS, *OUTDOORS)


def cautions_of(corpus: Corpus) -> tuple[str, ...]:
    """The cautions of the knowledge base, as they stand there; the usual ones where it gives none, so never none."""
    return tuple(corpus.settings.cautions) or USUAL


def first_sentence(caution: str) -> str:
    """A caution where there is little room.

    >>> first_sentence("Ask first: cliffs may be protected. Get the permits that local law asks for.")
    'Ask first: cliffs may be protected.'
    """
    first, point, rest = caution.partition(". ")
    return f"{first}." if point and rest else caution
