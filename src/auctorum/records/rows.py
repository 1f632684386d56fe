"""Records of the tables: a site, a specimen, a seller's label; named by Darwin Core terms."""

from __future__ import annotations

from decimal import Decimal
from enum import StrEnum
from typing import Annotated

from pydantic import BeforeValidator, Field
from pydantic.dataclasses import dataclass

from auctorum.records.fields import CONFIG, RecordPlace, Words, place_field


class Role(StrEnum):
    """What a site is for the knowledge base."""

    KNOWN = "known"
    CANDIDATE = "candidate"


# A number as spreadsheets write it in many countries, with a comma.
Number = Annotated[Decimal, BeforeValidator(lambda said: said.replace(",", ".") if isinstance(said, str) else said)]

FILLED_IN = ("measurements", "accuracies", "columns", "place")  # fields that no column of a table is named after
CellsTyped = tuple[tuple[str, str, str, int], ...]
_MEASURED = "Columns `character [unit]`: character, unit, cell as typed, its column; empty cells left out."
_ACCURACY = "Columns `character ± [unit]`, the half-width of the instrument's error: as in `measurements`."
_COLUMNS = "Columns of type, value, unit and accuracy, which the reader fills in."
_VERBATIM_DATE = "The date as typed, where it was not in ISO 8601."


@dataclass(frozen=True, slots=True, config=CONFIG)
class Site:
    """A row of sites.csv; columns are Darwin Core's, but for aspect, substrate and role."""

    locationID: Annotated[Words, Field(description="Unique id of the site.")]
    locality: Annotated[str, Field(description="Name of the place.")] = ""
    island: Annotated[str, Field(description="Island.")] = ""
    decimalLatitude: Annotated[Number | None, Field(description="Latitude in degrees.", ge=-90, le=90)] = None
    decimalLongitude: Annotated[Number | None, Field(description="Longitude in degrees.", ge=-180, le=180)] = None
    minimumElevationInMeters: Annotated[Number | None, Field(description="Lowest elevation in m.")] = None
    maximumElevationInMeters: Annotated[Number | None, Field(description="Highest elevation in m.")] = None
    habitat: Annotated[str, Field(description="Habitat in words.")] = ""
    substrate: Annotated[str, Field(description="Rock or soil.")] = ""
    aspect: Annotated[str, Field(description="Direction the slope faces: N, NNE ... or degrees.")] = ""
    role: Annotated[Role, Field(description="`known` or `candidate` (not yet searched).")] = Role.KNOWN
    locationRemarks: Annotated[str, Field(description="Remarks; dangers and permits belong here.")] = ""
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Specimen:
    """A row of specimens.csv; columns are Darwin Core's, measurements are `character [unit]`.

    Place and coordinates are taken so that a table that has them can be read; nothing here shows them or reckons with
    them. A site's own stand in sites.csv.
    """

    occurrenceID: Annotated[Words, Field(description="Unique id of the record.")]
    organismID: Annotated[str, Field(description="The plant, where several rows measure one.")] = ""
    catalogNumber: Annotated[str, Field(description="Number in the herbarium.")] = ""
    recordedBy: Annotated[str, Field(description="Observer.")] = ""
    eventDate: Annotated[str, Field(description="Date (ISO 8601).")] = ""
    verbatimEventDate: Annotated[str, Field(description=_VERBATIM_DATE)] = ""
    locationID: Annotated[str, Field(description="Site, by its id in sites.csv.")] = ""
    scientificName: Annotated[str, Field(description="Determination, if one was made.")] = ""
    identifiedBy: Annotated[str, Field(description="Who determined it.")] = ""
    lifeStage: Annotated[str, Field(description="Growth stage: young, mature ...")] = ""
    sex: Annotated[str, Field(description="female, male, hermaphrodite ...")] = ""
    degreeOfEstablishment: Annotated[str, Field(description="native, cultivated ...")] = ""
    establishmentMeans: Annotated[str, Field(description="native, introduced ..., where no degree is told.")] = ""
    measurementMethod: Annotated[str, Field(description="Instrument: caliper, ruler ...")] = ""
    locality: Annotated[str, Field(description="Place in words; never shown.")] = ""
    decimalLatitude: Annotated[Number | None, Field(description="Latitude; never shown.", ge=-90, le=90)] = None
    decimalLongitude: Annotated[Number | None, Field(description="Longitude; never shown.", ge=-180, le=180)] = None
    coordinateUncertaintyInMeters: Annotated[Number | None, Field(description="Of the coordinates.", ge=0)] = None
    occurrenceRemarks: Annotated[str, Field(description="Remarks.")] = ""
    measurements: Annotated[CellsTyped, Field(description=_MEASURED)] = ()
    accuracies: Annotated[CellsTyped, Field(description=_ACCURACY)] = ()
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class MeasurementOrFact:
    """A row of measurements.csv: one measurement of one specimen (Darwin Core's class of that name)."""

    occurrenceID: Annotated[Words, Field(description="The specimen, by its id in specimens.csv.")]
    measurementType: Annotated[Words, Field(description="Character, by its name in characters.yaml.")]
    measurementID: Annotated[str, Field(description="Id of the measurement.")] = ""
    measurementValue: Annotated[str, Field(description="Number, with or without its unit, or words of a state.")] = ""
    measurementUnit: Annotated[str, Field(description="Unit; that of the character where none is told.")] = ""
    measurementAccuracy: Annotated[str, Field(description="Half-width of the error: `0.5`, `0.5 mm`, `±0.5`.")] = ""
    measurementMethod: Annotated[str, Field(description="Instrument: caliper, ruler ...")] = ""
    measurementDeterminedBy: Annotated[str, Field(description="Who measured, if not who recorded the plant.")] = ""
    measurementDeterminedDate: Annotated[str, Field(description="Date (ISO 8601).")] = ""
    measurementRemarks: Annotated[str, Field(description="Remarks.")] = ""
    lifeStage: Annotated[str, Field(description="Growth stage, if not that of the specimen's row.")] = ""
    columns: Annotated[tuple[int, int, int, int], Field(description=_COLUMNS)] = (1, 1, 1, 1)
    place: RecordPlace = place_field()


@dataclass(frozen=True, slots=True, config=CONFIG)
class Label:
    """A row of labels.csv: what a seller's label says, and what the plant shows."""

    occurrenceID: Annotated[Words, Field(description="Unique id of the label.")]
    verbatimIdentification: Annotated[Words, Field(description="The name as the label spells it.")]
    recordedBy: Annotated[str, Field(description="Who noted it.")] = ""
    eventDate: Annotated[str, Field(description="Date (ISO 8601).")] = ""
    verbatimEventDate: Annotated[str, Field(description=_VERBATIM_DATE)] = ""
    seller: Annotated[str, Field(description="Who sold or showed the plant.")] = ""
    lifeStage: Annotated[str, Field(description="Growth stage: young, mature ...")] = ""
    occurrenceRemarks: Annotated[str, Field(description="Remarks.")] = ""
    measurements: Annotated[CellsTyped, Field(description=_MEASURED)] = ()
    accuracies: Annotated[CellsTyped, Field(description=_ACCURACY)] = ()
    place: RecordPlace = place_field()
