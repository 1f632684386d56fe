"""Words of a description -> tokens: numbers with the digits and fractions as printed, words, signs and stops.

Every dash, quote and space that printing uses is brought to one form here, and nowhere else; each token still tells
where its letters stand in the words as given.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from itertools import pairwise


class Sort(StrEnum):
    """The sorts of token that the grammar tells apart."""

    NUMBER = "number"
    WORD = "word"
    SIGN = "sign"  # ' " ° %
    DASH = "dash"
    OPEN = "open"
    CLOSE = "close"
    TIMES = "times"
    ABOUT = "about"  # ± ~
    LESS = "less"
    MORE = "more"
    PLUS = "plus"
    COMMA = "comma"
    STOP = "stop"  # semicolon, or the end of a sentence
    POINT = "point"  # of an abbreviation
    SLASH = "slash"
    COLON = "colon"
    OTHER = "other"


@dataclass(frozen=True, slots=True)
class Number:
    """A printed number: its value, and the denominator of the fraction it was printed with (1 for digits).

    >>> Number.of_fraction(Fraction(4, 3), 3)
    Number(value=Decimal('1.333333'), parts=3)
    """

    value: Decimal
    parts: int = 1

    @classmethod
    def of_fraction(cls, exact: Fraction, parts: int) -> Number:
        rounded = round(Decimal(exact.numerator) / Decimal(exact.denominator), 6)
        return cls(Decimal(format(rounded.normalize(), "f")), parts)

    @property
    def exact(self) -> Fraction:
        value = Fraction(self.value)
        return value if self.parts == 1 else Fraction(round(value * self.parts), self.parts)


@dataclass(frozen=True, slots=True)
class Token:
    """One token: `text` is folded for words, `number` is set for numbers, `glued` if no space stands before it.

    `start` and `end` are its place in the words as they were given.
    """

    sort: Sort
    text: str
    glued: bool
    number: Number | None = None
    start: int = field(default=0, compare=False)
    end: int = field(default=0, compare=False)
    capital: bool = field(default=False, compare=False)


# Digits are bounded: a longer run is no measure, and exact arithmetic on it would not be linear.
_GAP = r"(?:[ ]{1,2}|[ ]?\n[ ]?)"
_NUMBER = (
    r"(?P<minus>(?<![\w.)\]'\"°%+−])−)?"
    rf"(?:(?P<whole>\d{{1,9}})(?:(?:-|{_GAP})?(?P<vulgar>[¼½¾⅐-⅞])|(?:{_GAP}(?P<over>\d{{1,3}}))?[/⁄](?P<under>\d{{1,3}})(?![\d/]))"
    r"|(?P<bare>[¼½¾⅐-⅞])"
    r"|(?P<digits>(?<!\w)[Oo][.,·]\d{1,9}|\d{1,4} \. \d{1,3}(?= ?(?:mm|cm|dm|m|in)\b)"  # slips of scanning
    r"|\d{1,3}(?:,\d{3}){1,3}(?![\d,])|\d{1,12}(?:[.,·]\d{1,9})?|(?<![\w.,·])[.·]\d{1,9}))"
)
_TOKEN = re.compile(
    # chromosome numbers and references to pages, plates and figures hold no trait
    r"(?P<noise>(?<!\w)(?:2\s?)?[nx]\s?=\s?\d{1,4}+|(?<!\w)(?:pp?|tab|t|figs?|pl|nos?)\.\s?\d{1,6}+(?:-\d{1,6}+)?)"
    rf"|(?P<number>{_NUMBER})"
    r"|(?P<digitrun>\d+)"
    r"|(?P<word>[^\W\d_]+(?:'(?=[^\W\d_]{2})[^\W\d_]+)?)"
    r"|(?P<about>\+\s?/?[-−]|[±~≈])"
    r"|(?P<dash>-+|−+)"
    r"|(?P<sign>''|['\"°%])"
    r"|(?P<open>[(\[])|(?P<close>[)\]])"
    r"|(?P<times>[×*])|(?P<less>[<≤])|(?P<more>[>≥])|(?P<plus>\+)"
    r"|(?P<comma>,)|(?P<stop>;|\.(?=\s+[A-ZÀ-ÖØ-Þ])|\n\s*\n)|(?P<point>\.)|(?P<slash>[/⁄])|(?P<colon>:)"
    r"|(?P<other>\S)"
)
_SORTS = {sort.value: sort for sort in Sort} | dict.fromkeys(("digitrun", "noise"), Sort.OTHER)
VULGAR = {sign: Fraction(unicodedata.normalize("NFKC", sign).replace("⁄", "/")) for sign in "¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"}
_SPACES = "\u00a0\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u3000\t"
_PRINTED = str.maketrans(
    {
        **dict.fromkeys("‐‑‒–—―﹣－", "-"),
        **dict.fromkeys("′’‘‛´`ʹ", "'"),
        **dict.fromkeys("″”“„‟〃ʺ«»", '"'),
        **dict.fromkeys("º˚", "°"),
        **dict.fromkeys(_SPACES, " "),
        **dict.fromkeys("\u00ad\u200b\u200c\u200d\ufeff", ""),
        **dict.fromkeys("✕✖⨯╳", "×"),
        **dict.fromkeys("∙•⋅", "·"),
        "～": "~",
        "＋": "+",
    }
)
_BROKEN = re.compile(r"(?<=[^\W\d_])-[ \t]*\n[ \t]*(?=[a-zß-ÿ])")


_ELIDED = re.compile(r"^(?:d|l|dell|all|dall|sull)'(?=\w{3})")  # d'environ, l'anthèse
_CLUSTER = re.compile(r"[\s\S][\u0300-\u036f]*+")
_ACCENT = re.compile(r"[\u0300-\u036f]")
_MOST_ACCENTS = 9  # to put a longer run in order takes time by its square


def folded(word: str) -> str:
    """A word without case and accents, for comparison.

    >>> folded("Sépalos")
    'sepalos'
    """
    decomposed = unicodedata.normalize("NFD", word.casefold())
    return "".join(sign for sign in decomposed if not unicodedata.combining(sign)).replace("æ", "ae").replace("œ", "oe")


def tokens_of(words: str) -> tuple[Token, ...]:
    """The tokens of the words in order. A word broken by a hyphen at the end of a line is joined.

    >>> [token.text for token in tokens_of("1½–2 in. (rarely to 2¾ in.)")]
    ['1½', '-', '2', 'in', '.', '(', 'rarely', 'to', '2¾', 'in', '.', ')']
    """
    text, places = _printed(words)
    decimal_comma = re.search(r"\d,(?:\d{1,2}|\d{4,})(?!\d)", text) is not None
    found: list[Token] = []
    end = 0
    for match in _TOKEN.finditer(text):
        glued = match.start() == end and end > 0
        end = match.end()
        where = places[match.start()], places[end]
        if match["number"]:
            found.extend(
                replace(token, start=places[token.start], end=places[token.end])
                for token in _numbers(match, glued, decimal_comma)
            )
        else:
            sort = _SORTS[match.lastgroup or "other"]
            text_ = _ELIDED.sub("", folded(match[0])) if sort is Sort.WORD else match[0]
            found.append(Token(sort, text_, glued, None, *where, match[0][0].isupper()))
    return tuple(found)


def _printed(words: str) -> tuple[str, Sequence[int]]:
    """The words with dashes, quotes and spaces in one form, and the places in `words` of its signs and of the end."""
    text = words.translate(_PRINTED)
    places: Sequence[int] = range(len(words) + 1)
    if len(text) != len(words) or _ACCENT.search(text) or not unicodedata.is_normalized("NFC", words):
        text, places = _composed(words)
    broken = [match.span() for match in _BROKEN.finditer(text)]
    if not broken:
        return text, places
    kept = [*pairwise([0, *(place for span in broken for place in span), len(text)])][::2]
    left = [at for start, end in kept for at in places[start:end]]
    return "".join(text[start:end] for start, end in kept), [*left, len(words)]


def _composed(words: str) -> tuple[str, list[int]]:
    """Each letter with its accents as one sign, without those that it has no sign with; the last place is the end."""
    signs: list[str] = []
    places: list[int] = []
    for cluster in _CLUSTER.finditer(words):
        printed = _ACCENT.sub("", unicodedata.normalize("NFC", cluster[0][:_MOST_ACCENTS])).translate(_PRINTED)
        signs.append(printed)
        places.extend([cluster.start()] * len(printed))
    return "".join(signs), [*places, len(words)]


def _numbers(match: re.Match[str], glued: bool, decimal_comma: bool) -> list[Token]:
    sign = -1 if match["minus"] else 1
    if match["digits"]:
        number = Number(sign * _decimal(match["digits"], decimal_comma))
        return [Token(Sort.NUMBER, match[0], glued, number, *match.span())]
    if match["bare"] or match["vulgar"]:
        fraction = VULGAR[match["bare"] or match["vulgar"]]
        exact = int(match["whole"] or 0) + fraction
        return [
            Token(Sort.NUMBER, match[0], glued, Number.of_fraction(sign * exact, fraction.denominator), *match.span())
        ]
    return _fraction(match, glued, sign)


def _fraction(match: re.Match[str], glued: bool, sign: int) -> list[Token]:
    """`1 1/2`, `3/4`; `11/2` is 1½ that lost its gap in copying; figures that make no fraction stay apart."""
    under = int(match["under"])
    whole, over = (match["whole"], match["over"]) if match["over"] else _gap(match["whole"], under)
    if under == 0 or (int(over) >= under and whole):
        apart = [part for part in ("whole", "over", "under") if match[part]]
        return [
            Token(Sort.NUMBER, match[part], glued and not i, Number(Decimal(match[part])), *match.span(part))
            for i, part in enumerate(apart)
        ]
    if int(over) == 0:
        return [Token(Sort.NUMBER, match[0], glued, Number(Decimal(int(whole or 0))), *match.span())]
    exact = int(whole or 0) + Fraction(int(over), under)
    return [Token(Sort.NUMBER, match[0], glued, Number.of_fraction(sign * exact, under), *match.span())]


def _gap(digits: str, under: int) -> tuple[str, str]:
    """Whole and numerator of `31/2`: the longest proper numerator that leaves a whole number; all if it is proper."""
    if int(digits) < under:
        return "", digits
    for cut in range(1, len(digits)):
        if 0 < int(digits[cut:]) < under and digits[cut] != "0":
            return digits[:cut], digits[cut:]
    return "", digits


def _decimal(digits: str, decimal_comma: bool) -> Decimal:
    """Thousands where commas part groups of three in a phrase with no decimal comma; a decimal otherwise."""
    if "," in digits and not decimal_comma and re.fullmatch(r"[1-9]\d{0,2}(?:,\d{3})+", digits):
        return Decimal(digits.replace(",", ""))
    digits = digits.replace(" ", "").replace("O", "0").replace("o", "0")  # slips of scanning: O.5, 1 . 2
    if digits.count(",") > 1:
        return Decimal(digits.replace(",", ""))
    return Decimal(digits.replace(",", ".").replace("·", "."))
