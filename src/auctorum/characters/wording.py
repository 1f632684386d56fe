"""Numbers in words: spelt out, as multiples, as fractions, in adjectives; and how phrases of words are looked up.

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
    "terna ternis trina trini trinae trinis|"
    "quatuor quattuor quaterna quaternis|quinque quina quinis|sex|septem|octo|novem|decem|undecim|"
    "duodecim|tredecim|quatuordecim|quindecim|sedecim|septendecim|duodeviginti octodecim|undeviginti|viginti"
)
_GROUPED = {"solitary": 1, "single": 1, "solitarius": 1, "solitaria": 1, "solitarium": 1, "solitariis": 1} | {
    "solitarii": 1, "solitario": 1, "solitarios": 1, "solitarias": 1,
    "pairs": 2, "twos": 2, "couples": 2, "threes": 3, "ternate": 3, "fours": 4, "fives": 5, "sixes": 6
}  # fmt: skip
TENS: Mapping[str, int] = {
    "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90
}  # fmt: skip
# Romance and German numbers that are no other word in the languages read here (`dos`, `once`, `sept` are)
_OTHER_NUMBERS = {
    2: "deux dois duas zwei", 3: "trois tres tre drei", 4: "cuatro quatro quatre quattro vier",
    5: "cinco cinq cinque funf", 6: "seis sei sechs", 7: "siete sete sette sieben", 8: "ocho oito huit otto acht",
    9: "nueve nove neuf neun", 10: "diez dez dix dieci zehn", 12: "doce doze douze dodici zwolf",
}  # fmt: skip
NUMBER_WORDS: Mapping[str, int] = {
    **{word: value for value, several in _OTHER_NUMBERS.items() for word in several.split()},
    **{word: value for value, word in enumerate(_UNITS_UP.split(), 1)},
    **{word: value for value, several in enumerate(_LATIN.split("|"), 1) for word in several.split()},
    **_GROUPED,
    **TENS,
    "hundred": 100, "dozen": 12, "nought": 0, "zero": 0, "triginta": 30, "quadraginta": 40,
    "quinquaginta": 50, "sexaginta": 60, "septuaginta": 70, "octoginta": 80, "nonaginta": 90, "centum": 100,
}  # fmt: skip
MULTIPLES: Mapping[str, int] = {
    **dict.fromkeys(("twice", "double", "duplo", "subduplo", "duplum", "doble", "doppio", "dobro", "doppelt"), 2),
    **dict.fromkeys(("thrice", "triple", "triplo", "subtriplo", "triplum"), 3),
    "quadruplo": 4,
}
GROUPED = frozenset(_GROUPED)
ARTICLES = frozenset({"a", "an", "the", "one"})
FRACTION_WORDS: Mapping[str, Fraction] = {
    "half": Fraction(1, 2), "quarter": Fraction(1, 4), "quarters": Fraction(1, 4), "third": Fraction(1, 3),
    "thirds": Fraction(1, 3), "fourth": Fraction(1, 4), "fourths": Fraction(1, 4), "fifth": Fraction(1, 5),
    "fifths": Fraction(1, 5), "sixth": Fraction(1, 6), "eighth": Fraction(1, 8), "eighths": Fraction(1, 8),
    "tenth": Fraction(1, 10), "tenths": Fraction(1, 10),
    "dimidium": Fraction(1, 2), "dimidiam": Fraction(1, 2), "semis": Fraction(1, 2),
}  # fmt: skip

_PREFIXES = {"semi": Fraction(1, 2), "sesqui": Fraction(3, 2), "uni": Fraction(1), "bi": Fraction(2)} | {
    "tri": Fraction(3), "quadri": Fraction(4), "quinque": Fraction(5), "sex": Fraction(6), "septem": Fraction(7),
    "octo": Fraction(8), "novem": Fraction(9), "decem": Fraction(10),
}  # fmt: skip
_PREFIX = "|".join(_PREFIXES)
_UNIT_STEMS = "pollicar|uncial|linear|pedal|line(?=a[em])|pollic(?=em)|unci(?=am)|ped(?=em)"
_MEASURED = re.compile(rf"(?P<sub>sub)?(?P<many>{_PREFIX})?-?(?P<unit>{_UNIT_STEMS})[a-z]{{1,4}}")
_PARTS = "flor|foliol|locular|ovulat|sperm|nerv|cost|dent|lob|fid|jug|ser"
_COUNTED = re.compile(rf"(?P<many>{_PREFIX})(?:{_PARTS})[a-z]{{1,6}}")
_GREEK = {"di": 2, "tri": 3, "tetra": 4, "penta": 5, "hexa": 6, "hepta": 7, "octa": 8}
_MEROUS = re.compile(rf"({'|'.join(_GREEK)})mer(?:ous|us|a|um|i|ae|is|o|os|as|e|es)")
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
    """The number in `triflorus`, `bilocularis`, `pentamerous`; None if the word holds none."""
    if (match := _COUNTED.fullmatch(word)) is not None:
        return number_of(_PREFIXES[match["many"]])
    greek = _MEROUS.fullmatch(word)
    return number_of(Fraction(_GREEK[greek[1]])) if greek else None


def number_of(exact: Fraction) -> Number:
    """An exact number as one printed with that fraction, or with digits if it is whole."""
    return Number(Decimal(int(exact))) if exact.denominator == 1 else Number.of_fraction(exact, exact.denominator)
