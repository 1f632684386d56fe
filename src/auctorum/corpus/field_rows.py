"""Plants of a table that stands in no knowledge base, linked to one: for `determine` and `survey`."""

from __future__ import annotations

from collections.abc import Sequence

from auctorum.corpus.measured import CellReader
from auctorum.corpus.model import Corpus, Specimen
from auctorum.corpus.resolve import lookup
from auctorum.corpus.rows import told_apart
from auctorum.names.nearest import nearest
from auctorum.problems import AuctorumError, Problem, Severity
from auctorum.records import schema


def linked_rows(
    records: Sequence[schema.Specimen], measurements: Sequence[schema.MeasurementOrFact], corpus: Corpus
) -> tuple[tuple[Specimen, ...], tuple[Problem, ...]]:
    """The plants in the order of the table, and every problem, in order of place.

    A site that the knowledge base does not know is kept as it is said, with a warning; a name that it does not know is
    a warning, and the plant goes without one.
    """
    problems: list[Problem] = []
    cells = CellReader(corpus.vocabulary, problems.append)
    names: dict[str, str | AuctorumError] = {}
    sites: set[str] = set()
    found = []
    for record, measured, dates in told_apart(records, measurements, cells, problems.append):
        site = record.locationID or None
        if site is not None and site not in corpus.sites and site not in sites:
            sites.add(site)
            near = nearest(site, corpus.sites, limit=1, cutoff=80)
            remedy = f"did you mean `{near[0]}`?" if near else "add it to sites.csv, if it should have a place"
            what = f"no site `{site}` in the knowledge base; it is kept as it is said"
            problems.append(Problem(record.place, what, remedy, Severity.WARNING))
        said = record.scientificName
        if said and said not in names:
            names[said] = _name(said, corpus)
        name = names.get(said)
        if isinstance(name, AuctorumError):
            problems.append(name.at(record.place, severity=Severity.WARNING))
        found.append(Specimen(record, name if isinstance(name, str) else None, site, measured, dates))
    problems += cells.far_out()
    return tuple(found), tuple(sorted(problems))


def _name(said: str, corpus: Corpus) -> str | AuctorumError:
    try:
        return lookup(corpus, said)
    except AuctorumError as error:
        return error
