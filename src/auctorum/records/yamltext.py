"""YAML text -> plain data with places, in one pass over the parser's events; opens no file.

Only what records need is read: mappings, sequences and words. Everything printed stays as printed
(`8.00`, `no` and `45:23` are words). Tags, anchors and aliases are refused with a position, as are
equal keys and nesting beyond `MAX_DEPTH`; work and memory are linear in the text.

A mapping becomes a dict that holds its own `Place` under `PLACE_KEY`; a key with an empty value is left
out, so that a form with fields to fill in is a good record once the needed ones are filled.
"""

from __future__ import annotations

import contextlib
import re
from collections.abc import Iterator, Sequence
from typing import Any

import yaml

from auctorum.problems import Place, Problem, Severity
from auctorum.records.schema import PLACE_KEY

MAX_DEPTH = 40
Path = tuple[str | int, ...]
_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)  # the same events, slower, where libyaml is absent
# What no printed work holds and neither a terminal nor XML bears; tab and line ends are not among them.
CONTROL = re.compile("[\\x00-\\x08\\x0b\\x0c\\x0e-\\x1f\\x7f\\ufffe\\uffff]")
_EMPTY = frozenset({"", "~", "null"})


class _Refused(Exception):
    """Reading has to stop here; carries the one problem."""

    def __init__(self, problem: Problem) -> None:
        super().__init__(problem)
        self.problem = problem


def _place(mark: Any, file: str) -> Place:
    return Place(file, mark.line + 1, mark.column + 1)


def parse(text: str, file: str) -> tuple[Any, list[Problem]]:
    """The data of one YAML document and its problems; None where nothing could be read.

    Equal keys are a problem each and the first one is kept; everything else that is wrong ends the reading.
    """
    problems: list[Problem] = []
    if text.startswith("\ufeff"):
        text = text[1:]
        problems.append(
            Problem(
                Place(file, 1, 1),
                "the file begins with a byte order mark",
                "save it as UTF-8 without BOM; it was read all the same",
                Severity.WARNING,
            )
        )
    try:
        root = _build(text, file, problems)
    except _Refused as refused:
        return None, [*problems, refused.problem]
    except yaml.YAMLError as error:
        return None, [*problems, _syntax_problem(error, text, file)]
    if root is None:
        problems.append(Problem(Place(file, 1, 1), "the file is empty", "fill it in, or delete it"))
    return root, problems


class _Level:
    """A collection that is being filled; `key` is the key whose value comes next in a mapping."""

    __slots__ = ("key", "key_place", "seen", "value")

    def __init__(self, value: dict[str, Any] | list[Any]) -> None:
        self.value = value
        self.key: str | None = None
        self.key_place: Place | None = None
        self.seen: set[str] = set()


def _build(text: str, file: str, problems: list[Problem]) -> Any:
    levels: list[_Level] = []
    root: Any = None
    documents = 0
    event: Any
    for event in yaml.parse(text, Loader=_LOADER):
        kind = type(event)
        if kind is yaml.ScalarEvent:
            _refuse_extras(event, file)
            if not levels:
                raise _Refused(_not_a_mapping(_place(event.start_mark, file)))
            empty = event.value in _EMPTY and not event.style
            place = _place(event.start_mark, file)
            if CONTROL.search(event.value):
                problems.append(Problem(place, "a control character inside the words", "delete it"))
            _put(levels, None if empty else CONTROL.sub("", event.value), place, problems)
        elif kind is yaml.MappingStartEvent or kind is yaml.SequenceStartEvent:
            _refuse_extras(event, file)
            place = _place(event.start_mark, file)
            if len(levels) >= MAX_DEPTH:
                raise _Refused(_too_deep(place))
            value: dict[str, Any] | list[Any] = {PLACE_KEY: place} if kind is yaml.MappingStartEvent else []
            if levels:
                _put(levels, value, place, problems)
            elif isinstance(value, list):
                raise _Refused(_not_a_mapping(place))
            else:
                root = value
            levels.append(_Level(value))
        elif kind is yaml.MappingEndEvent or kind is yaml.SequenceEndEvent:
            levels.pop()
        elif kind is yaml.AliasEvent:
            raise _Refused(_no_anchors(_place(event.start_mark, file)))
        elif kind is yaml.DocumentStartEvent:
            documents += 1
            if documents > 1:
                place = _place(event.start_mark, file)
                raise _Refused(Problem(place, "a second document begins here", "keep one record in one file"))
    return root


def _put(levels: list[_Level], value: Any, place: Place, problems: list[Problem]) -> None:
    level = levels[-1]
    if isinstance(level.value, list):
        level.value.append("" if value is None else value)
        return
    if level.key is None and level.key_place is None:
        _take_key(level, value, place, problems)
        return
    if level.key is not None and value is not None:
        level.value[level.key] = value
    level.key = level.key_place = None


def _take_key(level: _Level, key: Any, place: Place, problems: list[Problem]) -> None:
    """Remember the key; a key that can't be used keeps `key` None, so that its value is passed over."""
    level.key_place = place
    if not isinstance(key, str) or key == PLACE_KEY:
        problems.append(Problem(place, "a key is not a plain word", "write `key: value`"))
    elif key in level.seen:
        problems.append(Problem(place, f"the key `{key}` stands twice in one record", "keep one; the first was read"))
    else:
        level.seen.add(key)
        level.key = key


def _refuse_extras(event: Any, file: str) -> None:
    if event.anchor is not None:
        raise _Refused(_no_anchors(_place(event.start_mark, file)))
    if event.tag is not None and event.tag != "!":  # "!" is what the parser gives a quoted word
        raise _Refused(
            Problem(
                _place(event.start_mark, file), f"YAML tag {event.tag}", "take the tag out: records hold words only"
            )
        )


def _no_anchors(place: Place) -> Problem:
    return Problem(place, "YAML anchor or alias", "write the value out (in quotes if it begins with & or *)")


def _too_deep(place: Place) -> Problem:
    return Problem(place, f"nested more than {MAX_DEPTH} deep", "records need five levels; check the brackets")


def _not_a_mapping(place: Place) -> Problem:
    return Problem(place, "the file is not a record of `key: value` lines", "begin as `auctorum new` shows")


_TAB = "found character '\\t' that cannot start any token"


def _syntax_problem(error: yaml.YAMLError, text: str, file: str) -> Problem:
    mark = getattr(error, "problem_mark", None) or getattr(error, "context_mark", None)
    if mark is None:  # a character that YAML does not allow at all
        position = getattr(error, "position", 0) or 0
        before = text[:position]
        place = Place(file, before.count("\n") + 1, position - (before.rfind("\n") + 1) + 1)
        return Problem(place, "a control character that YAML does not allow", "delete it")
    place = _place(mark, file)
    lines = text.splitlines()
    line = lines[mark.line] if mark.line < len(lines) else ""
    if "\t" in line[: mark.column + 1] or getattr(error, "problem", "") == _TAB:
        return Problem(place, "a tab where YAML wants spaces", "indent with spaces")
    said = getattr(error, "problem", None) or "not YAML"
    if "nesting depth" in said:
        return _too_deep(place)
    return Problem(place, f"not readable as YAML: {said}", "check indent, colons and quotes on this line and above")


class Places:
    """Where every value of one YAML text stands, gathered in one pass."""

    def __init__(self, text: str, file: str) -> None:
        self._file = file
        self._of_path: dict[Path, Place] = {}
        self._path_at: dict[Place, Path] = {Place(file, 1, 1): ()}
        with contextlib.suppress(yaml.YAMLError):
            for path, shown, start in _paths(text.removeprefix("\ufeff"), file):
                self._of_path[path] = shown
                self._path_at.setdefault(start, path)

    def locate(self, within: Sequence[str | int], start: Place | None = None) -> Place:
        """Where the value at the path `within` stands, below the mapping at `start` (the whole file if None).

        A path that leads nowhere (a key that is missing) gives the place of what contains it.
        """
        above = self._path_at.get(start, ()) if start is not None else ()
        for length in range(len(within), 0, -1):
            found = self._of_path.get((*above, *within[:length]))
            if found is not None:
                return found
        return start or Place(self._file, 1, 1)


def _paths(text: str, file: str) -> Iterator[tuple[Path, Place, Place]]:
    """Path of every value, the place that stands for it (its key, in a mapping), and where it begins."""
    stack: list[list[Any]] = []  # [is mapping, path, next index or pending key, place of that key]
    event: Any
    for event in yaml.parse(text, Loader=_LOADER):
        kind = type(event)
        if kind is yaml.MappingEndEvent or kind is yaml.SequenceEndEvent:
            stack.pop()
            continue
        if kind not in (yaml.ScalarEvent, yaml.MappingStartEvent, yaml.SequenceStartEvent):
            continue
        place = _place(event.start_mark, file)
        path: Path = ()
        if stack:
            top = stack[-1]
            if top[0] and top[2] is None and kind is yaml.ScalarEvent:
                top[2], top[3] = event.value, place
                continue
            path = (*top[1], top[2])
            yield path, top[3] if top[0] else place, place
            top[2] = None if top[0] else top[2] + 1
        else:
            yield path, place, place
        if kind is not yaml.ScalarEvent:
            mapping = kind is yaml.MappingStartEvent
            stack.append([mapping, path, None if mapping else 0, place])
