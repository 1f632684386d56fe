"""Sites, specimens, labels and criteria, linked."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence

from auctorum.characters.read import read_statement
from auctorum.characters.vocabulary import Vocabulary
from auctorum.corpus.measured import CellReader
from auctorum.corpus.model import Label, Measurement, Specimen
from auctorum.corpus.readings import Report, check_readings, check_stage, find_character
from auctorum.corpus.references import References
from auctorum.names.nearest import nearest
from auctorum.problems import AuctorumError, Place, Problem
from auctorum.records import schema

_MOST_SUGGESTED = 20  # unknown ids for which the nearest is looked for: each look goes through all ids


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
    records: Sequence[schema.Specimen],
    vocabulary: Vocabulary,
    sites: Collection[str],
    references: References,
    measurements: Sequence[schema.MeasurementOrFact] = (),
) -> tuple[Specimen, ...]:
    """Specimens in the order of the table, with the measurements of the long table that name them.

    A bad cell, an unknown site, name or specimen is a problem, the rest is used.
    """
    report = references.problems.append
    cells = CellReader(vocabulary, report)
    told = told_apart(records, measurements, cells, report)
    found = []
    for record, measured, dates in told:
        site = record.locationID or None
        if site is not None and site not in sites:
            report(Problem(record.place, f"no site `{site}` in sites.csv", "add it, or correct locationID"))
            site = None
        said = record.scientificName
        name = references.resolved(said, None, record.place) if said else None
        found.append(Specimen(record, name, site, measured, dates))
    references.problems.extend(cells.far_out())
    return tuple(found)


def told_apart(
    records: Sequence[schema.Specimen],
    measurements: Iterable[schema.MeasurementOrFact],
    cells: CellReader,
    report: Report,
) -> list[tuple[schema.Specimen, tuple[Measurement, ...], tuple[str, ...]]]:
    """Each record with its measurements, wide and long, and the dates of the long ones.

    A record's id that stands twice, and a measurement of an unknown id, are problems.
    """
    wide = [cells.row(record.measurements, record.place, record.accuracies) for record in records]
    first: dict[str, int] = {}
    for number, record in enumerate(records):
        before = first.setdefault(record.occurrenceID, number)
        if before != number:
            what = f"the occurrenceID `{record.occurrenceID}` stands twice, first in line {records[before].place.line}"
            remedy = "give each row its own; rows of one plant share an organismID"
            report(Problem(record.place, what, remedy))
    long: dict[int, list[Measurement]] = {}
    dates: dict[int, list[str]] = {}
    unknown: set[str] = set()
    for row in measurements:
        at = first.get(row.occurrenceID)
        if at is None:
            unknown.add(row.occurrenceID)
            near = nearest(row.occurrenceID, first, limit=1) if len(unknown) <= _MOST_SUGGESTED else ()
            remedy = f"did you mean `{near[0]}`?" if near else "add its row to specimens.csv, or correct occurrenceID"
            report(Problem(row.place, f"no specimen `{row.occurrenceID}`", remedy))
            continue
        long.setdefault(at, []).extend(cells.long(row))
        if row.measurementDeterminedDate:
            dates.setdefault(at, []).append(row.measurementDeterminedDate)
    return [
        (record, (*wide[number], *long.get(number, ())), tuple(sorted(set(dates.get(number, ())))))
        for number, record in enumerate(records)
    ]


def linked_labels(
    records: Iterable[schema.Label], vocabulary: Vocabulary, problems: list[Problem]
) -> tuple[Label, ...]:
    """Labels in the order of the table; their names are matched later, never here."""
    cells = CellReader(vocabulary, problems.append)
    return tuple(Label(record, cells.row(record.measurements, record.place, record.accuracies)) for record in records)


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
