"""The parts of a botanical name, as frozen values."""

from __future__ import annotations

from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True, order=True)
class Team:
    """Persons who stand together in a citation, in their order; `and_others` for `& al.`"""

    members: tuple[str, ...] = ()
    and_others: bool = False

    def __bool__(self) -> bool:
        return bool(self.members)


@dataclass(frozen=True, slots=True, order=True)
class Credit:
    """One side of a citation: `ex_before` is who stood before `ex`, `within` who stands after `in`."""

    team: Team = Team()
    ex_before: Team = Team()
    within: Team = Team()

    def __bool__(self) -> bool:
        return bool(self.team)


@dataclass(frozen=True, slots=True, order=True)
class Authors:
    """Author citation: of the basionym (in parentheses) and of the name itself. Empty = none given."""

    basionym: Credit = Credit()
    own: Credit = Credit()

    def __bool__(self) -> bool:
        return bool(self.basionym) or bool(self.own)


NO_AUTHORS = Authors()


@dataclass(frozen=True, slots=True, order=True)
class Ranked:
    """An epithet with its connecting term's rank in full (`variety`, `section`); hybrid for `nothovar.`

    `authors` are those printed in the middle of a longer name (`Genus species Auth. var. species`).
    """

    rank: str
    epithet: str
    hybrid: bool = False


@dataclass(frozen=True, slots=True, order=True)
class Name:
    """A scientific name of a plant. Empty string = the part is absent.

    `genus` holds the single word of a name above species rank (genus, family, order), too.
    `divisions` are ranked epithets between genus and species, `lower` those below the species.
    `species_authors` are printed after the species epithet of an autonym or of a longer name; they
    are no part of what makes two names the same words (see `bare`).
    """

    genus: str
    species: str = ""
    lower: tuple[Ranked, ...] = ()
    divisions: tuple[Ranked, ...] = ()
    genus_hybrid: bool = False
    species_hybrid: bool = False
    authors: Authors = NO_AUTHORS
    species_authors: Authors = NO_AUTHORS

    @property
    def bare(self) -> Name:
        """The same words without any authors."""
        return replace(self, authors=NO_AUTHORS, species_authors=NO_AUTHORS)

    @property
    def final_epithet(self) -> str:
        """The last word of the name: what moves with it from rank to rank."""
        if self.lower:
            return self.lower[-1].epithet
        if self.species:
            return self.species
        return self.divisions[-1].epithet if self.divisions else self.genus

    @property
    def is_autonym(self) -> bool:
        """Whether the final epithet repeats the species epithet (ICN Art. 26.1) or the genus (Art. 22.1)."""
        if self.lower:
            return self.lower[-1].epithet == self.species
        return bool(self.divisions) and not self.species and self.divisions[-1].epithet == self.genus


@dataclass(frozen=True, slots=True)
class Usage:
    """A name as found in words: what surrounds it is kept apart, and nothing is lost.

    `qualifiers` are pairs of the word (`cf.`, `aff.`, `?`) and the part it stands before
    (`genus`, `species`, `lower`); `sense` is `auct. non X`, `sensu X` and the like, verbatim;
    `remainder` is what was not understood.
    """

    name: Name
    qualifiers: tuple[tuple[str, str], ...] = ()
    sense: str = ""
    remainder: str = ""
