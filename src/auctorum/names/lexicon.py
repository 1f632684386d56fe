"""Words that stand around names and are no part of them, and how epithets and authors are told apart.

The lists are common practice, no source, except where an article of the ICN is named.
"""

from __future__ import annotations

from auctorum.names.ranks import read_term
from auctorum.names.tokens import Token, is_latin


def _set(words: str) -> frozenset[str]:
    return frozenset(words.split())


AND = _set("& et and und")
OTHERS = _set("al alii aliis others")
EX, IN = frozenset({"ex"}), frozenset({"in", "apud"})
# Lower-case parts of surnames, before the capital that must follow.
PARTICLES = _set(
    "'t 's af ap auf d da dal de dei del della den der des di do dos du e el la las le los st ten ter to v van vander "
    "vom von y zu zum zur"
)
# After a surname: the son, the elder and the like.
SUFFIXES = _set("f fil filius jr jun junior sr sen senior")

# Open nomenclature; `agg.` is about what stands before it, the others about what follows.
BEFORE = _set("cf cfr conf aff affin nr")
AFTER = _set("agg aggr")
# s. l., s. str. and their like: the sense in which a name is taken, without an author.
SHORT_SENSE = {
    "s": _set("l lat lato latiss latissimo str stricto s ampl ang"),
    "sens": _set("lat lato latiss str ampl"),
    "sensu": _set("lato latiore latissimo stricto strictiore strictissimo amplo"),
}
# What follows one of these is about the sense or the fate of the name (ICN Rec. 47A, 50A-50D).
SENSE = _set("sensu sens sec auct auctt auctorum non nec not vix haud emend emended em excl quoad")
# Notes on status (ICN Rec. 50B-50F).
NOTES = _set("nom nomen comb stat orth orthogr pro ined ms msc mss err typ isonym n")
NEW = _set("nov")
UNNAMED = _set("sp spp spec indet")
UNPUBLISHED_IN = _set("litt lit sched herb adnot obs ms mss notis")
CULTIVATED = _set("cv cultivar hybr hybrid hort")
GROUPS = _set("Group Gp Grp Grex Hybrids Cultivars")
PROSE = _set(
    "a an as at but by collected for from garden has have here is it label near of on or our plant plants seed "
    "seeds see specimen the their there these this to two was were which with without"
)
NOT_EPITHETS = (
    AND | {"al"} | EX | IN | SUFFIXES | BEFORE | AFTER | SENSE | NOTES | NEW | UNNAMED | CULTIVATED | PROSE | {"s", "x"}
)

# Endings by which a capitalised word after a genus is an epithet in title case, not an author
# (`Exemplum Album`): those that Latin epithets often have and surnames seldom; then short epithets in whole.
_EPITHET_ENDINGS = (
    "um", "us", "ii", "ae", "oides", "ensis", "ense", "alis", "aris", "ilis", "estris", "estre", "formis", "forme",
    "ata", "ica", "osa", "aria", "ina", "ula", "ella", "acea", "ifera", "igera", "folia", "flora", "phylla", "carpa",
    "antha", "iana", "issima", "mixta", "escens", "ior", "color", "phora",
    "Alba", "Nigra", "Rubra", "Regia",
)  # fmt: skip
# Surnames that end so, from memory.
_SURNAMES = _set(
    "Linnaeus Linnæus Medikus Fabricius Clusius Retzius Celsius Arduinus Petrus Magnus Krauss Claus Baum Blum Flora "
    "Hirata Murata Nagata Kawata Tabata Barbosa Espinosa Garcia Molina Medina Farina Maria Mariana Viana Paula"
)


def in_title_case(token: Token) -> bool:
    """Whether a capitalised word right after a genus looks like an epithet rather than an author."""
    word = token.text
    return word not in _SURNAMES and word[1:].islower() and len(word) >= 5 and word.endswith(_EPITHET_ENDINGS)


def is_epithet(token: Token, shouting: bool = False, titled: bool = False) -> bool:
    """Whether a token can be an epithet: lower case, or capitals where the text is `shouting` or `titled`."""
    if token.kind != "word" or len(token.bare) < 2 or not is_latin(token.bare):
        return False
    if token.key in NOT_EPITHETS or token.key in PARTICLES or read_term(token.key):
        return False
    if token.is_lower:
        return not token.text.startswith("'")
    if shouting and token.text.isupper():
        return not token.text.endswith(".") and len(token.text) > 2
    return titled and not token.text.endswith(".")


def is_hybrid_sign(token: Token) -> bool:
    """Whether it is × or the letter x in its place."""
    return token.kind == "sign" or token.text in ("x", "X")


def joined_hybrid(token: Token) -> bool:
    """Whether an x before a consonant, where no Latin word has one, stands for × (`xgrandiflorum`)."""
    word = token.bare
    return len(word) > 4 and word[0] in "xX" and word[1:].islower() and word[1] not in "aeiouy" and word[1].isascii()


def is_author_word(token: Token) -> bool:
    """Whether it is a surname, an initial, `hort.` or a piece such as `d'Urville`: anything with a capital."""
    if token.kind != "word" or token.text in GROUPS:
        return False
    first = token.text[0]
    return (first.isalpha() and not first.islower()) or token.bare != token.key or token.text == "hort."


def starts_tail(token: Token, following: Token) -> str:
    """`sense` or `notes` if such a remark begins here, else empty."""
    key = token.key
    if token.kind != "word" or (token.text[0].isupper() and key not in ("auct", "auctt", "sensu")):
        return ""
    if key in SENSE or following.key in SHORT_SENSE.get(key, ()):
        return "sense"
    if key == "p" and following.key == "p":
        return "sense"
    if key == "pro" and following.key in ("parte", "p", "max", "min"):
        return "sense"
    if key in NOTES or (key in ("in", "ex") and following.key in UNPUBLISHED_IN and following.is_lower):
        return "notes"
    new = following.key in NEW and (key in UNNAMED or read_term(key) is not None)
    return "notes" if new or key in ("sp", "spp", "indet") else ""
