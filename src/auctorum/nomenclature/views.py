"""The correct name under a work's own view: its circumscription, rank and place, or those changed in thought."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date

from auctorum.corpus.model import Treatment
from auctorum.names.name import Name
from auctorum.names.ranks import GENUS, SPECIES, UNRANKED, rank_named
from auctorum.nomenclature.code import Code
from auctorum.nomenclature.correct import CorrectName, Outcome, Taxon, correct_name
from auctorum.problems import AuctorumError
from auctorum.records.schema import Status


@dataclass(frozen=True, slots=True)
class Change:
    """What is changed in thought: the rank, the name above (genus or species), types taken in or left out.

    Names are ids; empty and None mean no change.
    """

    rank: str = ""
    under: str | None = None
    include: tuple[str, ...] = ()
    exclude: tuple[str, ...] = ()

    def __bool__(self) -> bool:
        return bool(self.rank or self.under or self.include or self.exclude)


class NoPlace(AuctorumError, ValueError):
    """A rank below the species without a species to place the taxon in, or a species without a genus."""

    def __init__(self, rank: str, needed: str) -> None:
        super().__init__(rank, needed)
        self.rank, self.needed = rank, needed

    def __str__(self) -> str:
        return f"a taxon at the rank of {self.rank} has to stand in a {self.needed}, and it is not said in which"

    @property
    def remedy(self) -> str:  # type: ignore[override]
        return f"name the {self.needed} with --under"


class OtherTypes(AuctorumError, ValueError):
    """A rank whose names have types of another kind: those of genera and above are names, not specimens."""

    remedy = "ask about a name of that group of ranks: species and below, or genus and above"

    def __init__(self, rank: str, name: str) -> None:
        super().__init__(rank, name)
        self.rank, self.name = rank, name

    def __str__(self) -> str:
        return f"a name at the rank of {self.rank} has a type of another kind than {self.name} (Art. 7.1, 10.1)"


class NothingIncluded(AuctorumError, ValueError):
    """A taxon from which every type has been taken out."""

    remedy = "leave in at least one name with --include"

    def __str__(self) -> str:
        return "no type is left in the taxon"


def accepting(code: Code, name: str, work: str) -> Treatment | None:
    """The treatment in a work of the taxon that a name belongs to there; None if the work places it nowhere."""
    treatments = code.corpus.by_work.get(work, ())
    for one in treatments:
        if one.status in (Status.ACCEPTED, Status.DOUBTFUL) and (one.name == name or name in one.synonyms):
            return one
    sunk = (one for one in treatments if one.name == name and one.status is Status.SYNONYM)
    target = next((one.accepted_as for one in sunk if one.accepted_as), None)
    if target is not None:
        return next((one for one in treatments if one.name == target), None)
    group = code.corpus.names[name].group
    kept = [one for one in treatments if one.status in (Status.ACCEPTED, Status.DOUBTFUL)]
    same = (one for one in kept if code.corpus.names[one.name].group == group)
    sinks = (one for one in kept if group in {code.corpus.names[synonym].group for synonym in one.synonyms})
    return next(same, next(sinks, None))


def correct_in(code: Code, treatment: Treatment, change: Change = Change(), *, then: bool = False) -> CorrectName:
    """The correct name of what a treatment accepts, its circumscription and place taken from the work.

    With `then`, only names count that were published by the time of the work.
    """
    names = _own_names(code, treatment)
    until = treatment.work.date.latest if then else None
    above = treatment.parent if change.under is None else change.under
    return _correct(code, names, treatment.rank, treatment.name, above, treatment.work.id, change, until)


def correct_of(code: Code, name: str, change: Change = Change()) -> CorrectName:
    """The correct name of a taxon that holds only the type of a name, unless the change takes in more."""
    entry = code.corpus.names[name]
    published = code.corpus.publishing_act(name)
    above = change.under or (published.above if published is not None else entry.autonym_of)
    return _correct(code, {name}, entry.rank, name, above, None, change, None)


def _own_names(code: Code, treatment: Treatment) -> set[str]:
    """The names on whose types the taxon stands: what it accepts, sinks, and takes in with its parts."""
    return {treatment.name, *treatment.synonyms, *treatment.includes} if treatment.includes else {treatment.name}


def _correct(
    code: Code,
    names: Iterable[str],
    rank: str,
    name: str,
    above: str | None,
    work: str | None,
    change: Change,
    until: date | None,
) -> CorrectName:
    shut_out = {code.corpus.names[one].group for one in change.exclude}
    kept = {one for one in (*names, *change.include) if code.corpus.names[one].group not in shut_out}
    if not kept:
        raise NothingIncluded
    rank = change.rank or rank
    if (rank_named(rank) >= SPECIES) is not (rank_named(code.corpus.names[name].rank) >= SPECIES):
        raise OtherTypes(rank, code.inquiry.called(name))
    asked = Taxon(frozenset(kept), rank)
    return correct_name(
        code, _placed(code, replace(asked, until=until), name, above, work, forced=change.under is not None)
    )


def _placed(code: Code, asked: Taxon, name: str, above: str | None, work: str | None, *, forced: bool) -> Taxon:
    """The question with its genus, and below the species with the correct name of the species."""
    level, entry = rank_named(asked.rank), code.corpus.names[name]
    if level <= GENUS:
        return asked
    over = code.corpus.names[above] if above is not None else None
    if level <= SPECIES:
        genus = over.name.genus if over is not None else entry.name.genus
        return replace(asked, genus=genus, genus_type=_genus_type(code, genus))
    species = _species_above(code, above, work)
    if species is None and entry.name.lower and not forced:
        species = entry.autonym_of or _published_above(code, name)
    if species is None:
        raise NoPlace(asked.rank, "species")
    return _in_species(code, asked, species, work)


def _in_species(code: Code, asked: Taxon, species: str, work: str | None) -> Taxon:
    """The question in a species: under the name that is correct for it in that work, else under its own."""
    found = code.corpus.names[species]
    treatment = accepting(code, species, work) if work is not None else None
    if treatment is not None and rank_named(treatment.rank) == SPECIES:
        correct = correct_in(code, treatment, then=asked.until is not None)
        if correct.name is not None and correct.outcome is not Outcome.UNDETERMINED:
            kept = correct.id or correct.based_on
            return replace(asked, species=correct.name, species_type=code.corpus.names[kept].group if kept else None)
    return replace(asked, species=_as_species(found.name), species_type=found.group)


def _as_species(name: Name) -> Name:
    return replace(name, lower=()) if name.lower else name


def _species_above(code: Code, above: str | None, work: str | None) -> str | None:
    """The species that a name stands in, up through subspecies and the like, as a work places them."""
    seen: set[str] = set()
    here = above
    while here is not None and here not in seen:
        seen.add(here)
        entry = code.corpus.names[here]
        if entry.rank == SPECIES.name:
            return here
        if not entry.name.lower:
            return None
        treatment = accepting(code, here, work) if work is not None else None
        here = (treatment.parent if treatment is not None else None) or entry.autonym_of or _published_above(code, here)
    return None


def _published_above(code: Code, name: str) -> str | None:
    published = code.corpus.publishing_act(name)
    return published.above if published is not None else None


def _genus_type(code: Code, genus: str) -> str | None:
    """The type of a generic name, if the genus is recorded."""
    for name in code.corpus.homonyms.get(genus, ()):
        return code.corpus.names[name].group
    return None


def correct_then(code: Code, treatment: Treatment) -> CorrectName | None:
    """The correct name for a work's own view at its time; None where it has no rank, no place or no protologue."""
    entry = code.corpus.names[treatment.name]
    if treatment.rank == UNRANKED.name or (entry.published_by is None and not entry.is_autonym):
        return None
    try:
        return correct_in(code, treatment, then=True)
    except AuctorumError:
        return None


def is_used(code: Code, treatment: Treatment, found: CorrectName | None) -> bool | None:
    """Whether a work uses the name found to be correct; None where none was found, or priority is open."""
    if found is None or found.outcome is Outcome.UNDETERMINED:
        return None
    same = found.name is not None and found.name.bare == code.corpus.names[treatment.name].name.bare
    return same and found.outcome in (Outcome.NAME, Outcome.AUTONYM)
