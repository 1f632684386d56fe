"""The plants of a FILE one after another, each with its answer: a short table read whole, a long one in chunks."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from itertools import islice
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from auctorum.cli.determine_setting import Setting
from auctorum.cli.determine_table import Teller, linked_plants, plants_of_table
from auctorum.problems import AuctorumError, Place, Problem, Severity

if TYPE_CHECKING:
    from auctorum.circumscription.plants import Plant
    from auctorum.corpus.criteria import Limit
    from auctorum.determination.telling.table_answers import Finder, Found
    from auctorum.records import schema
    from auctorum.records.schema import Criterion
    from auctorum.records.streamed import Chunk

WHOLE = 1_000_000  # bytes up to which a table is read whole
MOST_ASKED = 1000  # plants up to which it is said what to observe next
_CHUNK = 5000
_MOST_NAMES = 2000


class Row(NamedTuple):
    """One plant: what it is called in the table, the name it was given, and the answer."""

    plant: str
    given: str
    taxon_given: str | None
    found: Found
    verdicts: tuple[str, ...]  # one for each criterion
    ask: str | None  # the character to observe next; "" for none worth it, None where it was not worked out


def usable(asked: Setting) -> tuple[list[tuple[Criterion, Limit]], list[tuple[str, AuctorumError]]]:
    """The criteria that can be used, with their limits, and the ids of the others with why."""
    from auctorum.corpus.criteria import limit_of, trait_of

    good, bad = [], []
    for one in asked.criteria:
        try:
            limit = limit_of(one.decisive, asked.corpus.vocabulary)
            for trait in one.supporting:
                trait_of(trait, asked.corpus.vocabulary)
            good.append((one, limit))
        except AuctorumError as error:
            bad.append((one.id, error))
    return good, bad


def finder(asked: Setting) -> Finder:
    """What determines the plants of a table as the setting asks."""
    from auctorum.determination.telling.answer import genus_of
    from auctorum.determination.telling.table_answers import Finder

    return Finder(asked.view, asked.view.names, genus_of(asked.corpus, asked.view), asked.priors, asked.thresholds)


def whole_rows(
    asked: Setting, file: Path, teller: Teller, criteria: Sequence[Criterion], step: Callable[[int, int], None]
) -> Iterator[Row]:
    """The rows of a table that is read whole."""
    several = asked.with_sites(plants_of_table(asked.corpus, file, asked.stage, teller))
    yield from _rows_of(asked, several, criteria, step, ask=len(several) <= MOST_ASKED)


def _rows_of(
    asked: Setting,
    several: Sequence[Plant],
    criteria: Sequence[Criterion],
    step: Callable[[int, int], None],
    *,
    ask: bool,
) -> Iterator[Row]:
    from auctorum.corpus.resolve import called
    from auctorum.determination.criteria.criterion import judge_each
    from auctorum.determination.many import columns_of

    find = finder(asked)
    for start in range(0, len(several), _CHUNK):
        part = several[start : start + _CHUNK]
        verdicts = [[str(one.verdict) for one in judge_each(asked.corpus, criterion, part)] for criterion in criteria]
        answers = find.rows(columns_of(asked.view, part), len(part))
        for place, (plant, found) in enumerate(zip(part, answers, strict=True)):
            given = "" if plant.name is None else called(asked.corpus, plant.name)
            by = tuple(one[place] for one in verdicts)
            yield Row(plant.id, given, plant.taxon, found, by, _ask(asked, plant) if ask else None)
            if ask:
                step(start + place + 1, len(several))


def _ask(asked: Setting, plant: Plant) -> str:
    from auctorum.circumscription.phrases import at_stage
    from auctorum.determination.asking import questions
    from auctorum.determination.determine import determine
    from auctorum.determination.telling.outcome_words import changes
    from auctorum.determination.telling.reckoned import to_ask

    several = questions(
        asked.view, plant, stages=(asked.stage,), priors=asked.priors, thresholds=asked.thresholds,
        without=to_ask(asked.corpus.vocabulary, plant.observations),
    )  # fmt: skip
    now = determine(asked.view, plant, priors=asked.priors, thresholds=asked.thresholds)
    worth = changes(several, now)
    return at_stage(worth[0].character, worth[0].stage) if worth else ""


class Streamed:
    """The rows of a table of any length, in memory that does not grow with it; rows of one plant come last."""

    def __init__(self, asked: Setting, teller: Teller, criteria: Sequence[tuple[Criterion, Limit]]) -> None:
        from auctorum.determination.bulk import Bulk
        from auctorum.determination.places.of_site import habitat_of

        corpus = asked.corpus
        habitat = {site: habitat_of(corpus, site) for site in corpus.sites} if asked.habitat else None
        self._asked, self._teller, self._criteria = asked, teller, criteria
        self._bulk = Bulk(corpus.vocabulary, asked.stage, habitat)
        self._find = finder(asked)
        self._taxa: dict[str, str | None] = {}
        self._many_names = False
        self._file = ""

    def rows(self, file: Path, step: Callable[[int, int], None]) -> Iterator[Row]:
        """Every row, in the order of the table; then the plants that were measured in several rows."""
        from auctorum.records.read import opened_table, shown
        from auctorum.records.streamed import plant_chunks

        self._file, size = shown(file), max(1, file.stat().st_size)
        held: list[schema.Specimen] = []
        with opened_table(file) as (table, problems):
            self._teller.tell(problems)
            if table is None:
                return
            buffer = getattr(table, "buffer", None)
            for chunk in plant_chunks(table, self._file, self._asked.corpus.vocabulary):
                self._teller.tell(chunk.problems)
                held += chunk.held
                if chunk.lines:
                    yield from self._of_chunk(chunk)
                step(min(size, buffer.tell() if buffer is not None else size), size)
        asked = self._asked
        several = asked.with_sites(linked_plants(asked.corpus, held, (), asked.stage, self._teller))
        yield from _rows_of(asked, several, [one for one, _ in self._criteria], step, ask=False)

    def _of_chunk(self, chunk: Chunk) -> Iterator[Row]:
        from auctorum.determination.bulk import Part
        from auctorum.determination.criteria.columns import verdicts

        fields = chunk.fields
        figures = {name: (one.value, one.slack, one.accuracy) for name, one in chunk.figures.items()}
        part = Part(
            len(chunk.lines), fields.get("lifeStage", ()), fields.get("sex", ()), fields.get("locationID", ()),
            figures, chunk.words,
        )  # fmt: skip
        measured = self._bulk.measured(part)
        vocabulary = self._asked.corpus.vocabulary
        by = [verdicts(limit, vocabulary, self._bulk, part, measured) for _, limit in self._criteria]
        answers = self._find.rows(self._bulk.columns(self._asked.view, part, measured), part.rows)
        given = fields.get("scientificName", [""] * part.rows)
        judged = zip(*by, strict=True) if by else iter(lambda: (), None)
        every = zip(chunk.lines, fields["occurrenceID"], given, answers, islice(judged, part.rows), strict=True)
        for line, plant, name, found, said in every:
            yield Row(plant, name, self._taxon(name, line) if name else None, found, said, None)

    def _taxon(self, said: str, line: int) -> str | None:
        """The taxon of a name as typed; one that nobody accepts has none, one that is not known a warning besides.

        Of a table with thousands of names only the first are looked up: each takes its time.
        """
        from auctorum.corpus.resolve import NeverAccepted, find_taxon, lookup

        if said in self._taxa:
            return self._taxa[said]
        if len(self._taxa) >= _MOST_NAMES:
            if not self._many_names:
                what = f"more than {_MOST_NAMES} different names; others are not compared from here on"
                self._warn(Problem(Place(self._file, line, 1), what, "split the table", Severity.WARNING))
            self._many_names = True
            return None
        self._taxa[said] = None
        try:
            self._taxa[said] = find_taxon(self._asked.corpus, lookup(self._asked.corpus, said)).id
        except NeverAccepted:
            pass
        except AuctorumError as error:
            self._warn(error.at(Place(self._file, line, 1), severity=Severity.WARNING))
        return self._taxa[said]

    def _warn(self, problem: Problem) -> None:
        self._teller.tell([problem])
