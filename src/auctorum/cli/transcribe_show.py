"""A transcript laid out for a terminal: the text with its marks, a table of the readings, and what is left."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from itertools import pairwise

from rich.console import Console
from rich.table import Table
from rich.text import Text

from auctorum.characters.prose.draft import Draft, Transcript
from auctorum.characters.prose.found import Leftover
from auctorum.cli.common import counted
from auctorum.cli.layout import console, heading, table
from auctorum.cli.transcribe_kept import by_stage, confidence_word, one_line, proposals
from auctorum.records.append_characters import as_yaml

_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_STYLE = {"sure": "green", "likely": "yellow", "doubtful": "magenta", "not understood": "red"}
_Span = tuple[int, int]


def show(transcript: Transcript, sure: float, *, everything: bool) -> None:
    """Print the transcript; `everything` lists also what was passed over as no trait."""
    out = console()
    out.print(marked(transcript, sure, raised=_can_raise(out)))
    if transcript.drafts:
        out.print()
        out.print(readings(transcript, sure))
    _show_left(out, transcript, everything)
    new = proposals(draft.choice for draft in transcript.drafts)
    if new:
        out.print()
        out.print(heading("Characters that characters.yaml lacks"))
        out.print(Text(as_yaml(new)), soft_wrap=True)


def marked(transcript: Transcript, sure: float, *, raised: bool = True) -> Text:
    """The text in paragraphs, statements in ‹› with their numbers, words not understood in ‹› with a question mark.

    Colour only repeats what the marks say. Without `raised` the marks are ASCII: [spur 8 mm long](3).
    """
    spans = _spans(transcript, sure)
    flat = _reflowed(transcript.text)
    starts, ends = _by(spans, 0), _by(spans, 1)
    text, inside = Text(), list[_Span]()
    for start, end in pairwise(sorted({0, len(flat), *starts, *ends})):
        for span in starts.get(start, ()):
            text.append("‹" if raised else "[", style=spans[span][1])
            inside.append(span)
        text.append(flat[start:end], style=spans[inside[-1]][1] if inside else "")
        for span in ends.get(end, ()):
            number, style = spans[span]
            text.append(f"›{number.translate(_RAISED)}" if raised else f"]({number})", style=style)
            inside.remove(span)
    return text


def _by(spans: Iterable[_Span], edge: int) -> dict[int, list[_Span]]:
    """Spans by where they start or end, in the order in which their marks open or close: the longer outside."""
    found: dict[int, list[_Span]] = {}
    for span in sorted(spans, key=lambda one: (one[0], -one[1]) if edge == 0 else (-one[0], one[1])):
        found.setdefault(span[edge], []).append(span)
    return found


def _spans(transcript: Transcript, sure: float) -> dict[_Span, tuple[str, str]]:
    """Number and style of every marked stretch of the text; statements of the same words share one."""
    found: dict[_Span, tuple[str, str]] = {}
    for number, draft in enumerate(transcript.drafts, 1):
        span = (draft.start, draft.end)
        before, style = found.get(span, ("", _STYLE[confidence_word(draft, sure)]))
        found[span] = (f"{before},{number}" if before else str(number), style)
    for one in transcript.left:
        if one.why is None:
            found.setdefault((one.start, one.end), ("?", _STYLE["not understood"]))
    return found


def _reflowed(text: str) -> str:
    """The text with line breaks inside a paragraph as spaces; its length stays, and so do all places in it."""
    return re.sub(r"(?<!\n)\n(?!\n)", " ", text.rstrip())


def readings(transcript: Transcript, sure: float) -> Table:
    """The numbered table of statements; a reading that differs by growth stage takes a line for each."""
    rows: list[tuple[str | Text, ...]] = []
    for number, draft in enumerate(transcript.drafts, 1):
        words = one_line(transcript.words(draft))
        lead = (str(number), words, character_said(draft))
        for first, (stage, value) in enumerate(by_stage(draft.choice)):
            trust = Text("") if first else confidence(draft, sure)
            rows.append(
                (*(lead if not first else ("", "", "")), value, stage or (draft.stage if not first else ""), trust)
            )
    return table(("no.", "words", "character", "reading", "stage", "confidence"), rows, right=(0,))


def character_said(draft: Draft) -> str:
    """The name of the character, marked where the vocabulary lacks it."""
    return draft.choice.character.name + ("" if draft.choice.known else " (new)")


def confidence(draft: Draft, sure: float) -> Text:
    """How far the reading can be trusted, and what it takes for granted."""
    word = confidence_word(draft, sure)
    doubts = "; ".join(map(str, draft.doubts))
    return Text.assemble((word, _STYLE[word]), f": {doubts}" if doubts else "")


def _show_left(out: Console, transcript: Transcript, everything: bool) -> None:
    lost = [one for one in transcript.left if one.why is None]
    passed = [one for one in transcript.left if one.why is not None]
    if lost:
        out.print()
        out.print(heading("Not understood"))
        out.print(*(f"  {words}" for words in _words(transcript, lost)), sep="\n")
    if passed and everything:
        out.print()
        out.print(heading("No trait"))
        out.print(table(("words", "what it is"), [(_one(transcript, one), str(one.why)) for one in passed]))
    elif passed:
        out.print()
        out.print(f"{counted(len(passed), 'passage')} passed over as no trait (--all lists them).")


def _words(transcript: Transcript, left: Iterable[Leftover]) -> list[str]:
    return [_one(transcript, one) for one in left]


def _one(transcript: Transcript, left: Leftover) -> str:
    return one_line(transcript.words(left))


def _can_raise(out: Console) -> bool:
    """Whether the marks can be written where the output goes."""
    try:
        "‹›⁰¹⁴".encode(out.encoding)
    except (UnicodeEncodeError, LookupError):
        return False
    return True


def show_batch(rows: Sequence[tuple[str, ...]], *, into: bool) -> None:
    """The closing table of a batch, a line for each file."""
    headings = (
        "file",
        "statements",
        "doubtful",
        "not understood",
        *(("written to", "added") if into else ()),
        "remark",
    )
    console().print(table(headings, rows, right=(1, 2, 3, 5) if into else (1, 2, 3)))
