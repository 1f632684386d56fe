"""Writing files whole or not at all."""

from __future__ import annotations

import contextlib
import errno
import os
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import IO


def write_text(path: Path, text: str) -> None:
    """Put `text` at `path` by a temporary sibling, fsync and rename: a kill leaves the old file or the new one.

    An OSError names `path`, not the sibling.
    """
    path.parent.mkdir(parents=True, exist_ok=True)
    with _named(path):
        _write(path, text)


@contextlib.contextmanager
def written(path: Path) -> Iterator[IO[str]]:
    """A file to be written to piece by piece, which stands at `path` at the end: see `write_text`."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with _named(path), _replacing(path) as file:
        yield file


def check_writable(path: Path) -> None:
    """Raises the OSError that stands in the way of `write_text`, or of a file that is not to be written to."""
    if path.is_dir():
        raise IsADirectoryError(errno.EISDIR, os.strerror(errno.EISDIR), str(path))
    if path.exists() and not os.access(path, os.W_OK):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES), str(path))
    folder = next(parent for parent in (path.parent, *path.parents) if parent.exists())
    with _named(path):
        handle, temporary = tempfile.mkstemp(dir=folder, prefix=f".{path.name}.")
        os.close(handle)
        Path(temporary).unlink()


@contextlib.contextmanager
def _named(path: Path) -> Iterator[None]:
    """An OSError names the file that is meant."""
    try:
        yield
    except OSError as error:
        error.filename, error.filename2 = str(path), None
        raise


def _write(path: Path, text: str) -> None:
    with _replacing(path) as file:
        file.write(text)


@contextlib.contextmanager
def _replacing(path: Path) -> Iterator[IO[str]]:
    handle, temporary = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}.")
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="") as file:
            yield file
            file.flush()
            os.fsync(file.fileno())
        # mkstemp makes files private; give what a plain open() would give
        umask = os.umask(0)
        os.umask(umask)
        Path(temporary).chmod(0o666 & ~umask)
        Path(temporary).replace(path)
    except BaseException:
        with contextlib.suppress(OSError):
            Path(temporary).unlink()
        raise
