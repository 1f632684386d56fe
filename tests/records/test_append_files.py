"""Files that statements come from and go to: what is no UTF-8, and what cannot be written."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest

from auctorum.records import write
from auctorum.records.single import NotUtf8, Utf16, decoded
from auctorum.records.write import check_writable, write_text


@pytest.mark.parametrize("order", ["utf-16-le", "utf-16-be"])
def test_utf16_is_known_by_its_byte_order_mark(order: str) -> None:
    with pytest.raises(Utf16, match=r"^x\.txt: the text is in UTF-16, by its byte-order mark$"):
        decoded("\ufeffSpur".encode(order), "x.txt")


def test_another_encoding_is_told_by_its_first_odd_byte() -> None:
    with pytest.raises(NotUtf8, match=r"^x\.txt:2:2: not UTF-8: byte 4 is 0xfc$"):
        decoded("ab\ngr\u00fcn".replace("gr", "r").encode("latin-1"), "x.txt")


def test_a_file_that_can_be_written_is_left_as_it_is(tmp_path: Path) -> None:
    there = tmp_path / "there.yaml"
    there.write_text("a")
    check_writable(there)
    check_writable(tmp_path / "new" / "folder" / "new.yaml")
    assert [path.name for path in tmp_path.iterdir()] == ["there.yaml"] and there.read_text() == "a"


def test_what_cannot_be_written_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    file = tmp_path / "file"
    file.write_text("a")
    with pytest.raises(IsADirectoryError):
        check_writable(tmp_path)
    with pytest.raises(NotADirectoryError) as caught:
        check_writable(file / "x.yaml")
    assert caught.value.filename == str(file / "x.yaml")
    monkeypatch.setattr(os, "access", lambda *_: False)
    with pytest.raises(PermissionError) as refused:
        check_writable(file)
    assert refused.value.filename == str(file)


def test_a_full_disk_is_told_of_the_file_that_was_meant(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    file = tmp_path / "x.yaml"
    file.write_text("before")
    monkeypatch.setattr(write.os, "fsync", full)
    with pytest.raises(OSError, match="No space left") as caught:
        write_text(file, "after")
    assert caught.value.filename == str(file)
    assert [path.name for path in tmp_path.iterdir()] == ["x.yaml"] and file.read_text() == "before"
