"""Editions of the Code: what they number otherwise, and the few dates that moved.

Names are always judged by one edition, whatever the Code of their day said (ICN Principle VI, from memory). Rules
here carry the numbers of the Shenzhen Code (2018); an earlier edition, set in kb.yaml as `code-edition:`, changes
the numbers that are shown and the dates listed in `Edition`. The Madrid Code (2025) was not read article by
article: it is taken as Shenzhen, and says so.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from auctorum.problems import AuctorumError

_VIENNA = {
    "33.1": "45.1", "35.1": "43.1", "35.2": "33.1", "36.1": "34.1", "36.3": "34.2", "37.1": "35.1", "37.2": "35.2",
    "37.3": "35.3", "38.1": "32.1(d)", "39.1": "36.1", "43.1": "36.3", "44.1": "36.2", "40.1": "37.1", "41.4": "33.2",
    "41.5": "33.4", "52.4": "52.3", "53.2": "53.3", "53.3": "53.4", "60.7": "60.6", "60.8": "60.11", "60.10": "60.8",
    "60.11": "60.9", "60.13": "60.10", "7.3": "7.4", "7.4": "7.3",
}  # fmt: skip
_TOKYO = _VIENNA | {
    "37.1": "35", "37.2": "35", "37.3": "35", "38.1": "32", "40.1": "37", "41.5": "33.2", "53.2": "53", "53.3": "53",
    "7.3": "7", "7.4": "7",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Edition:
    """One edition: the articles it numbers otherwise than Shenzhen, and its own dates."""

    name: str
    numbers: Mapping[str, str] = field(default_factory=dict, hash=False)
    latin_until: date | None = date(2011, 12, 31)  # None: it asks for Latin without end
    endings_from: date = date(1887, 1, 1)  # from when an ending tells the rank (Art. 37.2)

    def cite(self, article: str) -> str:
        """`Art. 53.3`, numbered as this edition does; several numbers stand apart by commas.

        >>> edition_named("Vienna 2006").cite("52.4, 53.3")
        'Art. 52.3, 53.4'
        """
        if not article:
            return ""
        return f"Art. {_NUMBER.sub(lambda found: self.numbers.get(found[0], found[0]), article)}"


_NUMBER = re.compile(r"(?<![\w.])\d+\.\d+")

EDITIONS = {
    edition.name: edition
    for edition in (
        Edition("Tokyo 1994", _TOKYO, None, date(1908, 1, 1)),
        Edition("Saint Louis 2000", _VIENNA | {"41.5": "33.3"}, None, date(1908, 1, 1)),
        Edition("Vienna 2006", _VIENNA, None),
        Edition("Melbourne 2012", {"53.2": "53.3", "53.3": "53.4", "60.11": "60.9"}),
        Edition("Shenzhen 2018"),
        Edition("Madrid 2025"),
    )
}
SHENZHEN = EDITIONS["Shenzhen 2018"]


class UnknownEdition(AuctorumError, LookupError):
    """Words in `code-edition:` that name no edition known here."""

    def __init__(self, said: str) -> None:
        super().__init__(said)
        self.said = said

    def __str__(self) -> str:
        return f"no edition of the Code `{self.said}` is known"

    remedy = f"one of: {', '.join(EDITIONS)}"


def edition_named(said: str) -> Edition:
    """The edition of that name, its place or its year alone being enough; raises UnknownEdition."""
    wanted = said.casefold().replace("code", " ").split()
    for name, edition in EDITIONS.items():
        if wanted and all(word in name.casefold().split() or word in name.casefold() for word in wanted):
            return edition
    raise UnknownEdition(said)
