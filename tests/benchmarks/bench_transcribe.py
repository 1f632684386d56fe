"""Reading of descriptions at scale, by hand: `python tests/benchmarks/bench_transcribe.py [labelled.jsonl ...]`.

Descriptions are the phrases of tests/data/notation-*.jsonl joined to about a hundred words. Prints how many a second
are read and drafted, what a word costs in texts 4 and 16 times as long (ratios within one run, each the median of
several), the time to load the reader, and how often labelled statements were right by their gravest doubt: the figures
behind the confidence of a draft. Phrases that the reader was built upon say little of those: it reads nearly all of
them as labelled. Give files of other phrases, in the same form, for figures that hold.
"""

from __future__ import annotations

import json
import statistics
import subprocess
import sys
import time
from collections import Counter
from collections.abc import Callable, Iterable, Iterator, Mapping
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT / "tests"))

from auctorum.characters.prose.draft import confidence, transcribe  # noqa: E402
from auctorum.characters.prose.found import Found  # noqa: E402
from auctorum.characters.prose.read import read_description  # noqa: E402
from auctorum.cli.transcribe_run import vocabulary_in  # noqa: E402
from notation_labels import EXACT, Statement, judge, labels  # noqa: E402

Item = Mapping[str, Any]


def labelled(paths: Iterable[Path]) -> list[Item]:
    return [
        json.loads(line) for path in paths for line in path.read_text(encoding="utf-8").splitlines() if line.strip()
    ]


ITEMS = labelled(sorted((ROOT / "tests" / "data").glob("notation-*.jsonl")))
WORDS = 100
TIMES = 5


def descriptions() -> list[str]:
    """The phrases in their order, joined until each text has about a hundred words."""
    texts, held = [], ""
    for item in ITEMS:
        held += (
            item["phrase"].rstrip(".;") + ". " if item["phrase"][:1].isupper() else item["phrase"].rstrip(".;") + "; "
        )
        if len(held.split()) >= WORDS:
            texts.append(held)
            held = ""
    return texts


def median(work: Callable[[], object], times: int = TIMES) -> float:
    """Median seconds of several runs."""
    taken = []
    for _ in range(times):
        began = time.perf_counter()
        work()
        taken.append(time.perf_counter() - began)
    return statistics.median(taken)


def speeds() -> None:
    demo = vocabulary_in(ROOT / "kb")
    texts = descriptions()
    words = sum(len(text.split()) for text in texts)
    ways: dict[str, Callable[[str], object]] = {
        "read_description": read_description,
        "transcribe": lambda text: transcribe(text, demo),
    }
    for name, way in ways.items():
        way(texts[0])
        taken = median(lambda way=way: [way(text) for text in texts])  # type: ignore[misc]
        print(f"{name:17} {len(texts) / taken:7.0f} descriptions a second, of {words / len(texts):.0f} words each")
        once = median(lambda way=way: way(texts[0]), 15)  # type: ignore[misc]
        for many in (4, 16):
            longer = median(lambda way=way, many=many: way(texts[0] * many))  # type: ignore[misc]
            print(f"{name:17} cost of a word in a text {many} times as long: {longer / many / once:.2f}")


def loading() -> None:
    """Import of the reader against an empty interpreter and against the modules it is built on."""
    base = median(lambda: subprocess.run([sys.executable, "-c", ""], check=True), 9)
    for module in ("auctorum.characters.units", "auctorum.characters.prose.organs", "auctorum.characters.prose.read"):
        taken = median(lambda module=module: subprocess.run([sys.executable, "-c", f"import {module}"], check=True), 9)  # type: ignore[misc]
        print(f"import {module}: {taken - base:.2f} s over an empty interpreter ({taken / base:.1f} times as long)")


def judged(items: Iterable[Item]) -> Iterator[tuple[Found, bool]]:
    """Every statement read in the labelled phrases, and whether it is one of the labels."""
    for item in items:
        found = read_description(item["phrase"], signs=item.get("given")).statements
        wrong = {_about(one) for one in judge(item, labels(found)).extra}
        for one in found:
            yield (
                one,
                not any(_about(statement) in wrong for statement in judge({"statements": []}, labels([one])).extra),
            )


def _about(one: Statement) -> tuple[object, ...]:
    """What tells a statement from the others of its phrase; the states of an organ are judged together."""
    stage = one.exact[EXACT.index("stage")]
    return (one.structure, one.exact[0], stage) if one.states else (one.structure, one.exact, one.numbers, one.to)


def calibration(items: Iterable[Item]) -> None:
    """By the gravest doubt: statements read, those right, and the share that the confidence states."""
    right: Counter[str] = Counter()
    asked: Counter[str] = Counter()
    stated: dict[str, float] = {}
    for found, is_right in judged(items):
        gravest = min(found.doubts, key=lambda doubt: confidence({doubt}), default=None)
        name = gravest.name if gravest else "none"
        stated[name] = confidence({gravest} if gravest else set())
        asked[name] += 1
        right[name] += is_right
    for name in sorted(asked, key=lambda name: -stated[name]):
        share = right[name] / asked[name]
        print(
            f"gravest doubt {name:14} {right[name]:5} of {asked[name]:5} right ({share:.1%}); stated {stated[name]:.2f}"
        )
    print(f"all {right.total()} of {asked.total()} right ({right.total() / asked.total():.1%})")


if __name__ == "__main__":
    speeds()
    loading()
    calibration(labelled(map(Path, sys.argv[1:])) or ITEMS)
