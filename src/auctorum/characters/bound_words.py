"""The words beside figures: about, at most, at least, extremes, joints, and what a figure measures.

English first, then Latin, Spanish, Portuguese, French, German, Italian; folded (no case, no accents). Common practice,
no source, except where `notation` names one.
"""

from __future__ import annotations

from collections.abc import Mapping

from auctorum.characters.wording import phrases


def _listed(words: str) -> list[str]:
    return [" ".join(phrase.split()) for phrase in words.split(",")]


ABOUT = phrases(
    *_listed("""ca, c, circa, cir, circ, about, abt, approximately, approx, nearly, almost, around, roughly, some,
        more or less, scarcely, hardly, circiter, vix, fere,
        aprox, aproximadamente, aproximadamente de, alrededor de, cerca de, unos, unas, casi, quase, ca de,
        environ, pres de, a peu pres, etwa, ungefahr, rund, kaum, circa di""")
)
AT_MOST = phrases(
    *_listed("""to, up to, as much as, under, below, less than, fewer than, not more than, no more than, at most,
        not exceeding, never exceeding, not over, rarely more than, rarely over, rarely exceeding, seldom more than,
        seldom over, seldom exceeding, never more than, scarcely exceeding, reaching, attaining, to as much as,
        to a height of, to a length of, to nearly, ascends to, ascending to,
        ad, usque ad, usque, minus quam, vix ultra,
        hasta, hasta los, menos de, por debajo de, inferior a, ate, ate os, abaixo de, abaixo dos,
        jusqu'a, jusqu ' a, jusque, jusque a, moins de, au dessous de, bis, bis zu, unter, weniger als, hochstens,
        fino a, fino ai, meno di, al massimo""")
)
AT_LEAST = phrases(
    *_listed("""over, above, exceeding, more than, at least, not less than, no less than, not under, upwards of,
        from at least, rarely less than, rarely under, seldom less than, beyond,
        plusquam, plus quam, ultra, supra, minimum,
        mas de, por encima de, superior a, superando, mais de, acima de, acima dos, plus de, au dessus de,
        uber, mehr als, oltre, oltre i, sopra, sopra i, al di sopra dei, piu di""")
)
# words that make the figure after them an extreme, anywhere and only in brackets
_EXTREME = _listed("""rarely, very rarely, more rarely, exceptionally, seldom, very seldom, even, in extreme cases,
    rare, raro, rarius, rarissime, imo, rara vez, raramente, rarement, selten""")
_NOW_AND_THEN = _listed("""occasionally, sometimes, interdum, nonnunquam, less commonly, less often, less frequently""")
EXTREME = phrases(*_EXTREME)
RARELY = phrases(*_EXTREME, *_NOW_AND_THEN)
UPWARDS = phrases(
    *_listed("""or more, and more, and even more, or even more, and upwards, and upward, and over, or over, and above,
        or longer, and longer, et longior, et longiora, et longiores, et longius, et ultra, et plures, et plura""")
)
DOWNWARDS = phrases(*_listed("or less, or fewer, and less, and under, or shorter, and below"))
BETWEEN = frozenset({"between", "entre", "zwischen", "inter", "from", "von"})
AND = frozenset({"and", "et", "y", "e", "und", "to", "&"})
RANGE_WORDS = frozenset({"to", "ad", "bis", "a", "till"})
OR = frozenset({"or", "vel", "aut", "seu", "oder", "ou", "o", "&"})
TIMES_WORDS = frozenset({"times", "time", "plo", "vezes", "veces", "fois", "mal", "tuplo"})

_PROPERTIES: dict[str, str] = {
    "length": """long length lg longus longa longum longi longae longo longis longas longos longitudine longitudo
        longior largo largos largas longitud compr comprimento longue longues longs longueur lang laenge lange
        lungo lunghi lunga lunghe lunghezza""",
    "width": """wide broad width breadth broadest widest latus lata latum lati latae lato latis latas latitudine
        ancho ancha anchos anchas anchura larg largura larges largeur breit breite larghi larghe larghezza""",
    "height": """high tall height altus alta altum alti altae alto altis altas altos altitudine alt altura
        haut haute hauts hautes hauteur hoch hohe wuchshohe altezza""",
    "thickness": """thick thickness crassus crassa crassum crassi crasso crassis crassitudine grosor espesor grueso
        espessura epais epaisse epaisseur dick dicke spesso""",
    "diameter": "diam diameter diameters across diametro diametrum diamet diametre durchmesser diametri",
    "depth": "deep depth",
    "elevation": "elevation elev altitude alt",
}
# `alt.` is height first: altitude is asked for by the character
SAYS: Mapping[str, str] = {word: name for name in reversed(list(_PROPERTIES)) for word in _PROPERTIES[name].split()}
BEFORE_DE: Mapping[str, str] = {"long": "length", "large": "width", "larges": "width", "haut": "height"}
"""Dimensions that stand before their figure in French: `long de 3 cm`."""

# words that may follow `in` where it is an inch: what it measures, or how the phrase goes on
_AFTER_AN_INCH = """
    by or to and but high tall long wide broad thick deep across diam diameter x rarely sometimes usually above below
"""
INCH_BEFORE = frozenset(_AFTER_AN_INCH.split())
_AFTER_THE_PREPOSITION_IN = """
    a an the each every number pairs pair twos threes fours whorls clusters series rows row fruit flower flowers bud
    age youth all one two three some most cultivation shade sun open width length height thickness diameter diam
    mature young
"""
PREPOSITION_AFTER_IN = frozenset(_AFTER_THE_PREPOSITION_IN.split())
