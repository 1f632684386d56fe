"""Ranks in order, with the connecting terms that literature prints for them (ICN Art. 3-5, Rec. 5A, H.12).

The Code gives the ranks and their order (Art. 3, 4) and recommends abbreviations for some (Rec. 5A); the other
variants are common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from auctorum.names.name import Name
from auctorum.names.nearest import nearest
from auctorum.problems import AuctorumError


class UnknownRank(AuctorumError, LookupError):
    """Words that name no rank; `near` are the ranks most like them."""

    def __init__(self, said: str, near: tuple[str, ...]) -> None:
        super().__init__(said, near)
        self.said, self.near = said, near

    def __str__(self) -> str:
        return f"no rank `{self.said}`"

    @property
    def remedy(self) -> str:  # type: ignore[override]
        return f"nearest: {', '.join(self.near)}" if self.near else "name a rank of the Code, such as variety or form"


@dataclass(frozen=True, slots=True, order=True)
class Rank:
    """One rank: `variety`, printed `var.`; a lower rank has a higher level, so that genus < species.

    >>> rank_named("Varietas") > rank_named("ssp.")
    True
    """

    name: str = field(compare=False)
    term: str = field(compare=False)
    level: int


# Rank, canonical term, and further forms, without full stop; from the top.
_TABLE = (
    ("kingdom", "regn.", "regnum"),
    ("subkingdom", "subregn.", "subregnum"),
    ("phylum", "phyl.", "division div divisio"),
    ("subphylum", "subphyl.", "subdivision subdiv subdivisio"),
    ("class", "cl.", "classis"),
    ("subclass", "subcl.", "subclassis"),
    ("order", "ord.", "ordo"),
    ("suborder", "subord.", "subordo"),
    ("family", "fam.", "familia"),
    ("subfamily", "subfam.", "subfamilia"),
    ("tribe", "tr.", "trib tribus"),
    ("subtribe", "subtr.", "subtrib subtribus"),
    ("genus", "gen.", "g"),
    ("subgenus", "subg.", "subgen subgn sg"),
    ("section", "sect.", "sectio"),
    ("subsection", "subsect.", "subsectio"),
    ("series", "ser.", ""),
    ("subseries", "subser.", ""),
    ("species", "sp.", "spec"),
    ("subspecies", "subsp.", "ssp subspec sbsp sspec"),
    ("variety", "var.", "v varietas varr vr"),
    ("subvariety", "subvar.", "sv subvarietas svar"),
    ("form", "f.", "fo fm forma"),
    ("subform", "subf.", "sf subforma subfo subfm"),
    # Ranks of the past and marks without one stand for no rank of the Code.
    ("unranked", "[unranked]", "prol proles lus lusus stirps monstr race rasse convar mut mutatio subproles modif"),
)
RANKS: tuple[Rank, ...] = tuple(Rank(name, term, 10 * level) for level, (name, term, _) in enumerate(_TABLE, 1))
_BY_NAME = {rank.name: rank for rank in RANKS}
UNRANKED = _BY_NAME["unranked"]
GENUS, SPECIES = _BY_NAME["genus"], _BY_NAME["species"]


def _forms() -> dict[str, tuple[Rank, bool]]:
    plain = {
        form: rank
        for rank, (name, term, more) in zip(RANKS, _TABLE, strict=True)
        for form in (name, term.strip("[.]"), *more.split())
    }
    forms = {form: (rank, False) for form, rank in plain.items()}
    for form, rank in plain.items():
        forms[f"notho{form}"] = (rank, True)
    # The nothomorph of older Codes ranks as a variety (ICN Art. H.12.2, from memory).
    for form in ("nothomorph", "nothomorpha", "nothom", "nm"):
        forms[form] = (_BY_NAME["variety"], True)
    return forms | {f"n{form}": (_BY_NAME[name], True) for form, name in (("ssp", "subspecies"), ("var", "variety"))}


_FORMS = _forms()


def read_term(word: str) -> tuple[Rank, bool] | None:
    """Rank of a connecting term and whether it marks a hybrid (`nothovar.`); None if it is no term.

    >>> read_term("nothosubsp.") == (rank_named("subspecies"), True)
    True
    """
    return _FORMS.get(word.casefold().strip("[.] "))


def rank_of_term(word: str) -> Rank | None:
    """Rank of a connecting term as printed, whatever its variant; None if it is no term.

    >>> rank_of_term("ssp.").name, rank_of_term("album")
    ('subspecies', None)
    """
    found = read_term(word)
    return found[0] if found else None


def rank_named(words: str) -> Rank:
    """Rank of an English or Latin name of a rank, or of its term; raises UnknownRank with the nearest.

    >>> rank_named("Varietas").term
    'var.'
    """
    rank = rank_of_term(words)
    if rank is None:
        raise UnknownRank(words, nearest(words, _BY_NAME, limit=2, cutoff=50))
    return rank


# Endings of names above genus (ICN Art. 16.3, 17.1, 18.1, 19.1, 19.3), the longer before the shorter they end in.
_ENDINGS = {
    "phytina": "subphylum", "mycotina": "subphylum", "phyta": "phylum", "mycota": "phylum", "opsida": "class",
    "phyceae": "class", "mycetes": "class", "phycidae": "subclass", "mycetidae": "subclass", "idae": "subclass",
    "ineae": "suborder", "ales": "order", "aceae": "family", "oideae": "subfamily", "eae": "tribe",
    "inae": "subtribe",
}  # fmt: skip


def rank_by_ending(word: str) -> Rank | None:
    """Rank above genus that the standard ending of a name tells (ICN Art. 37.2); None if it tells none.

    >>> rank_by_ending("Exemploideae").name
    'subfamily'
    """
    return next((_BY_NAME[rank] for ending, rank in _ENDINGS.items() if word.endswith(ending) and word != ending), None)


def implied_rank(name: Name) -> str:
    """Rank that the form of the name tells: that of its lowest ranked epithet, else species or genus.

    A single word in `-aceae` is a family (ICN Art. 18.1); any other single word counts as a genus.
    """
    if name.lower:
        return name.lower[-1].rank
    if name.species:
        return SPECIES.name
    if name.divisions:
        return name.divisions[-1].rank
    return "family" if name.genus.endswith("aceae") else GENUS.name
