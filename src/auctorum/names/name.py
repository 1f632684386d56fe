"""The parts of a botanical name, as frozen values."""

from __future__ import annotations

from dataclasses import dataclass, replace

from auctorum.problems import AuctorumError


class UnreadableName(AuctorumError, ValueError):
    """Words in which no name, or no author citation, can be read; `why` says what stood in the way."""

    remedy = "write the name as the Code does: `Genus species var. epithet (Author) Author`"

    def __init__(self, text: str, why: str) -> None:
        super().__init__(text, why)
        self.text, self.why = text, why

    def __str__(self) -> str:
        shown = self.text if len(self.text) <= 80 else f"{self.text[:77]}..."
        return f"cannot read `{shown}`: {self.why}"


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

    `authors` are those printed after this epithet where further epithets follow; those at the end of a
    name are the name's own.
    """

    rank: str
    epithet: str
    hybrid: bool = False
    authors: Authors = NO_AUTHORS


@dataclass(frozen=True, slots=True, order=True)
class Name:
    """A scientific name of a plant. Empty string = the part is absent.

    `genus` holds the single word of a name above species rank (genus, family, order), too.
    `divisions` are ranked epithets between genus and species, `lower` those below the species.
    `species_authors` are printed after the species epithet of an autonym or of a longer name, or after
    the genus where a division of it follows; they are no part of what makes two names the same words
    (see `bare`).
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
        lower = tuple(replace(one, authors=NO_AUTHORS) for one in self.lower)
        divisions = tuple(replace(one, authors=NO_AUTHORS) for one in self.divisions)
        return replace(self, authors=NO_AUTHORS, species_authors=NO_AUTHORS, lower=lower, divisions=divisions)

    @property
    def proper(self) -> Name:
        """The name itself: with the final epithet only, what stands between being classification.

        ICN Art. 24.1 (below the species), Art. 21.1 and Rec. 21A (below the genus).
        """
        divisions = () if self.species or self.lower else self.divisions[-1:]
        return replace(self, lower=self.lower[-1:], divisions=divisions)

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

    `qualifiers` are pairs of the word (`cf.`, `aff.`, `?`, `agg.`) and the part it is about (`genus`,
    `division`, `species`, `lower`); `sense` is `auct. non X`, `sensu X` and the like, verbatim; `notes` are
    `nom. nud.`, `pro sp.`, `proles`, a Greek letter before an epithet and the like; `remainder` is what was
    not understood or is no part of the name: year, reference, cultivar, second parent of a hybrid formula.
    """

    name: Name
    qualifiers: tuple[tuple[str, str], ...] = ()
    sense: str = ""
    remainder: str = ""
    notes: str = ""
