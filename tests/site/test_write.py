"""A site is written whole or not at all, and only over one of our own."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from auctorum.site import write as writing
from auctorum.site.errors import UnsafePath, UnusableOutput
from auctorum.site.write import MARKER, write

OLD = [("index.html", "old"), ("names/a.html", "old a")]
NEW = [("index.html", "new"), ("taxa/b.html", "new b")]


def held(folder: Path) -> dict[str, str]:
    return {
        path.relative_to(folder).as_posix(): path.read_text(encoding="utf-8")
        for path in folder.rglob("*")
        if path.is_file() and path.name != MARKER
    }


@pytest.fixture(params=["in one step", "by two renames"])
def swap(request, monkeypatch) -> None:
    if request.param == "by two renames":
        monkeypatch.setattr(writing, "_exchange", lambda one, other: False)


@pytest.mark.usefixtures("swap")
def test_a_new_site_takes_the_place_of_the_old(tmp_path: Path) -> None:
    assert write(OLD, tmp_path / "site") == 2
    assert write(NEW, tmp_path / "site") == 2
    assert held(tmp_path / "site") == dict(NEW)
    assert [path.name for path in tmp_path.iterdir()] == ["site"], "nothing is left beside it"


@pytest.mark.usefixtures("swap")
def test_a_failure_midway_leaves_the_old_site(tmp_path: Path) -> None:
    write(OLD, tmp_path / "site")

    def broken() -> Iterator[tuple[str, str]]:
        yield NEW[0]
        raise RuntimeError("the page broke")

    with pytest.raises(RuntimeError, match="the page broke"):
        write(broken(), tmp_path / "site")
    assert held(tmp_path / "site") == dict(OLD)
    assert [path.name for path in tmp_path.iterdir()] == ["site"]


def test_a_failing_second_rename_puts_the_old_site_back(tmp_path: Path, monkeypatch) -> None:
    write(OLD, tmp_path / "site")
    monkeypatch.setattr(writing, "_exchange", lambda one, other: False)
    rename = Path.rename

    def refuse(self: Path, target: Path) -> Path:
        if ".new-" in self.name:
            raise PermissionError("busy")
        return rename(self, target)

    monkeypatch.setattr(Path, "rename", refuse)
    with pytest.raises(PermissionError):
        write(NEW, tmp_path / "site")
    assert held(tmp_path / "site") == dict(OLD)


@pytest.mark.skipif(sys.platform == "win32", reason="needs SIGKILL")
def test_a_kill_midway_leaves_the_old_site(tmp_path: Path) -> None:
    write(OLD, tmp_path / "site")
    script = (
        "import os, signal, sys, pathlib\n"
        "from auctorum.site.write import write\n"
        "def pages():\n"
        "    yield 'index.html', 'new'\n"
        "    os.kill(os.getpid(), signal.SIGKILL)\n"
        "write(pages(), pathlib.Path(sys.argv[1]))\n"
    )
    done = subprocess.run([sys.executable, "-c", script, str(tmp_path / "site")], check=False)
    assert done.returncode == -signal.SIGKILL
    assert held(tmp_path / "site") == dict(OLD)


def test_what_a_kill_left_long_ago_is_swept_and_a_running_build_is_not(tmp_path: Path) -> None:
    old, running = tmp_path / ".site.new-abc", tmp_path / ".site.new-def"
    for folder in (old, running):
        folder.mkdir()
    os.utime(old, (0, 0))
    write(NEW, tmp_path / "site")
    assert not old.exists() and running.exists()


def test_an_empty_folder_is_taken(tmp_path: Path) -> None:
    (tmp_path / "site").mkdir()
    write(NEW, tmp_path / "site")
    assert held(tmp_path / "site") == dict(NEW)


def test_a_foreign_folder_is_refused(tmp_path: Path) -> None:
    folder = tmp_path / "thesis"
    folder.mkdir()
    (folder / "chapter.txt").write_text("ten years of work", encoding="utf-8")
    with pytest.raises(UnusableOutput, match="is no site written by this programme"):
        write(NEW, folder)
    assert held(folder) == {"chapter.txt": "ten years of work"}


def test_a_site_that_holds_a_foreign_file_is_refused(tmp_path: Path) -> None:
    write(OLD, tmp_path / "site")
    (tmp_path / "site" / "notes.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(UnusableOutput, match=r"it holds notes\.txt, which no build has written"):
        write(NEW, tmp_path / "site")
    assert held(tmp_path / "site") == {**dict(OLD), "notes.txt": "mine"}


def test_what_file_managers_leave_behind_does_not_hinder(tmp_path: Path) -> None:
    write(OLD, tmp_path / "site")
    (tmp_path / "site" / ".DS_Store").write_bytes(b"")
    write(NEW, tmp_path / "site")
    assert held(tmp_path / "site") == dict(NEW)


def test_a_file_in_the_way_is_refused(tmp_path: Path) -> None:
    (tmp_path / "site").write_text("a file", encoding="utf-8")
    with pytest.raises(UnusableOutput, match="there is a file of that name"):
        write(NEW, tmp_path / "site")


def test_no_page_leaves_the_folder(tmp_path: Path) -> None:
    with pytest.raises(UnsafePath):
        write([("../index.html", "out")], tmp_path / "site")
    assert list(tmp_path.iterdir()) == []


def test_two_pages_of_one_path_are_refused(tmp_path: Path) -> None:
    with pytest.raises(UnusableOutput, match="two pages would have this path"):
        write([NEW[0], NEW[0]], tmp_path / "site")


@pytest.mark.skipif(sys.platform == "win32", reason="needs POSIX modes")
def test_a_web_server_can_read_the_folder(tmp_path: Path) -> None:
    write(NEW, tmp_path / "site")
    assert (tmp_path / "site").stat().st_mode & 0o777 == 0o755
