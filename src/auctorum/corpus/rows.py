"""Sites, specimens, labels and criteria, linked."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from auctorum.characters.vocabulary import Vocabulary
from auctorum.corpus.model import Label, Specimen
from auctorum.corpus.readings import find_character, measurements_of
from auctorum.corpus.references import References
from auctorum.problems import AuctorumError, Problem
from auctorum.records import schema


def linked_sites(records: Iterable[schema.Site], problems: list[Problem]) -> dict[str, schema.Site]:
    """Sites by id; a second one with the same id is a problem and left out."""
    found: dict[str, schema.Site] = {}
    for site in records:
        if site.locationID in found:
            what = f"the site `{site.locationID}` stands twice"
            problems.append(Problem(site.place, what, "give each site its own locationID"))
            continue
        found[site.locationID] = site
    return found


def linked_specimens(
    records: Iterable[schema.Specimen], vocabulary: Vocabulary, sites: Collection[str], references: References
) -> tuple[Specimen, ...]:
    """Specimens in the order of the table; a bad cell, an unknown site or name is a problem, the rest is used."""
    report = references.problems.append
    found = []
    for record in records:
        site = record.locationID or None
        if site is not None and site not in sites:
            report(Problem(record.place, f"no site `{site}` in sites.csv", "add it, or correct locationID"))
            site = None
        said = record.scientificName
        name = references.resolved(said, None, record.place) if said else None
        measured = measurements_of(record.measurements, record.place, vocabulary, report)
        found.append(Specimen(record, name, site, measured))
    return tuple(found)


def linked_labels(
    records: Iterable[schema.Label], vocabulary: Vocabulary, problems: list[Problem]
) -> tuple[Label, ...]:
    """Labels in the order of the table; their names are matched later, never here."""
    return tuple(
        Label(record, measurements_of(record.measurements, record.place, vocabulary, problems.append))
        for record in records
    )


def checked_criteria(
    records: Iterable[schema.Criterion], vocabulary: Vocabulary, references: References
) -> tuple[schema.Criterion, ...]:
    """The criteria as they are; a name or character that is not known is a problem."""
    records = tuple(records)
    for criterion in records:
        for key, said in (("taxon", criterion.taxon), ("otherwise", criterion.otherwise)):
            if said:
                references.resolved(said, None, criterion.place, key)
        traits = [(criterion.decisive.character, criterion.decisive.place)]
        traits += [(trait.character, trait.place) for trait in criterion.supporting]
        for character, place in traits:
            try:
                find_character(character, vocabulary)
            except AuctorumError as error:
                references.problems.append(error.at(place, "character"))
    return records
