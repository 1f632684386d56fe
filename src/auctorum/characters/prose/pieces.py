"""Runs of descriptive words -> states: `densely brown pubescent`, `pale yellow-green`, `ovate-lanceolate`.

Words of degree stay part of the state. Neighbouring words of one property are one state; the colour of hairs is parted
from hairiness (notation.md, sections 1 and 5).
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from auctorum.characters.figures import Line
from auctorum.characters.prose.mark_words import MARKED
from auctorum.characters.prose.organs import organ_of, place_of
from auctorum.characters.prose.terms import TINTS, Term, degree_of, formed_term, latin_first, term_of
from auctorum.characters.tokens import Sort

_HAIRY_WORDS = """
    pubescent downy pilose villous villose tomentose woolly lanate hirsute hispid strigose sericeous silky
    velvety velutinous puberulous puberulent hairy felted floccose cottony arachnoid cobwebby bristly setose
    ciliate bearded shaggy canescent tomentulose lanuginose pilosulous hirtellous strigillose hispidulous
    barbate stellate-hairy wooly villosulous felty lepidote scaly hirtous
"""
_HAIRY = frozenset(_HAIRY_WORDS.split())
_COLOUR_DEGREES_WORDS = """
    pale light dark deep dull bright pure rich vivid clear dirty intense brilliant faint soft
"""
_COLOUR_DEGREES = frozenset(_COLOUR_DEGREES_WORDS.split())
_LONGEST = 9
_MOST_HYPHENS = 6


@dataclass(frozen=True, slots=True)
class Piece:
    """One state in English words; `part` is the part that the word tells of; `hair` marks a colour of hairs."""

    property: str
    words: str
    start: int
    end: int
    part: str = ""
    hair: bool = False
    guessed: bool = False  # a word not known here, but formed like a state
    other: tuple[str, str, str] | None = None  # structure, property and words, if a vocabulary has the word elsewhere
    structure: str = ""  # the organ that a word of a vocabulary belongs to


@dataclass(frozen=True, slots=True)
class _Word:
    """A degree (no term), or a term with the words it was printed with."""

    words: str
    term: Term | None
    start: int
    end: int
    hairs: str = ""  # "grey" of grey-downy
    tint: bool = False  # laid over the colour before it: tinged with rose
    guessed: bool = False
    english: bool = True


def read_pieces(line: Line, at: int) -> tuple[tuple[Piece, ...], int] | None:
    """The states of the run of words that starts here, and the place after; None if there are none."""
    if (marked := _marked(line, at)) is not None:
        return marked
    words: list[_Word] = []
    place = at
    while len(words) < _LONGEST:
        if words and _marked(line, place) is not None:
            break
        word = _tinted(line, place) or _compound(line, place) or _single(line, place)
        if word is None:
            break
        words.append(word)
        place = word.end
    while words and words[-1].term is None and not _is_colour_degree(words[-1]):
        words.pop()
    if not words:
        return None
    if any(word.term for word in words):
        while words[-1].term is None:
            words.pop()
    pieces = _pieces(words, spans=line.text(words[-1].end) in ("to", "ad"))
    return (tuple(pieces), words[-1].end) if pieces else None


_COLOUR_ALONE = frozenset({"dark", "pale", "light", "bright", "dull"})


def _is_colour_degree(word: _Word) -> bool:
    return word.words in _COLOUR_DEGREES


def _single(line: Line, at: int) -> _Word | None:
    if line.sort(at) is Sort.ABOUT:
        again = line.sort(at + 1) is Sort.ABOUT  # a row of signs is none
        return None if again else _Word("±", None, at, at + 1)
    if [line.text(at + step) for step in range(3)] == ["more", "or", "less"]:
        return _Word("±", None, at, at + 3)
    text = line.text(at)
    if line.sort(at) is not Sort.WORD:
        return None
    if (organ := organ_of(text)) is not None and organ.subject:
        return None  # a tufted perennial
    term, degree = term_of(text), degree_of(text)
    if (
        term is None
        and degree is None
        and text.endswith("ly")
        and len(text) > 5
        and not _is_placed(text)
        and _follows(line, at + 1)
    ):
        degree = text
    if term is not None and not (degree and _follows(line, at + 1)):
        return _Word(_spelt(term.name), term, at, at + 1, english=term.name == text)
    if degree is not None:
        return _Word(degree, None, at, at + 1)
    term = formed_term(text)
    return _Word(_spelt(term.name), term, at, at + 1, english=term.name == text) if term else None


def _spelt(name: str) -> str:
    """`gray` and its kin are written `grey`."""
    return name.replace("gray", "grey")


def _is_placed(text: str) -> bool:
    """`basally`, `apically`: an adverb of place, no degree."""
    return place_of(text.removesuffix("ly")) is not None


def _follows(line: Line, at: int) -> bool:
    text = line.text(at)
    return term_of(text) is not None or degree_of(text) is not None or formed_term(text) is not None


def _hyphened(line: Line, at: int) -> tuple[list[str], int]:
    """The words joined by glued hyphens here, and the place after them."""
    parts, end = [line.text(at)], at + 1
    while (
        len(parts) < _MOST_HYPHENS
        and line.sort(end) is Sort.DASH
        and line.tokens[end].glued
        and line.sort(end + 1) is Sort.WORD
        and line.tokens[end + 1].glued
    ):
        parts.append(line.text(end + 1))
        end += 2
    return parts, end


def _compound(line: Line, at: int) -> _Word | None:
    if line.sort(at) is not Sort.WORD:
        return None
    parts, end = _hyphened(line, at)
    if len(parts) < 2:
        return None
    last = term_of(parts[-1]) or formed_term(parts[-1])
    if parts[-1] in ("coloured", "colored", "shaped", "like"):
        told = "shape" if parts[-1] in ("shaped", "like") else "colour"
        return _Word("-".join(parts), Term("-".join(parts), told), at, end)
    if len(parts) == 2 and (shade := degree_of(parts[1])) is not None and (base := term_of(parts[0])) is not None:
        return _Word(f"{shade} {base.name}", base, at, end, english=False)  # verde-escura
    if last is None:
        known = [term_of(part) for part in parts[:-1]]
        if not known or known[0] is None:
            return None
        name = "-".join(parts)
        return _Word(name, replace(known[0], name=name), at, end, guessed=True)
    if parts == ["ever", "green"]:
        return _Word("evergreen", Term("evergreen", "other"), at, end)  # a habit, and no colour
    if last.property == "surface" and last.name in _HAIRY and len(parts) == 2:
        first = term_of(parts[0]) or formed_term(parts[0])
        if first is not None and first.property == "colour":
            return _Word(last.name, last, at, end, hairs=first.name)
    name = "-".join([*map(_first, parts[:-1]), last.name])
    return _Word(name, Term(name, last.property, last.part), at, end)


def _first(part: str) -> str:
    term = term_of(part)
    return latin_first(part) or (term.name if term else None) or degree_of(part) or part


def _marked(line: Line, at: int) -> tuple[tuple[Piece, ...], int] | None:
    """`purple-spotted`, `dark veined`, `spotted with crimson`: the colour of a mark; None if no colour is named."""
    parts, end = _hyphened(line, at)
    if len(parts) == 2 and parts[1] in MARKED and (first := term_of(parts[0])) and first.property == "colour":
        return (Piece("colour", first.name, at, end, MARKED[parts[1]]),), end
    part, place = MARKED.get(line.text(at), ""), at + 1
    if part and line.text(place) in ("with", "mit", "de", "con", "by"):
        colour, end = _colours(line, place + 1)
        return ((Piece("colour", colour, at, end, part),), end) if colour else None
    colour, end = _colours(line, at)
    end = line.skip(end, Sort.DASH)
    part = MARKED.get(line.text(end), "")
    return ((Piece("colour", colour, at, end + 1, part),), end + 1) if colour and part else None


def _colours(line: Line, at: int) -> tuple[str, int]:
    """The run of colours here, and the place after it."""
    found: list[str] = []
    while len(found) < _LONGEST and (word := _compound(line, at) or _single(line, at)) is not None:
        if word.term is not None and word.term.property != "colour":
            break
        if word.term is None and not _is_colour_degree(word) and not _follows(line, at + 1):
            break
        found.append(word.words)
        at = word.end
    return " ".join(found), at


def _tinted(line: Line, at: int) -> _Word | None:
    """`tinged with rose`, `flushed pink`: the tint with its colour; None if no colour follows."""
    text = line.text(at)
    if text not in TINTS:
        return None
    place = at + 1
    while line.text(place) in ("with", "by", "a", "slightly", "more", "or", "less"):
        place += 1
    found: list[str] = []
    end = place
    while len(found) < _LONGEST:
        word = _compound(line, end) or _single(line, end)
        if word is None or (word.term is not None and word.term.property != "colour"):
            break
        found.append(word.words)
        end = word.end
    if not found:
        return None
    name = " ".join((text, *found))
    return _Word(name, Term(name, "colour"), at, end, tint=True)


def _pieces(words: list[_Word], *, spans: bool) -> list[Piece]:
    pieces: list[Piece] = []
    degrees: list[_Word] = []
    for index, word in enumerate(words):
        if word.term is None:
            degrees.append(word)
            continue
        later_hair = _hair_after(words, index)
        held = [degree for degree in degrees if later_hair and not _is_colour_degree(degree)]
        own = [degree for degree in degrees if degree not in held]
        _add(pieces, word, own, hair=later_hair and word.term.property == "colour", spans=spans)
        degrees = held
    if degrees and not pieces and degrees[-1].words not in _COLOUR_ALONE:
        return []
    if degrees and not pieces:
        start, end = degrees[0].start, degrees[-1].end
        return [Piece("colour", " ".join(word.words for word in degrees), start, end)]
    return pieces


def _hair_after(words: list[_Word], index: int) -> bool:
    """Whether a term of colour stands before one of hairiness, with nothing but colours and degrees between."""
    term = words[index].term
    if term is None or term.property != "colour":
        return False
    for later in words[index + 1 :]:
        if later.term is not None and later.term.property != "colour":
            return later.term.property == "surface" and later.term.name in _HAIRY
    return False


def _obscurely(degree: str, term: Term) -> str:
    """Latin obscure is dark of a colour, and obscurely of anything else."""
    return "obscurely" if degree == "dark" and term.property in ("shape", "surface") else degree


def _add(pieces: list[Piece], word: _Word, degrees: list[_Word], *, hair: bool, spans: bool) -> None:
    term = word.term
    if term is None:
        return
    start = degrees[0].start if degrees else word.start
    text = " ".join([*(_obscurely(degree.words, term) for degree in degrees), word.words])
    last = pieces[-1] if pieces else None
    if word.hairs:
        pieces.append(Piece("colour", word.hairs, start, word.end, hair=True))
    joins = (
        last is not None and word.english and last.property == term.property and last.part == term.part
        and last.end == start
        and term.property in ("colour", "shape", "surface") and (spans or not word.tint)
    )  # fmt: skip
    if joins and last is not None and not word.hairs:
        pieces[-1] = replace(last, words=f"{last.words} {text}", end=word.end)
        return
    pieces.append(Piece(term.property, text, start, word.end, term.part, hair, word.guessed))
