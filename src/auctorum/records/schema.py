"""Frozen records as the files spell them; no file, no YAML.

Keys in files are kebab-case, bibliographic keys are CSL's, dates are EDTF. Every record keeps the
`place` it was read from, left out of equality so that equal records from two files are equal.
"""

from __future__ import annotations

from dataclasses import field
from decimal import Decimal
from enum import StrEnum
from typing import Annotated, Any

from pydantic import AfterValidator, BeforeValidator, ConfigDict, Field, GetPydanticSchema, StringConstraints
from pydantic.dataclasses import dataclass
from pydantic_core import core_schema

from auctorum.characters.vocabulary import Kind
from auctorum.problems import NOWHERE, Place
from auctorum.records.dates import check_date

PLACE_KEY = "@"  # no YAML plain word can start so; the reader refuses it as a key


def _kebab(name: str) -> str:
    return PLACE_KEY if name == "place" else name.rstrip("_").replace("_", "-")


CONFIG = ConfigDict(extra="forbid", alias_generator=_kebab, str_strip_whitespace=True)

Words = Annotated[str, StringConstraints(min_length=1)]
Identifier = Annotated[str, StringConstraints(pattern=r"^[a-z0-9]+(?:-[a-z0-9]+)*$", max_length=80)]
Date = Annotated[str, AfterValidator(check_date)]


def _read_place(place: Any, info: core_schema.ValidationInfo) -> Place:
    """A place as the parser gives it, or [line, column] as the cache keeps it, in the file of the context."""
    return place if isinstance(place, Place) else Place(str(info.context), int(place[0]), int(place[1]))


# A place is put in by the reader and is no key of the file (and no part of its JSON Schema).
_PLACE_SCHEMA = GetPydanticSchema(
    lambda _source, _handler: core_schema.with_info_before_validator_function(_read_place, core_schema.any_schema())
)
RecordPlace = Annotated[Place, _PLACE_SCHEMA]


def _without_place(data: Any) -> Any:
    """A mapping of free keys, without the place that the reader puts into every mapping."""
    return {key: value for key, value in data.items() if key != PLACE_KEY} if isinstance(data, dict) else data


def _place() -> Any:
    return field(default=NOWHERE, compare=False, repr=False)


class ActKind(StrEnum):
    """What a work does with a name. `variant spelling`: prints a known name in another spelling."""

    NEW_TAXON = "new taxon"
    NEW_COMBINATION = "new combination"
    CHANGE_OF_RANK = "change of rank"
    REPLACEMENT_NAME = "replacement name"
    TYPE_DESIGNATION = "type designation"
    VARIANT_SPELLING = "variant spelling"


class Status(StrEnum):
    """How a work keeps a name."""

    ACCEPTED = "accepted"
    SYNONYM = "synonym"
    MISAPPLIED = "misapplied"
    DOUBTFUL = "doubtful"


class Basis(StrEnum):
    """What a treatment rests on."""

    OWN_MATERIAL = "own material"
    COMPILED = "compiled"
    UNSTATED = "unstated"


class TypeKind(StrEnum):
    """Kinds of type (ICN Art. 9)."""

    HOLOTYPE = "holotype"
    SYNTYPE = "syntype"
    LECTOTYPE = "lectotype"
    NEOTYPE = "neotype"
    EPITYPE = "epitype"
    ILLUSTRATION = "illustration"
    NAME = "name"  # the type of a genus is given as a species name


class DescriptionKind(StrEnum):
    """How a new taxon was described (ICN Art. 38)."""

    DESCRIPTION = "description"
    DIAGNOSIS = "diagnosis"
    REFERENCE = "reference"
    NONE = "none"


@dataclass(frozen=True, slots=True, config=CONFIG)
class Person:
    """A person as CSL names one."""

    family: Annotated[Words, Field(description="Family name, with any particle that belongs to it.")]
    given: Annotated[str, Field(description="Given names or initials.")] = ""
    literal: Annotated[str, Field(description="The form in author citations, where it is not the family name.")] = ""
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Work:
    """A publication; keys are CSL's but for `effective` and the two after it."""

    id: Annotated[Identifier, Field(description="Unique id of the work, lower case with hyphens: orrin-1911.")]
    type: Annotated[Words, Field(description="CSL type: article-journal, book, chapter, thesis, report ...")]
    author: Annotated[tuple[Person, ...], Field(description="Authors in order.", min_length=1)]
    issued: Annotated[Date, Field(description="Date printed on the work (EDTF).")]
    title: Annotated[Words, Field(description="Title of the work.")]
    effective: Annotated[Date | None, Field(description="Date of effective publication, where it differs.")] = None
    effectively_published: Annotated[
        bool, Field(description="Whether it is effectively published (ICN Art. 29-31); a thesis often is not.")
    ] = True
    effective_note: Annotated[str, Field(description="How the effective date or the lack of one is known.")] = ""
    editor: Annotated[tuple[Person, ...], Field(description="Editors in order.")] = ()
    container_title: Annotated[str, Field(description="Journal or book that the work stands in.")] = ""
    container_title_short: Annotated[str, Field(description="Abbreviated title as citations print it.")] = ""
    collection_title: Annotated[str, Field(description="Series.")] = ""
    volume: Annotated[str, Field(description="Volume.")] = ""
    issue: Annotated[str, Field(description="Issue within the volume.")] = ""
    edition: Annotated[str, Field(description="Edition.")] = ""
    page: Annotated[str, Field(description="Pages, first-last.")] = ""
    publisher: Annotated[str, Field(description="Publisher.")] = ""
    publisher_place: Annotated[str, Field(description="Place of publication.")] = ""
    language: Annotated[str, Field(description="Language of the text (BCP 47: en, la, de).")] = ""
    DOI: Annotated[str, Field(description="DOI, without the resolver's address.")] = ""
    URL: Annotated[str, Field(description="Address, http or https.")] = ""
    ISBN: Annotated[str, Field(description="ISBN.")] = ""
    ISSN: Annotated[str, Field(description="ISSN.")] = ""
    note: Annotated[str, Field(description="Anything a reader of the record should know.")] = ""
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class TypeRecord:
    """The type of a name, as a work states it."""

    kind: Annotated[TypeKind, Field(description="holotype, syntype, lectotype, neotype, epitype, illustration, name.")]
    specimen: Annotated[str, Field(description="Collector and number, figure, or (kind: name) the species name.")] = ""
    herbarium: Annotated[str, Field(description="Code of the herbarium that keeps it.")] = ""
    verbatim: Annotated[str, Field(description="The work's words about the type.")] = ""
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class DescriptionRecord:
    """What describes a new taxon, as ICN Art. 38 and 39 ask for it."""

    kind: Annotated[DescriptionKind, Field(description="description, diagnosis, reference (to an earlier one), none.")]
    language: Annotated[str, Field(description="Language in words: latin, english, german ...")] = ""
    reference: Annotated[str, Field(description="Kind reference: what is referred to.")] = ""
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Act:
    """One nomenclatural act: what the work does with one name. Absent facts are unknown, not assumed."""

    name: Annotated[Words, Field(description="The name as the act publishes it, without authors unless needed.")]
    act: Annotated[ActKind, Field(description="What the work does with the name.")]
    rank: Annotated[str, Field(description="Rank as the work states it; `unranked` where it states none.")] = ""
    page: Annotated[str, Field(description="Page of the act.")] = ""
    plate: Annotated[str, Field(description="Plate or figure of the act.")] = ""
    authors: Annotated[
        str,
        Field(description="Authors of the name after the parentheses, where not the work's authors: `Vane ex Orrin`."),
    ] = ""
    printed: Annotated[str, Field(description="The whole name with authors as this work prints it.")] = ""
    basionym: Annotated[str, Field(description="New combination, change of rank: the name it rests on.")] = ""
    basionym_reference: Annotated[
        str, Field(description="`full`, `partial` or `none`: how the basionym is referred to (ICN Art. 41).")
    ] = ""
    replaces: Annotated[str, Field(description="Replacement name: the name replaced.")] = ""
    of: Annotated[str, Field(description="Type designation, variant spelling: the name it is about.")] = ""
    cites: Annotated[
        tuple[str, ...], Field(description="Earlier names whose types the act includes (cited as synonyms).")
    ] = ()
    excludes: Annotated[tuple[str, ...], Field(description="Earlier names whose types the act shuts out.")] = ()
    type: Annotated[TypeRecord | None, Field(description="Type indicated in the act.")] = None
    description: Annotated[DescriptionRecord | None, Field(description="Description or diagnosis given.")] = None
    accepted: Annotated[bool, Field(description="false where the author does not accept the name (Art. 36.1).")] = True
    under: Annotated[str, Field(description="Taxa the name was placed in between genus and itself.")] = ""
    verbatim: Annotated[str, Field(description="The words of the act.")] = ""
    note: Annotated[str, Field(description="Anything a reader of the record should know.")] = ""
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class StatementRecord:
    """What one work says of one character of one taxon: the words are the evidence."""

    character: Annotated[Words, Field(description="Character, by its name in characters.yaml.")]
    verbatim: Annotated[str, Field(description="The exact words of the work.")] = ""
    value: Annotated[str, Field(description="The value in plain notation, where the words cannot be read.")] = ""
    stage: Annotated[str, Field(description="Growth stage, where the words do not tell it.")] = ""
    page: Annotated[str, Field(description="Page of the statement.")] = ""
    note: Annotated[str, Field(description="Anything a reader of the record should know.")] = ""
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class TreatmentRecord:
    """How one work keeps one name: its status, place and synonyms, and what it says of the plant."""

    taxon: Annotated[Words, Field(description="The name as the work uses it.")]
    status: Annotated[Status, Field(description="accepted, synonym, misapplied or doubtful.")] = Status.ACCEPTED
    rank: Annotated[str, Field(description="Rank, where the name does not tell it.")] = ""
    under: Annotated[str, Field(description="Accepted: the taxon it is placed in.")] = ""
    accepted_as: Annotated[str, Field(description="Synonym or misapplied: the accepted name in this work.")] = ""
    synonyms: Annotated[tuple[str, ...], Field(description="Names the work sinks into this taxon.")] = ()
    misapplied: Annotated[
        tuple[str, ...], Field(description="Names that, says the work, others wrongly used for this taxon.")
    ] = ()
    basis: Annotated[Basis, Field(description="own material, compiled or unstated.")] = Basis.UNSTATED
    follows: Annotated[tuple[str, ...], Field(description="Ids of the works whose figures it repeats.")] = ()
    page: Annotated[str, Field(description="Page of the treatment.")] = ""
    verbatim: Annotated[str, Field(description="Words about rank or standing worth keeping.")] = ""
    note: Annotated[str, Field(description="Anything a reader of the record should know.")] = ""
    traits: Annotated[tuple[StatementRecord, ...], Field(description="What it says, character by character.")] = ()
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Conventions:
    """How the work prints measures, where that is not the common way."""

    line: Annotated[str, Field(description="`english` (1/12 English inch) or `paris` (Paris line).")] = "english"
    signs: Annotated[
        dict[str, str], BeforeValidator(_without_place), Field(description='Key to signs: {"\'": ft}.')
    ] = field(default_factory=dict)
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Literature:
    """One publication read: its work, the acts in it, its treatments."""

    work: Annotated[Work, Field(description="The publication.")]
    covers: Annotated[
        tuple[str, ...],
        Field(description="Taxa that the work sets out to treat in full: only of these can it be silent."),
    ] = ()
    conventions: Annotated[Conventions, Field(description="How the work prints measures.")] = field(
        default_factory=Conventions
    )
    acts: Annotated[tuple[Act, ...], Field(description="Nomenclatural acts, in the order of the work.")] = ()
    treatments: Annotated[tuple[TreatmentRecord, ...], Field(description="Treatments, in order.")] = ()
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class StateRecord:
    """One state of a character."""

    name: Annotated[Words, Field(description="Name of the state.")]
    words: Annotated[tuple[str, ...], Field(description="Synonyms and Latin forms.")] = ()
    colour: Annotated[str, Field(description="Colour reference in Munsell notation: 5GY 6/6.")] = ""
    meaning: Annotated[str, Field(description="What the term means.")] = ""
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class CharacterRecord:
    """One character of the vocabulary."""

    name: Annotated[Words, Field(description="Name: structure and property, `spur length`.")]
    structure: Annotated[Words, Field(description="The part of the plant, or `habitat`.")]
    property: Annotated[Words, Field(description="length, width, count, colour, shape ...")]
    kind: Annotated[Kind, Field(description="measure, count, ratio, angle, ordered, nominal or presence.")]
    unit: Annotated[str, Field(description="Canonical unit of a measure (mm, m) or angle (degree).")] = ""
    states: Annotated[
        tuple[StateRecord, ...], Field(description="States; in order along the spectrum if ordered.")
    ] = ()
    stages: Annotated[tuple[str, ...], Field(description="Growth stages that split the character.")] = ()
    words: Annotated[tuple[str, ...], Field(description="Other ways to name the character or its structure.")] = ()
    how: Annotated[str, Field(description="How to measure or judge it.")] = ""
    meaning: Annotated[str, Field(description="What the character is.")] = ""
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Characters:
    """The file characters.yaml."""

    characters: Annotated[tuple[CharacterRecord, ...], Field(description="The vocabulary, in order of description.")]
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Thresholds:
    """Probabilities at which a determination changes its wording."""

    plain: Annotated[float, Field(description="From here on the plain name.", ge=0, le=1)] = 0.95
    cf: Annotated[float, Field(description="From here on `cf.`", ge=0, le=1)] = 0.8
    aff: Annotated[float, Field(description="From here on `aff.`; below it `indet.`", ge=0, le=1)] = 0.5
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Settings:
    """The file kb.yaml."""

    title: Annotated[Words, Field(description="Title of the knowledge base.")]
    description: Annotated[str, Field(description="What it covers, in a paragraph.")] = ""
    notice: Annotated[str, Field(description="Words shown on every page, such as that all is invented.")] = ""
    focal_taxa: Annotated[tuple[str, ...], Field(description="The names at issue; shown first.")] = ()
    code_edition: Annotated[str, Field(description="Edition of the ICN followed: Shenzhen 2018.")] = "Shenzhen 2018"
    locality_precision: Annotated[
        Decimal, Field(description="Degrees to which coordinates are cut before they leave the machine.", gt=0)
    ] = Decimal("0.1")
    repetition_weight: Annotated[
        Decimal, Field(description="Weight of a statement that repeats another work's figures.", ge=0, le=1)
    ] = Decimal(0)
    thresholds: Annotated[Thresholds, Field(description="When a determination says cf., aff. and indet.")] = field(
        default_factory=Thresholds
    )
    cautions: Annotated[tuple[str, ...], Field(description="Cautions shown with field advice.")] = ()
    licence: Annotated[str, Field(description="Licence of the data.")] = ""
    editors: Annotated[tuple[str, ...], Field(description="Who keeps the knowledge base.")] = ()
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Decisive:
    """The trait that decides: at least, or at most, a value."""

    character: Annotated[Words, Field(description="Character, by its name in characters.yaml.")]
    stage: Annotated[str, Field(description="Growth stage at which it is judged.")] = ""
    at_least: Annotated[str, Field(description="Fits from this value on, with unit: 25 mm.")] = ""
    at_most: Annotated[str, Field(description="Fits up to this value, with unit.")] = ""
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Supporting:
    """A trait that speaks for or against, without deciding."""

    character: Annotated[Words, Field(description="Character, by its name in characters.yaml.")]
    value: Annotated[Words, Field(description="The value that speaks for the taxon, in plain notation.")]
    stage: Annotated[str, Field(description="Growth stage at which it is judged.")] = ""
    weight: Annotated[Decimal, Field(description="Weight beside the other supporting traits.", gt=0)] = Decimal(1)
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Criterion:
    """A working definition for use in the field (one file of criteria/)."""

    id: Annotated[Identifier, Field(description="Unique id of the criterion.")]
    taxon: Annotated[Words, Field(description="The name that a plant which fits is given.")]
    title: Annotated[Words, Field(description="Title.")]
    decisive: Annotated[Decisive, Field(description="The trait that decides.")]
    supporting: Annotated[tuple[Supporting, ...], Field(description="Supporting traits.")] = ()
    otherwise: Annotated[str, Field(description="The name for a plant that does not fit.")] = ""
    author: Annotated[tuple[Person, ...], Field(description="Whose working definition it is.")] = ()
    issued: Annotated[Date | None, Field(description="Date of the definition (EDTF).")] = None
    note: Annotated[str, Field(description="Weak points and reasons.")] = ""
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Site:
    """A row of sites.csv; columns are Darwin Core's, but for aspect, substrate and role."""

    locationID: Annotated[Words, Field(description="Unique id of the site.")]
    locality: Annotated[str, Field(description="Name of the place.")] = ""
    island: Annotated[str, Field(description="Island.")] = ""
    decimalLatitude: Annotated[Decimal | None, Field(description="Latitude in degrees.", ge=-90, le=90)] = None
    decimalLongitude: Annotated[Decimal | None, Field(description="Longitude in degrees.", ge=-180, le=180)] = None
    minimumElevationInMeters: Annotated[Decimal | None, Field(description="Lowest elevation in m.")] = None
    maximumElevationInMeters: Annotated[Decimal | None, Field(description="Highest elevation in m.")] = None
    habitat: Annotated[str, Field(description="Habitat in words.")] = ""
    substrate: Annotated[str, Field(description="Rock or soil.")] = ""
    aspect: Annotated[str, Field(description="Direction the slope faces: N, NNE ... or degrees.")] = ""
    role: Annotated[str, Field(description="`known` or `candidate` (not yet searched).")] = "known"
    locationRemarks: Annotated[str, Field(description="Remarks; dangers and permits belong here.")] = ""
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Specimen:
    """A row of specimens.csv; columns are Darwin Core's, measurements are `character [unit]`."""

    occurrenceID: Annotated[Words, Field(description="Unique id of the record.")]
    organismID: Annotated[str, Field(description="The plant, where several rows measure one.")] = ""
    catalogNumber: Annotated[str, Field(description="Number in the herbarium.")] = ""
    recordedBy: Annotated[str, Field(description="Observer.")] = ""
    eventDate: Annotated[str, Field(description="Date (ISO 8601).")] = ""
    locationID: Annotated[str, Field(description="Site, by its id in sites.csv.")] = ""
    scientificName: Annotated[str, Field(description="Determination, if one was made.")] = ""
    identifiedBy: Annotated[str, Field(description="Who determined it.")] = ""
    lifeStage: Annotated[str, Field(description="Growth stage: young, mature ...")] = ""
    degreeOfEstablishment: Annotated[str, Field(description="native, cultivated ...")] = ""
    occurrenceRemarks: Annotated[str, Field(description="Remarks.")] = ""
    measurements: Annotated[
        tuple[tuple[str, str, str], ...],
        Field(description="Columns `character [unit]`: character, unit, cell as typed; empty cells left out."),
    ] = ()
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Label:
    """A row of labels.csv: what a seller's label says, and what the plant shows."""

    occurrenceID: Annotated[Words, Field(description="Unique id of the label.")]
    verbatimIdentification: Annotated[Words, Field(description="The name as the label spells it.")]
    recordedBy: Annotated[str, Field(description="Who noted it.")] = ""
    eventDate: Annotated[str, Field(description="Date (ISO 8601).")] = ""
    seller: Annotated[str, Field(description="Who sold or showed the plant.")] = ""
    lifeStage: Annotated[str, Field(description="Growth stage: young, mature ...")] = ""
    occurrenceRemarks: Annotated[str, Field(description="Remarks.")] = ""
    measurements: Annotated[
        tuple[tuple[str, str, str], ...],
        Field(description="Columns `character [unit]`: character, unit, cell as typed; empty cells left out."),
    ] = ()
    place: RecordPlace = _place()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Records:
    """Every record of a knowledge base, as read."""

    settings: Settings
    characters: Characters
    literature: tuple[Literature, ...] = ()
    criteria: tuple[Criterion, ...] = ()
    sites: tuple[Site, ...] = ()
    specimens: tuple[Specimen, ...] = ()
    labels: tuple[Label, ...] = ()
