"""The words of the notation: numbers spelt out, bounds, frequency, and what a figure measures.

English, botanical Latin, and the few words of other languages that stand beside figures. Words are folded
(no case, no accents). Common practice, no source, except where `notation` names one.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from decimal import Decimal
from fractions import Fraction

from auctorum.characters.tokens import Number

Phrase = tuple[str, ...]


def phrases(*spellings: str) -> dict[str, tuple[Phrase, ...]]:
    """Phrases by their first word, the longest first."""
    found: dict[str, list[Phrase]] = {}
    for spelling in spellings:
        words = tuple(spelling.split())
        found.setdefault(words[0], []).append(words)
    return {first: tuple(sorted(several, key=len, reverse=True)) for first, several in found.items()}


_UNITS_UP = (
    "one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen "
    "seventeen eighteen nineteen twenty"
)
_LATIN = (
    "unus una unum unica unicum unico|duo duae dua duobus duabus binae bini bina binis|tres tria tribus ternae terni "
    "terna ternis trina trini trinae trinis|quatuor quattuor quaterna quaternis|quinque quina quinis|sex|septem|octo|novem|decem|undecim|"
    "duodecim|tredecim|quatuordecim|quindecim|sedecim|septendecim|duodeviginti octodecim|undeviginti|viginti"
)
_GROUPED = {"solitary": 1, "single": 1, "solitarius": 1, "solitaria": 1, "solitarium": 1, "solitariis": 1} | {
    "solitarii": 1, "solitario": 1, "solitarios": 1, "solitarias": 1,
    "pairs": 2, "twos": 2, "couples": 2, "threes": 3, "ternate": 3, "fours": 4, "fives": 5, "sixes": 6
}  # fmt: skip
TENS: Mapping[str, int] = {
    "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90
}  # fmt: skip
NUMBER_WORDS: Mapping[str, int] = {
    **{word: value for value, word in enumerate(_UNITS_UP.split(), 1)},
    **{word: value for value, several in enumerate(_LATIN.split("|"), 1) for word in several.split()},
    **_GROUPED,
    **TENS,
    "hundred": 100, "dozen": 12, "nought": 0, "zero": 0, "triginta": 30, "quadraginta": 40,
    "quinquaginta": 50, "sexaginta": 60, "septuaginta": 70, "octoginta": 80, "nonaginta": 90, "centum": 100,
}  # fmt: skip
MULTIPLES: Mapping[str, int] = {
    "twice": 2, "double": 2, "thrice": 3, "triple": 3, "duplo": 2, "triplo": 3, "quadruplo": 4, "subduplo": 2,
    "subtriplo": 3, "doble": 2, "doppio": 2, "dobro": 2, "doppelt": 2, "triplex": 3, "duplex": 2, "cuadruple": 4, "triplo": 3, "triplum": 3, "duplum": 2,
}  # fmt: skip
GROUPED = frozenset(_GROUPED)
ARTICLES = frozenset({"a", "an", "the", "one"})
FRACTION_WORDS: Mapping[str, Fraction] = {
    "half": Fraction(1, 2), "quarter": Fraction(1, 4), "quarters": Fraction(1, 4), "third": Fraction(1, 3),
    "thirds": Fraction(1, 3), "fourth": Fraction(1, 4), "fourths": Fraction(1, 4), "fifth": Fraction(1, 5),
    "fifths": Fraction(1, 5), "sixth": Fraction(1, 6), "eighth": Fraction(1, 8), "eighths": Fraction(1, 8),
    "tenth": Fraction(1, 10), "tenths": Fraction(1, 10),
    "dimidium": Fraction(1, 2), "dimidiam": Fraction(1, 2), "semis": Fraction(1, 2),
}  # fmt: skip

ABOUT = phrases(
    "ca", "c", "circa", "cir", "circ", "circiter", "about", "abt", "approximately", "approx", "nearly", "almost",
    "around", "roughly", "some", "more or less", "vix", "scarcely", "hardly", "fere", "etwa", "cerca de", "environ", "ungefahr", "aproximadamente", "alrededor de", "unos", "unas", "quase", "casi", "kaum",
    "pres de", "circa di", "aproximadamente de", "aprox", "ca de", "rund", "a peu pres", "more-or-less",
)  # fmt: skip
AT_MOST = phrases(
    "to", "up to", "as much as", "under", "below", "less than", "fewer than", "not more than", "no more than",
    "at most", "not exceeding", "never exceeding", "not over", "rarely more than", "rarely over", "rarely exceeding",
    "seldom more than", "seldom over", "seldom exceeding", "never more than", "scarcely exceeding", "reaching",
    "attaining", "ad", "usque ad", "usque", "minus quam", "to as much as", "bis", "bis zu", "hasta", "ate", "jusqu'a", "jusqu ' a", "jusque",
    "to a height of", "to a length of", "to nearly", "ascends to", "ascending to", "vix ultra", "menos de", "moins de", "unter", "weniger als", "meno di", "fino a", "fino ai", "abaixo de", "abaixo dos",
    "por debajo de", "au dessous de", "inferior a", "hasta los", "ate os", "jusque a", "hochstens", "al massimo",
)  # fmt: skip
AT_LEAST = phrases(
    "over", "above", "exceeding", "more than", "at least", "not less than", "no less than", "not under",
    "upwards of", "plusquam", "plus quam", "ultra", "supra", "minimum", "from at least", "sopra i", "sopra", "oltre", "oltre i", "al di sopra dei", "mas de", "mais de", "plus de", "uber",
    "mehr als", "piu di", "por encima de", "acima de", "acima dos", "au dessus de", "superior a", "superando", "rarely less than",
    "rarely under", "seldom less than", "beyond",
)  # fmt: skip
# words that make the figure after them an extreme, anywhere and only in brackets
_EXTREME = ("rarely", "very rarely", "more rarely", "exceptionally", "seldom", "raro", "rarius", "rarissime", "imo",
            "even", "in extreme cases", "rare", "selten", "raramente", "rarement", "very seldom",
            "rara vez")  # fmt: skip
_NOW_AND_THEN = (
    "occasionally",
    "sometimes",
    "interdum",
    "nonnunquam",
    "less commonly",
    "less often",
    "less frequently",
)
EXTREME = phrases(*_EXTREME)
RARELY = phrases(*_EXTREME, *_NOW_AND_THEN)
BETWEEN = frozenset({"between", "entre", "zwischen", "inter", "from", "von"})
AND = frozenset({"and", "et", "y", "e", "und", "to", "&"})
RANGE_WORDS = frozenset({"to", "ad", "bis", "a", "till"})
OR = frozenset({"or", "vel", "aut", "seu", "oder", "ou", "o", "&"})
TIMES_WORDS = frozenset({"times", "time", "plo", "vezes", "veces", "fois", "mal", "tuplo"})
UPWARDS = phrases(
    "or more", "and more", "and even more", "or even more", "and upwards", "and upward", "and over", "or over",
    "and above", "et longior", "et longiora", "et longiores", "et longius", "et ultra", "et plures", "et plura",
    "or longer", "and longer",
)  # fmt: skip
DOWNWARDS = phrases("or less", "or fewer", "and less", "and under", "or shorter", "and below")

_PROPERTIES: dict[str, str] = {
    "length": "long length lg longus longa longum longi longae longo longis longas longos longitudine longior largo "
    "largos largas compr comprimento lang laenge lange lungo lunghi lunga lunghe longue longues longs longueur lunghezza longitud longitudo",
    "width": "wide broad width breadth latus lata latum lati latae lato latis latas latitudine ancho anchos larg "
    "largura breit breite broadest widest larges larghi larghe largeur larghezza anchura ancha anchas",
    "height": "high tall height altus alta altum alti altae alto altis altitudine alt hoch hohe wuchshohe altura altas altos "
    "haut haute hauts hautes hauteur altezza alti",
    "thickness": "thick thickness crassus crassa crassum crassi crasso crassis crassitudine dick dicke grosor espesor "
    "epais epaisse epaisseur spesso espessura grueso",
    "diameter": "diam diameter diameters across diametro diametrum diamet durchmesser diametre diametri",
    "depth": "deep depth",
    "elevation": "elevation elev altitude alt",
}
# `alt.` is height first: altitude is asked for by the character
SAYS: Mapping[str, str] = {word: name for name in reversed(list(_PROPERTIES)) for word in _PROPERTIES[name].split()}
_AFTER_THE_PREPOSITION_IN = (
    "a an the each every number pairs pair twos threes fours whorls clusters series rows row fruit flower flowers bud "
    "age youth all one two three some most cultivation shade sun open width length height thickness diameter diam "
    "mature young"
)
PREPOSITION_AFTER_IN = frozenset(_AFTER_THE_PREPOSITION_IN.split())
# words that may follow `in` where it is an inch: what it measures, or how the phrase goes on
_AFTER_AN_INCH = "by or to and but high tall long wide broad thick deep across diam diameter x rarely sometimes usually above below"
INCH_BEFORE = frozenset(_AFTER_AN_INCH.split())

_PREFIXES = {"semi": Fraction(1, 2), "sesqui": Fraction(3, 2), "uni": Fraction(1), "bi": Fraction(2)} | {
    "tri": Fraction(3), "quadri": Fraction(4), "quinque": Fraction(5), "sex": Fraction(6), "septem": Fraction(7),
    "octo": Fraction(8), "novem": Fraction(9), "decem": Fraction(10),
}  # fmt: skip
_PREFIX = "|".join(_PREFIXES)
_UNIT_STEMS = "pollicar|uncial|linear|pedal|line(?=a[em])|pollic(?=em)|unci(?=am)|ped(?=em)"
_MEASURED = re.compile(rf"(?P<sub>sub)?(?P<many>{_PREFIX})?-?(?P<unit>{_UNIT_STEMS})[a-z]{{1,4}}")
_PARTS = "flor|foliol|locular|ovulat|sperm|nerv|cost|dent|lob|fid|jug|ser"
_COUNTED = re.compile(rf"(?P<many>{_PREFIX})(?:{_PARTS})[a-z]{{1,6}}")
_UNIT_OF = {"pollicar": "in", "uncial": "in", "linear": "line", "pedal": "ft", "line": "line", "pollic": "in",
            "unci": "in", "ped": "ft"}  # fmt: skip


def measured_adjective(word: str) -> tuple[Number, str, bool] | None:
    """Number, unit and `about` of a Latin adjective of measure; None if it is none. Bare `linearis` is a shape.

    >>> measured_adjective("sesquipollicaria")
    (Number(value=Decimal('1.5'), parts=2), 'in', False)
    """
    match = _MEASURED.fullmatch(word)
    if match is None or (match["unit"] in ("linear", "line", "pollic", "unci", "ped") and not match["many"]):
        return None
    exact = _PREFIXES[match["many"]] if match["many"] else Fraction(1)
    return number_of(exact), _UNIT_OF[match["unit"]], bool(match["sub"])


def prefix_number(word: str) -> Number | None:
    """The number of a Latin prefix that stands apart: the `bi-` of `bi- vel tripedalis`."""
    return number_of(_PREFIXES[word]) if word in _PREFIXES else None


def unit_adjective(word: str) -> str:
    """The unit of a Latin adjective that follows figures (`4-5-pollicaris`); empty if it is none."""
    match = _MEASURED.fullmatch(word)
    return _UNIT_OF[match["unit"]] if match and not match["many"] and not match["sub"] else ""


def counted_adjective(word: str) -> Number | None:
    """The number in `triflorus`, `bilocularis`; None if the word holds none."""
    match = _COUNTED.fullmatch(word)
    return number_of(_PREFIXES[match["many"]]) if match else None


def number_of(exact: Fraction) -> Number:
    """An exact number as one printed with that fraction, or with digits if it is whole."""
    return Number(Decimal(int(exact))) if exact.denominator == 1 else Number.of_fraction(exact, exact.denominator)
