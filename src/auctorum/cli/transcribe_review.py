"""Doubtful readings shown to a person one by one, to accept, choose, correct or skip."""

from __future__ import annotations

import sys
from dataclasses import replace

import click
from rich.console import Console
from rich.text import Text

from auctorum.characters.prose.draft import Choice, Draft, Transcript, one_line, plain_values
from auctorum.characters.read import read_statement
from auctorum.characters.values import Reading, States
from auctorum.characters.vocabulary import Character, Vocabulary
from auctorum.cli.layout import console, heading, numbered
from auctorum.cli.transcribe_kept import Kept, as_chosen, as_drafted, by_stage, confidence_word
from auctorum.cli.transcribe_table import character_said
from auctorum.corpus.readings import check_readings, find_character
from auctorum.problems import AuctorumError
from auctorum.records.schema import Conventions

CONTEXT = 70  # characters shown on each side of the words
_GIVE_UP = "-"


class _Quit(Exception):
    """The person has had enough; what was accepted is kept."""


def on_terminal() -> bool:
    """Whether a person can be asked."""
    return sys.stdin.isatty() and sys.stdout.isatty()


def review(transcript: Transcript, vocabulary: Vocabulary, conventions: Conventions, sure: float) -> list[Kept]:
    """What is kept, in the order of the text: the sure readings, and of the others those that the person accepts."""
    kept: list[Kept] = []
    total, number = sum(draft.confidence < sure for draft in transcript.drafts), 0
    reviewer = _Reviewer(transcript, vocabulary, conventions, sure, console())
    asking = True
    for draft in transcript.drafts:
        if draft.confidence >= sure:
            kept.append(as_drafted(draft))
        elif asking:
            number += 1
            try:
                found = reviewer.decided(draft, number, total)
                kept += [replace(found, by_hand=True)] if found else []
            except (_Quit, click.Abort):
                asking = False
                click.echo("\nStopped; what was accepted is kept.")
    return kept


class _Reviewer:
    """Shows one draft after the other, and takes the answers."""

    def __init__(
        self, transcript: Transcript, vocabulary: Vocabulary, conventions: Conventions, sure: float, out: Console
    ) -> None:
        self._transcript, self._vocabulary, self._conventions = transcript, vocabulary, conventions
        self._sure, self._out = sure, out

    def decided(self, draft: Draft, number: int, total: int) -> Kept | None:
        """How the draft is kept; None if it is skipped. Raises _Quit."""
        self._show(draft, number, total)
        others = len(draft.others)
        choose = f"1–{others} another reading, " if others > 1 else "1 the other reading, " if others else ""
        question = f"[a]ccept, {choose}[c]orrect, [s]kip, [q]uit"
        while True:
            answer = click.prompt(question, prompt_suffix="? ").strip().casefold()
            if answer in ("a", "accept"):
                return as_drafted(draft)
            if answer in ("s", "skip"):
                return None
            if answer in ("q", "quit"):
                raise _Quit
            if answer.isdecimal() and 1 <= int(answer) <= others:
                return as_chosen(draft, self._words(draft), draft.others[int(answer) - 1], self._conventions)
            if answer in ("c", "correct"):
                found = self._corrected(draft)
                if found:
                    return found
            else:
                click.echo(f"“{answer}” is none of these.")

    def _words(self, draft: Draft) -> str:
        return one_line(self._transcript.words(draft))

    def _show(self, draft: Draft, number: int, total: int) -> None:
        out, text = self._out, self._transcript.text
        out.print()
        out.print(heading(f"{number} of {total}"))
        before, after = text[max(0, draft.start - CONTEXT) : draft.start], text[draft.end : draft.end + CONTEXT]
        lead = "…" if draft.start > CONTEXT else ""
        rest = "…" if draft.end + CONTEXT < len(text) else ""
        flat = [part.replace("\n", " ") for part in (before, self._transcript.words(draft), after)]
        out.print(Text.assemble(lead, flat[0].lstrip(), (f"‹{flat[1]}›", "bold"), flat[2].rstrip(), rest))
        out.print(f"read as: {_said(draft.choice)}")
        doubts = "; ".join(map(str, draft.doubts))
        out.print(f"{confidence_word(draft, self._sure)}{f': {doubts}' if doubts else ''}")
        if draft.others:
            out.print("or as:")
            out.print(numbered(map(_said, draft.others)))

    def _corrected(self, draft: Draft) -> Kept | None:
        """The draft with another character or value; None where the person gives it up."""
        character = self._character(draft)
        if character is None:
            return None
        while True:
            value = _asked(f"Value in plain notation (empty: the words themselves; {_GIVE_UP} to go back)").strip()
            if value == _GIVE_UP:
                return None
            try:
                readings = self._read(value or self._words(draft), character, bool(value))
                break
            except AuctorumError as error:
                click.echo(f"{error} ({error.remedy})")
        stage = "" if any(one.stage for one in readings) else _stage(character)
        choice = self._chosen(character, readings, value or plain_values(readings, character))
        click.echo(f"kept as: {_said(choice)}{f', {stage}' if stage else ''}")
        return Kept(draft, choice, ((value, stage),))

    def _chosen(self, character: Character, readings: tuple[Reading, ...], value: str) -> Choice:
        """The character as read, with the states that the vocabulary's own lacks."""
        known = self._vocabulary.get(character.name)
        if known is None or known == character:
            return Choice(character, known is not None, readings, value)
        said = {words for one in readings for words in _states(one)}
        had = {state.name for state in known.states}
        new = tuple(state for state in character.states if state.name in said - had)
        grown = replace(known, states=(*known.states, *new))
        return Choice(grown, not new, readings, value, tuple(state.name for state in new))

    def _read(self, words: str, character: Character, typed: bool) -> tuple[Reading, ...]:
        """The readings, as they would be read from a file; raises AuctorumError where they cannot stand."""
        found = read_statement(words, character, line=self._conventions.line, signs=self._conventions.signs)
        check_readings(found, character, words if typed else None)
        return found

    def _character(self, draft: Draft) -> Character | None:
        """The character that the person names; that of the draft if none is; None where it is given up."""
        drafted = draft.choice.character
        while True:
            said = _asked(f"Character (empty: {drafted.name}; {_GIVE_UP} to go back)").strip()
            if said in ("", drafted.name):
                return drafted
            if said == _GIVE_UP:
                return None
            try:
                return find_character(said, self._vocabulary)
            except AuctorumError as error:
                click.echo(f"{error} ({error.remedy})")


def _stage(character: Character) -> str:
    """The growth stage that the person names; empty where none is, or the character is not split by stage."""
    if not character.stages:
        return ""
    while True:
        said = _asked(f"Stage ({', '.join(character.stages)}; empty: not stated)").strip()
        if said in ("", *character.stages):
            return said
        click.echo(f"“{said}” is none of these.")


def _asked(question: str) -> str:
    return str(click.prompt(question, default="", show_default=False, prompt_suffix=": "))


def _states(reading: Reading) -> tuple[str, ...]:
    """The states that a reading names."""
    shares = reading.value.shares if isinstance(reading.value, States) else ()
    return tuple(words for share in shares for words in (share.state, share.to) if words)


def _said(choice: Choice) -> str:
    """`spur colour: green (young); ivory (mature)`, `leaf shape: new state oblong`."""
    values = "; ".join(f"{value} ({stage})" if stage else value for stage, value in by_stage(choice))
    said = character_said(choice)
    return said if choice.new_states == (values,) else f"{said}{'; ' if choice.new_states else ': '}{values}"
