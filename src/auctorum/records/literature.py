"""Records of one publication: the work, its treatments, and the whole file with the acts in it."""

from __future__ import annotations

from dataclasses import field
from enum import StrEnum
from typing import Annotated

from pydantic import Field
from pydantic.dataclasses import dataclass

from auctorum.records.acts import Act
from auctorum.records.fields import CONFIG, Date, FreeKeys, Identifier, Person, RecordPlace, Words, place_field


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
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class StatementRecord:
    """What one work says of one character of one taxon: the words are the evidence."""

    character: Annotated[Words, Field(description="Character, by its name in characters.yaml.")]
    verbatim: Annotated[str, Field(description="The exact words of the work.")] = ""
    value: Annotated[str, Field(description="The value in plain notation, where the words cannot be read.")] = ""
    stage: Annotated[str, Field(description="Growth stage, where the words do not tell it.")] = ""
    page: Annotated[str, Field(description="Page of the statement.")] = ""
    note: Annotated[str, Field(description="Anything a reader of the record should know.")] = ""
    place: RecordPlace = place_field()


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
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Conventions:
    """How the work prints measures, where that is not the common way."""

    line: Annotated[str, Field(description="`english` (1/12 English inch) or `paris` (Paris line).")] = "english"
    signs: Annotated[dict[str, str], FreeKeys, Field(description='Key to signs: {"\'": ft}.')] = field(
        default_factory=dict
    )
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Literature:
    """One publication read: its work, the acts in it, its treatments."""

    work: Annotated[Work, Field(description="The publication.")]
    covers: Annotated[
        tuple[str, ...],
        Field(description="Taxa that the work sets out to treat in full: only of these can it be silent."),
    ] = ()
    cites: Annotated[
        tuple[str, ...], Field(description="Ids of the works that it cites, as far as they are recorded here.")
    ] = ()
    conventions: Annotated[Conventions, Field(description="How the work prints measures.")] = field(
        default_factory=Conventions
    )
    acts: Annotated[tuple[Act, ...], Field(description="Nomenclatural acts, in the order of the work.")] = ()
    treatments: Annotated[tuple[TreatmentRecord, ...], Field(description="Treatments, in order.")] = ()
    place: RecordPlace = place_field()
