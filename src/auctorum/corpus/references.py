"""References by words while records are linked: what each refers to, or a problem."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from auctorum.corpus.resolve import NameTable, UnknownName
from auctorum.names.format import slug, words
from auctorum.names.name import Name
from auctorum.names.parse import parse_name
from auctorum.problems import AuctorumError, Place, Problem, Severity


class References:
    """Looks names up for one run of linking, gathers problems, and enters names that no act publishes.

    `autonyms` maps each autonym met to its species or genus; `unpublished` holds names without protologue.
    """

    def __init__(self, table: NameTable, problems: list[Problem]) -> None:
        self.table = table
        self.problems = problems
        self.autonyms: dict[str, str] = {}
        self.unpublished: list[str] = []

    def resolved(self, said: str, work: str | None, place: Place, *within: str | int) -> str | None:
        """Id of the name meant, an autonym made at need; None and a problem where there is none."""
        try:
            return self.table.resolve(said, work)
        except UnknownName as error:
            autonym = self._autonym(parse_name(said))
            if autonym is None:
                self.problems.append(error.at(place, *within))
            return autonym
        except AuctorumError as error:
            self.problems.append(error.at(place, *within))
            return None

    def all_resolved(self, said: Sequence[str], work: str | None, place: Place, key: str) -> tuple[str, ...]:
        """Ids of the names in a list that can be resolved."""
        return _known(self.resolved(name, work, place, key, number) for number, name in enumerate(said))

    def used(self, said: str, work: str, place: Place, *within: str | int) -> str | None:
        """As `resolved`, for a name that a work keeps: one never published here is entered, with a warning."""
        try:
            return self.table.resolve(said, work)
        except UnknownName as error:
            name = parse_name(said)  # read alone already, before it was found to be unknown
            autonym = self._autonym(name)
            if autonym is not None:
                return autonym
            near = f"nearest: {'; '.join(error.near)}" if error.near else "nothing like it is known"
            what = f"no act publishes the name `{said}`: a name without protologue"
            remedy = f"add the act that published it, or correct the spelling; {near}"
            self.problems.append(Problem(place, what, remedy, Severity.WARNING, within))
            return self.without_protologue(name)
        except AuctorumError as error:
            self.problems.append(error.at(place, *within))
            return None

    def all_used(self, said: Sequence[str], work: str, place: Place, key: str) -> tuple[str, ...]:
        """Ids of the names in a list that a work keeps."""
        return _known(self.used(name, work, place, key, number) for number, name in enumerate(said))

    def _autonym(self, name: Name) -> str | None:
        """Id of the autonym, entered now if its species or genus is known (ICN Art. 22.1, 26.1); else None."""
        if not name.is_autonym:
            return None
        above = replace(name.bare, lower=()) if name.lower else Name(name.genus)
        try:
            species = self.table.resolve_name(above, words(above))
        except AuctorumError:
            return None
        id_ = slug(name)
        if id_ not in self.autonyms:
            self.autonyms[id_] = species
            self.table.add(id_, replace(name.bare, species_authors=self.table.name(species).authors))
        return id_

    def without_protologue(self, name: Name) -> str:
        """Id of a name that no act publishes, entered now."""
        id_ = slug(name)
        if id_ not in self.unpublished:
            self.unpublished.append(id_)
            self.table.add(id_, name)
        return id_


def _known(found: Iterable[str | None]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(id_ for id_ in found if id_ is not None))
