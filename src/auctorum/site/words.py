"""Words for pages: runs of text that know their italics and links, counts, lists and spans of years."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

_SMALL = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_ENDS = ".,;:)]?!"


@dataclass(frozen=True, slots=True)
class Run:
    """A stretch of text; `href` is a path from the root of the site, or empty."""

    text: str
    italic: bool = False
    href: str = ""


Rich = tuple[Run, ...]


def plain(text: str) -> Rich:
    """`text` as one run; nothing where it is empty."""
    return (Run(text),) if text else ()


def text_of(rich: Rich) -> str:
    """The words of `rich` alone."""
    return "".join(run.text for run in rich)


def alternating(rich: Rich) -> list[str]:
    """The words of `rich` as runs that are upright, italic, upright and so on; the first may be empty.

    >>> alternating((Run("Exemplum album", True), Run(" Orrin"), Run(" & Tull")))
    ['', 'Exemplum album', ' Orrin & Tull']
    """
    found = [""]
    for run in rich:
        if run.italic == (len(found) % 2 == 0):
            found[-1] += run.text
        else:
            found.append(run.text)
    return found


def linked(rich: Rich, href: str) -> Rich:
    """`rich` as a link to `href`."""
    return tuple(Run(run.text, run.italic, href) for run in rich)


def number_words(count: int) -> str:
    """`count` in words up to twelve, as running text has it, else in figures.

    >>> number_words(3), number_words(40)
    ('three', '40')
    """
    return _SMALL[count] if 0 <= count < len(_SMALL) else str(count)


def counted(count: int, noun: str, many: str = "") -> str:
    """Count and noun, in the plural where that is due.

    >>> counted(1, "work"), counted(4, "variety", "varieties")
    ('one work', 'four varieties')
    """
    return f"{number_words(count)} {noun if count == 1 else many or noun + 's'}"


def listed(parts: Sequence[Rich], last: str = " and ") -> Rich:
    """`parts` with commas, and `last` before the last one.

    >>> text_of(listed([plain("a"), plain("b"), plain("c")]))
    'a, b and c'
    """
    found: list[Run] = []
    for index, part in enumerate(parts):
        if index:
            found.append(Run(last if index == len(parts) - 1 else ", "))
        found += part
    return tuple(found)


def article(noun: str) -> str:
    """`noun` with its indefinite article: `a variety`, `an unranked name`."""
    return f"{'an' if noun[:1].lower() in 'aeio' or noun.startswith('unr') else 'a'} {noun}"


def years(first: int, last: int) -> str:
    """A span of years, one year alone where both are the same."""
    return str(first) if first == last else f"{first}–{last}"


def capital(text: str) -> str:
    """`text` with a capital first letter, and the rest as it was."""
    return text[:1].upper() + text[1:]


class NameFinder:
    """Sets the names it knows as names, wherever they stand in running text; linear in the text."""

    def __init__(self, names: Mapping[str, Rich]) -> None:
        """`names`: the words of each name, and how they are set."""
        self._tree: dict[str, list[tuple[tuple[str, ...], Rich]]] = {}
        for words, rich in sorted(names.items()):
            parts = tuple(words.split())
            if parts:
                self._tree.setdefault(parts[0], []).append((parts, rich))
        for same_start in self._tree.values():
            same_start.sort(key=lambda entry: -len(entry[0]))

    def set(self, text: str) -> Rich:
        """`text` with every known name as it is set; the longest name that fits is taken."""
        words = text.split(" ")
        found: list[Run] = []
        index = 0
        while index < len(words):
            gap = " " if index else ""
            opening = words[index][: len(words[index]) - len(words[index].lstrip("(["))]
            match = self._longest(words, index, len(opening))
            if match is None:
                found.append(Run(gap + words[index]))
                index += 1
                continue
            parts, rich = match
            tail = words[index + len(parts) - 1].removeprefix(opening if len(parts) == 1 else "")[len(parts[-1]) :]
            found += [Run(gap + opening), *rich, Run(tail)]
            index += len(parts)
        return _joined(found)

    def _longest(self, words: Sequence[str], start: int, skip: int) -> tuple[tuple[str, ...], Rich] | None:
        first = words[start][skip:]
        for key in (first, first.rstrip(_ENDS)):
            for parts, rich in self._tree.get(key, ()):
                here = [first, *words[start + 1 : start + len(parts)]]
                if len(here) == len(parts) and here[:-1] == list(parts[:-1]) and _is(here[-1], parts[-1]):
                    return parts, rich
        return None


def _is(word: str, wanted: str) -> bool:
    return word == wanted or (word.startswith(wanted) and not word[len(wanted) :].strip(_ENDS))


def _joined(runs: Iterable[Run]) -> Rich:
    """Runs of the same kind put together, empty ones dropped."""
    found: list[Run] = []
    for run in runs:
        if not run.text:
            continue
        if found and (found[-1].italic, found[-1].href) == (run.italic, run.href):
            found[-1] = Run(found[-1].text + run.text, run.italic, run.href)
        else:
            found.append(run)
    return tuple(found)
