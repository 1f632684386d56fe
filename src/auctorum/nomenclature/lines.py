"""Lines of priority: each epithet of a taxon at one rank, from the first name that gave it that rank (ICN Art. 11.4).

Used twice: for what an author ought to have adopted (Art. 52), and for the correct name of a taxon (Art. 11).
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass

from auctorum.corpus.model import Act
from auctorum.corpus.spelling import gender
from auctorum.names.agreement import EpithetKind, declined
from auctorum.names.fold import fold, same_epithet
from auctorum.names.name import Name, Ranked
from auctorum.names.ranks import SPECIES, rank_named
from auctorum.nomenclature.inquiry import Inquiry
from auctorum.nomenclature.judgement import Legitimacy, Validity


@dataclass(frozen=True, slots=True)
class Line:
    """One epithet on one type at one rank. `name` is the first legitimate name with it at that rank.

    `act` is the act that published it; for an autonym the act that established it, and `autonym` holds its words
    (`name` then is the species or genus that it repeats).
    """

    epithet: str
    type: str
    name: str
    act: Act
    autonym: Name | None = None


@dataclass(frozen=True, slots=True)
class Block:
    """Why an epithet can't be used in a place: `key` (homonym, tautonym ...), article, and the name in the way."""

    key: str
    article: str
    reason: str
    by: str | None = None


@dataclass(frozen=True, slots=True)
class Position:
    """Where a name of a rank stands: in a genus, and below the species in a species; both empty above it."""

    rank: str
    genus: str = ""
    species: str = ""

    def name(self, epithet: str) -> Name:
        """The words of a name with that epithet there."""
        if not self.genus:
            return Name(epithet)
        if self.species:
            return Name(self.genus, self.species, (Ranked(self.rank, epithet),))
        if self.rank == "species":
            return Name(self.genus, epithet)
        return Name(self.genus, divisions=(Ranked(self.rank, epithet),))


def position_of(name: Name, rank: str) -> Position:
    """Where a name of a rank stands.

    >>> position_of(Name("Exemplum", "album"), "species")
    Position(rank='species', genus='Exemplum', species='')
    """
    if name.lower:
        return Position(rank, name.genus, name.species)
    if name.species or name.divisions:
        return Position(rank, name.genus)
    return Position(rank)


def names_at_rank(inquiry: Inquiry, names: Iterable[str], rank: str) -> Iterator[str]:
    """The published names among `names` that have the rank."""
    for name in names:
        entry = inquiry.corpus.names[name]
        if entry.published_by is not None and entry.rank == rank:
            yield name


def competing(inquiry: Inquiry, name: str) -> Act | None:
    """The act of a name that may compete for priority: valid and legitimate, as far as is known; None if it may not."""
    act = inquiry.publishing(name)
    if act is None or inquiry.validity.get(act.id) is Validity.NOT_VALID:
        return None
    if inquiry.legitimacy.get(act.id, Legitimacy.UNDETERMINED) is Legitimacy.ILLEGITIMATE:
        return None
    return act


def lines_of(
    inquiry: Inquiry, names: Iterable[str], rank: str, types: Callable[[str], str], extra: Sequence[Line] = ()
) -> list[Line]:
    """Lines of the competing names among `names` at a rank, and of autonyms (`extra`), by date; an autonym stands
    before names of its date (Art. 11.6)."""
    found: list[Line] = []
    for name in names_at_rank(inquiry, names, rank):
        act = competing(inquiry, name)
        if act is not None:
            found.append(Line(inquiry.corpus.names[name].name.final_epithet, types(name), name, act))
    first: list[Line] = []
    kept: dict[tuple[str, str], list[Line]] = {}
    for line in sorted([*extra, *found], key=_by_date):
        same = kept.setdefault((line.type, fold(line.epithet)[:3]), [])
        if not any(same_epithet(line.epithet, other.epithet) for other in same):
            same.append(line)
            first.append(line)
    return first


def _by_date(line: Line) -> tuple[object, ...]:
    date = line.act.work.date
    fossil = line.act.record.fossil  # names on living types go before those on fossils (Art. 11.7)
    return (fossil, date.earliest, date.latest, line.autonym is None, line.act.work.id, line.name)


def blocked(
    inquiry: Inquiry, line: Line, position: Position, taken_by: Callable[[Act], bool], types: Callable[[str], str]
) -> Block | None:
    """Why the epithet of a line may not be used in a position; None if it may.

    `taken_by` says of the act of a like name whether it is early enough to stand in the way.
    """
    if not position.genus:
        return None
    epithet = agreeing_epithet(inquiry, line, position)
    if position.rank == "species" and fold(epithet) == fold(position.genus):
        return Block("tautonym", "23.4", f"{position.genus} {epithet} would be a tautonym")
    if position.species and same_epithet(line.epithet, position.species) and line.autonym is None:
        species = inquiry.of_like_epithet(Name(position.genus, position.species))
        if line.type not in map(types, species):
            return Block("repeats-species-epithet", "27.1", f"it would repeat the epithet of {position.species}")
    wanted = position.name(line.epithet)
    for other in inquiry.of_like_epithet(wanted):
        act = inquiry.publishing(other)
        if act is None or types(other) == line.type or inquiry.validity.get(act.id) is Validity.NOT_VALID:
            continue
        if taken_by(act):
            article = "53.1" if position.rank == "species" else "53.3"
            reason = f"{inquiry.called(other)} ({act.work.year}) has that epithet there on another type"
            return Block("homonym", article, reason, other)
    return None


def agreeing_epithet(inquiry: Inquiry, line: Line, position: Position) -> str:
    """The epithet of a line in the gender of the genus asked about (ICN Art. 23.5), where both genders are known.

    One of unrecorded kind that agrees with its own genus is taken for an adjective.
    """
    if not position.genus or rank_named(position.rank) < SPECIES:
        return line.epithet
    given = line.act.record.epithet
    declension = given.declension if given is not None else ""
    found, before = (
        gender(position.genus, inquiry.genders),
        gender(inquiry.corpus.names[line.name].name.genus, inquiry.genders),
    )
    if found is None or before is None or (given is not None and given.kind not in (None, EpithetKind.ADJECTIVE)):
        return line.epithet
    if declined(line.epithet, before.gender, declension) != line.epithet:
        return line.epithet  # it does not follow the gender of its own genus: a noun
    return declined(line.epithet, found.gender, declension) or line.epithet
