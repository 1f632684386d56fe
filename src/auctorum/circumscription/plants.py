"""The measured plants of a knowledge base: rows of specimens.csv that measure one plant are taken together."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from functools import cache, lru_cache

from auctorum.characters.read import read_statement
from auctorum.characters.states import state_weights
from auctorum.characters.units import convert
from auctorum.characters.values import Share, States
from auctorum.characters.vocabulary import Character, Vocabulary
from auctorum.circumscription.combined_cells import Cells, mean, ratio_of
from auctorum.circumscription.voices import in_order
from auctorum.circumscription.wording import MATURE
from auctorum.corpus.measured import half_width
from auctorum.corpus.model import Corpus, Measurement, Specimen
from auctorum.corpus.readings import stage_that_counts
from auctorum.corpus.resolve import NeverAccepted, find_taxon

LIST_MARK = " | "  # between the values of one field, as Darwin Core recommends

Key = tuple[str, str]  # character and stage
StatesOfCell = tuple[tuple[str, tuple[tuple[str, Fraction], ...]], ...]  # stage, and the weight of each state
Reader = Callable[[str, str], StatesOfCell]  # of a character and a cell


@dataclass(frozen=True, slots=True)
class Observation:
    """One character of one plant at one stage; numbers are exact, in the canonical unit of the character."""

    character: str
    stage: str
    value: Fraction | None  # mean of the rows; None for states
    states: tuple[tuple[str, Fraction], ...]  # weights summing to 1, in the order of the vocabulary; () for numbers
    slack: Fraction  # half the step of the coarsest cell as printed; 0 for states
    rows: int  # rows that were combined
    accuracy: Fraction = Fraction(0)  # half-width of the instrument's error, the largest stated; 0 where none is
    by: str = ""  # who measured it
    instrument: str = ""

    @property
    def error(self) -> Fraction:
        """The half-width within which the true value lies: slack and accuracy together, in the canonical unit."""
        return self.slack + self.accuracy


@dataclass(frozen=True, slots=True)
class Plant:
    """One plant. `taxon` is None where it was given no name, one that nobody accepts, or names of several taxa."""

    id: str  # organismID, else occurrenceID
    taxon: str | None
    name: str | None  # id of the name it was given, the first of several of one taxon
    site: str | None  # None where the rows name none, or several
    identified_by: str
    observations: tuple[Observation, ...]  # in the order of the vocabulary, then of the stages
    observed_by: str = ""  # several are joined by LIST_MARK, as are all words of several rows
    instrument: str = ""
    establishment: str = ""  # native, cultivated ...
    dates: tuple[str, ...] = ()  # ISO 8601, each once, in their order

    def at(self, character: str, stage: str) -> Observation | None:
        """What was observed of the character at that stage; None where nothing was."""
        return next((one for one in self.observations if (one.character, one.stage) == (character, stage)), None)


def plants(corpus: Corpus) -> tuple[Plant, ...]:
    """Every plant of specimens.csv: see `plants_in`."""
    return plants_in(corpus.specimens, corpus)


def plants_in(rows: Iterable[Specimen], corpus: Corpus) -> tuple[Plant, ...]:
    """Every plant of a table, in the order of its first row; rows of one organismID are one plant.

    Figures of several rows are averaged for each character and stage (directions about their circular mean), the
    states of several rows are pooled, each row with the same weight. Slack and accuracy are those of the coarsest: an
    instrument that errs to one side does so each time.
    """
    by_plant: dict[str, list[Specimen]] = {}
    for row in rows:
        by_plant.setdefault(row.record.organismID or row.record.occurrenceID, []).append(row)
    taxon_of, reader = _taxon_finder(corpus), _cell_reader(corpus.vocabulary)
    return tuple(_plant(id_, of_plant, corpus.vocabulary, taxon_of, reader) for id_, of_plant in by_plant.items())


def plants_of(several: Iterable[Plant], taxon: str) -> tuple[Plant, ...]:
    """The plants that were named as that taxon, in their order."""
    return tuple(plant for plant in several if plant.taxon == taxon)


def _plant(
    id_: str, rows: Sequence[Specimen], vocabulary: Vocabulary, taxon_of: Callable[[str], str | None], reader: Reader
) -> Plant:
    named = [row for row in rows if row.record.scientificName]
    taxa = {taxon_of(row.name) if row.name is not None else None for row in named}
    names = list(dict.fromkeys(row.name for row in named))
    taxon = taxa.pop() if len(taxa) == 1 else None
    name = names[0] if len(names) == 1 or taxon is not None else None
    sites = {row.site for row in rows if row.site is not None}
    return Plant(
        id_,
        taxon,
        name,
        sites.pop() if len(sites) == 1 else None,
        _joined(row.record.identifiedBy for row in named),
        tuple(_observations(rows, vocabulary, reader)),
        _joined(row.record.recordedBy for row in rows),
        _joined(said for row in rows for said in (row.record.measurementMethod, *_instruments(row))),
        _joined(row.record.degreeOfEstablishment or row.record.establishmentMeans for row in rows),
        tuple(sorted({date for row in rows for date in (row.record.eventDate, *row.dates) if date})),
    )


def _instrument(cell: Measurement, row: Specimen) -> str:
    return cell.instrument or row.record.measurementMethod


def _instruments(row: Specimen) -> Iterator[str]:
    return (cell.instrument for cell in row.measurements)


def _joined(several: Iterable[str]) -> str:
    """Values of several rows as one: each once, by the alphabet; a value may be a list already.

    >>> _joined(["J. Petrane", "M. Sallow | J. Petrane", ""])
    'J. Petrane | M. Sallow'
    """
    return LIST_MARK.join(sorted(_parts(several)))


def _parts(several: Iterable[str]) -> frozenset[str]:
    return frozenset[str]().union(*map(_split, several))


@lru_cache(maxsize=4096)
def _split(one: str) -> frozenset[str]:
    return frozenset(part.strip() for part in one.split(LIST_MARK.strip()) if part.strip())


def _taxon_finder(corpus: Corpus) -> Callable[[str], str | None]:
    """Id of a name -> id of its taxon, None where nobody accepts it; each name is looked for once."""

    @cache
    def found(name: str) -> str | None:
        try:
            return find_taxon(corpus, name).id
        except NeverAccepted:
            return None

    return found


def states_in(words: str, character: Character) -> StatesOfCell:
    """Words of a cell -> the weights of states for each stage that it names ("" for none), each summing to 1.

    A state that the words only deny is left out, and so is a stage of which nothing is left.
    """
    by_stage: dict[str, list[Share]] = {}
    stage = ""
    for reading in read_statement(words, character):
        stage = reading.stage or stage  # it holds for what follows: `ivory at maturity, rarely buff`
        if isinstance(reading.value, States):
            by_stage.setdefault(stage, []).extend(reading.value.shares)
    weighed = (
        (stage, tuple(state_weights(States(tuple(dict.fromkeys(shares))), character).items()))
        for stage, shares in by_stage.items()
    )
    return tuple((stage, weights) for stage, weights in weighed if weights)


def _cell_reader(vocabulary: Vocabulary) -> Reader:
    """The states in a cell of a character; equal cells are read once."""
    return cache(lambda character, words: states_in(words, vocabulary[character]))


def _observations(rows: Sequence[Specimen], vocabulary: Vocabulary, reader: Reader) -> Iterator[Observation]:
    found: dict[Key, list[Cells]] = {}
    for row in rows:
        for key, cells in _cells_of(row, vocabulary, reader).items():
            found.setdefault(key, []).append(mean(cells, vocabulary[key[0]]))
    places = {name: place for place, name in enumerate(vocabulary)}
    for name, stage in sorted(found, key=lambda key: (places[key[0]], _stage_place(key[1], vocabulary[key[0]]), key)):
        whole = mean(found[name, stage], vocabulary[name])
        numeric = vocabulary[name].kind.is_numeric
        states = tuple((state, whole.weights[state]) for state in in_order(whole.weights, vocabulary[name]))
        yield Observation(
            name,
            stage,
            whole.value if numeric else None,
            states,
            whole.slack,
            len(found[name, stage]),
            whole.accuracy,
            LIST_MARK.join(sorted(whole.by)),
            LIST_MARK.join(sorted(whole.instruments)),
        )


def _stage_place(stage: str, character: Character) -> int:
    """The stages of the character in their order, then any other."""
    return character.stages.index(stage) if stage in character.stages else len(character.stages)


def _cells_of(row: Specimen, vocabulary: Vocabulary, reader: Reader) -> dict[Key, list[Cells]]:
    """The cells of one row by character and stage: a length may stand in two columns, of two units."""
    found: dict[Key, list[Cells]] = {}
    for cell in row.measurements:
        character = vocabulary[cell.character]
        by, instruments = _split(cell.by or row.record.recordedBy), _split(_instrument(cell, row))
        if cell.number is not None:
            key = (cell.character, _stage(cell.stage, row, character))
            found.setdefault(key, []).append(_figure(cell, character, by, instruments))
            continue
        for stage, weights in reader(cell.character, cell.words):
            key = (cell.character, _stage(stage or cell.stage, row, character))
            one = Cells(Fraction(0), Fraction(0), dict(weights), by=by, instruments=instruments)
            found.setdefault(key, []).append(one)
    for ratio in vocabulary.values():
        key = (ratio.name, _stage("", row, ratio))
        if ratio.of and key not in found and (reckoned := _ratio(ratio, found, row, vocabulary)) is not None:
            found[key] = [reckoned]
    return found


def _ratio(
    ratio: Character, found: Mapping[Key, Sequence[Cells]], row: Specimen, vocabulary: Vocabulary
) -> Cells | None:
    """A ratio reckoned from the two measures of one row; None without both.

    Measures of young parts make no ratio of a character that is not split by stage.
    """
    parts = []
    for name in ratio.of:
        stage = _stage("", row, vocabulary[name])
        cells = found.get((name, stage))
        if cells is None or stage not in ("", MATURE, _stage("", row, ratio)):
            return None
        parts.append(mean(cells, vocabulary[name]))
    return ratio_of(ratio, parts, vocabulary)


def _stage(stated: str, row: Specimen, character: Character) -> str:
    """The stage that the cell states; else the sex of the plant where the character is split by it, else its stage."""
    if not stated and row.record.sex in character.stages:
        return row.record.sex
    return stage_that_counts(stated or row.record.lifeStage, character)


def _figure(cell: Measurement, character: Character, by: frozenset[str], instruments: frozenset[str]) -> Cells:
    # The digits, not the number: 8.0 and 8 are equal, and not as precise.
    digits = str(cell.number if cell.number is not None else 0)
    value, slack, accuracy = _converted(digits, cell.unit, cell.slack, cell.accuracy, character.unit)
    return Cells(value, slack, {}, accuracy, by, instruments)


@lru_cache(maxsize=65_536)
def _converted(
    digits: str, unit: str, slack: Fraction | None, accuracy: Fraction, wanted: str
) -> tuple[Fraction, Fraction, Fraction]:
    """Value, slack and accuracy in the unit that is wanted; figures come again and again in a table."""
    number = Decimal(digits)
    found = (Fraction(number), half_width(Measurement("", unit, number, "", slack)), accuracy)
    if not unit or unit == wanted:
        return found
    value, half, error = (convert(one, unit, wanted) for one in found)
    return value, half, error
