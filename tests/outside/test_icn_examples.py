"""Worked examples of the Code, each built into a corpus, asked and compared (source of each beside it in the data).

`pytest -k icn --icn-examples PATH` runs another file of the same form. All cases run; the lines at the end give every
miss with what was expected and got, and the count by kind and in all.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
import yaml

import icn_answers

DATA = Path(__file__).parents[1] / "data"
BAR = 0.9  # share of the cases that must be right, of any file


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    """The file given, else those of the project: examples with the page they were read at, and others from memory."""
    given = metafunc.config.getoption("--icn-examples", None)
    files = {"icn-examples": given or DATA / "icn-examples.yaml"}
    if given is None:
        files |= {name: DATA / f"{name}.yaml" for name in ("icn-from-memory", "icn-more-from-memory")}
    metafunc.parametrize(("label", "path"), files.items(), ids=list(files))


def test_icn(label: str, path: Path, say: Callable[[str], None]) -> None:
    cases = yaml.load(path.read_text(encoding="utf-8"), yaml.CSafeLoader)
    assert cases, f"no cases in {path}"
    asked: Counter[str] = Counter()
    right: Counter[str] = Counter()
    data: Counter[bool] = Counter()
    for case in cases:
        kind = case["question"]["ask"]
        asked[kind] += 1
        missed = misses(case)
        right[kind] += not missed
        if case.get("data_case"):  # no rule gives the answer: a list or a judgement of the Code
            data[not missed] += 1
        for line in missed:
            say(line)
    for kind in sorted(asked):
        say(f"{label}, {kind}: {right[kind]}/{asked[kind]} right")
    if data:
        say(f"{label}, among them cases of data, not of rules: {data[True]}/{data.total()} right")
    say(f"{label}: {right.total()}/{asked.total()} right")
    assert right.total() >= BAR * asked.total()


def misses(case: dict[str, Any]) -> list[str]:
    """A line for each field of one case that is answered otherwise; one for a case that can't be answered at all."""
    try:
        found = icn_answers.answer(case)
    except Exception as error:
        return [f"{case['id']}: no answer: {type(error).__name__}: {error}"]
    return [
        f"{case['id']} (Art. {case['article']}): {field}: expected {wanted!r}, got {got!r}"
        for field, wanted, got in icn_answers.differences(case, found)
    ]
