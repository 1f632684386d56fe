"""Names as old works print them, put into the form that the Code gives them before they are read."""

from __future__ import annotations

import re
from dataclasses import replace

from auctorum.names.name import Name
from auctorum.names.ranks import SPECIES, UNRANKED, read_term
from auctorum.names.signs import transcribed
from auctorum.records.schema import Act


def proper_words(record: Act) -> str:
    """The name of an act with a symbol transcribed (ICN Art. 23.3), and the epithet alone where a binary name
    stands in its place: `Genus album subsp. G. longum` (Art. 24.4)."""
    *head, last = record.name.split()
    if record.epithet is not None and record.epithet.symbol and head and not any(map(str.isalpha, last)):
        joined = transcribed(f"{head[-1]} {last}", record.epithet.symbol)
        return " ".join([*head[:-1], *joined.split()])
    if len(head) > 2 and _stands_for(head[-1], head[0]) and read_term(head[-2]) is not None:
        return " ".join([*head[:-1], last])
    return record.name


def _stands_for(word: str, genus: str) -> bool:
    """Whether a word is the generic name or its abbreviation."""
    if not word[:1].isupper():
        return False
    return word == genus or (word.endswith(".") and genus.startswith(word.removesuffix(".")))


def one_epithet(record: Act, name: Name) -> Name:
    """The name with an epithet of several words as one, where the record calls it a species (ICN Art. 23.1)."""
    if record.rank != SPECIES.name or not name.lower or re.search(r"[\[.]", record.name):
        return name
    if any(one.rank != UNRANKED.name for one in name.lower):
        return name
    return replace(name, species=" ".join([name.species, *(one.epithet for one in name.lower)]), lower=())
