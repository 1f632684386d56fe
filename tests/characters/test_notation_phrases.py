"""Readings of a named character against phrases of published descriptions, labelled by hand.

Source: tests/data/notation-phrases.jsonl, phrases with the figures and notation of published protologues, floras and
monographs (1780s to 2020s); each line names its work under `source`. What the reader misses of numbers:
`mostly 7–15 but occasionally to 30`, which is one range with an extreme where one character is asked for, and is
labelled as two statements; and organs that the label calls otherwise than the phrase. The bars are what it reaches.
"""

from __future__ import annotations

import json
from decimal import Decimal
from pathlib import Path
from typing import Any

from auctorum.characters.read import read_statement
from auctorum.characters.values import Modality, Range, Reading, Share, States
from auctorum.characters.vocabulary import Character, Kind, State
from auctorum.problems import AuctorumError

PHRASES = Path(__file__).parents[1] / "data" / "notation-phrases.jsonl"
ITEMS: list[dict[str, Any]] = [json.loads(text) for text in PHRASES.read_text(encoding="utf-8").splitlines()]
KINDS = {"count": Kind.COUNT, "ratio": Kind.RATIO, "angle": Kind.ANGLE}
Label = dict[str, Any]


def test_notation_given_character() -> None:
    right, misses = score([(item, label) for item in ITEMS for label in item["statements"] if "low" in label])
    assert right / (right + len(misses)) >= 0.98, "\n".join(misses)


def test_notation_comparisons() -> None:
    right, misses = score([(item, label) for item in ITEMS for label in item["statements"] if "relative" in label])
    assert right and not misses, "\n".join(misses)


def test_notation_given_states() -> None:
    """English phrases that say a character of one structure only: the vocabulary here holds every part's states."""
    asked = [
        (item, label)
        for item in ITEMS
        if item["kind"] not in ("latin", "decimal-comma")
        for label in item["statements"]
        if "states" in label and {label["structure"]} == structures(item, label["character"])
    ]
    missed = [
        f"{item['id']} {item['phrase']} [wanted {label}]" for item, label in asked if not same_states(item, label)
    ]
    assert len(missed) / len(asked) <= 0.12, "\n".join(missed)


def score(asked: list[tuple[dict[str, Any], Label]]) -> tuple[int, list[str]]:
    """How many labels the reader meets, and a line for each that it misses."""
    misses = []
    for item, label in asked:
        try:
            found = read_statement(item["phrase"], character_of(label), signs=item.get("given"))
        except AuctorumError as error:
            misses.append(f"{item['id']} {item['kind']}: {error}")
            continue
        if not any(meets(reading, other) for reading in found for other in alternatives(item, label)):
            misses.append(f"{item['id']} {item['kind']}: {item['phrase']} gives {found}")
    return len(asked) - len(misses), misses


def character_of(label: Label) -> Character:
    kind = Kind.RATIO if "relative" in label else KINDS.get(label["character"], Kind.MEASURE)
    unit = {Kind.MEASURE: "mm", Kind.ANGLE: "degree"}.get(kind, "")
    return Character(f"{label['structure']} {label['character']}", label["structure"], label["character"], kind, unit)


def alternatives(item: dict[str, Any], label: Label) -> list[Label]:
    """The label, and what the other full readings of the phrase say of the same character and stage."""
    others = [other for statements in item.get("also", []) for other in statements]
    about = ("structure", "character", "stage")
    return [label] + [
        other
        for other in others
        if all(other.get(key) == label.get(key) for key in about) and ("low" in other or "relative" in other)
    ]


def meets(reading: Reading, label: Label) -> bool:
    value = reading.value
    assert isinstance(value, Range)
    if label.get("modality") == "usually" and value.usual is not None:
        return all(near(found, label[end]) for found, end in zip(value.usual, ("low", "high"), strict=True))
    numbers = label.get("relative", label)
    low, high = ("factor_low", "factor_high") if "relative" in label else ("low", "high")
    bound = "max" if value.low is None else "min" if value.high is None or value.more else None
    return (
        near(value.low, numbers[low])
        and near(value.high, numbers[high])
        and near(value.least, label.get("low_extreme"))
        and near(value.most, label.get("high_extreme"))
        and value.approximate == label.get("approx", False)
        and bound == label.get("bound")
        and value.unit == label.get("unit", "").replace("none", "").replace("ratio", "")
    )


def near(found: Decimal | None, wanted: float | None) -> bool:
    if found is None or wanted is None:
        return found is wanted
    return abs(float(found) - wanted) <= 0.001


def structures(item: dict[str, Any], character: str) -> set[str]:
    return {label["structure"] for label in item["statements"] if label["character"] == character}


def same_states(item: dict[str, Any], label: Label) -> bool:
    """Whether the states, with spans and modality, are read at the stage of the label."""
    names = {
        name
        for other in ITEMS
        for statement in other["statements"]
        if statement["character"] == label["character"]
        for state in statement.get("states", [])
        for name in (state["state"], state.get("to"))
        if name
    }
    states = tuple(State(name) for name in sorted(names))
    character = Character("asked", label["structure"], label["character"], Kind.ORDERED, states=states)
    wanted = {
        Share(
            state["state"],
            state.get("to"),
            Modality(state.get("modality", label.get("modality", "always")).replace("always-not", "never")),
        )
        for state in label["states"]
    }
    try:
        found = read_statement(item["phrase"], character)
    except AuctorumError:
        return False
    return any(
        isinstance(one.value, States) and set(one.value.shares) == wanted and one.stage == label.get("stage", "")
        for one in found
    )
