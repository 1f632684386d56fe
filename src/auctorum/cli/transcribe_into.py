"""Where the statements of a transcript go: the literature file, its conventions, and characters.yaml."""

from __future__ import annotations

import contextlib
import errno
import re
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path

import click

from auctorum.characters.vocabulary import Character, State
from auctorum.names.fold import plain_letters
from auctorum.records.append import (
    Appended,
    WhichTreatment,
    appended,
    check_treatment,
    conventions_of,
    new_literature,
)
from auctorum.records.append_characters import names_in, states_in, with_characters, with_states
from auctorum.records.fields import ID_PATTERN
from auctorum.records.insert import Unwritable
from auctorum.records.schema import Conventions, StatementRecord
from auctorum.records.single import read_text
from auctorum.records.write import check_writable, write_text


def literature_file(into: Path, stem: str, *, folder: bool) -> Path:
    """The literature file for the text called `stem`: `into` itself, or one in the folder `into`; misuse if neither."""
    if folder or into.is_dir():
        if into.exists() and not into.is_dir():
            raise click.BadParameter("several texts need a folder to go into", param_hint="--into")
        name = re.sub(r"[^a-z0-9]+", "-", plain_letters(stem).lower()).strip("-")
        if not name:
            raise click.BadParameter("a text without a name needs a file to go into", param_hint="--into")
        return into / f"{name}.yaml"
    if into.suffix != ".yaml":
        raise click.BadParameter(f"a literature file ends in .yaml: {into}.yaml", param_hint="--into")
    if not into.exists() and not re.fullmatch(ID_PATTERN, into.stem):
        why = "a new file is named by the id of its work, in lower-case letters, digits and hyphens: orrin-1911.yaml"
        raise click.BadParameter(why, param_hint="--into")
    return into


def conventions_for(path: Path | None, taxon: str, line: str | None, signs: Mapping[str, str] | None) -> Conventions:
    """How the work prints measures: as its file says, or as the options say for a new one.

    Misuse where they contradict each other, or where it is not clear whose statements they are.
    """
    asked = Conventions(line=line or "english", signs=dict(signs or {}))
    if path is None:
        return asked
    if not path.exists():
        if not taxon:
            raise click.UsageError(f"{path} is a new file: say with --taxon what it describes")
        return asked
    text = read_text(path)
    try:
        check_treatment(text, taxon)
        said = conventions_of(text)
    except WhichTreatment as error:
        raise click.BadParameter(f"{path}: {error} ({error.remedy})", param_hint="--taxon") from None
    except Unwritable as error:
        raise Unwritable(f"{path}: {error}", error.remedy) from None
    if (line is not None and line != said.line) or (signs is not None and dict(signs) != said.signs):
        why = f"{path} says otherwise, and its statements are read as it says; change `conventions:` there"
        raise click.BadParameter(why, param_hint="--line" if line is not None and line != said.line else "--signs")
    return said


def check_target(path: Path) -> None:
    """Raises Unwritable where nothing can be written to the file; to be asked before a person takes decisions."""
    with _told(path):
        check_writable(path.resolve())


def check_vocabulary(path: Path) -> None:
    """Raises Unwritable where no character could be added to the file."""
    check_target(path)
    with _told(path):
        names_in(read_text(path))


def write_statements(
    path: Path, taxon: str, conventions: Conventions, statements: Sequence[StatementRecord]
) -> Appended:
    """Put the statements into the file as it is now; raises Unwritable, and leaves the file as it was."""
    with _told(path):
        text = read_text(path) if path.exists() else new_literature(path.stem, conventions)
        found = appended(text, taxon, statements)
        if found.added:
            _put(path, found.text)
    return found


def add_to_vocabulary(
    path: Path, characters: Sequence[Character], states: Mapping[str, Sequence[State]]
) -> tuple[list[str], dict[str, list[str]]]:
    """Put characters at the end of characters.yaml, and states into those that it has; returns what was added.

    Where a character of that name is there by now, it gets the states that it lacks.
    """
    with _told(path):
        text = read_text(path)
        before, known = names_in(text), states_in(text)
        wanted = {one.name: one.states for one in characters if one.name in known} | dict(states)
        made = with_states(with_characters(text, characters), wanted)
        if made != text:
            _put(path, made)
    new = {name: found[len(known[name]) :] for name, found in states_in(made).items() if name in known}
    return names_in(made)[len(before) :], {name: found for name, found in new.items() if found}


@contextlib.contextmanager
def _told(path: Path) -> Iterator[None]:
    """What stands in the way of writing names the file, and says what to do."""
    try:
        yield
    except Unwritable as error:
        raise Unwritable(f"{path}: {error}", error.remedy) from None
    except OSError as error:
        why = f"{path} cannot be written: {error.strerror or error}"
        raise Unwritable(why, _REMEDIES.get(error.errno or 0, _ELSEWHERE)) from None


_RIGHTS = "ask for the right to write there, or name another file"
_REMEDIES = {
    errno.EACCES: _RIGHTS,
    errno.EPERM: _RIGHTS,
    errno.EROFS: _RIGHTS,
    errno.ENOSPC: "make room on the disk, and do it again",
}
_ELSEWHERE = "name another file; a folder that is not there is made"


def _put(path: Path, text: str) -> None:
    """Write the file that a link may lead to, and leave it the rights it had."""
    real = path.resolve()
    mode = real.stat().st_mode & 0o7777 if real.exists() else None
    check_writable(real)
    write_text(real, text)
    if mode is not None:
        real.chmod(mode)
