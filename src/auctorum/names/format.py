"""Names and author citations written out as the Code prints them (ICN Art. 22-24, 46, H.3; Rec. 46C)."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator

from auctorum.names.fold import plain_letters
from auctorum.names.name import Authors, Credit, Name, Ranked, Team
from auctorum.names.ranks import UNRANKED, rank_named

Run = tuple[str, bool]
HYBRID = "×"


def format_team(team: Team) -> str:
    """Persons with `&` before the last, or `& al.` at the end; empty for nobody.

    >>> format_team(Team(("Orrin", "Veldt", "Marsh")))
    'Orrin, Veldt & Marsh'
    """
    if team.and_others:
        return f"{', '.join(team.members)} & al."
    *first, last = team.members or ("",)
    return f"{', '.join(first)} & {last}" if first else last


def format_credit(credit: Credit) -> str:
    """One side of a citation: `A ex B in C`."""
    before = f"{format_team(credit.ex_before)} ex " if credit.ex_before else ""
    within = f" in {format_team(credit.within)}" if credit.within else ""
    return f"{before}{format_team(credit.team)}{within}"


def format_authors(authors: Authors) -> str:
    """`(Basionym authors) Authors`; empty if there are none.

    >>> format_authors(Authors(Credit(Team(("Orrin",))), Credit(Team(("Veldt",)), ex_before=Team(("Marsh",)))))
    '(Orrin) Marsh ex Veldt'
    """
    sides = (f"({format_credit(authors.basionym)})" if authors.basionym else "", format_credit(authors.own))
    return " ".join(side for side in sides if side)


def format_name(name: Name, authors: bool = True) -> str:
    """The name as the Code prints it, with all ranks it was given; without any author if `authors` is false.

    An autonym has the authors of its species (or genus) after the species (genus), none at the end
    (ICN Art. 22.1, 26.1). The hybrid sign stands directly before the word (Art. H.3).
    """
    return "".join(text for text, _ in parts(name if authors else name.bare))


def parts(name: Name) -> tuple[Run, ...]:
    """The text of `format_name` in runs, each with whether it is Latin and so printed in italics.

    Rank terms, authors, brackets and the hybrid sign stand upright.

    >>> parts(Name("Exemplum", "album", species_hybrid=True))
    (('Exemplum ', True), ('×', False), ('album', True))
    """
    runs: list[tuple[str, bool]] = []
    for text, latin in _pieces(name):
        # A run takes the space after it along, so that runs alternate.
        if runs and runs[-1][1] == latin:
            runs[-1] = (runs[-1][0] + text, latin)
        elif text.strip() or not runs:
            runs.append((text, latin))
        else:
            runs[-1] = (runs[-1][0] + text, runs[-1][1])
    return tuple(runs)


def _pieces(name: Name) -> Iterator[Run]:
    yield from _latin(name.genus, name.genus_hybrid)
    divided = bool(name.divisions) and not name.species
    if divided:
        yield from _citation(name.species_authors)
        yield from _ranked(name.divisions)
    elif name.divisions:
        yield " (", False
        yield from _ranked(name.divisions, lead="")
        yield ")", False
    if name.species:
        yield " ", False
        yield from _latin(name.species, name.species_hybrid)
    if name.lower:
        if not divided:
            yield from _citation(name.species_authors)
        yield from _ranked(name.lower)
    if name.is_autonym:
        return
    yield from _citation(name.authors)


def _latin(word: str, hybrid: bool) -> Iterator[Run]:
    if hybrid:
        yield HYBRID, False
    yield word, True


def _citation(authors: Authors) -> Iterator[Run]:
    if authors:
        yield f" {format_authors(authors)}", False


def _ranked(epithets: Iterable[Ranked], lead: str = " ") -> Iterator[Run]:
    for one in epithets:
        rank = rank_named(one.rank)
        marked = one.hybrid and rank is not UNRANKED
        yield f"{lead}{'notho' if marked else ''}{rank.term} ", False
        yield from _latin(one.epithet, one.hybrid and not marked)
        yield from _citation(one.authors)
        lead = " "


def words(name: Name) -> str:
    """The key by which records refer to a name: its words with canonical rank terms, final epithet only.

    Authors, hybrid signs and `notho-` are left out, since they make no other name (ICN Art. 24.1, H.3.3).

    >>> words(Name("Exemplum", "album", (Ranked("subspecies", "altum"), Ranked("variety", "longum"))))
    'Exemplum album var. longum'
    """
    # `name.proper` in words, without making it: this is asked of every name many times.
    above = f"{name.genus} {name.species}" if name.species else name.genus
    last = name.lower[-1:] or (() if name.species else name.divisions[-1:])
    return f"{above} {rank_named(last[0].rank).term} {last[0].epithet}" if last else above


_NOT_SLUG = re.compile(r"[^a-z0-9]+")
# File names that some systems keep for devices.
_RESERVED = frozenset({"con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))})


def slug(name: Name) -> str:
    """The words in ASCII, lower case, joined by hyphens: never empty, safe as the name of a file.

    >>> slug(Name("Exemplum", "novae-mülleri", (Ranked("variety", "longum"),)))
    'exemplum-novae-muelleri-var-longum'
    """
    letters = plain_letters(words(name))
    ascii_only = "".join(f"u{ord(one):x}" if ord(one) > 127 and one.isalnum() else one for one in letters)
    made = _NOT_SLUG.sub("-", ascii_only).strip("-")
    return f"{made}-name" if not made or made in _RESERVED else made
