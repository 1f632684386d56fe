"""The forms of an adjective in Latin, the Romance languages and German; folded, as a description is read.

Source: W. T. Stearn, Botanical Latin, the declension of adjectives, from memory.
"""

from __future__ import annotations

from auctorum.characters.tokens import folded

_FIRST_AND_SECOND = "us a um i ae o am os as is orum arum"
_LATIN = (
    ("oides", "oides oidis oidi oidem oide oidea oidium oidibus"),
    ("ior", "ior ius ioris iori iorem iore iores iora iorum ioribus"),
    ("or", "or oris ori orem ore ores oria orum orium oribus"),
    ("ex", "ex icis ici icem ice ices icia icium icibus"),
    ("ax", "ax acis aci acem ace aces acia acium acibus"),
    ("ns", "ns ntis nti ntem nte ntes ntia ntium ntibus"),
    ("es", "es etis eti etem ete etes etia etium etibus"),
    ("is", "is e i em es ia ium ibus"),
    ("us", _FIRST_AND_SECOND),
)
# Those in -er keep the e (asper, aspera) or lose it (glaber, glabra); forms of the other sort do not occur.
_LATIN_ER = (
    "er",
    *("er" + end for end in _FIRST_AND_SECOND.split()),
    *("r" + end for end in _FIRST_AND_SECOND.split()),
)
_ROMANCE = (
    ("eux", "eux euse euses"),
    ("ão", "ao a aos oes as"),
    ("co", "co ca cos cas chi che ci ce"),
    ("o", "o a os as i e"),
    ("é", "e ee es ees"),
    ("aux", "aux"),
    ("al", "al ale ales aux ais ali"),
    ("il", "il ile iles eis is"),
    ("el", "el elle els elles eles eis"),
    ("l", "l les is le"),
    ("et", "et ette ets ettes"),
    ("anc", "anc anche ancs anches"),
    ("oux", "oux ousse ousses"),
    ("m", "m ns"),
    ("z", "z ces"),
    ("s", "s se ses"),
    ("e", "e es i"),
)
_GERMAN = ("", "e", "em", "en", "er", "es")

# The end of an English word of the trade, and the ends of the words of other languages that it was made from.
_COGNATES = (
    ("ate", "atus", "ado", "é"),
    ("ose", "osus", "oso", "eux"),
    ("eous", "eus", "eo"),
    ("petalous", "petalus", "petalo"),
    ("gynous", "gynus", "gino"),
    ("ous", "osus", "oso", "eux"),
    ("ical", "icus", "ico", "ique"),
    ("form", "formis", "forme"),
    ("oid", "oideus", "oides", "oide"),
    ("ute", "utus", "uto"),
    ("use", "usus", "uso"),
    ("ete", "etus", "eto"),
    ("ite", "itus", "ito"),
    ("ent", "ens", "ente", "ent"),
    ("ant", "ans", "ante", "ant"),
    ("ile", "ilis", "il"),
    ("ine", "inus", "ino", "in"),
    ("ive", "ivus", "ivo"),
    ("ect", "ectus", "ecto", "eto"),
    ("ar", "aris", "ar", "aire"),
    ("al", "alis", "al"),
    ("id", "idus", "ido", "ide"),
    ("ic", "icus", "ico", "ique"),
)
_SIMPLER = (
    ("ph", "f"),
    ("th", "t"),
    ("rh", "r"),
    ("ch", "c"),
    ("y", "i"),
    ("ae", "e"),
    ("oe", "e"),
    *((sign * 2, sign) for sign in "bcdfglmnpt"),
)
_SHORTEST_COGNATE = 5


def latin_forms(lemma: str) -> tuple[str, ...]:
    """All genders, cases and numbers of an adjective, by the end of its nominative; itself if it goes by no rule.

    >>> latin_forms("glaber")[:2], "viridibus" in latin_forms("viridis")
    (('glaber', 'glaberus'), True)
    """
    if lemma.endswith("er"):
        return (lemma, *(lemma[:-2] + end for end in _LATIN_ER[1:]))
    for nominative, ends in _LATIN:
        if lemma.endswith(nominative):
            return tuple(lemma.removesuffix(nominative) + end for end in ends.split())
    return (lemma,)


def latin_combining(lemma: str) -> str:
    """The adjective as the first half of a compound: `ovato-` of ovatus, `lineari-` of linearis; itself if none.

    >>> latin_combining("ovatus"), latin_combining("niger"), latin_combining("pubescens")
    ('ovato', 'nigro', 'pubescenti')
    """
    joined = {"us": "o", "is": "i", "ns": "nti", "ex": "ici", "es": "eti"}
    if lemma[-2:] == "er":
        return lemma[:-2] + "ro"
    return lemma[:-2] + joined[lemma[-2:]] if lemma[-2:] in joined else lemma


def romance_forms(lemma: str) -> tuple[str, ...]:
    """Masculine and feminine, singular and plural, in the language that the end of the word may belong to.

    >>> romance_forms("denté"), romance_forms("azul")
    (('dente', 'dentee', 'dentes', 'dentees'), ('azul', 'azules', 'azuis', 'azule'))
    """
    for masculine, ends in _ROMANCE:
        if lemma.endswith(masculine):
            return tuple(folded(lemma.removesuffix(masculine) + end) for end in ends.split())
    return tuple(folded(lemma) + end for end in ("", "s", "e", "es"))


def german_forms(lemma: str) -> tuple[str, ...]:
    """The word as it stands after its noun, and with the five endings that it takes before one.

    >>> german_forms("spitz")
    ('spitz', 'spitze', 'spitzem', 'spitzen', 'spitzer', 'spitzes')
    """
    return tuple(folded(lemma) + end for end in _GERMAN)


def latin_cognates(english: str) -> tuple[str, ...]:
    """The Latin nominatives that an English word of the trade is regularly made from.

    >>> latin_cognates("tomentose"), latin_cognates("green")
    (('tomentosus',), ())
    """
    return tuple(word for word in _cognates(english) if word.endswith(("us", "is", "ns", "oides")))


def romance_cognates(english: str) -> tuple[str, ...]:
    """The Spanish, Portuguese, Italian and French words of the same origin, with Spanish spelling beside the Latin.

    >>> romance_cognates("spathulate")[:2]
    ('spathulado', 'espatulado')
    """
    found: list[str] = []
    for word in _cognates(english):
        if not word.endswith(("us", "is", "ns", "oides")):
            found += [word, _simpler(word)] if _simpler(word) != word else [word]
    return tuple(found)


def _cognates(english: str) -> tuple[str, ...]:
    if len(english) < _SHORTEST_COGNATE or not english.isalpha():
        return ()
    for end, *others in _COGNATES:
        if english.endswith(end):
            return tuple(english.removesuffix(end) + other for other in others)
    return ()


def _simpler(word: str) -> str:
    for learned, plain in _SIMPLER:
        word = word.replace(learned, plain)
    return "e" + word if word[0] == "s" and word[1] in "cptq" else word
