"""A description -> the row of its items."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from auctorum.characters.bound_words import BEFORE_DE, SAYS
from auctorum.characters.directions import directions_here
from auctorum.characters.figures import Line
from auctorum.characters.frequency import frequency
from auctorum.characters.measured import Measure
from auctorum.characters.products import measures_of
from auctorum.characters.prose.comparisons import read_likeness, read_ratio_words
from auctorum.characters.prose.counted import counted_noun
from auctorum.characters.prose.found import Passed
from auctorum.characters.prose.items import Is, Item
from auctorum.characters.prose.nouns import ARTICLES, Noun, noun_named, read_ellipsis, read_noun
from auctorum.characters.prose.own_words import OwnWords
from auctorum.characters.prose.passed import passed_over
from auctorum.characters.prose.pieces import Piece, read_pieces
from auctorum.characters.prose.small_words import BOTH, FACING, LACKING, SIDE_OF, SORT_OF
from auctorum.characters.stages import stage_mark
from auctorum.characters.tokens import Sort
from auctorum.characters.values import Modality


@dataclass(frozen=True, slots=True)
class _Known:
    """What is known of a text before its words are taken one by one."""

    figures: Mapping[int, tuple[Measure, ...]]
    passed: Mapping[int, tuple[Passed, int]]
    own: OwnWords
    colours: Mapping[int, tuple[str, int]]


def items_of(
    line: Line, own: OwnWords, colours: Iterable[tuple[int, int, str]] = (), heads: Iterable[tuple[int, int]] = ()
) -> tuple[Item, ...]:
    """The items in the order of the words; every token lies in one of them.

    `own` are words of a vocabulary; `colours` the Munsell notations of the text, `heads` its running heads, with their
    places in it.
    """
    return tuple(_items(line, _Known(_figures(line), passed_over(line, heads), own, _colours(line, colours))))


def _colours(line: Line, colours: Iterable[tuple[int, int, str]]) -> dict[int, tuple[str, int]]:
    """Munsell notations by the token where they start, with the token after them."""
    found = tuple(colours)
    starts = {token.start: at for at, token in enumerate(line.tokens)} if found else {}
    placed = {}
    for start, end, notation in found:
        first = starts.get(start)
        if first is not None:
            last = first
            while last < len(line.tokens) and line.tokens[last].start < end:
                last += 1
            placed[first] = notation, last
    return placed


def _figures(line: Line) -> dict[int, tuple[Measure, ...]]:
    """The figures by the token where they start, the factors of a product together."""
    found: dict[int, list[Measure]] = {}
    for measure in measures_of(line):
        start = measure.begins if measure.factors > 1 else measure.start
        found.setdefault(start, []).append(measure)
    return {start: tuple(several) for start, several in found.items()}


def _items(line: Line, known: _Known) -> Iterator[Item]:
    at = 0
    while at < len(line.tokens):
        item = _item(line, at, known)
        yield item
        at = item.end


def _item(line: Line, at: int, known: _Known) -> Item:
    if at in known.colours:
        notation, end = known.colours[at]
        return Item(Is.STATE, at, end, pieces=(Piece("colour", notation, at, end),))
    if at in known.passed:
        why, end = known.passed[at]
        return Item(Is.PASSED, at, end, passed=why)
    if (ratio := read_ratio_words(line, at)) is not None:
        return Item(Is.RATIO, at, ratio[1], text=ratio[0])
    if (facing := _facing(line, at)) is not None:
        return facing
    if at in known.figures:
        return _figure(line, known.figures[at])
    if line.sort(at) is not Sort.WORD:
        return _sign(line, at)
    return _word(line, at, known)


def _figure(line: Line, factors: tuple[Measure, ...]) -> Item:
    last = factors[-1]
    start, end = factors[0].start, max(last.end, factors[0].start + 1)
    if last.times:
        like = read_likeness(line, end, last)
        if like is not None:
            return Item(Is.LIKE, start, like.end, factors=factors, like=like, often=last.often)
    if not last.unit and len(factors) == 1:
        if (divided := _divided(line, start, end)) is not None:
            return divided
        noun, after = counted_noun(line, start, end)
        if noun:
            return Item(Is.FIGURE, start, after, factors=factors, counted=noun)
    return Item(Is.FIGURE, start, end, factors=factors)


_DIVISIONS = (
    "pinnate",
    "pinnatifid",
    "pinnatisect",
    "ternate",
    "ternatisect",
    "pinnata",
    "pinnatis",
    "pinnatae",
    "pinnatus",
)


def _divided(line: Line, start: int, end: int) -> Item | None:
    """`2-pinnate`: how often an organ is divided, a shape and no number of pinnae; `2-sided` is a state as well."""
    word = line.skip(end, Sort.DASH)
    if line.text(word) == "sided":
        return Item(Is.STATE, start, word + 1, pieces=(Piece("other", f"{line.text(start)}-sided", start, word + 1),))
    if word == end or line.text(word) not in _DIVISIONS:
        return None
    words = f"{''.join(line.text(at) for at in range(start, end))}-{line.text(word)}"
    return Item(Is.STATE, start, word + 1, pieces=(Piece("shape", words, start, word + 1),))


_SIGNS = {Sort.COMMA: Is.COMMA, Sort.STOP: Is.STOP, Sort.OPEN: Is.OPEN, Sort.CLOSE: Is.CLOSE, Sort.SLASH: Is.OR}


def _sign(line: Line, at: int) -> Item:
    token = line.tokens[at]
    if token.sort is Sort.DASH and not token.glued:
        return Item(Is.TO, at, at + 1)
    if token.sort is Sort.ABOUT and (like := read_likeness(line, at, None)) is not None:
        return Item(Is.LIKE, at, like.end, like=like)
    if token.sort is Sort.ABOUT and (pieces := read_pieces(line, at)) is not None:
        return Item(Is.STATE, at, pieces[1], pieces=pieces[0])
    if token.text == "&":
        return Item(Is.AND, at, at + 1)
    small = Is.STRANGE if token.sort is Sort.NUMBER else Is.SMALL
    return Item(_SIGNS.get(token.sort, small), at, at + 1, text=token.text)


def _word(line: Line, at: int, known: _Known) -> Item:
    """The longest or likeliest of the things that a word may begin."""
    own, noun = _own(line, at, known.own), read_noun(line, at)
    if own is not None and _comes_first(own, at, noun[0] if noun else None):
        return own
    if (mark := _mark(line, at, noun)) is not None:
        return mark
    return _told(line, at, known, noun) or _small(line, at) or own or Item(Is.STRANGE, at, at + 1, text=line.text(at))


def _comes_first(own: Item, at: int, noun: Noun | None) -> bool:
    """Whether a word of the vocabulary goes before the trade's: several words, or those of its habitat."""
    habitat = own.noun is not None and own.noun.kind == "habitat"
    return habitat or (bool(own.pieces) and (own.end > at + 1 or (noun is not None and noun.kind == "habitat")))


def _mark(line: Line, at: int, noun: tuple[Noun, int] | None) -> Item | None:
    """When, how often, how much more than what, on which side, whether at all."""
    text = line.text(at)
    stage, staged = stage_mark(line, at)
    if stage and not (noun and noun[1] > staged and noun[0].stage):
        return Item(Is.STAGE, at, staged, text=stage)
    often, after = frequency(line, at)
    if often is not None:
        return Item(Is.NOT if often is Modality.NEVER else Is.OFTEN, at, after, often=often)
    if (like := read_likeness(line, at, None)) is not None:
        return Item(Is.LIKE, at, like.end, like=like)
    if text in ("e", "ex") and line.text(at + 1) in ("basi", "apice"):  # Latin: from a base that is...
        return Item(Is.AT, at, at + 1, text="e")
    if text in BOTH:
        return Item(Is.SMALL, at, at + 1 + (line.text(at + 1) in ("sides", "surfaces", "faces")))
    if (side := _side(line, at)) is not None and not (noun or read_noun(line, at + 1)):
        return side
    if SORT_OF.get(text) in (Is.VERSUS, Is.UNCERTAIN):
        return Item(SORT_OF[text], at, at + 1, text=text)
    absent = SORT_OF.get(text) is Is.ABSENT or (text in LACKING and _ends(line, at + 1))
    return Item(Is.ABSENT, at, at + 1, text=text) if absent else None


def _told(line: Line, at: int, known: _Known, noun: tuple[Noun, int] | None) -> Item | None:
    """The organ or the states that the words name; None for neither."""
    text = line.text(at)
    pieces = read_pieces(line, at)
    if text in ("superior", "inferior") and line.sort(at - 1) is Sort.COMMA and at + 1 in known.figures:
        pieces = None
    if noun and not (pieces and pieces[1] > noun[1] and line.sort(noun[1]) is Sort.DASH and line.tokens[noun[1]].glued):
        return Item(Is.NOUN, at, noun[1], noun=noun[0], text=text if text in ARTICLES else "")
    if pieces is not None:
        return Item(Is.STATE, at, pieces[1], pieces=_with_own(line, at, pieces[0], known.own))
    if (ellipsis := read_ellipsis(line, at)) is not None:
        return Item(Is.NOUN, at, ellipsis[1], noun=ellipsis[0])
    if text in SAYS or text in BEFORE_DE:
        return Item(Is.SMALL, at, at + 1, text=text)  # a dimension beside its figure
    return None


def _facing(line: Line, at: int) -> Item | None:
    """`facing south to south-east`: directions behind a word that tells them."""
    if line.text(at) not in FACING:
        return None
    end = at + 1
    while end < at + 14 and line.sort(end) in (Sort.WORD, Sort.DASH, Sort.SLASH, Sort.POINT):
        end += 1
    arc = directions_here(Line(line.tokens[at + 1 : end]))
    return Item(Is.FACING, at, at + 1 + arc[1], arc=arc[0]) if arc else None


def _ends(line: Line, at: int) -> bool:
    ends = (Sort.COMMA, Sort.STOP, Sort.POINT, Sort.CLOSE, None)
    return line.sort(at) in ends or line.text(at) in ("or", "and", "in")


def _with_own(line: Line, at: int, pieces: tuple[Piece, ...], own: OwnWords) -> tuple[Piece, ...]:
    """A word of the trade that is also a state of another property in the vocabulary (`slate`, the rock) keeps both."""
    state = own.state(line, at) if len(pieces) == 1 else None
    if state is None or state[0].property == pieces[0].property:
        return pieces
    return (replace(pieces[0], other=(state[0].structure, state[0].property, state[1])),)


def _small(line: Line, at: int) -> Item | None:
    sort = SORT_OF.get(line.text(at))
    return Item(sort, at, at + 1, text=line.text(at)) if sort else None


def _own(line: Line, at: int, own: OwnWords) -> Item | None:
    """An organ or a state that only the vocabulary knows."""
    structure = own.organs.get(line.text(at))
    if structure is not None:
        return Item(Is.NOUN, at, at + 1, noun=noun_named(structure))
    state = own.state(line, at)
    if state is None:
        return None
    character, words, end = state
    piece = Piece(character.property, words, at, end, structure=character.structure)
    return Item(Is.STATE, at, end, pieces=(piece,))


def _side(line: Line, at: int) -> Item | None:
    """`beneath`, `en dessous`: the side of a flat organ."""
    word = at + (line.text(at) in ("en", "au", "por", "de"))
    side = SIDE_OF.get(line.text(word))
    return Item(Is.SIDE, at, word + 1, text=side) if side else None
