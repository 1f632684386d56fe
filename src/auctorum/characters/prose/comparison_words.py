"""The words of comparisons: dimensions, longer and shorter, equal (common practice, no source).

English, Latin, Spanish, Portuguese, French, German, Italian; folded.
"""

from __future__ import annotations

from collections.abc import Mapping

from auctorum.characters.wording import phrases

_DIMENSIONS = {
    "length": """long length lang largo larga largos largas longo longa longos longas lunga lunghi lunghe lungo longs
        longues longue longus longum longi longae longis longitudo longitudine longitudinem""",
    "width": """wide broad width breadth ancho ancha anchos anchas breit large larges largura latus lata latum lati
        latae latis latitudine latitudinem breite largeur""",
    "height": "high tall height hoch alto alta altos altas altitudine haut",
    "thickness": "thick thickness dick grueso crassus crassa crassum",
    "diameter": "diameter across",
    "count": "many numerous muchos",
}
_LONGER = {
    "length": """longer larger bigger exceeding exceeds exceed surpassing surpasses surpass overtopping overtops
        longior longius longiores longiora longiore longioribus longiorem major majus majores majora majoribus
        superans superantes superante superantibus superat excedens excedentes excedentia excedente
        mayor mayores maior maiores superando sobrepasando excediendo depassant langer ubertreffend""",
    "width": "wider broader latior latius latiores latiora latioribus breiter",
    "height": "taller higher altior altiores altiora",
    "thickness": "thicker crassior crassiores",
    "count": "more",
}
_SHORTER = {
    "length": """shorter smaller brevior brevius breviores breviora breviore brevioribus breviorem minor minus minores
        minora minoribus menor menores kurzer kleiner""",
    "width": "narrower angustior angustius angustiores angustiora schmaler",
    "height": "lower",
    "thickness": "thinner",
    "count": "fewer",
}
_EQUAL = {
    "length": """equalling equaling equals equal equalled subequal subequalling isometric
        aequans aequantes aequantia aequante aequantibus aequilongus aequilonga aequilongum aequilongi aequilongae
        aequilongis subaequans subaequantes subaequantia subaequilonga subaequilongus subaequilongi
        igualando egalant gleichlang""",
}


def _by_word(table: Mapping[str, str]) -> dict[str, str]:
    return {word: name for name, words in table.items() for word in words.split()}


def _pairs(adverb: str, adjectives: str) -> tuple[str, ...]:
    return tuple(f"{adverb} {adjective}" for adjective in adjectives.split())


DIMENSION: Mapping[str, str] = _by_word(_DIMENSIONS)
MORE: Mapping[str, str] = _by_word(_LONGER)
LESS: Mapping[str, str] = _by_word(_SHORTER)
SAME: Mapping[str, str] = _by_word(_EQUAL)
MORE_LENGTHS = phrases(
    *_pairs("mas", "largo larga largos largas"),
    *_pairs("mais", "longo longa longos longas comprido comprida compridos compridas"),
    *_pairs("plus", "long longs longue longues"),
    *_pairs("piu", "lungo lunghi lunga lunghe"),
)
MORE_WIDTHS = phrases(
    *_pairs("mas", "ancho ancha anchos anchas"),
    *_pairs("mais", "largo larga largos largas"),
    *_pairs("plus", "large larges"),
    *_pairs("piu", "largo larga larghi larghe"),
)
LESS_LENGTHS = phrases(
    *_pairs("mas", "corto corta cortos cortas"),
    *_pairs("mais", "curto curta curtos curtas"),
    *_pairs("plus", "court courts courte courtes"),
    *_pairs("piu", "corto corti corta corte"),
)
