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
    "37.3": "35.3", "38.1": "32.1(d)", "39.1": "36.1", "43.1": "36.3", "44.1": "36.2", "40.1": "37.1", "40.2": "37.2",
    "40.4": "37.4", "40.6": "37.6", "40.7": "37.7", "41.4": "33.2",
    "41.5": "33.4", "52.4": "52.3", "53.2": "53.3", "53.3": "53.4", "60.7": "60.6", "60.8": "60.11", "60.10": "60.8",
    "60.11": "60.9", "60.13": "60.10", "7.3": "7.4", "7.4": "7.3",
}  # fmt: skip
# The Melbourne Code has the Shenzhen numbers in Art. 29-45 already.
_MELBOURNE = """
32.1 33.1 35.1 35.2 36.1 36.3 37.1 37.2 37.3 38.1 38.7 39.1 39.2 40.1 40.2 40.4 40.6 40.7 41.1 41.2 41.3 41.4 41.5
43.1 44.1 52.4
"""
_MOVED_SINCE_MELBOURNE = {"53.2": "53.3", "53.3": "53.4", "60.11": "60.9"}
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

        Where it is not known how the edition numbers a rule, the number is that of Shenzhen, and says so.

        >>> edition_named("Vienna 2006").cite("52.4, 53.3")
        'Art. 52.3, 53.4'
        """
        if not article:
            return ""
        return f"Art. {_NUMBER.sub(lambda found: self._number(found[0]), article)}"

    def _number(self, shenzhen: str) -> str:
        if not self.numbers or shenzhen in self.numbers or shenzhen in _NOT_MOVED:
            return self.numbers.get(shenzhen, shenzhen)
        return f"{shenzhen} (Shenzhen)"


# Articles that stand under these numbers from the Tokyo Code on, as far as is known (the digest of the Code, memory).
_UNMOVED = """
6.3 6.4 6.10 7.1 7.5 7.10 7.11 9.19 10.1 11.1 11.2 11.3 11.4 11.5 11.6 11.7 13.1 14.1 14.4 14.10 18.1 20.2 20.3 21.3
22.1 22.2 22.3 23.1 23.4 23.5 24.1 24.3 24.4 26.1 26.2 26.3 27.1 27.2 29.1 46.1 46.2 46.5 48.1 49.1 52.1 53.1 56.1
58.1 60.1 61.1 61.2 62.1
"""
_NOT_MOVED = frozenset(_UNMOVED.split())
_NUMBER = re.compile(r"(?<![\w.])\d+\.\d+")

EDITIONS = {
    edition.name: edition
    for edition in (
        Edition("Tokyo 1994", _TOKYO, None, date(1908, 1, 1)),
        Edition("Saint Louis 2000", _VIENNA | {"41.5": "33.3"}, None, date(1908, 1, 1)),
        Edition("Vienna 2006", _VIENNA, None),
        Edition("Melbourne 2012", {article: article for article in _MELBOURNE.split()} | _MOVED_SINCE_MELBOURNE),
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
        if wanted and set(wanted) <= set(name.casefold().split()):
            return edition
    raise UnknownEdition(said)
