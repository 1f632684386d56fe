"""Records of nomenclatural acts: what a work does with a name, with the facts that the Code asks about."""

from __future__ import annotations

from enum import StrEnum
from typing import Annotated, Literal

from pydantic import Field
from pydantic.dataclasses import dataclass

from auctorum.names.agreement import EpithetKind
from auctorum.names.gender import Gender
from auctorum.records.fields import CONFIG, RecordPlace, Words, place_field


class ActKind(StrEnum):
    """What a work does with a name, as its author presents it; the rules may make something else of it.

    `usage`: uses a name as an existing one, but without its type (ICN Art. 48.1), or takes up the epithet of an
    older name without citing it (Art. 41.4). `variant spelling`: prints a known name in another spelling. The
    last four decide about names and publish none: conserved or rejected (Art. 14, 56), the first choice between
    names of one date (Art. 11.5), and a ruling that two names are confusably alike (Art. 53.2).
    """

    NEW_TAXON = "new taxon"
    NEW_COMBINATION = "new combination"
    CHANGE_OF_RANK = "change of rank"
    REPLACEMENT_NAME = "replacement name"
    USAGE = "usage"
    TYPE_DESIGNATION = "type designation"
    VARIANT_SPELLING = "variant spelling"
    CONSERVATION = "conservation"
    REJECTION = "rejection"
    FIRST_CHOICE = "first choice"
    CONFUSABLE = "ruled confusable"


class OfferedAs(StrEnum):
    """How an author puts a name forward without accepting it (ICN Art. 36)."""

    PROVISIONAL = "provisional"
    SYNONYM = "synonym"
    ALTERNATIVE = "alternative"


class GivenStanding(StrEnum):
    """A standing that is taken as given, because its reason lies in works that are not recorded."""

    LEGITIMATE = "legitimate"
    ILLEGITIMATE = "illegitimate"
    NOT_VALID = "not valid"


class Organism(StrEnum):
    """Groups for which the Code has rules of their own."""

    PLANT = "plant"
    ALGA = "alga"


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
    ILLUSTRATION = "illustration"  # with analysis, in place of a description (Art. 38.7)
    NONE = "none"


@dataclass(frozen=True, slots=True, config=CONFIG)
class TypeRecord:
    """The type of a name, as a work states it."""

    kind: Annotated[TypeKind, Field(description="holotype, syntype, lectotype, neotype, epitype, illustration, name.")]
    specimen: Annotated[str, Field(description="Collector and number, figure, or (kind: name) the species name.")] = ""
    herbarium: Annotated[str, Field(description="Code of the herbarium that keeps it.")] = ""
    verbatim: Annotated[str, Field(description="The work's words about the type.")] = ""
    gatherings: Annotated[
        int | None, Field(description="How many gatherings are given as type (ICN Art. 40.2).", ge=0)
    ] = None
    herbaria: Annotated[
        int | None, Field(description="How many herbaria are given for the type, if not one (Art. 40.7).", ge=0)
    ] = None
    word: Annotated[str, Field(description="The word used for the type: holotypus, type, here designated (40.6).")] = ""
    place: RecordPlace = place_field()

    @property
    def settles(self) -> bool:
        """Whether it fixes the type by itself, so that names with the same specimen are homotypic (ICN Art. 9)."""
        return bool(self.specimen) and self.kind not in (TypeKind.SYNTYPE, TypeKind.EPITYPE)


@dataclass(frozen=True, slots=True, config=CONFIG)
class DescriptionRecord:
    """What describes a new taxon, as ICN Art. 38 and 39 ask for it."""

    kind: Annotated[
        DescriptionKind,
        Field(description="description, diagnosis, reference (to an earlier one), illustration (with analysis), none."),
    ]
    language: Annotated[str, Field(description="Language in words: latin, english, german ...")] = ""
    reference: Annotated[str, Field(description="Kind reference: what is referred to.")] = ""
    reference_full: Annotated[
        bool | None, Field(description="Kind reference: whether it is full and direct (ICN Art. 33.1, 38.13).")
    ] = None
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class EpithetRecord:
    """What an epithet (or generic name) is, as far as its letters do not tell (ICN Art. 23, 60, 61)."""

    kind: Annotated[
        EpithetKind | None,
        Field(description="adjective, noun, or noun-nominative-plural."),
    ] = None
    noun: Annotated[str, Field(description="The noun in the nominative, where the printed form differs.")] = ""
    declension: Annotated[str, Field(description="Adjective: its three forms, niger/nigra/nigrum.")] = ""
    person: Annotated[str, Field(description="Name of the person it is formed from (ICN Art. 60.8).")] = ""
    sex: Annotated[Literal["", "male", "female"], Field(description="Sex of the person: male or female.")] = ""
    number: Annotated[
        Literal["", "singular", "plural"], Field(description="singular or plural, for several persons.")
    ] = ""
    form: Annotated[Literal["", "genitive", "adjective"], Field(description="genitive or adjective.")] = ""
    place_name: Annotated[str, Field(description="Name of the place it is formed from.")] = ""
    intended: Annotated[
        str, Field(description="The spelling meant, where an error of printing or writing is established (60.1).")
    ] = ""
    parts_stand_alone: Annotated[
        bool | None, Field(description="Hyphened: whether its parts usually stand alone (ICN Art. 60.11).")
    ] = None
    first_genitive: Annotated[str, Field(description="Compound: its first word in the genitive singular (60.10).")] = ""
    interchanged: Annotated[
        bool | None, Field(description="Whether the work prints u for v, or i for j (ICN Art. 60.5).")
    ] = None
    symbol: Annotated[str, Field(description="Transcription of a symbol in it (ICN Art. 23.3).")] = ""
    place: RecordPlace = place_field()


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
        Literal["", "full", "partial", "none"],
        Field(description="How the basionym is referred to (Art. 41)."),
    ] = ""
    replaces: Annotated[str, Field(description="Replacement name: the name replaced.")] = ""
    of: Annotated[str, Field(description="Type designation, variant spelling, usage: the name it is about.")] = ""
    same_taxon_as: Annotated[
        str, Field(description="The older name whose epithet is taken up for the same taxon, uncited (Art. 41.4).")
    ] = ""
    cites: Annotated[
        tuple[str, ...], Field(description="Earlier names whose types the act includes (cited as synonyms).")
    ] = ()
    excludes: Annotated[tuple[str, ...], Field(description="Earlier names whose types the act shuts out.")] = ()
    against: Annotated[
        tuple[str, ...],
        Field(
            description="Conservation: the names it goes before; first choice: the names passed over; "
            "ruled confusable: the names it is too like."
        ),
    ] = ()
    type: Annotated[TypeRecord | None, Field(description="Type indicated in the act.")] = None
    type_indicated: Annotated[
        bool | None, Field(description="Whether a type was indicated, where `type:` does not say it (Art. 40.1).")
    ] = None
    description: Annotated[DescriptionRecord | None, Field(description="Description or diagnosis given.")] = None
    ascribed_to: Annotated[str, Field(description="To whom the work ascribes the name, if not its authors (46).")] = ""
    contributed: Annotated[
        bool, Field(description="Combination: the work says that those it is ascribed to contributed (46.2).")
    ] = False
    described_by: Annotated[str, Field(description="Who wrote the description, if not the work's authors (46.2).")] = ""
    accepted: Annotated[bool, Field(description="false where the author does not accept the name (Art. 36.1).")] = True
    offered_as: Annotated[
        OfferedAs | None, Field(description="Not accepted, but offered as provisional, synonym or alternative (36).")
    ] = None
    epithet_linked: Annotated[
        bool | None, Field(description="Whether the epithet was definitely linked with genus or species (35.2).")
    ] = None
    typical: Annotated[
        bool | None, Field(description="Whether the epithet is meant to mark the typical part (24.3, 26.2).")
    ] = None
    technical_term: Annotated[
        bool, Field(description="Genus: was a Latin technical term of morphology at the time (20.2).")
    ] = False
    with_species: Annotated[
        bool | None, Field(description="Genus: published together with a binary species name (20.2).")
    ] = None
    monotypic: Annotated[
        bool | None, Field(description="Genus: published with one species only (38.5); false for several.")
    ] = None
    parentage: Annotated[str, Field(description="Nothotaxon: its parents, `A × B` (H.9.1).")] = ""
    organism: Annotated[Organism, Field(description="plant or alga: rules that differ (39, 44).")] = Organism.PLANT
    fossil: Annotated[bool, Field(description="Whether the taxon is a fossil (39, 43).")] = False
    epithet: Annotated[EpithetRecord | None, Field(description="What the epithet is (23, 60).")] = None
    gender: Annotated[
        Gender | None,
        Field(description="Genus: its gender (62)."),
    ] = None
    standing: Annotated[
        GivenStanding | None,
        Field(description="legitimate, illegitimate or not valid, taken as given; say in `note:` where it is shown."),
    ] = None
    under: Annotated[
        str, Field(description="The genus or species it was published under, with authors if there are homonyms.")
    ] = ""
    verbatim: Annotated[str, Field(description="The words of the act.")] = ""
    note: Annotated[str, Field(description="Anything a reader of the record should know.")] = ""
    place: RecordPlace = place_field()
