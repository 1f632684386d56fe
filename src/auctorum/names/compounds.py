"""Adjectival epithets of two Latin words, as far as their spelling decides them (ICN Art. 60.10, Shenzhen 2018).

The word in front is the stem of its genitive with the linking vowel -i- before a consonant: `quercifolius`. What the
letters alone do not tell (Greek or Latin, which word was meant) is left as printed.
"""

from __future__ import annotations

# Last words that begin with a consonant and are found at the end of many adjectives.
_FINALS = ("foli", "flor", "form", "frond", "caul")
_LATIN_GENITIVES = ("ae", "us", "is", "i")
_GREEK_GENITIVES = ("eos", "ous", "ou", "os", "es", "as")

# -ae- tells caricaefolius (Carica) from cariciformis (Carex): Art. 60.10 Ex., from memory.
_DISTINGUISHED = frozenset({"caric"})
# Of Napaea, printed so (Art. 60.10 Ex., from memory).
_MISSPELT = {"nape": "napae"}
# Stems that themselves end in -ae, from words in -aea: spiraeifolius.
_STEMS_IN_AE = frozenset({"spir", "alth", "nymph", "nap", "azal"})
# Stems that end in i, of genera in -ia and -ium, which lack it in `aquilegifolius` (the first is Art. 60.10 Ex., from
# memory; the others common practice, from memory).
_STEMS = """
    aquileg
    acac all aristoloch artemis asplen astrant begon bignon cass chenopod cochlear delphin epilob eryng fumar gaulther
    geran kalm linar lobel lycopod magnol mahon parietar polemon polypod pulmonar robin salv saponar
    scutellar til vaccin vic
"""
_STEMS_IN_I = frozenset(_STEMS.split())


def compounded(epithet: str, first_genitive: str = "") -> str:
    """The compound adjective with its proper linking vowel, or as it is where nothing decides it (ICN Art. 60.10).

    `first_genitive` is the word in front in the genitive singular, transcribed if Greek, where that is recorded.

    >>> compounded("aquilegifolia"), compounded("salicaefolius"), compounded("caricaefolia")
    ('aquilegiifolia', 'salicifolius', 'caricaefolia')
    >>> compounded("quercofolia", "quercus")
    'quercifolia'
    """
    at, final = _last_word(epithet)
    if not final:
        return epithet
    front = epithet[:at]
    if first_genitive:
        return _combining(first_genitive) + epithet[at:]
    return _front(front) + epithet[at:]


def _last_word(epithet: str) -> tuple[int, str]:
    """Where the last word begins, and it; 0 and nothing, if none is known or too little stands before it."""
    found = [(epithet.rfind(final), final) for final in _FINALS]
    at, final = max(found)
    return (at, final) if at > 3 else (0, "")


def _combining(genitive: str) -> str:
    for endings, link in ((_LATIN_GENITIVES, "i"), (_GREEK_GENITIVES, "o")):
        for ending in endings:
            if genitive.endswith(ending):
                return genitive.removesuffix(ending) + link
    return genitive


def _front(front: str) -> str:
    if front.endswith("ae"):
        stem = front.removesuffix("ae")
        if stem in _DISTINGUISHED or len(stem) < 3:
            return front
        return f"{front}i" if stem in _STEMS_IN_AE else f"{_MISSPELT.get(stem, stem)}i"
    stem = front.removesuffix("i")
    return f"{stem}ii" if stem != front and stem in _STEMS_IN_I else front
