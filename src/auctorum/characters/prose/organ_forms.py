"""Forms of nouns in Latin, of nouns and adjectives in living languages: from that of a dictionary to all others.

A form too many does no harm (it is looked up, never shown); a form wanting does. Latin: Stearn, Botanical Latin, ch. 6
to 8 (declensions, from memory); the others: common grammar. All forms are folded: no case, no accents.
"""

from __future__ import annotations

from auctorum.characters.tokens import folded

# Endings on the stem of the genitive, by declension: genitive, dative, accusative, ablative; then the plural.
_FIRST = "ae am a as arum is"
_SECOND = "i o um os orum is"
_SECOND_NEUTER = "i o um a orum is"
_THIRD = "is i em e es um ibus"
_THIRD_I = "is i em im e es um ium ibus"
_THIRD_NEUTER = "is i e a um ibus"
_THIRD_NEUTER_I = "is i ia ium ibus"
_FOURTH = "us ui um u uum ibus"
_FOURTH_NEUTER = "us u ua uum ibus"
_FIFTH = "ei em e es erum ebus"
_NEUTER_ENDINGS = ("men", "ma", "us", "ur", "ut", "os")


def latin_noun(entry: str) -> frozenset[str]:
    """All cases of a Latin noun given as nominative and genitive, `flos/floris`.

    Without a genitive, -a is of the first declension, -us and -um of the second; -is and -es (`caulis`) of the third,
    with a genitive like the nominative. A neuter of the third is known by its ending; `os/oris!` marks one that is not.

    >>> sorted(latin_noun("apex/apicis"))
    ['apex', 'apice', 'apicem', 'apices', 'apici', 'apicibus', 'apicis', 'apicum']
    """
    marked, neuter = entry.rstrip("!"), entry.endswith("!")
    nominative, _, genitive = marked.partition("/")
    genitive = genitive or _genitive(nominative)
    if genitive.endswith("ae"):
        stem, endings = genitive[:-2], _FIRST
    elif genitive.endswith("ei") and nominative.endswith("es"):
        stem, endings = genitive[:-2], _FIFTH
    elif genitive.endswith("i"):
        stem, endings = genitive[:-1], _SECOND_NEUTER if nominative.endswith("um") else _SECOND
    elif genitive.endswith("us"):
        stem, endings = genitive[:-2], _FOURTH_NEUTER if nominative.endswith("u") else _FOURTH
    else:
        stem, endings = genitive[:-2], _third(nominative, genitive, neuter)
    return frozenset({nominative, *(stem + ending for ending in endings.split())})


def _genitive(nominative: str) -> str:
    if nominative.endswith("a"):
        return nominative + "e"
    if nominative.endswith(("us", "um")):
        return nominative[:-2] + "i"
    return nominative[:-2] + "is"  # caulis, rupes


def _third(nominative: str, genitive: str, neuter: bool) -> str:
    """An i-stem has as many syllables in both cases (`caulis`), or two consonants before the ending (`dens/dentis`)."""
    if nominative.endswith(("ar", "e")):
        return _THIRD_NEUTER_I  # calcar
    if neuter or (nominative.endswith(_NEUTER_ENDINGS) and nominative != "flos"):
        return _THIRD_NEUTER
    stem = genitive[:-2]
    alike = len(nominative) == len(genitive) and nominative.endswith(("is", "es"))
    clustered = len(stem) > 2 and not {stem[-1], stem[-2]} & set("aeiouy")
    return _THIRD_I if alike or clustered else _THIRD


def romance(language: str, entry: str) -> frozenset[str]:
    """Singular and plural of a Spanish (es), Portuguese (pt), French (fr) or Italian (it) noun or adjective.

    An adjective in -o gives its feminine, a French one is written with it: `supérieur/e`.

    >>> sorted(romance("es", "nervación") | romance("fr", "rameau") | romance("pt", "ovário"))
    ['nervacion', 'nervaciones', 'ovario', 'ovarios', 'rameau', 'rameaux']
    """
    word, _, feminine = entry.casefold().partition("/")
    stems = [word, word + feminine] if language == "fr" and feminine else [word, feminine] if feminine else [word]
    return frozenset(folded(form) for stem in stems for form in (stem, *_PLURAL[language](stem)))


def _spanish(word: str) -> tuple[str, ...]:
    if word.endswith("z"):
        return (word[:-1] + "ces",)
    if word.endswith("s"):
        return (word, word + "es")
    return (word + "s",) if word[-1] in "aeiouáéó" else (word + "es",)


def _portuguese(word: str) -> tuple[str, ...]:
    if word.endswith("ão"):
        return tuple(word[:-2] + ending for ending in ("ões", "ãos", "ães"))
    if word.endswith("il"):
        return (word[:-1] + "s", word[:-2] + "eis")
    if word.endswith("l"):
        return (word[:-1] + "is",)
    if word.endswith("m"):
        return (word[:-1] + "ns",)
    if word.endswith("s"):
        return (word,)
    return (word + "es",) if word[-1] in "rzn" else (word + "s",)


def _french(word: str) -> tuple[str, ...]:
    if word.endswith(("s", "x", "z")):
        return (word,)
    if word.endswith("al"):
        return (word[:-1] + "ux", word + "s")
    return (word + "x",) if word.endswith(("au", "eu")) else (word + "s",)


def _italian(word: str) -> tuple[str, ...]:
    if word.endswith(("ca", "ga")):
        return (word[:-1] + "he",)
    if word.endswith(("co", "go")):
        return (word[:-1] + "hi", word[:-1] + "i")
    if word.endswith("cia"):
        return (word[:-2] + "e", word[:-1] + "e")
    if word.endswith("io"):
        return (word[:-1],)
    if word.endswith("a"):
        return (word[:-1] + "e", word[:-1] + "i")
    return (word[:-1] + "i",) if word[-1] in "oe" else (word,)


_PLURAL = {"es": _spanish, "pt": _portuguese, "fr": _french, "it": _italian}


def german_noun(entry: str) -> frozenset[str]:
    """All cases of a German noun given as singular and plural, `Blatt/Blätter`; a plural like the singular is left out.

    Umlauts are also met as ae, oe, ue.

    >>> sorted(german_noun("Kelch/Kelche"))
    ['kelch', 'kelche', 'kelchen', 'kelches', 'kelchs']
    """
    one, _, several = entry.casefold().partition("/")
    several = several or one
    forms = {one, several}
    if not one.endswith(("e", "s")):
        forms |= {one + "s", one + "es"} if not one.endswith(("en", "er", "el")) else {one + "s"}
    if not several.endswith(("n", "s")):
        forms.add(several + "n")
    return _spellings(forms)


def german_adjective(stem: str) -> frozenset[str]:
    """All endings of a German adjective given as its stem, `unter`, umlauts also as ae, oe, ue.

    >>> sorted(german_adjective("unter"))
    ['untere', 'unterem', 'unteren', 'unterer', 'unteres']
    """
    return _spellings({stem.casefold() + ending for ending in ("e", "em", "en", "er", "es")})


_OPENED = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue"})


def _spellings(forms: set[str]) -> frozenset[str]:
    return frozenset(folded(form) for form in forms) | frozenset(folded(form.translate(_OPENED)) for form in forms)
