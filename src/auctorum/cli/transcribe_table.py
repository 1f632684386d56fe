"""The readings of a transcript as a table: words, character, value, stage, and how sure each is."""

from __future__ import annotations

from collections.abc import Sequence
from string import ascii_lowercase

import click
from rich.text import Text

from auctorum.characters.prose.draft import Choice, Draft, Transcript, one_line
from auctorum.characters.prose.found import Doubt
from auctorum.cli.layout import console, table
from auctorum.cli.transcribe_kept import by_stage, confidence_word

STYLE = {"sure": "green", "likely": "yellow", "doubtful": "magenta", "not understood": "red"}
_HEADINGS = ("no.", "words", "character", "reading", "stage", "confidence")
_WIDEST = 40  # letters to which the columns of a long table are padded
_READING = _HEADINGS.index("reading")
_NARROWEST, _UNBROKEN = 8, 16  # letters of a column that gives way, and of a figure that is not broken
_NAME_WIDTHS = 16, 40  # letters of the name of a file: at least, and at most
_REMARK_WIDTH = 20  # letters, if there is any
_GAP = 3  # between two columns
Row = tuple[str | Text, ...]


def print_readings(transcript: Transcript, sure: float, *, long: bool) -> None:
    """Print the numbered table of statements, with the meaning of the doubts below.

    A `long` one is printed row by row, each on one line however wide, since to fit it takes its time.
    """
    marks = doubt_marks(transcript, sure)
    rows = readings(transcript, sure, marks)
    if long:
        _print_plain(rows)
    else:
        made = table(_HEADINGS, rows, right=(0,))
        for column, width in zip(made.columns, _widths(rows, console().width), strict=True):
            column.width = width
        console().print(made)
    for doubt, mark in marks.items():
        click.echo(f"({mark}) {doubt}")


def _widths(rows: Sequence[Row], room: int) -> list[int]:
    """Widths of the columns in letters; where the room is too small, the widest of words, character and reading gives.

    The figures of a reading are kept whole as long as they can be.
    """
    widths = [max(map(len, map(str, column))) for column in zip(_HEADINGS, *rows, strict=True)]
    figures = max((len(word) for row in rows for word in str(row[_READING]).split()), default=0)
    least = dict.fromkeys(range(1, _READING), _NARROWEST) | {_READING: min(figures, _UNBROKEN)}
    while sum(widths) + _GAP * (len(widths) - 1) > room:
        widest = max(
            (column for column in least if widths[column] > least[column]), key=widths.__getitem__, default=None
        )
        if widest is None:
            break
        widths[widest] -= 1
    return widths


def doubt_marks(transcript: Transcript, sure: float) -> dict[Doubt, str]:
    """A letter for each doubt of a reading that is not sure, in the order in which they occur."""
    unsure = (draft for draft in transcript.drafts if draft.confidence < sure)
    found = dict.fromkeys(doubt for draft in unsure for doubt in draft.doubts)
    return dict(zip(found, ascii_lowercase, strict=False))


def readings(transcript: Transcript, sure: float, marks: dict[Doubt, str]) -> list[Row]:
    """The rows of the table; a reading that differs by growth stage takes a line for each."""
    rows: list[Row] = []
    for number, draft in enumerate(transcript.drafts, 1):
        lead = (str(number), one_line(transcript.words(draft)), character_said(draft.choice))
        for first, (stage, value) in enumerate(by_stage(draft.choice)):
            trust = Text("") if first else _confidence(draft, sure, marks)
            rows.append(
                (*(lead if not first else ("", "", "")), value, stage or (draft.stage if not first else ""), trust)
            )
    return rows


def character_said(choice: Choice) -> str:
    """The name of the character; what the vocabulary lacks of it is said: `leaf shape: new state oblong`."""
    name = choice.character.name
    if choice.new_states:
        return f"{name}: new state{'s' * (len(choice.new_states) > 1)} {', '.join(choice.new_states)}"
    return name if choice.known else f"{name} (new)"


def _confidence(draft: Draft, sure: float, marks: dict[Doubt, str]) -> Text:
    """How far the reading can be trusted, with the letters of what it takes for granted unless it is sure."""
    word = confidence_word(draft, sure)
    said = ", ".join(marks[doubt] for doubt in draft.doubts if doubt in marks) if word != "sure" else ""
    return Text.assemble((word, STYLE[word]), f" ({said})" if said else "")


def _print_plain(rows: Sequence[Row]) -> None:
    plain = [_HEADINGS, *(tuple(map(str, row)) for row in rows)]
    widths = [min(max(map(len, column)), _WIDEST) for column in zip(*plain, strict=True)]
    lines = ("   ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in plain)
    click.echo("\n".join(lines))


def print_batch(rows: Sequence[tuple[str, ...]], *, into: bool) -> None:
    """Print the closing table of a batch, a line for each file; columns of figures are never broken."""
    figures = ("read", "likely", "doubtful", "unread", *(("added",) if into else ()))
    free = console().width - sum(map(len, figures)) - _GAP * (len(figures) + 1)
    free -= _REMARK_WIDTH if any(remark for *_, remark in rows) else len("remark")
    width = max(_NAME_WIDTHS[0], min(free, _NAME_WIDTHS[1]))
    named = [(shortened(name, width), *rest) for name, *rest in rows]
    made = table(("file", *figures, "remark"), named, right=range(1, len(figures) + 1))
    for column in made.columns[: len(figures) + 1]:
        column.no_wrap = True
    console().print(made)


def shortened(name: str, width: int) -> str:
    """The name with its middle left out where it is longer than `width`: its folder and its end tell it.

    >>> shortened("descriptions/of/the/north/orrin-1889.txt", 28)
    'descriptions/…orrin-1889.txt'
    """
    if len(name) <= width:
        return name
    head = (width - 1) // 2
    return f"{name[:head]}…{name[len(name) - (width - 1 - head) :]}"
