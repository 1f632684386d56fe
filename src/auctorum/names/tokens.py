"""Printed words cut into tokens, spelling and signs kept; each pattern reads its input once, so time is linear."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterator
from typing import NamedTuple

from auctorum.names.name import UnreadableName

# Longer text is no name but a page; longer words are no Latin, and would not fit a file name.
MAX_TEXT, MAX_WORD = 4000, 70

HYBRID_SIGNS = "×✕✖⨯╳"
_SPACED = str.maketrans(
    dict.fromkeys("_", " ")
    | dict.fromkeys("’‘‛ʼʻ´`′", "'")
    | dict.fromkeys("“”„‟«»″", '"')
    | dict.fromkeys("‐‑", "-")
    | dict.fromkeys("\u00ad\u200b\u200c\u200d\u2060\ufeff")
)
_LETTER = r"(?:[^\W\d_]|[\u0300-\u036f])"
_TOKEN = re.compile(
    rf"(?P<number>[^\W\d_]*+\d\w*)|(?P<word>'[tsn](?=\s)|{_LETTER}+(?:\.?['-]{_LETTER}+)*\.?)|(?P<sign>[{HYBRID_SIGNS}])|(?P<mark>\S)"
)
_STRAY_STOP = re.compile(r" \.(?= |$|[,)])")
_STRAY_SPACE = re.compile(r"(?<![^\W\d_])([dDlL])' (?=[^\W\d_])")
# The letters of the Latin alphabet with any diacritic, and ligatures.
_LATIN = re.compile(r"[A-Za-zÀ-ÖØ-öø-ɏḀ-ỿ\u0300-\u036f'-]+")


class Token(NamedTuple):
    """One word with its full stop, number (or word with a digit in it), hybrid sign or mark.

    `start` and `end` count in the cleaned text; `bare` is without the full stop, `key` in small letters, too;
    `is_lower` tells a word in Latin letters without any capital.
    """

    text: str
    kind: str
    start: int
    end: int
    bare: str
    key: str
    is_lower: bool


def is_latin(word: str) -> bool:
    """Whether the word is written in Latin letters, hyphens and apostrophes."""
    return _LATIN.fullmatch(word.replace(".-", "-")) is not None


def clean(text: str) -> str:
    """`text` with one kind of space, quotation mark and hyphen, and not quoted as a whole.

    Raises UnreadableName if it is too long.
    """
    if len(text) > MAX_TEXT:
        raise UnreadableName(text, f"longer than {MAX_TEXT} characters")
    composed = text if text.isascii() else unicodedata.normalize("NFC", text)
    spaced = " ".join(composed.translate(_SPACED).split())
    if spaced[:1] in ("'", '"') and spaced[-1:] == spaced[:1]:
        spaced = spaced[1:-1].strip()
    return _STRAY_SPACE.sub(r"\1'", _STRAY_STOP.sub(".", spaced))


def tokenise(text: str) -> tuple[Token, ...]:
    """The tokens of cleaned text, in order; raises UnreadableName at a word longer than any Latin one."""
    return tuple(_tokens(text))


def _tokens(text: str) -> Iterator[Token]:
    for match in _TOKEN.finditer(text):
        if match.end() - match.start() > MAX_WORD:
            raise UnreadableName(text, f"a word of more than {MAX_WORD} letters")
        word, kind = match.group(), str(match.lastgroup)
        bare = word[:-1] if kind == "word" and word[-1] == "." else word
        key = bare.lower()
        yield Token(
            word, kind, match.start(), match.end(), bare, key, kind == "word" and bare == key and is_latin(bare)
        )


END = Token("", "end", -1, -1, "", "", False)


# The furthest that a reader looks ahead.
_AHEAD = 8


class Cursor:
    """A place in a row of tokens; reading past the end gives `END`."""

    __slots__ = ("_length", "_padded", "pos", "text")

    def __init__(self, text: str) -> None:
        self.text = clean(text)
        tokens = tokenise(self.text)
        self._length = len(tokens)
        self._padded = tokens + (END,) * _AHEAD
        self.pos = 0

    def peek(self, ahead: int = 0) -> Token:
        """The token `ahead` (fewer than 8) of the next one, not consumed."""
        return self._padded[self.pos + ahead]

    def take(self, count: int = 1) -> Token:
        """The next token; `count` are consumed."""
        token = self._padded[self.pos]
        self.pos = min(self.pos + count, self._length)
        return token

    @property
    def at_end(self) -> bool:
        """Whether every token is consumed."""
        return self.pos == self._length

    @property
    def rest(self) -> tuple[Token, ...]:
        """All tokens not consumed."""
        return self._padded[self.pos : self._length]
