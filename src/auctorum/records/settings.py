"""Records of a knowledge base as a whole: settings, vocabulary, and working definitions for the field."""

from __future__ import annotations

from dataclasses import field
from decimal import Decimal
from typing import Annotated

from pydantic import Field
from pydantic.dataclasses import dataclass

from auctorum.characters.vocabulary import Kind
from auctorum.records.fields import CONFIG, Date, Identifier, Person, RecordPlace, Words, place_field


@dataclass(frozen=True, slots=True, config=CONFIG)
class StateRecord:
    """One state of a character."""

    name: Annotated[Words, Field(description="Name of the state.")]
    words: Annotated[tuple[str, ...], Field(description="Synonyms and Latin forms.")] = ()
    colour: Annotated[
        str, Field(description="Colour reference: Munsell notation (5GY 6/6, N 5/) or CIELAB (lab 62 -20 40).")
    ] = ""
    meaning: Annotated[str, Field(description="What the term means.")] = ""
    place: RecordPlace = place_field()


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
    of: Annotated[
        tuple[str, ...],
        Field(
            description="Of a ratio the two measures that it is of, the first divided by the second: so it is "
            "reckoned for plants on which both were measured."
        ),
    ] = ()
    stages: Annotated[tuple[str, ...], Field(description="Growth stages, or sexes, that split the character.")] = ()
    words: Annotated[tuple[str, ...], Field(description="Other ways to name the character or its structure.")] = ()
    how: Annotated[str, Field(description="How to measure or judge it.")] = ""
    cost: Annotated[
        Decimal,
        Field(description="Trouble it takes in the field: 1 a glance or a ruler, 3 a lens, 10 a laboratory.", gt=0),
    ] = Decimal(1)
    meaning: Annotated[str, Field(description="What the character is.")] = ""
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Characters:
    """The file characters.yaml."""

    characters: Annotated[tuple[CharacterRecord, ...], Field(description="The vocabulary, in order of description.")]
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Thresholds:
    """Probabilities at which a determination changes its wording."""

    plain: Annotated[float, Field(description="From here on the plain name.", ge=0, le=1)] = 0.95
    cf: Annotated[float, Field(description="From here on `cf.`", ge=0, le=1)] = 0.8
    aff: Annotated[float, Field(description="From here on `aff.`; below it `indet.`", ge=0, le=1)] = 0.5
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Settings:
    """The file kb.yaml."""

    title: Annotated[Words, Field(description="Title of the knowledge base.")]
    description: Annotated[str, Field(description="What it covers, in a paragraph.")] = ""
    notice: Annotated[str, Field(description="Words shown on every page, such as that all is invented.")] = ""
    focal_taxa: Annotated[tuple[str, ...], Field(description="The names at issue; shown first.")] = ()
    code_edition: Annotated[str, Field(description="Edition of the ICN followed: Shenzhen 2018.")] = "Shenzhen 2018"
    locality_precision: Annotated[
        Decimal, Field(description="Degrees to which coordinates are cut before they leave the machine.", gt=0, le=90)
    ] = Decimal("0.1")
    repetition_weight: Annotated[
        Decimal,
        Field(description="Weight of a statement that repeats the figures of another work: 0 (none) to 1.", ge=0, le=1),
    ] = Decimal(0)
    thresholds: Annotated[Thresholds, Field(description="When a determination says cf., aff. and indet.")] = field(
        default_factory=Thresholds
    )
    cautions: Annotated[tuple[str, ...], Field(description="Cautions shown with field advice.")] = ()
    licence: Annotated[str, Field(description="Licence of the data.")] = ""
    editors: Annotated[tuple[str, ...], Field(description="Who keeps the knowledge base.")] = ()
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Decisive:
    """The trait that decides: at least, or at most, a value."""

    character: Annotated[Words, Field(description="Character, by its name in characters.yaml.")]
    stage: Annotated[str, Field(description="Growth stage at which it is judged.")] = ""
    at_least: Annotated[str, Field(description="Fits from this value on, with unit: 25 mm.")] = ""
    at_most: Annotated[str, Field(description="Fits up to this value, with unit.")] = ""
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Supporting:
    """A trait that speaks for or against, without deciding."""

    character: Annotated[Words, Field(description="Character, by its name in characters.yaml.")]
    value: Annotated[Words, Field(description="The value that speaks for the taxon, in plain notation.")]
    stage: Annotated[str, Field(description="Growth stage at which it is judged.")] = ""
    weight: Annotated[Decimal, Field(description="Weight beside the other supporting traits.", gt=0)] = Decimal(1)
    place: RecordPlace = place_field()


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
    place: RecordPlace = place_field()
