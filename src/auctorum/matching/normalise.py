"""From the words of a label to genus and epithets that can be compared, and what was set aside.

Nothing here raises: a text without a name gives a reading without a genus. Every letter remembers
where it stands in the label, so that a difference can be shown in place.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field, replace

from auctorum.matching.spelling import letters_of

LONGEST = 300  # letters of a label that are read; no name is longer, and hostile text stays cheap

RANK_TERMS = {
    **dict.fromkeys(("subsp", "ssp", "ss", "subspecies"), "subspecies"),
    **dict.fromkeys(("var", "v", "variety", "varietas"), "variety"),
    **dict.fromkeys(("f", "fo", "fma", "form", "forma"), "form"),
    **dict.fromkeys(("subvar", "subvariety", "subvarietas"), "subvariety"),
    **dict.fromkeys(("subf", "subform", "subforma"), "subform"),
    **dict.fromkeys(("nothosubsp", "nothossp"), "subspecies"),
    "nothovar": "variety",
    "nothof": "form",
}
_QUALIFIERS = frozenset(["cf", "aff", "nr", "near", "prox", "vel", "confer"])
_NO_SPECIES = frozenset(["sp", "spp", "spec", "species", "indet"])
_ENDS_NAME = frozenset(
    ["auct", "auctt", "sensu", "nom", "non", "emend", "agg", "s.l", "s.lat", "s.str", "s.s", "hort", "cv", "group"]
)
_PARTICLES = "ex et in and de da do du del des la le van von den der ter te y e al fil filius bis"
_OF_AUTHORS = frozenset(_PARTICLES.split())
_HYBRID_SIGNS = frozenset("×*✕⨯")
_HYBRID_WORDS = frozenset(["hybr", "hybrid", "nothosp"])
_MARKS = "?,;:!"
_QUOTED = re.compile(r"(?:(?<=\s)|^)['\"‘’“„]([^'\"‘’“”]*)['\"’”]")
_TOKEN = re.compile(r"[^\s_]+")
# a rank term with its point after letters, or `subsp` within letters; or an author's initial after a point
_GLUED = re.compile(r"([A-Za-z-]{3,80}?)\.?((?:subsp|ssp|subvar|var)\.|subsp|(?<=\.)(?=[A-Z]))([A-Za-z-]*)[.]?")
_IN_PARENTHESES = re.compile(r"\s*[^\s()]+\s\([A-Za-z-]{4,}\)\s*")
_ABBREVIATED = re.compile(r"([A-Za-z]{1,5})\.([A-Za-z-]{3,})")


@dataclass(frozen=True, slots=True)
class Word:
    """A genus or an epithet of the label: as printed, in plain letters, and where each of these stands."""

    printed: str
    letters: str
    offsets: tuple[int, ...]  # place in the label, from 0, of each of `letters`
    rank: str = ""  # the rank that the label states for it; empty where it states none


@dataclass(frozen=True, slots=True)
class Reading:
    """One way to read a label. `words` are genus and epithets in order; none where there is no name."""

    words: tuple[Word, ...] = ()
    hybrid: bool = False
    abbreviated: bool = False  # the genus is cut to its first letters
    cut: bool = False  # the last epithet is marked as cut short
    authors: str = ""
    set_aside: tuple[str, ...] = ()
    unranked: int = field(default=0)  # how many of the last words stand without a rank after the species epithet

    @property
    def key(self) -> str:
        """All plain letters in one: spaces, hyphens and rank do not count."""
        return "".join(word.letters for word in self.words)


def word_at(printed: str, start: int, rank: str = "") -> Word:
    """A word of the label that begins at `start`, with its plain letters and their places."""
    plain: list[str] = []
    offsets: list[int] = []
    for offset, char in enumerate(printed, start):
        for letter in letters_of(char):
            plain.append(letter)
            offsets.append(offset)
    return Word(printed, "".join(plain), tuple(offsets), rank)


@dataclass
class _Reader:
    """The state of reading one label from left to right; lives within `read_label` only."""

    words: list[Word] = field(default_factory=list)
    aside: list[str] = field(default_factory=list)
    authors: list[str] = field(default_factory=list)
    rank: str = ""
    hybrid: bool = False
    abbreviated: bool = False
    cut: bool = False
    ended: bool = False
    unranked: int = 0

    def take(self, token: str, start: int) -> None:
        """Sort one token of the label into name, authors, or what is set aside."""
        token, start = self._bare(token, start)
        plain = token.strip("().[]").casefold()
        if not plain or self.ended:
            self._leave(token)
        elif plain in _QUALIFIERS and (self.words or not token[0].isupper()):
            self.aside.append(f"qualifier {token}")
        elif token in ("x", "X") or (plain in _HYBRID_WORDS and self.words):
            self.hybrid = True
        elif not self.words:
            self._genus(token, start)
        elif plain in _ENDS_NAME or plain in _NO_SPECIES or (plain in RANK_TERMS and len(self.words) == 1):
            # `sp. aff. orientalis` goes on; what follows `sensu` is no part of the name
            self.ended = plain in _ENDS_NAME
            self._leave(token)
        elif plain in RANK_TERMS and len(self.words) > 1 and not self._is_filius(token):
            self.rank = RANK_TERMS[plain]
            self.hybrid |= plain.startswith("notho")
        else:
            self._epithet_or_author(token, start)

    def _bare(self, token: str, start: int) -> tuple[str, int]:
        while token and (token[0] in _MARKS or token[0] in _HYBRID_SIGNS):
            self._mark(token[0])
            token, start = token[1:], start + 1
        while token and (token[-1] in _MARKS or token[-1] == "*"):
            self._mark(token[-1] if token[-1] != "*" else "")
            token = token[:-1]
        return token, start

    def _mark(self, sign: str) -> None:
        if sign in _HYBRID_SIGNS:
            self.hybrid = True
        elif sign == "?":
            self.aside.append("qualifier ?")

    def _leave(self, token: str) -> None:
        if any(char.isalnum() for char in token):
            self.aside.append(token)

    def _is_filius(self, token: str) -> bool:
        """`L. f.` and `Hook. f.`: the son, not a form."""
        return token.startswith("f") and bool(self.authors) and not self.rank and token == "f."

    def _genus(self, token: str, start: int) -> None:
        glued = _ABBREVIATED.fullmatch(token)
        if glued:
            self.abbreviated = True
            self.words.append(word_at(glued[1], start))
            self._epithet_or_author(glued[2], start + glued.start(2))
            return
        word = word_at(token, start)
        if not any(char.isalpha() for char in word.letters):
            self._leave(token)
            return
        self.abbreviated = token.endswith(".") or len(word.letters) == 1
        self.words.append(word)

    def _epithet_or_author(self, token: str, start: int) -> None:
        word = word_at(token.rstrip(".…"), start, self.rank)
        marked = token.endswith(("…", ".")) and not token[0].isupper()
        shouted = len(word.letters) > 2 and word.printed.isupper() and self.words[0].printed.isupper()
        is_epithet = (
            len(word.letters) > 1
            and not any(char in ".&()[]'" for char in word.printed)
            and word.letters not in _OF_AUTHORS
            and any(char.isalpha() for char in word.letters)
            and (token[0].islower() or shouted or bool(self.rank) or (len(self.words) == 1 and token[-1] != "."))
            and (not self.authors or bool(self.rank))
            and not self.cut
        )
        if not is_epithet:
            self.authors.append(token)
            return
        self.unranked = 0 if word.rank or len(self.words) == 1 else self.unranked + 1
        self.words.append(word)
        self.rank = ""
        self.cut = marked


def _tokens(text: str) -> Iterator[tuple[str, int]]:
    """Tokens with their places; a rank term that is glued to its neighbours becomes a token: `diffusasubspdiffusa`."""
    for found in _TOKEN.finditer(text):
        is_term = found[0].strip(".").casefold() in RANK_TERMS
        glued = None if is_term else _GLUED.fullmatch(found[0])
        for group in (1, 2, 3) if glued else ():
            assert glued
            if glued[group]:
                yield glued[group], found.start() + glued.start(group)
        if not glued:
            yield found[0], found.start()


def read_label(label: str) -> Reading:
    """The label as a name: genus and epithets, with ranks, authors, and what was set aside in words.

    >>> [word.letters for word in read_label("Exemplum cf. ALBUM (L.) Orrin var longum 'Giant'").words]
    ['exemplum', 'album', 'longum']
    >>> read_label("Exemplum cf. album 'Giant'").set_aside
    ("cultivar name 'Giant'", 'qualifier cf.')
    """
    text = label[:LONGEST]
    reader = _Reader()
    for quoted in _QUOTED.finditer(text):
        reader.aside.append(f"cultivar name {quoted[0].strip()}")
    text = _QUOTED.sub(lambda found: " " * len(found[0]), text)
    for token, start in _tokens(text):
        reader.take(token, start)
    authors = " ".join(reader.authors)
    aside = (*reader.aside, f"authors or further words {authors}") if authors else tuple(reader.aside)
    return Reading(tuple(reader.words), reader.hybrid, reader.abbreviated, reader.cut, authors, aside, reader.unranked)


def readings(label: str) -> tuple[Reading, ...]:
    """Every way to read the label, the plainest first: also with a glued hybrid sign `x` taken off.

    A lone second word in parentheses is an epithet, too: `Exemplum (Album)`.
    """
    first = read_label(label)
    found = [first]
    if _IN_PARENTHESES.fullmatch(label):
        found.append(read_label(label.replace("(", " ").replace(")", " ")))
    for place in range(min(2, len(first.words))):
        word = first.words[place]
        if word.letters.startswith("x") and len(word.letters) > 4:
            bare = replace(word, printed=word.printed[1:], letters=word.letters[1:], offsets=word.offsets[1:])
            words = (*first.words[:place], bare, *first.words[place + 1 :])
            found.append(replace(first, words=words, hybrid=True))
    return tuple(found)


def without_further_words(reading: Reading) -> Reading | None:
    """The reading with words after the species epithet that have no rank set aside; None if it has none."""
    if not reading.unranked:
        return None
    kept, left = reading.words[: -reading.unranked], reading.words[-reading.unranked :]
    further = "further words " + " ".join(word.printed for word in left)
    return replace(reading, words=kept, unranked=0, cut=False, set_aside=(*reading.set_aside, further))
