"""Texts read, decided on and written where they shall go: what `auctorum transcribe` does."""

from __future__ import annotations

import contextlib
import re
import sys
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

import click

from auctorum.characters.prose import draft as prose
from auctorum.characters.prose.draft import Transcript
from auctorum.characters.vocabulary import Vocabulary
from auctorum.cli.common import at_work, counted, progress_bar
from auctorum.cli.transcribe import INPUT
from auctorum.cli.transcribe_into import (
    add_to_vocabulary,
    check_target,
    check_vocabulary,
    conventions_for,
    literature_file,
    write_statements,
)
from auctorum.cli.transcribe_kept import Kept, proposals, settled, state_proposals, statements, sure_ones
from auctorum.corpus.vocabulary import vocabulary_of
from auctorum.problems import AuctorumError
from auctorum.records.append import Appended
from auctorum.records.read import collector_paused
from auctorum.records.schema import Characters, Conventions, StatementRecord
from auctorum.records.single import decoded, limited, read_record, read_text

LONG = 20_000  # letters from which a text takes a while, and is not shown whole unless it is asked for


@dataclass(frozen=True, slots=True)
class Asked:
    """The options of one call."""

    kb: Path
    into: Path | None
    taxon: str
    page: str
    review: bool
    sure: float
    line: str | None
    signs: Mapping[str, str] | None
    new_characters: bool
    everything: bool
    as_yaml: bool
    as_json: bool

    @property
    def vocabulary_file(self) -> Path:
        """The file of the characters."""
        return self.kb / "characters.yaml"


@dataclass(frozen=True, slots=True)
class Done:
    """One text: what was read and kept, where it went, or what stood in the way."""

    name: str
    transcript: Transcript | None = None
    kept: tuple[Kept, ...] = ()
    path: Path | None = None
    written: Appended | None = None
    new: tuple[str, ...] = ()  # characters added
    new_states: Mapping[str, Sequence[str]] = field(default_factory=dict)  # states added, by character
    left_out: int = 0  # statements kept, but of characters or states that the vocabulary lacks
    fault: str = ""
    unwritten: tuple[StatementRecord, ...] = ()  # decided on, and lost unless a person pastes them


class NoText(AuctorumError, ValueError):
    """A file, or an input, without words."""

    remedy = "paste a description, or name the file of one"

    def __init__(self, name: str) -> None:
        super().__init__(name)
        self.name = name

    def __str__(self) -> str:
        return f"there is no text in {self.name}"


class Stopped(AuctorumError):
    """A person has stopped the reading; `written` are the files that were written before."""

    remedy = "run the command again; what stands in a file already is not added twice"

    def __init__(self, written: Sequence[Path] = ()) -> None:
        super().__init__(written)
        self.written = tuple(written)

    def __str__(self) -> str:
        return f"stopped; written: {', '.join(map(str, self.written)) or 'nothing'}"


@contextlib.contextmanager
def before_writing() -> Iterator[None]:
    """Raises Stopped where a person stops what is done inside, so that it is clear that nothing was written."""
    try:
        yield
    except KeyboardInterrupt:
        raise Stopped from None


def vocabulary_in(kb: Path) -> Vocabulary:
    """The characters of the knowledge base; how many problems its file has is told on standard error."""
    path = kb / "characters.yaml"
    if not path.exists():
        raise click.BadParameter(f"there is no {path}; start one with `auctorum new kb DIR`", param_hint="--kb")
    found, problems = read_record(path, Characters)
    every = list(problems)
    vocabulary = vocabulary_of(found or Characters(characters=()), every.append)
    errors = sum(one.severity == "error" for one in every)
    if errors:
        told = counted(errors, "error")
        click.echo(f"{path} has {told}; what they concern is left out: auctorum check --kb {kb}", err=True)
    return vocabulary


def several(sources: Sequence[Path], vocabulary: Vocabulary, asked: Asked) -> list[Done]:
    """Every text of a batch; one that is at fault does not stop the others. Raises Stopped."""
    if asked.into:
        aims = [literature_file(asked.into, path.stem.strip("-"), folder=True) for path in sources]
        twice = sorted({str(aim) for aim in aims if aims.count(aim) > 1})
        if twice:
            raise click.UsageError(f"several texts would go into {', '.join(twice)}; rename them")
        if not asked.taxon and any(not aim.exists() for aim in aims):
            raise click.UsageError("say with --taxon what the texts describe: new files are begun for them")
    done: list[Done] = []
    with progress_bar("Transcribing", least=2) as progress:
        for number, path in enumerate(sources, 1):
            try:
                done.append(_one_of_several(path, vocabulary, asked))
            except (Stopped, KeyboardInterrupt):
                raise Stopped([one.path for one in done if one.written and one.path]) from None
            if done[-1].new or done[-1].new_states:
                vocabulary = vocabulary_in(asked.kb)
            progress(number, len(sources))
    return done


def _one_of_several(path: Path, vocabulary: Vocabulary, asked: Asked) -> Done:
    try:
        return one(path, vocabulary, asked, batch=True)
    except Stopped:
        raise
    except AuctorumError as error:
        return Done(str(path), fault=f"{error} ({error.remedy})")
    except click.UsageError as error:
        return Done(str(path), fault=error.format_message())
    except OSError as error:
        return Done(str(path), fault=error.strerror or str(error))


def one(source: Path, vocabulary: Vocabulary, asked: Asked, *, batch: bool = False) -> Done:
    """One text read, decided on, and written where it shall go. Raises Stopped while nothing is written."""
    path = literature_file(asked.into, source.stem.strip("-"), folder=batch) if asked.into else None
    conventions = conventions_for(path, asked.taxon, asked.line, asked.signs)
    if path:
        check_target(path)
    if asked.new_characters:
        check_vocabulary(asked.vocabulary_file)
    with before_writing():
        transcript = _read(source, vocabulary, conventions, asked, batch)
    if asked.review:
        from auctorum.cli.transcribe_review import review
        from auctorum.cli.transcribe_show import show

        show(transcript, asked.sure, everything=asked.everything, as_yaml=asked.as_yaml)
        kept = review(transcript, vocabulary, conventions, asked.sure)
    else:
        kept = sure_ones(transcript.drafts, asked.sure)
    return _kept(Done(_name(source), transcript, tuple(kept), path), transcript, conventions, asked)


def _read(source: Path, vocabulary: Vocabulary, conventions: Conventions, asked: Asked, batch: bool) -> Transcript:
    text = _text(source)
    signs = conventions.signs or None
    with at_work(f"Reading {len(text):,} letters", long=len(text) > LONG and not batch), collector_paused():
        found = prose.transcribe(text, vocabulary, line=conventions.line, signs=signs)
    return settled(found) if asked.new_characters else found


def _text(source: Path) -> str:
    """The text with plain line ends, and without space at the end of lines; raises NoText where it is empty."""
    if source == INPUT:
        if sys.stdin.isatty():
            click.echo("Paste the description, and end with Ctrl-D (Windows: Ctrl-Z) on a line of its own.", err=True)
        text = decoded(limited(sys.stdin.buffer, _name(source)), _name(source))
    else:
        text = read_text(source)
    text = re.sub(r"\r\n?", "\n", text.removeprefix("\ufeff"))
    text = "\n".join(line.rstrip() for line in text.split("\n"))
    if not text.strip():
        raise NoText(_name(source))
    return text


def _name(source: Path) -> str:
    return "standard input" if source == INPUT else str(source)


def _kept(done: Done, transcript: Transcript, conventions: Conventions, asked: Asked) -> Done:
    """What was kept, put into its file, and what it lacks into characters.yaml if asked for, or chosen by hand."""
    wanted = [item for item in done.kept if asked.new_characters or (item.by_hand and done.path)]
    if done.path is not None:
        fit = [item for item in done.kept if item.choice.known or item in wanted]
        said = statements(transcript, fit, asked.page)
        try:
            written = write_statements(done.path, asked.taxon, conventions, said) if said else None
        except AuctorumError as error:
            return replace(done, fault=f"{error} ({error.remedy})", unwritten=tuple(said))
        done = replace(done, written=written, left_out=len(done.kept) - len(fit))
    lacking = [item.choice for item in wanted if not item.choice.known]
    if not lacking:
        return done
    try:
        new, states = add_to_vocabulary(asked.vocabulary_file, proposals(lacking), state_proposals(lacking))
    except AuctorumError as error:
        return replace(done, fault=f"{error} ({error.remedy})")
    return replace(done, new=tuple(new), new_states=states)
