"""One file of the user read by itself: a text, or one record with every problem in it."""

from __future__ import annotations

import codecs
from dataclasses import replace
from pathlib import Path
from typing import IO, TypeVar

from auctorum.problems import AuctorumError, Place, Problem
from auctorum.records.faults import validate_and_salvage
from auctorum.records.read import MAX_BYTES, shown
from auctorum.records.yamltext import Places, parse

T = TypeVar("T")


class NotUtf8(AuctorumError, ValueError):
    """A text that is not UTF-8: where its first odd byte stands, and what that byte is."""

    remedy = "save it as UTF-8; it may be Latin-1 (Windows-1252), as older editors write it"

    def __init__(self, place: Place, offset: int, byte: int) -> None:
        super().__init__(place, offset, byte)
        self.place, self.offset, self.byte = place, offset, byte

    def __str__(self) -> str:
        return f"{self.place}: not UTF-8: byte {self.offset} is 0x{self.byte:02x}"


class Utf16(AuctorumError, ValueError):
    """A text in UTF-16, known by its byte-order mark."""

    remedy = "save it as UTF-8; editors call that an encoding, and offer it under “Save as”"

    def __init__(self, file: str) -> None:
        super().__init__(file)
        self.file = file

    def __str__(self) -> str:
        return f"{self.file}: the text is in UTF-16, by its byte-order mark"


class TooLong(AuctorumError, ValueError):
    """A file beyond the size that is read."""

    remedy = "split it; one file holds one publication or one description"

    def __init__(self, file: str) -> None:
        super().__init__(file)
        self.file = file

    def __str__(self) -> str:
        return f"{self.file}: more than {MAX_BYTES / 1e6:.0f} MB"


def decoded(content: bytes, file: str) -> str:
    """The bytes as UTF-8, line ends and all; raises Utf16 or NotUtf8. Bytes count from 0."""
    if content.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        raise Utf16(file)
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError as error:
        before = content[: error.start]
        start = before.rfind(b"\n") + 1
        place = Place(file, before.count(b"\n") + 1, len(before[start:].decode("utf-8", "replace")) + 1)
        raise NotUtf8(place, error.start, content[error.start]) from None


def read_text(path: Path) -> str:
    """The text of a file with its line ends as they are.

    Raises Utf16, NotUtf8, TooLong, and OSError if it can't be opened.
    """
    with path.open("rb") as file:
        return decoded(limited(file, shown(path)), shown(path))


def limited(file: IO[bytes], name: str) -> bytes:
    """All bytes of an open file; raises TooLong."""
    content = file.read(MAX_BYTES + 1)
    if len(content) > MAX_BYTES:
        raise TooLong(name)
    return content


def read_record(path: Path, record: type[T]) -> tuple[T | None, tuple[Problem, ...]]:
    """The record in one YAML file without its faulty parts, and every problem in it; raises as `read_text` does."""
    text, file = read_text(path), shown(path)
    data, problems = parse(text, file)
    if data is None:
        return None, tuple(problems)
    found, faults = validate_and_salvage(record, data)
    places = Places(text, file) if faults else None
    placed = [replace(one, place=places.locate(one.within, one.place), within=()) if places else one for one in faults]
    return found, (*problems, *placed)
