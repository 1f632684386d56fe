"""Whether a plant is in cultivation: by Darwin Core's words, and by those alone."""

from __future__ import annotations

from auctorum.circumscription.plants import LIST_MARK

# Values of degreeOfEstablishment for plants that were put where they grow, or are kept there.
IN_GARDENS = frozenset({"cultivated", "captive", "managed"})


def in_gardens(establishment: str) -> bool:
    """Whether one of the values says so, whole: what is `uncultivated` is wild.

    >>> in_gardens("Cultivated"), in_gardens("native | managed"), in_gardens("uncultivated"), in_gardens("")
    (True, True, False, False)
    """
    values = establishment.casefold().split(LIST_MARK.strip())
    return any(value.strip() in IN_GARDENS for value in values)
