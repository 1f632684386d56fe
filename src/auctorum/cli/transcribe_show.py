"""A transcript laid out for a terminal: the text with its marks, a table of the readings, and what is left."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from itertools import pairwise

import click
from rich.console import Console
from rich.text import Text

from auctorum.characters.prose.draft import Choice, Transcript, one_line
from auctorum.characters.prose.found import Leftover
from auctorum.characters.vocabulary import Character
from auctorum.cli.common import counted
from auctorum.cli.layout import console, heading, table
from auctorum.cli.transcribe_kept import confidence_word, proposals, state_proposals
from auctorum.cli.transcribe_run import LONG
from auctorum.cli.transcribe_table import STYLE, print_readings
from auctorum.records import append_characters

_RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_Span = tuple[int, int]


def show(transcript: Transcript, sure: float, *, everything: bool, as_yaml: bool) -> None:
    """Print the transcript; `everything` shows also a long text, and lists what was passed over as no trait."""
    out, long = console(), len(transcript.text) > LONG
    if long and not everything:
        click.echo(f"The text has {len(transcript.text):,} letters; --all shows it with its marks.")
    else:
        out.print(marked(transcript, sure, raised=_can_raise(out)))
    if transcript.drafts:
        out.print()
        print_readings(transcript, sure, long=long)
    _show_left(out, transcript, everything)
    show_lacking([draft.choice for draft in transcript.drafts], as_yaml=as_yaml)


def show_lacking(choices: Sequence[Choice], *, as_yaml: bool) -> None:
    """Print what characters.yaml lacks for the readings: a line for each character, or YAML ready to paste."""
    new, states = proposals(choices), state_proposals(choices)
    if new:
        lines = [f"  {_lacking(one)}" for one in new]
        _print_under("Characters that characters.yaml lacks", append_characters.as_yaml(new) if as_yaml else lines)
    if states:
        lines = [f"  {name}: {', '.join(one.name for one in several)}" for name, several in states.items()]
        said = append_characters.states_as_yaml(states) if as_yaml else lines
        _print_under("States that characters.yaml lacks", said)


def _lacking(character: Character) -> str:
    states = ", ".join(state.name for state in character.states)
    return f"{character.name}: {states or ' '.join((character.kind, *filter(None, [character.unit])))}"


def _print_under(title: str, said: str | Sequence[str]) -> None:
    console().print()
    console().print(heading(title))
    click.echo(said if isinstance(said, str) else "\n".join(said))


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
        before, style = found.get(span, ("", STYLE[confidence_word(draft, sure)]))
        found[span] = (f"{before},{number}" if before else str(number), style)
    for one in transcript.left:
        if one.why is None:
            found.setdefault((one.start, one.end), ("?", STYLE["not understood"]))
    return found


def _reflowed(text: str) -> str:
    """The text with line breaks inside a paragraph as spaces; its length stays, and so do all places in it."""
    return re.sub(r"(?<!\n)\n(?!\n)", " ", text.rstrip())


def _show_left(out: Console, transcript: Transcript, everything: bool) -> None:
    lost = [one for one in transcript.left if one.why is None]
    passed = [one for one in transcript.left if one.why is not None]
    if lost:
        out.print()
        out.print(heading("Not understood"))
        click.echo("\n".join(f"  {_one(transcript, one)}" for one in lost))
    if passed and everything:
        out.print()
        out.print(heading("No trait"))
        out.print(table(("words", "what it is"), [(_one(transcript, one), str(one.why)) for one in passed]))
    elif passed:
        out.print()
        out.print(f"{counted(len(passed), 'passage')} passed over as no trait (--all lists them).")


def _one(transcript: Transcript, left: Leftover) -> str:
    return one_line(transcript.words(left))


def _can_raise(out: Console) -> bool:
    """Whether the marks can be written where the output goes."""
    try:
        "‹›⁰¹⁴".encode(out.encoding)
    except (UnicodeEncodeError, LookupError):
        return False
    return True
