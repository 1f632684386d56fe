"""Phrases of published descriptions read freely, and compared with labels made by hand (notation.md, section 9).

Sources: tests/data/notation-phrases.jsonl, phrases of published protologues, floras and monographs (1780s to 2020s),
each line names its work; notation-more.jsonl and paragraphs.jsonl, written and labelled for this by hands that did not
know the reader (notation.sources.md). `pytest -k notation --notation-phrases PATH` runs another file of the same
form alone, and the same bars hold for it. The lines at the end give every miss with what was expected and got, then:

- by kind, and for all, the items wholly right: nothing missing, nothing read beside, no field otherwise;
- the statements exactly right, against `statements` or the list of `also` that is met best. Statements read beyond
  the number of the labelled ones count as further ones that are wrong; one read otherwise than labelled counts once;
- the phrases that say no trait (no statement labelled), and how many of them gave none.
"""

from __future__ import annotations

import json
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from notation_labels import Outcome, read_and_judge

DATA = Path(__file__).parents[1] / "data"
BAR = 0.95  # share of the statements that must be exactly right, of any file


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """The file given, else those of the project."""
    given = metafunc.config.getoption("--notation-phrases", None)
    files = {"notation": given or DATA / "notation-phrases.jsonl"}
    if given is None:
        files |= {name: DATA / f"{name}.jsonl" for name in ("notation-more", "paragraphs")}
    metafunc.parametrize(("label", "path"), files.items(), ids=list(files))


def test_notation(label: str, path: Path, say: Callable[[str], None]) -> None:
    from auctorum.characters.prose.read import read_description

    items = [json.loads(line) for line in path.read_text(encoding="utf-8").splitlines() if line.strip()]
    assert items, f"no phrases in {path}"
    outcomes = [(item, read_and_judge(item, read_description)) for item in items]
    for item, outcome in outcomes:
        if not outcome.whole:
            say(miss(item, outcome))
    say_figures(label, outcomes, say)
    right, asked = (sum(getattr(outcome, name) for _, outcome in outcomes) for name in ("right", "asked"))
    assert right >= BAR * asked, f"{right} of {asked} statements exactly right"
    assert not [item["phrase"] for item, outcome in outcomes if not item["statements"] and not outcome.whole]


def miss(item: dict[str, Any], outcome: Outcome) -> str:
    """The phrase, the labelled statements that were not met, and those read in their place or beside."""
    place = f"{item['id']} ({item['kind']}) {item['phrase']!r}"
    if outcome.failed:
        return f"{place}: no answer: {outcome.failed}"
    expected, got = ([one.shown for one in some] for some in (outcome.missing, outcome.extra))
    beside = f" (beside {outcome.right} right)" if outcome.right else ""
    return f"{place}: expected {expected}, got {got}{beside}"


def say_figures(label: str, outcomes: list[tuple[dict[str, Any], Outcome]], say: Callable[[str], None]) -> None:
    """The items right by kind, then the three figures, and the items again as the closing line."""
    of_kind = Counter(item["kind"] for item, _ in outcomes)
    whole = Counter(item["kind"] for item, outcome in outcomes if outcome.whole)
    for kind in sorted(of_kind):
        say(f"{label}, {kind}: {whole[kind]}/{of_kind[kind]} right")
    right, asked = (sum(getattr(outcome, name) for _, outcome in outcomes) for name in ("right", "asked"))
    negatives = [outcome.whole for item, outcome in outcomes if not item["statements"]]
    say(f"{label}, statements exactly right: {right}/{asked} ({right / max(asked, 1):.1%})")
    say(f"{label}, items wholly right: {whole.total()}/{len(outcomes)}")
    say(f"{label}, phrases without a trait left alone: {sum(negatives)}/{len(negatives)}")
    say(f"{label}: {whole.total()}/{len(outcomes)} right")
