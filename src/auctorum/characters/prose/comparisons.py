"""Comparisons in words: `1.5–2 times as long as`, `half the length of`, `slightly longer than`, `calyce duplo longior`.

A comparison of `n` times longer is read as n times as long, `n times shorter` as 1/n (notation.md, section 4).
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from auctorum.characters.figures import Line
from auctorum.characters.notation import Measure
from auctorum.characters.tokens import Number, Sort
from auctorum.characters.wording import ABOUT, MULTIPLES, TIMES_WORDS, number_of, phrases

_DIMENSIONS = {
    "length": "long length lang largo larga largos largas longo longa longos longas lunga lunghi lunghe lungo longs longues "
    "longue longus longum longi longae longis longitudo longitudine longitudinem",
    "width": "wide broad width breadth ancho ancha anchos anchas breit large larges largura latus lata latum lati latae "
    "latis latitudine latitudinem breite largeur",
    "height": "high tall height hoch alto alta altos altas altitudine haut",
    "thickness": "thick thickness dick grueso crassus crassa crassum",
    "diameter": "diameter across",
    "count": "many numerous muchos",
}
_LONGER = {
    "length": "longer larger bigger longior longius longiores longiora longiore longioribus longiorem major majus majores "
    "majora majoribus mayor mayores maior maiores langer superans superantes superante superantibus superat exceeding exceeds exceed surpassing surpasses surpass "
    "overtopping overtops excedens excedentes excedentia excedente superando depassant sobrepasando excediendo ubertreffend",
    "width": "wider broader latior latius latiores latiora latioribus breiter",
    "height": "taller higher altior altiores altiora",
    "thickness": "thicker crassior crassiores",
    "count": "more",
}
_SHORTER = {
    "length": "shorter smaller brevior brevius breviores breviora breviore brevioribus breviorem minor minus minores minora "
    "minoribus menor menores kurzer kleiner",
    "width": "narrower angustior angustius angustiores angustiora schmaler",
    "height": "lower",
    "thickness": "thinner",
    "count": "fewer",
}
_EQUAL = {
    "length": "equalling equaling equals equal equalled aequans aequantes aequantia aequante aequantibus aequilongus aequilonga "
    "aequilongum aequilongi aequilongae aequilongis subaequans subaequantes subaequantia subaequilonga subaequilongus "
    "subaequilongi subequal subequalling aequans isometric igualando egalant gleichlang",
}
_MORE_LENGTHS = phrases("mas largo", "mas larga", "mas largos", "mas largas", "mais longo", "mais longa", "mais longos",
                        "mais longas", "plus long", "plus longs", "plus longue", "plus longues", "piu lungo", "piu lunghi",
                        "piu lunga", "piu lunghe")  # fmt: skip
_MORE_WIDTHS = phrases("mas ancho", "mas ancha", "mas anchos", "mas anchas", "mais largo", "mais larga", "mais largos",
                       "mais largas", "plus large", "plus larges", "piu largo", "piu larghi")  # fmt: skip
_LESS_LENGTHS = phrases("mas corto", "mas corta", "mas cortos", "mas cortas", "mais curto", "mais curta", "mais curtos",
                        "mais curtas", "plus court", "plus courts", "plus courte", "plus courtes", "piu corto", "piu corti",
                        "piu corta", "piu corte")  # fmt: skip
_SAYS: Mapping[str, str] = {word: name for name, words in _DIMENSIONS.items() for word in words.split()}
_MORE: Mapping[str, str] = {word: name for name, words in _LONGER.items() for word in words.split()}
_LESS: Mapping[str, str] = {word: name for name, words in _SHORTER.items() for word in words.split()}
_SAME: Mapping[str, str] = {word: name for name, words in _EQUAL.items() for word in words.split()}
_AS = frozenset("as so tan tao tam aussi ebenso genau".split(" "))
_LINKS = frozenset("as than that of the to que como wie als quam ac di de del della dei degli delle do da dos das du des in ut il lo".split(" "))
_ADVERBS = frozenset(
    "slightly much somewhat little a far considerably distinctly rather often usually sometimes up just conspicuously "
    "paulo multo paullo parum aliquanto vix manifeste leviter wenig viel etwas poco algo ligeramente pouco un peu barely "
    "mal plo times time vezes veces fois volte x many only very scarcely hardly equally".split(" ")
)
_APPROXIMATE = frozenset("subaequans subaequantes subaequantia subaequilonga subaequilongus subaequilongi subequal subequalling".split(" "))
_LATIN = ("ior", "ius", "iores", "iora", "iore", "ioribus", "iorem", "ans", "antes", "antia", "ante", "antibus", "longus", "longa", "longum", "longi", "longae", "longis", "minus", "minores", "major")
_LONGEST = 14
_ONE = Number(number_of(Fraction(1)).value)


@dataclass(frozen=True, slots=True)
class Likeness:
    """How many times as long, wide... as something else: `against` is a dimension for a proportion within one organ.

    None is an open end. `before` tells that the other organ may stand before these words (Latin ablative).
    """

    property: str
    low: Number | None
    high: Number | None
    end: int
    approximate: bool = False
    against: str = ""
    before: bool = False
    least: Number | None = None
    most: Number | None = None


@dataclass(slots=True)
class _Heard:
    property: str = ""
    same: bool = False
    more: bool = False
    less: bool = False
    about: bool = False
    latin: bool = False
    against: str = ""


def read_likeness(line: Line, at: int, factor: Measure | None) -> Likeness | None:
    """The comparison whose words start here, behind its factor if one is given; None if there is none."""
    if factor is None and (line.text(at) in TIMES_WORDS or line.text(at - 1) in TIMES_WORDS):
        return None  # "n times longer": a factor that is not given
    heard = _Heard()
    place = at
    end = at if factor is not None else -1
    linked = factor is not None and line.text(at - 1) in _AS
    for _ in range(_LONGEST):
        step = _step(line, place, heard, linked)
        if step == place:
            break
        decisive = heard.same or heard.more or heard.less or (factor is not None and bool(heard.property))
        if decisive:
            end = step
        linked = line.text(step - 1) in _AS or (linked and line.text(step - 1) in _ADVERBS)
        place = step
        if heard.against:
            break
    if factor is None and (not (heard.same or heard.more or heard.less) or not _is_told(line, at, end, heard)):
        return None
    if factor is not None and not heard.property and not _of_length(line, at) and not _is_multiple_of(line, at):
        return None
    if end < 0:
        return None
    return _likeness(heard, factor, _past_links(line, end, heard))


def _is_told(line: Line, at: int, end: int, heard: _Heard) -> bool:
    """Whether `longer` is followed by what it is longer than; Latin needs no word for than, nor does `equalling`."""
    if heard.latin or heard.same or heard.against:
        return True
    exceeding = any(line.text(place)[:6] in ("exceed", "surpas", "overto") for place in range(at, end))
    return exceeding or any(line.text(place) in _THAN for place in range(max(at, end - 3), end + 1))


_THAN = frozenset({"than", "que", "als", "quam", "di", "del", "della", "dei", "delle", "do", "da"})


def _is_multiple_of(line: Line, at: int) -> bool:
    """`il doppio del calice`, `double the sepals`."""
    return line.text(at - 1) in MULTIPLES and line.text(at) in _LINKS


def _of_length(line: Line, at: int) -> bool:
    return line.text(at) == "the" and line.text(at + 1) in _SAYS


def _step(line: Line, at: int, heard: _Heard, linked: bool) -> int:
    word = line.text(at)
    for table, name, more in ((_MORE_LENGTHS, "length", True), (_MORE_WIDTHS, "width", True), (_LESS_LENGTHS, "length", False)):
        if (end := line.phrase(at, table)) > at:
            _hear(heard, name, more=more, less=not more)
            return end
    if word in _MORE or word in _LESS:
        if word in ("lower", "higher") and line.text(at + 1) != "than":
            return at
        if word == "more" and line.text(at + 1) == "or":
            return at
        _hear(heard, _MORE.get(word) or _LESS[word], more=word in _MORE, less=word in _LESS)
        heard.latin |= word.endswith(_LATIN)
        return at + 1
    if word in _SAME:
        heard.same, heard.property = True, heard.property or _SAME[word]
        heard.about |= word in _APPROXIMATE
        heard.latin |= word.endswith(_LATIN)
        return at + 1
    if word in _SAYS and (heard.property or heard.same) and _is_link(line.text(at - 1)) and line.text(at - 1) != "the":
        if not (word in ("long",) and not heard.property):
            heard.against = _SAYS[word]
            return at + 1
    if word in _SAYS and (linked or line.text(at - 1) == "the" or word in ("longitudine", "long", "longs")):
        if heard.property and not heard.more and not heard.less and heard.property != _SAYS[word]:
            return at
        plain = linked or (line.text(at - 1) == "the" and line.text(at + 1) == "of") or word == "longitudine"
        if not plain:
            return at
        heard.property = _SAYS[word]
        heard.same |= linked or word == "longitudine"
        heard.latin |= word == "longitudine"
        return at + 1
    if line.sort(at) is Sort.ABOUT or (end := line.phrase(at, ABOUT)) > at:
        heard.about = heard.about or not (heard.same or heard.more or heard.less)
        return at + 1 if line.sort(at) is Sort.ABOUT else end
    if line.sort(at) is Sort.DASH and line.text(at + 1) in ("plo", "times"):
        return at + 2
    if word in ("or", "to", "vel", "o", "ou", "oder", "bis") and _goes_on(line, at + 1):
        return at + 1
    if word in _AS or word in _ADVERBS or (word in _LINKS and (heard.property or heard.same or word == "the")):
        return at + 1
    return at


def _hear(heard: _Heard, name: str, *, more: bool, less: bool) -> None:
    heard.property = heard.property or name
    heard.more |= more
    heard.less |= less


def _is_link(word: str) -> bool:
    return word in _LINKS or word in _AS


def _goes_on(line: Line, at: int) -> bool:
    """Whether a comparison goes on here: `or slightly longer than`."""
    for place in range(at, at + 4):
        word = line.text(place)
        if word in _MORE or word in _LESS or word in _SAME:
            return True
        if word in ("mas", "mais", "plus", "piu"):
            return True
        if word not in _ADVERBS and line.phrase(place, ABOUT) == place and word not in _AS:
            return False
    return False


def _past_links(line: Line, end: int, heard: _Heard) -> int:
    """Past `than`, `as the`; back before a link that was taken without need."""
    if heard.against:
        return end
    while line.text(end) in _LINKS and line.sort(end) is Sort.WORD:
        end += 1
    return end


def _likeness(heard: _Heard, factor: Measure | None, end: int) -> Likeness | None:
    name = heard.property or "length"
    if factor is None:
        if heard.more and heard.less:
            return None
        low = None if heard.less else _ONE
        high = None if heard.more else _ONE
        return Likeness(name, low, high, end, heard.about, heard.against, heard.latin)
    low, high, least, most = factor.low, factor.high, factor.least, factor.most
    if factor.more and high is not None:
        high = None
    if heard.less:
        low, high, least, most = _inverse(high), _inverse(low), _inverse(most), _inverse(least)
    return Likeness(name, low, high, end, factor.approximate or heard.about, heard.against, heard.latin, least, most)


def _inverse(number: Number | None) -> Number | None:
    if number is None or number.exact == 0:
        return None
    exact = 1 / number.exact
    return number_of(exact) if exact.denominator <= 12 else Number(round(number_of(exact).value, 3))


_SIDES = {"l": "length", "w": "width", "length": "length", "width": "width", "breadth": "width", "long": "length",
          "wide": "width", "broad": "width", "height": "height", "diameter": "diameter", "thickness": "thickness"}  # fmt: skip


def read_ratio_words(line: Line, at: int) -> tuple[str, int] | None:
    """`ratio of width to length` -> (`width/length`, place after); an empty pair for a bare `ratio`; None for neither."""
    word = line.text(at)
    if word in ("ratio", "quotient", "index"):
        place = at + 1 + (line.text(at + 1) == "of")
        pair = _pair(line, place)
        if pair is not None:
            return pair[0], _past_is(line, pair[1])
        return ("", _past_is(line, place)) if word == "ratio" else None
    if word in _SIDES:
        pair = _pair(line, at)
        if pair is not None and line.text(pair[1]) in ("ratio", "index", "quotient"):
            return pair[0], _past_is(line, pair[1] + 1)
        if pair is not None and line.sort(at + 1) is Sort.SLASH and line.sort(_past_is(line, pair[1])) is Sort.NUMBER:
            return pair[0], _past_is(line, pair[1])
    return None


def _pair(line: Line, at: int) -> tuple[str, int] | None:
    first = _SIDES.get(line.text(at))
    joint = line.text(at + 1) in ("to", "by") or line.sort(at + 1) in (Sort.SLASH, Sort.COLON, Sort.DASH)
    second = _SIDES.get(line.text(at + 2))
    return (f"{first}/{second}", at + 3) if first and joint and second else None


def _past_is(line: Line, at: int) -> int:
    while line.text(at) in ("is", "of", "=") or line.sort(at) is Sort.COLON:
        at += 1
    return at
