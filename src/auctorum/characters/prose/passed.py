"""Numbers and words that are no trait: chromosome numbers, dates, references, collections, tallies (notation.md, 6)."""

from __future__ import annotations

from auctorum.characters.figures import Line
from auctorum.characters.prose.found import Passed
from auctorum.characters.prose.organs import organ_of, place_of
from auctorum.characters.prose.terms import degree_of, term_of
from auctorum.characters.tokens import Sort

_MONTHS = frozenset(
    "jan january feb february mar march apr april may jun june jul july aug august sep sept september oct october nov "
    "november dec december enero febrero marzo abril mayo junio julio agosto septiembre setiembre octubre noviembre "
    "diciembre janeiro fevereiro marco maio junho julho setembro outubro novembro dezembro janvier fevrier mars avril mai "
    "juin juillet aout septembre octobre novembre decembre januar februar marz juni juli oktober dezember januario "
    "februario martio aprili maio junio julio augusto septembri octobri novembri decembri januarii februarii martii "
    "aprilis maii junii julii augusti septembris octobris novembris decembris gennaio febbraio aprile maggio giugno "
    "luglio settembre ottobre dicembre".split(" ")
)
_NOT_ALONE = frozenset({"may", "mar", "march", "mars", "jan", "mai", "sept"})
_REFERENCES = frozenset(
    "vol vols volume p pp pg page pages pl plate plates tab tabs fig figs figure figures t f n no nos nr numero ser sect "
    "part tome tom bd heft no num lam est".split(" ")
)
_TALLIES = frozenset(
    "species spp genera genus specimens collections counts plants? populations localities sheets records taxa varieties "
    "especies especie arten gattungen especes genres espécies individuals".split(" ")
)
_ROMAN = frozenset("i ii iii iv v vi vii viii ix x xi xii".split(" "))
_JOINTS = (Sort.DASH, Sort.POINT, Sort.COMMA, Sort.SLASH)


def passed_over(line: Line) -> dict[int, tuple[Passed, int]]:
    """By the token where they start: what the words are that hold no trait, and the place after them."""
    found: dict[int, tuple[Passed, int]] = {}
    at = 0
    while at < len(line.tokens):
        why, end = _passed(line, at)
        if why is not None:
            found[at] = why, end
        at = max(end, at + 1)
    return found


def _passed(line: Line, at: int) -> tuple[Passed | None, int]:
    sort, text = line.sort(at), line.text(at)
    if sort is Sort.OTHER and any(sign.isdigit() for sign in text):
        chromosomes = "=" in text
        return (Passed.CHROMOSOMES, _past_chromosomes(line, at + 1)) if chromosomes else (Passed.REFERENCE, _numbers(line, at + 1))
    if text in _MONTHS and (text not in _NOT_ALONE or _dated(line, at)):
        return Passed.DATE, _date(line, at + 1)
    if sort is Sort.NUMBER:
        return _after_number(line, at)
    if text in _REFERENCES and sort is Sort.WORD:
        place = line.skip(at + 1, Sort.POINT)
        if (line.sort(place) is Sort.NUMBER and (place > at + 1 or len(text) > 3)) and text not in ("n", "t", "f", "part"):
            return Passed.REFERENCE, _numbers(line, place)
        if text in ("t", "f", "n") and place > at + 1 and line.sort(place) is Sort.NUMBER:
            return Passed.REFERENCE, _numbers(line, place)
    if sort is Sort.WORD and (end := _name(line, at)) > at:
        return Passed.NAME, end
    if sort is Sort.WORD and _is_collector(line, at):
        return Passed.COLLECTION, at + 2
    if text in _ROMAN and len(text) > 0 and line.sort(at + 1) is Sort.DASH and line.text(at + 2) in _ROMAN:
        return Passed.DATE, at + 3
    return None, at


def _after_number(line: Line, at: int) -> tuple[Passed | None, int]:
    """A number that a month, a word for species or a full date follows."""
    end = at + 1
    if line.sort(end) in (Sort.DASH, Sort.SLASH) and line.sort(end + 1) is Sort.NUMBER:
        end += 2
    place = line.skip(end, Sort.POINT)
    if line.text(place) in ("de", "of", "d", "th", "st", "nd", "rd"):
        place = line.skip(place + 1, Sort.POINT)
    if line.text(place) in _MONTHS:
        return Passed.DATE, _date(line, place + 1)
    if line.text(end) in _TALLIES:
        return Passed.TALLY, end + 1
    if line.text(end) in ("known", "described", "accepted", "recognized", "recognised") and line.text(end + 1) in _TALLIES:
        return Passed.TALLY, end + 2
    if line.text(at + 1) == "°" and line.sort(at + 2) is Sort.NUMBER:
        return Passed.PLACE, _coordinates(line, at)
    pointed = line.sort(at + 1) is Sort.POINT and line.tokens[at + 1].glued
    if pointed and line.text(at + 2) in _ROMAN:
        return Passed.DATE, _date(line, at + 3)
    return None, at


def _dated(line: Line, at: int) -> bool:
    """Whether a word that is also another (may, mar.) stands as a month: beside a figure, a dash, a point or a month."""
    beside = (line.sort(at + 1), line.sort(at - 1))
    month = line.text(at + 1) in _MONTHS or line.text(at + 2) in _MONTHS or line.text(at - 2) in _MONTHS
    return month or Sort.NUMBER in beside or line.sort(at + 1) in (Sort.DASH, Sort.POINT) or line.text(at - 1) in ("in", "from", "fl", "fr", "to")


def _date(line: Line, at: int) -> int:
    """Past the rest of a date: points, dashes, years, further months."""
    while True:
        if line.sort(at) in _JOINTS or line.text(at) in ("to", "and", "de", "until", "a", "bis", "et", "y", "e"):
            follows = line.text(at + 1) in _MONTHS or line.sort(at + 1) is Sort.NUMBER or (line.sort(at) is Sort.POINT and line.tokens[at].glued)
            if not follows or (line.sort(at) is Sort.COMMA and line.sort(at + 1) is Sort.NUMBER and not _is_year(line, at + 1)):
                return at
            at += 1
        elif line.text(at) in _MONTHS or (line.sort(at) is Sort.NUMBER and not line.unit(at + 1)[0]):
            at += 1
        else:
            return at


def _is_year(line: Line, at: int) -> bool:
    number = line.tokens[at].number
    return number is not None and 1700 <= number.value <= 2100


def _numbers(line: Line, at: int) -> int:
    """Past a run of page, plate and volume numbers."""
    while line.sort(at) in (Sort.NUMBER, Sort.OTHER) or (
        line.sort(at) in (Sort.DASH, Sort.COMMA, Sort.COLON, Sort.POINT, Sort.SLASH) and line.sort(at + 1) is Sort.NUMBER
    ):
        at += 1
    return at


def _past_chromosomes(line: Line, at: int) -> int:
    while line.sort(at) in (Sort.NUMBER, Sort.COMMA, Sort.DASH, Sort.PLUS) and (line.sort(at) is Sort.NUMBER or line.sort(at + 1) is Sort.NUMBER):
        at += 1
    return at


def _coordinates(line: Line, at: int) -> int:
    """Past degrees, minutes and seconds, with the points of the compass behind them."""
    while line.sort(at) in (Sort.NUMBER, Sort.SIGN, Sort.COMMA) or line.text(at) in ("n", "s", "e", "w", "o"):
        at += 1
    return at


_RANKS = frozenset({"var", "subsp", "ssp", "subvar", "sect", "subf", "cv"})
_AFTER_A_NAME = (Sort.STOP, Sort.POINT, Sort.OPEN, None)


def _name(line: Line, at: int) -> int:
    """Past the name of a plant: `var. longum`, `Genus epithet var. longum.`; `at` if it is none."""
    text = line.text(at)
    if text in _RANKS and line.sort(at + 1) is Sort.POINT and line.sort(at + 2) is Sort.WORD:
        return at + 3
    epithet = line.skip(at + 1, Sort.POINT) if len(text) < 3 else at + 1
    if not line.tokens[at].capital or _is_described(text) or line.sort(epithet) is not Sort.WORD:
        return at
    if line.tokens[epithet].capital or line.tokens[epithet].glued or len(line.text(epithet)) < 4 or organ_of(line.text(epithet)):
        return at
    end = epithet + 1
    while line.text(end) in _RANKS and line.sort(end + 1) is Sort.POINT and line.sort(end + 2) is Sort.WORD:
        end += 3
    capital = line.sort(end) is Sort.WORD and line.tokens[end].capital
    pointed = len(text) < 3 and epithet > at + 1
    return end if end > epithet + 1 or capital or pointed or line.sort(end) in _AFTER_A_NAME else at


def _is_collector(line: Line, at: int) -> bool:
    """`Harrow 2215`: a name that is no word of descriptions, and a number too large for a count."""
    number = line.tokens[at + 1].number if line.sort(at + 1) is Sort.NUMBER else None
    if number is None or number.exact < 50 or number.exact.denominator != 1 or line.unit(at + 2)[0]:
        return False
    return line.tokens[at].capital and len(line.text(at)) > 2 and not _is_described(line.text(at))


def _is_described(text: str) -> bool:
    """Whether a word is one of descriptions, and so begins no name."""
    return any(known(text) is not None for known in (organ_of, place_of, term_of, degree_of)) or text in _MONTHS
