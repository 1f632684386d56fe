"""Every name of a list of 95,412 real names, gathered from openly licensed tables (US Department of Agriculture
plant symbols, published phylogenies of seed plants, lists of the Australian, European and introduced floras)."""

from __future__ import annotations

import re
import time

from auctorum.names.format import format_name
from auctorum.names.parse import parse

# Lines of the list that are no names: a hybrid without epithet, and a piece of prose.
NO_NAMES = {"Bougainvillea hybr", "Tulipa hybr", "Latitude of"}

# Hybrids whose sign the list gives as a letter: no Latin word begins with x and a consonant.
JOINED_X = re.compile(" x(?=[bcdfghjklmnpqrstvwz])")


def test_every_name_is_read_whole_and_written_the_same(listed_names: list[str]) -> None:
    printed = [line.strip() for line in listed_names]
    start = time.perf_counter()
    differing = []
    for text in printed:
        usage = parse(text)
        if (
            format_name(usage.name) != JOINED_X.sub(" ×", text.replace("× ", "×"))
            or usage.remainder
            or usage.notes
            or usage.qualifiers
        ):
            differing.append(text)
    seconds = time.perf_counter() - start
    assert set(differing) == NO_NAMES.intersection(printed)
    assert seconds < 15, f"{len(printed) / seconds:.0f} names a second"
