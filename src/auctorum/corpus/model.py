"""The corpus: names, acts, treatments and statements as linked, frozen values.

Records refer to names by words; here every reference is the id of a `NameEntry`. An id is the
slug of the name (`exemplum-album-var-longum`), with author and year where homonyms share the words.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction

from auctorum.characters.values import Reading
from auctorum.characters.vocabulary import Vocabulary
from auctorum.names.format import words
from auctorum.names.name import Name
from auctorum.problems import NOWHERE, Place
from auctorum.records import schema
from auctorum.records.dates import Dated


@dataclass(frozen=True, slots=True)
class Work:
    """A publication with its dates read; `date` is that of effective publication where the record gives one."""

    id: str
    record: schema.Work
    date: Dated
    authors: tuple[str, ...]  # as author citations print them
    covers: tuple[str, ...]  # ids of the names whose taxa it sets out to treat in full
    cites: tuple[str, ...] = ()  # ids of works

    @property
    def year(self) -> int:
        return self.date.year

    @property
    def byline(self) -> str:
        """Authors and year, as a text refers to the work: `Orrin & Vane 1911`."""
        *first, last = self.authors
        return f"{', '.join(first)} & {last} {self.year}" if first else f"{last} {self.year}"


@dataclass(frozen=True, slots=True)
class Act:
    """One nomenclatural act with its names linked; None or () where the record names none."""

    id: str
    work: Work
    record: schema.Act
    name: str
    printed: Name  # the words of this act: they differ from the entry's for a variant spelling
    rank: str  # `unranked` where the work states none
    basionym: str | None = None
    replaces: str | None = None
    of: str | None = None
    same_taxon: str | None = None  # the older name whose epithet it takes up without citing it
    above: str | None = None  # the genus or, below the species, the species it is published under
    cites: tuple[str, ...] = ()
    excludes: tuple[str, ...] = ()
    against: tuple[str, ...] = ()

    @property
    def establishes(self) -> bool:
        """Whether the act puts a name forward, rather than saying something about one."""
        if self.record.act is schema.ActKind.USAGE:  # one without the type, or with another's epithet
            return bool(self.record.excludes or self.record.same_taxon_as)
        return self.record.act in _PUBLISHING

    @property
    def chooses_type(self) -> bool:
        """Whether it designates a type: effectively published (ICN Art. 7.10), and from 2001 on with "designated here"
        or an equivalent (7.11), as far as its words are recorded. Articles from memory."""
        if self.record.act is not schema.ActKind.TYPE_DESIGNATION or self.record.type is None:
            return False
        said = f"{self.record.type.word} {self.record.type.verbatim} {self.record.verbatim}".casefold().strip()
        stated = not said or any(words in said for words in ("here", "hic ", "hier", "ici", "aquí", "qui "))
        return self.work.record.effectively_published and (stated or self.work.date.earliest < _DESIGNATED_HERE_FROM)

    @property
    def is_plainly_no_name(self) -> bool:
        """Whether its record alone says that it publishes no name: not effectively, not accepted, not described."""
        record = self.record
        undescribed = record.description is not None and record.description.kind is schema.DescriptionKind.NONE
        new = record.act is schema.ActKind.NEW_TAXON
        unpublished = not self.work.record.effectively_published or not record.accepted or record.offered_as is not None
        return unpublished or record.standing is schema.GivenStanding.NOT_VALID or (new and undescribed)

    @property
    def spells_otherwise(self) -> bool:
        """Whether it prints another name's words in another form, said to be so or used so (ICN Art. 61)."""
        kind = schema.ActKind
        used = self.record.act is kind.USAGE and bool(self.record.of) and not self.establishes
        return used or self.record.act is kind.VARIANT_SPELLING


_DESIGNATED_HERE_FROM = date(2001, 1, 1)
_PUBLISHING = (
    schema.ActKind.NEW_TAXON,
    schema.ActKind.NEW_COMBINATION,
    schema.ActKind.CHANGE_OF_RANK,
    schema.ActKind.REPLACEMENT_NAME,
)


@dataclass(frozen=True, slots=True)
class NameEntry:
    """One name: its words with its authors, rank, and the group of names that share its type.

    `group` is the id of the earliest name on the same type. `acts` are the ids of the acts of it or about
    it, by date; empty for an autonym and for a name without protologue in the knowledge base. `published_by` is
    the act that publishes it: the first that does so validly, else the first that tries.
    """

    id: str
    name: Name
    rank: str
    group: str
    acts: tuple[str, ...] = ()
    variants: tuple[Name, ...] = ()
    autonym_of: str | None = None  # the species or genus that an autonym repeats
    published_by: str | None = None

    @property
    def is_autonym(self) -> bool:
        """Whether it stands without an act, since it repeats its species or genus (ICN Art. 22.1, 26.1)."""
        return self.autonym_of is not None


@dataclass(frozen=True, slots=True)
class Treatment:
    """How one work keeps one name, linked. `includes` are the groups of every type it takes in."""

    id: str
    work: Work
    record: schema.TreatmentRecord
    name: str
    rank: str
    parent: str | None = None
    accepted_as: str | None = None
    synonyms: tuple[str, ...] = ()
    misapplied: tuple[str, ...] = ()
    follows: tuple[str, ...] = ()
    statements: tuple[str, ...] = ()
    includes: frozenset[str] = frozenset()

    @property
    def status(self) -> schema.Status:
        return self.record.status


@dataclass(frozen=True, slots=True)
class Statement:
    """What one treatment says of one character, as words and as read.

    `verbatim` stands in square brackets where the record gives a value instead of the work's words.
    """

    id: str
    treatment: str
    work: Work
    character: str
    verbatim: str
    page: str
    readings: tuple[Reading, ...]
    note: str = ""
    place: Place = field(default=NOWHERE, compare=False, repr=False)


class Sense(StrEnum):
    """In which sense a name is meant where authors use it both with and without its sister."""

    PLAIN = ""
    STRICT = "strict"
    WIDE = "wide"

    @property
    def suffix(self) -> str:
        """`, in the wide sense`, to stand behind a name; empty where there is but one sense."""
        return f", in the {self} sense" if self else ""

    @property
    def meaning(self) -> str:
        """The sense in a sentence; empty where there is but one."""
        return _SENSES[self]


_SENSES = {
    Sense.PLAIN: "",
    Sense.STRICT: "The autonym, and the species of works that take no sister of it into the species; such a work may "
    "mean the whole without saying so. History and state of opinion are those of the type, shared with the wide sense.",
    Sense.WIDE: "The species of works that take in sisters which somebody keeps apart. What they say of one part only "
    "stands with that part. History and state of opinion are those of the type, shared with the strict sense.",
}


@dataclass(frozen=True, slots=True)
class Taxon:
    """What somebody accepts: one type, in one sense.

    `names` are the names under which works accept it, `current` the one that the latest work uses,
    `treatments` the ids of the treatments that accept it, by date.
    """

    id: str
    group: str
    sense: Sense
    current: str
    names: tuple[str, ...]
    treatments: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Measurement:
    """One measurement of a cell: a number in its unit, or the words of a state. A cell may hold several.

    `slack` is the half-width that its writing leaves, None where the printed digits tell it; `accuracy` the half-width
    of the instrument's error, 0 where none is stated: both in `unit`. `stage`, `by` and `instrument` are those of this
    measurement, "" where those of its row hold.
    """

    character: str
    unit: str
    number: Decimal | None
    words: str
    slack: Fraction | None = None
    accuracy: Fraction = Fraction(0)
    stage: str = ""
    by: str = ""
    instrument: str = ""


@dataclass(frozen=True, slots=True)
class Specimen:
    """A measured plant; `name` and `site` are None where none is stated or known. `dates` are those of measurements
    that tell one of their own, in ISO 8601.
    """

    record: schema.Specimen
    name: str | None
    site: str | None
    measurements: tuple[Measurement, ...]
    dates: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Label:
    """What a seller's label says and what the plant shows; the name is matched later, never here."""

    record: schema.Label
    measurements: tuple[Measurement, ...]


@dataclass(frozen=True)
class Corpus:
    """A knowledge base, linked. Works, acts and treatments stand in order of date, then of id."""

    settings: schema.Settings
    vocabulary: Vocabulary
    works: Mapping[str, Work]
    names: Mapping[str, NameEntry]
    acts: Mapping[str, Act]
    treatments: Mapping[str, Treatment]
    statements: Mapping[str, Statement]
    taxa: Mapping[str, Taxon]
    focal: tuple[str, ...] = ()  # ids of names
    criteria: tuple[schema.Criterion, ...] = ()
    sites: Mapping[str, schema.Site] = field(default_factory=dict)
    specimens: tuple[Specimen, ...] = ()
    labels: tuple[Label, ...] = ()
    groups: Mapping[str, tuple[str, ...]] = field(default_factory=dict)  # group id -> names on that type, by date
    homonyms: Mapping[str, tuple[str, ...]] = field(default_factory=dict)  # bare words -> published names, by date
    by_work: Mapping[str, tuple[Treatment, ...]] = field(default_factory=dict)
    by_name: Mapping[str, tuple[Treatment, ...]] = field(default_factory=dict)
    # Treatments that keep, place something in, sink or misapply a name of the group.
    by_group: Mapping[str, tuple[Treatment, ...]] = field(default_factory=dict)
    acts_by_work: Mapping[str, tuple[Act, ...]] = field(default_factory=dict)

    def acts_of(self, name: str) -> tuple[Act, ...]:
        """Every act of one name or about it, by date."""
        return tuple(self.acts[act] for act in self.names[name].acts)

    def has_homonyms(self, name: str) -> bool:
        """Whether other names share the words of this one, so that it is called with its authors."""
        return len(self.homonyms.get(words(self.names[name].name), ())) > 1

    def publishing_act(self, name: str) -> Act | None:
        """The act that published a name; None for an autonym and for a name without protologue."""
        by = self.names[name].published_by
        return self.acts[by] if by is not None else None

    def statements_of(self, treatment: str) -> tuple[Statement, ...]:
        """Statements of one treatment in the order of its record."""
        return tuple(self.statements[statement] for statement in self.treatments[treatment].statements)

    def acts_in(self, work: str) -> tuple[Act, ...]:
        """Acts of one work in the order of its record."""
        return self.acts_by_work.get(work, ())
