"""A knowledge base's folder -> Records and every problem of every file."""

from __future__ import annotations

import contextlib
import gc
import os
import stat
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any, TextIO, TypeVar

from auctorum.problems import Place, Problem
from auctorum.records import cache, schema
from auctorum.records.faults import revalidate, validate_and_salvage
from auctorum.records.table_text import decoded_table, encoding_of
from auctorum.records.tables import parse_rows
from auctorum.records.write import write_text
from auctorum.records.yamltext import Places, parse

MAX_BYTES = 20_000_000
_TABLES = ("sites.csv", "specimens.csv", "measurements.csv", "labels.csv")
T = TypeVar("T")
Progress = Callable[[int, int], None]  # files done, files in all


@dataclass
class _Reader:
    """What one run of reading gathers; lives only inside `read`."""

    kept: dict[str, Any]
    problems: list[Problem] = field(default_factory=list)
    used: dict[str, Any] = field(default_factory=dict)

    def text(self, path: Path) -> str | None:
        content = self.content(path)
        return None if content is None else self.decoded(content, shown(path))

    def content(self, path: Path) -> bytes | None:
        """The bytes of a plain file of bearable size; None and a problem otherwise."""
        place = Place(shown(path), 1, 1)
        try:
            status = path.stat()
            if not stat.S_ISREG(status.st_mode):
                self.problems.append(Problem(place, "is no plain file", "put a file there, or take it away"))
                return None
            if status.st_size > MAX_BYTES:
                what = f"the file has {status.st_size / 1e6:.0f} MB; records are read up to {MAX_BYTES / 1e6:.0f} MB"
                self.problems.append(Problem(place, what, "split it; one file holds one publication"))
                return None
            return path.read_bytes()
        except OSError as error:
            self.problems.append(Problem(place, f"can't be opened: {error.strerror}", "check the file and its rights"))
            return None

    def decoded(self, content: bytes, file: str) -> str | None:
        """The bytes as UTF-8; None and a problem at the first byte that is not."""
        try:
            return content.decode("utf-8")
        except UnicodeDecodeError as error:
            before = content[: error.start]
            line = before.count(b"\n") + 1
            column = len(before[before.rfind(b"\n") + 1 :].decode("utf-8", "replace")) + 1
            what = f"not UTF-8: byte 0x{content[error.start]:02x}"
            self.problems.append(Problem(Place(file, line, column), what, "save the file as UTF-8"))
            return None

    def yaml(self, path: Path, record: type[T]) -> T | None:
        """The record in one YAML file, from the cache if its content was read before without a problem."""
        file = shown(path)
        content = self.content(path)
        if content is None:
            return None
        key = cache.content_key(content)
        if key in self.kept:
            trusted = revalidate(record, self.kept[key], file)
            if trusted is not None:
                self.used[key] = self.kept[key]
                return trusted
        text = self.decoded(content, file)
        if text is None:
            return None
        data, problems = parse(text, file)
        self.problems += problems
        if data is None:
            return None
        found, faults = validate_and_salvage(record, data)
        places = Places(text, file) if faults else None
        self.problems += [_pinpointed(fault, places) for fault in faults]
        if not problems and not faults:
            self.used[key] = cache.flatten(data)
        return found

    def table(self, path: Path) -> str | None:
        """The text of a table in whatever encoding a spreadsheet saved it; None and a problem if it can't be opened."""
        content = self.content(path)
        if content is None:
            return None
        text, problem = decoded_table(content, shown(path))
        if problem is not None:
            self.problems.append(problem)
        return text

    def rows(self, path: Path, record: type[T], characters: Iterable[str]) -> tuple[T, ...]:
        """The rows of one table; none where it is absent."""
        if not path.exists() and not path.is_symlink():
            return ()
        text = self.table(path)
        if text is None:
            return ()
        rows, problems = parse_rows(text, shown(path), record, tuple(characters))
        self.problems += problems
        return rows


@contextlib.contextmanager
def collector_paused() -> Iterator[None]:
    """Python's cycle collector at rest: many records are made and none is thrown away, so it would look in vain."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


@collector_paused()
def read(
    kb: Path, *, use_cache: bool = True, progress: Progress | None = None
) -> tuple[schema.Records, tuple[Problem, ...]]:
    """Every record in the folder `kb`, and every problem; what has a fault is left out and named.

    A missing kb.yaml or characters.yaml is a problem, too; reading goes on with an empty one.
    """
    store = cache.cache_file(kb) if use_cache else None
    reader = _Reader(cache.load(store) if store else {})
    settings = _required(reader, kb / "kb.yaml", schema.Settings) or schema.Settings(title=kb.resolve().name)
    characters = _required(reader, kb / "characters.yaml", schema.Characters) or schema.Characters(characters=())
    paths = sorted((kb / "literature").glob("*.yaml"))
    literature = []
    for number, path in enumerate(paths, 1):
        literature.append(reader.yaml(path, schema.Literature))
        if progress:
            progress(number, len(paths))
    criteria = [reader.yaml(path, schema.Criterion) for path in sorted((kb / "criteria").glob("*.yaml"))]
    known = [character.name for character in characters.characters]
    records = schema.Records(
        settings=settings,
        characters=characters,
        literature=tuple(one for one in literature if one is not None),
        criteria=tuple(one for one in criteria if one is not None),
        sites=reader.rows(kb / "sites.csv", schema.Site, known),
        specimens=reader.rows(kb / "specimens.csv", schema.Specimen, known),
        labels=reader.rows(kb / "labels.csv", schema.Label, known),
        measurements=reader.rows(kb / "measurements.csv", schema.MeasurementOrFact, known),
    )
    reader.problems += _stray_files(kb)
    if store and reader.used != reader.kept:
        with contextlib.suppress(OSError):  # a cache that can't be written costs time, nothing else
            write_text(store, cache.dump(reader.used))
    return records, tuple(sorted(reader.problems))


def read_table(path: Path) -> tuple[str | None, tuple[Problem, ...]]:
    """The text of a table that stands in no knowledge base, for `field_tables.read_plants_text`; None if there is none.

    The problems say why it can't be opened, or in what encoding it was read.
    """
    reader = _Reader({})
    text = reader.table(path)
    return text, tuple(reader.problems)


@contextlib.contextmanager
def opened_table(path: Path) -> Iterator[tuple[TextIO | None, tuple[Problem, ...]]]:
    """A table of any length, open as text for `streamed.plant_chunks`; None if it can't be opened.

    The problems say why, or in what encoding it is read, as its first million bytes show it; a byte further on that
    does not fit becomes the sign for an unknown letter.
    """
    place = Place(shown(path), 1, 1)
    try:
        if not stat.S_ISREG(path.stat().st_mode):
            yield None, (Problem(place, "is no plain file", "put a file there"),)
            return
        with path.open("rb") as file:
            encoding, problem = encoding_of(file.read(1_000_000), shown(path))
        table = path.open(encoding=encoding, errors="replace", newline="")
    except OSError as error:
        yield None, (Problem(place, f"can't be opened: {error.strerror}", "check the file and its rights"),)
        return
    with table:
        yield table, (problem,) if problem is not None else ()


def _required(reader: _Reader, path: Path, record: type[T]) -> T | None:
    if path.exists():
        return reader.yaml(path, record)
    remedy = "start a knowledge base with `auctorum new kb DIR`, or name its folder with --kb"
    reader.problems.append(Problem(Place(shown(path)), "the file is missing", remedy))
    return None


def _stray_files(kb: Path) -> list[Problem]:
    """Files that look like records and are not read, so that nothing is passed over in silence."""
    read_here = {kb / name for name in ("kb.yaml", "characters.yaml", *_TABLES)}
    read_here |= {*(kb / "literature").glob("*.yaml"), *(kb / "criteria").glob("*.yaml")}
    stray = sorted(
        path
        for path in kb.rglob("*")
        if path.suffix.lower() in (".yaml", ".yml", ".csv")
        and path not in read_here
        and not any(part.startswith(".") for part in path.relative_to(kb).parts)
    )
    remedy = "literature goes to literature/*.yaml, working definitions to criteria/*.yaml, tables beside kb.yaml"
    return [Problem(Place(shown(path)), "a file that is not read", remedy) for path in stray]


def shown(path: Path) -> str:
    """The path for a person: with forward slashes, and bytes that are no UTF-8 written out."""
    return os.fsencode(path.as_posix()).decode("utf-8", "backslashreplace")


def _pinpointed(problem: Problem, places: Places | None) -> Problem:
    """The problem at the very value it is about, looked up in the places of its file."""
    if not problem.within or places is None:
        return problem
    place = places.locate(problem.within, problem.place if problem.place.line else None)
    return replace(problem, place=place, within=())


def pinpoint(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Problems found in linked records, each moved from its record to the value it is about; in order.

    Opens the YAML files concerned again; one that changed meanwhile keeps the record's place.
    """
    files: dict[str, Places | None] = {}
    found = []
    for problem in problems:
        file = problem.place.file
        if problem.within and file.endswith(".yaml"):
            if file not in files:
                try:
                    files[file] = Places(Path(file).read_text(encoding="utf-8"), file)
                except (OSError, UnicodeDecodeError):
                    files[file] = None
            problem = _pinpointed(problem, files[file])
        found.append(problem)
    return tuple(sorted(found))
