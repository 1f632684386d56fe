"""Numbers and words that are no trait: chromosome numbers, dates, references, collections, tallies (notation.md, 6)."""

from __future__ import annotations

import re
from collections.abc import Iterable

from auctorum.characters.figures import Line
from auctorum.characters.prose.found import Passed
from auctorum.characters.prose.organs import organ_of, place_of
from auctorum.characters.prose.terms import degree_of, term_of
from auctorum.characters.tokens import Sort
from auctorum.characters.wording import NUMBER_WORDS

_MONTHS_WORDS = """
    jan january feb february mar march apr april may jun june jul july aug august sep sept september oct
    october nov november dec december enero febrero marzo abril mayo junio julio agosto septiembre setiembre
    octubre noviembre diciembre janeiro fevereiro marco maio junho julho setembro outubro novembro dezembro
    janvier fevrier mars avril mai juin juillet aout septembre octobre novembre decembre januar februar marz
    juni juli oktober dezember januario februario martio aprili augusto septembri octobri
    novembri decembri januarii februarii martii aprilis maii junii julii augusti septembris octobris
    novembris decembris gennaio febbraio aprile maggio giugno luglio settembre ottobre dicembre
"""
_MONTHS = frozenset(_MONTHS_WORDS.split())
_NOT_ALONE = frozenset({"may", "mar", "march", "mars", "jan", "mai", "sept"})
_REFERENCES_WORDS = """
    vol vols volume p pp pg page pages pl plate plates tab tabs fig figs figure figures t f n nos nr
    numero ser sect tome tom bd heft no num lam est
"""
_REFERENCES = frozenset(_REFERENCES_WORDS.split())
_TALLIES_WORDS = """
    species spp genera genus specimens collections counts populations localities sheets records taxa
    varieties especies especie arten gattungen especes genres  individuals
"""
_TALLIES = frozenset(_TALLIES_WORDS.split())
_ROMAN_WORDS = """
    i ii iii iv v vi vii viii ix x xi xii
"""
_ROMAN = frozenset(_ROMAN_WORDS.split())
_RECKONED = ("known", "described", "accepted", "recognized", "recognised")
_DATE_WORDS = ("to", "and", "de", "until", "a", "bis", "et", "y", "e")
_HEAD = re.compile(r"\n[ \t]*((?:\d{1,4}[ \t]+[A-Z][A-Z .]{3,60}|[A-Z][A-Z .]{3,60}[ \t]+\d{1,4}))[ \t]*(?=\n)")
_JOINTS = (Sort.DASH, Sort.POINT, Sort.COMMA, Sort.SLASH)


def running_heads(text: str) -> tuple[tuple[int, int], ...]:
    """Start and end of the lines that hold nothing but capitals and a page number: heads of printed pages."""
    return tuple(match.span(1) for match in _HEAD.finditer(text))


def passed_over(line: Line, heads: Iterable[tuple[int, int]] = ()) -> dict[int, tuple[Passed, int]]:
    """By the token where they start: what the words are that hold no trait, and the place after them.

    `heads` are running heads by their places in the text.
    """
    found: dict[int, tuple[Passed, int]] = {}
    at = 0
    headed = _tokens_in(line, heads)
    while at < len(line.tokens):
        why, end = (Passed.REFERENCE, at + 1) if at in headed else _passed(line, at)
        if why is not None:
            found[at] = why, end
        at = max(end, at + 1)
    return found


def _tokens_in(line: Line, spans: Iterable[tuple[int, int]]) -> frozenset[int]:
    """The tokens that lie in these places of the text, which are in order."""
    found: set[int] = set()
    at = 0
    for start, end in spans:
        while at < len(line.tokens) and line.tokens[at].start < end:
            if line.tokens[at].start >= start:
                found.add(at)
            at += 1
    return frozenset(found)


def _passed(line: Line, at: int) -> tuple[Passed | None, int]:
    sort, text = line.sort(at), line.text(at)
    if sort is Sort.OTHER and any(sign.isdigit() for sign in text):
        if "=" in text:
            return Passed.CHROMOSOMES, _past_chromosomes(line, at + 1)
        return Passed.REFERENCE, _numbers(line, at + 1)
    if sort is Sort.NUMBER:
        return _after_number(line, at)
    if sort is Sort.POINT and (end := _leader(line, at)) > at:
        return Passed.KEY, end
    if sort is not Sort.WORD:
        return None, at
    if text in NUMBER_WORDS and line.text(at + 1) in _TALLIES:
        return Passed.TALLY, at + 2
    if text == "nov" and line.text(at - 2) in ("sp", "gen", "comb", "var", "subsp", "nom", "stat", "f", "ssp"):
        return None, at
    if text in _MONTHS and (text not in _NOT_ALONE or _dated(line, at)):
        return Passed.DATE, _date(line, at + 1)
    if text in _ROMAN and _is_roman_date(line, at):
        return Passed.DATE, at + 3
    for why, read in _READERS:
        if (end := read(line, at)) > at:
            return why, end
    return None, at


def _reference(line: Line, at: int) -> int:
    """Past `vol. 3`, `plate 355`, `t. 12`; `at` if it is none."""
    text, place = line.text(at), line.skip(at + 1, Sort.POINT)
    if text not in _REFERENCES or line.sort(place) is not Sort.NUMBER:
        return at
    pointed = place > at + 1
    return at if len(text) <= 3 and not pointed else _numbers(line, place)


def _after_number(line: Line, at: int) -> tuple[Passed | None, int]:
    """A number of a date, before pages or a word for species, at the head of a lead or an item, or in degrees."""
    end = at + 1
    if line.sort(end) in (Sort.DASH, Sort.SLASH) and line.sort(end + 1) is Sort.NUMBER:
        end += 2
    place = line.skip(end, Sort.POINT)
    if line.text(place) in ("de", "of", "d", "th", "st", "nd", "rd"):
        place = line.skip(place + 1, Sort.POINT)
    if line.text(place) in _MONTHS:
        return Passed.DATE, _date(line, place + 1)
    if (page := _past_pages(line, at)) > at:
        return Passed.REFERENCE, page
    if line.text(at + 1) == "'" and line.sort(at + 2) in (Sort.POINT, Sort.STOP):
        return Passed.REFERENCE, at + 3  # 1'. of a key
    if line.sort(at + 1) in (Sort.STOP, Sort.POINT) and line.sort(at - 1) in (Sort.STOP, None) and _is_listed(line, at):
        return Passed.REFERENCE, at + 1  # 12. of a list
    if line.text(end) in _TALLIES:
        return Passed.TALLY, end + 1
    if line.text(end) in _RECKONED and line.text(end + 1) in _TALLIES:
        return Passed.TALLY, end + 2
    if line.text(at + 1) == "°" and line.sort(at + 2) is Sort.NUMBER:
        return Passed.PLACE, _coordinates(line, at)
    pointed = line.sort(at + 1) is Sort.POINT and line.tokens[at + 1].glued
    if pointed and line.text(at + 2) in _ROMAN:
        return Passed.DATE, _date(line, at + 3)
    return None, at


def _leader(line: Line, at: int) -> int:
    """Past the dots of a key and the number they lead to; `at` for fewer than three."""
    end = at
    while line.sort(end) in (Sort.POINT, Sort.STOP):
        end += 1
    return line.skip(end, Sort.NUMBER) if end >= at + 3 else at


def _is_listed(line: Line, at: int) -> bool:
    """A whole number before a capital: `12. C. album`, `2. Leaves`."""
    number, following = line.tokens[at].number, at + 2
    if number is None or number.exact.denominator != 1 or line.sort(following) is not Sort.WORD:
        return False
    return line.tokens[following].capital


def _past_pages(line: Line, at: int) -> int:
    """Past `3(3): 421`, `26: 135`, volume and page; `at` for anything else, `2:1` among it."""
    place = at + 1
    part = line.sort(place) is Sort.OPEN and line.sort(place + 1) is Sort.NUMBER and line.sort(place + 2) is Sort.CLOSE
    colon = place + 3 if part else place
    page = line.tokens[colon + 1].number if line.sort(colon + 1) is Sort.NUMBER else None
    if line.sort(colon) is not Sort.COLON or page is None or (page.value < 10 and not part):
        return at
    return at if line.text(at - 1) in ("ratio", "of") else _numbers(line, colon + 1)


def _dated(line: Line, at: int) -> bool:
    """Whether a word that is also another (may, mar.) stands as a month: beside a figure, a dash or another month."""
    month = any(line.text(at + step) in _MONTHS for step in (1, 2, -2))
    figure = Sort.NUMBER in (line.sort(at + 1), line.sort(at - 1))
    parted = line.sort(at + 1) in (Sort.DASH, Sort.POINT)
    return month or figure or parted or line.text(at - 1) in ("in", "from", "fl", "fr", "to")


def _date(line: Line, at: int) -> int:
    """Past the rest of a date: points, dashes, years, further months."""
    while (end := _date_part(line, at)) > at:
        at = end
    return at


def _date_part(line: Line, at: int) -> int:
    if line.text(at) in _MONTHS or (line.sort(at) is Sort.NUMBER and not line.unit(at + 1)[0]):
        return at + 1
    if line.sort(at) not in _JOINTS and line.text(at) not in _DATE_WORDS:
        return at
    number = line.sort(at + 1) is Sort.NUMBER
    if line.sort(at) is Sort.COMMA and number and not _is_year(line, at + 1):
        return at
    glued_point = line.sort(at) is Sort.POINT and line.tokens[at].glued
    return at + 1 if number or glued_point or line.text(at + 1) in _MONTHS else at


def _is_roman_date(line: Line, at: int) -> bool:
    """`V–VI`, `iv.1961`."""
    if line.sort(at + 1) is Sort.DASH:
        return line.text(at + 2) in _ROMAN
    return line.sort(at + 1) is Sort.POINT and line.sort(at + 2) is Sort.NUMBER and _is_year(line, at + 2)


def _is_year(line: Line, at: int) -> bool:
    number = line.tokens[at].number
    return number is not None and 1700 <= number.value <= 2100


def _numbers(line: Line, at: int) -> int:
    """Past a run of page, plate and volume numbers."""
    parting = (*_JOINTS, Sort.COLON)
    while line.sort(at) in (Sort.NUMBER, Sort.OTHER) or (line.sort(at) in parting and line.sort(at + 1) is Sort.NUMBER):
        at += 1
    return at


def _past_chromosomes(line: Line, at: int) -> int:
    parting = (Sort.COMMA, Sort.DASH, Sort.PLUS)
    while line.sort(at) is Sort.NUMBER or (line.sort(at) in parting and line.sort(at + 1) is Sort.NUMBER):
        at += 1
    return at


def _coordinates(line: Line, at: int) -> int:
    """Past degrees, minutes and seconds, with the points of the compass behind them."""
    while line.sort(at) in (Sort.NUMBER, Sort.SIGN, Sort.COMMA) or line.text(at) in ("n", "s", "e", "w", "o"):
        at += 1
    return at


_EPITHET_ENDINGS = ("a", "us", "um", "is", "e", "i", "ns", "ax", "ex", "or", "er", "es", "as", "os", "ix")
_NO_EPITHETS = ("these", "those", "there", "were", "have", "some", "more", "other", "species", "where")
_RANKS = frozenset({"var", "subsp", "ssp", "subvar", "sect", "subf", "cv"})
_AFTER_A_NAME = (Sort.STOP, Sort.POINT, Sort.OPEN, None)


def _name(line: Line, at: int) -> int:
    """Past the name of a plant: `var. longum`, `Genus epithet var. longum.`; `at` if it is none."""
    text = line.text(at)
    if _is_rank(line, at):
        return at + 3
    pointed = len(text) < 3 and line.sort(at + 1) is Sort.POINT
    epithet = at + 2 if pointed else at + 1
    if not line.tokens[at].capital or _is_described(text) or not _is_epithet(line, epithet):
        return at
    end = epithet + 1
    while _is_rank(line, end):
        end += 3
    ranked, capital = end > epithet + 1, line.sort(end) is Sort.WORD and line.tokens[end].capital
    return end if ranked or capital or pointed or line.sort(end) in _AFTER_A_NAME else at


def _is_rank(line: Line, at: int) -> bool:
    return line.text(at) in _RANKS and line.sort(at + 1) is Sort.POINT and line.sort(at + 2) is Sort.WORD


def _is_epithet(line: Line, at: int) -> bool:
    """A small word apart from the one before, and no organ."""
    if line.sort(at) is not Sort.WORD or line.tokens[at].capital or line.tokens[at].glued:
        return False
    return len(line.text(at)) > 3 and organ_of(line.text(at)) is None and _is_latin(line.text(at))


def _collector(line: Line, at: int) -> int:
    """Past `Harrow 2215`: a name that is no word of descriptions, and a number too large for a count; else `at`."""
    number = line.tokens[at + 1].number if line.sort(at + 1) is Sort.NUMBER else None
    if number is None or number.exact < 50 or number.exact.denominator != 1 or line.unit(at + 2)[0]:
        return at
    named = line.tokens[at].capital and len(line.text(at)) > 2 and not _is_described(line.text(at))
    return at + 2 if named else at


def _cited(line: Line, at: int) -> int:
    """Past `Vane 1874`: an author and a year; else `at`."""
    end = _collector(line, at)
    return end if end > at and _is_year(line, at + 1) else at


_READERS = (
    (Passed.REFERENCE, _reference),
    (Passed.NAME, _name),
    (Passed.REFERENCE, _cited),
    (Passed.COLLECTION, _collector),
)


def _is_latin(text: str) -> bool:
    """Whether a word ends as an epithet may; `authors` does not."""
    return text.endswith(_EPITHET_ENDINGS) and text not in _NO_EPITHETS


def _is_described(text: str) -> bool:
    """Whether a word is one of descriptions, and so begins no name."""
    return any(known(text) is not None for known in (organ_of, place_of, term_of, degree_of)) or text in _MONTHS
