"""A working criterion written as a file of criteria/, which reads back as the same criterion."""

from __future__ import annotations

import re
import textwrap

from auctorum.records.fields import Person
from auctorum.records.insert import plain_or_quoted, quoted
from auctorum.records.settings import Criterion, Decisive, Supporting

WIDTH = 118
_FOLDS = re.compile(r"[^\s\x00-\x1f\x7f-\x9f\u2028\u2029\ufeff\ufffe\uffff]+(?: [^\s\x00-\x1f\x7f-\x9f\u2028\u2029]+)*")
_TO_FILL = ("# author: [{family: ..., given: ...}]", "# issued: 2024-10")


def as_yaml(criterion: Criterion, *, remark: str = "") -> str:
    """The text of the file; `remark` is a comment at its head. Where author or date are not given, a line to fill in.

    Keys stand in the order of the record, empty ones are left out.
    """
    lines = [f"# {line}" for line in textwrap.wrap(remark, WIDTH - 2)]
    lines += [f"id: {criterion.id}", f"taxon: {_word(criterion.taxon)}", f"title: {_word(criterion.title)}"]
    lines += ["decisive:", *(f"  {line}" for line in _decisive(criterion.decisive))]
    if criterion.supporting:
        lines += ["supporting:", *(f"  - {_flow(_supporting(one))}" for one in criterion.supporting)]
    if criterion.otherwise:
        lines.append(f"otherwise: {_word(criterion.otherwise)}")
    if criterion.author:
        lines += ["author:", *(f"  - {_flow(_person(one))}" for one in criterion.author)]
    if criterion.issued:
        lines.append(f"issued: {_word(criterion.issued)}")
    lines += [line for line, there in zip(_TO_FILL, (criterion.author, criterion.issued), strict=True) if not there]
    return "\n".join([*lines, *_note(criterion.note)]) + "\n"


def _decisive(one: Decisive) -> list[str]:
    said = {"character": one.character, "stage": one.stage, "at-least": one.at_least, "at-most": one.at_most}
    return [f"{key}: {_word(value)}" for key, value in said.items() if value]


def _supporting(one: Supporting) -> dict[str, str]:
    return {"character": one.character, "stage": one.stage, "value": one.value, "weight": format(one.weight, "f")}


def _person(one: Person) -> dict[str, str]:
    return {"family": one.family, "given": one.given, "literal": one.literal}


def _flow(said: dict[str, str]) -> str:
    return "{" + ", ".join(f"{key}: {_word(value)}" for key, value in said.items() if value) + "}"


def _word(words: str) -> str:
    return plain_or_quoted(words)


def _note(words: str) -> list[str]:
    """The note in folded lines where they read back to the same words, else in quotes on one line."""
    if not words:
        return []
    if _FOLDS.fullmatch(words) and words[0] != "#":
        folded = textwrap.wrap(words, WIDTH - 2, break_long_words=False, break_on_hyphens=False)
        if " ".join(folded) == words:
            return ["note: >-", *(f"  {line}" for line in folded)]
    return [f"note: {quoted(words)}"]
