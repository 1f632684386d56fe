"""Misspelt labels against a long list of real names; sources in tests/data/misspellings.sources.md."""

from __future__ import annotations

import csv
from collections import Counter
from pathlib import Path

import pytest

from auctorum.matching.index import NameIndex, index_of
from auctorum.matching.match import Match, match
from auctorum.names.name import Name, Ranked

HERE = Path(__file__).parent
DATA = HERE.parent / "data"
RANKS = {
    "subsp.": "subspecies",
    "var.": "variety",
    "subvar.": "subvariety",
    "f.": "form",
    "nothosubsp.": "subspecies",
    "nothovar.": "variety",
}
PAIRS_RIGHT = 0.95  # share of the misspelt labels; 0.965 was reached when this bar was set
FALSE_FAR = 2  # false matches among the far names and what is no name
FALSE_NEAR = 0.12  # share of the near names, which no distance can tell from misspellings


def listed(line: str) -> Name:
    """A name of the list, whose form is one of six: `Genus epithet [rank epithet]...`, with or without ×."""
    words = line.split()
    genus_hybrid = words[0] == "×"
    words = words[genus_hybrid:]
    species_hybrid = words[1] == "×"
    genus, species, *rest = (word for word in words if word != "×")
    lower = tuple(
        Ranked(RANKS[term], epithet, term.startswith("notho"))
        for term, epithet in zip(rest[::2], rest[1::2], strict=True)
    )
    return Name(genus, species, lower, genus_hybrid=genus_hybrid, species_hybrid=species_hybrid)


@pytest.fixture(scope="module")
def index(listed_names: list[str]) -> NameIndex:
    return index_of((name, listed(name)) for name in listed_names)


def answer(found: Match) -> str:
    return found.best.id if found.best else ""


def test_misspelt_labels(pytestconfig: pytest.Config, index: NameIndex, say) -> None:
    path = pytestconfig.getoption("--misspellings") or DATA / "misspellings.tsv"
    with path.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file, delimiter="\t", quoting=csv.QUOTE_NONE))
    asked, right = Counter[str](), Counter[str]()
    for row in rows:
        found = match(row["verbatim"], index)
        kind = row["kind"].removeprefix("made:")
        asked[kind] += 1
        right[kind] += answer(found) == row["correct"]
        if answer(found) != row["correct"]:
            expected = row["correct"] or "no name"
            say(f"  {kind}: {row['verbatim']}: expected {expected}, got {answer(found) or found.verdict} ({found.why})")
    negative = {kind: asked[kind] - right[kind] for kind in sorted(asked) if kind.startswith("negative:")}
    pairs = [kind for kind in sorted(asked) if kind not in negative]
    for kind in pairs:
        say(f"  {kind}: {right[kind]}/{asked[kind]}")
    total, good = sum(asked[kind] for kind in pairs), sum(right[kind] for kind in pairs)
    parts = ", ".join(
        f"{kind.removeprefix('negative:').replace('-', ' ')} {negative[kind]}/{asked[kind]}"
        for kind in ("negative:near", "negative:far", "negative:not-a-name")
        if kind in negative
    )
    say(f"misspellings: {good}/{total} right")
    say(f"false matches: {sum(negative.values())}/{sum(asked[kind] for kind in negative)} ({parts})")
    assert good >= PAIRS_RIGHT * total
    assert sum(count for kind, count in negative.items() if kind != "negative:near") <= FALSE_FAR
    assert negative.get("negative:near", 0) <= FALSE_NEAR * asked["negative:near"]


def test_each_listed_name_is_its_own_match(listed_names: list[str], index: NameIndex) -> None:
    """Every fortieth name, which the order of the alphabet spreads over all genera and forms."""
    wrong = [name for name in listed_names[::40] if answer(match(name, index)) != name]
    assert wrong == []
