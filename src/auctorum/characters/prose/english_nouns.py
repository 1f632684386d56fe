"""Number of English nouns, with the Latin and Greek plurals that the trade keeps (`apices`, `perigynia`)."""

from __future__ import annotations

from collections.abc import Callable

_IRREGULAR = {
    "leaf": "leaves",
    "lf": "lvs",
    "tooth": "teeth",
    "half": "halves",
    "sheaf": "sheaves",
    "corpus": "corpora",
    "genus": "genera",
    "appendix": "appendices",
    "helix": "helices",
    "radix": "radices",
    "spadix": "spadices",
    "calyx": "calyces",
    "glans": "glandes",
}
# Neuters in -um whose plural looks like any feminine singular, and plurals that no rule reaches.
_NEUTERS = """
    ovum ovulum septum labellum sepalum petalum tepalum rostellum retinaculum receptaculum involucrum involucellum
    capitulum operculum vexillum corpusculum tuberculum velum rostrum hilum replum stratum phyllum folium indumentum
    tomentum ramentum lomentum segmentum integumentum flagellum scutellum haustellum
"""
_SINGULARS = (
    {word[:-2] + "a": word for word in _NEUTERS.split()}
    | {plural: word for word, plural in _IRREGULAR.items()}
    | {"leafs": "leaf", "irides": "iris", "lenses": "lens", "calices": "calyx", "thyrsi": "thyrsus"}
)
# Words in -s, -ia or -mina that are singular, or that have no singular of the same sense.
_UNCHANGED = """
    series species congeries superficies effigies glans lens frons iris pubes woods plains flats sands always
    perhaps sometimes besides across towards upwards downwards inwards outwards afterwards thus this its as has was
    lacinia ochrea tibia fascia lorica lamina media criteria
"""
_STAY = frozenset(_UNCHANGED.split())
_HISSING = ("s", "x", "z", "ch", "sh")


def singular(word: str) -> str:
    """The English singular of a folded noun of the trade, known or not; a word that is singular stays.

    >>> [singular(word) for word in ("phyllaries", "perigynia", "apices", "villous")]
    ['phyllary', 'perigynium', 'apex', 'villous']
    """
    if word in _SINGULARS:
        return _SINGULARS[word]
    if word in _STAY:
        return word
    for ending, rule in _RULES:
        if word.endswith(ending) and len(word) >= len(ending) + 1:
            return rule(word)
    return word


def plural(word: str) -> str:
    """The English plural of a folded noun by rule, irregular where English is (`leaves`, `teeth`).

    >>> [plural(word) for word in ("leaf", "phyllary", "branch", "axis")]
    ['leaves', 'phyllaries', 'branches', 'axes']
    """
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if word in _STAY:
        return word
    if word.endswith("y") and word[-2:-1] not in tuple("aeiou"):
        return word[:-1] + "ies"
    if word.endswith("is"):
        return word[:-2] + "es"
    return word + ("es" if word.endswith(_HISSING) else "s")


def plurals(word: str) -> frozenset[str]:
    """All plurals in which a noun of the trade is met: the English one, and that of Latin or Greek.

    >>> sorted(plurals("stigma"))
    ['stigmas', 'stigmata']
    """
    found = {plural(word)}
    for ending, other in _CLASSICAL:
        if word.endswith(ending) and len(word) >= len(ending) + 1:
            found.add(word[: -len(ending)] + other)
            break
    return frozenset(found - {word})


_CLASSICAL = (
    ("ex", "ices"),
    ("yx", "yces"),
    ("ix", "ices"),
    ("men", "mina"),
    ("ma", "mata"),
    ("um", "a"),
    ("us", "i"),
    ("a", "ae"),
)


def _cut(letters: int, ending: str = "") -> Callable[[str], str]:
    return lambda word: word[:-letters] + ending


def _stays(word: str) -> str:
    return word


def _of_ses(word: str) -> str:
    """`bases` to `base`, `paraphyses` to `paraphysis`, `pappuses` to `pappus`."""
    if word.endswith(("sses", "uses", "ises")):
        return word[:-2]
    return word[:-2] + "is" if word.endswith(("yses", "neses", "theses")) else word[:-1]


# The first ending that fits decides.
_RULES: tuple[tuple[str, Callable[[str], str]], ...] = (
    ("ies", _cut(3, "y")),
    ("yces", _cut(3, "x")),
    ("trices", _cut(3, "x")),
    ("dices", _cut(4, "ex")),
    ("pices", _cut(4, "ex")),
    ("tices", _cut(4, "ex")),
    ("axes", _cut(2, "is")),
    ("xes", _cut(2)),
    ("ches", _cut(2)),
    ("shes", _cut(2)),
    ("zes", _cut(1)),
    ("ses", _of_ses),
    ("mina", _cut(3, "en")),
    ("mata", _cut(2)),
    ("ia", _cut(1, "um")),
    ("ae", _cut(1)),
    ("ss", _stays),
    ("us", _stays),
    ("is", _stays),
    ("s", _cut(1)),
    ("i", _cut(1, "us")),
)
