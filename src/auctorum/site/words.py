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


def sentence(text: str) -> str:
    """`text` with a capital first letter, and a full stop where it has no end of its own."""
    return capital(text) + ("" if text.endswith((".", "!", "?")) else ".")


@dataclass(slots=True)
class _Node:
    """Words that names have in common: what may follow them, and how the name that ends here is set."""

    following: dict[str, _Node]
    rich: Rich = ()


class NameFinder:
    """Sets the names it knows as names, wherever they stand in running text; linear in the text.

    Names are kept word by word in a tree, so that a genus of a thousand names is no slower than one of two.
    """

    def __init__(self, names: Mapping[str, Rich]) -> None:
        """`names`: the words of each name, and how they are set."""
        self._root = _Node({})
        for words, rich in sorted(names.items()):
            node = self._root
            for word in words.split():
                node = node.following.setdefault(word, _Node({}))
            node.rich = rich if node is not self._root else ()

    def set(self, text: str) -> Rich:
        """`text` with every known name as it is set; the longest name that fits is taken."""
        words = text.split(" ")
        found: list[Run] = []
        index = 0
        while index < len(words):
            gap = " " if index else ""
            opening = words[index][: len(words[index]) - len(words[index].lstrip("(["))]
            length, rich, tail = self._longest(words, index, len(opening))
            if not length:
                found.append(Run(gap + words[index]))
                index += 1
                continue
            found += [Run(gap + opening), *rich, Run(tail)]
            index += length
        return _joined(found)

    def _longest(self, words: Sequence[str], start: int, skip: int) -> tuple[int, Rich, str]:
        """How many words the longest name from `start` has, how it is set, and the stops behind it."""
        node = self._root
        best: tuple[int, Rich, str] = (0, (), "")
        for index in range(start, len(words)):
            word = words[index][skip if index == start else 0 :]
            bare = len(word.rstrip(_ENDS))
            for end in range(bare, min(bare + 2, len(word) + 1)):  # a name may itself end in one stop: `Mill.`
                last = node.following.get(word[:end])
                if last is not None and last.rich:
                    best = (index - start + 1, last.rich, word[end:])
            following = node.following.get(word)
            if following is None:
                break
            node = following
        return best


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
