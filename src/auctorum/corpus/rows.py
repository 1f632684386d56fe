"""Sites, specimens, labels and criteria, linked."""

from __future__ import annotations

from collections.abc import Collection, Iterable

from auctorum.characters.read import read_statement
from auctorum.characters.vocabulary import Vocabulary
from auctorum.corpus.model import Label, Specimen
from auctorum.corpus.readings import Report, check_readings, check_stage, find_character, measurements_of
from auctorum.corpus.references import References
from auctorum.problems import AuctorumError, Place, Problem
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
        low, high = site.minimumElevationInMeters, site.maximumElevationInMeters
        if low is not None and high is not None and low > high:
            what = f"the lowest elevation {low} m of `{site.locationID}` is above the highest, {high} m"
            problems.append(Problem(site.place, what, "give the lower first"))
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
    """The criteria that have an id of their own; whatever in them can't be understood is a problem."""
    found: dict[str, schema.Criterion] = {}
    report = references.problems.append
    for criterion in records:
        if criterion.id in found:
            what = f"the criterion id `{criterion.id}` is that of {found[criterion.id].place} too"
            report(Problem(criterion.place, what, "give each criterion its own id", within=("id",)))
            continue
        found[criterion.id] = criterion
        for key, said in (("taxon", criterion.taxon), ("otherwise", criterion.otherwise)):
            if said:
                references.resolved(said, None, criterion.place, key)
        decisive = criterion.decisive
        if bool(decisive.at_least) == bool(decisive.at_most):
            remedy = "give one of `at-least:` and `at-most:`"
            report(Problem(decisive.place, "the decisive trait needs one threshold", remedy))
        for key, said in (("at-least", decisive.at_least), ("at-most", decisive.at_most)):
            if said:
                _check_trait(decisive.character, said, decisive.stage, decisive.place, key, vocabulary, report)
        for trait in criterion.supporting:
            _check_trait(trait.character, trait.value, trait.stage, trait.place, "value", vocabulary, report)
    return tuple(found.values())


def _check_trait(
    said: str, value: str, stage: str, place: Place, key: str, vocabulary: Vocabulary, report: Report
) -> None:
    """Problems with one trait of a criterion: its character, its value, its growth stage."""
    try:
        character = find_character(said, vocabulary)
    except AuctorumError as error:
        report(error.at(place, "character"))
        return
    check_stage(stage, character, place, report)
    try:
        check_readings(read_statement(value, character), character, value)
    except AuctorumError as error:
        report(error.at(place, key))
