"""New items put into YAML text at the place where they belong; every byte that was there stays.

Nothing is loaded and written out again, which would change indents, quotes and line ends of the user's file:
places are taken from the reader's own parser, and the new words are inserted there.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, TypeGuard

import yaml

from auctorum.problems import AuctorumError
from auctorum.records.yamltext import parse

_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_PLAIN = re.compile(r"[^\W_][\w .()/–×-]*")
_RESERVED = frozenset({"null", "true", "false", "yes", "no", "on", "off", "y", "n"})
_ESCAPES = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\t": "\\t", "\r": "\\r"}
_BOM = "\ufeff"


class Unwritable(AuctorumError, ValueError):
    """A file into which nothing can be put without changing what stands there."""

    def __init__(self, why: str, remedy: str) -> None:
        super().__init__(why, remedy)
        self.why, self._remedy = why, remedy

    def __str__(self) -> str:
        return self.why

    @property
    def remedy(self) -> str:  # type: ignore[override]
        return self._remedy


@dataclass(frozen=True, slots=True)
class Item:
    """One item of a list, written on one line for a flow list, and in lines for a block list."""

    flow: str
    block: tuple[str, ...]


def quoted(words: str) -> str:
    r"""The words in double quotes, on one line, so that they read back exactly.

    >>> quoted('spur "long":\n22 mm # n')
    '"spur \\"long\\":\\n22 mm # n"'
    """
    return '"' + "".join(_ESCAPES.get(one) or _escaped(one) for one in words) + '"'


def _escaped(one: str) -> str:
    """What YAML does not allow raw, or takes for the end of a line, as an escape."""
    code = ord(one)
    if code < 0x20 or 0x7F <= code < 0xA0 or code in (0x2028, 0x2029, 0xFEFF, 0xFFFE, 0xFFFF):
        return f"\\u{code:04x}"
    return one


def plain_or_quoted(words: str) -> str:
    """The words bare where that is safe in a list on one line, else in quotes.

    >>> plain_or_quoted("spur length"), plain_or_quoted("3, fig. 1"), plain_or_quoted("no")
    ('spur length', '"3, fig. 1"', '"no"')
    """
    safe = _PLAIN.fullmatch(words) and words == words.strip() and words.casefold() not in _RESERVED
    return words if safe else quoted(words)


def data_of(text: str) -> dict[str, Any]:
    """The data of a file of records; raises Unwritable, with the line of the fault, where it cannot be read."""
    data, problems = parse(text, "")
    if not isinstance(data, dict):
        why = f"{problems[-1].what} (line {problems[-1].place.line})"
        raise Unwritable(f"the file cannot be read: {why}", problems[-1].remedy)
    return data


def composed(text: str) -> yaml.MappingNode:
    """The nodes of one YAML document, with the places of each; raises Unwritable where it is no mapping."""
    try:
        root = yaml.compose(text.removeprefix(_BOM), Loader=_LOADER)
    except yaml.YAMLError:
        root = None
    if not isinstance(root, yaml.MappingNode):
        raise Unwritable("the file cannot be read as YAML", "see what `auctorum check` says of it")
    return root


def value_at(mapping: yaml.Node, key: str) -> yaml.Node | None:
    """The value of the first such key in a mapping; None if there is none."""
    pairs = mapping.value if isinstance(mapping, yaml.MappingNode) else ()
    return next((value for name, value in pairs if name.value == key), None)


def is_block_list(node: yaml.Node | None) -> TypeGuard[yaml.SequenceNode]:
    """Whether a node is a list written in lines, one item below the other."""
    return isinstance(node, yaml.SequenceNode) and not node.flow_style


def with_items(text: str, owner: yaml.MappingNode, key: str, items: Sequence[Item], shift: int) -> str:
    """The text with `items` at the end of the list that `owner` has under `key`; the list is begun where there is none.

    `owner` is a node of composed(text). `shift` is how far a list that is begun here stands in from its key.
    """
    bom = _BOM if text.startswith(_BOM) else ""
    body = text.removeprefix(_BOM)
    return bom + _with_items(body, owner, key, items, shift)


def _with_items(text: str, owner: yaml.MappingNode, key: str, items: Sequence[Item], shift: int) -> str:
    value, column = value_at(owner, key), owner.start_mark.column
    if value is None and owner.flow_style:
        return _into_flow(text, owner, f"{key}: {_flow(items)}")
    if value is None:
        lines = [f"{key}:", *(" " * shift + line for line in _block(items))]
        return _into_lines(text, _lines_end(text, owner, column), lines, column)
    if isinstance(value, yaml.SequenceNode) and value.flow_style:
        return _into_flow(text, value, ", ".join(item.flow for item in items))
    if isinstance(value, yaml.SequenceNode):
        column = value.start_mark.column
        return _into_lines(text, _lines_end(text, value, column), _block(items), column)
    if isinstance(value, yaml.ScalarNode) and not value.value and not value.style:
        at = value.start_mark.index
        if owner.flow_style:
            return f"{text[:at]} {_flow(items)}{text[at:]}"
        return _into_lines(text, _line_end(text, at), _block(items), column + shift)
    raise Unwritable(f"`{key}:` holds no list", f"leave nothing behind `{key}:`, or make a list of it")


def _flow(items: Sequence[Item]) -> str:
    return f"[{', '.join(item.flow for item in items)}]"


def _block(items: Sequence[Item]) -> list[str]:
    return [("- " if number == 0 else "  ") + line for item in items for number, line in enumerate(item.block)]


def _into_flow(text: str, node: yaml.CollectionNode, words: str) -> str:
    """The words behind the last item between the brackets of a flow collection."""
    at = _end(node.value[-1]) if node.value else node.start_mark.index + 1
    return f"{text[:at]}{', ' if node.value else ''}{words}{text[at:]}"


def _into_lines(text: str, at: int, lines: Sequence[str], column: int) -> str:
    """The lines at `at`, the start of a line or the end of the text, with the line ends of the file."""
    ends = "\r\n" if "\r\n" in text else "\n"
    before = "" if not at or text[at - 1] == "\n" else ends
    written = ends.join(" " * column + line for line in lines)
    return f"{text[:at]}{before}{written}{ends if at < len(text) or not before else ''}{text[at:]}"


def _end(node: Any) -> int:
    """Where the last word, quote or bracket of a node ends; for a literal or folded text, its last line end."""
    while isinstance(node, yaml.CollectionNode) and not node.flow_style:
        last = node.value[-1]
        node = last[1] if isinstance(node, yaml.MappingNode) else last
    if isinstance(node, tuple):
        node = node[1]
    return int(node.end_mark.index)


def _lines_end(text: str, node: yaml.CollectionNode, column: int) -> int:
    """The start of the line behind a block collection, and behind comments that stand in as far as it does."""
    at = _line_end(text, _end(node))
    while column and (comment := re.compile(r" *#[^\n]*(?:\n|$)").match(text, at)):
        if len(comment[0]) - len(comment[0].lstrip(" ")) < column:
            break
        at = comment.end()
    return at


def _line_end(text: str, at: int) -> int:
    """The start of the next line; `at` itself where a line starts there, the end of the text after the last line."""
    if at and text[at - 1] == "\n":
        return at
    found = text.find("\n", at)
    return len(text) if found < 0 else found + 1
