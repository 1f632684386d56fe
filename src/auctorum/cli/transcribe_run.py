"""Texts read, decided on and written where they shall go: what `auctorum transcribe` does."""

from __future__ import annotations

import re
import sys
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

import click

from auctorum.characters.prose import draft as prose
from auctorum.characters.prose.draft import Transcript
from auctorum.characters.vocabulary import Vocabulary
from auctorum.cli.common import counted, progress_bar
from auctorum.cli.transcribe import INPUT
from auctorum.cli.transcribe_into import add_characters, conventions_for, literature_file, write_statements
from auctorum.cli.transcribe_kept import Kept, proposals, statements, sure_ones
from auctorum.corpus.vocabulary import vocabulary_of
from auctorum.problems import AuctorumError
from auctorum.records.append import Appended
from auctorum.records.schema import Characters, Conventions
from auctorum.records.single import decoded, limited, read_record, read_text


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
    as_json: bool


@dataclass(frozen=True, slots=True)
class Done:
    """One text: what was read and kept, where it went, or what stood in the way."""

    name: str
    transcript: Transcript | None = None
    kept: tuple[Kept, ...] = ()
    path: Path | None = None
    written: Appended | None = None
    new: tuple[str, ...] = ()
    left_out: int = 0  # statements kept, but of characters that the vocabulary lacks
    fault: str = ""


def vocabulary_in(kb: Path) -> Vocabulary:
    """The characters of the knowledge base; how many problems its file has is told on standard error."""
    path = kb / "characters.yaml"
    if not path.exists():
        raise click.BadParameter(f"there is no {path}; start one with `auctorum new kb DIR`", param_hint="--kb")
    found, problems = read_record(path, Characters)
    every = list(problems)
    vocabulary = vocabulary_of(found or Characters(characters=()), every.append)
    if every:
        told = counted(len(every), "problem")
        click.echo(f"{path} has {told}; what they concern is left out: auctorum check --kb {kb}", err=True)
    return vocabulary


def several(sources: Sequence[Path], vocabulary: Vocabulary, asked: Asked) -> list[Done]:
    """Every text of a batch; one that is at fault does not stop the others."""
    if asked.into:
        aims = [literature_file(asked.into, path.stem.strip("-"), folder=True) for path in sources]
        twice = sorted({str(aim) for aim in aims if aims.count(aim) > 1})
        if twice:
            raise click.UsageError(f"several texts would go into {', '.join(twice)}; rename them")
        if not asked.taxon and any(not aim.exists() for aim in aims):
            raise click.UsageError("say with --taxon what the texts describe: new files are begun for them")
    done = []
    with progress_bar("Transcribing") as progress:
        for number, path in enumerate(sources, 1):
            try:
                done.append(one(path, vocabulary, asked, batch=True))
            except AuctorumError as error:
                done.append(Done(str(path), fault=f"{error} ({error.remedy})"))
            except click.UsageError as error:
                done.append(Done(str(path), fault=error.format_message()))
            except OSError as error:
                done.append(Done(str(path), fault=error.strerror or str(error)))
            progress(number, len(sources))
    return done


def one(source: Path, vocabulary: Vocabulary, asked: Asked, *, batch: bool = False) -> Done:
    """One text read, decided on, and written where it shall go."""
    stem = source.stem.strip("-")
    path = literature_file(asked.into, stem, folder=batch) if asked.into else None
    conventions = conventions_for(path, asked.taxon, asked.line, asked.signs)
    text = _text(source)
    transcript = prose.transcribe(text, vocabulary, line=conventions.line, signs=conventions.signs or None)
    if asked.review:
        from auctorum.cli.transcribe_review import review
        from auctorum.cli.transcribe_show import show

        show(transcript, asked.sure, everything=asked.everything)
        kept = review(transcript, vocabulary, conventions, asked.sure)
    else:
        kept = sure_ones(transcript.drafts, asked.sure)
    name = "standard input" if source == INPUT else str(source)
    return _kept(Done(name, transcript, tuple(kept), path), transcript, conventions, asked)


def _text(source: Path) -> str:
    """The text with plain line ends, and without space at the end of lines; misuse where it is empty."""
    if source == INPUT:
        if sys.stdin.isatty():
            click.echo("Paste the description, and end with Ctrl-D (Windows: Ctrl-Z) on a line of its own.", err=True)
        text = decoded(limited(sys.stdin.buffer, "standard input"), "standard input")
    else:
        text = read_text(source)
    text = re.sub(r"\r\n?", "\n", text.removeprefix("\ufeff"))
    text = "\n".join(line.rstrip() for line in text.split("\n"))
    if not text.strip():
        raise click.UsageError(f"there is no text in {'standard input' if source == INPUT else source}")
    return text


def _kept(done: Done, transcript: Transcript, conventions: Conventions, asked: Asked) -> Done:
    """What was kept, put into its file; statements of characters that characters.yaml lacks only if these are added."""
    if asked.new_characters and (lacking := proposals(item.choice for item in done.kept)):
        done = replace(done, new=tuple(add_characters(asked.kb, lacking)))
    if done.path is None:
        return done
    fit = [item for item in done.kept if item.choice.known or asked.new_characters]
    said = statements(transcript, fit, asked.page)
    written = write_statements(done.path, asked.taxon, conventions, said) if said else None
    return replace(done, written=written, left_out=len(done.kept) - len(fit))
