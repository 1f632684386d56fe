"""Write a finished site, whole or not at all.

Pages go into a temporary folder beside the wanted one, reach the disk, and take its place in one step.
A kill at any moment leaves the earlier site as it was.
"""

from __future__ import annotations

import ctypes
import os
import shutil
import sys
import tempfile
import time
from collections.abc import Iterable
from pathlib import Path

from auctorum.site.errors import UnusableOutput
from auctorum.site.paths import checked

STALE_SECONDS = 24 * 3600  # a build of the same site that is still running is younger
MARKER = ".auctorum-site"
_HEAD = "This folder is written by auctorum and replaced whole at every build. Files:\n"
_IGNORED = {MARKER, ".DS_Store", "Thumbs.db"}  # left behind by file managers, nobody's work
_EXCHANGE = 2  # RENAME_EXCHANGE of Linux's renameat2(2)
_HERE = -100  # AT_FDCWD


def write(texts: Iterable[tuple[str, str]], out: Path) -> int:
    """Replace the folder `out` by the pages of `texts` (path, text); returns how many were written.

    Raises UnusableOutput where `out` is no earlier site, UnsafePath where a path would leave it. Whatever
    goes wrong, `out` stays as it was and the temporary folder is removed.
    """
    target = out.resolve()
    refuse_foreign(target)
    target.parent.mkdir(parents=True, exist_ok=True)
    _sweep(target)
    fresh = Path(tempfile.mkdtemp(prefix=f".{target.name}.new-", dir=target.parent))
    try:
        count = _fill(texts, fresh)
        _to_disk(fresh)
        _swap(fresh, target)
    finally:
        shutil.rmtree(fresh, ignore_errors=True)
    return count


def _sweep(target: Path) -> None:
    """Remove half-made folders that a killed build left beside the site more than a day ago."""
    for left in target.parent.glob(f".{target.name}.new-*"):
        if time.time() - left.stat().st_mtime > STALE_SECONDS:
            shutil.rmtree(left, ignore_errors=True)


def refuse_foreign(target: Path) -> None:
    """Raises UnusableOutput where `target` holds anything that an earlier build did not write there."""
    if not target.exists():
        return
    if not target.is_dir():
        raise UnusableOutput(str(target), "there is a file of that name")
    held = {path.relative_to(target).as_posix() for path in target.rglob("*") if not path.is_dir()}
    if not held:
        return
    marker = target / MARKER
    if not marker.is_file():
        raise UnusableOutput(str(target), "the folder is in use and is no site written by this programme")
    written = set(marker.read_text(encoding="utf-8").splitlines())
    foreign = sorted(path for path in held - written if Path(path).name not in _IGNORED)
    if foreign:
        raise UnusableOutput(str(target), f"it holds {foreign[0]}, which no build has written")


def _fill(texts: Iterable[tuple[str, str]], folder: Path) -> int:
    written: set[str] = set()
    for path, text in texts:
        file = folder / checked(path)
        if path in written:
            raise UnusableOutput(path, "two pages would have this path")
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(text, encoding="utf-8", newline="\n")
        written.add(path)
    folder.chmod(0o755)  # mkdtemp gives 0700, which a web server cannot read
    (folder / MARKER).write_text(_HEAD + "".join(f"{path}\n" for path in sorted(written)), encoding="utf-8")
    return len(written)


def _to_disk(folder: Path) -> None:
    """Wait until every file has reached the disk: in one go where the system can, else file by file."""
    if hasattr(os, "sync"):
        os.sync()
        return
    for path in sorted(folder.rglob("*")):
        if path.is_file():
            with path.open("rb+") as file:
                os.fsync(file.fileno())


def _swap(fresh: Path, target: Path) -> None:
    """Put `fresh` in the place of `target`; afterwards `fresh` is gone or holds the earlier site."""
    if not target.exists():
        fresh.rename(target)
        return
    if _exchange(fresh, target):
        return
    aside = target.with_name(f".{target.name}.old-{fresh.name.rpartition('-')[2]}")
    target.rename(aside)
    try:
        fresh.rename(target)
    except OSError:
        aside.rename(target)
        raise
    shutil.rmtree(aside, ignore_errors=True)


def _exchange(one: Path, other: Path) -> bool:
    """Exchange two folders in one step of the file system; False where the system cannot do that."""
    if not sys.platform.startswith("linux"):
        return False
    try:
        rename = ctypes.CDLL(None, use_errno=True).renameat2
    except (AttributeError, OSError):
        return False
    return bool(rename(_HERE, os.fsencode(one), _HERE, os.fsencode(other), _EXCHANGE) == 0)
